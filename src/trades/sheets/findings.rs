//! What the rules say of a layout of sheets.

use super::ask::{Ask, Surface};
use super::figure::Figure;
use crate::handbook::{Cite, sheets as book};
use crate::measure::quantity::pounds;
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Board, Finding, Weight};

fn finding(weight: Weight, text: &'static str, amounts: Vec<Amount>, rule: Cite) -> Finding {
    Finding {
        weight,
        says: Phrase::with(text, amounts),
        rule,
    }
}

fn stagger_rule(ask: &Ask) -> Cite {
    match ask.board {
        Board::Cement => book::CEMENT_STAGGER,
        Board::Gypsum => book::GYPSUM_STAGGER,
        Board::Plywood => book::STAGGER.cite,
    }
}

/// Everything that the rules say, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let count = |n: usize| Amount::Count(n as i64);
    let mut all = Vec::new();
    let least = book::LEAST_STRIP.value;
    let narrow = figure.pieces.iter().filter(|piece| piece.thin < least);
    if let (n @ 1.., Some((number, thin))) = (narrow.count(), figure.narrowest) {
        let (text, amounts): (_, Vec<Amount>) = if n == 1 {
            (
                "No. {0} is {1} wide at its narrowest, less than {2}. Begin at another corner, turn the sheets, or take another size.",
                vec![count(number), thin.into(), least.into()],
            )
        } else {
            (
                "{0} pieces are narrower than {1}; the narrowest, no. {2}, is {3}. Begin at another corner, turn the sheets, or take another size.",
                vec![count(n), least.into(), count(number), thin.into()],
            )
        };
        all.push(finding(
            Weight::Caution,
            text,
            amounts,
            book::LEAST_STRIP.cite,
        ));
    }
    if !figure.crosses.is_empty() {
        all.push(finding(
            Weight::Caution,
            "Four corners meet in {0} places. Give the ends more room between courses, or turn the sheets.",
            vec![count(figure.crosses.len())],
            stagger_rule(ask),
        ));
    }
    if let Some((n, nearest)) = figure.near
        && figure.crosses.len() < n
    {
        all.push(finding(
            Weight::Caution,
            "{0} ends are nearer than {1} to an end of the next course; the nearest {2}.",
            vec![count(n), ask.stagger.into(), nearest.into()],
            stagger_rule(ask),
        ));
    }
    if !figure.off_framing.is_empty() {
        all.push(finding(
            Weight::Caution,
            "{0} joints land on no stud or joist: put blocking behind them, or cut the sheets back to the one before.",
            vec![count(figure.off_framing.len())],
            book::JOINT_ON_FRAMING,
        ));
    }
    if !figure.at_openings.is_empty() {
        all.push(finding(
            Weight::Caution,
            "Joints run into {0} corners of openings, where board cracks first. Shift the sheets so that a whole one goes round the corner.",
            vec![count(figure.at_openings.len())],
            book::JOINT_AT_OPENING,
        ));
    }
    all.extend(weight(figure));
    all.extend(spacing(ask));
    if ask.board == Board::Cement && ask.gap < book::CEMENT_GAP.value {
        all.push(finding(
            Weight::Caution,
            "Cement board wants {0} between sheets, filled with mortar as they are taped.",
            vec![book::CEMENT_GAP.value.into()],
            book::CEMENT_GAP.cite,
        ));
    }
    if ask.on != Surface::Floor && ask.framing.is_none() {
        all.push(finding(
            Weight::Note,
            "No studs are known here: joints fall where the sheets end. Find the studs, and the joints land on them.",
            Vec::new(),
            book::JOINT_ON_FRAMING,
        ));
    }
    if ask.on == Surface::Floor {
        all.push(finding(
            Weight::Note,
            "Keep joints off those of the floor below, and screws out of its joists: the sheets are fastened to the deck alone. Board adds no stiffness.",
            Vec::new(),
            book::CEMENT_STAGGER,
        ));
    }
    all.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    all
}

fn weight(figure: &Figure) -> Option<Finding> {
    let limit = pounds(book::LIFT_POUNDS.value);
    let (from, to) = figure.weight?;
    (to > limit).then(|| {
        let weighs = if from == to {
            Amount::Mass(from)
        } else {
            Amount::range(Amount::Mass(from), Amount::Mass(to))
        };
        finding(
            Weight::Caution,
            "A sheet weighs {0}, more than the {1} that one person should lift at best: two carry it.",
            vec![weighs, Amount::Mass(limit)],
            book::LIFT_POUNDS.cite,
        )
    })
}

/// Screws farther apart than the rules let them be.
fn spacing(ask: &Ask) -> Option<Finding> {
    use crate::handbook::gypsum;
    let rule = match (ask.board, ask.on) {
        (Board::Cement, _) => &book::CEMENT_SCREWS,
        (Board::Gypsum, Surface::Ceiling) => &gypsum::CEILING_SCREWS,
        (Board::Gypsum, _) if close(ask) => &gypsum::WALL_SCREWS_CLOSE_STUDS,
        (Board::Gypsum, _) => &gypsum::WALL_SCREWS,
        (Board::Plywood, _) => return None,
    };
    let widest = ask.screws.0.max(ask.screws.1);
    (widest > rule.value).then(|| {
        finding(
            Weight::Caution,
            "Screws {0} apart are farther than the {1} that this board wants.",
            vec![widest.into(), rule.value.into()],
            rule.cite,
        )
    })
}

/// Whether its studs stand 16 in apart or closer.
fn close(ask: &Ask) -> bool {
    ask.framing.as_ref().is_some_and(|framing| {
        let centres = framing.studs.centres(Length::feet(60));
        centres.len() > 1
            && (centres.windows(2)).all(|pair| pair[1] - pair[0] <= Length::inches(16))
    })
}
