//! One picture taken into a job: copied, looked at, decoded, and its smaller copies made. Off the screen's thread.

use std::fs::File;
use std::io::{self, Write};
use std::path::Path;

use chrono::{DateTime, FixedOffset, Local};
use sha2::{Digest, Sha256};

use crate::photo::{
    Facts, Format, Kind, Photo, Picture, Problem, Source, Stoppable, WORKING, Watch, decode,
    encode, strip,
};
use crate::store::pictures::{bring_picture, put_copy};
use crate::store::{Disk, SaveError};

/// The longer side of a copy in a list.
pub const SMALL: u32 = 256;

/// Takes a picture into a job's folder; gives its entry. What is decoded is our own copy, so that nobody can change it
/// meanwhile; the file that it came from is left as it is.
///
/// # Errors
/// [`Problem`]; then nothing of it stays in the job.
pub fn take_picture(
    disk: &dyn Disk,
    folder: &Path,
    file: &Path,
    watch: &Watch,
) -> Result<Photo, Problem> {
    let mut source = Source::open(file, watch)?;
    let kind = Kind::of_file(&mut source).map_err(|why| of_disk(&why))?;
    let kind = kind.ok_or(Problem::NotAPicture)?;
    let incoming = bring_picture(disk, folder, &mut source, kind.extension());
    let incoming = incoming.map_err(|why| of_disk(&why))?;
    source.unchanged()?;
    let open = || {
        let file = File::open(incoming.path()).map_err(|why| of_disk(&why))?;
        Ok(Stoppable { file, watch })
    };
    let (picture, facts) = decode(&mut open()?, WORKING)?;
    let stripped = stripped_name(&mut open()?, kind)?;
    let name = incoming.name.clone();
    keep_copies(folder, &name, &picture).map_err(|why| of_disk(&why))?;
    drop(picture.rgb);
    incoming.keep().map_err(|why| match why {
        SaveError::Disk(why) => Problem::Disk(why),
        other => Problem::Disk(other.to_string()),
    })?;
    let when = when(&facts, &source);
    Ok(Photo {
        stripped,
        focal_35: facts.focal_35,
        located: facts.located,
        ..Photo::new(name, picture.original, when)
    })
}

/// What the system says, as a person would.
pub(super) fn of_disk(why: &io::Error) -> Problem {
    match why.kind() {
        io::ErrorKind::ConnectionAborted => Problem::Stopped,
        io::ErrorKind::UnexpectedEof => Problem::CutShort,
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
            Problem::Disk("the disk is full".to_owned())
        }
        _ => Problem::Disk(why.to_string()),
    }
}

/// By the camera's clock, else when the file was written, else now.
fn when(facts: &Facts, source: &Source<'_>) -> DateTime<FixedOffset> {
    let here = |time: DateTime<Local>| time.fixed_offset();
    let now = here(Local::now());
    let taken = facts.taken.and_then(|taken| {
        let local = taken.local.and_local_timezone(Local).earliest();
        taken.at(local.map_or(*now.offset(), |local| *local.fixed_offset().offset()))
    });
    let written = || source.modified().map(|time| here(time.into()));
    taken.or_else(written).unwrap_or(now)
}

/// Sums up what is written, and keeps none of it.
struct Summing(Sha256);

impl Write for Summing {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.update(bytes);
        Ok(bytes.len())
    }
    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// The name that the picture has without its place.
fn stripped_name(file: &mut Stoppable<'_>, kind: Kind) -> Result<String, Problem> {
    let plan = strip(file)?;
    let mut sum = Summing(Sha256::new());
    plan.write(file, &mut sum).map_err(|why| of_disk(&why))?;
    let hex: String = sum
        .0
        .finalize()
        .iter()
        .map(|b| format!("{b:02x}"))
        .collect();
    Ok(format!("{hex}.{}", kind.extension()))
}

/// The copy for the screen and the one for a list.
pub(super) fn keep_copies(folder: &Path, name: &str, picture: &Picture) -> io::Result<()> {
    let jpeg = |picture: &Picture| {
        let size = (picture.width, picture.height);
        encode(size, &picture.rgb, Format::Jpeg).map_err(io::Error::other)
    };
    put_copy(folder, name, WORKING, &jpeg(picture)?)?;
    put_copy(folder, name, SMALL, &jpeg(&picture.smaller(SMALL))?)
}
