//! What is typed on the pad, and what becomes of it.

use super::*;
use crate::app::Keeper;
use crate::measure::Units;
use crate::site::{Room, What};

fn app() -> App {
    let begun = chrono::DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
    job.add_room(Room::rectangle("Bath"));
    App::new(job, Keeper::nowhere())
}

/// Types and presses OK; gives what the pad then says is wrong.
fn types(app: &mut App, slot: &Slot, typed: &str) -> Option<String> {
    if app.pad.as_ref().map(|pad| &pad.slot) != Some(slot) {
        app.send(Command::Pad(slot.clone()));
    }
    let pad = app.pad.as_mut().unwrap();
    (pad.typed, pad.fresh) = (typed.into(), false);
    app.take();
    let open = app.pad.as_ref().filter(|pad| pad.slot == *slot);
    open.map(|pad| pad.wrong.clone())
}

/// A foot too short across: said under the next question, with the way to measure it again, which does not stop
/// anybody; typed once more it is kept, and the right figure clears it.
#[test]
fn a_misread_diagonal_is_named_at_once() {
    let mut app = app();
    app.send(Command::Of(
        0,
        super::super::RoomChoice::Much(crate::site::Asked::Square),
    ));
    for (what, typed) in [(What::Wall(0), "96"), (What::Wall(1), "60")] {
        types(&mut app, &Slot::Measure(0, what), typed);
        assert!(app.told().is_none());
    }
    let across = Slot::Measure(0, What::Diagonal(0, 2));
    types(&mut app, &across, "101 3/16");
    let (said, again) = app
        .told()
        .map(|(text, again)| (text.to_owned(), again))
        .unwrap();
    let said = said.replace('\u{a0}', " ");
    assert!(
        said.starts_with("The diagonal just typed reads 8′ 5"),
        "{said}"
    );
    assert!(said.contains("the others say 9′ 5"), "{said}");
    assert!(
        said.ends_with("if the corners are square. Did you miss a foot?"),
        "{said}"
    );
    assert_eq!(again, Command::Pad(across.clone()));
    // The next question is open, and is answered as if nothing had been said.
    let next = app.pad.as_ref().map(|pad| pad.slot.clone()).unwrap();
    assert_ne!(next, across);
    types(&mut app, &Slot::Measure(0, What::Ceiling), "96");
    assert!(app.told().is_some());
    // With the pad closed the survey has it before its next question.
    let first = app.screen().rows.into_iter().next();
    assert!(matches!(first, Some(Row::Note { text, .. }) if text.contains("miss a foot")));
    app.send(again);
    types(&mut app, &across, "101 3/16");
    assert!(app.told().is_none());
    types(&mut app, &across, "113 3/16");
    assert!(app.told().is_none());
    types(&mut app, &Slot::Measure(0, What::Wall(2)), "84");
    let said = app.told().map(|(text, _)| text.replace('\u{a0}', " "));
    assert!(said.is_some_and(|said| said.starts_with("Wall C reads 7′; the others say 8′")));
    // An undo takes back what was said with it.
    app.send(Command::Undo);
    app.send(Command::Pad(across));
    assert!(app.told().is_none());
}

/// Undo takes back the last figure, not the one that is being typed; what is typed when another figure is tapped is taken.
#[test]
fn what_is_being_typed_outlasts_an_undo_and_a_tap_elsewhere() {
    let mut app = app();
    app.send(Command::Go(Here::Survey(0)));
    let slot = |wall| Slot::Measure(0, What::Wall(wall));
    let typing = |app: &mut App, typed: &str| {
        let pad = app.pad.as_mut().unwrap();
        (pad.typed, pad.fresh) = (typed.into(), false);
    };
    types(&mut app, &slot(0), "96");
    assert_eq!(app.pad.as_ref().map(|pad| &pad.slot), Some(&slot(1)));
    typing(&mut app, "60 1/2");
    app.send(Command::Undo);
    assert_eq!(app.job.rooms[0].walls[0].length, None);
    assert_eq!(
        app.pad.as_ref().map(|pad| pad.typed.as_str()),
        Some("60 1/2")
    );
    app.send(Command::Pad(slot(0)));
    assert_eq!(
        app.job.rooms[0].walls[1].length,
        Some(Length::in_64(60, 32))
    );
    assert_eq!(app.pad.as_ref().map(|pad| &pad.slot), Some(&slot(0)));
    // What cannot be taken stays where it is.
    typing(&mut app, "7 x");
    app.send(Command::Pad(slot(2)));
    let pad = app.pad.as_ref().unwrap();
    assert_eq!((&pad.slot, pad.typed.as_str()), (&slot(0), "7 x"));
    assert!(!pad.wrong.is_empty());
    // Its wall gone, a length is in the hand.
    app.send(Command::Go(Here::Room(0)));
    app.send(Command::Jog(0, 0));
    app.send(Command::Pad(Slot::WallLength(0, 5)));
    typing(&mut app, "12");
    app.send(Command::Undo);
    assert!(app.pad.is_none());
    assert_eq!(app.held, Some(Length::inches(12)));
}

/// One message, the same however often it is typed, and the room stays as it was.
#[test]
fn a_wall_of_nothing_is_refused_with_one_reason() {
    let mut app = app();
    let slot = Slot::Measure(0, What::Wall(0));
    for _ in 0..3 {
        let said = types(&mut app, &slot, "0");
        assert_eq!(
            said.as_deref(),
            Some("This has to be more than nothing. Measure it again.")
        );
    }
    assert_eq!(app.job.rooms[0].walls[0].length, None);
}

/// Asked once, then kept; opened and confirmed it is not asked about again.
#[test]
fn a_figure_in_doubt_is_asked_about_once_and_kept_when_typed_again() {
    let mut app = app();
    let slot = Slot::Measure(0, What::Wall(0));
    assert!(types(&mut app, &slot, "4 in").is_some_and(|said| said.contains("4 ft")));
    assert_eq!(app.pad.as_ref().map(|pad| pad.typed.as_str()), Some("4 ft"));
    assert_eq!(types(&mut app, &slot, "4 in"), None);
    let read = |app: &App| app.job.rooms[0].walls[0].length;
    assert_eq!(read(&app), Some(Length::inches(4)));
    app.pad = None;
    assert_eq!(types(&mut app, &slot, "4\""), None);
    // What was meant is taken by Enter alone. Two lines of the roll, two steps.
    app.send(Command::Undo);
    app.send(Command::Undo);
    types(&mut app, &slot, "4 in");
    app.take();
    assert_eq!(read(&app), Some(Length::feet(4)));
}
