//! How lengths are typed.

use super::*;

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
    refused("2 ÷ 3\"", 2..8 - 1, Why::DivideByLength);
    refused("12 km", 3..4, Why::NotKnown);
    refused("10001 m", 0..7, Why::TooLong);
    refused("7\" 3\"", 3..4, Why::SignMissing);
}
