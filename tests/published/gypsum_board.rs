//! Gypsum board in the inspection guide, the textbook on estimating, the Gypsum Association's papers and the codes.

use storyrod::handbook::{Known, gypsum};
use storyrod::measure::Length;
use storyrod::measure::quantity::in_gallons;
use storyrod::site::Studs;
use storyrod::trades::Weight;
use storyrod::trades::patch::*;

const HALF: Length = Length::in_64(0, 32);

fn wall(studs: Studs) -> Ask {
    Ask {
        hole: Hole {
            shape: HoleShape::Rectangle {
                width: Length::inches(12),
                height: Length::inches(10),
            },
            from_left: Some(Length::inches(41)),
            from_stud: None,
            above_floor: Some(Length::inches(40)),
        },
        studs: Some(studs),
        wall: WallFacts {
            length: Some(Length::inches(120)),
            ..WallFacts::default()
        },
        method: Some(Method::CutBack),
        ..Ask::default()
    }
}
fn spaced(spacing: Length) -> Studs {
    Studs::Spaced {
        first: Length::ZERO,
        spacing,
        face: gypsum::STUD_FACE.value,
    }
}

/// Computed: a hole from 41 to 53 in with studs at 16, 19.2 and 24 in from the corner. Exact.
#[test]
fn a_hole_from_41_to_53_is_cut_to_the_nearest_centres() {
    let tenths = |n: i64| Length::nm(n * 2_540_000);
    for (spacing, left, right) in [(160, 320, 640), (192, 384, 576), (240, 240, 720)] {
        let figure = figure(&wall(spaced(tenths(spacing)))).unwrap();
        let opening = figure.opening.unwrap();
        assert_eq!((opening.left, opening.right), (tenths(left), tenths(right)));
        let (at_left, at_right) = figure.bearing.unwrap();
        assert_eq!(
            (at_left, at_right),
            (gypsum::BEARING.value, gypsum::BEARING.value)
        );
    }
}

/// Computed: 2 (32 + 12) = 88 in, printed as 7.33 ft; half of the last digit.
#[test]
fn tape_round_a_patch_of_32_by_12_is_7_33_feet() {
    let tape = tape_round(Length::inches(32), Length::inches(12));
    assert!((tape.in_inches() / 12.0 - 7.33).abs() <= 0.005);
}

/// Computed: screws in whole sheets. The textbook's 1000 screws for 1000 ft² (32 a sheet) lies between 28 and 36.
#[test]
fn screws_in_a_four_by_eight_sheet() {
    let inches = Length::inches;
    for (supports, length, spacing, screws) in [
        (4, 96, 16, 28),
        (4, 96, 12, 36),
        (7, 48, 16, 28),
        (5, 48, 12, 25),
    ] {
        assert_eq!(
            screws_in_a_sheet(supports, inches(length), inches(spacing)),
            screws
        );
    }
}

/// Popular guides, read: 1 1/2 in of sound board all round; a 2 1/2 in hole needs 5 1/2 in.
///
/// DIFFERENCE: a magazine shows a 4 in plate on 6 in mesh over such a hole; there the mesh makes the overlap.
#[test]
fn a_hole_of_two_and_a_half_takes_a_six_inch_patch() {
    let hole = Length::in_64(2, 32);
    assert_eq!(adhesive_patch(hole, hole), Some(Length::inches(6)));
    assert_ne!(adhesive_patch(hole, hole), Some(Length::inches(4)));
}

/// Popular guides, read: patches are said to go to 6 in and to need 1 1/2 in all round; the largest sold is 8 in.
///
/// DIFFERENCE: both cannot hold at once, so the overlap rules and the patch ends at 5 in.
#[test]
fn the_largest_patch_covers_five_inches() {
    let (five, more) = (Length::inches(5), Length::in_64(5, 1));
    assert_eq!(adhesive_patch(five, five), Some(Length::inches(8)));
    assert_eq!(adhesive_patch(more, five), None);
    assert_eq!(gypsum::PATCH_UP_TO.value, Length::inches(6));
}

/// IRC R702.3.5.1, quoted copy, read: 5/8 in into wood. Next length sold: common practice.
#[test]
fn screws_reach_five_eighths_into_wood() {
    assert_eq!(gypsum::screw_to_buy(HALF), Some(Length::in_64(1, 16)));
    assert_eq!(
        gypsum::screw_to_buy(Length::in_64(0, 40)),
        Some(Length::in_64(1, 40))
    );
}

/// Residential inspection guide, read: screws 3/8 in, nails 3/8 to 1 in from the edge; gaps up to 1/4 in.
/// Gypsum Association, Using Gypsum Board, section III, read: nails 7 in on ceilings, 8 in on walls.
#[test]
fn fastening_limits_are_as_printed() {
    assert_eq!(gypsum::SCREW_EDGE.value, Length::in_64(0, 24));
    assert_eq!(
        gypsum::NAIL_EDGE.value,
        (Length::in_64(0, 24), Length::inches(1))
    );
    assert_eq!(gypsum::WIDEST_GAP.value, Length::in_64(0, 16));
    assert_eq!(gypsum::WALL_NAILS.value, Length::inches(8));
    assert_eq!(gypsum::CEILING_NAILS.value, Length::inches(7));
}

/// Ontario code with CMHC notes, read: 16 in on studs at 16 in, 12 in otherwise. The inspection guide: 12 in everywhere.
#[test]
fn wide_screws_are_noted_on_close_studs_and_drawn_in_on_wide_ones() {
    for (studs, weight) in [(16, Weight::Note), (24, Weight::Caution)] {
        let mut ask = wall(spaced(Length::inches(studs)));
        ask.screw_spacing = Length::inches(16);
        let figure = figure(&ask).unwrap();
        let said = figure.account.findings.iter().any(|finding| {
            finding.weight == weight && finding.says.text.to_lowercase().contains("screws")
        });
        assert!(said, "studs at {studs} in");
    }
}

/// Ontario code and NAVEDTRA 14044 chapter 5, read: 1/2 in board on walls at 24 in.
///
/// DIFFERENCE: a page on a later code wants 5/8 in there; it is noted as springy, not refused.
#[test]
fn half_inch_board_at_24_is_noted_as_springy() {
    let springy = |studs: i64, board: Length| {
        let mut ask = wall(spaced(Length::inches(studs)));
        ask.board = board;
        let findings = figure(&ask).unwrap().account.findings;
        findings.iter().any(|f| f.says.text.contains("springy"))
    };
    assert!(springy(24, HALF));
    assert!(!springy(16, HALF));
    assert!(!springy(24, Length::in_64(0, 40)));
}

/// Estimating in Building Construction p. 203, read: 7000 ft² take 35 gal and 2660 ft of tape. A maker's handbook,
/// from memory, comes to almost twice the compound.
#[test]
fn compound_is_a_range_and_its_least_is_the_textbook() {
    let (least, most) = compound_for(Length::feet(2660));
    assert!((in_gallons(least) - 35.0).abs() < 1e-9);
    assert!((in_gallons(most) - 70.0).abs() < 1e-9);
    assert_eq!(gypsum::COMPOUND_LEAST.cite.known, Known::Read);
    assert_eq!(gypsum::COMPOUND_MOST.cite.known, Known::FromMemory);
}

/// Drying at 70 °F and 50 %: 17 h, from memory; the Drywall Finishing Council's band, read, is 17 to 19 h.
#[test]
fn a_coat_at_70_and_half_humidity_waits_as_the_chart_says() {
    let hours = gypsum::drying_hours(70.0, 50.0).unwrap();
    assert!((17.0..=19.0).contains(&hours));
    assert_eq!(gypsum::DRYING_HOURS.cite.known, Known::FromMemory);
    let waits = figure(&Ask::default()).unwrap().waits;
    assert_eq!(
        waits.iter().map(|w| w.hours).collect::<Vec<_>>(),
        [48.0, 17.0, 17.0, 17.0]
    );
}
