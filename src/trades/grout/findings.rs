//! What deserves a remark, and what can hurt.

use super::{Ask, Figure, Meeting};
use crate::handbook::{
    Cite,
    cautions::{self, Caution},
    grout as book,
};
use crate::measure::quantity::pounds;
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Finding, Grout, Weight};

/// Everything remarked, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut found: Vec<Finding> = [
        too_narrow(ask),
        wrong_kind(ask, figure.kind),
        scratched(ask, figure.kind),
        either(ask),
        coarse(ask),
        label_differs(ask, figure),
        no_water(figure),
        unsealed(ask),
    ]
    .into_iter()
    .flatten()
    .collect();
    for seam in &ask.seams {
        for remark in [sealed(seam.at), seam_depth(seam.width, seam.depth)]
            .into_iter()
            .flatten()
        {
            // Said once, however many seams it is true of.
            if !found.contains(&remark) {
                found.push(remark);
            }
        }
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    found
}

fn finding(weight: Weight, says: Phrase, rule: Cite) -> Option<Finding> {
    Some(Finding { weight, says, rule })
}

fn too_narrow(ask: &Ask) -> Option<Finding> {
    let least = book::LEAST_JOINT;
    if ask.width >= least.value {
        return None;
    }
    finding(
        Weight::Stop,
        Phrase::with(
            "A joint of {0} is narrower than {1}, which no tile may go under; space the tile wider.",
            [ask.width, least.value].map(Amount::Length),
        ),
        least.cite,
    )
}

/// A kind of the person's own against the rule of the joint.
fn wrong_kind(ask: &Ask, kind: Grout) -> Option<Finding> {
    let either = book::SANDED_FROM.value;
    match kind {
        Grout::Unsanded if ask.width > either => finding(
            Weight::Caution,
            Phrase::with(
                "Unsanded grout is for joints up to {0}; this one is {1}. Take sanded.",
                [either, ask.width].map(Amount::Length),
            ),
            book::UNSANDED_TO.cite,
        ),
        Grout::Sanded | Grout::HeavySand if ask.width < either => finding(
            Weight::Caution,
            Phrase::with(
                "Sanded grout is for joints from {0}; this one is {1}. Take unsanded.",
                [either, ask.width].map(Amount::Length),
            ),
            book::SANDED_FROM.cite,
        ),
        Grout::Sanded if ask.width > book::HEAVY_SAND_OVER.value => finding(
            Weight::Caution,
            Phrase::with(
                "A joint of {0} takes a grout with heavier sand, as every one over {1} does.",
                [ask.width, book::HEAVY_SAND_OVER.value].map(Amount::Length),
            ),
            book::HEAVY_SAND_OVER.cite,
        ),
        _ => None,
    }
}

fn scratched(ask: &Ask, kind: Grout) -> Option<Finding> {
    if !ask.scratches || kind == Grout::Unsanded {
        return None;
    }
    finding(
        Weight::Caution,
        Phrase::plain(
            "Sand scratches a soft or polished face. Try this grout on a spare tile first, or set the tile with joints that unsanded grout fills.",
        ),
        Cite::practice("sand scratches a soft or polished face"),
    )
}

fn either(ask: &Ask) -> Option<Finding> {
    if ask.width != book::SANDED_FROM.value {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::with(
            "At exactly {0} both kinds are taken: sanded as a rule, unsanded where sand would scratch the face.",
            [Amount::Length(ask.width)],
        ),
        book::UNSANDED_TO.cite,
    )
}

fn coarse(ask: &Ask) -> Option<Finding> {
    let (from, to) = (book::COARSE_OVER.value, book::HEAVY_SAND_OVER.value);
    if ask.width <= from || ask.width > to {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::with(
            "The sources part here: one takes heavier sand over {0}, the tile council over {1}.",
            [from, to].map(Amount::Length),
        ),
        book::COARSE_OVER.cite,
    )
}

/// The bag's own coverage against the geometry of the joints.
fn label_differs(ask: &Ask, figure: &Figure) -> Option<Finding> {
    let label = ask.label.covers?;
    let per_area = figure.density * (figure.volume / ask.area);
    let made = figure.bag / per_area;
    let off = (label / made).value - 1.0;
    if !off.is_finite() || off.abs() <= book::COVERAGE_AGREES.value {
        return None;
    }
    let weight = if off > 0.0 {
        Weight::Caution
    } else {
        Weight::Note
    };
    finding(
        weight,
        Phrase::with(
            "The bag is said to cover {0}, but these joints come to {1} a bag. Look whether its figure is for this tile, joint and depth.",
            [label.into(), made.into()],
        ),
        book::COVERAGE_AGREES.cite,
    )
}

fn no_water(figure: &Figure) -> Option<Finding> {
    if figure.water.is_some() {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::plain(
            "How much water this grout takes stands on its bag alone; enter it before you mix.",
        ),
        book::WATER_FOR_25_POUNDS.cite,
    )
}

fn unsealed(ask: &Ask) -> Option<Finding> {
    if !ask.seams.is_empty() {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::plain(
            "Where wall meets wall, floor or tub the joint stays open and gets sealant, not grout; no such seam is entered.",
        ),
        book::PLANE_CHANGE,
    )
}

fn sealed(at: Meeting) -> Option<Finding> {
    let says = match at {
        Meeting::PlaneChange => {
            "Rake this change of plane clean and fill it with silicone or urethane sealant of ASTM C920; grout cracks there, and acrylic caulk will not do."
        }
        Meeting::Perimeter | Meeting::Movement => return None,
    };
    finding(Weight::Note, Phrase::plain(says), book::NO_ACRYLIC)
}

/// Sealant that is too thin or too deep for its width.
fn seam_depth(width: Length, depth: Length) -> Option<Finding> {
    let least = book::SEALANT_DEPTH.value;
    let most = width.half().max(least);
    if depth >= least && depth <= most {
        return None;
    }
    let says = if least == most {
        "Sealant {0} deep in a seam {1} wide: it should be {2} deep. Set the depth with a foam rod."
    } else {
        "Sealant {0} deep in a seam {1} wide: it should be {2} deep and no more than {3}. Set the depth with a foam rod."
    };
    finding(
        Weight::Caution,
        Phrase::with(says, [depth, width, least, most].map(Amount::Length)),
        book::SEALANT_DEPTH.cite,
    )
}

/// What can hurt.
pub(super) fn cautions(figure: &Figure) -> Vec<&'static Caution> {
    let heavy = figure.bag >= pounds(50.0);
    let all: [(bool, &'static Caution); 3] = [
        (true, &cautions::CEMENT_BURNS),
        (true, &cautions::SILICA),
        (heavy, &cautions::HEAVY_BAG),
    ];
    all.into_iter()
        .filter(|(says, _)| *says)
        .map(|(_, caution)| caution)
        .collect()
}
