//! A job on disk: opened to read or to write, checked, recovered.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use chrono::{DateTime, FixedOffset, Local};

use super::container::OpenError;
use super::disk::{Disk, RealDisk};
use super::document::{self, Part};
use super::folder::{self, Folder, Version};
use super::job_record::kind;
use super::keep::SaveError;
use super::lock::{Held, Lock};
use super::pictures::{self, PictureFault};
use super::scribe::{Scribe, Snapshot, assemble, read_document};
use crate::takeoff::Job;

/// How the name of a job's folder ends.
pub const FOLDER_ENDS: &str = "site";
/// How the name of a job of format 1, a single file, ends.
const FILE_ENDS: &str = "rod";

/// The document of a job: of its folder, or the single file that it was in format 1.
fn bytes_of(path: &Path) -> Result<Vec<u8>, OpenError> {
    let disk = |why: io::Error| match why.kind() {
        io::ErrorKind::FileTooLarge => OpenError::Damaged,
        _ => OpenError::Disk(why.to_string()),
    };
    if path.is_dir() {
        folder::load(&RealDisk, path).map_err(disk)
    } else {
        RealDisk.read(path, 256 << 20).map_err(disk)
    }
}

/// Opens a job to read it; never writes.
///
/// # Errors
/// [`OpenError`]; what is there stays as it is.
pub fn open_job(path: &Path) -> Result<Snapshot, OpenError> {
    read_document(&bytes_of(path)?)
}

/// Opens a job to write it, where no other program does; else to read it, and says why.
///
/// Nothing of the job is written before the first save; only its lock is made.
///
/// # Errors
/// [`OpenError`]; what is there stays as it is.
pub fn open_to_write(path: &Path) -> Result<(Snapshot, Result<Writer, Held>), OpenError> {
    if !path.is_dir() {
        let snapshot = open_job(path)?;
        return Ok((snapshot, Ok(Writer::new_at(&beside(path)))));
    }
    // The lock first: what is read then is what stands when writing begins.
    let lock = Lock::take(path);
    let snapshot = open_job(path)?;
    let writer = lock.and_then(|lock| {
        let folder = Folder::open(&RealDisk, path).map_err(|why| Held::Disk(why.to_string()))?;
        Ok(Writer {
            path: path.to_owned(),
            open: Some((folder, lock)),
            scribe: Scribe::default(),
        })
    });
    Ok((snapshot, writer))
}

/// The folder that a job of format 1 becomes with its first edit.
fn beside(file: &Path) -> PathBuf {
    let first = file.with_extension(FOLDER_ENDS);
    let stem = file
        .file_stem()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned();
    (2..10_000)
        .map(|n| file.with_file_name(format!("{stem}-{n}.{FOLDER_ENDS}")))
        .fold(None, |found: Option<PathBuf>, next| {
            found.or_else(|| (!next.exists()).then_some(next))
        })
        .filter(|_| first.exists())
        .unwrap_or(first)
}

/// A job that this program alone writes.
pub struct Writer {
    path: PathBuf,
    /// Made with the first save.
    open: Option<(Folder, Lock)>,
    scribe: Scribe,
}

impl Writer {
    /// A job that is not there yet.
    #[must_use]
    pub fn new_at(path: &Path) -> Writer {
        Writer {
            path: path.to_owned(),
            open: None,
            scribe: Scribe::default(),
        }
    }

    /// Where the job is, or will be.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Saves a snapshot; once this returns it outlasts a power cut.
    ///
    /// # Errors
    /// [`SaveError`]; the last one that was saved stands.
    pub fn keep(
        &mut self,
        snapshot: &Snapshot,
        now: DateTime<FixedOffset>,
    ) -> Result<(), SaveError> {
        let bytes = self.scribe.document(snapshot)?;
        self.make()?;
        if let Some((folder, _)) = &mut self.open {
            folder.save(&RealDisk, &bytes, now)?;
        }
        Ok(())
    }

    /// Makes the folder of a job that is not there yet, and takes it.
    fn make(&mut self) -> Result<(), SaveError> {
        if self.open.is_none() {
            let folder = Folder::create(&RealDisk, &self.path)?;
            let lock = Lock::take(&self.path).map_err(|why| SaveError::Disk(why.to_string()))?;
            self.open = Some((folder, lock));
        }
        Ok(())
    }
}

/// Saves a job at a path, in place of what is there, where that is a job that opens.
///
/// # Errors
/// [`SaveError`]; what was there stays.
pub fn save_job(path: &Path, job: &Job) -> Result<(), SaveError> {
    let snapshot = Snapshot::of(job.clone());
    let mut writer = if path.is_dir() {
        let (_, writer) = open_to_write(path).map_err(SaveError::WouldOverwrite)?;
        writer.map_err(|why| SaveError::Disk(why.to_string()))?
    } else {
        Writer::new_at(path)
    };
    writer.keep(&snapshot, Local::now().fixed_offset())
}

/// Saves a new job under a name of its own in a folder; gives where.
///
/// # Errors
/// [`SaveError`] where the folder cannot be written.
pub fn create_job(within: &Path, job: &Job) -> Result<PathBuf, SaveError> {
    create(within, &Snapshot::of(job.clone()))
}

/// Saves a snapshot as a new job under a name of its own in a folder; gives where.
///
/// # Errors
/// [`SaveError`] where the folder cannot be written.
pub fn create(within: &Path, snapshot: &Snapshot) -> Result<PathBuf, SaveError> {
    fs::create_dir_all(within)?;
    let path = free_name(within, &snapshot.job.name)?;
    Writer::new_at(&path).keep(snapshot, Local::now().fixed_offset())?;
    Ok(path)
}

/// Saves a snapshot as a new job, what stands beside it first; where that fails nothing of the job stays.
pub(super) fn create_with(
    within: &Path,
    snapshot: &Snapshot,
    beside: impl FnOnce(&Path) -> Result<(), SaveError>,
) -> Result<PathBuf, SaveError> {
    fs::create_dir_all(within)?;
    let path = free_name(within, &snapshot.job.name)?;
    let mut writer = Writer::new_at(&path);
    let made = (writer.make())
        .and_then(|()| beside(&path))
        .and_then(|()| writer.keep(snapshot, Local::now().fixed_offset()));
    let ours = writer.open.is_some();
    drop(writer);
    match made {
        Ok(()) => Ok(path),
        Err(why) => {
            if ours {
                let _ = fs::remove_dir_all(&path);
            }
            Err(why)
        }
    }
}

/// A path for a job of this name that nothing stands at.
fn free_name(within: &Path, name: &str) -> Result<PathBuf, SaveError> {
    let stem = file_stem(name);
    for n in 1..10_000 {
        let name = if n == 1 {
            format!("{stem}.{FOLDER_ENDS}")
        } else {
            format!("{stem}-{n}.{FOLDER_ENDS}")
        };
        let path = within.join(name);
        if !path.try_exists()? {
            return Ok(path);
        }
    }
    Err(SaveError::Disk("too many jobs of this name".to_owned()))
}

/// A job's name as a file's: small letters, digits and dashes, so that it stays in its folder.
pub(super) fn file_stem(name: &str) -> String {
    let mut stem = String::new();
    for c in name.to_lowercase().chars().take(60) {
        if c.is_ascii_alphanumeric() {
            stem.push(c);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = stem.trim_end_matches('-');
    if stem.is_empty() {
        "job".to_owned()
    } else {
        stem.to_owned()
    }
}

/// The jobs of a folder, the last changed first; a file of format 1 only until it has become a folder.
#[must_use]
pub fn jobs_in(within: &Path) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(within) else {
        return Vec::new();
    };
    let ends = |path: &Path, end: &str| path.extension().is_some_and(|e| e == end);
    let changed = |path: &Path| fs::metadata(path).and_then(|about| about.modified()).ok();
    let mut jobs: Vec<_> = entries
        .flatten()
        .map(|entry| entry.path())
        .filter_map(|path| {
            let document = folder::document_path(&path);
            if ends(&path, FOLDER_ENDS) && document.is_file() {
                Some((changed(&document), path))
            } else if ends(&path, FILE_ENDS)
                && path.is_file()
                && !path.with_extension(FOLDER_ENDS).exists()
            {
                Some((changed(&path), path))
            } else {
                None
            }
        })
        .collect();
    jobs.sort_by(|a, b| b.cmp(a));
    jobs.into_iter().map(|(_, path)| path).collect()
}

/// The earlier versions of a job, newest first.
#[must_use]
pub fn versions_of(path: &Path) -> Vec<Version> {
    folder::versions(&RealDisk, path).unwrap_or_default()
}

/// A job as it was in an earlier version.
///
/// # Errors
/// [`OpenError`]; nothing is written.
pub fn open_version(version: &Version) -> Result<Snapshot, OpenError> {
    let bytes =
        folder::load_version(&RealDisk, version).map_err(|why| OpenError::Disk(why.to_string()))?;
    read_document(&bytes)
}

/// What is whole in a job and what is not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    /// Why the job does not open; `None` where it does.
    pub fault: Option<OpenError>,
    /// Parts that are whole.
    pub whole: usize,
    /// What is damaged, in words.
    pub lost: Vec<String>,
    /// Pictures that are whole.
    pub pictures: usize,
    /// Pictures that are not.
    pub picture_faults: Vec<PictureFault>,
    /// Earlier versions that open, of so many.
    pub versions: (usize, usize),
}

/// Looks at every part, picture and version of a job; never writes.
///
/// # Errors
/// [`OpenError`] where there is nothing to look at.
pub fn check_job(path: &Path) -> Result<Check, OpenError> {
    let bytes = bytes_of(path)?;
    let fault = read_document(&bytes).err();
    let (whole, lost) = if document::format_of(&bytes) == Some(1) {
        (usize::from(fault.is_none()), Vec::new())
    } else {
        let found = document::salvage(&bytes);
        let unread = assemble(&found.parts).unread;
        let mut lost: Vec<String> = found.lost.iter().map(|l| part_name(l.kind)).collect();
        lost.extend(unread.iter().map(|(kind, _)| part_name(Some(*kind))));
        (found.parts.len() - unread.len(), lost)
    };
    let versions = versions_of(path);
    let open = versions.iter().filter(|v| open_version(v).is_ok()).count();
    let picture_faults = pictures::check_pictures(&RealDisk, path).unwrap_or_default();
    Ok(Check {
        fault,
        whole,
        lost,
        pictures: picture_names(path).len() - picture_faults.len(),
        picture_faults,
        versions: (open, versions.len()),
    })
}

/// What a part is, in words.
fn part_name(what: Option<u16>) -> String {
    match what {
        Some(kind::HEAD) => "the job's name and units",
        Some(kind::ROOM) => "a room",
        Some(kind::FIGURE) => "a figure",
        Some(kind::ROLL) => "a length of the roll",
        Some(kind::BUYING) => "the buying list's ticks, prices and own lines",
        Some(kind::TAPE) => "the tape's bench",
        Some(kind::UNDO | kind::REDO) => "a step of undo",
        Some(kind::STAMPS) => "who changed what",
        Some(kind::LEFT) => "what rooms left over for the others",
        Some(kind::CUTTING) => "sticks, saws and off-cuts of the cutting plan",
        Some(kind::BATCH) => "the batch in the bucket",
        Some(kind::PICTURE | kind::PHOTO) => "a picture",
        Some(kind::STEP) => "a step of the work",
        Some(kind::SIDES) => "the sides of what a picture is measured by",
        Some(kind::LAID) => "that a picture lies in its wall's elevation",
        Some(kind::FIXED) => "what is fixed in a room",
        Some(kind::TRACED) => "where a figure's outline was traced",
        Some(kind::SURVEY) => "the survey of a room",
        Some(kind::LIES) => "where a run lies",
        Some(kind::JOISTS) => "the joists under a floor",
        _ => "a part that cannot be told",
    }
    .to_owned()
}

pub(super) fn picture_names(path: &Path) -> Vec<String> {
    let entries = RealDisk.list(&path.join(pictures::PICTURES));
    let names = entries
        .unwrap_or_default()
        .into_iter()
        .map(|entry| entry.name);
    names
        .filter(|name| pictures::picture_path(path, name).is_some())
        .collect()
}

/// What was saved of a damaged job.
#[derive(Clone, Debug, PartialEq)]
pub struct Recovered {
    /// The job as it could be put together.
    pub snapshot: Snapshot,
    /// Parts that were whole where they should be.
    pub whole: usize,
    /// Parts taken from an earlier version.
    pub earlier: usize,
    /// What is nowhere whole, in words.
    pub lost: Vec<String>,
    /// Whole pictures.
    pub pictures: usize,
}

/// Puts a damaged job together from its whole parts and, for what is not whole, from earlier versions; never writes.
///
/// # Errors
/// [`OpenError`] where nothing of a job is there at all.
pub fn salvage_job(path: &Path) -> Result<Recovered, OpenError> {
    let bytes = bytes_of(path);
    if let Ok(snapshot) = bytes
        .as_deref()
        .map_err(Clone::clone)
        .and_then(read_document)
    {
        return Ok(Recovered {
            whole: 1,
            earlier: 0,
            lost: Vec::new(),
            pictures: picture_names(path).len(),
            snapshot,
        });
    }
    let newest = bytes.as_deref().map(document::salvage).ok();
    let (mut parts, lost) = newest.map_or_else(Default::default, |found| {
        let unread = assemble(&found.parts).unread;
        let mut parts = found.parts;
        parts.retain(|part| !unread.contains(&(part.kind, part.id)));
        let mut lost = found.lost;
        lost.extend(unread.into_iter().map(|(kind, id)| document::Lost {
            kind: Some(kind),
            id: Some(id),
        }));
        (parts, lost)
    });
    let whole = parts.len();
    let mut earlier = Vec::new();
    for version in versions_of(path) {
        if let Ok(bytes) = folder::load_version(&RealDisk, &version) {
            earlier.push(document::salvage(&bytes).parts);
        }
    }
    let taken = fill_from(&mut parts, &lost, whole == 0, &earlier);
    // Rooms before the figures that stand in them, wherever a part was found.
    parts.sort_by_key(|part| part.kind);
    let read = assemble(&parts);
    if parts.is_empty() {
        return Err(bytes.err().unwrap_or(OpenError::Damaged));
    }
    let missing = lost.len().saturating_sub(taken);
    let mut words: Vec<String> = (lost.iter())
        .filter(|l| {
            !parts
                .iter()
                .any(|p| Some(p.kind) == l.kind && Some(p.id) == l.id)
        })
        .map(|l| part_name(l.kind))
        .collect();
    words.truncate(missing);
    if !read.headed {
        words.push(part_name(Some(kind::HEAD)));
    }
    Ok(Recovered {
        snapshot: read.snapshot,
        whole,
        earlier: taken,
        lost: words,
        pictures: picture_names(path).len(),
    })
}

/// Adds from earlier versions, newest first, what was lost; everything, where nothing is whole. Gives how many.
fn fill_from(
    parts: &mut Vec<Part>,
    lost: &[document::Lost],
    all: bool,
    earlier: &[Vec<Part>],
) -> usize {
    let mut taken = 0;
    let has = |parts: &[Part], kind, id| parts.iter().any(|p| (p.kind, p.id) == (kind, id));
    if all {
        if let Some(version) = earlier.iter().find(|parts| !parts.is_empty()) {
            parts.extend(version.iter().cloned());
            taken = version.len();
        }
        return taken;
    }
    // Some of what is lost cannot be told: then whatever an entry of the last version held and now is nowhere.
    let untold = lost.iter().any(|l| l.kind.is_none());
    for (age, version) in earlier.iter().enumerate() {
        for part in version {
            let named = lost
                .iter()
                .any(|l| l.kind == Some(part.kind) && l.id == Some(part.id));
            let step = matches!(part.kind, kind::UNDO | kind::REDO);
            let wanted = named || (untold && age == 0 && !step);
            if wanted && !has(parts, part.kind, part.id) {
                parts.push(part.clone());
                taken += 1;
            }
        }
    }
    taken
}

/// Saves every whole part and picture of a damaged job as a new job.
///
/// # Errors
/// In words, where nothing is there or the new place cannot be written.
pub fn recover_job(path: &Path, out: &Path) -> Result<Recovered, String> {
    if out.exists() {
        return Err(format!("{} is there already", out.display()));
    }
    let mut recovered = salvage_job(path).map_err(|why| why.to_string())?;
    let mut writer = Writer::new_at(out);
    writer
        .keep(&recovered.snapshot, Local::now().fixed_offset())
        .map_err(|why| why.to_string())?;
    recovered.pictures = copy_pictures(path, out).map_err(|why| why.to_string())?;
    Ok(recovered)
}

/// Copies every whole picture of a job into another; gives how many.
///
/// # Errors
/// [`SaveError`] where the other cannot be written.
pub fn copy_pictures(from: &Path, to: &Path) -> Result<usize, SaveError> {
    let mut copied = 0;
    for name in picture_names(from) {
        let Some(path) = pictures::picture_path(from, &name) else {
            continue;
        };
        let Ok(bytes) = RealDisk.read(&path, 256 << 20) else {
            continue;
        };
        let extension = name.split_once('.').map_or("", |(_, extension)| extension);
        if pictures::name_for(&bytes, extension) == name {
            pictures::put_picture(&RealDisk, to, &bytes, extension)?;
            copied += 1;
        }
    }
    Ok(copied)
}
