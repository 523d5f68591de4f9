//! The device's own camera: opened by a command of the person's, its folder watched; and pictures under their wall.

use std::path::{Path, PathBuf};
use std::process::Command as Program;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

use notify::event::{AccessKind, AccessMode, ModifyKind, RenameMode};
use notify::{Event, EventKind, RecursiveMode, Watcher};

use super::activity::Wish;
use super::photo_import::{is_picture, pictures_in};
use super::{App, Here, Kept};
use crate::drawing::Pixels;
use crate::photo::{Photo, Window, flatten};

/// A file that is no longer written to stands still for so long before it is taken in.
const STILL: Duration = Duration::from_secs(1);

/// One that is empty may still be written: it is waited for so long before that is said.
const EMPTY: Duration = Duration::from_secs(30);

/// Whether a file is one that somebody meant to save there: not hidden, not half of a copy, not our own sign.
pub(super) fn is_of_its_own(path: &Path) -> bool {
    let name = path.file_name().map(|name| name.to_string_lossy());
    let Some(name) = name.filter(|_| path.is_file()) else {
        return false;
    };
    let ends = path.extension().map(|ends| ends.to_string_lossy());
    let ends = ends.map_or_else(String::new, |ends| ends.to_lowercase());
    let half = ["tmp", "temp", "part", "partial", "crdownload", "swp"];
    !(name.starts_with('.')
        || name.ends_with('~')
        || Wish::is_sign(&name)
        || half.contains(&&*ends))
}

/// A folder that is watched for new pictures.
pub(super) struct Watching {
    _watcher: notify::RecommendedWatcher,
    news: Receiver<PathBuf>,
    /// Files that were seen, with their length and since when it has been that.
    seen: Vec<(PathBuf, u64, Instant)>,
    /// Files that are no pictures, with their length: each is said once.
    refused: Vec<(PathBuf, u64)>,
    folder: PathBuf,
    /// Only what was brought for us lies in it: that goes once the job that it is in is on the disk.
    pub brought: bool,
    taken: Vec<PathBuf>,
}

impl Watching {
    pub(super) fn notice(&mut self, path: PathBuf) {
        if !self.seen.iter().any(|(known, ..)| *known == path) {
            self.seen.push((path, 0, Instant::now()));
        }
    }

    /// A file is in the log. Gives whether it was brought for us alone.
    pub(super) fn took(&mut self, file: &Path) -> bool {
        let ours = self.brought && file.parent() == Some(&*self.folder);
        if ours {
            self.taken.push(file.to_owned());
        }
        ours
    }
}

/// The files that an event says are whole, or may be.
fn written(event: Event) -> Vec<PathBuf> {
    let whole = matches!(
        event.kind,
        EventKind::Create(_)
            | EventKind::Access(AccessKind::Close(AccessMode::Write))
            | EventKind::Modify(
                ModifyKind::Name(RenameMode::To | RenameMode::Any)
                    | ModifyKind::Data(_)
                    | ModifyKind::Any
            )
    );
    if whole { event.paths } else { Vec::new() }
}

impl App {
    /// Opens the camera of the device and watches its folder.
    pub(super) fn snap(&mut self) {
        if self.ask_activity(Wish::Picture) {
            return;
        }
        let Some(folder) = self.keeper.watched() else {
            self.said = "Say first in which folder the camera saves.".to_owned();
            self.open_pad(super::Slot::Photo(0, super::PhotoSlot::Watched));
            return;
        };
        if let Err(why) = self.watch(&folder) {
            self.said = format!("That folder cannot be watched: {why}");
            return;
        }
        let command = self.keeper.camera().to_owned();
        let mut words = command.split_whitespace();
        let Some(program) = words.next() else {
            self.said = format!(
                "Watching {}: take the picture with any camera.",
                folder.display()
            );
            return;
        };
        self.said = match Program::new(program).args(words).spawn() {
            Ok(mut running) => {
                // Waited for on a thread of its own, so that it leaves nothing behind when it ends.
                std::thread::spawn(move || running.wait());
                format!("The camera is open; {} is watched.", folder.display())
            }
            Err(why) => format!("“{program}” does not start: {why}. Change the command below."),
        };
    }

    /// Goes on watching the folder that was chosen before the program was left; what came meanwhile stays where it is.
    pub fn watch_again(&mut self) {
        if let Some(folder) = self.keeper.watched() {
            // Its card may not be in yet: that is said when a picture is to be taken.
            let _ = self.watch(&folder);
        }
    }

    /// Watches a folder for pictures that are new in it.
    pub(super) fn watch(&mut self, folder: &Path) -> Result<(), String> {
        if self
            .watching
            .as_ref()
            .is_some_and(|watching| watching.folder == folder)
        {
            return Ok(());
        }
        let (sender, news) = channel();
        let wake = self.keeper.wake();
        let mut watcher = notify::recommended_watcher(move |event: notify::Result<Event>| {
            for path in event.map(written).unwrap_or_default() {
                if sender.send(path).is_ok()
                    && let Ok(wake) = wake.lock()
                    && let Some(wake) = &*wake
                {
                    wake();
                }
            }
        })
        .map_err(|why| why.to_string())?;
        let watched = watcher.watch(folder, RecursiveMode::NonRecursive);
        watched.map_err(|why| why.to_string())?;
        self.watching = Some(Watching {
            _watcher: watcher,
            news,
            seen: Vec::new(),
            refused: Vec::new(),
            folder: folder.to_owned(),
            brought: false,
            taken: Vec::new(),
        });
        Ok(())
    }

    /// Takes in what has appeared in the watched folder and stands still. Gives whether something is waited for.
    pub fn look_into_folder(&mut self) -> bool {
        let kept = self.kept() == Kept::Yes;
        let Some(watching) = &mut self.watching else {
            return false;
        };
        if kept {
            for file in watching.taken.drain(..) {
                // Where that fails it is known again by its bytes the next time.
                let _ = std::fs::remove_file(file);
            }
        }
        while let Ok(path) = watching.news.try_recv() {
            watching.notice(path);
        }
        let mut whole = Vec::new();
        watching.seen.retain_mut(|(path, long, since)| {
            let Ok(about) = std::fs::metadata(&*path) else {
                return false;
            };
            if about.len() != *long {
                (*long, *since) = (about.len(), Instant::now());
                return true;
            }
            // One that is empty has only been begun.
            let still = if *long == 0 { EMPTY } else { STILL };
            if since.elapsed() < still {
                return true;
            }
            let known = |(of, had): &(PathBuf, u64)| of == path && had == long;
            if is_picture(path) {
                whole.push(path.clone());
            } else if is_of_its_own(path) && !watching.refused.iter().any(known) {
                // Why it is none is said when it is read.
                watching.refused.push((path.clone(), *long));
                whole.push(path.clone());
            }
            false
        });
        let waits = !watching.seen.is_empty();
        if !whole.is_empty() {
            self.take_pictures(&whole);
        }
        waits
    }

    pub(super) fn camera_said(&self) -> String {
        match self.keeper.camera() {
            "" => "none".to_owned(),
            command => command.to_owned(),
        }
    }

    pub(super) fn watched_said(&self) -> String {
        let watched = self.keeper.watched();
        watched.map_or_else(|| "none".to_owned(), |folder| folder.display().to_string())
    }

    pub(super) fn set_camera(&mut self, command: &str) -> Result<(), String> {
        self.keeper.set_camera(command.trim())
    }

    pub(super) fn set_watched(&mut self, folder: &str) -> Result<(), String> {
        let folder = folder.trim();
        if folder.is_empty() {
            self.watching = None;
            return self.keeper.set_watched(None);
        }
        let path = PathBuf::from(folder);
        if !path.is_dir() {
            return Err(format!(
                "There is no folder {folder}. Give the one that the camera saves in."
            ));
        }
        self.keeper.set_watched(Some(path.clone()))?;
        self.watch(&path)?;
        let lies = match pictures_in(&path).len() {
            0 => String::new(),
            1 => " The one that lies in it stays there.".to_owned(),
            n => format!(" The {n} that lie in it stay there."),
        };
        self.said = format!("A picture that is saved there from now on is taken in.{lies}");
        Ok(())
    }

    /// Writes a traced outline as a drawing in real size, in millimetres.
    pub(super) fn trace(&mut self, at: usize, number: u32) {
        match self.outline_svg(at, number) {
            Some(svg) => self.hand_out("svg", svg.as_bytes()),
            None => {
                self.said = "The outline has no scale yet: flatten the picture first.".to_owned();
            }
        }
    }

    /// An area mark as an outline in real size: an SVG a millimetre of which is one of the wall.
    #[must_use]
    pub fn outline_svg(&self, at: usize, number: u32) -> Option<String> {
        let template = self.template(at, number)?;
        let view = self.view_of(at);
        let figure = self.job.photos[at].figure(number, view.as_deref());
        let says = figure.map_or_else(String::new, |figure| {
            crate::measure::plain(&self.figure_text(figure))
        });
        Some(super::photo_template::svg(&template, &says))
    }

    /// The picture that lies under the elevation of a wall: pixels of the wall between the places given, floor and left
    /// corner at nothing; `None` where none is laid there.
    #[must_use]
    pub fn under_wall(
        &self,
        place: &crate::drawing::Place,
        size: (u32, u32),
        heft: f64,
        ground: [u8; 3],
    ) -> Option<Pixels> {
        let Here::Wall(room, wall) = self.here else {
            return None;
        };
        let at = self.laid_on(room, wall)?;
        let photo = &self.job.photos[at];
        let view = self.view_of(at)?;
        let copy = self.copy_of(at)?;
        // Two pixels of the sheet lead to two places of the plane; the way between is a turn and a scale.
        let wall_of = |x: f64, y: f64| {
            [
                (x - place.origin.0) / place.scale,
                -(y - place.origin.1) / place.scale,
            ]
        };
        let to_plane = |x: f64, y: f64| photo.from_wall(&view, wall_of(x, y));
        let (w, h) = (f64::from(size.0) / heft, f64::from(size.1) / heft);
        let corners = [
            to_plane(0.0, 0.0)?,
            to_plane(w, 0.0)?,
            to_plane(w, h)?,
            to_plane(0.0, h)?,
        ];
        let sheet = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]];
        // From the picture straight to the sheet: through the plane, then onto it.
        let plane = view.plane_of()?;
        let onto = crate::geometry::Homography::between(&corners, &sheet)?;
        let seen: [crate::geometry::Spot; 4] = {
            let mut spots = [[0.0; 2]; 4];
            let flat = photo.flat.as_ref()?;
            for (spot, corner) in spots.iter_mut().zip(flat.corners) {
                *spot = plane.lens.straightened(corner);
            }
            spots
        };
        let mut there = [[0.0; 2]; 4];
        for (place, spot) in there.iter_mut().zip(seen) {
            *place = onto.of(plane.there.of(spot)?)?;
        }
        let both = crate::geometry::Plane {
            lens: plane.lens,
            there: crate::geometry::Homography::between(&seen, &there)?,
        };
        let window = Window {
            from: [0.0, 0.0],
            scale: heft,
            size,
        };
        Some(Pixels {
            width: size.0,
            height: size.1,
            rgba: flatten(copy.picture(), &both, &window, ground),
        })
    }

    /// The picture that is laid into the elevation of a wall.
    pub(super) fn laid_on(&self, room: usize, wall: usize) -> Option<usize> {
        let id = self.job.rooms.get(room)?.id;
        let lies =
            |photo: &Arc<Photo>| photo.laid && photo.room == Some(id) && photo.wall == Some(wall);
        self.job.photos.iter().position(lies)
    }

    /// Lays a picture into its wall's elevation in place of another that lies there, or takes it off.
    pub(super) fn lay_photo(&mut self, at: usize, laid: bool) {
        let Some(photo) = self.job.photos.get(at) else {
            return;
        };
        let (room, wall) = (photo.room, photo.wall);
        let said = if laid {
            "Picture laid into the elevation"
        } else {
            "Picture taken off the elevation"
        };
        self.edit(said, |job| {
            for (n, photo) in job.photos.iter_mut().enumerate() {
                let lies = n == at && laid;
                if (n == at || photo.laid && (photo.room, photo.wall) == (room, wall))
                    && photo.laid != lies
                {
                    Arc::make_mut(photo).laid = lies;
                }
            }
        });
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::app::start;

    /// The folder looked into until something is so: the system tells of a new file when it likes.
    pub(in crate::app) fn settle(app: &mut App, until: impl Fn(&App) -> bool) {
        while !until(app) || app.is_taking() {
            app.look_into_folder();
            app.pictures_came();
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    #[test]
    fn what_is_no_picture_is_said_once_by_name_and_an_empty_file_is_waited_for() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        let camera = folder.path().join("camera");
        std::fs::create_dir(&camera).unwrap();
        app.set_watched(&camera.display().to_string()).unwrap();
        let put = |name: &str, bytes: &[u8]| std::fs::write(camera.join(name), bytes).unwrap();
        put("IMG_1.jpg", b"some words");
        put(".hidden", b"some words");
        put("IMG_2.jpg.part", b"some words");
        put("IMG_3.jpg", b"");
        let said = |app: &App| -> Vec<String> {
            let told = app.taking_rows().into_iter();
            told.filter_map(|row| match row {
                crate::app::Row::Note { text, .. } => Some(text),
                _ => None,
            })
            .collect()
        };
        settle(&mut app, |app| !said(app).is_empty());
        let told = said(&app);
        assert_eq!(told.len(), 1, "{told:?}");
        assert!(
            told[0].starts_with("IMG_1.jpg: It is no picture"),
            "{told:?}"
        );
        // The empty one is still waited for, and taken in when it is written. The other is not said again.
        assert!(app.look_into_folder());
        let png = crate::photo::pasted_png((30, 20), &[120; 30 * 20 * 4]).unwrap();
        put("IMG_1.jpg", b"some words");
        put("IMG_3.jpg", &png);
        settle(&mut app, |app| !app.job.photos.is_empty());
        assert_eq!(said(&app).len(), 1, "{:?}", said(&app));
        assert_eq!(app.job.photos.len(), 1);
    }

    #[test]
    fn a_folder_that_the_person_chose_is_watched_again_and_left_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let camera = folder.path().join("camera");
        std::fs::create_dir(&camera).unwrap();
        let png = |grey: u8| crate::photo::pasted_png((30, 20), &[grey; 30 * 20 * 4]).unwrap();
        std::fs::write(camera.join("old.png"), png(10)).unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        app.set_watched(&camera.display().to_string()).unwrap();
        assert!(app.said.contains("The one that lies in it stays there"));
        drop(app);
        let mut app = start(folder.path(), None, false).unwrap();
        app.watch_again();
        std::fs::write(camera.join("new.png"), png(90)).unwrap();
        settle(&mut app, |app| {
            !app.job.photos.is_empty() && app.kept() == Kept::Yes
        });
        app.look_into_folder();
        assert_eq!(app.job.photos.len(), 1);
        assert!(camera.join("old.png").exists() && camera.join("new.png").exists());
    }

    #[test]
    fn one_picture_lies_in_a_wall_and_stays_there_after_a_restart() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        let when = app.job.begun;
        app.edit("", |job| {
            let room = crate::site::Room::rectangle("Washroom");
            job.photos = (0..3)
                .map(|n| {
                    let name = crate::store::pictures::name_for(&[n], "png");
                    let mut photo = Photo::new(name, (40, 30), when);
                    photo.room = Some(room.id);
                    photo.wall = Some(usize::from(n == 2));
                    Arc::new(photo)
                })
                .collect();
            job.rooms = vec![room];
        });
        for at in 0..3 {
            app.lay_photo(at, true);
        }
        assert_eq!((app.laid_on(0, 0), app.laid_on(0, 1)), (Some(1), Some(2)));
        app.finish().unwrap();
        drop(app);
        let mut app = start(folder.path(), None, false).unwrap();
        assert_eq!((app.laid_on(0, 0), app.laid_on(0, 1)), (Some(1), Some(2)));
        app.lay_photo(1, false);
        assert_eq!((app.laid_on(0, 0), app.laid_on(0, 1)), (None, Some(2)));
        app.send(crate::app::Command::Undo);
        assert_eq!(app.laid_on(0, 0), Some(1));
    }
}
