//! Board in sheets on a real shape: every piece before the first cut.

mod ask;
mod courses;
mod figure;
mod findings;
mod marks;
mod order;
mod pieces;
mod screws;
#[cfg(test)]
mod tests;

pub use crate::trades::Board;
pub use ask::{Ask, Begin, Field, Framing, Problem, Surface, Thing, ThingShape, Way};
pub use figure::{Figure, figure, sheet_weight};
pub use marks::{Cut, CutWay, Hole};
pub use pieces::Piece;
pub use screws::{screw_lines, screws_on_a_sheet};
