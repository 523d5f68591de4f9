//! A window of so many pixels that nobody sees: real layout, fonts and taps, and a clock that stands still.

use std::rc::Rc;
use std::time::Duration;

use i_slint_backend_testing::{
    ElementHandle, ElementQuery, TestingBackend, TestingBackendOptions, mock_elapsed_time,
};
use i_slint_core::input::TouchPhase;
use i_slint_core::lengths::LogicalPoint;
use i_slint_core::platform::InternalEvent;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition, LogicalSize, PhysicalSize, SharedString};
use storyrod::app::App;
use storyrod::gui::{Desk, open};

/// Opens the program at a size.
pub fn desk(app: App, (width, height): (u32, u32)) -> Rc<Desk> {
    thread_local!(static ONCE: () = {
        let options = TestingBackendOptions { mock_time: true, threading: false, renderer_name: Some("software".into()) };
        slint::platform::set_platform(Box::new(TestingBackend::new(options))).expect("one platform a thread");
    });
    ONCE.with(|()| ());
    let desk = open(app).expect("the testing backend needs no display");
    desk.window().show().unwrap();
    let window = desk.window().window();
    window.dispatch_event(WindowEvent::ScaleFactorChanged { scale_factor: 1.0 });
    window.set_size(PhysicalSize::new(width, height));
    window.dispatch_event(WindowEvent::Resized {
        size: LogicalSize::new(width as f32, height as f32),
    });
    window.dispatch_event(WindowEvent::WindowActiveChanged(true));
    settle();
    desk
}

/// Lets deferred changes and animations run out.
pub fn settle() {
    for _ in 0..6 {
        mock_elapsed_time(Duration::from_millis(16));
    }
}

/// Every visible label, for a message.
pub fn labels(desk: &Desk) -> Vec<String> {
    let all = ElementQuery::from_root(desk.window()).find_all();
    all.iter()
        .filter_map(ElementHandle::accessible_label)
        .map(|label| label.to_string())
        .collect()
}

/// What bears a label and is in sight.
fn in_sight(desk: &Desk, label: &str) -> Option<ElementHandle> {
    ElementHandle::find_by_accessible_label(desk.window(), label).next()
}

/// Turns the wheel over the list.
pub fn scroll(desk: &Desk, by: f32) {
    let size = desk.window().window().size().to_logical(1.0);
    let position = LogicalPosition::new(size.width * 0.85, size.height * 0.8);
    desk.window()
        .window()
        .dispatch_event(WindowEvent::PointerScrolled {
            position,
            delta_x: 0.0,
            delta_y: by,
        });
    settle();
}

/// Scrolls until what bears a label is in sight.
#[track_caller]
pub fn reach(desk: &Desk, label: &str) -> ElementHandle {
    if let Some(found) = in_sight(desk, label) {
        return found;
    }
    scroll(desk, 100_000.0);
    let mut seen = Vec::new();
    for _ in 0..60 {
        if let Some(found) = in_sight(desk, label) {
            return found;
        }
        seen.extend(labels(desk));
        scroll(desk, -150.0);
    }
    seen.dedup();
    panic!("nothing is called {label:?}; there is: {seen:#?}")
}

/// Taps what bears a label, as a finger or a screen reader would, scrolling to it first.
#[track_caller]
pub fn tap(desk: &Desk, label: &str) {
    let mut element = reach(desk, label);
    // What looks out from under the bar at the foot is pulled up first; the bar itself stays where it is.
    let foot = desk.window().window().size().to_logical(1.0).height - 110.0;
    if element.absolute_position().y + element.size().height > foot {
        scroll(desk, -200.0);
        element = reach(desk, label);
    }
    let (at, size) = (element.absolute_position(), element.size());
    let inside = desk.window().window().size().to_logical(1.0);
    let (x, y) = (at.x + size.width / 2.0, at.y + size.height / 2.0);
    if x > 0.0 && y > 0.0 && x < inside.width && y < inside.height {
        element.mock_single_click(PointerEventButton::Left);
    } else {
        element.invoke_accessible_default_action();
    }
    settle();
}

/// A finger comes down, moves or lifts.
pub fn touch(desk: &Desk, id: i32, (x, y): (f32, f32), phase: TouchPhase) {
    let position = LogicalPoint::new(x, y);
    let event = InternalEvent::Touch {
        id,
        position,
        phase,
    };
    let window = desk.window().window();
    window.dispatch_event(WindowEvent::internal(event));
}

/// Two fingers about a middle, so far from it, go to where they are so far, side by side.
pub fn pinch(desk: &Desk, middle: (f32, f32), from: f32, to: f32) {
    let at = |far: f32| [(middle.0 - far, middle.1), (middle.0 + far, middle.1)];
    for (id, place) in (1..).zip(at(from)) {
        touch(desk, id, place, TouchPhase::Started);
        settle();
    }
    for step in 1u8..=20 {
        let far = from + (to - from) * f32::from(step) / 20.0;
        for (id, place) in (1..).zip(at(far)) {
            touch(desk, id, place, TouchPhase::Moved);
        }
    }
    for (id, place) in (1..).zip(at(to)) {
        touch(desk, id, place, TouchPhase::Ended);
        settle();
    }
    // So long nothing is tapped by the finger that stays.
    mock_elapsed_time(Duration::from_millis(300));
}

/// Types on a keyboard.
pub fn keys(desk: &Desk, text: &str) {
    for c in text.chars() {
        let text = SharedString::from(c);
        desk.window()
            .window()
            .dispatch_event(WindowEvent::KeyPressed { text: text.clone() });
        desk.window()
            .window()
            .dispatch_event(WindowEvent::KeyReleased { text });
    }
    settle();
}

/// Saves the picture of a screen, for eyes; gives its size and how many colours it has.
pub fn shot(desk: &Desk, name: &str) -> (u32, u32, usize) {
    settle();
    let picture = desk
        .window()
        .window()
        .take_snapshot()
        .expect("the software renderer draws");
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("screens");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(format!("{name}.png"));
    image::save_buffer(
        file,
        picture.as_bytes(),
        picture.width(),
        picture.height(),
        image::ColorType::Rgba8,
    )
    .unwrap();
    let colours: std::collections::HashSet<[u8; 4]> = picture
        .as_bytes()
        .as_chunks::<4>()
        .0
        .iter()
        .copied()
        .collect();
    (picture.width(), picture.height(), colours.len())
}
