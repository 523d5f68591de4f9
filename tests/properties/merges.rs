//! Two copies of a job brought together: nothing is lost, and once is enough.

use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::DateTime;
use proptest::prelude::*;
use storyrod::app::demo_job;
use storyrod::measure::quantity::square_feet;
use storyrod::measure::{Length, Money, Units};
use storyrod::photo::Photo;
use storyrod::site::{Id, Room};
use storyrod::takeoff::{
    Ask, EntryKind, HandLine, Job, LineKey, Merge, Merged, Order, PackKey, Saw, Setup, Stamps,
    StepKey, StepNote, StepOf, Task, TileOn, Value, merge,
};
use storyrod::trades::{Material, Work};

/// A copy of a job, with its marks.
#[derive(Clone, Debug)]
struct Copy {
    job: Job,
    stamps: Stamps,
}

impl Copy {
    fn demo() -> Copy {
        let job = demo_job(DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap());
        let mut copy = Copy {
            job,
            stamps: Stamps::default(),
        };
        copy.edit(1, |job| {
            job.buying.by_hand.push(hand_line("Bucket"));
            job.buying.prices.insert(gallon(0), Money::minor(4_250));
            job.add_to_roll("Sill".into(), "88".into(), Length::inches(88));
        });
        copy
    }
    fn edit(&mut self, device: u64, change: impl FnOnce(&mut Job)) {
        let before = self.job.clone();
        change(&mut self.job);
        self.stamps.mark(device, &before, &self.job);
    }
    fn with(&self, theirs: &Copy) -> Merged {
        merge(&self.job, &self.stamps, &theirs.job, &theirs.stamps)
    }
    fn takes(&mut self, theirs: &Copy) -> Vec<Merge> {
        let merged = self.with(theirs);
        (self.job, self.stamps) = (merged.job, merged.stamps);
        merged.report
    }
}

fn hand_line(text: &str) -> HandLine {
    HandLine {
        id: Id::fresh(),
        text: text.into(),
        count: 1,
        price: None,
    }
}

fn paint(n: u8) -> Material {
    Material::Paint {
        label: format!("Paint {n}"),
    }
}

fn gallon(n: u8) -> PackKey {
    PackKey {
        material: paint(n),
        holds: 3_785_412,
    }
}

/// What a person may do to a job, by number: every kind of entry added, changed and removed.
fn act(job: &mut Job, (what, at, n): (u8, usize, u8)) {
    let length = Length::mm(100 + i64::from(n));
    let at_of = |len: usize| (len > 0).then(|| at % len);
    let (room, task, line) = (
        at_of(job.rooms.len()),
        at_of(job.tasks.len()),
        at_of(job.buying.by_hand.len()),
    );
    match (what, room, task, line) {
        (0, ..) => job.add_room(Room::rectangle(&format!("Room {n}"))),
        (1, Some(room), ..) => job.rooms[room].name = format!("Called {n}"),
        (2, Some(room), ..) => job.rooms[room].walls[0].length = Some(length),
        (3, Some(room), ..) => {
            job.rooms.remove(room);
            job.tasks.retain(|task| task.room != Some(room));
            for task in &mut job.tasks {
                task.room = task.room.map(|r| if r > room { r - 1 } else { r });
            }
        }
        (4, room, ..) => job.add_task(room, Ask::Patch(Box::default(), Some(0))),
        (5, _, Some(task), _) => match &mut job.tasks[task].ask {
            Ask::Patch(ask, _) => ask.gap = length,
            Ask::Paint(ask, _) => ask.disturbed = square_feet(f64::from(n)),
            Ask::Tile(ask, _) => ask.joint = length,
            Ask::Grout(ask, _) => ask.width = length,
            Ask::Mortar(ask, _) => ask.waste = f64::from(n) / 200.0,
            Ask::Pipe(ask, _) => ask.stick = length,
            Ask::Drain(ask) => ask.run = length,
            Ask::Sheets(ask, _) => ask.gap = length,
            Ask::Trim(ask, _) => ask.casing = length,
        },
        (6, _, Some(task), _) => job.tasks[task].on_list ^= true,
        (7, _, Some(task), _) => drop(job.tasks.remove(task)),
        (8, ..) => job.buying.by_hand.push(hand_line(&format!("Thing {n}"))),
        (9, _, _, Some(line)) => job.buying.by_hand[line].count = u32::from(n),
        (10, _, _, Some(line)) => drop(job.buying.by_hand.remove(line)),
        (11, ..) => {
            let price = Money::minor(i64::from(n));
            job.buying.prices.insert(gallon(at as u8 % 3), price);
        }
        (12, ..) => {
            let count = u32::from(n);
            job.buying.overrides.insert(gallon(at as u8 % 3), count);
        }
        (13, ..) => {
            let key = LineKey::Material(paint(n % 3));
            if !job.buying.ticked.remove(&key) {
                job.buying.ticked.insert(key);
            }
        }
        (14, ..) => job.name = format!("Job {n}"),
        (15, ..) => job.units = [Units::Metres, Units::Centimetres][at % 2],
        (16, ..) => job.tape.run = Some(length),
        (17, ..) => job.tape.count = u32::from(n),
        (18, ..) => job.add_to_roll(format!("{n}"), n.to_string(), length),
        (19, ..) => job.roll.clear(),
        (20, ..) => job.buying.symbol = format!("{}", n % 3),
        (21, room, ..) => job.add_task(room, Ask::Tile(Box::default(), TileOn::Floor)),
        (22, room, task, _) => {
            let tile = task.map(|task| job.tasks[task].id);
            job.add_task(room, Ask::Grout(Box::default(), tile));
        }
        (23, ..) => job.steps.push(StepNote::own(None, format!("Do {n}"))),
        (24, _, Some(task), _) => {
            let key = StepKey::Figure(job.tasks[task].id, Work::ALL[at], n % 2);
            let when = DateTime::from_timestamp(i64::from(n) * 3600, 0);
            job.tick_step(key, when.filter(|_| n % 3 > 0).map(|w| w.fixed_offset()));
        }
        (25, ..) if !job.steps.is_empty() => {
            let at = at % job.steps.len();
            let key = job.steps[at].key();
            job.rank_step(key, i64::from(n));
        }
        (26, ..) if !job.steps.is_empty() => {
            let at = at % job.steps.len();
            if let StepOf::Own(_, text) = &mut job.steps[at].of {
                *text = format!("Do not {n}");
            }
        }
        (27, ..) if !job.steps.is_empty() => drop(job.steps.remove(at % job.steps.len())),
        _ => {}
    }
}

type Acts = Vec<(u8, usize, u8)>;

fn acts(most: usize) -> impl Strategy<Value = Acts> {
    proptest::collection::vec((0u8..28, 0usize..6, 0u8..200), 0..most)
}

/// One round: what is done to either copy, and which of them then takes the other's.
type Round = (Acts, Acts, u8);

fn rounds() -> impl Strategy<Value = Vec<Round>> {
    proptest::collection::vec((acts(6), acts(6), 0u8..4), 1..4)
}

/// Two copies of one job, each edited on its own device; then, as often as it says, brought together and edited on.
fn two_copies(rounds: &[Round]) -> (Copy, Copy) {
    let base = Copy::demo();
    let (mut a, mut b) = (base.clone(), base);
    for (at, (ours, theirs, who)) in rounds.iter().enumerate() {
        for act_of in ours {
            a.edit(1, |job| act(job, *act_of));
        }
        for act_of in theirs {
            b.edit(2, |job| act(job, *act_of));
        }
        let (old_a, old_b) = (a.clone(), b.clone());
        let last = at + 1 == rounds.len();
        if !last && who & 1 != 0 {
            a.takes(&old_b);
        }
        if !last && who & 2 != 0 {
            b.takes(&old_a);
        }
    }
    (a, b)
}

fn plain(name: &str) -> String {
    name.replace(", their copy", "")
}

fn room_says(room: &Room) -> String {
    let room = Room {
        id: Id::NONE,
        name: plain(&room.name),
        ..room.clone()
    };
    format!("{room:?}")
}

fn line_says(line: &HandLine) -> String {
    format!("{} {} {:?}", plain(&line.text), line.count, line.price)
}

/// What every list of a job says, whatever it is known by.
fn says(job: &Job) -> BTreeSet<String> {
    let mut all: BTreeSet<String> = job.rooms.iter().map(room_says).collect();
    all.extend(job.tasks.iter().map(|task| format!("{:?}", task.ask)));
    all.extend(job.buying.by_hand.iter().map(line_says));
    all.extend(job.buying.ticked.iter().map(|key| format!("{key:?}")));
    all.extend(job.buying.prices.keys().map(|key| format!("price {key:?}")));
    all.extend(
        job.buying
            .overrides
            .keys()
            .map(|key| format!("count {key:?}")),
    );
    all.extend(job.steps.iter().map(|note| match &note.of {
        StepOf::Own(_, text) => plain(text),
        of => format!("{of:?}"),
    }));
    all.extend(
        (job.roll.iter())
            .filter(|line| !line.label.ends_with(", their copy"))
            .map(|line| format!("{line:?}")),
    );
    all
}

/// Whether the other side removed or replaced an entry after all that this side did to it.
fn gave_way(entry: (EntryKind, Id), mine: &Copy, other: &Copy) -> bool {
    mine.stamps.of(entry).against(&other.stamps.of(entry)) == Order::Theirs
}

/// Everything of a copy is in what came out, or the other side had changed it since, or the report names it.
fn nothing_is_lost(mine: &Copy, other: &Copy, out: &Merged, mine_is_ours: bool) {
    let said = says(&out.job);
    let lost = |entry, says: &str| !said.contains(says) && !gave_way(entry, mine, other);
    for room in &mine.job.rooms {
        assert!(
            !lost((EntryKind::Room, room.id), &room_says(room)),
            "{room:?}"
        );
    }
    for task in &mine.job.tasks {
        let says = format!("{:?}", task.ask);
        assert!(!lost((EntryKind::Figure, task.id), &says), "{says}");
    }
    for line in &mine.job.buying.by_hand {
        assert!(
            !lost((EntryKind::HandLine, line.id), &line_says(line)),
            "{line:?}"
        );
    }
    for note in &mine.job.steps {
        // A tick of either side stays one; an own step keeps its words.
        let stays = out.job.steps.iter().any(|kept| {
            (note.done.is_none() || kept.done.is_some())
                && match (&note.of, &kept.of) {
                    (StepOf::Own(_, a), StepOf::Own(_, b)) => plain(a) == plain(b),
                    (a, b) => a == b,
                }
        });
        assert!(
            stays || gave_way((EntryKind::Step, note.id), mine, other),
            "{note:?}"
        );
    }
    for line in &mine.job.roll {
        assert!(out.job.roll.contains(line));
    }
    let named = |value: &dyn Fn(&Value) -> bool| {
        !mine_is_ours && (out.report.iter()).any(|m| matches!(m, Merge::Differs(v) if value(v)))
    };
    if !gave_way((EntryKind::Buying, Id::NONE), mine, other) {
        let (buying, into) = (&mine.job.buying, &out.job.buying);
        assert!(buying.ticked.is_subset(&into.ticked));
        for (key, price) in &buying.prices {
            let named = named(
                &|v| matches!(v, Value::Price { pack, theirs, .. } if pack == key && theirs == price),
            );
            assert!(into.prices.get(key) == Some(price) || named);
        }
        for (key, count) in &buying.overrides {
            let named = named(
                &|v| matches!(v, Value::Count { pack, theirs, .. } if pack == key && theirs == count),
            );
            assert!(into.overrides.get(key) == Some(count) || named);
        }
        let named =
            named(&|v| matches!(v, Value::Symbol { theirs, .. } if *theirs == buying.symbol));
        assert!(into.symbol == buying.symbol || named);
    }
    if !gave_way((EntryKind::Head, Id::NONE), mine, other) {
        let job = &mine.job;
        let name = named(&|v| matches!(v, Value::Name { theirs, .. } if *theirs == job.name));
        assert!(out.job.name == job.name || name);
        let units = named(&|v| matches!(v, Value::Units { theirs, .. } if *theirs == job.units));
        assert!(out.job.units == job.units || units);
    }
    if !gave_way((EntryKind::Tape, Id::NONE), mine, other) && out.job.tape != mine.job.tape {
        let bench = &mine.job.tape;
        assert!(named(
            &|v| matches!(v, Value::Tape { theirs, .. } if **theirs == *bench)
        ));
        let run = bench.run.filter(|_| bench.run != out.job.tape.run);
        let rolled =
            |run| (out.job.roll.iter()).any(|l| l.label == "Run, their copy" && l.length == run);
        assert!(run.is_none_or(rolled));
    }
}

/// Every figure stands in a room that is there, and no two entries have one name.
fn sound(job: &Job) {
    assert!(
        job.tasks
            .iter()
            .all(|t| t.room.is_none_or(|r| r < job.rooms.len()))
    );
    let entries = storyrod::takeoff::entries(job);
    assert_eq!(entries.iter().collect::<BTreeSet<_>>().len(), entries.len());
}

proptest! {
    #[test]
    fn prop_a_copy_of_itself_changes_nothing(rounds in rounds()) {
        let (a, _) = two_copies(&rounds);
        let out = a.with(&a);
        prop_assert_eq!(out.job, a.job);
        prop_assert_eq!(out.stamps, a.stamps);
        prop_assert_eq!(out.report, []);
    }

    #[test]
    fn prop_nothing_of_either_side_is_lost(rounds in rounds()) {
        let (a, b) = two_copies(&rounds);
        let out = a.with(&b);
        sound(&out.job);
        nothing_is_lost(&a, &b, &out, true);
        nothing_is_lost(&b, &a, &out, false);
        prop_assert!(!out.report.is_empty() || out.job == a.job, "nothing changes unsaid");
    }

    #[test]
    fn prop_the_same_again_changes_nothing_more(rounds in rounds()) {
        let (a, b) = two_copies(&rounds);
        let once = a.with(&b);
        let twice = merge(&once.job, &once.stamps, &b.job, &b.stamps);
        prop_assert_eq!(twice.report, []);
        prop_assert_eq!(twice.job, once.job);
        prop_assert_eq!(twice.stamps, once.stamps);
    }

    #[test]
    fn prop_either_order_gives_the_same_entries(rounds in rounds()) {
        let (a, b) = two_copies(&rounds);
        prop_assert_eq!(says(&a.with(&b).job), says(&b.with(&a).job));
    }

    #[test]
    fn prop_handed_back_both_have_the_same(rounds in rounds()) {
        let (a, b) = two_copies(&rounds);
        let out = a.with(&b);
        let out = Copy { job: out.job, stamps: out.stamps };
        let back = b.with(&out);
        prop_assert_eq!(says(&back.job), says(&out.job));
        let settled = |m: &Merge| !matches!(m, Merge::KeptBoth { .. } | Merge::Differs(_) | Merge::ChangedStays { .. });
        prop_assert!(back.report.iter().all(settled), "{:?}", back.report);
    }
}

/// Two copies of the demo job after one edit each.
fn after(ours: impl FnOnce(&mut Job), theirs: impl FnOnce(&mut Job)) -> (Copy, Copy) {
    let (mut a, mut b) = (Copy::demo(), Copy::demo());
    b.clone_from(&a);
    a.edit(1, ours);
    b.edit(2, theirs);
    (a, b)
}

#[test]
fn each_side_has_what_the_other_changed() {
    let (a, b) = after(
        |job| job.rooms[0].name = "Bath".into(),
        |job| {
            job.rooms[1].name = "Guest bath".into();
            job.add_room(Room::rectangle("Closet"));
            job.buying.by_hand.clear();
        },
    );
    let out = a.with(&b);
    let rooms: Vec<_> = out.job.rooms.iter().map(|room| &room.name[..]).collect();
    assert_eq!(rooms, ["Bath", "Guest bath", "Closet"]);
    let said: Vec<String> = out.report.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        [
            "Washroom, upstairs: theirs is newer and is taken",
            "Closet: added",
            "Bucket: they removed it",
        ]
    );
}

#[test]
fn a_room_that_both_changed_stands_twice_each_with_its_figures() {
    let (a, b) = after(
        |job| {
            job.rooms[0].ceiling = Some(Length::mm(2400));
            job.add_task(Some(0), Ask::Patch(Box::default(), Some(1)));
        },
        |job| {
            job.rooms[0].ceiling = Some(Length::mm(2300));
            job.add_task(Some(0), Ask::Patch(Box::default(), Some(2)));
        },
    );
    let out = a.with(&b);
    let rooms: Vec<_> = out.job.rooms.iter().map(|room| &room.name[..]).collect();
    assert_eq!(
        rooms,
        [
            "Washroom, downstairs",
            "Washroom, downstairs, their copy",
            "Washroom, upstairs"
        ]
    );
    let stands = |task: &Task| match &task.ask {
        Ask::Patch(_, wall) => (*wall, task.room),
        _ => (None, task.room),
    };
    // The demo's runs of pipe, its sheets and its trim stand between them.
    let runs = |task: &&Task| !matches!(task.ask, Ask::Pipe(..) | Ask::Sheets(..) | Ask::Trim(..));
    let figures: Vec<_> = out.job.tasks.iter().filter(runs).map(stands).collect();
    assert_eq!(
        figures,
        [
            (Some(5), Some(0)),
            (None, Some(0)),
            (None, Some(0)),
            (None, Some(2)),
            (Some(0), Some(2)),
            (Some(1), Some(0)),
            (Some(2), Some(1)),
        ],
        "the last is theirs, and was figured in the room as they have it"
    );
}

#[test]
fn off_cuts_of_both_sides_are_there_and_a_saw_that_differs_is_named() {
    let stud = Material::Lumber {
        thickness: Length::in_64(1, 32),
        width: Length::in_64(3, 32),
    };
    let setup = |saw, offcuts: &[i64]| Setup {
        saw,
        offcuts: offcuts.iter().map(|n| Length::inches(*n)).collect(),
        ..Setup::usual(&stud)
    };
    let (a, b) = after(
        |job| {
            job.buying
                .cutting
                .insert(stud.clone(), setup(Saw::Hand, &[40, 30]));
        },
        |job| {
            job.buying
                .cutting
                .insert(stud.clone(), setup(Saw::Power, &[30, 50, 30]));
        },
    );
    let out = a.with(&b);
    assert_eq!(
        out.job.buying.cutting[&stud],
        setup(Saw::Hand, &[40, 30, 30, 50])
    );
    let said: Vec<String> = out.report.iter().map(ToString::to_string).collect();
    let saw = "Sticks and saw of the cutting plan: ours stay; the off-cuts of both are there";
    assert!(said.iter().any(|line| line == saw), "{said:?}");
    // Where theirs alone changed, theirs is taken.
    let (a, b) = after(
        |job| job.name = "Cabin".into(),
        |job| {
            job.buying
                .cutting
                .insert(stud.clone(), setup(Saw::Power, &[50]));
        },
    );
    assert_eq!(
        a.with(&b).job.buying.cutting[&stud],
        setup(Saw::Power, &[50])
    );
}

#[test]
fn grout_goes_on_naming_our_tile_where_both_are_kept() {
    let tile = Id::fresh();
    let mut a = Copy::demo();
    a.edit(1, |job| {
        job.add_task(Some(0), Ask::Tile(Box::default(), TileOn::Floor));
        job.tasks.last_mut().unwrap().id = tile;
        job.add_task(Some(0), Ask::Grout(Box::default(), Some(tile)));
    });
    let mut b = a.clone();
    let joint = |job: &mut Job, joint: Length| {
        let task = job.tasks.iter_mut().find(|task| task.id == tile).unwrap();
        let Ask::Tile(ask, _) = &mut task.ask else {
            panic!("{task:?}");
        };
        ask.joint = joint;
    };
    a.edit(1, |job| joint(job, Length::mm(4)));
    b.edit(2, |job| {
        joint(job, Length::mm(6));
        job.add_task(None, Ask::Mortar(Box::default(), Some(tile)));
    });
    let out = a.with(&b);
    let name = |task: &Task| match &task.ask {
        Ask::Tile(ask, _) => Some((ask.joint, (task.id == tile).then_some(tile))),
        Ask::Grout(_, tile) | Ask::Mortar(_, tile) => Some((Length::ZERO, *tile)),
        _ => None,
    };
    let named: Vec<_> = out.job.tasks.iter().filter_map(name).collect();
    assert_eq!(
        named,
        [
            // The demo's own floor, which nobody changed.
            (Length::in_64(0, 8), None),
            (Length::mm(4), Some(tile)),
            (Length::mm(6), None),
            (Length::ZERO, Some(tile)),
            (Length::ZERO, Some(tile)),
        ]
    );
    let said: Vec<_> = out.report.iter().map(Merge::to_string).collect();
    assert!(
        said[0].starts_with("Tile, Washroom, downstairs: both changed it"),
        "{said:?}"
    );
    assert_eq!(said[1], "Mortar: added");
}

#[test]
fn what_one_side_removed_and_the_other_changed_stays() {
    let remove = |job: &mut Job| {
        job.rooms.remove(0);
        job.tasks.clear();
    };
    let change = |job: &mut Job| job.tasks[0].on_list = false;
    for (a, b) in [after(remove, change), after(change, remove)] {
        let out = a.with(&b);
        assert_eq!(out.job.tasks.len(), 1);
        let room = &out.job.rooms[out.job.tasks[0].room.unwrap()];
        assert_eq!(room.name, "Washroom, downstairs", "its room stays with it");
        let stays = |m: &&Merge| matches!(m, Merge::ChangedStays { .. });
        assert_eq!(out.report.iter().filter(stays).count(), 2);
    }
}

#[test]
fn a_single_value_of_theirs_is_named_and_ours_stays() {
    let (a, b) = after(
        |job| {
            job.name = "Cabin".into();
            job.tape.run = Some(Length::feet(9));
            job.buying.prices.insert(gallon(0), Money::minor(1));
        },
        |job| {
            job.name = "Lake house".into();
            job.tape.run = Some(Length::feet(8));
            job.buying.prices.insert(gallon(0), Money::minor(2));
            job.buying.prices.insert(gallon(1), Money::minor(3));
        },
    );
    let out = a.with(&b);
    assert_eq!(out.job.name, "Cabin");
    assert_eq!(out.job.buying.prices[&gallon(0)], Money::minor(1));
    assert_eq!(out.job.buying.prices[&gallon(1)], Money::minor(3));
    let line = out.job.roll.last().unwrap();
    assert_eq!(
        (&line.label[..], line.length),
        ("Run, their copy", Length::feet(8))
    );
    let differ = out.report.iter().filter(|m| matches!(m, Merge::Differs(_)));
    assert_eq!(differ.count(), 3);
    let said = out.report.iter().map(ToString::to_string);
    assert!(said.into_iter().any(|s| s.contains("“Lake house”")));
}

#[test]
fn a_line_of_the_roll_that_one_side_cleared_comes_back() {
    let (a, b) = after(|job| job.roll.clear(), |_| {});
    assert_eq!(a.with(&b).job.roll, b.job.roll);
    assert_eq!(a.with(&b).report, [Merge::Rolled { lines: 1 }]);
    assert_eq!(b.with(&a).report, []);
}

#[test]
fn entries_of_one_name_are_told_apart_before_they_are_brought_together() {
    let (mut a, b) = after(|_| {}, |_| {});
    let id = a.job.rooms[0].id;
    a.job.rooms[1].id = id;
    a.job.roll.push(Arc::clone(&a.job.roll[0]));
    let out = a.with(&b);
    sound(&out.job);
    assert!(
        out.job
            .rooms
            .iter()
            .filter(|r| r.name == "Washroom, upstairs")
            .count()
            >= 1
    );
}

#[test]
fn a_picture_marked_on_both_sides_is_kept_twice_and_its_bytes_once() {
    let mut ours = Copy::demo();
    ours.edit(1, |job| {
        let when = job.begun;
        job.photos
            .push(Arc::new(Photo::new("a.jpg".into(), (4, 3), when)));
    });
    let mut theirs = ours.clone();
    let title =
        |text: &'static str| move |job: &mut Job| job.photo_mut(0).unwrap().title = text.into();
    ours.edit(1, title("Ours"));
    theirs.edit(2, title("Theirs"));
    ours.takes(&theirs);
    let titles: Vec<&str> = ours.job.photos.iter().map(|photo| &*photo.title).collect();
    assert_eq!(titles, ["Ours", "Theirs, their copy"]);
    assert_eq!(ours.job.photos[0].picture, ours.job.photos[1].picture);
    assert_eq!(ours.takes(&theirs), []);
    // What one side took away and the other did not touch goes.
    let mut kept = ours.clone();
    ours.edit(1, |job| job.photos.clear());
    kept.takes(&ours);
    assert!(kept.job.photos.is_empty());
}

#[test]
fn a_step_that_both_ticked_is_ticked_once_at_the_earlier_time() {
    let base = Copy::demo();
    let (mut a, mut b) = (base.clone(), base);
    let key = StepKey::Figure(a.job.tasks[0].id, Work::Coat, 0);
    let at = |hour: i64| {
        let when = DateTime::from_timestamp(hour * 3600, 0).unwrap();
        Some(when.fixed_offset())
    };
    a.edit(1, |job| job.tick_step(key, at(9)));
    b.edit(2, |job| {
        job.tick_step(key, at(7));
        job.rank_step(key, 5);
        job.steps.push(StepNote::own(None, "Order the glass"));
    });
    let report = a.takes(&b);
    assert_eq!(a.job.steps.len(), 2);
    assert_eq!((a.job.steps[0].done, a.job.steps[0].rank), (at(7), Some(5)));
    let said: Vec<String> = report.iter().map(ToString::to_string).collect();
    assert!(
        said.iter().any(|line| line.contains("Step “Compound”")),
        "{said:?}"
    );
    assert!(
        said.iter().any(|line| line.contains("Order the glass")),
        "{said:?}"
    );
    // Handed back, both have the same.
    let copy = a.clone();
    b.takes(&copy);
    assert_eq!(a.job.steps, b.job.steps);
}
