//! `measure::quantity` against pint 0.25.3, which has its own table of units (`pint_units.py` wrote the figures).

use storyrod::measure::quantity::{
    celsius, fahrenheit, gallons, in_celsius, in_gallons, in_kilograms, in_litres, in_pounds,
    in_square_feet, in_square_feet_per_gallon, in_square_metres, in_square_metres_per_litre,
    kilograms, litres, pounds, square_feet, square_feet_per_gallon, square_metres,
    square_metres_per_litre,
};

fn ours(conversion: &str, value: f64) -> f64 {
    match conversion {
        "square_feet_to_square_metres" => in_square_metres(square_feet(value)),
        "square_metres_to_square_feet" => in_square_feet(square_metres(value)),
        "gallons_to_litres" => in_litres(gallons(value)),
        "litres_to_gallons" => in_gallons(litres(value)),
        "pounds_to_kilograms" => in_kilograms(pounds(value)),
        "kilograms_to_pounds" => in_pounds(kilograms(value)),
        "spread_to_metric" => in_square_metres_per_litre(square_feet_per_gallon(value)),
        "spread_to_customary" => in_square_feet_per_gallon(square_metres_per_litre(value)),
        "fahrenheit_to_celsius" => in_celsius(fahrenheit(value)),
        other => panic!("no conversion of ours is called {other}"),
    }
}

/// A temperature is compared as a difference from absolute zero, where it has no small figures to lose.
fn difference(conversion: &str, found: f64, expected: f64) -> f64 {
    if conversion == "fahrenheit_to_celsius" {
        celsius(found).value / celsius(expected).value - 1.0
    } else {
        found / expected - 1.0
    }
}

#[test]
fn every_conversion_agrees_to_a_million_millionth() {
    let mut lines = 0;
    for line in include_str!("pint_units.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
    {
        let [conversion, value, expected]: [&str; 3] =
            line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let (value, expected): (f64, f64) = (value.parse().unwrap(), expected.parse().unwrap());
        let off = difference(conversion, ours(conversion, value), expected);
        assert!(off.abs() <= 1e-12, "{line}: off by {off:e}");
        lines += 1;
    }
    assert_eq!(lines, 63, "nine conversions of seven values");
}
