//! A place on a plan or an elevation.

use std::ops::{Add, Sub};

use crate::measure::Length;

/// A place: `x` to the right, `y` down the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Down.
    pub y: Length,
}

impl Point {
    /// A place.
    #[must_use]
    pub const fn new(x: Length, y: Length) -> Point {
        Point { x, y }
    }
    /// How far it is to `other`, to the nearest nanometre.
    #[must_use]
    pub fn distance(self, other: Point) -> Length {
        (other.x - self.x).diagonal(other.y - self.y)
    }
}

impl Add for Point {
    type Output = Point;
    fn add(self, other: Point) -> Point {
        Point::new(self.x + other.x, self.y + other.y)
    }
}
impl Sub for Point {
    type Output = Point;
    fn sub(self, other: Point) -> Point {
        Point::new(self.x - other.x, self.y - other.y)
    }
}
