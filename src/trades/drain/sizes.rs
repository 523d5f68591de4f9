//! What each code asks of fall, trap arm and size.

use super::{Ask, Code, Fixture, Size};
use crate::handbook::{Cite, drain as book};
use crate::measure::Length;

/// How far a run falls: `run · fall in a foot`, to the nearest nanometre.
///
/// # Source
/// Arithmetic.
///
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::drain::fall_in};
/// let quarter = Length::in_64(0, 16);
/// assert_eq!(fall_in(Length::in_64(114, 0), quarter), Length::in_64(2, 24));
/// ```
#[must_use]
pub fn fall_in(run: Length, in_a_foot: Length) -> Length {
    let foot = i128::from(Length::feet(1).as_nm());
    let product = i128::from(run.as_nm()) * i128::from(in_a_foot.as_nm());
    Length::nm(((2 * product + foot).div_euclid(2 * foot)) as i64)
}

/// The least fall in a foot, and where it stands; the steeper of all codes where the code is not known.
///
/// # Source
/// [`FALL_IRC`](book::FALL_IRC), [`FALL_IPC`](book::FALL_IPC), [`FALL_UPC`](book::FALL_UPC).
#[must_use]
pub fn least_fall(code: Code, size: Size, eighth_approved: bool) -> (Length, Cite) {
    let of = |row: &crate::handbook::Sourced<book::BySize<Length>>| (size.of(&row.value), row.cite);
    match code {
        Code::Irc if size == Size::Three && !eighth_approved => {
            (book::FALL_3_IN.value, book::FALL_3_IN.cite)
        }
        Code::Irc => of(&book::FALL_IRC),
        Code::Ipc => of(&book::FALL_IPC),
        Code::Upc | Code::Unknown if eighth_approved && size >= Size::Three => of(&book::FALL_IPC),
        Code::Upc | Code::Unknown => of(&book::FALL_UPC),
    }
}

/// The longest trap arm, and where it stands; the shorter of both tables where the code is not known.
///
/// # Source
/// [`ARM`](book::ARM), [`ARM_UPC`](book::ARM_UPC).
#[must_use]
pub fn longest_arm(code: Code, size: Size) -> (Length, Cite) {
    let row = match code {
        Code::Irc | Code::Ipc => &book::ARM,
        Code::Upc | Code::Unknown => &book::ARM_UPC,
    };
    (size.of(&row.value), row.cite)
}

/// Units that a level drain of a size carries, and where that stands; the fewer of both tables where the code is not
/// known.
///
/// # Source
/// [`CARRIES_UPC`](book::CARRIES_UPC), [`CARRIES_IRC`](book::CARRIES_IRC), which the plumbing code is taken to share.
#[must_use]
pub fn carries(code: Code, size: Size) -> (u32, Cite) {
    let of = |row: &crate::handbook::Sourced<book::BySize<u32>>| (size.of(&row.value), row.cite);
    let (upc, irc) = (of(&book::CARRIES_UPC), of(&book::CARRIES_IRC));
    match code {
        Code::Upc => upc,
        Code::Irc | Code::Ipc => irc,
        Code::Unknown if irc.0 < upc.0 => irc,
        Code::Unknown => upc,
    }
}

/// Units of one fixture and its least trap, and where they stand; a water closet has its trap in it.
///
/// # Source
/// Tables of the uniform code as a county prints them; for a large water closet the residential code as quoted.
#[must_use]
pub fn units(fixture: Fixture) -> (u32, Option<Length>, Cite) {
    let of =
        |row: &crate::handbook::Sourced<(u32, Length)>| (row.value.0, Some(row.value.1), row.cite);
    match fixture {
        Fixture::Lavatory => of(&book::LAVATORY),
        Fixture::Tub => of(&book::TUB),
        Fixture::Shower => of(&book::SHOWER),
        Fixture::Closet => (book::CLOSET.value, None, book::CLOSET.cite),
        Fixture::LargeCloset => (book::CLOSET_LARGE.value, None, book::CLOSET_LARGE.cite),
    }
}

/// All units, and the least drain that carries them: no less than 3 in with a water closet, no less than any trap.
pub(super) fn needed(ask: &Ask) -> (u32, Option<Size>) {
    let each = || {
        Fixture::ALL
            .iter()
            .zip(&ask.fixtures)
            .filter(|(_, count)| **count > 0)
    };
    let all: u32 = each()
        .map(|(fixture, count)| units(*fixture).0 * count)
        .sum();
    if all == 0 {
        return (0, None);
    }
    let closets = ask.fixtures[3] + ask.fixtures[4];
    let closet = (closets > 0).then_some(book::CLOSET_DRAIN.value);
    let traps = each().filter_map(|(fixture, _)| units(*fixture).1);
    let least = traps.chain(closet).max().unwrap_or_default();
    let fits = |size: &Size| size.length() >= least && carries(ask.code, *size).0 >= all;
    (all, Size::ALL.into_iter().find(fits))
}
