//! Points and polygons on the nanometre grid, exact where integers can be.

mod clip;
mod point;
mod polygon;
mod region;

pub use clip::{Clip, Inside, LEAST_DOUBLED};
pub use point::Point;
pub use polygon::Polygon;
pub use region::Region;
