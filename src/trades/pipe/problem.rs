//! Why a run has no figure: each names its leg and what would be right.

use super::ask::Place;
use super::fitting::{Shape, Side};
use crate::handbook::pipe::{Kind, Pipe, Size};
use crate::measure::{Amount, Angle, Length};
use crate::trades::limits::Limited;

/// A figure of the ask, by name; legs and fittings count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// What the tape said of a leg.
    Length(usize),
    /// How far the pipe goes on beyond the wall.
    Beyond(usize),
    /// How far an offset is set over.
    Set(usize),
    /// How far it rolls.
    Roll(usize),
    /// The angle of its fittings.
    Angle(usize),
    /// Couplings in a leg.
    Couplings(usize),
    /// From the centre of a fitting to its face.
    Face(usize),
    /// How deep its socket is.
    Depth(usize),
    /// How far off a cut may be.
    Tape,
    /// The cutter's jaw.
    Jaw,
    /// How long a stick is.
    Stick,
    /// The air.
    Air,
    /// The warming.
    Warms,
    /// How far lines are apart.
    Apart,
    /// How many lines.
    Lines,
    /// The turn of a mitred joint.
    Mitre,
    /// How many legs.
    Legs,
}

/// Why there is no figure; legs count from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A figure is out of its range.
    Beyond {
        /// Which.
        field: Field,
        /// The least.
        least: Amount,
        /// The most.
        most: Amount,
    },
    /// No leg is there yet.
    NoLegs,
    /// That pipe is not made in that size.
    NoSuchSize {
        /// The leg.
        leg: usize,
        /// The pipe.
        pipe: Pipe,
        /// The size.
        size: Size,
    },
    /// Two legs meet without a fitting, after this one.
    NoFitting {
        /// The leg.
        leg: usize,
    },
    /// The size changes where no fitting changes it.
    NoReducer {
        /// The leg that has another size than the one before.
        leg: usize,
        /// The size before.
        from: Size,
        /// Its size.
        to: Size,
    },
    /// No fitting turns like that.
    NoSuchTurn {
        /// The leg after the turn.
        leg: usize,
        /// The turn.
        angle: Angle,
        /// The nearest that the fitting makes.
        nearest: Angle,
    },
    /// An elbow where the run goes straight on.
    NoTurn {
        /// The leg after it.
        leg: usize,
    },
    /// A fitting that ends a run, within it.
    EndsRun {
        /// The leg before it.
        leg: usize,
        /// The fitting.
        kind: Kind,
    },
    /// The two ways of an offset are along one line.
    NotAside {
        /// The leg.
        leg: usize,
    },
    /// The tape was held to a fitting where none is, or to an open end where a fitting is.
    WrongMark {
        /// The leg.
        leg: usize,
        /// Which end.
        end: Side,
        /// A fitting is there.
        fitting: bool,
    },
    /// No length of that fitting is known; one has to be measured.
    NotMeasured {
        /// The leg.
        leg: usize,
        /// The fitting.
        shape: Shape,
    },
    /// The pipe would be shorter than what has to go into its fittings.
    TooShort {
        /// The leg.
        leg: usize,
        /// As it is, by the tape.
        is: Length,
        /// The least by the tape, so that both ends seat.
        least: Length,
        /// It is a set that is too small.
        set: bool,
    },
    /// A street end has to go into a hub.
    NoHub {
        /// The leg.
        leg: usize,
    },
    /// A street end takes no pipe, but a length is given for its leg.
    StreetWithPipe {
        /// The leg.
        leg: usize,
        /// How long it is by its fittings, centre to centre, where that is known.
        by_fittings: Option<Length>,
    },
    /// The run does not end where it has to.
    DoesNotClose {
        /// By so much it is off.
        off: Place,
        /// The leg that would close it.
        leg: usize,
        /// By the tape, as that leg is.
        is: Length,
        /// What it would have to be.
        would_be: Length,
    },
    /// A leg is to close the run, but nothing says where that ends, or two of them go the same way.
    NothingToClose {
        /// The leg.
        leg: usize,
    },
    /// A piece is longer than the sticks that it is cut from.
    LongerThanStick {
        /// The leg.
        leg: usize,
        /// Its size.
        size: Size,
        /// The piece.
        is: Length,
        /// A stick.
        stick: Length,
        /// Couplings in the leg, so that each part comes out of one.
        couplings: u32,
    },
    /// A leg cannot make up what is missing.
    CannotClose {
        /// The leg.
        leg: usize,
        /// By so much it is off across that leg.
        off: Place,
    },
}

impl Limited for Field {
    type Problem = Problem;
    fn beyond(self, least: Amount, most: Amount) -> Problem {
        Problem::Beyond {
            field: self,
            least,
            most,
        }
    }
}
