//! Screws: rows that are even and symmetrical, none too close to an edge.

use super::{Rect, Strip, StripKind};
use crate::handbook::gypsum;
use crate::measure::{Length, Rounding};

/// The number of screws on one support.
///
/// `n = ⌈(length − 2 × 3/8 in) ÷ spacing⌉ + 1`, at least 2.
///
/// # Inputs
/// `length` of the board along the support, more than 3/4 in; `spacing`, more than nothing.
///
/// # Gives
/// A count; 0 where no screw has 3/8 in on both sides.
///
/// # Source
/// [`gypsum::SCREW_EDGE`]; the spacing is the person's.
///
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::patch::screws_on_a_support};
/// assert_eq!(screws_on_a_support(Length::inches(96), Length::inches(16)), 7);
/// ```
#[must_use]
pub fn screws_on_a_support(length: Length, spacing: Length) -> i64 {
    let run = length - gypsum::SCREW_EDGE.value * 2;
    if run < Length::ZERO || !spacing.is_positive() {
        return 0;
    }
    let steps = run.rounded(spacing, Rounding::Cover).as_nm() / spacing.as_nm();
    (steps + 1).max(2)
}

/// The number of screws in a whole sheet: so many supports, so many on each.
///
/// `N = supports × n`
///
/// # Inputs
/// `supports` that cross the sheet, its `length` along them and the `spacing`.
///
/// # Gives
/// A count.
///
/// # Source
/// As [`screws_on_a_support`].
///
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::patch::screws_in_a_sheet};
/// assert_eq!(screws_in_a_sheet(4, Length::inches(96), Length::inches(16)), 28);
/// ```
#[must_use]
pub fn screws_in_a_sheet(supports: u16, length: Length, spacing: Length) -> i64 {
    i64::from(supports) * screws_on_a_support(length, spacing)
}

/// `count` places from one to the other, both included, evenly.
fn evenly(from: Length, to: Length, count: i64) -> impl Iterator<Item = Length> {
    (0..count).map(move |n| {
        // The last is taken, not figured, so that rounding never passes the end.
        if n + 1 == count {
            to
        } else {
            from + ((to - from) * n).divided(count - 1)
        }
    })
}

/// The screws of a piece: a column on every support, and a row along blocking and level cleats.
pub(super) fn in_piece(
    piece: &Rect,
    columns: &[Length],
    backing: &[Strip],
    spacing: Length,
) -> Vec<(Length, Length)> {
    let room = piece.inset(gypsum::SCREW_EDGE.value);
    if room.width() < Length::ZERO || room.height() < Length::ZERO {
        return Vec::new();
    }
    let mut columns: Vec<Length> = (columns.iter().copied())
        .filter(|x| room.left <= *x && *x <= room.right)
        .collect();
    columns.sort_unstable();
    columns.dedup();
    let count = screws_on_a_support(piece.height(), spacing);
    let mut screws: Vec<_> = columns
        .iter()
        .flat_map(|x| evenly(room.bottom, room.top, count).map(|y| (*x, y)))
        .collect();
    for strip in backing.iter().filter(|strip| !strip.upright) {
        let low = strip.at.middle().1 < piece.middle().1;
        let y = if low { room.bottom } else { room.top };
        let (left, right) = (strip.at.left.max(room.left), strip.at.right.min(room.right));
        let inner = screws_on_a_support(right - left, spacing) - 1;
        for n in 1..=inner {
            screws.push((left + ((right - left) * n).divided(inner + 1), y));
        }
    }
    screws.extend(in_old_board(piece, backing, spacing));
    screws.dedup();
    screws
}

/// The screws that hold blocking and backing strips to the old board.
fn in_old_board(piece: &Rect, backing: &[Strip], spacing: Length) -> Vec<(Length, Length)> {
    let mut screws = Vec::new();
    let beyond = gypsum::SCREW_EDGE.value * 2;
    for strip in backing {
        match (strip.kind, strip.upright) {
            (StripKind::Backing, _) => {
                let x = strip.at.middle().0;
                screws.push((x, strip.at.bottom + Length::inches(1)));
                screws.push((x, strip.at.top - Length::inches(1)));
            }
            (StripKind::Blocking, _) => {
                let low = strip.at.middle().1 < piece.middle().1;
                let y = strip.at.middle().1 + if low { -beyond } else { beyond };
                let count = screws_on_a_support(strip.length, spacing);
                let edge = gypsum::SCREW_EDGE.value;
                if strip.length > edge * 2 {
                    let (from, to) = (strip.at.left + edge, strip.at.right - edge);
                    screws.extend(evenly(from, to, count).map(|x| (x, y)));
                }
            }
            (StripKind::Cleat, _) => {}
        }
    }
    screws
}
