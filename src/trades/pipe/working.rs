//! How each piece was arrived at.

use super::ask::{Ask, By, Mark, Way};
use super::figure::Figure;
use super::fitting::{Known, Port, Shape};
use super::hangers::apart;
use super::offset::multipliers;
use super::walk::walk;
use crate::handbook::pipe::SOLDER_SLACK;
use crate::handbook::{Cite, documents};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Step, Term};

const IDENTITY: Cite = Cite::read(
    &documents::ARMY_PLUMBING,
    "cut length by fitting dimension and make-up",
);
const MIXED: Cite = Cite::read(&documents::PLUMBING_2022, "p. 325, from a centre to a face");
const SHOULDERS: Cite = Cite::read(
    &documents::PLUMBING_2022,
    "from shoulder to shoulder nothing is added",
);

fn number(leg: usize) -> Amount {
    Amount::Count(leg as i64 + 1)
}

/// Step by step.
pub(super) fn working(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let mut steps = Vec::new();
    for (leg, offset) in &figure.offsets {
        let Way::Offset {
            set, angle, over, ..
        } = ask.legs[*leg].way
        else {
            continue;
        };
        if let Some((_, roll)) = over {
            steps.push(Step {
                what: Phrase::with(
                    "Leg {0}: true offset, set and roll squared and added",
                    [number(*leg)],
                ),
                sum: vec![set.into(), Term::Word("and"), roll.into()],
                gives: offset.true_offset.into(),
                cite: Cite::computed(
                    "set and roll are the sides at a right angle, the true offset lies across them",
                ),
            });
        }
        steps.push(Step {
            what: Phrase::with("Leg {0}: travel of its offset", [number(*leg)]),
            sum: vec![
                offset.true_offset.into(),
                Term::Word("×"),
                Amount::Number(multipliers(angle).0).into(),
            ],
            gives: offset.travel.into(),
            cite: Cite::computed("one over the sine of the angle; tables print it cut off, only the cut is rounded here"),
        });
    }
    for (leg, cut) in figure.legs.iter().enumerate() {
        if let Some(pipe) = cut.cut {
            steps.push(Step {
                what: Phrase::with("Leg {0}: pipe to cut", [number(leg)]),
                sum: sum(ask, figure, leg),
                gives: pipe.into(),
                cite: identity(ask.legs[leg].by),
            });
        } else if let Some(span) = cut.span {
            steps.push(Step {
                what: Phrase::with("Leg {0}: no pipe, centre to centre", [number(leg)]),
                sum: Vec::new(),
                gives: span.into(),
                cite: super::fitting::MEASURED,
            });
        }
    }
    let mut told: Vec<Known> = Vec::new();
    for known in figure.legs.iter().flat_map(|leg| leg.ends).flatten() {
        if told.iter().any(|other| other.shape == known.shape) {
            continue;
        }
        told.push(known);
        if let Some(take_off) = known.take_off {
            steps.push(Step {
                what: "Take-off of the fitting".into(),
                sum: fitting(&known.shape),
                gives: take_off.value.into(),
                cite: take_off.cite,
            });
        }
        if let Some(depth) = known.depth {
            steps.push(Step {
                what: "Depth of its hub".into(),
                sum: fitting(&known.shape),
                gives: depth.value.into(),
                cite: depth.cite,
            });
        }
    }
    goods(ask, figure, &mut steps);
    steps
}

/// A fitting's opening in the words of a sum: its size, its turn, what it is.
fn fitting(shape: &Shape) -> Vec<Term> {
    let mut terms: Vec<Term> = vec![Term::Word(shape.size.name())];
    terms.extend((shape.turn).map(|turn| Amount::Angle(turn.angle()).into()));
    terms.push(Term::Word(shape.family.name()));
    terms.push(Term::Word(shape.kind.name()));
    match shape.port {
        Port::Run => {}
        Port::Branch => terms.push(Term::Word("(its branch)")),
        Port::Spigot => terms.push(Term::Word("(its street end)")),
    }
    terms
}

fn identity(by: By) -> Cite {
    match by {
        By::Tape {
            from: Mark::Shoulder,
            to: Mark::Shoulder,
            ..
        } => SHOULDERS,
        By::Tape { from, to, .. } if from != to => MIXED,
        _ => IDENTITY,
    }
}

/// The sum of a leg, as it would be written on a board.
fn sum(ask: &Ask, figure: &Figure, leg: usize) -> Vec<Term> {
    let cut = &figure.legs[leg];
    let mut terms: Vec<Term> = Vec::new();
    let mut add = |word: &'static str, length: Length| {
        if length != Length::ZERO {
            terms.push(Term::Word(word));
            terms.push(length.into());
        }
    };
    let take_off = |end: usize| {
        let known = cut.ends[end].and_then(|known| known.take_off);
        known.map_or(Length::ZERO, |take_off| take_off.value)
    };
    let depth = |end: usize| {
        let known = cut.ends[end].and_then(|known| known.depth);
        known.map_or(Length::ZERO, |depth| depth.value)
    };
    let marks = match ask.legs[leg].by {
        By::Tape { length, from, to } => {
            add("", length);
            [from, to]
        }
        By::Fitted => {
            add("", depth(0));
            add("+", depth(1));
            return terms
                .into_iter()
                .filter(|term| *term != Term::Word(""))
                .collect();
        }
        By::Set | By::Rest => {
            add("", cut.span.unwrap_or_default());
            [Mark::Centre, Mark::Centre]
        }
    };
    for (end, mark) in marks.into_iter().enumerate() {
        match mark {
            Mark::Centre => add("−", take_off(end)),
            Mark::Face => add("+", depth(end)),
            Mark::Wall(beyond) => add("+", beyond),
            Mark::Shoulder | Mark::End => {}
        }
    }
    add("−", cut.stops);
    terms
        .into_iter()
        .filter(|term| *term != Term::Word(""))
        .collect()
}

/// Solder, cement, hangers and growth.
fn goods(ask: &Ask, figure: &Figure, steps: &mut Vec<Step>) {
    if let Some(solder) = figure.solder {
        steps.push(Step {
            what: "Solder wire of 1/8 in, joints by their size".into(),
            sum: vec![
                solder.wire.into(),
                Term::Word("×"),
                Amount::Count(SOLDER_SLACK.value).into(),
            ],
            gives: solder.to_buy.into(),
            cite: SOLDER_SLACK.cite,
        });
    }
    if let Some((cement, primer)) = figure.cement {
        let cite = figure
            .joints
            .first()
            .and_then(|(size, _)| crate::handbook::pipe::cement_joints(*size))
            .map_or(IDENTITY, |joints| joints.cite);
        steps.push(Step {
            what: "Cement, joints over joints a quart".into(),
            sum: Vec::new(),
            gives: cement.into(),
            cite,
        });
        steps.push(Step {
            what: "Primer, twice as many joints".into(),
            sum: Vec::new(),
            gives: primer.into(),
            cite,
        });
    }
    hung(ask, figure, steps);
    if let Some((growth, figured)) = crate::handbook::pipe::expansion(ask.pipe).zip(figure.grows) {
        steps.push(Step {
            what: "Growth of the longest leg when it is warmed".into(),
            sum: Vec::new(),
            gives: figured.into(),
            cite: growth.cite,
        });
    }
}

/// Hangers leg by leg: the first, and from one to the next.
fn hung(ask: &Ask, figure: &Figure, steps: &mut Vec<Step>) {
    let Ok(walk) = walk(ask) else {
        return;
    };
    for leg in 0..ask.legs.len() {
        let at: Vec<Length> = figure
            .held_at
            .iter()
            .filter(|hanger| hanger.leg == leg)
            .map(|hanger| hanger.at)
            .collect();
        let (Some(apart), Some(first)) = (apart(ask, &walk, leg), at.first()) else {
            continue;
        };
        let next = at.get(1).map(|next| *next - *first);
        steps.push(Step {
            what: match next {
                Some(next) => Phrase::with(
                    "Leg {0}: hangers, the first {1} from its start, then every {2}; at most {3}",
                    [
                        number(leg),
                        (*first).into(),
                        next.into(),
                        apart.value.into(),
                    ],
                ),
                None => Phrase::with(
                    "Leg {0}: hanger, {1} from its start; at most {2} from the one before",
                    [number(leg), (*first).into(), apart.value.into()],
                ),
            },
            sum: Vec::new(),
            gives: Amount::Count(at.len() as i64),
            cite: apart.cite,
        });
    }
}
