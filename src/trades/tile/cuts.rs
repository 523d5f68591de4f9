//! A cut piece as it is marked on its tile: its shape, its cut lines, how thin it is.

use super::{Ask, Laid, Piece};
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

/// How thin a piece is at its thinnest: the least width of its hull, or between two of its edges that face each other.
///
/// # Inputs
/// A piece of a tile.
/// # Gives
/// A length; nothing for what has no area.
/// # Source
/// Geometry: rotating calipers over the hull, and facing edges that are within about ten degrees of parallel.
/// # Example
/// ```
/// use storyrod::{geometry::Region, measure::Length, trades::tile::narrowest};
/// let strip = Region::rectangle(Length::inches(12), Length::in_64(2, 16));
/// assert_eq!(narrowest(&strip), Length::in_64(2, 16));
/// ```
#[must_use]
pub fn narrowest(piece: &Region) -> Length {
    let float = |p: &Point| (p.x.as_nm() as f64, p.y.as_nm() as f64);
    let rings: Vec<Vec<(f64, f64)>> = std::iter::once(&piece.outer)
        .chain(&piece.holes)
        .map(|ring| ring.points.iter().map(float).collect())
        .collect();
    let least = hull_width(&rings[0]).min(facing(&rings));
    if least.is_finite() {
        Length::nm(least.round() as i64)
    } else {
        Length::ZERO
    }
}

type P = (f64, f64);

fn cross(o: P, a: P, b: P) -> f64 {
    (a.0 - o.0) * (b.1 - o.1) - (a.1 - o.1) * (b.0 - o.0)
}

/// The hull of points, without those on its edges.
pub(super) fn hull(points: &[P]) -> Vec<P> {
    let mut sorted = points.to_vec();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let chain = |points: &mut dyn Iterator<Item = P>| {
        let mut chain: Vec<P> = Vec::new();
        for p in points {
            while let [.., a, b] = chain[..] {
                if cross(a, b, p) > 0.0 {
                    break;
                }
                chain.pop();
            }
            chain.push(p);
        }
        chain.pop();
        chain
    };
    let mut hull = chain(&mut sorted.iter().copied());
    hull.extend(chain(&mut sorted.iter().rev().copied()));
    hull
}

pub(super) fn hull_width(points: &[P]) -> f64 {
    let hull = hull(points);
    let count = hull.len();
    if count < 3 {
        return 0.0;
    }
    (0..count)
        .map(|at| {
            let (a, b) = (hull[at], hull[(at + 1) % count]);
            let long = (b.0 - a.0).hypot(b.1 - a.1);
            let far = hull.iter().map(|p| cross(a, b, *p).abs());
            far.fold(0.0, f64::max) / long
        })
        .fold(f64::INFINITY, f64::min)
}

/// The least distance between two edges that face each other with the piece between them.
pub(super) fn facing(rings: &[Vec<P>]) -> f64 {
    let mut edges = Vec::new();
    for (n, ring) in rings.iter().enumerate() {
        let doubled: f64 = (0..ring.len())
            .map(|i| {
                let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
                a.0 * b.1 - b.0 * a.1
            })
            .sum();
        // So that the piece lies to the left of every edge.
        let left = if n == 0 { doubled > 0.0 } else { doubled < 0.0 };
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            edges.push(if left { (a, b) } else { (b, a) });
        }
    }
    let mut least = f64::INFINITY;
    for (i, &(a, b)) in edges.iter().enumerate() {
        let long = (b.0 - a.0).hypot(b.1 - a.1);
        if long < 1.0 {
            continue;
        }
        let way = ((b.0 - a.0) / long, (b.1 - a.1) / long);
        for &(c, d) in &edges[i + 1..] {
            let other = (d.0 - c.0).hypot(d.1 - c.1);
            let against = ((d.0 - c.0) * way.0 + (d.1 - c.1) * way.1) / other.max(1.0);
            if against > -0.98 {
                continue;
            }
            let along = |p: P| (p.0 - a.0) * way.0 + (p.1 - a.1) * way.1;
            let off = |p: P| (p.1 - a.1) * way.0 - (p.0 - a.0) * way.1;
            let (low, high) = (along(d).max(0.0), along(c).min(long));
            // Side by side for at least a millimetre, and the other on the inside.
            if high - low < 1e6 {
                continue;
            }
            let at = |s: f64| {
                let t = (s - along(c)) / (along(d) - along(c));
                off(c) + (off(d) - off(c)) * t
            };
            let distance = at(low).min(at(high));
            if distance > 0.0 {
                least = least.min(distance);
            }
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;

    fn region(points: &[(i64, i64)]) -> Region {
        Region {
            outer: Polygon {
                points: points
                    .iter()
                    .map(|(x, y)| Point::new(Length::mm(*x), Length::mm(*y)))
                    .collect(),
            },
            holes: Vec::new(),
        }
    }

    #[test]
    fn a_piece_is_as_thin_as_its_thinnest_leg() {
        let l = region(&[(0, 0), (300, 0), (300, 40), (60, 40), (60, 300), (0, 300)]);
        assert_eq!(narrowest(&l), Length::mm(40));
        let triangle = region(&[(0, 0), (300, 0), (0, 300)]);
        assert_eq!(narrowest(&triangle), Length::nm(212_132_034));
        let mut holed = region(&[(0, 0), (300, 0), (300, 300), (0, 300)]);
        let hole = region(&[(100, 30), (200, 30), (200, 130), (100, 130)]);
        holed.holes.push(hole.outer);
        assert_eq!(narrowest(&holed), Length::mm(30));
    }
}
