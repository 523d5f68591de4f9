//! What stands on the site: rooms, walls, openings, studs and finishes. No prices, no quantities of material.

mod opening;
mod room;
mod studs;

pub use opening::{Opening, OpeningKind};
pub use room::{Finish, Room, Wall};
pub use studs::Studs;
