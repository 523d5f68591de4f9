//! A job as a folder: `job` is the document, `versions` the ones before it, `pictures` what it shows, `lock` who writes.
//!
//! A save writes the new document beside the old one, syncs it, gives the old one a second name among the versions,
//! renames the new one over it and syncs the folder. A stop at any step leaves the old or the new one under the name,
//! and once the save has returned the new one stays.

use std::collections::HashSet;
use std::io;
use std::path::{Path, PathBuf};

use chrono::{DateTime, FixedOffset, NaiveDateTime, Utc};

use super::disk::{Disk, Entry};
use super::keep::SaveError;

/// The document in a job folder.
const JOB: &str = "job";
const VERSIONS: &str = "versions";
/// How the name of a file begins that is not yet what it will be.
pub(super) const BESIDE: &str = ".save-";
const STAMP: &str = "%Y%m%dT%H%M%SZ";
/// The versions kept however old: the newest ones.
const NEWEST: usize = 20;
/// The days of which the newest version is kept.
const DAYS: i64 = 10;
/// The largest document that is read.
const LARGEST: u64 = 512 << 20;

/// An older document of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Version {
    /// When it was saved, as far as that is known: else when it was replaced.
    pub when: DateTime<Utc>,
    /// How long it is.
    pub bytes: u64,
    /// Where it is.
    pub path: PathBuf,
    order: u64,
}

/// What a save did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// Where the document before it now is; none for the first.
    pub before: Option<PathBuf>,
    /// How many versions were taken away.
    pub thinned: usize,
}

/// A job folder open for writing. It is looked through once; after that only its owner changes it.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    /// Oldest first.
    versions: Vec<Version>,
    /// Whether there is a document, how long it is and when it was saved.
    current: Option<(u64, Option<DateTime<Utc>>)>,
    /// Whether it is certain to outlast a power cut; where it is not, the one before it is a version already.
    certain: bool,
    versions_there: bool,
    next_beside: u64,
    next_version: u64,
}

/// Where the document of a job folder is.
#[must_use]
pub fn document_path(folder: &Path) -> PathBuf {
    folder.join(JOB)
}

/// The bytes of a job's document; never writes.
///
/// # Errors
/// Where it is not there, is too large, or cannot be read.
pub fn load(disk: &dyn Disk, folder: &Path) -> io::Result<Vec<u8>> {
    disk.read(&document_path(folder), LARGEST)
}

/// The bytes of an older document.
///
/// # Errors
/// Where it is not there, is too large, or cannot be read.
pub fn load_version(disk: &dyn Disk, version: &Version) -> io::Result<Vec<u8>> {
    disk.read(&version.path, LARGEST)
}

/// The older documents of a job, newest first; never writes.
///
/// # Errors
/// Where the folder cannot be looked into.
pub fn versions(disk: &dyn Disk, folder: &Path) -> io::Result<Vec<Version>> {
    let mut found = oldest_first(disk, folder)?;
    found.reverse();
    Ok(found)
}

/// How much disk these versions take.
#[must_use]
pub fn size_of(versions: &[Version]) -> u64 {
    versions
        .iter()
        .fold(0, |sum, version| sum.saturating_add(version.bytes))
}

fn oldest_first(disk: &dyn Disk, folder: &Path) -> io::Result<Vec<Version>> {
    let folder = folder.join(VERSIONS);
    if !disk.exists(&folder)? {
        return Ok(Vec::new());
    }
    let entries = disk.list(&folder)?;
    let mut found: Vec<Version> = entries
        .into_iter()
        .filter_map(|entry| version_of(&folder, entry))
        .collect();
    found.sort_by_key(|version| (version.order, version.when));
    Ok(found)
}

/// What the name of a version says; none for any other file.
fn version_of(folder: &Path, entry: Entry) -> Option<Version> {
    let (stamp, order) = entry.name.strip_suffix(".job")?.split_once('-')?;
    Some(Version {
        when: NaiveDateTime::parse_from_str(stamp, STAMP).ok()?.and_utc(),
        bytes: entry.bytes,
        order: order.parse().ok()?,
        path: folder.join(entry.name),
    })
}

/// Takes away what a save that was stopped has left; gives how many files. For a job that is opened for writing.
///
/// # Errors
/// Where the folder cannot be looked into or the disk refuses.
pub fn sweep(disk: &dyn Disk, folder: &Path) -> io::Result<usize> {
    let mut swept = 0;
    for folder in [folder.to_owned(), folder.join(super::pictures::PICTURES)] {
        let pictures = folder.ends_with(super::pictures::PICTURES);
        if !disk.exists(&folder)? || (pictures && disk.is_link(&folder)?) {
            continue;
        }
        for entry in disk.list(&folder)? {
            if entry.name.starts_with(BESIDE) {
                disk.remove(&folder.join(entry.name))?;
                swept += 1;
            }
        }
    }
    Ok(swept)
}

impl Folder {
    /// Makes a new job folder, certain to outlast a power cut, and opens it for writing.
    ///
    /// # Errors
    /// Where there is something of this name already, or the disk refuses.
    pub fn create(disk: &dyn Disk, path: &Path) -> Result<Folder, SaveError> {
        if disk.exists(path)? {
            return Err(io::Error::from(io::ErrorKind::AlreadyExists).into());
        }
        disk.make_folder(&path.join(VERSIONS))?;
        disk.sync_folder(path)?;
        if let Some(above) = path.parent() {
            let here = above.as_os_str().is_empty();
            disk.sync_folder(if here { Path::new(".") } else { above })?;
        }
        Folder::open(disk, path)
    }

    /// Opens a job folder for writing: sweeps it and looks through it, once.
    ///
    /// # Errors
    /// Where it is not there or cannot be looked into.
    pub fn open(disk: &dyn Disk, path: &Path) -> Result<Folder, SaveError> {
        // What cannot be swept now is left for the next time; names beside it are still free.
        let _ = sweep(disk, path);
        let entries = disk.list(path)?;
        let current = entries.iter().find(|entry| entry.name == JOB);
        let versions = oldest_first(disk, path)?;
        let beside = entries
            .iter()
            .filter_map(|entry| entry.name.strip_prefix(BESIDE)?.parse::<u64>().ok());
        Ok(Folder {
            path: path.to_owned(),
            current: current.map(|entry| (entry.bytes, entry.modified.map(DateTime::from))),
            certain: true,
            versions_there: disk.exists(&path.join(VERSIONS))?,
            next_beside: beside.max().map_or(0, |n| n.saturating_add(1)),
            next_version: versions
                .last()
                .map_or(0, |version| version.order.saturating_add(1)),
            versions,
        })
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Replaces the document, and keeps the one before it as a version.
    ///
    /// # Errors
    /// [`SaveError`]. The document is then the one before, or, where only the last sync failed, the new one, which may
    /// not outlast a power cut; no other. A later save may succeed.
    pub fn save(
        &mut self,
        disk: &dyn Disk,
        bytes: &[u8],
        now: DateTime<FixedOffset>,
    ) -> Result<Saved, SaveError> {
        if bytes.len() as u64 > LARGEST {
            return Err(SaveError::TooLarge);
        }
        let beside = self.path.join(format!("{BESIDE}{}", self.next_beside));
        self.next_beside = self.next_beside.saturating_add(1);
        let replaced = disk
            .write_new_synced(&beside, bytes)
            .and_then(|()| self.replace(disk, &beside, now));
        let before = match replaced {
            Ok(before) => before,
            Err(why) => {
                // It may be what fills the disk.
                let _ = disk.remove(&beside);
                return Err(why.into());
            }
        };
        self.current = Some((bytes.len() as u64, Some(now.to_utc())));
        self.certain = false;
        disk.sync_folder(&self.path)?;
        self.certain = true;
        Ok(Saved {
            before,
            thinned: self.thin(disk, now),
        })
    }

    /// Keeps the document as a version and renames the new one over it; where that fails the version goes again.
    fn replace(
        &mut self,
        disk: &dyn Disk,
        beside: &Path,
        now: DateTime<FixedOffset>,
    ) -> io::Result<Option<PathBuf>> {
        let before = self.keep_current(disk, now)?;
        if let Err(why) = disk.rename(beside, &document_path(&self.path)) {
            if let Some(path) = &before {
                let _ = disk.remove(path);
                self.versions.pop();
            }
            return Err(why);
        }
        Ok(before)
    }

    /// Gives the document a second name among the versions. It needs no sync: the document itself stands until the
    /// new one is safe.
    fn keep_current(
        &mut self,
        disk: &dyn Disk,
        now: DateTime<FixedOffset>,
    ) -> io::Result<Option<PathBuf>> {
        let (Some((bytes, saved)), true) = (self.current, self.certain) else {
            return Ok(None);
        };
        let folder = self.path.join(VERSIONS);
        if !self.versions_there {
            disk.make_folder(&folder)?;
            self.versions_there = true;
        }
        let when = saved.unwrap_or_else(|| now.to_utc());
        let order = self.next_version;
        self.next_version = order.saturating_add(1);
        let path = folder.join(format!("{}-{order:06}.job", when.format(STAMP)));
        if let Err(why) = disk.link(&document_path(&self.path), &path) {
            if why.kind() != io::ErrorKind::AlreadyExists {
                // Half a copy, where the disk knows no links.
                let _ = disk.remove(&path);
            }
            return Err(why);
        }
        self.versions.push(Version {
            when,
            bytes,
            path: path.clone(),
            order,
        });
        Ok(Some(path))
    }

    /// Takes away the versions that are neither among the newest nor the newest of one of the last days. What cannot be
    /// taken away is tried again at the next save.
    fn thin(&mut self, disk: &dyn Disk, now: DateTime<FixedOffset>) -> usize {
        let zone = *now.offset();
        let mut days = HashSet::new();
        let mut surplus = HashSet::new();
        for (age, version) in self.versions.iter().rev().enumerate() {
            let day = version.when.with_timezone(&zone).date_naive();
            let recent = (now.date_naive() - day).num_days() < DAYS;
            if !(days.insert(day) && recent) && age >= NEWEST {
                surplus.insert(version.order);
            }
        }
        let before = self.versions.len();
        self.versions.retain(|version| {
            !surplus.contains(&version.order)
                || match disk.remove(&version.path) {
                    Ok(()) => false,
                    Err(why) => why.kind() != io::ErrorKind::NotFound,
                }
        });
        before - self.versions.len()
    }
}
