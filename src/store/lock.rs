//! One program at a time writes a job.

use std::fmt;
use std::fs::{File, OpenOptions, TryLockError};
use std::path::Path;

/// A job folder that this program alone may write, until this is dropped or the program ends in any way.
#[derive(Debug)]
pub struct Lock {
    file: File,
}

impl Drop for Lock {
    fn drop(&mut self) {
        // Closing alone would not let go while a program that is just being started still holds a copy.
        let _ = self.file.unlock();
    }
}

/// Why a job folder cannot be had for writing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Held {
    /// Another program has it open.
    ByAnother,
    /// The system gives no access to it.
    Disk(String),
}

impl fmt::Display for Held {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Held::ByAnother => write!(f, "the job is open in another window"),
            Held::Disk(why) => write!(f, "the system gives no access to it: {why}"),
        }
    }
}

impl Lock {
    /// Takes a job folder for writing, without waiting.
    ///
    /// # Errors
    /// [`Held`], where another has it or the system refuses.
    pub fn take(folder: &Path) -> Result<Lock, Held> {
        let file = OpenOptions::new()
            .write(true)
            .create(true)
            .truncate(false)
            .open(folder.join("lock"))
            .map_err(|why| Held::Disk(why.to_string()))?;
        match file.try_lock() {
            Ok(()) => Ok(Lock { file }),
            Err(TryLockError::WouldBlock) => Err(Held::ByAnother),
            Err(TryLockError::Error(why)) => Err(Held::Disk(why.to_string())),
        }
    }
}
