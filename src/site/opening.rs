//! A door, a window, a niche or a pass-through in a wall.

use crate::measure::Length;

/// A rectangular opening in one wall, as seen from inside the room.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// What it is.
    pub kind: OpeningKind,
    /// The wall it is in, counted from 0.
    pub wall: usize,
    /// From the left corner of the wall to its left edge; `None` until measured.
    pub from_left: Option<Length>,
    /// Across; `None` until measured.
    pub width: Option<Length>,
    /// Up; `None` until measured.
    pub height: Option<Length>,
    /// From the floor to its lower edge; nothing for a door.
    pub sill: Option<Length>,
    /// How a door hangs; `None` until it is asked, and for anything else.
    pub hinge: Option<Hinge>,
}

/// Left or right, as seen from inside the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Side {
    /// Left.
    #[default]
    Left,
    /// Right.
    Right,
}

impl Side {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        }
    }
}

/// How a door hangs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Hinge {
    /// The side that its hinges are on, as seen from inside the room.
    pub side: Side,
    /// It opens out of the room.
    pub out: bool,
}

/// What an opening is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpeningKind {
    /// A door, from the floor up.
    Door,
    /// A window.
    Window,
    /// A recess in the wall.
    Niche,
    /// A hole to the next room.
    PassThrough,
}
