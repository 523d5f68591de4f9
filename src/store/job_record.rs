//! A job in parts, each of which reads without the others: its head, each room, each figure, the roll by lengths,
//! the buying list, the tape's bench.
//!
//! Fields are only ever appended under a new kind of part; codes of choices are only ever added.

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::DateTime;
use serde::{Deserialize, Serialize};

use super::document::Part;
use super::record::{
    RoomRecord, all, length, maybe, read, read_room, read_units, write, write_room, write_units,
};
use super::record_drain::{read_cutting, read_left, write_cutting, write_left};
use super::record_figures::{MoreRecord, TaskRecord, read_task, write_more, write_task};
use super::record_fixed::{FixedRecord, read_fixed, write_fixed};
use super::record_joists::{read_joists, write_joists};
use super::record_material::{MaterialRecord, material, read_material};
use super::record_photo::{read_photo, read_sides, write_photo, write_sides};
use super::record_pipe::{read_lies, write_lies};
use super::record_steps::{read_step, write_step};
use super::record_survey::{SurveyRecord, read_survey, write_survey};
use crate::measure::{Length, Money};
use crate::site::Id;
use crate::takeoff::{
    Ask, Batch, Buying, Choice, HandLine, Job, LineKey, PackKey, RollLine, TapeBench, Task, Traced,
};
use crate::trades::tape::Ends;

/// What a part holds.
pub(super) mod kind {
    pub const HEAD: u16 = 1;
    pub const ROOM: u16 = 2;
    pub const FIGURE: u16 = 3;
    pub const ROLL: u16 = 4;
    pub const BUYING: u16 = 5;
    pub const TAPE: u16 = 6;
    /// A step back, and a step forward again; the nearest first.
    pub const UNDO: u16 = 7;
    pub const REDO: u16 = 8;
    /// Who changed what how often.
    pub const STAMPS: u16 = 9;
    /// The batch in the bucket.
    pub const BATCH: u16 = 11;
    /// What rooms left of a material, on hand for the others.
    pub const LEFT: u16 = 61;
    /// What was set about cutting from sticks.
    pub const CUTTING: u16 = 12;
    /// A picture, in a shared file alone.
    pub const PICTURE: u16 = 10;
    /// What is fixed in a room, under the room's name.
    pub const FIXED: u16 = 20;
    /// The survey of a room and its fixtures, under the room's name.
    pub const SURVEY: u16 = 21;
    /// Where a run of pipe lies, under its figure's name, where that is no wall.
    pub const LIES: u16 = 40;
    /// The joists under a room's floor, under the room's name.
    pub const JOISTS: u16 = 41;
    /// A picture of the log.
    pub const PHOTO: u16 = 30;
    /// A tick or a move of the order of work, or a step of the person's own.
    pub const STEP: u16 = 50;
    /// The sides of a picture's reference, under the picture's name, behind it.
    pub const SIDES: u16 = 55;
    /// Where the outline of a figure was traced, under the figure's name.
    pub const TRACED: u16 = 60;
    /// A picture lies in its wall's elevation; under the picture's name, behind it.
    pub const LAID: u16 = 62;
}

/// Lines of the roll in one part.
pub(super) const LINES: usize = 256;

/// A line of the roll: name, what it measures, as typed, in nanometres.
pub(super) type LineOfRoll = (u64, String, String, i64);

fn part(kind: u16, id: u64, body: Vec<u8>) -> Part {
    Part { kind, id, body }
}

#[derive(Serialize, Deserialize)]
struct HeadRecord {
    id: u64,
    name: String,
    begun: String,
    units: (u8, u8),
}

#[derive(Serialize, Deserialize)]
struct FigureRecord {
    /// The name of its room.
    room: Option<u64>,
    task: TaskRecord,
    more: MoreRecord,
}

#[derive(Serialize, Deserialize)]
enum LineRecord {
    Material(MaterialRecord),
    ByHand(u64),
}

#[derive(Serialize, Deserialize)]
struct BuyingRecord {
    /// Name, text, count, price.
    by_hand: Vec<(u64, String, u32, Option<i64>)>,
    ticked: Vec<LineRecord>,
    /// Material, what a pack holds, count.
    overrides: Vec<(MaterialRecord, i64, u32)>,
    prices: Vec<(MaterialRecord, i64, i64)>,
    symbol: String,
    cheapest: bool,
    metric_packs: bool,
}

#[derive(Serialize, Deserialize)]
struct TapeRecord {
    sides: [Option<i64>; 2],
    diagonals: [Option<i64>; 2],
    run: Option<i64>,
    count: u32,
    width: Option<i64>,
    ends_taken: bool,
    scale: i64,
    on_paper: Option<i64>,
    on_site: Option<i64>,
}

fn write_buying(buying: &Buying) -> BuyingRecord {
    let pack = |key: &PackKey| (material(&key.material), key.holds);
    BuyingRecord {
        by_hand: buying
            .by_hand
            .iter()
            .map(|line| {
                let price = line.price.map(Money::as_minor);
                (line.id.0, line.text.clone(), line.count, price)
            })
            .collect(),
        ticked: buying
            .ticked
            .iter()
            .map(|key| match key {
                LineKey::Material(what) => LineRecord::Material(material(what)),
                LineKey::ByHand(id) => LineRecord::ByHand(id.0),
            })
            .collect(),
        overrides: buying
            .overrides
            .iter()
            .map(|(key, count)| {
                let (what, holds) = pack(key);
                (what, holds, *count)
            })
            .collect(),
        prices: buying
            .prices
            .iter()
            .map(|(key, price)| {
                let (what, holds) = pack(key);
                (what, holds, price.as_minor())
            })
            .collect(),
        symbol: buying.symbol.clone(),
        cheapest: buying.choice == Choice::Cheapest,
        metric_packs: buying.metric_packs,
    }
}

fn read_buying(record: BuyingRecord) -> Option<Buying> {
    let pack = |what, holds| {
        Some(PackKey {
            material: read_material(what)?,
            holds,
        })
    };
    Some(Buying {
        by_hand: record
            .by_hand
            .into_iter()
            .map(|(id, text, count, price)| HandLine {
                id: Id(id),
                text,
                count,
                price: price.map(Money::minor),
            })
            .collect(),
        ticked: all(record.ticked, |line| {
            Some(match line {
                LineRecord::Material(what) => LineKey::Material(read_material(what)?),
                LineRecord::ByHand(id) => LineKey::ByHand(Id(id)),
            })
        })?
        .into_iter()
        .collect(),
        overrides: all(record.overrides, |(what, holds, count)| {
            Some((pack(what, holds)?, count))
        })?
        .into_iter()
        .collect(),
        prices: all(record.prices, |(what, holds, minor)| {
            Some((pack(what, holds)?, Money::minor(minor)))
        })?
        .into_iter()
        .collect(),
        symbol: record.symbol,
        choice: if record.cheapest {
            Choice::Cheapest
        } else {
            Choice::LeastLeftOver
        },
        metric_packs: record.metric_packs,
        cutting: BTreeMap::new(),
        left: BTreeMap::new(),
    })
}

fn write_tape(tape: &TapeBench) -> TapeRecord {
    let nm = |length: Option<Length>| length.map(Length::as_nm);
    TapeRecord {
        sides: tape.sides.map(nm),
        diagonals: tape.diagonals.map(nm),
        run: nm(tape.run),
        count: tape.count,
        width: nm(tape.width),
        ends_taken: tape.ends == Ends::Taken,
        scale: tape.scale.as_nm(),
        on_paper: nm(tape.on_paper),
        on_site: nm(tape.on_site),
    }
}

fn read_tape(record: &TapeRecord) -> Option<TapeBench> {
    let two = |[a, b]: [Option<i64>; 2]| Some([maybe(a)?, maybe(b)?]);
    Some(TapeBench {
        sides: two(record.sides)?,
        diagonals: two(record.diagonals)?,
        run: maybe(record.run)?,
        count: record.count,
        width: maybe(record.width)?,
        ends: if record.ends_taken {
            Ends::Taken
        } else {
            Ends::Open
        },
        scale: length(record.scale)?,
        on_paper: maybe(record.on_paper)?,
        on_site: maybe(record.on_site)?,
    })
}

/// A job as its parts but for the roll, in the order of its lists.
pub(super) fn write_entries(job: &Job) -> Vec<Part> {
    let head = HeadRecord {
        id: job.id.0,
        name: job.name.clone(),
        begun: job.begun.to_rfc3339(),
        units: write_units(job.units),
    };
    let mut parts = vec![part(kind::HEAD, job.id.0, write(&head))];
    for room in &job.rooms {
        parts.push(part(kind::ROOM, room.id.0, write(&write_room(room))));
        parts.extend(write_fixed(room).map(|record| part(kind::FIXED, room.id.0, write(&record))));
        parts
            .extend(write_survey(room).map(|record| part(kind::SURVEY, room.id.0, write(&record))));
        parts
            .extend(write_joists(room).map(|record| part(kind::JOISTS, room.id.0, write(&record))));
    }
    for task in &job.tasks {
        let record = FigureRecord {
            room: task
                .room
                .and_then(|room| job.rooms.get(room))
                .map(|room| room.id.0),
            task: write_task(task),
            more: write_more(task),
        };
        parts.push(part(kind::FIGURE, task.id.0, write(&record)));
        if let Ask::Pipe(_, on) = &task.ask {
            parts.extend(write_lies(*on).map(|lies| part(kind::LIES, task.id.0, write(&lies))));
        }
    }
    parts.push(part(kind::BUYING, 0, write(&write_buying(&job.buying))));
    parts.push(part(kind::TAPE, 0, write(&write_tape(&job.tape))));
    parts.extend(
        job.steps
            .iter()
            .map(|note| part(kind::STEP, note.id.0, write(&write_step(note)))),
    );
    for photo in &job.photos {
        parts.push(part(kind::PHOTO, photo.id.0, write(&write_photo(photo))));
        parts.extend(write_sides(photo).map(|sides| part(kind::SIDES, photo.id.0, write(&sides))));
        parts.extend((photo.laid).then(|| part(kind::LAID, photo.id.0, write(&1_u8))));
    }
    if !job.buying.cutting.is_empty() {
        let record = write_cutting(&job.buying);
        parts.push(part(kind::CUTTING, 0, write(&record)));
    }
    if !job.buying.left.is_empty() {
        parts.push(part(kind::LEFT, 0, write(&write_left(&job.buying))));
    }
    if let Some(batch) = job.batch {
        let record: BatchRecord = (batch.mixed.to_rfc3339(), batch.rest, batch.good);
        parts.push(part(kind::BATCH, 0, write(&record)));
    }
    parts.extend(job.traced.iter().map(|(figure, traced)| {
        let record: TracedRecord = (traced.photo.0, traced.mark, traced.give.as_nm());
        part(kind::TRACED, figure.0, write(&record))
    }));
    parts
}

/// A length of the roll, counted from 0.
pub(super) fn write_lines(at: usize, lines: &[Arc<RollLine>]) -> Part {
    let lines: Vec<_> = lines
        .iter()
        .map(|line| (line.id.0, &line.label, &line.typed, line.length.as_nm()))
        .collect();
    part(kind::ROLL, at as u64, write(&lines))
}

/// A line of the roll as its record.
pub(super) fn write_line(line: &RollLine) -> LineOfRoll {
    (
        line.id.0,
        line.label.clone(),
        line.typed.clone(),
        line.length.as_nm(),
    )
}

/// A line of the roll from its record.
pub(super) fn read_line((id, label, typed, nm): LineOfRoll) -> Option<Arc<RollLine>> {
    Some(Arc::new(RollLine {
        id: Id(id),
        label,
        typed,
        length: length(nm)?,
    }))
}

/// What was read of a job's parts.
pub(super) struct Assembled {
    /// The job; without its head it has a name of ours.
    pub job: Job,
    /// Kinds and names of parts that did not read.
    pub unread: Vec<(u16, u64)>,
    /// Whether its head was there.
    pub headed: bool,
}

/// A job from whichever of its parts read; parts of kinds not known are passed over.
pub(super) fn read_job(parts: &[Part]) -> Assembled {
    let begun = DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new(
        "Recovered job",
        begun,
        crate::measure::Units::FeetInches { marks: 16 },
    );
    let (mut unread, mut headed) = (Vec::new(), false);
    let mut rooms = BTreeMap::new();
    for Part { kind, id, body } in parts {
        let took = match *kind {
            kind::HEAD => read_head(body, &mut job).inspect(|()| headed = true),
            kind::ROOM => read::<RoomRecord>(body)
                .and_then(read_room)
                .map(|mut room| {
                    room.id = Id(*id);
                    rooms.insert(*id, job.rooms.len());
                    job.rooms.push(room);
                }),
            // What is fixed in a room that was lost is lost with it.
            kind::FIXED => read::<FixedRecord>(body).and_then(read_fixed).map(|fixed| {
                if let Some(room) = rooms.get(id).and_then(|at| job.rooms.get_mut(*at)) {
                    fixed.into_room(room);
                }
            }),
            kind::SURVEY => read::<SurveyRecord>(body)
                .and_then(read_survey)
                .map(|said| {
                    if let Some(room) = rooms.get(id).and_then(|at| job.rooms.get_mut(*at)) {
                        said.into_room(room);
                    }
                }),
            kind::JOISTS => read(body).and_then(read_joists).map(|joists| {
                if let Some(room) = rooms.get(id).and_then(|at| job.rooms.get_mut(*at)) {
                    room.joists = Some(joists);
                }
            }),
            kind::LIES => read(body).and_then(|lies| {
                let task = job.tasks.iter_mut().find(|task| task.id == Id(*id));
                match task.map(|task| &mut task.ask) {
                    Some(Ask::Pipe(_, on)) => read_lies(lies, on),
                    _ => Some(()),
                }
            }),
            kind::FIGURE => read_figure(body, Id(*id), &rooms).map(|task| job.tasks.push(task)),
            kind::ROLL => read_roll(body, &mut job),
            kind::PHOTO => read(body)
                .and_then(|record| read_photo(record, Id(*id)))
                .map(|photo| job.photos.push(Arc::new(photo))),
            kind::STEP => read(body)
                .and_then(|record| read_step(record, Id(*id)))
                .map(|note| job.steps.push(note)),
            // Those of a picture that was lost are lost with it.
            kind::SIDES => read(body).and_then(read_sides).map(|sides| {
                let photo = job.photos.last_mut().filter(|photo| photo.id.0 == *id);
                if let Some(flat) = photo.and_then(|photo| Arc::make_mut(photo).flat.as_mut()) {
                    flat.sides = sides;
                }
            }),
            kind::LAID => read::<u8>(body).map(|laid| {
                let photo = job.photos.last_mut().filter(|photo| photo.id.0 == *id);
                if let Some(photo) = photo {
                    Arc::make_mut(photo).laid = laid == 1;
                }
            }),
            kind::BUYING => read(body).and_then(read_buying).map(|buying| {
                let cutting = std::mem::take(&mut job.buying.cutting);
                let left = std::mem::take(&mut job.buying.left);
                job.buying = Buying {
                    cutting,
                    left,
                    ..buying
                };
            }),
            kind::CUTTING => read(body).and_then(|record| read_cutting(record, &mut job.buying)),
            kind::LEFT => read(body).and_then(|record| read_left(record, &mut job.buying)),
            kind::TRACED => read::<TracedRecord>(body).map(|(photo, mark, give)| {
                let traced = Traced {
                    photo: Id(photo),
                    mark,
                    give: Length::nm(give),
                };
                job.traced.insert(Id(*id), traced);
            }),
            kind::BATCH => read_batch(body).map(|batch| job.batch = Some(batch)),
            kind::TAPE => read(body)
                .as_ref()
                .and_then(read_tape)
                .map(|tape| job.tape = tape),
            _ => Some(()),
        };
        if took.is_none() {
            unread.push((*kind, *id));
        }
    }
    Assembled {
        job,
        unread,
        headed,
    }
}

/// The picture, the mark on it, and by how many nanometres its corners may be off.
type TracedRecord = (u64, u32, i64);

/// When it was mixed, minutes of rest, minutes that it is good.
type BatchRecord = (String, f64, f64);

fn read_batch(body: &[u8]) -> Option<Batch> {
    let (mixed, rest, good): BatchRecord = read(body)?;
    let sound = |minutes: f64| (0.0..=100_000.0).contains(&minutes).then_some(minutes);
    Some(Batch {
        mixed: DateTime::parse_from_rfc3339(&mixed).ok()?,
        rest: sound(rest)?,
        good: sound(good)?,
    })
}

fn read_head(body: &[u8], job: &mut Job) -> Option<()> {
    let record: HeadRecord = read(body)?;
    let begun = DateTime::parse_from_rfc3339(&record.begun).ok()?;
    let units = read_units(record.units)?;
    job.id = Id(record.id);
    job.name = record.name;
    job.begun = begun;
    job.units = units;
    Some(())
}

/// A figure; where its room is lost it stands on its own.
fn read_figure(body: &[u8], id: Id, rooms: &BTreeMap<u64, usize>) -> Option<Task> {
    let record: FigureRecord = read(body)?;
    let (_, ask, on_list) = read_task(record.task, Some(&record.more))?;
    Some(Task {
        id,
        room: record.room.and_then(|room| rooms.get(&room).copied()),
        ask,
        on_list,
    })
}

fn read_roll(body: &[u8], job: &mut Job) -> Option<()> {
    job.roll.extend(all(read(body)?, read_line)?);
    Some(())
}
