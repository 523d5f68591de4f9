//! The demo's runs of pipe: the two supplies of a shower valve, and its drain to the stack. Their figures are invented.

use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::measure::Length;
use crate::site::{FixedKind, FixedPoint, Joists, On, Room, Spot};
use crate::takeoff::PipeOn;
use crate::trades::pipe::{
    Ask, By, Direction, Fitting, Leg, Mark, Measured, Port, Shape, Side, Way,
};

/// The shower's drain in the floor of the washroom downstairs, and the joists under it.
pub(super) fn floor_of(room: &mut Room) {
    let mut drain = FixedPoint::new(FixedKind::Drain, On::Floor(0));
    (drain.from_left, drain.up) = (Some(Length::inches(70)), Some(Length::inches(30)));
    room.fixed.push(drain);
    room.joists = Some(Joists {
        first: Length::inches(15),
        ..Joists::along(5)
    });
}

/// Hot and cold in the wall with the studs, and the drain under the floor, from a point in it.
pub(super) fn runs(room: &Room) -> [(Ask, Option<PipeOn>); 3] {
    let on = |from_left, up| {
        Some(PipeOn {
            spot: Spot {
                from_left: Length::inches(from_left),
                up: Length::inches(up),
            },
            ..PipeOn::wall(5)
        })
    };
    let hot = supply(
        "Hot to the shower valve",
        Direction::Right,
        (21, 24),
        (6, 0),
    );
    let cold = supply(
        "Cold to the shower valve",
        Direction::Left,
        (21, 24),
        (6, 0),
    );
    let under = PipeOn {
        point: room.fixed.first().map(|point| point.id),
        below: Length::inches(4),
        ..PipeOn::at(On::Floor(0))
    };
    [(hot, on(20, 4)), (cold, on(36, 4)), (drain(), Some(under))]
}

fn leg(way: Direction, (inches, of_64): (i64, i64), to: Mark, end: Kind) -> Leg {
    Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape {
            length: Length::in_64(inches, of_64),
            from: Mark::Centre,
            to,
        },
        couplings: 0,
        end: Some(Fitting::of(end)),
    }
}

fn measured(
    (family, kind, turn): (Family, Kind, Option<Turn>),
    size: Size,
    face: (i64, i64),
    depth: (i64, i64),
) -> Measured {
    Measured {
        shape: Shape {
            family,
            kind,
            turn,
            size,
            other: size,
            port: Port::Run,
        },
        face: Length::in_64(face.0, face.1),
        depth: Some(Length::in_64(depth.0, depth.1)),
    }
}

/// From a tee in the main up the bay, over to the valve, and up to its inlet.
fn supply(name: &str, to: Direction, riser: (i64, i64), over: (i64, i64)) -> Ask {
    let copper = |kind, turn| (Family::Copper, kind, turn);
    let mut tee = measured(copper(Kind::Tee, None), Size::Half, (0, 54), (0, 32));
    tee.shape.port = Port::Branch;
    Ask {
        name: name.to_owned(),
        pipe: Pipe::CopperL,
        size: Size::Half,
        start: Some(Fitting {
            branch: Some(Side::After),
            ..Fitting::of(Kind::Tee)
        }),
        legs: vec![
            leg(Direction::Up, riser, Mark::Centre, Kind::Bend),
            leg(to, over, Mark::Centre, Kind::Bend),
            leg(Direction::Up, (15, 40), Mark::Face, Kind::Valve),
        ],
        fittings: vec![
            tee,
            measured(
                copper(Kind::Bend, Some(Turn::Quarter)),
                Size::Half,
                (0, 56),
                (0, 32),
            ),
            measured(copper(Kind::Valve, None), Size::Half, (1, 8), (0, 32)),
        ],
        warms: Some(60.0),
        ..Ask::default()
    }
}

/// From the shower's trap along the joists, set over past a post, to the sanitary tee in the stack.
fn drain() -> Ask {
    let pvc = |kind, turn| (Family::PvcDrain, kind, turn);
    let stem = leg(Direction::Left, (22, 32), Mark::Centre, Kind::Bend);
    let travel = Leg {
        way: Way::Offset {
            along: Direction::Left,
            to: Direction::Forward,
            angle: Turn::Eighth.angle(),
            set: Length::inches(9),
            over: None,
        },
        by: By::Set,
        ..stem
    };
    let mut last = leg(Direction::Left, (30, 0), Mark::Face, Kind::SanitaryTee);
    last.end = Some(Fitting {
        branch: Some(Side::Before),
        ..Fitting::of(Kind::SanitaryTee)
    });
    let mut tee = measured(pvc(Kind::SanitaryTee, None), Size::Two, (2, 36), (0, 48));
    tee.shape.port = Port::Branch;
    Ask {
        name: "Shower drain to the stack".to_owned(),
        pipe: Pipe::PvcDrain,
        size: Size::Two,
        start: Some(Fitting::of(Kind::Trap)),
        legs: vec![stem, travel, last],
        fittings: vec![
            measured(pvc(Kind::Trap, None), Size::Two, (2, 8), (0, 48)),
            measured(
                pvc(Kind::Bend, Some(Turn::Eighth)),
                Size::Two,
                (2, 16),
                (0, 48),
            ),
            tee,
        ],
        jaw: Some(Length::in_64(1, 40)),
        air: 62.0,
        ..Ask::default()
    }
}
