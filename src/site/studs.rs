//! Where the studs of a wall stand.

use crate::measure::Length;

/// How many studs stand in a straight wall without openings: one at the left end, one at every spacing, one at the end.
///
/// `n = ⌈wall ÷ spacing⌉ + 1`
///
/// Corners, plates and the studs beside openings come on top.
///
/// # Inputs
/// Both more than nothing; `wall` up to [`Length::LONGEST`].
///
/// # Gives
/// A count; `None` outside the inputs or beyond a million.
///
/// # Source
/// [`CONTRACTOR_STUDS`](crate::handbook::documents::CONTRACTOR_STUDS), read.
///
/// # Example
/// ```
/// use storyrod::{measure::Length, site::studs_to_frame};
/// assert_eq!(studs_to_frame(Length::inches(174), Length::inches(16)), Some(12));
/// ```
#[must_use]
pub fn studs_to_frame(wall: Length, spacing: Length) -> Option<u32> {
    if !wall.is_positive() || wall > Length::LONGEST || !spacing.is_positive() {
        return None;
    }
    let (whole, over) = (
        wall.as_nm() / spacing.as_nm(),
        wall.as_nm() % spacing.as_nm(),
    );
    let bays = whole + i64::from(over > 0);
    u32::try_from(bays + 1)
        .ok()
        .filter(|studs| *studs <= 1_000_000)
}

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

    /// The same, measured from the other end of a wall so long.
    #[must_use]
    pub fn mirrored(&self, long: Length) -> Studs {
        super::mirror::mirrored_studs(self, long)
    }

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wall_that_divides_evenly_has_no_stud_too_many() {
        let inches = Length::inches;
        assert_eq!(studs_to_frame(inches(96), inches(16)), Some(7));
        assert_eq!(studs_to_frame(inches(97), inches(16)), Some(8));
        assert_eq!(studs_to_frame(inches(10), inches(16)), Some(2));
        assert_eq!(studs_to_frame(Length::ZERO, inches(16)), None);
        assert_eq!(studs_to_frame(inches(96), Length::ZERO), None);
        assert_eq!(studs_to_frame(Length::LONGEST, Length::nm(1)), None);
    }

    /// As many as are laid out from a first stud at the corner, and one more where the last bay is short.
    #[test]
    fn the_count_is_what_the_layout_shows() {
        for wall in 1..400 {
            let (wall, spacing) = (Length::inches(wall), Length::inches(16));
            let layout = Studs::Spaced {
                first: Length::ZERO,
                spacing,
                face: Length::in_64(1, 32),
            };
            let mut centres = layout.centres(wall);
            if centres.last() != Some(&wall) {
                centres.push(wall);
            }
            assert_eq!(studs_to_frame(wall, spacing), Some(centres.len() as u32));
        }
    }
}
