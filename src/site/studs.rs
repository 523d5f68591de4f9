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

impl Studs {
    /// Most studs that are laid out on one wall.
    const MOST: usize = 2000;

    /// The centre of each stud on a wall, from its left corner, rising.
    #[must_use]
    pub fn centres(&self, wall: Length) -> Vec<Length> {
        match self {
            Studs::Found { centres, .. } => centres.clone(),
            Studs::Spaced { spacing, .. } if !spacing.is_positive() => Vec::new(),
            Studs::Spaced { first, spacing, .. } => {
                std::iter::successors(Some(*first), |&at| Some(at + *spacing))
                    .take_while(|&at| at <= wall)
                    .take(Studs::MOST)
                    .collect()
            }
        }
    }
}
