//! A page of a home-building text on ordering board by the floor's area, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::area;
use storyrod::trades::patch::sheets_to_hang;

/// A house of 24 by 36 ft takes 3.5 times its floor, 3024 ft²: 63 sheets of 4 by 12 ft.
///
/// DIFFERENCE: the rule is for a whole house and is not offered; one small room has far more wall to its floor.
#[test]
fn three_and_a_half_floors_of_a_house_are_63_long_sheets() {
    let house = area(Length::feet(24), Length::feet(36)) * 3.5;
    let long = (Length::feet(4), Length::feet(12));
    assert_eq!(sheets_to_hang(house, long, 0.0), Some(63));
    // A bath of 5 by 8 ft, 8 ft high, has 6.2 floors of wall and ceiling.
    let bath = area(Length::feet(26), Length::feet(8)) + area(Length::feet(5), Length::feet(8));
    assert!((bath / area(Length::feet(5), Length::feet(8))).value > 6.0);
}
