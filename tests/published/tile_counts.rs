//! Tile counts: published answers, and counts by exact fractions that two engines agree on.
//!
//! A1, A2: a university's mathematics forum (1999) and a homework page, both read. A6 to A18 and the bath floor: arithmetic
//! in exact fractions, checked against shapely 2.2.0 when they were written down.

use super::asks::{bare, inches};
use storyrod::geometry::{Point, Polygon, Region};
use storyrod::measure::{Angle, Length};
use storyrod::trades::tile::{Ask, Pattern, Tile, lay, plan};

/// Whole and cut pieces, and the tiles that the cut ones come out of.
#[track_caller]
fn check(ask: &Ask, from: Point, whole: usize, cut: usize, out_of: usize) {
    let layout = lay(ask, from).unwrap();
    let tiles = plan(ask, &layout).tiles.len();
    assert_eq!((layout.whole(), layout.cut(), tiles), (whole, cut, out_of));
}

fn at(x: Length, y: Length) -> Point {
    Point::new(x, y)
}

#[test]
fn a1_a_floor_of_60_by_72_takes_63_whole_tiles_and_nine_halves() {
    let mut ask = bare(inches(60, 0), inches(72, 0), inches(8, 0), inches(8, 0));
    // 67.5 tiles: 68 where halves serve again, 72 where they do not.
    check(&ask, Point::default(), 63, 9, 5);
    ask.reuse = false;
    check(&ask, Point::default(), 63, 9, 9);
}

#[test]
fn a2_a3_floors_of_whole_tiles() {
    let cm = |n: i64| Length::mm(n * 10);
    check(
        &bare(cm(540), cm(405), cm(15), cm(15)),
        Point::default(),
        972,
        0,
        0,
    );
    check(
        &bare(cm(1200), cm(1200), cm(50), cm(50)),
        Point::default(),
        576,
        0,
        0,
    );
}

#[test]
fn a6_a7_the_bath_floor_from_the_corner_and_centred() {
    let ask = Ask::default();
    check(&ask, Point::default(), 28, 12, 12);
    // A tile on the centre line across, a joint along: side cuts 11 11/16, end cuts 11 11/16.
    let across = inches(59, 32).half() - ask.tile.long.half() - inches(12, 0) * 2;
    let along = inches(95, 32).half() + ask.joint.half() - inches(12, 0) * 4;
    check(&ask, at(across, along), 18, 22, 22);
}

#[test]
fn a8_two_metres_by_one_and_a_half() {
    let ask = Ask {
        surface: Region::rectangle(Length::mm(2_000), Length::mm(1_500)),
        gap: Length::mm(5),
        joint: Length::mm(3),
        ..bare(
            Length::mm(1),
            Length::mm(1),
            Length::mm(297),
            Length::mm(297),
        )
    };
    check(&ask, Point::default(), 24, 11, 11);
    let half = |field: i64| Length::nm((field - 297) * 500_000);
    check(&ask, at(half(1_990), half(1_490)), 15, 20, 20);
}

#[test]
fn a9_a10_half_bond_and_what_the_saw_takes() {
    let bond = Pattern::Bond { over: 1, of: 2 };
    let mut ask = bare(inches(60, 0), inches(36, 0), inches(6, 0), inches(3, 0));
    ask.pattern = bond;
    check(&ask, Point::default(), 114, 12, 6);
    let mut jointed = bare(inches(59, 56), inches(35, 56), inches(5, 56), inches(2, 56));
    (jointed.pattern, jointed.joint) = (bond, inches(0, 8));
    jointed.kerf = inches(0, 8);
    check(&jointed, Point::default(), 114, 12, 6);
    // Two halves of 2 7/8 in and a saw cut wider than 1/8 in do not come out of 5 7/8 in.
    jointed.kerf = inches(0, 9);
    check(&jointed, Point::default(), 114, 12, 12);
}

#[test]
fn a11_a_third_bond_pairs_its_cuts() {
    let mut ask = bare(inches(96, 0), inches(36, 0), inches(24, 0), inches(12, 0));
    ask.pattern = Pattern::Bond { over: 1, of: 3 };
    check(&ask, Point::default(), 10, 4, 2);
    ask.reuse = false;
    check(&ask, Point::default(), 10, 4, 4);
}

#[test]
fn a12_a13_diagonal_rooms_of_whole_diagonals() {
    let d = Length::from_metres(0.3048 * 2f64.sqrt()).unwrap();
    for (m, n, whole, cut) in [(3, 3, 13, 12), (2, 4, 11, 12)] {
        let mut ask = bare(d * m, d * n, inches(12, 0), inches(12, 0));
        ask.turn = Angle::degrees(45);
        // The middle of a tile in the corner of the room: only so are there quarters in all four.
        let layout = lay(&ask, at(Length::ZERO, -d.half())).unwrap();
        assert_eq!((layout.whole(), layout.cut()), (whole, cut), "{m} by {n}");
        // Eight halves and four quarters: the quarters come out of two tiles with other quarters, the halves in pairs.
        let tile = ask.tile.long.metres().powi(2);
        let areas: Vec<f64> = layout
            .tiles
            .iter()
            .map(|laid| laid.doubled_area() as f64 / 2e18 / tile)
            .collect();
        let near = |share: f64| areas.iter().filter(|a| (**a - share).abs() < 1e-6).count();
        assert_eq!((near(1.0), near(0.5), near(0.25)), (whole, 8, 4));
    }
}

#[test]
fn a14_a15_an_l_with_and_without_cuts() {
    let l = |points: [(i64, i64); 6]| Region {
        outer: Polygon {
            points: points.map(|(x, y)| at(inches(x, 0), inches(y, 0))).to_vec(),
        },
        holes: Vec::new(),
    };
    let surface = l([(0, 0), (96, 0), (96, 48), (60, 48), (60, 72), (0, 72)]);
    let mut ask = bare(inches(1, 0), inches(1, 0), inches(12, 0), inches(12, 0));
    ask.surface = surface.clone();
    check(&ask, Point::default(), 42, 0, 0);
    let mut ask = bare(inches(1, 0), inches(1, 0), inches(16, 0), inches(16, 0));
    ask.surface = surface;
    check(&ask, Point::default(), 21, 5, 3);
}

#[test]
fn a16_a17_herringbone_and_basketweave_of_two_to_one() {
    let mut ask = bare(inches(48, 0), inches(48, 0), inches(6, 0), inches(3, 0));
    ask.pattern = Pattern::Herringbone;
    let layout = lay(&ask, Point::default()).unwrap();
    assert_eq!((layout.whole(), layout.cut()), (120, 16));
    assert_eq!(
        plan(&ask, &layout).tiles.len(),
        8,
        "sixteen halves out of eight tiles: 128 in all"
    );
    ask.pattern = Pattern::Basketweave;
    check(&ask, Point::default(), 128, 0, 0);
}

/// The bath floor of 59 1/2 by 95 1/2 in with a joint of 1/8 in: whole, cut.
#[track_caller]
fn bath(
    pattern: Pattern,
    turn: i64,
    (long, short): (Length, Length),
    from: Point,
    whole: usize,
    cut: usize,
) {
    let ask = Ask {
        surface: Region::rectangle(inches(59, 32), inches(95, 32)),
        gap: Length::ZERO,
        tile: Tile {
            long,
            short,
            ..Tile::default()
        },
        pattern,
        turn: Angle::degrees(turn),
        ..Ask::default()
    };
    let layout = lay(&ask, from).unwrap();
    assert_eq!((layout.whole(), layout.cut()), (whole, cut), "{pattern:?}");
}

#[test]
fn the_bath_floor_in_every_pattern() {
    let half = Pattern::Bond { over: 1, of: 2 };
    let square = |n: i64| (inches(n, -8), inches(n, -8));
    let oblong = |long: i64, short: i64| (inches(long, -8), inches(short, -8));
    let corner = Point::default();
    let centre = at(inches(59, 32).half(), inches(95, 32).half());
    bath(Pattern::Grid, 0, square(12), corner, 28, 12);
    bath(half, 0, oblong(12, 6), corner, 60, 28);
    bath(half, 0, oblong(6, 3), corner, 279, 57);
    bath(Pattern::Basketweave, 0, oblong(6, 3), corner, 282, 38);
    bath(Pattern::Herringbone, 0, oblong(12, 6), corner, 62, 24);
    bath(Pattern::Grid, 45, square(12), centre, 22, 36);
    bath(Pattern::Grid, 45, square(6), centre, 136, 52);
}
