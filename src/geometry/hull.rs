//! How thin a piece is, its hull, and whether two hulls lie apart.

use super::{Point, Region};
use crate::measure::Length;

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
/// use storyrod::{geometry::{Region, narrowest}, measure::Length};
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

/// A place, in nanometres.
pub(crate) type P = (f64, f64);

/// Twice the area of a triangle.
pub(crate) fn cross(o: P, a: P, b: P) -> f64 {
    (a.0 - o.0) * (b.1 - o.1) - (a.1 - o.1) * (b.0 - o.0)
}

/// The hull of points, without those on its edges.
pub(crate) fn hull(points: &[P]) -> Vec<P> {
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

/// The least width of the hull of points.
pub(crate) fn hull_width(points: &[P]) -> f64 {
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
pub(crate) fn facing(rings: &[Vec<P>]) -> f64 {
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

/// Whether a straight band so wide lies between two hulls, along a side of either.
pub(crate) fn apart(a: &[(f64, f64)], b: &[(f64, f64)], by: f64) -> bool {
    [(a, b), (b, a)].iter().any(|(one, other)| {
        (0..one.len()).any(|at| {
            let (p, q) = (one[at], one[(at + 1) % one.len()]);
            let (dx, dy) = (q.0 - p.0, q.1 - p.1);
            let long = dx.hypot(dy);
            // A hull runs so that its own points are on the side where this is more than nothing.
            let off = |r: &(f64, f64)| dx * (r.1 - p.1) - dy * (r.0 - p.0);
            long >= 1.0 && other.iter().all(|r| -off(r) >= by * long)
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Polygon;

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
