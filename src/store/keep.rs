//! Saves whole files beside the old one, and opens them without ever writing.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::container::{Kind, OpenError, seal, unseal};
use super::{format_1, job_record, record};
use crate::site::Room;
use crate::takeoff::Job;

/// Why a file could not be saved; the edit is still in memory.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveError {
    /// What is there does not open as ours and is not overwritten.
    WouldOverwrite(OpenError),
    /// What was to be saved would not open again; nothing was written.
    WouldNotOpen,
    /// What was to be saved is larger than a file that is opened; nothing was written.
    TooLarge,
    /// The system refused.
    Disk(String),
}

impl fmt::Display for SaveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SaveError::WouldOverwrite(why) => {
                write!(f, "what is in its place is not overwritten: {why}")
            }
            SaveError::WouldNotOpen => write!(
                f,
                "a figure is out of its range, and the file would not open again; undo the last edit"
            ),
            SaveError::TooLarge => write!(f, "the job is larger than a file may be"),
            SaveError::Disk(why) => write!(f, "the system refused: {why}"),
        }
    }
}

impl From<io::Error> for SaveError {
    fn from(why: io::Error) -> SaveError {
        SaveError::Disk(why.to_string())
    }
}

/// How the program looks on this device, and the job last open.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prefs {
    /// 0 day, 1 night, 2 sun.
    pub theme: u8,
    /// Text size in per cent.
    pub text: u16,
    /// The job last open.
    pub last: Option<PathBuf>,
}

/// The largest file that is read.
const LARGEST: u64 = 256 << 20;

fn read(path: &Path, kind: Kind) -> Result<Vec<u8>, OpenError> {
    let disk = |why: io::Error| OpenError::Disk(why.to_string());
    if fs::metadata(path).map_err(disk)?.len() > LARGEST {
        return Err(OpenError::Damaged);
    }
    let bytes = fs::read(path).map_err(disk)?;
    unseal(kind, &bytes).map(<[u8]>::to_vec)
}

/// Whether there is a file; a folder that cannot be looked into is not taken for an empty one.
fn there(path: &Path) -> Result<bool, OpenError> {
    path.try_exists()
        .map_err(|why| OpenError::Disk(why.to_string()))
}

/// Replaces a file whole: written beside it, synced, the old one kept as `previous`, renamed over, the folder synced.
///
/// By its order a stop at any step leaves the old file or the new one under the name; no test stops it yet.
/// What does not open is neither written nor overwritten: `opens` says whether a body reads to its end.
fn replace(
    path: &Path,
    kind: Kind,
    body: &[u8],
    opens: impl Fn(&[u8]) -> bool,
) -> Result<(), SaveError> {
    if !opens(body) {
        return Err(SaveError::WouldNotOpen);
    }
    let replaces = path.try_exists()?;
    if replaces {
        let old = read(path, kind).map_err(SaveError::WouldOverwrite)?;
        if !opens(&old) {
            return Err(SaveError::WouldOverwrite(OpenError::Damaged));
        }
    }
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    let mut beside = tempfile::Builder::new()
        .prefix(".save-")
        .tempfile_in(folder)?;
    beside.write_all(&seal(kind, body))?;
    beside.as_file().sync_all()?;
    if replaces {
        keep_previous(path, folder)?;
        beside.persist(path).map_err(|why| why.error)?;
    } else {
        // Another program may have come first: a new file never takes the place of one.
        beside.persist_noclobber(path).map_err(|why| why.error)?;
    }
    sync_folder(folder)?;
    Ok(())
}

/// The old file under a second name, by a link where the system can, else by a copy.
fn keep_previous(path: &Path, folder: &Path) -> io::Result<()> {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".previous");
    let spare = tempfile::Builder::new()
        .prefix(".save-")
        .tempfile_in(folder)?
        .into_temp_path();
    fs::remove_file(&spare)?;
    if fs::hard_link(path, &spare).is_err() {
        fs::copy(path, &spare)?;
        File::open(&spare)?.sync_all()?;
    }
    spare.persist(folder.join(name)).map_err(|why| why.error)
}

#[cfg(unix)]
fn sync_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}
#[cfg(not(unix))]
fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}

/// Saves a job over its last version.
///
/// # Errors
/// [`SaveError`]; what was there stays.
pub fn save_job(path: &Path, job: &Job) -> Result<(), SaveError> {
    replace(
        path,
        Kind::Job,
        &record::write(&job_record::write_job(job)),
        |body| read_job(body).is_some(),
    )
}

fn read_job(body: &[u8]) -> Option<Job> {
    let Some(parts) = record::read::<Vec<job_record::Part>>(body) else {
        return format_1::read_job(body);
    };
    let read = job_record::read_job(&parts);
    (read.headed && read.unread.is_empty()).then_some(read.job)
}

/// Opens a job; never writes.
///
/// # Errors
/// [`OpenError`]; the file stays as it is.
pub fn open_job(path: &Path) -> Result<Job, OpenError> {
    read_job(&read(path, Kind::Job)?).ok_or(OpenError::Damaged)
}

/// Saves a new job under a name of its own in a folder; gives where.
///
/// # Errors
/// [`SaveError`] where the folder cannot be written.
pub fn create_job(folder: &Path, job: &Job) -> Result<PathBuf, SaveError> {
    fs::create_dir_all(folder)?;
    let stem = file_stem(&job.name);
    for n in 1..10_000 {
        let name = if n == 1 {
            format!("{stem}.rod")
        } else {
            format!("{stem}-{n}.rod")
        };
        let path = folder.join(name);
        if !path.try_exists()? {
            save_job(&path, job)?;
            return Ok(path);
        }
    }
    Err(SaveError::Disk("too many jobs of this name".to_owned()))
}

/// A job's name as a file's: small letters, digits and dashes, so that it stays in its folder.
fn file_stem(name: &str) -> String {
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

/// Saves the shelf of room profiles.
///
/// # Errors
/// [`SaveError`]; what was there stays.
pub fn save_shelf(path: &Path, rooms: &[Room]) -> Result<(), SaveError> {
    replace(path, Kind::Shelf, &record::write_rooms(rooms), |body| {
        record::read_rooms(body).is_some()
    })
}

/// Opens the shelf of room profiles; none where there is no file yet.
///
/// # Errors
/// [`OpenError`]; the file stays as it is.
pub fn open_shelf(path: &Path) -> Result<Vec<Room>, OpenError> {
    if !there(path)? {
        return Ok(Vec::new());
    }
    record::read_rooms(&read(path, Kind::Shelf)?).ok_or(OpenError::Damaged)
}

/// Saves how the program looks.
///
/// # Errors
/// [`SaveError`]; what was there stays.
pub fn save_prefs(path: &Path, prefs: &Prefs) -> Result<(), SaveError> {
    replace(path, Kind::Prefs, &record::write_prefs(prefs), |body| {
        record::read_prefs(body).is_some()
    })
}

/// Opens how the program looks; as designed where there is no file yet.
///
/// # Errors
/// [`OpenError`]; the file stays as it is.
pub fn open_prefs(path: &Path) -> Result<Prefs, OpenError> {
    if !there(path)? {
        return Ok(Prefs {
            text: 100,
            ..Prefs::default()
        });
    }
    record::read_prefs(&read(path, Kind::Prefs)?).ok_or(OpenError::Damaged)
}

/// The job files of a folder, the last changed first.
#[must_use]
pub fn jobs_in(folder: &Path) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut jobs: Vec<_> = entries
        .flatten()
        .filter(|entry| {
            entry
                .path()
                .extension()
                .is_some_and(|extension| extension == "rod")
        })
        .map(|entry| {
            (
                entry.metadata().and_then(|about| about.modified()).ok(),
                entry.path(),
            )
        })
        .collect();
    jobs.sort_by(|a, b| b.cmp(a));
    jobs.into_iter().map(|(_, path)| path).collect()
}

/// Where this system keeps a program's data.
#[must_use]
pub fn data_folder() -> Option<PathBuf> {
    directories::ProjectDirs::from("", "", "storyrod").map(|folders| folders.data_dir().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Units;

    fn job(name: &str) -> Job {
        let begun = chrono::DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        Job::new(name, begun, Units::FeetInches { marks: 16 })
    }

    #[test]
    fn a_save_keeps_the_version_before_it() {
        let folder = tempfile::tempdir().unwrap();
        let path = create_job(folder.path(), &job("Lakeside cabin")).unwrap();
        assert!(path.ends_with("lakeside-cabin.rod"));
        save_job(&path, &job("Second")).unwrap();
        assert_eq!(open_job(&path).unwrap().name, "Second");
        assert_eq!(
            open_job(&folder.path().join("lakeside-cabin.rod.previous"))
                .unwrap()
                .name,
            "Lakeside cabin"
        );
        assert_eq!(
            fs::read_dir(folder.path()).unwrap().count(),
            2,
            "nothing is left over beside them"
        );
    }

    #[test]
    fn a_file_that_cannot_be_read_is_never_overwritten() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.rod");
        for bytes in [
            &b"someone's notes"[..],
            b"\x89ROD\r\n\x1a\n\x09\0",
            &[0; 300],
        ] {
            fs::write(&path, bytes).unwrap();
            assert!(matches!(
                save_job(&path, &job("x")),
                Err(SaveError::WouldOverwrite(_))
            ));
            assert_eq!(fs::read(&path).unwrap(), bytes);
        }
    }

    #[test]
    fn a_shelf_whose_rooms_do_not_read_is_not_taken_for_an_empty_one() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("shelf");
        let bytes = seal(Kind::Shelf, &[200, 1, 2, 3]);
        fs::write(&path, &bytes).unwrap();
        assert_eq!(open_shelf(&path), Err(OpenError::Damaged));
        let room = Room::rectangle("a");
        assert!(matches!(
            save_shelf(&path, std::slice::from_ref(&room)),
            Err(SaveError::WouldOverwrite(OpenError::Damaged))
        ));
        assert_eq!(fs::read(&path).unwrap(), bytes);
    }

    #[test]
    fn what_would_not_open_again_is_not_written() {
        let folder = tempfile::tempdir().unwrap();
        let right = job("a");
        let path = create_job(folder.path(), &right).unwrap();
        let mut wrong = right.clone();
        let mut room = Room::rectangle("a");
        room.ceiling = Some(crate::measure::Length::LONGEST * 2);
        wrong.rooms.push(room);
        assert_eq!(save_job(&path, &wrong), Err(SaveError::WouldNotOpen));
        assert_eq!(open_job(&path), Ok(right));
    }

    #[test]
    fn a_name_never_leaves_its_folder() {
        assert_eq!(file_stem("../../etc/passwd"), "etc-passwd");
        assert_eq!(file_stem("…"), "job");
    }
}
