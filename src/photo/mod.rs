//! Pictures of the site: what comes in, the working copy on the screen, what is marked on it and measured in it.
//!
//! The bytes of a picture are kept as they came. What is shown and marked is a working copy of at most 2,048 pixels a
//! side, upright and in sRGB; places on it are told in pixels of the upright original, so that any copy will do.

mod camera;
mod colour;
mod decode;
mod edges;
mod encode;
mod entry;
mod facts;
mod flatten;
mod jpeg;
mod kind;
mod log;
mod plane;
mod problem;
mod source;
mod strip;
mod turn;

pub use camera::{Camera, Frame, NoCamera, from_yuyv};
pub use decode::{Picture, WORKING, decode};
pub use edges::edge_near;
pub use encode::{Format, encode, pasted_png};
pub use entry::{Anchor, Behind, Flat, KnownBy, Mark, Object, Photo, Sides, Stage, Taped, What};
pub use facts::{Facts, Taken, facts};
pub use flatten::{Window, flatten};
pub use kind::Kind;
pub use log::{Filter, Line, befores, lines};
pub use plane::{CLICK, Doubt, Figure, LENS, NoView, STATED};
pub use problem::Problem;
pub use source::{LARGEST, Source, Stoppable, Watch};
pub use strip::{Stripped, strip};
pub use turn::Turn;
