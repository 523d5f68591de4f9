//! Drains: how they fall along their run, where they pass through joists and studs, how far a trap may be from its vent,
//! and how large a drain its fixtures want.
//!
//! Nothing here says that a drain is allowed: every limit is a finding with its source, and the local code decides.

mod answer;
mod ask;
mod findings;
pub mod limits;
mod order;
mod sizes;
#[cfg(test)]
mod tests;
mod through;

pub use answer::figure;
pub use ask::{Arm, Ask, Code, Field, Fixture, Flange, Problem, Size, Through};
pub use sizes::{carries, fall_in, least_fall, longest_arm, units};

use crate::measure::Length;
use crate::site::Fault;
use crate::trades::{Account, Order};

/// How a drain runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its fall in a foot.
    pub fall: Length,
    /// The least fall in a foot by the code chosen.
    pub least_fall: Length,
    /// How far it falls over the run.
    pub total: Length,
    /// The pipe along the fall, from end to end of the run.
    pub sloped: Length,
    /// The height of the pipe's centre at the upper end of the run.
    pub start: Length,
    /// The same at its lower end.
    pub end: Length,
    /// The hole that the pipe passes through.
    pub hole: Length,
    /// Where the centre of a hole may stand in a joist above its lower edge, or in a stud from its face; `None` where no
    /// place is within the limits, or nothing is bored.
    pub place: Option<(Length, Length)>,
    /// Each joist or stud on the way, from the upper end.
    pub holes: Vec<Hole>,
    /// How far the run may go through joists before a hole comes too near to an edge; `None` where nothing is in its way
    /// or no place is within the limits.
    pub reach: Option<Length>,
    /// The trap arm.
    pub arm: Option<ArmFigure>,
    /// Fixture units of all fixtures.
    pub units: u32,
    /// The least drain that carries them; `None` beyond 4 in or without fixtures.
    pub needs: Option<Size>,
    /// From the bare studs to the centre of the closet flange.
    pub flange: Option<Length>,
    /// Plates over the pipe.
    pub plates: u32,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// A hole in a joist or a stud.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// From the upper end of the run.
    pub at: Length,
    /// The height of its centre: above the joist's lower edge, or above the floor.
    pub centre: Length,
    /// The pipe passes below this joist, clear of it.
    pub clear: bool,
    /// What is wrong with it.
    pub faults: Vec<Fault>,
}

/// A trap arm, against its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmFigure {
    /// No longer.
    pub most: Length,
    /// No shorter.
    pub least: Length,
    /// How far it falls.
    pub falls: Length,
}
