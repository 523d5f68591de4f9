//! Tape arithmetic, for any length.

use proptest::prelude::*;
use storyrod::measure::Length;
use storyrod::trades::tape::{Ends, centred, spaced, three_four_five};

proptest! {
    #[test]
    fn prop_spaces_and_things_fill_the_length(
        over in 1i64..100_000_000_000, count in 2u32..200, share in 0.0..1.0, taken in any::<bool>(),
    ) {
        let width = Length::nm((over as f64 * share) as i64 / i64::from(count));
        let ends = if taken { Ends::Taken } else { Ends::Open };
        let found = spaced(Length::nm(over), count, width, ends).unwrap();
        let mut before = None;
        for (near, _) in &found.positions {
            if let Some(before) = before {
                let space = *near - before - width;
                prop_assert!((space - found.space).abs() <= Length::nm(1));
            }
            before = Some(*near);
        }
        let last = found.positions[count as usize - 1].0 + width;
        let rest = Length::nm(over) - last;
        let wanted = if taken { Length::ZERO } else { found.space };
        prop_assert!((rest - wanted).abs() <= Length::nm(1));
    }

    #[test]
    fn prop_margins_and_thing_are_the_length(over in 1i64..100_000_000_000, share in 0.0..1.0) {
        let (over, width) = (Length::nm(over), Length::nm((over as f64 * share) as i64));
        let found = centred(over, width).unwrap();
        prop_assert_eq!(found.left + width + found.right, over);
        prop_assert!((found.left - found.right).abs() <= Length::nm(1));
    }

    #[test]
    fn prop_the_triangle_is_right_and_fits(across in 1i64..500, along in 1i64..500) {
        let (across, along) = (Length::inches(across), Length::inches(along));
        if let Some(found) = three_four_five(across, along, Length::inches(1)).unwrap() {
            prop_assert!(found.across <= across && found.along <= along);
            prop_assert_eq!(found.across.diagonal(found.along), found.between);
        }
    }
}
