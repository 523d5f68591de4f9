//! Sketches: lines, fills, text and dimensions in real-world lengths, and the painters that show them.
//!
//! A [`Scene`] is laid out once for a sheet of so many pixels; screen, PNG and SVG paint the same layout.

mod apart;
mod bars;
mod bed;
mod drain;
mod elevation;
mod elevation_more;
mod elevation_photos;
mod face;
mod figure;
mod hatch;
mod ink;
mod key;
mod layout;
mod led;
mod paint;
mod palette;
mod patch;
mod patch_behind;
mod photo;
mod photo_plates;
mod pipe;
mod pipe_floor;
mod pipe_wall;
mod pixels;
mod plan;
mod plan_more;
mod plans_beside;
mod scene;
mod sheets;
mod strip;
mod svg;
mod tape;
#[cfg(test)]
mod tests;
mod tile;
mod tile_things;
mod trim;

pub use bars::{MOST_STICKS, Stick, bars_sketch};
pub use bed::bed_sketch;
pub use drain::{drain_sketch, drain_stretch};
pub use elevation::{WallTag, wall};
pub use elevation_more::from_behind;
pub use elevation_photos::{Pinned, pin_photos};
pub use key::Key;
pub use layout::{Canvas, HotSpot, Piece, Place, Sheet, lay_out, lay_out_at};
pub use paint::{PaintTag, paint_sketch};
pub use palette::{Colour, Palette, Theme};
pub use patch::patch_sketch;
pub use photo::{At, Ends, Glass, Loupe, Note, annotate, annotate_rows, ground};
pub use pipe::{PipeTag, View, pipe_sketch};
pub use pipe_floor::{joists_under, run_on_floor};
pub use pipe_wall::run_on_wall;
pub use pixels::{Pixels, paint, paint_on, png};
pub use plan::{PlanLook, PlanTag, plan, plan_seen};
pub use plans_beside::plans_beside;
pub use scene::{Align, Dimension, Edge, Fit, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
pub use sheets::{SheetsTag, piece_sketch, sheets_sketch};
pub use strip::{strip, strip_sheet};
pub use svg::svg;
pub use tape::{length_of_drag, tape};
pub use tile::{Look, ThingPart, TileTag, side_by_side, tile_sketch};
pub use trim::{TrimTag, base_by_hand, base_on_plan, casing_sketch};
