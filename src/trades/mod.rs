//! One module a trade: what was asked goes in, the figure comes out, and nothing else happens.
//!
//! Each trade has an `Ask`, a `figure(&Ask) -> Result<Figure, Problem>` and an [`Account`] in its figure: the working,
//! the findings, the cautions and the materials. No trade uses another.

mod account;
pub mod drain;
pub mod grout;
mod limits;
pub mod mortar;
mod order;
pub mod paint;
pub mod patch;
pub mod pipe;
pub mod sheets;
pub mod tape;
pub mod tile;
pub mod trim;

pub use account::{Account, Board, Compound, Finding, Grout, Material, Need, Step, Term, Weight};
pub use order::{Order, Work};
