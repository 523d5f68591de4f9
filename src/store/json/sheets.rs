//! What was asked of board in sheets, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{StudsJson, length, nm, read_studs, write_studs};
use super::tile::{OnJson, read_on, read_ring, write_on, write_ring};
use super::words::{Kg, Nm, Parts, Word};
use crate::geometry::Region;
use crate::site::FixedKind;
use crate::takeoff::TileOn;
use crate::trades::Board;
use crate::trades::sheets::{Ask, Begin, Framing, Surface, Thing, ThingShape, Way};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct SheetsJson {
    on: OnJson,
    outer_nm: Vec<(Nm, Nm)>,
    holes_nm: Vec<Vec<(Nm, Nm)>>,
    surface: Word<Surface>,
    board: Word<Board>,
    long_nm: Nm,
    short_nm: Nm,
    thickness_nm: Nm,
    way: Word<Way>,
    begin_right: bool,
    begin_bottom: bool,
    gap_nm: Nm,
    edge_nm: Nm,
    off_floor_nm: Nm,
    stagger_nm: Nm,
    framing: Option<FramingJson>,
    things: Vec<ThingJson>,
    edge_screws_nm: Nm,
    field_screws_nm: Nm,
    kerf_nm: Nm,
    reuse: bool,
    quarter: bool,
    waste: Parts,
    weight_kg: Option<Kg>,
}

/// Studs or joists, up and down the drawing or across it.
#[derive(Serialize, Deserialize)]
struct FramingJson {
    upright: bool,
    studs: StudsJson,
    land: bool,
}

/// What it is cut out for, by its centre: round where it has a width across alone.
#[derive(Serialize, Deserialize)]
struct ThingJson {
    kind: Option<Word<FixedKind>>,
    width_nm: Nm,
    height_nm: Option<Nm>,
    from_left_nm: Nm,
    from_top_nm: Nm,
    clear_nm: Nm,
}

impl Default for SheetsJson {
    fn default() -> SheetsJson {
        write_sheets(&Ask::default(), TileOn::Own)
    }
}

fn write_thing(thing: &Thing) -> ThingJson {
    let (width, height) = match thing.shape {
        ThingShape::Round { across } => (across, None),
        ThingShape::Rectangle { width, height } => (width, Some(height)),
    };
    ThingJson {
        kind: thing.kind.map(Word),
        width_nm: Nm(width),
        height_nm: nm(height),
        from_left_nm: Nm(thing.from_left),
        from_top_nm: Nm(thing.from_top),
        clear_nm: Nm(thing.clear),
    }
}

fn read_thing(thing: &ThingJson) -> Thing {
    let width = thing.width_nm.0;
    Thing {
        kind: thing.kind.as_ref().map(|kind| kind.0),
        shape: match length(thing.height_nm) {
            None => ThingShape::Round { across: width },
            Some(height) => ThingShape::Rectangle { width, height },
        },
        from_left: thing.from_left_nm.0,
        from_top: thing.from_top_nm.0,
        clear: thing.clear_nm.0,
    }
}

pub(super) fn write_sheets(ask: &Ask, on: TileOn) -> SheetsJson {
    SheetsJson {
        on: write_on(on),
        outer_nm: write_ring(&ask.surface.outer),
        holes_nm: ask.surface.holes.iter().map(write_ring).collect(),
        surface: Word(ask.on),
        board: Word(ask.board),
        long_nm: Nm(ask.sheet.0),
        short_nm: Nm(ask.sheet.1),
        thickness_nm: Nm(ask.thickness),
        way: Word(ask.way),
        begin_right: ask.begin.right,
        begin_bottom: ask.begin.bottom,
        gap_nm: Nm(ask.gap),
        edge_nm: Nm(ask.edge),
        off_floor_nm: Nm(ask.off_floor),
        stagger_nm: Nm(ask.stagger),
        framing: ask.framing.as_ref().map(|framing| FramingJson {
            upright: framing.upright,
            studs: write_studs(&framing.studs),
            land: framing.land,
        }),
        things: ask.things.iter().map(write_thing).collect(),
        edge_screws_nm: Nm(ask.screws.0),
        field_screws_nm: Nm(ask.screws.1),
        kerf_nm: Nm(ask.kerf),
        reuse: ask.reuse,
        quarter: ask.quarter,
        waste: Parts(ask.waste),
        weight_kg: ask.weight.map(Kg),
    }
}

pub(super) fn read_sheets(sheets: SheetsJson) -> (Ask, TileOn) {
    let ask = Ask {
        surface: Region {
            outer: read_ring(sheets.outer_nm),
            holes: sheets.holes_nm.into_iter().map(read_ring).collect(),
        },
        origin: None,
        floor: None,
        on: sheets.surface.0,
        board: sheets.board.0,
        sheet: (sheets.long_nm.0, sheets.short_nm.0),
        thickness: sheets.thickness_nm.0,
        way: sheets.way.0,
        begin: Begin {
            right: sheets.begin_right,
            bottom: sheets.begin_bottom,
        },
        gap: sheets.gap_nm.0,
        edge: sheets.edge_nm.0,
        off_floor: sheets.off_floor_nm.0,
        stagger: sheets.stagger_nm.0,
        framing: sheets.framing.map(|framing| Framing {
            upright: framing.upright,
            studs: read_studs(framing.studs),
            land: framing.land,
        }),
        things: sheets.things.iter().map(read_thing).collect(),
        screws: (sheets.edge_screws_nm.0, sheets.field_screws_nm.0),
        kerf: sheets.kerf_nm.0,
        reuse: sheets.reuse,
        quarter: sheets.quarter,
        waste: sheets.waste.0,
        weight: sheets.weight_kg.map(|weight| weight.0),
    };
    (ask, read_on(&sheets.on))
}
