//! What deserves a remark, and what can hurt.

use super::{Ask, Code, Figure, Size, Through, carries, least_fall, longest_arm, through};
use crate::handbook::{
    Cite,
    cautions::{self, Caution},
    drain as book, framing,
};
use crate::measure::{Amount, Length, Phrase, Rounding};
use crate::site::Fault;
use crate::trades::{Finding, Weight};

/// Everything remarked, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut found = Vec::new();
    fall(ask, figure, &mut found);
    bored(ask, figure, &mut found);
    arm(ask, figure, &mut found);
    size(ask, figure, &mut found);
    if figure.flange.is_some() {
        found.push(note(
            "The flange is measured from the finished wall. The water closet's own sheet goes before the usual 12 in, and no code has it.",
            [],
            book::FLANGE.cite,
        ));
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    found
}

fn say(weight: Weight, text: &'static str, amounts: impl Into<Vec<Amount>>, rule: Cite) -> Finding {
    Finding {
        weight,
        says: Phrase::with(text, amounts),
        rule,
    }
}

fn note(text: &'static str, amounts: impl Into<Vec<Amount>>, rule: Cite) -> Finding {
    say(Weight::Note, text, amounts, rule)
}

/// A limit as it is shown: never more than the rule.
fn down(limit: Length) -> Amount {
    limit
        .rounded(Length::in_64(0, 4), Rounding::FitInside)
        .into()
}

fn slope(fall: Length) -> Amount {
    Amount::Slope(fall.as_nm() as f64 / Length::feet(1).as_nm() as f64)
}

fn fall(ask: &Ask, figure: &Figure, found: &mut Vec<Finding>) {
    let (least, cite) = least_fall(ask.code, ask.size, ask.eighth_approved);
    if figure.fall < least {
        found.push(say(
            Weight::Stop,
            "A fall of {0} is less than the {1} of the code chosen. Lower the far end, or ask the building office.",
            [slope(figure.fall), slope(least)],
            cite,
        ));
    }
    if ask.size == Size::Three && matches!(ask.code, Code::Irc | Code::Ipc) {
        found.push(note(
            "For 3 in drains editions differ: most let 1/8 in a foot pass, a page on the newest residential code asks for 1/4. Ask which one your place has.",
            [],
            book::FALL_3_IN.cite,
        ));
    }
    if ask.code == Code::Unknown {
        found.push(note(
            "The code is not known, so the strictest figure of three model codes stands for each limit. Ask the building office which edition it has.",
            [],
            Cite::practice("the stricter figure where the code is not known"),
        ));
    }
    if figure.fall > Length::in_64(0, 32) {
        found.push(note(
            "No most is stated for the fall of a drain; circuit-vented branches stop at 1 in a foot, combined waste and vent at 1/2. Keep one even grade from end to end.",
            [],
            book::FALL_IRC.cite,
        ));
    }
}

fn bored(ask: &Ask, figure: &Figure, found: &mut Vec<Finding>) {
    let Some((member, _)) = through::members(ask) else {
        return;
    };
    let count = |fault: &dyn Fn(&Fault) -> bool| {
        let hit = figure
            .holes
            .iter()
            .filter(|hole| hole.faults.iter().any(fault));
        hit.count() as i64
    };
    if count(&|fault| *fault == Fault::AskMaker) > 0 {
        found.push(say(
            Weight::Stop,
            "Nothing is cut in an engineered joist or a truss but where its maker or an engineer says. Get the maker's chart of holes first.",
            [],
            member.cite(),
        ));
        return;
    }
    let large = count(&|fault| matches!(fault, Fault::TooLarge(_)));
    if let Some(most) = member.largest_hole().filter(|_| large > 0) {
        let text = if matches!(ask.through, Through::Joists { .. }) {
            "A hole of {0} is more than a third of a joist of {1}: at most {2}. Run along the joists, hang the pipe below them, or ask an engineer."
        } else {
            "A hole of {0} is more than a stud of {1} may have: at most {2}. Take a deeper wall, or ask an engineer."
        };
        found.push(say(
            Weight::Stop,
            text,
            [figure.hole.into(), member.depth().into(), down(most)],
            member.cite(),
        ));
    }
    let near = count(&|fault| matches!(fault, Fault::NearEdge(_)));
    if near > 0 {
        let edge = member.edge_rule();
        let text = if large > 0 || figure.reach.is_none() {
            "{0} of {1} holes leave less than {2} of wood beside them."
        } else {
            "{0} of {1} holes leave less than {2} of wood beside them. From this height the run stays inside as far as {3}: begin higher, shorten it, or run along the joists."
        };
        let all = figure.holes.len() as i64;
        let mut amounts = vec![Amount::Count(near), Amount::Count(all), edge.value.into()];
        amounts.extend(figure.reach.map(Amount::Length));
        found.push(say(Weight::Stop, text, amounts, edge.cite));
    }
    if matches!(ask.through, Through::Studs { doubled: true, .. }) && figure.holes.len() > 2 {
        found.push(say(
            Weight::Stop,
            "Doubled studs may have the larger hole only two in a row; here are {0}.",
            [Amount::Count(figure.holes.len() as i64)],
            framing::STUD_HOLE.cite,
        ));
    }
    if figure.plates > 0 {
        found.push(say(
            Weight::Caution,
            "The pipe comes nearer than {0} to a face: {1} steel plates of {2}, on each face that it is near, and {4} past a sole or top plate. Later editions say {3}.",
            [
                framing::PLATE_WITHIN.value.into(),
                Amount::Count(i64::from(figure.plates)),
                Amount::Film(framing::PLATE_THICKNESS.value),
                framing::PLATE_WITHIN_LATER.value.into(),
                framing::PLATE_BEYOND.value.into(),
            ],
            framing::PLATE_WITHIN.cite,
        ));
    }
}

fn arm(ask: &Ask, figure: &Figure, found: &mut Vec<Finding>) {
    let (Some(asked), Some(limits)) = (ask.arm, figure.arm) else {
        return;
    };
    let cite = longest_arm(ask.code, asked.size).1;
    if asked.length > limits.most {
        found.push(say(
            Weight::Stop,
            "A trap arm of {0} is longer than {1}: bring the vent nearer. The residential and plumbing codes have {2} for this size, the uniform code {3}.",
            [
                asked.length,
                limits.most,
                asked.size.of(&book::ARM.value),
                asked.size.of(&book::ARM_UPC.value),
            ]
            .map(Amount::Length),
            cite,
        ));
    }
    if asked.length < limits.least {
        found.push(say(
            Weight::Stop,
            "A trap arm of {0} is shorter than two diameters, {1}: the trap may be siphoned.",
            [asked.length, limits.least].map(Amount::Length),
            book::ARM_LEAST.cite,
        ));
    }
    let diameter = asked.size.length() * book::ARM_FALL.value;
    if limits.falls > diameter {
        found.push(say(
            Weight::Caution,
            "The trap arm falls {0}, more than its diameter of {1}: the vent would lie below the weir.",
            [limits.falls, diameter].map(Amount::Length),
            book::ARM_FALL.cite,
        ));
    }
    found.push(note(
        "The vent may not leave the arm below the weir of the trap. A water closet's own arm has no most in the residential code.",
        [],
        book::ARM_FALL.cite,
    ));
}

fn size(ask: &Ask, figure: &Figure, found: &mut Vec<Finding>) {
    let closets = ask.fixtures[3] + ask.fixtures[4];
    match figure.needs {
        Some(needs) if ask.size < needs => found.push(say(
            Weight::Stop,
            "{0} fixture units want a drain of {1}; this one is {2}.",
            [
                Amount::Count(i64::from(figure.units)),
                needs.length().into(),
                ask.size.length().into(),
            ],
            if closets > 0 && ask.size < Size::Three {
                book::CLOSET_DRAIN.cite
            } else {
                carries(ask.code, needs).1
            },
        )),
        None if figure.units > 0 => found.push(say(
            Weight::Stop,
            "{0} fixture units are more than a 4 in drain carries.",
            [Amount::Count(i64::from(figure.units))],
            carries(ask.code, Size::Four).1,
        )),
        _ => {}
    }
    if closets > book::CLOSETS_ON_3.value && ask.size <= Size::Three {
        found.push(say(
            Weight::Caution,
            "The uniform code lets {0} water closets onto a level 3 in drain, no more.",
            [Amount::Count(i64::from(book::CLOSETS_ON_3.value))],
            book::CLOSETS_ON_3.cite,
        ));
    }
    if ask.fixtures[2] > 0 && ask.size < Size::Two {
        found.push(note(
            "A shower's trap is 2 in by the uniform code. The others may let 1 1/2 in pass for one low-flow head; ask.",
            [],
            book::SHOWER.cite,
        ));
    }
}

/// What can hurt.
pub(super) fn cautions(ask: &Ask) -> Vec<&'static Caution> {
    let mut list = vec![&cautions::DRAIN_CODE, &cautions::OPEN_DRAIN];
    if through::members(ask).is_some() {
        list.insert(0, &cautions::CUT_FRAMING);
    }
    list
}
