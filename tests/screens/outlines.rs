//! Outlines changed with a finger on the plan: corners added and taken out, walls dragged, rooms of many corners.

use std::rc::Rc;

use chrono::DateTime;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition};
use storyrod::app::{App, Command, Here, Keeper, Shape};
use storyrod::gui::Desk;
use storyrod::measure::{Angle, Length, Units};
use storyrod::site::{Room, Wall, shape};
use storyrod::takeoff::Job;

use crate::harness::{desk, reach, settle, shot, tap};

fn with_rooms(rooms: impl IntoIterator<Item = Room>) -> App {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
    for room in rooms {
        job.add_room(room);
    }
    App::new(job, Keeper::nowhere())
}

/// Eleven notches in the upper wall and a step at a lower corner: fifty corners.
fn fifty() -> Room {
    let mut walls = Vec::new();
    for _ in 0..11 {
        walls.extend([(12, 90), (6, -90), (12, -90), (6, 90)]);
    }
    // The turn after each wall; a notch goes down, right, up and right again.
    walls.extend([(12, 90), (60, 90), (12, -90), (36, 90), (264, 90), (96, 90)]);
    let mut room = Room::rectangle("Hall");
    let one = room.walls[0].clone();
    room.walls = walls
        .into_iter()
        .map(|(inches, turn)| Wall {
            length: Some(Length::inches(inches)),
            turn: Angle::degrees(turn),
            ..one.clone()
        })
        .collect();
    room
}

fn walls(window: &Rc<Desk>) -> usize {
    window.with_app(|app| app.job.rooms[0].walls.len())
}

fn area(window: &Rc<Desk>) -> f64 {
    window.with_app(|app| shape(&app.job.rooms[0]).unwrap().corners.area().value)
}

/// Takes hold of what bears a label, and drags it.
fn drag(window: &Rc<Desk>, label: &str, (across, down): (f32, f32)) {
    let wall = reach(window, label);
    let (at, size) = (wall.absolute_position(), wall.size());
    let from = LogicalPosition::new(at.x + size.width / 2.0, at.y + size.height / 2.0);
    tap(window, label);
    let button = PointerEventButton::Left;
    let send = |event| window.window().window().dispatch_event(event);
    send(WindowEvent::PointerPressed {
        position: from,
        button,
    });
    let to = |share: f32| LogicalPosition::new(from.x + across * share, from.y + down * share);
    for step in 1..=5u8 {
        send(WindowEvent::PointerMoved {
            position: to(f32::from(step) / 5.0),
        });
        settle();
    }
    send(WindowEvent::PointerReleased {
        position: to(1.0),
        button,
    });
    settle();
}

#[test]
fn fifty_corners_stay_under_the_finger() {
    for (name, size) in [("phone", (412, 892)), ("tablet", (1180, 820))] {
        let window = desk(with_rooms([fifty()]), size);
        assert_eq!(walls(&window), 50);
        window.act(|app| app.send(Command::Go(Here::Outline(0))));
        shot(&window, &format!("fifty-{name}"));
        let before = area(&window);
        let lower = format!("Wall {} on the plan", Wall::named(48));
        drag(&window, &lower, (0.0, 14.0));
        assert!(area(&window) > before, "{} {before}", area(&window));
        assert_eq!(walls(&window), 50);
        shot(&window, &format!("fifty-dragged-{name}"));
        let corner = format!("Corner {}–{}", Wall::named(48), Wall::named(49));
        tap(&window, &corner);
        tap(&window, "Cut it off");
        assert_eq!(walls(&window), 51);
        shot(&window, &format!("fifty-cut-{name}"));
        window.act(|app| app.send(Command::Undo));
        window.act(|app| app.send(Command::Undo));
        assert_eq!(area(&window), before);
    }
}

#[test]
fn a_corner_is_added_and_taken_out_by_tapping_the_plan() {
    let window = desk(with_rooms([]), (412, 892));
    window.act(|app| app.send(Command::NewRoom(Shape::Rectangle)));
    window.act(|app| app.send(Command::Go(Here::Outline(0))));
    tap(&window, "Corner B–C");
    tap(&window, "Let it jut in");
    assert_eq!(walls(&window), 6);
    shot(&window, "corner-added");
    // One of the three corners that it made, tapped on the plan and taken out again.
    tap(&window, "Corner C–D");
    tap(&window, "Take it out");
    assert!(walls(&window) < 6);
    shot(&window, "corner-taken");
    for _ in 0..2 {
        tap(&window, "Undo");
    }
    assert_eq!(walls(&window), 4);
    window.with_app(|app| assert!(shape(&app.job.rooms[0]).is_ok()));
}
