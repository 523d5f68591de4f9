//! What was asked of tile, as a record: new in format 2.

use serde::{Deserialize, Serialize};

use super::record::{all, code, length, maybe};
use crate::geometry::{Point, Polygon, Region};
use crate::measure::quantity::square_metres;
use crate::measure::{Angle, Length};
use crate::takeoff::TileOn;
use crate::trades::tile::{
    Ask, BoxOf, Edge, Hold, Pattern, Run, Side, Sight, Start, Surface, Thing, ThingShape, Tile,
};

pub(super) type Ring = Vec<(i64, i64)>;

#[derive(Serialize, Deserialize)]
pub(super) struct TileRecord {
    /// 0 by hand, 1 the floor, 2 a wall.
    on: (u8, u32),
    outer: Ring,
    holes: Vec<Ring>,
    wall: bool,
    gap: i64,
    /// Long, short, thickness.
    tile: [i64; 3],
    spread: Option<i64>,
    warp: Option<i64>,
    edge: u8,
    joint: i64,
    /// Which, and its three figures.
    pattern: (u8, i64, i64),
    turn: i64,
    /// Which, and its two figures.
    start: (u8, i64, i64),
    kerf: i64,
    grain: bool,
    reuse: bool,
    /// Which, and how much.
    box_of: Option<(u8, f64)>,
    breakage: f64,
    attic: u32,
    sun: bool,
    /// Round or not, its two sizes, from the left, from the top.
    things: Vec<(bool, i64, i64, i64, i64)>,
    /// Which, and how far.
    hold: Option<(u8, i64)>,
}

const EDGES: [Edge; 3] = [Edge::Unknown, Edge::Rectified, Edge::Calibrated];

pub(super) fn write_ring(ring: &Polygon) -> Ring {
    let point = |p: &Point| (p.x.as_nm(), p.y.as_nm());
    ring.points.iter().map(point).collect()
}

pub(super) fn read_ring(ring: Ring) -> Option<Polygon> {
    let point = |(x, y)| Some(Point::new(length(x)?, length(y)?));
    Some(Polygon {
        points: all(ring, point)?,
    })
}

fn write_pattern(pattern: Pattern) -> (u8, i64, i64) {
    match pattern {
        Pattern::Grid => (0, 0, 0),
        Pattern::Bond { over, of } => (1, over.into(), of.into()),
        Pattern::Herringbone => (2, 0, 0),
        Pattern::Basketweave => (3, 0, 0),
        Pattern::TwoSquares { small } => (4, small.as_nm(), 0),
        Pattern::Hexagon => (5, 0, 0),
        Pattern::Planks { seed, apart } => (6, seed.into(), apart.as_nm()),
    }
}

/// A pattern by the other hand has its code and this.
const OTHER_HAND: u8 = 16;

fn read_pattern(record: (u8, i64, i64)) -> Option<Pattern> {
    Some(match record {
        (0, ..) => Pattern::Grid,
        (1, over, of) => Pattern::Bond {
            over: u8::try_from(over).ok()?,
            of: u8::try_from(of).ok().filter(|of| *of > 0)?,
        },
        (2, ..) => Pattern::Herringbone,
        (3, ..) => Pattern::Basketweave,
        (4, small, _) => Pattern::TwoSquares {
            small: length(small)?,
        },
        (5, ..) => Pattern::Hexagon,
        (6, seed, apart) => Pattern::Planks {
            seed: u32::try_from(seed).ok()?,
            apart: length(apart)?,
        },
        _ => return None,
    })
}

fn write_start(start: Start) -> (u8, i64, i64) {
    match start {
        Start::Balanced(Sight::Middle) => (0, 0, 0),
        Start::Balanced(Sight::Across(at)) => (1, at.as_nm(), 0),
        Start::Balanced(Sight::Along(at)) => (2, at.as_nm(), 0),
        Start::Fewest => (3, 0, 0),
        Start::Corner => (4, 0, 0),
        Start::ByHand(from) => (5, from.x.as_nm(), from.y.as_nm()),
    }
}

fn read_start(record: (u8, i64, i64)) -> Option<Start> {
    Some(match record {
        (0, ..) => Start::Balanced(Sight::Middle),
        (1, at, _) => Start::Balanced(Sight::Across(length(at)?)),
        (2, at, _) => Start::Balanced(Sight::Along(length(at)?)),
        (3, ..) => Start::Fewest,
        (4, ..) => Start::Corner,
        (5, x, y) => Start::ByHand(Point::new(length(x)?, length(y)?)),
        _ => return None,
    })
}

const SIDES: [Side; 4] = [Side::Left, Side::Right, Side::Top, Side::Bottom];

fn write_hold(hold: Hold) -> (u8, i64) {
    match hold {
        Hold::Whole(side) => (code(&SIDES, &side), 0),
        Hold::JointFromLeft(x) => (4, x.as_nm()),
        Hold::JointFromTop(y) => (5, y.as_nm()),
    }
}

fn read_hold((which, nm): (u8, i64)) -> Option<Hold> {
    Some(match which {
        4 => Hold::JointFromLeft(length(nm)?),
        5 => Hold::JointFromTop(length(nm)?),
        side => Hold::Whole(SIDES.get(usize::from(side)).copied()?),
    })
}

fn write_thing(thing: &Thing) -> (bool, i64, i64, i64, i64) {
    let (round, a, b) = match thing.shape {
        ThingShape::Round { across } => (true, across, across),
        ThingShape::Rectangle { width, height } => (false, width, height),
    };
    (
        round,
        a.as_nm(),
        b.as_nm(),
        thing.from_left.as_nm(),
        thing.from_top.as_nm(),
    )
}

fn read_thing((round, a, b, left, top): (bool, i64, i64, i64, i64)) -> Option<Thing> {
    Some(Thing {
        shape: if round {
            ThingShape::Round { across: length(a)? }
        } else {
            ThingShape::Rectangle {
                width: length(a)?,
                height: length(b)?,
            }
        },
        from_left: length(left)?,
        from_top: length(top)?,
    })
}

pub(super) fn write_on(on: TileOn) -> (u8, u32) {
    match on {
        TileOn::Own => (0, 0),
        TileOn::Floor => (1, 0),
        TileOn::Wall(wall) => (2, u32::try_from(wall).unwrap_or(u32::MAX)),
    }
}

pub(super) fn read_on(on: (u8, u32)) -> Option<TileOn> {
    Some(match on {
        (0, _) => TileOn::Own,
        (1, _) => TileOn::Floor,
        (2, wall) => TileOn::Wall(wall as usize),
        _ => return None,
    })
}

pub(super) fn write_tile(ask: &Ask, on: TileOn) -> TileRecord {
    TileRecord {
        on: write_on(on),
        outer: write_ring(&ask.surface.outer),
        holes: ask.surface.holes.iter().map(write_ring).collect(),
        wall: ask.on == Surface::Wall,
        gap: ask.gap.as_nm(),
        tile: [ask.tile.long, ask.tile.short, ask.tile.thickness].map(Length::as_nm),
        spread: ask.tile.spread.map(Length::as_nm),
        warp: ask.tile.warp.map(Length::as_nm),
        edge: code(&EDGES, &ask.tile.edge),
        joint: ask.joint.as_nm(),
        pattern: {
            let (code, first, second) = write_pattern(ask.pattern);
            let hand = if ask.other_hand { OTHER_HAND } else { 0 };
            (code + hand, first, second)
        },
        turn: ask.turn.as_microdegrees(),
        start: write_start(ask.start),
        kerf: ask.kerf.as_nm(),
        grain: ask.grain,
        reuse: ask.reuse,
        box_of: ask.box_of.map(|box_of| match box_of {
            BoxOf::Tiles(n) => (0, f64::from(n)),
            BoxOf::Faces(area) => (1, area.value),
            BoxOf::Laid(area) => (2, area.value),
        }),
        breakage: ask.breakage,
        attic: ask.attic,
        sun: ask.run == Run::SunOrWet,
        things: ask.things.iter().map(write_thing).collect(),
        hold: ask.hold.map(write_hold),
    }
}

pub(super) fn read_tile(record: TileRecord) -> Option<(Ask, TileOn)> {
    let on = read_on(record.on)?;
    let [long, short, thickness] = record.tile;
    let box_of = match record.box_of {
        None => None,
        Some((0, n)) if (0.0..=100_000.0).contains(&n) => Some(BoxOf::Tiles(n as u32)),
        Some((kind, area)) if area.is_finite() && area >= 0.0 => match kind {
            1 => Some(BoxOf::Faces(square_metres(area))),
            2 => Some(BoxOf::Laid(square_metres(area))),
            _ => return None,
        },
        Some(_) => return None,
    };
    let ask = Ask {
        surface: Region {
            outer: read_ring(record.outer)?,
            holes: all(record.holes, read_ring)?,
        },
        on: if record.wall {
            Surface::Wall
        } else {
            Surface::Floor
        },
        gap: length(record.gap)?,
        tile: Tile {
            long: length(long)?,
            short: length(short)?,
            thickness: length(thickness)?,
            spread: maybe(record.spread)?,
            warp: maybe(record.warp)?,
            edge: EDGES.get(usize::from(record.edge)).copied()?,
        },
        joint: length(record.joint)?,
        pattern: read_pattern((
            record.pattern.0 % OTHER_HAND,
            record.pattern.1,
            record.pattern.2,
        ))?,
        other_hand: match record.pattern.0 / OTHER_HAND {
            0 => false,
            1 => true,
            _ => return None,
        },
        turn: (record.turn.unsigned_abs() <= 3_600_000_000)
            .then(|| Angle::microdegrees(record.turn))?,
        start: read_start(record.start)?,
        kerf: length(record.kerf)?,
        grain: record.grain,
        reuse: record.reuse,
        box_of,
        breakage: (0.0..=1.0)
            .contains(&record.breakage)
            .then_some(record.breakage)?,
        attic: record.attic,
        run: if record.sun { Run::SunOrWet } else { Run::Dry },
        things: all(record.things, read_thing)?,
        hold: match record.hold {
            Some(hold) => Some(read_hold(hold)?),
            None => None,
        },
        // Kept beside this record, which is older.
        sheet: None,
    };
    Some((ask, on))
}
