//! The order of work on the real screens: ticked, waited for, written by hand, at every size.

use chrono::{DateTime, Local};
use storyrod::app::{App, Command, Here, Keeper, demo_job};
use storyrod::site::{FixedKind, HiddenKind, On};
use storyrod::takeoff::{Ask, State, StepKey, TileOn};
use storyrod::trades::Work;

use crate::harness::{desk, keys, labels, shot, tap};

const PHONE: (u32, u32) = (412, 892);
const SIZES: [(&str, (u32, u32)); 4] = [
    ("phone", PHONE),
    ("tablet", (1180, 820)),
    ("upright", (820, 1180)),
    ("desktop", (1440, 900)),
];

/// The demo job with grout for its tile, set this morning.
fn under_way() -> App {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut job = demo_job(begun);
    let tile = job
        .tasks
        .iter()
        .find(|task| matches!(task.ask, Ask::Tile(_, TileOn::Floor)))
        .map(|task| task.id)
        .unwrap();
    job.add_task(Some(0), Ask::Grout(Box::default(), Some(tile)));
    let now = Local::now().fixed_offset();
    for work in [Work::Chalk, Work::SetTile] {
        job.tick_step(StepKey::Figure(tile, work, 0), Some(now));
    }
    App::new(job, Keeper::nowhere())
}

#[test]
fn steps_are_drawn_at_every_size() {
    for (name, size) in SIZES {
        let window = desk(under_way(), size);
        window.act(|app| app.send(Command::Go(Here::Steps)));
        assert!(shot(&window, &format!("steps-under-way-{name}")).2 > 20);
        let waits = window.with_app(|app| {
            let all = app.steps_at(Local::now().fixed_offset());
            let waits = all.iter().find(|s| matches!(s.state, State::Waits { .. }));
            waits.map(|step| step.key).expect("grout waits")
        });
        window.act(|app| app.send(Command::Go(Here::Step(waits))));
        assert!(shot(&window, &format!("steps-waits-{name}")).2 > 20);
        let said = labels(&window).join(" ");
        assert!(said.contains("After ") && said.contains("48 h"), "{said}");
    }
}

/// What is next is ticked by its button, an own step is written with the keyboard, ticked on its box and taken back.
#[test]
fn a_step_is_ticked_and_one_is_written_by_hand() {
    let window = desk(under_way(), PHONE);
    tap(&window, "Steps");
    let left = |label: &str| labels(&window).iter().any(|l| l.contains(label));
    assert!(left("Shut off"));
    tap(&window, "Done");
    window.with_app(|app| assert_eq!(app.job.steps.len(), 3));
    tap(&window, "Write a step of your own");
    keys(&window, "Order the glass");
    shot(&window, "steps-words");
    tap(&window, "OK");
    tap(&window, "Order the glass");
    window.with_app(|app| {
        let own = app.job.steps.last().unwrap();
        assert_eq!(own.key(), StepKey::Own(own.id));
        assert!(own.done.is_some());
    });
    shot(&window, "steps-ticked");
    tap(&window, "Undo");
    window.with_app(|app| assert!(app.job.steps.last().unwrap().done.is_none()));
}

/// Pictures, taps and points on an elevation, from inside and from behind.
#[test]
fn a_wall_takes_pictures_points_and_hidden_lines() {
    for (name, size) in SIZES {
        let mut app = under_way();
        let room = app.job.rooms[0].id;
        for (title, at) in [
            ("Bare", Some((30, 40))),
            ("Dry fit", None),
            ("Closed", None),
        ] {
            let mut photo = storyrod::photo::Photo::new("a.jpg".into(), (40, 30), app.job.begun);
            (photo.room, photo.wall) = (Some(room), Some(0));
            photo.title = title.into();
            photo.anchor = at.map(|(left, up)| storyrod::photo::Anchor {
                spot: [1.0, 1.0],
                from_left: Some(storyrod::measure::Length::inches(left)),
                up: Some(storyrod::measure::Length::inches(up)),
            });
            app.job.photos.push(std::sync::Arc::new(photo));
        }
        let window = desk(app, size);
        window.act(|app| app.send(Command::Go(Here::Wall(0, 0))));
        shot(&window, &format!("wall-pictures-{name}"));
        let add = |on, kind| storyrod::app::RoomChoice::AddFixed(on, kind);
        window.act(|app| app.send(Command::Of(0, add(On::Wall(0), FixedKind::Hot))));
        shot(&window, &format!("wall-placing-{name}"));
        poke(&window, (60.0, 20.0));
        let placed = window.with_app(|app| {
            assert!(app.pad.is_some(), "the pad asks for its figures");
            app.job.rooms[0].fixed.last().unwrap().from_left
        });
        let off = (placed.unwrap() - storyrod::measure::Length::inches(60)).abs();
        assert!(
            off < storyrod::measure::Length::inches(1),
            "{name}: {placed:?}"
        );
        shot(&window, &format!("wall-placed-{name}"));
        window.act(|app| app.pad = None);
        let hide = storyrod::app::RoomChoice::AddHidden(On::Wall(0), HiddenKind::Cable);
        window.act(|app| app.send(Command::Of(0, hide)));
        poke(&window, (20.0, 15.0));
        poke(&window, (20.0, 70.0));
        window.with_app(|app| assert_eq!(app.job.rooms[0].hidden.last().unwrap().line.len(), 2));
        let behind = storyrod::app::RoomChoice::Behind(true);
        window.act(|app| app.send(Command::Of(0, behind)));
        shot(&window, &format!("wall-behind-{name}"));
        window.act(|app| app.send(Command::Of(0, storyrod::app::RoomChoice::Place(None))));
        tap(&window, "Picture 1, Bare");
        window.with_app(|app| assert_eq!(app.here(), &Here::Photo(0)));
    }
}

/// A finger on the sketch, so many inches from the left corner and up.
fn poke(window: &storyrod::gui::Desk, (x, up): (f64, f64)) {
    use slint::ComponentHandle;
    let place = window.place_of_sketch().unwrap();
    let inches = |n: f64| storyrod::measure::Length::from_metres(n * 0.0254).unwrap();
    let at = place.of(storyrod::geometry::Point::new(inches(x), -inches(up)));
    let rail = if window.window().window().size().width < 600 {
        (0.0, 64.0)
    } else {
        (92.0, 72.0)
    };
    let position = slint::LogicalPosition::new(at.0 + rail.0, at.1 + rail.1);
    let button = slint::platform::PointerEventButton::Left;
    let send = |event| window.window().window().dispatch_event(event);
    send(slint::platform::WindowEvent::PointerMoved { position });
    send(slint::platform::WindowEvent::PointerPressed { position, button });
    send(slint::platform::WindowEvent::PointerReleased { position, button });
    crate::harness::settle();
}
