//! What was asked of a drain, and what was set about cutting, in JSON.

use serde::{Deserialize, Serialize};

use super::buying::{MaterialJson, read_material, write_material};
use super::rooms::{length, nm};
use super::words::{Hex, Nm, Word};
use crate::measure::Length;
use crate::site::Id;
use crate::takeoff::{Left, Saw, Setup};
use crate::trades::Material;
use crate::trades::drain::{Arm, Ask, Code, Flange, Size, Through};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct DrainJson {
    code: Word<Code>,
    eighth_approved: bool,
    size: Word<Size>,
    /// In a foot.
    fall_nm: Option<Nm>,
    run_nm: Nm,
    start_nm: Option<Nm>,
    through: ThroughJson,
    hole_nm: Option<Nm>,
    arm: Option<ArmJson>,
    lavatories: u32,
    tubs: u32,
    showers: u32,
    closets: u32,
    large_closets: u32,
    flange: Option<FlangeJson>,
}

impl Default for DrainJson {
    fn default() -> DrainJson {
        write_drain(&Ask::default())
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum ThroughJson {
    Open,
    Joists {
        first_nm: Nm,
        spacing_nm: Nm,
        depth_nm: Nm,
        #[serde(default)]
        engineered: bool,
    },
    Studs {
        first_nm: Nm,
        spacing_nm: Nm,
        depth_nm: Nm,
        across_nm: Option<Nm>,
        #[serde(default = "unknown_bears")]
        bearing: bool,
        #[serde(default)]
        doubled: bool,
    },
}

/// A wall of which nothing is said is taken to bear.
fn unknown_bears() -> bool {
    true
}

#[derive(Serialize, Deserialize)]
struct ArmJson {
    size: Word<Size>,
    length_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct FlangeJson {
    rough_in_nm: Nm,
    to_come_nm: Nm,
}

pub(super) fn write_drain(ask: &Ask) -> DrainJson {
    let [lavatories, tubs, showers, closets, large_closets] = ask.fixtures;
    DrainJson {
        code: Word(ask.code),
        eighth_approved: ask.eighth_approved,
        size: Word(ask.size),
        fall_nm: nm(ask.fall),
        run_nm: Nm(ask.run),
        start_nm: nm(ask.start),
        through: match ask.through {
            Through::Open => ThroughJson::Open,
            Through::Joists {
                first,
                spacing,
                depth,
                engineered,
            } => ThroughJson::Joists {
                first_nm: Nm(first),
                spacing_nm: Nm(spacing),
                depth_nm: Nm(depth),
                engineered,
            },
            Through::Studs {
                first,
                spacing,
                depth,
                across,
                bearing,
                doubled,
            } => ThroughJson::Studs {
                first_nm: Nm(first),
                spacing_nm: Nm(spacing),
                depth_nm: Nm(depth),
                across_nm: nm(across),
                bearing,
                doubled,
            },
        },
        hole_nm: nm(ask.hole),
        arm: ask.arm.map(|arm| ArmJson {
            size: Word(arm.size),
            length_nm: Nm(arm.length),
        }),
        lavatories,
        tubs,
        showers,
        closets,
        large_closets,
        flange: ask.flange.map(|flange| FlangeJson {
            rough_in_nm: Nm(flange.rough_in),
            to_come_nm: Nm(flange.to_come),
        }),
    }
}

pub(super) fn read_drain(drain: &DrainJson) -> Ask {
    Ask {
        code: drain.code.0,
        eighth_approved: drain.eighth_approved,
        size: drain.size.0,
        fall: length(drain.fall_nm),
        run: drain.run_nm.0,
        start: length(drain.start_nm),
        through: match drain.through {
            ThroughJson::Open => Through::Open,
            ThroughJson::Joists {
                first_nm,
                spacing_nm,
                depth_nm,
                engineered,
            } => Through::Joists {
                first: first_nm.0,
                spacing: spacing_nm.0,
                depth: depth_nm.0,
                engineered,
            },
            ThroughJson::Studs {
                first_nm,
                spacing_nm,
                depth_nm,
                across_nm,
                bearing,
                doubled,
            } => Through::Studs {
                first: first_nm.0,
                spacing: spacing_nm.0,
                depth: depth_nm.0,
                across: length(across_nm),
                bearing,
                doubled,
            },
        },
        hole: length(drain.hole_nm),
        arm: drain.arm.as_ref().map(|arm| Arm {
            size: arm.size.0,
            length: arm.length_nm.0,
        }),
        fixtures: [
            drain.lavatories,
            drain.tubs,
            drain.showers,
            drain.closets,
            drain.large_closets,
        ],
        flange: drain.flange.as_ref().map(|flange| Flange {
            rough_in: flange.rough_in_nm.0,
            to_come: flange.to_come_nm.0,
        }),
    }
}

/// What was set about cutting one material.
#[derive(Serialize, Deserialize)]
pub(super) struct CuttingJson {
    material: MaterialJson,
    #[serde(default)]
    sticks_nm: Vec<Nm>,
    #[serde(default)]
    saw: SawJson,
    #[serde(default)]
    offcuts_nm: Vec<Nm>,
}

#[derive(Serialize, Deserialize, Default)]
#[serde(rename_all = "kebab-case")]
enum SawJson {
    Cutter,
    Hand,
    #[default]
    Power,
    KerfNm(Nm),
}

/// What one room left of one material.
#[derive(Serialize, Deserialize)]
pub(super) struct LeftJson {
    material: MaterialJson,
    room: Hex,
    #[serde(default)]
    part: f64,
    #[serde(default)]
    sticks_nm: Vec<Nm>,
    #[serde(default)]
    pieces: Vec<PieceJson>,
}

#[derive(Serialize, Deserialize)]
struct PieceJson {
    sides_nm: [Nm; 2],
    count: u32,
}

pub(super) fn write_left(((material, room), left): (&(Material, Id), &Left)) -> LeftJson {
    let pieces = left.pieces.iter().map(|((a, b), count)| PieceJson {
        sides_nm: [Nm(*a), Nm(*b)],
        count: *count,
    });
    LeftJson {
        material: write_material(material),
        room: Hex(room.0),
        part: left.part,
        sticks_nm: left.sticks.iter().map(|length| Nm(*length)).collect(),
        pieces: pieces.collect(),
    }
}

pub(super) fn read_left(left: LeftJson) -> ((Material, Id), Left) {
    let pieces = left.pieces.into_iter().map(|piece| {
        let [a, b] = piece.sides_nm;
        ((a.0, b.0), piece.count)
    });
    let of = Left {
        part: if left.part.is_finite() {
            left.part.max(0.0)
        } else {
            0.0
        },
        sticks: left.sticks_nm.into_iter().map(|length| length.0).collect(),
        pieces: pieces.collect(),
    };
    ((read_material(left.material), left.room.id()), of)
}

pub(super) fn write_cutting(material: &Material, setup: &Setup) -> CuttingJson {
    let each = |lengths: &[Length]| lengths.iter().map(|length| Nm(*length)).collect();
    CuttingJson {
        material: write_material(material),
        sticks_nm: each(&setup.sticks),
        saw: match setup.saw {
            Saw::Cutter => SawJson::Cutter,
            Saw::Hand => SawJson::Hand,
            Saw::Power => SawJson::Power,
            Saw::Own(kerf) => SawJson::KerfNm(Nm(kerf)),
        },
        offcuts_nm: each(&setup.offcuts),
    }
}

pub(super) fn read_cutting(cutting: CuttingJson) -> (Material, Setup) {
    let each = |lengths: Vec<Nm>| lengths.into_iter().map(|length| length.0).collect();
    let setup = Setup {
        sticks: each(cutting.sticks_nm),
        saw: match cutting.saw {
            SawJson::Cutter => Saw::Cutter,
            SawJson::Hand => Saw::Hand,
            SawJson::Power => Saw::Power,
            SawJson::KerfNm(kerf) => Saw::Own(kerf.0),
        },
        offcuts: each(cutting.offcuts_nm),
    };
    (read_material(cutting.material), setup)
}
