//! Asks with nothing added for waste, gaps or the saw, as a page counts that leaves them out.

use storyrod::geometry::Region;
use storyrod::measure::Length;
use storyrod::measure::quantity::Volume;
use storyrod::trades::{mortar, tile};

/// Inches and sixty-fourths.
pub fn inches(whole: i64, of_64: i64) -> Length {
    Length::in_64(whole, of_64)
}

/// A floor with no gap, no joint, nothing lost to the saw and no breakage, laid from its corner.
pub fn bare(width: Length, height: Length, long: Length, short: Length) -> tile::Ask {
    tile::Ask {
        surface: Region::rectangle(width, height),
        gap: Length::ZERO,
        tile: tile::Tile {
            long,
            short,
            ..tile::Tile::default()
        },
        joint: Length::ZERO,
        kerf: Length::ZERO,
        breakage: 0.0,
        start: tile::Start::Corner,
        ..tile::Ask::default()
    }
}

/// A volume of a mix, nothing wasted.
pub fn mortar(volume: Volume, mix: mortar::Mix) -> mortar::Figure {
    let ask = mortar::Ask {
        work: mortar::Work::Volume(volume, mix),
        waste: 0.0,
        ..mortar::Ask::default()
    };
    mortar::figure(&ask).unwrap()
}

/// As near as half a unit of the last digit printed.
#[track_caller]
pub fn near(value: f64, printed: f64, half_a_digit: f64) {
    assert!((value - printed).abs() <= half_a_digit, "{value} {printed}");
}
