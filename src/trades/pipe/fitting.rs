//! Fittings as they stand in a run, and where their figures come from.

use super::ask::Ask;
use crate::handbook::pipe::{Family, Kind, Size, Turn, printed};
use crate::handbook::{Cite, Sourced};
use crate::measure::Length;

/// An end of a leg, or a side of a fitting, in the order of the run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Nearer to the start.
    Before,
    /// Nearer to the end.
    After,
}

impl Side {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Side {
        match self {
            Side::Before => Side::After,
            Side::After => Side::Before,
        }
    }
}

/// A fitting at an end of a leg; how far it turns follows from the legs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fitting {
    /// What it is.
    pub kind: Kind,
    /// The side on which it ends in a spigot that goes into the next hub.
    pub street: Option<Side>,
    /// The side on which the run goes through its branch.
    pub branch: Option<Side>,
    /// How far a bend turns that the run ends at; a quarter where nothing is said.
    pub turn: Option<Turn>,
}

impl Fitting {
    /// With hubs on all sides; a tee is gone straight through.
    #[must_use]
    pub const fn of(kind: Kind) -> Fitting {
        Fitting {
            kind,
            street: None,
            branch: None,
            turn: None,
        }
    }
}

/// Which opening of a fitting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Port {
    /// A hub of its run.
    Run,
    /// The hub of its branch.
    Branch,
    /// A spigot.
    Spigot,
}

/// A fitting's opening, far enough told that two of the same measure the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Shape {
    /// Whose fitting it is.
    pub family: Family,
    /// What it is.
    pub kind: Kind,
    /// How far it turns, where it is a bend.
    pub turn: Option<Turn>,
    /// The size of this opening.
    pub size: Size,
    /// The size of the one across, the same where it does not reduce.
    pub other: Size,
    /// Which opening.
    pub port: Port,
}

/// A fitting that was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measured {
    /// What was measured.
    pub shape: Shape,
    /// From its centre to the face of the hub, or to the end of the spigot.
    pub face: Length,
    /// How deep the hub is; `None` where a printed depth stands.
    pub depth: Option<Length>,
}

/// What is known of an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// What it is.
    pub shape: Shape,
    /// From the centre to where the pipe stops.
    pub take_off: Option<Sourced<Length>>,
    /// How far the pipe goes in.
    pub depth: Option<Sourced<Length>>,
}

/// A measurement of the person's own.
pub const MEASURED: Cite =
    Cite::practice("one fitting measured: centre to face and depth of the socket");

/// What is known of an opening: as it was measured, and else as it is printed.
///
/// # Source
/// The person's own measurement goes first; then figures that a document prints for that fitting. Where there is neither
/// nothing is given.
/// # Example
/// ```
/// use storyrod::handbook::pipe::{Family, Kind, Size, Turn};
/// use storyrod::trades::pipe::{Ask, Port, Shape, known};
/// let ell = Shape {
///     family: Family::Copper, kind: Kind::Bend, turn: Some(Turn::Quarter),
///     size: Size::Half, other: Size::Half, port: Port::Run,
/// };
/// assert_eq!(known(&Ask::default(), ell).take_off, None);
/// ```
#[must_use]
pub fn known(ask: &Ask, shape: Shape) -> Known {
    let own = ask.fittings.iter().find(|own| own.shape == shape);
    let printed = printed(shape.family, shape.kind, shape.turn, shape.size);
    let hub = shape.port != Port::Spigot;
    let depth = own
        .and_then(|own| own.depth)
        .map(|depth| Sourced::new(depth, MEASURED))
        .or(printed.depth)
        .filter(|_| hub);
    let take_off = match own {
        Some(own) if !hub => Some(Sourced::new(own.face, MEASURED)),
        Some(own) => depth.map(|depth| Sourced::new(own.face - depth.value, MEASURED)),
        None => printed.take_off.filter(|_| hub),
    };
    Known {
        shape,
        take_off,
        depth,
    }
}
