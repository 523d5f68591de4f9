//! What is asked of a drain, and what can be wrong with it.

use crate::handbook::drain as book;
use crate::measure::{Amount, Length};
use crate::site::Member;

/// The family of codes that the place has adopted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Code {
    /// Not known: the stricter figure of all of them.
    #[default]
    Unknown,
    /// The residential code.
    Irc,
    /// The plumbing code.
    Ipc,
    /// The uniform code.
    Upc,
}

/// The size of a drain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// 1 1/4 in.
    OneAndQuarter,
    /// 1 1/2 in.
    OneAndHalf,
    /// 2 in.
    Two,
    /// 3 in.
    Three,
    /// 4 in.
    Four,
}

impl Size {
    /// From the smallest.
    pub const ALL: [Size; 5] = [
        Size::OneAndQuarter,
        Size::OneAndHalf,
        Size::Two,
        Size::Three,
        Size::Four,
    ];

    /// Its name as a length.
    #[must_use]
    pub fn length(self) -> Length {
        self.of(&book::SIZES)
    }
    /// Its figure of a row.
    #[must_use]
    pub fn of<T: Copy>(self, row: &book::BySize<T>) -> T {
        row[self as usize]
    }
}

/// What the run passes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Through {
    /// Nothing: it hangs, or lies in a bay.
    Open,
    /// Joists; heights are above their lower edge.
    Joists {
        /// From the upper end of the run to the centre of the first.
        first: Length,
        /// From centre to centre.
        spacing: Length,
        /// From edge to edge.
        depth: Length,
        /// Engineered joists or trusses.
        engineered: bool,
    },
    /// Studs; heights are above the floor.
    Studs {
        /// From the upper end of the run to the centre of the first.
        first: Length,
        /// From centre to centre.
        spacing: Length,
        /// From face to face.
        depth: Length,
        /// From one face to the pipe's centre; the middle where `None`.
        across: Option<Length>,
        /// The wall bears, or nobody knows.
        bearing: bool,
        /// Every stud on the way is doubled, two at most.
        doubled: bool,
    },
}

impl Through {
    /// From the upper end to the first joist or stud, from it to the next, and how deep they are.
    #[must_use]
    pub fn spaced(self) -> Option<(Length, Length, Length)> {
        match self {
            Through::Open => None,
            Through::Joists {
                first,
                spacing,
                depth,
                ..
            }
            | Through::Studs {
                first,
                spacing,
                depth,
                ..
            } => Some((first, spacing, depth)),
        }
    }
    /// What is bored.
    #[must_use]
    pub fn member(self) -> Option<Member> {
        Some(match self {
            Through::Open => return None,
            Through::Joists {
                depth,
                engineered: true,
                ..
            } => Member::Engineered { depth },
            Through::Joists { depth, .. } => Member::Joist { depth },
            Through::Studs {
                depth,
                bearing,
                doubled,
                ..
            } => Member::Stud {
                depth,
                bearing,
                doubled,
            },
        })
    }
}

/// A trap arm, from the weir to the vent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Arm {
    /// Its size.
    pub size: Size,
    /// How long.
    pub length: Length,
}

/// A fixture on the drain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fixture {
    /// A lavatory.
    Lavatory,
    /// A tub, with or without a shower.
    Tub,
    /// A shower.
    Shower,
    /// A water closet of no more than 1.6 gal.
    Closet,
    /// A water closet that takes more.
    LargeCloset,
}

impl Fixture {
    /// All of them.
    pub const ALL: [Fixture; 5] = [
        Fixture::Lavatory,
        Fixture::Tub,
        Fixture::Shower,
        Fixture::Closet,
        Fixture::LargeCloset,
    ];
}

/// A closet flange to be set before the wall is finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Flange {
    /// From the finished wall to its centre, by the fixture's sheet.
    pub rough_in: Length,
    /// What still comes onto the studs: board, mortar, tile.
    pub to_come: Length,
}

/// Everything that the drain's figure needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The family of codes.
    pub code: Code,
    /// The official lets 3 in and larger fall 1/8 in a foot.
    pub eighth_approved: bool,
    /// The drain.
    pub size: Size,
    /// Its fall in a foot; the least by the code where `None`.
    pub fall: Option<Length>,
    /// How far it runs, level.
    pub run: Length,
    /// The height of the pipe's centre at the upper end; as high as it may stand in joists where `None`.
    pub start: Option<Length>,
    /// What it passes through.
    pub through: Through,
    /// The hole for it; the usual one where `None`.
    pub hole: Option<Length>,
    /// The trap arm, where one is to be checked.
    pub arm: Option<Arm>,
    /// How many fixtures of each kind, in the order of [`Fixture::ALL`].
    pub fixtures: [u32; 5],
    /// The closet flange, where one is to be set.
    pub flange: Option<Flange>,
}

impl Default for Ask {
    /// A 2 in shower drain, 6 ft long, through sawn 2×10 joists 16 in apart.
    fn default() -> Ask {
        Ask {
            code: Code::Unknown,
            eighth_approved: false,
            size: Size::Two,
            fall: None,
            run: Length::feet(6),
            start: None,
            through: Through::Joists {
                first: Length::inches(8),
                spacing: Length::inches(16),
                depth: Length::in_64(9, 16),
                engineered: false,
            },
            hole: None,
            arm: None,
            fixtures: [0, 0, 1, 0, 0],
            flange: None,
        }
    }
}

/// A figure of the [`Ask`], by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The run.
    Run,
    /// The fall in a foot.
    Fall,
    /// The height at the upper end.
    Start,
    /// The first joist or stud.
    First,
    /// From joist to joist, or from stud to stud.
    Spacing,
    /// The depth of a joist or a stud.
    Depth,
    /// From a stud's face to the pipe.
    Across,
    /// The hole.
    Hole,
    /// The trap arm.
    Arm,
    /// How many of a fixture, counted from 0.
    Fixtures(usize),
    /// From the finished wall to the flange.
    RoughIn,
    /// What still comes onto the studs.
    ToCome,
}

/// Why the drain cannot be figured.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A figure is outside its limits.
    Beyond {
        /// Which figure.
        field: Field,
        /// The least that is taken.
        least: Amount,
        /// The most that is taken.
        most: Amount,
    },
    /// The hole is smaller than the pipe, which is this wide outside.
    HoleTooSmall(Length),
    /// More joists or studs than are counted: this many at most.
    TooManyMembers(usize),
}
