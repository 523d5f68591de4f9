//! Runs of pipe in JSON.

use serde::{Deserialize, Serialize};

use super::fixed::{SurfaceJson, on as place, surface};
use super::words::{Fahrenheit, Hex, More, Nm, Udeg, Word, Words};
use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::measure::Length;
use crate::site::{On, Spot};
use crate::takeoff::PipeOn;
use crate::trades::pipe::{
    Ask, By, Direction, Fitting, Leg, Lines, Mark, Measured, Place, Port, Shape, Side, Way,
};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct PipeJson {
    name: String,
    pipe: Word<Pipe>,
    size: Word<Size>,
    start: Option<FittingJson>,
    legs: Vec<LegJson>,
    /// Right, forward, up.
    closes_nm: Option<[Nm; 3]>,
    fittings: Vec<MeasuredJson>,
    tape_nm: Nm,
    lines: Option<LinesJson>,
    jaw_nm: Option<Nm>,
    stick_nm: Nm,
    fahrenheit: Fahrenheit,
    damp: bool,
    warms_fahrenheit: Option<More>,
    mitre_udeg: Udeg,
    fitted: Vec<u32>,
    on: Option<OnJson>,
}

impl Default for PipeJson {
    fn default() -> PipeJson {
        write_pipe(&Ask::default(), None)
    }
}

/// On a wall of the room, counted from 0, or in the floor as it is measured from that wall.
#[derive(Serialize, Deserialize)]
struct OnJson {
    #[serde(default)]
    surface: SurfaceJson,
    wall: usize,
    point: Option<Hex>,
    from_left_nm: Nm,
    up_nm: Nm,
    below_nm: Option<Nm>,
    stud_depth_nm: Nm,
    bearing: bool,
}

#[derive(Serialize, Deserialize)]
struct LinesJson {
    count: u32,
    apart_nm: Nm,
    to: Word<Direction>,
}

#[derive(Serialize, Deserialize)]
struct FittingJson {
    kind: Word<Kind>,
    street: Option<Word<Side>>,
    branch: Option<Word<Side>>,
    turn: Option<Word<Turn>>,
}

#[derive(Serialize, Deserialize)]
struct LegJson {
    way: WayJson,
    size: Option<Word<Size>>,
    by: ByJson,
    #[serde(default)]
    couplings: u32,
    end: Option<FittingJson>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum WayJson {
    Along(Word<Direction>),
    Offset {
        along: Word<Direction>,
        to: Word<Direction>,
        angle_udeg: Udeg,
        set_nm: Nm,
        over: Option<Word<Direction>>,
        roll_nm: Option<Nm>,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum ByJson {
    Tape {
        length_nm: Nm,
        from: MarkJson,
        to: MarkJson,
    },
    Set,
    Fitted,
    Rest,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum MarkJson {
    Centre,
    Face,
    Shoulder,
    End,
    Wall { beyond_nm: Nm },
}

#[derive(Serialize, Deserialize)]
struct MeasuredJson {
    family: Word<Family>,
    kind: Word<Kind>,
    turn: Option<Word<Turn>>,
    size: Word<Size>,
    /// The size of the opening across, where it is another.
    other: Option<Word<Size>>,
    port: Word<Port>,
    face_nm: Nm,
    depth_nm: Option<Nm>,
}

fn write_fitting(fitting: Fitting) -> FittingJson {
    FittingJson {
        kind: Word(fitting.kind),
        street: fitting.street.map(Word),
        branch: fitting.branch.map(Word),
        turn: fitting.turn.map(Word),
    }
}

fn read_fitting(fitting: FittingJson) -> Fitting {
    Fitting {
        kind: fitting.kind.0,
        street: fitting.street.map(|side| side.0),
        branch: fitting.branch.map(|side| side.0),
        turn: fitting.turn.map(|turn| turn.0),
    }
}

fn write_mark(mark: Mark) -> MarkJson {
    match mark {
        Mark::Centre => MarkJson::Centre,
        Mark::Face => MarkJson::Face,
        Mark::Shoulder => MarkJson::Shoulder,
        Mark::End => MarkJson::End,
        Mark::Wall(beyond) => MarkJson::Wall {
            beyond_nm: Nm(beyond),
        },
    }
}

fn read_mark(mark: MarkJson) -> Mark {
    match mark {
        MarkJson::Centre => Mark::Centre,
        MarkJson::Face => Mark::Face,
        MarkJson::Shoulder => Mark::Shoulder,
        MarkJson::End => Mark::End,
        MarkJson::Wall { beyond_nm } => Mark::Wall(beyond_nm.0),
    }
}

fn write_leg(leg: &Leg) -> LegJson {
    LegJson {
        way: match leg.way {
            Way::Along(direction) => WayJson::Along(Word(direction)),
            Way::Offset {
                along,
                to,
                angle,
                set,
                over,
            } => WayJson::Offset {
                along: Word(along),
                to: Word(to),
                angle_udeg: Udeg(angle),
                set_nm: Nm(set),
                over: over.map(|(over, _)| Word(over)),
                roll_nm: over.map(|(_, roll)| Nm(roll)),
            },
        },
        size: leg.size.map(Word),
        by: match leg.by {
            By::Tape { length, from, to } => ByJson::Tape {
                length_nm: Nm(length),
                from: write_mark(from),
                to: write_mark(to),
            },
            By::Set => ByJson::Set,
            By::Fitted => ByJson::Fitted,
            By::Rest => ByJson::Rest,
        },
        couplings: leg.couplings,
        end: leg.end.map(write_fitting),
    }
}

fn read_leg(leg: LegJson) -> Leg {
    Leg {
        way: match leg.way {
            WayJson::Along(direction) => Way::Along(direction.0),
            WayJson::Offset {
                along,
                to,
                angle_udeg,
                set_nm,
                over,
                roll_nm,
            } => Way::Offset {
                along: along.0,
                to: to.0,
                angle: angle_udeg.0,
                set: set_nm.0,
                over: over.zip(roll_nm).map(|(over, roll)| (over.0, roll.0)),
            },
        },
        size: leg.size.map(|size| size.0),
        by: match leg.by {
            ByJson::Tape {
                length_nm,
                from,
                to,
            } => By::Tape {
                length: length_nm.0,
                from: read_mark(from),
                to: read_mark(to),
            },
            ByJson::Set => By::Set,
            ByJson::Fitted => By::Fitted,
            ByJson::Rest => By::Rest,
        },
        couplings: leg.couplings,
        end: leg.end.map(read_fitting),
    }
}

fn write_measured(own: &Measured) -> MeasuredJson {
    let shape = own.shape;
    MeasuredJson {
        family: Word(shape.family),
        kind: Word(shape.kind),
        turn: shape.turn.map(Word),
        size: Word(shape.size),
        other: (shape.other != shape.size).then_some(Word(shape.other)),
        port: Word(shape.port),
        face_nm: Nm(own.face),
        depth_nm: own.depth.map(Nm),
    }
}

fn read_measured(own: MeasuredJson) -> Measured {
    Measured {
        shape: Shape {
            family: own.family.0,
            kind: own.kind.0,
            turn: own.turn.map(|turn| turn.0),
            size: own.size.0,
            other: own.other.unwrap_or(own.size).0,
            port: own.port.0,
        },
        face: own.face_nm.0,
        depth: own.depth_nm.map(|depth| depth.0),
    }
}

pub(super) fn write_pipe(ask: &Ask, on: Option<PipeOn>) -> PipeJson {
    PipeJson {
        name: ask.name.clone(),
        pipe: Word(ask.pipe),
        size: Word(ask.size),
        start: ask.start.map(write_fitting),
        legs: ask.legs.iter().map(write_leg).collect(),
        closes_nm: ask.closes.map(|place| place.axes().map(Nm)),
        fittings: ask.fittings.iter().map(write_measured).collect(),
        tape_nm: Nm(ask.tape),
        lines: ask.lines.map(|lines| LinesJson {
            count: lines.count,
            apart_nm: Nm(lines.apart),
            to: Word(lines.to),
        }),
        jaw_nm: ask.jaw.map(Nm),
        stick_nm: Nm(ask.stick),
        fahrenheit: Fahrenheit(ask.air),
        damp: ask.damp,
        warms_fahrenheit: ask.warms.map(More),
        mitre_udeg: Udeg(ask.mitre),
        fitted: ask.fitted.clone(),
        on: on.map(|on| OnJson {
            surface: surface(on.on),
            wall: on.on.wall(),
            point: on.point.map(|point| Hex(point.0)),
            from_left_nm: Nm(on.spot.from_left),
            up_nm: Nm(on.spot.up),
            below_nm: matches!(on.on, On::Floor(_)).then_some(Nm(on.below)),
            stud_depth_nm: Nm(on.depth),
            bearing: on.bearing,
        }),
    }
}

pub(super) fn read_pipe(pipe: PipeJson) -> (Ask, Option<PipeOn>) {
    let on = pipe.on.map(|on| PipeOn {
        on: place(on.surface, on.wall),
        point: on.point.map(Hex::id),
        spot: Spot {
            from_left: on.from_left_nm.0,
            up: on.up_nm.0,
        },
        below: on.below_nm.map(|nm| nm.0).unwrap_or_default(),
        depth: on.stud_depth_nm.0,
        bearing: on.bearing,
    });
    let ask = Ask {
        name: pipe.name,
        pipe: pipe.pipe.0,
        size: pipe.size.0,
        start: pipe.start.map(read_fitting),
        legs: pipe.legs.into_iter().map(read_leg).collect(),
        closes: pipe
            .closes_nm
            .map(|axes| Place::of(axes.map(|nm| -> Length { nm.0 }))),
        fittings: pipe.fittings.into_iter().map(read_measured).collect(),
        tape: pipe.tape_nm.0,
        lines: pipe.lines.map(|lines| Lines {
            count: lines.count,
            apart: lines.apart_nm.0,
            to: lines.to.0,
        }),
        jaw: pipe.jaw_nm.map(|jaw| jaw.0),
        stick: pipe.stick_nm.0,
        air: pipe.fahrenheit.0,
        damp: pipe.damp,
        warms: pipe.warms_fahrenheit.map(|warms| warms.0),
        mitre: pipe.mitre_udeg.0,
        fitted: pipe.fitted,
    };
    (ask, on)
}

impl Words for Direction {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("left", Direction::Left),
        ("right", Direction::Right),
        ("forward", Direction::Forward),
        ("back", Direction::Back),
        ("up", Direction::Up),
        ("down", Direction::Down),
    ];
}
impl Words for Side {
    const WORDS: &'static [(&'static str, Self)] =
        &[("before", Side::Before), ("after", Side::After)];
}
impl Words for Port {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("run", Port::Run),
        ("branch", Port::Branch),
        ("spigot", Port::Spigot),
    ];
}

impl Words for Pipe {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("copper-k", Pipe::CopperK),
        ("copper-l", Pipe::CopperL),
        ("copper-m", Pipe::CopperM),
        ("pvc-drain", Pipe::PvcDrain),
        ("abs-drain", Pipe::AbsDrain),
        ("pvc-40", Pipe::Pvc40),
        ("cpvc", Pipe::Cpvc),
        ("pex", Pipe::Pex),
        ("steel", Pipe::Steel),
    ];
}
impl Words for Family {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("copper", Family::Copper),
        ("pvc-drain", Family::PvcDrain),
        ("abs-drain", Family::AbsDrain),
        ("pvc-40", Family::Pvc40),
        ("cpvc", Family::Cpvc),
        ("pex", Family::Pex),
        ("steel", Family::Steel),
    ];
}
impl Words for Size {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("1/4", Size::Quarter),
        ("3/8", Size::ThreeEighths),
        ("1/2", Size::Half),
        ("5/8", Size::FiveEighths),
        ("3/4", Size::ThreeQuarters),
        ("1", Size::One),
        ("1-1/4", Size::OneQuarter),
        ("1-1/2", Size::OneHalf),
        ("2", Size::Two),
        ("2-1/2", Size::TwoHalf),
        ("3", Size::Three),
        ("4", Size::Four),
    ];
}
impl Words for Turn {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("11.25", Turn::ThirtySecond),
        ("22.5", Turn::Sixteenth),
        ("30", Turn::Twelfth),
        ("45", Turn::Eighth),
        ("60", Turn::Sixth),
        ("72", Turn::Fifth),
        ("90", Turn::Quarter),
    ];
}
impl Words for Kind {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("bend", Kind::Bend),
        ("long-bend", Kind::LongBend),
        ("tee", Kind::Tee),
        ("sanitary-tee", Kind::SanitaryTee),
        ("wye", Kind::Wye),
        ("coupling", Kind::Coupling),
        ("reducer", Kind::Reducer),
        ("union", Kind::Union),
        ("valve", Kind::Valve),
        ("trap", Kind::Trap),
        ("flange", Kind::Flange),
        ("cap", Kind::Cap),
        ("adapter", Kind::Adapter),
    ];
}
