//! Sketches: lines, fills, text and dimensions in real-world lengths, and the painters that show them.
//!
//! A [`Scene`] is laid out once for a sheet of so many pixels; screen, PNG and SVG paint the same layout.

mod elevation;
mod plan;
mod scene;

pub use elevation::{WallTag, wall};
pub use plan::{PlanTag, plan};
pub use scene::{Align, Dimension, Edge, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
