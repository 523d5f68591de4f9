//! What is asked of a run of pipe.

use super::fitting::{Fitting, Measured};
use crate::handbook::pipe::{Pipe, Size};
use crate::measure::{Angle, Length};

/// Everything that a run needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// What the person calls it.
    pub name: String,
    /// What it is made of.
    pub pipe: Pipe,
    /// Its size at the start.
    pub size: Size,
    /// The fitting that it starts at; `None` for an open end.
    pub start: Option<Fitting>,
    /// Its legs, from the start on.
    pub legs: Vec<Leg>,
    /// Where its end has to come to lie, from its start.
    pub closes: Option<Place>,
    /// Fittings that were measured.
    pub fittings: Vec<Measured>,
    /// How far off a cut may be.
    pub tape: Length,
    /// Lines that run beside it.
    pub lines: Option<Lines>,
    /// The widest pipe that the cutter on hand takes.
    pub jaw: Option<Length>,
    /// How long a stick is.
    pub stick: Length,
    /// °F where joints are made.
    pub air: f64,
    /// In damp air.
    pub damp: bool,
    /// By how many °F it is warmed in use.
    pub warms: Option<f64>,
    /// The turn of a mitred joint that a template is drawn for; nothing for a square cut.
    pub mitre: Angle,
    /// Numbers of the pieces that were fitted dry.
    pub fitted: Vec<u32>,
}

impl Default for Ask {
    /// Half-inch copper without a leg, cut to 1/16 in, from sticks of 10 ft.
    fn default() -> Ask {
        Ask {
            name: String::new(),
            pipe: Pipe::CopperL,
            size: Size::Half,
            start: None,
            legs: Vec::new(),
            closes: None,
            fittings: Vec::new(),
            tape: Length::in_64(0, 4),
            lines: None,
            jaw: None,
            stick: Length::feet(10),
            air: 70.0,
            damp: false,
            warms: None,
            mitre: Angle::ZERO,
            fitted: Vec::new(),
        }
    }
}

impl Ask {
    /// The size of a leg, by place: its own, or that of the leg before.
    #[must_use]
    pub fn size_of(&self, leg: usize) -> Size {
        let own = self.legs.iter().take(leg + 1).rev();
        own.filter_map(|leg| leg.size).next().unwrap_or(self.size)
    }
}

/// From one fitting to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// Which way it goes.
    pub way: Way,
    /// Its size where that changes.
    pub size: Option<Size>,
    /// How long it is.
    pub by: By,
    /// Couplings within it.
    pub couplings: u32,
    /// The fitting at its far end; `None` for an open end.
    pub end: Option<Fitting>,
}

/// Which way a leg goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// Straight.
    Along(Direction),
    /// The travel of an offset, between two fittings of an angle.
    Offset {
        /// The way that the run keeps.
        along: Direction,
        /// The way that it is set over.
        to: Direction,
        /// How far the fittings turn.
        angle: Angle,
        /// How far it is set over, centre to centre.
        set: Length,
        /// A rolling offset goes over to a second side as well.
        over: Option<(Direction, Length)>,
    },
}

/// The six ways of a room, seen facing the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Away, into the wall.
    Forward,
    /// Towards you.
    Back,
    /// Up.
    Up,
    /// Down.
    Down,
}

impl Direction {
    /// All of them.
    pub const ALL: [Direction; 6] = [
        Direction::Left,
        Direction::Right,
        Direction::Forward,
        Direction::Back,
        Direction::Up,
        Direction::Down,
    ];
    /// As right, forward, up.
    #[must_use]
    pub const fn vector(self) -> [f64; 3] {
        match self {
            Direction::Left => [-1.0, 0.0, 0.0],
            Direction::Right => [1.0, 0.0, 0.0],
            Direction::Forward => [0.0, 1.0, 0.0],
            Direction::Back => [0.0, -1.0, 0.0],
            Direction::Up => [0.0, 0.0, 1.0],
            Direction::Down => [0.0, 0.0, -1.0],
        }
    }
    /// The other way.
    #[must_use]
    pub const fn reversed(self) -> Direction {
        match self {
            Direction::Left => Direction::Right,
            Direction::Right => Direction::Left,
            Direction::Forward => Direction::Back,
            Direction::Back => Direction::Forward,
            Direction::Up => Direction::Down,
            Direction::Down => Direction::Up,
        }
    }
    /// Neither this way nor against it.
    #[must_use]
    pub fn across(self, other: Direction) -> bool {
        self != other && self != other.reversed()
    }
}

/// How long a leg is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum By {
    /// By the tape, from a mark to a mark.
    Tape {
        /// What the tape said.
        length: Length,
        /// Where it was held.
        from: Mark,
        /// Where it was read.
        to: Mark,
    },
    /// By the set of its offset.
    Set,
    /// As short as its fittings allow: hub against hub, or a street end in a hub.
    Fitted,
    /// Whatever is left to where the run has to end.
    Rest,
}

/// What the tape is held to at an end of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// The centre of the fitting.
    Centre,
    /// The face of its hub.
    Face,
    /// Its shoulder, where the pipe stops.
    Shoulder,
    /// The end of the pipe.
    End,
    /// The face of a wall, beyond which the pipe goes on so far.
    Wall(Length),
}

/// A place as it is from another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// To the right.
    pub right: Length,
    /// Away, into the wall.
    pub forward: Length,
    /// Up.
    pub up: Length,
}

impl Place {
    /// As right, forward, up.
    #[must_use]
    pub const fn axes(self) -> [Length; 3] {
        [self.right, self.forward, self.up]
    }
    /// From right, forward, up.
    #[must_use]
    pub const fn of([right, forward, up]: [Length; 3]) -> Place {
        Place { right, forward, up }
    }
    /// And on from there.
    #[must_use]
    pub fn plus(self, other: Place) -> Place {
        Place {
            right: self.right + other.right,
            forward: self.forward + other.forward,
            up: self.up + other.up,
        }
    }
    /// From the other one to this.
    #[must_use]
    pub fn minus(self, other: Place) -> Place {
        Place {
            right: self.right - other.right,
            forward: self.forward - other.forward,
            up: self.up - other.up,
        }
    }
}

/// Lines beside a run, equally far apart all the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lines {
    /// How many, this one with them.
    pub count: u32,
    /// From centre to centre.
    pub apart: Length,
    /// To which side of the first leg the next one lies.
    pub to: Direction,
}
