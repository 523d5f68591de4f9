//! Joints, offsets, cuts, flatness and movement joints of tile.
//!
//! The standards were read as trade pages quote them, not in the books; each clause says so.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

const fn a108(clause: &'static str) -> Cite {
    Cite::read(&documents::ANSI_A108_02, clause)
}

/// No joint is narrower.
pub static LEAST_JOINT: Sourced<Length> = Sourced::new(
    Length::in_64(0, 4),
    a108("section 4.3.8, as trade pages quote it"),
);
/// A joint is at least so many times what the tiles differ by.
pub static SPREAD_TIMES: Sourced<i64> =
    Sourced::new(3, a108("section 4.3.8, as a trade association quotes it"));
/// A tile with a longer side has rules of its own.
pub static LONG_SIDE: Sourced<Length> = Sourced::new(
    Length::inches(15),
    a108("section 4.3.8.2, as trade pages quote it; an earlier edition said 18 in"),
);
/// The least joint of long rectified tiles in running bond.
pub static BOND_RECTIFIED: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    a108("section 4.3.8.1, as trade pages quote it"),
);
/// The least joint of long calibrated tiles in running bond.
pub static BOND_CALIBRATED: Sourced<Length> = Sourced::new(
    Length::in_64(0, 12),
    a108("section 4.3.8.1, as trade pages quote it"),
);
/// The most by which long tiles are shifted, as a share.
pub static MOST_OFFSET: Sourced<f64> = Sourced::new(
    0.33,
    a108("section 4.3.8.2, as trade pages quote it; more only with a mock-up that is approved"),
);
/// Cuts are usually no smaller than this share of a tile.
pub static LEAST_CUT: Sourced<f64> = Sourced::new(
    0.5,
    a108("section 4.3.2, as a trade column quotes it; it may yield to the third bond"),
);
/// Lippage where the joint is narrower than [`LIPPAGE_JOINT`], beside the tile's own warp.
pub static LIPPAGE_NARROW: Sourced<Length> = Sourced::new(
    Length::in_64(0, 2),
    a108("section 4.3.7 of 2013, as a trade magazine quotes it"),
);
/// Lippage where the joint is at least [`LIPPAGE_JOINT`], beside the tile's own warp.
pub static LIPPAGE_WIDE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 4),
    a108("section 4.3.7 of 2013, as a trade magazine quotes it"),
);
/// From this joint on the wider lippage goes.
pub const LIPPAGE_JOINT: Length = Length::in_64(0, 16);

/// How far a surface may be from flat under tile with every side shorter than [`LONG_SIDE`]: in 10 ft, and in 12 in.
pub static FLAT: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 16), Length::in_64(0, 4)),
    Cite::read(
        &documents::TCNA_HANDBOOK,
        "2017, W243, as a trade page quotes it",
    ),
);
/// The same under longer tile: in 10 ft, and in 24 in.
pub static FLAT_LONG: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 8), Length::in_64(0, 4)),
    a108("section 4.2.2, as trade pages quote it"),
);

/// The farthest that movement joints are apart inside and dry; the source gives 20 to 25 ft.
pub static MOVEMENT_DRY: Sourced<Length> = Sourced::new(
    Length::feet(25),
    Cite::read(
        &documents::TCNA_HANDBOOK,
        "EJ171, as a reference manual quotes it: 20 to 25 ft",
    ),
);
/// The farthest in sun, wet or outside; the source gives 8 to 12 ft.
pub static MOVEMENT_SUN: Sourced<Length> = Sourced::new(
    Length::feet(12),
    Cite::read(
        &documents::TCNA_HANDBOOK,
        "EJ171, as a reference manual quotes it: 8 to 12 ft",
    ),
);
/// Left open at every wall, curb, pipe and change of plane.
pub static EDGE_GAP: Sourced<Length> = Sourced::new(
    Length::in_64(0, 16),
    Cite::memory(
        &documents::TCNA_HANDBOOK,
        "EJ171: where it is open; the width is from memory",
    ),
);
/// A floor under tile bends no more than its span over this.
pub static DEFLECTION: Sourced<i64> = Sourced::new(
    360,
    Cite::read(
        &documents::BACKER_BOARD_GUIDE,
        "deflection under tile; stone wants more, and sources differ on how much",
    ),
);
/// A piece thinner than this breaks as it is cut.
pub static TOO_THIN: Sourced<Length> = Sourced::new(
    Length::in_64(0, 32),
    Cite::practice("a strip under half an inch seldom survives the saw"),
);
/// The angle that a straight run of tile is checked square by.
pub static THREE_FOUR_FIVE: Cite = Cite::computed("a triangle of 3, 4 and 5 has a right angle");
