//! Tile: printed counts and rules, and cases on the edge.
//!
//! Each test names its source and how it is known: "published" was read on the page named, "derived" is arithmetic.

use super::asks::{bare, inches};
use storyrod::geometry::{Point, narrowest};
use storyrod::measure::quantity::{in_square_metres, square_metres};
use storyrod::measure::{Angle, Length};
use storyrod::trades::tile::{
    Ask, BoxOf, Edge, Figure, Pattern, Piece, Run, Sight, Start, figure, lay, least_joint, lippage,
};

/// The widths of the cut pieces, least first.
fn cut_widths(figure: &Figure) -> Vec<Length> {
    let tiles = figure.layout.tiles.iter();
    let mut widths: Vec<Length> = tiles
        .filter_map(|laid| match &laid.piece {
            Piece::Whole => None,
            Piece::Cut(pieces) => Some(narrowest(&pieces[0])),
        })
        .collect();
    widths.sort();
    widths
}

/// A4, published (a school book of class 8, exercise 11.1, question 4): 1080 m² in tiles of base 24 cm and height 10 cm
/// take 45,000.
///
/// DIFFERENCE: its tile is a parallelogram, ours a rectangle of the same base and height; in a room of whole tiles the
/// count is by area alone.
#[test]
fn a4_a_hall_of_1080_square_metres() {
    let mm = Length::mm;
    let ask = bare(mm(36_000), mm(30_000), mm(240), mm(100));
    let layout = lay(&ask, Point::default()).unwrap();
    assert_eq!((layout.whole(), layout.cut()), (45_000, 0));
}

/// A5, published (a college's page of mathematics): 8.5 by 8.5 ft and 9 by 10 ft in tiles of 1 ft, 20 to spare, 12 in a
/// box: 162.25 ft², 183 tiles, 16 boxes.
#[test]
fn a5_two_rooms_and_some_to_spare() {
    let foot = Length::feet(1);
    let square = bare(inches(102, 0), inches(102, 0), foot, foot);
    let small = figure(&square).unwrap();
    // 64 whole, sixteen halves out of eight, a quarter out of one more: the area rounded up, though by pieces.
    assert_eq!((small.layout.whole(), small.plan.tiles.len()), (64, 9));
    let other = Ask {
        attic: 20 + small.to_buy as u32,
        box_of: Some(BoxOf::Tiles(12)),
        ..bare(Length::feet(9), Length::feet(10), foot, foot)
    };
    let both = figure(&other).unwrap();
    assert_eq!((both.to_buy, both.boxes), (183, Some((16, 9))));
}

/// A18, derived, the fraction run through shapely: hexagons of 2 in between flats.
#[test]
fn a18_hexagons_to_the_square_foot() {
    for (joint, a_foot, share) in [(0, 41.569, 0.0), (8, 36.823, 0.11419)] {
        let joint = inches(0, joint);
        let along = inches(2, 0) + joint;
        // A room that repeats: the pieces over one wall are what is missing at the other.
        let rows = Length::from_metres(along.metres() * 3f64.sqrt() / 2.0 * 20.0).unwrap();
        let mut ask = bare(along * 18, rows, inches(2, 0), inches(2, 0));
        (ask.pattern, ask.joint) = (Pattern::Hexagon, joint);
        let figure = figure(&ask).unwrap();
        assert!((figure.joints - share).abs() < 5e-6, "{}", figure.joints);
        let one = 3f64.sqrt() / 2.0 * 0.0508 * 0.0508;
        let tiles = in_square_metres(figure.layout.faces()) / one;
        let feet = in_square_metres(figure.covered) / 0.3048 / 0.3048;
        assert!((tiles / feet - a_foot).abs() < 5e-4, "{}", tiles / feet);
    }
}

/// How many tiles the program takes a box of an area to hold.
fn in_box(ask: &Ask, box_of: BoxOf) -> usize {
    let ask = Ask {
        box_of: Some(box_of),
        ..ask.clone()
    };
    let figure = figure(&ask).unwrap();
    let (boxes, over) = figure.boxes.unwrap();
    assert_eq!(boxes, 1);
    figure.to_buy + over as usize
}

/// A19: 15 by 15 cm without joints, 44.44 to a square metre (derived); 42.72 with joints of 3 mm (derived).
///
/// Negative: a textbook for tilers prints 44 a square metre. 100 m² of it come to 4400 tiles, 44 short.
#[test]
fn a19_tiles_to_the_square_metre() {
    let mm = Length::mm;
    let mut ask = bare(mm(1_500), mm(1_500), mm(150), mm(150));
    let hundred = square_metres(100.0);
    assert_eq!(in_box(&ask, BoxOf::Faces(hundred)), 4_444);
    ask.joint = mm(3);
    assert_eq!(in_box(&ask, BoxOf::Laid(hundred)), 4_272);
    let hall = bare(mm(10_050), mm(9_900), mm(150), mm(150));
    let need = lay(&hall, Point::default()).unwrap().whole();
    assert_eq!(need, 4_422, "99.495 m²");
    assert!(need > (99.495f64 * 44.0).ceil() as usize);
}

/// A20, published (a textbook for tilers): 120 m² and 6 % are 127.2, bought as 128.
#[test]
fn a20_a_share_on_top_is_rounded_up_once() {
    let metre = Length::mm(1_000);
    let ask = Ask {
        breakage: 0.06,
        ..bare(metre * 12, metre * 10, metre, metre)
    };
    assert_eq!(figure(&ask).unwrap().to_buy, 128);
}

/// A21, A22, published (a training foundation's tip on ANSI A108.02, joints not counted): where a sliver is left, half
/// the sum of what is at both ends is cut at each; A23, its rule published (NAVEDTRA 14044, p. 7-23), its numbers derived.
#[test]
fn a21_a22_a23_slivers_are_shared_between_both_ends() {
    for (wall, tile, end, whole) in [
        // A whole tile at one end, 1 1/2 in at the other.
        (inches(73, 32), inches(24, 0), inches(12, 48), 2),
        // Slivers of 1 3/4 and 1 1/4 in beside three tiles.
        (inches(38, 16), inches(11, 48), inches(7, 24), 2),
        (inches(100, 0), inches(6, 0), inches(5, 0), 15),
    ] {
        let ask = Ask {
            start: Start::Balanced(Sight::Middle),
            ..bare(wall, tile, tile, tile)
        };
        let figure = figure(&ask).unwrap();
        assert_eq!(figure.layout.whole(), whole);
        assert_eq!(cut_widths(&figure), [end, end]);
    }
}

/// A24, negative: a trade magazine's column prints 324.24 repeats of 4 by 12 in for 100 ft² and 7 %, for it rounded a
/// third of a square foot to 0.33. Exact, derived: 321.
#[test]
fn a24_a_third_is_not_33_hundredths() {
    let ask = Ask {
        breakage: 0.07,
        ..bare(
            Length::feet(10),
            Length::feet(10),
            inches(12, 0),
            inches(4, 0),
        )
    };
    let to_buy = figure(&ask).unwrap().to_buy;
    assert_eq!(to_buy, 321);
    assert!((107.0f64 / 0.33 - 324.24).abs() < 0.01 && to_buy < 324);
}

/// Derived: pieces are the field over the module rounded up, and never a piece for what the last joint leaves.
#[test]
fn a_row_that_ends_in_its_joint_takes_no_more_pieces() {
    let tile = inches(11, 56);
    for (field, pieces, cut) in [
        (inches(60, 0), 5, 0),
        (inches(59, 56), 5, 0),
        (inches(59, 55), 5, 1),
        // A sixty-fourth past the joint is a piece.
        (inches(60, 1), 6, 1),
    ] {
        let mut ask = bare(field, tile, tile, tile);
        ask.joint = inches(0, 8);
        let layout = lay(&ask, Point::default()).unwrap();
        assert_eq!(
            (layout.tiles.len(), layout.cut()),
            (pieces, cut),
            "{field:?}"
        );
    }
}

/// Derived: 2098 mm in tiles of 297 and joints of 3. A tile on the middle leaves 0.5 mm at each wall, which the gap takes
/// up; a joint there leaves cuts of 147.5 mm, a millimetre under half.
#[test]
fn a_millimetre_decides_between_no_cut_and_two_under_half() {
    let mm = Length::mm;
    let mut ask = bare(mm(2_098), mm(297), mm(297), mm(297));
    ask.joint = mm(3);
    let at = |x| lay(&ask, Point::new(x, Length::ZERO)).unwrap();
    let tile = at(Length::nm(500_000));
    assert_eq!((tile.whole(), tile.cut()), (7, 0));
    let joint = at(mm(1_049) + Length::nm(1_500_000));
    assert_eq!((joint.whole(), joint.cut()), (6, 2));
    ask.start = Start::ByHand(Point::new(mm(1_049) + Length::nm(1_500_000), Length::ZERO));
    let by_hand = figure(&ask).unwrap();
    assert_eq!(cut_widths(&by_hand), [Length::nm(147_500_000); 2]);
    assert_eq!(by_hand.small.len(), 2);
    ask.start = Start::Balanced(Sight::Middle);
    assert_eq!(figure(&ask).unwrap().layout.cut(), 0);
}

/// R1, published (TCNA Handbook 2018, p. 37, as a trade association quotes it): facial variation of 1/16 in, joint of at
/// least 3/16. R3, derived: 0.010 in wants 0.030, and the least of all, 1/16 in, governs.
#[test]
fn r1_r3_a_joint_by_what_tiles_differ_by() {
    let mut ask = Ask::default();
    ask.tile.spread = Some(inches(0, 4));
    assert_eq!(least_joint(&ask).0, inches(0, 12));
    ask.tile.spread = Some(Length::nm(254_000));
    assert_eq!(least_joint(&ask).0, inches(0, 4));
}

/// R2, published (ANSI A108.02, 4.3.8.1, as a trade page quotes it): rectified, a side over 15 in, bond, an edge bowed by
/// 1/32 in: 1/8 + 1/32 = 5/32 in.
#[test]
fn r2_a_long_tile_in_bond_adds_its_bow() {
    let mut ask = bare(inches(96, 0), inches(60, 0), inches(23, 56), inches(11, 56));
    ask.pattern = Pattern::Bond { over: 1, of: 3 };
    ask.tile.warp = Some(inches(0, 2));
    ask.tile.edge = Edge::Rectified;
    assert_eq!(least_joint(&ask).0, inches(0, 10));
    ask.tile.edge = Edge::Calibrated;
    assert_eq!(
        least_joint(&ask).0,
        inches(0, 14),
        "3/16 + 1/32, the same clause"
    );
    // Exactly 15 in is not over it, and in a grid the clause does not hold.
    (ask.tile.long, ask.tile.edge) = (inches(15, 0), Edge::Rectified);
    assert_eq!(least_joint(&ask).0, inches(0, 4));
    (ask.tile.long, ask.pattern) = (inches(23, 56), Pattern::Grid);
    assert_eq!(least_joint(&ask).0, inches(0, 4));
}

/// R4, derived from ANSI A108.02 of 2013, 4.3.7, as a trade magazine quotes it: joint 1/8 in, warp 1/32 in: 1/16 in.
#[test]
fn r4_lippage_is_the_rule_and_the_tiles_own_warp() {
    let mut ask = Ask::default();
    ask.tile.warp = Some(inches(0, 2));
    assert_eq!(lippage(&ask).0, inches(0, 4));
    ask.joint = inches(0, 16);
    assert_eq!(lippage(&ask).0, inches(0, 6), "from 1/4 in on 1/16 in");
    ask.joint = inches(0, 16) - Length::nm(1);
    assert_eq!(lippage(&ask).0, inches(0, 4));
}

/// R5, derived from TCNA EJ171 as a reference manual quotes it: 30 ft dry want one joint in the field at 25 ft, in the sun
/// two at 12 ft; a run of exactly the limit wants none.
#[test]
fn r5_soft_joints_in_a_long_run() {
    let run = |feet, run| {
        let foot = Length::feet(1);
        let ask = Ask {
            run,
            ..bare(Length::feet(feet), Length::feet(10), foot, foot)
        };
        figure(&ask).unwrap().movement
    };
    assert_eq!(run(30, Run::Dry), (1, 0));
    assert_eq!(run(30, Run::SunOrWet), (2, 0));
    assert_eq!(run(25, Run::Dry), (0, 0));
    assert_eq!(run(24, Run::SunOrWet), (1, 0));
    assert_eq!(run(51, Run::Dry), (2, 0));
}

/// Derived: joints as a share of the field are 1 − ab/((a + j)(b + j)), whichever way the pattern is turned.
#[test]
fn joints_as_a_share_of_a_field_that_repeats() {
    let (a, b, j) = (inches(5, 56), inches(2, 56), inches(0, 8));
    let share = 1.0 - (a.metres() * b.metres()) / ((a + j).metres() * (b + j).metres());
    for pattern in [
        Pattern::Grid,
        Pattern::Bond { over: 1, of: 2 },
        Pattern::Bond { over: 1, of: 4 },
        Pattern::Herringbone,
        Pattern::Basketweave,
    ] {
        for turn in [0, 90, 180, 270] {
            let mut ask = bare(inches(48, 0), inches(48, 0), a, b);
            (ask.pattern, ask.joint, ask.turn) = (pattern, j, Angle::degrees(turn));
            let found = figure(&ask).unwrap().joints;
            assert!((found - share).abs() < 1e-9, "{pattern:?} {turn}: {found}");
        }
    }
}
