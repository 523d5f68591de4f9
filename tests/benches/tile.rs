//! What it costs to lay tile, each figure beside its referee, measured in the same run.
//!
//! `cargo bench --no-default-features --bench tile`
//!
//! Each figure is one line that ends in whether its goal is met: `met` or `short`; `short` also where its referee is not
//! there. Times are medians.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "clock.rs"]
mod clock;

use std::fmt::Write as _;
use std::io::Write as _;
use std::process::{Command, Stdio};

use clock::{median, milliseconds, outcome};
use storyrod::drawing::{Canvas, Look, Palette, Theme, lay_out, paint, tile_sketch};
use storyrod::geometry::{Point, Polygon, Region};
use storyrod::measure::{Angle, Length, Units};
use storyrod::trades::tile::{
    Ask, Layout, Pattern, Piece, Sight, Start, Tile, balance, figure, lay, placed,
};

const SHAPELY: &str = include_str!("tile/shapely_pieces.py");
const HOW: &str =
    "python3 -m pip install shapely, then cargo bench --no-default-features --bench tile";

fn main() {
    // `cargo test --all-targets` runs this as well, where times say nothing.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    pieces();
    best_balance();
    as_tiles_grow();
    a_drag();
}

/// One figure: what, how much, its referee's name and figure, the goal, and whether it is met.
fn say(what: &str, (ours, unit): (f64, &str), referee: (&str, f64), goal: &str, met: bool) {
    let (name, theirs) = referee;
    let outcome = outcome(met);
    println!(
        "tile/{what}: {ours:.3} {unit}, {name} {theirs:.3} {unit}, ratio {:.2}, goal {goal}: {outcome}",
        theirs / ours
    );
}

fn ring(corners: &[(i64, i64)], share: f64) -> Polygon {
    let nm = |n: i64| Length::nm((n as f64 * 1e6 * share).round() as i64);
    Polygon {
        points: corners
            .iter()
            .map(|(x, y)| Point::new(nm(*x), nm(*y)))
            .collect(),
    }
}

/// A room of twenty corners, piers, an alcove and two walls out of square, with a square drain and a round flange of 64
/// corners in it; all lengths times a share.
fn room(share: f64) -> Region {
    let corners = [
        (0, 0),
        (1_400, 0),
        (1_400, 180),
        (1_900, 180),
        (1_900, 0),
        (3_300, 0),
        (3_300, 700),
        (3_900, 700),
        (3_900, 1_900),
        (3_300, 1_900),
        (3_340, 3_100),
        (2_500, 3_060),
        (2_500, 2_800),
        (2_000, 2_800),
        (2_000, 3_040),
        (900, 3_000),
        (900, 2_300),
        (600, 2_300),
        (600, 2_700),
        (-40, 2_720),
    ];
    let drain = [(700, 900), (850, 900), (850, 1_050), (700, 1_050)];
    let flange = (0..64).map(|k| {
        let (sine, cosine) = (f64::from(k) / 64.0 * std::f64::consts::TAU).sin_cos();
        let at = |middle: f64, off: f64| {
            Length::nm(((middle + 60.0 * off) * 1e6 * share).round() as i64)
        };
        Point::new(at(2_650.0, cosine), at(1_420.0, sine))
    });
    Region {
        outer: ring(&corners, share),
        holes: vec![
            ring(&drain, share),
            Polygon {
                points: flange.collect(),
            },
        ],
    }
}

/// Square tiles at 45° in that room, by hand from a point.
fn diagonal(share: f64, side: i64) -> Ask {
    Ask {
        surface: room(share),
        gap: Length::ZERO,
        tile: Tile {
            long: Length::mm(side),
            short: Length::mm(side),
            ..Tile::default()
        },
        joint: Length::mm(2),
        turn: Angle::degrees(45),
        start: Start::ByHand(Point::new(Length::mm(31), Length::mm(17))),
        ..Ask::default()
    }
}

fn from(ask: &Ask) -> Point {
    match ask.start {
        Start::ByHand(from) => from,
        _ => Point::default(),
    }
}

fn laid(ask: &Ask) -> Layout {
    lay(ask, from(ask)).unwrap()
}

/// Counts and classes the pieces of about 2,000 tiles at 45°.
fn pieces() {
    let ask = diagonal(1.0, 71);
    let layout = laid(&ask);
    let ours = median((0..201).map(|_| {
        milliseconds(|| {
            let layout = laid(&ask);
            (layout.whole(), layout.cut())
        })
    }));
    let what = format!(
        "lay {} pieces at 45°, {} cut",
        layout.tiles.len(),
        layout.cut()
    );
    match by_shapely(&ask, &layout) {
        Some((theirs, whole, cut)) => {
            let equal = (whole, cut) == (layout.whole(), layout.cut());
            let goal = "1 ms, 8 times as fast, equal counts";
            let met = equal && ours <= 1.0 && theirs / ours >= 8.0;
            say(&what, (ours, "ms"), ("shapely", theirs), goal, met);
            if !equal {
                println!(
                    "tile/counts: {:?}, shapely {:?}: short",
                    (layout.whole(), layout.cut()),
                    (whole, cut)
                );
            }
        }
        None => println!("tile/{what}: {ours:.3} ms, no shapely here ({HOW}): short"),
    }
}

/// The same by shapely: milliseconds, whole, cut.
fn by_shapely(ask: &Ask, layout: &Layout) -> Option<(f64, usize, usize)> {
    let points = |points: &[Point]| {
        let mut text = String::from("[");
        for (n, p) in points.iter().enumerate() {
            let comma = if n == 0 { "" } else { "," };
            let (x, y) = (p.x.as_nm() as f64 / 1e6, p.y.as_nm() as f64 / 1e6);
            write!(text, "{comma}[{x},{y}]").unwrap();
        }
        text + "]"
    };
    let (least, most) = Region::bounds_of(&layout.parts)?;
    let tiles: Vec<String> = placed(ask, layout.start, least, most)
        .iter()
        .map(|tile| points(tile.points()))
        .collect();
    let holes: Vec<String> = (layout.parts[0].holes.iter())
        .map(|hole| points(&hole.points))
        .collect();
    let given = format!(
        "{{\"outer\":{},\"holes\":[{}],\"tiles\":[{}]}}",
        points(&layout.parts[0].outer.points),
        holes.join(","),
        tiles.join(",")
    );
    let mut python = Command::new("python3")
        .args(["-c", SHAPELY])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    // Where shapely is missing it has ended before it reads.
    let _ = python.stdin.take()?.write_all(given.as_bytes());
    let said = String::from_utf8(python.wait_with_output().ok()?.stdout).ok()?;
    let mut words = said.split_whitespace();
    Some((
        words.next()?.parse().ok()?,
        words.next()?.parse().ok()?,
        words.next()?.parse().ok()?,
    ))
}

/// The best of at least 2,000 starts, beside as many exact layouts.
fn best_balance() {
    let bath = Ask::default();
    let l = Ask {
        surface: Region {
            outer: ring(
                &[
                    (0, 0),
                    (2_400, 0),
                    (2_400, 1_500),
                    (1_300, 1_500),
                    (1_300, 2_100),
                    (0, 2_100),
                ],
                1.0,
            ),
            holes: vec![ring(&[(500, 700), (600, 700), (600, 800), (500, 800)], 1.0)],
        },
        pattern: Pattern::Bond { over: 1, of: 3 },
        ..Ask::default()
    };
    let turned = Ask {
        turn: Angle::degrees(45),
        ..bath.clone()
    };
    for (name, ask) in [
        ("a bath floor", bath),
        ("an L with a drain, third bond", l),
        ("a bath floor at 45°", turned),
        (
            "the room of twenty corners, 300 mm at 45°",
            diagonal(1.0, 300),
        ),
        (
            "the room of twenty corners, 71 mm at 45°",
            diagonal(1.0, 71),
        ),
    ] {
        let tried = balance(&ask, Sight::Middle, false).unwrap().tried;
        let ours = median(
            (0..7).map(|_| milliseconds(|| balance(&ask, Sight::Middle, false).unwrap().from)),
        );
        let one = median((0..51).map(|_| milliseconds(|| laid(&ask))));
        say(
            &format!("best of {tried} starts, {name}"),
            (ours, "ms"),
            ("each laid exactly", one * tried as f64),
            "80 ms, 2,000 starts",
            ours <= 80.0 && tried >= 2_000,
        );
    }
    let ask = diagonal(1.0, 300);
    let ours =
        median((0..7).map(|_| milliseconds(|| balance(&ask, Sight::Middle, true).unwrap().from)));
    let one = median((0..51).map(|_| milliseconds(|| laid(&ask))));
    say(
        "fewest tiles of 2306 starts, that room, 300 mm at 45°",
        (ours, "ms"),
        ("each laid exactly", one * 2_306.0),
        "80 ms",
        ours <= 80.0,
    );
}

/// What a tile costs as the room grows about tiles of one size.
fn as_tiles_grow() {
    let cost = |tiles: f64| {
        let ask = diagonal((tiles / 1_950.0).sqrt(), 71);
        let layout = laid(&ask);
        let count = layout.tiles.len() as f64;
        let time = median((0..51).map(|_| milliseconds(|| laid(&ask))));
        (count, time / count * 1e6)
    };
    let (few, first) = cost(100.0);
    for tiles in [1_000.0, 5_000.0, 20_000.0] {
        let (many, each) = cost(tiles);
        say(
            &format!("a tile of {many}"),
            (each, "ns"),
            (&format!("a tile of {few}"), first),
            "1.5 times that",
            each <= first * 1.5,
        );
    }
}

/// A finger slides the start of 1,000 tiles: laid, figured, drawn, painted.
fn a_drag() {
    let mut ask = diagonal(1.0, 99);
    let step = |ask: &Ask| {
        let figure = figure(ask).unwrap();
        let units = Units::FeetInches { marks: 16 };
        let look = Look {
            own: true,
            joint: storyrod::drawing::Role::Rule,
            picked: None,
        };
        let scene = tile_sketch(ask, Some(&figure), look, units);
        let canvas = Canvas {
            width: 1_180.0,
            height: 820.0,
            text: 1.0,
            margin: 12.0,
        };
        let sheet = lay_out(&scene, &canvas, None);
        paint(&sheet, &Palette::of(Theme::Day), 1.0)
    };
    let mut times = Vec::new();
    let mut figured = Vec::new();
    for n in 0..41 {
        ask.start = Start::ByHand(Point::new(Length::mm(n), Length::mm(n / 2)));
        figured.push(milliseconds(|| figure(&ask).unwrap()));
        times.push(milliseconds(|| step(&ask)));
    }
    let whole_step = median(times);
    let layout = laid(&ask);
    let cut = layout
        .tiles
        .iter()
        .filter(|laid| laid.piece != Piece::Whole);
    say(
        &format!(
            "a drag over {} tiles, {} cut",
            layout.tiles.len(),
            cut.count()
        ),
        (whole_step, "ms"),
        ("of it laid and figured", median(figured)),
        "16 ms",
        whole_step <= 16.0,
    );
}
