//! What a tape may be off, and how square a corner is taken to be.

use super::{Cite, Sourced, documents};

/// What a metal tape may be off over so many feet from its end, in sixty-fourths of an inch; the first row that is long
/// enough counts.
pub const METAL_TAPE: Sourced<[(i64, i64); 5]> = Sourced::new(
    [(6, 2), (30, 4), (55, 8), (80, 12), (100, 16)],
    Cite::read(
        &documents::NIST_HB_44,
        "section 5.52, tolerances for metal tapes",
    ),
);

/// How far a corner that was said to turn so much turns otherwise, as a standard uncertainty in degrees.
pub const CORNER_OFF: Sourced<f64> = Sourced::new(
    0.5,
    Cite::practice("a corner as built: half a degree, 1/2 in over 5 ft, is nothing rare"),
);

/// How far what was hung or built by eye runs from level, as a standard uncertainty in degrees.
pub const HUNG: Sourced<f64> = Sourced::new(
    0.5,
    Cite::practice("a sheet hung by eye, a board or a tile as it was set: half a degree"),
);
