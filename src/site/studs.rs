//! Where the studs of a wall stand.

use crate::measure::Length;

/// The studs of one wall, measured to their centres from the wall's left corner as seen from inside.
#[derive(Clone, Debug, PartialEq)]
pub enum Studs {
    /// A first stud and a spacing, repeated to the end of the wall.
    Spaced {
        /// Left corner to the centre of the first stud.
        first: Length,
        /// Centre to centre.
        spacing: Length,
        /// Width of a stud's face.
        face: Length,
    },
    /// Each stud as it was found.
    Found {
        /// Left corner to each centre, rising.
        centres: Vec<Length>,
        /// Width of a stud's face.
        face: Length,
    },
}
