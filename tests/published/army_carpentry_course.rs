//! Army engineer carpentry course, figures 1-36 and 1-39 (equal diagonals, 3-4-5), and a framing text, both read.

use storyrod::measure::{Length, Rounding};
use storyrod::site::{Room, What, surveyed};
use storyrod::trades::tape::{diagonal, out_of_square, three_four_five};

/// Framing text, read: legs of 20 and 15 ft have 25 ft between them.
#[test]
fn legs_of_20_and_15_ft_have_25_between_them() {
    let (twenty, fifteen) = (Length::feet(20), Length::feet(15));
    assert_eq!(diagonal(twenty, fifteen).unwrap().0, Length::feet(25));
    let check = three_four_five(twenty, fifteen, Length::feet(1)).unwrap();
    assert_eq!(check.unwrap().between, Length::feet(25));
}

/// 60 by 96 in: 113.2078 in, 9 ft 5 3/16 in to the sixteenth; the sum is our own.
#[test]
fn a_bath_of_60_by_96_is_113_3_16_across() {
    let (across, _) = diagonal(Length::inches(60), Length::inches(96)).unwrap();
    assert!((across.in_inches() - 113.2078).abs() < 0.00005);
    let sixteenth = Length::in_64(0, 4);
    assert_eq!(
        across.rounded(sixteenth, Rounding::Nearest),
        Length::in_64(113, 12)
    );
}

/// The same with diagonals of 113 1/4 and 112 3/4 in: 0.281° off, 0.294 in over 60 and 0.471 in over 96; our own.
#[test]
fn half_an_inch_between_the_diagonals_is_half_an_inch_over_the_long_wall() {
    let room = (Length::inches(60), Length::inches(96));
    let found = out_of_square(room, (Length::in_64(113, 16), Length::in_64(112, 48))).unwrap();
    assert!((found.off.in_degrees() - 0.281).abs() < 0.0005);
    assert!((found.over_across.in_inches() - 0.294).abs() < 0.0005);
    assert!((found.over_along.in_inches() - 0.471).abs() < 0.0005);
}

/// A four-sided room by its walls and its diagonals, in inches and sixteenths.
fn corners_off(walls: [i64; 4], diagonals: [i64; 2]) -> Vec<f64> {
    let mut room = Room::rectangle("Room");
    let sixteenths = |n: i64| Some(Length::in_64(0, n * 4));
    for (wall, length) in walls.into_iter().enumerate() {
        room.measure(What::Wall(wall), sixteenths(length), None);
    }
    room.measure(What::Diagonal(0, 2), sixteenths(diagonals[0]), None);
    room.measure(What::Diagonal(1, 3), sixteenths(diagonals[1]), None);
    let found = surveyed(&room).unwrap();
    found
        .corners
        .iter()
        .map(|corner| corner.off.in_degrees())
        .collect()
}

/// A rectangle is square when its diagonals agree and its opposite sides are equal (figures 1-36 and 1-39, read); equal
/// diagonals alone do not do. 60 by 96 in: 113 3/16 in across.
#[test]
fn equal_diagonals_make_a_room_square_only_with_equal_opposite_sides() {
    let across = 113 * 16 + 3;
    let square = corners_off([96 * 16, 60 * 16, 96 * 16, 60 * 16], [across, across]);
    assert!(square.iter().all(|off| off.abs() < 0.05), "{square:?}");
    // 95 in opposite 97: the same diagonals (97 · 95 + 60² = 113.2²), and no corner is square.
    let tapered = corners_off([97 * 16, 60 * 16, 95 * 16, 60 * 16], [across, across]);
    assert!(tapered.iter().all(|off| off.abs() > 0.8), "{tapered:?}");
}

/// Laid out with 3-4-5 at every corner a room of 15 by 20 ft is 25 ft across (framing text, 15-20-25, read).
#[test]
fn a_room_laid_out_by_three_four_five_comes_out_square() {
    let feet = |n: i64| n * 12 * 16;
    let off = corners_off(
        [feet(20), feet(15), feet(20), feet(15)],
        [feet(25), feet(25)],
    );
    assert!(off.iter().all(|off| off.abs() < 1e-6), "{off:?}");
}
