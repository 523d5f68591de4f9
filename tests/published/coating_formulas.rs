//! Coating formulas: theoretical coverage, a copy that was read.

use storyrod::measure::Length;
use storyrod::measure::quantity::{in_square_feet_per_gallon, in_square_metres_per_litre};
use storyrod::trades::paint::film;

/// Example in customary units, read in a copy: 65 % and 5 mils give 208.52 ft² a gallon.
///
/// The document figures with 1604; the exact constant is 1604.1667, hence a tolerance of one part in 9,600.
#[test]
fn sixty_five_percent_at_five_mils_spreads_208_52() {
    let rate = in_square_feet_per_gallon(film::spread(0.65, Length::nm(127_000)).unwrap());
    assert!((rate - 208.52).abs() < 208.52 / 9_600.0 + 0.005, "{rate}");
}

/// Example in metric, read in a copy: 65 % and 125 µm give 5.2 m² a litre.
///
/// DIFFERENCE: the formula line above the example prints "100 x SBV"; the example itself takes 1000.
#[test]
fn sixty_five_percent_at_125_micrometres_spreads_5_2_and_not_a_tenth() {
    let rate = in_square_metres_per_litre(film::spread(0.65, Length::nm(125_000)).unwrap());
    assert!((rate - 5.2).abs() < 0.05);
    let misprinted = 100.0 * 0.65 / 125.0;
    assert!((rate - misprinted).abs() > 4.0);
}
