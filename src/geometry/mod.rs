//! Points and polygons on the nanometre grid, exact where integers can be.

mod adjust;
mod buckets;
mod clip;
mod inset;
mod normal;
mod point;
mod polygon;
mod region;
pub mod stock;
mod traverse;
mod walk;

pub use adjust::{Adjusted, Network, Observation, Sight, Unsettled, adjust};
pub use clip::{Clip, Inside, LEAST_DOUBLED};
pub use point::Point;
pub use polygon::Polygon;
pub use region::Region;
pub use traverse::{Closed, Leg, balance};
