//! Standard P10 of the Painting Contractors Association, its summary, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::in_square_feet;
use storyrod::trades::paint::{Trim, counted_area, painted_area};

/// Objects under 1 ft wide count 1 ft² a foot; the base of 3 1/2 in by 26 ft is our own example.
#[test]
fn a_base_counts_26_square_feet_of_work_and_takes_paint_for_7_58() {
    let base = Trim {
        name: "Base".to_owned(),
        length: Length::feet(26),
        face: Length::in_64(3, 32),
    };
    assert!((in_square_feet(painted_area(&base)) - 7.58).abs() < 0.005);
    assert!((in_square_feet(counted_area(&base)) - 26.0).abs() < 1e-9);
}
