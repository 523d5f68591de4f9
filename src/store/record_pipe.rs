//! Runs of pipe and their fittings as records.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe, read, write};
use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::measure::{Angle, Length};
use crate::site::{Id, On, Spot};
use crate::takeoff::PipeOn;
use crate::trades::pipe::{
    Ask, By, Direction, Fitting, Leg, Lines, Mark, Measured, Place, Port, Shape, Side, Way,
};

pub(super) const PIPES: [Pipe; 9] = [
    Pipe::CopperK,
    Pipe::CopperL,
    Pipe::CopperM,
    Pipe::PvcDrain,
    Pipe::AbsDrain,
    Pipe::Pvc40,
    Pipe::Cpvc,
    Pipe::Pex,
    Pipe::Steel,
];
pub(super) const FAMILIES: [Family; 7] = [
    Family::Copper,
    Family::PvcDrain,
    Family::AbsDrain,
    Family::Pvc40,
    Family::Cpvc,
    Family::Pex,
    Family::Steel,
];
pub(super) const SIZES: [Size; 12] = [
    Size::Quarter,
    Size::ThreeEighths,
    Size::Half,
    Size::FiveEighths,
    Size::ThreeQuarters,
    Size::One,
    Size::OneQuarter,
    Size::OneHalf,
    Size::Two,
    Size::TwoHalf,
    Size::Three,
    Size::Four,
];
/// None first.
pub(super) const TURNS: [Option<Turn>; 8] = [
    None,
    Some(Turn::ThirtySecond),
    Some(Turn::Sixteenth),
    Some(Turn::Twelfth),
    Some(Turn::Eighth),
    Some(Turn::Sixth),
    Some(Turn::Fifth),
    Some(Turn::Quarter),
];
pub(super) const KINDS: [Kind; 13] = [
    Kind::Bend,
    Kind::LongBend,
    Kind::Tee,
    Kind::SanitaryTee,
    Kind::Wye,
    Kind::Coupling,
    Kind::Reducer,
    Kind::Union,
    Kind::Valve,
    Kind::Trap,
    Kind::Flange,
    Kind::Cap,
    Kind::Adapter,
];

const DIRECTIONS: [Direction; 6] = [
    Direction::Left,
    Direction::Right,
    Direction::Forward,
    Direction::Back,
    Direction::Up,
    Direction::Down,
];
/// None first.
const SIDES: [Option<Side>; 3] = [None, Some(Side::Before), Some(Side::After)];
const PORTS: [Port; 3] = [Port::Run, Port::Branch, Port::Spigot];

#[derive(Serialize, Deserialize)]
pub(super) struct PipeRecord {
    name: String,
    pipe: u8,
    size: u8,
    start: Option<FittingRecord>,
    legs: Vec<LegRecord>,
    closes: Option<[i64; 3]>,
    fittings: Vec<MeasuredRecord>,
    tape: i64,
    /// How many, how far apart, to which side.
    lines: Option<(u32, i64, u8)>,
    jaw: Option<i64>,
    stick: i64,
    air: f64,
    damp: bool,
    warms: Option<f64>,
    mitre: i64,
    fitted: Vec<u32>,
    on: Option<OnRecord>,
}

/// Wall, fixed point, from the left, up, studs deep, bearing.
type OnRecord = (u32, Option<u64>, i64, i64, i64, bool);

#[derive(Serialize, Deserialize)]
struct FittingRecord {
    kind: u8,
    street: u8,
    branch: u8,
    turn: u8,
}

#[derive(Serialize, Deserialize)]
struct LegRecord {
    way: WayRecord,
    size: Option<u8>,
    by: ByRecord,
    couplings: u32,
    end: Option<FittingRecord>,
}

#[derive(Serialize, Deserialize)]
enum WayRecord {
    Along(u8),
    Offset {
        ways: [u8; 2],
        angle: i64,
        set: i64,
        over: Option<(u8, i64)>,
    },
}

#[derive(Serialize, Deserialize)]
enum ByRecord {
    Tape {
        length: i64,
        from: MarkRecord,
        to: MarkRecord,
    },
    Set,
    Fitted,
    Rest,
}

#[derive(Serialize, Deserialize)]
enum MarkRecord {
    Centre,
    Face,
    Shoulder,
    End,
    Wall(i64),
}

/// A fitting that was measured.
#[derive(Serialize, Deserialize)]
pub(super) struct MeasuredRecord {
    /// Family, kind, turn, sizes, port.
    shape: [u8; 6],
    face: i64,
    depth: Option<i64>,
}

pub(super) fn write_measured(own: &Measured) -> MeasuredRecord {
    let shape = own.shape;
    MeasuredRecord {
        shape: [
            code(&FAMILIES, &shape.family),
            code(&KINDS, &shape.kind),
            code(&TURNS, &shape.turn),
            code(&SIZES, &shape.size),
            code(&SIZES, &shape.other),
            code(&PORTS, &shape.port),
        ],
        face: own.face.as_nm(),
        depth: own.depth.map(Length::as_nm),
    }
}

pub(super) fn read_measured(record: MeasuredRecord) -> Option<Measured> {
    let [family, kind, turn, size, other, port] = record.shape;
    Some(Measured {
        shape: Shape {
            family: choice(&FAMILIES, family)?,
            kind: choice(&KINDS, kind)?,
            turn: choice(&TURNS, turn)?,
            size: choice(&SIZES, size)?,
            other: choice(&SIZES, other)?,
            port: choice(&PORTS, port)?,
        },
        face: length(record.face)?,
        depth: maybe(record.depth)?,
    })
}

/// The shelf of fittings as the body of a file.
pub(super) fn write_fittings(fittings: &[Measured]) -> Vec<u8> {
    let records: Vec<MeasuredRecord> = fittings.iter().map(write_measured).collect();
    write(&records)
}

/// The shelf of fittings from the body of a file.
pub(super) fn read_fittings(bytes: &[u8]) -> Option<Vec<Measured>> {
    all(read::<Vec<MeasuredRecord>>(bytes)?, read_measured)
}

fn write_fitting(fitting: Fitting) -> FittingRecord {
    FittingRecord {
        kind: code(&KINDS, &fitting.kind),
        street: code(&SIDES, &fitting.street),
        branch: code(&SIDES, &fitting.branch),
        turn: code(&TURNS, &fitting.turn),
    }
}

fn read_fitting(record: Option<FittingRecord>) -> Option<Option<Fitting>> {
    let Some(record) = record else {
        return Some(None);
    };
    Some(Some(Fitting {
        kind: choice(&KINDS, record.kind)?,
        street: choice(&SIDES, record.street)?,
        branch: choice(&SIDES, record.branch)?,
        turn: choice(&TURNS, record.turn)?,
    }))
}

fn write_mark(mark: Mark) -> MarkRecord {
    match mark {
        Mark::Centre => MarkRecord::Centre,
        Mark::Face => MarkRecord::Face,
        Mark::Shoulder => MarkRecord::Shoulder,
        Mark::End => MarkRecord::End,
        Mark::Wall(beyond) => MarkRecord::Wall(beyond.as_nm()),
    }
}

fn read_mark(record: MarkRecord) -> Option<Mark> {
    Some(match record {
        MarkRecord::Centre => Mark::Centre,
        MarkRecord::Face => Mark::Face,
        MarkRecord::Shoulder => Mark::Shoulder,
        MarkRecord::End => Mark::End,
        MarkRecord::Wall(beyond) => Mark::Wall(length(beyond)?),
    })
}

fn write_leg(leg: &Leg) -> LegRecord {
    let way = |direction: &Direction| code(&DIRECTIONS, direction);
    LegRecord {
        way: match &leg.way {
            Way::Along(direction) => WayRecord::Along(way(direction)),
            Way::Offset {
                along,
                to,
                angle,
                set,
                over,
            } => WayRecord::Offset {
                ways: [way(along), way(to)],
                angle: angle.as_microdegrees(),
                set: set.as_nm(),
                over: over.map(|(over, roll)| (way(&over), roll.as_nm())),
            },
        },
        size: leg.size.map(|size| code(&SIZES, &size)),
        by: match leg.by {
            By::Tape { length, from, to } => ByRecord::Tape {
                length: length.as_nm(),
                from: write_mark(from),
                to: write_mark(to),
            },
            By::Set => ByRecord::Set,
            By::Fitted => ByRecord::Fitted,
            By::Rest => ByRecord::Rest,
        },
        couplings: leg.couplings,
        end: leg.end.map(write_fitting),
    }
}

fn read_leg(record: LegRecord) -> Option<Leg> {
    let way = |at| choice(&DIRECTIONS, at);
    Some(Leg {
        way: match record.way {
            WayRecord::Along(at) => Way::Along(way(at)?),
            WayRecord::Offset {
                ways: [along, to],
                angle,
                set,
                over,
            } => Way::Offset {
                along: way(along)?,
                to: way(to)?,
                angle: angle_of(angle)?,
                set: length(set)?,
                over: match over {
                    None => None,
                    Some((over, roll)) => Some((way(over)?, length(roll)?)),
                },
            },
        },
        size: match record.size {
            None => None,
            Some(size) => Some(choice(&SIZES, size)?),
        },
        by: match record.by {
            ByRecord::Tape {
                length: said,
                from,
                to,
            } => By::Tape {
                length: length(said)?,
                from: read_mark(from)?,
                to: read_mark(to)?,
            },
            ByRecord::Set => By::Set,
            ByRecord::Fitted => By::Fitted,
            ByRecord::Rest => By::Rest,
        },
        couplings: record.couplings,
        end: read_fitting(record.end)?,
    })
}

fn angle_of(micro: i64) -> Option<Angle> {
    (micro.unsigned_abs() <= 3_600_000_000).then(|| Angle::microdegrees(micro))
}

pub(super) fn write_pipe(ask: &Ask, on: Option<PipeOn>) -> PipeRecord {
    PipeRecord {
        name: ask.name.clone(),
        pipe: code(&PIPES, &ask.pipe),
        size: code(&SIZES, &ask.size),
        start: ask.start.map(write_fitting),
        legs: ask.legs.iter().map(write_leg).collect(),
        closes: ask.closes.map(|place| place.axes().map(Length::as_nm)),
        fittings: ask.fittings.iter().map(write_measured).collect(),
        tape: ask.tape.as_nm(),
        lines: ask.lines.map(|lines| {
            (
                lines.count,
                lines.apart.as_nm(),
                code(&DIRECTIONS, &lines.to),
            )
        }),
        jaw: ask.jaw.map(Length::as_nm),
        stick: ask.stick.as_nm(),
        air: ask.air,
        damp: ask.damp,
        warms: ask.warms,
        mitre: ask.mitre.as_microdegrees(),
        fitted: ask.fitted.clone(),
        on: on.map(|on| {
            let wall = u32::try_from(on.on.wall()).unwrap_or(u32::MAX);
            let point = on.point.map(|point| point.0);
            (
                wall,
                point,
                on.spot.from_left.as_nm(),
                on.spot.up.as_nm(),
                on.depth.as_nm(),
                on.bearing,
            )
        }),
    }
}

/// A run under the floor: 1, and how far below the finished floor it starts.
pub(super) type LiesRecord = (u8, i64);

const FLOOR: u8 = 1;

/// What the record of a run does not say: that it lies under the floor. `None` where it does not, as in every file before
/// there was this.
pub(super) fn write_lies(on: Option<PipeOn>) -> Option<LiesRecord> {
    let on = on.filter(|on| matches!(on.on, On::Floor(_)))?;
    Some((FLOOR, on.below.as_nm()))
}

/// Puts a run where its part says that it lies.
pub(super) fn read_lies((lies, below): LiesRecord, on: &mut Option<PipeOn>) -> Option<()> {
    let below = length(below).filter(|_| lies == FLOOR)?;
    if let Some(on) = on {
        (on.on, on.below) = (On::Floor(on.on.wall()), below);
    }
    Some(())
}

fn read_on(record: Option<OnRecord>) -> Option<Option<PipeOn>> {
    let Some((wall, point, from_left, up, depth, bearing)) = record else {
        return Some(None);
    };
    Some(Some(PipeOn {
        on: On::Wall(wall as usize),
        point: point.map(Id),
        spot: Spot {
            from_left: length(from_left)?,
            up: length(up)?,
        },
        below: Length::ZERO,
        depth: length(depth)?,
        bearing,
    }))
}

pub(super) fn read_pipe(record: PipeRecord) -> Option<(Ask, Option<PipeOn>)> {
    let on = read_on(record.on)?;
    let ask = Ask {
        name: record.name,
        pipe: choice(&PIPES, record.pipe)?,
        size: choice(&SIZES, record.size)?,
        start: read_fitting(record.start)?,
        legs: all(record.legs, read_leg)?,
        closes: match record.closes {
            None => None,
            Some([right, forward, up]) => Some(Place {
                right: length(right)?,
                forward: length(forward)?,
                up: length(up)?,
            }),
        },
        fittings: all(record.fittings, read_measured)?,
        tape: length(record.tape)?,
        lines: match record.lines {
            None => None,
            Some((count, apart, to)) => Some(Lines {
                count,
                apart: length(apart)?,
                to: choice(&DIRECTIONS, to)?,
            }),
        },
        jaw: maybe(record.jaw)?,
        stick: length(record.stick)?,
        air: Some(record.air).filter(|air| air.is_finite())?,
        damp: record.damp,
        warms: match record.warms {
            Some(warms) if !warms.is_finite() => return None,
            warms => warms,
        },
        mitre: angle_of(record.mitre)?,
        fitted: record.fitted,
    };
    Some((ask, on))
}

#[cfg(test)]
mod tests;
