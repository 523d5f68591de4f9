//! General pages on bagged concrete, read; low authority, but all agree on what a bag makes.

use super::asks::{mortar, near};
use storyrod::measure::quantity::{cubic_feet, pounds};
use storyrod::takeoff::{Choice, cover};
use storyrod::trades::mortar::Mix;

/// 60 lb make 0.45 ft³, 80 lb 0.60. 2.482 ft³ take 5.52, so six, or 4.14, so five.
#[test]
fn a_shower_bed_from_bags() {
    for (pounds_in, makes, bags, bought) in [(60.0, 0.45, 5.52, 6), (80.0, 0.60, 4.14, 5)] {
        let bed = mortar(
            cubic_feet(2.482),
            Mix::Bags {
                bag: pounds(pounds_in),
                makes: cubic_feet(makes),
                water: None,
            },
        );
        let count = (bed.dry[0].mass / pounds(pounds_in)).value;
        near(count, bags, 0.005);
        let packs = cover(count, &[1.0], &[None], Choice::LeastLeftOver);
        assert_eq!(packs, [bought]);
        // The pages do not agree on water; it is not guessed.
        assert_eq!(bed.water, None);
        let step = bed
            .account
            .working
            .iter()
            .find(|s| s.what.text == "Bed mix");
        assert!(step.unwrap().cite.clause.contains("low authority"));
    }
}
