//! Trim: base along the floor, casing round doors and windows. Every piece with its cuts, before the first one.

mod ask;
mod casing;
mod ends;
mod figure;
mod findings;
mod order;
mod runs;
#[cfg(test)]
mod tests;

pub use ask::{
    Ask, Corner, Field, Frame, Gap, Head, Inside, Kind, Opening, Piece as Listed, Problem, Stop,
    Wall,
};
pub use ends::{Cut, End, cope_shortens, mitre_reach, saw_angle};
pub use figure::{Figure, figure};
pub use runs::{Of, Part, Piece, Scarf, Side, Tight};
