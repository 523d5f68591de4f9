//! What was asked of the trades, in JSON.

use serde::{Deserialize, Serialize};

use super::drain::{DrainJson, read_drain, write_drain};
use super::mix::{GroutJson, MortarJson, read_grout, read_mortar, write_grout, write_mortar};
use super::pipe::{PipeJson, read_pipe, write_pipe};
use super::rooms::{StudsJson, length, nm, read_studs, write_studs};
use super::sheets::{SheetsJson, read_sheets, write_sheets};
use super::tile::{TileJson, read_tile, write_tile};
use super::trim::{self, read_trim, write_trim};
use super::words::{Fahrenheit, M2, Nm, Parts, Percent, Rate, Word};
use crate::site::OpeningRule;
use crate::takeoff::Ask;
use crate::trades::paint::{
    self, Binder, Built, Coats, Part, Reach, Sheen, Surface, Texture, Trim,
};
use crate::trades::patch::{self, Air, Hole, HoleShape, Method, Obstacle, WallFacts};

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum AskJson {
    Paint(Box<PaintJson>),
    Patch(Box<PatchJson>),
    Tile(Box<TileJson>),
    Grout(Box<GroutJson>),
    Mortar(Box<MortarJson>),
    Pipe(Box<PipeJson>),
    Drain(Box<DrainJson>),
    Sheets(Box<SheetsJson>),
    Trim(Box<trim::TrimJson>),
}

/// What is missing is as in a new figure, but for its lists, which are empty.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct PaintJson {
    openings: RuleJson,
    #[serde(default)]
    surfaces: Vec<SurfaceJson>,
    #[serde(default)]
    trim: Vec<TrimJson>,
    primer: CoatsJson,
    finish: CoatsJson,
    trim_finish: CoatsJson,
    stature_nm: Option<Nm>,
    standing_off_nm: Nm,
    built: Word<Built>,
    sheen: Word<Sheen>,
    level: Option<u8>,
    binder: Word<Binder>,
    #[serde(default)]
    patched_m2: Vec<M2>,
    disturbed_m2: M2,
    paid_job: bool,
}

impl Default for PaintJson {
    fn default() -> PaintJson {
        write_paint(&paint::Ask::default(), OpeningRule::Net)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum RuleJson {
    Net,
    Solid,
    SmallNotDeducted { below_m2: M2 },
}

#[derive(Serialize, Deserialize)]
struct SurfaceJson {
    name: String,
    part: Word<Part>,
    area_m2: M2,
    height_nm: Option<Nm>,
    width_nm: Option<Nm>,
    texture: Word<Texture>,
    cut_in_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct TrimJson {
    name: String,
    length_nm: Nm,
    face_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct CoatsJson {
    coats: u8,
    label: String,
    label_rate_m2_per_l: Option<Rate>,
    volume_solids: Option<Parts>,
    dry_film_nm: Option<Nm>,
}

#[derive(Serialize, Deserialize)]
pub(super) struct PatchJson {
    hole: HoleJson,
    /// The wall of the room, counted from 0.
    wall: Option<u32>,
    board_nm: Nm,
    wall_length_nm: Option<Nm>,
    wall_height_nm: Option<Nm>,
    #[serde(default)]
    obstacles: Vec<ObstacleJson>,
    studs: Option<StudsJson>,
    gap_nm: Nm,
    method: Option<Word<Method>>,
    screw_spacing_nm: Nm,
    #[serde(default)]
    fire_rated: bool,
    #[serde(default)]
    other_holes: Vec<HoleJson>,
    fahrenheit: Option<Fahrenheit>,
    humidity_percent: Option<Percent>,
}

#[derive(Serialize, Deserialize)]
struct HoleJson {
    shape: ShapeJson,
    from_left_nm: Option<Nm>,
    from_stud: Option<FromStudJson>,
    above_floor_nm: Option<Nm>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum ShapeJson {
    Rectangle { width_nm: Nm, height_nm: Nm },
    Round { across_nm: Nm },
}

#[derive(Serialize, Deserialize)]
struct FromStudJson {
    /// Counted from 0.
    stud: u32,
    off_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct ObstacleJson {
    left_nm: Nm,
    right_nm: Nm,
    bottom_nm: Nm,
    top_nm: Nm,
}

pub(super) fn write_ask(ask: &Ask) -> AskJson {
    match ask {
        Ask::Paint(ask, rule) => AskJson::Paint(Box::new(write_paint(ask, *rule))),
        Ask::Tile(ask, on) => AskJson::Tile(Box::new(write_tile(ask, *on))),
        Ask::Grout(ask, tile) => AskJson::Grout(Box::new(write_grout(ask, *tile))),
        Ask::Mortar(ask, tile) => AskJson::Mortar(Box::new(write_mortar(ask, *tile))),
        Ask::Pipe(ask, on) => AskJson::Pipe(Box::new(write_pipe(ask, *on))),
        Ask::Drain(ask) => AskJson::Drain(Box::new(write_drain(ask))),
        Ask::Sheets(ask, on) => AskJson::Sheets(Box::new(write_sheets(ask, *on))),
        Ask::Trim(ask, on) => AskJson::Trim(Box::new(write_trim(ask, on))),
        Ask::Patch(ask, wall) => {
            let wall = wall.and_then(|wall| u32::try_from(wall).ok());
            AskJson::Patch(Box::new(write_patch(ask, wall)))
        }
    }
}

pub(super) fn read_ask(ask: AskJson) -> Ask {
    match ask {
        AskJson::Paint(ask) => {
            let rule = match ask.openings {
                RuleJson::Net => OpeningRule::Net,
                RuleJson::Solid => OpeningRule::Solid,
                RuleJson::SmallNotDeducted { below_m2 } => {
                    OpeningRule::SmallNotDeducted(below_m2.0)
                }
            };
            Ask::Paint(Box::new(read_paint(*ask)), rule)
        }
        AskJson::Tile(tile) => {
            let (ask, on) = read_tile(*tile);
            Ask::Tile(Box::new(ask), on)
        }
        AskJson::Grout(grout) => {
            let (ask, tile) = read_grout(*grout);
            Ask::Grout(Box::new(ask), tile)
        }
        AskJson::Mortar(mortar) => {
            let (ask, tile) = read_mortar(*mortar);
            Ask::Mortar(Box::new(ask), tile)
        }
        AskJson::Pipe(pipe) => {
            let (ask, on) = read_pipe(*pipe);
            Ask::Pipe(Box::new(ask), on)
        }
        AskJson::Drain(drain) => Ask::Drain(Box::new(read_drain(&drain))),
        AskJson::Sheets(sheets) => {
            let (ask, on) = read_sheets(*sheets);
            Ask::Sheets(Box::new(ask), on)
        }
        AskJson::Trim(trim) => {
            let (ask, on) = read_trim(*trim);
            Ask::Trim(Box::new(ask), on)
        }
        AskJson::Patch(ask) => {
            let wall = ask.wall.map(|wall| wall as usize);
            Ask::Patch(Box::new(read_patch(*ask)), wall)
        }
    }
}

fn write_paint(ask: &paint::Ask, rule: OpeningRule) -> PaintJson {
    let surface = |s: &Surface| SurfaceJson {
        name: s.name.clone(),
        part: Word(s.part),
        area_m2: M2(s.area),
        height_nm: nm(s.height),
        width_nm: nm(s.width),
        texture: Word(s.kind),
        cut_in_nm: Nm(s.cut_in),
    };
    let trim = |trim: &Trim| TrimJson {
        name: trim.name.clone(),
        length_nm: Nm(trim.length),
        face_nm: Nm(trim.face),
    };
    PaintJson {
        openings: match rule {
            OpeningRule::Net => RuleJson::Net,
            OpeningRule::Solid => RuleJson::Solid,
            OpeningRule::SmallNotDeducted(below) => RuleJson::SmallNotDeducted {
                below_m2: M2(below),
            },
        },
        surfaces: ask.surfaces.iter().map(surface).collect(),
        trim: ask.trim.iter().map(trim).collect(),
        primer: write_coats(&ask.primer),
        finish: write_coats(&ask.finish),
        trim_finish: write_coats(&ask.trim_finish),
        stature_nm: nm(ask.reach.stature),
        standing_off_nm: Nm(ask.reach.standing_off),
        built: Word(ask.built),
        sheen: Word(ask.sheen),
        level: ask.level,
        binder: Word(ask.binder),
        patched_m2: ask.patched.iter().copied().map(M2).collect(),
        disturbed_m2: M2(ask.disturbed),
        paid_job: ask.paid_job,
    }
}

fn write_coats(coats: &Coats) -> CoatsJson {
    CoatsJson {
        coats: coats.coats,
        label: coats.label.clone(),
        label_rate_m2_per_l: coats.label_rate.map(Rate),
        volume_solids: coats.volume_solids.map(Parts),
        dry_film_nm: nm(coats.dry_film),
    }
}

fn read_coats(coats: CoatsJson) -> Coats {
    Coats {
        coats: coats.coats,
        label_rate: coats.label_rate_m2_per_l.map(|rate| rate.0),
        volume_solids: coats.volume_solids.map(|share| share.0),
        dry_film: length(coats.dry_film_nm),
        label: coats.label,
    }
}

fn read_paint(ask: PaintJson) -> paint::Ask {
    let surface = |s: SurfaceJson| Surface {
        name: s.name,
        part: s.part.0,
        area: s.area_m2.0,
        height: length(s.height_nm),
        width: length(s.width_nm),
        kind: s.texture.0,
        cut_in: s.cut_in_nm.0,
    };
    let trim = |trim: TrimJson| Trim {
        name: trim.name,
        length: trim.length_nm.0,
        face: trim.face_nm.0,
    };
    paint::Ask {
        surfaces: ask.surfaces.into_iter().map(surface).collect(),
        trim: ask.trim.into_iter().map(trim).collect(),
        primer: read_coats(ask.primer),
        finish: read_coats(ask.finish),
        trim_finish: read_coats(ask.trim_finish),
        reach: Reach {
            stature: length(ask.stature_nm),
            standing_off: ask.standing_off_nm.0,
        },
        built: ask.built.0,
        sheen: ask.sheen.0,
        level: ask.level,
        binder: ask.binder.0,
        patched: ask.patched_m2.into_iter().map(|area| area.0).collect(),
        disturbed: ask.disturbed_m2.0,
        paid_job: ask.paid_job,
    }
}

fn write_hole(hole: &Hole) -> HoleJson {
    HoleJson {
        shape: match hole.shape {
            HoleShape::Rectangle { width, height } => ShapeJson::Rectangle {
                width_nm: Nm(width),
                height_nm: Nm(height),
            },
            HoleShape::Round { across } => ShapeJson::Round {
                across_nm: Nm(across),
            },
        },
        from_left_nm: nm(hole.from_left),
        from_stud: hole.from_stud.map(|(stud, off)| FromStudJson {
            stud: stud as u32,
            off_nm: Nm(off),
        }),
        above_floor_nm: nm(hole.above_floor),
    }
}

fn read_hole(hole: HoleJson) -> Hole {
    Hole {
        shape: match hole.shape {
            ShapeJson::Rectangle {
                width_nm,
                height_nm,
            } => HoleShape::Rectangle {
                width: width_nm.0,
                height: height_nm.0,
            },
            ShapeJson::Round { across_nm } => HoleShape::Round {
                across: across_nm.0,
            },
        },
        from_left: length(hole.from_left_nm),
        from_stud: (hole.from_stud).map(|from| (from.stud as usize, from.off_nm.0)),
        above_floor: length(hole.above_floor_nm),
    }
}

fn write_patch(ask: &patch::Ask, wall: Option<u32>) -> PatchJson {
    let obstacle = |o: &Obstacle| ObstacleJson {
        left_nm: Nm(o.left),
        right_nm: Nm(o.right),
        bottom_nm: Nm(o.bottom),
        top_nm: Nm(o.top),
    };
    PatchJson {
        hole: write_hole(&ask.hole),
        wall,
        board_nm: Nm(ask.board),
        wall_length_nm: nm(ask.wall.length),
        wall_height_nm: nm(ask.wall.height),
        obstacles: ask.wall.obstacles.iter().map(obstacle).collect(),
        studs: ask.studs.as_ref().map(write_studs),
        gap_nm: Nm(ask.gap),
        method: ask.method.map(Word),
        screw_spacing_nm: Nm(ask.screw_spacing),
        fire_rated: ask.fire_rated,
        other_holes: ask.other_holes.iter().map(write_hole).collect(),
        fahrenheit: Some(Fahrenheit(ask.air.fahrenheit)),
        humidity_percent: Some(Percent(ask.air.humidity)),
    }
}

fn read_patch(ask: PatchJson) -> patch::Ask {
    let obstacle = |o: ObstacleJson| Obstacle {
        left: o.left_nm.0,
        right: o.right_nm.0,
        bottom: o.bottom_nm.0,
        top: o.top_nm.0,
    };
    let usual = Air::default();
    patch::Ask {
        hole: read_hole(ask.hole),
        board: ask.board_nm.0,
        wall: WallFacts {
            length: length(ask.wall_length_nm),
            height: length(ask.wall_height_nm),
            obstacles: ask.obstacles.into_iter().map(obstacle).collect(),
        },
        studs: ask.studs.map(read_studs),
        gap: ask.gap_nm.0,
        method: ask.method.map(|method| method.0),
        screw_spacing: ask.screw_spacing_nm.0,
        fire_rated: ask.fire_rated,
        other_holes: ask.other_holes.into_iter().map(read_hole).collect(),
        air: Air {
            fahrenheit: ask.fahrenheit.map_or(usual.fahrenheit, |air| air.0),
            humidity: ask.humidity_percent.map_or(usual.humidity, |air| air.0),
        },
    }
}
