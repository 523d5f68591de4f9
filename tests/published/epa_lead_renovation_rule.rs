//! The lead renovation rule, 40 CFR 745.83, minor repair: 6 ft² a room; EPA's answers of 2021, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::{area, square_feet};
use storyrod::trades::Weight;
use storyrod::trades::paint::{Ask, Built, figure};

fn heaviest(disturbed: storyrod::measure::quantity::Area, paid_job: bool) -> Weight {
    let ask = Ask {
        built: Built::Before1978,
        disturbed,
        paid_job,
        ..Ask::default()
    };
    figure(&ask).unwrap().account.findings[0].weight
}

/// 24 by 30 in and 2 by 2 ft in one room are 9 ft²; the sum is our own.
#[test]
fn nine_square_feet_in_one_room_stop_a_paid_job() {
    let patch = area(Length::inches(24), Length::inches(30));
    let other = area(Length::feet(2), Length::feet(2));
    assert_eq!(heaviest(patch + other, true), Weight::Stop);
    assert_eq!(heaviest(patch, true), Weight::Note);
}

#[test]
fn six_square_feet_are_still_a_minor_repair() {
    assert_eq!(heaviest(square_feet(6.0), true), Weight::Note);
    assert_eq!(heaviest(square_feet(6.01), true), Weight::Stop);
}
