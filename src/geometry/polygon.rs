//! A closed outline.

use super::Point;
use crate::measure::quantity::{Area, square_metres};
use crate::measure::{Angle, Length};

/// A closed outline; the last point is joined to the first and not repeated.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Polygon {
    /// The corners, clockwise as seen on the sheet for the outside of a shape.
    pub points: Vec<Point>,
}

/// Whole nanometres as a wide number, held to ±1000 km so that no product overflows.
fn wide(length: Length) -> i128 {
    i128::from(length.as_nm()).clamp(-1_000_000_000_000_000, 1_000_000_000_000_000)
}

/// Twice the signed area of a triangle; more than zero when `c` is to the right of the way from `a` to `b`.
fn turn(a: Point, b: Point, c: Point) -> i128 {
    (wide(b.x) - wide(a.x)) * (wide(c.y) - wide(a.y))
        - (wide(b.y) - wide(a.y)) * (wide(c.x) - wide(a.x))
}

/// Whether `p`, known to be in line with `a` and `b`, is between them.
fn between(a: Point, b: Point, p: Point) -> bool {
    p.x >= a.x.min(b.x) && p.x <= a.x.max(b.x) && p.y >= a.y.min(b.y) && p.y <= a.y.max(b.y)
}

/// Whether two edges share a point.
fn meet(a: Point, b: Point, c: Point, d: Point) -> bool {
    let (c_side, d_side) = (turn(a, b, c).signum(), turn(a, b, d).signum());
    let (a_side, b_side) = (turn(c, d, a).signum(), turn(c, d, b).signum());
    (c_side * d_side < 0 && a_side * b_side < 0)
        || (c_side == 0 && between(a, b, c))
        || (d_side == 0 && between(a, b, d))
        || (a_side == 0 && between(c, d, a))
        || (b_side == 0 && between(c, d, b))
}

impl Polygon {
    /// A circle as 64 chords.
    #[must_use]
    pub fn round(centre: Point, across: Length) -> Polygon {
        let points = (0..64i64).map(|n| {
            let (sine, cosine) = Angle::microdegrees(n * 5_625_000).sin_cos();
            let part =
                |share: f64| Length::from_metres(across.metres() / 2.0 * share).unwrap_or_default();
            centre + Point::new(part(cosine), part(sine))
        });
        Polygon {
            points: points.collect(),
        }
    }
    /// Edge `index`, from its corner to the next.
    fn edge(&self, index: usize) -> (Point, Point) {
        let count = self.points.len();
        (self.points[index], self.points[(index + 1) % count])
    }
    /// Twice the signed area in square nanometres, exact; more than zero when clockwise on the sheet.
    #[must_use]
    pub fn doubled_area(&self) -> i128 {
        (0..self.points.len())
            .map(|index| self.edge(index))
            .map(|(a, b)| wide(a.x) * wide(b.y) - wide(b.x) * wide(a.y))
            .sum()
    }
    /// The area inside, whichever way round the outline runs.
    ///
    /// # Example
    /// ```
    /// use storyrod::geometry::{Point, Polygon};
    /// use storyrod::measure::{Length, quantity::in_square_feet};
    /// let (none, side) = (Length::ZERO, Length::feet(5));
    /// let points = vec![Point::new(none, none), Point::new(side, none), Point::new(side, side), Point::new(none, side)];
    /// assert!((in_square_feet(Polygon { points }.area()) - 25.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        square_metres(self.doubled_area().unsigned_abs() as f64 / 2e18)
    }
    /// All the way round.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        (0..self.points.len())
            .map(|index| self.edge(index))
            .map(|(a, b)| a.distance(b))
            .sum()
    }
    /// Whether it runs clockwise as seen on the sheet.
    #[must_use]
    pub fn clockwise(&self) -> bool {
        self.doubled_area() > 0
    }
    /// The first two edges that cross, touch or fold back on each other; neighbours may share their corner only.
    #[must_use]
    pub fn crossing(&self) -> Option<(usize, usize)> {
        let count = self.points.len();
        for first in 0..count {
            for second in first + 1..count {
                let ((a, b), (c, d)) = (self.edge(first), self.edge(second));
                let clash = if second == first + 1 {
                    turn(a, b, d) == 0 && (between(a, b, d) || between(c, d, a))
                } else if first == 0 && second + 1 == count {
                    turn(c, d, b) == 0 && (between(c, d, b) || between(a, b, c))
                } else {
                    meet(a, b, c, d)
                };
                if clash {
                    return Some((first, second));
                }
            }
        }
        None
    }
    /// Whether an edge of one shares a point with an edge of the other.
    pub(super) fn meets(&self, other: &Polygon) -> bool {
        (0..self.points.len()).any(|one| {
            let (a, b) = self.edge(one);
            (0..other.points.len()).any(|two| {
                let (c, d) = other.edge(two);
                meet(a, b, c, d)
            })
        })
    }
    /// Twice the area that it shares with another, in square nanometres.
    #[must_use]
    pub fn doubled_shared(&self, other: &Polygon) -> i128 {
        super::clip::shared(self, other)
    }
    /// Whether their boxes share a point.
    pub(super) fn near(&self, other: &Polygon) -> bool {
        let (Some((a, b)), Some((c, d))) = (self.bounds(), other.bounds()) else {
            return false;
        };
        a.x <= d.x && c.x <= b.x && a.y <= d.y && c.y <= b.y
    }
    /// Whether a point is inside or on the outline.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        let mut inside = false;
        for index in 0..self.points.len() {
            let (a, b) = self.edge(index);
            let side = turn(a, b, point);
            if side == 0 && between(a, b, point) {
                return true;
            }
            if (a.y > point.y) != (b.y > point.y) && (side > 0) == (b.y > a.y) {
                inside = !inside;
            }
        }
        inside
    }
    /// The least and the greatest corner; `None` without points.
    #[must_use]
    pub fn bounds(&self) -> Option<(Point, Point)> {
        let first = *self.points.first()?;
        Some(self.points.iter().fold((first, first), |(min, max), p| {
            (
                Point::new(min.x.min(p.x), min.y.min(p.y)),
                Point::new(max.x.max(p.x), max.y.max(p.y)),
            )
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(corners: &[(i64, i64)]) -> Polygon {
        let at = |&(x, y): &(i64, i64)| Point::new(Length::mm(x), Length::mm(y));
        Polygon {
            points: corners.iter().map(at).collect(),
        }
    }
    #[test]
    fn a_square_is_clean_and_clockwise() {
        let square = outline(&[(0, 0), (10, 0), (10, 10), (0, 10)]);
        assert_eq!(square.doubled_area(), 200_000_000_000_000);
        assert!(square.clockwise());
        assert_eq!(square.crossing(), None);
        assert!(square.contains(Point::new(Length::mm(5), Length::mm(5))));
        assert!(!square.contains(Point::new(Length::mm(15), Length::mm(5))));
        assert_eq!(square.perimeter(), Length::mm(40));
    }
    #[test]
    fn a_bow_tie_crosses_itself() {
        let bow = outline(&[(0, 0), (10, 10), (10, 0), (0, 10)]);
        assert_eq!(bow.crossing(), Some((0, 2)));
    }
}
