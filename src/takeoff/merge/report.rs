//! What bringing two copies of a job together did, entry by entry, so that it can be shown and nothing goes unseen.

use std::fmt;

use crate::measure::{Figures, Length, Money, Rounding, Units};
use crate::takeoff::{Ask, Choice, Entry, EntryKind, Job, PackKey, Setup, TapeBench, Task};
use crate::trades::Material;

/// What happened to one entry, or to one value where an entry is several.
#[derive(Clone, Debug, PartialEq)]
pub enum Merge {
    /// Theirs alone had it.
    Added {
        /// Which.
        entry: Entry,
        /// What it is called.
        name: String,
    },
    /// Theirs is newer, and stands in place of ours.
    Updated {
        /// Which.
        entry: Entry,
        /// What it is called.
        name: String,
    },
    /// They removed it since; ours had not changed.
    Removed {
        /// Which.
        entry: Entry,
        /// What it was called.
        name: String,
    },
    /// Both changed it: ours stays, and theirs stands beside it under a name of its own.
    KeptBoth {
        /// Which.
        entry: Entry,
        /// What it is called.
        name: String,
        /// What theirs is known by now.
        copy: Entry,
    },
    /// One side removed it; the other changed it, or a figure that stays stands in it: it stays.
    ChangedStays {
        /// Which.
        entry: Entry,
        /// What it is called.
        name: String,
    },
    /// Both changed one value: ours stays, theirs is named here.
    Differs(Value),
    /// Lines of theirs joined the roll.
    Rolled {
        /// How many.
        lines: usize,
    },
}

/// A single value that both sides changed.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// The job's name.
    Name {
        /// Which stays.
        ours: String,
        /// Which does not.
        theirs: String,
    },
    /// The units that figures are shown in.
    Units {
        /// Which stay.
        ours: Units,
        /// Which do not.
        theirs: Units,
    },
    /// The price of a pack.
    Price {
        /// Of what.
        pack: PackKey,
        /// Which stays.
        ours: Money,
        /// Which does not.
        theirs: Money,
    },
    /// How many of a pack, counted by hand.
    Count {
        /// Of what.
        pack: PackKey,
        /// Which stays.
        ours: u32,
        /// Which does not.
        theirs: u32,
    },
    /// The sign of the currency.
    Symbol {
        /// Which stays.
        ours: String,
        /// Which does not.
        theirs: String,
    },
    /// Which packs are chosen.
    Choice {
        /// Which stays.
        ours: Choice,
        /// Which does not.
        theirs: Choice,
    },
    /// Packs in litres.
    MetricPacks {
        /// Which stays.
        ours: bool,
        /// Which does not.
        theirs: bool,
    },
    /// Sticks and saw of one material; the offcuts of both are there.
    Cutting {
        /// Of what.
        material: Material,
        /// Which stay.
        ours: Box<Setup>,
        /// Which do not.
        theirs: Box<Setup>,
    },
    /// The tape's bench; its lengths that differ are on the roll too.
    Tape {
        /// Which stays.
        ours: Box<TapeBench>,
        /// Which does not.
        theirs: Box<TapeBench>,
    },
}

/// What a figure is called where it stands among others: its trade and its room.
pub(super) fn figure_name(job: &Job, task: &Task) -> String {
    let trade = match task.ask {
        Ask::Paint(..) => "Paint",
        Ask::Patch(..) => "Patch",
        Ask::Tile(..) => "Tile",
        Ask::Grout(..) => "Grout",
        Ask::Mortar(..) => "Mortar",
        Ask::Pipe(..) => "Pipe",
        Ask::Drain(..) => "Drain",
        Ask::Sheets(..) => "Sheets",
        Ask::Trim(..) => "Trim",
    };
    match task.room.and_then(|room| job.rooms.get(room)) {
        Some(room) => format!("{trade}, {}", room.name),
        None => trade.to_owned(),
    }
}

/// What an entry is called that a job has only one of.
pub(super) fn single_name(kind: EntryKind) -> &'static str {
    match kind {
        EntryKind::Head => "The job's name and units",
        EntryKind::Buying => "The buying list",
        EntryKind::Tape => "The tape's bench",
        EntryKind::Room => "A room",
        EntryKind::Figure => "A figure",
        EntryKind::HandLine => "A line by hand",
        EntryKind::Photo => "A picture",
        EntryKind::Step => "A step",
    }
}

/// A length of theirs as it is written on the roll.
pub(super) fn written(units: Units, length: Length) -> String {
    units.length(length, Rounding::Nearest, Figures::Plain)
}

impl fmt::Display for Merge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Merge::Added { name, .. } => write!(f, "{name}: added"),
            Merge::Updated { name, .. } => write!(f, "{name}: theirs is newer and is taken"),
            Merge::Removed { name, .. } => write!(f, "{name}: they removed it"),
            Merge::KeptBoth { name, .. } => write!(f, "{name}: both changed it; both are kept"),
            Merge::ChangedStays { name, .. } => {
                write!(
                    f,
                    "{name}: removed on one side, in use on the other; it stays"
                )
            }
            Merge::Differs(value) => value.fmt(f),
            Merge::Rolled { lines: 1 } => write!(f, "The roll: 1 line joined it"),
            Merge::Rolled { lines } => write!(f, "The roll: {lines} lines joined it"),
        }
    }
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Value::Name { ours, theirs } => {
                write!(f, "Job name: “{ours}” stays, theirs was “{theirs}”")
            }
            Value::Units { ours, theirs } => write!(
                f,
                "Units: {} stay, theirs were {}",
                units_name(*ours),
                units_name(*theirs)
            ),
            Value::Price { ours, theirs, .. } => write!(
                f,
                "Price of a pack: {} stays, theirs was {}",
                ours.show("").trim(),
                theirs.show("").trim()
            ),
            Value::Count { ours, theirs, .. } => {
                write!(f, "Count of a pack: {ours} stays, theirs was {theirs}")
            }
            Value::Symbol { ours, theirs } => {
                write!(f, "Currency: {ours} stays, theirs was {theirs}")
            }
            Value::Choice { ours, theirs } => write!(
                f,
                "Packs: {} stays, theirs was {}",
                choice_name(*ours),
                choice_name(*theirs)
            ),
            Value::MetricPacks { ours, .. } => {
                let (ours, theirs) = if *ours {
                    ("litres", "gallons")
                } else {
                    ("gallons", "litres")
                };
                write!(f, "Packs: {ours} stay, theirs were {theirs}")
            }
            Value::Cutting { .. } => write!(
                f,
                "Sticks and saw of the cutting plan: ours stay; the off-cuts of both are there"
            ),
            Value::Tape { .. } => write!(
                f,
                "The tape's bench: ours stays; the lengths of theirs are on the roll"
            ),
        }
    }
}

fn units_name(units: Units) -> String {
    match units {
        Units::FeetInches { marks } => format!("feet and inches to 1/{marks}"),
        Units::DecimalInches => "decimal inches".to_owned(),
        Units::Millimetres => "millimetres".to_owned(),
        Units::Centimetres => "centimetres".to_owned(),
        Units::Metres => "metres".to_owned(),
    }
}

fn choice_name(choice: Choice) -> &'static str {
    match choice {
        Choice::LeastLeftOver => "least left over",
        Choice::Cheapest => "cheapest",
    }
}
