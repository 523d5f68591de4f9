//! Figures outside what is taken.

use crate::measure::{Amount, Length};

/// A figure that can be outside its limits, by its name.
pub(super) trait Limited {
    /// What is said of it then.
    type Problem;
    /// It has to be from the least to the most.
    fn beyond(self, least: Amount, most: Amount) -> Self::Problem;
}

/// Lets pass what is inside.
pub(super) fn within<F: Limited>(
    inside: bool,
    field: F,
    least: impl Into<Amount>,
    most: impl Into<Amount>,
) -> Result<(), F::Problem> {
    if inside {
        Ok(())
    } else {
        Err(field.beyond(least.into(), most.into()))
    }
}

/// Lets pass a length from the least to the most.
pub(super) fn length<F: Limited>(
    field: F,
    length: Length,
    (least, most): (Length, Length),
) -> Result<(), F::Problem> {
    within(length >= least && length <= most, field, least, most)
}
