//! What is fixed on a room's walls, what is behind them and how its doors hang, as a record of its own beside the room.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe};
use crate::measure::Length;
use crate::site::{
    FixedKind, FixedPoint, Hidden, HiddenKind, Hinge, Id, Known, On, Room, Side, Spot,
};

/// On the floor, and the wall that it is measured from.
type OnRecord = (bool, u32);

#[derive(Serialize, Deserialize)]
pub(super) struct FixedRecord {
    /// Opening, hinged right, opens out.
    hinges: Vec<(u32, bool, bool)>,
    fixed: Vec<PointRecord>,
    hidden: Vec<HiddenRecord>,
}

#[derive(Serialize, Deserialize)]
struct PointRecord {
    id: u64,
    kind: u8,
    on: OnRecord,
    /// From the left, up, across, high, deep.
    sizes: [Option<i64>; 5],
    note: String,
    /// From a picture, so much more or less.
    picture: Option<i64>,
}

#[derive(Serialize, Deserialize)]
struct HiddenRecord {
    id: u64,
    kind: u8,
    on: OnRecord,
    line: Vec<(i64, i64)>,
    width: Option<i64>,
    depth: Option<i64>,
    material: String,
    note: String,
    known: Option<i64>,
    picture: Option<String>,
}

fn nm(length: Option<Length>) -> Option<i64> {
    length.map(Length::as_nm)
}
fn write_on(on: On) -> OnRecord {
    let wall = u32::try_from(on.wall()).unwrap_or(u32::MAX);
    (matches!(on, On::Floor(_)), wall)
}
fn read_on((floor, wall): OnRecord) -> Option<On> {
    let wall = usize::try_from(wall).ok()?;
    Some(if floor {
        On::Floor(wall)
    } else {
        On::Wall(wall)
    })
}
fn write_known(known: Known) -> Option<i64> {
    match known {
        Known::Tape => None,
        Known::Picture(more_or_less) => Some(more_or_less.as_nm()),
    }
}
fn read_known(record: Option<i64>) -> Option<Known> {
    maybe(record).map(|picture| picture.map_or(Known::Tape, Known::Picture))
}

/// A room's; `None` where there is nothing to say, as in every file before there was this.
pub(super) fn write_fixed(room: &Room) -> Option<FixedRecord> {
    let hinge = |(at, hinge): (usize, Hinge)| {
        let at = u32::try_from(at).unwrap_or(u32::MAX);
        (at, hinge.side == Side::Right, hinge.out)
    };
    let openings = room.openings.iter().enumerate();
    let hinges: Vec<_> = openings
        .filter_map(|(at, opening)| Some((at, opening.hinge?)))
        .map(hinge)
        .collect();
    let point = |point: &FixedPoint| PointRecord {
        id: point.id.0,
        kind: code(&FixedKind::ALL, &point.kind),
        on: write_on(point.on),
        sizes: [
            point.from_left,
            point.up,
            point.width,
            point.height,
            point.depth,
        ]
        .map(nm),
        note: point.note.clone(),
        picture: write_known(point.known),
    };
    let hidden = |hidden: &Hidden| HiddenRecord {
        id: hidden.id.0,
        kind: code(&HiddenKind::ALL, &hidden.kind),
        on: write_on(hidden.on),
        line: (hidden.line.iter())
            .map(|spot| (spot.from_left.as_nm(), spot.up.as_nm()))
            .collect(),
        width: nm(hidden.width),
        depth: nm(hidden.depth),
        material: hidden.material.clone(),
        note: hidden.note.clone(),
        known: write_known(hidden.known),
        picture: hidden.picture.clone(),
    };
    let record = FixedRecord {
        hinges,
        fixed: room.fixed.iter().map(point).collect(),
        hidden: room.hidden.iter().map(hidden).collect(),
    };
    let nothing = record.hinges.is_empty() && record.fixed.is_empty() && record.hidden.is_empty();
    (!nothing).then_some(record)
}

/// What a record says of a room.
pub(super) struct Fixed {
    hinges: Vec<(usize, Hinge)>,
    fixed: Vec<FixedPoint>,
    hidden: Vec<Hidden>,
}

impl Fixed {
    /// Into its room; a hinge of an opening that is not there hangs nothing.
    pub fn into_room(self, room: &mut Room) {
        room.fixed = self.fixed;
        room.hidden = self.hidden;
        for (at, hinge) in self.hinges {
            if let Some(opening) = room.openings.get_mut(at) {
                opening.hinge = Some(hinge);
            }
        }
    }
}

pub(super) fn read_fixed(record: FixedRecord) -> Option<Fixed> {
    let hinges = all(record.hinges, |(at, right, out)| {
        let side = if right { Side::Right } else { Side::Left };
        Some((usize::try_from(at).ok()?, Hinge { side, out }))
    })?;
    let fixed = all(record.fixed, |point| {
        let [from_left, up, width, height, depth] = point.sizes;
        Some(FixedPoint {
            id: Id(point.id),
            kind: choice(&FixedKind::ALL, point.kind)?,
            on: read_on(point.on)?,
            from_left: maybe(from_left)?,
            up: maybe(up)?,
            width: maybe(width)?,
            height: maybe(height)?,
            depth: maybe(depth)?,
            note: point.note,
            known: read_known(point.picture)?,
        })
    })?;
    let hidden = all(record.hidden, |hidden| {
        Some(Hidden {
            id: Id(hidden.id),
            kind: choice(&HiddenKind::ALL, hidden.kind)?,
            on: read_on(hidden.on)?,
            line: all(hidden.line, |(from_left, up)| {
                Some(Spot {
                    from_left: length(from_left)?,
                    up: length(up)?,
                })
            })?,
            width: maybe(hidden.width)?,
            depth: maybe(hidden.depth)?,
            material: hidden.material,
            note: hidden.note,
            known: read_known(hidden.known)?,
            picture: hidden.picture,
        })
    })?;
    Some(Fixed {
        hinges,
        fixed,
        hidden,
    })
}
