//! Trim through the document and through JSON: every choice, what is missing, what is wrong.

use chrono::DateTime;
use storyrod::measure::{Length, Units};
use storyrod::site::Id;
use storyrod::store::json::{from_json, to_json};
use storyrod::store::{Snapshot, create_job, open_job};
use storyrod::takeoff::{Ask, Job, LineKey, Saw, Setup, TrimOn};
use storyrod::trades::Material;
use storyrod::trades::trim::{self, Corner, Frame, Head, Inside, Kind, Listed, Opening};

/// Trim with something in every field.
fn every_field() -> (trim::Ask, TrimOn) {
    let ask = trim::Ask {
        kind: Kind::Casing,
        name: "Stepped, \"old\"".into(),
        thickness: Length::mm(17),
        width: Length::mm(68),
        inside: Inside::Mitred,
        backward: true,
        casing: Length::mm(71),
        reveal: Length::mm(5),
        pieces: vec![
            Listed {
                length: Length::mm(1234),
                count: 3,
                ends: [Corner::Inside, Corner::Outside],
            },
            Listed::default(),
        ],
        head: Head::Butted,
        frames: vec![Frame {
            opening: Opening::Window,
            width: Length::mm(611),
            height: Length::mm(912),
            four: true,
            count: 2,
            on: None,
        }],
        board: Length::mm(12),
        nails: Length::mm(380),
        caulk: None,
        old: true,
        ..trim::Ask::default()
    };
    let on = TrimOn {
        cased: [false, true, true],
        four: false,
        tiled: true,
        stops: vec![(Id(77), false), (Id(78), true)],
    };
    (ask, on)
}

fn every_choice() -> Job {
    let begun = DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new("Trim", begun, Units::Metres);
    job.add_room(storyrod::site::Room::rectangle("a"));
    let (ask, on) = every_field();
    let material = ask.material();
    job.add_task(Some(0), Ask::Trim(Box::new(ask), on));
    job.add_task(None, Ask::Trim(Box::default(), TrimOn::default()));
    let setup = Setup {
        sticks: vec![Length::mm(2400), Length::mm(4200)],
        saw: Saw::Power,
        offcuts: vec![Length::mm(800)],
    };
    job.buying.cutting.insert(material.clone(), setup);
    for material in [
        material,
        Material::FinishNails {
            length: Length::inches(2),
        },
        Material::Caulk,
    ] {
        job.buying.ticked.insert(LineKey::Material(material));
    }
    job
}

#[test]
fn every_choice_comes_back_from_the_disk_and_from_json() {
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

fn read(ask: &str) -> Result<Ask, String> {
    let text = format!(
        r#"{{"storyrod": 1, "name": "Trim", "units": "metres", "figures": [{{"ask": {ask}}}]}}"#
    );
    match from_json(&text) {
        Ok(snapshot) => Ok(snapshot.job.tasks[0].ask.clone()),
        Err(why) => Err(format!("{why:?}")),
    }
}

#[test]
fn what_is_missing_is_as_in_a_new_figure_and_what_is_wrong_is_refused() {
    let new = Ok(Ask::Trim(Box::default(), TrimOn::default()));
    assert_eq!(read(r#"{"trim": {}}"#), new);
    for wrong in [
        r#"{"trim": {"kind": "crown"}}"#,
        r#"{"trim": {"thickness_nm": 99999999999999999}}"#,
        r#"{"trim": {"inside": "glued"}}"#,
        r#"{"trim": {"pieces": [{"length_nm": 1, "count": -2, "left": "square", "right": "square"}]}}"#,
        r#"{"trim": {"pieces": [{"length_nm": 1000000, "count": 1, "left": "round", "right": "square"}]}}"#,
        r#"{"trim": {"frames": [{"opening": "hatch", "width_nm": 1, "height_nm": 1, "count": 1}]}}"#,
    ] {
        let why = read(wrong).unwrap_err();
        assert!(why.contains("trim"), "{why}");
    }
}
