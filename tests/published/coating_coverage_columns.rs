//! The columns on coating coverage, October 2003 and December 2009, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::in_square_feet_per_gallon;
use storyrod::trades::paint::film;

/// October 2003, example: 52 %, 30 % transfer, 1.5 mils: 167 ft² of a gallon.
#[test]
fn a_gallon_of_52_percent_at_30_percent_transfer_covers_167() {
    let mils = Length::nm(38_100);
    let rate = in_square_feet_per_gallon(film::practical_spread(0.52, 0.30, mils).unwrap());
    assert!((rate - 167.0).abs() < 0.5, "{rate}");
}

/// DIFFERENCE: December 2009 prints solids and transfer under the line of coverage; more solids would cover less.
#[test]
fn solids_and_transfer_stand_above_the_line() {
    let mils = Length::nm(38_100);
    let rate = in_square_feet_per_gallon(film::practical_spread(0.52, 0.30, mils).unwrap());
    let misprinted = 1604.0 / (0.52 * 0.30 * 1.5);
    assert!((rate - misprinted).abs() > 6_000.0);
    let more = film::practical_spread(0.60, 0.30, mils).unwrap();
    assert!(in_square_feet_per_gallon(more) > rate);
}
