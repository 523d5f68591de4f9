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
