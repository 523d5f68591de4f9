//! Grout and mortar through a job's folder and through JSON, in every choice that there is.

use chrono::DateTime;
use storyrod::measure::quantity::{
    cubic_feet, gallons, litres, pounds, pounds_per_cubic_foot, square_feet, square_metres,
};
use storyrod::measure::{Length, Units};
use storyrod::site::Id;
use storyrod::store::json::{JsonError, from_json, to_json};
use storyrod::store::{SaveError, Snapshot, create_job, open_job, save_job};
use storyrod::takeoff::{Ask, Job};
use storyrod::trades::Grout;
use storyrod::trades::grout::{self, JointOf, Meeting, Seam};
use storyrod::trades::mortar::{
    self, Batch, Bed, Drain, Fall, Mix, Notch, NotchShape, Parts, Place, Setting, Shrink, Under,
    Wall, Work,
};

fn seam(at: Meeting) -> Seam {
    Seam {
        at,
        length: Length::feet(9),
        width: Length::in_64(0, 16),
        depth: Length::in_64(0, 17),
    }
}

/// Grout with something in every field.
pub fn grout() -> grout::Ask {
    grout::Ask {
        area: square_feet(33.3),
        joints: JointOf::Area(square_feet(2.1)),
        width: Length::in_64(0, 12),
        depth: Length::in_64(0, 20),
        kind: Some(Grout::HeavySand),
        scratches: true,
        color: "Bone, “warm”".into(),
        label: grout::Label {
            bag: Some(pounds(25.0)),
            covers: Some(square_feet(110.0)),
            density: Some(pounds_per_cubic_foot(101.0)),
            water: Some((litres(1.9), litres(2.3))),
            slake: Some((5.5, 10.0)),
            pot_life: Some(1.7),
            wait: Some(36.0),
        },
        waste: 0.13,
        seams: vec![
            seam(Meeting::PlaneChange),
            seam(Meeting::Perimeter),
            seam(Meeting::Movement),
        ],
    }
}

fn mortar(work: Work) -> mortar::Ask {
    mortar::Ask {
        work,
        waste: 0.17,
        batch: Batch {
            bucket: gallons(3.3),
            fill: 0.55,
            pace: square_feet(17.0),
        },
        old_floor: true,
    }
}

/// Tile set, with something in every field.
pub fn setting() -> mortar::Ask {
    mortar(Work::Setting(Setting {
        area: square_feet(21.7),
        under: Under::Tile {
            a: Length::inches(13),
            b: Length::inches(7),
        },
        notch: Notch {
            shape: NotchShape::U,
            width: Length::in_64(0, 48),
            depth: Length::in_64(0, 36),
            land: Length::in_64(0, 30),
        },
        place: Place::Wet,
        stone: true,
        large_tile: true,
        back_butter: Some(Length::in_64(0, 4)),
        label: mortar::Label {
            bag: pounds(44.1),
            covers: Some(square_feet(51.0)),
            makes: Some(cubic_feet(0.47)),
            water: Some((litres(5.7), litres(6.1))),
            slake: Some((7.0, 11.0)),
            pot_life: Some(2.9),
        },
    }))
}

fn site() -> Parts {
    Parts {
        cement: 1.1,
        lime: 0.3,
        sand: 4.7,
        by: Shrink::Own(1.23),
        cement_weighs: Some(pounds_per_cubic_foot(93.0)),
        water: Some(0.61),
    }
}

/// A bed that is mixed on site, with something in every field.
pub fn bed() -> mortar::Ask {
    let bed = Bed {
        across: Length::inches(34),
        up: Length::inches(61),
        at_drain: Length::in_64(1, 11),
        drain: Drain::At(Length::inches(11), Length::inches(23)),
        fall: Fall::OnShortest(0.021),
    };
    mortar(Work::Bed(bed, Mix::Site(site())))
}

/// A bare volume out of bags, with something in every field.
pub fn volume() -> mortar::Ask {
    let bags = Mix::Bags {
        bag: pounds(59.9),
        makes: cubic_feet(0.45),
        water: Some((litres(3.1), litres(3.7))),
    };
    mortar(Work::Volume(cubic_feet(2.7), bags))
}

/// Every choice at least once.
fn every_choice() -> Vec<Ask> {
    let tile = Some(Id(0x1234_5678_9abc_def0));
    let mut all = vec![
        Ask::Grout(Box::default(), None),
        Ask::Mortar(Box::default(), None),
        Ask::Mortar(Box::new(setting()), tile),
        Ask::Mortar(Box::new(volume()), None),
    ];
    let (side, flats) = (Length::mm(97), Length::mm(53));
    for (joints, kind) in [
        (JointOf::Grid { a: side, b: flats }, Grout::Unsanded),
        (JointOf::Hexagon { flats }, Grout::Sanded),
        (JointOf::Area(square_metres(0.1)), Grout::HeavySand),
    ] {
        let ask = grout::Ask {
            joints,
            kind: Some(kind),
            ..grout()
        };
        all.push(Ask::Grout(Box::new(ask), tile));
    }
    for shape in [NotchShape::Square, NotchShape::U, NotchShape::V] {
        let mut set = Setting {
            under: Under::Board,
            ..Setting::default()
        };
        set.notch.shape = shape;
        all.push(Ask::Mortar(Box::new(mortar(Work::Setting(set))), None));
    }
    let rise = Fall::Rise(Length::mm(19));
    for (drain, fall, by) in [
        (Drain::None, rise, Shrink::Rule38),
        (Drain::Centre, Fall::OnLongest(0.02), Shrink::Dry133),
        (
            Drain::At(side, flats),
            Fall::OnShortest(0.03),
            Shrink::DryLoose,
        ),
        (Drain::Along(Wall::Left), rise, Shrink::SandFills),
        (Drain::Along(Wall::Right), rise, Shrink::Own(1.3)),
        (Drain::Along(Wall::Near), rise, Shrink::Rule38),
        (Drain::Along(Wall::Far), rise, Shrink::Rule38),
    ] {
        let bed = Bed {
            drain,
            fall,
            ..Bed::default()
        };
        let mix = Mix::Site(Parts { by, ..site() });
        all.push(Ask::Mortar(Box::new(mortar(Work::Bed(bed, mix))), None));
    }
    all
}

fn job_of(asks: impl IntoIterator<Item = Ask>) -> Job {
    let mut job = Job::new("Mixes", DateTime::UNIX_EPOCH.fixed_offset(), Units::Metres);
    for ask in asks {
        job.add_task(None, ask);
    }
    job
}

#[test]
fn every_choice_comes_back_as_it_was() {
    let job = job_of(every_choice());
    let folder = tempfile::tempdir().unwrap();
    let path = create_job(folder.path(), &job).unwrap();
    assert_eq!(open_job(&path).unwrap().job.tasks, job.tasks);
    let text = to_json(&Snapshot::of(job.clone())).unwrap();
    assert_eq!(from_json(&text).unwrap().job.tasks, job.tasks);
}

#[test]
fn quantities_come_back_bit_for_bit() {
    for n in 1..400u32 {
        let n = f64::from(n) * 0.37;
        let mut ask = grout();
        ask.area = square_feet(n);
        ask.label.bag = Some(pounds(n));
        ask.label.density = Some(pounds_per_cubic_foot(n));
        ask.label.water = Some((gallons(n), litres(n)));
        let asked = Ask::Grout(Box::new(ask), None);
        let text = to_json(&Snapshot::of(job_of([asked.clone()]))).unwrap();
        assert_eq!(from_json(&text).unwrap().job.tasks[0].ask, asked);
    }
}

#[test]
fn what_is_less_than_nothing_or_no_number_is_not_written() {
    let folder = tempfile::tempdir().unwrap();
    let path = create_job(folder.path(), &job_of([])).unwrap();
    let right = open_job(&path).unwrap();
    for wrong in [f64::NAN, f64::INFINITY, -0.1] {
        let mut asks = vec![setting(), bed(), volume()];
        asks[0].waste = wrong;
        asks[1].batch.fill = wrong;
        asks[2].work = Work::Volume(cubic_feet(wrong), Mix::bags());
        for ask in asks {
            let mut job = (*right.job).clone();
            job.add_task(None, Ask::Mortar(Box::new(ask), None));
            assert_eq!(save_job(&path, &job), Err(SaveError::WouldNotOpen));
        }
        let mut ask = grout();
        ask.label.slake = Some((1.0, wrong));
        let mut job = (*right.job).clone();
        job.add_task(None, Ask::Grout(Box::new(ask), None));
        assert_eq!(save_job(&path, &job), Err(SaveError::WouldNotOpen));
    }
    assert_eq!(open_job(&path), Ok(right));
}

#[test]
fn what_is_missing_in_json_is_as_in_a_new_figure() {
    let read = |ask: &str| {
        let text = format!(
            r#"{{"storyrod": 1, "name": "Mixes", "units": "metres", "figures": [{{"ask": {ask}}}]}}"#
        );
        from_json(&text).map(|found| found.job.tasks[0].ask.clone())
    };
    let new = |work: Work| {
        let ask = mortar::Ask {
            work,
            ..mortar::Ask::default()
        };
        Ok(Ask::Mortar(Box::new(ask), None))
    };
    let tile = Some(Id(0xa1));
    for (ask, found) in [
        (r#"{"grout": {}}"#, Ok(Ask::Grout(Box::default(), None))),
        (
            r#"{"grout": {"tile_figure": "a1", "label": {}}}"#,
            Ok(Ask::Grout(Box::default(), tile)),
        ),
        (r#"{"mortar": {}}"#, Ok(Ask::Mortar(Box::default(), None))),
        (
            r#"{"mortar": {"work": {"setting": {"label": {}}}}}"#,
            new(Work::Setting(Setting::default())),
        ),
        (
            r#"{"mortar": {"work": {"bed": {}}}}"#,
            new(Work::Bed(Bed::default(), Mix::bags())),
        ),
    ] {
        assert_eq!(read(ask), found, "{ask}");
    }
    for (ask, path) in [
        (
            r#"{"grout": {"label": {"bag_kg": -1}}}"#,
            "figures[0].ask.grout.label.bag_kg",
        ),
        (
            r#"{"grout": {"kind": "gravel"}}"#,
            "figures[0].ask.grout.kind",
        ),
        (
            r#"{"mortar": {"bucket_m3": -0.5}}"#,
            "figures[0].ask.mortar.bucket_m3",
        ),
    ] {
        let Err(JsonError::At { path: at, .. }) = read(ask) else {
            panic!("{ask}");
        };
        assert_eq!(at, path);
    }
}
