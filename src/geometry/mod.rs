//! Points and polygons on the nanometre grid, exact where integers can be.

mod buckets;
mod clip;
mod inset;
mod point;
mod polygon;
mod region;
mod walk;

pub use clip::{Clip, Inside, LEAST_DOUBLED};
pub use point::Point;
pub use polygon::Polygon;
pub use region::Region;
