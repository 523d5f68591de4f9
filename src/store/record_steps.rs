//! What was ticked and moved of the order of work, and steps of the person's own, each as a part.

use chrono::DateTime;
use serde::{Deserialize, Serialize};

use super::record::{choice, code};
use crate::site::Id;
use crate::takeoff::{StepNote, StepOf};
use crate::trades::Work;

#[derive(Serialize, Deserialize)]
pub(super) struct StepRecord {
    of: StepOfRecord,
    done: Option<String>,
    rank: Option<i64>,
}

#[derive(Serialize, Deserialize)]
enum StepOfRecord {
    /// The figure, what is done, which of several.
    Figure(u64, u8, u8),
    /// Its room, its words.
    Own(Option<u64>, String),
}

pub(super) fn write_step(note: &StepNote) -> StepRecord {
    StepRecord {
        of: match &note.of {
            StepOf::Figure(figure, work, nth) => {
                StepOfRecord::Figure(figure.0, code(&Work::ALL, work), *nth)
            }
            StepOf::Own(room, text) => StepOfRecord::Own(room.map(|room| room.0), text.clone()),
        },
        done: note.done.map(|done| done.to_rfc3339()),
        rank: note.rank,
    }
}

pub(super) fn read_step(record: StepRecord, id: Id) -> Option<StepNote> {
    Some(StepNote {
        id,
        of: match record.of {
            StepOfRecord::Figure(figure, work, nth) => {
                StepOf::Figure(Id(figure), choice(&Work::ALL, work)?, nth)
            }
            StepOfRecord::Own(room, text) => StepOf::Own(room.map(Id), text),
        },
        done: match record.done {
            Some(text) => Some(DateTime::parse_from_rfc3339(&text).ok()?),
            None => None,
        },
        rank: record.rank,
    })
}
