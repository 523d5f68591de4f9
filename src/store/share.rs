//! A job as one file, with its pictures, to be handed to another device; and what comes from one.
//!
//! A document of kind 4: the parts of a job without the steps of undo and redo, then each picture as a part of kind 10,
//! its id the first eight bytes of its hash, its body its name and its bytes. Nothing in it says where a file goes: a
//! picture is named by what is in it, and any other name is damage.

use std::collections::HashSet;
use std::fmt;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use serde::{Deserialize, Serialize, Serializer};

use super::container::{Kind, OpenError};
use super::disk::{Disk, RealDisk};
use super::document::{self, Part};
use super::job_file::{create_with, open_job, picture_names};
use super::job_record::{LINES, kind, write_entries, write_lines};
use super::keep::SaveError;
use super::pictures::{self, PictureFault};
use super::record::write;
use super::scribe::{Snapshot, assemble, write_stamps};
use crate::photo::{Problem, strip};
use crate::site::Id;
use crate::takeoff::{Merge, entries, merge};

/// How the name of a shared file ends.
pub const SHARE_ENDS: &str = "rodshare";
/// The largest picture that is shared, less a little for its name: a part holds no more.
const LARGEST_PICTURE: u64 = (64 << 20) - 256;
/// The largest shared file that is read.
const LARGEST: u64 = 512 << 20;

/// What a shared file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// The job and who changed what; no steps.
    pub snapshot: Snapshot,
    /// Its pictures by name, each name that of its bytes.
    pub pictures: Vec<(String, Vec<u8>)>,
}

/// A job as the bytes of a shared file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shared {
    /// The file.
    pub bytes: Vec<u8>,
    /// Pictures that are damaged or cannot be read, and are not in it.
    pub left_out: Vec<PictureFault>,
}

/// Why a job cannot be shared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShareError {
    /// The job does not open.
    Open(OpenError),
    /// A picture is larger than 64 MB.
    PictureTooLarge {
        /// Its name.
        name: String,
    },
    /// The job and its pictures come to more than 256 MB.
    TooLarge,
    /// Two entries of the job bear one name, and the file would not open again.
    WouldNotOpen,
}

/// The shared file is of another job than the one that it was to be brought together with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OtherJob;

impl fmt::Display for ShareError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ShareError::Open(why) => why.fmt(f),
            ShareError::PictureTooLarge { name } => {
                write!(f, "picture {name} is larger than the 64 MB that are shared")
            }
            ShareError::TooLarge => write!(
                f,
                "the job and its pictures come to more than the 256 MB that are shared"
            ),
            ShareError::WouldNotOpen => write!(
                f,
                "two entries of the job bear one name, and the file would not open again"
            ),
        }
    }
}

impl fmt::Display for OtherJob {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the file holds another job; open it as a new one")
    }
}

/// Bytes written at once, not one by one.
struct Raw<'a>(&'a [u8]);

impl Serialize for Raw<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_bytes(self.0)
    }
}

#[derive(Deserialize)]
struct PictureRecord<'a> {
    name: String,
    bytes: &'a [u8],
}

/// The id of a picture's part: the first eight bytes of its hash.
fn picture_id(hash: &str) -> Option<u64> {
    u64::from_str_radix(hash.get(..16)?, 16).ok()
}

/// A job with its pictures as one file. Undo and redo stay at home.
///
/// # Errors
/// [`ShareError`]; a part holds at most 64 MB, and all together 256 MB.
pub fn write_share(job: &Path) -> Result<Shared, ShareError> {
    let snapshot = open_job(job).map_err(ShareError::Open)?;
    if !each_once(&snapshot) {
        return Err(ShareError::WouldNotOpen);
    }
    let mut parts = job_parts(&snapshot);
    let mut left_out = Vec::new();
    let mut names = picture_names(job);
    names.sort_unstable();
    let purpose: HashSet<&str> = (snapshot.job.photos.iter())
        .filter(|photo| photo.place_shared)
        .map(|photo| &*photo.picture)
        .collect();
    let mut room = 256 << 20;
    let mut shared = HashSet::new();
    for name in names {
        let kept = purpose.contains(&*name);
        let read = read_picture(job, &name)?;
        match read.and_then(|bytes| {
            if kept {
                Ok((name, bytes))
            } else {
                placeless(name, bytes)
            }
        }) {
            Ok((name, bytes)) => {
                if !shared.insert(name.clone()) {
                    continue;
                }
                room -= bytes.len() as i64;
                if room < 0 {
                    return Err(ShareError::TooLarge);
                }
                parts.extend(picture_part(&name, &bytes));
            }
            Err(fault) => left_out.push(fault),
        }
    }
    let bytes = document::write(Kind::Share, &parts).map_err(|_| ShareError::TooLarge)?;
    Ok(Shared { bytes, left_out })
}

/// A picture without the place that its camera wrote beside it, and the name that it has then. What is no picture that is
/// read here says nothing of a place that could be taken out, and is shared as it is.
fn placeless(name: String, bytes: Vec<u8>) -> Result<(String, Vec<u8>), PictureFault> {
    let mut file = Cursor::new(&bytes);
    let plan = match strip(&mut file) {
        Ok(plan) => plan,
        Err(Problem::NotAPicture | Problem::Empty) => return Ok((name, bytes)),
        Err(_) => return Err(PictureFault::Placed { name }),
    };
    let mut without = Vec::with_capacity(bytes.len());
    if plan.write(&mut file, &mut without).is_err() {
        return Err(PictureFault::Placed { name });
    }
    Ok((pictures::name_for(&without, extension(&name)), without))
}

fn job_parts(snapshot: &Snapshot) -> Vec<Part> {
    let mut parts = write_entries(&snapshot.job);
    let rolls = snapshot.job.roll.chunks(LINES).enumerate();
    parts.extend(rolls.map(|(at, lines)| write_lines(at, lines)));
    parts.push(Part {
        kind: kind::STAMPS,
        id: 0,
        body: write_stamps(&snapshot.stamps),
    });
    parts
}

fn picture_part(name: &str, bytes: &[u8]) -> Option<Part> {
    Some(Part {
        kind: kind::PICTURE,
        id: picture_id(name)?,
        body: write(&(name, Raw(bytes))),
    })
}

/// A picture of a job, where it is what it was named by.
fn read_picture(job: &Path, name: &str) -> Result<Result<Vec<u8>, PictureFault>, ShareError> {
    let damaged = || PictureFault::Damaged {
        name: name.to_owned(),
    };
    let Some(path) = pictures::picture_path(job, name) else {
        return Ok(Err(damaged()));
    };
    match RealDisk.read(&path, LARGEST_PICTURE) {
        Ok(bytes) if is_named(name, &bytes) => Ok(Ok(bytes)),
        Ok(_) => Ok(Err(damaged())),
        Err(why) if why.kind() == std::io::ErrorKind::FileTooLarge => {
            Err(ShareError::PictureTooLarge {
                name: name.to_owned(),
            })
        }
        Err(why) => Ok(Err(PictureFault::Unreadable {
            name: name.to_owned(),
            why: why.to_string(),
        })),
    }
}

/// Whether a picture bears the name of its bytes.
fn is_named(name: &str, bytes: &[u8]) -> bool {
    pictures::name_for(bytes, extension(name)) == name
}

fn extension(name: &str) -> &str {
    name.split_once('.').map_or("", |(_, extension)| extension)
}

/// What a shared file holds.
///
/// Parts of kinds not known are passed over, and steps of undo, which a shared file has none of.
///
/// # Errors
/// [`OpenError`]; [`OpenError::Damaged`] also where a picture is not what it is named by, where any part does not read,
/// and where two entries have one name.
pub fn read_share(bytes: &[u8]) -> Result<Share, OpenError> {
    let mut parts = document::read(Kind::Share, bytes)?;
    parts.retain(|part| !matches!(part.kind, kind::UNDO | kind::REDO));
    let pictures = parts.extract_if(.., |part| part.kind == kind::PICTURE);
    let pictures: Option<Vec<_>> = pictures.map(|part| picture_of(&part)).collect();
    let pictures = pictures.ok_or(OpenError::Damaged)?;
    let mut names = HashSet::new();
    let read = assemble(&parts);
    let whole = read.headed
        && read.unread.is_empty()
        && pictures.iter().all(|(name, _)| names.insert(name))
        && each_once(&read.snapshot);
    if whole {
        Ok(Share {
            snapshot: read.snapshot,
            pictures,
        })
    } else {
        Err(OpenError::Damaged)
    }
}

/// Whether no two entries of a job have one name.
fn each_once(snapshot: &Snapshot) -> bool {
    let mut known = HashSet::new();
    let mut lines = HashSet::new();
    (entries(&snapshot.job).into_iter()).all(|(kind, id)| known.insert((kind as u8, id)))
        && snapshot.job.roll.iter().all(|line| lines.insert(line.id))
}

/// A picture that is what it is named by.
fn picture_of(part: &Part) -> Option<(String, Vec<u8>)> {
    let (record, rest) = postcard::take_from_bytes::<PictureRecord<'_>>(&part.body).ok()?;
    let sound = rest.is_empty()
        && pictures::picture_path(Path::new(""), &record.name).is_some()
        && is_named(&record.name, record.bytes)
        && picture_id(&record.name) == Some(part.id);
    sound.then(|| (record.name, record.bytes.to_vec()))
}

/// Opens a shared file; never writes.
///
/// # Errors
/// [`OpenError`]; see [`read_share`].
pub fn open_share(path: &Path) -> Result<Share, OpenError> {
    let bytes = RealDisk
        .read(path, LARGEST)
        .map_err(|why| match why.kind() {
            std::io::ErrorKind::FileTooLarge => OpenError::Damaged,
            _ => OpenError::Disk(why.to_string()),
        })?;
    read_share(&bytes)
}

/// Why a shared file did not become a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// It does not open.
    Open(OpenError),
    /// The new job cannot be saved; nothing of it stays.
    Save(SaveError),
}

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ImportError::Open(why) => why.fmt(f),
            ImportError::Save(why) => why.fmt(f),
        }
    }
}

/// Saves a shared file as a new job under a name of its own in a folder, its pictures first; gives where.
///
/// The job keeps its id, so that a later file of it can be brought together with it.
///
/// # Errors
/// [`ImportError`]; nothing of the job stays.
pub fn import_new(bytes: &[u8], within: &Path) -> Result<PathBuf, ImportError> {
    let share = read_share(bytes).map_err(ImportError::Open)?;
    create_with(within, &share.snapshot, |folder| {
        keep_pictures(&share, folder).map(|_| ())
    })
    .map_err(ImportError::Save)
}

/// Keeps the pictures of a shared file beside a job, before the job shows them; gives how many there are.
///
/// # Errors
/// [`SaveError`]; those before it are kept, and do no harm. [`SaveError::Link`] where one would lead elsewhere.
pub fn keep_pictures(share: &Share, folder: &Path) -> Result<usize, SaveError> {
    for (name, bytes) in &share.pictures {
        pictures::put_picture(&RealDisk, folder, bytes, extension(name))?;
    }
    Ok(share.pictures.len())
}

/// Our job and a shared copy of it as one, with a step back to ours; and what happened to each entry.
///
/// The marks are those of both and are kept as they are: marked once more as an edit of this device, what was only
/// taken over would count as changed here. Where nothing changed there is no step. The pictures are kept by [`keep_pictures`], first.
///
/// # Errors
/// [`OtherJob`] where it is not the same job.
pub fn merge_into(ours: &Snapshot, share: &Share) -> Result<(Snapshot, Vec<Merge>), OtherJob> {
    let theirs = &share.snapshot;
    if ours.job.id != theirs.job.id || ours.job.id == Id::NONE {
        return Err(OtherJob);
    }
    let merged = merge(&ours.job, &ours.stamps, &theirs.job, &theirs.stamps);
    let mut snapshot = Snapshot {
        stamps: Arc::new(merged.stamps),
        ..ours.clone()
    };
    if merged.job != *ours.job {
        snapshot.done.push(Arc::clone(&ours.job));
        snapshot.undone.clear();
        snapshot.job = Arc::new(merged.job);
    }
    Ok((snapshot, merged.report))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Units;
    use crate::takeoff::Job;

    #[test]
    fn a_new_job_whose_pictures_cannot_be_kept_leaves_nothing() {
        let within = tempfile::tempdir().unwrap();
        let begun = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let snapshot = Snapshot::of(Job::new("Cabin", begun, Units::Metres));
        let made = create_with(within.path(), &snapshot, |folder| {
            assert!(folder.is_dir(), "pictures go in before the document");
            assert!(open_job(folder).is_err());
            pictures::put_picture(&RealDisk, folder, b"abc", "png")?;
            Err(SaveError::TooLarge)
        });
        assert_eq!(made, Err(SaveError::TooLarge));
        assert_eq!(std::fs::read_dir(within.path()).unwrap().count(), 0);
    }
}
