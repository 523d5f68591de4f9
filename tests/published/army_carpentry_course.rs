//! Army engineer carpentry course, figures 1-36 and 1-39 (equal diagonals, 3-4-5), and a framing text, both read.

use storyrod::measure::{Length, Rounding};
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
