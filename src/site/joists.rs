//! The joists under a floor.

use super::{Member, Room, Shape, off_wall};
use crate::geometry::Point;
use crate::measure::Length;

/// Joists under a floor: which way they run, where they lie, and how deep they are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joists {
    /// The wall that they run along, counted from 0; they are measured out from it.
    pub wall: usize,
    /// From that wall to the centre of the first.
    pub first: Length,
    /// From centre to centre.
    pub spacing: Length,
    /// How thick one is.
    pub face: Length,
    /// From its lower to its upper edge.
    pub depth: Length,
    /// From the finished floor down to their upper edges.
    pub deck: Length,
    /// Engineered joists or trusses.
    pub engineered: bool,
}

/// Most joists under one floor.
const MOST: usize = 500;

impl Joists {
    /// Sawn 2×10 every 16 in along a wall, a floor of 3/4 in over them: what is shown until it is measured.
    #[must_use]
    pub fn along(wall: usize) -> Joists {
        Joists {
            wall,
            first: Length::inches(16),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
            depth: Length::in_64(9, 16),
            deck: Length::in_64(0, 48),
            engineered: false,
        }
    }

    /// What is bored.
    #[must_use]
    pub fn member(self) -> Member {
        let depth = self.depth;
        if self.engineered {
            Member::Engineered { depth }
        } else {
            Member::Joist { depth }
        }
    }

    /// From their wall to each centre no farther out than `to`, rising.
    #[must_use]
    pub fn centres(self, to: Length) -> Vec<Length> {
        if !self.spacing.is_positive() {
            return Vec::new();
        }
        std::iter::successors(Some(self.first), |at| Some(*at + self.spacing))
            .take_while(|at| *at <= to)
            .take(MOST)
            .collect()
    }

    /// The centre line of each joist within the room, on its plan: two ends each, more where the outline comes between.
    #[must_use]
    pub fn lines(self, shape: &Shape) -> Vec<(Point, Point)> {
        let corners = &shape.corners.points;
        let Some(frame) = Frame::of(shape, self.wall) else {
            return Vec::new();
        };
        let placed: Vec<(f64, f64)> = corners
            .iter()
            .map(|corner| frame.of_point(*corner))
            .collect();
        let farthest = placed.iter().map(|(_, out)| *out).fold(0.0, f64::max);
        let mut lines = Vec::new();
        for centre in self.centres(Length::from_metres(farthest).unwrap_or_default()) {
            let out = centre.metres();
            let mut met: Vec<f64> = (0..placed.len())
                .filter_map(|at| {
                    let ((ax, ay), (bx, by)) = (placed[at], placed[(at + 1) % placed.len()]);
                    ((ay > out) != (by > out)).then(|| ax + (bx - ax) * (out - ay) / (by - ay))
                })
                .collect();
            met.sort_by(f64::total_cmp);
            for ends in met.chunks_exact(2) {
                let at =
                    |along: f64| off_wall(shape, self.wall, Length::from_metres(along)?, centre);
                lines.extend(at(ends[0]).zip(at(ends[1])));
            }
        }
        lines
    }
}

/// Places as they are from a wall: along it from its left corner, and out from it; in metres.
pub(super) struct Frame {
    from: (f64, f64),
    way: (f64, f64),
}

impl Frame {
    pub(super) fn of(shape: &Shape, wall: usize) -> Option<Frame> {
        let corners = &shape.corners.points;
        let from = *corners.get(wall)?;
        let to = corners[(wall + 1) % corners.len()];
        let long = from.distance(to).metres();
        let run = to - from;
        (long > 1e-9).then(|| Frame {
            from: (from.x.metres(), from.y.metres()),
            way: (run.x.metres() / long, run.y.metres() / long),
        })
    }
    fn of_point(&self, point: Point) -> (f64, f64) {
        let (x, y) = (
            point.x.metres() - self.from.0,
            point.y.metres() - self.from.1,
        );
        let (dx, dy) = self.way;
        // Inside is to the right of the way along the wall, on a sheet whose y points down.
        (x * dx + y * dy, y * dx - x * dy)
    }
}

/// How a place beside one wall is measured out from another: how far out its left corner's frame begins, and by how much
/// a step along the first wall, and one out from it, lead further out.
///
/// `out = begins + along · per_along + out_from_first · per_out`
///
/// `None` where a wall has no length yet.
///
/// # Source
/// Plane geometry: both frames are turned and shifted, never stretched.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Room, out_from, sketch}};
/// let mut room = Room::rectangle("Washroom");
/// room.walls[0].length = Some(Length::inches(96));
/// room.walls[1].length = Some(Length::inches(60));
/// // The next wall to the right is 96 in along the first, and nears with each step along it.
/// let (begins, along, out) = out_from(&sketch(&room), 0, 1).unwrap();
/// assert_eq!((begins, along.round(), out.round()), (Length::inches(96), -1.0, 0.0));
/// ```
#[must_use]
pub fn out_from(shape: &Shape, first: usize, other: usize) -> Option<(Length, f64, f64)> {
    let (one, two) = (Frame::of(shape, first)?, Frame::of(shape, other)?);
    let (_, begins) = two.of_point(*shape.corners.points.get(first)?);
    let (along, out) = (one.way, (-one.way.1, one.way.0));
    let share = |way: (f64, f64)| {
        let share = way.1 * two.way.0 - way.0 * two.way.1;
        // Square corners stay exact.
        if (share - share.round()).abs() < 1e-9 {
            share.round()
        } else {
            share
        }
    };
    // A corner is on the nanometre grid, and so is what it is from a square wall.
    Some((Length::from_metres(begins)?, share(along), share(out)))
}

impl Room {
    /// What lies under its floor, where its joists are known and their wall is still there.
    #[must_use]
    pub fn joists_under(&self) -> Option<Joists> {
        self.joists.filter(|joists| joists.wall < self.walls.len())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::sketch;

    fn room() -> Room {
        let mut room = Room::l_shape("a");
        for (wall, inches) in [96, 48, 36, 36, 60, 84].into_iter().enumerate() {
            room.walls[wall].length = Some(Length::inches(inches));
        }
        room
    }

    /// The L is 96 in wide for 48 in out from wall A, then 60 in wide to 84 in out.
    #[test]
    fn joists_end_at_the_walls() {
        let joists = Joists::along(0);
        let lines = joists.lines(&sketch(&room()));
        let long: Vec<f64> = lines
            .iter()
            .map(|(from, to)| from.distance(*to).in_inches().round())
            .collect();
        // At 16, 32 (96 wide), at 48 along the jog, at 64 and 80 (60 wide).
        assert_eq!(long, [96.0, 96.0, 60.0, 60.0, 60.0]);
    }

    /// A place is as far out from a wall as its frame says, whichever wall it was measured from.
    #[test]
    fn frames_agree_with_the_plan() {
        let shape = sketch(&room());
        for first in 0..6 {
            for other in 0..6 {
                let (begins, per_along, per_out) = out_from(&shape, first, other).expect("walls");
                let (along, out) = (Length::inches(7), Length::inches(5));
                let at = off_wall(&shape, first, along, out).expect("a place");
                let (_, is) = Frame::of(&shape, other).expect("a wall").of_point(at);
                let says = begins.metres() + along.metres() * per_along + out.metres() * per_out;
                assert!((is - says).abs() < 1e-8, "{first} {other}: {is} {says}");
            }
        }
    }

    #[test]
    fn no_spacing_lays_none() {
        let none = Joists {
            spacing: Length::ZERO,
            ..Joists::along(0)
        };
        assert!(none.centres(Length::feet(10)).is_empty());
        assert!(Joists::along(0).centres(Length::inches(15)).is_empty());
        assert_eq!(Joists::along(0).centres(Length::LONGEST).len(), MOST);
    }
}
