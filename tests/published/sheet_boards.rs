//! Sheets: counts, screws and weights that are printed, and arithmetic on rules that are.

use storyrod::geometry::Region;
use storyrod::measure::Length;
use storyrod::measure::quantity::in_pounds;
use storyrod::site::Studs;
use storyrod::trades::sheets::{
    Ask, Board, Framing, Surface, Way, figure, screws_on_a_sheet, sheet_weight,
};

fn inches(n: i64) -> Length {
    Length::inches(n)
}

fn bare(wide: i64, high: i64) -> Ask {
    Ask {
        surface: Region::rectangle(inches(wide), inches(high)),
        gap: Length::ZERO,
        edge: Length::ZERO,
        ..Ask::default()
    }
}

/// Arithmetic on a maker's backer board guide, read on a dealer's page: 5 by 8 ft under sheets of 3 by 5 ft, the 5 ft side
/// across: 96/36 = 2.67, so 3 sheets, and two joints of 5 ft.
#[test]
fn a_floor_of_five_by_eight_feet_takes_three_sheets_and_ten_feet_of_tape() {
    let figure = figure(&bare(60, 96)).unwrap();
    assert_eq!((figure.to_buy, figure.at_least, figure.whole), (3, 3, 2));
    assert_eq!(figure.joints, Length::feet(10));
    assert!(figure.crosses.is_empty());
}

/// The same guide: screws at most 8 in apart over the whole sheet, 1/2 in from its edge.
#[test]
fn screws_over_the_whole_sheet_of_backer_board() {
    let (eight, half) = (inches(8), Length::in_64(0, 32));
    for (long, short, screws) in [(60, 36, 54), (60, 32, 45), (96, 48, 91)] {
        let sheet = (inches(long), inches(short));
        assert_eq!(screws_on_a_sheet(sheet, (eight, eight), half), screws);
    }
}

/// Arithmetic on the spacings of the Ontario code's note: a sheet of 4 by 8 ft has 28 screws at 16 in on four studs, 36 at
/// 12 in, level on seven studs 28, on five studs at 24 in 25. A textbook's 1000 for 1000 ft² are 32 a sheet.
#[test]
fn screws_of_a_sheet_on_its_studs() {
    for (way, spacing, screws, count) in [
        (Way::Up, 16, 16, 28),
        (Way::Up, 16, 12, 36),
        (Way::Across, 16, 16, 28),
        (Way::Across, 24, 12, 25),
    ] {
        let (wide, high) = if way == Way::Up { (48, 96) } else { (96, 48) };
        let ask = Ask {
            on: Surface::Wall,
            board: Board::Gypsum,
            sheet: (Length::feet(8), Length::feet(4)),
            way,
            off_floor: Length::ZERO,
            screws: (inches(screws), inches(screws)),
            framing: Some(Framing {
                upright: true,
                studs: Studs::Spaced {
                    first: Length::ZERO,
                    spacing: inches(spacing),
                    face: Length::in_64(1, 32),
                },
                land: true,
            }),
            ..bare(wide, high)
        };
        let figure = figure(&ask).unwrap();
        assert_eq!(
            (figure.whole, figure.screws),
            (1, count),
            "{way:?} {spacing}"
        );
        assert!(figure.off_framing.is_empty());
    }
}

/// *Estimating in Building Construction*, a soffit of 1.5 ft over 104 ft with 4 by 8 ft sheets, read: 156/32 = 4.88, 5
/// sheets. Cut from real sheets a strip of 18 in comes twice out of each: 13 lengths of 8 ft, 7 sheets.
/// DIFFERENCE: an area is no cutting plan.
#[test]
fn a_soffit_by_its_area_and_by_its_strips() {
    let ask = Ask {
        board: Board::Plywood,
        sheet: (Length::feet(8), Length::feet(4)),
        quarter: false,
        ..bare(104 * 12, 18)
    };
    let figure = figure(&ask).unwrap();
    assert_eq!((156.0f64 / 32.0).ceil() as usize, 5);
    assert_eq!(
        (figure.pieces.len(), figure.taken, figure.at_least),
        (13, 7, 7)
    );
}

/// A guide to drywall's weight, read: 3/8 in 44.8, 56 and 67.2 lb for 8, 10 and 12 ft; 1/2 in 54.4, 68, 81.6; 5/8 in 73.6,
/// 92, 110.4. A dealer's guide, read: 51.2 and 70.4 lb for 4 by 8 ft of 1/2 and 5/8 in.
#[test]
fn what_sheets_of_gypsum_board_weigh() {
    for (sixty_fourths, pounds) in [
        (24, [44.8, 56.0, 67.2]),
        (32, [54.4, 68.0, 81.6]),
        (40, [73.6, 92.0, 110.4]),
    ] {
        for (feet, printed) in [8, 10, 12].into_iter().zip(pounds) {
            let sheet = (Length::feet(feet), Length::feet(4));
            let thick = Length::in_64(0, sixty_fourths);
            let (_, most) = sheet_weight(Board::Gypsum, thick, sheet).unwrap();
            assert!((in_pounds(most) - printed).abs() < 0.05, "{feet} {printed}");
        }
    }
    for (sixty_fourths, printed) in [(32, 51.2), (40, 70.4)] {
        let sheet = (Length::feet(8), Length::feet(4));
        let thick = Length::in_64(0, sixty_fourths);
        let (least, _) = sheet_weight(Board::Gypsum, thick, sheet).unwrap();
        assert!((in_pounds(least) - printed).abs() < 0.05);
    }
    assert_eq!(
        sheet_weight(Board::Gypsum, inches(2), (inches(96), inches(48))),
        None
    );
}

/// GA-216 and ASTM C840 as a column of the association tells, read: end joints do not line up. The guide to backer board:
/// never four corners together.
#[test]
fn ends_of_neighbouring_courses_do_not_line_up() {
    for wide in [100, 130, 150, 190] {
        let figure = figure(&bare(wide, 108)).unwrap();
        assert!(figure.crosses.is_empty() && figure.near.is_none(), "{wide}");
    }
    // Where no room is left for it, it is said.
    let figure = figure(&Ask {
        stagger: Length::inches(30),
        ..bare(62, 72)
    });
    assert!(figure.unwrap().near.is_some());
}
