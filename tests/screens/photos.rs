//! The log, a picture under the finger, a wall laid flat, what is behind it on its elevation and beside a patch.

use std::path::{Path, PathBuf};

use i_slint_core::input::TouchPhase;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition};
use storyrod::app::{
    App, Command, Here, PhotoCommand, PhotoSlot, Row, Side, Slot, Tone, Tool, start,
};
use storyrod::drawing::Theme;
use storyrod::geometry::{Homography, Spot};
use storyrod::gui::Desk;
use storyrod::measure::Length;
use storyrod::photo::{Figure, Format, Object, Stage, What, encode};
use storyrod::site::Known;

use crate::harness::{desk, keys, labels, pinch, settle, shot, tap, touch};

const SIZE: (u32, u32) = (2000, 1500);
/// The wall of the picture, in metres from its left corner and down from 2 m.
const WALL: [Spot; 4] = [[0.0, 0.0], [1.6, 0.0], [1.6, 1.3], [0.0, 1.3]];
/// Where its corners are seen.
const SEEN: [Spot; 4] = [
    [130.0, 170.0],
    [1880.0, 60.0],
    [1900.0, 1470.0],
    [90.0, 1360.0],
];

fn seen(place: Spot) -> Spot {
    Homography::between(&WALL, &SEEN)
        .unwrap()
        .of(place)
        .unwrap()
}

/// A bare wall with studs, two copper pipes, a drain and a sheet of board, seen a little from the left.
fn wall() -> Vec<u8> {
    let there = Homography::between(&SEEN, &WALL).unwrap();
    let within = |x: f64, from: f64, to: f64| (from..to).contains(&x);
    let colour = |[x, y]: Spot| -> [u8; 3] {
        if within(x, 0.14, 0.44) && within(y, 0.5, 0.9) {
            return [238, 236, 228];
        }
        if y > 0.35 && (within(x, 0.833, 0.847) || within(x, 1.033, 1.047)) {
            return [180, 100, 48];
        }
        if within(x, 0.55, 0.6) && y > 0.8 {
            return [236, 236, 236];
        }
        if (0..5).any(|n| {
            within(
                x,
                0.0 + 0.4064 * f64::from(n),
                0.038 + 0.4064 * f64::from(n),
            )
        }) {
            return [214, 180, 134];
        }
        let shade = 150.0 + 26.0 * x - 14.0 * y;
        [shade as u8, (shade * 0.96) as u8, (shade * 0.88) as u8]
    };
    let mut rgb = Vec::with_capacity(SIZE.0 as usize * SIZE.1 as usize * 3);
    for y in 0..SIZE.1 {
        for x in 0..SIZE.0 {
            let place = there.of([f64::from(x) + 0.5, f64::from(y) + 0.5]);
            let on = place.filter(|p| within(p[0], 0.0, 1.6) && within(p[1], 0.0, 1.3));
            rgb.extend(on.map_or([92, 98, 104], colour));
        }
    }
    encode(SIZE, &rgb, Format::Jpeg).unwrap()
}

struct Site {
    folder: tempfile::TempDir,
    picture: PathBuf,
}

fn site() -> Site {
    let folder = tempfile::tempdir().unwrap();
    let picture = folder.path().join("wall f.jpg");
    std::fs::write(&picture, wall()).unwrap();
    Site { folder, picture }
}

fn app(folder: &Path) -> App {
    start(&folder.join("data"), None, false).unwrap()
}

fn photo(command: PhotoCommand) -> Command {
    Command::Photo(command)
}

/// Types into a field of the first picture.
fn fill(app: &mut App, field: PhotoSlot, text: &str) {
    app.send(Command::Pad(Slot::Photo(0, field)));
    let pad = app.pad.as_mut().unwrap();
    (pad.typed, pad.fresh) = (text.to_owned(), false);
    app.take();
    let wrong = app.pad.as_ref().map_or("", |pad| &pad.wrong);
    assert_eq!(wrong, "", "{field:?} {text}");
    app.pad = None;
}

/// A finger from one place of the window to another.
fn drag(desk: &Desk, from: (f32, f32), to: (f32, f32)) {
    let window = desk.window().window();
    let at = |(x, y): (f32, f32)| LogicalPosition::new(x, y);
    let button = PointerEventButton::Left;
    window.dispatch_event(WindowEvent::PointerMoved { position: at(from) });
    window.dispatch_event(WindowEvent::PointerPressed {
        position: at(from),
        button,
    });
    for n in 1u8..=6 {
        let share = f32::from(n) / 6.0;
        let on = (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        );
        window.dispatch_event(WindowEvent::PointerMoved { position: at(on) });
    }
    window.dispatch_event(WindowEvent::PointerReleased {
        position: at(to),
        button,
    });
    settle();
}

/// The picture with its reference, an anchor, an estimate, a tape and two pipes.
fn marked(app: &mut App, picture: &Path) {
    app.take_pictures(&[picture.to_owned()]);
    app.wait_for_pictures();
    assert_eq!(app.job.photos.len(), 1, "{:?}", app.said);
    let room = app.job.rooms[0].id;
    for command in [
        PhotoCommand::Room(0, Some(room)),
        PhotoCommand::Wall(0, Some(5)),
        PhotoCommand::Stage(0, Some(Stage::Stripped)),
    ] {
        app.send(photo(command));
    }
    app.send(Command::Go(Here::Photo(0)));
    fill(app, PhotoSlot::Title, "Before closing up");
    mark_all(app);
    app.wait_for_pictures();
}

fn mark_all(app: &mut App) {
    use storyrod::photo::{Anchor, Behind, Flat, Mark};
    use storyrod::site::HiddenKind;
    let mut photo_now = (*app.job.photos[0]).clone();
    let corners = [[0.14, 0.5], [0.44, 0.5], [0.44, 0.9], [0.14, 0.9]].map(seen);
    photo_now.flat = Some(Flat::new(corners, Object::Taped));
    photo_now.anchor = Some(Anchor {
        spot: seen([0.14, 0.9]),
        from_left: None,
        up: None,
    });
    photo_now.add_mark(
        What::Dimension(None),
        vec![seen([0.038, 1.15]), seen([0.4064, 1.15])],
    );
    photo_now.add_mark(
        What::Dimension(None),
        vec![seen([0.84, 0.42]), seen([1.04, 0.42])],
    );
    for x in [0.84, 1.04] {
        let pipe = Behind {
            material: "Copper".into(),
            ..Behind::new(HiddenKind::Pipe)
        };
        photo_now.add_mark(
            What::Hidden(Box::new(pipe)),
            vec![seen([x, 0.36]), seen([x, 1.25])],
        );
    }
    let marks: Vec<Mark> = photo_now.marks.clone();
    assert_eq!(marks.len(), 4);
    app.job.photos[0] = std::sync::Arc::new(photo_now);
    // What was put in by hand becomes an edit with the first figure that is typed.
    for (field, text) in [
        (PhotoSlot::Ref(Side::Width), "300mm"),
        (PhotoSlot::Ref(Side::Height), "400mm"),
        (PhotoSlot::AnchorLeft, "140mm"),
        (PhotoSlot::AnchorUp, "1100mm"),
        (PhotoSlot::Depth(3), "2\""),
    ] {
        fill(app, field, text);
    }
}

const SIZES: [(&str, (u32, u32)); 4] = [
    ("phone", (412, 892)),
    ("tablet", (1180, 820)),
    ("upright", (820, 1180)),
    ("desktop", (1440, 900)),
];

#[test]
fn a_picture_is_marked_measured_and_pinned_to_its_wall() {
    let site = site();
    let mut made = app(site.folder.path());
    marked(&mut made, &site.picture);
    let view = made.job.photos[0].view().unwrap();
    let Some(Figure::Estimate(found)) = made.job.photos[0].figure(2, Some(&view)) else {
        panic!("no estimate");
    };
    let off = (found.length - Length::mm(200)).abs();
    assert!(off <= found.give, "{found:?} should be 200 mm");
    made.send(photo(PhotoCommand::PinAll(0)));
    let hidden = made.job.rooms[0].hidden.clone();
    assert_eq!(hidden.len(), 2, "{}", made.said);
    for (hidden, x) in hidden.iter().zip([0.84, 1.04]) {
        let Known::Picture(give) = hidden.known else {
            panic!("by tape");
        };
        let off = (hidden.line[0].from_left.metres() - x).abs();
        assert!(off <= give.metres(), "{hidden:?}");
        assert!(
            (hidden.line[0].up.metres() - 1.64).abs() <= give.metres(),
            "{hidden:?}"
        );
    }
    // The patch of the demo is cut just there.
    made.send(Command::Go(Here::Task(0)));
    let near = |app: &App| {
        let rows = app.screen().rows;
        rows.iter().any(|row| matches!(row, Row::Note { tone: Tone::Stop, text, .. } if text.contains("Pipe (Copper) behind this wall, known from a picture to ±")))
    };
    assert!(near(&made), "{:#?}", made.screen().rows);
    made.send(Command::Undo);
    assert!(!near(&made), "nothing is pinned any more");
    made.send(Command::Redo);
    made.finish().unwrap();
    drop(made);
    for (name, size) in SIZES {
        let mut app = app_of(&site);
        app.send(Command::Go(Here::Photo(0)));
        app.wait_for_pictures();
        let desk = desk(app, size);
        assert!(shot(&desk, &format!("photo-{name}-day")).2 > 200);
        desk.act(|app| app.send(photo(PhotoCommand::Flat(true))));
        assert!(shot(&desk, &format!("photo-flat-{name}-day")).2 > 200);
        desk.act(|app| app.send(photo(PhotoCommand::Select(Some(3)))));
        shot(&desk, &format!("photo-hidden-{name}-day"));
        desk.act(|app| {
            app.send(photo(PhotoCommand::Lay(0, true)));
            app.send(Command::Go(Here::Wall(0, 5)));
        });
        shot(&desk, &format!("photo-elevation-{name}-day"));
        desk.act(|app| app.send(Command::Go(Here::Task(0))));
        shot(&desk, &format!("photo-patch-{name}-day"));
        desk.act(|app| app.send(Command::Go(Here::Photos)));
        assert!(shot(&desk, &format!("photos-{name}-day")).2 > 60);
    }
    for (light, theme) in [("night", Theme::Night), ("sun", Theme::Sun)] {
        let mut app = app_of(&site);
        app.send(Command::Theme(theme));
        app.send(Command::Go(Here::Photo(0)));
        app.wait_for_pictures();
        let desk = desk(app, SIZES[0].1);
        shot(&desk, &format!("photo-phone-{light}"));
        desk.act(|app| app.send(Command::Go(Here::Photos)));
        shot(&desk, &format!("photos-phone-{light}"));
    }
}

/// The job that was marked, opened anew once its last edit is on the disk.
fn app_of(site: &Site) -> App {
    let mut made = app(site.folder.path());
    if made.job.photos.is_empty() {
        marked(&mut made, &site.picture);
    }
    if made.job.rooms[0].hidden.is_empty() {
        made.send(photo(PhotoCommand::PinAll(0)));
    }
    made
}

#[test]
fn a_finger_draws_a_dimension_and_the_pad_asks_for_it() {
    let site = site();
    let mut app = app(site.folder.path());
    app.take_pictures(std::slice::from_ref(&site.picture));
    app.wait_for_pictures();
    app.send(Command::Go(Here::Photo(0)));
    app.wait_for_pictures();
    let desk = desk(app, (412, 892));
    tap(&desk, "Dimension");
    drag(&desk, (120.0, 200.0), (270.0, 260.0));
    desk.with_app(|app| {
        assert_eq!(app.job.photos[0].marks.len(), 1);
        assert_eq!(
            app.pad.as_ref().map(|pad| pad.slot.clone()),
            Some(Slot::Photo(0, PhotoSlot::Length(1)))
        );
    });
    shot(&desk, "photo-drawn-phone-day");
    keys(&desk, "16");
    keys(&desk, "\n");
    desk.with_app(|app| {
        let mark = &app.job.photos[0].marks[0];
        let What::Dimension(Some(taped)) = mark.what else {
            panic!("{mark:?}");
        };
        assert_eq!(taped.length, Length::inches(16));
        assert_eq!(taped.give, Length::in_64(0, 4));
    });
    // Keys nudge the point in hand, and each nudge can be undone.
    let point = |desk: &Desk| desk.with_app(|app| app.job.photos[0].marks[0].points[0]);
    let before = point(&desk);
    keys(&desk, "\u{F703}");
    assert!(point(&desk)[0] > before[0], "{before:?} {:?}", point(&desk));
    desk.act(|app| app.send(Command::Undo));
    assert_eq!(point(&desk), before);
    // A finger takes hold of an end and moves it.
    desk.act(|app| app.send(photo(PhotoCommand::Tool(Tool::Look))));
    drag(&desk, (270.0, 260.0), (330.0, 330.0));
    let end = desk.with_app(|app| app.job.photos[0].marks[0].points[1]);
    assert!(end[1] > before[1] + 200.0, "{end:?}");
    shot(&desk, "photo-moved-phone-day");
}

/// A window that holds the finger down shows the loupe.
#[test]
fn a_loupe_shows_what_the_finger_hides() {
    let site = site();
    let mut app = app_of(&site);
    app.send(Command::Go(Here::Photo(0)));
    app.wait_for_pictures();
    let desk = desk(app, (412, 892));
    desk.act(|app| app.send(photo(PhotoCommand::Tool(Tool::Dimension))));
    settle();
    let before = desk.window().window().take_snapshot().unwrap();
    let window = desk.window().window();
    let at = |x, y| LogicalPosition::new(x, y);
    let button = PointerEventButton::Left;
    window.dispatch_event(WindowEvent::PointerPressed {
        position: at(120.0, 300.0),
        button,
    });
    window.dispatch_event(WindowEvent::PointerMoved {
        position: at(150.0, 330.0),
    });
    shot(&desk, "photo-loupe-phone-day");
    let during = desk.window().window().take_snapshot().unwrap();
    // In the corner that the finger is not in.
    let pixel = |picture: &slint::SharedPixelBuffer<slint::Rgba8Pixel>, x: usize, y: usize| {
        picture.as_slice()[y * picture.width() as usize + x]
    };
    let changed = (0..100).filter(|n| {
        let (x, y) = (300 + n % 10 * 8, 90 + n / 10 * 8);
        pixel(&before, x, y) != pixel(&during, x, y)
    });
    assert!(changed.count() > 60);
    window.dispatch_event(WindowEvent::PointerReleased {
        position: at(150.0, 330.0),
        button,
    });
}

#[test]
fn files_are_chosen_in_the_window_and_what_is_none_says_so() {
    let site = site();
    let text = site.folder.path().join("letter.jpg");
    std::fs::write(&text, "no picture").unwrap();
    let desk = desk(app(site.folder.path()), (412, 892));
    desk.act(|app| app.send(Command::Go(Here::Photos)));
    let files = vec![site.picture.clone(), text];
    desk.set_picker(std::rc::Rc::new(move |_, done| done(files.clone())));
    tap(&desk, "Files …");
    desk.act(App::wait_for_pictures);
    desk.with_app(|app| assert_eq!(app.job.photos.len(), 1));
    shot(&desk, "photos-not-taken-phone-day");
    let said = labels(&desk);
    assert!(
        said.iter()
            .any(|label| label.contains("letter.jpg: It is no picture")),
        "{said:#?}"
    );
}

#[test]
fn words_are_typed_into_a_pad_that_is_opened_a_second_time() {
    let site = site();
    let desk = desk(app(site.folder.path()), (412, 892));
    desk.act(|app| app.send(Command::Go(Here::Photos)));
    for words in ["tap", "drain"] {
        let search = Slot::Photo(0, PhotoSlot::Search);
        desk.act(|app| app.send(Command::Pad(search)));
        settle();
        keys(&desk, words);
        desk.with_app(|app| {
            let typed = app.pad.as_ref().map(|pad| pad.typed.clone());
            assert_eq!(typed.as_deref(), Some(words));
        });
        keys(&desk, "\n");
        settle();
        desk.with_app(|app| assert!(app.pad.is_none(), "{words}"));
    }
}

#[test]
fn a_picture_on_the_clipboard_is_pasted_and_none_says_so() {
    use storyrod::gui::Pasted;
    let site = site();
    let desk = desk(app(site.folder.path()), (412, 892));
    desk.act(|app| app.send(Command::Go(Here::Photos)));
    desk.set_clipboard(std::rc::Rc::new(|| Pasted::Neither));
    tap(&desk, "Paste");
    desk.with_app(|app| assert!(app.said.contains("on the clipboard"), "{}", app.said));
    let rgba: Vec<u8> = (0..64 * 48).flat_map(|n| [n as u8, 80, 160, 255]).collect();
    desk.set_clipboard(std::rc::Rc::new(move || {
        Pasted::Pixels((64, 48), rgba.clone())
    }));
    tap(&desk, "Paste");
    desk.act(App::wait_for_pictures);
    desk.with_app(|app| {
        assert_eq!(app.job.photos.len(), 1, "{}", app.said);
        assert_eq!(app.job.photos[0].size, (64, 48));
    });
}

/// What a camera sees, the shutter, and what it says when it is gone.
#[test]
fn a_camera_is_looked_through_and_its_picture_is_in_the_log() {
    use storyrod::photo::{Camera, Frame, NoCamera};
    struct Drawn(Vec<u8>);
    impl Camera for Drawn {
        fn frame(&mut self) -> Result<Frame, NoCamera> {
            std::thread::sleep(std::time::Duration::from_millis(5));
            Ok(Frame::Jpeg(self.0.clone()))
        }
    }
    let site = site();
    let mut app = app(site.folder.path());
    app.set_camera_source(std::sync::Arc::new(|| Ok(Box::new(Drawn(wall())))));
    let desk = desk(app, (412, 892));
    desk.act(|app| app.send(Command::Go(Here::Photos)));
    tap(&desk, "Look through a camera of this device");
    let wait = |until: &dyn Fn(&App) -> bool| {
        for _ in 0..2_000 {
            desk.act(|app| {
                app.look_through_camera();
                app.pictures_came();
            });
            if desk.with_app(until) {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(5));
        }
    };
    wait(&|app| format!("{:?}", app.screen().rows).contains("Take the picture"));
    desk.act(|_| ());
    assert!(shot(&desk, "camera-phone-day").2 > 200);
    tap(&desk, "Take the picture");
    wait(&|app| !app.job.photos.is_empty());
    desk.with_app(|app| assert_eq!(app.job.photos.len(), 1, "{}", app.said));
}

/// An outline traced on the flattened wall: its template, and where it stands on the elevation.
#[test]
fn an_outline_is_a_template_and_stands_on_its_wall() {
    let site = site();
    let mut app = app_of(&site);
    let mut now = (*app.job.photos[0]).clone();
    let corners = [[0.5, 0.5], [0.9, 0.5], [0.9, 0.8], [0.5, 0.8]];
    let outline = now.add_mark(What::Area(None), corners.map(seen).to_vec());
    let corners = [[0.6, 0.6], [0.7, 0.6], [0.7, 0.7], [0.6, 0.7]];
    now.add_mark(What::Area(None), corners.map(seen).to_vec());
    app.job.photos[0] = std::sync::Arc::new(now);
    app.send(Command::Go(Here::Traced(0, outline)));
    for (name, size) in [SIZES[0], SIZES[3]] {
        let mut app = App::new(app.job.clone(), storyrod::app::Keeper::nowhere());
        app.send(Command::Go(Here::Traced(0, outline)));
        let desk = desk(app, size);
        shot(&desk, &format!("photo-trace-{name}-day"));
        assert!(
            labels(&desk)
                .iter()
                .any(|label| label.contains("Estimated from a picture"))
        );
        desk.act(|app| app.send(Command::Go(Here::Wall(0, 5))));
        shot(&desk, &format!("photo-trace-elevation-{name}-day"));
        desk.act(|app| app.send(photo(PhotoCommand::TileTrace(0, outline))));
        shot(&desk, &format!("photo-trace-tile-{name}-day"));
    }
}

/// Thousands of entries: only the lines in sight are made.
#[test]
fn a_log_of_thousands_makes_the_lines_in_sight() {
    let site = site();
    let mut app = app_of(&site);
    let one = (*app.job.photos[0]).clone();
    app.job.photos = (0..3000i64)
        .map(|n| {
            let mut photo = one.clone();
            photo.id = storyrod::site::Id::fresh();
            photo.title = format!("Entry {n}");
            photo.when = one.when - chrono::Duration::hours(7 * n);
            std::sync::Arc::new(photo)
        })
        .collect();
    let desk = desk(app, (1180, 820));
    desk.act(|app| app.send(Command::Go(Here::Photos)));
    shot(&desk, "photos-thousands-tablet-day");
    let shown = labels(&desk);
    let entries = shown
        .iter()
        .filter(|label| label.starts_with("Entry "))
        .count();
    assert!((4..40).contains(&entries), "{entries}");
    desk.act(|app| {
        let words = "Entry 2999".to_owned();
        let filter = storyrod::photo::Filter {
            words,
            ..Default::default()
        };
        app.send(photo(PhotoCommand::Filter(filter)));
    });
    settle();
    let shown = labels(&desk);
    assert!(
        shown.iter().any(|label| label.starts_with("Entry 2999")),
        "{shown:#?}"
    );
}

/// How long in the picture a line is that is drawn so far across the screen; it is taken back again.
fn drawn(desk: &std::rc::Rc<Desk>) -> f64 {
    desk.act(|app| app.send(photo(PhotoCommand::Snaps(false))));
    drag(desk, (150.0, 260.0), (262.0, 260.0));
    let long = desk.with_app(|app| {
        let mark = app.job.photos[0].marks.last().unwrap();
        let [a, b] = mark.points[..] else {
            panic!("{mark:?}")
        };
        (a[0] - b[0]).hypot(a[1] - b[1])
    });
    desk.act(|app| {
        app.pad = None;
        app.send(Command::Undo);
    });
    settle();
    long
}

#[test]
fn two_fingers_bring_a_picture_nearer_and_mark_nothing() {
    let site = site();
    let mut app = app_of(&site);
    app.send(Command::Go(Here::Photo(0)));
    app.wait_for_pictures();
    let desk = desk(app, SIZES[0].1);
    desk.act(|app| app.send(photo(PhotoCommand::Tool(Tool::Dimension))));
    settle();
    let whole = drawn(&desk);
    let marks = |desk: &Desk| desk.with_app(|app| app.job.photos[0].marks.len());
    let had = marks(&desk);
    pinch(&desk, (206.0, 264.0), 30.0, 75.0);
    assert_eq!(marks(&desk), had);
    assert!(desk.with_app(|app| app.pad.is_none()));
    // By what the fingers did, less the way until it is known for a pinch.
    let nearer = whole / drawn(&desk);
    assert!((2.0..2.5).contains(&nearer), "{nearer}");
    // Two that come down at once and go side by side, as in shifting what lies there, mark nothing either.
    for phase in [TouchPhase::Started, TouchPhase::Moved, TouchPhase::Ended] {
        let down = if phase == TouchPhase::Started {
            0.0
        } else {
            60.0
        };
        touch(&desk, 1, (150.0, 200.0 + down), phase);
        touch(&desk, 2, (260.0, 200.0 + down), phase);
        settle();
    }
    assert_eq!(marks(&desk), had);
    let rows = desk.with_app(|app| format!("{:?}", app.screen().rows));
    assert!(!rows.contains("so far"), "{rows}");
    pinch(&desk, (206.0, 264.0), 75.0, 20.0);
    assert!((whole / drawn(&desk) - 1.0).abs() < 1e-3);
    assert_eq!(marks(&desk), had);
}

#[test]
fn before_and_after_are_looked_at_together_and_nothing_is_marked_there() {
    let site = site();
    let mut app = app_of(&site);
    let after = site.folder.path().join("after.png");
    image::RgbImage::from_pixel(400, 300, image::Rgb([190, 150, 90]))
        .save(&after)
        .unwrap();
    app.take_pictures(&[after]);
    app.wait_for_pictures();
    let before = app.job.photos[0].id;
    app.send(photo(PhotoCommand::Before(1, Some(before))));
    app.send(Command::Go(Here::Photo(1)));
    app.wait_for_pictures();
    for (name, size) in [SIZES[0], SIZES[1]] {
        let mut app = app_of(&site);
        app.send(Command::Go(Here::Photo(1)));
        app.wait_for_pictures();
        app.send(photo(PhotoCommand::Beside(true)));
        app.wait_for_pictures();
        let desk = desk(app, size);
        let whole = shot(&desk, &format!("photo-pair-{name}-day")).2;
        assert!(whole > 60, "{whole}");
        assert!(
            !labels(&desk)
                .iter()
                .any(|label| label.starts_with("Dimension"))
        );
        let before = desk.window().window().take_snapshot().unwrap();
        let marks = |desk: &Desk| desk.with_app(|app| app.job.photos[1].marks.len());
        let had = marks(&desk);
        pinch(&desk, (206.0, 180.0), 30.0, 75.0);
        drag(&desk, (200.0, 150.0), (240.0, 170.0));
        shot(&desk, &format!("photo-pair-near-{name}-day"));
        let after = desk.window().window().take_snapshot().unwrap();
        assert_ne!(before.as_bytes(), after.as_bytes());
        assert_eq!(marks(&desk), had);
    }
    drop(app);
}
