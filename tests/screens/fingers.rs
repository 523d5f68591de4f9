//! A finger on the sketch of tiles: it slides the tiles, moves what stands in their way, and taps.

use chrono::DateTime;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition};
use storyrod::app::{
    App, Choice, Command, Here, Keeper, Row, Slot, ThingField, TileChoice, TileSlot, demo_job,
};
use storyrod::gui::Desk;
use storyrod::measure::Length;
use storyrod::takeoff::{Ask, TileOn};
use storyrod::trades::tile::{self, Hold, Start, ThingShape};

use crate::harness::{desk, settle, shot};

fn type_in(app: &mut App, slot: TileSlot, text: &str) {
    app.send(Command::Pad(Slot::Tile(2, slot)));
    let pad = app.pad.as_mut().unwrap();
    (pad.typed, pad.fresh) = (text.to_owned(), false);
    app.take();
    assert!(
        app.pad.as_ref().is_none_or(|pad| pad.wrong.is_empty()),
        "{text}"
    );
    app.pad = None;
}

fn choose(choice: TileChoice) -> Command {
    Command::Set(2, Choice::Tile(choice))
}

/// The demo's tiled floor of 88 by about 116 in, with a column of 30 by 30 in its middle.
fn floor() -> App {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut app = App::new(demo_job(begun), Keeper::nowhere());
    app.send(Command::Go(Here::Task(2)));
    app
}

fn with_column() -> App {
    let mut app = floor();
    app.send(choose(TileChoice::AddThing(false)));
    for (field, text) in [
        (ThingField::Width, "20"),
        (ThingField::Height, "20"),
        (ThingField::Left, "10"),
        (ThingField::Top, "14"),
    ] {
        type_in(&mut app, TileSlot::Thing(0, field), text);
    }
    app
}

fn ask(desk: &Desk) -> tile::Ask {
    desk.with_app(|app| match &app.job.tasks[2].ask {
        Ask::Tile(ask, _) => (**ask).clone(),
        _ => panic!("no tile"),
    })
}

/// A finger comes down, goes along, and lifts.
fn drag(desk: &Desk, from: (f32, f32), by: (f32, f32)) {
    let window = desk.window().window();
    let at = |share: f32| LogicalPosition::new(from.0 + by.0 * share, from.1 + by.1 * share);
    let button = PointerEventButton::Left;
    window.dispatch_event(WindowEvent::PointerMoved { position: at(0.0) });
    window.dispatch_event(WindowEvent::PointerPressed {
        position: at(0.0),
        button,
    });
    for n in 1..=4u8 {
        window.dispatch_event(WindowEvent::PointerMoved {
            position: at(f32::from(n) / 4.0),
        });
        settle();
    }
    window.dispatch_event(WindowEvent::PointerReleased {
        position: at(1.0),
        button,
    });
    settle();
}

/// Where a place of the surface is in the window, from two dimensions of the sketch that can be tapped: by trial.
fn on_the_column(desk: &Desk) -> (f32, f32) {
    let place = desk.place_of_sketch().unwrap();
    let ask = ask(desk);
    let thing = ask.things[0];
    let ThingShape::Rectangle { width, height } = thing.shape else {
        panic!("no column")
    };
    // A corner of it, away from its figures.
    let corner = desk.with_app(|app| app.tile_surface(2).unwrap().bounds().unwrap().0);
    let at = corner
        + storyrod::geometry::Point::new(
            thing.from_left + width.divided(6),
            thing.from_top + height.divided(6),
        );
    let (x, y) = place.of(at);
    let rail = if desk.window().window().size().width < 600 {
        (0.0, 64.0)
    } else {
        (92.0, 72.0)
    };
    (x + rail.0, y + rail.1)
}

#[test]
fn a_column_is_moved_by_a_finger_and_back_by_undo() {
    for (name, size) in [("phone", (412, 892)), ("tablet", (1180, 820))] {
        let desk = desk(with_column(), size);
        assert!(shot(&desk, &format!("tile-column-{name}-day")).2 > 20);
        let before = ask(&desk).things[0];
        let scale = desk.place_of_sketch().unwrap().scale;
        drag(&desk, on_the_column(&desk), (30.0, 40.0));
        let after = ask(&desk).things[0];
        let moved = |a: Length, b: Length, pixels: f64| {
            let off = (b - a).metres() * scale - pixels;
            assert!(off.abs() < 1.0, "{name}: {off}");
        };
        moved(before.from_left, after.from_left, 30.0);
        moved(before.from_top, after.from_top, 40.0);
        // It stands on a mark of the tape.
        assert_eq!(after.from_left.as_nm() % Length::in_64(0, 4).as_nm(), 0);
        assert!(matches!(ask(&desk).start, Start::Balanced(_)));
        assert!(shot(&desk, &format!("tile-column-moved-{name}-day")).2 > 20);
        desk.act(|app| app.send(Command::Undo));
        assert_eq!(ask(&desk).things[0], before);
    }
}

#[test]
fn beside_it_the_tiles_are_slid_at_one_scale() {
    let desk = desk(with_column(), (412, 892));
    let before = desk.place_of_sketch().unwrap();
    let (x, y) = on_the_column(&desk);
    let from = (x + 150.0, y + 5.0);
    let window = desk.window().window();
    let at = |dx: f32| LogicalPosition::new(from.0 + dx, from.1);
    let button = PointerEventButton::Left;
    window.dispatch_event(WindowEvent::PointerPressed {
        position: at(0.0),
        button,
    });
    for dx in [8.0, 21.0, 35.0] {
        window.dispatch_event(WindowEvent::PointerMoved { position: at(dx) });
        settle();
        assert_eq!(desk.place_of_sketch().unwrap(), before);
    }
    window.dispatch_event(WindowEvent::PointerReleased {
        position: at(35.0),
        button,
    });
    settle();
    assert!(matches!(ask(&desk).start, Start::ByHand(_)));
    assert_eq!(ask(&desk).things.len(), 1);
}

#[test]
fn lines_that_moved_are_said_and_can_be_had_back() {
    let mut app = floor();
    let chalk = |app: &App| app.chalk_lines(2).unwrap();
    let before = chalk(&app);
    app.send(choose(TileChoice::AddThing(false)));
    for (field, text) in [(ThingField::Width, "31"), (ThingField::Left, "0")] {
        type_in(&mut app, TileSlot::Thing(0, field), text);
    }
    type_in(&mut app, TileSlot::Thing(0, ThingField::Top), "0");
    let mut moved = false;
    for height in ["19", "25", "29", "33"] {
        let before = chalk(&app);
        type_in(&mut app, TileSlot::Thing(0, ThingField::Height), height);
        let rows = app.screen().rows;
        let note = rows.into_iter().find_map(|row| match row {
            Row::Note { text, mend, .. } if text.contains("moved") => mend,
            _ => None,
        });
        assert_eq!(note.is_some(), chalk(&app) != before, "{height}");
        if let Some(mend) = note {
            app.send(mend.command);
            assert_eq!(chalk(&app).from_left, before.from_left);
            assert_eq!(chalk(&app).from_top, before.from_top);
            moved = true;
            break;
        }
    }
    assert!(moved, "{before:?}");
}

/// For eyes.
#[test]
fn mosaic_lies_on_its_sheets() {
    for (name, size) in [("phone", (412, 892)), ("tablet", (1180, 820))] {
        let desk = desk(floor(), size);
        desk.act(|app| app.send(choose(TileChoice::OnSheets(true))));
        assert!(shot(&desk, &format!("tile-mosaic-{name}-day")).2 > 20);
    }
}

fn chips(app: &App) -> Vec<(String, Command)> {
    let rows = app.screen().rows.into_iter();
    let chips = rows.flat_map(|row| match row {
        Row::Choice { chips, .. } => chips,
        _ => Vec::new(),
    });
    chips.map(|chip| (chip.label, chip.command)).collect()
}

#[track_caller]
fn tap(app: &mut App, label: &str) {
    let all = chips(app);
    let found = all.iter().find(|(name, _)| name == label);
    let (_, command) = found.unwrap_or_else(|| panic!("{label}: {all:?}"));
    app.send(command.clone());
}

#[test]
fn joints_of_the_floor_run_on_from_those_of_a_wall() {
    let mut app = floor();
    app.send(Command::NewTile(Some(0), TileOn::Wall(0)));
    let wall = app.job.tasks.len() - 1;
    let joints = {
        let lines = app.chalk_lines(wall).unwrap();
        lines.from_left
    };
    app.send(Command::Go(Here::Task(2)));
    tap(&mut app, "Wall A");
    let Ask::Tile(ask, _) = &app.job.tasks[2].ask else {
        panic!("no tile")
    };
    // Wall A runs along the upper edge of the sheet, from its left corner.
    assert_eq!(ask.hold, Some(Hold::JointFromLeft(joints)));
    let surface = app.tile_surface(2).unwrap();
    let ask = tile::Ask {
        surface,
        ..(**ask).clone()
    };
    let laid = tile::figure(&ask).unwrap().layout;
    assert!(tile::running(&ask, &laid, true).contains(&joints));
}

#[test]
fn mortar_begun_alone_is_offered_the_tile_that_is_there() {
    let mut app = floor();
    app.send(Command::NewMortar(None));
    let here = app.job.tasks.len() - 1;
    let id = app.job.tasks[2].id;
    let name = chips(&app)
        .into_iter()
        .find(|(_, command)| *command == Command::MixFor(here, id));
    tap(&mut app, &name.unwrap().0);
    assert!(matches!(&app.job.tasks[here].ask, Ask::Mortar(_, Some(of)) if *of == id));
    assert_eq!(app.job.tasks[here].room, app.job.tasks[2].room);
}

#[test]
fn an_odd_ceiling_is_pointed_out_once() {
    let mut app = floor();
    app.send(Command::Go(Here::Room(0)));
    app.send(Command::Pad(Slot::Ceiling(0)));
    let was = app.job.rooms[0].ceiling;
    let pad = app.pad.as_mut().unwrap();
    (pad.typed, pad.fresh) = ("5'".to_owned(), false);
    app.take();
    assert_eq!(app.job.rooms[0].ceiling, was);
    let wrong = app.pad.as_ref().unwrap().wrong.clone();
    assert!(wrong.starts_with("5′ is very little here"), "{wrong}");
    app.take();
    assert_eq!(app.job.rooms[0].ceiling, Some(Length::feet(5)));
}

#[test]
fn tiles_are_slid_by_a_mark_without_a_finger() {
    let mut app = floor();
    let before = app.chalk_lines(2).unwrap();
    let all = chips(&app);
    let (_, nudge) = all
        .iter()
        .find(|(label, _)| label.ends_with(" right"))
        .unwrap();
    app.send(nudge.clone());
    let after = app.chalk_lines(2).unwrap();
    assert_eq!(after.from_left - before.from_left, Length::in_64(0, 16));
    assert_eq!(after.from_top, before.from_top);
}

#[test]
fn the_pattern_can_be_even_about_the_door() {
    let mut app = floor();
    tap(&mut app, "Door, wall E");
    let Ask::Tile(ask, _) = &app.job.tasks[2].ask else {
        panic!("no tile")
    };
    // Wall E runs from 54 in back to the left wall, its door from 12 in to 42 in along it.
    let middle = Length::inches(54 - 12 - 15);
    assert_eq!(ask.start, Start::Balanced(tile::Sight::Across(middle)));
}
