//! One maker's article on a C1T mortar (generic), read.

use storyrod::handbook::{Known, mortar as book};
use storyrod::measure::Length;
use storyrod::measure::quantity::{in_litres, kilograms, litres};
use storyrod::trades::mortar::{Label, Notch, ridge_bed, water_for, yields};

/// 25 kg with 6.8 to 7.2 L, 1.8 kg/L. With 7.0 L it is 17.8 L; half of it takes 3.5 L, makes 8.9 L and does
/// 2.5 m² with a 10 mm notch at 45°.
///
/// DIFFERENCE: the article prints the density in "g/l"; 1.8 g/L is lighter than a feather, kg/L is meant.
#[test]
fn half_a_bag_of_25_kilograms() {
    let label = Label {
        bag: kilograms(25.0),
        water: Some((litres(7.0), litres(7.0))),
        ..Label::default()
    };
    let half = kilograms(12.5);
    assert!((in_litres(yields(half * 2.0, &label)) - 17.8).abs() < 0.05);
    assert!((in_litres(water_for(half, &label).0) - 3.5).abs() < 1e-9);
    let mortar = yields(half, &label);
    assert!((in_litres(mortar) - 8.9).abs() < 0.05);
    let side = Length::mm(10);
    let bed = ridge_bed(&Notch::square(side, side));
    let square_metres = in_litres(mortar) / bed.millimetres();
    assert!((square_metres - 2.5).abs() < 0.05, "{square_metres}");
    let (_, most) = water_for(kilograms(25.0), &Label::default());
    assert!((in_litres(most) - 7.2).abs() < 1e-9);
    assert_eq!(book::YIELD.cite.known, Known::Computed);
}
