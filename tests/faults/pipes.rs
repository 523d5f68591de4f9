//! Runs of pipe through a job's folder and through JSON, in every choice that there is; and the shelf of fittings.

use std::fs;

use chrono::DateTime;
use storyrod::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use storyrod::measure::{Length, Units};
use storyrod::site::{Id, On, Spot};
use storyrod::store::json::{JsonError, from_json, to_json};
use storyrod::store::{
    OpenError, SaveError, Snapshot, create_job, open_fittings, open_job, save_fittings,
};
use storyrod::takeoff::{Ask, Job, PipeOn};
use storyrod::trades::pipe::{
    self, By, Direction, Fitting, Leg, Lines, Mark, Measured, Place, Port, Shape, Side, Way,
};

fn measured(size: Size) -> Measured {
    Measured {
        shape: Shape {
            family: Family::PvcDrain,
            kind: Kind::SanitaryTee,
            turn: None,
            size,
            other: Size::Two,
            port: Port::Branch,
        },
        face: Length::in_64(2, 36),
        depth: (size != Size::Two).then_some(Length::in_64(0, 48)),
    }
}

fn leg(way: Way, by: By, end: Option<Kind>) -> Leg {
    Leg {
        way,
        size: (by == By::Set).then_some(Size::Three),
        by,
        couplings: u32::from(by == By::Rest),
        end: end.map(Fitting::of),
    }
}

/// A run with something in every field.
fn run() -> pipe::Ask {
    let tape = |from, to| By::Tape {
        length: Length::nm(123_456_789),
        from,
        to,
    };
    let aside = |over| Way::Offset {
        along: Direction::Left,
        to: Direction::Forward,
        angle: Turn::Sixth.angle(),
        set: Length::nm(77_777_777),
        over,
    };
    let to = |direction| Way::Along(direction);
    let mut legs: Vec<Leg> = Kind::ALL
        .into_iter()
        .zip(Direction::ALL.into_iter().cycle())
        .map(|(kind, way)| leg(to(way), tape(Mark::Centre, Mark::Face), Some(kind)))
        .collect();
    legs.extend([
        leg(
            to(Direction::Up),
            tape(Mark::Wall(Length::nm(-9)), Mark::Shoulder),
            None,
        ),
        leg(aside(None), By::Set, Some(Kind::Bend)),
        leg(
            aside(Some((Direction::Up, Length::mm(5)))),
            By::Fitted,
            None,
        ),
        leg(to(Direction::Down), By::Rest, None),
        leg(to(Direction::Down), tape(Mark::End, Mark::End), None),
    ]);
    pipe::Ask {
        name: "Drain, “old”".into(),
        pipe: Pipe::PvcDrain,
        size: Size::Two,
        start: Some(Fitting {
            kind: Kind::Bend,
            street: Some(Side::After),
            branch: Some(Side::Before),
            turn: Some(Turn::Fifth),
        }),
        legs,
        closes: Some(Place {
            right: Length::nm(-1),
            forward: Length::nm(2),
            up: Length::nm(3),
        }),
        fittings: vec![measured(Size::Three), measured(Size::Two)],
        tape: Length::in_64(0, 3),
        lines: Some(Lines {
            count: 3,
            apart: Length::inches(4),
            to: Direction::Back,
        }),
        jaw: Some(Length::inches(2)),
        stick: Length::feet(20),
        air: 41.7,
        damp: true,
        warms: Some(63.1),
        mitre: Turn::Eighth.angle(),
        fitted: vec![1, 4],
    }
}

fn job() -> Job {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut job = Job::new("Pipes", begun, Units::FeetInches { marks: 16 });
    let on = PipeOn {
        on: On::Wall(3),
        point: Some(Id(0xfeed)),
        spot: Spot {
            from_left: Length::nm(1),
            up: Length::nm(-2),
        },
        below: Length::ZERO,
        depth: Length::in_64(5, 32),
        bearing: false,
    };
    job.add_task(None, Ask::Pipe(Box::new(run()), Some(on)));
    let under = PipeOn {
        on: On::Floor(1),
        below: Length::nm(91_000_001),
        ..on
    };
    job.add_task(None, Ask::Pipe(Box::new(run()), Some(under)));
    job.add_task(None, Ask::Pipe(Box::default(), None));
    for pipe in Pipe::ALL {
        let ask = pipe::Ask {
            pipe,
            ..pipe::Ask::default()
        };
        job.add_task(None, Ask::Pipe(Box::new(ask), None));
    }
    job
}

#[test]
fn every_choice_of_a_run_comes_back_from_the_folder() {
    let folder = tempfile::tempdir().unwrap();
    let job = job();
    let path = create_job(folder.path(), &job).unwrap();
    assert_eq!(open_job(&path).unwrap().job.tasks, job.tasks);
}

#[test]
fn every_choice_of_a_run_comes_back_from_json() {
    let job = job();
    let text = to_json(&Snapshot::of(job.clone())).unwrap();
    assert_eq!(from_json(&text).unwrap().job.tasks, job.tasks);
    for part in [
        "\"sanitary-tee\"",
        "\"angle_udeg\": 60000000",
        "\"beyond_nm\": -9",
        "\"size\": \"1/2\"",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
}

#[test]
fn a_run_of_which_all_is_missing_is_a_new_one() {
    let text =
        r#"{"storyrod": 1, "name": "a", "units": "metres", "figures": [{"ask": {"pipe": {}}}]}"#;
    let read = from_json(text).unwrap().job;
    assert_eq!(read.tasks[0].ask, Ask::Pipe(Box::default(), None));
}

#[test]
fn what_no_run_can_be_is_said_with_its_place() {
    let text = to_json(&Snapshot::of(job())).unwrap();
    for (from, to, place) in [
        (
            "\"pipe\": \"pvc-drain\"",
            "\"pipe\": \"lead\"",
            "ask.pipe.pipe",
        ),
        (
            "\"stick_nm\": 6096000000",
            "\"stick_nm\": 10000000000001",
            "stick_nm",
        ),
        ("\"fahrenheit\": 41.7", "\"fahrenheit\": 900", "fahrenheit"),
        (
            "\"warms_fahrenheit\": 63.1",
            "\"warms_fahrenheit\": -1",
            "warms_fahrenheit",
        ),
    ] {
        assert!(text.contains(from), "{from} in\n{text}");
        let wrong = from_json(&text.replacen(from, to, 1)).unwrap_err();
        let JsonError::At { path, .. } = &wrong else {
            panic!("{wrong:?}");
        };
        assert!(
            path.starts_with("figures[0].ask.pipe") && path.contains(place),
            "{path}"
        );
    }
}

#[test]
fn the_shelf_of_fittings_outlasts_its_job_and_is_not_taken_for_another_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("fittings");
    assert_eq!(open_fittings(&path), Ok(Vec::new()), "none yet");
    let first = vec![measured(Size::Three)];
    save_fittings(&path, &first).unwrap();
    let both = vec![measured(Size::Three), measured(Size::Two)];
    save_fittings(&path, &both).unwrap();
    assert_eq!(open_fittings(&path), Ok(both));
    // The version before it is kept.
    assert_eq!(
        open_fittings(&folder.path().join("fittings.previous")),
        Ok(first)
    );
    assert_eq!(
        storyrod::store::open_shelf(&path),
        Err(OpenError::WrongKind)
    );
}

#[test]
fn a_damaged_shelf_of_fittings_is_neither_read_nor_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("fittings");
    save_fittings(&path, &[measured(Size::Three)]).unwrap();
    let whole = fs::read(&path).unwrap();
    for at in 0..whole.len() {
        let mut bytes = whole.clone();
        bytes[at] ^= 1;
        fs::write(&path, &bytes).unwrap();
        assert!(open_fittings(&path).is_err(), "bit {at}");
        let saved = save_fittings(&path, &[]);
        assert!(matches!(saved, Err(SaveError::WouldOverwrite(_))), "{at}");
        assert_eq!(fs::read(&path).unwrap(), bytes);
    }
}
