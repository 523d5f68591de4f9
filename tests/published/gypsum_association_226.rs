//! GA-226-08, table 1, board bent dry on framing at most 6 in on center: a copy, read.

use storyrod::handbook::Known;
use storyrod::handbook::gypsum::{Bent, DRY_BENDS, tightest_dry_bend};
use storyrod::measure::Length;

const QUARTER: Length = Length::in_64(0, 16);

/// The table as printed: 5, 6 1/4, 7 1/2, 10 and 15 ft lengthwise; 15, 20 and 25 ft widthwise, the thickest not at all.
///
/// Older tables print 18 ft for 5/8 in; from memory, so not taken.
#[test]
fn the_radii_are_as_printed() {
    let feet = |hundredths: i64| Length::feet(hundredths).divided(100);
    for (sixteenths, lengthwise, widthwise) in [
        (4, 500, Some(15)),
        (5, 625, Some(20)),
        (6, 750, Some(25)),
        (8, 1000, None),
        (10, 1500, None),
    ] {
        let board = Length::in_64(0, sixteenths * 4);
        assert_eq!(
            tightest_dry_bend(board, Bent::Lengthwise),
            Some(feet(lengthwise))
        );
        assert_eq!(
            tightest_dry_bend(board, Bent::Widthwise),
            widthwise.map(Length::feet)
        );
    }
    assert_eq!(DRY_BENDS.cite.known, Known::Read);
    assert_eq!(
        tightest_dry_bend(Length::in_64(0, 28), Bent::Lengthwise),
        None
    );
}

/// An alcove of 6 ft radius: 3/8 in does not bend to it dry, 1/4 in does, in one layer or two; our own reading of the table.
#[test]
fn an_alcove_of_six_feet_takes_quarter_inch_board() {
    let takes = |board| {
        tightest_dry_bend(board, Bent::Lengthwise).is_some_and(|least| least <= Length::feet(6))
    };
    assert!(takes(QUARTER));
    assert!(!takes(Length::in_64(0, 24)));
    assert!(!takes(Length::in_64(0, 32)));
}

/// A thicker board never bends tighter.
#[test]
fn thicker_board_bends_wider() {
    for rows in DRY_BENDS.value.windows(2) {
        assert!(rows[0].0 < rows[1].0 && rows[0].1 < rows[1].1);
        assert!(
            rows[1]
                .2
                .is_none_or(|wide| rows[0].2.is_some_and(|before| before < wide))
        );
    }
}
