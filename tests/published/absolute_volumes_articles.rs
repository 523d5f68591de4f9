//! Articles on absolute volumes, concreteconstruction.net and concretedecor.net, read.

use super::asks::near;
use storyrod::measure::quantity::{gallons, in_cubic_feet, pounds};
use storyrod::trades::mortar::absolute_volume;

/// A sack of cement and 5 gal of water are 0.478 + 0.667 = 1.145 ft³.
///
/// DIFFERENCE: the 0.667 is 5 × 8.33 lb over 62.4; 5 US gal of 231 in³ are 0.668 ft³, and the sum 1.146.
#[test]
fn a_sack_and_five_gallons() {
    let paste = in_cubic_feet(absolute_volume(pounds(94.0), gallons(5.0), pounds(0.0)));
    near(paste, 1.145, 0.0015);
    near(paste, 0.478 + 5.0 * 231.0 / 1728.0, 1e-12);
    near(5.0 * 8.33 / 62.4, 0.667, 0.0005);
}
