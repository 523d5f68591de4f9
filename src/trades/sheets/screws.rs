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
    let Some(lines) = along_framing(ask, piece) else {
        return screws_on_a_sheet(
            (
                piece.size.0.max(piece.size.1),
                piece.size.0.min(piece.size.1),
            ),
            ask.screws,
            edge(ask),
        );
    };
    let e = edge(ask);
    let counts = lines.iter().map(|(from, to, at_edge)| {
        let apart = if *at_edge { ask.screws.0 } else { ask.screws.1 };
        (steps(from.distance(*to) - e * 2, apart) + 1).max(2)
    });
    counts.sum()
}

/// The lines that a piece is screwed along, each from end to end: along what carries it, or rows over the whole piece.
///
/// # Inputs
/// The ask and one of its pieces.
/// # Gives
/// Lines on the surface, from the left or from the top; rows run along the longer side of the box round the piece, as far
/// apart as screws are at most.
/// # Source
/// As [`screws_on_a_sheet`] and the spacing of the ask; where within its row a screw stands is for whoever drives it.
/// # Example
/// ```
/// use storyrod::trades::sheets::{Ask, figure, screw_lines};
/// let ask = Ask::wall();
/// let figure = figure(&ask).unwrap();
/// // A whole sheet of 4 by 8 ft: level rows, no further apart than its screws.
/// let rows = screw_lines(&ask, &figure.pieces[0]);
/// let apart = rows.windows(2).map(|pair| pair[1].0.y - pair[0].0.y);
/// assert!(rows.len() > 3 && apart.max().unwrap() <= ask.screws.1);
/// ```
#[must_use]
pub fn screw_lines(ask: &Ask, piece: &Piece) -> Vec<(Point, Point)> {
    if let Some(lines) = along_framing(ask, piece) {
        return lines.into_iter().map(|(from, to, _)| (from, to)).collect();
    }
    let Some((least, most)) = piece.region.bounds() else {
        return Vec::new();
    };
    let (size, e) = (most - least, edge(ask));
    let across = size.x >= size.y;
    let short = size.x.min(size.y) - e * 2;
    let rows = steps(short, ask.screws.1.max(ask.screws.0)).max(1);
    let lines = (0..=rows).flat_map(|n| {
        let off = e + (short * n).divided(rows);
        let (a, b) = if across {
            (
                Point::new(least.x, least.y + off),
                Point::new(most.x, least.y + off),
            )
        } else {
            (
                Point::new(least.x + off, least.y),
                Point::new(least.x + off, most.y),
            )
        };
        piece.region.along(a, b)
    });
    lines.collect()
}

/// The lines along what carries a piece, and whether each is at an edge; `None` where it is fastened all over.
fn along_framing(ask: &Ask, piece: &Piece) -> Option<Vec<(Point, Point, bool)>> {
    // An underlayment is fastened to the deck, not to the joists.
    let framing = ask.framing.as_ref();
    let framing = framing.filter(|_| ask.on != super::Surface::Floor)?;
    let Some((least, most)) = piece.region.bounds() else {
        return Some(Vec::new());
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
    let mut found = Vec::new();
    for (at, at_edge) in lines {
        let (a, b) = if framing.upright {
            let x = origin.x + at;
            (Point::new(x, least.y), Point::new(x, most.y))
        } else {
            let y = origin.y + at;
            (Point::new(least.x, y), Point::new(most.x, y))
        };
        let parts = piece.region.along(a, b).into_iter();
        found.extend(parts.map(|(from, to)| (from, to, at_edge)));
    }
    Some(found)
}

/// From the edge of a board to a screw.
pub(super) fn edge(ask: &Ask) -> Length {
    match ask.board {
        Board::Gypsum | Board::Plywood => gypsum::SCREW_EDGE.value,
        Board::Cement => book::CEMENT_SCREW_EDGE.value,
    }
}
