//! Where a run ends, and how far that may be off.

use super::ask::{Ask, By, Place};
use super::cut::{Between, LegCut, leg_cut, seated};
use super::problem::Problem;
use super::walk::{Heading, Walk, along};
use crate::handbook::pipe::{Family, thread};
use crate::measure::Length;

/// Every leg's pipe, those that are left over to the end with them, and where the run ends; `None` where a take-off of
/// it is not known.
pub(super) fn cuts(ask: &Ask, walk: &Walk) -> Result<(Vec<LegCut>, Option<Place>), Problem> {
    let mut found: Vec<Option<LegCut>> = Vec::new();
    for leg in 0..ask.legs.len() {
        found.push(leg_cut(ask, walk, leg)?);
    }
    let mut end = Some(Place::default());
    for (cut, heading) in found.iter().zip(&walk.headings) {
        if let Some(cut) = cut {
            end = end
                .zip(cut.span)
                .map(|(end, span)| end.plus(along(span, *heading)));
        }
    }
    for leg in 0..found.len() {
        if found[leg].is_none() {
            let (Some(target), Some(at)) = (ask.closes, end) else {
                return Err(missing(ask, walk, leg));
            };
            // Only one leg along an axis can be whatever is left of it.
            let heading = walk.headings[leg];
            let alike = |other: usize| {
                let other_heading = walk.headings[other];
                other != leg
                    && ask.legs[other].by == By::Rest
                    && axis(other_heading) == axis(heading)
            };
            if axis(heading).is_none() || (0..found.len()).any(alike) {
                return Err(Problem::NothingToClose { leg });
            }
            let off = target.minus(at).axes();
            let span: Length = off
                .iter()
                .zip(heading)
                .map(|(off, part)| *off * part as i64)
                .sum();
            let cut = Between::of(ask, walk, leg).spanning(span)?;
            seated(ask, leg, &cut, Length::ZERO)?;
            end = Some(at.plus(along(span, heading)));
            found[leg] = Some(cut);
        }
    }
    let found: Vec<LegCut> = found.into_iter().flatten().collect();
    Ok((found, end))
}

/// Why a leg cannot be what is left: the end is not said, or a fitting on the way is not measured.
fn missing(ask: &Ask, walk: &Walk, leg: usize) -> Problem {
    let unknown = (0..ask.legs.len())
        .flat_map(|leg| Between::of(ask, walk, leg).ends.map(|end| (leg, end)))
        .find_map(|(leg, end)| {
            let end = end?;
            end.take_off.is_none().then_some((leg, end.shape))
        });
    match (ask.closes, unknown) {
        (Some(_), Some((leg, shape))) => Problem::NotMeasured { leg, shape },
        _ => Problem::NothingToClose { leg },
    }
}

/// The axis that a heading is along.
fn axis(heading: Heading) -> Option<usize> {
    heading.iter().position(|part| part.abs() == 1.0)
}

/// How far the end may move, along right, forward and up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Swing {
    /// Every cut off the same way.
    pub worst: Place,
    /// Cuts off by chance: the root of the sum of their squares.
    pub likely: Place,
}

/// How far off the pipe of a leg may be: by the tape at each cut, and by two turns of each thread.
///
/// At worst, and squared.
fn off(ask: &Ask, leg: usize, cut: &LegCut) -> (Length, f64) {
    if cut.cut.is_none() {
        return (Length::ZERO, 0.0);
    }
    let cuts = i64::from(ask.legs[leg].couplings) + 1;
    let turns = match ask.pipe.family() {
        Family::Steel => thread(ask.size_of(leg)).map(|thread| thread.two_turns()),
        _ => None,
    };
    let threads = cut.ends.iter().flatten().count() as i64 + 2 * (cuts - 1);
    let turns = turns.unwrap_or_default();
    let squares = |length: Length, times: i64| length.metres().powi(2) * times as f64;
    (
        ask.tape * cuts + turns * threads,
        squares(ask.tape, cuts) + squares(turns, threads),
    )
}

/// How far the end of the run may move where every cut is off by what the tape may be off.
pub(super) fn swing(ask: &Ask, walk: &Walk, cuts: &[LegCut]) -> Swing {
    let mut worst = [Length::ZERO; 3];
    let mut squares = [0.0; 3];
    for (leg, cut) in cuts.iter().enumerate() {
        let (most, square) = off(ask, leg, cut);
        for (axis, part) in walk.headings[leg].iter().enumerate() {
            worst[axis] += Length::from_metres(most.metres() * part.abs()).unwrap_or_default();
            squares[axis] += square * part * part;
        }
    }
    Swing {
        worst: Place::of(worst),
        likely: Place::of(squares.map(|sum| Length::from_metres(sum.sqrt()).unwrap_or_default())),
    }
}

/// A leg that is cut last and long, so that it takes up what the others along it are off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Last {
    /// The leg.
    pub leg: usize,
    /// By how much it is cut longer.
    pub long: Length,
}

/// For each axis along which more than one cut lies, the longest straight leg of it.
pub(super) fn last(ask: &Ask, walk: &Walk, cuts: &[LegCut]) -> Vec<Last> {
    (0..3)
        .filter_map(|way| {
            let share = |leg: usize| walk.headings[leg][way].abs();
            let on_it = |leg: &usize| cuts[*leg].cut.is_some() && share(*leg) > 0.0;
            let takes = (0..cuts.len())
                .filter(|leg| on_it(leg) && share(*leg) == 1.0)
                .max_by_key(|leg| (cuts[*leg].cut, *leg))?;
            let long: Length = (0..cuts.len())
                .filter(|leg| on_it(leg) && *leg != takes)
                .filter_map(|leg| {
                    let (most, _) = off(ask, leg, &cuts[leg]);
                    Length::from_metres(most.metres() * share(leg))
                })
                .sum();
            long.is_positive().then_some(Last { leg: takes, long })
        })
        .collect()
}

/// A run that has to end at a place ends there, within what its cuts may be off.
pub(super) fn closes(
    ask: &Ask,
    walk: &Walk,
    cuts: &[LegCut],
    end: Option<Place>,
    swing: Swing,
) -> Result<Option<Place>, Problem> {
    let Some(target) = ask.closes else {
        return Ok(None);
    };
    let Some(end) = end else {
        return Err(missing(ask, walk, 0));
    };
    let off = end.minus(target);
    let over = |way: usize| (off.axes()[way].abs() - swing.worst.axes()[way]).max(Length::ZERO);
    let Some(way) = (0..3)
        .filter(|way| over(*way).is_positive())
        .max_by_key(|way| over(*way))
    else {
        return Ok(Some(off));
    };
    let share = |leg: usize| walk.headings[leg][way];
    let mends = (0..cuts.len())
        .filter(|leg| matches!(ask.legs[*leg].by, By::Tape { .. }) && share(*leg).abs() > 0.25)
        .max_by_key(|leg| ((share(*leg).abs() * 1000.0) as i64, cuts[*leg].cut));
    let leg = mends.ok_or(Problem::CannotClose {
        leg: cuts.len() - 1,
        off,
    })?;
    let By::Tape { length: is, .. } = ask.legs[leg].by else {
        return Err(Problem::CannotClose { leg, off });
    };
    let by = Length::from_metres(off.axes()[way].metres() / share(leg)).unwrap_or_default();
    Err(if (is - by).is_positive() {
        let would_be = is - by;
        Problem::DoesNotClose {
            off,
            leg,
            is,
            would_be,
        }
    } else {
        Problem::CannotClose { leg, off }
    })
}
