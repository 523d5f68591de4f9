//! Job files: written whole, beside the old one, synced and renamed; never overwritten when they cannot be read.
//!
//! `serde` stands here alone, on record types of its own: renaming a field elsewhere never breaks a file.

mod container;
mod disk;
pub mod document;
pub mod folder;
mod format_1;
mod history;
mod job_file;
mod job_record;
pub mod json;
mod keep;
mod lock;
pub mod pictures;
mod record;
mod record_drain;
mod record_figures;
mod record_fixed;
mod record_joists;
mod record_material;
mod record_mix;
mod record_photo;
mod record_pipe;
mod record_sheets;
mod record_steps;
mod record_survey;
mod record_tile;
mod record_trim;
mod saver;
mod scribe;
pub mod share;

pub use container::{Kind, OpenError, VERSION, seal, unseal};
pub use disk::{Disk, Entry, RealDisk};
pub use job_file::{
    Check, FOLDER_ENDS, Recovered, Writer, check_job, copy_pictures, create, create_job, jobs_in,
    open_job, open_to_write, open_version, recover_job, salvage_job, save_job, versions_of,
};
pub use keep::{
    PhotoPrefs, Prefs, SaveError, data_folder, open_fittings, open_prefs, open_shelf,
    save_fittings, save_prefs, save_shelf,
};
pub use lock::{Held, Lock};
pub use saver::{NotKept, Saver, State};
pub use scribe::Snapshot;
