//! Screws: along what carries the board, or over the whole sheet.

use super::ask::Ask;
use super::pieces::Piece;
use crate::geometry::Point;
use crate::handbook::{gypsum, sheets as book};
use crate::measure::{Length, Rounding};
use crate::trades::Board;

/// Steps that a run takes at most so far apart.
fn steps(run: Length, apart: Length) -> i64 {
    if !run.is_positive() || !apart.is_positive() {
        return 0;
    }
    run.rounded(apart, Rounding::Cover).as_nm() / apart.as_nm()
}

/// The screws in a sheet that is fastened all over: `(⌈(L − 2e) ÷ a⌉ + 1) × (⌈(W − 2e) ÷ a⌉ + 1)`, where edges and inside
/// have one spacing `a`; else those of the edges, and inside `(⌈(L − 2e) ÷ b⌉ − 1) × (⌈(W − 2e) ÷ b⌉ − 1)`.
///
/// # Inputs
/// The sheet's sides; `apart` the spacing along its edges and inside; `e` from the edge.
/// # Gives
/// A count; at least the four corners.
/// # Source
/// Arithmetic on the spacing and edge distance of [`CEMENT_SCREWS`](crate::handbook::sheets::CEMENT_SCREWS).
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::sheets::screws_on_a_sheet};
/// let (eight, half) = (Length::inches(8), Length::in_64(0, 32));
/// assert_eq!(screws_on_a_sheet((Length::feet(5), Length::feet(3)), (eight, eight), half), 54);
/// ```
#[must_use]
pub fn screws_on_a_sheet(
    (long, short): (Length, Length),
    (edges, inside): (Length, Length),
    e: Length,
) -> i64 {
    let (l, w) = (long - e * 2, short - e * 2);
    let round = 2 * (steps(l, edges).max(1) + steps(w, edges).max(1));
    let inner = |run| (steps(run, inside) - 1).max(0);
    round + inner(l) * inner(w)
}

/// The screws of a piece.
pub(super) fn of_piece(ask: &Ask, piece: &Piece) -> i64 {
    let all_over = || {
        screws_on_a_sheet(
            (
                piece.size.0.max(piece.size.1),
                piece.size.0.min(piece.size.1),
            ),
            ask.screws,
            edge(ask),
        )
    };
    let Some(framing) = &ask.framing else {
        return all_over();
    };
    // An underlayment is fastened to the deck, not to the joists.
    if ask.on == super::Surface::Floor {
        return all_over();
    }
    let Some((least, most)) = piece.region.bounds() else {
        return 0;
    };
    let (origin, e) = (ask.origin(), edge(ask));
    let far = most - origin;
    let reach = if framing.upright { far.x } else { far.y } + Length::inches(1);
    let half = gypsum::STUD_FACE.value.half();
    let mut lines: Vec<(Length, bool)> = Vec::new();
    let (low, high) = if framing.upright {
        (least.x - origin.x, most.x - origin.x)
    } else {
        (least.y - origin.y, most.y - origin.y)
    };
    for centre in framing.studs.centres(reach) {
        // One that carries a joint is shared: the screws stand beside its middle.
        if centre <= low - half || centre >= high + half {
            continue;
        }
        let inside = centre.max(low + e).min(high - e);
        lines.push((
            inside,
            inside != centre || centre - low < half || high - centre < half,
        ));
    }
    // What stands in no stud, at a wall's end, is held by the framing of the corner.
    for (end, near) in [(low + e, low), (high - e, high)] {
        if !lines
            .iter()
            .any(|(at, _)| (*at - near).abs() <= Length::inches(4))
        {
            lines.push((end, true));
        }
    }
    let mut count = 0;
    for (at, at_edge) in lines {
        let (a, b) = if framing.upright {
            let x = origin.x + at;
            (Point::new(x, least.y), Point::new(x, most.y))
        } else {
            let y = origin.y + at;
            (Point::new(least.x, y), Point::new(most.x, y))
        };
        let apart = if at_edge { ask.screws.0 } else { ask.screws.1 };
        for (from, to) in piece.region.along(a, b) {
            let run = from.distance(to) - e * 2;
            count += (steps(run, apart) + 1).max(2);
        }
    }
    count
}

/// From the edge of a board to a screw.
pub(super) fn edge(ask: &Ask) -> Length {
    match ask.board {
        Board::Gypsum | Board::Plywood => gypsum::SCREW_EDGE.value,
        Board::Cement => book::CEMENT_SCREW_EDGE.value,
    }
}
