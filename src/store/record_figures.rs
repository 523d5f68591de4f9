//! What was asked of the trades, as records: the same in formats 1 and 2, which adds [`MoreRecord`].

use serde::{Deserialize, Serialize};

use super::record::{StudsRecord, all, choice, code, length, maybe, read_studs, write_studs};
use super::record_drain::{DrainRecord, read_drain, write_drain};
use super::record_mix::{
    GroutRecord, MortarRecord, read_grout, read_mortar, write_grout, write_mortar,
};
use super::record_pipe::{PipeRecord, read_pipe, write_pipe};
use super::record_sheets::{SheetsRecord, read_sheets, write_sheets};
use super::record_tile::{TileRecord, read_tile, write_tile};
use super::record_trim::{TrimRecord, read_trim, write_trim};
use crate::measure::Length;
use crate::measure::quantity::{Area, SpreadRate, square_metres, square_metres_per_litre};
use crate::site::OpeningRule;
use crate::takeoff::{Ask, Task};
use crate::trades::Grout;
use crate::trades::paint::{
    self, Binder, Built, Coats, Part, Reach, Sheen, Surface, Texture, Trim,
};
use crate::trades::patch::{self, Air, Hole, HoleShape, Method, Obstacle, WallFacts};
use crate::trades::tile::Sheet;

#[derive(Serialize, Deserialize)]
pub(super) struct TaskRecord {
    room: Option<u32>,
    on_list: bool,
    ask: AskRecord,
}

/// What format 2 knows of a figure beyond format 1: the air that compound dries in, in °F and per cent.
#[derive(Serialize, Deserialize)]
pub(super) struct MoreRecord {
    air: (f64, f64),
}

#[derive(Serialize, Deserialize)]
enum AskRecord {
    Paint(Box<PaintRecord>, (u8, f64)),
    Patch(Box<PatchRecord>, Option<u32>),
    Tile(Box<TileRecord>),
    Grout(Box<GroutRecord>),
    Mortar(Box<MortarRecord>),
    /// Tile that comes on sheets: so many along the rows, so many rows.
    Mosaic(Box<TileRecord>, (u16, u16)),
    Pipe(Box<PipeRecord>),
    Drain(Box<DrainRecord>),
    Sheets(Box<SheetsRecord>),
    Trim(Box<TrimRecord>),
}

#[derive(Serialize, Deserialize)]
struct PatchRecord {
    hole: HoleRecord,
    board: i64,
    wall: (Option<i64>, Option<i64>, Vec<[i64; 4]>),
    studs: Option<StudsRecord>,
    gap: i64,
    method: Option<u8>,
    screw_spacing: i64,
    fire_rated: bool,
    other_holes: Vec<HoleRecord>,
}

#[derive(Serialize, Deserialize)]
struct HoleRecord {
    round: bool,
    size: (i64, i64),
    from_left: Option<i64>,
    from_stud: Option<(u32, i64)>,
    above_floor: Option<i64>,
}

/// Name, part, area, height, width, texture, edges cut in.
type SurfaceRecord = (String, u8, f64, Option<i64>, Option<i64>, u8, i64);

#[derive(Serialize, Deserialize)]
struct PaintRecord {
    surfaces: Vec<SurfaceRecord>,
    trim: Vec<(String, i64, i64)>,
    coats: [CoatsRecord; 3],
    reach: (Option<i64>, i64),
    built: u8,
    sheen: u8,
    level: Option<u8>,
    binder: u8,
    patched: Vec<f64>,
    disturbed: f64,
    paid_job: bool,
}

#[derive(Serialize, Deserialize)]
struct CoatsRecord {
    coats: u8,
    label_rate: Option<f64>,
    volume_solids: Option<f64>,
    dry_film: Option<i64>,
    label: String,
}

const METHODS: [Method; 4] = [
    Method::Fill,
    Method::AdhesivePatch,
    Method::BackedPatch,
    Method::CutBack,
];
const TEXTURES: [Texture; 5] = [
    Texture::Smooth,
    Texture::BareBoard,
    Texture::Textured,
    Texture::Masonry,
    Texture::HeavyTexture,
];
const BUILT: [Built; 3] = [Built::Unknown, Built::Before1978, Built::From1978];
const SHEENS: [Sheen; 4] = [Sheen::Flat, Sheen::Eggshell, Sheen::SemiGloss, Sheen::Gloss];
const BINDERS: [Binder; 2] = [Binder::Latex, Binder::Alkyd];
pub(super) const GROUTS: [Grout; 3] = [Grout::Unsanded, Grout::Sanded, Grout::HeavySand];
const PARTS: [Part; 2] = [Part::Wall, Part::Ceiling];

pub(super) fn area(value: f64) -> Option<Area> {
    (value.is_finite() && value >= 0.0).then(|| square_metres(value))
}
/// A share of one that may not be there.
fn share(value: Option<f64>) -> Option<Option<f64>> {
    value.map_or(Some(None), |v| (0.0..=1.0).contains(&v).then_some(Some(v)))
}
fn rate(value: Option<f64>) -> Option<Option<SpreadRate>> {
    // A spread rate in SI is per metre: 1 m²/L is 1000 of them.
    value.map_or(Some(None), |v| {
        (v.is_finite() && v > 0.0).then(|| Some(square_metres_per_litre(1.0) * (v / 1000.0)))
    })
}

pub(super) fn write_more(task: &Task) -> MoreRecord {
    let air = match &task.ask {
        Ask::Patch(ask, _) => ask.air,
        Ask::Paint(..)
        | Ask::Tile(..)
        | Ask::Grout(..)
        | Ask::Mortar(..)
        | Ask::Pipe(..)
        | Ask::Drain(..)
        | Ask::Sheets(..)
        | Ask::Trim(..) => Air::default(),
    };
    MoreRecord {
        air: (air.fahrenheit, air.humidity),
    }
}

/// A figure; its room is kept under its name elsewhere.
pub(super) fn write_task(task: &Task) -> TaskRecord {
    let ask = match &task.ask {
        Ask::Patch(ask, wall) => AskRecord::Patch(
            Box::new(write_patch(ask)),
            wall.and_then(|wall| u32::try_from(wall).ok()),
        ),
        Ask::Tile(ask, on) => {
            let record = Box::new(write_tile(ask, *on));
            match ask.sheet {
                Some(sheet) => AskRecord::Mosaic(record, (sheet.along, sheet.rows)),
                None => AskRecord::Tile(record),
            }
        }
        Ask::Grout(ask, tile) => AskRecord::Grout(Box::new(write_grout(ask, *tile))),
        Ask::Mortar(ask, tile) => AskRecord::Mortar(Box::new(write_mortar(ask, *tile))),
        Ask::Pipe(ask, on) => AskRecord::Pipe(Box::new(write_pipe(ask, *on))),
        Ask::Drain(ask) => AskRecord::Drain(Box::new(write_drain(ask))),
        Ask::Sheets(ask, on) => AskRecord::Sheets(Box::new(write_sheets(ask, *on))),
        Ask::Trim(ask, on) => AskRecord::Trim(Box::new(write_trim(ask, on))),
        Ask::Paint(ask, rule) => AskRecord::Paint(
            Box::new(write_paint(ask)),
            match rule {
                OpeningRule::Net => (0, 0.0),
                OpeningRule::Solid => (1, 0.0),
                OpeningRule::SmallNotDeducted(least) => (2, least.value),
            },
        ),
    };
    TaskRecord {
        room: None,
        on_list: task.on_list,
        ask,
    }
}

fn read_air(record: &MoreRecord) -> Option<Air> {
    let (fahrenheit, humidity) = record.air;
    let sound = (-100.0..=200.0).contains(&fahrenheit) && (0.0..=100.0).contains(&humidity);
    sound.then_some(Air {
        fahrenheit,
        humidity,
    })
}

/// The room by its place, what was asked, and whether it is on the list.
pub(super) fn read_task(
    record: TaskRecord,
    more: Option<&MoreRecord>,
) -> Option<(Option<usize>, Ask, bool)> {
    let air = match more {
        Some(more) => read_air(more)?,
        None => Air::default(),
    };
    let ask = match record.ask {
        AskRecord::Patch(ask, wall) => Ask::Patch(
            Box::new(read_patch(*ask, air)?),
            wall.map(|wall| wall as usize),
        ),
        AskRecord::Tile(record) => {
            let (ask, on) = read_tile(*record)?;
            Ask::Tile(Box::new(ask), on)
        }
        AskRecord::Mosaic(record, (along, rows)) => {
            let (mut ask, on) = read_tile(*record)?;
            ask.sheet = Some(Sheet { along, rows });
            Ask::Tile(Box::new(ask), on)
        }
        AskRecord::Grout(record) => {
            let (ask, tile) = read_grout(*record)?;
            Ask::Grout(Box::new(ask), tile)
        }
        AskRecord::Mortar(record) => {
            let (ask, tile) = read_mortar(*record)?;
            Ask::Mortar(Box::new(ask), tile)
        }
        AskRecord::Pipe(record) => {
            let (ask, on) = read_pipe(*record)?;
            Ask::Pipe(Box::new(ask), on)
        }
        AskRecord::Drain(record) => Ask::Drain(Box::new(read_drain(&record)?)),
        AskRecord::Sheets(record) => {
            let (ask, on) = read_sheets(*record)?;
            Ask::Sheets(Box::new(ask), on)
        }
        AskRecord::Trim(record) => {
            let (ask, on) = read_trim(*record)?;
            Ask::Trim(Box::new(ask), on)
        }
        AskRecord::Paint(ask, rule) => Ask::Paint(
            Box::new(read_paint(*ask)?),
            match rule {
                (0, _) => OpeningRule::Net,
                (1, _) => OpeningRule::Solid,
                (2, least) => OpeningRule::SmallNotDeducted(area(least)?),
                _ => return None,
            },
        ),
    };
    Some((record.room.map(|room| room as usize), ask, record.on_list))
}

fn write_hole(hole: &Hole) -> HoleRecord {
    let (width, height) = hole.shape.size();
    HoleRecord {
        round: matches!(hole.shape, HoleShape::Round { .. }),
        size: (width.as_nm(), height.as_nm()),
        from_left: hole.from_left.map(Length::as_nm),
        from_stud: hole.from_stud.map(|(stud, off)| (stud as u32, off.as_nm())),
        above_floor: hole.above_floor.map(Length::as_nm),
    }
}

fn read_hole(record: HoleRecord) -> Option<Hole> {
    let (width, height) = (length(record.size.0)?, length(record.size.1)?);
    Some(Hole {
        shape: if record.round {
            HoleShape::Round { across: width }
        } else {
            HoleShape::Rectangle { width, height }
        },
        from_left: maybe(record.from_left)?,
        from_stud: match record.from_stud {
            Some((stud, off)) => Some((stud as usize, length(off)?)),
            None => None,
        },
        above_floor: maybe(record.above_floor)?,
    })
}

fn write_patch(ask: &patch::Ask) -> PatchRecord {
    let obstacles = ask
        .wall
        .obstacles
        .iter()
        .map(|o| [o.left, o.right, o.bottom, o.top].map(Length::as_nm))
        .collect();
    PatchRecord {
        hole: write_hole(&ask.hole),
        board: ask.board.as_nm(),
        wall: (
            ask.wall.length.map(Length::as_nm),
            ask.wall.height.map(Length::as_nm),
            obstacles,
        ),
        studs: ask.studs.as_ref().map(write_studs),
        gap: ask.gap.as_nm(),
        method: ask.method.map(|method| code(&METHODS, &method)),
        screw_spacing: ask.screw_spacing.as_nm(),
        fire_rated: ask.fire_rated,
        other_holes: ask.other_holes.iter().map(write_hole).collect(),
    }
}

fn read_patch(record: PatchRecord, air: Air) -> Option<patch::Ask> {
    let (wall_length, wall_height, obstacles) = record.wall;
    let obstacle = |[left, right, bottom, top]: [i64; 4]| {
        Some(Obstacle {
            left: length(left)?,
            right: length(right)?,
            bottom: length(bottom)?,
            top: length(top)?,
        })
    };
    Some(patch::Ask {
        hole: read_hole(record.hole)?,
        board: length(record.board)?,
        wall: WallFacts {
            length: maybe(wall_length)?,
            height: maybe(wall_height)?,
            obstacles: all(obstacles, obstacle)?,
        },
        studs: match record.studs {
            Some(studs) => Some(read_studs(studs)?),
            None => None,
        },
        gap: length(record.gap)?,
        method: match record.method {
            Some(method) => Some(choice(&METHODS, method)?),
            None => None,
        },
        screw_spacing: length(record.screw_spacing)?,
        fire_rated: record.fire_rated,
        other_holes: all(record.other_holes, read_hole)?,
        air,
    })
}

fn write_paint(ask: &paint::Ask) -> PaintRecord {
    let nm = |length: Option<Length>| length.map(Length::as_nm);
    let coats = |coats: &Coats| CoatsRecord {
        coats: coats.coats,
        label_rate: coats.label_rate.map(|rate| rate.value),
        volume_solids: coats.volume_solids,
        dry_film: nm(coats.dry_film),
        label: coats.label.clone(),
    };
    let surface = |s: &Surface| {
        (
            s.name.clone(),
            code(&PARTS, &s.part),
            s.area.value,
            nm(s.height),
            nm(s.width),
            code(&TEXTURES, &s.kind),
            s.cut_in.as_nm(),
        )
    };
    PaintRecord {
        surfaces: ask.surfaces.iter().map(surface).collect(),
        trim: ask
            .trim
            .iter()
            .map(|trim| (trim.name.clone(), trim.length.as_nm(), trim.face.as_nm()))
            .collect(),
        coats: [
            coats(&ask.primer),
            coats(&ask.finish),
            coats(&ask.trim_finish),
        ],
        reach: (nm(ask.reach.stature), ask.reach.standing_off.as_nm()),
        built: code(&BUILT, &ask.built),
        sheen: code(&SHEENS, &ask.sheen),
        level: ask.level,
        binder: code(&BINDERS, &ask.binder),
        patched: ask.patched.iter().map(|area| area.value).collect(),
        disturbed: ask.disturbed.value,
        paid_job: ask.paid_job,
    }
}

fn read_paint(record: PaintRecord) -> Option<paint::Ask> {
    let coats = |c: CoatsRecord| {
        Some(Coats {
            coats: c.coats,
            label_rate: rate(c.label_rate)?,
            volume_solids: share(c.volume_solids)?,
            dry_film: maybe(c.dry_film)?,
            label: c.label,
        })
    };
    let [primer, finish, trim_finish] = record.coats;
    Some(paint::Ask {
        surfaces: all(
            record.surfaces,
            |(name, part, size, height, width, kind, cut_in)| {
                Some(Surface {
                    name,
                    part: choice(&PARTS, part)?,
                    area: area(size)?,
                    height: maybe(height)?,
                    width: maybe(width)?,
                    kind: choice(&TEXTURES, kind)?,
                    cut_in: length(cut_in)?,
                })
            },
        )?,
        trim: all(record.trim, |(name, long, face)| {
            Some(Trim {
                name,
                length: length(long)?,
                face: length(face)?,
            })
        })?,
        primer: coats(primer)?,
        finish: coats(finish)?,
        trim_finish: coats(trim_finish)?,
        reach: Reach {
            stature: maybe(record.reach.0)?,
            standing_off: length(record.reach.1)?,
        },
        built: choice(&BUILT, record.built)?,
        sheen: choice(&SHEENS, record.sheen)?,
        level: record.level,
        binder: choice(&BINDERS, record.binder)?,
        patched: all(record.patched, area)?,
        disturbed: area(record.disturbed)?,
        paid_job: record.paid_job,
    })
}
