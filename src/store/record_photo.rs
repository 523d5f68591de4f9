//! A picture of the log as a record: what is kept of it beside its bytes.

use chrono::DateTime;
use serde::{Deserialize, Serialize};

use super::pictures::is_name;
use super::record::{all, choice, code, length, maybe};
use crate::geometry::Spot;
use crate::measure::{Angle, Length};
use crate::photo::{Anchor, Behind, Flat, KnownBy, Mark, Object, Photo, Sides, Stage, Taped, What};
use crate::site::{HiddenKind, Id};

/// A length and its ±.
type TapedRecord = (i64, i64);

#[derive(Serialize, Deserialize)]
pub(super) struct PhotoRecord {
    picture: String,
    stripped: String,
    size: (u32, u32),
    when: String,
    focal_35: Option<f64>,
    located: bool,
    place_shared: bool,
    room: Option<u64>,
    wall: Option<u32>,
    stage: Option<u8>,
    title: String,
    note: String,
    before: Option<u64>,
    marks: Vec<MarkRecord>,
    flat: Option<FlatRecord>,
    /// Where, from the left corner, up.
    anchor: Option<(Spot, Option<i64>, Option<i64>)>,
}

#[derive(Serialize, Deserialize)]
struct MarkRecord {
    number: u32,
    what: WhatRecord,
    points: Vec<Spot>,
    note: String,
}

#[derive(Serialize, Deserialize)]
enum WhatRecord {
    Dimension(Option<TapedRecord>),
    Angle(Option<(i64, i64)>),
    Area(Option<(f64, f64)>),
    Level,
    Arrow,
    Note,
    Freehand,
    Hidden(BehindRecord),
}

#[derive(Serialize, Deserialize)]
struct BehindRecord {
    kind: u8,
    depth: Option<TapedRecord>,
    width: Option<i64>,
    material: String,
    at: Option<(i64, i64)>,
    pinned: Option<u64>,
}

#[derive(Serialize, Deserialize)]
struct FlatRecord {
    corners: [Spot; 4],
    object: u8,
    width: Option<TapedRecord>,
    height: Option<TapedRecord>,
    edges: Vec<Vec<Spot>>,
}

/// By what the four points of a reference are known; the right side, the lower one, the diagonal.
pub(super) type SidesRecord = (
    u8,
    Option<TapedRecord>,
    Option<TapedRecord>,
    Option<TapedRecord>,
);

/// The sides of a picture's reference, where anything is said of them beyond a rectangle.
pub(super) fn write_sides(photo: &Photo) -> Option<SidesRecord> {
    let sides = photo.flat.as_ref()?.sides;
    let said = sides != Sides::default();
    said.then(|| {
        let by = code(&KnownBy::ALL, &sides.by);
        let [right, lower, diagonal] =
            [sides.right, sides.lower, sides.diagonal].map(|side| side.map(write_taped));
        (by, right, lower, diagonal)
    })
}

pub(super) fn read_sides((by, right, lower, diagonal): SidesRecord) -> Option<Sides> {
    Some(Sides {
        by: choice(&KnownBy::ALL, by)?,
        right: maybe_taped(right)?,
        lower: maybe_taped(lower)?,
        diagonal: maybe_taped(diagonal)?,
    })
}

fn write_taped(taped: Taped) -> TapedRecord {
    (taped.length.as_nm(), taped.give.as_nm())
}
fn read_taped((nm, give): TapedRecord) -> Option<Taped> {
    Some(Taped {
        length: length(nm)?,
        give: length(give).filter(|give| *give >= Length::ZERO)?,
    })
}
fn maybe_taped(record: Option<TapedRecord>) -> Option<Option<Taped>> {
    record.map_or(Some(None), |record| read_taped(record).map(Some))
}

/// The furthest that a point is marked from the corner of its picture, in pixels.
pub(super) const FURTHEST: f64 = 1e6;

/// A place in a picture.
pub(super) fn spot(spot: Spot) -> Option<Spot> {
    let near = |part: &f64| part.abs() <= FURTHEST;
    spot.iter().all(near).then_some(spot)
}

/// A figure that is one, and not less than nothing.
pub(super) fn figure(figure: f64) -> Option<f64> {
    (figure.is_finite() && figure >= 0.0).then_some(figure)
}

/// A name that a picture has.
pub(super) fn name(name: String) -> Option<String> {
    is_name(&name).then_some(name)
}

fn turn(micro: i64) -> Option<Angle> {
    (micro.unsigned_abs() <= 3_600_000_000).then(|| Angle::microdegrees(micro))
}

pub(super) fn write_photo(photo: &Photo) -> PhotoRecord {
    PhotoRecord {
        picture: photo.picture.clone(),
        stripped: photo.stripped.clone(),
        size: photo.size,
        when: photo.when.to_rfc3339(),
        focal_35: photo.focal_35,
        located: photo.located,
        place_shared: photo.place_shared,
        room: photo.room.map(|room| room.0),
        wall: photo.wall.and_then(|wall| u32::try_from(wall).ok()),
        stage: photo.stage.map(|stage| code(&Stage::ALL, &stage)),
        title: photo.title.clone(),
        note: photo.note.clone(),
        before: photo.before.map(|before| before.0),
        marks: photo.marks.iter().map(write_mark).collect(),
        flat: photo.flat.as_ref().map(|flat| FlatRecord {
            corners: flat.corners,
            object: code(&Object::ALL, &flat.object),
            width: flat.width.map(write_taped),
            height: flat.height.map(write_taped),
            edges: flat.edges.clone(),
        }),
        anchor: photo.anchor.map(|anchor| {
            let nm = |length: Option<Length>| length.map(Length::as_nm);
            (anchor.spot, nm(anchor.from_left), nm(anchor.up))
        }),
    }
}

fn write_mark(mark: &Mark) -> MarkRecord {
    let what = match &mark.what {
        What::Dimension(taped) => WhatRecord::Dimension(taped.map(write_taped)),
        What::Angle(read) => {
            let micro =
                |(angle, give): (Angle, Angle)| (angle.as_microdegrees(), give.as_microdegrees());
            WhatRecord::Angle(read.map(micro))
        }
        What::Area(read) => WhatRecord::Area(*read),
        What::Level => WhatRecord::Level,
        What::Arrow => WhatRecord::Arrow,
        What::Note => WhatRecord::Note,
        What::Freehand => WhatRecord::Freehand,
        What::Hidden(behind) => WhatRecord::Hidden(BehindRecord {
            kind: code(&HiddenKind::ALL, &behind.kind),
            depth: behind.depth.map(write_taped),
            width: behind.width.map(Length::as_nm),
            material: behind.material.clone(),
            at: behind.at.map(|[left, up]| (left.as_nm(), up.as_nm())),
            pinned: behind.pinned.map(|id| id.0),
        }),
    };
    MarkRecord {
        number: mark.number,
        what,
        points: mark.points.clone(),
        note: mark.note.clone(),
    }
}

pub(super) fn read_photo(record: PhotoRecord, id: Id) -> Option<Photo> {
    let stage = |code: u8| choice(&Stage::ALL, code);
    Some(Photo {
        id,
        picture: name(record.picture)?,
        stripped: name(record.stripped)?,
        size: record.size,
        when: DateTime::parse_from_rfc3339(&record.when).ok()?,
        focal_35: some(record.focal_35, figure)?,
        located: record.located,
        place_shared: record.place_shared,
        room: record.room.map(Id),
        wall: some(record.wall, |wall| usize::try_from(wall).ok())?,
        stage: some(record.stage, stage)?,
        title: record.title,
        note: record.note,
        before: record.before.map(Id),
        marks: all(record.marks, read_mark)?,
        flat: some(record.flat, read_flat)?,
        // In a part of its own.
        laid: false,
        anchor: some(record.anchor, |(at, left, up)| {
            Some(Anchor {
                spot: spot(at)?,
                from_left: maybe(left)?,
                up: maybe(up)?,
            })
        })?,
    })
}

/// What may not be there, read where it is.
fn some<T, U>(record: Option<T>, read: impl Fn(T) -> Option<U>) -> Option<Option<U>> {
    record.map_or(Some(None), |record| read(record).map(Some))
}

fn read_mark(record: MarkRecord) -> Option<Mark> {
    let what = match record.what {
        WhatRecord::Dimension(taped) => What::Dimension(maybe_taped(taped)?),
        WhatRecord::Angle(read) => What::Angle(some(read, |(angle, give)| {
            Some((turn(angle)?, turn(give)?))
        })?),
        WhatRecord::Area(read) => What::Area(some(read, |(area, give)| {
            Some((figure(area)?, figure(give)?))
        })?),
        WhatRecord::Level => What::Level,
        WhatRecord::Arrow => What::Arrow,
        WhatRecord::Note => What::Note,
        WhatRecord::Freehand => What::Freehand,
        WhatRecord::Hidden(behind) => What::Hidden(Box::new(Behind {
            kind: choice(&HiddenKind::ALL, behind.kind)?,
            depth: maybe_taped(behind.depth)?,
            width: maybe(behind.width)?,
            material: behind.material,
            at: some(behind.at, |(left, up)| Some([length(left)?, length(up)?]))?,
            pinned: behind.pinned.map(Id),
        })),
    };
    Some(Mark {
        number: record.number,
        what,
        points: all(record.points, spot)?,
        note: record.note,
    })
}

fn read_flat(record: FlatRecord) -> Option<Flat> {
    record
        .corners
        .into_iter()
        .try_for_each(|corner| spot(corner).map(|_| ()))?;
    Some(Flat {
        corners: record.corners,
        object: choice(&Object::ALL, record.object)?,
        width: maybe_taped(record.width)?,
        height: maybe_taped(record.height)?,
        sides: Sides::default(),
        edges: all(record.edges, |edge| all(edge, spot))?,
    })
}
