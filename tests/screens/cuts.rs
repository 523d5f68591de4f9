//! The cutting plan of many patches, its off-cuts and its saw; a drain that is wrong, and what is said of it.

use storyrod::app::{App, Choice, Command, CutChoice, CutSlot, DrainChoice, Here, Row, Slot, Tone};
use storyrod::measure::Length;
use storyrod::takeoff::{Ask, Saw, Task};
use storyrod::trades::Material;
use storyrod::trades::drain::{Field, Size};
use storyrod::trades::patch::{self, Method};

use crate::harness::{desk, shot};
use crate::places::{demo, type_in};

fn strips() -> Material {
    Material::Lumber {
        thickness: Length::in_64(0, 48),
        width: Length::in_64(2, 32),
    }
}

/// The values of the rows whose label begins so.
fn values(app: &App, label: &str) -> Vec<String> {
    let rows = app.screen().rows.into_iter();
    let found = rows.filter_map(|row| match row {
        Row::Figure {
            label: of, value, ..
        } if of.starts_with(label) => Some(value),
        _ => None,
    });
    found.collect()
}

fn stops(app: &App) -> usize {
    let rows = app.screen().rows.into_iter();
    let stops = rows.filter(|row| {
        matches!(
            row,
            Row::Note {
                tone: Tone::Stop,
                ..
            }
        )
    });
    stops.count()
}

/// Eight patches on backing strips of different lengths.
fn many_patches() -> App {
    let mut app = demo();
    for n in 0..8 {
        app.send(Command::NewPatch(None));
        let at = app.job.tasks.len() - 1;
        app.send(Command::Set(at, Choice::Method(Some(Method::BackedPatch))));
        let slot = |field| Slot::Patch(at, field);
        type_in(
            &mut app,
            slot(patch::Field::HoleWidth),
            &format!("{}", 9 + n),
        );
        type_in(
            &mut app,
            slot(patch::Field::HoleHeight),
            &format!("{}", 12 + 5 * n),
        );
        app.send(Command::OnList(at, true));
    }
    app.send(Command::Go(Here::Buy));
    app.send(Command::Go(Here::Cutting(None)));
    app
}

#[test]
fn an_off_cut_on_hand_and_a_thinner_saw_are_kept_and_counted() {
    for (name, size) in [("phone", (412, 892)), ("tablet", (1180, 820))] {
        let desk = desk(many_patches(), size);
        assert!(shot(&desk, &format!("cutting-many-{name}-day")).2 > 20);
        desk.act(|app| {
            let before = values(app, "Stick ").len();
            assert!(before > 1, "{before}");
            for length in ["30", "7' 6"] {
                type_in(app, Slot::Cut(strips(), CutSlot::NewOffcut), length);
            }
            app.send(Command::Cut(strips(), CutChoice::Saw(Saw::Hand)));
            let setup = &app.job.buying.cutting[&strips()];
            let lengths = [Length::inches(30), Length::inches(90)];
            assert_eq!((setup.saw, &setup.offcuts[..]), (Saw::Hand, &lengths[..]));
            // One list has the off-cut itself and the stick that it is.
            let used = values(app, "Off-cut 2").len() - 1;
            let after = values(app, "Stick ").len();
            assert_eq!(
                (used, after),
                (1, before - 1),
                "an off-cut of 90 in saves a stick"
            );
            app.send(Command::Cut(strips(), CutChoice::Stick(Length::feet(16))));
            app.send(Command::Cut(strips(), CutChoice::Stick(Length::feet(8))));
            assert_eq!(app.job.buying.cutting[&strips()].sticks, [Length::feet(16)]);
            // One length always stays.
            app.send(Command::Cut(strips(), CutChoice::Stick(Length::feet(16))));
            assert_eq!(app.job.buying.cutting[&strips()].sticks, [Length::feet(16)]);
            app.send(Command::Cut(strips(), CutChoice::RemoveOffcut(0)));
            assert_eq!(
                app.job.buying.cutting[&strips()].offcuts,
                [Length::inches(90)]
            );
        });
        assert!(shot(&desk, &format!("cutting-off-cuts-{name}-day")).2 > 20);
    }
}

#[test]
fn what_cannot_be_cut_is_refused_at_its_field() {
    let mut app = many_patches();
    app.send(Command::Pad(Slot::Cut(strips(), CutSlot::Kerf)));
    let pad = app.pad.as_mut().unwrap();
    pad.typed = "2".into();
    pad.fresh = false;
    app.take();
    assert!(app.pad.unwrap().wrong.contains("1 in"));
}

#[test]
fn a_drain_beyond_its_limits_says_which_and_what_would_be_right() {
    let desk = desk(demo(), (412, 892));
    let is_drain = |task: &Task| matches!(task.ask, Ask::Drain(_));
    let at = desk.with_app(|app| app.job.tasks.iter().position(is_drain).unwrap());
    desk.act(|app| {
        app.send(Command::Go(Here::Task(at)));
        assert_eq!(stops(app), 0);
        type_in(app, Slot::Drain(at, Field::Run), "14'");
        assert_eq!(stops(app), 1, "holes too near to the lower edge");
        app.send(Command::Set(
            at,
            Choice::Drain(DrainChoice::Size(Size::Three)),
        ));
        assert_eq!(stops(app), 2, "and a hole larger than a third of the joist");
        app.send(Command::Set(at, Choice::Drain(DrainChoice::Through(2))));
        assert_eq!(stops(app), 1, "engineered joists are left to their maker");
        app.send(Command::Set(at, Choice::Drain(DrainChoice::Through(3))));
        type_in(app, Slot::Drain(at, Field::Start), "18");
    });
    assert!(shot(&desk, "drain-studs-phone-day").2 > 20);
    desk.act(|app| {
        type_in(app, Slot::Drain(at, Field::Hole), "2");
        assert_eq!(stops(app), 1, "the pipe does not go through");
        assert!(app.screen().main.is_none());
    });
}
