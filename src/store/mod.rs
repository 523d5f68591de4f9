//! Job files: written whole, beside the old one, synced and renamed; never overwritten when they cannot be read.
//!
//! `serde` stands here alone, on record types of its own: renaming a field elsewhere never breaks a file.

mod container;
mod disk;
pub mod document;
pub mod folder;
mod format_1;
mod job_record;
mod keep;
mod lock;
pub mod pictures;
mod record;
mod record_figures;
mod saver;

pub use container::{Kind, OpenError, VERSION, seal, unseal};
pub use disk::{Disk, Entry, RealDisk};
pub use keep::{
    Prefs, SaveError, create_job, data_folder, jobs_in, open_job, open_prefs, open_shelf, save_job,
    save_prefs, save_shelf,
};
pub use lock::{Held, Lock};
pub use saver::{NotKept, Saver, State};
