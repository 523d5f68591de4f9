//! What was asked of board in sheets, as a record: new in format 2.

use serde::{Deserialize, Serialize};

use super::record::{StudsRecord, all, choice, code, length, read_studs, write_studs};
use super::record_tile::{Ring, read_on, read_ring, write_on, write_ring};
use crate::geometry::Region;
use crate::measure::Length;
use crate::measure::quantity::kilograms;
use crate::site::FixedKind;
use crate::takeoff::TileOn;
use crate::trades::Board;
use crate::trades::sheets::{Ask, Begin, Framing, Surface, Thing, ThingShape, Way};

#[derive(Serialize, Deserialize)]
pub(super) struct SheetsRecord {
    /// 0 by hand, 1 the floor or the ceiling, 2 a wall.
    on: (u8, u32),
    outer: Ring,
    holes: Vec<Ring>,
    surface: u8,
    board: u8,
    /// Long, short, thickness.
    sheet: [i64; 3],
    up: bool,
    /// At the right, at the bottom.
    begin: (bool, bool),
    /// Between sheets, at walls, off the floor.
    gaps: [i64; 3],
    stagger: i64,
    /// Upright, where, joints land on it.
    framing: Option<(bool, StudsRecord, bool)>,
    /// What it is, round or not, its two sizes, from the left, from the top, what is left free.
    things: Vec<(u8, bool, [i64; 5])>,
    screws: [i64; 2],
    kerf: i64,
    reuse: bool,
    quarter: bool,
    waste: f64,
    weight: Option<f64>,
}

const SURFACES: [Surface; 3] = [Surface::Floor, Surface::Wall, Surface::Ceiling];
pub(super) const BOARDS: [Board; 3] = [Board::Gypsum, Board::Cement, Board::Plywood];

fn write_thing(thing: &Thing) -> (u8, bool, [i64; 5]) {
    let (round, a, b) = match thing.shape {
        ThingShape::Round { across } => (true, across, across),
        ThingShape::Rectangle { width, height } => (false, width, height),
    };
    // Nothing is 0, and kinds count from 1.
    let kind = thing
        .kind
        .map_or(0, |kind| code(&FixedKind::ALL, &kind) + 1);
    (
        kind,
        round,
        [a, b, thing.from_left, thing.from_top, thing.clear].map(Length::as_nm),
    )
}

fn read_thing((kind, round, sizes): (u8, bool, [i64; 5])) -> Option<Thing> {
    let [a, b, from_left, from_top, clear] = sizes;
    Some(Thing {
        kind: match kind {
            0 => None,
            kind => Some(choice(&FixedKind::ALL, kind - 1)?),
        },
        shape: if round {
            ThingShape::Round { across: length(a)? }
        } else {
            ThingShape::Rectangle {
                width: length(a)?,
                height: length(b)?,
            }
        },
        from_left: length(from_left)?,
        from_top: length(from_top)?,
        clear: length(clear)?,
    })
}

pub(super) fn write_sheets(ask: &Ask, on: TileOn) -> SheetsRecord {
    SheetsRecord {
        on: write_on(on),
        outer: write_ring(&ask.surface.outer),
        holes: ask.surface.holes.iter().map(write_ring).collect(),
        surface: code(&SURFACES, &ask.on),
        board: code(&BOARDS, &ask.board),
        sheet: [ask.sheet.0, ask.sheet.1, ask.thickness].map(Length::as_nm),
        up: ask.way == Way::Up,
        begin: (ask.begin.right, ask.begin.bottom),
        gaps: [ask.gap, ask.edge, ask.off_floor].map(Length::as_nm),
        stagger: ask.stagger.as_nm(),
        framing: (ask.framing.as_ref()).map(|f| (f.upright, write_studs(&f.studs), f.land)),
        things: ask.things.iter().map(write_thing).collect(),
        screws: [ask.screws.0, ask.screws.1].map(Length::as_nm),
        kerf: ask.kerf.as_nm(),
        reuse: ask.reuse,
        quarter: ask.quarter,
        waste: ask.waste,
        weight: ask.weight.map(|weight| weight.value),
    }
}

pub(super) fn read_sheets(record: SheetsRecord) -> Option<(Ask, TileOn)> {
    let [long, short, thickness] = record.sheet;
    let [gap, edge, off_floor] = record.gaps;
    let [edges, inside] = record.screws;
    let sound = |n: f64| n.is_finite() && n >= 0.0;
    if !sound(record.waste) || !record.weight.is_none_or(sound) {
        return None;
    }
    let ask = Ask {
        surface: Region {
            outer: read_ring(record.outer)?,
            holes: all(record.holes, read_ring)?,
        },
        origin: None,
        floor: None,
        on: choice(&SURFACES, record.surface)?,
        board: choice(&BOARDS, record.board)?,
        sheet: (length(long)?, length(short)?),
        thickness: length(thickness)?,
        way: if record.up { Way::Up } else { Way::Across },
        begin: Begin {
            right: record.begin.0,
            bottom: record.begin.1,
        },
        gap: length(gap)?,
        edge: length(edge)?,
        off_floor: length(off_floor)?,
        stagger: length(record.stagger)?,
        framing: match record.framing {
            None => None,
            Some((upright, studs, land)) => Some(Framing {
                upright,
                studs: read_studs(studs)?,
                land,
            }),
        },
        things: all(record.things, read_thing)?,
        screws: (length(edges)?, length(inside)?),
        kerf: length(record.kerf)?,
        reuse: record.reuse,
        quarter: record.quarter,
        waste: record.waste,
        weight: record.weight.map(kilograms),
    };
    Some((ask, read_on(record.on)?))
}
