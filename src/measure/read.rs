//! Reads what was typed: a length in any unit, sums of lengths, angles, prices and plain numbers.
//!
//! Exact: every number is a fraction of whole numbers until the end, then rounded once to the nanometre.
//! A hyphen or a dash with no space beside it that joins a whole number to a fraction (`4-1/2`) or feet to inches
//! (`9'-10`) belongs to the number; anywhere else, and a minus sign everywhere, it subtracts.
//! A slash between two whole numbers is a fraction; `÷` divides.
//! A comma is a decimal comma. Where it may part thousands as well (`10,000`) it is refused, except in metres, where
//! three places are how a millimetre is written.

use std::ops::Range;

use super::{Length, Units};
use ratio::Ratio;
use reader::{Reader, Value, bare_unit, scan};

mod angle;
mod money;
mod ratio;
mod reader;

pub use angle::angle;
pub use money::{HIGHEST_PRICE, money};

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
    /// This is no number, unit or sign.
    NotKnown,
    /// A number is missing here.
    NumberMissing,
    /// A bracket is opened and not closed.
    BracketOpen,
    /// A sign is missing before this.
    SignMissing,
    /// A fraction over nothing, or a division by nothing.
    DivideByZero,
    /// A length times a length is no length.
    LengthTimesLength,
    /// A length over a length is no length.
    DivideByLength,
    /// A length and a plain number cannot be added.
    NumberAndLength,
    /// Longer than 10 km.
    TooLong,
    /// Longer than anyone types.
    TooMuch,
    /// The comma may be a decimal comma or part thousands.
    CommaUnclear,
    /// This belongs to no angle.
    NotAnAngle,
    /// A whole turn or more.
    TurnTooFar,
    /// This is no price.
    NotAPrice,
    /// Less than nothing, where that cannot be.
    LessThanNothing,
    /// A price to more than two places.
    PartOfACent,
    /// More than [`HIGHEST_PRICE`].
    PriceTooHigh,
}

/// The longest text that is read.
const LONGEST_TEXT: usize = 200;

/// A length, or a sum of lengths; a bare number takes the unit of `units`.
///
/// # Errors
/// [`Unreadable`] with the place and the reason.
///
/// # Example
/// ```
/// use storyrod::measure::{Length, Units, read};
/// let tape = Units::FeetInches { marks: 16 };
/// assert_eq!(read::length("3' 7 5/16\" - 3/4", tape), Ok(Length::in_64(42, 36)));
/// assert_eq!(read::length("224,5cm", tape), Ok(Length::mm(2245)));
/// ```
pub fn length(text: &str, units: Units) -> Result<Length, Unreadable> {
    worth_reading(text)?;
    let bare = bare_unit(units);
    let mut reader = Reader::new(text, bare);
    let value = reader.sum()?;
    reader.skip();
    if reader.at < text.len() {
        let why = if reader.starts_number() || text[reader.at..].starts_with('(') {
            Why::SignMissing
        } else {
            Why::NotKnown
        };
        return Err(reader.wrong(why));
    }
    let whole = 0..text.len();
    let nm = match value {
        Value::Length(nm) => nm,
        Value::Number(number) => number.times(Ratio::whole(bare)).ok_or(Unreadable {
            at: whole.clone(),
            why: Why::TooLong,
        })?,
    };
    let nm = nm.rounded();
    if nm.abs() > i128::from(Length::LONGEST.as_nm()) {
        return Err(Unreadable {
            at: whole,
            why: Why::TooLong,
        });
    }
    Ok(Length::nm(nm as i64))
}

/// Refuses what is empty or longer than anyone types.
fn worth_reading(text: &str) -> Result<(), Unreadable> {
    let why = if text.trim().is_empty() {
        Why::Empty
    } else if text.len() > LONGEST_TEXT {
        Why::TooMuch
    } else {
        return Ok(());
    };
    Err(Unreadable {
        at: 0..text.len(),
        why,
    })
}

/// A plain number, with a decimal point or comma; `1,250` may mean either and is refused.
///
/// # Errors
/// [`Unreadable`] with the place and the reason.
pub fn number(text: &str) -> Result<f64, Unreadable> {
    let trimmed = text.trim();
    if trimmed.is_empty() {
        return Err(Unreadable {
            at: 0..text.len(),
            why: Why::Empty,
        });
    }
    let number = scan(trimmed);
    let refused = |why| Unreadable {
        at: 0..text.len(),
        why,
    };
    if number.bytes < trimmed.len() || trimmed.len() > 15 {
        return Err(refused(Why::NotKnown));
    }
    if number.unclear || number.parted {
        return Err(refused(Why::CommaUnclear));
    }
    trimmed
        .replace(',', ".")
        .parse()
        .map_err(|_| refused(Why::NotKnown))
}

#[cfg(test)]
mod tests;
