use crate::app::{
    App, Choice, Command, CutChoice, Here, Keeper, Slot, TrimChoice, TrimSlot, demo_job,
};
use crate::measure::{Length, Units};
use crate::site::{Finish, Fixture, FixtureKind, Opening, OpeningKind, Room, Size, What};
use crate::takeoff::{Ask, Job};
use crate::trades::trim::{Cut, Kind, Of};

fn demo() -> (App, usize) {
    let begun = chrono::DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let job = demo_job(begun);
    let at = (job.tasks.iter())
        .position(|task| matches!(task.ask, Ask::Trim(..)))
        .unwrap();
    (App::new(job, Keeper::nowhere()), at)
}

/// An empty job with a room of 96 by 60 in and a door.
fn washroom() -> App {
    let begun = chrono::DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
    let mut room = Room::rectangle("Washroom");
    for (wall, inches) in [(0, 96), (1, 60)] {
        room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
    }
    room.openings.push(Opening {
        kind: OpeningKind::Door,
        wall: 0,
        from_left: Some(Length::inches(12)),
        width: Some(Length::inches(30)),
        height: Some(Length::inches(80)),
        sill: Some(Length::ZERO),
        hinge: None,
    });
    job.add_room(room);
    App::new(job, Keeper::nowhere())
}

fn long(app: &App, at: usize) -> Vec<f64> {
    let figure = app.trim_figure(at).unwrap();
    figure
        .pieces
        .iter()
        .map(|piece| piece.long().in_inches())
        .collect()
}

fn set(app: &mut App, at: usize, choice: TrimChoice) {
    app.send(Command::Set(at, Choice::Trim(choice)));
}

/// Walls of 88, 50, 34, 12 1/2, 54 and 62 1/2 in, a door from 12 to 42 in in the fifth with 2 7/16 in beside it: 9 9/16 in
/// on both sides of it, and half an inch more on both sides of the corner that juts in.
#[test]
fn the_demo_has_base_from_one_side_of_its_door_to_the_other() {
    let (app, at) = demo();
    assert_eq!(
        long(&app, at),
        [9.5625, 62.5, 88.0, 50.0, 34.5, 13.0, 9.5625]
    );
    assert_eq!(app.trim_answer(at), "7 pieces");
}

#[test]
fn a_mirrored_room_has_the_same_pieces_by_the_other_hand() {
    let (mut app, at) = demo();
    let before = app.trim_figure(at).unwrap();
    app.job.mirror_room(0);
    let after = app.trim_figure(at).unwrap();
    assert_eq!(before.pieces.len(), after.pieces.len());
    for (one, other) in before.pieces.iter().zip(&after.pieces) {
        let (a, b) = (one.ends, other.ends);
        assert_eq!((one.long(), a[0], a[1]), (other.long(), b[1], b[0]));
    }
    // A second washroom like it walks as the mirror does.
    let second = app.job.second_room(0, true).unwrap();
    let task = app
        .job
        .tasks
        .iter()
        .rposition(|task| task.room == Some(second));
    let all: Vec<usize> = (0..app.job.tasks.len())
        .filter(|at| app.job.tasks[*at].room == Some(second))
        .filter(|at| matches!(app.job.tasks[*at].ask, Ask::Trim(..)))
        .collect();
    assert!(task.is_some() && all.len() == 1);
    assert_eq!(app.trim_figure(all[0]).unwrap().pieces, before.pieces);
}

/// From an empty job to the store: base on the list, its pieces in the cutting plan, its sticks bought by length.
#[test]
fn base_goes_to_the_cutting_plan_and_the_buying_list() {
    let mut app = washroom();
    app.send(Command::NewTrim(Some(0), Kind::Base));
    assert_eq!(app.here(), &Here::Task(0));
    // Reveal 3/16 and casing 2 1/4 in: 96 − 42 − 2 7/16, round the room, 12 − 2 7/16.
    assert_eq!(long(&app, 0), [51.5625, 60.0, 96.0, 60.0, 9.5625]);
    app.send(Command::OnList(0, true));
    let pieces = app.pieces();
    assert_eq!(pieces.len(), 5);
    let line = |app: &App| {
        let lines = app.buying_lines().into_iter();
        let sticks: Vec<_> = lines
            .filter(|line| line.title.starts_with("Base,"))
            .collect();
        assert_eq!(sticks.len(), 1);
        let packs = sticks[0].packs.iter();
        packs
            .map(|(pack, count)| (pack.holds.clone(), *count))
            .collect::<Vec<_>>()
    };
    // 96; 60; 60; 51 9/16 and 9 9/16: four sticks of 8 ft, for two of 60 or more go in none.
    assert_eq!(line(&app), [(Length::feet(8).into(), 4)]);
    // With 12 ft beside them: 96 in 8 ft, 60 + 60 and the rest out of 12 ft.
    let material = pieces[0].material.clone();
    app.send(Command::Cut(
        material.clone(),
        CutChoice::Stick(Length::feet(12)),
    ));
    let with_long = line(&app);
    assert!(
        with_long.iter().map(|(_, count)| count).sum::<u32>() < 4,
        "{with_long:?}"
    );
    // Called by another name it keeps its sticks.
    app.send(Command::Pad(Slot::Trim(0, TrimSlot::Name)));
    app.pad.as_mut().unwrap().typed = "Beaded".to_owned();
    app.take();
    let renamed = app.pieces()[0].material.clone();
    assert_ne!(renamed, material);
    assert!(app.setup(&renamed).sticks.contains(&Length::feet(12)));
    assert!(!app.job.buying.cutting.contains_key(&material));
}

/// A tub across the far end covers parts of three walls; where it is told to run on, base does.
#[test]
fn base_stops_at_a_tub_unless_it_runs_on() {
    let mut app = washroom();
    let mut tub = Fixture::new(FixtureKind::Tub, 1);
    tub.from_left = Some(Length::inches(30));
    tub.width = Some(Length::inches(60));
    tub.depth = Some(Length::inches(30));
    let id = tub.id;
    app.job.rooms[0].fixtures.push(tub);
    app.send(Command::NewTrim(Some(0), Kind::Base));
    // From the door to the tub 96 − 30 − 44 7/16; from the tub on 66, then as before.
    assert_eq!(long(&app, 0), [21.5625, 66.0, 60.0, 9.5625]);
    set(&mut app, 0, TrimChoice::Stops(id, false));
    assert_eq!(long(&app, 0), [51.5625, 60.0, 96.0, 60.0, 9.5625]);
    let toilet = Fixture {
        kind: FixtureKind::Toilet,
        ..app.job.rooms[0].fixtures[0].clone()
    };
    app.job.rooms[0].fixtures[0] = toilet;
    set(&mut app, 0, TrimChoice::Stops(id, true));
    assert_eq!(long(&app, 0).len(), 4);
}

/// An opening that is not measured is asked for where it is; casing leaves out what is not to be cased.
#[test]
fn what_is_not_measured_is_named_and_casing_follows_the_openings() {
    let mut app = washroom();
    app.send(Command::NewTrim(Some(0), Kind::Casing));
    // Legs 80 + 3/16 + 2 1/4, head 30 + 2 × (3/16 + 2 1/4).
    assert_eq!(long(&app, 0), [82.4375, 34.875, 82.4375]);
    app.send(Command::AddOpening(0, 2, OpeningKind::Window));
    let (text, there) = app.trim_ask(0).unwrap().unwrap_err();
    assert!(text.contains("wall C"), "{text}");
    assert_eq!(there, Here::Wall(0, 2));
    app.send(Command::Go(Here::Task(0)));
    assert!(format!("{:?}", app.screen()).contains("Measure it"));
    set(&mut app, 0, TrimChoice::Cased(1, false));
    assert_eq!(long(&app, 0).len(), 3);
    // A door that nobody measured stops base, so that is said too.
    set(&mut app, 0, TrimChoice::Kind(Kind::Base));
    app.job.rooms[0].openings[0].from_left = None;
    assert!(app.trim_ask(0).unwrap().is_err());
}

/// Each piece is a row of the packet, with its two cuts in words.
#[test]
fn the_packet_has_every_piece_with_its_cuts() {
    let (mut app, at) = demo();
    let name = format!("figure-{}-pieces.csv", at + 1);
    let files = app.packet().unwrap();
    let (_, bytes) = files.iter().find(|(file, _)| *file == name).unwrap();
    let text = String::from_utf8_lossy(bytes);
    assert_eq!(text.lines().count(), 9, "{text}");
    assert!(text.contains("short point at the wall"), "{text}");
    let svg = format!("figure-{}.svg", at + 1);
    assert!(files.iter().any(|(file, _)| *file == svg));
    let figure = app.trim_figure(at).unwrap();
    assert!(matches!(figure.pieces[0].of, Of::Wall(4, ..)));
    assert_eq!(figure.pieces[0].ends[1].cut, Cut::Square);
}

/// A tub of which the width is an estimate moves the base that stops at it: the gate marks it, and no other figure.
#[test]
fn an_estimated_tub_marks_the_base_that_stops_at_it() {
    let mut app = washroom();
    let mut tub = Fixture::new(FixtureKind::Tub, 1);
    tub.from_left = Some(Length::inches(30));
    tub.width = Some(Length::inches(60));
    tub.depth = Some(Length::inches(30));
    app.job.rooms[0].fixtures.push(tub);
    let depth = What::Fixture(0, Size::Depth);
    app.job.rooms[0].measure(depth, Some(Length::inches(30)), Some(Length::inches(1)));
    app.send(Command::NewTrim(Some(0), Kind::Base));
    app.send(Command::NewTrim(Some(0), Kind::Casing));
    assert!(
        app.task_name(0).contains("estimated"),
        "{}",
        app.task_name(0)
    );
    assert_eq!(app.task_name(1), app.bare_name(1));
    app.send(Command::Go(Here::Task(0)));
    assert!(format!("{:?}", app.screen().strip).contains("estimated"));
}

/// Casing that is there already tells base how wide it is; a tiled wall gets no base until it is told to.
#[test]
fn base_knows_the_casing_of_its_room_and_leaves_tiled_walls() {
    let mut app = washroom();
    app.send(Command::NewTrim(Some(0), Kind::Casing));
    if let Ask::Trim(ask, _) = &mut app.job.tasks[0].ask {
        ask.width = Length::inches(3);
    }
    app.job.rooms[0].walls[2].finish = Finish::Tile;
    app.send(Command::NewTrim(Some(0), Kind::Base));
    // 3 3/16 in beside the door; no base on the third wall, and square ends beside it.
    assert_eq!(long(&app, 1), [50.8125, 60.0, 60.0, 8.8125]);
    set(&mut app, 1, TrimChoice::Tiled(true));
    assert_eq!(long(&app, 1).len(), 5);
}
