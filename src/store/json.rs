//! A job as plain JSON, for any other program and for the person's own eyes; its shape stands in DEVELOPERS.md.
//!
//! The job and who changed what go out and come in; undo and redo do not. Keys that are not known are passed over, and
//! what may be missing is as in a new job. Records here are apart from those of the job file: each may change alone.

mod buying;
mod drain;
mod figures;
mod fixed;
mod mix;
mod photos;
mod pipe;
mod rooms;
mod sheets;
mod steps;
mod survey;
mod tile;
mod trim;
mod words;

use std::collections::{BTreeMap, HashSet};
use std::fmt;
use std::sync::Arc;

use chrono::DateTime;
use serde::{Deserialize, Serialize};

use super::scribe::Snapshot;
use crate::measure::Units;
use crate::site::Id;
use crate::takeoff::{Batch, EntryKind, Job, Mark, RollLine, Stamps, Task, Traced};
use buying::{BuyingJson, TapeJson, read_buying, read_tape, write_buying, write_tape};
use figures::{AskJson, read_ask, write_ask};
use photos::{PhotoJson, read_photo, write_photo};
use rooms::{RoomJson, read_room, write_room};
use steps::{StepJson, read_step, write_step};
use words::{Hex, Nm, When, Word};

/// The shape that is written here, and the newest that is read.
pub const SHAPE: u64 = 1;

/// Where the outline of a figure was traced.
#[derive(Serialize, Deserialize)]
struct TracedJson {
    figure: Hex,
    photo: Hex,
    mark: u32,
    plus_minus_nm: Nm,
}

fn write_traced((figure, traced): (&Id, &Traced)) -> TracedJson {
    TracedJson {
        figure: Hex(figure.0),
        photo: Hex(traced.photo.0),
        mark: traced.mark,
        plus_minus_nm: Nm(traced.give),
    }
}

fn read_traced(traced: &TracedJson) -> (Id, Traced) {
    let of = Traced {
        photo: Id(traced.photo.0),
        mark: traced.mark,
        give: traced.plus_minus_nm.0,
    };
    (Id(traced.figure.0), of)
}

/// The batch in the bucket.
#[derive(Serialize, Deserialize)]
struct BatchJson {
    mixed: When,
    rest_minutes: f64,
    good_minutes: f64,
}

/// Why a text is no job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum JsonError {
    /// It is not JSON.
    NotJson {
        /// Where it stops being so, counted from 1.
        line: usize,
        /// Where in the line.
        column: usize,
    },
    /// It is JSON of something else.
    NotOurs,
    /// A newer Storyrod wrote it.
    Newer {
        /// Its shape.
        found: u64,
    },
    /// A figure does not read or is out of its range.
    At {
        /// Where: `rooms[1].walls[0].length_nm`.
        path: String,
        /// What is wrong with it.
        why: String,
    },
    /// The job holds something that has no place in JSON, such as a number that is none.
    CannotSay,
}

impl fmt::Display for JsonError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            JsonError::NotJson { line, column } => {
                write!(f, "this is no JSON: see line {line}, column {column}")
            }
            JsonError::NotOurs => write!(f, "this JSON is no job of Storyrod's"),
            JsonError::Newer { found } => write!(
                f,
                "a newer Storyrod wrote this (shape {found}; this one reads {SHAPE}); open it with the newer one"
            ),
            JsonError::At { path, why } => write!(f, "{path}: {why}"),
            JsonError::CannotSay => write!(f, "a figure of the job has no place in JSON"),
        }
    }
}

fn at(path: impl Into<String>, why: impl Into<String>) -> JsonError {
    JsonError::At {
        path: path.into(),
        why: why.into(),
    }
}

/// What tells that a text is ours, read before all else.
#[derive(Deserialize)]
struct OursJson {
    storyrod: Option<u64>,
}

#[derive(Serialize, Deserialize)]
struct JobJson {
    storyrod: u64,
    #[serde(default = "Hex::fresh")]
    id: Hex,
    name: String,
    #[serde(default = "no_day")]
    begun: When,
    units: Word<Units>,
    #[serde(default)]
    rooms: Vec<RoomJson>,
    #[serde(default)]
    figures: Vec<FigureJson>,
    #[serde(default)]
    roll: Vec<RollJson>,
    #[serde(default)]
    buying: BuyingJson,
    #[serde(default)]
    tape: TapeJson,
    #[serde(default)]
    batch: Option<BatchJson>,
    #[serde(default)]
    stamps: Vec<StampJson>,
    #[serde(default)]
    photos: Vec<PhotoJson>,
    #[serde(default)]
    steps: Vec<StepJson>,
    #[serde(default)]
    traced: Vec<TracedJson>,
}

fn no_day() -> When {
    When(DateTime::UNIX_EPOCH.fixed_offset())
}

#[derive(Serialize, Deserialize)]
struct FigureJson {
    #[serde(default = "Hex::fresh")]
    id: Hex,
    /// The name of its room.
    room: Option<Hex>,
    #[serde(default)]
    on_list: bool,
    ask: AskJson,
}

#[derive(Serialize, Deserialize)]
struct RollJson {
    #[serde(default = "Hex::fresh")]
    id: Hex,
    #[serde(default)]
    label: String,
    typed: String,
    length_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct StampJson {
    kind: Word<EntryKind>,
    id: Hex,
    changes: Vec<ChangesJson>,
    #[serde(default)]
    gone: bool,
}

#[derive(Serialize, Deserialize)]
struct ChangesJson {
    device: Hex,
    count: u32,
}

/// A job as JSON, spaced for reading.
///
/// # Errors
/// [`JsonError::CannotSay`], for a job that no file would hold either.
pub fn to_json(snapshot: &Snapshot) -> Result<String, JsonError> {
    let job = &*snapshot.job;
    let figure = |task: &Task| FigureJson {
        id: Hex(task.id.0),
        room: (task.room.and_then(|room| job.rooms.get(room))).map(|room| Hex(room.id.0)),
        on_list: task.on_list,
        ask: write_ask(&task.ask),
    };
    let roll = |line: &Arc<RollLine>| RollJson {
        id: Hex(line.id.0),
        label: line.label.clone(),
        typed: line.typed.clone(),
        length_nm: Nm(line.length),
    };
    let json = JobJson {
        storyrod: SHAPE,
        id: Hex(job.id.0),
        name: job.name.clone(),
        begun: When(job.begun),
        units: Word(job.units),
        rooms: job.rooms.iter().map(write_room).collect(),
        figures: job.tasks.iter().map(figure).collect(),
        roll: job.roll.iter().map(roll).collect(),
        buying: write_buying(&job.buying),
        tape: write_tape(&job.tape),
        batch: job.batch.map(|batch| BatchJson {
            mixed: When(batch.mixed),
            rest_minutes: batch.rest,
            good_minutes: batch.good,
        }),
        stamps: write_stamps(&snapshot.stamps),
        photos: job.photos.iter().map(write_photo).collect(),
        steps: job.steps.iter().map(write_step).collect(),
        traced: job.traced.iter().map(write_traced).collect(),
    };
    serde_json::to_string_pretty(&json).map_err(|_| JsonError::CannotSay)
}

fn write_stamps(stamps: &Stamps) -> Vec<StampJson> {
    let changes = |mark: &Mark| {
        let changes = mark.changes.iter().map(|(device, count)| ChangesJson {
            device: Hex(*device),
            count: *count,
        });
        changes.collect()
    };
    let marks = stamps.marks.iter().map(|((kind, id), mark)| StampJson {
        kind: Word(*kind),
        id: Hex(id.0),
        changes: changes(mark),
        gone: mark.gone,
    });
    marks.collect()
}

/// A job from JSON, without a history.
///
/// # Errors
/// [`JsonError`], with the place of the first figure that is wrong.
pub fn from_json(text: &str) -> Result<Snapshot, JsonError> {
    let not_json = |why: &serde_json::Error| JsonError::NotJson {
        line: why.line(),
        column: why.column(),
    };
    match serde_json::from_str::<OursJson>(text) {
        Ok(OursJson { storyrod: None }) => return Err(JsonError::NotOurs),
        Ok(OursJson {
            storyrod: Some(found),
        }) if found > SHAPE => return Err(JsonError::Newer { found }),
        Ok(_) => {}
        Err(why) if why.is_data() => return Err(JsonError::NotOurs),
        Err(why) => return Err(not_json(&why)),
    }
    let mut reader = serde_json::Deserializer::from_str(text);
    let json: JobJson = serde_path_to_error::deserialize(&mut reader).map_err(|why| {
        let (path, why) = (why.path().to_string(), why.into_inner());
        if why.is_data() {
            at(path, why.to_string())
        } else {
            not_json(&why)
        }
    })?;
    read_job(json)
}

fn read_job(json: JobJson) -> Result<Snapshot, JsonError> {
    once("rooms", json.rooms.iter().map(|room| room.id))?;
    once("figures", json.figures.iter().map(|figure| figure.id))?;
    once("roll", json.roll.iter().map(|line| line.id))?;
    let by_hand = json.buying.by_hand.iter().map(|line| line.id);
    once("buying.by_hand", by_hand)?;
    once("photos", json.photos.iter().map(|photo| photo.id))?;
    once("steps", json.steps.iter().map(|step| step.id))?;
    let mut job = Job::new(json.name, json.begun.0, json.units.0);
    job.id = json.id.id();
    for (place, room) in json.rooms.into_iter().enumerate() {
        job.rooms.push(read_room(place, room)?);
    }
    let rooms = job.rooms.iter().enumerate();
    let rooms: BTreeMap<Id, usize> = rooms.map(|(place, room)| (room.id, place)).collect();
    for (place, figure) in json.figures.into_iter().enumerate() {
        let no_room = || at(format!("figures[{place}].room"), "no such room");
        let room = figure
            .room
            .map(|room| rooms.get(&room.id()).copied().ok_or_else(no_room))
            .transpose()?;
        job.tasks.push(Task {
            id: figure.id.id(),
            room,
            ask: read_ask(figure.ask),
            on_list: figure.on_list,
        });
    }
    let roll = json.roll.into_iter().map(|line| {
        Arc::new(RollLine {
            id: line.id.id(),
            label: line.label,
            typed: line.typed,
            length: line.length_nm.0,
        })
    });
    job.roll = roll.collect();
    job.buying = read_buying(json.buying);
    job.tape = read_tape(&json.tape);
    job.batch = json.batch.map(|batch| Batch {
        mixed: batch.mixed.0,
        rest: batch.rest_minutes,
        good: batch.good_minutes,
    });
    job.traced = json.traced.iter().map(read_traced).collect();
    for (place, photo) in json.photos.into_iter().enumerate() {
        job.photos.push(read_photo(place, photo)?);
    }
    for (place, step) in json.steps.into_iter().enumerate() {
        let note = read_step(step);
        if job.steps.iter().any(|known| known.id == note.id) {
            let path = format!("steps[{place}].of");
            return Err(at(path, "another entry of this list is of the same step"));
        }
        job.steps.push(note);
    }
    Ok(Snapshot {
        stamps: Arc::new(read_stamps(json.stamps)),
        ..Snapshot::of(job)
    })
}

fn read_stamps(stamps: Vec<StampJson>) -> Stamps {
    let marks = stamps.into_iter().map(|stamp| {
        let changes = stamp.changes.into_iter();
        let mark = Mark {
            changes: changes.map(|of| (of.device.0, of.count)).collect(),
            gone: stamp.gone,
        };
        ((stamp.kind.0, stamp.id.id()), mark)
    });
    Stamps {
        marks: marks.collect(),
    }
}

/// No two entries of a list bear one name.
fn once(list: &str, ids: impl Iterator<Item = Hex>) -> Result<(), JsonError> {
    let mut known = HashSet::new();
    for (place, id) in ids.enumerate() {
        if !known.insert(id.0) {
            let path = format!("{list}[{place}].id");
            return Err(at(path, "another entry of this list has the same name"));
        }
    }
    Ok(())
}
