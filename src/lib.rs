//! Storyrod: from what the tape said to what is cut, bought, mixed and done, for small wet rooms.
//!
//! A figure goes one way through the house and never back up:
//!
//! `measure → handbook → geometry → site → photo → trades → takeoff → drawing → { store, packet } → app → gui → main`
//!
//! Each room uses those to its left and none to its right; `tests/tidy.rs` walks every `use` and says where one does not.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::panic))]

pub mod app;
pub mod drawing;
pub mod geometry;
pub mod handbook;
pub mod measure;
pub mod packet;
pub mod photo;
pub mod site;
pub mod store;
pub mod takeoff;
pub mod trades;

#[cfg(feature = "gui")]
pub mod gui;
