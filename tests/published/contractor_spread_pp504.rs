//! Spread rates from solids by volume, paint contractors' magazine PP504, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::in_square_feet_per_gallon;
use storyrod::trades::paint::film;

/// Worked examples at 2.5 mils: 46 % prints 294, 56 % prints 358.
///
/// DIFFERENCE: the source rounds 1604/2.5 to 641 and then drops what follows the point; exact are 295.1 and 359.3.
#[test]
fn forty_six_and_fifty_six_percent_spread_a_foot_more_than_printed() {
    for (share, exact, printed) in [(0.46, 295.1, 294.0), (0.56, 359.3, 358.0)] {
        let rate = in_square_feet_per_gallon(film::spread(share, Length::nm(63_500)).unwrap());
        assert!((rate - exact).abs() < 0.1, "{rate}");
        assert!((rate - printed).abs() > 1.0, "{rate}");
        assert_eq!(f64::floor(641.0 * share), printed);
    }
}
