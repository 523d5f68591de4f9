//! Saves whole files beside the old one, and opens them without ever writing.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::container::{Kind, OpenError, seal, unseal};
use super::record;
use super::record_pipe::{read_fittings, write_fittings};
use crate::measure::Length;
use crate::site::Room;
use crate::trades::pipe::Measured;

/// Why a file could not be saved; the edit is still in memory.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveError {
    /// What is there does not open as ours and is not overwritten.
    WouldOverwrite(OpenError),
    /// What was to be saved would not open again; nothing was written.
    WouldNotOpen,
    /// What was to be saved is larger than a file that is opened; nothing was written.
    TooLarge,
    /// A link stands in place of the job's pictures, and could lead anywhere; it is not followed.
    Link,
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
            SaveError::Link => write!(
                f,
                "a link stands in place of the job's pictures, and is not followed"
            ),
            SaveError::Disk(why) => write!(f, "{why}"),
        }
    }
}

impl From<io::Error> for SaveError {
    fn from(why: io::Error) -> SaveError {
        SaveError::Disk(said(&why))
    }
}

/// What the system says, as a person would.
pub(super) fn said(why: &io::Error) -> String {
    match why.kind() {
        io::ErrorKind::NotFound => "its folder is not there; was the card taken out?".into(),
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => "the disk is full".into(),
        io::ErrorKind::PermissionDenied => "it may not be written there".into(),
        io::ErrorKind::ReadOnlyFilesystem => "the disk can only be read".into(),
        _ => why.to_string(),
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
    /// By what this device is told from others; 0 before it has a number.
    pub device: u64,
    /// The camera and what belongs to pictures.
    pub photos: PhotoPrefs,
}

/// The camera of this device, and how near is too near to something hidden.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PhotoPrefs {
    /// The command that opens it; empty for none.
    pub camera: String,
    /// The folder that it saves in.
    pub watched: Option<PathBuf>,
    /// How near is too near; `None` until it is chosen.
    pub clear: Option<Length>,
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
/// By its order a stop at any step leaves the old file or the new one under the name.
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

/// Saves the shelf of fittings that were measured.
///
/// # Errors
/// [`SaveError`]; what was there stays.
pub fn save_fittings(path: &Path, fittings: &[Measured]) -> Result<(), SaveError> {
    replace(path, Kind::Fittings, &write_fittings(fittings), |body| {
        read_fittings(body).is_some()
    })
}

/// Opens the shelf of fittings; none where there is no file yet.
///
/// # Errors
/// [`OpenError`]; the file stays as it is.
pub fn open_fittings(path: &Path) -> Result<Vec<Measured>, OpenError> {
    if !there(path)? {
        return Ok(Vec::new());
    }
    read_fittings(&read(path, Kind::Fittings)?).ok_or(OpenError::Damaged)
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

/// Where this system keeps a program's data.
#[must_use]
pub fn data_folder() -> Option<PathBuf> {
    directories::ProjectDirs::from("", "", "storyrod").map(|folders| folders.data_dir().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

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
    fn a_device_keeps_its_number_and_any_path() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings");
        let prefs = Prefs {
            theme: 2,
            text: 125,
            last: Some(folder.path().join("hütte.site")),
            device: 77,
            photos: PhotoPrefs {
                camera: "snapshot --now".into(),
                watched: Some(folder.path().join("bilder")),
                clear: Some(Length::mm(40)),
            },
        };
        save_prefs(&path, &prefs).unwrap();
        assert_eq!(open_prefs(&path), Ok(prefs));
        // As format 1 wrote them.
        let old = seal(Kind::Prefs, &record::write(&(1u8, 85u16, Some("a.rod"))));
        fs::write(&path, old).unwrap();
        let read = open_prefs(&path).unwrap();
        assert_eq!((read.theme, read.text, read.device), (1, 85, 0));
        assert_eq!(read.photos, PhotoPrefs::default());
        assert_eq!(read.last, Some(PathBuf::from("a.rod")));
    }
}
