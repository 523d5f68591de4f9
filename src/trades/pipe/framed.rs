//! A run between the studs of a wall: where it goes through one, and whether the hole may be so large.

use super::ask::{Ask, Place};
use crate::handbook::Cite;
use crate::handbook::framing::{HOLE_ROOM, PLATE_WITHIN};
use crate::handbook::pipe::tube;
use crate::measure::{Amount, Length, Phrase};
use crate::site::{Member, hole_for};
use crate::trades::{Finding, Weight};

/// The framing of a wall, and where on it a run starts.
#[derive(Clone, Debug, PartialEq)]
pub struct Framed {
    /// From the wall's left corner to the run's start, and up from the floor.
    pub start: (Length, Length),
    /// The wall's length.
    pub long: Length,
    /// Its height, where that is known.
    pub high: Option<Length>,
    /// Centres of its studs, from the left corner.
    pub studs: Vec<Length>,
    /// The face of a stud, as seen.
    pub face: Length,
    /// How deep a stud is, from board to board.
    pub depth: Length,
    /// The wall carries something, or is an outside wall.
    pub bearing: bool,
}

impl Framed {
    /// A stud of the wall.
    fn stud(&self) -> Member {
        Member::Stud {
            depth: self.depth,
            bearing: self.bearing,
            doubled: false,
        }
    }
    /// The largest hole in one; a stud always has one.
    fn most_hole(&self) -> Length {
        self.stud().largest_hole().unwrap_or_default()
    }
}

/// A hole through a stud; legs, lines and studs count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hole {
    /// The leg that goes through it.
    pub leg: usize,
    /// Its line.
    pub line: usize,
    /// The stud.
    pub stud: usize,
    /// The stud's centre, from the left corner.
    pub from_left: Length,
    /// Its middle, up from the floor.
    pub up: Length,
    /// How large it is bored.
    pub across: Length,
    /// It is no larger than its limit.
    pub fits: bool,
}

/// Where a run goes through studs, and what clashes.
///
/// # Inputs
/// The run, where the fittings of each of its lines are (from its start; [`beside`](super::beside)), and the wall. Legs
/// into the wall or out of it go through no stud.
/// # Gives
/// Each hole in the order of the run, line by line, in the middle of its stud; findings, the heaviest first.
/// # Findings
/// Stop: a hole beyond its limit; a leg that runs up within a stud; a run that leaves its wall. Note: how many studs are
/// bored, and pipe so near to a face that a plate shields it.
/// # Source
/// R602.6 as quoted; shield plates by the wider of two rules; the local code decides.
/// # Example
/// ```
/// use storyrod::measure::Length;
/// use storyrod::trades::pipe::{Ask, Framed, framed};
/// let wall = Framed {
///     start: (Length::inches(10), Length::inches(20)), long: Length::feet(8), high: None,
///     studs: vec![Length::inches(16)], face: Length::in_64(1, 32), depth: Length::in_64(3, 32), bearing: false,
/// };
/// assert_eq!(framed(&Ask::default(), &[], &wall), (vec![], vec![]));
/// ```
#[must_use]
pub fn framed(ask: &Ask, lines: &[Vec<Place>], wall: &Framed) -> (Vec<Hole>, Vec<Finding>) {
    let (mut holes, mut found) = (Vec::new(), Vec::new());
    let mut beyond = None;
    for leg in 0..ask.legs.len() {
        let Some(tube) = tube(ask.pipe, ask.size_of(leg)) else {
            continue;
        };
        let outside = tube.outside.value;
        let at = |place: Place| (wall.start.0 + place.right, wall.start.1 + place.up);
        let past = |(x, y): (Length, Length)| {
            let half = outside.half();
            x - half < Length::ZERO
                || x + half > wall.long
                || y - half < Length::ZERO
                || wall.high.is_some_and(|high| y + half > high)
        };
        let first = holes.len();
        for (line, places) in lines.iter().enumerate() {
            let [from, to] = [leg, leg + 1].map(|node| places.get(node).copied().map(at));
            let Some((from, to)) = from.zip(to) else {
                continue;
            };
            if beyond.is_none() && (past(from) || past(to)) {
                beyond = Some(leg);
            }
            for (stud, centre) in wall.studs.iter().enumerate() {
                match crossing((from, to), *centre, wall.face, outside) {
                    Crossing::None => {}
                    Crossing::Within => {
                        found.push(within(leg, stud, *centre, from.0, wall, outside))
                    }
                    Crossing::Through(up) => {
                        let across = hole_for(outside);
                        holes.push(Hole {
                            leg,
                            line,
                            stud,
                            from_left: *centre,
                            up,
                            across,
                            fits: across <= wall.most_hole(),
                        });
                    }
                }
            }
        }
        found.extend(bored(leg, &holes[first..], wall, outside));
    }
    if let Some(leg) = beyond {
        found.push(Finding {
            weight: Weight::Stop,
            says: Phrase::with(
                "Leg {0} leaves its wall. Check where the run starts on it, and the way of that leg.",
                [count(leg)],
            ),
            rule: Cite::computed("the run laid on the wall from its start"),
        });
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    (holes, found)
}

/// How a leg meets a stud or a joist.
pub(super) enum Crossing {
    /// Not at all.
    None,
    /// It runs inside it, up or down.
    Within,
    /// Through both its faces, its middle so high there.
    Through(Length),
}

/// How a leg between two places (across the members, up) meets the one with this centre.
pub(super) fn crossing(
    (from, to): ((Length, Length), (Length, Length)),
    centre: Length,
    face: Length,
    outside: Length,
) -> Crossing {
    let edge = face.half();
    let (least, most) = (from.0.min(to.0), from.0.max(to.0));
    if most - least <= face {
        let near = (from.0 - centre).abs() < edge + outside.half();
        let runs = (to.1 - from.1).abs() > outside;
        return if near && runs {
            Crossing::Within
        } else {
            Crossing::None
        };
    }
    if least > centre - edge || most < centre + edge {
        return Crossing::None;
    }
    let share = (centre - from.0).metres() / (to.0 - from.0).metres();
    let rise = Length::from_metres((to.1 - from.1).metres() * share);
    Crossing::Through(from.1 + rise.unwrap_or_default())
}

pub(super) fn count(from_nothing: usize) -> Amount {
    Amount::Count(from_nothing as i64 + 1)
}

/// A leg that runs up where a stud is.
fn within(
    leg: usize,
    stud: usize,
    centre: Length,
    x: Length,
    wall: &Framed,
    outside: Length,
) -> Finding {
    let by = wall.face.half() + outside.half() - (x - centre).abs();
    Finding {
        weight: Weight::Stop,
        says: Phrase::with(
            "Leg {0} runs up inside stud {1}. Move it at least {2} to the side.",
            [count(leg), count(stud), by.into()],
        ),
        rule: Cite::computed("the pipe's outside against the faces of the stud"),
    }
}

/// What is to be said of the holes of a leg.
fn bored(leg: usize, holes: &[Hole], wall: &Framed, outside: Length) -> Vec<Finding> {
    let Some(hole) = holes.first() else {
        return Vec::new();
    };
    let limit = wall.most_hole();
    let several = holes.iter().any(|hole| hole.line > 0);
    let mut found = Vec::new();
    if hole.fits {
        found.push(Finding {
            weight: Weight::Note,
            says: Phrase::with(
                if several {
                    "Leg {0} and the lines beside it take {1} holes of {2}, each in the middle of its stud, at most {3} here."
                } else {
                    "Leg {0} goes through {1} studs: a hole of {2} in the middle of each, at most {3} here."
                },
                [
                    count(leg),
                    Amount::Count(holes.len() as i64),
                    hole.across.into(),
                    limit.into(),
                ],
            ),
            rule: HOLE_ROOM.cite,
        });
    } else {
        found.push(Finding {
            weight: Weight::Stop,
            says: Phrase::with(
                "Leg {0} needs holes of {1}, and a stud {2} deep in this wall takes at most {3}. Go another way, or ask an engineer and the building official.",
                [
                    count(leg),
                    hole.across.into(),
                    wall.depth.into(),
                    limit.into(),
                ],
            ),
            rule: wall.stud().cite(),
        });
    }
    let middle = wall.depth.half();
    if wall.stud().plates(outside, middle)[0] {
        let clear = middle - outside.half();
        found.push(Finding {
            weight: Weight::Caution,
            says: Phrase::with(
                "In the middle of a stud the pipe of leg {0} is {1} from each face: shield it with plates on both.",
                [count(leg), clear.into()],
            ),
            rule: PLATE_WITHIN.cite,
        });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Pipe, Size};
    use crate::trades::pipe::{By, Direction, Leg, Lines, Mark, Way, beside, sketch};

    fn leg(way: Direction, inches: i64) -> Leg {
        Leg {
            way: Way::Along(way),
            size: None,
            by: By::Tape {
                length: Length::inches(inches),
                from: Mark::End,
                to: Mark::End,
            },
            couplings: 0,
            end: None,
        }
    }

    fn wall(start: i64, bearing: bool) -> Framed {
        Framed {
            start: (Length::inches(start), Length::inches(20)),
            long: Length::feet(8),
            high: Some(Length::feet(8)),
            studs: (1..6).map(|n| Length::inches(16 * n)).collect(),
            face: Length::in_64(1, 32),
            depth: Length::in_64(3, 32),
            bearing,
        }
    }

    fn run(pipe: Pipe, size: Size, legs: Vec<Leg>) -> Ask {
        Ask {
            pipe,
            size,
            legs,
            ..Ask::default()
        }
    }

    fn looked(ask: &Ask, wall: &Framed) -> (Vec<Hole>, Vec<Finding>) {
        framed(ask, &beside(ask, &sketch(ask)), wall)
    }

    /// From 10 in to 60 in along the wall there are studs at 16, 32 and 48.
    #[test]
    fn a_level_leg_bores_each_stud_on_its_way() {
        let ask = run(Pipe::CopperL, Size::Half, vec![leg(Direction::Right, 50)]);
        let (holes, found) = looked(&ask, &wall(10, true));
        let at: Vec<Length> = holes.iter().map(|hole| hole.from_left).collect();
        assert_eq!(at, [16, 32, 48].map(Length::inches));
        // 5/8 in across and 1/16 of room: a bit of 3/4, and 40 % of 3 1/2 is 1.4.
        let right = |hole: &Hole| hole.fits && hole.across == Length::in_64(0, 48);
        assert!(holes.iter().all(right));
        // 1 7/16 in to each face is nearer than 1 1/2.
        assert_eq!(found[0].weight, Weight::Caution);
        assert!(holes.iter().all(|hole| hole.up == Length::inches(20)));
    }

    /// 1 1/2 in drain, 1.9 in across, hole 2: 57 % of a 2 × 4, too much where the wall bears, allowed where it does not;
    /// 2 in, hole 2 1/2: 71 %, never.
    #[test]
    fn a_hole_beyond_its_limit_stops() {
        for (size, bearing, fits) in [
            (Size::OneHalf, true, false),
            (Size::OneHalf, false, true),
            (Size::Two, false, false),
        ] {
            let ask = run(Pipe::PvcDrain, size, vec![leg(Direction::Left, 12)]);
            let (holes, found) = looked(&ask, &wall(40, bearing));
            assert_eq!(holes.len(), 1);
            assert_eq!(holes[0].fits, fits, "{size:?}");
            assert_eq!(found[0].weight == Weight::Stop, !fits);
        }
    }

    #[test]
    fn a_riser_inside_a_stud_stops_and_beside_it_does_not() {
        let up = vec![leg(Direction::Up, 30)];
        let ask = run(Pipe::CopperL, Size::Half, up);
        let (holes, found) = looked(&ask, &wall(16, false));
        assert!(holes.is_empty());
        assert_eq!(found.len(), 1);
        assert!(found[0].says.text.contains("inside stud"));
        assert_eq!(looked(&ask, &wall(20, false)), (vec![], vec![]));
    }

    #[test]
    fn a_run_that_leaves_its_wall_is_said() {
        let ask = run(Pipe::CopperL, Size::Half, vec![leg(Direction::Down, 30)]);
        let (_, found) = looked(&ask, &wall(20, false));
        assert!(found[0].says.text.contains("leaves its wall"));
        // Into the wall and out of it nothing is bored.
        let ask = run(Pipe::CopperL, Size::Half, vec![leg(Direction::Back, 30)]);
        assert_eq!(looked(&ask, &wall(20, false)), (vec![], vec![]));
    }

    /// Two lines 3 in apart bore each stud twice, 3 in above each other, and the second leaves the wall as well.
    #[test]
    fn every_line_of_a_run_is_bored() {
        let mut ask = run(Pipe::CopperL, Size::Half, vec![leg(Direction::Right, 20)]);
        ask.lines = Some(Lines {
            count: 2,
            apart: Length::inches(3),
            to: Direction::Up,
        });
        let (holes, found) = looked(&ask, &wall(10, false));
        let at: Vec<(usize, Length)> = holes.iter().map(|hole| (hole.line, hole.up)).collect();
        assert_eq!(at, [(0, Length::inches(20)), (1, Length::inches(23))]);
        assert!(
            found
                .iter()
                .any(|found| found.says.text.contains("lines beside it"))
        );
        ask.lines = ask.lines.map(|lines| Lines {
            apart: Length::inches(80),
            ..lines
        });
        let (_, found) = looked(&ask, &wall(10, false));
        assert!(found[0].says.text.contains("leaves its wall"));
    }

    /// An offset at 45° meets a stud as high as it is along.
    #[test]
    fn a_slanted_leg_is_bored_where_it_meets_the_stud() {
        let slanted = Leg {
            way: Way::Offset {
                along: Direction::Up,
                to: Direction::Right,
                angle: crate::measure::Angle::degrees(45),
                set: Length::inches(12),
                over: None,
            },
            by: By::Set,
            ..leg(Direction::Up, 0)
        };
        let ask = run(Pipe::CopperL, Size::Half, vec![slanted]);
        let (holes, _) = looked(&ask, &wall(10, false));
        assert_eq!(holes.len(), 1);
        assert!((holes[0].up - Length::inches(26)).abs() <= Length::nm(5));
    }
}
