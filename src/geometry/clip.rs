//! What of a tile lies inside a region, in whole nanometres.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

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

/// A region to cut many tiles by.
pub struct Clip {
    edges: Vec<(Point, Point)>,
    rings: Vec<Vec<IntPoint<i64>>>,
    overlay: Overlay<i64>,
    /// The tile that is cut, kept to be filled anew.
    tile: Vec<IntPoint<i64>>,
}

pub(super) fn int(point: Point) -> IntPoint<i64> {
    IntPoint::new(point.x.as_nm(), point.y.as_nm())
}

pub(super) fn back(point: &IntPoint<i64>) -> Point {
    Point::new(Length::nm(point.x), Length::nm(point.y))
}

/// Twice the area of a triangle; more than zero where `c` is right of the way from `a` to `b` on the sheet.
fn side(a: Point, b: Point, c: Point) -> i128 {
    let wide = |length: Length| i128::from(length.as_nm());
    (wide(b.x) - wide(a.x)) * (wide(c.y) - wide(a.y))
        - (wide(b.y) - wide(a.y)) * (wide(c.x) - wide(a.x))
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
    /// Ready to cut tiles by a region.
    #[must_use]
    pub fn new(region: &Region) -> Clip {
        let ring = |polygon: &Polygon| polygon.points.iter().map(|p| int(*p)).collect();
        Clip {
            edges: region.edges().collect(),
            rings: std::iter::once(&region.outer)
                .chain(&region.holes)
                .map(ring)
                .collect(),
            overlay: Overlay::new(64),
            tile: Vec::new(),
        }
    }

    /// What of a convex tile lies inside.
    ///
    /// Where no edge of the region comes near, one corner decides; else the pieces are cut exactly, but for new corners,
    /// which lie on whole nanometres.
    pub fn of(&mut self, tile: &[Point]) -> Inside {
        if !self.meets(tile) {
            return match tile.first() {
                Some(corner) if self.holds(*corner) => Inside::Whole,
                _ => Inside::Nothing,
            };
        }
        self.cut(tile)
    }

    /// Whether an edge of the region comes into the tile's box and does not lie on one side of it.
    fn meets(&self, tile: &[Point]) -> bool {
        let Some((least, most)) = bounds(tile) else {
            return false;
        };
        self.edges.iter().any(|&(a, b)| {
            a.x.min(b.x) <= most.x
                && a.x.max(b.x) >= least.x
                && a.y.min(b.y) <= most.y
                && a.y.max(b.y) >= least.y
                && !apart(tile, a, b)
        })
    }

    /// Whether a point lies inside, by the number of edges to its right.
    fn holds(&self, p: Point) -> bool {
        self.edges
            .iter()
            .filter(|(a, b)| (a.y > p.y) != (b.y > p.y) && (side(*a, *b, p) > 0) == (b.y < a.y))
            .count()
            % 2
            == 1
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
        let whole = doubled(tile);
        let mut all = 0;
        let mut pieces = Vec::new();
        for shape in shapes {
            let mut rings = shape.iter().map(|ring| Polygon {
                points: ring.iter().map(back).collect(),
            });
            let Some(outer) = rings.next() else { continue };
            let piece = Region {
                outer,
                holes: rings.collect(),
            };
            let area = piece.doubled_area();
            all += area;
            if area >= LEAST_DOUBLED {
                pieces.push(piece);
            }
        }
        if whole - all < LEAST_DOUBLED {
            Inside::Whole
        } else if pieces.is_empty() {
            Inside::Nothing
        } else {
            Inside::Part(pieces)
        }
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
            let rings: Vec<_> = std::iter::once(&region.outer)
                .chain(&region.holes)
                .map(ring)
                .collect();
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

/// Whether all of a convex tile lies strictly on one side of a line.
fn apart(tile: &[Point], a: Point, b: Point) -> bool {
    let mut sides = tile.iter().map(|p| side(a, b, *p).signum());
    match sides.next() {
        Some(0) | None => false,
        Some(first) => sides.all(|side| side == first),
    }
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
        let mut clip = Clip::new(&floor);
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
