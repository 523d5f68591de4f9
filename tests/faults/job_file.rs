//! A whole job through its file, and that file damaged in every way that is short enough to try.

use std::fs;

use chrono::DateTime;
use proptest::prelude::*;
use storyrod::app::demo_job;
use storyrod::measure::quantity::{square_feet, square_feet_per_gallon};
use storyrod::measure::{Length, Money, Units};
use storyrod::site::{Id, OpeningRule, Room, Studs};
use storyrod::store::{Kind, open_job, open_shelf, save_job, save_shelf, seal};
use storyrod::takeoff::{Ask, HandLine, Job, LineKey, PackKey, TapeBench, packs_on_sale};
use storyrod::trades::Material;
use storyrod::trades::patch::{Air, HoleShape, Method};
use storyrod::trades::tape::Ends;

/// The demo job with something in every field that a file holds.
fn full_job() -> Job {
    let mut job = demo_job(DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap());
    job.units = Units::Centimetres;
    job.rooms[1].walls[0].studs = Some(Studs::Found {
        centres: vec![Length::mm(400), Length::mm(810)],
        face: Length::mm(38),
    });
    job.rooms[1].walls[1].height = Some(Length::mm(2100));
    job.add_to_roll(
        "Sill".into(),
        "3' 7 5/16\" - 3/4".into(),
        Length::in_64(42, 36),
    );
    job.tape = TapeBench {
        sides: [Some(Length::feet(3)), None],
        diagonals: [None, Some(Length::feet(5))],
        run: Some(Length::feet(9)),
        count: 7,
        width: Some(Length::ZERO),
        ends: Ends::Taken,
        scale: Length::in_64(0, 16),
        on_paper: Some(Length::inches(2)),
        on_site: Some(Length::feet(7)),
    };
    let paint = Material::Paint {
        label: "Wall paint".into(),
    };
    let gallon = PackKey::new(&paint, &packs_on_sale(&paint, false)[1]);
    job.buying
        .prices
        .insert(gallon.clone(), Money::minor(4_250));
    job.buying.overrides.insert(gallon, 2);
    job.buying.ticked.insert(LineKey::Material(paint));
    let bucket = Id::fresh();
    job.buying.ticked.insert(LineKey::ByHand(bucket));
    job.buying.by_hand.push(HandLine {
        id: bucket,
        text: "Bucket".into(),
        count: 3,
        price: Some(Money::minor(499)),
    });
    for task in &mut job.tasks {
        match &mut task.ask {
            Ask::Patch(ask, _) => {
                ask.method = Some(Method::CutBack);
                ask.air = Air {
                    fahrenheit: 62.5,
                    humidity: 71.0,
                };
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
    // On the shelf a room belongs to no job.
    let rooms: Vec<_> = job
        .rooms
        .iter()
        .map(|room| Room {
            id: Id::NONE,
            ..room.clone()
        })
        .collect();
    assert_eq!(open_shelf(&shelf).unwrap(), rooms);
}

#[test]
fn a_job_of_format_1_opens_with_everything_in_it() {
    let files = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files");
    let (old, new) = (open_job(&files.join("job-1.rod")).unwrap(), full_job());
    assert_eq!(old.name, new.name);
    assert_eq!((old.begun, old.units), (new.begun, new.units));
    let nameless = |job: &Job| -> Vec<Room> {
        let nameless = |room: &Room| Room {
            id: Id::NONE,
            ..room.clone()
        };
        job.rooms.iter().map(nameless).collect()
    };
    assert_eq!(nameless(&old), nameless(&new));
    for (old, new) in old.tasks.iter().zip(&new.tasks) {
        assert_eq!((old.room, old.on_list), (new.room, new.on_list));
        let mut asked = new.ask.clone();
        if let Ask::Patch(ask, _) = &mut asked {
            // Format 1 did not know the air.
            ask.air = Air::default();
        }
        assert_eq!(old.ask, asked);
    }
    assert_eq!(old.tasks.len(), new.tasks.len());
    assert_eq!(
        (&old.roll[0].typed, old.roll[0].length),
        (&new.roll[0].typed, new.roll[0].length)
    );
    assert_eq!(old.buying.prices, new.buying.prices);
    assert_eq!(old.buying.by_hand[0].text, "Bucket");
    assert_eq!(
        old.buying.ticked.iter().collect::<Vec<_>>(),
        [&LineKey::ByHand(old.buying.by_hand[0].id)]
    );
    // The names of its entries are the same whenever and wherever it is opened.
    assert_eq!(open_job(&files.join("job-1.rod")).unwrap(), old);
    assert_eq!(open_shelf(&files.join("shelf-1")).unwrap(), nameless(&new));
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
