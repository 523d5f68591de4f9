//! Tables of drawing scales, two drafting pages, read.

use storyrod::measure::Length;
use storyrod::trades::tape::{Scale, USUAL_SCALES};

/// The row of ratios: 1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192.
#[test]
fn the_thirteen_scales_have_the_printed_ratios() {
    let printed = [1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192];
    for ((on_paper, _), ratio) in USUAL_SCALES.iter().zip(printed) {
        let scale = Scale::to_the_foot(*on_paper).unwrap();
        assert!((scale.ratio() - f64::from(ratio)).abs() < 1e-12);
    }
}

/// 1:12 is 1 in to the foot; computed.
#[test]
fn one_to_twelve_is_an_inch_to_the_foot() {
    assert_eq!(
        Scale::one_to(12).unwrap().foot_on_paper(),
        Length::inches(1)
    );
}

/// DIFFERENCE: one chart prints 6 in to the foot as 1:6; it is half size.
#[test]
fn six_inches_to_the_foot_is_half_size_and_not_a_sixth() {
    let scale = Scale::to_the_foot(Length::inches(6)).unwrap();
    assert_eq!(scale, Scale::one_to(2).unwrap());
    assert_ne!(scale, Scale::one_to(6).unwrap());
}

/// A plan of 5 by 8 ft at 1/2, 1 and 1/4 in to the foot; the sums are our own.
#[test]
fn a_bath_of_5_by_8_is_drawn_2_1_2_by_4() {
    let half = Length::in_64(0, 32);
    let quarter = Length::in_64(0, 16);
    for (foot, across, along) in [
        (half, Length::in_64(2, 32), Length::inches(4)),
        (Length::inches(1), Length::inches(5), Length::inches(8)),
        (quarter, Length::in_64(1, 16), Length::inches(2)),
    ] {
        let scale = Scale::to_the_foot(foot).unwrap();
        assert_eq!(scale.on_paper(Length::feet(5)).0, across);
        assert_eq!(scale.on_paper(Length::feet(8)).0, along);
        assert_eq!(scale.on_site(across).0, Length::feet(5));
    }
}
