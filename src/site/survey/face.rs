//! Walls out of plumb and out of flat, a floor out of level, a ceiling of more than one height.

use super::{Room, Side, Third, What};
use crate::measure::Length;

/// How far a wall leans at one of its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaceCheck {
    /// The wall.
    pub wall: usize,
    /// The end.
    pub end: Side,
    /// How far its top stands into the room; less than nothing where it leans out.
    pub leans: Length,
    /// Over which height, where that is known.
    pub over: Option<Length>,
}

/// How far a wall is from straight between its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bow {
    /// The wall.
    pub wall: usize,
    /// How much further from the line its middle is than its ends; less than nothing where it bellies into the room.
    pub hollow: Length,
}

/// How far a floor is from level.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Level {
    /// How far each corner that was measured lies below the highest, by its number.
    pub below: Vec<(usize, Length)>,
    /// The highest.
    pub highest: usize,
    /// The lowest.
    pub lowest: usize,
    /// How far the lowest lies below it.
    pub out: Length,
}

/// How far each wall leans, wall by wall, left end first.
#[must_use]
pub fn leans(room: &Room) -> Vec<FaceCheck> {
    let ends = (0..room.walls.len()).flat_map(|wall| [(wall, Side::Left), (wall, Side::Right)]);
    ends.filter_map(|(wall, end)| {
        let corner = match end {
            Side::Left => wall,
            Side::Right => (wall + 1) % room.walls.len(),
        };
        Some(FaceCheck {
            wall,
            end,
            leans: room.measured(What::Lean(wall, end))?,
            over: room.height_at(wall, corner),
        })
    })
    .collect()
}

/// How far a wall is from straight: `hollow = middle − (left + right) ÷ 2`.
///
/// # Inputs
/// Three readings from a line stretched along the wall to its face.
/// # Gives
/// `None` until the three are taken.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Room, Third, What, bow}};
/// let mut room = Room::rectangle("Washroom");
/// for (third, sixteenths) in [(Third::Left, 16), (Third::Middle, 22), (Third::Right, 16)] {
///     room.measure(What::Gap(0, third), Some(Length::in_64(0, sixteenths * 4)), None);
/// }
/// assert_eq!(bow(&room, 0).unwrap().hollow, Length::in_64(0, 24));
/// ```
#[must_use]
pub fn bow(room: &Room, wall: usize) -> Option<Bow> {
    let gap = |third| room.measured(What::Gap(wall, third));
    let ends = (gap(Third::Left)? + gap(Third::Right)?).half();
    Some(Bow {
        wall,
        hollow: gap(Third::Middle)? - ends,
    })
}

/// How far the floor is from level: each corner's reading down from a level line, less the least.
///
/// # Inputs
/// A room with readings in two corners or more.
/// # Gives
/// `None` with fewer.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Room, What, floor_level}};
/// let mut room = Room::rectangle("Washroom");
/// room.measure(What::Level(0), Some(Length::inches(40)), None);
/// room.measure(What::Level(2), Some(Length::in_64(40, 24)), None);
/// assert_eq!(floor_level(&room).unwrap().out, Length::in_64(0, 24));
/// ```
#[must_use]
pub fn floor_level(room: &Room) -> Option<Level> {
    let read: Vec<(usize, Length)> = (0..room.walls.len())
        .filter_map(|corner| Some((corner, room.measured(What::Level(corner))?)))
        .collect();
    let least = *read.iter().min_by_key(|(_, down)| *down)?;
    let most = *read.iter().rev().max_by_key(|(_, down)| *down)?;
    (read.len() >= 2).then(|| Level {
        below: read
            .iter()
            .map(|(at, down)| (*at, *down - least.1))
            .collect(),
        highest: least.0,
        lowest: most.0,
        out: most.1 - least.1,
    })
}

impl Room {
    /// The height of a wall at one of its corners: as measured there, or the wall's own, or the ceiling's.
    #[must_use]
    pub fn height_at(&self, wall: usize, corner: usize) -> Option<Length> {
        self.measured(What::Height(corner))
            .or(self.walls.get(wall)?.height)
            .or(self.ceiling)
    }

    /// The height of a wall at its left and at its right end.
    #[must_use]
    pub fn heights_of(&self, wall: usize) -> Option<(Length, Length)> {
        let next = (wall + 1) % self.walls.len().max(1);
        Some((self.height_at(wall, wall)?, self.height_at(wall, next)?))
    }
}
