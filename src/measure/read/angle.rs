//! Reads a typed turn.

use super::reader::{MINUS, Reader};
use super::{Unreadable, Why};
use crate::measure::Angle;

/// The names of a degree, a longer one before one that it begins with; letters in any case.
const DEGREES: [&str; 6] = ["degrees", "degree", "deg.", "deg", "°", "º"];

/// Degrees, with or without their sign: `90`, `22.5°`, `22 1/2`, `112.5 deg`, `−90`.
///
/// Exact to the millionth of a degree; a third of one goes to the nearest. A comma is always a decimal comma here, since
/// thousands of degrees are no corner.
///
/// # Errors
/// [`Unreadable`] with the place and the reason; a whole turn or more, either way, is refused.
///
/// # Example
/// ```
/// use storyrod::measure::{Angle, read};
/// assert_eq!(read::angle("22 1/2°"), Ok(Angle::microdegrees(22_500_000)));
/// assert_eq!(read::angle("−90"), Ok(Angle::LEFT));
/// assert!(read::angle("360").is_err());
/// ```
pub fn angle(text: &str) -> Result<Angle, Unreadable> {
    super::worth_reading(text)?;
    let mut reader = Reader::new(text, 1);
    reader.skip();
    let negative = reader.take(&MINUS).is_some();
    reader.skip();
    if !reader.starts_number() {
        let why = if reader.at == text.len() {
            Why::NumberMissing
        } else {
            Why::NotAnAngle
        };
        return Err(reader.wrong(why));
    }
    let too_far = Unreadable {
        at: 0..text.len(),
        why: Why::TurnTooFar,
    };
    let degrees = reader.number().map_err(|refusal| match refusal.why {
        Why::TooLong => too_far.clone(),
        _ => refusal,
    })?;
    reader.skip();
    DEGREES.iter().any(|name| reader.take_name(name));
    reader.skip();
    if reader.at < text.len() {
        return Err(reader.wrong(Why::NotAnAngle));
    }
    let degrees = if negative {
        degrees.minus_sign()
    } else {
        degrees
    };
    let micro = degrees.in_parts(1_000_000);
    match i64::try_from(micro).map(Angle::microdegrees) {
        Ok(turn) if turn < Angle::FULL && turn > -Angle::FULL => Ok(turn),
        _ => Err(too_far),
    }
}
