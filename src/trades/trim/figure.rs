//! The figure: pieces, joints, nails, caulk, and the account of them.

use super::ask::{Ask, Kind, MOST_PIECES, Problem, checked};
use super::findings::findings;
use super::runs::{Piece, Runs, Scarf, Tight, by_hand, round};
use crate::handbook::{Cite, cautions, trim as book};
use crate::measure::quantity::{Volume, cubic_metres};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Material, Need, Order, Step, Term};

/// A cutting list of trim.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The pieces in the order of walking.
    pub pieces: Vec<Piece>,
    /// Where base is joined on along a wall.
    pub scarfs: Vec<Scarf>,
    /// Openings with less room beside them than their casing is wide.
    pub tight: Vec<Tight>,
    /// Along the walls, or along the inner edges of casing.
    pub run: Length,
    /// All pieces from long point to long point.
    pub total: Length,
    /// What of the walls gets no base.
    pub open: Length,
    /// Ends that are coped.
    pub copes: usize,
    /// Nails.
    pub nails: i64,
    /// How long they are.
    pub nail: Length,
    /// Caulk, where it gets any.
    pub caulk: Option<Volume>,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// Trim cut to length: base along `walls − doors − what covers them`, casing `opening + 2 × reveal`, each piece with
/// the points of its mitres, `thickness × tan(turn ÷ 2)` apart.
///
/// # Inputs
/// What was asked, within its limits; the openings and corners of a room as measured.
/// # Gives
/// The pieces in the order of walking, from a door on round the room; of casing left leg, head, right leg, foot.
/// # Errors
/// [`Problem`], naming the field and what would be right.
/// # Findings
/// A wall longer than a stick, corners off square and beyond the saw, pieces shorter than their cuts, doors too near to
/// a corner for their casing.
/// # Source
/// Plane geometry; the rules as `handbook::trim` cites them.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::trim::{Ask, figure}};
/// // A door of 30 by 80 in, reveals of 3/16 in, casing of 2 1/4 in: the head from long point to long point.
/// let figured = figure(&Ask::casing()).unwrap();
/// assert_eq!(figured.pieces[1].long(), Length::in_64(34, 56));
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    checked(ask)?;
    let Runs {
        pieces,
        scarfs,
        tight,
        open,
    } = match (ask.kind, &ask.walls) {
        (Kind::Base, Some(walls)) => round(ask, walls),
        (Kind::Base, None) => by_hand(ask),
        (Kind::Casing, _) => super::casing::cased(ask),
    };
    if pieces.is_empty() {
        return Err(Problem::Nothing);
    }
    if pieces.len() >= MOST_PIECES {
        return Err(Problem::TooMany { most: MOST_PIECES });
    }
    let run: Length = pieces.iter().map(|piece| piece.back).sum();
    let coped = |piece: &Piece| {
        let ends = piece.ends.iter();
        ends.filter(|end| end.cut == super::Cut::Coped).count()
    };
    let mut figure = Figure {
        run,
        total: pieces.iter().map(Piece::long).sum(),
        open,
        copes: pieces.iter().map(coped).sum(),
        nails: pieces.iter().map(|piece| nails_in(ask, piece)).sum(),
        nail: nail(ask),
        caulk: ask
            .caulk
            .map(|bead| cubic_metres(run.metres() * bead.metres().powi(2) / 2.0)),
        pieces,
        scarfs,
        tight,
        order: Vec::new(),
        account: Account::default(),
    };
    figure.order = super::order::order(ask, &figure);
    figure.account = Account {
        working: working(ask, &figure),
        findings: findings(ask, &figure),
        cautions: cautions_of(ask),
        needs: needs(ask, &figure),
    };
    Ok(figure)
}

/// Rows of nails.
fn rows(ask: &Ask) -> i64 {
    let two = ask.kind == Kind::Casing || ask.width >= book::TWO_ROWS.value;
    if two { 2 } else { 1 }
}

/// Nails in one piece: at both ends, and no farther apart than asked, in each row.
fn nails_in(ask: &Ask, piece: &Piece) -> i64 {
    let (along, apart) = (piece.long().as_nm(), ask.nails.as_nm());
    (along.max(1).div_euclid(apart) + i64::from(along.rem_euclid(apart) > 0) + 1) * rows(ask)
}

/// The shortest nail on sale that goes far enough into the stud.
fn nail(ask: &Ask) -> Length {
    let least = ask.thickness + ask.board + book::INTO_STUD.value;
    let sold = book::NAILS_SOLD.value.into_iter();
    let longer = least.rounded(Length::in_64(0, 16), crate::measure::Rounding::Cover);
    sold.filter(|length| *length >= least)
        .min()
        .unwrap_or(longer)
}

fn working(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let count = |n: usize| Amount::Count(n as i64);
    let mut working = Vec::new();
    match (ask.kind, &ask.walls) {
        (Kind::Base, Some(walls)) => {
            let round: Length = walls.iter().map(|wall| wall.length).sum();
            working.push(Step::of(
                "Base along the walls",
                vec![
                    round.into(),
                    Term::Word("−"),
                    figure.open.into(),
                    Term::Word("doors with their casing, and what covers the wall"),
                ],
                round - figure.open,
                Cite::figured(
                    &crate::handbook::documents::ESTIMATING,
                    "Example 13-25: perimeter less doors",
                ),
            ));
            working.push(Step::of(
                "Beside each door",
                vec![
                    ask.reveal.into(),
                    Term::Word("reveal +"),
                    ask.casing.into(),
                    Term::Word("casing"),
                ],
                ask.reveal + ask.casing,
                book::REVEAL.cite,
            ));
        }
        (Kind::Base, None) => {}
        (Kind::Casing, _) => {
            working.push(Step::of(
                "Each leg, floor to short point",
                vec![
                    Term::Word("opening +"),
                    ask.reveal.into(),
                    Term::Word("reveal"),
                ],
                ask.reveal,
                book::LEG,
            ));
        }
    }
    working.push(Step::of(
        "All pieces, long point to long point",
        vec![count(figure.pieces.len()).into(), Term::Word("pieces")],
        figure.total,
        book::POINTS,
    ));
    if figure.copes > 0 {
        working.push(Step::of(
            "Ends coped",
            Vec::new(),
            count(figure.copes),
            book::COPED,
        ));
    }
    working.push(Step::of(
        "A mitre is cut at half of what its corner turns",
        vec![Term::Word("a right corner")],
        Amount::Angle(super::saw_angle(crate::measure::Angle::RIGHT)),
        book::HALF,
    ));
    working.push(Step::of(
        "Nails",
        vec![
            ask.nails.into(),
            Term::Word("apart at most,"),
            Amount::Count(rows(ask)).into(),
            Term::Word("in each place"),
        ],
        Amount::Count(figure.nails),
        book::NAILS_APART.cite,
    ));
    working.push(Step::of(
        "A nail is so long",
        vec![
            ask.thickness.into(),
            Term::Word("+ board"),
            ask.board.into(),
            Term::Word("+ into the stud"),
            book::INTO_STUD.value.into(),
        ],
        figure.nail,
        book::INTO_STUD.cite,
    ));
    if let (Some(bead), Some(caulk)) = (ask.caulk, figure.caulk) {
        working.push(Step::of(
            "Caulk",
            vec![
                figure.run.into(),
                Term::Word("× half of"),
                bead.into(),
                Term::Word("squared"),
            ],
            caulk,
            book::BEAD.cite,
        ));
    }
    working
}

fn cautions_of(ask: &Ask) -> Vec<&'static cautions::Caution> {
    let mut all = vec![&cautions::TRIM_SAW, &cautions::NAIL_GUN];
    if ask.old {
        all.insert(0, &cautions::OLD_TRIM);
    }
    all
}

fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let need = |material, amount: Amount, why| Need {
        material,
        amount,
        why: Phrase::plain(why),
    };
    let mut all: Vec<Need> = (figure.pieces.iter())
        .map(|piece| {
            need(
                ask.material(),
                piece.long().into(),
                "a piece, long point to long point",
            )
        })
        .collect();
    let length = figure.nail;
    all.push(need(
        Material::FinishNails { length },
        Amount::Count(figure.nails),
        "holding the trim",
    ));
    if let Some(caulk) = figure.caulk {
        all.push(need(
            Material::Caulk,
            caulk.into(),
            "along the edge at the wall",
        ));
    }
    all
}
