//! Rooms measured: how often a misread measurement is found, and what it costs to figure an outline.
//!
//! `cargo bench --no-default-features --bench rooms`
//!
//! Each figure is one line that ends in whether its goal is met: `met` or `short`. Times are medians.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

use std::hint::black_box;
use std::time::Instant;

use storyrod::drawing::plan;
use storyrod::measure::{Length, Rounding, Units};
use storyrod::site::{Room, What, misreads, sketch, surveyed};

const FEET: Units = Units::FeetInches { marks: 16 };

fn main() {
    // `cargo test --all-targets` runs this as well, where times say nothing.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    for (name, how) in [
        ("any of the usual", None),
        ("a foot", Some(0)),
        ("ten centimetres", Some(1)),
        ("an inch", Some(2)),
        ("two figures exchanged", Some(3)),
        ("6 for 9", Some(4)),
        ("any size from 1 in to 2 ft", Some(5)),
    ] {
        blunders(name, how, 0.5, how.is_none().then_some(0.90));
    }
    blunders(
        "any of the usual, corners 0.25 degrees off",
        None,
        0.25,
        None,
    );
    blunders("any of the usual, corners 1 degree off", None, 1.0, None);
    false_alarms();
    speed();
}

/// Figures that come one after another from a number: a generator of Marsaglia's kind, so that every run has the same.
struct Dice(u64);

impl Dice {
    fn unit(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.unit()
    }
    fn below(&mut self, count: usize) -> usize {
        (self.unit() * count as f64) as usize % count
    }
    /// Of mean nothing and spread one, after Box and Muller.
    fn normal(&mut self) -> f64 {
        let (one, other) = (self.unit().max(1e-300), self.unit());
        (-2.0 * one.ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    }
}

/// A room of four walls of 3 to 14 ft, each corner off square by so many degrees or so, as the tape reads it: off by a
/// sixteenth or so, read to a sixteenth.
fn measured(dice: &mut Dice, off_square: f64) -> Vec<(What, Length)> {
    let (across, along) = (dice.between(36.0, 168.0), dice.between(36.0, 168.0));
    let mut off = || dice.normal() * off_square.to_radians();
    // Three corners say how the walls run; the fourth follows.
    let (a, b, c) = (off(), off(), off());
    let way = |radians: f64, long: f64| (long * radians.cos(), long * radians.sin());
    let quarter = std::f64::consts::FRAC_PI_2;
    let first = (0.0, 0.0);
    let second = (across, 0.0);
    let (x, y) = way(quarter + a, along);
    let third = (second.0 + x, second.1 + y);
    // The wall back from the third corner meets the wall down from the first.
    let (u, v) = (2.0 * quarter + a + b, quarter - c);
    let (ux, uy) = way(u, 1.0);
    let (vx, vy) = way(v, 1.0);
    let whole = ux * vy - uy * vx;
    let (px, py) = (first.0 - third.0, first.1 - third.1);
    let back = (px * vy - py * vx) / whole;
    let fourth = (third.0 + ux * back, third.1 + uy * back);
    let corners = [first, second, third, fourth];
    let mut read = |what: What, a: usize, b: usize| {
        let ((x1, y1), (x2, y2)) = (corners[a], corners[b]);
        let inches = (x2 - x1).hypot(y2 - y1) + dice.normal() / 16.0;
        let length = Length::from_inches(inches).unwrap();
        (what, length.rounded(Length::in_64(0, 4), Rounding::Nearest))
    };
    vec![
        read(What::Wall(0), 0, 1),
        read(What::Wall(1), 1, 2),
        read(What::Wall(2), 2, 3),
        read(What::Wall(3), 3, 0),
        read(What::Diagonal(0, 2), 0, 2),
        read(What::Diagonal(1, 3), 1, 3),
    ]
}

/// The same number with two digits exchanged that stand side by side.
fn exchanged(dice: &mut Dice, number: i64) -> i64 {
    let mut digits: Vec<char> = number.to_string().chars().collect();
    if digits.len() > 1 {
        let at = dice.below(digits.len() - 1);
        digits.swap(at, at + 1);
    }
    digits.into_iter().collect::<String>().parse().unwrap()
}

fn six_for_nine(number: i64) -> i64 {
    let turn = |digit: char| match digit {
        '6' => '9',
        '9' => '6',
        other => other,
    };
    let text: String = number.to_string().chars().map(turn).collect();
    text.parse().unwrap()
}

/// A reading misread by an inch or more; `None` where this one cannot be misread so.
fn misread(dice: &mut Dice, read: Length, how: usize) -> Option<Length> {
    let sign = if dice.unit() < 0.5 { -1.0 } else { 1.0 };
    let inches = read.in_inches();
    let (whole, rest) = (inches.floor() as i64, inches.fract());
    let wrong = match how {
        0 => inches + sign * 12.0,
        1 => inches + sign * 100.0 / 25.4,
        2 => inches + sign,
        3 => exchanged(dice, whole) as f64 + rest,
        4 => six_for_nine(whole) as f64 + rest,
        _ => inches + sign * dice.between(1.0, 24.0),
    };
    let wrong = Length::from_inches(wrong)?;
    let at_least = (wrong - read).abs() >= Length::inches(1) - Length::nm(1);
    (at_least && wrong > Length::inches(6)).then_some(wrong)
}

fn blunders(name: &str, how: Option<usize>, off_square: f64, goal: Option<f64>) {
    let mut dice = Dice(0x5EED_0F70_3115_0001);
    let (mut named_first, mut refused, mut surveys) = (0, 0, 0);
    while surveys < 1000 {
        let mut whats = measured(&mut dice, off_square);
        let at = dice.below(6);
        let kind = how.unwrap_or_else(|| dice.below(6));
        let Some(wrong) = misread(&mut dice, whats[at].1, kind) else {
            continue;
        };
        surveys += 1;
        whats[at].1 = wrong;
        let mut room = Room::rectangle("Washroom");
        for (what, length) in &whats {
            room.measure(*what, Some(*length), None);
        }
        let impossible = storyrod::site::shape(&room).is_err();
        refused += usize::from(impossible);
        let found = misreads(&room, FEET);
        named_first += usize::from(found.first().is_some_and(|found| found.what == whats[at].0));
    }
    let rate = named_first as f64 / surveys as f64;
    let goal_text = goal.map_or_else(|| "none".to_owned(), |goal| format!("{goal:.2}"));
    let outcome = goal.map_or("told", |goal| if rate >= goal { "met" } else { "short" });
    println!(
        "rooms/misread named first, {name}: {rate:.3} of {surveys}, {refused} of them no shape at all, goal {goal_text}: {outcome}"
    );
}

/// Surveys without a misreading in which one is suspected.
fn false_alarms() {
    let mut dice = Dice(0x5EED_0F70_3115_0002);
    let mut alarms = 0;
    for _ in 0..1000 {
        let mut room = Room::rectangle("Washroom");
        for (what, length) in measured(&mut dice, 0.5) {
            room.measure(what, Some(length), None);
        }
        alarms += usize::from(!misreads(&room, FEET).is_empty());
    }
    let outcome = if alarms <= 50 { "met" } else { "short" };
    println!("rooms/suspected where nothing is misread: {alarms} of 1000, goal 50: {outcome}");
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

/// A room of fifty corners: steps up one side.
fn fifty() -> Room {
    let mut room = Room::rectangle("Fifty");
    room.walls[0].sketched = Length::feet(60);
    room.walls[2].sketched = Length::feet(60);
    for _ in 0..23 {
        let drawn = sketch(&room).walls;
        let longest = (0..drawn.len() - 3)
            .max_by_key(|wall| drawn[*wall].0)
            .unwrap();
        room.step_wall(longest, drawn[longest].0.half(), false);
    }
    assert_eq!(room.walls.len(), 50);
    let drawn = sketch(&room);
    for (wall, (length, _)) in drawn.walls.iter().enumerate() {
        room.measure(What::Wall(wall), Some(*length), None);
    }
    room
}

fn speed() {
    let room = fifty();
    let corners = room.walls.len();
    let times = (0..50).map(|_| {
        let begun = Instant::now();
        black_box(plan(&room, FEET));
        begun.elapsed().as_secs_f64() * 1e3
    });
    let drawn = median(times.collect());
    println!(
        "rooms/plan of {corners} corners, walls alone: {drawn:.2} ms, goal 16 ms: {}",
        if drawn <= 16.0 { "met" } else { "short" }
    );
    let mut room = room;
    let points = sketch(&room).corners.points;
    for what in room.across() {
        if let What::Diagonal(a, b) = what {
            room.measure(what, Some(points[a].distance(points[b])), None);
        }
    }
    let times = (0..20).map(|n| {
        // Another room each time, so that nothing is remembered.
        room.survey.reads_to = Length::in_64(0, 4) + Length::nm(n);
        let begun = Instant::now();
        assert!(black_box(surveyed(&room)).is_some());
        begun.elapsed().as_secs_f64() * 1e3
    });
    let figured = median(times.collect());
    println!(
        "rooms/outline of {corners} corners, {} measurements: {figured:.1} ms, goal 100 ms: {}",
        corners + room.survey.figures.len(),
        if figured <= 100.0 { "met" } else { "short" }
    );
    let times = (0..20).map(|n| {
        room.survey.reads_to = Length::in_64(0, 4) + Length::nm(100 + n);
        let begun = Instant::now();
        black_box(plan(&room, FEET));
        begun.elapsed().as_secs_f64() * 1e3
    });
    let all = median(times.collect());
    println!(
        "rooms/plan of {corners} corners after a change, with diagonals: {all:.1} ms, goal 100 ms: {}",
        if all <= 100.0 { "met" } else { "short" }
    );
}
