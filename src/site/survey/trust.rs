//! How far a tape and a reading can be trusted.

use super::{Room, What};
use crate::handbook::tape::METAL_TAPE;
use crate::measure::Length;

/// How far a metal tape of the trade may be off over a length: ±1/32 in to 6 ft, ±1/16 to 30, ±1/8 to 55, ±3/16 to 80,
/// ±1/4 to 100 ft.
///
/// # Inputs
/// A length; its sign does not count.
/// # Gives
/// The tolerance; beyond 100 ft, where the table ends, in proportion to its last row.
/// # Source
/// NIST Handbook 44, section 5.52, read in a copy; beyond 100 ft our own extension.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::tape_tolerance};
/// assert_eq!(tape_tolerance(Length::feet(8)), Length::in_64(0, 4));
/// ```
#[must_use]
pub fn tape_tolerance(length: Length) -> Length {
    let length = length.abs();
    let row = METAL_TAPE
        .value
        .iter()
        .find(|(feet, _)| length <= Length::feet(*feet));
    match row {
        Some((_, sixty_fourths)) => Length::in_64(0, *sixty_fourths),
        None => {
            let times = length.metres() / Length::feet(100).metres();
            Length::from_metres(Length::in_64(0, 16).metres() * times).unwrap_or(Length::LONGEST)
        }
    }
}

/// The standard uncertainty of a reading: `√(tolerance² + reading²) ÷ √3`, both being limits within which any error is
/// as likely.
///
/// # Inputs
/// The length read; how close the person reads, one way or the other.
/// # Gives
/// Metres.
/// # Source
/// Limits as a rectangular distribution: JCGM 100 (GUM), 4.3.7, from memory; the tolerance: NIST Handbook 44.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::reading_sigma};
/// // 1/16 in of tape and 1/16 in of reading: 1.5875 mm × √2 ÷ √3.
/// let sigma = reading_sigma(Length::feet(8), Length::in_64(0, 4));
/// assert!((sigma - 0.001296).abs() < 1e-6);
/// ```
#[must_use]
pub fn reading_sigma(length: Length, reads_to: Length) -> f64 {
    // A reading without any error of its own is no reading.
    let reading = reads_to.abs().max(Length::nm(100_000)).metres();
    tape_tolerance(length).metres().hypot(reading) / 3.0_f64.sqrt()
}

/// How far a figure can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trust {
    /// More or less, in about nineteen cases of twenty.
    pub plus_minus: Length,
    /// Somebody's estimate is in it.
    pub estimated: bool,
}

/// Half of what is covered in about nineteen cases of twenty: a given ± as a standard uncertainty, in metres.
#[must_use]
pub fn half_of(plus_minus: Length) -> f64 {
    (plus_minus.abs().metres() / 2.0).max(1e-6)
}

impl Room {
    /// The standard uncertainty of what was read, in metres.
    pub(super) fn sigma(&self, what: What, length: Length) -> f64 {
        match self.mark(what).estimate {
            Some(plus_minus) => half_of(plus_minus),
            None => reading_sigma(length, self.survey.reads_to),
        }
    }

    /// How far a reading can be trusted; `None` where there is none.
    #[must_use]
    pub fn trust(&self, what: What) -> Option<Trust> {
        let length = self.measured(what)?;
        Some(Trust {
            plus_minus: Length::from_metres(2.0 * self.sigma(what, length))?,
            estimated: self.mark(what).estimate.is_some(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Handbook 44, section 5.52, every row and just beyond it.
    #[test]
    fn the_tape_is_trusted_as_the_handbook_says() {
        for (feet, sixty_fourths) in [
            (1, 2),
            (6, 2),
            (7, 4),
            (30, 4),
            (31, 8),
            (55, 8),
            (56, 12),
            (80, 12),
            (81, 16),
            (100, 16),
        ] {
            let wanted = Length::in_64(0, sixty_fourths);
            assert_eq!(tape_tolerance(Length::feet(feet)), wanted, "{feet} ft");
        }
        assert_eq!(tape_tolerance(Length::feet(200)), Length::in_64(0, 32));
    }
}
