//! Pictures of a job, each in a file named by what is in it: the same one is kept once, and damage shows.

use std::fmt::Write;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::disk::Disk;
use super::folder::BESIDE;
use super::keep::SaveError;

pub(super) const PICTURES: &str = "pictures";
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
}

pub(super) fn hash(bytes: &[u8]) -> String {
    let mut name = String::with_capacity(HASH);
    for byte in Sha256::digest(bytes) {
        let _ = write!(name, "{byte:02x}");
    }
    name
}

/// The name that bytes are kept under.
pub(super) fn name_for(bytes: &[u8], extension: &str) -> String {
    let mut name = hash(bytes);
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

fn is_name(name: &str) -> bool {
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
