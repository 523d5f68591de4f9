//! What the rules say of a layout: joint, offset, cuts, lippage, flatness, movement.

use super::{Ask, Edge, Figure, Pattern, Surface};
use crate::handbook::{Cite, mortar as shower, tile as book};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Finding, Weight};

fn finding(weight: Weight, says: Phrase, rule: Cite) -> Finding {
    Finding { weight, says, rule }
}

/// The least joint that the rules allow, and the rule that governs.
///
/// The widest of: 1/16 in; three times what tiles differ by; for long tiles in bond 1/8 in (rectified) or 3/16 in, and
/// the bow of an edge.
///
/// # Source
/// ANSI A108.02, as quoted: see `handbook::tile`.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, least_joint}};
/// let mut ask = Ask::default();
/// ask.tile.spread = Some(Length::in_64(0, 4));
/// assert_eq!(least_joint(&ask).0, Length::in_64(0, 12));
/// ```
#[must_use]
pub fn least_joint(ask: &Ask) -> (Length, Cite) {
    let mut least = (book::LEAST_JOINT.value, book::LEAST_JOINT.cite);
    let mut at_least = |length: Length, cite: Cite| {
        if length > least.0 {
            least = (length, cite);
        }
    };
    if let Some(spread) = ask.tile.spread {
        at_least(spread * book::SPREAD_TIMES.value, book::SPREAD_TIMES.cite);
    }
    let long = ask.tile.long.max(ask.tile.short) > book::LONG_SIDE.value;
    if long && matches!(ask.pattern, Pattern::Bond { .. } | Pattern::Planks { .. }) {
        let rule = match ask.tile.edge {
            Edge::Rectified => &book::BOND_RECTIFIED,
            Edge::Calibrated | Edge::Unknown => &book::BOND_CALIBRATED,
        };
        at_least(rule.value + ask.tile.warp.unwrap_or_default(), rule.cite);
    }
    least
}

/// The most that one tile may stand above the next: the rule's figure and the tile's own warp.
///
/// # Source
/// ANSI A108.02, as quoted: see `handbook::tile`.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, lippage}};
/// let mut ask = Ask::default();
/// ask.tile.warp = Some(Length::in_64(0, 2));
/// assert_eq!(lippage(&ask).0, Length::in_64(0, 4));
/// ```
#[must_use]
pub fn lippage(ask: &Ask) -> (Length, Cite) {
    let rule = if ask.joint < book::LIPPAGE_JOINT {
        &book::LIPPAGE_NARROW
    } else {
        &book::LIPPAGE_WIDE
    };
    (rule.value + ask.tile.warp.unwrap_or_default(), rule.cite)
}

/// Everything that the rules say, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut all = Vec::new();
    let (least, rule) = least_joint(ask);
    if ask.joint < least {
        all.push(finding(
            Weight::Caution,
            Phrase::with(
                "A joint of {0} is under the {1} that this tile and pattern want.",
                [ask.joint.into(), least.into()],
            ),
            rule,
        ));
    }
    all.extend(offset(ask));
    all.extend(cuts(ask, figure));
    all.extend(movement(ask, figure));
    all.extend(by_a_hair(figure));
    all.extend(super::traded::traded(ask, figure));
    all.extend(parts(ask, figure));
    all.extend(to_the_drain(ask));
    let (most, rule) = lippage(ask);
    all.push(finding(
        Weight::Note,
        Phrase::with(
            "One tile may stand at most {0} above the next, its own warp with it.",
            [most.into()],
        ),
        rule,
    ));
    all.push(flatness(ask));
    if ask.on == Surface::Floor {
        all.push(finding(
            Weight::Note,
            "A floor under tile bends no more than its span over 360; stone wants a stiffer one. Ask who knows the joists before you load an old floor.".into(),
            book::DEFLECTION.cite,
        ));
    }
    all.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    all
}

fn offset(ask: &Ask) -> Option<Finding> {
    let Pattern::Bond { over, of } = ask.pattern else {
        return None;
    };
    let share = f64::from(over % of.max(1)) / f64::from(of.max(1));
    let share = share.min(1.0 - share);
    let long = ask.tile.long > book::LONG_SIDE.value;
    // A third is 33 %.
    (long && share > book::MOST_OFFSET.value + 0.005).then(|| {
        finding(
            Weight::Caution,
            Phrase::with(
                "Rows are shifted by {0} of a tile longer than {1}: its bow then shows at every joint. A third is the most without an approved mock-up.",
                [Amount::Share(share), book::LONG_SIDE.value.into()],
            ),
            book::MOST_OFFSET.cite,
        )
    })
}

fn cuts(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut all = Vec::new();
    // Small tiles of mosaic are nipped, not sawn.
    let thin = figure
        .cuts
        .iter()
        .filter(|_| ask.sheet.is_none())
        .filter(|cut| cut.thin < book::TOO_THIN.value)
        .map(|cut| cut.pieces.len())
        .sum::<usize>();
    if thin > 0 {
        all.push(finding(
            Weight::Caution,
            Phrase::with(
                "{0} pieces are thinner than {1}: they break as they are cut. Slide the start, or let the edge gap or the joint take them up.",
                [Amount::Count(thin as i64), book::TOO_THIN.value.into()],
            ),
            book::TOO_THIN.cite,
        ));
    }
    if !figure.small.is_empty()
        && let Some(narrowest) = figure.narrowest
    {
        let by_hand = figure.tried == 0;
        let text = if by_hand {
            "{0} pieces are under half a tile; the thinnest is {1}. Best balance looks for a start without them."
        } else {
            "{0} pieces are under half a tile; the thinnest is {1}. No start of this pattern does better on this outline."
        };
        all.push(finding(
            Weight::Note,
            Phrase::with(
                text,
                [Amount::Count(figure.small.len() as i64), narrowest.into()],
            ),
            book::LEAST_CUT.cite,
        ));
    }
    if ask.gap < book::EDGE_GAP.value {
        all.push(finding(
            Weight::Caution,
            Phrase::with(
                "Tile wants {0} open at every wall, curb and pipe; a base or sealant hides it.",
                [book::EDGE_GAP.value.into()],
            ),
            book::EDGE_GAP.cite,
        ));
    }
    all
}

/// Pieces that a hair more or less would add or take: a strip that thin, or a tile that lacks one.
fn by_a_hair(figure: &Figure) -> Option<Finding> {
    let hair = Length::SIXTY_FOURTH;
    let thin = figure.cuts.iter().filter(|cut| cut.thin < hair);
    let thin: usize = thin.map(|cut| cut.pieces.len()).sum();
    let lacks = |laid: &&super::Laid| {
        let points = laid.tile.points();
        let whole = crate::geometry::Polygon {
            points: points.to_vec(),
        };
        let strip = points[0].distance(points[1]).as_nm() as f64 * hair.as_nm() as f64;
        let missing = whole.doubled_area().abs() - laid.doubled_area();
        laid.piece != super::Piece::Whole && (missing as f64) < 2.0 * strip
    };
    let nearly = figure.layout.tiles.iter().filter(lacks).count();
    (thin + nearly > 0).then(|| {
        finding(
            Weight::Caution,
            Phrase::with(
                "By a hair: {0} pieces are thinner than {1}, and {2} tiles lack less than that. A wall or a start that much off changes the count; slide the start, or measure again.",
                [
                    Amount::Count(thin as i64),
                    hair.into(),
                    Amount::Count(nearly as i64),
                ],
            ),
            Cite::computed("each piece, from 1 mm² up"),
        )
    })
}

/// A surface that is cut apart, and parts of it that take no tile.
fn parts(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let laid = figure.layout.parts.len();
    let left = super::lay::open(ask).into_iter();
    let narrow = left.filter(|part| part.inset(ask.gap).is_empty()).count();
    let says = [
        (laid > 1).then_some((
            Weight::Note,
            "The surface falls into {0} parts. One pattern runs through all of them: carry the chalk lines across.",
            laid,
        )),
        (narrow > 0).then_some((
            Weight::Caution,
            "{0} of the parts that are left beside what stands in the way are too narrow for tile once the gap is taken.",
            narrow,
        )),
    ];
    let cite = Cite::computed("the outline less what stands in the way and the gap");
    let found = says.into_iter().flatten().map(|(weight, text, count)| {
        finding(
            weight,
            Phrase::with(text, [Amount::Count(count as i64)]),
            cite,
        )
    });
    found.collect()
}

/// A round thing in a floor may be a drain, and a floor falls to its drain.
fn to_the_drain(ask: &Ask) -> Option<Finding> {
    let round = |thing: &super::Thing| matches!(thing.shape, super::ThingShape::Round { .. });
    (ask.on == Surface::Floor && ask.things.iter().any(round)).then(|| {
        let (least, most) = shower::SHOWER_SLOPE.value;
        finding(
            Weight::Note,
            Phrase::with(
                "If a round one is a shower's drain, the floor falls to it by {0} to {1} on every run: tile that is small enough follows it.",
                [Amount::Slope(least), Amount::Slope(most)],
            ),
            shower::SHOWER_SLOPE.cite,
        )
    })
}

fn movement(ask: &Ask, figure: &Figure) -> Option<Finding> {
    let (up, across) = figure.movement;
    (up + across > 0).then(|| {
        finding(
            Weight::Caution,
            Phrase::with(
                "The field is long: it wants {0} soft joints across its width and {1} along it, beside those at its edges.",
                [Amount::Count(up.into()), Amount::Count(across.into())],
            ),
            match ask.run {
                super::Run::Dry => book::MOVEMENT_DRY.cite,
                super::Run::SunOrWet => book::MOVEMENT_SUN.cite,
            },
        )
    })
}

fn flatness(ask: &Ask) -> Finding {
    if ask.tile.long.max(ask.tile.short) < book::LONG_SIDE.value {
        let (ten, one) = book::FLAT.value;
        finding(
            Weight::Note,
            Phrase::with(
                "The surface has to be flat to {0} in 10 ft and {1} in 1 ft before tile of this size goes on.",
                [ten.into(), one.into()],
            ),
            book::FLAT.cite,
        )
    } else {
        let (ten, two) = book::FLAT_LONG.value;
        finding(
            Weight::Note,
            Phrase::with(
                "The surface has to be flat to {0} in 10 ft and {1} in 2 ft before tile of this size goes on.",
                [ten.into(), two.into()],
            ),
            book::FLAT_LONG.cite,
        )
    }
}
