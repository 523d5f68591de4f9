//! What of a tile lies inside a region, in whole nanometres.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::buckets::Buckets;
use super::walk::Walk;
use super::{Point, Polygon, Region};
use crate::measure::Length;

/// The least area that counts, in twice square nanometres: 1 mm².
pub const LEAST_DOUBLED: i128 = 2 * 1_000_000 * 1_000_000;

/// What of a tile lies inside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Inside {
    /// All of it, or all but less than 1 mm².
    Whole,
    /// Less than 1 mm².
    Nothing,
    /// These pieces, each of at least 1 mm².
    Part(Vec<Region>),
}

/// Regions to cut many tiles by.
pub struct Clip {
    buckets: Buckets,
    rings: Vec<Vec<IntPoint<i64>>>,
    overlay: Overlay<i64>,
    /// The tile that is cut, kept to be filled anew.
    tile: Vec<IntPoint<i64>>,
    /// Edges that may come into a tile, and ways through it, kept likewise.
    near: Vec<usize>,
    walk: Walk,
}

pub(super) fn int(point: Point) -> IntPoint<i64> {
    IntPoint::new(point.x.as_nm(), point.y.as_nm())
}

pub(super) fn back(point: &IntPoint<i64>) -> Point {
    Point::new(Length::nm(point.x), Length::nm(point.y))
}

/// Twice the area of a triangle; more than zero where `c` is right of the way from `a` to `b` on the sheet.
pub(super) fn side(a: Point, b: Point, c: Point) -> i128 {
    // Differences of places in one job are far within 64 bits; their products are not.
    let (dx, dy) = ((b.x - a.x).as_nm(), (b.y - a.y).as_nm());
    let (ex, ey) = ((c.x - a.x).as_nm(), (c.y - a.y).as_nm());
    i128::from(dx) * i128::from(ey) - i128::from(dy) * i128::from(ex)
}

fn doubled(points: &[Point]) -> i128 {
    let Some(first) = points.first() else {
        return 0;
    };
    points
        .windows(2)
        .map(|pair| side(*first, pair[0], pair[1]))
        .sum::<i128>()
        .abs()
}

impl Clip {
    /// Ready to cut tiles by the parts of a field, which lie apart from each other.
    #[must_use]
    pub fn new(parts: &[Region]) -> Clip {
        let ring = |polygon: &Polygon| polygon.points.iter().map(|p| int(*p)).collect();
        Clip {
            buckets: Buckets::new(parts),
            rings: parts.iter().flat_map(Region::rings).map(ring).collect(),
            overlay: Overlay::new(64),
            tile: Vec::new(),
            near: Vec::new(),
            walk: Walk::default(),
        }
    }

    /// What of a convex tile, clockwise on the sheet, lies inside.
    ///
    /// Where no edge of the region comes in, one place decides; else the pieces are cut exactly, but for new corners,
    /// which lie on whole nanometres.
    pub fn of(&mut self, tile: &[Point]) -> Inside {
        let Some((least, most)) = bounds(tile) else {
            return Inside::Nothing;
        };
        if let Some(inside) = self.buckets.clear(least, most) {
            return if inside {
                Inside::Whole
            } else {
                Inside::Nothing
            };
        }
        self.buckets.near(least, most, &mut self.near);
        let edges = &self.buckets.edges;
        self.near
            .retain(|at| enters(tile, edges[*at].from, edges[*at].to));
        if self.near.is_empty() {
            // Midway between two corners that are no neighbours: inside the tile.
            let (one, other) = (tile[0], tile[tile.len() / 2]);
            let middle = Point::new(
                one.x + (other.x - one.x).half(),
                one.y + (other.y - one.y).half(),
            );
            return if self.buckets.holds(middle) {
                Inside::Whole
            } else {
                Inside::Nothing
            };
        }
        self.near.sort_unstable();
        match self.walk.pieces(tile, edges, &self.near) {
            Some(pieces) => classed(tile, pieces),
            None => self.cut(tile),
        }
    }

    /// Whether a box lies inside or outside, where that is known at once.
    #[must_use]
    pub fn clear(&mut self, least: Point, most: Point) -> Option<bool> {
        self.buckets.clear(least, most)
    }

    fn cut(&mut self, tile: &[Point]) -> Inside {
        self.tile.clear();
        self.tile.extend(tile.iter().map(|p| int(*p)));
        self.overlay.clear();
        self.overlay
            .add_source(self.tile.as_slice(), ShapeType::Subject);
        self.overlay.add_source(&self.rings, ShapeType::Clip);
        let shapes = self
            .overlay
            .overlay(OverlayRule::Intersect, FillRule::EvenOdd);
        let pieces = shapes.iter().filter_map(|shape| {
            let mut rings = shape.iter().map(|ring| Polygon {
                points: ring.iter().map(back).collect(),
            });
            Some(Region {
                outer: rings.next()?,
                holes: rings.collect(),
            })
        });
        classed(tile, pieces.collect())
    }
}

/// A region less polygons, the largest rest first.
pub(super) fn difference(region: &Region, taken: &[Polygon]) -> Vec<Region> {
    let ring = |polygon: &Polygon| -> Vec<IntPoint<i64>> {
        polygon.points.iter().map(|p| int(*p)).collect()
    };
    let mut rest = vec![region.clone()];
    // One after another, so that polygons that lie over each other are taken once.
    for polygon in taken {
        let mut next = Vec::new();
        for region in &rest {
            let rings: Vec<_> = region.rings().map(ring).collect();
            let mut overlay: Overlay<i64> = Overlay::new(64);
            overlay.add_source(&rings, ShapeType::Subject);
            overlay.add_source(ring(polygon).as_slice(), ShapeType::Clip);
            for shape in overlay.overlay(OverlayRule::Difference, FillRule::EvenOdd) {
                let mut rings = shape.iter().map(|ring| Polygon {
                    points: ring.iter().map(back).collect(),
                });
                if let Some(outer) = rings.next() {
                    next.push(Region {
                        outer,
                        holes: rings.collect(),
                    });
                }
            }
        }
        rest = next;
    }
    rest.retain(|region| region.doubled_area() >= LEAST_DOUBLED);
    rest.sort_by_key(|region| std::cmp::Reverse(region.doubled_area()));
    rest
}

/// Twice the area that two polygons share, whichever way round they run.
pub(super) fn shared(a: &Polygon, b: &Polygon) -> i128 {
    if !a.near(b) {
        return 0;
    }
    let ring = |polygon: &Polygon| -> Vec<IntPoint<i64>> {
        polygon.points.iter().map(|p| int(*p)).collect()
    };
    let mut overlay: Overlay<i64> = Overlay::new(64);
    overlay.add_source(ring(a).as_slice(), ShapeType::Subject);
    overlay.add_source(ring(b).as_slice(), ShapeType::Clip);
    let shapes = overlay.overlay(OverlayRule::Intersect, FillRule::EvenOdd);
    // Rings of a shape: the outside one way round, holes the other.
    let rings = shapes.iter().flatten();
    let doubled = rings.map(|ring| {
        let points = ring.iter().map(back).collect();
        Polygon { points }.doubled_area()
    });
    doubled.sum::<i128>().abs()
}

/// What a tile comes to whose pieces are these.
fn classed(tile: &[Point], mut pieces: Vec<Region>) -> Inside {
    let mut all = 0;
    pieces.retain(|piece| {
        let area = piece.doubled_area();
        all += area;
        area >= LEAST_DOUBLED
    });
    if doubled(tile) - all < LEAST_DOUBLED {
        Inside::Whole
    } else if pieces.is_empty() {
        Inside::Nothing
    } else {
        Inside::Part(pieces)
    }
}

/// Whether an edge comes into the inside of a convex tile, clockwise on the sheet.
fn enters(tile: &[Point], a: Point, b: Point) -> bool {
    let (mut right, mut left) = (false, false);
    for p in tile {
        let side = side(a, b, *p);
        right |= side > 0;
        left |= side < 0;
    }
    right
        && left
        && (0..tile.len()).all(|at| {
            let (p, q) = (tile[at], tile[(at + 1) % tile.len()]);
            side(p, q, a) > 0 || side(p, q, b) > 0
        })
}

/// The corners of the least box round points.
fn bounds(points: &[Point]) -> Option<(Point, Point)> {
    let first = *points.first()?;
    Some(points.iter().fold((first, first), |(least, most), p| {
        (
            Point::new(least.x.min(p.x), least.y.min(p.y)),
            Point::new(most.x.max(p.x), most.y.max(p.y)),
        )
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rectangle(left: i64, top: i64, width: i64, height: i64) -> Vec<Point> {
        [(0, 0), (width, 0), (width, height), (0, height)]
            .map(|(x, y)| Point::new(Length::mm(left + x), Length::mm(top + y)))
            .to_vec()
    }

    #[test]
    fn a_tile_is_whole_cut_in_pieces_or_outside() {
        let mut floor = Region::rectangle(Length::mm(1_000), Length::mm(800));
        floor.holes.push(Polygon {
            points: rectangle(400, 300, 100, 100),
        });
        let mut clip = Clip::new(std::slice::from_ref(&floor));
        assert_eq!(clip.of(&rectangle(10, 10, 100, 100)), Inside::Whole);
        assert_eq!(clip.of(&rectangle(0, 0, 100, 100)), Inside::Whole);
        assert_eq!(clip.of(&rectangle(1_000, 0, 100, 100)), Inside::Nothing);
        assert_eq!(clip.of(&rectangle(1_200, 0, 100, 100)), Inside::Nothing);
        assert_eq!(clip.of(&rectangle(400, 300, 100, 100)), Inside::Nothing);
        let area = |inside: Inside| match inside {
            Inside::Part(pieces) => pieces
                .iter()
                .map(|p| p.doubled_area() / 2 / 1_000_000_000_000)
                .collect::<Vec<_>>(),
            other => panic!("{other:?}"),
        };
        assert_eq!(area(clip.of(&rectangle(950, 0, 100, 100))), [5_000]);
        assert_eq!(area(clip.of(&rectangle(350, 250, 200, 200))), [30_000]);
        // A strip past both sides of the hole comes in two.
        assert_eq!(area(clip.of(&rectangle(380, 310, 140, 20))), [400, 400]);
    }
}
