//! A run under a floor: which joists it goes through, and whether a hole may be so large and stand so high.

use super::ask::{Ask, Place};
use super::framed::{Crossing, count, crossing};
use crate::handbook::framing::HOLE_ROOM;
use crate::handbook::pipe::tube;
use crate::handbook::{Cite, drain};
use crate::measure::{Amount, Length, Phrase, Rounding};
use crate::site::{Fault, Joists, hole_for};
use crate::trades::{Finding, Weight};

/// The joists under a floor, and how a run lies to them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Floored {
    /// From the wall that the joists run along, out to the run's start.
    pub start: Length,
    /// How much farther out a step to the right leads, and one forward, into the wall that the run is seen before.
    pub steps: [f64; 2],
    /// How far below the finished floor the run starts.
    pub below: Length,
    /// The joists.
    pub joists: Joists,
}

/// Where a leg crosses a joist; legs, lines and joists count from 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Bored {
    /// The leg.
    pub leg: usize,
    /// Its line.
    pub line: usize,
    /// The joist.
    pub joist: usize,
    /// Where that is, from the run's start.
    pub at: Place,
    /// The pipe's centre, above the joist's lower edge.
    pub centre: Length,
    /// How large it is bored.
    pub across: Length,
    /// What is wrong with it; `None` where the pipe passes below the joist, or above it.
    pub faults: Option<Vec<Fault>>,
}

/// How far a drain's level legs fall in a foot; nothing for a supply.
fn fall_in_a_foot(ask: &Ask) -> Length {
    if ask.pipe.family().drains() {
        drain::FALL_UPC.value[0]
    } else {
        Length::ZERO
    }
}

/// By how much each fitting of a line lies lower by the fall of the legs before it.
fn falls(ask: &Ask, places: &[Place]) -> Vec<Length> {
    let fall = fall_in_a_foot(ask).metres() / Length::feet(1).metres();
    let mut fallen = vec![Length::ZERO];
    for ends in places.windows(2) {
        let step = ends[1].minus(ends[0]);
        let level = step.right.metres().hypot(step.forward.metres());
        let more = Length::from_metres(level * fall).unwrap_or_default();
        fallen.push(fallen.last().copied().unwrap_or_default() + more);
    }
    fallen
}

/// Where a run under a floor goes through joists, and what clashes.
///
/// A drain is taken to fall the most that any of three model codes asks as its least, from its start on; the legs
/// themselves are cut level.
///
/// # Inputs
/// The run, where the fittings of each of its lines are (from its start;
/// [`beside`](super::beside)), and the joists.
/// # Gives
/// Each crossing, leg by leg, line by line, joist by joist; findings, the heaviest first.
/// # Findings
/// Stop: a hole larger than a joist may have, or too near to an edge; an engineered joist; a leg that comes down on a
/// joist. Note: what is bored, and the fall that heights stand on.
/// # Source
/// R502.8 as quoted, by [`Member`](crate::site::Member); the fall by the uniform code; the local code decides.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::Joists, trades::pipe::{Ask, Floored, floored}};
/// let under = Floored { start: Length::inches(20), steps: [0.0, -1.0], below: Length::ZERO, joists: Joists::along(0) };
/// assert_eq!(floored(&Ask::default(), &[], &under), (vec![], vec![]));
/// ```
#[must_use]
pub fn floored(ask: &Ask, lines: &[Vec<Place>], floor: &Floored) -> (Vec<Bored>, Vec<Finding>) {
    let (mut holes, mut found) = (Vec::new(), Vec::new());
    let joists = floor.joists;
    let bottom = joists.deck + joists.depth - floor.below;
    let out = |place: Place| {
        let steps = place.right.metres() * floor.steps[0] + place.forward.metres() * floor.steps[1];
        floor.start + Length::from_metres(steps).unwrap_or_default()
    };
    let farthest = lines.iter().flatten().map(|place| out(*place)).max();
    let centres = joists.centres(farthest.unwrap_or_default() + joists.face);
    let fallen: Vec<Vec<Length>> = lines.iter().map(|places| falls(ask, places)).collect();
    for leg in 0..ask.legs.len() {
        let Some(tube) = tube(ask.pipe, ask.size_of(leg)) else {
            continue;
        };
        let (outside, first) = (tube.outside.value, holes.len());
        for (line, (places, fallen)) in lines.iter().zip(&fallen).enumerate() {
            let (Some(ends), Some(fallen)) = (places.get(leg..leg + 2), fallen.get(leg..leg + 2))
            else {
                continue;
            };
            let at = |end: usize| (out(ends[end]), ends[end].up - fallen[end] + bottom);
            let (from, to) = (at(0), at(1));
            for (joist, middle) in centres.iter().enumerate() {
                match crossing((from, to), *middle, joists.face, outside) {
                    Crossing::None => {}
                    Crossing::Within => {
                        let clear =
                            from.1.max(to.1) <= Length::ZERO || from.1.min(to.1) >= joists.depth;
                        if !clear {
                            found.push(lands(leg, joist, *middle - from.0, joists.face, outside));
                        }
                    }
                    Crossing::Through(centre) => {
                        let share = (*middle - from.0).metres() / (to.0 - from.0).metres();
                        let across = hole_for(outside);
                        holes.push(Bored {
                            leg,
                            line,
                            joist,
                            at: between(ends[0], ends[1], share),
                            centre,
                            across,
                            faults: joists.member().crossed(outside, across, centre),
                        });
                    }
                }
            }
        }
        found.extend(bored(leg, &holes[first..], joists));
    }
    let fall = fall_in_a_foot(ask);
    if fall.is_positive() && holes.iter().any(|hole| hole.faults.is_some()) {
        found.push(Finding {
            weight: Weight::Note,
            says: Phrase::with(
                "Heights at the joists are for a drain that falls {0} from its start on. The drain's own figure has its fall by your code.",
                [Amount::Slope(fall.metres() / Length::feet(1).metres())],
            ),
            rule: drain::FALL_UPC.cite,
        });
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    (holes, found)
}

fn between(from: Place, to: Place, share: f64) -> Place {
    let part = |length: Length| Length::from_metres(length.metres() * share).unwrap_or_default();
    from.plus(Place::of(to.minus(from).axes().map(part)))
}

/// A leg that comes down where a joist is.
fn lands(leg: usize, joist: usize, off: Length, face: Length, outside: Length) -> Finding {
    let by = (face + outside).half() - off.abs();
    Finding {
        weight: Weight::Stop,
        says: Phrase::with(
            "Leg {0} comes down on joist {1}. Move it at least {2} to the side, or have the opening framed: an engineer or the building official says how.",
            [count(leg), count(joist), by.into()],
        ),
        rule: Cite::computed("the pipe's outside against the faces of the joist"),
    }
}

/// What is to be said of the holes of a leg.
fn bored(leg: usize, holes: &[Bored], joists: Joists) -> Vec<Finding> {
    let member = joists.member();
    let cut: Vec<(&Bored, &Vec<Fault>)> = holes
        .iter()
        .filter_map(|hole| hole.faults.as_ref().map(|faults| (hole, faults)))
        .collect();
    let Some((hole, _)) = cut.first() else {
        return Vec::new();
    };
    let having = |fault: fn(&Fault) -> bool| {
        let hit = cut.iter().filter(|(_, faults)| faults.iter().any(fault));
        hit.count() as i64
    };
    let all = Amount::Count(cut.len() as i64);
    let down = |limit: Length| limit.rounded(Length::in_64(0, 4), Rounding::FitInside);
    let mut found = Vec::new();
    let mut stop = |text, amounts: Vec<Amount>, rule| {
        found.push(Finding {
            weight: Weight::Stop,
            says: Phrase::with(text, amounts),
            rule,
        });
    };
    if having(|fault| *fault == Fault::AskMaker) > 0 {
        stop(
            "Leg {0} goes through {1} engineered joists or trusses. Nothing is cut in them but where their maker or an engineer says: get the maker's chart of holes first.",
            vec![count(leg), all],
            member.cite(),
        );
        return found;
    }
    let large = having(|fault| matches!(fault, Fault::TooLarge(_)));
    if let Some(most) = member.largest_hole().filter(|_| large > 0) {
        stop(
            "Leg {0} needs holes of {1}, and a joist of {2} takes at most {3}. Run along the joists, hang the pipe below them, or ask an engineer.",
            vec![
                count(leg),
                hole.across.into(),
                joists.depth.into(),
                down(most).into(),
            ],
            member.cite(),
        );
    }
    let near = having(|fault| matches!(fault, Fault::NearEdge(_)));
    if near > 0 {
        let edge = member.edge_rule();
        stop(
            "Of leg {0}, {1} of {2} holes leave less than {3} of wood to an edge of the joist. Lower or raise the leg, or run along the joists.",
            vec![
                count(leg),
                Amount::Count(near),
                all.clone(),
                edge.value.into(),
            ],
            edge.cite,
        );
    }
    if found.is_empty() {
        found.push(Finding {
            weight: Weight::Note,
            says: Phrase::with(
                "Leg {0} goes through {1} joists: holes of {2}, at most {3} here.",
                [
                    count(leg),
                    all,
                    hole.across.into(),
                    down(member.largest_hole().unwrap_or_default()).into(),
                ],
            ),
            rule: HOLE_ROOM.cite,
        });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Pipe, Size};
    use crate::trades::pipe::{By, Direction, Leg, Mark, Way, beside, sketch};

    /// Down so far from the floor, then so far that way.
    fn run(pipe: Pipe, size: Size, down: i64, (way, inches): (Direction, i64)) -> Ask {
        let leg = |way, inches| Leg {
            way: Way::Along(way),
            size: None,
            by: By::Tape {
                length: Length::inches(inches),
                from: Mark::End,
                to: Mark::End,
            },
            couplings: 0,
            end: None,
        };
        Ask {
            pipe,
            size,
            legs: vec![leg(Direction::Down, down), leg(way, inches)],
            ..Ask::default()
        }
    }

    /// 24 in out from the wall that the joists run along, facing it; 2×10 at 16, 32, 48 under 3/4 in of floor.
    fn looked(ask: &Ask, engineered: bool) -> (Vec<Bored>, Vec<Finding>) {
        let floor = Floored {
            start: Length::inches(24),
            steps: [0.0, -1.0],
            below: Length::ZERO,
            joists: Joists {
                engineered,
                ..Joists::along(0)
            },
        };
        floored(ask, &beside(ask, &sketch(ask)), &floor)
    }

    /// 5 in down is 5 in above the lower edge of 9 1/4 in joists; 8 and 24 in on, at 1/4 in a foot, 1/6 and 1/2 in less.
    #[test]
    fn a_drain_across_joists_falls_and_is_bored() {
        let (holes, found) = looked(
            &run(Pipe::PvcDrain, Size::Two, 5, (Direction::Back, 30)),
            false,
        );
        let heights: Vec<f64> = holes.iter().map(|hole| hole.centre.in_inches()).collect();
        assert_eq!(holes.len(), 2);
        assert!((heights[0] - (5.0 - 1.0 / 6.0)).abs() < 1e-6);
        assert!((heights[1] - 4.5).abs() < 1e-6);
        assert!(holes.iter().all(|hole| hole.faults == Some(vec![])));
        assert!(found.iter().all(|found| found.weight == Weight::Note));
        // A supply stays level.
        let (holes, _) = looked(
            &run(Pipe::CopperL, Size::Half, 5, (Direction::Back, 30)),
            false,
        );
        assert!(holes.iter().all(|hole| hole.centre == Length::inches(5)));
    }

    /// A hole of 3 5/8 in is more than a third of 9 1/4, and 3 in above the edge leaves 1 3/16 below it.
    #[test]
    fn holes_beyond_their_limits_stop() {
        let (holes, found) = looked(
            &run(Pipe::PvcDrain, Size::Three, 7, (Direction::Back, 10)),
            false,
        );
        assert_eq!(holes[0].faults.as_ref().map(Vec::len), Some(2));
        assert_eq!(found[0].weight, Weight::Stop);
        assert!(found[0].says.text.contains("takes at most"));
        let (_, found) = looked(
            &run(Pipe::CopperL, Size::Half, 5, (Direction::Back, 10)),
            true,
        );
        assert!(found[0].says.text.contains("engineered"));
    }

    #[test]
    fn along_and_below_the_joists_nothing_is_bored() {
        let along = run(Pipe::PvcDrain, Size::Two, 5, (Direction::Left, 60));
        assert_eq!(looked(&along, false), (vec![], vec![]));
        let (holes, found) = looked(
            &run(Pipe::PvcDrain, Size::Two, 12, (Direction::Back, 30)),
            false,
        );
        assert!(holes.iter().all(|hole| hole.faults.is_none()));
        assert_eq!(found, vec![]);
    }

    /// 31 in out is an inch beside the middle of the joist at 32: half of 1 1/2 and of 2 3/8 less an inch is 15/16.
    #[test]
    fn what_comes_down_on_a_joist_is_moved() {
        let mut ask = run(Pipe::PvcDrain, Size::Two, 5, (Direction::Left, 20));
        ask.legs.truncate(1);
        let floor = Floored {
            start: Length::inches(31),
            steps: [0.0, -1.0],
            below: Length::ZERO,
            joists: Joists::along(0),
        };
        let (_, found) = floored(&ask, &[sketch(&ask)], &floor);
        assert_eq!(
            found[0].says.amounts,
            [
                Amount::Count(1),
                Amount::Count(2),
                Amount::Length(Length::in_64(0, 60))
            ]
        );
    }
}
