//! Pictures on their way in: one after the other on a thread of its own, with how far it is, and to be stopped.

use std::collections::VecDeque;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::atomic::Ordering::Relaxed;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};

use super::{
    App, Chip, Command, PhotoCommand, Row, Tone,
    keep::Wake,
    photo_take::{of_disk, take_picture},
};
use crate::photo::{Kind, Photo, Problem, Watch, facts, pasted_png};
use crate::store::RealDisk;
use crate::takeoff::Job;

/// A picture on its way in.
pub(super) enum Incoming {
    /// A file, which is left as it is.
    File(PathBuf),
    /// The bytes of one, and what it is called where it is refused.
    Bytes(&'static str, Vec<u8>),
    /// Pixels of four bytes, which become a PNG.
    Pixels(&'static str, (u32, u32), Vec<u8>),
}

/// Where a picture came from, in words and as a file.
struct From {
    name: String,
    file: Option<PathBuf>,
}

/// What becomes of one picture.
type Outcome = (From, Result<Photo, Problem>);

impl Incoming {
    fn from(&self) -> From {
        match self {
            Incoming::File(path) => From {
                name: (path.file_name())
                    .map_or_else(String::new, |name| name.to_string_lossy().into_owned()),
                file: Some(path.clone()),
            },
            Incoming::Bytes(name, _) | Incoming::Pixels(name, ..) => From {
                name: (*name).to_owned(),
                file: None,
            },
        }
    }

    /// Takes it in; what has no file of its own gets one for as long as that takes.
    fn take(self, folder: &Path, watch: &Watch) -> Result<Photo, Problem> {
        let bytes = match self {
            Incoming::File(path) => return take_picture(&RealDisk, folder, &path, watch),
            Incoming::Bytes(_, bytes) => bytes,
            Incoming::Pixels(_, size, rgba) => {
                pasted_png(size, &rgba).map_err(|_| Problem::Damaged)?
            }
        };
        let file = tempfile::NamedTempFile::new().and_then(|mut file| {
            file.write_all(&bytes)?;
            file.flush()?;
            Ok(file)
        });
        let file = file.map_err(|why| of_disk(&why))?;
        take_picture(&RealDisk, folder, file.path(), watch)
    }
}

/// Pictures on their way in.
pub(super) struct Taking {
    to_do: Arc<Mutex<VecDeque<Incoming>>>,
    done: Receiver<Outcome>,
    watch: Arc<Watch>,
    /// How many were asked for, and how many are through.
    asked: usize,
    through: usize,
    taken: usize,
    /// The state of the job that the last picture of this lot made.
    made: Option<Arc<Job>>,
}

/// A file that was not taken, and why.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct NotTaken {
    name: String,
    why: String,
}

fn work(
    folder: &Path,
    to_do: &Mutex<VecDeque<Incoming>>,
    done: &Sender<Outcome>,
    watch: &Watch,
    wake: &Wake,
) {
    loop {
        let next = to_do
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .pop_front();
        let Some(incoming) = next else { return };
        let from = incoming.from();
        let outcome = if watch.stop.load(Relaxed) {
            Err(Problem::Stopped)
        } else {
            incoming.take(folder, watch)
        };
        if done.send((from, outcome)).is_err() {
            return;
        }
        if let Some(wake) = &*wake.lock().unwrap_or_else(PoisonError::into_inner) {
            wake();
        }
    }
}

impl App {
    /// Takes pictures in behind the screen's back; a folder stands for the pictures in it.
    pub fn take_pictures(&mut self, files: &[PathBuf]) {
        let mut all = Vec::new();
        for file in files {
            if file.is_dir() {
                all.extend(pictures_in(file));
            } else {
                all.push(file.clone());
            }
        }
        if all.is_empty() {
            self.said = "There is no picture in it.".to_owned();
            return;
        }
        self.take_incoming(all.into_iter().map(Incoming::File));
    }

    /// Takes in a picture that another program put on the clipboard: pixels of four bytes.
    pub fn take_pasted(&mut self, size: (u32, u32), rgba: Vec<u8>) {
        self.take_incoming([Incoming::Pixels("The picture on the clipboard", size, rgba)]);
    }

    /// Takes pictures in behind the screen's back, wherever they come from.
    pub(super) fn take_incoming(&mut self, all: impl IntoIterator<Item = Incoming>) {
        let Some(folder) = self.keeper.path().map(Path::to_owned) else {
            self.said = "This job is kept nowhere, so there is no place for pictures.".to_owned();
            return;
        };
        if self.keeper.is_reading() {
            self.said = "This job is only read here: no picture was taken in.".to_owned();
            return;
        }
        let all: VecDeque<Incoming> = all.into_iter().collect();
        let count = all.len();
        if let Some(taking) = &mut self.taking {
            let mut to_do = taking.to_do.lock().unwrap_or_else(PoisonError::into_inner);
            // One that still has something to do takes these as well; else it may be about to end.
            if !to_do.is_empty() {
                to_do.extend(all);
                taking.asked += count;
                return;
            }
        }
        self.pictures_came();
        let to_do = Arc::new(Mutex::new(all));
        let watch = Arc::new(Watch::default());
        let (sender, done) = channel();
        let wake = self.keeper.wake();
        let (theirs, watched) = (Arc::clone(&to_do), Arc::clone(&watch));
        std::thread::spawn(move || work(&folder, &theirs, &sender, &watched, &wake));
        self.taking = Some(Taking {
            to_do,
            done,
            watch,
            asked: count,
            through: 0,
            taken: 0,
            made: None,
        });
    }

    /// Stops what is on its way in; what is in stays.
    pub(super) fn stop_taking(&mut self) {
        if let Some(taking) = &self.taking {
            taking.watch.stop.store(true, Relaxed);
            let mut to_do = taking.to_do.lock().unwrap_or_else(PoisonError::into_inner);
            to_do.clear();
        }
    }

    /// Puts pictures that came into the log, one step of undo for all of a lot. Gives whether anything changed on the
    /// screen.
    pub fn pictures_came(&mut self) -> bool {
        let mut changed = self.written();
        let Some(mut taking) = self.taking.take() else {
            return changed;
        };
        let gone = loop {
            match taking.done.try_recv() {
                Ok((from, outcome)) => {
                    changed = true;
                    taking.through += 1;
                    self.one_came(&mut taking, from, outcome);
                }
                Err(why) => break why == std::sync::mpsc::TryRecvError::Disconnected,
            }
        };
        if gone {
            return true;
        }
        self.taking = Some(taking);
        changed
    }

    fn one_came(&mut self, taking: &mut Taking, from: From, outcome: Result<Photo, Problem>) {
        let From { name, file } = from;
        let mut photo = match outcome {
            Ok(photo) => photo,
            Err(Problem::Stopped) => return,
            Err(why) => {
                let why = words(&why, file.as_deref());
                self.not_taken.push(NotTaken { name, why });
                return;
            }
        };
        let known = |known: &Arc<Photo>| known.picture == photo.picture;
        let known = self.job.photos.iter().any(known);
        let ours = (self.watching.as_mut().zip(file.as_deref()))
            .is_some_and(|(watching, file)| watching.took(file));
        if known && ours {
            return;
        }
        if known {
            let why = "It is in the log already.".to_owned();
            self.not_taken.push(NotTaken { name, why });
            return;
        }
        photo.room = self.log_filter.room;
        photo.wall = self.log_filter.wall;
        photo.stage = self.log_filter.stage;
        let follows = (self.done.last().zip(taking.made.as_ref())).is_some()
            && taking
                .made
                .as_ref()
                .is_some_and(|made| Arc::ptr_eq(made, &self.now));
        taking.taken += 1;
        let said = match taking.taken {
            1 => "A picture taken in".to_owned(),
            n => format!("{n} pictures taken in"),
        };
        if self.edited(said, |job| job.photos.push(Arc::new(photo))) {
            if follows {
                self.done.pop();
            }
            taking.made = Some(Arc::clone(&self.now));
        }
    }

    /// Waits until all pictures on their way are in or refused.
    pub fn wait_for_pictures(&mut self) {
        while self.taking.is_some() {
            self.pictures_came();
            std::thread::sleep(std::time::Duration::from_millis(2));
        }
        self.wait_for_copy();
    }

    /// How far it is, what was not taken and why.
    pub(super) fn taking_rows(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        if let Some(taking) = &self.taking {
            let (read, length) = (
                taking.watch.read.load(Relaxed),
                taking.watch.length.load(Relaxed).max(1),
            );
            let part = (read * 100 / length).min(100);
            let far = if part < 100 {
                format!("{part} % read")
            } else {
                "its copies are being made".to_owned()
            };
            let text = format!(
                "Taking in picture {} of {}: {far}.",
                (taking.through + 1).min(taking.asked),
                taking.asked
            );
            rows.push(Row::Note {
                tone: Tone::Note,
                text,
                detail: String::new(),
                mend: Some(Chip::new("Stop", false, Command::Photo(PhotoCommand::Stop))),
            });
        }
        for not in self.not_taken.iter().rev().take(20) {
            rows.push(Row::Note {
                tone: Tone::Caution,
                text: format!("{}: {}", not.name, not.why),
                detail: "What it came from is left as it is.".into(),
                mend: None,
            });
        }
        if !self.not_taken.is_empty() {
            let command = Command::Photo(PhotoCommand::Seen);
            rows.push(Row::button("Seen; put these notes away", command));
        }
        rows
    }

    /// Says that pictures are on their way, where they are: the job that they belong to is not left meanwhile.
    pub(super) fn waits_for_pictures(&mut self) -> bool {
        let waits = self.is_taking();
        if waits {
            self.said = "Pictures are on their way into this job, or out of it. Wait for them, or stop them.".into();
        }
        waits
    }

    /// Whether pictures are on their way in, or out.
    #[must_use]
    pub fn is_taking(&self) -> bool {
        self.taking.is_some() || self.writing.is_some()
    }
}

/// The pictures of a folder by what they begin as, by name.
pub(super) fn pictures_in(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut all: Vec<PathBuf> = entries
        .map(|entry| entry.path())
        .filter(|path| path.is_file() && is_picture(path))
        .collect();
    all.sort();
    all
}

/// Whether a file begins as a picture does.
pub(super) fn is_picture(path: &Path) -> bool {
    let kind = std::fs::File::open(path).and_then(|mut file| Kind::of_file(&mut file));
    matches!(kind, Ok(Some(_)))
}

/// Why a picture is not taken, as a person would say it, and what would help.
fn words(why: &Problem, file: Option<&Path>) -> String {
    match why {
        Problem::Empty => "There is nothing in it. Copy it from the camera again.".into(),
        Problem::NotAPicture => "It is no picture that is read here: JPEG, PNG or WebP.".into(),
        Problem::Heic => {
            let when = file.and_then(|file| std::fs::File::open(file).ok());
            let when = when.and_then(|file| {
                let taken = facts(&mut std::io::BufReader::new(file)).taken?;
                Some(format!(
                    " It was taken {}.",
                    taken.local.format("%-d %b %Y, %H:%M")
                ))
            });
            format!(
                "It is HEIC, which is not shown here.{} Export it as JPEG, or set the camera to its most compatible format.",
                when.unwrap_or_default()
            )
        }
        Problem::CutShort => {
            "It ends before the picture does. Copy it from the camera again.".into()
        }
        Problem::Damaged => "What is in it does not read as a picture. Copy it again.".into(),
        Problem::TooManyPixels {
            width,
            height,
            most,
        } => format!(
            "It has {width} by {height} pixels; of such files up to {most} megapixels are read. Save it smaller, or as a baseline JPEG."
        ),
        Problem::TooLarge { bytes, most } => format!(
            "It is {} MB long; up to {} MB are kept. Save it smaller.",
            bytes >> 20,
            most >> 20
        ),
        Problem::Changing => {
            "It was being written while it was read. Take it in again when the camera is done."
                .into()
        }
        Problem::Stopped => "It was stopped.".into(),
        Problem::Disk(why) => format!("{why}."),
    }
}

#[cfg(test)]
mod tests {
    use crate::app::start;

    #[test]
    fn pixels_that_are_pasted_become_an_entry_of_a_png() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        let rgba: Vec<u8> = (0..30 * 20).flat_map(|n| [n as u8, 9, 200, 255]).collect();
        app.take_pasted((30, 20), rgba.clone());
        app.wait_for_pictures();
        assert_eq!(app.job.photos.len(), 1, "{:?}", app.not_taken);
        let photo = &app.job.photos[0];
        assert_eq!(photo.size, (30, 20));
        let kept = app
            .keeper
            .path()
            .unwrap()
            .join("pictures")
            .join(&photo.picture);
        assert_eq!(kept.extension().and_then(|ends| ends.to_str()), Some("png"));
        assert_eq!(image::open(kept).unwrap().to_rgba8().into_raw(), rgba);
        // The same once more is told, and fewer bytes than pixels are refused.
        app.take_pasted((30, 20), rgba.clone());
        app.take_pasted((30, 21), rgba);
        app.wait_for_pictures();
        assert_eq!(app.job.photos.len(), 1);
        let whys: Vec<&str> = app.not_taken.iter().map(|not| not.why.as_str()).collect();
        assert_eq!(whys.len(), 2, "{whys:?}");
        assert!(whys[0].contains("in the log already"), "{whys:?}");
        assert_eq!(app.not_taken[1].name, "The picture on the clipboard");
    }
}
