//! The pieces of a tile, walked round: along the edges of a region, and from where they leave the tile along its sides.
//!
//! Edges and sides run clockwise, so both have the piece to their right. Where a place cannot be told from a corner, or a
//! ring lies inside the tile, nothing is walked, and the overlay decides.

use super::buckets::Bound;
use super::clip::side;
use super::{Point, Polygon, Region};
use crate::measure::Length;

/// Places nearer than this, in nanometres, are not told apart.
const APART: f64 = 4.0;

/// A way of the region's edges through the tile.
struct Way {
    /// Place along the tile's sides, where it comes in and where it goes out.
    from: f64,
    to: f64,
    /// Its corners, in `points`.
    first: usize,
    last: usize,
    walked: bool,
}

/// What a walk needs, kept to be filled anew.
#[derive(Default)]
pub(super) struct Walk {
    points: Vec<Point>,
    ways: Vec<Way>,
    /// Place of each of the tile's corners along its sides.
    corners: Vec<f64>,
}

/// Where a line from `a` to `b` crosses the sides of a tile, as shares of it: the side and the share, in and out.
fn crossings(tile: &[Point], a: Point, b: Point) -> Option<[(usize, f64); 2]> {
    let (mut into, mut out) = ((usize::MAX, f64::NEG_INFINITY), (usize::MAX, f64::INFINITY));
    for at in 0..tile.len() {
        let (p, q) = (tile[at], tile[(at + 1) % tile.len()]);
        let (da, db) = (side(p, q, a), side(p, q, b));
        if da == db {
            continue;
        }
        let share = da as f64 / (da - db) as f64;
        if da < db {
            if share > into.1 {
                into = (at, share);
            }
        } else if share < out.1 {
            out = (at, share);
        }
    }
    (into.0 != usize::MAX && out.0 != usize::MAX).then_some([into, out])
}

fn float(a: Point, b: Point) -> f64 {
    let (dx, dy) = ((b.x - a.x).as_nm() as f64, (b.y - a.y).as_nm() as f64);
    (dx * dx + dy * dy).sqrt()
}

fn between(a: Point, b: Point, share: f64) -> Point {
    let at = |a: Length, b: Length| a + Length::nm(((b - a).as_nm() as f64 * share).round() as i64);
    Point::new(at(a.x, b.x), at(a.y, b.y))
}

/// Whether a point lies inside a tile; `None` on its sides.
fn holds(tile: &[Point], p: Point) -> Option<bool> {
    let mut inside = true;
    for at in 0..tile.len() {
        match side(tile[at], tile[(at + 1) % tile.len()], p).signum() {
            0 => return None,
            1 => {}
            _ => inside = false,
        }
    }
    Some(inside)
}

impl Walk {
    /// The pieces of a tile that these edges, rising, come into; `None` where they are not to be told this way.
    pub fn pieces(
        &mut self,
        tile: &[Point],
        edges: &[Bound],
        near: &[usize],
    ) -> Option<Vec<Region>> {
        self.corners.clear();
        let mut along = 0.0;
        for at in 0..tile.len() {
            self.corners.push(along);
            along += float(tile[at], tile[(at + 1) % tile.len()]);
        }
        self.ways(tile, edges, near)?;
        // No two places may be so near that their order is not certain, nor near a corner of the tile.
        for (n, way) in self.ways.iter().enumerate() {
            let places = [way.from, way.to];
            let clear = |one: f64, other: f64| {
                let off = (one - other).abs();
                off > APART && off < along - APART
            };
            let others = self.ways[n + 1..].iter().flat_map(|w| [w.from, w.to]);
            if !clear(way.from, way.to)
                || others
                    .into_iter()
                    .any(|o| !places.iter().all(|p| clear(*p, o)))
                || !self
                    .corners
                    .iter()
                    .all(|o| places.iter().all(|p| clear(*p, *o)))
            {
                return None;
            }
        }
        let mut pieces = Vec::with_capacity(1);
        while let Some(first) = self.ways.iter().position(|way| !way.walked) {
            let mut points = Vec::with_capacity(self.points.len() + tile.len());
            let mut at = first;
            loop {
                let way = &mut self.ways[at];
                if way.walked {
                    return None;
                }
                way.walked = true;
                points.extend_from_slice(&self.points[way.first..way.last]);
                let from = way.to;
                // Round the tile's sides to the next way, which has to come in.
                let on = |place: f64| (place - from).rem_euclid(along);
                let next = (0..self.ways.len())
                    .min_by(|a, b| on(self.ways[*a].from).total_cmp(&on(self.ways[*b].from)))?;
                let far = on(self.ways[next].from);
                if self
                    .ways
                    .iter()
                    .any(|way| way.to != from && on(way.to) < far)
                {
                    return None;
                }
                let count = tile.len();
                let begin = self.corners.iter().position(|c| *c > from).unwrap_or(0);
                for n in 0..count {
                    let corner = (begin + n) % count;
                    if on(self.corners[corner]) >= far {
                        break;
                    }
                    points.push(tile[corner]);
                }
                if next == first {
                    break;
                }
                at = next;
            }
            pieces.push(Region {
                outer: Polygon { points },
                holes: Vec::new(),
            });
        }
        Some(pieces)
    }

    /// The ways of edges through the tile.
    fn ways(&mut self, tile: &[Point], edges: &[Bound], near: &[usize]) -> Option<()> {
        self.ways.clear();
        self.points.clear();
        for &begin in near {
            let a = edges[begin].from;
            if holds(tile, a)? {
                // Not the first of its way; a ring that lies inside has no first, and is missed below.
                continue;
            }
            let first = self.points.len();
            let place = |(at, share): (usize, f64), (a, b): (Point, Point)| {
                let p = between(a, b, share);
                (p, self.corners[at] + float(tile[at], p))
            };
            let [into, _] = crossings(tile, a, edges[begin].to)?;
            let (p, from) = place(into, (a, edges[begin].to));
            self.points.push(p);
            let mut at = begin;
            while holds(tile, edges[at].to)? {
                self.points.push(edges[at].to);
                at = edges[at].next;
                if self.points.len() - first > edges.len() {
                    return None;
                }
            }
            let last = (edges[at].from, edges[at].to);
            let [_, out] = crossings(tile, last.0, last.1)?;
            let (q, to) = place(out, last);
            self.points.push(q);
            self.ways.push(Way {
                from,
                to,
                first,
                last: self.points.len(),
                walked: false,
            });
        }
        // Every edge that comes in has to be of a way: each way has one more corner than edges.
        let walked: usize = self.ways.iter().map(|way| way.last - way.first - 1).sum();
        (walked == near.len()).then_some(())
    }
}
