//! A job: its rooms, the figures asked for, the tape roll and what is bought.

use chrono::{DateTime, FixedOffset};

use super::Buying;
use crate::measure::Units;
use crate::site::{OpeningRule, Room};
use crate::trades::{paint, patch};

/// All that a person keeps about one job.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What the person calls it.
    pub name: String,
    /// When it was begun, in local time.
    pub begun: DateTime<FixedOffset>,
    /// How figures are shown, and what a bare number means.
    pub units: Units,
    /// The room profiles.
    pub rooms: Vec<Room>,
    /// The figures asked for, oldest first.
    pub tasks: Vec<Task>,
    /// Measures and sums, oldest first.
    pub roll: Vec<RollLine>,
    /// What is bought.
    pub buying: Buying,
}

/// One figure that was asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// The room that it stands in, counted from 0; `None` for a quick figure.
    pub room: Option<usize>,
    /// What was asked.
    pub ask: Ask,
    /// Whether its materials are on the buying list.
    pub on_list: bool,
}

/// What was asked of a trade.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask {
    /// Paint, with the rule by which openings are deducted from a room's walls.
    Paint(Box<paint::Ask>, OpeningRule),
    /// A patch, on one wall of the room.
    Patch(Box<patch::Ask>, Option<usize>),
}

/// One line of the tape roll: what was typed, exactly, and what it came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RollLine {
    /// What it measures, or nothing.
    pub label: String,
    /// As typed.
    pub typed: String,
    /// What it came to.
    pub length: crate::measure::Length,
}

impl Job {
    /// A job with nothing in it.
    #[must_use]
    pub fn new(name: impl Into<String>, begun: DateTime<FixedOffset>, units: Units) -> Job {
        Job {
            name: name.into(),
            begun,
            units,
            rooms: Vec::new(),
            tasks: Vec::new(),
            roll: Vec::new(),
            buying: Buying::default(),
        }
    }
}
