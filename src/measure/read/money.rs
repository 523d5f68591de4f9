//! Reads a typed price.

use super::reader::{MINUS, scan};
use super::{Unreadable, Why};
use crate::measure::Money;

/// The highest price that is read: 100 000.00.
pub const HIGHEST_PRICE: Money = Money::minor(10_000_000);

/// A price, with at most two places: `12.50`, `12,5`, `12`, `.99`, `1 250.00`.
///
/// Exact in minor units. Spaces part thousands, in groups of three; a comma is a decimal comma, so `1,250` has a third
/// place and is refused, whatever was meant.
///
/// # Errors
/// [`Unreadable`] with the place and the reason: a third place, less than nothing, more than [`HIGHEST_PRICE`].
///
/// # Example
/// ```
/// use storyrod::measure::{Money, read};
/// assert_eq!(read::money("12,5"), Ok(Money::minor(1250)));
/// assert_eq!(read::money("1 250.00"), Ok(Money::minor(125_000)));
/// assert!(read::money("1,250").is_err());
/// ```
pub fn money(text: &str) -> Result<Money, Unreadable> {
    super::worth_reading(text)?;
    let start = text.len() - text.trim_start().len();
    let typed = text.trim();
    let refused = |why| Unreadable {
        at: start..start + typed.len(),
        why,
    };
    if typed.starts_with(MINUS) {
        return Err(refused(Why::LessThanNothing));
    }
    let together = without_gaps(typed).ok_or_else(|| refused(Why::NotAPrice))?;
    let number = scan(&together);
    if number.bytes < together.len() || number.digits == 0 {
        return Err(refused(Why::NotAPrice));
    }
    if number.parted {
        return Err(refused(Why::CommaUnclear));
    }
    if number.places > 2 {
        return Err(refused(Why::PartOfACent));
    }
    number
        .value
        .map(|value| value.in_parts(100))
        .and_then(|minor| i64::try_from(minor).ok().map(Money::minor))
        .filter(|price| *price <= HIGHEST_PRICE)
        .ok_or_else(|| refused(Why::PriceTooHigh))
}

/// The text without the spaces between its thousands; `None` where a space stands anywhere else.
fn without_gaps(typed: &str) -> Option<String> {
    let whole = typed.split(['.', ',']).next().unwrap_or_default();
    let mut groups = whole.split(char::is_whitespace);
    let first = groups.next().unwrap_or_default();
    let threes = groups.clone().count();
    let even = groups.all(|group| group.len() == 3 && group.bytes().all(|c| c.is_ascii_digit()));
    let rest = &typed[whole.len()..];
    let good = threes == 0
        || (even && (1..=3).contains(&first.len()) && first.bytes().all(|c| c.is_ascii_digit()));
    (good && !rest.contains(char::is_whitespace)).then(|| typed.split_whitespace().collect())
}
