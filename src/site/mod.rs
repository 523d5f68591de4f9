//! What stands on the site: rooms, walls, openings, studs and finishes. No prices, no quantities of material.

mod against;
mod areas;
mod bore;
mod change;
mod clash;
mod clearance;
mod edit;
mod elevation;
mod fixed;
mod fixture;
mod guess;
mod id;
mod joists;
mod mirror;
mod near;
mod opening;
mod room;
mod shape;
mod studs;
pub mod surface;
mod survey;

pub use against::{Against, against, true_turns};
pub use areas::{NoArea, OpeningRule, WallAreas, baseboard, wall_areas};
pub use bore::{Fault, Member, hole_for};
pub use change::{Bend, Missing, bend, slant, still_to_measure};
pub use clash::{Clash, clashes};
pub use clearance::{Clearance, Wants, clearances, footprint, off_wall};
pub use edit::outward;
pub use elevation::{Does, Elevation, Taken, elevation};
pub use fixed::{FixedKind, FixedPoint, Hidden, HiddenKind, Known, On, Spot};
pub use fixture::{Fixture, FixtureKind};
pub use id::Id;
pub use joists::{Joists, out_from};
pub use near::{Face, Near, Work, cut_out, near, works};
pub use opening::{Hinge, Opening, OpeningKind, Side};
pub use room::{Finish, Room, Wall};
pub use shape::{Misfit, Problem, Shape, Standing, laid_as_said, shape, sketch};
pub use studs::{Studs, studs_to_frame};
pub use survey::{
    Asked, Bow, Check, CornerFound, Difference, FaceCheck, How, Level, Mark, Misread, Passed, Size,
    Survey, Surveyed, Suspicion, Third, Trust, WallFound, What, bow, differences, floor_level,
    floor_plus_minus, follows_plus_minus, half_of, leans, misreads, reading_sigma, surveyed,
    suspicion, taken_for, tape_tolerance, to_ask,
};
