//! Reads what was typed: a length in any unit, sums of lengths, and plain numbers.

use std::ops::Range;

use super::{Length, Units};

/// Why a text could not be read, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The bytes of the text that are in the way; empty at the end where something is missing.
    pub at: Range<usize>,
    /// What is wrong there.
    pub why: Why,
}

/// What is wrong with a typed text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Why {
    /// Nothing was typed.
    Empty,
}

/// A length, or a sum of lengths; a bare number takes the unit of `units`.
///
/// # Errors
/// [`Unreadable`] with the place and the reason.
pub fn length(text: &str, units: Units) -> Result<Length, Unreadable> {
    let _ = units;
    Err(Unreadable {
        at: 0..text.len(),
        why: Why::Empty,
    })
}
