//! The joists and studs on the way, and the holes in them.

use super::{Ask, Hole, Through, fall_in};
use crate::handbook::drain as book;
use crate::measure::Length;
use crate::site::{Member, hole_for};

/// What is bored, and the places of its members from the upper end.
pub(super) fn members(ask: &Ask) -> Option<(Member, Vec<Length>)> {
    let (first, spacing, _) = ask.through.spaced()?;
    let places = std::iter::successors(Some(first), |at| Some(*at + spacing));
    let places = places.take_while(|at| *at <= ask.run).collect();
    Some((ask.through.member()?, places))
}

/// The hole as asked for, or the usual one.
pub(super) fn hole(ask: &Ask) -> Length {
    ask.hole
        .unwrap_or_else(|| hole_for(ask.size.of(&book::OUTSIDE.value)))
}

/// How far from a stud's face the pipe's centre stands.
pub(super) fn across(ask: &Ask) -> Option<Length> {
    match ask.through {
        Through::Studs { depth, across, .. } => Some(across.unwrap_or_else(|| depth.half())),
        _ => None,
    }
}

/// The height of the pipe's centre at the upper end: as asked for, or as high as the first joist lets it stand, so that
/// the run goes farthest.
pub(super) fn start(ask: &Ask, fall: Length) -> Length {
    let highest = || match (ask.through, members(ask)) {
        (Through::Joists { first, depth, .. }, Some((member, _))) => {
            let at = member.centres(hole(ask)).map_or(depth.half(), |(_, to)| to);
            at + fall_in(first, fall)
        }
        _ => Length::ZERO,
    };
    ask.start.unwrap_or_else(highest)
}

/// Each hole on the way.
pub(super) fn holes(ask: &Ask, start: Length, fall: Length) -> Vec<Hole> {
    let Some((member, places)) = members(ask) else {
        return Vec::new();
    };
    let pipe = ask.size.of(&book::OUTSIDE.value);
    let each = places.into_iter().map(|at| {
        let centre = start - fall_in(at, fall);
        let hole = hole(ask);
        let faults = match across(ask) {
            Some(from_face) => Some(member.faults(hole, from_face)),
            None => member.crossed(pipe, hole, centre),
        };
        Hole {
            at,
            centre,
            clear: faults.is_none(),
            faults: faults.unwrap_or_default(),
        }
    });
    each.collect()
}

/// How far from the upper end the last hole within the limits can be.
pub(super) fn reach(ask: &Ask, start: Length, fall: Length) -> Option<Length> {
    let (member, places) = members(ask)?;
    if !matches!(ask.through, Through::Joists { .. }) || places.is_empty() {
        return None;
    }
    let (from, _) = member.centres(hole(ask))?;
    let room = start - from;
    if room < Length::ZERO || !fall.is_positive() {
        return None;
    }
    let foot = i128::from(Length::feet(1).as_nm());
    let reach = i128::from(room.as_nm()) * foot / i128::from(fall.as_nm());
    Some(Length::nm(
        reach.min(i128::from(Length::LONGEST.as_nm())) as i64
    ))
}

/// Plates over the pipe: one on each face of each stud that it comes too near to.
pub(super) fn plates(ask: &Ask) -> u32 {
    let (Some((member, places)), Some(across)) = (members(ask), across(ask)) else {
        return 0;
    };
    let pipe = ask.size.of(&book::OUTSIDE.value);
    let faces = member
        .plates(pipe, across)
        .iter()
        .filter(|near| **near)
        .count();
    (places.len() * faces) as u32
}
