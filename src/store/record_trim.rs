//! What was asked of trim, as a record: new in format 2.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe};
use crate::measure::Length;
use crate::site::Id;
use crate::takeoff::TrimOn;
use crate::trades::trim::{Ask, Corner, Frame, Head, Inside, Kind, Listed, Opening};

#[derive(Serialize, Deserialize)]
pub(super) struct TrimRecord {
    casing: bool,
    name: String,
    /// Thickness, width.
    profile: [i64; 2],
    mitred: bool,
    backward: bool,
    /// The casing that base stops at, the reveal.
    beside: [i64; 2],
    butted: bool,
    /// Length, how many, left and right end.
    pieces: Vec<(i64, u32, [u8; 2])>,
    /// A window, its width and height, on four sides, how many.
    frames: Vec<(bool, [i64; 2], bool, u32)>,
    board: i64,
    nails: i64,
    caulk: Option<i64>,
    old: bool,
    /// Doors, windows, other openings; windows on four sides.
    cased: [bool; 3],
    four: bool,
    /// Base along tiled walls.
    tiled: bool,
    /// Fixtures, and whether base stops at them.
    stops: Vec<(u64, bool)>,
}

const CORNERS: [Corner; 3] = [Corner::Square, Corner::Inside, Corner::Outside];

pub(super) fn write_trim(ask: &Ask, on: &TrimOn) -> TrimRecord {
    let piece = |piece: &Listed| {
        let ends = piece.ends.map(|end| code(&CORNERS, &end));
        (piece.length.as_nm(), piece.count, ends)
    };
    let frame = |frame: &Frame| {
        let size = [frame.width, frame.height].map(Length::as_nm);
        let window = frame.opening == Opening::Window;
        (window, size, frame.four, frame.count)
    };
    TrimRecord {
        casing: ask.kind == Kind::Casing,
        name: ask.name.clone(),
        profile: [ask.thickness, ask.width].map(Length::as_nm),
        mitred: ask.inside == Inside::Mitred,
        backward: ask.backward,
        beside: [ask.casing, ask.reveal].map(Length::as_nm),
        butted: ask.head == Head::Butted,
        pieces: ask.pieces.iter().map(piece).collect(),
        frames: ask.frames.iter().map(frame).collect(),
        board: ask.board.as_nm(),
        nails: ask.nails.as_nm(),
        caulk: ask.caulk.map(Length::as_nm),
        old: ask.old,
        cased: on.cased,
        four: on.four,
        tiled: on.tiled,
        stops: on.stops.iter().map(|(id, stops)| (id.0, *stops)).collect(),
    }
}

pub(super) fn read_trim(record: TrimRecord) -> Option<(Ask, TrimOn)> {
    let [thickness, width] = record.profile;
    let [casing, reveal] = record.beside;
    let piece = |(long, count, [left, right]): (i64, u32, [u8; 2])| {
        Some(Listed {
            length: length(long)?,
            count,
            ends: [choice(&CORNERS, left)?, choice(&CORNERS, right)?],
        })
    };
    let frame = |(window, [width, height], four, count): (bool, [i64; 2], bool, u32)| {
        Some(Frame {
            opening: if window {
                Opening::Window
            } else {
                Opening::Door
            },
            width: length(width)?,
            height: length(height)?,
            four,
            count,
            on: None,
        })
    };
    let ask = Ask {
        kind: if record.casing {
            Kind::Casing
        } else {
            Kind::Base
        },
        name: record.name,
        thickness: length(thickness)?,
        width: length(width)?,
        inside: if record.mitred {
            Inside::Mitred
        } else {
            Inside::Coped
        },
        backward: record.backward,
        casing: length(casing)?,
        reveal: length(reveal)?,
        walls: None,
        pieces: all(record.pieces, piece)?,
        head: if record.butted {
            Head::Butted
        } else {
            Head::Mitred
        },
        frames: all(record.frames, frame)?,
        board: length(record.board)?,
        nails: length(record.nails)?,
        caulk: maybe(record.caulk)?,
        old: record.old,
        ..Ask::default()
    };
    let on = TrimOn {
        cased: record.cased,
        four: record.four,
        tiled: record.tiled,
        stops: (record.stops.into_iter())
            .map(|(id, stops)| (Id(id), stops))
            .collect(),
    };
    Some((ask, on))
}
