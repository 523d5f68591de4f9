//! What stands on the site: rooms, walls, openings, studs and finishes. No prices, no quantities of material.

mod areas;
mod change;
mod clash;
mod fixed;
mod guess;
mod id;
mod opening;
mod room;
mod shape;
mod studs;
pub mod surface;

pub use areas::{NoArea, OpeningRule, WallAreas, baseboard, wall_areas};
pub use change::{Bend, Missing, bend, slant, still_to_measure};
pub use clash::{Clash, clashes};
pub use fixed::{FixedKind, FixedPoint, Hidden, HiddenKind, Known, On, Spot};
pub use id::Id;
pub use opening::{Hinge, Opening, OpeningKind, Side};
pub use room::{Finish, Room, Wall};
pub use shape::{Misfit, Problem, Shape, Standing, shape, sketch};
pub use studs::{Studs, studs_to_frame};
