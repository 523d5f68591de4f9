//! Runs that are wrong, each named by its leg; and what the others give.

use super::*;
use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::measure::{Angle, Length};
use crate::trades::{Material, Weight};

fn leg(way: Direction, inches: i64) -> Leg {
    Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape {
            length: Length::inches(inches),
            from: Mark::Centre,
            to: Mark::Centre,
        },
        couplings: 0,
        end: Some(Fitting::of(Kind::Bend)),
    }
}

fn shape(kind: Kind, turn: Option<Turn>) -> Shape {
    Shape {
        family: Family::Copper,
        kind,
        turn,
        size: Size::Half,
        other: Size::Half,
        port: Port::Run,
    }
}

fn measured(kind: Kind, turn: Option<Turn>) -> Measured {
    Measured {
        shape: shape(kind, turn),
        face: Length::in_64(0, 56),
        depth: None,
    }
}

/// From an elbow up 24, right 36, up 12 to an elbow; elbows of every turn, tees and couplings measured.
fn run() -> Ask {
    let mut fittings: Vec<Measured> = Turn::ALL
        .iter()
        .map(|turn| measured(Kind::Bend, Some(*turn)))
        .collect();
    fittings.push(measured(Kind::Coupling, None));
    fittings.push(measured(Kind::Tee, None));
    Ask {
        start: Some(Fitting::of(Kind::Bend)),
        legs: vec![
            leg(Direction::Up, 24),
            leg(Direction::Right, 36),
            leg(Direction::Up, 12),
        ],
        fittings,
        ..Ask::default()
    }
}

#[track_caller]
fn wrong(change: impl FnOnce(&mut Ask)) -> Problem {
    let mut ask = run();
    change(&mut ask);
    figure(&ask).expect_err("it is wrong")
}

fn end_at(right: i64, forward: i64, up: i64) -> Option<Place> {
    Some(Place::of([right, forward, up].map(Length::inches)))
}

#[test]
fn the_run_itself_is_right() {
    let figure = figure(&run()).expect("right");
    assert_eq!(figure.pieces.len(), 3);
    // Each 3/8 in off at both ends.
    assert_eq!(figure.pieces[1].cut, Length::in_64(35, 16));
    assert_eq!(figure.places[3], end_at(36, 0, 36));
    // Six ends in hubs; the elbow at the start belongs to what stands there.
    assert_eq!(figure.joints, [(Size::Half, 6)]);
    assert_eq!(
        figure.fittings.iter().map(|(_, count)| count).sum::<u32>(),
        3
    );
}

#[test]
fn without_a_leg_there_is_nothing_to_cut() {
    assert_eq!(wrong(|ask| ask.legs.clear()), Problem::NoLegs);
}

#[test]
fn a_run_that_does_not_close_names_the_leg_that_would() {
    let Problem::DoesNotClose {
        leg, is, would_be, ..
    } = wrong(|ask| ask.closes = end_at(38, 0, 36))
    else {
        panic!("it does not close");
    };
    assert_eq!(
        (leg, is, would_be),
        (1, Length::inches(36), Length::inches(38))
    );
    // Nothing of it runs into the wall.
    assert!(matches!(
        wrong(|ask| ask.closes = end_at(36, 5, 36)),
        Problem::CannotClose { .. }
    ));
    // Within what three cuts may be off it is let pass.
    let mut ask = run();
    ask.closes = Some(Place {
        right: Length::in_64(36, 4),
        ..end_at(36, 0, 36).expect("a place")
    });
    let figure = figure(&ask).expect("closes");
    assert_eq!(figure.off.map(|off| off.right), Some(Length::in_64(0, -4)));
}

#[test]
fn what_is_left_needs_an_end_and_one_leg_an_axis() {
    assert_eq!(
        wrong(|ask| ask.legs[1].by = By::Rest),
        Problem::NothingToClose { leg: 1 }
    );
    assert_eq!(
        wrong(|ask| {
            ask.closes = end_at(36, 0, 36);
            ask.legs[0].by = By::Rest;
            ask.legs[2].by = By::Rest;
        }),
        Problem::NothingToClose { leg: 0 }
    );
}

#[test]
fn a_leg_shorter_than_its_fittings_says_what_it_takes() {
    let Problem::TooShort {
        leg,
        is,
        least,
        set,
    } = wrong(|ask| {
        ask.legs[1] = leg(Direction::Right, 1);
    })
    else {
        panic!("too short");
    };
    // Twice 7/8 in, hub against hub.
    assert_eq!((leg, is, set), (1, Length::inches(1), false));
    assert_eq!(least, Length::in_64(1, 48));
    let mut ask = run();
    if let By::Tape { length, .. } = &mut ask.legs[1].by {
        *length = least;
    }
    assert!(figure(&ask).is_ok());
    // The same by asking for it.
    ask.legs[1].by = By::Fitted;
    assert_eq!(figure(&ask).expect("fits").legs[1].span, Some(least));
}

#[test]
fn a_size_changes_at_a_reducer_alone() {
    let change = |ask: &mut Ask| ask.legs[1].size = Some(Size::ThreeQuarters);
    assert_eq!(
        wrong(change),
        Problem::NoReducer {
            leg: 1,
            from: Size::Half,
            to: Size::ThreeQuarters
        }
    );
    // With one it wants measuring: its openings differ.
    let Problem::NotMeasured { leg: 0, shape } = wrong(|ask| {
        change(ask);
        ask.legs[0].end = Some(Fitting::of(Kind::Reducer));
        ask.legs[1].way = Way::Along(Direction::Up);
        ask.legs.truncate(2);
    }) else {
        panic!("not measured");
    };
    assert_eq!((shape.size, shape.other), (Size::Half, Size::ThreeQuarters));
    // A tee whose branch is larger changes it as well.
    assert!(matches!(
        wrong(|ask| {
            change(ask);
            ask.legs[0].end = Some(Fitting::of(Kind::Tee));
        }),
        Problem::NotMeasured {
            shape: Shape {
                port: Port::Run,
                other: Size::ThreeQuarters,
                ..
            },
            ..
        }
    ));
}

#[test]
fn a_size_that_is_not_made_is_named() {
    assert_eq!(
        wrong(|ask| ask.legs[2].size = Some(Size::Four)),
        Problem::NoSuchSize {
            leg: 2,
            pipe: Pipe::CopperL,
            size: Size::Four
        }
    );
}

#[test]
fn an_angle_that_no_fitting_has_is_named_with_the_nearest() {
    let aside = |degrees, to| Way::Offset {
        along: Direction::Up,
        to,
        angle: Angle::degrees(degrees),
        set: Length::inches(10),
        over: None,
    };
    assert_eq!(
        wrong(|ask| ask.legs[1].way = aside(40, Direction::Right)),
        Problem::NoSuchTurn {
            leg: 1,
            angle: Angle::degrees(40),
            nearest: Angle::degrees(45)
        }
    );
    // From 72° off upright to level is 18°, which no fitting makes either.
    let Problem::NoSuchTurn {
        leg: 2, nearest, ..
    } = wrong(|ask| {
        ask.legs[1].way = aside(72, Direction::Right);
        ask.legs[2].way = Way::Along(Direction::Right);
    })
    else {
        panic!("18°");
    };
    assert_eq!(nearest, Turn::Sixteenth.angle());
    assert_eq!(
        wrong(|ask| ask.legs[1].way = aside(45, Direction::Down)),
        Problem::NotAside { leg: 1 }
    );
    assert_eq!(
        wrong(|ask| ask.legs[1].way = Way::Along(Direction::Up)),
        Problem::NoTurn { leg: 1 }
    );
    // Back on itself.
    assert!(matches!(
        wrong(|ask| ask.legs[1].way = Way::Along(Direction::Down)),
        Problem::NoSuchTurn { leg: 1, .. }
    ));
    assert!(matches!(
        wrong(|ask| ask.legs[0].end = Some(Fitting::of(Kind::Coupling))),
        Problem::NoSuchTurn { leg: 1, .. }
    ));
}

#[test]
fn fittings_stand_where_they_can() {
    assert_eq!(
        wrong(|ask| ask.legs[1].end = None),
        Problem::NoFitting { leg: 1 }
    );
    assert_eq!(
        wrong(|ask| ask.legs[1].end = Some(Fitting::of(Kind::Cap))),
        Problem::EndsRun {
            leg: 1,
            kind: Kind::Cap
        }
    );
    assert_eq!(
        wrong(|ask| ask.start = None),
        Problem::WrongMark {
            leg: 0,
            end: Side::Before,
            fitting: false
        }
    );
    let from_wall = |ask: &mut Ask| {
        ask.legs[0].by = By::Tape {
            length: Length::inches(24),
            from: Mark::Wall(Length::inches(3)),
            to: Mark::Centre,
        };
    };
    assert!(matches!(
        wrong(from_wall),
        Problem::WrongMark { fitting: true, .. }
    ));
    let mut ask = run();
    from_wall(&mut ask);
    ask.start = None;
    // 24 less 3/8, and 3 in that stand out of the wall.
    let figure = figure(&ask).expect("right");
    assert_eq!(figure.pieces[0].cut, Length::in_64(26, 40));
}

#[test]
fn a_street_end_takes_no_pipe() {
    let street = |ask: &mut Ask| {
        ask.legs[0].end = Some(Fitting {
            street: Some(Side::After),
            ..Fitting::of(Kind::Bend)
        });
        let mut spigot = measured(Kind::Bend, Some(Turn::Quarter));
        spigot.shape.port = Port::Spigot;
        ask.fittings.push(spigot);
    };
    assert_eq!(
        wrong(street),
        Problem::StreetWithPipe {
            leg: 1,
            by_fittings: Some(Length::in_64(1, 16))
        }
    );
    assert_eq!(
        wrong(|ask| {
            street(ask);
            ask.legs.truncate(2);
            ask.legs[1].by = By::Fitted;
            ask.legs[1].end = None;
        }),
        Problem::NoHub { leg: 1 }
    );
}

#[test]
fn figures_beyond_their_limits_are_named() {
    let field = |change: fn(&mut Ask)| match wrong(change) {
        Problem::Beyond { field, .. } => field,
        other => panic!("{other:?}"),
    };
    assert_eq!(field(|ask| ask.air = f64::NAN), Field::Air);
    assert_eq!(field(|ask| ask.tape = Length::inches(-1)), Field::Tape);
    assert_eq!(field(|ask| ask.jaw = Some(Length::ZERO)), Field::Jaw);
    assert_eq!(field(|ask| ask.stick = Length::ZERO), Field::Stick);
    assert_eq!(field(|ask| ask.warms = Some(-1.0)), Field::Warms);
    assert_eq!(field(|ask| ask.mitre = Angle::degrees(91)), Field::Mitre);
    assert_eq!(
        field(|ask| ask.legs[1] = leg(Direction::Right, 0)),
        Field::Length(1)
    );
    assert_eq!(field(|ask| ask.legs[2].couplings = 99), Field::Couplings(2));
    assert_eq!(
        field(|ask| ask.fittings[0].face = Length::feet(-1)),
        Field::Face(0)
    );
    assert_eq!(
        field(|ask| ask.fittings[1].depth = Some(Length::feet(1))),
        Field::Depth(1)
    );
    assert_eq!(field(|ask| ask.legs = vec![ask.legs[0]; 61]), Field::Legs);
}

#[test]
fn the_end_moves_by_the_tape_along_each_leg() {
    let figure = figure(&run()).expect("right");
    let sixteenth = Length::in_64(0, 4);
    assert_eq!(
        figure.swing.worst,
        Place::of([sixteenth, Length::ZERO, sixteenth * 2])
    );
    // Two cuts upright: the root of two sixteenths squared.
    let likely = figure.swing.likely.up.in_inches();
    assert!((likely - 2f64.sqrt() / 16.0).abs() < 1e-7);
    // Only upright do two cuts add up; the longer one takes up the other's.
    assert_eq!(
        figure.last,
        [Last {
            leg: 0,
            long: sixteenth
        }]
    );
}

#[test]
fn threads_move_it_further() {
    let mut ask = run();
    ask.pipe = Pipe::Steel;
    for own in &mut ask.fittings {
        own.shape.family = Family::Steel;
        own.face = Length::in_64(1, 8);
    }
    let figure = figure(&ask).expect("right");
    // One cut and two threads of two turns each: 1/16 and 2 × 0.143 in.
    assert!((figure.swing.worst.right.in_inches() - (0.0625 + 4.0 / 14.0)).abs() < 1e-6);
    assert_eq!(figure.account.findings[0].weight, Weight::Caution);
}

#[test]
fn nothing_is_joined_before_all_was_fitted() {
    let mut ask = run();
    ask.fitted = vec![1, 3, 99];
    let part = figure(&ask).expect("right");
    assert_eq!((part.dry, part.fits()), ((2, 3), false));
    ask.fitted = vec![1, 2, 3];
    assert!(figure(&ask).expect("right").fits());
    // Dry comes before every step that joins, and the wall is closed last.
    let joins: Vec<bool> = part.order.iter().map(|step| step.joins).collect();
    assert!(joins.is_sorted());
    assert!(part.order[2].does.text.starts_with("Fit all"));
    assert_eq!(
        part.order.last().map(|step| step.does.text),
        Some("Only then close the wall.")
    );
}

#[test]
fn what_can_hurt_goes_by_the_material() {
    let dangers = |pipe| {
        let mut ask = run();
        ask.pipe = pipe;
        ask.size = Size::Two;
        for own in &mut ask.fittings {
            own.shape.family = Pipe::family(pipe);
            (own.shape.size, own.shape.other) = (Size::Two, Size::Two);
            own.depth = Some(Length::in_64(0, 32));
        }
        let figure = figure(&ask).expect("right");
        figure
            .account
            .cautions
            .iter()
            .map(|caution| caution.danger)
            .collect::<Vec<_>>()
    };
    assert_eq!(dangers(Pipe::CopperL), ["Fire", "Lead", "Scalds", "Burrs"]);
    assert_eq!(
        dangers(Pipe::PvcDrain),
        ["Solvent vapour", "Sewer gas", "Bursting pipe", "Burrs"]
    );
}

#[test]
fn everything_it_takes_is_listed() {
    let figure = figure(&run()).expect("right");
    let needs = &figure.account.needs;
    let pieces = needs
        .iter()
        .filter(|need| matches!(need.material, Material::Pipe { .. }));
    assert_eq!(pieces.count(), 3);
    for material in [Material::Solder, Material::Flux] {
        assert!(needs.iter().any(|need| need.material == material));
    }
    // 24 and 12 in up, 36 in level: one at the start and one for each leg.
    assert_eq!(figure.hangers, Some(4));
}

#[test]
fn a_pipe_beyond_the_jaw_is_marked_and_sawn() {
    let mut ask = run();
    let told = |ask: &Ask| {
        let figure = figure(ask).expect("right");
        let found = figure.account.findings.iter();
        found
            .filter(|finding| finding.says.text.contains("cutter"))
            .count()
    };
    assert_eq!(told(&ask), 0);
    ask.jaw = Some(Length::in_64(0, 40));
    assert_eq!(told(&ask), 0, "5/8 in goes in");
    ask.jaw = Some(Length::in_64(0, 39));
    assert_eq!(told(&ask), 1);
}

/// 11 ft 2 in out of sticks of 10 ft: refused with its leg, until the sticks are longer or a coupling parts it.
#[test]
fn a_piece_longer_than_its_sticks_names_its_leg() {
    let long = |ask: &mut Ask| {
        ask.legs[2].by = By::Tape {
            length: Length::inches(134),
            from: Mark::Shoulder,
            to: Mark::Shoulder,
        };
    };
    let problem = wrong(long);
    assert_eq!(
        problem,
        Problem::LongerThanStick {
            leg: 2,
            size: Size::Half,
            is: Length::inches(134),
            stick: Length::feet(10),
            couplings: 1,
        }
    );
    let mut ask = run();
    long(&mut ask);
    ask.legs[2].couplings = 1;
    assert_eq!(figure(&ask).expect("two pieces").pieces.len(), 4);
    ask.legs[2].couplings = 0;
    ask.stick = Length::feet(20);
    assert_eq!(figure(&ask).expect("one piece").pieces.len(), 3);
    // 40 ft take three couplings, and a line beside it that is longer counts as well.
    let Problem::LongerThanStick { couplings, .. } = wrong(|ask| {
        ask.legs[2].by = By::Tape {
            length: Length::feet(40),
            from: Mark::Shoulder,
            to: Mark::Shoulder,
        };
    }) else {
        panic!("it is longer");
    };
    assert_eq!(couplings, 3);
    let beside = wrong(|ask| {
        ask.legs[0].by = By::Tape {
            length: Length::inches(119),
            from: Mark::Centre,
            to: Mark::Centre,
        };
        ask.lines = Some(Lines {
            count: 2,
            apart: Length::inches(3),
            to: Direction::Left,
        });
    });
    assert!(
        matches!(beside, Problem::LongerThanStick { leg: 0, .. }),
        "{beside:?}"
    );
}
