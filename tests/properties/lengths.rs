//! Lengths read and printed: whatever is typed, and every mark of every tape.

use proptest::prelude::*;
use storyrod::measure::read::{self, Unreadable, Why};
use storyrod::measure::{Angle, Figures, Length, Money, Rounding, Units};

const TAPE: Units = Units::FeetInches { marks: 64 };
const ALL_UNITS: [Units; 5] = [
    TAPE,
    Units::DecimalInches,
    Units::Millimetres,
    Units::Centimetres,
    Units::Metres,
];

/// The place of a fault lies in the text and cuts no character.
fn well_placed<T>(text: &str, answer: Result<T, Unreadable>) -> bool {
    match answer {
        Ok(_) => true,
        Err(Unreadable { at, .. }) => {
            at.start <= at.end && text.is_char_boundary(at.start) && text.is_char_boundary(at.end)
        }
    }
}

fn reads_well(text: &str) -> bool {
    ALL_UNITS
        .iter()
        .all(|units| well_placed(text, read::length(text, *units)))
        && well_placed(text, read::number(text))
        && well_placed(text, read::angle(text))
        && well_placed(text, read::money(text))
}

fn same(length: Length, units: Units, figures: Figures) {
    let text = units.length(length, Rounding::Nearest, figures);
    assert_eq!(read::length(&text, units), Ok(length), "{text}");
}

proptest! {
    #[test]
    fn prop_any_text_is_read_or_refused_at_a_place_in_it(text in ".*") {
        prop_assert!(reads_well(&text));
    }

    #[test]
    fn prop_any_text_like_a_length_is_read_or_refused_at_a_place_in_it(
        text in "[0-9'\"./+\\-×÷()½⅛′″’”‘“−–‒‐, xmcftinMCFTIN\u{E084}\u{F041}é]{0,40}",
    ) {
        prop_assert!(reads_well(&text));
    }

    #[test]
    fn prop_a_comma_before_three_figures_is_a_decimal_in_metres_and_refused_elsewhere(
        whole in 1u32..1000, part in 0u32..1000,
    ) {
        let number = format!("{whole},{part:03}");
        let millimetres = Length::mm(i64::from(whole * 1000 + part));
        prop_assert_eq!(read::length(&format!("{number} m"), TAPE), Ok(millimetres));
        prop_assert_eq!(read::length(&number, Units::Metres), Ok(millimetres));
        for unit in ["mm", " cm", "\"", " ft", ""] {
            let refused = read::length(&format!("{number}{unit}"), TAPE);
            prop_assert_eq!(refused.map_err(|refusal| refusal.why), Err(Why::CommaUnclear));
        }
    }

    #[test]
    fn prop_any_text_like_an_angle_or_a_price_is_read_or_refused_at_a_place_in_it(
        text in "[ \u{a0}\u{202f}]?[-−–+$]?[0-9]{0,18}[ \u{a0}.,/½]{0,2}[0-9]{0,4}[.,]?[0-9]{0,3}[ °º]?(deg|DEGREES)?",
    ) {
        prop_assert!(reads_well(&text));
    }

    #[test]
    fn prop_an_angle_reads_back_as_printed(micro in -359_999_999i64..360_000_000) {
        let angle = Angle::microdegrees(micro);
        for figures in [Figures::Plain, Figures::Set] {
            prop_assert_eq!(read::angle(&angle.show(figures)), Ok(angle));
        }
    }

    #[test]
    fn prop_a_price_reads_back_to_the_cent(minor in 0i64..=10_000_000) {
        let (whole, cents) = (minor / 100, minor % 100);
        for text in [format!("{whole}.{cents:02}"), format!("{whole},{cents:02}")] {
            prop_assert_eq!(read::money(&text), Ok(Money::minor(minor)));
        }
        let shown = Money::minor(minor).show("");
        prop_assert_eq!(read::money(&shown), Ok(Money::minor(minor)));
    }

    #[test]
    fn prop_capitals_change_nothing(
        tenths in 0i64..600_000, feet in 0i64..200, inches in 0i64..12, capitals in any::<u32>(),
    ) {
        let mix = |text: &str| -> String {
            text.chars()
                .enumerate()
                .map(|(at, c)| if capitals >> (at % 32) & 1 == 1 { c.to_ascii_uppercase() } else { c })
                .collect()
        };
        let length = Length::nm(tenths * 100_000);
        for units in [Units::Millimetres, Units::Centimetres, Units::Metres] {
            let text = mix(&units.length(length, Rounding::Nearest, Figures::Plain));
            prop_assert_eq!(read::length(&text, TAPE), Ok(length));
        }
        let text = mix(&format!("{feet} feet {inches} inches"));
        prop_assert_eq!(read::length(&text, TAPE), Ok(Length::inches(feet * 12 + inches)));
    }

    #[test]
    fn prop_rounding_goes_the_way_it_says(
        nm in -10_000_000_000_000i64..10_000_000_000_000, mark in 1i64..50_000_000,
    ) {
        let (length, mark) = (Length::nm(nm), Length::nm(mark));
        let [near, inside, cover] = [Rounding::Nearest, Rounding::FitInside, Rounding::Cover]
            .map(|rounding| length.rounded(mark, rounding));
        for found in [near, inside, cover] {
            prop_assert_eq!(found.as_nm() % mark.as_nm(), 0);
            prop_assert!((found - length).abs() <= mark);
        }
        prop_assert!(inside.abs() <= length.abs());
        prop_assert!(length.abs() <= cover.abs());
        prop_assert!((near - length).abs() * 2 <= mark);
        prop_assert!(near == inside || near == cover);
    }

    #[test]
    fn prop_a_length_on_a_mark_stays_there(
        marks in -1_000_000i64..1_000_000, mark in 1i64..50_000_000,
    ) {
        let length = Length::nm(marks * mark);
        for rounding in [Rounding::Nearest, Rounding::FitInside, Rounding::Cover] {
            prop_assert_eq!(length.rounded(Length::nm(mark), rounding), length);
        }
    }
}

#[test]
fn every_sixty_fourth_up_to_200_feet_reads_back_as_printed() {
    for n in 0..=200 * 768 {
        let length = Length::SIXTY_FOURTH * n;
        same(length, TAPE, Figures::Plain);
        same(length, TAPE, Figures::Set);
    }
}

#[test]
fn every_tenth_of_a_millimetre_up_to_60_metres_reads_back_as_printed() {
    for n in 0..=600_000 {
        let length = Length::nm(n * 100_000);
        for units in [Units::Millimetres, Units::Centimetres, Units::Metres] {
            same(length, units, Figures::Plain);
        }
    }
}
