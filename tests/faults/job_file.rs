//! A whole job through its folder, and its document damaged in every way that is short enough to try.

use std::fs;
use std::path::Path;
use std::sync::Arc;

use chrono::DateTime;
use proptest::prelude::*;
use storyrod::app::demo_job;
use storyrod::geometry::{Point, Polygon, Region};
use storyrod::measure::quantity::{square_feet, square_feet_per_gallon};
use storyrod::measure::{Angle, Length, Money, Units};
use storyrod::photo::{self, Anchor, Behind, Flat, KnownBy, Object, Photo, Sides, Stage, Taped};
use storyrod::site::{
    FixedKind, FixedPoint, Fixture, FixtureKind, Hidden, HiddenKind, Hinge, Id, Known, On,
    OpeningRule, Passed, Room, Side, Spot, Studs, What,
};
use storyrod::store::document::{self, Part};
use storyrod::store::json::from_json;
use storyrod::store::pictures::name_for;
use storyrod::store::{
    Kind, OpenError, SaveError, Snapshot, Writer, check_job, create_job, jobs_in, open_job,
    open_shelf, open_to_write, recover_job, salvage_job, save_job, save_shelf, seal, versions_of,
};
use storyrod::takeoff::{
    Ask, Batch, HandLine, Job, Left, LineKey, PackKey, Stamps, StepNote, TapeBench, Task, TileOn,
    Traced, packs_on_sale,
};
use storyrod::trades::patch::{Air, HoleShape, Method};
use storyrod::trades::tape::Ends;
use storyrod::trades::tile;
use storyrod::trades::{Material, Work, mortar};

use super::{drains, mixes};

/// Something in every field of a tile layout.
fn fill_tile(ask: &mut tile::Ask) {
    ask.surface = Region::rectangle(Length::feet(7), Length::feet(4));
    ask.surface.holes.push(Polygon {
        points: [(10, 10), (20, 10), (20, 20)]
            .map(|(x, y)| Point::new(Length::inches(x), Length::inches(y)))
            .to_vec(),
    });
    ask.on = tile::Surface::Wall;
    ask.things = vec![
        tile::Thing {
            shape: tile::ThingShape::Round {
                across: Length::inches(7),
            },
            from_left: Length::inches(30),
            from_top: Length::ZERO,
        },
        tile::Thing {
            shape: tile::ThingShape::Rectangle {
                width: Length::inches(9),
                height: Length::inches(11),
            },
            from_left: Length::ZERO,
            from_top: Length::inches(2),
        },
    ];
    ask.tile.spread = Some(Length::in_64(0, 2));
    ask.tile.warp = Some(Length::in_64(0, 1));
    ask.tile.edge = tile::Edge::Calibrated;
    ask.pattern = tile::Pattern::Planks {
        seed: 9,
        apart: Length::inches(3),
    };
    ask.turn = Angle::degrees(-45);
    ask.start = tile::Start::ByHand(Point::new(Length::mm(-5), Length::mm(3)));
    ask.grain = true;
    ask.hold = Some(tile::Hold::JointFromTop(Length::inches(17)));
    ask.reuse = false;
    ask.box_of = Some(tile::BoxOf::Laid(square_feet(10.5)));
    ask.breakage = 0.07;
    ask.attic = 4;
    ask.run = tile::Run::SunOrWet;
    ask.sheet = Some(tile::Sheet { along: 11, rows: 9 });
}

/// The demo job with something in every field that a file holds.
pub fn full_job() -> Job {
    let mut job = demo_job(DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap());
    job.units = Units::Centimetres;
    job.add_task(Some(1), Ask::Tile(Box::default(), TileOn::Floor));
    let tile = job.tasks.last().map(|task| task.id);
    if let Some(tile) = tile {
        let traced = Traced {
            photo: Id::fresh(),
            mark: 3,
            give: Length::mm(7),
        };
        job.traced.insert(tile, traced);
    }
    job.add_task(Some(1), Ask::Grout(Box::new(mixes::grout()), tile));
    job.add_task(Some(1), Ask::Mortar(Box::new(mixes::setting()), tile));
    job.add_task(None, Ask::Mortar(Box::new(mixes::bed()), None));
    job.add_task(None, Ask::Mortar(Box::new(mixes::volume()), None));
    job.add_task(Some(0), Ask::Drain(Box::new(drains::drain())));
    job.buying.cutting.insert(drains::stud(), drains::setup());
    let left = Left {
        part: 1.75,
        sticks: vec![Length::mm(610), Length::mm(610)],
        pieces: vec![((Length::mm(305), Length::mm(120)), 4)],
    };
    let room = job.rooms[1].id;
    job.buying.left.insert((drains::stud(), room), left);
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
    job.batch = Some(Batch {
        mixed: job.begun,
        rest: 7.5,
        good: 120.0,
    });
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
            Ask::Tile(ask, on) => {
                *on = TileOn::Wall(2);
                fill_tile(ask);
            }
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
            // Filled where they are added.
            Ask::Grout(..)
            | Ask::Mortar(..)
            | Ask::Pipe(..)
            | Ask::Drain(..)
            | Ask::Sheets(..)
            | Ask::Trim(..) => {}
        }
    }
    job
}

/// Something fixed, something hidden and a door that hangs; format 1 knew none of these.
fn fix(room: &mut Room) {
    let inches = |n| Some(Length::inches(n));
    room.fixed.push(FixedPoint {
        from_left: inches(20),
        up: inches(22),
        depth: Some(Length::ZERO),
        note: "Behind the basin".into(),
        ..FixedPoint::new(FixedKind::Cold, On::Wall(1))
    });
    room.fixed.push(FixedPoint {
        known: Known::Picture(Length::mm(9)),
        ..FixedPoint::new(FixedKind::Drain, On::Floor(2))
    });
    room.hidden.push(Hidden {
        line: [(30, 0), (30, 40), (52, 40)]
            .map(|(left, up)| Spot {
                from_left: Length::inches(left),
                up: Length::inches(up),
            })
            .to_vec(),
        depth: inches(2),
        material: "Copper".into(),
        picture: Some("0".repeat(64)),
        ..Hidden::new(HiddenKind::Pipe, On::Wall(0))
    });
    let mut tub = Fixture::new(FixtureKind::Tub, 0);
    (tub.width, tub.from_left) = (inches(60), inches(30));
    room.fixtures.push(tub);
    room.measure(What::Diagonal(0, 2), inches(110), None);
    room.measure(What::Diagonal(0, 2), inches(112), inches(1));
    room.measure(What::Lean(1, Side::Right), Some(Length::mm(-4)), None);
    room.pass(What::Level(0), Passed::NotThere);
    room.facing = 3;
    for opening in &mut room.openings {
        opening.hinge = Some(Hinge {
            side: Side::Right,
            out: true,
        });
    }
}

/// A picture with everything marked on it.
fn full_photo(room: Id) -> Photo {
    let when = DateTime::parse_from_rfc3339("2026-03-14T15:09:26-05:00").unwrap();
    let mut photo = Photo::new(name_for(b"a", "jpg"), (4032, 3024), when);
    let taped = Taped {
        length: Length::inches(16),
        give: Length::in_64(0, 8),
    };
    photo.stripped = name_for(b"c", "jpg");
    photo.focal_35 = Some(26.0);
    (photo.located, photo.place_shared) = (true, true);
    (photo.room, photo.wall, photo.stage) = (Some(room), Some(1), Some(Stage::Stripped));
    photo.title = "Before closing up".into();
    photo.note = "Hot left".into();
    photo.before = Some(Id(77));
    let points = |n: u8| {
        (0..n)
            .map(|n| [f64::from(n) * 100.5, 7.25])
            .collect::<Vec<_>>()
    };
    let angle = (Angle::degrees(90), Angle::microdegrees(500_000));
    let behind = Behind {
        depth: Some(taped),
        width: Some(Length::mm(22)),
        material: "Copper".into(),
        at: Some([Length::inches(30), Length::inches(40)]),
        pinned: Some(Id(5)),
        ..Behind::new(HiddenKind::Pipe)
    };
    for (what, n) in [
        (photo::What::Dimension(Some(taped)), 2),
        (photo::What::Dimension(None), 2),
        (photo::What::Angle(Some(angle)), 3),
        (photo::What::Angle(None), 3),
        (photo::What::Area(Some((1.5, 0.01))), 4),
        (photo::What::Area(None), 3),
        (photo::What::Level, 2),
        (photo::What::Arrow, 2),
        (photo::What::Note, 1),
        (photo::What::Freehand, 9),
        (photo::What::Hidden(Box::new(behind)), 2),
    ] {
        let number = photo.add_mark(what, points(n));
        photo.mark_mut(number).unwrap().note = format!("Mark {number}");
    }
    photo.flat = Some(Flat {
        corners: [[0.5, 0.5], [9.0, 0.0], [9.0, 9.0], [-1.0, 9.0]],
        object: Object::Board,
        width: Some(taped),
        height: None,
        sides: Sides {
            by: KnownBy::Diagonal,
            right: Some(taped),
            lower: None,
            diagonal: Some(taped),
        },
        edges: vec![points(3), points(5)],
    });
    photo.anchor = Some(Anchor {
        spot: [3.0, 4.0],
        from_left: Some(Length::inches(3)),
        up: None,
    });
    photo.laid = true;
    photo
}

/// The job with two steps back and one forward, and marks of who changed what.
pub fn full_snapshot() -> Snapshot {
    let mut job = full_job();
    fix(&mut job.rooms[1]);
    let room = job.rooms[1].id;
    job.photos = [
        full_photo(room),
        Photo::new(name_for(b"b", "png"), (4, 3), job.begun),
    ]
    .map(Arc::new)
    .to_vec();
    job.steps = vec![
        StepNote {
            done: Some(job.begun),
            ..StepNote::figure(job.tasks[0].id, Work::Coat, 1)
        },
        StepNote {
            rank: Some(-5),
            ..StepNote::own(Some(room), "Order the glass")
        },
    ];
    let mut before = job.clone();
    before.steps.pop();
    before.rooms.swap(0, 1);
    before.tasks.pop();
    before.roll.clear();
    let mut first = before.clone();
    first.rooms.remove(0);
    first.tasks.clear();
    first.name = "Nothing yet".into();
    let mut after = job.clone();
    after.add_to_roll("Wall A".into(), "88".into(), Length::inches(88));
    after.rooms[0].ceiling = None;
    let mut stamps = Stamps::default();
    stamps.mark(7, &first, &before);
    stamps.mark(9, &before, &job);
    Snapshot {
        job: Arc::new(job),
        done: vec![Arc::new(first), Arc::new(before)],
        undone: vec![Arc::new(after)],
        stamps: Arc::new(stamps),
    }
}

pub fn keep(path: &Path, snapshot: &Snapshot) {
    let now = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    Writer::new_at(path).keep(snapshot, now).unwrap();
}

#[test]
fn a_job_with_everything_comes_back_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let (path, full) = (folder.path().join("a.site"), full_snapshot());
    keep(&path, &full);
    assert_eq!(open_job(&path).unwrap(), full);
    let shelf = folder.path().join("shelf");
    save_shelf(&shelf, &full.job.rooms).unwrap();
    // On the shelf a room belongs to no job.
    let rooms: Vec<_> = full
        .job
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
fn edit_after_edit_is_written_as_if_written_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.site");
    let now = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut writer = Writer::new_at(&path);
    let mut snapshot = full_snapshot();
    for n in 0..300 {
        let mut job = (*snapshot.job).clone();
        job.add_to_roll(format!("{n}"), n.to_string(), Length::mm(n));
        if n % 5 == 0 {
            job.name = format!("Cabin {n}");
        }
        snapshot.done.push(Arc::clone(&snapshot.job));
        if n % 7 == 0 {
            snapshot.undone.clear();
        }
        if snapshot.done.len() > 200 {
            snapshot.done.remove(0);
        }
        snapshot.job = Arc::new(job);
        writer.keep(&snapshot, now).unwrap();
    }
    drop(writer);
    assert_eq!(open_job(&path).unwrap(), snapshot);
    assert_eq!(versions_of(&path).len(), 20, "thinned to the newest twenty");
}

#[test]
fn a_job_of_format_1_opens_with_everything_in_it() {
    let files = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files");
    let opened = open_job(&files.join("job-1.rod")).unwrap();
    let (old, new) = ((*opened.job).clone(), full_job());
    assert_eq!(old.name, new.name);
    assert_eq!((old.begun, old.units), (new.begun, new.units));
    let nameless = |job: &Job| -> Vec<Room> {
        // Format 1 knew nothing of what is fixed, nor of joists.
        let nameless = |room: &Room| Room {
            id: Id::NONE,
            fixed: Vec::new(),
            joists: None,
            ..room.clone()
        };
        job.rooms.iter().map(nameless).collect()
    };
    assert!(old.rooms.iter().all(|room| room.fixed.is_empty()));
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
    // Format 1 knew no tile, no grout and no mortar.
    assert_eq!(old.tasks.len(), 2);
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
    assert_eq!(open_job(&files.join("job-1.rod")).unwrap(), opened);
    assert_eq!(open_shelf(&files.join("shelf-1")).unwrap(), nameless(&new));
}

/// `tests/files/job-2.site` and `job-2.json` were written on 2026-11-26 from one job, before fixed points, what is
/// behind a wall and the trades after mortar were known.
#[test]
fn a_job_of_format_2_as_it_was_first_written_opens_with_everything_in_it() {
    let files = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files");
    let opened = open_job(&files.join("job-2.site")).unwrap();
    let told = from_json(&fs::read_to_string(files.join("job-2.json")).unwrap()).unwrap();
    assert_eq!((&opened.job, &opened.stamps), (&told.job, &told.stamps));
    assert_eq!((opened.done.len(), opened.undone.len()), (2, 1));
    assert_eq!(opened.done[0].name, "Nothing yet");
    assert_eq!(opened.undone[0].roll[1].length, Length::inches(88));
    let job = &opened.job;
    assert_eq!((job.rooms.len(), job.tasks.len()), (2, 8));
    assert_eq!(job.rooms[0].walls[0].length, Some(Length::inches(88)));
    assert_eq!(job.buying.by_hand[0].price, Some(Money::minor(499)));
    let is_bed = |task: &Task| matches!(&task.ask, Ask::Mortar(ask, None) if matches!(ask.work, mortar::Work::Bed(..)));
    assert_eq!(job.tasks.iter().filter(|task| is_bed(task)).count(), 1);
}

#[test]
fn a_job_of_format_1_becomes_a_folder_with_its_first_edit_and_stays_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let old = folder.path().join("cabin.rod");
    let files = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files");
    let bytes = fs::read(files.join("job-1.rod")).unwrap();
    fs::write(&old, &bytes).unwrap();
    let (mut snapshot, writer) = open_to_write(&old).unwrap();
    assert_eq!(
        fs::read_dir(folder.path()).unwrap().count(),
        1,
        "opening writes nothing"
    );
    let mut writer = writer.unwrap();
    Arc::make_mut(&mut snapshot.job).name = "Cabin, edited".into();
    writer.keep(&snapshot, snapshot.job.begun).unwrap();
    assert_eq!(fs::read(&old).unwrap(), bytes);
    let now = folder.path().join("cabin.site");
    assert_eq!(open_job(&now).unwrap(), snapshot);
    assert_eq!(jobs_in(folder.path()), [now]);
}

/// The names of everything that a job holds.
fn entries_of(snapshot: &Snapshot) -> Vec<String> {
    let job = &snapshot.job;
    let mut all = vec![format!("{} {:?}", job.name, job.units)];
    all.extend(job.rooms.iter().map(|room| format!("{room:?}")));
    all.extend(job.tasks.iter().map(|task| format!("{:?}", task.ask)));
    all.extend(job.roll.iter().map(|line| format!("{line:?}")));
    all.push(format!("{:?}", job.buying));
    all.push(format!("{:?}", job.tape));
    all
}

#[test]
fn every_flipped_bit_is_found_and_costs_one_entry_at_most() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.site");
    let full = full_snapshot();
    keep(&path, &full);
    let document = path.join("job");
    let whole = fs::read(&document).unwrap();
    let entries = entries_of(&full);
    // Every seventh bit: over the whole document that meets every byte.
    for bit in (0..whole.len() * 8).step_by(7) {
        let mut bytes = whole.clone();
        bytes[bit / 8] ^= 1 << (bit % 8);
        fs::write(&document, &bytes).unwrap();
        assert!(open_job(&path).is_err(), "bit {bit}");
        let found = entries_of(&salvage_job(&path).unwrap().snapshot);
        let lost: Vec<_> = entries.iter().filter(|e| !found.contains(e)).collect();
        assert!(lost.len() <= 1, "bit {bit} cost {lost:?}");
        if bit % 700 == 0 {
            assert!(save_job(&path, &full.job).is_err());
            assert_eq!(
                fs::read(&document).unwrap(),
                bytes,
                "a damaged file is left as it is"
            );
        }
    }
}

#[test]
fn every_cut_is_found_and_what_stands_before_it_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.site");
    let full = full_snapshot();
    keep(&path, &full);
    let document = path.join("job");
    let whole = fs::read(&document).unwrap();
    let mut most = 0;
    for length in 0..whole.len() {
        fs::write(&document, &whole[..length]).unwrap();
        assert!(open_job(&path).is_err(), "cut at {length}");
        let found = salvage_job(&path).map_or(0, |found| found.whole);
        assert!(found >= most, "a later cut saves no less");
        most = found;
    }
    assert!(most >= 8, "{most}");
}

#[test]
fn what_is_damaged_is_taken_from_an_earlier_version() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.site");
    let mut snapshot = full_snapshot();
    let now = snapshot.job.begun;
    let mut writer = Writer::new_at(&path);
    writer.keep(&snapshot, now).unwrap();
    Arc::make_mut(&mut snapshot.job).name = "Edited since".into();
    writer.keep(&snapshot, now).unwrap();
    drop(writer);
    let document = path.join("job");
    let mut bytes = fs::read(&document).unwrap();
    // The second part is a room: its body is hit.
    bytes[32 + 32 + 90 + 40] ^= 0x40;
    fs::write(&document, &bytes).unwrap();
    let check = check_job(&path).unwrap();
    assert_eq!(check.fault, Some(OpenError::Damaged));
    assert_eq!(check.lost.len(), 1, "{check:?}");
    assert_eq!(check.versions, (1, 1));
    let out = folder.path().join("saved.site");
    let recovered = recover_job(&path, &out).unwrap();
    assert_eq!(
        (recovered.earlier, recovered.lost.len()),
        (1, 0),
        "{recovered:?}"
    );
    let saved = open_job(&out).unwrap();
    let mut rooms: Vec<_> = saved.job.rooms.iter().map(|room| &room.name).collect();
    rooms.sort();
    assert_eq!(rooms.len(), 2);
    assert_eq!(saved.job.name, "Edited since");
    let stand_in = |snapshot: &Snapshot| -> Vec<Option<Id>> {
        let job = &snapshot.job;
        let room = |task: &Task| task.room.map(|room| job.rooms[room].id);
        job.tasks.iter().map(room).collect()
    };
    assert_eq!(
        stand_in(&saved),
        stand_in(&snapshot),
        "figures stand in their rooms"
    );
    assert_eq!(
        fs::read(&document).unwrap(),
        bytes,
        "the damaged one is left as it is"
    );
}

#[test]
fn a_missing_disk_is_said_and_nothing_is_left_over() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a-file");
    fs::write(&file, b"x").unwrap();
    assert!(save_job(&file.join("a.site"), &full_job()).is_err());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn what_would_not_open_again_is_not_written() {
    let folder = tempfile::tempdir().unwrap();
    let path = create_job(folder.path(), &full_job()).unwrap();
    let right = open_job(&path).unwrap();
    let mut wrong = (*right.job).clone();
    wrong.rooms[0].ceiling = Some(Length::LONGEST * 2);
    assert_eq!(save_job(&path, &wrong), Err(SaveError::WouldNotOpen));
    assert_eq!(open_job(&path), Ok(right));
}

#[test]
fn a_file_that_is_no_job_is_never_overwritten() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.site");
    fs::create_dir(&path).unwrap();
    for bytes in [
        &b"someone's notes"[..],
        b"\x89ROD\r\n\x1a\n\x09\0",
        &[0; 300],
    ] {
        fs::write(path.join("job"), bytes).unwrap();
        assert!(save_job(&path, &full_job()).is_err());
        assert_eq!(fs::read(path.join("job")).unwrap(), bytes);
    }
}

proptest! {
    #[test]
    fn prop_any_bodies_behind_good_checksums_are_read_or_refused(
        bodies in proptest::collection::vec((0u16..12, 0u64..3, proptest::collection::vec(any::<u8>(), 0..200)), 0..6)
    ) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.site");
        fs::create_dir(&path).unwrap();
        let parts: Vec<Part> = bodies.into_iter().map(|(kind, id, body)| Part { kind, id, body }).collect();
        fs::write(path.join("job"), document::write(Kind::Job, &parts).unwrap()).unwrap();
        let opened = open_job(&path);
        let salvaged = salvage_job(&path);
        for read in opened.into_iter().chain(salvaged.map(|found| found.snapshot)) {
            // What is read can be saved and read again.
            let copy = folder.path().join("b.site");
            let _ = fs::remove_dir_all(&copy);
            keep(&copy, &read);
            prop_assert_eq!(&open_job(&copy).unwrap().job, &read.job);
        }
    }

    #[test]
    fn prop_any_file_is_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.site");
        fs::create_dir(&path).unwrap();
        fs::write(path.join("job"), &bytes).unwrap();
        prop_assert!(open_job(&path).is_err());
        let _ = salvage_job(&path);
        let _ = check_job(&path);
        let body = seal(Kind::Job, &bytes);
        fs::write(path.join("job"), body).unwrap();
        let _ = open_job(&path);
    }
}
