//! What was printed elsewhere, a file a document.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "published/gypsum_board.rs"]
mod gypsum_board;
