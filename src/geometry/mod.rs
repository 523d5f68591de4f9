//! Points and polygons on the nanometre grid, exact where integers can be.

mod point;
mod polygon;

pub use point::Point;
pub use polygon::Polygon;
