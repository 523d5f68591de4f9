//! Where hangers hold a run.

use super::ask::Ask;
use super::cut::LegCut;
use super::walk::Walk;
use crate::handbook::Sourced;
use crate::handbook::pipe::support;
use crate::measure::Length;

/// A hanger on a leg; legs count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hanger {
    /// The leg.
    pub leg: usize,
    /// From where the leg begins: the centre of its fitting, or its open end.
    pub at: Length,
}

/// How far apart hangers of a leg are at most: by whether it is more upright than level.
pub(super) fn apart(ask: &Ask, walk: &Walk, leg: usize) -> Option<Sourced<Length>> {
    let apart = support(ask.pipe, ask.size_of(leg))?;
    let upright = walk.headings[leg][2].abs() > std::f64::consts::FRAC_1_SQRT_2 + 1e-9;
    Some(if upright { apart.upright } else { apart.level })
}

/// The hangers of one line: one where the run begins, then equal steps no longer than the table has, the last of each leg
/// beside the hub that it ends in. None sits on a hub, and a leg without room between its hubs has none.
///
/// `None` where no spacing was read. A leg whose centres are not known is taken by its pipe.
pub(super) fn hangers(ask: &Ask, walk: &Walk, cuts: &[LegCut]) -> Option<Vec<Hanger>> {
    let mut found: Vec<Hanger> = Vec::new();
    // From the last hanger to where the next leg begins; nothing before there is one.
    let mut behind: Option<Length> = None;
    for (leg, cut) in cuts.iter().enumerate() {
        let apart = apart(ask, walk, leg)?.value;
        let long = cut.span.or(cut.cut).unwrap_or_default();
        let hub = |end: usize| {
            let known = cut.ends[end].filter(|_| cut.span.is_some());
            let length =
                |part: Option<Sourced<Length>>| part.map_or(Length::ZERO, |part| part.value);
            known.map_or(Length::ZERO, |known| {
                length(known.take_off) + length(known.depth)
            })
        };
        let (first, last) = (hub(0), long - hub(1));
        if cut.cut.is_none() || last <= first {
            behind = behind.map(|behind| behind + long);
            continue;
        }
        let from = match behind {
            Some(behind) => -behind,
            None => {
                found.push(Hanger { leg, at: first });
                first
            }
        };
        let steps = steps(last - from, apart);
        for step in 1..=steps {
            let at = from + ((last - from) * step).divided(steps);
            found.push(Hanger {
                leg,
                at: at.max(first),
            });
        }
        behind = Some(long - last);
    }
    Some(found)
}

/// Spacings begun in a length: `⌈length ÷ apart⌉`, one at least.
fn steps(long: Length, apart: Length) -> i64 {
    let apart = apart.as_nm().max(1);
    ((long.as_nm() + apart - 1) / apart).max(1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
    use crate::trades::pipe::{
        By, Direction, Fitting, Leg, Mark, Measured, Port, Shape, Way, figure,
    };

    /// 2 in drain: level every 4 ft. An elbow 2 1/2 in from centre to face stands between the legs.
    fn run(legs: &[(Direction, i64)]) -> Ask {
        let elbow = Fitting::of(Kind::Bend);
        let last = legs.len() - 1;
        let leg = |(at, (way, inches)): (usize, &(Direction, i64))| Leg {
            way: Way::Along(*way),
            size: None,
            by: By::Tape {
                length: Length::inches(*inches),
                from: if at == 0 { Mark::End } else { Mark::Centre },
                to: if at == last { Mark::End } else { Mark::Centre },
            },
            couplings: 0,
            end: (at < last).then_some(elbow),
        };
        let elbow = Shape {
            family: Family::PvcDrain,
            kind: Kind::Bend,
            turn: Some(Turn::Quarter),
            size: Size::Two,
            other: Size::Two,
            port: Port::Run,
        };
        Ask {
            pipe: Pipe::PvcDrain,
            size: Size::Two,
            legs: legs.iter().enumerate().map(leg).collect(),
            fittings: vec![Measured {
                shape: elbow,
                face: Length::in_64(2, 32),
                depth: Some(Length::in_64(0, 48)),
            }],
            stick: Length::feet(40),
            ..Ask::default()
        }
    }

    fn held(ask: &Ask) -> Vec<(usize, f64)> {
        let figure = figure(ask).expect("right");
        assert_eq!(figure.hangers, Some(figure.held_at.len() as u32));
        let at = figure.held_at.iter();
        at.map(|hanger| (hanger.leg, hanger.at.in_inches()))
            .collect()
    }

    /// 10 ft take three steps of 40 in, both ends held; 8 ft exactly two of 48.
    #[test]
    fn a_leg_is_held_at_both_ends_and_in_equal_steps() {
        let ten = run(&[(Direction::Left, 120)]);
        assert_eq!(held(&ten), [(0, 0.0), (0, 40.0), (0, 80.0), (0, 120.0)]);
        let eight = run(&[(Direction::Left, 96)]);
        assert_eq!(held(&eight), [(0, 0.0), (0, 48.0), (0, 96.0)]);
    }

    /// From beside the elbow, 2 1/2 in before its centre, 80 in to the end: two steps of 41 1/4.
    #[test]
    fn a_step_goes_round_a_fitting_and_none_sits_on_its_hub() {
        let round = run(&[(Direction::Left, 40), (Direction::Back, 80)]);
        assert_eq!(held(&round), [(0, 0.0), (0, 37.5), (1, 38.75), (1, 80.0)]);
        // An upright leg has 10 ft.
        let up = run(&[(Direction::Left, 40), (Direction::Up, 80)]);
        assert_eq!(held(&up), [(0, 0.0), (0, 37.5), (1, 80.0)]);
    }

    /// However long the legs are, no two hangers are farther apart along the pipe than the table has.
    #[test]
    fn no_step_is_longer_than_the_table() {
        for (first, second) in [(7, 300), (49, 47), (100, 101), (143, 8)] {
            let legs = [(Direction::Left, first), (Direction::Back, second)];
            let along = held(&run(&legs));
            let place = |(leg, at): &(usize, f64)| if *leg == 0 { *at } else { first as f64 + at };
            let places: Vec<f64> = along.iter().map(place).collect();
            assert!(
                places.windows(2).all(|two| two[1] - two[0] <= 48.0 + 1e-6),
                "{places:?}"
            );
        }
    }
}
