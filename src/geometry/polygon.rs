//! A closed outline.

use super::Point;

/// A closed outline; the last point is joined to the first and not repeated.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Polygon {
    /// The corners, clockwise as seen on the sheet for the outside of a shape.
    pub points: Vec<Point>,
}
