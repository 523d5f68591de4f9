//! Pictures written out with their marks: as large as a screen shows them, or as large as they came, in bounded memory.

use std::fs::File;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use super::App;
use super::photo_change::room_name;
use super::photo_copy::load;
use super::photo_surface::{Shown, as_taken};
use super::sharing::write_out;
use crate::drawing::{Note, Palette, Pixels, Theme, annotate, annotate_rows};
use crate::photo::{Format, Photo, Window, decode, encode, flatten};
use crate::site::Wall;
use crate::store::pictures::picture_path;

/// Most pixels that are written: three bytes of each are held at once, and as many again while they are decoded.
const MOST: u64 = 50_000_000;

/// What is written behind the screen's back, until it says what became of it.
pub(super) type Writing = Receiver<Result<String, String>>;

/// A picture to be written larger than a screen, with all that it takes to do so on another thread.
struct Larger {
    folder: PathBuf,
    photo: Arc<Photo>,
    long: u32,
    notes: Vec<Note>,
    heft: f64,
}

impl Larger {
    fn bytes(self, format: Format) -> Result<Vec<u8>, String> {
        let names = [&self.photo.picture, &self.photo.stripped];
        let file = names
            .into_iter()
            .find_map(|name| File::open(picture_path(&self.folder, name)?).ok());
        let mut file = file.ok_or("The picture is not among the job's pictures.")?;
        let (picture, _) = decode(&mut file, self.long)
            .map_err(|_| "The picture does not read at this size; write it smaller.")?;
        let size = (picture.width, picture.height);
        let mut rgb = picture.rgb;
        let palette = Palette::of(Theme::Day);
        annotate_rows(&mut rgb, size, &self.notes, palette, self.heft as f32);
        encode(size, &rgb, format)
    }
}

/// How large a picture is written at most: as it came, or smaller where that would take too much memory.
pub(super) fn largest((width, height): (u32, u32)) -> (u32, u32) {
    let pixels = u64::from(width) * u64::from(height);
    if pixels <= MOST {
        return (width, height);
    }
    let by = (MOST as f64 / pixels as f64).sqrt();
    let side = |side: u32| (f64::from(side) * by).floor().max(1.0) as u32;
    (side(width), side(height))
}

/// A word or two as a part of a file's name.
fn part(words: &str) -> String {
    let mut name = String::new();
    for letter in words.chars() {
        if letter.is_alphanumeric() {
            name.extend(letter.to_lowercase());
        } else if !name.is_empty() && !name.ends_with('-') {
            name.push('-');
        }
    }
    name.trim_end_matches('-').chars().take(40).collect()
}

impl App {
    /// A picture with its marks as a file: the size of its working copy, at least twice as fine as a screen.
    ///
    /// # Errors
    /// In words.
    pub fn marked_photo(&self, at: usize, format: Format) -> Result<Vec<u8>, String> {
        let photo = self.job.photos.get(at).ok_or("No such picture.")?;
        let folder = self.keeper.path().ok_or("This job is kept nowhere.")?;
        let copy = load(folder, photo)?;
        let picture = copy.picture();
        let (width, height) = (picture.width, picture.height);
        let plane = as_taken(picture.original).ok_or("The picture has no size.")?;
        let scale = picture.scale();
        let window = Window {
            from: [0.0, 0.0],
            scale,
            size: (width, height),
        };
        let base = Pixels {
            width,
            height,
            rgba: flatten(picture, &plane, &window, [255; 3]),
        };
        // Lines and figures as large as on a screen that shows it whole at a thousand pixels.
        let (notes, heft) = self.notes_at(at, photo, (width, height));
        let (painted, _) = annotate(base, &notes, None, Palette::of(Theme::Day), heft as f32);
        let rgb: Vec<u8> = painted
            .rgba
            .chunks_exact(4)
            .flat_map(|p| [p[0], p[1], p[2]])
            .collect();
        encode((width, height), &rgb, format)
    }

    /// The marks of a picture as they are drawn on so many pixels of it, and the width of a line there.
    fn notes_at(&self, at: usize, photo: &Photo, (width, height): (u32, u32)) -> (Vec<Note>, f64) {
        let heft = (f64::from(width.max(height)) / 1000.0).max(0.5);
        let scale = f64::from(width) / f64::from(photo.size.0.max(1));
        let shown = Shown::Taken {
            scale: scale / heft,
            from: [0.0, 0.0],
        };
        let (mut notes, _) = self.photo_notes(at, &shown, heft);
        for note in &mut notes {
            note.picked = false;
        }
        (notes, heft)
    }

    fn larger(&self, at: usize) -> Result<Larger, String> {
        let photo = self.job.photos.get(at).ok_or("No such picture.")?;
        let folder = self.keeper.path().ok_or("This job is kept nowhere.")?;
        let size = largest(photo.size);
        let (notes, heft) = self.notes_at(at, photo, size);
        Ok(Larger {
            folder: folder.to_owned(),
            photo: Arc::clone(photo),
            long: size.0.max(size.1),
            notes,
            heft,
        })
    }

    /// A picture with its marks as a file, as large as it came, or as memory allows.
    ///
    /// # Errors
    /// In words.
    pub fn marked_large(&self, at: usize, format: Format) -> Result<Vec<u8>, String> {
        self.larger(at)?.bytes(format)
    }

    /// What a picture is called as a file, without its end: the job, its room, wall and stage, its day.
    pub(super) fn picture_stem(&self, photo: &Photo) -> String {
        let wall = photo.wall.map(|wall| format!("wall {}", Wall::named(wall)));
        let parts = [
            Some(self.job.name.clone()),
            room_name(&self.job, photo.room).map(str::to_owned),
            wall,
            photo.stage.map(|stage| stage.name().to_owned()),
            Some(photo.title.clone()),
        ];
        let mut parts: Vec<String> = parts
            .into_iter()
            .flatten()
            .map(|words| part(&words))
            .collect();
        parts.retain(|part| !part.is_empty());
        parts.push(photo.when.format("%Y-%m-%d").to_string());
        parts.join("_")
    }

    /// Writes a picture with its marks where files are handed over; a large one behind the screen's back.
    pub(super) fn export_photo(&mut self, at: usize, png: bool, large: bool) {
        let (format, ends) = if png {
            (Format::Png, "png")
        } else {
            (Format::Jpeg, "jpg")
        };
        let Some(photo) = self.job.photos.get(at) else {
            return;
        };
        let stem = self.picture_stem(photo);
        if !large {
            match self.marked_photo(at, format) {
                Ok(bytes) => self.hand_out_as(&stem, ends, &bytes),
                Err(why) => self.said = format!("Not written: {why}"),
            }
            return;
        }
        if self.writing.is_some() {
            self.said = "Another picture is being written. Wait until it says so.".into();
            return;
        }
        let larger = match self.larger(at) {
            Ok(larger) => larger,
            Err(why) => {
                self.said = format!("Not written: {why}");
                return;
            }
        };
        let (places, wake) = (self.exchange(), self.keeper.wake());
        let by_activity = self.has_activity();
        let (sender, done) = channel();
        std::thread::spawn(move || {
            let bytes = larger.bytes(format);
            let written = bytes.and_then(|bytes| write_out(&places, &stem, ends, &bytes));
            let said = written.map(|path| App::written_to(&path, by_activity));
            // Where nobody waits any longer nobody is told.
            if sender.send(said).is_ok()
                && let Ok(wake) = wake.lock()
                && let Some(wake) = &*wake
            {
                wake();
            }
        });
        self.writing = Some(done);
        self.said = "Writing the picture; it is said when it is done.".into();
    }

    /// What became of what was being written. Gives whether there is something new to say.
    pub(super) fn written(&mut self) -> bool {
        let Some(writing) = &self.writing else {
            return false;
        };
        self.said = match writing.try_recv() {
            Ok(Ok(said)) => said,
            Ok(Err(why)) => format!("Not written: {why}"),
            Err(TryRecvError::Empty) => return false,
            Err(TryRecvError::Disconnected) => "Not written: it stopped.".into(),
        };
        self.writing = None;
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{PhotoCommand, start};
    use crate::photo::{Stage, What};
    use crate::site::Room;

    fn app(folder: &std::path::Path) -> App {
        let mut app = start(folder, None, false).unwrap();
        // Wider than a working copy.
        let (width, height) = (2400, 900);
        let rgba = [120, 130, 140, 255].repeat(width as usize * height as usize);
        app.take_pasted((width, height), rgba);
        app.wait_for_pictures();
        app.edit("", |job| {
            job.name = "Cabin by the lake!".into();
            job.rooms = vec![Room::rectangle("Washroom, upstairs")];
            let id = job.rooms[0].id;
            let photo = Arc::make_mut(&mut job.photos[0]);
            (photo.room, photo.wall) = (Some(id), Some(1));
            photo.stage = Some(Stage::AsFound);
            photo.when = chrono::DateTime::parse_from_rfc3339("2026-05-04T23:30:00+02:00").unwrap();
            photo.add_mark(What::Arrow, vec![[200.0, 450.0], [2200.0, 450.0]]);
        });
        app
    }

    #[test]
    fn a_picture_is_called_by_its_job_place_stage_and_day() {
        let folder = tempfile::tempdir().unwrap();
        let app = app(folder.path());
        assert_eq!(
            app.picture_stem(&app.job.photos[0]),
            "cabin-by-the-lake_washroom-upstairs_wall-b_as-found_2026-05-04"
        );
    }

    #[test]
    fn a_picture_is_written_as_large_as_it_came_with_its_marks() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = app(folder.path());
        let size = |bytes: &[u8]| {
            let (picture, _) = decode(&mut std::io::Cursor::new(bytes), 100_000).unwrap();
            (picture.width, picture.height)
        };
        let small = app.marked_photo(0, Format::Png).unwrap();
        assert_eq!(size(&small), (2048, 768));
        let large = app.marked_large(0, Format::Png).unwrap();
        assert_eq!(size(&large), (2400, 900));
        // The line is there as it would be drawn at once.
        let (picture, _) = decode(&mut std::io::Cursor::new(&large), 100_000).unwrap();
        let pixel = |x: usize, y: usize| &picture.rgb[3 * (y * 2400 + x)..][..3];
        assert_eq!(pixel(1200, 300), [120, 130, 140]);
        assert_ne!(pixel(1200, 450), [120, 130, 140]);
        // By a tap it is written on its own, and said.
        app.send(crate::app::Command::Photo(PhotoCommand::Export(
            0, false, true,
        )));
        while !app.written() {
            std::thread::sleep(std::time::Duration::from_millis(2));
        }
        assert!(app.said.contains("_as-found_2026-05-04"), "{}", app.said);
        let path = app.said.strip_prefix("Written: ").unwrap();
        assert_eq!(size(&std::fs::read(path).unwrap()), (2400, 900));
        std::fs::remove_file(path).unwrap();
    }

    #[test]
    fn what_is_too_large_is_written_smaller() {
        assert_eq!(largest((8000, 6000)), (8000, 6000));
        let (width, height) = largest((20_000, 10_000));
        assert_eq!((width, height), (10_000, 5_000));
    }
}
