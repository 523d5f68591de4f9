//! An outline with holes: a floor with its drain, a wall with its window.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;

use super::clip::{back, int};
use super::{Point, Polygon};
use crate::measure::Length;
use crate::measure::quantity::{Area, square_metres};

/// An outline with holes in it. The holes lie inside and apart from each other.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Region {
    /// The outside.
    pub outer: Polygon,
    /// What is taken out of it.
    pub holes: Vec<Polygon>,
}

impl Region {
    /// A rectangle from the origin.
    #[must_use]
    pub fn rectangle(width: Length, height: Length) -> Region {
        Region {
            outer: Polygon {
                points: vec![
                    Point::default(),
                    Point::new(width, Length::ZERO),
                    Point::new(width, height),
                    Point::new(Length::ZERO, height),
                ],
            },
            holes: Vec::new(),
        }
    }

    /// Twice the area in square nanometres, exact.
    #[must_use]
    pub fn doubled_area(&self) -> i128 {
        let holes = self.holes.iter().map(|hole| hole.doubled_area().abs());
        self.outer.doubled_area().abs() - holes.sum::<i128>()
    }

    /// The area of the outside less the holes.
    ///
    /// # Example
    /// ```
    /// use storyrod::geometry::Region;
    /// use storyrod::measure::{Length, quantity::in_square_feet};
    /// let floor = Region::rectangle(Length::feet(8), Length::feet(5));
    /// assert!((in_square_feet(floor.area()) - 40.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        square_metres(self.doubled_area() as f64 / 2e18)
    }

    /// The corners of the least box round it; `None` where there is no outline.
    #[must_use]
    pub fn bounds(&self) -> Option<(Point, Point)> {
        self.outer.bounds()
    }

    /// Every edge, of the outside and of the holes.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        std::iter::once(&self.outer)
            .chain(&self.holes)
            .flat_map(|ring| {
                let next = ring.points.iter().cycle().skip(1);
                ring.points.iter().copied().zip(next.copied())
            })
    }

    /// Whether a point is inside it, and in none of its holes.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        self.outer.contains(point) && !self.holes.iter().any(|hole| hole.contains(point))
    }
    /// How far a point is from the nearest edge; `None` without edges.
    #[must_use]
    pub fn clear_of_edges(&self, point: Point) -> Option<Length> {
        let metres = |p: Point| (p.x.metres(), p.y.metres());
        let (x, y) = metres(point);
        let away = self.edges().map(|(a, b)| {
            let ((ax, ay), (bx, by)) = (metres(a), metres(b));
            let (dx, dy) = (bx - ax, by - ay);
            let long = dx * dx + dy * dy;
            let along = if long > 0.0 {
                ((x - ax) * dx + (y - ay) * dy) / long
            } else {
                0.0
            };
            let along = along.clamp(0.0, 1.0);
            (x - ax - along * dx).hypot(y - ay - along * dy)
        });
        away.reduce(f64::min).and_then(Length::from_metres)
    }
    /// The first two edges of one ring that cross or touch where they should not: the ring (0 the outside), the edges.
    #[must_use]
    pub fn crossing(&self) -> Option<(usize, usize, usize)> {
        std::iter::once(&self.outer)
            .chain(&self.holes)
            .enumerate()
            .find_map(|(ring, polygon)| polygon.crossing().map(|(a, b)| (ring, a, b)))
    }

    /// What is left without some polygons: one region, or several where they cut it apart, the largest first.
    ///
    /// # Example
    /// ```
    /// use storyrod::geometry::Region;
    /// use storyrod::measure::{Length, quantity::in_square_feet};
    /// let floor = Region::rectangle(Length::feet(8), Length::feet(5));
    /// let tub = Region::rectangle(Length::feet(3), Length::feet(5)).outer;
    /// let left = floor.without(&[tub]);
    /// assert_eq!(left.len(), 1);
    /// assert!((in_square_feet(left[0].area()) - 25.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn without(&self, taken: &[Polygon]) -> Vec<Region> {
        super::clip::difference(self, taken)
    }

    /// The region with a gap left along every edge: walls move in, holes grow, and one that reaches a wall becomes a
    /// notch. `None` where nothing is left, or where it falls apart.
    #[must_use]
    pub fn inset(&self, gap: Length) -> Option<Region> {
        if gap == Length::ZERO {
            return Some(self.clone());
        }
        let outer = moved(&self.outer, gap)?;
        if outer.crossing().is_some() || !same_way(&outer, &self.outer) {
            return None;
        }
        let mut holes = Vec::new();
        for hole in &self.holes {
            holes.push(moved(hole, -gap)?);
        }
        Region { outer, holes }.apart()
    }

    /// The same with holes that meet walls or each other taken out of the outside; `None` where more than one part is left.
    fn apart(self) -> Option<Region> {
        let rings: Vec<&Polygon> = std::iter::once(&self.outer).chain(&self.holes).collect();
        let clear = |at: usize| rings[at + 1..].iter().all(|ring| !rings[at].near(ring));
        let inside = |hole: &Polygon| hole.points.iter().all(|p| self.outer.contains(*p));
        let free = (1..rings.len()).all(clear) && self.holes.iter().all(inside) && {
            let walls = &self.outer;
            self.holes.iter().all(|hole| !walls.meets(hole))
        };
        if free {
            return Some(self);
        }
        let ring = |polygon: &Polygon| {
            let mut ring: Vec<_> = polygon.points.iter().map(|p| int(*p)).collect();
            if !polygon.clockwise() {
                ring.reverse();
            }
            ring
        };
        let holes: Vec<_> = self.holes.iter().map(ring).collect();
        let mut overlay = Overlay::new(64);
        overlay.add_source(ring(&self.outer).as_slice(), ShapeType::Subject);
        overlay.add_source(&holes, ShapeType::Clip);
        let shapes = overlay.overlay(OverlayRule::Difference, FillRule::NonZero);
        let [shape] = &shapes[..] else {
            return None;
        };
        let mut rings = shape.iter().map(|ring| Polygon {
            points: ring.iter().map(back).collect(),
        });
        Some(Region {
            outer: rings.next()?,
            holes: rings.collect(),
        })
    }
}

fn same_way(a: &Polygon, b: &Polygon) -> bool {
    a.doubled_area().signum() == b.doubled_area().signum()
}

/// Every edge moved to the inside by `by` (out, where it is less than nothing); corners where the moved edges meet.
fn moved(ring: &Polygon, by: Length) -> Option<Polygon> {
    let count = ring.points.len();
    if count < 3 {
        return None;
    }
    // Clockwise on the sheet the inside is to the right of the way.
    let side = if ring.clockwise() { 1.0 } else { -1.0 };
    let lines: Vec<_> = (0..count)
        .map(|at| {
            let (a, b) = (ring.points[at], ring.points[(at + 1) % count]);
            let (dx, dy) = (nm(b.x - a.x), nm(b.y - a.y));
            let long = dx.hypot(dy);
            let shift = by.as_nm() as f64 * side / long;
            (
                nm(a.x) - dy * shift,
                nm(a.y) + dx * shift,
                dx / long,
                dy / long,
            )
        })
        .collect();
    let points = (0..count).map(|at| {
        let (ax, ay, adx, ady) = lines[(at + count - 1) % count];
        let (bx, by, bdx, bdy) = lines[at];
        let across = adx * bdy - ady * bdx;
        if !across.is_finite() {
            return None;
        }
        if across.abs() < 1e-9 {
            // Two edges in line: the corner moves with them.
            return point(bx, by);
        }
        let along = ((bx - ax) * bdy - (by - ay) * bdx) / across;
        point(ax + adx * along, ay + ady * along)
    });
    Some(Polygon {
        points: points.collect::<Option<Vec<_>>>()?,
    })
}

fn nm(length: Length) -> f64 {
    length.as_nm() as f64
}

fn point(x: f64, y: f64) -> Option<Point> {
    Some(Point::new(
        Length::from_metres(x * 1e-9)?,
        Length::from_metres(y * 1e-9)?,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gap_is_left_along_walls_and_round_a_hole() {
        let inches = Length::inches;
        let mut floor = Region::rectangle(inches(60), inches(96));
        let square = |left: i64, top: i64, side: i64| Polygon {
            points: [(0, 0), (side, 0), (side, side), (0, side)]
                .map(|(x, y)| Point::new(inches(left + x), inches(top + y)))
                .to_vec(),
        };
        floor.holes.push(square(20, 20, 4));
        let field = floor.inset(Length::in_64(0, 16)).unwrap();
        let (least, most) = field.bounds().unwrap();
        assert_eq!(
            most - least,
            Point::new(Length::in_64(59, 32), Length::in_64(95, 32))
        );
        let (least, most) = field.holes[0].bounds().unwrap();
        assert_eq!(
            most - least,
            Point::new(Length::in_64(4, 32), Length::in_64(4, 32))
        );
        // A hole that comes within the gap of a wall is a notch in it.
        floor.holes[0] = square(1, 20, 5);
        floor.holes[0].points.reverse();
        let field = floor.inset(Length::in_64(0, 32)).unwrap();
        assert!(field.holes.is_empty());
        let whole = Region::rectangle(inches(59), inches(95)).doubled_area();
        let notch = Region::rectangle(inches(6), inches(6)).doubled_area();
        assert_eq!(field.doubled_area(), whole - notch);
        floor.holes[0] = square(20, 20, 4);
        assert_eq!(floor.inset(inches(30)), None);
        assert_eq!(floor.inset(inches(40)), None);
    }
}
