//! A run of pipe on the plan of its room, under the floor between the joists.

use super::pipe_wall::{pipes, ring};
use super::{Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::measure::Length;
use crate::site::{Room, Shape};
use crate::trades::pipe::Ask;

/// The joists under a floor on its plan, by their centre lines.
#[must_use]
pub fn joists_under(room: &Room, shape: &Shape) -> Vec<Mark> {
    let joists = room.joists_under();
    let lines = joists.map_or_else(Vec::new, |joists| joists.lines(shape));
    let line = |(from, to)| Mark::line(from, to, Pen::dashed(Role::Soft, Stroke::Hair));
    lines.into_iter().map(line).collect()
}

/// Draws all lines of a run on a plan: as wide as its pipe is, its holes ringed, red where one is beyond its limits (place,
/// how large, whether it is within them). A tap on a leg sends `tag`.
pub fn run_on_floor<T: Clone>(
    scene: &mut Scene<T>,
    (ask, lines): (&Ask, &[Vec<Point>]),
    holes: &[(Point, Length, bool)],
    tag: &T,
) {
    pipes(scene, ask, lines, tag);
    for (at, across, fits) in holes {
        ring(scene, *at, *across, *fits);
    }
}
