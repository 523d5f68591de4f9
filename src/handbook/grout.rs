//! Grout and sealant: widths, kinds, densities, waits.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

/// No joint is narrower.
pub static LEAST_JOINT: Sourced<Length> = Sourced::new(
    Length::in_64(0, 4),
    Cite::read(
        &documents::LEAST_JOINT_PAGE,
        "section 4.3.8: 1/16 in, no exception",
    ),
);
/// Unsanded below, sanded above; either at exactly this.
pub static SANDED_FROM: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(
        &documents::GROUT_QUESTIONS,
        "unsanded under 1/8 in, sanded from 1/8 in",
    ),
);
/// The household page that takes unsanded grout to this width and no further.
pub static UNSANDED_TO: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(&documents::GROUT_PAGE, "unsanded to 1/8 in at most"),
);
/// Heavier sand above.
pub static HEAVY_SAND_OVER: Sourced<Length> = Sourced::new(
    Length::in_64(0, 24),
    Cite::read(&documents::GROUT_QUESTIONS, "heavier sand over 3/8 in"),
);
/// The household page takes coarse grout from here already.
pub static COARSE_OVER: Sourced<Length> = Sourced::new(
    Length::in_64(0, 16),
    Cite::read(&documents::GROUT_PAGE, "quarry grade over 1/4 in"),
);
/// lb of unsanded powder in a ft³ of joint: the one figure with which exact geometry gives all 27 cells of the sheet.
pub static UNSANDED_DENSITY: Sourced<f64> = Sourced::new(
    99.88,
    Cite::figured(
        &documents::GROUT_SHEET,
        "figured back from the unsanded rows",
    ),
);
/// lb of sanded powder in a ft³ of joint: the one figure with which exact geometry gives all 28 cells of the sheet.
pub static SANDED_DENSITY: Sourced<f64> = Sourced::new(
    98.75,
    Cite::figured(&documents::GROUT_SHEET, "figured back from the sanded rows"),
);
/// How far a label's coverage and the joints may differ before it is said.
pub static COVERAGE_AGREES: Sourced<f64> = Sourced::new(
    0.10,
    Cite::practice("a label's coverage is rounded; one tenth is let pass"),
);
/// What is bought beyond the joints, where nothing else is chosen.
pub static WASTE: Sourced<f64> = Sourced::new(
    0.10,
    Cite::read(&documents::GROUT_CHART, "joints full, 10 % waste"),
);
/// Share of the joint's depth that is open when grout goes in.
pub static OPEN_SHARE: Sourced<f64> = Sourced::new(
    2.0 / 3.0,
    Cite::read(&documents::MMSA_16, "two thirds of the joint's depth open"),
);
/// Hours between setting and grouting.
pub static WAIT: Sourced<f64> = Sourced::new(
    48.0,
    Cite::read(
        &documents::MMSA_5,
        "usually two days or more after dry-set mortar",
    ),
);
/// Hours that many bags say.
pub static WAIT_ON_BAGS: Sourced<f64> = Sourced::new(
    24.0,
    Cite::memory(&documents::GROUT_BAGS, "24 h before grouting"),
);
/// US quarts of water for 25 lb of sanded grout.
pub static WATER_FOR_25_POUNDS: Sourced<(f64, f64)> = Sourced::new(
    (2.0, 2.75),
    Cite::memory(&documents::GROUT_BAGS, "about 2 to 2 3/4 qt for 25 lb"),
);
/// Minutes that mixed grout rests before it is stirred again.
pub static SLAKE: Sourced<(f64, f64)> = Sourced::new(
    (5.0, 10.0),
    Cite::memory(&documents::GROUT_BAGS, "slake 5 to 10 min"),
);
/// Hours that mixed grout can be used.
pub static POT_LIFE: Sourced<f64> = Sourced::new(
    2.0,
    Cite::memory(&documents::GROUT_BAGS, "pot life about 2 h"),
);
/// Parts of fine sand to one of cement in grout mixed on the job: joints to this width, parts.
pub static JOB_MIX: Sourced<[(Length, u8); 2]> = Sourced::new(
    [(Length::in_64(0, 8), 1), (Length::in_64(0, 32), 2)],
    Cite::read(
        &documents::JOB_MIXED_GROUT,
        "1:1 to 1/8 in, 1:2 to 1/2 in, 1:3 over; lime to 1/5 part",
    ),
);
/// Parts of sand in wider joints.
pub static JOB_MIX_WIDE: u8 = 3;
/// The least depth of sealant; the most is half the joint's width, where that is more.
pub static SEALANT_DEPTH: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(
        &documents::MOVEMENT_TEXT,
        "sealant 1/8 in deep, up to half the width",
    ),
);
/// Where surfaces meet.
pub static PLANE_CHANGE: Cite = Cite::read(
    &documents::PLANE_CHANGE,
    "changes of plane: open joint and ASTM C920 sealant, not grout",
);
/// Caulk that does not do.
pub static NO_ACRYLIC: Cite = Cite::read(&documents::SEALANT_ARTICLE, "acrylic caulk unsuitable");
