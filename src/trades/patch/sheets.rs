//! Whole sheets for a whole wall.

use crate::measure::Length;
use crate::measure::quantity::{Area, area};

/// The number of sheets for an area, waste included.
///
/// `N = ⌈area × (1 + waste) ÷ sheet⌉`
///
/// Waste is added before anything is rounded, and the whole order is rounded once.
///
/// # Inputs
/// - `covered`: no less than nothing; `sheet`: its width and length, more than nothing.
/// - `waste`: a share from 0 to 1; 0.05 is five in a hundred.
///
/// # Gives
/// A count; `None` outside the inputs or beyond a million.
///
/// # Source
/// [`ESTIMATING`](crate::handbook::documents::ESTIMATING), read; the share is the person's.
///
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::square_feet}, trades::patch::sheets_to_hang};
/// let sheet = (Length::feet(4), Length::feet(8));
/// assert_eq!(sheets_to_hang(square_feet(1200.0), sheet, 0.05), Some(40));
/// ```
#[must_use]
pub fn sheets_to_hang(covered: Area, sheet: (Length, Length), waste: f64) -> Option<u32> {
    if !sheet.0.is_positive() || !sheet.1.is_positive() || !(0.0..=1.0).contains(&waste) {
        return None;
    }
    let sheets = (covered / area(sheet.0, sheet.1)).value * (1.0 + waste);
    // A sum that is a whole sheet but for the last digits of a float is a whole sheet.
    (0.0..=1e6)
        .contains(&sheets)
        .then(|| (sheets - 1e-9).ceil().max(0.0) as u32)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::quantity::square_feet;

    #[test]
    fn a_whole_sheet_is_one_and_a_little_more_is_two() {
        let sheet = (Length::feet(4), Length::feet(8));
        for (square, waste, sheets) in [
            (0.0, 0.0, Some(0)),
            (32.0, 0.0, Some(1)),
            (32.01, 0.0, Some(2)),
            (320.0, 0.1, Some(11)),
            (-40.0, 0.0, None),
            (f64::NAN, 0.0, None),
            (32.0, -0.1, None),
            (32.0, f64::NAN, None),
            (1e12, 0.0, None),
        ] {
            assert_eq!(
                sheets_to_hang(square_feet(square), sheet, waste),
                sheets,
                "{square}"
            );
        }
        assert_eq!(
            sheets_to_hang(square_feet(1.0), (Length::ZERO, Length::feet(8)), 0.0),
            None
        );
    }
}
