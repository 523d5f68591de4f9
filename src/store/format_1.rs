//! A job of format 1, to be read for ever and never written.

use chrono::DateTime;
use serde::{Deserialize, Serialize};

use super::record::{RoomRecord, all, length, read, read_room, read_units};
use super::record_figures::{TaskRecord, read_task};
use super::record_material::{MaterialRecord, read_material};
use crate::measure::Money;
use crate::site::Id;
use crate::takeoff::{Buying, Choice, HandLine, Job, LineKey, PackKey, RollLine, TapeBench, Task};
use crate::trades::Material;

#[derive(Serialize, Deserialize)]
struct JobRecord {
    name: String,
    begun: String,
    units: (u8, u8),
    rooms: Vec<RoomRecord>,
    tasks: Vec<TaskRecord>,
    roll: Vec<(String, String, i64)>,
    buying: BuyingRecord,
}

#[derive(Serialize, Deserialize)]
enum LineRecord {
    Material(MaterialRecord),
    ByHand(u32),
}

#[derive(Serialize, Deserialize)]
struct BuyingRecord {
    by_hand: Vec<(u32, String)>,
    ticked: Vec<LineRecord>,
    overrides: Vec<(LineRecord, u32)>,
    prices: Vec<(MaterialRecord, u32, i64)>,
    symbol: String,
    cheapest: bool,
    metric_packs: bool,
}

/// What the packs of format 1 held, by which a price was kept under its place in the list.
fn held(material: &Material, metric: bool, place: u32) -> Option<i64> {
    let holds: &[i64] = match material {
        Material::Paint { .. } | Material::Primer { .. } | Material::Compound(_) => {
            if metric {
                &[10_000_000, 5_000_000, 2_500_000, 1_000_000, 500_000]
            } else {
                &[18_927_059, 3_785_412, 946_353]
            }
        }
        Material::Screws { .. } => &[200_000_000],
        Material::AdhesivePatch { .. } => &[1_000_000],
        Material::JointTape => &[76_200_000, 22_860_000],
        Material::Board { .. } => &[2_972_897],
        Material::Lumber { .. } => &[2_438_400],
        // Materials that it did not know.
        _ => &[],
    };
    holds.get(place as usize).copied()
}

/// The same entry of the same file has the same name wherever it is opened.
fn id(job: u64, list: u64, place: u64) -> Id {
    let mut sum = 0xcbf2_9ce4_8422_2325_u64;
    for byte in [job, list, place].iter().flat_map(|n| n.to_le_bytes()) {
        sum = (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    }
    Id(sum.max(1))
}

fn read_line(record: LineRecord, of: u64) -> Option<LineKey> {
    Some(match record {
        LineRecord::Material(what) => LineKey::Material(read_material(what)?),
        LineRecord::ByHand(line) => LineKey::ByHand(id(of, 4, line.into())),
    })
}

fn read_buying(record: BuyingRecord, of: u64) -> Option<Buying> {
    let metric = record.metric_packs;
    let mut buying = Buying {
        by_hand: record
            .by_hand
            .into_iter()
            .map(|(line, text)| HandLine {
                id: id(of, 4, line.into()),
                text,
                count: 1,
                price: None,
            })
            .collect(),
        ticked: all(record.ticked, |line| read_line(line, of))?
            .into_iter()
            .collect(),
        symbol: record.symbol,
        choice: if record.cheapest {
            Choice::Cheapest
        } else {
            Choice::LeastLeftOver
        },
        metric_packs: metric,
        ..Buying::default()
    };
    for (what, place, minor) in record.prices {
        let material = read_material(what)?;
        if let Some(holds) = held(&material, metric, place) {
            let key = PackKey { material, holds };
            buying.prices.insert(key, Money::minor(minor));
        }
    }
    for (line, count) in record.overrides {
        // Format 1 counted whichever pack the figure had put first; of several sizes the middle one is the likeliest.
        if let LineKey::Material(material) = read_line(line, of)?
            && let Some(holds) = held(&material, metric, 1).or(held(&material, metric, 0))
        {
            buying.overrides.insert(PackKey { material, holds }, count);
        }
    }
    Some(buying)
}

/// A job from the body of a file of format 1; `None` where it is not whole.
pub(super) fn read_job(bytes: &[u8]) -> Option<Job> {
    let record: JobRecord = read(bytes)?;
    let begun = DateTime::parse_from_rfc3339(&record.begun).ok()?;
    let of = begun.timestamp_millis().unsigned_abs();
    let place = |list, at: usize| id(of, list, at as u64);
    let mut rooms = all(record.rooms, read_room)?;
    for (at, room) in rooms.iter_mut().enumerate() {
        room.id = place(1, at);
    }
    let mut tasks = Vec::new();
    for (at, task) in record.tasks.into_iter().enumerate() {
        let (room, ask, on_list) = read_task(task, None)?;
        if room.is_some_and(|room| room >= rooms.len()) {
            return None;
        }
        tasks.push(Task {
            id: place(2, at),
            room,
            ask,
            on_list,
        });
    }
    let mut roll = Vec::new();
    for (at, (label, typed, nm)) in record.roll.into_iter().enumerate() {
        roll.push(
            RollLine {
                id: place(3, at),
                label,
                typed,
                length: length(nm)?,
            }
            .into(),
        );
    }
    Some(Job {
        steps: Vec::new(),
        id: place(0, 0),
        name: record.name,
        begun,
        units: read_units(record.units)?,
        rooms,
        tasks,
        roll,
        buying: read_buying(record.buying, of)?,
        tape: TapeBench::default(),
        batch: None,
        photos: Vec::new(),
    })
}
