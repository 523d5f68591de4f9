//! NAVEDTRA 14043, chapter 8, rule 38, read.

use super::asks::{mortar, near};
use storyrod::handbook::{Known, mortar as book};
use storyrod::measure::quantity::{cubic_feet, in_cubic_feet, pounds};
use storyrod::trades::mortar::{Mix, Parts, Shrink, factor};

/// 1 yd³ of 1:3 takes 9 1/2 sacks of cement and 28 1/2 ft³ of sand.
#[test]
fn rule_38_for_a_cubic_yard() {
    let yard = mortar(cubic_feet(27.0), Mix::Site(Parts::sand(3.0)));
    near(in_cubic_feet(yard.dry[0].volume), 9.5, 1e-9);
    near(in_cubic_feet(yard.dry[1].volume), 28.5, 1e-9);
    near((yard.dry[0].mass / pounds(94.0)).value, 9.5, 1e-9);
    near(
        factor(&Parts::sand(3.0), Shrink::Rule38).unwrap(),
        1.407,
        0.0005,
    );
    assert_eq!(book::RULE_38.cite.known, Known::Read);
}
