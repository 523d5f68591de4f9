//! Teaching pages on mortar quantities, read.

use super::asks::{mortar, near};
use storyrod::measure::quantity::{
    cubic_feet, in_cubic_feet, in_kilograms, in_litres, kilograms, kilograms_per_litre, litres,
};
use storyrod::trades::mortar::{Mix, Parts, Shrink};

/// 1 m³ of 1:4, × 1.33, cement 1440 kg/m³, w/c 0.5: 0.266 m³ or 383.04 kg or 7.66 bags of 50 kg; 1.064 m³
/// of sand; 191.5 L of water.
#[test]
fn a_cubic_metre_of_one_to_four() {
    let metre = mortar(
        litres(1000.0),
        Mix::Site(Parts {
            by: Shrink::Dry133,
            cement_weighs: Some(kilograms_per_litre(1.44)),
            water: Some(0.5),
            ..Parts::sand(4.0)
        }),
    );
    let [cement, sand] = &metre.dry[..] else {
        panic!("{:?}", metre.dry)
    };
    near(in_litres(cement.volume), 266.0, 1e-6);
    near(in_kilograms(cement.mass), 383.04, 0.005);
    near((cement.mass / kilograms(50.0)).value, 7.66, 0.005);
    near(in_litres(sand.volume), 1064.0, 1e-6);
    let (least, most) = metre.water.unwrap();
    near(in_litres(least), 191.5, 0.05);
    assert_eq!(least, most);
}

/// Some take 1.30; 10 ft³ of 1:4 are then 2.60 ft³ of cement and 10.40 of sand.
#[test]
fn ten_cubic_feet_by_a_factor_of_1_30() {
    let mix = Parts {
        by: Shrink::Own(1.30),
        ..Parts::sand(4.0)
    };
    let ten = mortar(cubic_feet(10.0), Mix::Site(mix));
    near(in_cubic_feet(ten.dry[0].volume), 2.60, 1e-9);
    near(in_cubic_feet(ten.dry[1].volume), 10.40, 1e-9);
}
