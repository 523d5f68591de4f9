//! An outline with holes: a floor with its drain, a wall with its window.

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

    /// The least box round several; `None` where there is no outline.
    #[must_use]
    pub fn bounds_of(parts: &[Region]) -> Option<(Point, Point)> {
        let boxes = parts.iter().filter_map(Region::bounds);
        boxes.reduce(|(a, b), (c, d)| {
            (
                Point::new(a.x.min(c.x), a.y.min(c.y)),
                Point::new(b.x.max(d.x), b.y.max(d.y)),
            )
        })
    }

    /// The outside, then the holes.
    pub fn rings(&self) -> impl Iterator<Item = &Polygon> {
        std::iter::once(&self.outer).chain(&self.holes)
    }

    /// Every edge, of the outside and of the holes.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.rings().flat_map(|ring| {
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

    /// The parts of a line, from end to end, that lie inside.
    #[must_use]
    pub fn along(&self, from: Point, to: Point) -> Vec<(Point, Point)> {
        let at = |p: Point| (p.x.metres(), p.y.metres());
        let ((x, y), (x1, y1)) = (at(from), at(to));
        let (dx, dy) = (x1 - x, y1 - y);
        let mut shares = vec![0.0, 1.0];
        for (a, b) in self.edges() {
            let ((ax, ay), (bx, by)) = (at(a), at(b));
            let (ex, ey) = (bx - ax, by - ay);
            let across = dx * ey - dy * ex;
            if across.abs() < 1e-12 {
                continue;
            }
            let share = ((ax - x) * ey - (ay - y) * ex) / across;
            let on = ((ax - x) * dy - (ay - y) * dx) / across;
            if (0.0..=1.0).contains(&share) && (0.0..=1.0).contains(&on) {
                shares.push(share);
            }
        }
        shares.sort_by(f64::total_cmp);
        let place = |share: f64| {
            let part = |by: f64| Length::from_metres(by * share).unwrap_or_default();
            from + Point::new(part(dx), part(dy))
        };
        let inside = |pair: &&[f64]| {
            pair[1] - pair[0] > 1e-9 && self.contains(place((pair[0] + pair[1]) / 2.0))
        };
        let parts = shares.windows(2).filter(inside);
        parts.map(|pair| (place(pair[0]), place(pair[1]))).collect()
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
}
