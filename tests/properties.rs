//! What must hold for any figure.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "properties/lengths.rs"]
mod lengths;
#[path = "properties/merges.rs"]
mod merges;
#[path = "properties/packs.rs"]
mod packs;
#[path = "properties/paint.rs"]
mod paint;
#[path = "properties/patches.rs"]
mod patches;
#[path = "properties/photos.rs"]
mod photos;
#[path = "properties/pipes.rs"]
mod pipes;
#[path = "properties/rooms.rs"]
mod rooms;
#[path = "properties/sheets.rs"]
mod sheets;
#[path = "properties/sticks.rs"]
mod sticks;
#[path = "properties/surveys.rs"]
mod surveys;
#[path = "properties/tape.rs"]
mod tape;
#[path = "properties/tile_work.rs"]
mod tile_work;
#[path = "properties/tiles.rs"]
mod tiles;
#[path = "properties/trim.rs"]
mod trim;
