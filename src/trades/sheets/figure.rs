//! The figure: pieces, sheets, screws, joints, weight, and the account of them.

use super::ask::{Ask, Problem, Surface, field};
use super::findings::findings;
use super::pieces::{Cutting, Piece, cutting};
use super::screws::{edge, of_piece};
use crate::geometry::{Panels, Point, Region};
use crate::handbook::{Cite, cautions, gypsum, sheets as book};
use crate::measure::quantity::{Area, Mass, area, in_square_feet, pounds, square_metres};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Board, Material, Need, Order, Step, Term};

/// What a layout of sheets comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Every piece, in the order of laying.
    pub pieces: Vec<Piece>,
    /// How the sheets that are cut are parted; after the whole ones.
    pub plan: Panels,
    /// Sheets that are laid whole.
    pub whole: usize,
    /// Sheets without reuse of off-cuts.
    pub without_reuse: usize,
    /// Sheets taken.
    pub taken: usize,
    /// No plan of this layout takes fewer.
    pub at_least: usize,
    /// Sheets to have, the allowance on top.
    pub to_buy: usize,
    /// Screws.
    pub screws: i64,
    /// The length of all joints between pieces.
    pub joints: Length,
    /// The middle of each joint, from end to end.
    pub lines: Vec<(Point, Point)>,
    /// Joints that land on nothing though they should.
    pub off_framing: Vec<(Point, Point)>,
    /// Ends of neighbouring courses that are nearer than asked, and the nearest.
    pub near: Option<(usize, Length)>,
    /// Where four corners meet.
    pub crosses: Vec<Point>,
    /// Corners of openings that a joint runs into.
    pub at_openings: Vec<Point>,
    /// The surface covered, its gaps not with it.
    pub covered: Area,
    /// What of the sheets taken is left over, as a share.
    pub left_over: f64,
    /// What a sheet weighs, from and to, where that is known.
    pub weight: Option<(Mass, Mass)>,
    /// The number of the thinnest piece, and how thin it is.
    pub narrowest: Option<(usize, Length)>,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// What a sheet weighs: `sides × pounds a square foot`, from the least to the most that is printed.
///
/// # Inputs
/// A board of the trade, its thickness and the sheet's sides.
/// # Gives
/// `None` for a thickness that no page prints.
/// # Source
/// The tables of [`handbook::sheets`](crate::handbook::sheets).
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_pounds}, trades::sheets::{Board, sheet_weight}};
/// let sheet = (Length::feet(8), Length::feet(4));
/// let (from, to) = sheet_weight(Board::Gypsum, Length::in_64(0, 32), sheet).unwrap();
/// assert!((in_pounds(from) - 51.2).abs() < 1e-9 && (in_pounds(to) - 54.4).abs() < 1e-9);
/// ```
#[must_use]
pub fn sheet_weight(
    board: Board,
    thickness: Length,
    (long, short): (Length, Length),
) -> Option<(Mass, Mass)> {
    let (rows, _) = weights(board);
    // Metric board of 12.5 mm is sold as half an inch.
    let near = |row: &&(Length, f64, f64)| (row.0 - thickness).abs() <= Length::nm(500_000);
    let (_, from, to) = rows.iter().find(near)?;
    let feet = in_square_feet(area(long, short));
    Some((pounds(from * feet), pounds(to * feet)))
}

fn weights(board: Board) -> (&'static [(Length, f64, f64)], Cite) {
    match board {
        Board::Gypsum => (&book::GYPSUM_POUNDS.value, book::GYPSUM_POUNDS.cite),
        Board::Cement => (&book::CEMENT_POUNDS.value, book::CEMENT_POUNDS.cite),
        Board::Plywood => (&book::PLYWOOD_POUNDS.value, book::PLYWOOD_POUNDS.cite),
    }
}

/// A surface in board: every piece with its shape, its cuts and its sheet.
///
/// # Inputs
/// What was asked, within its limits.
/// # Gives
/// The pieces in the order of laying, course by course from the corner that the first lies in.
/// # Errors
/// [`Problem`], naming what is wrong and what would be right.
/// # Findings
/// Narrow strips, four corners that meet, ends too near, joints off the framing or at an opening's corner, weight.
/// # Source
/// Geometry for every piece; the rules as `handbook::sheets` and `handbook::gypsum` cite them.
/// # Example
/// ```
/// use storyrod::trades::sheets::{Ask, figure};
/// // 5 by 8 ft under sheets of 3 by 5 ft: three of them.
/// assert_eq!(figure(&Ask::default()).unwrap().to_buy, 3);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    let field = field(ask)?;
    let Cutting {
        pieces,
        laid,
        plan,
        whole,
    } = cutting(ask, &field);
    let taken = whole + plan.sheets.len();
    let spoiled = (taken as f64 * ask.waste - 1e-6).ceil().max(0.0) as usize;
    let doubled: i128 = pieces.iter().map(|p| p.region.doubled_area()).sum();
    let covered = square_metres(doubled as f64 / 2e18);
    let sheets = area(ask.sheet.0, ask.sheet.1) * taken as f64;
    let thin = pieces.iter().map(|piece| (piece.number, piece.thin));
    let mut figure = Figure {
        without_reuse: pieces.len(),
        taken,
        at_least: whole + plan.at_least,
        to_buy: taken + spoiled,
        screws: pieces.iter().map(|piece| of_piece(ask, piece)).sum(),
        joints: laid.joints.iter().map(|(a, b)| a.distance(*b)).sum(),
        at_openings: at_openings(ask, &laid.joints),
        lines: laid.joints,
        off_framing: laid.off_framing,
        near: laid.near,
        crosses: laid.crosses,
        left_over: (1.0 - covered.value / sheets.value).max(0.0),
        covered,
        weight: match ask.weight {
            Some(weight) => Some((weight, weight)),
            None => sheet_weight(ask.board, ask.thickness, ask.sheet),
        },
        narrowest: thin.min_by_key(|(number, thin)| (*thin, *number)),
        pieces,
        plan,
        whole,
        order: Vec::new(),
        account: Account::default(),
    };
    figure.order = super::order::order(&figure);
    account(ask, &mut figure, spoiled, &field);
    Ok(figure)
}

/// Corners of openings that a joint runs into.
fn at_openings(ask: &Ask, joints: &[(Point, Point)]) -> Vec<Point> {
    if ask.on == Surface::Floor {
        return Vec::new();
    }
    let beside = book::BESIDE.value + ask.edge;
    let runs_into = |corner: &Point| {
        joints.iter().any(|(a, b)| {
            let (least, most) = (
                Point::new(a.x.min(b.x) - beside, a.y.min(b.y) - beside),
                Point::new(a.x.max(b.x) + beside, a.y.max(b.y) + beside),
            );
            corner.x >= least.x && corner.x <= most.x && corner.y >= least.y && corner.y <= most.y
        })
    };
    let holes = ask.surface.holes.iter().flat_map(|hole| hole.points.iter());
    let corners = holes.copied().chain(inward(&ask.surface));
    corners.filter(runs_into).collect()
}

/// Corners of the outside that stand into the surface: those of a door.
fn inward(surface: &Region) -> Vec<Point> {
    let points = &surface.outer.points;
    let count = points.len();
    let clockwise = surface.outer.clockwise();
    (0..count)
        .filter(|n| {
            let (a, b, c) = (
                points[(n + count - 1) % count],
                points[*n],
                points[(n + 1) % count],
            );
            let turn = (b.x - a.x).metres() * (c.y - b.y).metres()
                - (b.y - a.y).metres() * (c.x - b.x).metres();
            // A square millimetre, so that a wall in two parts is no corner.
            if clockwise { turn < -1e-6 } else { turn > 1e-6 }
        })
        .map(|n| points[n])
        .collect()
}

fn account(ask: &Ask, figure: &mut Figure, spoiled: usize, field: &[Region]) {
    let count = |n: usize| Amount::Count(n as i64);
    let mut working = vec![
        Step::of(
            "The surface less its gaps and holes",
            vec![
                ask.surface.area().into(),
                Term::Word("less"),
                ask.edge.into(),
                Term::Word("at its edges"),
            ],
            square_metres(field.iter().map(Region::doubled_area).sum::<i128>() as f64 / 2e18),
            Cite::computed("the outline as measured, moved in"),
        ),
        Step::of(
            "Pieces, course by course",
            vec![
                count(figure.whole).into(),
                Term::Word("whole +"),
                count(figure.pieces.len() - figure.whole).into(),
                Term::Word("cut"),
            ],
            count(figure.pieces.len()),
            Cite::computed("each sheet less what lies outside"),
        ),
        Step::of(
            "Sheets for the pieces that are cut",
            vec![
                count(figure.pieces.len() - figure.whole).into(),
                Term::Word("pieces, at least"),
                count(figure.at_least - figure.whole.min(figure.at_least)).into(),
            ],
            count(figure.plan.sheets.len()),
            Cite::computed(
                "boxes round the pieces, cut from edge to edge; the bound by areas and by pairs",
            ),
        ),
        Step::of(
            "Sheets to have",
            vec![
                count(figure.taken).into(),
                Term::Word("+"),
                count(spoiled).into(),
                Term::Word("spoiled"),
            ],
            count(figure.to_buy),
            Cite::practice("the allowance as chosen"),
        ),
    ];
    working.push(screw_step(ask, figure));
    working.push(Step::of(
        "Joints between pieces",
        Vec::new(),
        figure.joints,
        Cite::computed("the middle of every gap, within the surface"),
    ));
    if let Some((from, to)) = figure.weight {
        let gives = if from == to {
            Amount::Mass(from)
        } else {
            Amount::range(Amount::Mass(from), Amount::Mass(to))
        };
        let cite = match ask.weight {
            Some(_) => Cite::practice("the weight on the label, as entered"),
            None => weights(ask.board).1,
        };
        working.push(Step::of("A sheet weighs", Vec::new(), gives, cite));
    }
    figure.account = Account {
        working,
        findings: findings(ask, figure),
        cautions: cautions_of(ask, figure),
        needs: needs(ask, figure),
    };
}

fn screw_step(ask: &Ask, figure: &Figure) -> Step {
    let cite = match ask.board {
        Board::Cement => book::CEMENT_SCREWS.cite,
        Board::Gypsum if ask.on == Surface::Ceiling => gypsum::CEILING_SCREWS.cite,
        Board::Gypsum => gypsum::WALL_SCREWS.cite,
        Board::Plywood => Cite::practice("6 in along the edges, 8 in inside, as chosen"),
    };
    Step::of(
        "Screws",
        vec![
            ask.screws.0.into(),
            Term::Word("along edges,"),
            ask.screws.1.into(),
            Term::Word("inside,"),
            edge(ask).into(),
            Term::Word("from the edge"),
        ],
        Amount::Count(figure.screws),
        cite,
    )
}

fn cautions_of(ask: &Ask, figure: &Figure) -> Vec<&'static cautions::Caution> {
    let mut all = Vec::new();
    let limit = pounds(book::LIFT_POUNDS.value);
    if figure.weight.is_some_and(|(_, most)| most > limit) {
        all.push(&cautions::HEAVY_BOARD);
    }
    if ask.board == Board::Cement {
        all.push(&cautions::BOARD_SILICA);
    }
    match ask.on {
        Surface::Floor => all.push(&cautions::OLD_FLOORING),
        Surface::Wall | Surface::Ceiling => {
            all.push(&cautions::BOARD_SCREWS);
            all.push(&cautions::WALL_ASBESTOS);
        }
    }
    all
}

fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let need = |material, amount: Amount, why| Need {
        material,
        amount,
        why: Phrase::plain(why),
    };
    let mut all = vec![need(
        Material::Sheet {
            board: ask.board,
            long: ask.sheet.0,
            short: ask.sheet.1,
            thickness: ask.thickness,
        },
        Amount::Count(figure.to_buy as i64),
        "sheets, off-cuts used again where that is chosen",
    )];
    let screws = Amount::Count(figure.screws);
    let length = gypsum::screw_to_buy(ask.thickness).unwrap_or(ask.thickness * 3);
    all.push(match ask.board {
        Board::Gypsum => need(Material::Screws { length }, screws, "hanging the sheets"),
        Board::Cement | Board::Plywood => need(
            Material::SheetScrews {
                board: ask.board,
                length,
            },
            screws,
            "fastening the sheets",
        ),
    });
    if figure.joints.is_positive() {
        let joints = Amount::Length(figure.joints);
        match ask.board {
            Board::Gypsum => all.push(need(Material::JointTape, joints, "joints between sheets")),
            Board::Cement => all.push(need(Material::MeshTape, joints, "joints between sheets")),
            Board::Plywood => {}
        }
    }
    all
}
