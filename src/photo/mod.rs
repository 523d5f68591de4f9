//! Pictures of the site: what comes in, the working copy on the screen, what is marked on it and measured in it.
//!
//! The bytes of a picture are kept as they came. What is shown and marked is a working copy of at most 2,048 pixels a
//! side, upright and in sRGB; places on it are told in pixels of the upright original, so that any copy will do.

mod colour;
mod decode;
mod facts;
mod kind;
mod problem;
mod strip;
mod turn;

pub use decode::{Picture, WORKING, decode};
pub use facts::{Facts, Taken, facts};
pub use kind::Kind;
pub use problem::Problem;
pub use strip::{Stripped, strip};
pub use turn::Turn;
