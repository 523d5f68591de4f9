//! Pictures of a job, each in a file named by what is in it: the same one is kept once, and damage shows.

use std::fmt::Write;
use std::io::{self, ErrorKind, Read};
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::disk::Disk;
use super::folder::BESIDE;
use super::keep::SaveError;

pub(super) const PICTURES: &str = "pictures";
/// Smaller copies for the screen.
const COPIES: &str = "copies";
/// The largest picture that is kept.
const LARGEST: u64 = 256 << 20;
const HASH: usize = 64;
const LONGEST_EXTENSION: usize = 8;

/// A picture that is not as it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PictureFault {
    /// What is in it is not what it was named by.
    Damaged {
        /// Its name.
        name: String,
    },
    /// The system gives no access to it.
    Unreadable {
        /// Its name.
        name: String,
        /// What the system says.
        why: String,
    },
    /// It may say where it was taken, and that cannot be taken out of it.
    Placed {
        /// Its name.
        name: String,
    },
}

pub(super) fn hash(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

fn hex(digest: &[u8]) -> String {
    let mut name = String::with_capacity(HASH);
    for byte in digest {
        let _ = write!(name, "{byte:02x}");
    }
    name
}

/// The name that bytes are kept under.
#[must_use]
pub fn name_for(bytes: &[u8], extension: &str) -> String {
    named(hash(bytes), extension)
}

fn named(mut name: String, extension: &str) -> String {
    let extension = extension.trim_start_matches('.').to_ascii_lowercase();
    if is_extension(&extension) {
        name.push('.');
        name.push_str(&extension);
    }
    name
}

fn is_extension(text: &str) -> bool {
    (1..=LONGEST_EXTENSION).contains(&text.len())
        && text
            .bytes()
            .all(|b| b.is_ascii_digit() || b.is_ascii_lowercase())
}

pub(super) fn is_name(name: &str) -> bool {
    let (hash, extension) = match name.split_once('.') {
        Some((hash, extension)) => (hash, Some(extension)),
        None => (name, None),
    };
    hash.len() == HASH
        && hash
            .bytes()
            .all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b))
        && extension.is_none_or(is_extension)
}

/// Where a picture of a job stands; none for a name that no picture has, so that none leads out of the folder.
#[must_use]
pub fn picture_path(folder: &Path, name: &str) -> Option<PathBuf> {
    is_name(name).then(|| folder.join(PICTURES).join(name))
}

/// Where a smaller copy of a picture stands, its longer side so many pixels; none for a name that no picture has. It is
/// made again when it is not there, and is not shared.
#[must_use]
pub fn copy_path(folder: &Path, name: &str, long: u32) -> Option<PathBuf> {
    let (hash, _) = name.split_once('.').unwrap_or((name, ""));
    is_name(name).then(|| folder.join(COPIES).join(format!("{hash}-{long}.jpg")))
}

/// Keeps a smaller copy of a picture. Not synced: it can be made again.
///
/// # Errors
/// Where the disk refuses; no half of it is ever under its name.
pub fn put_copy(folder: &Path, name: &str, long: u32, jpeg: &[u8]) -> io::Result<()> {
    let Some(path) = copy_path(folder, name, long) else {
        return Err(ErrorKind::InvalidInput.into());
    };
    let copies = folder.join(COPIES);
    std::fs::create_dir_all(&copies)?;
    let mut beside = tempfile::Builder::new()
        .prefix(BESIDE)
        .tempfile_in(&copies)?;
    io::Write::write_all(&mut beside, jpeg)?;
    beside.persist(&path).map_err(|why| why.error)?;
    Ok(())
}

/// Keeps a picture beside the job; gives its name. What is there already is not written again.
///
/// No link is followed, neither in place of the folder of pictures nor of one of them: it could lead anywhere.
///
/// # Errors
/// [`SaveError`]; no half of a picture is ever under its name.
pub fn put_picture(
    disk: &dyn Disk,
    folder: &Path,
    bytes: &[u8],
    extension: &str,
) -> Result<String, SaveError> {
    if bytes.len() as u64 > LARGEST {
        return Err(SaveError::TooLarge);
    }
    let name = name_for(bytes, extension);
    let pictures = folder.join(PICTURES);
    let path = pictures.join(&name);
    for at in [&pictures, &path] {
        if disk.is_link(at)? {
            return Err(SaveError::Link);
        }
    }
    if !disk.exists(&pictures)? {
        disk.make_folder(&pictures)?;
        disk.sync_folder(folder)?;
    }
    if !same(disk, &path, bytes)? {
        let beside = pictures.join(format!("{BESIDE}{name}"));
        if disk.is_link(&beside)? || disk.exists(&beside)? {
            disk.remove(&beside)?;
        }
        let written = disk
            .write_new(&beside, bytes)
            .and_then(|()| disk.sync_file(&beside))
            .and_then(|()| disk.rename(&beside, &path));
        if let Err(why) = written {
            let _ = disk.remove(&beside);
            return Err(why.into());
        }
    }
    disk.sync_folder(&pictures)?;
    Ok(name)
}

/// A picture on its way in: beside the job's pictures, under no name yet. Let go, nothing of it stays.
pub struct Incoming<'a> {
    disk: &'a dyn Disk,
    beside: PathBuf,
    pictures: PathBuf,
    /// The name that it will be kept under.
    pub name: String,
    kept: bool,
}

/// Reads on, and makes the hash of what is read.
struct Hashing<'a> {
    from: &'a mut dyn Read,
    sum: Sha256,
    left: u64,
}

impl Read for Hashing<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.from.read(into)?;
        self.left = (self.left.checked_sub(read as u64)).ok_or(ErrorKind::FileTooLarge)?;
        self.sum.update(&into[..read]);
        Ok(read)
    }
}

/// Copies a picture beside those of a job, synced, and no more of it in memory than a little at once.
///
/// What is figured from it is figured from this copy, so that nobody can change it in between.
///
/// # Errors
/// The reader's own error or the disk's, as it came; nothing of it stays.
pub fn bring_picture<'a>(
    disk: &'a dyn Disk,
    folder: &Path,
    from: &mut dyn Read,
    extension: &str,
) -> Result<Incoming<'a>, io::Error> {
    let pictures = folder.join(PICTURES);
    if disk.is_link(&pictures)? {
        return Err(io::Error::new(
            ErrorKind::InvalidInput,
            SaveError::Link.to_string(),
        ));
    }
    if !disk.exists(&pictures)? {
        disk.make_folder(&pictures)?;
        disk.sync_folder(folder)?;
    }
    let fresh = crate::site::Id::fresh().0;
    let mut incoming = Incoming {
        disk,
        beside: pictures.join(format!("{BESIDE}{fresh:016x}")),
        pictures,
        name: String::new(),
        kept: false,
    };
    let mut reading = Hashing {
        from,
        sum: Sha256::new(),
        left: LARGEST,
    };
    disk.write_from(&incoming.beside, &mut reading)?;
    disk.sync_file(&incoming.beside)?;
    incoming.name = named(hex(&reading.sum.finalize()), extension);
    Ok(incoming)
}

impl Incoming<'_> {
    /// Where it is for now.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.beside
    }

    /// Keeps it under its name; the same one there already, whole or damaged, gives way to it.
    ///
    /// # Errors
    /// [`SaveError`]; nothing of it stays.
    pub fn keep(mut self) -> Result<String, SaveError> {
        let path = self.pictures.join(&self.name);
        if self.disk.is_link(&path)? {
            return Err(SaveError::Link);
        }
        self.disk.rename(&self.beside, &path)?;
        self.kept = true;
        self.disk.sync_folder(&self.pictures)?;
        Ok(std::mem::take(&mut self.name))
    }
}

impl Drop for Incoming<'_> {
    fn drop(&mut self) {
        if !self.kept {
            // Swept when the job is next opened, if it cannot be now.
            let _ = self.disk.remove(&self.beside);
        }
    }
}

/// Whether a file is there with just these bytes; one that is damaged is written anew.
fn same(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> io::Result<bool> {
    match disk.read(path, bytes.len() as u64) {
        Ok(there) => Ok(there == bytes),
        Err(why) if matches!(why.kind(), ErrorKind::NotFound | ErrorKind::FileTooLarge) => {
            Ok(false)
        }
        Err(why) => Err(why),
    }
}

/// Goes through every picture of a job; gives those that are not what they were named by.
///
/// # Errors
/// Where the folder cannot be looked into.
pub fn check_pictures(disk: &dyn Disk, folder: &Path) -> io::Result<Vec<PictureFault>> {
    let pictures = folder.join(PICTURES);
    if !disk.exists(&pictures)? {
        return Ok(Vec::new());
    }
    let mut faults = Vec::new();
    for entry in disk.list(&pictures)? {
        let name = entry.name;
        if !is_name(&name) {
            continue;
        }
        match disk.read(&pictures.join(&name), LARGEST) {
            Ok(bytes) if name.starts_with(&hash(&bytes)) => {}
            Ok(_) => faults.push(PictureFault::Damaged { name }),
            Err(why) => faults.push(PictureFault::Unreadable {
                name,
                why: why.to_string(),
            }),
        }
    }
    Ok(faults)
}
