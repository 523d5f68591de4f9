//! Drains and the cutting plan through the document and through JSON: every choice, what is missing, what is wrong.

use chrono::DateTime;
use storyrod::measure::{Length, Units};
use storyrod::store::json::{JsonError, from_json, to_json};
use storyrod::store::{Snapshot, create_job, open_job};
use storyrod::takeoff::{Ask, Job, Saw, Setup};
use storyrod::trades::Material;
use storyrod::trades::drain::{self, Arm, Code, Flange, Size, Through};

/// A drain with something in every field.
pub fn drain() -> drain::Ask {
    drain::Ask {
        code: Code::Upc,
        eighth_approved: true,
        size: Size::Three,
        fall: Some(Length::in_64(0, 12)),
        run: Length::mm(3_210),
        start: Some(-Length::mm(17)),
        through: Through::Studs {
            first: Length::mm(101),
            spacing: Length::mm(399),
            depth: Length::mm(141),
            across: Some(Length::mm(61)),
            bearing: false,
            doubled: true,
        },
        hole: Some(Length::mm(95)),
        arm: Some(Arm {
            size: Size::OneAndQuarter,
            length: Length::mm(707),
        }),
        fixtures: [1, 2, 3, 4, 5],
        flange: Some(Flange {
            rough_in: Length::mm(303),
            to_come: Length::mm(19),
        }),
    }
}

pub fn stud() -> Material {
    Material::Lumber {
        thickness: Length::in_64(1, 32),
        width: Length::in_64(3, 32),
    }
}

/// Something in every field of a cutting plan.
pub fn setup() -> Setup {
    Setup {
        sticks: vec![Length::mm(2_400), Length::mm(3_600)],
        saw: Saw::Own(Length::mm(2)),
        offcuts: vec![Length::mm(700), Length::mm(1_100), Length::mm(700)],
    }
}

fn every_choice() -> Job {
    let begun = DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new("Drains", begun, Units::Metres);
    let mut asks = vec![drain(), drain::Ask::default()];
    for size in Size::ALL {
        asks.push(drain::Ask { size, ..drain() });
    }
    for code in [Code::Unknown, Code::Irc, Code::Ipc, Code::Upc] {
        asks.push(drain::Ask { code, ..drain() });
    }
    for engineered in [false, true] {
        let through = Through::Joists {
            first: Length::mm(1),
            spacing: Length::mm(500),
            depth: Length::mm(235),
            engineered,
        };
        asks.push(drain::Ask { through, ..drain() });
    }
    asks.push(drain::Ask {
        through: Through::Open,
        ..drain()
    });
    for ask in asks {
        job.add_task(None, Ask::Drain(Box::new(ask)));
    }
    let saws = [Saw::Cutter, Saw::Hand, Saw::Power, Saw::Own(Length::mm(2))];
    for (n, saw) in saws.into_iter().enumerate() {
        let material = Material::Lumber {
            thickness: Length::mm(n as i64 + 1),
            width: Length::mm(90),
        };
        job.buying
            .cutting
            .insert(material, Setup { saw, ..setup() });
    }
    job.buying
        .ticked
        .insert(storyrod::takeoff::LineKey::Material(Material::ShieldPlate));
    job
}

#[test]
fn every_choice_comes_back_as_it_was() {
    let job = every_choice();
    let folder = tempfile::tempdir().unwrap();
    let path = create_job(folder.path(), &job).unwrap();
    let opened = open_job(&path).unwrap();
    assert_eq!(
        (&opened.job.tasks, &opened.job.buying),
        (&job.tasks, &job.buying)
    );
    let text = to_json(&Snapshot::of(job.clone())).unwrap();
    let read = from_json(&text).unwrap();
    assert_eq!(
        (&read.job.tasks, &read.job.buying),
        (&job.tasks, &job.buying)
    );
}

#[test]
fn what_is_missing_in_json_is_as_in_a_new_figure_and_a_wall_is_taken_to_bear() {
    let read = |ask: &str| {
        let text = format!(
            r#"{{"storyrod": 1, "name": "Drains", "units": "metres", "figures": [{{"ask": {ask}}}]}}"#
        );
        from_json(&text).map(|found| found.job.tasks[0].ask.clone())
    };
    let new = Ok(Ask::Drain(Box::default()));
    assert_eq!(read(r#"{"drain": {}}"#), new);
    let studs =
        r#"{"drain": {"through": {"studs": {"first_nm": 0, "spacing_nm": 1, "depth_nm": 2}}}}"#;
    let Ok(Ask::Drain(ask)) = read(studs) else {
        panic!("{studs}");
    };
    assert!(matches!(
        ask.through,
        Through::Studs {
            bearing: true,
            doubled: false,
            ..
        }
    ));
    for (ask, path) in [
        (r#"{"drain": {"size": "7"}}"#, "figures[0].ask.drain.size"),
        (
            r#"{"drain": {"code": "none"}}"#,
            "figures[0].ask.drain.code",
        ),
        (
            r#"{"drain": {"run_nm": 99999999999999}}"#,
            "figures[0].ask.drain.run_nm",
        ),
    ] {
        let Err(JsonError::At { path: at, .. }) = read(ask) else {
            panic!("{ask}");
        };
        assert_eq!(at, path);
    }
}
