//! What a phone does to a window: bars and a notch over its edges, a keyboard that rises, a key Back, fingers.

use i_slint_backend_testing::ElementHandle;
use i_slint_core::input::TouchPhase;
use i_slint_core::{InternalToken, lengths::LogicalEdges, window::WindowInner};
use slint::platform::Key;
use slint::{ComponentHandle, LogicalPosition, LogicalSize};
use storyrod::app::{Command, Here, Slot};
use storyrod::gui::Desk;

use crate::harness::{desk, keys, pinch, scroll, settle, shot, touch};
use crate::places::demo;

const PHONE: (u32, u32) = (412, 892);

/// Top, bottom, left and right, as the system says them.
fn bars(desk: &Desk, top: f32, bottom: f32, left: f32, right: f32) {
    let edges = LogicalEdges::new(top, bottom, left, right);
    WindowInner::from_pub(desk.window().window()).set_window_item_safe_area(edges);
    settle();
}

/// Left, top, right and bottom of what bears a label.
#[track_caller]
fn place(desk: &Desk, label: &str) -> [f32; 4] {
    let found = ElementHandle::find_by_accessible_label(desk.window(), label).next();
    let found = found.unwrap_or_else(|| panic!("nothing is called {label:?}"));
    let (at, size) = (found.absolute_position(), found.size());
    [at.x, at.y, at.x + size.width, at.y + size.height]
}

#[test]
fn nothing_lies_under_the_bars_of_the_system() {
    for (size, edges) in [
        (PHONE, [48.0, 34.0, 0.0, 0.0]),
        ((892, 412), [0.0, 21.0, 44.0, 44.0]),
        ((1180, 820), [24.0, 20.0, 0.0, 0.0]),
    ] {
        let desk = desk(demo(), size);
        desk.act(|app| app.send(Command::Go(Here::Room(0))));
        settle();
        let free = place(&desk, "Back");
        let [top, bottom, left, right] = edges;
        bars(&desk, top, bottom, left, right);
        let held = place(&desk, "Back");
        assert_eq!(held[1] - free[1], top, "{size:?}");
        assert_eq!(held[0] - free[0], left, "{size:?}");
        let (wide, high) = (size.0 as f32, size.1 as f32);
        for label in ["Rooms", "Bench", "List", "Steps", "Back", "Undo"] {
            let Some(found) = ElementHandle::find_by_accessible_label(desk.window(), label).next()
            else {
                continue;
            };
            let (at, size) = (found.absolute_position(), found.size());
            assert!(at.x >= left && at.x + size.width <= wide - right, "{label}");
            assert!(
                at.y >= top && at.y + size.height <= high - bottom,
                "{label}"
            );
        }
        shot(&desk, &format!("bars-{}", size.0));
    }
}

#[test]
fn the_pad_stands_above_the_keyboard_of_the_system() {
    let desk = desk(demo(), PHONE);
    bars(&desk, 48.0, 34.0, 0.0, 0.0);
    desk.act(|app| {
        app.send(Command::Go(Here::Room(0)));
        app.send(Command::Pad(Slot::RoomName(0)));
    });
    settle();
    let rises = 300.0;
    desk.window().window().set_virtual_keyboard(
        LogicalPosition::new(0.0, 892.0 - rises),
        LogicalSize::new(412.0, rises),
        InternalToken,
    );
    settle();
    shot(&desk, "keyboard-up");
    let done = place(&desk, "OK");
    assert!(done[3] <= 892.0 - rises && done[1] >= 48.0, "{done:?}");
    let nowhere = (LogicalPosition::default(), LogicalSize::default());
    (desk.window().window()).set_virtual_keyboard(nowhere.0, nowhere.1, InternalToken);
    settle();
    assert!(place(&desk, "OK")[3] > 892.0 - rises);
}

#[test]
fn back_puts_the_pad_away_before_it_leaves_the_page() {
    let desk = desk(demo(), PHONE);
    desk.act(|app| {
        app.send(Command::Go(Here::Rooms));
        app.send(Command::Go(Here::Room(0)));
    });
    settle();
    let back = String::from(char::from(Key::Back));
    for slot in [Slot::RoomName(0), Slot::WallHeight(0, 0)] {
        desk.act(|app| app.send(Command::Pad(slot.clone())));
        settle();
        keys(&desk, &back);
        assert!(desk.with_app(|app| app.pad.is_none()), "{slot:?}");
        assert_eq!(desk.with_app(|app| app.here().clone()), Here::Room(0));
    }
    keys(&desk, &back);
    assert_eq!(desk.with_app(|app| app.here().clone()), Here::Rooms);
}

#[test]
fn a_phone_on_its_side_shows_picture_figures_and_pad() {
    let desk = desk(demo(), (892, 412));
    desk.act(|app| app.send(Command::Go(Here::Room(0))));
    settle();
    shot(&desk, "side-room");
    desk.act(|app| app.send(Command::Pad(Slot::WallHeight(0, 0))));
    settle();
    shot(&desk, "side-pad");
    let done = place(&desk, "OK");
    assert!(done[3] <= 412.0, "{done:?}");
}

#[test]
fn one_finger_taps_and_pulls_the_list_and_two_tap_nothing() {
    let desk = desk(demo(), PHONE);
    desk.act(|app| app.send(Command::Go(Here::Rooms)));
    settle();
    let rooms = |desk: &Desk| desk.with_app(|app| app.job.rooms.len());
    let had = rooms(&desk);
    let [left, top, right, bottom] = place(&desk, "Rectangle");
    let middle = ((left + right) / 2.0, (top + bottom) / 2.0);
    pinch(&desk, middle, 10.0, 90.0);
    pinch(&desk, middle, 60.0, 15.0);
    assert_eq!(rooms(&desk), had);
    assert_eq!(desk.with_app(|app| app.here().clone()), Here::Rooms);
    // A plan with figures to tap: two fingers open no pad, and put no point.
    desk.act(|app| app.send(Command::Go(Here::Room(0))));
    settle();
    let job = desk.with_app(|app| app.job.clone());
    pinch(&desk, (206.0, 220.0), 20.0, 100.0);
    assert!(desk.with_app(|app| app.pad.is_none() && app.job == job));
    // One finger pulls the list, and taps.
    let far = desk.scrolled();
    touch(&desk, 1, (206.0, 700.0), TouchPhase::Started);
    for step in 1u8..=20 {
        let y = 700.0 - 12.0 * f32::from(step);
        touch(&desk, 1, (206.0, y), TouchPhase::Moved);
        settle();
    }
    touch(&desk, 1, (206.0, 460.0), TouchPhase::Ended);
    settle();
    assert!(desk.scrolled() < far - 100.0, "{}", desk.scrolled());
    assert!(desk.with_app(|app| app.pad.is_none()));
    scroll(&desk, 100_000.0);
    let [left, top, right, bottom] = place(&desk, "Back");
    let middle = ((left + right) / 2.0, (top + bottom) / 2.0);
    touch(&desk, 1, middle, TouchPhase::Started);
    touch(&desk, 1, middle, TouchPhase::Ended);
    settle();
    assert_eq!(desk.with_app(|app| app.here().clone()), Here::Rooms);
}
