//! From what the figures need to what is bought: merged, packed once over the whole job, priced.

mod buying;
mod cutting;
mod job;
mod left;
mod merge;
mod packs;
mod pieces;
mod pipe;
mod second;
mod sheets;
mod stamps;
mod steps;
mod trim;

pub use buying::{
    Asked, Buying, Choice, HandLine, Line, LineKey, PackKey, Shelf, Total, lines, number_of, title,
    total,
};
pub use cutting::{Bar, Cuts, Piece, Saw, Setup, cutting, is_cut};
pub use job::{Ask, Batch, Job, PipeOn, RollLine, TapeBench, Task, TileOn, Traced, TrimOn};
pub use left::{Left, Sides, tiles_saved};
pub use merge::{Merge, Merged, Value, merge};
pub use packs::{Pack, cover, packs_on_sale, sticks_on_sale};
pub use stamps::{Entry, EntryKind, Mark, Order, Stamps, entries};
pub use steps::{Hold, Ordered, State, Step, StepKey, StepNote, StepOf, steps};
