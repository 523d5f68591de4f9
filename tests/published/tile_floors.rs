//! What floors come to in every pattern: counts of our own by exact geometry, run through shapely 2.2.0 when they were
//! written down, so derived and refereed, not published. Each row: whole, cut, of these more than half a tile where it was written
//! down, and the area in tiles.

use super::asks::inches;
use storyrod::geometry::{Point, Region};
use storyrod::measure::quantity::in_square_metres;
use storyrod::measure::{Angle, Length};
use storyrod::trades::tile::{Ask, Pattern, Piece, Tile, lay};

fn floor(width: Length, height: Length, (long, short): (Length, Length), joint: Length) -> Ask {
    Ask {
        surface: Region::rectangle(width, height),
        gap: Length::ZERO,
        tile: Tile {
            long,
            short,
            ..Tile::default()
        },
        joint,
        ..Ask::default()
    }
}

#[track_caller]
fn check(
    ask: &Ask,
    from: (Length, Length),
    (whole, cut, large): (usize, usize, Option<usize>),
    area: f64,
) {
    let layout = lay(ask, Point::new(from.0, from.1)).unwrap();
    let tile = ask.tile.long.metres() * ask.tile.short.metres();
    assert_eq!((layout.whole(), layout.cut()), (whole, cut));
    if let Some(large) = large {
        let over_half = layout.tiles.iter().filter(|laid| {
            laid.piece != Piece::Whole && laid.doubled_area() as f64 / 2e18 > tile / 2.0
        });
        assert_eq!(over_half.count(), large);
    }
    let laid = in_square_metres(layout.faces()) / tile;
    assert!(
        (laid - area).abs() < 0.005 * area.max(10.0) / 10.0,
        "{laid}"
    );
}

/// The bath floor of 5 by 8 ft less a gap of 1/4 in, a joint of 1/8 in: 59 1/2 by 95 1/2 in.
const WIDE: Length = Length::in_64(59, 32);
const LONG: Length = Length::in_64(95, 32);
const JOINT: Length = Length::in_64(0, 8);

#[test]
fn the_bath_floor_in_12_by_24_centred_the_long_way() {
    let tile = (inches(23, 56), inches(11, 56));
    let ask = floor(LONG, WIDE, tile, JOINT);
    // A joint on the middle of the length, a tile on the middle of the width.
    let from = (
        LONG.half() + JOINT.half(),
        WIDE.half() - ask.tile.short.half(),
    );
    check(&ask, from, (6, 14, Some(14)), 19.80);
}

#[test]
fn the_bath_floor_in_12_by_24_and_a_third_bond() {
    let mut ask = floor(LONG, WIDE, (inches(23, 56), inches(11, 56)), JOINT);
    ask.pattern = Pattern::Bond { over: 1, of: 3 };
    // Centred across its rows, the row that is not shifted in the middle.
    let middle = (Length::ZERO, WIDE.half() - ask.tile.short.half());
    check(&ask, middle, (9, 15, Some(11)), 19.77);
    // From the corner the counts move by a piece or three.
    check(&ask, (Length::ZERO, Length::ZERO), (12, 11, Some(8)), 19.78);
}

#[test]
fn the_bath_floor_in_herringbone_at_45_degrees() {
    let middle = (WIDE.half(), LONG.half());
    for (tile, counts, area) in [
        ((inches(11, 56), inches(5, 56)), (60, 44, Some(17)), 78.92),
        ((inches(5, 56), inches(2, 56)), (273, 87, Some(41)), 315.7),
    ] {
        let mut ask = floor(WIDE, LONG, tile, JOINT);
        ask.pattern = Pattern::Herringbone;
        ask.turn = Angle::degrees(45);
        check(&ask, middle, counts, area);
        // Half round the middle it is the same floor.
        ask.turn = Angle::degrees(225);
        check(&ask, middle, counts, area);
    }
}

#[test]
fn the_bath_floor_in_3_by_6_rows_and_weaves() {
    let corner = (Length::ZERO, Length::ZERO);
    let tile = (inches(5, 56), inches(2, 56));
    let mut ask = floor(WIDE, LONG, tile, JOINT);
    ask.pattern = Pattern::Bond { over: 1, of: 2 };
    check(&ask, corner, (279, 57, None), 316.3);
    ask.pattern = Pattern::Basketweave;
    check(&ask, corner, (282, 38, None), 316.7);
}

#[test]
fn square_rooms_of_10_and_30_ft_on_the_diagonal() {
    for (feet, counts, area) in [
        (10, (84, 60, Some(28)), 100.0),
        (30, (840, 172, Some(84)), 900.0),
    ] {
        let side = Length::feet(feet);
        // A corner of the pattern in the middle of the room.
        let middle = (side.half(), side.half());
        let foot = (inches(12, 0), inches(12, 0));
        let mut ask = floor(side, side, foot, Length::ZERO);
        ask.turn = Angle::degrees(45);
        check(&ask, middle, counts, area);
        // The same with a joint taken out of the foot: counts as without.
        let less = (inches(11, 56), inches(11, 56));
        let mut ask = floor(side, side, less, JOINT);
        ask.turn = Angle::degrees(45);
        check(&ask, middle, counts, area);
    }
}

/// A12, A13 for any whole numbers of diagonals: MN + (M − 1)(N − 1) whole, 2(M − 1) + 2(N − 1) halves, four quarters.
#[test]
fn rooms_of_whole_diagonals_by_their_formula() {
    let d = Length::from_metres(0.3048 * 2f64.sqrt()).unwrap();
    for m in 1..6 {
        for n in 1..6 {
            let foot = (inches(12, 0), inches(12, 0));
            let mut ask = floor(d * m, d * n, foot, Length::ZERO);
            ask.turn = Angle::degrees(45);
            let layout = lay(&ask, Point::new(Length::ZERO, -d.half())).unwrap();
            let whole = m * n + (m - 1) * (n - 1);
            let cut = 2 * (m - 1) + 2 * (n - 1) + 4;
            let found = (layout.whole() as i64, layout.cut() as i64);
            assert_eq!(found, (whole, cut), "{m} by {n}");
        }
    }
}
