//! Offsets: travel and run by the set and the angle of the fittings.

use crate::measure::{Angle, Length};

/// An offset of two fittings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offset {
    /// Straight across, set and roll together.
    pub true_offset: Length,
    /// From centre to centre of the two fittings, along the pipe.
    pub travel: Length,
    /// How far it comes forward meanwhile.
    pub run: Length,
    /// How far it is rolled from the way of the set.
    pub rolled: Angle,
}

/// The multipliers of an angle, exact: travel (`csc θ`) and run (`cot θ`) for a set of one.
///
/// # Source
/// Trigonometry; tables print them cut off (1.41, 5.12) and one prints 10.22 for 5 5/8° in place of 10.20.
/// # Example
/// ```
/// use storyrod::{measure::Angle, trades::pipe::multipliers};
/// let (travel, run) = multipliers(Angle::degrees(30));
/// assert!((travel - 2.0).abs() < 1e-12 && (run - 3f64.sqrt()).abs() < 1e-12);
/// ```
#[must_use]
pub fn multipliers(angle: Angle) -> (f64, f64) {
    let (sine, cosine) = angle.sin_cos();
    (1.0 / sine, cosine / sine)
}

/// An offset, simple or rolling: `TO = √(set² + roll²)`, `travel = TO · csc θ`, `run = TO · cot θ`.
///
/// # Inputs
/// Set and roll from centre to centre; an angle of more than nothing, up to 90°.
/// # Gives
/// Lengths to the nearest nanometre; only the cut is rounded further.
/// # Source
/// Rolling: how-to pages; multipliers: trigonometry.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::pipe::offset};
/// let rolling = offset(Length::inches(9), Length::inches(12), Angle::degrees(30)).unwrap();
/// assert_eq!(rolling.true_offset, Length::inches(15));
/// assert_eq!(rolling.travel, Length::inches(30));
/// ```
#[must_use]
pub fn offset(set: Length, roll: Length, angle: Angle) -> Option<Offset> {
    if angle <= Angle::ZERO || angle > Angle::RIGHT {
        return None;
    }
    let across = set.metres().hypot(roll.metres());
    let (travel, run) = multipliers(angle);
    Some(Offset {
        true_offset: Length::from_metres(across)?,
        travel: Length::from_metres(across * travel)?,
        run: Length::from_metres(across * run)?,
        rolled: Angle::from_degrees(roll.metres().atan2(set.metres()).to_degrees())?,
    })
}

/// By how much each next fitting of lines an equal way apart is shifted along the run: `apart · tan(θ/2)`.
///
/// # Source
/// The rule of equal spread, from memory; its trigonometry is exact.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::pipe::spread};
/// let shift = spread(Length::inches(4), Angle::degrees(45)).unwrap();
/// assert!((shift.in_inches() - 1.657).abs() < 0.0005);
/// ```
#[must_use]
pub fn spread(apart: Length, angle: Angle) -> Option<Length> {
    let (sine, cosine) = angle.sin_cos();
    Length::from_metres(apart.metres() * sine / (1.0 + cosine))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_offset_that_does_not_turn_has_no_travel() {
        let foot = Length::feet(1);
        for degrees in [0, -45, 91] {
            assert!(offset(foot, Length::ZERO, Angle::degrees(degrees)).is_none());
        }
        let square = offset(foot, Length::ZERO, Angle::RIGHT).expect("turns");
        assert_eq!((square.travel, square.run), (foot, Length::ZERO));
        assert!(offset(Length::LONGEST, Length::ZERO, Angle::microdegrees(1)).is_none());
    }
}
