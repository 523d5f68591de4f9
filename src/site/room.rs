//! A room profile: its walls in order, its height, and what each surface gets.

use super::{Opening, Studs};
use crate::measure::{Angle, Length};

/// A room as it was measured.
///
/// Walls run clockwise as seen from above, so that someone inside who faces wall 0 and turns right faces wall 1, and
/// the start of every wall is its left corner as seen from inside.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// What the person calls it.
    pub name: String,
    /// The walls, in order.
    pub walls: Vec<Wall>,
    /// Floor to ceiling where a wall says nothing else; `None` until measured.
    pub ceiling: Option<Length>,
    /// Doors, windows, niches and pass-throughs.
    pub openings: Vec<Opening>,
    /// What the ceiling gets.
    pub ceiling_finish: Finish,
    /// What the floor gets.
    pub floor_finish: Finish,
}

/// One wall of a room.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Corner to corner; `None` until measured.
    pub length: Option<Length>,
    /// How long the sketch draws it while it is not measured.
    pub sketched: Length,
    /// The turn at its end (right corner) into the next wall: 90° at an inside corner, −90° where a corner juts in.
    pub turn: Angle,
    /// Its own height where it differs from the ceiling's.
    pub height: Option<Length>,
    /// Where its studs stand, if that is known.
    pub studs: Option<Studs>,
    /// What it gets.
    pub finish: Finish,
}

/// What a surface gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Finish {
    /// Primer and paint.
    #[default]
    Paint,
    /// Tile.
    Tile,
    /// Boards or panels.
    Boards,
    /// Left as it is.
    Leave,
}
