//! Coating bulletin on solids by volume and film thickness, its spread table, a copy that was read.

use storyrod::measure::Length;
use storyrod::measure::quantity::in_square_feet_per_gallon;
use storyrod::trades::paint::film;

fn rate(share: f64, mils: i64) -> f64 {
    in_square_feet_per_gallon(film::spread(share, Length::nm(25_400 * mils)).unwrap())
}

/// Table, row 35 %: 561 at 1 mil, 281 at 2 mils.
#[test]
fn thirty_five_percent_spreads_561_and_281() {
    assert!((rate(0.35, 1) - 561.0).abs() < 0.5);
    assert!((rate(0.35, 2) - 281.0).abs() < 0.5);
}

/// DIFFERENCE: row 72 % at 2 mils prints 527; its own formula makes 577.
#[test]
fn seventy_two_percent_spreads_577_and_not_the_misprinted_527() {
    assert!((rate(0.72, 2) - 577.5).abs() < 0.5);
    assert!((rate(0.72, 2) - 527.0).abs() > 50.0);
}

/// Formula for thinned paint, read in a copy: `WFT = DFT (1 + thin) / VS`; easy figures of our own.
#[test]
fn thinner_makes_the_wet_film_thicker_and_not_the_dry() {
    let dry = Length::nm(50_800);
    assert_eq!(film::wet_film(dry, 0.5, 0.0), Some(Length::nm(101_600)));
    assert_eq!(film::wet_film(dry, 0.5, 0.1), Some(Length::nm(111_760)));
}
