//! Pipe: every piece of a run cut right the first time.

mod ask;
mod clash;
mod close;
mod cut;
mod figure;
mod findings;
mod fitting;
mod floored;
mod framed;
mod hangers;
mod joints;
pub mod limits;
mod lines;
mod mirror;
mod needs;
mod offset;
mod order;
mod problem;
mod template;
#[cfg(test)]
mod tests;
mod walk;
mod working;

pub use ask::{Ask, By, Direction, Leg, Lines, Mark, Place, Way};
pub use clash::{Body, Clash, Obstacle, run_clashes};
pub use close::{Last, Swing};
pub use cut::LegCut;
pub use figure::{Figure, Piece, figure, openings};
pub use fitting::{Fitting, Known, MEASURED, Measured, Port, Shape, Side, known};
pub use floored::{Bored, Floored, floored};
pub use framed::{Framed, Hole, framed};
pub use hangers::Hanger;
pub use joints::{Item, SolderNeed, cement_for, growth, longest_cure, solder_for};
pub use lines::beside;
pub use offset::{Offset, multipliers, offset, spread};
pub use order::DRY;
pub use problem::{Field, Problem};
pub use template::{CUT_BACK, STATIONS, Template, template};
pub use walk::sketch;
