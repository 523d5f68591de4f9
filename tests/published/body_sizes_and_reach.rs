//! Body sizes after Pheasant (read) with shoulder height at 0.818 of stature, Drillis and Contini (from memory).

use storyrod::measure::Length;
use storyrod::trades::paint::{Pole, Reach, pole};

/// Hands at 52 1/2 in, 24 in off: 49.7 in to the top of 96 in, 60.5 in to 108 in; the sums are our own.
#[test]
fn an_eight_foot_wall_is_49_7_in_from_the_hands() {
    let reach = Reach::default();
    let eight = pole(Length::inches(96), &reach);
    assert!((eight.reach.in_inches() - 49.7).abs() < 0.05);
    assert_eq!(eight.pole, Pole::Short);
    let nine = pole(Length::inches(108), &reach);
    assert!((nine.reach.in_inches() - 60.5).abs() < 0.05);
}

/// Median statures 1755 and 1625 mm (read) stand at 1436 and 1329 mm (from memory, computed).
#[test]
fn shoulders_of_median_people_stand_at_1436_and_1329() {
    for (stature, shoulder) in [(1755, 1436.0), (1625, 1329.0)] {
        let reach = Reach {
            stature: Some(Length::mm(stature)),
            ..Reach::default()
        };
        let hands = pole(Length::feet(8), &reach).hands;
        assert!((hands.millimetres() - shoulder).abs() < 0.5);
    }
}

/// Common practice, no published source: a 10 ft wall is rolled from the floor, by the shortest and the tallest.
#[test]
fn a_ten_foot_wall_takes_a_pole_and_no_ladder() {
    for stature in [1520, 1625, 1755, 1870] {
        let reach = Reach {
            stature: Some(Length::mm(stature)),
            ..Reach::default()
        };
        let answer = pole(Length::feet(10), &reach);
        assert!(!answer.ladder);
        assert_eq!(answer.pole, Pole::Long);
    }
}
