//! A cut piece as it is marked on its tile: its shape, its cut lines, how thin it is.

use super::{Ask, Laid, Piece};
use crate::geometry::hull::{P, cross};
use crate::geometry::{Point, Polygon, Region};
use crate::measure::Length;

/// How a tile is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CutKind {
    /// One line along a side.
    Straight,
    /// One line at a slant.
    Slant,
    /// Two lines that meet inside the tile, or cross it both ways.
    Corner,
    /// Lines or curves all round, or more than two.
    Curve,
    /// More than one piece of the same tile.
    Several,
}

/// A cut piece in the frame of its tile: the long side runs to the right, from the upper left corner.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct OnTile {
    /// Outside first, then holes; nanometres.
    pub rings: Vec<Vec<(f64, f64)>>,
}

/// A tenth of a millimetre: on the edge of the tile.
const ON_EDGE: f64 = 100_000.0;

/// The tile's frame: its corner, the way of its long side, and of its short one.
fn frame(laid: &Laid) -> (Point, (f64, f64), (f64, f64), f64) {
    let points = laid.tile.points();
    let way = |from: Point, to: Point| {
        let (x, y) = (
            (to.x - from.x).as_nm() as f64,
            (to.y - from.y).as_nm() as f64,
        );
        let long = x.hypot(y).max(1.0);
        ((x / long, y / long), long)
    };
    let last = points[points.len() - 1];
    let ((ux, uy), across) = way(points[0], points[1]);
    let (v, _) = way(points[0], last);
    if points.len() == 6 {
        // A hexagon stands on its tip, between two flats: its box is its frame.
        let (down, _) = way(points[0], points[3]);
        let ((_, _), flats) = way(points[1], points[5]);
        let half = |share: f64| Length::nm((share * flats / 2.0).round() as i64);
        let right = (down.1, -down.0);
        let corner = points[0] - Point::new(half(right.0), half(right.1));
        return (corner, right, down, flats);
    }
    if laid.tile.upright {
        // A quarter turn: the standing long side runs to the right, what was right runs up.
        return (points[1], v, (-ux, -uy), across);
    }
    (points[0], (ux, uy), v, across)
}

/// Places in the frame of a tile.
pub(super) fn in_frame(laid: &Laid) -> impl Fn(&Point) -> P {
    let (corner, u, v, _) = frame(laid);
    move |p| {
        let (x, y) = (
            (p.x - corner.x).as_nm() as f64,
            (p.y - corner.y).as_nm() as f64,
        );
        (x * u.0 + y * u.1, x * v.0 + y * v.1)
    }
}

/// A piece in the frame of its tile.
pub(super) fn on_tile(laid: &Laid, piece: &Region) -> OnTile {
    let place = in_frame(laid);
    let ring = |polygon: &Polygon| polygon.points.iter().map(&place).collect();
    OnTile {
        rings: piece.rings().map(ring).collect(),
    }
}

impl OnTile {
    /// How far it reaches along and across its tile.
    pub fn extents(&self) -> (Length, Length) {
        let over = |pick: fn(&(f64, f64)) -> f64| {
            let values = self.rings.iter().flatten().map(pick);
            let high = values.clone().fold(f64::NEG_INFINITY, f64::max);
            Length::nm((high - values.fold(f64::INFINITY, f64::min)).round() as i64)
        };
        (over(|p| p.0), over(|p| p.1))
    }

    /// The lines to cut: edges that are no edge of the tile that was laid.
    pub fn lines(&self, laid: &Laid) -> Vec<[P; 2]> {
        let sides: Vec<P> = laid.tile.points().iter().map(in_frame(laid)).collect();
        let on_edge = |a: P, b: P| {
            (0..sides.len()).any(|at| {
                let (p, q) = (sides[at], sides[(at + 1) % sides.len()]);
                let long = (q.0 - p.0).hypot(q.1 - p.1).max(1.0);
                let off = |r: P| cross(p, q, r).abs() / long;
                off(a) < ON_EDGE && off(b) < ON_EDGE
            })
        };
        self.rings
            .iter()
            .flat_map(|ring| {
                let next = ring.iter().cycle().skip(1);
                ring.iter().copied().zip(next.copied())
            })
            .filter(|(a, b)| !on_edge(*a, *b))
            .map(|(a, b)| [a, b])
            .collect()
    }
}

/// How a tile is cut, from its lines.
pub(super) fn kind(laid: &Laid) -> CutKind {
    let Piece::Cut(pieces) = &laid.piece else {
        return CutKind::Straight;
    };
    let [piece] = &pieces[..] else {
        return CutKind::Several;
    };
    let lines = on_tile(laid, piece).lines(laid);
    let level =
        |[a, b]: &[(f64, f64); 2]| (a.0 - b.0).abs() < ON_EDGE || (a.1 - b.1).abs() < ON_EDGE;
    match &lines[..] {
        [one] if level(one) => CutKind::Straight,
        [_] => CutKind::Slant,
        [_, _] => CutKind::Corner,
        _ => CutKind::Curve,
    }
}

/// The sides of the tile that was laid, in nanometres.
pub(super) fn sides(ask: &Ask, laid: &Laid) -> (f64, f64) {
    let side = |length: Length| length.as_nm() as f64;
    match (laid.tile.size, ask.pattern) {
        (1, super::Pattern::TwoSquares { small }) => (side(small), side(small)),
        (_, super::Pattern::TwoSquares { .. }) => (side(ask.tile.long), side(ask.tile.long)),
        _ => (side(ask.tile.long), side(ask.tile.short)),
    }
}
