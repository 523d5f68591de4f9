//! How lengths are typed.

use super::*;
use crate::measure::{Angle, Money};

const TAPE: Units = Units::FeetInches { marks: 16 };

#[track_caller]
fn check(text: &str, expected: Length) {
    assert_eq!(length(text, TAPE), Ok(expected), "{text}");
}

#[test]
fn every_way_that_a_tape_is_written_down_reads() {
    for text in [
        "7' 4 1/2\"",
        "7ft 4-1/2in",
        "88.5\"",
        "88 1/2",
        "7′ 4½″",
        "7'4 1/2",
        "7’ 4 1/2”",
        "7 ft 4.5 in",
        "7'-4 1/2\"",
    ] {
        check(text, Length::in_64(88, 32));
    }
    for text in ["2245 mm", "224.5cm", "2.245 m", "2,245m", "224,5 cm"] {
        check(text, Length::mm(2245));
    }
    check("4 1/2", Length::in_64(4, 32));
    check("1/2", Length::in_64(0, 32));
    check("8'", Length::feet(8));
}

#[test]
fn sums_are_exact() {
    check("3' 7 5/16\" - 3/4", Length::in_64(42, 36));
    check("(7' 4\" + 8) / 2", Length::inches(48));
    check("3 × 1/16", Length::in_64(0, 12));
    check("16\" * 2.5", Length::inches(40));
    check("-3 + 5", Length::inches(2));
    check("10 - 4-1/2", Length::in_64(5, 32));
    check("10 ÷ 3", Length::nm(84_666_667));
}

#[track_caller]
fn refused(text: &str, at: Range<usize>, why: Why) {
    assert_eq!(length(text, TAPE), Err(Unreadable { at, why }), "{text}");
}

#[test]
fn a_refusal_says_where_and_why() {
    refused("", 0..0, Why::Empty);
    refused("7q", 1..2, Why::NotKnown);
    refused("7 +", 3..3, Why::NumberMissing);
    refused("(7 + 2", 0..1, Why::BracketOpen);
    refused("1/0", 0..3, Why::DivideByZero);
    refused("2\" × 3\"", 3..8, Why::LengthTimesLength);
    refused("2 ÷ 3\"", 2..7, Why::DivideByLength);
    refused("12 km", 3..4, Why::NotKnown);
    refused("10001 m", 0..7, Why::TooLong);
    refused("7\" 3\"", 3..4, Why::SignMissing);
}

/// Three figures behind a comma are a decimal only where thousands cannot be meant.
#[test]
fn a_comma_that_may_part_thousands_is_refused() {
    refused("10,000 mm", 0..6, Why::CommaUnclear);
    refused("1,250 cm", 0..5, Why::CommaUnclear);
    refused("100,125\"", 0..7, Why::CommaUnclear);
    refused("2,245 ft", 0..5, Why::CommaUnclear);
    refused("7' 1,250", 3..8, Why::CommaUnclear);
    refused("2,245", 0..5, Why::CommaUnclear);
    refused("3 + 1,000 1/2\"", 4..9, Why::CommaUnclear);
    refused("3/1,000", 2..7, Why::CommaUnclear);
    refused("1,000 × 3 m", 0..5, Why::CommaUnclear);
    refused("1,234.5 m", 0..7, Why::CommaUnclear);
    refused("1.234,5 m", 0..7, Why::CommaUnclear);
    refused("1,234,567", 0..9, Why::CommaUnclear);
    check("10,5 cm", Length::mm(105));
    check("10,25 cm", Length::nm(102_500_000));
    check("2,245 m", Length::mm(2245));
    check("12,245 Metres", Length::mm(12_245));
    check("0,125\"", Length::in_64(0, 8));
    check(",125\"", Length::in_64(0, 8));
    check("1234,567 mm", Length::nm(1_234_567_000));
    check("1,2345 in", Length::nm(31_356_300));
    check("10.000 mm", Length::mm(10));
    assert_eq!(length("2,245", Units::Metres), Ok(Length::mm(2245)));
    assert!(length("2,245", Units::Millimetres).is_err());
    assert_eq!(number("12,5"), Ok(12.5));
    let refusal = number(" 1,250").unwrap_err();
    assert_eq!((refusal.at, refusal.why), (0..6, Why::CommaUnclear));
}

/// A dash reads as a hyphen does; a minus sign subtracts wherever it stands.
#[test]
fn a_dash_joins_or_subtracts_as_a_hyphen_does() {
    for dash in ['-', '\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}'] {
        check(&format!("9'{dash}10\""), Length::inches(118));
        check(&format!("9'{dash}10"), Length::inches(118));
        check(&format!("9'{dash}½\""), Length::in_64(108, 32));
        check(&format!("7ft 4{dash}1/2in"), Length::in_64(88, 32));
        check(&format!("9' {dash} 10\""), Length::inches(98));
        check(&format!("9' {dash}10\""), Length::inches(98));
        check(&format!("9'{dash} 10\""), Length::inches(98));
        check(&format!("88{dash}8"), Length::inches(80));
        check(&format!("{dash}4"), Length::inches(-4));
    }
    check("9'−10\"", Length::inches(98));
    check("9' − 10\"", Length::inches(98));
    check("4−1/2", Length::in_64(3, 32));
}

/// What cannot be the inches of a foot is subtracted from it.
#[test]
fn a_hyphen_before_feet_or_metres_subtracts() {
    check("10'-4'", Length::feet(6));
    check("10'–4'", Length::feet(6));
    check("10'-4' 6\"", Length::inches(66));
    check("10ft-4ft", Length::feet(6));
    check("10'-48mm", Length::feet(10) - Length::mm(48));
    check("10'-1,250m", Length::feet(10) - Length::mm(1250));
    refused("10'-1,250mm", 4..9, Why::CommaUnclear);
    refused("10' 4'", 3..6, Why::SignMissing);
}

#[test]
fn units_read_in_any_case() {
    for text in [
        "8 FT",
        "8 Ft",
        "8fT",
        "8 ft.",
        "8 FT.",
        "8 feet",
        "8 Feet",
        "8 FOOT",
        "96 IN",
        "96 In.",
        "96in.",
        "96 INCH",
        "96 Inches",
        "96 iN",
    ] {
        check(text, Length::feet(8));
    }
    for text in [
        "2245 MM",
        "2245 Mm",
        "2245mM",
        "224.5 CM",
        "224.5 Cm",
        "2.245 M",
        "2.245 metre",
        "2.245 Metres",
        "2.245 meter",
        "2.245 METERS",
        "2245 millimetres",
        "2245 Millimeter",
        "224.5 centimetre",
        "224.5 centimeters",
    ] {
        check(text, Length::mm(2245));
    }
    check("7 FT 4 1/2 IN", Length::in_64(88, 32));
    check("7‘ 4 1/2 “", Length::in_64(88, 32));
    check("2MX3", Length::mm(6000));
    refused("2 min", 3..4, Why::NotKnown);
}

#[test]
fn angles_read_with_and_without_their_sign() {
    for (text, micro) in [
        ("90", 90_000_000),
        ("45°", 45_000_000),
        ("22.5", 22_500_000),
        ("22,5°", 22_500_000),
        ("22,500", 22_500_000),
        ("22 1/2", 22_500_000),
        ("22½°", 22_500_000),
        ("22-1/2 deg.", 22_500_000),
        ("112.5 deg", 112_500_000),
        ("112.5 Degrees", 112_500_000),
        ("1 DEGREE", 1_000_000),
        (" 45 º ", 45_000_000),
        ("−90", -90_000_000),
        ("- 90°", -90_000_000),
        ("–.5", -500_000),
        ("0", 0),
        ("1/3", 333_333),
        ("359.999999", 359_999_999),
    ] {
        assert_eq!(angle(text), Ok(Angle::microdegrees(micro)), "{text}");
    }
}

#[test]
fn an_angle_is_refused_at_its_place() {
    for (text, at, why) in [
        (" ", 0..1, Why::Empty),
        ("-", 1..1, Why::NumberMissing),
        ("abc", 0..1, Why::NotAnAngle),
        ("90°x", 4..5, Why::NotAnAngle),
        ("90 in", 3..4, Why::NotAnAngle),
        ("--90", 1..2, Why::NotAnAngle),
        ("45 + 45", 3..4, Why::NotAnAngle),
        ("360", 0..3, Why::TurnTooFar),
        ("-360°", 0..6, Why::TurnTooFar),
        ("359.9999999", 0..11, Why::TurnTooFar),
        ("999999999999999", 0..15, Why::TurnTooFar),
        ("9999999999999999", 0..16, Why::TurnTooFar),
        ("1/0", 0..3, Why::DivideByZero),
        ("1,234.5", 0..7, Why::CommaUnclear),
    ] {
        assert_eq!(angle(text), Err(Unreadable { at, why }), "{text}");
    }
}

#[test]
fn prices_read_to_the_cent() {
    for (text, minor) in [
        ("12.50", 1250),
        ("12,50", 1250),
        ("12.5", 1250),
        ("12", 1200),
        ("12.", 1200),
        (".99", 99),
        (",99", 99),
        ("0", 0),
        ("0.29", 29),
        ("1 250.00", 125_000),
        ("1\u{a0}250,5", 125_050),
        ("12\u{202f}250", 1_225_000),
        (" 64999.99 ", 6_499_999),
        ("100 000", 10_000_000),
    ] {
        assert_eq!(money(text), Ok(Money::minor(minor)), "{text}");
    }
}

#[test]
fn a_price_is_refused_for_its_reason() {
    for (text, at, why) in [
        ("", 0..0, Why::Empty),
        ("12.505", 0..6, Why::PartOfACent),
        ("1,250", 0..5, Why::PartOfACent),
        (" 1.250 ", 1..6, Why::PartOfACent),
        ("1,250.00", 0..8, Why::CommaUnclear),
        ("-5", 0..2, Why::LessThanNothing),
        ("−.01", 0..6, Why::LessThanNothing),
        ("100000.01", 0..9, Why::PriceTooHigh),
        ("99999999999999999999", 0..20, Why::PriceTooHigh),
        ("12 50", 0..5, Why::NotAPrice),
        ("1250 000", 0..8, Why::NotAPrice),
        ("12. 50", 0..6, Why::NotAPrice),
        ("12 .50", 0..6, Why::NotAPrice),
        (".", 0..1, Why::NotAPrice),
        ("$12", 0..3, Why::NotAPrice),
        ("1e3", 0..3, Why::NotAPrice),
        ("1/2", 0..3, Why::NotAPrice),
    ] {
        assert_eq!(money(text), Err(Unreadable { at, why }), "{text}");
    }
}
