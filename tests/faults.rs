//! Files that are damaged, cut, foreign or newer; disks that stop, fill and fail; programs that are killed.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "faults/document_damage.rs"]
mod document_damage;
#[path = "faults/drains.rs"]
mod drains;
#[path = "faults/hostile_pictures.rs"]
mod hostile_pictures;
#[path = "faults/job_file.rs"]
mod job_file;
#[path = "faults/json.rs"]
mod json;
#[path = "faults/killed.rs"]
mod killed;
#[path = "faults/mixes.rs"]
mod mixes;
#[path = "faults/pictures.rs"]
mod pictures;
#[path = "faults/pictures_handed_over.rs"]
mod pictures_handed_over;
#[path = "faults/pipes.rs"]
mod pipes;
#[path = "faults/program.rs"]
mod program;
#[path = "faults/saver.rs"]
mod saver;
#[path = "faults/share.rs"]
mod share;
#[path = "faults/share_photos.rs"]
mod share_photos;
#[path = "faults/sheets.rs"]
mod sheets;
#[path = "faults/sim_disk.rs"]
mod sim_disk;
#[path = "faults/simulated_disk.rs"]
mod simulated_disk;
#[path = "faults/trim.rs"]
mod trim;
#[path = "faults/two_programs.rs"]
mod two_programs;
#[path = "faults/versions.rs"]
mod versions;
#[path = "faults/watched_folder.rs"]
mod watched_folder;
