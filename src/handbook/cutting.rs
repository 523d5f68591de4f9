//! What a saw takes, and how long sticks are sold.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

/// A wheel cutter or shears take nothing off; they leave a burr.
pub static KERF_CUTTER: Sourced<Length> = Sourced::new(
    Length::ZERO,
    Cite::practice("a wheel or shears part without taking anything; ream what they leave"),
);
/// A hand saw or a hacksaw.
pub static KERF_HAND: Sourced<Length> = Sourced::new(
    Length::in_64(0, 4),
    Cite::practice("a hand saw takes about 1/16 in; measure a cut of yours"),
);
/// A mitre or circular saw.
pub static KERF_POWER: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::read(
        &documents::KERF_ARTICLE,
        "about 1/8 in for mitre and circular saws",
    ),
);
/// Lengths in which boards, trim and pipe are commonly sold.
pub static LENGTHS: Sourced<[Length; 6]> = Sourced::new(
    [
        Length::feet(8),
        Length::feet(10),
        Length::feet(12),
        Length::feet(14),
        Length::feet(16),
        Length::feet(20),
    ],
    Cite::practice("lengths commonly on sale: boards from 8 to 16 ft, pipe 10 and 20 ft"),
);
/// The same where lengths are metric.
pub static LENGTHS_METRIC: Sourced<[Length; 6]> = Sourced::new(
    [
        Length::mm(2_400),
        Length::mm(3_000),
        Length::mm(3_600),
        Length::mm(4_200),
        Length::mm(4_800),
        Length::mm(6_000),
    ],
    Cite::practice("lengths commonly on sale: boards from 2.4 to 4.8 m, pipe 3 and 6 m"),
);
