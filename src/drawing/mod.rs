//! Sketches: lines, fills, text and dimensions in real-world lengths, and the painters that show them.
//!
//! A [`Scene`] is laid out once for a sheet of so many pixels; screen, PNG and SVG paint the same layout.

mod bed;
mod elevation;
mod face;
mod figure;
mod ink;
mod layout;
mod paint;
mod palette;
mod patch;
mod photo;
mod pixels;
mod plan;
mod scene;
mod svg;
mod tape;
#[cfg(test)]
mod tests;
mod tile;

pub use bed::bed_sketch;
pub use elevation::{WallTag, wall};
pub use layout::{Canvas, HotSpot, Piece, Place, Sheet, lay_out};
pub use paint::{PaintTag, paint_sketch};
pub use palette::{Colour, Palette, Theme};
pub use patch::patch_sketch;
pub use photo::{At, Ends, Loupe, Note, annotate, ground};
pub use pixels::{Pixels, paint, paint_on, png};
pub use plan::{PlanTag, plan};
pub use scene::{Align, Dimension, Edge, Fit, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
pub use svg::svg;
pub use tape::{length_of_drag, tape};
pub use tile::{TileTag, side_by_side, tile_sketch};
