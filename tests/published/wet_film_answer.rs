//! Converting a spread rate to a film thickness, unit conversion forum, thread 557, read.

use storyrod::measure::quantity::square_feet_per_gallon;
use storyrod::trades::paint::film;

/// The answer: 400 ft² a gallon is 231/57,600 in, 4.01 mils, of wet film.
#[test]
fn four_hundred_square_feet_a_gallon_is_four_mils_wet() {
    let wet = film::wet_film_at(square_feet_per_gallon(400.0)).unwrap();
    assert!((wet.in_inches() * 1_000.0 - 4.01).abs() < 0.005);
}
