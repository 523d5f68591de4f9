//! Room about fixtures, as the one- and two-family code has it; the local code rules.

use super::{Cite, Sourced, documents};

/// From the centre line of a toilet to a wall or another fixture, at least, in inches.
pub const BESIDE_A_TOILET: Sourced<i64> = Sourced::new(
    15,
    Cite::read(
        &documents::IRC,
        "R307.1, as copied for 2012: 15 in from its centre line",
    ),
);

/// Clear floor before a toilet, a basin or a tub, at least, in inches.
pub const BEFORE_A_FIXTURE: Sourced<i64> = Sourced::new(
    21,
    Cite::read(
        &documents::IRC,
        "R307.1, as copied for 2012: 21 in clear in front",
    ),
);

/// The least inside of a shower, either way, in inches.
pub const SHOWER_INSIDE: Sourced<i64> = Sourced::new(
    30,
    Cite::read(
        &documents::IRC,
        "as copied: a shower 30 by 30 in inside, 900 square inches",
    ),
);
