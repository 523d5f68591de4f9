//! A file as it is read: watched, so that reading can be stopped and one that changes meanwhile is not taken.

use std::fs::File;
use std::io::{self, ErrorKind, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering::Relaxed};
use std::time::SystemTime;

use super::Problem;

/// Largest file that is taken in.
pub const LARGEST: u64 = 256 << 20;

/// How far reading is, and whether it is to stop.
#[derive(Debug, Default)]
pub struct Watch {
    /// Bytes read of the file at hand.
    pub read: AtomicU64,
    /// Its length.
    pub length: AtomicU64,
    /// To be stopped.
    pub stop: AtomicBool,
}

/// A file that is read while it is watched.
pub struct Source<'a> {
    file: File,
    path: PathBuf,
    as_it_was: (u64, Option<SystemTime>),
    watch: &'a Watch,
}

impl<'a> Source<'a> {
    /// Opens a file.
    ///
    /// # Errors
    /// [`Problem`]: where it is empty, too large or cannot be read.
    pub fn open(path: &Path, watch: &'a Watch) -> Result<Source<'a>, Problem> {
        let disk = |why: io::Error| Problem::Disk(why.to_string());
        let file = File::open(path).map_err(disk)?;
        let about = file.metadata().map_err(disk)?;
        if !about.is_file() {
            return Err(Problem::NotAPicture);
        }
        if about.len() == 0 {
            return Err(Problem::Empty);
        }
        if about.len() > LARGEST {
            return Err(Problem::TooLarge {
                bytes: about.len(),
                most: LARGEST,
            });
        }
        watch.read.store(0, Relaxed);
        watch.length.store(about.len(), Relaxed);
        Ok(Source {
            file,
            path: path.to_owned(),
            as_it_was: (about.len(), about.modified().ok()),
            watch,
        })
    }

    /// When it was last written.
    #[must_use]
    pub fn modified(&self) -> Option<SystemTime> {
        self.as_it_was.1
    }

    /// Whether all of it was read and nobody wrote to it meanwhile.
    ///
    /// # Errors
    /// [`Problem::Changing`].
    pub fn unchanged(&self) -> Result<(), Problem> {
        let now = std::fs::metadata(&self.path).map(|about| (about.len(), about.modified().ok()));
        let all = self.watch.read.load(Relaxed) == self.as_it_was.0;
        if all && now.is_ok_and(|now| now == self.as_it_was) {
            Ok(())
        } else {
            Err(Problem::Changing)
        }
    }
}

impl Read for Source<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.watch.stop.load(Relaxed) {
            return Err(ErrorKind::ConnectionAborted.into());
        }
        let read = self.file.read(into)?;
        self.watch.read.fetch_add(read as u64, Relaxed);
        Ok(read)
    }
}

impl Seek for Source<'_> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = self.file.seek(to)?;
        self.watch.read.store(at, Relaxed);
        Ok(at)
    }
}

/// A file that is decoded, until it is to stop.
pub struct Stoppable<'a> {
    /// The file.
    pub file: File,
    /// Who may stop it.
    pub watch: &'a Watch,
}

impl Read for Stoppable<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.watch.stop.load(Relaxed) {
            return Err(ErrorKind::ConnectionAborted.into());
        }
        self.file.read(into)
    }
}

impl Seek for Stoppable<'_> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.file.seek(to)
    }
}
