//! A whole job through its file, and that file damaged in every way that is short enough to try.

use std::fs;

use chrono::DateTime;
use proptest::prelude::*;
use storyrod::app::demo_job;
use storyrod::measure::quantity::{square_feet, square_feet_per_gallon};
use storyrod::measure::{Length, Money, Units};
use storyrod::site::{OpeningRule, Studs};
use storyrod::store::{Kind, open_job, open_shelf, save_job, save_shelf, seal};
use storyrod::takeoff::{Ask, HandLine, Job, LineKey, PackKey, RollLine};
use storyrod::trades::Material;
use storyrod::trades::patch::{HoleShape, Method};

/// The demo job with something in every field that a file holds.
fn full_job() -> Job {
    let mut job = demo_job(DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap());
    job.units = Units::Centimetres;
    job.rooms[1].walls[0].studs = Some(Studs::Found {
        centres: vec![Length::mm(400), Length::mm(810)],
        face: Length::mm(38),
    });
    job.rooms[1].walls[1].height = Some(Length::mm(2100));
    job.roll.push(RollLine {
        label: "Sill".into(),
        typed: "3' 7 5/16\" - 3/4".into(),
        length: Length::in_64(42, 36),
    });
    let paint = Material::Paint {
        label: "Wall paint".into(),
    };
    job.buying.prices.insert(
        PackKey {
            material: paint.clone(),
            pack: 1,
        },
        Money::minor(4_250),
    );
    job.buying.overrides.insert(LineKey::Material(paint), 2);
    job.buying.ticked.insert(LineKey::ByHand(7));
    job.buying.by_hand.push(HandLine {
        id: 7,
        text: "Bucket".into(),
    });
    for task in &mut job.tasks {
        match &mut task.ask {
            Ask::Patch(ask, _) => {
                ask.method = Some(Method::CutBack);
                let mut other = ask.hole.clone();
                other.shape = HoleShape::Round {
                    across: Length::inches(3),
                };
                other.from_stud = Some((1, -Length::inches(2)));
                ask.other_holes.push(other);
            }
            Ask::Paint(ask, rule) => {
                ask.finish.label_rate = Some(square_feet_per_gallon(350.0));
                ask.finish.volume_solids = Some(0.38);
                ask.level = Some(4);
                ask.patched.push(square_feet(2.5));
                *rule = OpeningRule::SmallNotDeducted(square_feet(100.0));
            }
        }
    }
    job
}

#[test]
fn a_job_with_everything_comes_back_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let (path, job) = (folder.path().join("a.rod"), full_job());
    save_job(&path, &job).unwrap();
    assert_eq!(open_job(&path).unwrap(), job);
    let shelf = folder.path().join("shelf");
    save_shelf(&shelf, &job.rooms).unwrap();
    assert_eq!(open_shelf(&shelf).unwrap(), job.rooms);
}

#[test]
fn every_cut_and_every_flipped_bit_of_a_job_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.rod");
    save_job(&path, &full_job()).unwrap();
    let whole = fs::read(&path).unwrap();
    let hurt = folder.path().join("hurt.rod");
    for length in 0..whole.len() {
        fs::write(&hurt, &whole[..length]).unwrap();
        assert!(open_job(&hurt).is_err(), "cut at {length}");
    }
    for bit in 0..whole.len() * 8 {
        let mut bytes = whole.clone();
        bytes[bit / 8] ^= 1 << (bit % 8);
        fs::write(&hurt, &bytes).unwrap();
        assert!(open_job(&hurt).is_err(), "bit {bit}");
        if bit % 997 == 0 {
            assert!(save_job(&hurt, &full_job()).is_err());
            assert_eq!(
                fs::read(&hurt).unwrap(),
                bytes,
                "a damaged file is left as it is"
            );
        }
    }
}

#[test]
fn a_missing_disk_is_said_and_nothing_is_left_over() {
    let folder = tempfile::tempdir().unwrap();
    assert!(save_job(&folder.path().join("gone/a.rod"), &full_job()).is_err());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

proptest! {
    #[test]
    fn prop_any_body_behind_a_good_header_is_read_or_refused(body in proptest::collection::vec(any::<u8>(), 0..400)) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.rod");
        fs::write(&path, seal(Kind::Job, &body)).unwrap();
        if let Ok(job) = open_job(&path) {
            // What is read can be saved and read again.
            let copy = folder.path().join("b.rod");
            save_job(&copy, &job).unwrap();
            prop_assert_eq!(open_job(&copy).unwrap(), job);
        }
    }
}
