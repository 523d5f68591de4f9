//! Board in sheets: gaps, joints, screws and weights of underlayment and wall board.

use super::{Cite, Sourced, documents as doc};
use crate::measure::Length;

/// Between sheets of cement board.
pub static CEMENT_GAP: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(&doc::BACKER_BOARD_GUIDE, "gap between sheets"),
);
/// Between cement board and walls or cabinets.
pub static CEMENT_EDGE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(
        &doc::BACKER_BOARD_GUIDE,
        "gap at walls and cabinets; another page says 1/4 in, so ask the sheet's maker",
    ),
);
/// The farthest that screws of cement board are apart, over the whole sheet.
pub static CEMENT_SCREWS: Sourced<Length> = Sourced::new(
    Length::inches(8),
    Cite::read(&doc::BACKER_BOARD_GUIDE, "fasteners over the whole sheet"),
);
/// From its edge to a screw; the guide gives 3/8 to 3/4 in.
pub static CEMENT_SCREW_EDGE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 32),
    Cite::read(&doc::BACKER_BOARD_GUIDE, "3/8 to 3/4 in from the edge"),
);
/// Joints are staggered, and no four corners meet.
pub static CEMENT_STAGGER: Cite = Cite::read(
    &doc::BACKER_BOARD_GUIDE,
    "all joints staggered, never four corners together, not over joints of the subfloor",
);
/// End joints of gypsum board do not line up.
pub static GYPSUM_STAGGER: Cite = Cite::read(
    &doc::GA_JOINTS,
    "end joints staggered between alternate courses, as GA-216 and ASTM C840 ask",
);
/// Ends and edges that run with the framing are carried by it.
pub static JOINT_ON_FRAMING: Cite = Cite::read(
    &doc::BUILDING_HANDBOOK,
    "ends and edges parallel to framing supported on it",
);
/// No joint in line with the edge of an opening.
pub static JOINT_AT_OPENING: Cite = Cite::memory(
    &doc::ASTM_C840,
    "joints not in line with the edges of openings",
);
/// How far a joint is off an opening's corner to count as beside it.
pub static BESIDE: Sourced<Length> = Sourced::new(
    Length::inches(1),
    Cite::practice("an inch either way is in line"),
);
/// Gypsum board stands so far off a floor.
pub static OFF_FLOOR: Sourced<Length> = Sourced::new(
    Length::in_64(0, 32),
    Cite::memory(&doc::GA_216, "1/4 to 1/2 in off the floor"),
);
/// A strip narrower than this is weak and hard to fasten.
pub static LEAST_STRIP: Sourced<Length> = Sourced::new(
    Length::inches(4),
    Cite::practice("no strip narrower than 4 in where another start has none"),
);
/// Joints of neighbouring courses are at least so far apart.
pub static STAGGER: Sourced<Length> = Sourced::new(
    Length::inches(8),
    Cite::practice("ends at least 8 in apart; half a sheet where there is room"),
);
/// What a knife and straight-edge take: nothing.
pub static SCORED: Sourced<Length> = Sourced::new(
    Length::ZERO,
    Cite::practice("board that is scored and snapped loses nothing"),
);
/// One person lifts no more, in pounds, in the best posture.
pub static LIFT_POUNDS: Sourced<f64> =
    Sourced::new(51.0, Cite::read(&doc::NIOSH_LIFTING, "load constant"));

/// Pounds to the square foot, from the least to the most that is printed.
type Weights<const N: usize> = Sourced<[(Length, f64, f64); N]>;

/// Gypsum board, by its thickness.
pub static GYPSUM_POUNDS: Weights<4> = Sourced::new(
    [
        (Length::in_64(0, 16), 1.2, 1.2),
        (Length::in_64(0, 24), 1.4, 1.4),
        (Length::in_64(0, 32), 1.6, 1.7),
        (Length::in_64(0, 40), 2.2, 2.3),
    ],
    Cite::read(
        &doc::BOARD_WEIGHTS,
        "pounds a square foot, with the sheets of a second page",
    ),
);
/// Cement board, by its thickness: up to twice gypsum board of the same.
pub static CEMENT_POUNDS: Weights<3> = Sourced::new(
    [
        (Length::in_64(0, 16), 1.8, 2.4),
        (Length::in_64(0, 32), 2.4, 3.4),
        (Length::in_64(0, 40), 3.3, 4.6),
    ],
    Cite::figured(
        &doc::CEMENT_BOARD_PAGE,
        "almost twice as heavy as gypsum board: one and a half times to twice",
    ),
);
/// Plywood, by its thickness.
pub static PLYWOOD_POUNDS: Weights<5> = Sourced::new(
    [
        (Length::in_64(0, 16), 0.69, 0.69),
        (Length::in_64(0, 24), 1.12, 1.12),
        (Length::in_64(0, 32), 1.27, 1.42),
        (Length::in_64(0, 40), 1.56, 1.56),
        (Length::in_64(0, 48), 1.9, 1.9),
    ],
    Cite::read(&doc::BOARD_WEIGHTS, "plywood, pounds a square foot"),
);
