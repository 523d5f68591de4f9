//! A first afternoon: from an empty start to a buying list, closed and opened again.

use std::path::Path;

use storyrod::app::{App, Command, Here, Slot, start};
use storyrod::measure::{Length, fraction_glyph};
use storyrod::site::shape;
use storyrod::takeoff::Ask;
use storyrod::trades::patch::Method;

use crate::harness::{desk, keys, settle, shot, tap};
use crate::places::demo;

fn open_at(folder: &Path) -> App {
    start(folder, Some(&folder.join("cabin.site")), false).unwrap()
}

#[test]
fn a_room_of_six_walls_becomes_a_patch_and_paint_on_a_list_that_is_there_tomorrow() {
    let folder = tempfile::tempdir().unwrap();
    let window = desk(open_at(folder.path()), (412, 892));
    tap(&window, "L, six walls");
    tap(&window, "Measure the next one");
    // Four walls of the six are typed; the other two follow, and the pad goes on to the ceiling.
    for figure in ["7' 4\"", "50", "34", "12 1/2"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    keys(&window, "8'\n");
    window.with_app(|app| {
        let room = &app.job.rooms[0];
        assert_eq!(
            room.ceiling,
            Some(Length::feet(8)),
            "the pad went past the walls that follow"
        );
        let outline = shape(room).unwrap();
        assert_eq!(outline.walls[4].0, Length::inches(54));
        assert_eq!(outline.walls[5].0, Length::in_64(62, 32));
    });
    // A door and a window.
    tap(&window, "Wall E");
    tap(&window, "Door");
    tap(&window, "From left corner, ?");
    for figure in ["12", "30", "80"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    shot(&window, "journey-wall");
    tap(&window, "Back");
    tap(&window, "Wall A");
    tap(&window, "Window");
    tap(&window, "From left corner, ?");
    for figure in ["48", "24", "30", "48"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    tap(&window, "Back");
    // Studs, and a hole between them.
    tap(&window, "Wall F");
    tap(&window, "16″");
    tap(&window, "Patch a hole in this wall");
    tap(&window, "Left corner to the hole, ?");
    for figure in ["20", "30"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    tap(&window, "Cut back to stud centres");
    tap(&window, "Add to buying list");
    shot(&window, "journey-patch");
    window.with_app(|app| {
        let Ask::Patch(ask, wall) = &app.job.tasks[0].ask else {
            panic!("a patch was asked for");
        };
        assert_eq!(*wall, Some(5));
        assert_eq!(ask.hole.from_left, Some(Length::inches(20)));
        assert_eq!(ask.method, Some(Method::CutBack));
    });
    // Two coats of paint.
    tap(&window, "Room");
    tap(
        &window,
        "Room 1, 6 walls, measured, 2 walls follow from the others",
    );
    tap(&window, "Paint this room");
    tap(&window, "2, chosen");
    tap(&window, "Add to buying list");
    tap(&window, "Buy");
    shot(&window, "journey-list");
    let before = window.with_app(App::buying_lines);
    let titles: Vec<&str> = before.iter().map(|line| line.title.as_str()).collect();
    for title in ["Wall paint", "Primer", "Gypsum board, ½\"", "Joint tape"] {
        let title = title.replace('½', &fraction_glyph(1, 2).to_string());
        let title = title.replace('"', "″");
        assert!(titles.contains(&title.as_str()), "{titles:?}");
    }
    let job = window.with_app(|app| app.job.clone());
    drop(window);
    let again = open_at(folder.path());
    assert_eq!(again.job, job);
    assert_eq!(again.buying_lines(), before);
}

#[test]
fn what_was_edited_is_there_after_the_program_is_closed() {
    let folder = tempfile::tempdir().unwrap();
    {
        let window = desk(open_at(folder.path()), (1180, 820));
        tap(&window, "Rectangle");
        tap(&window, "Measure the next one");
        for figure in ["8'", "5'", "8'", "5'", "8'"] {
            keys(&window, figure);
            keys(&window, "\n");
        }
        tap(&window, "Paint this room");
        tap(&window, "Add to buying list");
        tap(&window, "Buy");
        shot(&window, "journey-buy");
    }
    let again = open_at(folder.path());
    assert_eq!(again.job.rooms[0].ceiling, Some(Length::feet(8)));
    let lines = again.buying_lines();
    assert!(
        lines.iter().any(|line| line.title == "Wall paint"),
        "{lines:?}"
    );
    assert_eq!(again.here(), &Here::Rooms);
}

/// The field that words are typed into goes with its pad; the next pad has the keyboard again.
#[test]
fn after_words_the_keyboard_types_measures_again() {
    let desk = desk(demo(), (412, 892));
    desk.act(|app| app.send(Command::Pad(Slot::RoomName(0))));
    settle();
    keys(&desk, "Bath\n");
    desk.with_app(|app| {
        assert_eq!(app.job.rooms[0].name, "Bath");
        assert!(app.pad.is_none());
    });
    desk.act(|app| {
        app.send(Command::Go(Here::Room(0)));
        app.send(Command::Pad(Slot::Ceiling(0)));
    });
    settle();
    keys(&desk, "98\n");
    desk.with_app(|app| assert_eq!(app.job.rooms[0].ceiling, Some(Length::inches(98))));
}
