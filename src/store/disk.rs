//! The few things that a save asks of a disk, so that a test may stop, fill or fail one at any of them.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Read, Write};
use std::path::Path;
use std::time::SystemTime;

/// A file in a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its name in the folder.
    pub name: String,
    /// How long it is.
    pub bytes: u64,
    /// When it was last written, where the disk says so.
    pub modified: Option<SystemTime>,
}

/// A disk. Nothing is certain to outlast a power cut before it is synced: neither bytes nor names.
pub trait Disk: Send + Sync {
    /// The bytes of a file.
    ///
    /// # Errors
    /// Where it is not there, cannot be read, or is longer than `most`.
    fn read(&self, path: &Path, most: u64) -> io::Result<Vec<u8>>;
    /// Writes a new file, not yet synced.
    ///
    /// # Errors
    /// Where there is one already, and where the disk refuses; part of the file may then be there.
    fn write_new(&self, path: &Path, bytes: &[u8]) -> io::Result<()>;
    /// Writes a new file from a reader, not yet synced; a disk that can holds no more of it than a little at once.
    ///
    /// # Errors
    /// As [`Disk::write_new`], and where the reader refuses.
    fn write_from(&self, path: &Path, from: &mut dyn Read) -> io::Result<()> {
        let mut bytes = Vec::new();
        from.read_to_end(&mut bytes)?;
        self.write_new(path, &bytes)
    }
    /// Returns once the bytes of a file outlast a power cut.
    ///
    /// # Errors
    /// Where that is not certain.
    fn sync_file(&self, path: &Path) -> io::Result<()>;
    /// Writes a new file, and returns once its bytes outlast a power cut.
    ///
    /// # Errors
    /// As writing and syncing it one after the other.
    fn write_new_synced(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        self.write_new(path, bytes)?;
        self.sync_file(path)
    }
    /// Gives a file another name in one step, in place of the file of that name.
    ///
    /// # Errors
    /// Where the disk refuses; both names are then as they were.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Gives a file a second name.
    ///
    /// # Errors
    /// Where the name is taken or the disk refuses.
    fn link(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Takes a name away.
    ///
    /// # Errors
    /// Where it is not there or the disk refuses.
    fn remove(&self, path: &Path) -> io::Result<()>;
    /// The files of a folder, in any order.
    ///
    /// # Errors
    /// Where it is not there or cannot be looked into.
    fn list(&self, folder: &Path) -> io::Result<Vec<Entry>>;
    /// Makes a folder and those above it; one that is there already stays.
    ///
    /// # Errors
    /// Where the disk refuses.
    fn make_folder(&self, path: &Path) -> io::Result<()>;
    /// Returns once the names in a folder outlast a power cut.
    ///
    /// # Errors
    /// Where that is not certain.
    fn sync_folder(&self, path: &Path) -> io::Result<()>;
    /// Whether there is something of this name.
    ///
    /// # Errors
    /// Where that cannot be known.
    fn exists(&self, path: &Path) -> io::Result<bool>;
    /// Whether what is of this name is a link that leads elsewhere; a disk that knows none has none.
    ///
    /// # Errors
    /// Where that cannot be known.
    fn is_link(&self, _path: &Path) -> io::Result<bool> {
        Ok(false)
    }
}

/// The disk of this device.
#[derive(Clone, Copy, Debug, Default)]
pub struct RealDisk;

impl Disk for RealDisk {
    fn read(&self, path: &Path, most: u64) -> io::Result<Vec<u8>> {
        let file = File::open(path)?;
        if file.metadata()?.len() > most {
            return Err(ErrorKind::FileTooLarge.into());
        }
        let mut bytes = Vec::new();
        file.take(most.saturating_add(1)).read_to_end(&mut bytes)?;
        if bytes.len() as u64 > most {
            return Err(ErrorKind::FileTooLarge.into());
        }
        Ok(bytes)
    }

    fn write_new(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        File::create_new(path)?.write_all(bytes)
    }

    fn write_from(&self, path: &Path, from: &mut dyn Read) -> io::Result<()> {
        io::copy(from, &mut File::create_new(path)?).map(|_| ())
    }

    fn sync_file(&self, path: &Path) -> io::Result<()> {
        // Some systems sync only what is open for writing.
        OpenOptions::new().write(true).open(path)?.sync_all()
    }

    fn write_new_synced(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let mut file = File::create_new(path)?;
        file.write_all(bytes)?;
        file.sync_all()
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        match fs::hard_link(from, to) {
            Err(why) if !matches!(why.kind(), ErrorKind::AlreadyExists | ErrorKind::NotFound) => {
                fs::copy(from, to).map(|_| ())
            }
            done => done,
        }
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<Entry>> {
        let mut entries = Vec::new();
        for entry in fs::read_dir(folder)? {
            let entry = entry?;
            let about = match entry.metadata() {
                Ok(about) => about,
                // Taken away while the folder was looked through.
                Err(why) if why.kind() == ErrorKind::NotFound => continue,
                Err(why) => return Err(why),
            };
            let Ok(name) = entry.file_name().into_string() else {
                continue;
            };
            if about.is_file() {
                entries.push(Entry {
                    name,
                    bytes: about.len(),
                    modified: about.modified().ok(),
                });
            }
        }
        Ok(entries)
    }

    fn make_folder(&self, path: &Path) -> io::Result<()> {
        fs::create_dir_all(path)
    }

    #[cfg(unix)]
    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        match File::open(path)?.sync_all() {
            // A disk that has no such thing does by itself what it does.
            Err(why) if why.kind() == ErrorKind::InvalidInput => Ok(()),
            done => done,
        }
    }
    #[cfg(not(unix))]
    fn sync_folder(&self, _: &Path) -> io::Result<()> {
        Ok(())
    }

    fn exists(&self, path: &Path) -> io::Result<bool> {
        path.try_exists()
    }

    fn is_link(&self, path: &Path) -> io::Result<bool> {
        match fs::symlink_metadata(path) {
            Ok(about) => Ok(about.is_symlink()),
            Err(why) if why.kind() == ErrorKind::NotFound => Ok(false),
            Err(why) => Err(why),
        }
    }
}
