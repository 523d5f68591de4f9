//! Rooms measured, changed and made again from one another, on the real screens.

use std::cell::Cell;
use std::rc::Rc;

use chrono::DateTime;
use storyrod::app::{App, Command, Here, Keeper, RoomChoice, Row};
use storyrod::drawing::PlanTag;
use storyrod::gui::Desk;
use storyrod::measure::{Length, Units};
use storyrod::site::{
    Asked, FixedKind, Fixture, FixtureKind, Hidden, HiddenKind, Hinge, On, Opening, OpeningKind,
    Room, Side, Spot, Standing, Studs, Third, What, shape,
};
use storyrod::takeoff::{Ask, Job, TileOn};

use crate::harness::{desk, keys, labels, reach, settle, shot, tap};

const PHONE: (u32, u32) = (412, 892);
const SIZES: [(&str, (u32, u32)); 4] = [
    ("phone", PHONE),
    ("tablet", (1180, 820)),
    ("upright", (820, 1180)),
    ("desktop", (1440, 900)),
];

fn empty() -> App {
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
    App::new(job, Keeper::nowhere())
}

/// A washroom with everything in it, a little out of square.
fn washroom() -> Room {
    let inches = |n| Some(Length::inches(n));
    let mut room = Room::rectangle("Washroom");
    for (wall, sixteenths) in [96 * 16, 60 * 16 + 3, 96 * 16 - 2, 60 * 16]
        .into_iter()
        .enumerate()
    {
        room.measure(
            What::Wall(wall),
            Some(Length::in_64(0, sixteenths * 4)),
            None,
        );
    }
    room.measure(What::Ceiling, inches(92), None);
    room.measure(What::Diagonal(0, 2), Some(Length::in_64(113, 40)), None);
    room.measure(What::Diagonal(1, 3), Some(Length::in_64(112, 56)), None);
    room.measure(What::Lean(1, Side::Left), Some(Length::in_64(0, 16)), None);
    for (third, n) in [(Third::Left, 64), (Third::Middle, 76), (Third::Right, 64)] {
        room.measure(What::Gap(1, third), Some(Length::in_64(0, n)), None);
    }
    for (corner, n) in [(0, 0), (1, 8), (2, 24), (3, 12)] {
        room.measure(What::Level(corner), Some(Length::in_64(40, n)), None);
    }
    room.openings = vec![
        Opening {
            kind: OpeningKind::Door,
            wall: 2,
            from_left: inches(4),
            width: inches(30),
            height: inches(80),
            sill: Some(Length::ZERO),
            hinge: Some(Hinge {
                side: Side::Left,
                out: false,
            }),
        },
        Opening {
            kind: OpeningKind::Window,
            wall: 0,
            from_left: inches(60),
            width: inches(24),
            height: inches(30),
            sill: inches(48),
            hinge: None,
        },
    ];
    room.walls[0].studs = Some(Studs::Spaced {
        first: Length::inches(15),
        spacing: Length::inches(16),
        face: Length::in_64(1, 32),
    });
    for (kind, from_left, up) in [
        (FixedKind::Hot, 20, 21),
        (FixedKind::Cold, 28, 21),
        (FixedKind::Drain, 24, 18),
        (FixedKind::Outlet, 44, 44),
    ] {
        let mut point = storyrod::site::FixedPoint::new(kind, On::Wall(0));
        (point.from_left, point.up) = (inches(from_left), inches(up));
        room.fixed.push(point);
    }
    let mut pipe = Hidden::new(HiddenKind::Pipe, On::Wall(0));
    pipe.line = [(20, 0), (20, 21)]
        .map(|(left, up)| Spot {
            from_left: Length::inches(left),
            up: Length::inches(up),
        })
        .to_vec();
    pipe.depth = inches(2);
    room.hidden.push(pipe);
    for (kind, wall, from_left, width, depth, height) in [
        (FixtureKind::Basin, 0, 24, 24, 20, 34),
        (FixtureKind::Toilet, 1, 40, 18, 28, 30),
    ] {
        let mut fixture = Fixture::new(kind, wall);
        (fixture.from_left, fixture.width) = (inches(from_left), inches(width));
        (fixture.depth, fixture.height) = (inches(depth), inches(height));
        room.fixtures.push(fixture);
    }
    room
}

fn furnished() -> App {
    let mut app = empty();
    app.job.add_room(washroom());
    app
}

/// Pictures of every place of a survey, at every size; and each is there at all.
#[test]
fn the_survey_is_drawn_at_every_size() {
    for (name, size) in SIZES {
        let window = desk(furnished(), size);
        let places = [
            (
                "survey",
                vec![Command::Of(0, RoomChoice::Much(Asked::Square))],
            ),
            ("square", vec![Command::Go(Here::Square(0))]),
            ("elevation", vec![Command::Go(Here::Wall(0, 0))]),
            ("behind", vec![Command::Of(0, RoomChoice::Behind(true))]),
            (
                "outline",
                vec![
                    Command::Of(0, RoomChoice::Behind(false)),
                    Command::Go(Here::Outline(0)),
                    Command::Of(0, RoomChoice::Choose(Some(PlanTag::WallBody(1)))),
                ],
            ),
            ("second", vec![Command::Of(0, RoomChoice::Second(true))]),
            ("beside", vec![Command::Go(Here::SideBySide(0, 1))]),
            ("rooms-total", vec![Command::Go(Here::Rooms)]),
        ];
        for (place, commands) in places {
            for command in commands {
                window.act(|app| app.send(command));
            }
            let (_, _, colours) = shot(&window, &format!("{place}-{name}"));
            assert!(colours > 20, "{place} at {name} is blank");
        }
    }
}

/// Taps and keys that a person makes, and the seconds that they take: 1.2 s for a tap, 0.28 s for a key (an untrained
/// typist, Card, Moran and Newell 1983, from memory); the tape itself is not counted.
struct Hand {
    window: Rc<Desk>,
    taps: Cell<u32>,
    keys: Cell<u32>,
}

impl Hand {
    fn tap(&self, label: &str) {
        tap(&self.window, label);
        self.taps.set(self.taps.get() + 1);
    }
    fn keys(&self, text: &str) {
        keys(&self.window, text);
        self.keys.set(self.keys.get() + text.chars().count() as u32);
    }
    /// A key of the pad.
    fn pad(&self, label: &str) {
        self.tap(label);
    }
    fn seconds(&self) -> f64 {
        f64::from(self.taps.get()) * 1.2 + f64::from(self.keys.get()) * 0.28
    }
}

fn hand(app: App) -> Hand {
    Hand {
        window: desk(app, PHONE),
        taps: Cell::new(0),
        keys: Cell::new(0),
    }
}

/// From an empty job to a complete room of six walls: four lengths and the ceiling.
#[test]
fn a_room_of_six_walls_takes_few_taps_by_pad_and_by_keyboard() {
    let complete = |hand: &Hand| {
        hand.window.with_app(|app| {
            let drawn = shape(&app.job.rooms[0]).unwrap();
            let open = drawn.walls.iter().filter(|wall| wall.1 == Standing::NotYet);
            assert_eq!(open.count(), 0);
            assert!(app.job.rooms[0].ceiling.is_some());
        });
    };
    let board = hand(empty());
    board.tap("L, six walls");
    board.tap("Survey it");
    for figure in ["88", "50", "34", "12.5", "96"] {
        board.keys(figure);
        board.keys("\n");
    }
    complete(&board);
    let pad = hand(empty());
    pad.tap("L, six walls");
    pad.tap("Measure the next one");
    for figure in ["88", "50", "34", "12", "96"] {
        for digit in figure.chars() {
            pad.pad(&digit.to_string());
        }
        pad.pad("OK");
    }
    complete(&pad);
    println!(
        "six walls by keyboard: {} taps, {} keys, {:.0} s; by pad: {} taps, {:.0} s",
        board.taps.get(),
        board.keys.get(),
        board.seconds(),
        pad.taps.get(),
        pad.seconds()
    );
    assert!(
        board.taps.get() <= 4 && board.keys.get() <= 24,
        "{}",
        board.keys.get()
    );
    assert!(pad.taps.get() <= 24, "{}", pad.taps.get());
}

/// A laser meter types digits, a unit and Enter; one that types metres into a room of inches is asked about.
#[test]
fn a_laser_meter_fills_the_room_from_its_own_keys() {
    let window = desk(empty(), (1180, 820));
    tap(&window, "Rectangle");
    tap(&window, "Survey it");
    keys(&window, "2.438 m\n");
    keys(&window, "1.524\n");
    shot(&window, "laser-asks");
    let said = labels(&window).join(" ");
    assert!(said.contains("1.524 m"), "{said}");
    window.with_app(|app| {
        assert_eq!(app.job.rooms[0].walls[0].length, Some(Length::mm(2438)));
        assert_eq!(app.job.rooms[0].walls[1].length, None);
    });
    keys(&window, "\n");
    keys(&window, "2.337 m\n");
    window.with_app(|app| {
        assert_eq!(app.job.rooms[0].walls[1].length, Some(Length::mm(1524)));
        assert_eq!(app.job.rooms[0].ceiling, Some(Length::mm(2337)));
    });
}

/// From a rectangle to a T with a cut corner in under ten taps, each taken back with one.
#[test]
fn any_outline_is_made_of_a_rectangle_in_under_ten_taps() {
    let hand = hand(empty());
    hand.tap("Rectangle");
    hand.tap("Change the outline");
    hand.tap("Wall A on the plan");
    hand.tap("Set out");
    hand.tap("C–D");
    hand.tap("Cut it off");
    hand.window.with_app(|app| {
        assert_eq!(app.job.rooms[0].walls.len(), 9);
        assert!(shape(&app.job.rooms[0]).is_ok());
    });
    shot(&hand.window, "outline-made");
    assert!(hand.taps.get() < 10);
    hand.window.act(|app| app.send(Command::Undo));
    hand.window.act(|app| app.send(Command::Undo));
    hand.window
        .with_app(|app| assert_eq!(app.job.rooms[0].walls.len(), 4));
}

fn tile_area(app: &App, room: usize) -> f64 {
    let room = &app.job.rooms[room];
    shape(room).unwrap().corners.area().value
}

/// The first washroom is measured and figured; the second, back to back with it, is its mirror: four measurements are
/// confirmed or taken, and all figures follow.
#[test]
fn the_second_bathroom_takes_four_measurements() {
    let mut app = furnished();
    app.job
        .add_task(Some(0), Ask::Tile(Box::default(), TileOn::Floor));
    let tile = app.job.tasks[0].id;
    app.job
        .add_task(Some(0), Ask::Grout(Box::default(), Some(tile)));
    app.job.add_task(
        Some(0),
        Ask::Paint(Box::default(), storyrod::site::OpeningRule::Net),
    );
    let hand = hand(app);
    hand.tap("Washroom, 4 walls, all measured");
    hand.tap("Mirrored");
    hand.window.with_app(|app| {
        assert_eq!(app.here(), &Here::Survey(1));
        let second = &app.job.rooms[1];
        assert_eq!(second.name, "Washroom, mirrored");
        assert!(second.carried().count() > 10);
        // The door hangs on the other side, the supplies are on the other side.
        assert_eq!(second.openings[0].hinge.unwrap().side, Side::Right);
        assert_eq!(second.fixed[0].from_left, Some(Length::inches(76)));
        assert_eq!(app.job.tasks.len(), 6);
    });
    shot(&hand.window, "second-survey");
    // What usually differs: one wall each way, the ceiling, and across.
    let short = hand
        .window
        .with_app(|app| app.job.rooms[1].usually_differs());
    assert_eq!(short.len(), 4);
    let before = hand.window.with_app(|app| tile_area(app, 1));
    hand.tap("Short survey, 4 to confirm, chosen");
    // Wall A is two inches shorter here.
    hand.tap("Type it");
    hand.keys("94\n");
    shot(&hand.window, "second-short");
    hand.window.act(|app| app.pad = None);
    for _ in 0..2 {
        // Wall D, then the ceiling.
        let still = hand.window.with_app(|app| {
            let rows = app.screen().rows;
            let chips = rows.into_iter().find_map(|row| match row {
                Row::Choice { label, chips } if label == "Carried over" => Some(chips),
                _ => None,
            });
            chips.unwrap()[0].label.clone()
        });
        settle();
        assert!(still.starts_with("Still "), "{still}");
        hand.tap(&still);
    }
    // Across, from the other room's walls, is gone with the wall; it is measured anew.
    hand.window.with_app(|app| {
        assert!(!app.job.rooms[1].mark(What::Ceiling).carried);
        let gone = short
            .iter()
            .find(|what| matches!(what, What::Diagonal(..)))
            .unwrap();
        assert_eq!(app.job.rooms[1].measured(*gone), None);
    });
    hand.keys("111 1/2\n");
    hand.window.act(|app| app.pad = None);
    println!(
        "second bathroom: {} taps, {} keys, {:.0} s",
        hand.taps.get(),
        hand.keys.get(),
        hand.seconds()
    );
    hand.window.with_app(|app| {
        let after = tile_area(app, 1);
        assert!(after < before - 0.05, "{before} {after}");
        assert!(!app.job.rooms[1].mark(What::Wall(0)).carried);
        assert!(
            short
                .iter()
                .all(|what| !app.job.rooms[1].mark(*what).carried)
        );
    });
    hand.window
        .act(|app| app.send(Command::Go(Here::SideBySide(0, 1))));
    shot(&hand.window, "second-beside");
    let said = labels(&hand.window).join("\n");
    assert!(said.contains("Wall A"), "{said}");
}

/// Skipped, not there, an estimate, measured again.
#[test]
fn what_cannot_be_measured_is_said() {
    let window = desk(empty(), PHONE);
    tap(&window, "Rectangle");
    tap(&window, "Survey it");
    tap(&window, "Skip");
    keys(&window, "60\n");
    window.act(|app| app.pad = None);
    shot(&window, "survey-before-estimate");
    tap(&window, "± 1″");
    window.with_app(|app| {
        let room = &app.job.rooms[0];
        assert_eq!(room.walls[0].length, None);
        assert_eq!(room.mark(What::Wall(1)).estimate, Some(Length::inches(1)));
        let rows = app.screen().rows;
        let skipped = rows.iter().any(|row| {
            matches!(row, Row::Figure { label, value, .. } if label == "Wall A" && value == "skipped")
        });
        assert!(skipped);
    });
    shot(&window, "survey-estimate");
}

/// A finger takes hold of a chosen wall and drags it; one step of undo takes it back.
#[test]
fn a_wall_is_dragged_on_the_plan() {
    let window = desk(empty(), (1180, 820));
    tap(&window, "Rectangle");
    tap(&window, "Change the outline");
    let wall = reach(&window, "Wall B on the plan");
    let (at, size) = (wall.absolute_position(), wall.size());
    let from = slint::LogicalPosition::new(at.x + size.width / 2.0, at.y + size.height / 2.0);
    tap(&window, "Wall B on the plan");
    let long =
        |window: &Rc<Desk>| window.with_app(|app| shape(&app.job.rooms[0]).unwrap().walls[0].0);
    let before = long(&window);
    let button = slint::platform::PointerEventButton::Left;
    let send = |event| slint::ComponentHandle::window(window.window()).dispatch_event(event);
    send(slint::platform::WindowEvent::PointerPressed {
        position: from,
        button,
    });
    for step in 1..=6 {
        let position = slint::LogicalPosition::new(from.x - 10.0 * step as f32, from.y);
        send(slint::platform::WindowEvent::PointerMoved { position });
        settle();
    }
    let position = slint::LogicalPosition::new(from.x - 60.0, from.y);
    send(slint::platform::WindowEvent::PointerReleased { position, button });
    settle();
    shot(&window, "outline-dragged");
    assert!(
        long(&window) < before - Length::inches(4),
        "{:?}",
        long(&window)
    );
    window.act(|app| app.send(Command::Undo));
    assert_eq!(long(&window), before);
}

/// A wall that is a guess makes the figures that stand on it uncertain, and they say so.
#[test]
fn a_figure_on_an_uncertain_wall_shows_its_range() {
    let mut app = furnished();
    app.job.rooms[0].measure(What::Diagonal(0, 2), None, None);
    app.job.rooms[0].measure(What::Diagonal(1, 3), None, None);
    app.job.rooms[0].measure(What::Wall(2), None, None);
    app.job.rooms[0].measure(What::Wall(3), None, None);
    app.job
        .add_task(Some(0), Ask::Tile(Box::default(), TileOn::Floor));
    let window = desk(app, (1180, 820));
    window.act(|app| app.send(Command::Go(Here::Task(0))));
    assert!(!labels(&window).join(" ").contains("estimate"));
    window.act(|app| {
        app.send(Command::Of(
            0,
            RoomChoice::Estimate(What::Wall(0), Some(Length::inches(12))),
        ));
    });
    shot(&window, "tile-unsure");
    let said = labels(&window).join(" ");
    assert!(said.contains("Wall A is an estimate"), "{said}");
}
