//! What holds for any figures.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "properties/patches.rs"]
mod patches;
