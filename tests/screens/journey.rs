//! A first afternoon: from an empty start to a buying list, closed and opened again.

use std::path::Path;

use storyrod::app::{App, Choice, Command, Here, Slot, StudsOf, start};
use storyrod::measure::Length;
use storyrod::site::{OpeningKind, shape};
use storyrod::takeoff::Ask;
use storyrod::trades::patch::{Field, Method};

use crate::harness::{desk, keys, shot, tap};

fn open_at(folder: &Path) -> App {
    start(folder, Some(&folder.join("cabin.rod")), false).unwrap()
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
    // A door and a window, studs, and a patch between them.
    window.act(|app| app.pad = None);
    window.act(|app| app.send(Command::Go(Here::Wall(0, 4))));
    window.act(|app| app.send(Command::AddOpening(0, 4, OpeningKind::Door)));
    window.act(|app| app.send(Command::Pad(Slot::OpeningFromLeft(0, 0))));
    for figure in ["12", "30", "80"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    window.act(|app| {
        app.send(Command::StudSpacing(
            StudsOf::Wall(0, 4),
            Some(Length::inches(16)),
        ))
    });
    shot(&window, "journey-wall");
    window.act(|app| app.send(Command::NewPatch(Some((0, 5)))));
    window.act(|app| {
        app.send(Command::StudSpacing(
            StudsOf::Wall(0, 5),
            Some(Length::inches(16)),
        ))
    });
    window.act(|app| app.send(Command::Pad(Slot::Patch(0, Field::FromLeft))));
    for figure in ["20", "30"] {
        keys(&window, figure);
        keys(&window, "\n");
    }
    window.act(|app| app.send(Command::Set(0, Choice::Method(Some(Method::CutBack)))));
    tap(&window, "Add to buying list");
    let piece = window.with_app(|app| match &app.job.tasks[0].ask {
        Ask::Patch(ask, _) => ask.hole.from_left,
        Ask::Paint(..) => None,
    });
    assert_eq!(piece, Some(Length::inches(20)));
    shot(&window, "journey-patch");
    let before = window.with_app(App::buying_lines);
    assert!(!before.is_empty());
    drop(window);
    let again = open_at(folder.path());
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
