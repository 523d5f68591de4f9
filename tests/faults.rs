//! Files that are damaged, cut, foreign or newer: refused, never a panic, never overwritten.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "faults/job_file.rs"]
mod job_file;
