//! The log of pictures in JSON; the pictures themselves stay in their folder, and are told by name.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::words::{Hex, Nm, Udeg, When, Word, Words};
use super::{JsonError, at};
use crate::geometry::Spot;
use crate::measure::{Angle, Length};
use crate::photo::{Anchor, Behind, Flat, KnownBy, Mark, Object, Photo, Sides, Stage, Taped, What};
use crate::site::HiddenKind;
use crate::store::record_photo::{figure, name, spot};

#[derive(Serialize, Deserialize)]
pub(super) struct PhotoJson {
    #[serde(default = "Hex::fresh")]
    pub id: Hex,
    picture: String,
    without_place: String,
    size_px: (u32, u32),
    when: When,
    focal_35_mm: Option<f64>,
    #[serde(default)]
    has_place: bool,
    #[serde(default)]
    place_shared: bool,
    room: Option<Hex>,
    wall: Option<usize>,
    stage: Option<Word<Stage>>,
    #[serde(default)]
    title: String,
    #[serde(default)]
    note: String,
    before: Option<Hex>,
    #[serde(default)]
    marks: Vec<MarkJson>,
    flat: Option<FlatJson>,
    anchor: Option<AnchorJson>,
    #[serde(default)]
    laid: bool,
}

#[derive(Serialize, Deserialize, Clone, Copy)]
struct TapedJson {
    length_nm: Nm,
    plus_minus_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct MarkJson {
    number: u32,
    what: WhatJson,
    points_px: Vec<Spot>,
    #[serde(default)]
    note: String,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum WhatJson {
    Dimension(Option<TapedJson>),
    Angle(Option<(Udeg, Udeg)>),
    AreaM2(Option<(f64, f64)>),
    Level,
    Arrow,
    Note,
    Freehand,
    Hidden(BehindJson),
}

#[derive(Serialize, Deserialize)]
struct BehindJson {
    kind: Word<HiddenKind>,
    depth: Option<TapedJson>,
    width_nm: Option<Nm>,
    #[serde(default)]
    material: String,
    from_left_and_up_nm: Option<[Nm; 2]>,
    pinned: Option<Hex>,
}

#[derive(Serialize, Deserialize)]
struct FlatJson {
    corners_px: [Spot; 4],
    object: Word<Object>,
    width: Option<TapedJson>,
    height: Option<TapedJson>,
    sides: Option<SidesJson>,
    #[serde(default)]
    edges_px: Vec<Vec<Spot>>,
}

#[derive(Serialize, Deserialize)]
struct SidesJson {
    known_by: Word<KnownBy>,
    right: Option<TapedJson>,
    lower: Option<TapedJson>,
    diagonal: Option<TapedJson>,
}

#[derive(Serialize, Deserialize)]
struct AnchorJson {
    spot_px: Spot,
    from_left_nm: Option<Nm>,
    up_nm: Option<Nm>,
}

impl Words for Stage {
    const WORDS: &'static [(&'static str, Stage)] = &[
        ("as-found", Stage::AsFound),
        ("stripped", Stage::Stripped),
        ("dry-fitted", Stage::DryFitted),
        ("closed-up", Stage::ClosedUp),
        ("finished", Stage::Finished),
    ];
}

impl Words for Object {
    const WORDS: &'static [(&'static str, Object)] = &[
        ("tile", Object::Tile),
        ("door", Object::Door),
        ("letter", Object::Letter),
        ("a4", Object::A4),
        ("board", Object::Board),
        ("taped", Object::Taped),
    ];
}

impl Words for KnownBy {
    const WORDS: &'static [(&'static str, KnownBy)] = &[
        ("rectangle", KnownBy::Rectangle),
        ("corner", KnownBy::Corner),
        ("diagonal", KnownBy::Diagonal),
    ];
}

fn write_sides(sides: Sides) -> Option<SidesJson> {
    (sides != Sides::default()).then(|| SidesJson {
        known_by: Word(sides.by),
        right: sides.right.map(write_taped),
        lower: sides.lower.map(write_taped),
        diagonal: sides.diagonal.map(write_taped),
    })
}

fn write_taped(taped: Taped) -> TapedJson {
    TapedJson {
        length_nm: Nm(taped.length),
        plus_minus_nm: Nm(taped.give),
    }
}
fn read_taped(json: TapedJson) -> Option<Taped> {
    let give = json.plus_minus_nm.0;
    (give >= Length::ZERO).then_some(Taped {
        length: json.length_nm.0,
        give,
    })
}

pub(super) fn write_photo(photo: &Arc<Photo>) -> PhotoJson {
    PhotoJson {
        id: Hex(photo.id.0),
        picture: photo.picture.clone(),
        without_place: photo.stripped.clone(),
        size_px: photo.size,
        when: When(photo.when),
        focal_35_mm: photo.focal_35,
        has_place: photo.located,
        place_shared: photo.place_shared,
        room: photo.room.map(|room| Hex(room.0)),
        wall: photo.wall,
        stage: photo.stage.map(Word),
        title: photo.title.clone(),
        note: photo.note.clone(),
        before: photo.before.map(|before| Hex(before.0)),
        marks: photo.marks.iter().map(write_mark).collect(),
        flat: photo.flat.as_ref().map(|flat| FlatJson {
            corners_px: flat.corners,
            object: Word(flat.object),
            width: flat.width.map(write_taped),
            height: flat.height.map(write_taped),
            sides: write_sides(flat.sides),
            edges_px: flat.edges.clone(),
        }),
        laid: photo.laid,
        anchor: photo.anchor.map(|anchor| AnchorJson {
            spot_px: anchor.spot,
            from_left_nm: anchor.from_left.map(Nm),
            up_nm: anchor.up.map(Nm),
        }),
    }
}

fn write_mark(mark: &Mark) -> MarkJson {
    let what = match &mark.what {
        What::Dimension(taped) => WhatJson::Dimension(taped.map(write_taped)),
        What::Angle(read) => WhatJson::Angle(read.map(|(angle, give)| (Udeg(angle), Udeg(give)))),
        What::Area(read) => WhatJson::AreaM2(*read),
        What::Level => WhatJson::Level,
        What::Arrow => WhatJson::Arrow,
        What::Note => WhatJson::Note,
        What::Freehand => WhatJson::Freehand,
        What::Hidden(behind) => WhatJson::Hidden(BehindJson {
            kind: Word(behind.kind),
            depth: behind.depth.map(write_taped),
            width_nm: behind.width.map(Nm),
            material: behind.material.clone(),
            from_left_and_up_nm: behind.at.map(|at| at.map(Nm)),
            pinned: behind.pinned.map(|id| Hex(id.0)),
        }),
    };
    MarkJson {
        number: mark.number,
        what,
        points_px: mark.points.clone(),
        note: mark.note.clone(),
    }
}

/// What may not be there; where it is and does not read, its place and what is wrong with it.
fn some<T, U>(
    json: Option<T>,
    place: impl Fn() -> String,
    why: &str,
    read: impl Fn(T) -> Option<U>,
) -> Result<Option<U>, JsonError> {
    json.map(|json| read(json).ok_or_else(|| at(place(), why)))
        .transpose()
}

const LESS: &str = "a ± that is less than nothing";
const FAR: &str = "a point that is no place in a picture";

fn points(all: Vec<Spot>, place: &str) -> Result<Vec<Spot>, JsonError> {
    let read =
        |(n, point): (usize, Spot)| spot(point).ok_or_else(|| at(format!("{place}[{n}]"), FAR));
    all.into_iter().enumerate().map(read).collect()
}

pub(super) fn read_photo(place: usize, json: PhotoJson) -> Result<Arc<Photo>, JsonError> {
    let within = |key: &str| format!("photos[{place}].{key}");
    let named = |text: String, key: &str| {
        name(text).ok_or_else(|| {
            at(
                within(key),
                "no name of a picture: 64 hex digits and an ending",
            )
        })
    };
    let mut marks = Vec::with_capacity(json.marks.len());
    for (n, mark) in json.marks.into_iter().enumerate() {
        marks.push(read_mark(mark, &within(&format!("marks[{n}]")))?);
    }
    let flat = json.flat.map(|flat| -> Result<Flat, JsonError> {
        let corners = points(flat.corners_px.to_vec(), &within("flat.corners_px"))?;
        let side = |taped, key: &str| some(taped, || within(key), LESS, read_taped);
        let sides = flat.sides.map(|json| -> Result<Sides, JsonError> {
            Ok(Sides {
                by: json.known_by.0,
                right: side(json.right, "flat.sides.right")?,
                lower: side(json.lower, "flat.sides.lower")?,
                diagonal: side(json.diagonal, "flat.sides.diagonal")?,
            })
        });
        let edges = flat.edges_px.into_iter().enumerate();
        let edges = edges.map(|(n, edge)| points(edge, &within(&format!("flat.edges_px[{n}]"))));
        Ok(Flat {
            corners: <[Spot; 4]>::try_from(corners).unwrap_or(flat.corners_px),
            object: flat.object.0,
            width: side(flat.width, "flat.width")?,
            height: side(flat.height, "flat.height")?,
            sides: sides.transpose()?.unwrap_or_default(),
            edges: edges.collect::<Result<_, _>>()?,
        })
    });
    let anchor = some(
        json.anchor,
        || within("anchor"),
        FAR,
        |anchor| {
            Some(Anchor {
                spot: spot(anchor.spot_px)?,
                from_left: anchor.from_left_nm.map(|nm| nm.0),
                up: anchor.up_nm.map(|nm| nm.0),
            })
        },
    )?;
    let focal = "a focal length that is less than nothing";
    Ok(Arc::new(Photo {
        id: json.id.id(),
        picture: named(json.picture, "picture")?,
        stripped: named(json.without_place, "without_place")?,
        size: json.size_px,
        when: json.when.0,
        focal_35: some(json.focal_35_mm, || within("focal_35_mm"), focal, figure)?,
        located: json.has_place,
        place_shared: json.place_shared,
        room: json.room.map(Hex::id),
        wall: json.wall,
        stage: json.stage.map(|stage| stage.0),
        title: json.title,
        note: json.note,
        before: json.before.map(Hex::id),
        marks,
        flat: flat.transpose()?,
        anchor,
        laid: json.laid,
    }))
}

fn read_mark(json: MarkJson, place: &str) -> Result<Mark, JsonError> {
    let what_place = || format!("{place}.what");
    let taped = |json| some(json, what_place, LESS, read_taped);
    let what = match json.what {
        WhatJson::Dimension(json) => What::Dimension(taped(json)?),
        WhatJson::Angle(read) => {
            let angle =
                |(angle, give): (Udeg, Udeg)| -> Option<(Angle, Angle)> { Some((angle.0, give.0)) };
            What::Angle(some(read, what_place, LESS, angle)?)
        }
        WhatJson::AreaM2(read) => {
            let area = |(area, give)| Some((figure(area)?, figure(give)?));
            let why = "an area or its ± that is less than nothing";
            What::Area(some(read, what_place, why, area)?)
        }
        WhatJson::Level => What::Level,
        WhatJson::Arrow => What::Arrow,
        WhatJson::Note => What::Note,
        WhatJson::Freehand => What::Freehand,
        WhatJson::Hidden(behind) => What::Hidden(Box::new(Behind {
            kind: behind.kind.0,
            depth: taped(behind.depth)?,
            width: behind.width_nm.map(|nm| nm.0),
            material: behind.material,
            at: behind.from_left_and_up_nm.map(|at| at.map(|nm| nm.0)),
            pinned: behind.pinned.map(Hex::id),
        })),
    };
    Ok(Mark {
        number: json.number,
        what,
        points: points(json.points_px, &format!("{place}.points_px"))?,
        note: json.note,
    })
}
