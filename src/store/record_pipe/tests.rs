//! Runs of pipe as records, there and back.

use super::*;

/// A run with something in every field.
fn run() -> Ask {
    let street = Fitting {
        street: Some(Side::After),
        branch: Some(Side::Before),
        turn: Some(Turn::Sixteenth),
        ..Fitting::of(Kind::SanitaryTee)
    };
    let tape = |from, to| By::Tape {
        length: Length::inches(20),
        from,
        to,
    };
    let leg = |way, by| Leg {
        way,
        size: None,
        by,
        couplings: 1,
        end: Some(Fitting::of(Kind::Union)),
    };
    let aside = |over| Way::Offset {
        along: Direction::Up,
        to: Direction::Right,
        angle: Turn::Eighth.angle(),
        set: Length::inches(9),
        over,
    };
    Ask {
        name: "Hot".into(),
        pipe: Pipe::Steel,
        size: Size::OneHalf,
        start: Some(street),
        legs: vec![
            leg(
                Way::Along(Direction::Back),
                tape(Mark::Wall(Length::mm(-3)), Mark::Face),
            ),
            leg(aside(None), By::Set),
            leg(
                aside(Some((Direction::Forward, Length::mm(77)))),
                By::Fitted,
            ),
            Leg {
                size: Some(Size::TwoHalf),
                end: None,
                ..leg(Way::Along(Direction::Down), tape(Mark::Shoulder, Mark::End))
            },
            leg(Way::Along(Direction::Left), By::Rest),
        ],
        closes: Some(Place {
            right: Length::mm(1),
            forward: Length::mm(-2),
            up: Length::mm(3),
        }),
        fittings: vec![Measured {
            shape: Shape {
                family: Family::Cpvc,
                kind: Kind::Reducer,
                turn: None,
                size: Size::One,
                other: Size::Half,
                port: Port::Branch,
            },
            face: Length::in_64(1, 3),
            depth: Some(Length::in_64(0, 33)),
        }],
        tape: Length::in_64(0, 2),
        lines: Some(Lines {
            count: 3,
            apart: Length::inches(4),
            to: Direction::Forward,
        }),
        jaw: Some(Length::inches(2)),
        stick: Length::feet(20),
        air: 51.5,
        damp: true,
        warms: Some(80.0),
        mitre: Turn::Fifth.angle(),
        fitted: vec![2, 5],
    }
}

#[test]
fn a_run_comes_back_as_it_was() {
    let on = PipeOn {
        on: On::Wall(2),
        point: Some(Id(7)),
        spot: Spot {
            from_left: Length::mm(400),
            up: Length::mm(-10),
        },
        below: Length::ZERO,
        depth: Length::mm(140),
        bearing: true,
    };
    for (ask, on) in [(run(), Some(on)), (Ask::default(), None)] {
        let bytes = write(&write_pipe(&ask, on));
        assert_eq!(read(&bytes).and_then(read_pipe), Some((ask, on)));
    }
}

#[test]
fn a_run_under_the_floor_says_so_in_a_part_of_its_own() {
    let on = PipeOn {
        below: Length::mm(90),
        ..PipeOn::at(On::Floor(2))
    };
    assert_eq!(write_lies(Some(PipeOn::wall(2))), None);
    let lies = write_lies(Some(on)).expect("under the floor");
    let mut read = Some(PipeOn::wall(2));
    assert_eq!(read_lies(lies, &mut read), Some(()));
    assert_eq!(read, Some(on));
    assert_eq!(read_lies((2, 0), &mut read), None);
    assert_eq!(read_lies((FLOOR, i64::MAX), &mut read), None);
}

#[test]
fn what_no_run_can_hold_is_refused() {
    let refuse = |change: fn(&mut PipeRecord)| {
        let mut record = write_pipe(&run(), None);
        change(&mut record);
        assert!(read_pipe(record).is_none());
    };
    refuse(|record| record.pipe = 9);
    refuse(|record| record.stick = i64::MAX);
    refuse(|record| record.air = f64::NAN);
    refuse(|record| record.warms = Some(f64::INFINITY));
    refuse(|record| record.mitre = i64::MIN);
    refuse(|record| record.legs[0].size = Some(12));
    refuse(|record| record.fittings[0].shape[5] = 3);
}

#[test]
fn materials_of_pipe_keep_their_number() {
    use crate::store::record_material::{MaterialRecord, material, read_material};
    use crate::trades::Material;
    let all = [
        Material::Pipe {
            pipe: Pipe::AbsDrain,
            size: Size::Three,
            stick: Length::feet(20),
        },
        Material::PipeFitting {
            family: Family::AbsDrain,
            kind: Kind::LongBend,
            turn: Some(Turn::Quarter),
            size: Size::Three,
            other: Size::Two,
            street: true,
        },
        Material::Solder,
        Material::Flux,
        Material::PipeCement {
            family: Family::Cpvc,
        },
        Material::PipePrimer,
        Material::PipeHanger {
            family: Family::Pex,
            size: Size::Half,
        },
    ];
    for (at, one) in all.iter().enumerate() {
        let bytes = write(&material(one));
        assert_eq!(usize::from(bytes[0]), 18 + at);
        let record: MaterialRecord = read(&bytes).expect("reads");
        assert_eq!(read_material(record).as_ref(), Some(one));
    }
}
