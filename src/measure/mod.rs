//! Lengths that are exact, and the quantities that are figured from them.
//!
//! A [`Length`] is a whole number of nanometres: every 1/64 in and every micrometre is exact and compares with `==`.
//! Whatever is computed (area, volume, mass, spread rate) is a [`uom`] quantity in SI, printed once, at the end.

mod amount;
mod angle;
mod length;
pub mod quantity;

pub use amount::{Amount, Phrase};
pub use angle::Angle;
pub use length::{Length, Rounding};

mod money;
pub mod read;
mod units;

pub use money::Money;
pub use units::{Figures, Units, fraction_glyph, plain, stacked, together};
