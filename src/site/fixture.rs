//! Basin, toilet, tub, shower and heater: their size by hand, and the room that is left about them.

use super::Id;
use crate::measure::Length;

/// What a fixture is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FixtureKind {
    /// A wash basin.
    Basin,
    /// A toilet.
    Toilet,
    /// A bath tub.
    Tub,
    /// A shower.
    Shower,
    /// A heater.
    Heater,
}

impl FixtureKind {
    /// Every kind, in the order of a list.
    pub const ALL: [FixtureKind; 5] = [
        FixtureKind::Basin,
        FixtureKind::Toilet,
        FixtureKind::Tub,
        FixtureKind::Shower,
        FixtureKind::Heater,
    ];

    /// What it is called on a screen.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            FixtureKind::Basin => "Basin",
            FixtureKind::Toilet => "Toilet",
            FixtureKind::Tub => "Tub",
            FixtureKind::Shower => "Shower",
            FixtureKind::Heater => "Heater",
        }
    }
}

/// A fixture against a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixture {
    /// What it is known by in its room.
    pub id: Id,
    /// What it is.
    pub kind: FixtureKind,
    /// The wall that its back is to.
    pub wall: usize,
    /// From the left corner of the wall to its centre line.
    pub from_left: Option<Length>,
    /// From the wall to its back; nothing where it stands against it.
    pub out: Option<Length>,
    /// Across.
    pub width: Option<Length>,
    /// From its back to its front.
    pub depth: Option<Length>,
    /// High.
    pub height: Option<Length>,
    /// What the person says of it.
    pub note: String,
}

impl Fixture {
    /// One of a kind, nothing of it measured.
    #[must_use]
    pub fn new(kind: FixtureKind, wall: usize) -> Fixture {
        Fixture {
            id: Id::fresh(),
            kind,
            wall,
            from_left: None,
            out: None,
            width: None,
            depth: None,
            height: None,
            note: String::new(),
        }
    }

    /// From its left and its right edge along the wall, once it is measured.
    #[must_use]
    pub fn reach(&self) -> Option<(Length, Length)> {
        let (at, half) = (self.from_left?, self.width?.half());
        Some((at - half, at + half))
    }
}
