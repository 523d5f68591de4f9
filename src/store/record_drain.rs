//! What was asked of a drain, and what was set about cutting, as records: new in format 2.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe};
use super::record_material::{MaterialRecord, material, read_material};
use crate::measure::Length;
use crate::site::Id;
use crate::takeoff::{Buying, Left, Saw, Setup};
use crate::trades::drain::{Arm, Ask, Code, Flange, Size, Through};

#[derive(Serialize, Deserialize)]
pub(super) struct DrainRecord {
    code: u8,
    eighth_approved: bool,
    size: u8,
    fall: Option<i64>,
    run: i64,
    start: Option<i64>,
    through: ThroughRecord,
    hole: Option<i64>,
    /// Size, length.
    arm: Option<(u8, i64)>,
    fixtures: [u32; 5],
    /// From the finished wall, what is to come.
    flange: Option<(i64, i64)>,
}

#[derive(Serialize, Deserialize)]
enum ThroughRecord {
    Open,
    /// First, spacing, depth; engineered.
    Joists([i64; 3], bool),
    /// First, spacing, depth; across; bearing, doubled.
    Studs([i64; 3], Option<i64>, (bool, bool)),
}

const CODES: [Code; 4] = [Code::Unknown, Code::Irc, Code::Ipc, Code::Upc];

pub(super) fn write_drain(ask: &Ask) -> DrainRecord {
    let nm = |length: Option<Length>| length.map(Length::as_nm);
    DrainRecord {
        code: code(&CODES, &ask.code),
        eighth_approved: ask.eighth_approved,
        size: code(&Size::ALL, &ask.size),
        fall: nm(ask.fall),
        run: ask.run.as_nm(),
        start: nm(ask.start),
        through: match ask.through {
            Through::Open => ThroughRecord::Open,
            Through::Joists {
                first,
                spacing,
                depth,
                engineered,
            } => ThroughRecord::Joists([first, spacing, depth].map(Length::as_nm), engineered),
            Through::Studs {
                first,
                spacing,
                depth,
                across,
                bearing,
                doubled,
            } => ThroughRecord::Studs(
                [first, spacing, depth].map(Length::as_nm),
                nm(across),
                (bearing, doubled),
            ),
        },
        hole: nm(ask.hole),
        arm: (ask.arm).map(|arm| (code(&Size::ALL, &arm.size), arm.length.as_nm())),
        fixtures: ask.fixtures,
        flange: ask
            .flange
            .map(|flange| (flange.rough_in.as_nm(), flange.to_come.as_nm())),
    }
}

pub(super) fn read_drain(record: &DrainRecord) -> Option<Ask> {
    Some(Ask {
        code: choice(&CODES, record.code)?,
        eighth_approved: record.eighth_approved,
        size: choice(&Size::ALL, record.size)?,
        fall: maybe(record.fall)?,
        run: length(record.run)?,
        start: maybe(record.start)?,
        through: match record.through {
            ThroughRecord::Open => Through::Open,
            ThroughRecord::Joists([first, spacing, depth], engineered) => Through::Joists {
                first: length(first)?,
                spacing: length(spacing)?,
                depth: length(depth)?,
                engineered,
            },
            ThroughRecord::Studs([first, spacing, depth], across, (bearing, doubled)) => {
                Through::Studs {
                    first: length(first)?,
                    spacing: length(spacing)?,
                    depth: length(depth)?,
                    across: maybe(across)?,
                    bearing,
                    doubled,
                }
            }
        },
        hole: maybe(record.hole)?,
        arm: match record.arm {
            Some((size, long)) => Some(Arm {
                size: choice(&Size::ALL, size)?,
                length: length(long)?,
            }),
            None => None,
        },
        fixtures: record.fixtures,
        flange: match record.flange {
            Some((rough_in, to_come)) => Some(Flange {
                rough_in: length(rough_in)?,
                to_come: length(to_come)?,
            }),
            None => None,
        },
    })
}

/// What cuts: its kind, and what a saw of the person's own takes.
type SawRecord = (u8, i64);

/// Material, sticks on sale, what cuts, offcuts on hand.
pub(super) type CuttingRecord = Vec<(MaterialRecord, Vec<i64>, SawRecord, Vec<i64>)>;

const SAWS: [Saw; 3] = [Saw::Cutter, Saw::Hand, Saw::Power];
/// The kind of a saw of the person's own.
const OWN: u8 = 3;

pub(super) fn write_cutting(buying: &Buying) -> CuttingRecord {
    let nm = |lengths: &[Length]| lengths.iter().map(|length| length.as_nm()).collect();
    let each = buying.cutting.iter().map(|(of, setup)| {
        let saw = match setup.saw {
            Saw::Own(kerf) => (OWN, kerf.as_nm()),
            known => (code(&SAWS, &known), 0),
        };
        (material(of), nm(&setup.sticks), saw, nm(&setup.offcuts))
    });
    each.collect()
}

/// Material, the room that left it, what is in opened packs, rests of sticks, off-cuts by sides and count.
pub(super) type LeftRecord = Vec<(MaterialRecord, u64, f64, Vec<i64>, Vec<(i64, i64, u32)>)>;

pub(super) fn write_left(buying: &Buying) -> LeftRecord {
    let each = buying.left.iter().map(|((of, room), left)| {
        let pieces = left.pieces.iter();
        (
            material(of),
            room.0,
            left.part,
            left.sticks.iter().map(|length| length.as_nm()).collect(),
            pieces
                .map(|((a, b), n)| (a.as_nm(), b.as_nm(), *n))
                .collect(),
        )
    });
    each.collect()
}

pub(super) fn read_left(record: LeftRecord, buying: &mut Buying) -> Option<()> {
    let each = all(record, |(of, room, part, sticks, pieces)| {
        let left = Left {
            part: (part.is_finite() && part >= 0.0).then_some(part)?,
            sticks: all(sticks, length)?,
            pieces: all(pieces, |(a, b, n)| Some(((length(a)?, length(b)?), n)))?,
        };
        Some(((read_material(of)?, Id(room)), left))
    })?;
    buying.left = each.into_iter().collect();
    Some(())
}

pub(super) fn read_cutting(record: CuttingRecord, buying: &mut Buying) -> Option<()> {
    let setups = all(record, |(of, sticks, (saw, kerf), offcuts)| {
        let setup = Setup {
            sticks: all(sticks, length)?,
            saw: match saw {
                OWN => Saw::Own(length(kerf)?),
                known => choice(&SAWS, known)?,
            },
            offcuts: all(offcuts, length)?,
        };
        Some((read_material(of)?, setup))
    })?;
    buying.cutting = setups.into_iter().collect();
    Some(())
}
