//! Looking through a camera in the window: what it sees now, and the shutter. Where no camera is built in, nothing of it
//! is on the screen.

use std::sync::atomic::{AtomicBool, Ordering::Relaxed};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};

use super::photo_import::Incoming;
use super::{App, Command, Here, PhotoCommand, Row, Screen, Tone, keep::Wake, photo_page::note};
use crate::drawing::Pixels;
use crate::photo::{Camera, Frame, NoCamera, Picture, Window, decode, flatten};

/// Opens a camera; on a thread of its own, for it may take its time.
pub type OpenCamera = Arc<dyn Fn() -> Result<Box<dyn Camera>, NoCamera> + Send + Sync>;

/// The longer side of what is looked at; what is taken has all its pixels.
const LOOKED_AT: u32 = 1280;

/// A camera that is open.
pub(super) struct Viewfinder {
    shared: Arc<Shared>,
    taken: Receiver<Frame>,
    /// It saw something when it was last looked at; or why not.
    saw: Option<Option<NoCamera>>,
}

/// What is new of a camera.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Nothing.
    Nothing,
    /// What it sees.
    Frame,
    /// What is said of it.
    Changed,
}

#[derive(Default)]
struct Shared {
    /// What it sees, or why it sees nothing.
    now: Mutex<Option<Result<Arc<Picture>, NoCamera>>>,
    /// Something new was said and is not looked at yet: a screen that is slow is not woken for each frame.
    waits: AtomicBool,
    shutter: AtomicBool,
    close: AtomicBool,
}

impl Drop for Viewfinder {
    fn drop(&mut self) {
        self.shared.close.store(true, Relaxed);
    }
}

fn look(open: &OpenCamera, shared: &Shared, taken: &Sender<Frame>, wake: &Wake) {
    let say = |now| {
        *shared.now.lock().unwrap_or_else(PoisonError::into_inner) = Some(now);
        if !shared.waits.swap(true, Relaxed)
            && let Some(wake) = &*wake.lock().unwrap_or_else(PoisonError::into_inner)
        {
            wake();
        }
    };
    let mut camera = match open() {
        Ok(camera) => camera,
        Err(why) => return say(Err(why)),
    };
    while !shared.close.load(Relaxed) {
        let frame = match camera.frame() {
            Ok(frame) => frame,
            Err(why) => return say(Err(why)),
        };
        // A frame that came over broken is passed over; the next is 1/30 s away.
        let Some(picture) = seen(&frame) else {
            continue;
        };
        if shared.shutter.swap(false, Relaxed) && taken.send(frame).is_err() {
            return;
        }
        say(Ok(Arc::new(picture)));
    }
}

fn seen(frame: &Frame) -> Option<Picture> {
    match frame {
        Frame::Jpeg(bytes) => {
            let picture = decode(&mut std::io::Cursor::new(bytes), LOOKED_AT);
            Some(picture.ok()?.0)
        }
        Frame::Pixels { size, rgb } => {
            let whole = Picture {
                width: size.0,
                height: size.1,
                rgb: rgb.clone(),
                original: *size,
            };
            (rgb.len() as u64 == u64::from(size.0) * u64::from(size.1) * 3)
                .then(|| whole.smaller(LOOKED_AT))
        }
    }
}

impl App {
    /// From where a camera is opened; without one nothing of it is shown.
    pub fn set_camera_source(&mut self, open: OpenCamera) {
        self.camera = Some(open);
    }

    /// The way to the camera, where one is built in.
    pub(super) fn viewfinder_row(&self) -> Option<Row> {
        self.camera.as_ref()?;
        Some(Row::button(
            "Look through a camera of this device",
            Command::Photo(PhotoCommand::Viewfinder),
        ))
    }

    /// Opens the camera and looks through it.
    pub(super) fn open_viewfinder(&mut self) {
        let Some(open) = self.camera.clone() else {
            self.said =
                "No camera is built into this program; set a command for the device's own.".into();
            return;
        };
        let shared = Arc::new(Shared::default());
        let (sender, taken) = channel();
        let (theirs, wake) = (Arc::clone(&shared), self.keeper.wake());
        std::thread::spawn(move || look(&open, &theirs, &sender, &wake));
        self.viewfinder = Some(Viewfinder {
            shared,
            taken,
            saw: None,
        });
        self.go(Here::Camera);
    }

    /// Asks for the next frame.
    pub(super) fn shutter(&mut self) {
        if let Some(viewfinder) = &self.viewfinder {
            viewfinder.shared.shutter.store(true, Relaxed);
            self.said.clear();
        }
    }

    /// Takes in what was shot; closes the camera when it is not looked through any longer.
    pub fn look_through_camera(&mut self) -> Seen {
        // What was shot on the way out is not lost.
        let shot = self.shot();
        if self.here != Here::Camera {
            self.viewfinder = None;
        }
        let now = self.sees().map(Result::err);
        let Some(viewfinder) = &mut self.viewfinder else {
            return if shot { Seen::Changed } else { Seen::Nothing };
        };
        let news = viewfinder.shared.waits.swap(false, Relaxed);
        let changed = viewfinder.saw != now;
        viewfinder.saw = now;
        match (shot || changed, news) {
            (true, _) => Seen::Changed,
            (false, true) => Seen::Frame,
            (false, false) => Seen::Nothing,
        }
    }

    fn shot(&mut self) -> bool {
        let taken = self.viewfinder.iter();
        let frames: Vec<Frame> = taken.flat_map(|open| open.taken.try_iter()).collect();
        if frames.is_empty() {
            return false;
        }
        let count = frames.len();
        self.take_incoming(frames.into_iter().map(|frame| match frame {
            Frame::Jpeg(bytes) => Incoming::Bytes("The picture just taken", bytes),
            Frame::Pixels { size, rgb } => {
                let rgba = rgb.chunks_exact(3).flat_map(|p| [p[0], p[1], p[2], 255]);
                Incoming::Pixels("The picture just taken", size, rgba.collect())
            }
        }));
        if self.said.is_empty() {
            self.said = format!("{count} taken into the log");
        }
        true
    }

    fn sees(&self) -> Option<Result<Arc<Picture>, NoCamera>> {
        let shared = &self.viewfinder.as_ref()?.shared;
        let now = shared.now.lock().unwrap_or_else(PoisonError::into_inner);
        now.clone()
    }

    /// The screen of the camera: what it sees is the picture of it.
    pub(super) fn viewfinder_page(&self) -> Screen {
        let mut rows = Vec::new();
        let mut main = None;
        match self.sees() {
            None if self.viewfinder.is_none() => rows.push(Row::button(
                "Open the camera again",
                Command::Photo(PhotoCommand::Viewfinder),
            )),
            None => rows.push(Row::Text("The camera is being opened.".into())),
            Some(Err(why)) => {
                rows.push(note(Tone::Stop, words(&why)));
                rows.push(Row::button(
                    "Try again",
                    Command::Photo(PhotoCommand::Viewfinder),
                ));
            }
            Some(Ok(_)) => {
                main = Some(super::Chip::new(
                    "Take the picture",
                    false,
                    Command::Photo(PhotoCommand::Shutter),
                ));
            }
        }
        rows.extend(self.taking_rows());
        rows.push(Row::Text(
            "What is set here goes with each picture that is taken.".into(),
        ));
        rows.extend(self.place_chips());
        Screen {
            crumb: self.job.name.clone(),
            title: "Camera".into(),
            back: Some(Here::Photos),
            photo: true,
            rows,
            main,
            ..Screen::default()
        }
    }

    /// What the camera sees, whole and in the middle of a ground; `None` while it sees nothing.
    pub(super) fn paint_seen(&self, size: (u32, u32), ground: [u8; 3]) -> Option<Pixels> {
        let picture = self.sees()?.ok()?;
        let (w, h) = (f64::from(picture.original.0), f64::from(picture.original.1));
        let scale = (f64::from(size.0) / w).min(f64::from(size.1) / h);
        let window = Window {
            from: [
                (w - f64::from(size.0) / scale) / 2.0,
                (h - f64::from(size.1) / scale) / 2.0,
            ],
            scale,
            size,
        };
        let plane = super::photo_surface::as_taken(picture.original)?;
        Some(Pixels {
            width: size.0,
            height: size.1,
            rgba: flatten(&picture, &plane, &window, ground),
        })
    }
}

/// Why there is nothing to see, and what would help.
fn words(why: &NoCamera) -> String {
    match why {
        NoCamera::None => "No camera is found. Plug one in and try again, or take the picture with another device and take its file in.".into(),
        NoCamera::InUse => "Another program uses the camera. Close it there and try again.".into(),
        NoCamera::NotAllowed => "This account may not open the camera. Whoever looks after this machine can add it to the group that owns video devices (often “video”); then log in anew.".into(),
        NoCamera::NoFormat => "The camera sends no pictures that are read here: JPEG or YUYV. Use its own program and have its folder watched.".into(),
        NoCamera::Gone => "The camera is gone: unplugged, or switched off. What was taken is in the log.".into(),
        NoCamera::Other(why) => format!("The camera does not open: {why}."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::start;
    use std::time::Duration;

    /// Frames that are drawn: one colour each, the next a little brighter; after so many it is unplugged.
    struct Drawn(u8);

    impl Camera for Drawn {
        fn frame(&mut self) -> Result<Frame, NoCamera> {
            std::thread::sleep(Duration::from_millis(1));
            self.0 = self.0.checked_add(1).ok_or(NoCamera::Gone)?;
            let rgb = [self.0, 40, 200].repeat(64 * 48);
            Ok(if self.0.is_multiple_of(2) {
                let format = crate::photo::Format::Jpeg;
                Frame::Jpeg(crate::photo::encode((64, 48), &rgb, format).unwrap())
            } else {
                Frame::Pixels {
                    size: (64, 48),
                    rgb,
                }
            })
        }
    }

    fn app(open: OpenCamera) -> (App, tempfile::TempDir) {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        app.set_camera_source(open);
        (app, folder)
    }

    fn wait(app: &mut App, until: impl Fn(&App) -> bool) {
        for _ in 0..2_000 {
            app.look_through_camera();
            app.pictures_came();
            if until(app) {
                return;
            }
            std::thread::sleep(Duration::from_millis(2));
        }
    }

    #[test]
    fn what_is_shot_is_in_the_log_with_what_was_set() {
        let (mut app, _folder) = app(Arc::new(|| Ok(Box::new(Drawn(0)))));
        app.log_filter.stage = Some(crate::photo::Stage::Stripped);
        app.send(Command::Photo(PhotoCommand::Viewfinder));
        wait(&mut app, |app| matches!(app.sees(), Some(Ok(_))));
        let seen = app.paint_seen((128, 128), [9, 9, 9]).unwrap();
        // Wider than high: ground above it, the camera's blue in the middle.
        assert_eq!(seen.rgba[..3], [9, 9, 9]);
        let middle = (64 * 128 + 64) * 4;
        assert!(
            seen.rgba[middle + 2].abs_diff(200) < 8,
            "{:?}",
            &seen.rgba[middle..middle + 4]
        );
        app.send(Command::Photo(PhotoCommand::Shutter));
        wait(&mut app, |app| !app.job.photos.is_empty());
        assert_eq!(app.job.photos.len(), 1, "{} {:?}", app.said, app.not_taken);
        assert_eq!(app.job.photos[0].size, (64, 48));
        assert_eq!(app.job.photos[0].stage, Some(crate::photo::Stage::Stripped));
        // Unplugged: said, and what was taken stays.
        wait(&mut app, |app| matches!(app.sees(), Some(Err(_))));
        let says = format!("{:?}", app.viewfinder_page().rows);
        assert!(says.contains("The camera is gone"), "{says}");
        assert_eq!(app.job.photos.len(), 1);
        app.go(Here::Photos);
        assert_eq!(app.look_through_camera(), Seen::Nothing);
        assert!(app.viewfinder.is_none());
    }

    #[test]
    fn a_camera_that_does_not_open_says_why_and_one_not_built_in_is_not_shown() {
        for (why, wanted) in [
            (NoCamera::None, "No camera is found"),
            (NoCamera::InUse, "Another program uses"),
            (NoCamera::NotAllowed, "may not open"),
            (NoCamera::NoFormat, "JPEG or YUYV"),
        ] {
            let (mut app, _folder) = app(Arc::new(move || Err(why.clone())));
            app.send(Command::Photo(PhotoCommand::Viewfinder));
            wait(&mut app, |app| app.sees().is_some());
            let page = app.viewfinder_page();
            assert!(
                format!("{:?}", page.rows).contains(wanted),
                "{:?}",
                page.rows
            );
            assert!(page.main.is_none());
        }
        let folder = tempfile::tempdir().unwrap();
        let app = start(folder.path(), None, false).unwrap();
        assert!(!format!("{:?}", app.photos_page().rows).contains("Look through"));
    }
}
