//! What was asked of tile, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{length, nm};
use super::words::{M2, Nm, Parts, Udeg};
use crate::geometry::{Point, Polygon, Region};
use crate::takeoff::TileOn;
use crate::trades::tile::{
    Ask, BoxOf, Edge, Hold, Pattern, Run, Sheet, Side, Sight, Start, Surface, Thing, ThingShape,
    Tile,
};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct TileJson {
    on: OnJson,
    /// Corners of the surface, clockwise, and of what is left out of it.
    outer_nm: Vec<(Nm, Nm)>,
    holes_nm: Vec<Vec<(Nm, Nm)>>,
    /// A wall, not a floor.
    wall: bool,
    gap_nm: Nm,
    long_nm: Nm,
    short_nm: Nm,
    thickness_nm: Nm,
    spread_nm: Option<Nm>,
    warp_nm: Option<Nm>,
    edge: EdgeJson,
    joint_nm: Nm,
    pattern: PatternJson,
    turn_udeg: Udeg,
    start: StartJson,
    kerf_nm: Nm,
    grain: bool,
    reuse: bool,
    box_of: Option<BoxJson>,
    breakage: Parts,
    attic: u32,
    sun_or_wet: bool,
    things: Vec<ThingJson>,
    hold: Option<HoldJson>,
    sheet: Option<SheetJson>,
    other_hand: bool,
}

/// How many small tiles are on a sheet.
#[derive(Serialize, Deserialize)]
struct SheetJson {
    along: u16,
    rows: u16,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum HoldJson {
    WholeLeft,
    WholeRight,
    WholeTop,
    WholeBottom,
    JointFromLeftNm(Nm),
    JointFromTopNm(Nm),
}

/// What stands in the way: round where it has a width across alone.
#[derive(Serialize, Deserialize)]
struct ThingJson {
    width_nm: Nm,
    height_nm: Option<Nm>,
    from_left_nm: Nm,
    from_top_nm: Nm,
}

impl Default for TileJson {
    fn default() -> TileJson {
        write_tile(&Ask::default(), TileOn::Own)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum OnJson {
    Own,
    Floor,
    /// Of the room, counted from 0.
    Wall(u32),
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum EdgeJson {
    Unknown,
    Rectified,
    Calibrated,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum PatternJson {
    Grid,
    Bond { over: u8, of: u8 },
    Herringbone,
    Basketweave,
    TwoSquares { small_nm: Nm },
    Hexagon,
    Planks { seed: u32, apart_nm: Nm },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum StartJson {
    Balanced,
    BalancedAcross { at_nm: Nm },
    BalancedAlong { at_nm: Nm },
    Fewest,
    Corner,
    ByHand { across_nm: Nm, down_nm: Nm },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum BoxJson {
    Tiles(u32),
    FacesM2(M2),
    LaidM2(M2),
}

pub(super) fn write_ring(ring: &Polygon) -> Vec<(Nm, Nm)> {
    ring.points.iter().map(|p| (Nm(p.x), Nm(p.y))).collect()
}

pub(super) fn read_ring(ring: Vec<(Nm, Nm)>) -> Polygon {
    Polygon {
        points: ring
            .into_iter()
            .map(|(x, y)| Point::new(x.0, y.0))
            .collect(),
    }
}

fn write_thing(thing: &Thing) -> ThingJson {
    let (width, height) = match thing.shape {
        ThingShape::Round { across } => (across, None),
        ThingShape::Rectangle { width, height } => (width, Some(height)),
    };
    ThingJson {
        width_nm: Nm(width),
        height_nm: nm(height),
        from_left_nm: Nm(thing.from_left),
        from_top_nm: Nm(thing.from_top),
    }
}

fn read_thing(thing: &ThingJson) -> Thing {
    let width = thing.width_nm.0;
    Thing {
        shape: match length(thing.height_nm) {
            None => ThingShape::Round { across: width },
            Some(height) => ThingShape::Rectangle { width, height },
        },
        from_left: thing.from_left_nm.0,
        from_top: thing.from_top_nm.0,
    }
}

pub(super) fn write_on(on: TileOn) -> OnJson {
    match on {
        TileOn::Own => OnJson::Own,
        TileOn::Floor => OnJson::Floor,
        TileOn::Wall(wall) => OnJson::Wall(u32::try_from(wall).unwrap_or(u32::MAX)),
    }
}

pub(super) fn read_on(on: &OnJson) -> TileOn {
    match on {
        OnJson::Own => TileOn::Own,
        OnJson::Floor => TileOn::Floor,
        OnJson::Wall(wall) => TileOn::Wall(*wall as usize),
    }
}

pub(super) fn write_tile(ask: &Ask, on: TileOn) -> TileJson {
    TileJson {
        on: write_on(on),
        outer_nm: write_ring(&ask.surface.outer),
        holes_nm: ask.surface.holes.iter().map(write_ring).collect(),
        wall: ask.on == Surface::Wall,
        gap_nm: Nm(ask.gap),
        long_nm: Nm(ask.tile.long),
        short_nm: Nm(ask.tile.short),
        thickness_nm: Nm(ask.tile.thickness),
        spread_nm: nm(ask.tile.spread),
        warp_nm: nm(ask.tile.warp),
        edge: match ask.tile.edge {
            Edge::Unknown => EdgeJson::Unknown,
            Edge::Rectified => EdgeJson::Rectified,
            Edge::Calibrated => EdgeJson::Calibrated,
        },
        joint_nm: Nm(ask.joint),
        pattern: match ask.pattern {
            Pattern::Grid => PatternJson::Grid,
            Pattern::Bond { over, of } => PatternJson::Bond { over, of },
            Pattern::Herringbone => PatternJson::Herringbone,
            Pattern::Basketweave => PatternJson::Basketweave,
            Pattern::TwoSquares { small } => PatternJson::TwoSquares {
                small_nm: Nm(small),
            },
            Pattern::Hexagon => PatternJson::Hexagon,
            Pattern::Planks { seed, apart } => PatternJson::Planks {
                seed,
                apart_nm: Nm(apart),
            },
        },
        other_hand: ask.other_hand,
        turn_udeg: Udeg(ask.turn),
        start: match ask.start {
            Start::Balanced(Sight::Middle) => StartJson::Balanced,
            Start::Balanced(Sight::Across(at)) => StartJson::BalancedAcross { at_nm: Nm(at) },
            Start::Balanced(Sight::Along(at)) => StartJson::BalancedAlong { at_nm: Nm(at) },
            Start::Fewest => StartJson::Fewest,
            Start::Corner => StartJson::Corner,
            Start::ByHand(from) => StartJson::ByHand {
                across_nm: Nm(from.x),
                down_nm: Nm(from.y),
            },
        },
        kerf_nm: Nm(ask.kerf),
        grain: ask.grain,
        reuse: ask.reuse,
        box_of: ask.box_of.map(|box_of| match box_of {
            BoxOf::Tiles(n) => BoxJson::Tiles(n),
            BoxOf::Faces(area) => BoxJson::FacesM2(M2(area)),
            BoxOf::Laid(area) => BoxJson::LaidM2(M2(area)),
        }),
        breakage: Parts(ask.breakage),
        attic: ask.attic,
        sun_or_wet: ask.run == Run::SunOrWet,
        things: ask.things.iter().map(write_thing).collect(),
        hold: ask.hold.map(|hold| match hold {
            Hold::Whole(Side::Left) => HoldJson::WholeLeft,
            Hold::Whole(Side::Right) => HoldJson::WholeRight,
            Hold::Whole(Side::Top) => HoldJson::WholeTop,
            Hold::Whole(Side::Bottom) => HoldJson::WholeBottom,
            Hold::JointFromLeft(x) => HoldJson::JointFromLeftNm(Nm(x)),
            Hold::JointFromTop(y) => HoldJson::JointFromTopNm(Nm(y)),
        }),
        sheet: ask.sheet.map(|sheet| SheetJson {
            along: sheet.along,
            rows: sheet.rows,
        }),
    }
}

pub(super) fn read_tile(tile: TileJson) -> (Ask, TileOn) {
    let on = read_on(&tile.on);
    let ask = Ask {
        surface: Region {
            outer: read_ring(tile.outer_nm),
            holes: tile.holes_nm.into_iter().map(read_ring).collect(),
        },
        on: if tile.wall {
            Surface::Wall
        } else {
            Surface::Floor
        },
        gap: tile.gap_nm.0,
        tile: Tile {
            long: tile.long_nm.0,
            short: tile.short_nm.0,
            thickness: tile.thickness_nm.0,
            spread: length(tile.spread_nm),
            warp: length(tile.warp_nm),
            edge: match tile.edge {
                EdgeJson::Unknown => Edge::Unknown,
                EdgeJson::Rectified => Edge::Rectified,
                EdgeJson::Calibrated => Edge::Calibrated,
            },
        },
        joint: tile.joint_nm.0,
        pattern: match tile.pattern {
            PatternJson::Grid => Pattern::Grid,
            PatternJson::Bond { over, of } => Pattern::Bond {
                over,
                of: of.max(1),
            },
            PatternJson::Herringbone => Pattern::Herringbone,
            PatternJson::Basketweave => Pattern::Basketweave,
            PatternJson::TwoSquares { small_nm } => Pattern::TwoSquares { small: small_nm.0 },
            PatternJson::Hexagon => Pattern::Hexagon,
            PatternJson::Planks { seed, apart_nm } => Pattern::Planks {
                seed,
                apart: apart_nm.0,
            },
        },
        other_hand: tile.other_hand,
        turn: tile.turn_udeg.0,
        start: match tile.start {
            StartJson::Balanced => Start::Balanced(Sight::Middle),
            StartJson::BalancedAcross { at_nm } => Start::Balanced(Sight::Across(at_nm.0)),
            StartJson::BalancedAlong { at_nm } => Start::Balanced(Sight::Along(at_nm.0)),
            StartJson::Fewest => Start::Fewest,
            StartJson::Corner => Start::Corner,
            StartJson::ByHand { across_nm, down_nm } => {
                Start::ByHand(Point::new(across_nm.0, down_nm.0))
            }
        },
        kerf: tile.kerf_nm.0,
        grain: tile.grain,
        reuse: tile.reuse,
        box_of: tile.box_of.map(|box_of| match box_of {
            BoxJson::Tiles(n) => BoxOf::Tiles(n),
            BoxJson::FacesM2(area) => BoxOf::Faces(area.0),
            BoxJson::LaidM2(area) => BoxOf::Laid(area.0),
        }),
        breakage: tile.breakage.0,
        attic: tile.attic,
        run: if tile.sun_or_wet {
            Run::SunOrWet
        } else {
            Run::Dry
        },
        things: tile.things.iter().map(read_thing).collect(),
        hold: tile.hold.map(|hold| match hold {
            HoldJson::WholeLeft => Hold::Whole(Side::Left),
            HoldJson::WholeRight => Hold::Whole(Side::Right),
            HoldJson::WholeTop => Hold::Whole(Side::Top),
            HoldJson::WholeBottom => Hold::Whole(Side::Bottom),
            HoldJson::JointFromLeftNm(x) => Hold::JointFromLeft(x.0),
            HoldJson::JointFromTopNm(y) => Hold::JointFromTop(y.0),
        }),
        sheet: tile.sheet.map(|sheet| Sheet {
            along: sheet.along,
            rows: sheet.rows,
        }),
    };
    (ask, on)
}
