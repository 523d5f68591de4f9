//! Tape arithmetic: spacing, centring, halving, drawing scales, squareness.

mod scale;
mod spacing;
mod square;

pub use scale::{Scale, USUAL_SCALES};
pub use spacing::{Centred, Ends, MOST_THINGS, Spacing, centred, halved, spaced};
pub use square::{OutOfSquare, Triangle, diagonal, out_of_square, three_four_five};

/// Why a sum on the tape cannot be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// A length is nothing, less, or beyond what is read.
    Beyond {
        /// Which figure.
        field: Field,
    },
    /// The things together are longer than the length that they stand on.
    DoesNotFit {
        /// What they take.
        takes: crate::measure::Length,
        /// What there is.
        there_is: crate::measure::Length,
    },
    /// No such triangle: the diagonals and the sides contradict each other.
    NoSuchShape,
}

/// A figure on the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The whole length.
    Length,
    /// The width of one thing.
    Width,
    /// How many things.
    Count,
    /// A side.
    Side,
    /// A diagonal.
    Diagonal,
    /// A scale.
    Scale,
}

/// A length that is more than nothing and can be read.
fn positive(field: Field, length: crate::measure::Length) -> Result<(), Problem> {
    if length.is_positive() && length <= crate::measure::Length::LONGEST {
        Ok(())
    } else {
        Err(Problem::Beyond { field })
    }
}
