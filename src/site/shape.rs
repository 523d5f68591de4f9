//! The outline of a room from its walls and turns, with what follows from the rest.

use super::survey::{What, surveyed, tape_tolerance};
use super::{Room, guess};
use crate::geometry::{Point, Polygon};
use crate::measure::{Angle, Length};

/// How a wall's length is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// With the tape.
    Measured,
    /// It follows from the other walls.
    Follows,
    /// Not yet; the sketch guesses.
    NotYet,
}

/// The outline of a room.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// The left corner of each wall, clockwise.
    pub corners: Polygon,
    /// Each wall's length as drawn or measured, and how it is known.
    pub walls: Vec<(Length, Standing)>,
    /// By how much the measured walls do not close.
    pub misfit: Option<Misfit>,
}

/// Measured walls that do not come back to where they started; the last wall is drawn to close.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Misfit {
    /// The wall that is drawn to close.
    pub wall: usize,
    /// As it was measured.
    pub measured: Length,
    /// As it is drawn.
    pub drawn: Length,
    /// From where the measured walls end to where they started.
    pub gap: Length,
}

/// Why a room has no shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// Fewer than three walls.
    TooFewWalls,
    /// A wall measured as nothing or less.
    ZeroWall(usize),
    /// The turns do not come to 360°.
    TurnsDoNotClose {
        /// What they come to.
        sum: Angle,
    },
    /// A turn of 180° or more.
    TurnImpossible(usize),
    /// Two walls cross or touch.
    WallsCross(usize, usize),
    /// A corner that does not turn at all: the two walls beside it are one.
    NoTurn(usize),
    /// A diagonal longer than the walls that lead from one of its corners to the other.
    DiagonalTooLong {
        /// Its corners.
        corners: (usize, usize),
        /// As it was read.
        read: Length,
        /// Those walls together.
        around: Length,
    },
    /// A diagonal shorter than its two walls differ by.
    DiagonalTooShort {
        /// Its corners.
        corners: (usize, usize),
        /// As it was read.
        read: Length,
        /// What the longer wall is longer.
        least: Length,
    },
    /// A wall would have to run backwards to close the room.
    ClosesBackwards {
        /// That wall.
        wall: usize,
    },
}

/// The way each wall runs: wall 0 to the right on the sheet, or as the room is turned; each next turned by the turn
/// before it.
pub(super) fn headings(room: &Room) -> Vec<Angle> {
    let mut heading = Angle::degrees(90 * i64::from(room.facing % 4));
    let mut all = Vec::with_capacity(room.walls.len());
    for wall in &room.walls {
        all.push(heading);
        heading = heading + wall.turn;
    }
    all
}

/// A wall as a step across the sheet.
fn step(length: Length, heading: Angle) -> Point {
    let (sine, cosine) = heading.sin_cos();
    let part = |share: f64| {
        if share == 1.0 {
            length
        } else if share == -1.0 {
            -length
        } else {
            Length::nm((length.metres() * share * 1e9).round() as i64)
        }
    };
    Point::new(part(cosine), part(sine))
}

/// What the known walls leave open: where they end, seen from where they started.
pub(super) fn end(
    walls: &[(Length, Standing)],
    ways: &[Angle],
    counts: impl Fn(usize) -> bool,
) -> Point {
    (0..walls.len())
        .filter(|&wall| counts(wall))
        .fold(Point::default(), |at, wall| {
            at + step(walls[wall].0, ways[wall])
        })
}

/// Fills in what follows along one axis (0 across, 1 up and down) of a right-angled room.
fn follow_square(walls: &mut [(Length, Standing)], ways: &[Angle], axis: i64) {
    let on_axis = |wall: usize| guess::quarter(ways[wall]) % 2 == axis;
    let open: Vec<usize> = (0..walls.len())
        .filter(|&wall| on_axis(wall) && walls[wall].1 == Standing::NotYet)
        .collect();
    if let [wall] = open[..] {
        let left = end(walls, ways, |other| on_axis(other) && other != wall);
        let along = if axis == 0 { left.x } else { left.y };
        let length = if guess::quarter(ways[wall]) < 2 {
            -along
        } else {
            along
        };
        walls[wall] = (length, Standing::Follows);
    }
}

/// Fills in two walls that are not parallel, from closure.
fn follow_pair(walls: &mut [(Length, Standing)], ways: &[Angle]) {
    let open: Vec<usize> = (0..walls.len())
        .filter(|&w| walls[w].1 == Standing::NotYet)
        .collect();
    let [first, second] = open[..] else { return };
    let left = end(walls, ways, |wall| wall != first && wall != second);
    let ((s1, c1), (s2, c2)) = (ways[first].sin_cos(), ways[second].sin_cos());
    let across = c1 * s2 - s1 * c2;
    if across.abs() < 1e-9 {
        return;
    }
    let (x, y) = (-left.x.metres(), -left.y.metres());
    let lengths = ((x * s2 - y * c2) / across, (c1 * y - s1 * x) / across);
    if let (Some(one), Some(two)) = (
        Length::from_metres(lengths.0),
        Length::from_metres(lengths.1),
    ) {
        walls[first] = (one, Standing::Follows);
        walls[second] = (two, Standing::Follows);
    }
}

/// Each wall with what follows filled in; the rest as sketched.
fn followed(room: &Room, ways: &[Angle]) -> Vec<(Length, Standing)> {
    let start = |wall: &super::Wall| match wall.length {
        Some(length) => (length, Standing::Measured),
        None => (wall.sketched, Standing::NotYet),
    };
    let mut walls: Vec<_> = room.walls.iter().map(start).collect();
    if guess::right_angled(ways) {
        follow_square(&mut walls, ways, 0);
        follow_square(&mut walls, ways, 1);
    } else {
        follow_pair(&mut walls, ways);
    }
    let open: Vec<usize> = (0..walls.len())
        .filter(|&w| walls[w].1 == Standing::NotYet)
        .collect();
    if let [wall] = open[..] {
        let left = end(&walls, ways, |other| other != wall);
        walls[wall] = (Point::default().distance(left), Standing::Follows);
    }
    guess::close(&mut walls, ways);
    walls
}

/// The corners as walked, and the step from the last corner reached back to the start.
fn laid_out(walls: Vec<(Length, Standing)>, ways: &[Angle]) -> Shape {
    // The walk starts after the wall that follows, so that that wall is the one that closes.
    let count = walls.len();
    let last = walls.iter().rposition(|wall| wall.1 == Standing::Follows);
    let closing = last.unwrap_or(count.saturating_sub(1));
    let mut corners = vec![Point::default(); count];
    let mut at = Point::default();
    for walked in 1..=count {
        let wall = (closing + walked) % count;
        corners[wall] = at;
        if wall != closing {
            at = at + step(walls[wall].0, ways[wall]);
        }
    }
    let all_measured = walls.iter().all(|wall| wall.1 == Standing::Measured);
    let misfit = walls
        .get(closing)
        .filter(|_| all_measured)
        .and_then(|wall| {
            let gap = Point::default().distance(at + step(wall.0, ways[closing]));
            let drawn = Point::default().distance(at);
            // A hundredth of a millimetre is below any tape and above the rounding of a slanted wall.
            let closes = gap <= Length::nm(10_000);
            (!closes).then_some(Misfit {
                wall: closing,
                measured: wall.0,
                drawn,
                gap,
            })
        });
    Shape {
        corners: Polygon { points: corners },
        walls,
        misfit,
    }
}

/// The corners as the walls walk with their turns as said; `None` where a wall would run backwards.
#[must_use]
pub fn laid_as_said(room: &Room) -> Option<Vec<Point>> {
    let ways = headings(room);
    let walls = followed(room, &ways);
    let forward = walls.len() >= 3 && walls.iter().all(|(length, _)| length.is_positive());
    forward.then(|| laid_out(walls, &ways).corners.points)
}

/// The outline as the tape has it, where diagonals were measured; a wall that they settle follows.
fn as_surveyed(room: &Room, mut shape: Shape) -> Shape {
    let Some(found) = surveyed(room) else {
        return shape;
    };
    for (wall, found) in shape.walls.iter_mut().zip(&found.walls) {
        if wall.1 != Standing::Measured {
            *wall = (found.length, Standing::Follows);
        }
    }
    shape.corners = found.outline;
    shape.misfit = None;
    shape
}

/// A diagonal that no triangle or chain of walls can have, by more than the tape may be off.
fn impossible_triangle(room: &Room, walls: &[(Length, Standing)]) -> Result<(), Problem> {
    let count = walls.len();
    for (&what, &read) in &room.survey.figures {
        let What::Diagonal(a, b) = what else { continue };
        if !room.has(what) {
            continue;
        }
        let slack = tape_tolerance(read) * 4 + room.mark(what).estimate.unwrap_or_default();
        let clockwise: Vec<usize> = (a..b).collect();
        let back: Vec<usize> = (b..count).chain(0..a).collect();
        for chain in [clockwise, back] {
            if chain
                .iter()
                .any(|wall| walls[*wall].1 != Standing::Measured)
            {
                continue;
            }
            let guessed = |wall: &usize| room.mark(What::Wall(*wall)).estimate.unwrap_or_default();
            let slack = slack + chain.iter().map(guessed).sum();
            let around: Length = chain.iter().map(|wall| walls[*wall].0).sum();
            let corners = (a, b);
            if read > around + slack {
                return Err(Problem::DiagonalTooLong {
                    corners,
                    read,
                    around,
                });
            }
            if let [one, other] = chain[..] {
                let least = (walls[one].0 - walls[other].0).abs();
                if read + slack < least {
                    return Err(Problem::DiagonalTooShort {
                        corners,
                        read,
                        least,
                    });
                }
            }
        }
    }
    Ok(())
}

/// The outline of a room: closure of its walls, Σ length·(cos, sin) = 0.
///
/// # Inputs
/// A room whose turns come to 360°; walls not measured follow where the others fix them.
/// # Gives
/// Its corners and how each wall is known; measured walls that do not close are a [`Misfit`].
/// # Errors
/// [`Problem`], naming the walls.
/// # Source
/// Plane geometry.
pub fn shape(room: &Room) -> Result<Shape, Problem> {
    if room.walls.len() < 3 {
        return Err(Problem::TooFewWalls);
    }
    for (index, wall) in room.walls.iter().enumerate() {
        if wall.turn.as_microdegrees().unsigned_abs() >= 180_000_000 {
            return Err(Problem::TurnImpossible(index));
        }
        if wall.turn == Angle::ZERO {
            return Err(Problem::NoTurn(index));
        }
        if wall.length.is_some_and(|length| !length.is_positive()) {
            return Err(Problem::ZeroWall(index));
        }
    }
    let sum = room
        .walls
        .iter()
        .fold(Angle::ZERO, |sum, wall| sum + wall.turn);
    if sum != Angle::FULL {
        return Err(Problem::TurnsDoNotClose { sum });
    }
    let ways = headings(room);
    let walls = followed(room, &ways);
    if let Some(wall) = walls
        .iter()
        .position(|wall| wall.1 != Standing::Measured && !wall.0.is_positive())
    {
        return Err(Problem::ClosesBackwards { wall });
    }
    impossible_triangle(room, &walls)?;
    let shape = as_surveyed(room, laid_out(walls, &ways));
    let known = shape.walls.iter().all(|wall| wall.1 != Standing::NotYet);
    match shape.corners.crossing() {
        Some((a, b)) if known => Err(Problem::WallsCross(a, b)),
        _ => Ok(shape),
    }
}

/// The outline to draw, always with corners.
///
/// Walls not known are drawn as near to their sketched length as lets the room close. Where the measured walls of a
/// right-angled room leave no room for one, the corners show its ways and turns only, not its lengths.
#[must_use]
pub fn sketch(room: &Room) -> Shape {
    shape(room).unwrap_or_else(|_| {
        let ways = headings(room);
        let walls = followed(room, &ways);
        let drawn = guess::forced(room, &walls, &ways);
        Shape {
            corners: laid_out(drawn, &ways).corners,
            ..laid_out(walls, &ways)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_walls_of_a_rectangle_give_the_other_two() {
        let mut room = Room::rectangle("Bath");
        room.walls[0].length = Some(Length::in_64(96, 5));
        room.walls[3].length = Some(Length::in_64(60, 3));
        let found = shape(&room).unwrap();
        assert_eq!(found.walls[2], (Length::in_64(96, 5), Standing::Follows));
        assert_eq!(found.walls[1], (Length::in_64(60, 3), Standing::Follows));
        assert_eq!(found.misfit, None);
        assert!(found.corners.clockwise());
    }
    /// 96 and 60 in: across from one end to the other it is at most 156 and at least 36 in; a corner turns.
    #[test]
    fn what_no_triangle_has_is_told_with_its_measurements() {
        let room = |diagonal: i64| {
            let mut room = Room::rectangle("Bath");
            for (wall, inches) in room.walls.iter_mut().zip([96, 60, 96, 60]) {
                wall.length = Some(Length::inches(inches));
            }
            let diagonal = Some(Length::inches(diagonal));
            room.measure(What::Diagonal(0, 2), diagonal, None);
            room
        };
        assert_eq!(
            shape(&room(160)),
            Err(Problem::DiagonalTooLong {
                corners: (0, 2),
                read: Length::inches(160),
                around: Length::inches(156),
            })
        );
        assert_eq!(
            shape(&room(30)),
            Err(Problem::DiagonalTooShort {
                corners: (0, 2),
                read: Length::inches(30),
                least: Length::inches(36),
            })
        );
        let mut flat = room(114);
        for (wall, degrees) in flat.walls.iter_mut().zip([0, 180, 90, 90]) {
            wall.turn = Angle::degrees(degrees);
        }
        assert_eq!(shape(&flat), Err(Problem::NoTurn(0)));
        flat.walls[0].turn = Angle::FULL;
        assert_eq!(shape(&flat), Err(Problem::TurnImpossible(0)));
    }
    #[test]
    fn four_walls_that_do_not_close_are_a_misfit() {
        let mut room = Room::rectangle("Bath");
        for (wall, inches) in room.walls.iter_mut().zip([96, 60, 95, 60]) {
            wall.length = Some(Length::inches(inches));
        }
        let misfit = shape(&room).unwrap().misfit.unwrap();
        assert_eq!(misfit.gap, Length::inches(1));
    }
}
