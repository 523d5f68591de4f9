//! A maker's grout data sheet (generic), coverage table, read: ft² a bag by tile and joint.

use storyrod::handbook::{Known, grout as book};
use storyrod::measure::Length;
use storyrod::measure::quantity::{
    in_kilograms, in_square_feet, in_square_metres, pounds, pounds_per_cubic_foot, square_feet,
};
use storyrod::trades::Grout;
use storyrod::trades::grout::{Ask, JointOf, figure, product_fraction};

/// Sides in inches, thickness in sixty-fourths, and the printed ft² of a bag for each joint.
type Row = ([i64; 2], i64, &'static [f64]);

/// Joints of the sanded columns, in sixty-fourths.
const SANDED_JOINTS: [i64; 4] = [8, 16, 24, 32];
/// 25 lb of sanded grout.
const SANDED: [Row; 7] = [
    ([1, 1], 16, &[58.0, 34.0, 26.0, 22.0]),
    ([2, 2], 16, &[106.0, 58.0, 42.0, 34.0]),
    ([4, 4], 24, &[136.0, 71.0, 49.0, 39.0]),
    ([6, 6], 24, &[201.0, 103.0, 71.0, 55.0]),
    ([12, 12], 24, &[395.0, 201.0, 136.0, 103.0]),
    ([18, 18], 24, &[589.0, 298.0, 201.0, 152.0]),
    ([24, 24], 24, &[784.0, 395.0, 265.0, 201.0]),
];
/// Joints of the unsanded columns, in sixty-fourths.
const UNSANDED_JOINTS: [i64; 3] = [4, 6, 8];
/// 10 lb of unsanded grout.
const UNSANDED: [Row; 9] = [
    ([1, 1], 16, &[42.0, 29.0, 23.0]),
    ([2, 2], 16, &[81.0, 55.0, 42.0]),
    ([4, 4], 24, &[105.0, 71.0, 54.0]),
    ([6, 6], 24, &[156.0, 105.0, 79.0]),
    ([12, 12], 24, &[310.0, 207.0, 156.0]),
    ([18, 18], 24, &[464.0, 310.0, 233.0]),
    ([24, 24], 24, &[618.0, 412.0, 310.0]),
    ([6, 24], 24, &[249.0, 167.0, 126.0]),
    ([12, 24], 24, &[413.0, 276.0, 208.0]),
];

/// ft² that a bag covers; `density` in lb/ft³ where it is not the program's own.
fn covers(tile: [i64; 2], thick: i64, joint: i64, kind: Grout, density: Option<f64>) -> f64 {
    let [a, b] = tile.map(Length::inches);
    let mut ask = Ask {
        area: square_feet(100.0),
        joints: JointOf::Grid { a, b },
        width: Length::in_64(0, joint),
        depth: Length::in_64(0, thick),
        kind: Some(kind),
        ..Ask::default()
    };
    ask.label.density = density.map(pounds_per_cubic_foot);
    in_square_feet(figure(&ask).unwrap().bag_covers)
}

/// Every printed cell: what is figured, what is printed.
fn cells(densities: Option<(f64, f64)>) -> Vec<(f64, f64)> {
    let mut all = Vec::new();
    let mut add = |rows: &[Row], joints: &[i64], kind, density| {
        for (tile, thick, printed) in rows {
            for (joint, cell) in joints.iter().zip(*printed) {
                all.push((covers(*tile, *thick, *joint, kind, density), *cell));
            }
        }
    };
    let (sanded, unsanded) = (densities.map(|d| d.0), densities.map(|d| d.1));
    add(&SANDED, &SANDED_JOINTS, Grout::Sanded, sanded);
    add(&UNSANDED, &UNSANDED_JOINTS, Grout::Unsanded, unsanded);
    all
}

/// All 55 cells to the printed digit, with one density for each kind and the exact share of joint.
#[test]
fn every_cell_of_the_coverage_table() {
    let cells = cells(None);
    assert_eq!(cells.len(), 55);
    for (figured, printed) in cells {
        assert_eq!(figured.round(), printed, "{figured}");
    }
}

/// DIFFERENCE: with the rounder densities 98.6 and 99.8 lb/ft³ eight cells miss the printed digit by one, the worst by
/// 0.55 % (2 × 2 in with 1/8 in: 106.58 against 106), since the sheet was figured with a powder 0.1 to 0.15 lb heavier.
#[test]
fn rounder_densities_miss_eight_cells_by_one() {
    let cells = cells(Some((98.6, 99.8)));
    let missed: Vec<_> = cells.iter().filter(|(f, p)| f.round() != *p).collect();
    assert_eq!(missed.len(), 8);
    for (figured, printed) in &cells {
        assert!((figured.round() - printed).abs() <= 1.0, "{figured}");
        assert!((figured / printed - 1.0).abs() < 0.011, "{figured}");
    }
    let worst = missed.iter().map(|(f, p)| f / p - 1.0).fold(0.0, f64::max);
    assert!((worst - 0.0055).abs() < 0.000_05, "{worst}");
    assert_eq!(book::SANDED_DENSITY.cite.known, Known::Computed);
}

/// DIFFERENCE: the form in common use would need a density from 54.5 to 98.0 lb/ft³ to print the sanded rows.
#[test]
fn the_form_in_common_use_fits_no_one_density() {
    let needed = |tile: [i64; 2], thick: i64, joint: i64, printed: f64| {
        let [a, b] = tile.map(Length::inches);
        let share = product_fraction(a, b, Length::in_64(0, joint));
        25.0 * 12.0 / (printed * share * thick as f64 / 64.0)
    };
    assert!((needed([1, 1], 16, 32, 22.0) - 54.5).abs() < 0.05);
    assert!((needed([24, 24], 24, 8, 784.0) - 98.0).abs() < 0.05);
}

/// One bag of 25 lb, 12 × 12 × 3/8 in with 1/4 in joints: 201 ft².
#[test]
fn a_bag_covers_201_square_feet() {
    let rounder = covers([12, 12], 24, 16, Grout::Sanded, Some(98.6));
    assert!((rounder - 200.9).abs() < 0.1, "{rounder}");
    let own = covers([12, 12], 24, 16, Grout::Sanded, None);
    assert_eq!(own.round(), 201.0);
}

/// DIFFERENCE: the sheet prints 4.6 m² beside 265 ft², and 11.34 kg beside 10 lb; both are misprints.
#[test]
fn two_metric_figures_are_misprinted() {
    let metres = in_square_metres(square_feet(265.0));
    assert!((metres - 24.62).abs() < 0.005);
    assert!((metres - 4.6).abs() > 20.0);
    let bag = in_kilograms(pounds(10.0));
    assert!((bag - 4.54).abs() < 0.005);
    assert!((in_kilograms(pounds(25.0)) - 11.34).abs() < 0.005);
}
