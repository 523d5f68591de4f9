//! Every place of the demo job at every size and in every light.

use chrono::DateTime;
use i_slint_backend_testing::{AccessibleRole, ElementQuery};
use storyrod::app::{
    App, Choice, Command, Here, Keeper, MixChoice, Row, Shape, Slot, StudsOf, ThingField,
    TileChoice, TileSlot, Tone, demo_job,
};
use storyrod::drawing::Theme;
use storyrod::measure::{Angle, Length};
use storyrod::site::{OpeningKind, Side, What};
use storyrod::takeoff::TileOn;
use storyrod::trades::paint::Part;
use storyrod::trades::tile::Pattern;
use storyrod::trades::trim::Kind;

use crate::harness::{desk, settle, shot};

const SIZES: [(&str, (u32, u32)); 4] = [
    ("phone", (412, 892)),
    ("tablet", (1180, 820)),
    ("upright", (820, 1180)),
    ("desktop", (1440, 900)),
];

pub fn demo() -> App {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    App::new(demo_job(begun), Keeper::nowhere())
}

/// The figures that the demo job has.
fn figures() -> usize {
    demo().job.tasks.len()
}

fn places() -> Vec<(&'static str, Vec<Command>)> {
    let go = |here| vec![Command::Go(here)];
    let new = figures();
    vec![
        ("rooms", go(Here::Rooms)),
        ("room", go(Here::Room(0))),
        ("wall", go(Here::Wall(0, 4))),
        ("wall-pipes", go(Here::Wall(0, 5))),
        ("bench", go(Here::Bench)),
        ("patch", go(Here::Task(0))),
        ("paint", go(Here::Task(1))),
        ("working", go(Here::Working(0))),
        ("tile", go(Here::Task(2))),
        (
            "compare",
            vec![
                Command::Twin(2),
                Command::Set(new, Choice::Tile(TileChoice::Pattern(Pattern::Herringbone))),
                Command::Set(new, Choice::Tile(TileChoice::Turn(Angle::degrees(45)))),
                Command::Set(new, Choice::Tile(TileChoice::Pattern(Pattern::Grid))),
                Command::Go(Here::Compare(2)),
            ],
        ),
        ("grout", vec![Command::NewGrout(None)]),
        (
            "bed",
            vec![
                Command::NewMortar(None),
                Command::Set(new + 2, Choice::Mix(MixChoice::Work(2))),
            ],
        ),
        ("pipe", go(Here::Task(3))),
        ("waste", go(Here::Task(5))),
        ("strip", go(Here::Strip(5))),
        ("drain", go(Here::Task(6))),
        ("sheets", go(Here::Task(8))),
        ("sheets-wall", go(Here::Task(9))),
        ("piece", go(Here::Piece(8, 1))),
        ("piece-wall", go(Here::Piece(9, 1))),
        ("trim", go(Here::Task(10))),
        ("trim-hand", vec![Command::NewTrim(None, Kind::Base)]),
        ("trim-casing", vec![Command::NewTrim(Some(0), Kind::Casing)]),
        ("cutting", go(Here::Cutting(None))),
        ("tape", go(Here::Tape)),
        ("buy", go(Here::Buy)),
        ("steps", go(Here::Steps)),
        ("more", go(Here::More)),
        ("photos-empty", go(Here::Photos)),
        (
            "pad",
            vec![
                Command::Go(Here::Room(0)),
                Command::Pad(Slot::WallLength(0, 1)),
            ],
        ),
        ("survey-demo", go(Here::Survey(0))),
        ("square-demo", go(Here::Square(0))),
        ("outline-demo", go(Here::Outline(0))),
        ("beside-demo", go(Here::SideBySide(0, 1))),
        ("profiles", go(Here::Profiles)),
    ]
}

#[test]
fn every_place_is_drawn_at_every_size() {
    for (size_name, size) in SIZES {
        let desk = desk(demo(), size);
        for (name, commands) in places() {
            for command in commands {
                desk.act(|app| app.send(command));
            }
            let (width, height, colours) = shot(&desk, &format!("{name}-{size_name}-day"));
            assert_eq!((width, height), size);
            assert!(
                colours > 20,
                "{name} at {size_name} shows next to nothing: {colours} colours"
            );
        }
    }
}

/// On a sheet so long that no row hides below its edge.
#[test]
fn every_row_of_every_place_is_drawn() {
    let desk = desk(demo(), (412, 4400));
    for (name, commands) in places() {
        for command in commands {
            desk.act(|app| app.send(command));
        }
        assert!(shot(&desk, &format!("{name}-long-day")).2 > 20, "{name}");
    }
    // After those that the places above have added.
    let new = figures() + 3;
    desk.act(|app| {
        app.send(Command::NewRoom(Shape::Own));
        app.send(Command::CutCorner(2, 0));
        app.send(Command::StudsAsFound(StudsOf::Wall(2, 0)));
        app.send(Command::NewPatch(None));
        app.send(Command::StudSpacing(
            StudsOf::Patch(new),
            Some(Length::inches(16)),
        ));
        app.send(Command::Set(new, Choice::AddHole));
    });
    shot(&desk, "patch-quick-long-day");
    desk.act(|app| {
        app.send(Command::NewPaint(None));
        app.send(Command::Set(new + 1, Choice::AddTrim("Base")));
        app.send(Command::Set(new + 1, Choice::AddSurface(Part::Ceiling)));
    });

    shot(&desk, "paint-quick-long-day");
    desk.act(|app| app.send(Command::Go(Here::Wall(2, 0))));
    shot(&desk, "wall-own-long-day");
    desk.act(|app| {
        app.send(Command::Corner(2, 0, 75_000_000));
        app.send(Command::Go(Here::Room(2)));
    });
    shot(&desk, "room-own-long-day");
}

#[test]
fn every_light_and_text_size_is_drawn() {
    for (light, theme) in [("night", Theme::Night), ("sun", Theme::Sun)] {
        for (size_name, size) in [SIZES[0], SIZES[1]] {
            let desk = desk(demo(), size);
            desk.act(|app| app.send(Command::Theme(theme)));
            for (name, commands) in places() {
                for command in commands {
                    desk.act(|app| app.send(command));
                }
                assert!(
                    shot(&desk, &format!("{name}-{size_name}-{light}")).2 > 8,
                    "{name}"
                );
            }
        }
    }
    let desk = desk(demo(), (360, 640));
    desk.act(|app| app.send(Command::TextSize(150)));
    for (name, commands) in places() {
        for command in commands {
            desk.act(|app| app.send(command));
        }
        assert!(shot(&desk, &format!("{name}-small-150")).2 > 8, "{name}");
    }
}

#[test]
fn what_is_tapped_is_as_large_as_a_fingertip() {
    for (size_name, size) in SIZES {
        let desk = desk(demo(), size);
        for (name, commands) in places() {
            for command in commands {
                desk.act(|app| app.send(command));
            }
            settle();
            let tapped: Vec<_> = (ElementQuery::from_root(desk.window())
                .find_all()
                .into_iter())
            .filter(|element| {
                matches!(
                    element.accessible_role(),
                    Some(AccessibleRole::Button | AccessibleRole::Checkbox | AccessibleRole::Tab)
                )
            })
            .map(|element| {
                let (at, size) = (element.absolute_position(), element.size());
                let middle = (at.x + size.width / 2.0, at.y + size.height / 2.0);
                (element.accessible_label(), size, middle)
            })
            .collect();
            for (n, (label, size, (x, y))) in tapped.iter().enumerate() {
                // On a drawing a target is cut off where another is nearer than a fingertip.
                let crowded = || {
                    tapped.iter().enumerate().any(|(other, (_, _, (a, b)))| {
                        other != n && (a - x).abs() < 48.0 && (b - y).abs() < 48.0
                    })
                };
                assert!(
                    size.height >= 44.0 && size.width >= 40.0 || crowded(),
                    "{name}, {size_name}: {label:?} is {size:?}"
                );
            }
        }
    }
}

#[test]
fn the_about_sheet_shows_what_the_screens_are_made_with() {
    let desk = desk(demo(), (412, 892));
    desk.act(|app| app.send(Command::About(true)));
    settle();
    assert!(
        crate::harness::labels(&desk)
            .iter()
            .any(|label| label.contains("MadeWithSlint"))
    );
}

/// Types a measure into a slot.
pub fn type_in(app: &mut App, slot: Slot, text: &str) {
    app.send(Command::Pad(slot));
    if let Some(pad) = &mut app.pad {
        pad.typed = text.to_owned();
        pad.fresh = false;
    }
    app.take();
    assert!(
        app.pad.as_ref().is_none_or(|pad| pad.wrong.is_empty()),
        "{text}"
    );
    app.pad = None;
}

/// For eyes: herringbone at a slant round a flange, and a wall with a window and a niche.
#[test]
fn tiles_lie_round_a_flange_and_on_a_wall_with_a_window() {
    let tile = |choice| Command::Set(2, Choice::Tile(choice));
    for (name, size) in [SIZES[0], SIZES[1]] {
        let desk = desk(demo(), size);
        desk.act(|app| {
            app.send(Command::Go(Here::Task(2)));
            type_in(app, Slot::Tile(2, TileSlot::Short), "2 7/8");
            type_in(app, Slot::Tile(2, TileSlot::Long), "5 7/8");
            app.send(tile(TileChoice::Pattern(Pattern::Herringbone)));
            app.send(tile(TileChoice::Turn(Angle::degrees(45))));
            app.send(tile(TileChoice::AddThing(true)));
            type_in(
                app,
                Slot::Tile(2, TileSlot::Thing(0, ThingField::Left)),
                "18",
            );
            type_in(
                app,
                Slot::Tile(2, TileSlot::Thing(0, ThingField::Top)),
                "14",
            );
        });
        assert!(shot(&desk, &format!("tile-flange-{name}-day")).2 > 20);
        desk.with_app(|app| {
            let rows = app.screen().rows;
            let stops = rows.iter().filter(|row| {
                matches!(
                    row,
                    Row::Note {
                        tone: Tone::Stop,
                        ..
                    }
                )
            });
            assert_eq!(stops.count(), 0);
        });
        desk.act(|app| {
            app.send(Command::AddOpening(0, 0, OpeningKind::Niche));
            for (slot, text) in [
                (Slot::OpeningFromLeft(0, 2), "20"),
                (Slot::OpeningWidth(0, 2), "14"),
                (Slot::OpeningHeight(0, 2), "14"),
                (Slot::OpeningSill(0, 2), "36"),
            ] {
                type_in(app, slot, text);
            }
            app.send(Command::NewTile(Some(0), TileOn::Wall(0)));
            let new = figures();
            app.send(Command::Set(
                new,
                Choice::Tile(TileChoice::Pattern(Pattern::Bond { over: 1, of: 2 })),
            ));
            type_in(app, Slot::Tile(new, TileSlot::Short), "5 7/8");
        });
        assert!(shot(&desk, &format!("tile-wall-{name}-day")).2 > 20);
    }
}

/// Wall F of the demo job between neighbours that lean, on a floor that falls: its board, one piece of it, its tile, itself.
#[test]
fn a_wall_out_of_plumb_is_boarded_and_tiled_as_it_stands() {
    for (name, size) in [("phone", (412, 892)), ("tablet", (1180, 820))] {
        let desk = desk(demo(), size);
        desk.act(|app| {
            let room = &mut app.job.rooms[0];
            for (what, sixty_fourths) in [
                (What::Lean(4, Side::Right), 40),
                (What::Lean(0, Side::Left), -32),
                (What::Level(5), 64 * 40),
                (What::Level(0), 64 * 40 + 48),
            ] {
                room.measure(what, Some(Length::in_64(0, sixty_fourths)), None);
            }
            app.send(Command::NewTile(Some(0), TileOn::Wall(5)));
        });
        let tile = figures();
        for (place, here) in [
            ("board", Here::Task(9)),
            ("piece", Here::Piece(9, 1)),
            ("tile", Here::Task(tile)),
            ("wall", Here::Wall(0, 5)),
            ("working", Here::Working(9)),
        ] {
            desk.act(|app| app.send(Command::Go(here)));
            assert!(
                shot(&desk, &format!("slant-{place}-{name}-day")).2 > 20,
                "{place}"
            );
        }
        desk.act(|app| {
            for task in [9, tile] {
                app.send(Command::Go(Here::Task(task)));
                let says = |row: &Row| matches!(row, Row::Note { text, .. } if text.starts_with("This wall is no rectangle"));
                assert!(app.screen().rows.iter().any(says));
            }
            app.send(Command::Go(Here::Piece(9, 1)));
            let tapers = |row: &Row| matches!(row, Row::Figure { value, .. } if value.contains("at its top"));
            assert!(app.screen().rows.iter().any(tapers));
        });
    }
}
