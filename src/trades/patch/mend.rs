//! The figure put together, a method at a time.

use super::cut_back::{self, Cut, MARGIN};
use super::decide::{self, STRIP};
use super::place::Place;
use super::{Ask, Field, Figure, Inspection, Look, Method, Problem, Rect, Strip, StripKind};
use super::{adhesive_patch, finish, screws};
use crate::handbook::{Cite, cautions, gypsum};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Finding, Material, Need, Step, Term, Weight};

/// The whole answer for a hole in its place.
pub(super) fn mend(ask: &Ask, place: &Place) -> Result<Figure, Problem> {
    let decision = decide::decide(ask, place);
    let mut figure = Figure {
        method: decision.method,
        why: decision.why,
        also_possible: decision.also_possible,
        missing: Vec::new(),
        from_corner: place.from_corner,
        from_floor: place.from_floor,
        damage: place.hole,
        opening: None,
        piece: None,
        patch_side: None,
        studs_used: Vec::new(),
        studs_crossed: Vec::new(),
        bearing: None,
        backing: Vec::new(),
        screws: Vec::new(),
        screw_length: None,
        tape: Length::ZERO,
        compound: None,
        coats: 0,
        waits: Vec::new(),
        inspection: None,
        order: Vec::new(),
        account: Account {
            findings: decision.findings,
            ..Account::default()
        },
    };
    match figure.method {
        Method::Fill => {}
        Method::AdhesivePatch => adhesive(&mut figure),
        Method::BackedPatch => backed(&mut figure, ask, place)?,
        Method::CutBack => cut_to_studs(&mut figure, ask, place)?,
    }
    about_the_wall(&mut figure, ask, place);
    finish::finish(&mut figure, ask);
    figure.order = super::order::order(&figure);
    figure
        .account
        .findings
        .sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    Ok(figure)
}

fn note(figure: &mut Figure, weight: Weight, says: Phrase, rule: Cite) {
    figure.account.findings.push(Finding { weight, says, rule });
}

fn adhesive(figure: &mut Figure) {
    let (width, height) = (figure.damage.width(), figure.damage.height());
    let Some(side) = adhesive_patch(width, height) else {
        return;
    };
    figure.patch_side = Some(side);
    figure.account.working.push(Step {
        what: "Self-adhesive patch, the next side sold".into(),
        sum: vec![
            width.max(height).into(),
            Term::Word("+ 2 ×"),
            gypsum::PATCH_OVERLAP.value.into(),
        ],
        gives: side.into(),
        cite: gypsum::PATCH_OVERLAP.cite,
    });
    figure.account.needs.push(Need {
        material: Material::AdhesivePatch { side },
        amount: Amount::Count(1),
        why: "Over the hole".into(),
    });
}

/// A piece on strips: the hole squared up, a strip behind its left and its right edge.
fn backed(figure: &mut Figure, ask: &Ask, place: &Place) -> Result<(), Problem> {
    let opening = place.hole;
    let piece = piece(figure, ask, &opening)?;
    let longer = gypsum::STRIP_LONGER.value.half();
    let half = STRIP.1.half();
    let mut centres = vec![opening.left, opening.right];
    if opening.width() > gypsum::WALL_SCREWS_CLOSE_STUDS.value {
        centres.insert(1, opening.middle().0);
    }
    for x in &centres {
        let at = Rect {
            left: *x - half,
            right: *x + half,
            bottom: opening.bottom - longer,
            top: opening.top + longer,
        };
        figure.backing.push(Strip {
            kind: StripKind::Backing,
            at,
            length: at.height(),
            upright: true,
            lumber: STRIP,
        });
    }
    figure.account.working.push(Step {
        what: "Backing strip, longer than the hole".into(),
        sum: vec![
            opening.height().into(),
            Term::Word("+"),
            gypsum::STRIP_LONGER.value.into(),
        ],
        gives: (opening.height() + gypsum::STRIP_LONGER.value).into(),
        cite: gypsum::STRIP_LONGER.cite,
    });
    let inset = ask.gap + gypsum::SCREW_EDGE.value;
    let mut columns = vec![opening.left + inset, opening.right - inset];
    columns.extend(centres.get(1).filter(|_| centres.len() == 3));
    fasten(figure, ask, &piece, &columns, gypsum::GUIDE_SCREWS.value);
    figure.inspection = Some(inspect(&opening));
    if place.studs.is_empty() {
        if ask.studs.is_some() {
            figure.missing.push(Field::FromLeft);
        }
        note(
            figure,
            Weight::Caution,
            if ask.studs.is_some() {
                "Studs are known, but not where the hole is between them: measure its distance from the left corner or from a stud. Till then look first that none stands behind it."
            } else {
                "No stud is known here: look first that none stands behind the hole or its strips."
            }
            .into(),
            Cite::practice("look before cutting"),
        );
    }
    Ok(())
}

fn cut_to_studs(figure: &mut Figure, ask: &Ask, place: &Place) -> Result<(), Problem> {
    if place.studs.is_empty() {
        figure.inspection = Some(inspect(&place.hole));
        if !place.from_corner {
            figure.missing.push(Field::FromLeft);
        }
        if ask.studs.is_none() || place.from_corner {
            figure.missing.push(Field::FirstStud);
        }
        note(
            figure,
            Weight::Caution,
            "The saw lines need the first stud, the stud spacing and the hole's distance from the left corner. Start with the small look into the wall.".into(),
            Cite::practice("start small"),
        );
        return Ok(());
    }
    let cut = cut_back::cut(place, ask.gap)?;
    figure.damage = cut.damage;
    figure.studs_used.clone_from(&cut.used);
    figure.studs_crossed.clone_from(&cut.crossed);
    figure.bearing = Some(cut.bearing);
    figure.backing.clone_from(&cut.backing);
    saw_line_steps(figure, &cut);
    let piece = piece(figure, ask, &cut.opening)?;
    figure.account.working.push(Step {
        what: "Wood under the piece itself at its thinner edge, after the gap".into(),
        sum: vec![
            cut.bearing.0.min(cut.bearing.1).into(),
            Term::Word("−"),
            ask.gap.into(),
        ],
        gives: (cut.bearing.0.min(cut.bearing.1) - ask.gap)
            .max(Length::ZERO)
            .into(),
        cite: Cite::computed("bearing less the gap"),
    });
    let mut columns = vec![cut.edges.0, cut.edges.1];
    columns.extend(&cut.crossed);
    let close = place
        .widest_step()
        .is_some_and(|step| step <= gypsum::WALL_SCREWS_CLOSE_STUDS.value);
    let most = if close {
        gypsum::WALL_SCREWS_CLOSE_STUDS.value
    } else {
        gypsum::WALL_SCREWS.value
    };
    fasten(figure, ask, &piece, &columns, most);
    figure.inspection = Some(inspect(&cut.opening));
    cut_remarks(figure, ask, &cut);
    Ok(())
}

fn saw_line_steps(figure: &mut Figure, cut: &Cut) {
    let (opening, damage) = (&cut.opening, &cut.damage);
    let steps = [
        (
            "Saw line at the left: the nearest stud centre, opening or corner",
            vec![damage.left.into(), Term::Word("→")],
            opening.left,
            Cite::practice("cut to stud centres"),
        ),
        (
            "Saw line at the right: the nearest stud centre, opening or corner",
            vec![damage.right.into(), Term::Word("→")],
            opening.right,
            Cite::practice("cut to stud centres"),
        ),
        (
            "Lower saw line, past the damage",
            vec![damage.bottom.into(), Term::Word("−"), MARGIN.into()],
            opening.bottom,
            Cite::practice("1 in past the damage, less at floor or opening"),
        ),
        (
            "Upper saw line, past the damage",
            vec![damage.top.into(), Term::Word("+"), MARGIN.into()],
            opening.top,
            Cite::practice("1 in past the damage, less at ceiling or opening"),
        ),
        (
            "Wood behind the left edge",
            vec![],
            cut.bearing.0,
            gypsum::BEARING.cite,
        ),
        (
            "Wood behind the right edge",
            vec![],
            cut.bearing.1,
            gypsum::BEARING.cite,
        ),
    ];
    figure
        .account
        .working
        .extend(steps.map(|(what, sum, gives, cite)| Step {
            what: what.into(),
            sum,
            gives: gives.into(),
            cite,
        }));
}

fn cut_remarks(figure: &mut Figure, ask: &Ask, cut: &Cut) {
    if cut.holes > 1 {
        note(
            figure,
            Weight::Note,
            Phrase::with(
                "One piece covers {0} holes: they lie within the same saw lines.",
                [Amount::Count(cut.holes as i64)],
            ),
            Cite::practice("one piece over holes in one bay"),
        );
    }
    if cut
        .backing
        .iter()
        .any(|strip| strip.kind == StripKind::Cleat)
    {
        note(
            figure,
            Weight::Caution,
            "An edge stops short of a stud centre, at a corner or an opening: fix a cleat to the framing there before the piece goes in.".into(),
            Cite::practice("cleat where no stud carries the edge"),
        );
    }
    let least = cut.bearing.0.min(cut.bearing.1);
    if least.is_positive() && least < gypsum::BEARING.value {
        note(
            figure,
            Weight::Note,
            Phrase::with(
                "One edge has only {0} of wood behind it instead of {1}.",
                [least.into(), gypsum::BEARING.value.into()],
            ),
            gypsum::WOOD_AT_A_JOINT.cite,
        );
    }
    if !figure.from_floor && !ask.wall.obstacles.is_empty() {
        figure.missing.push(Field::AboveFloor);
        note(
            figure,
            Weight::Caution,
            "The hole's height above the floor is not known, so doors and windows were not looked at. Measure it before you cut.".into(),
            Cite::practice("keep clear of openings"),
        );
    }
    if ask.gap > gypsum::WIDEST_GAP.value {
        note(
            figure,
            Weight::Caution,
            Phrase::with(
                "A gap of {0} is wider than the {1} allowed between boards. Cut the piece larger.",
                [ask.gap.into(), gypsum::WIDEST_GAP.value.into()],
            ),
            gypsum::WIDEST_GAP.cite,
        );
    }
    if figure
        .also_possible
        .first()
        .is_some_and(|m| *m != Method::CutBack)
    {
        note(
            figure,
            Weight::Note,
            "A lighter method would do here; cutting back opens more wall than the hole needs."
                .into(),
            Cite::practice("the lightest method that works"),
        );
    }
}

/// The piece: the opening less the gap on every side.
fn piece(figure: &mut Figure, ask: &Ask, opening: &Rect) -> Result<Rect, Problem> {
    let piece = opening.inset(ask.gap);
    let side = opening.width().min(opening.height());
    let least = gypsum::SCREW_EDGE.value * 2;
    if piece.width() < least || piece.height() < least {
        return Err(Problem::GapLeavesNoPiece {
            gap: ask.gap,
            opening: side,
        });
    }
    let size = (piece.width(), piece.height());
    for (what, whole, gives) in [
        ("Piece, across", opening.width(), size.0),
        ("Piece, up", opening.height(), size.1),
    ] {
        figure.account.working.push(Step {
            what: what.into(),
            sum: vec![whole.into(), Term::Word("− 2 ×"), ask.gap.into()],
            gives: gives.into(),
            cite: Cite::computed("opening less the gap on both sides"),
        });
    }
    figure.account.needs.push(Need {
        material: Material::Board {
            thickness: ask.board,
        },
        amount: Amount::Size(size.0, size.1),
        why: "The piece that closes the opening".into(),
    });
    figure.opening = Some(*opening);
    figure.piece = Some(size);
    Ok(piece)
}

/// Screws, their length, and the wood they go into.
fn fasten(figure: &mut Figure, ask: &Ask, piece: &Rect, columns: &[Length], most: Length) {
    let spacing = ask.screw_spacing.min(most);
    if ask.screw_spacing > most {
        note(
            figure,
            Weight::Caution,
            Phrase::with(
                "Screws {0} apart are too far for these studs; they are set out at {1}.",
                [ask.screw_spacing.into(), most.into()],
            ),
            gypsum::WALL_SCREWS.cite,
        );
    } else if spacing > gypsum::GUIDE_SCREWS.value {
        note(
            figure,
            Weight::Note,
            Phrase::with(
                "The sources differ: screws {0} apart are allowed on studs at 16 in, one guide wants {1} everywhere.",
                [spacing.into(), gypsum::GUIDE_SCREWS.value.into()],
            ),
            gypsum::GUIDE_SCREWS.cite,
        );
    }
    figure.screws = screws::in_piece(piece, columns, &figure.backing, spacing);
    figure.account.working.push(Step {
        what: "Screws on each support".into(),
        sum: vec![
            Term::Word("("),
            piece.height().into(),
            Term::Word("− 2 ×"),
            gypsum::SCREW_EDGE.value.into(),
            Term::Word(") ÷"),
            spacing.into(),
            Term::Word("up, + 1"),
        ],
        gives: Amount::Count(screws::screws_on_a_support(piece.height(), spacing)),
        cite: gypsum::SCREW_EDGE.cite,
    });
    figure.screw_length = gypsum::screw_to_buy(ask.board);
    if let Some(length) = figure.screw_length {
        figure.account.working.push(Step {
            what: "Screw, the next length sold".into(),
            sum: vec![
                ask.board.into(),
                Term::Word("+"),
                gypsum::SCREW_PENETRATION.value.into(),
            ],
            gives: length.into(),
            cite: gypsum::SCREW_PENETRATION.cite,
        });
        figure.account.needs.push(Need {
            material: Material::Screws { length },
            amount: Amount::Count(figure.screws.len() as i64),
            why: "The piece and what is behind it".into(),
        });
    }
    for strip in &figure.backing {
        figure.account.needs.push(Need {
            material: Material::Lumber {
                thickness: strip.lumber.0,
                width: strip.lumber.1,
            },
            amount: strip.length.into(),
            why: match strip.kind {
                StripKind::Backing => "Backing strip",
                StripKind::Blocking => "Blocking between studs",
                StripKind::Cleat => "Cleat along an edge",
            }
            .into(),
        });
    }
}

/// Small before large: a finger, then a hand, then the opening; never larger than the opening.
fn inspect(opening: &Rect) -> Inspection {
    let widest = opening.width().min(opening.height());
    let at = opening.middle();
    let looks = [
        (
            Length::inches(1),
            "Open a hole for a finger and a light; feel and look for wires, pipes and studs.",
        ),
        (
            Length::inches(4),
            "Nothing in the way: open it for a hand and feel to both studs.",
        ),
    ];
    let looks = looks.map(|(across, says)| Look {
        across: across.min(widest),
        at,
        says: says.into(),
    });
    let mut looks = looks.to_vec();
    looks.dedup_by_key(|look| look.across);
    Inspection {
        looks,
        cite: Cite::practice("look through a small hole before cutting a large one"),
    }
}

/// What the wall itself asks for, whatever the method.
fn about_the_wall(figure: &mut Figure, ask: &Ask, place: &Place) {
    if ask.fire_rated {
        note(
            figure,
            Weight::Stop,
            "This wall is fire-rated: mend it as a tested repair of its assembly says, with the same board.".into(),
            Cite::memory(&crate::handbook::documents::GA_225, "repairs"),
        );
        figure.account.cautions.push(&cautions::WALL_FIRE_RATED);
    }
    if matches!(figure.method, Method::BackedPatch | Method::CutBack) {
        figure.account.cautions.extend([
            &cautions::WALL_POWER,
            &cautions::WALL_PIPES,
            &cautions::WALL_BEARING,
        ]);
    }
    let Some(step) = place
        .widest_step()
        .filter(|_| figure.method == Method::CutBack)
    else {
        return;
    };
    let half_inch = Length::in_64(0, 32);
    let most = if ask.board < half_inch {
        gypsum::THREE_EIGHTHS_ON
    } else {
        gypsum::HALF_INCH_ON
    };
    if step > most.value {
        note(
            figure,
            Weight::Caution,
            Phrase::with(
                "Studs {0} apart are too far for board of {1}; it spans at most {2}. Add a stud, or thicker board up to 24 in.",
                [step.into(), ask.board.into(), most.value.into()],
            ),
            most.cite,
        );
    } else if step > gypsum::THREE_EIGHTHS_ON.value && ask.board == half_inch {
        note(
            figure,
            Weight::Note,
            Phrase::with(
                "Board of {0} is allowed on studs {1} apart but is springy; 5/8 in is stiffer.",
                [ask.board.into(), step.into()],
            ),
            gypsum::HALF_INCH_ON.cite,
        );
    }
}
