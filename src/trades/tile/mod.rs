//! Tile: every piece of a floor or a wall before the first cut.

mod ask;
mod balance;
mod cuts;
mod figure;
mod findings;
mod lay;
mod lines;
mod mirror;
mod order;
mod pattern;
mod reuse;
mod sheets;
mod traded;

pub use ask::{
    Ask, BoxOf, Edge, Field, Hold, Pattern, Problem, Run, Side, Sight, Start, Surface, Taken,
    Thing, ThingShape, Tile,
};
pub use balance::{Balance, balance};
pub use cuts::CutKind;
pub use figure::{Cut, Figure, figure};
pub use findings::{least_joint, lippage};
pub use lay::{Laid, Layout, Piece, field_corner, lay};
pub use lines::{Chalk, chalk, running};
pub use pattern::{Placed, domain, module, placed};
pub use reuse::{Plan, Planned, plan};
pub use sheets::{Block, Sheet, Sheets, seams, sheet_size, sheets};
