//! A contractor's estimating formulas, wall studs page, read.

use storyrod::measure::Length;
use storyrod::site::studs_to_frame;

const WALL: Length = Length::inches(14 * 12 + 6);

/// 14 ft 6 in at 16 in on center: 10.875, so 11, and one more: 12 studs.
#[test]
fn fourteen_and_a_half_feet_at_16_take_12_studs() {
    assert_eq!(studs_to_frame(WALL, Length::inches(16)), Some(12));
}

/// The same wall at 19.2 and 24 in on center: 11 and 9; computed, not on the page. 19.2 in is exact.
#[test]
fn the_same_wall_at_19_2_and_24() {
    let diamond = Length::inches(96).divided(5);
    assert_eq!(studs_to_frame(WALL, diamond), Some(11));
    assert_eq!(studs_to_frame(Length::inches(96), diamond), Some(6));
    assert_eq!(studs_to_frame(WALL, Length::inches(24)), Some(9));
}
