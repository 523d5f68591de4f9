//! What is asked of a patch: the hole, the board, the wall and what the person chose.

use crate::measure::Length;
use crate::site::Studs;

/// A hole in gypsum board and what is known about the wall round it.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The hole.
    pub hole: Hole,
    /// Thickness of the board.
    pub board: Length,
    /// The wall, as far as it is measured.
    pub wall: WallFacts,
    /// Where the studs stand; `None` until they were found.
    pub studs: Option<Studs>,
    /// Gap between the piece and the old board, all round.
    pub gap: Length,
    /// The person's choice; `None` leaves it to the rules.
    pub method: Option<Method>,
    /// Most that two screws on one support are apart.
    pub screw_spacing: Length,
    /// The wall is part of a fire-rated assembly.
    pub fire_rated: bool,
    /// Other holes in the same wall.
    pub other_holes: Vec<Hole>,
    /// The air that the compound dries in.
    pub air: Air,
}

/// The air that compound dries in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// In °F.
    pub fahrenheit: f64,
    /// Relative, in per cent.
    pub humidity: f64,
}

impl Default for Air {
    /// 70 °F and half humidity.
    fn default() -> Air {
        Air {
            fahrenheit: 70.0,
            humidity: 50.0,
        }
    }
}

impl Default for Ask {
    fn default() -> Ask {
        Ask {
            hole: Hole {
                shape: HoleShape::Rectangle {
                    width: Length::inches(10),
                    height: Length::inches(8),
                },
                from_left: None,
                from_stud: None,
                above_floor: None,
            },
            board: Length::in_64(0, 32),
            wall: WallFacts::default(),
            studs: None,
            gap: Length::in_64(0, 8),
            method: None,
            screw_spacing: Length::inches(12),
            fire_rated: false,
            other_holes: Vec::new(),
            air: Air::default(),
        }
    }
}

/// One hole: how large, and where in the wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// Its shape and size.
    pub shape: HoleShape,
    /// Left corner of the wall to the left edge of the hole.
    pub from_left: Option<Length>,
    /// Counted from 0, the stud that it was measured from, and from that stud's centre to the left edge of the hole
    /// (less than nothing to the left); used where `from_left` is not known.
    pub from_stud: Option<(usize, Length)>,
    /// Floor to its lower edge.
    pub above_floor: Option<Length>,
}

/// The shape of a hole.
#[derive(Clone, Debug, PartialEq)]
pub enum HoleShape {
    /// A hole that a rectangle covers.
    Rectangle {
        /// Across.
        width: Length,
        /// Up.
        height: Length,
    },
    /// A round hole.
    Round {
        /// Its diameter.
        across: Length,
    },
}

impl HoleShape {
    /// The rectangle that covers it: across and up.
    #[must_use]
    pub fn size(&self) -> (Length, Length) {
        match *self {
            HoleShape::Rectangle { width, height } => (width, height),
            HoleShape::Round { across } => (across, across),
        }
    }
}

/// A wall, as far as it is measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WallFacts {
    /// Corner to corner.
    pub length: Option<Length>,
    /// Floor to ceiling.
    pub height: Option<Length>,
    /// Doors, windows and whatever else no board can cross.
    pub obstacles: Vec<Obstacle>,
}

/// A rectangle in the wall that no board crosses.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// Left corner of the wall to its left edge.
    pub left: Length,
    /// Left corner of the wall to its right edge.
    pub right: Length,
    /// Floor to its lower edge.
    pub bottom: Length,
    /// Floor to its upper edge.
    pub top: Length,
}

/// A way to mend a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Fill with compound, with mesh over it.
    Fill,
    /// A rigid self-adhesive patch over the hole.
    AdhesivePatch,
    /// A piece of board screwed to strips behind the old board.
    BackedPatch,
    /// Old board cut back to the studs and a piece screwed to them.
    CutBack,
}

/// A figure that the person gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Width of a rectangular hole.
    HoleWidth,
    /// Height of a rectangular hole.
    HoleHeight,
    /// Diameter of a round hole.
    HoleAcross,
    /// Left corner to the hole.
    FromLeft,
    /// Floor to the hole.
    AboveFloor,
    /// Thickness of the board.
    Board,
    /// Gap round the piece.
    Gap,
    /// Screw spacing.
    ScrewSpacing,
    /// Left corner to the first stud.
    FirstStud,
    /// Stud to stud.
    StudSpacing,
    /// Width of a stud's face.
    StudFace,
    /// Length of the wall.
    WallLength,
    /// Height of the wall.
    WallHeight,
}

/// Why no figure can be given; it names what to put right.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// The figure is needed and not there.
    Missing {
        /// Which.
        field: Field,
    },
    /// The figure is less than it can be.
    TooSmall {
        /// Which.
        field: Field,
        /// What was given.
        is: Length,
        /// The least that works.
        least: Length,
    },
    /// The figure is more than it can be.
    TooLarge {
        /// Which.
        field: Field,
        /// What was given.
        is: Length,
        /// The most that works.
        most: Length,
    },
    /// The hole reaches past the end of the wall or past its top.
    PastTheWall {
        /// Where the hole begins.
        field: Field,
        /// Where it would end.
        reaches: Length,
        /// The wall's own figure.
        clash: Field,
        /// Where the wall ends.
        limit: Length,
    },
    /// The hole lies over a door, a window or another opening.
    OverAnOpening {
        /// Which obstacle, counted from 0.
        obstacle: usize,
    },
    /// An opening's edges are the wrong way round, or farther than any wall reaches.
    ObstacleInsideOut {
        /// Which obstacle, counted from 0.
        obstacle: usize,
    },
    /// The hole was measured from a stud that is not there.
    NoSuchStud {
        /// The stud that was named, counted from 0.
        named: usize,
        /// How many studs are known.
        known: usize,
    },
    /// A stud stands left of the one before it, or at the same place.
    StudsOutOfOrder {
        /// The stud, counted from 0.
        at: usize,
    },
    /// The gap leaves no board, or none that a screw can hold.
    GapLeavesNoPiece {
        /// The gap.
        gap: Length,
        /// The opening's smaller side.
        opening: Length,
    },
}
