//! Points and polygons on the nanometre grid, exact where integers can be.

mod buckets;
mod clip;
mod point;
mod polygon;
mod region;
pub mod stock;
mod walk;

pub use clip::{Clip, Inside, LEAST_DOUBLED};
pub use point::Point;
pub use polygon::Polygon;
pub use region::Region;
