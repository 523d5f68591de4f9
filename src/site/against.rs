//! What stands against the walls: the stretch of each wall that a fixture covers at the floor; and how far corners turn.

use super::{Fixture, Room, Shape, footprint, surveyed};
use crate::geometry::Point;
use crate::measure::{Angle, Length};

/// How near to a wall something stands that stands against it.
const NEAR: Length = Length::inches(1);

/// A stretch of a wall that a fixture covers, from the wall's left corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Against {
    /// The fixture, counted from 0.
    pub fixture: usize,
    /// The wall.
    pub wall: usize,
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// The stretches of walls that fixtures stand against, by the floor that each takes; a tub in an alcove covers parts of
/// three walls.
///
/// # Inputs
/// The room and its outline. A fixture without its depth covers its own wall alone; one not placed covers nothing.
/// # Gives
/// Stretches within their walls, by fixture, then by wall.
/// # Source
/// Plane geometry; within an inch of a wall counts as against it.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Fixture, FixtureKind, Room, against, shape}};
/// let mut room = Room::rectangle("Washroom");
/// room.walls[0].length = Some(Length::inches(96));
/// room.walls[1].length = Some(Length::inches(60));
/// let mut tub = Fixture::new(FixtureKind::Tub, 0);
/// tub.from_left = Some(Length::inches(15));
/// tub.width = Some(Length::inches(30));
/// tub.depth = Some(Length::inches(60));
/// room.fixtures.push(tub);
/// let found = against(&room, &shape(&room).unwrap());
/// assert_eq!(found.iter().map(|a| a.wall).collect::<Vec<_>>(), [0, 2, 3]);
/// ```
#[must_use]
pub fn against(room: &Room, shape: &Shape) -> Vec<Against> {
    let mut all = Vec::new();
    for (fixture, one) in room.fixtures.iter().enumerate() {
        for (wall, (length, _)) in shape.walls.iter().enumerate() {
            let Some((from, to)) = covers(one, shape, wall, *length) else {
                continue;
            };
            let (from, to) = (from.max(Length::ZERO), to.min(*length));
            if to > from {
                all.push(Against {
                    fixture,
                    wall,
                    from,
                    to,
                });
            }
        }
    }
    all
}

/// From where to where along a wall a fixture covers it.
fn covers(
    fixture: &Fixture,
    shape: &Shape,
    wall: usize,
    length: Length,
) -> Option<(Length, Length)> {
    let own = fixture.wall == wall && fixture.out.unwrap_or_default() <= NEAR;
    if own {
        return fixture.reach();
    }
    let corners = &shape.corners.points;
    let from = *corners.get(wall)?;
    let to = corners[(wall + 1) % corners.len()];
    let long = from.distance(to).metres();
    if long < 1e-9 {
        return None;
    }
    let (ux, uy) = (
        (to.x - from.x).metres() / long,
        (to.y - from.y).metres() / long,
    );
    // Along the wall and out from it.
    let seen = |at: Point| {
        let (x, y) = ((at.x - from.x).metres(), (at.y - from.y).metres());
        (x * ux + y * uy, y * ux - x * uy)
    };
    let foot = footprint(fixture, shape)?.map(seen);
    let near = NEAR.metres();
    if foot.iter().all(|(_, out)| *out < -near) {
        return None;
    }
    let mut reach: Option<(f64, f64)> = None;
    let mut take = |along: f64| {
        let (least, most) = reach.unwrap_or((along, along));
        reach = Some((least.min(along), most.max(along)));
    };
    for n in 0..4 {
        let (a, b) = (foot[n], foot[(n + 1) % 4]);
        if a.1 <= near {
            take(a.0);
        }
        // Where an edge crosses the line an inch out.
        if (a.1 <= near) != (b.1 <= near) {
            take(a.0 + (b.0 - a.0) * (near - a.1) / (b.1 - a.1));
        }
    }
    let (least, most) = reach?;
    // A corner that only touches covers nothing; what is measured beyond the drawn wall ends with it.
    let share = length.metres() / long;
    let (least, most) = (
        Length::from_metres(least * share)?,
        Length::from_metres(most * share)?,
    );
    (most - least > NEAR).then_some((least, most))
}

/// How far the walls turn at each corner as the tape has it: at the right end of each wall.
///
/// # Inputs
/// Any room.
/// # Gives
/// The turn that was said, and what the tape found it to turn more; as said where the tape does not settle it.
/// # Source
/// [`surveyed`].
/// # Example
/// ```
/// use storyrod::{measure::Angle, site::{Room, true_turns}};
/// assert_eq!(true_turns(&Room::rectangle("Washroom")), [Angle::RIGHT; 4]);
/// ```
#[must_use]
pub fn true_turns(room: &Room) -> Vec<Angle> {
    let found = surveyed(room);
    let count = room.walls.len();
    let turn = |wall: usize| {
        let corner = found.as_ref()?.corners.get((wall + 1) % count)?;
        corner.by_tape.then_some(corner.off)
    };
    let walls = room.walls.iter().enumerate();
    walls
        .map(|(at, wall)| wall.turn + turn(at).unwrap_or_default())
        .collect()
}
