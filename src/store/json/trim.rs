//! What was asked of trim, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{length, nm};
use super::words::{Hex, Nm, Word};
use crate::takeoff::TrimOn;
use crate::trades::trim::{Ask, Corner, Frame, Head, Inside, Kind, Listed, Opening};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct TrimJson {
    kind: Word<Kind>,
    name: String,
    thickness_nm: Nm,
    width_nm: Nm,
    inside: Word<Inside>,
    backward: bool,
    casing_nm: Nm,
    reveal_nm: Nm,
    head: Word<Head>,
    pieces: Vec<PieceJson>,
    frames: Vec<FrameJson>,
    board_nm: Nm,
    nails_nm: Nm,
    caulk_nm: Option<Nm>,
    old: bool,
    case_doors: bool,
    case_windows: bool,
    case_others: bool,
    four: bool,
    tiled: bool,
    stops: Vec<StopJson>,
}

/// A piece of base by hand.
#[derive(Serialize, Deserialize)]
struct PieceJson {
    length_nm: Nm,
    count: u32,
    left: Word<Corner>,
    right: Word<Corner>,
}

/// A frame by hand.
#[derive(Serialize, Deserialize)]
struct FrameJson {
    opening: Word<Opening>,
    width_nm: Nm,
    height_nm: Nm,
    #[serde(default)]
    four: bool,
    count: u32,
}

/// A fixture, and whether base stops at it.
#[derive(Serialize, Deserialize)]
struct StopJson {
    fixture: Hex,
    stops: bool,
}

impl Default for TrimJson {
    fn default() -> TrimJson {
        write_trim(&Ask::default(), &TrimOn::default())
    }
}

pub(super) fn write_trim(ask: &Ask, on: &TrimOn) -> TrimJson {
    let piece = |piece: &Listed| PieceJson {
        length_nm: Nm(piece.length),
        count: piece.count,
        left: Word(piece.ends[0]),
        right: Word(piece.ends[1]),
    };
    let frame = |frame: &Frame| FrameJson {
        opening: Word(frame.opening),
        width_nm: Nm(frame.width),
        height_nm: Nm(frame.height),
        four: frame.four,
        count: frame.count,
    };
    let [case_doors, case_windows, case_others] = on.cased;
    TrimJson {
        kind: Word(ask.kind),
        name: ask.name.clone(),
        thickness_nm: Nm(ask.thickness),
        width_nm: Nm(ask.width),
        inside: Word(ask.inside),
        backward: ask.backward,
        casing_nm: Nm(ask.casing),
        reveal_nm: Nm(ask.reveal),
        head: Word(ask.head),
        pieces: ask.pieces.iter().map(piece).collect(),
        frames: ask.frames.iter().map(frame).collect(),
        board_nm: Nm(ask.board),
        nails_nm: Nm(ask.nails),
        caulk_nm: nm(ask.caulk),
        old: ask.old,
        case_doors,
        case_windows,
        case_others,
        four: on.four,
        tiled: on.tiled,
        stops: (on.stops.iter())
            .map(|(id, stops)| StopJson {
                fixture: Hex(id.0),
                stops: *stops,
            })
            .collect(),
    }
}

pub(super) fn read_trim(trim: TrimJson) -> (Ask, TrimOn) {
    let piece = |piece: PieceJson| Listed {
        length: piece.length_nm.0,
        count: piece.count,
        ends: [piece.left.0, piece.right.0],
    };
    let frame = |frame: FrameJson| Frame {
        opening: frame.opening.0,
        width: frame.width_nm.0,
        height: frame.height_nm.0,
        four: frame.four,
        count: frame.count,
        on: None,
    };
    let ask = Ask {
        kind: trim.kind.0,
        name: trim.name,
        thickness: trim.thickness_nm.0,
        width: trim.width_nm.0,
        inside: trim.inside.0,
        backward: trim.backward,
        casing: trim.casing_nm.0,
        reveal: trim.reveal_nm.0,
        walls: None,
        pieces: trim.pieces.into_iter().map(piece).collect(),
        head: trim.head.0,
        frames: trim.frames.into_iter().map(frame).collect(),
        board: trim.board_nm.0,
        nails: trim.nails_nm.0,
        caulk: length(trim.caulk_nm),
        old: trim.old,
        ..Ask::default()
    };
    let on = TrimOn {
        cased: [trim.case_doors, trim.case_windows, trim.case_others],
        four: trim.four,
        tiled: trim.tiled,
        stops: (trim.stops.into_iter())
            .map(|stop| (stop.fixture.id(), stop.stops))
            .collect(),
    };
    (ask, on)
}
