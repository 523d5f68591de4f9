//! What is fixed on a room's walls, what is behind them and how its doors hang, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{length, nm};
use super::words::{Hex, Nm, Word};
use crate::site::{FixedKind, FixedPoint, Hidden, HiddenKind, Hinge, Known, On, Side, Spot};

#[derive(Serialize, Deserialize)]
pub(super) struct HingeJson {
    side: Word<Side>,
    #[serde(default)]
    opens_out: bool,
}

#[derive(Serialize, Deserialize, Clone, Copy, Default, PartialEq, Eq)]
#[serde(rename_all = "kebab-case")]
pub(super) enum SurfaceJson {
    #[default]
    Wall,
    Floor,
}

#[derive(Serialize, Deserialize)]
pub(super) struct FixedJson {
    #[serde(default = "Hex::fresh")]
    id: Hex,
    kind: Word<FixedKind>,
    on: SurfaceJson,
    /// Counted from 0; the one that it is measured from.
    pub wall: usize,
    from_left_nm: Option<Nm>,
    up_nm: Option<Nm>,
    width_nm: Option<Nm>,
    height_nm: Option<Nm>,
    depth_nm: Option<Nm>,
    #[serde(default)]
    note: String,
    /// From a picture, so much more or less; with the tape where it is missing.
    picture_plus_minus_nm: Option<Nm>,
}

#[derive(Serialize, Deserialize)]
pub(super) struct HiddenJson {
    #[serde(default = "Hex::fresh")]
    id: Hex,
    kind: Word<HiddenKind>,
    on: SurfaceJson,
    pub wall: usize,
    #[serde(default)]
    line: Vec<SpotJson>,
    width_nm: Option<Nm>,
    depth_nm: Option<Nm>,
    #[serde(default)]
    material: String,
    #[serde(default)]
    note: String,
    picture_plus_minus_nm: Option<Nm>,
    picture: Option<String>,
}

#[derive(Serialize, Deserialize)]
struct SpotJson {
    from_left_nm: Nm,
    up_nm: Nm,
}

pub(super) fn surface(on: On) -> SurfaceJson {
    match on {
        On::Wall(_) => SurfaceJson::Wall,
        On::Floor(_) => SurfaceJson::Floor,
    }
}
pub(super) fn on(surface: SurfaceJson, wall: usize) -> On {
    match surface {
        SurfaceJson::Wall => On::Wall(wall),
        SurfaceJson::Floor => On::Floor(wall),
    }
}
fn picture(known: Known) -> Option<Nm> {
    match known {
        Known::Tape => None,
        Known::Picture(more_or_less) => Some(Nm(more_or_less)),
    }
}
fn known(picture: Option<Nm>) -> Known {
    length(picture).map_or(Known::Tape, Known::Picture)
}

pub(super) fn write_hinge(hinge: Hinge) -> HingeJson {
    HingeJson {
        side: Word(hinge.side),
        opens_out: hinge.out,
    }
}
pub(super) fn read_hinge(hinge: HingeJson) -> Hinge {
    Hinge {
        side: hinge.side.0,
        out: hinge.opens_out,
    }
}

pub(super) fn write_fixed(point: &FixedPoint) -> FixedJson {
    FixedJson {
        id: Hex(point.id.0),
        kind: Word(point.kind),
        on: surface(point.on),
        wall: point.on.wall(),
        from_left_nm: nm(point.from_left),
        up_nm: nm(point.up),
        width_nm: nm(point.width),
        height_nm: nm(point.height),
        depth_nm: nm(point.depth),
        note: point.note.clone(),
        picture_plus_minus_nm: picture(point.known),
    }
}
pub(super) fn read_fixed(point: FixedJson) -> FixedPoint {
    FixedPoint {
        id: point.id.id(),
        kind: point.kind.0,
        on: on(point.on, point.wall),
        from_left: length(point.from_left_nm),
        up: length(point.up_nm),
        width: length(point.width_nm),
        height: length(point.height_nm),
        depth: length(point.depth_nm),
        note: point.note,
        known: known(point.picture_plus_minus_nm),
    }
}

pub(super) fn write_hidden(hidden: &Hidden) -> HiddenJson {
    let spot = |spot: &Spot| SpotJson {
        from_left_nm: Nm(spot.from_left),
        up_nm: Nm(spot.up),
    };
    HiddenJson {
        id: Hex(hidden.id.0),
        kind: Word(hidden.kind),
        on: surface(hidden.on),
        wall: hidden.on.wall(),
        line: hidden.line.iter().map(spot).collect(),
        width_nm: nm(hidden.width),
        depth_nm: nm(hidden.depth),
        material: hidden.material.clone(),
        note: hidden.note.clone(),
        picture_plus_minus_nm: picture(hidden.known),
        picture: hidden.picture.clone(),
    }
}
pub(super) fn read_hidden(hidden: HiddenJson) -> Hidden {
    let spot = |spot: SpotJson| Spot {
        from_left: spot.from_left_nm.0,
        up: spot.up_nm.0,
    };
    Hidden {
        id: hidden.id.id(),
        kind: hidden.kind.0,
        on: on(hidden.on, hidden.wall),
        line: hidden.line.into_iter().map(spot).collect(),
        width: length(hidden.width_nm),
        depth: length(hidden.depth_nm),
        material: hidden.material,
        note: hidden.note,
        known: known(hidden.picture_plus_minus_nm),
        picture: hidden.picture,
    }
}
