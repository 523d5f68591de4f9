//! Points and polygons on the nanometre grid, exact where integers can be.

mod adjust;
mod apart;
mod buckets;
mod clip;
mod cover;
mod four_points;
mod homography;
pub(crate) mod hull;
mod inset;
mod lens;
mod normal;
mod panels;
mod plane_fit;
mod plane_view;
mod point;
mod polygon;
mod region;
mod simplex;
pub mod stock;
mod traverse;
mod walk;

pub use adjust::{Adjusted, Network, Observation, Sight, Unsettled, adjust};
pub use apart::Form;
pub use clip::{Clip, Inside, LEAST_DOUBLED};
pub(crate) use cover::{Covered, cover};
pub use four_points::{NoShape, Shape};
pub use homography::{Homography, Spot, distance, from_stretch, turn};
pub use hull::narrowest;
pub use lens::{Bent, LENS_LEAST, LENS_MOST, Lens, bend_of};
pub use panels::{Item, Panels, Placed, core, panels};
pub use plane_view::{CONTRADICTS, Estimate, Known, NoPlane, Plane, PlaneView, Reference};
pub use point::Point;
pub use polygon::Polygon;
pub use region::Region;
pub use traverse::{Closed, Leg, balance};
