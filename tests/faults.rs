//! Files that are damaged, cut, foreign or newer; disks that stop, fill and fail; programs that are killed.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "faults/job_file.rs"]
mod job_file;
#[path = "faults/sim_disk.rs"]
mod sim_disk;
#[path = "faults/simulated_disk.rs"]
mod simulated_disk;
