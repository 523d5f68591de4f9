//! NIST Special Publication 811, 2008 edition, appendix B.8, and NIST Handbook 44, appendix C: exact customary units.
//!
//! The publications themselves were not read; the factors were read in GNU units 2.22, which names both as its source,
//! and the derived ones are computed.

use storyrod::measure::Length;
use storyrod::measure::quantity::{
    gallons, in_kilograms, in_litres, in_square_metres, pounds, square_feet,
};

#[test]
fn inch_foot_and_mil_are_exact() {
    assert_eq!(Length::inches(1).as_nm(), 25_400_000);
    assert_eq!(Length::feet(1).as_nm(), 304_800_000);
    assert_eq!(Length::from_inches(0.001), Some(Length::nm(25_400)));
    assert_eq!(Length::SIXTY_FOURTH * 64, Length::inches(1));
}

/// To the last place of an f64: only the way into SI and back may round.
#[track_caller]
fn check(found: f64, exact: f64) {
    assert!(
        (found / exact - 1.0).abs() <= 2.0 * f64::EPSILON,
        "{found} is not {exact}"
    );
}

#[test]
fn square_foot_gallon_and_pound_are_exact() {
    check(in_square_metres(square_feet(1.0)), 0.092_903_04);
    check(in_litres(gallons(1.0)), 3.785_411_784);
    check(in_kilograms(pounds(1.0)), 0.453_592_37);
}

/// Computed: 231 cubic inches of 25.4 mm, and the square of 0.3048 m.
#[test]
fn gallon_and_square_foot_follow_from_the_inch() {
    check(in_litres(gallons(1.0)), 231.0 * 0.254 * 0.254 * 0.254);
    check(in_square_metres(square_feet(1.0)), 0.3048 * 0.3048);
}

/// SP 811 prints the gallon as 3.785 412 E-03 m³, which is rounded: it is not the unit, though it agrees as printed.
#[test]
fn the_gallon_to_seven_digits_is_not_the_gallon() {
    let found = in_litres(gallons(1.0));
    assert!((found - 3.785_412).abs() <= 0.000_000_5);
    assert!((found / 3.785_412 - 1.0).abs() > 1e-8);
}
