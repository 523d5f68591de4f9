//! Gillette and Hill, Concrete Construction, 1908, pp. 21-22, read.

use super::asks::near;
use storyrod::trades::mortar::{Parts, Shrink, factor};

/// Sabin's 2.06, 1.62 and 1.33 barrels of 3.65 ft³ a yd³ are 1.114, 1.095 and 1.079 of dry
/// volume to one of wet.
///
/// DIFFERENCE: rule 38 stands a fifth and more over them. Both are right: Sabin's sand was dry, a mason's is damp and bulked.
#[test]
fn sabins_barrels_as_factors() {
    let by = |sand, way| factor(&Parts::sand(sand), way).unwrap();
    for (sand, printed) in [(3.0, 1.114), (4.0, 1.095), (5.0, 1.079)] {
        near(by(sand, Shrink::DryLoose), printed, 0.0006);
        let damp = by(sand, Shrink::Rule38) / by(sand, Shrink::DryLoose);
        assert!((1.25..1.31).contains(&damp), "{damp}");
    }
    let lime = Parts {
        lime: 0.25,
        ..Parts::sand(3.0)
    };
    assert_eq!(factor(&lime, Shrink::DryLoose), None);
}
