//! Pictures on the screen: the log line by line, the picture under the finger; files chosen, dropped, pasted.

use std::cell::RefCell;
use std::collections::HashMap;
use std::path::PathBuf;
use std::rc::{Rc, Weak};
use std::time::Duration;

use slint::{
    ComponentHandle, Image, Model, ModelNotify, ModelRc, ModelTracker, Rgba8Pixel,
    SharedPixelBuffer,
};

use super::clipboard::{Clipboard, paste};
use super::generated::{LogLine, Page, Spot, Tab};
use super::page::{Numbered, model};
use super::{Desk, Soon};
use crate::app::{App, Command, Here, PhotoCommand, Screen, Seen, Tool, Touch};
use crate::measure::plain;
use crate::photo::Line;

/// Most small copies that are held.
const HELD: usize = 96;

/// What is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pick {
    /// Pictures.
    Files,
    /// A folder of them.
    Folder,
}

/// Asks for files and gives them to whoever waits.
pub type Picker = Rc<dyn Fn(Pick, Box<dyn FnOnce(Vec<PathBuf>)>)>;

/// On Android the activity is asked instead.
#[cfg(target_os = "android")]
pub(super) fn dialog() -> Picker {
    Rc::new(|_, done| done(Vec::new()))
}

/// The window's own dialog.
#[cfg(not(target_os = "android"))]
pub(super) fn dialog() -> Picker {
    Rc::new(|what, done| {
        let asked = slint::spawn_local(async move {
            let dialog = rfd::AsyncFileDialog::new();
            let chosen = match what {
                Pick::Files => {
                    let kinds = [
                        "jpg", "jpeg", "png", "webp", "heic", "heif", "JPG", "JPEG", "PNG", "HEIC",
                    ];
                    dialog
                        .add_filter("Pictures", &kinds)
                        .pick_files()
                        .await
                        .unwrap_or_default()
                }
                Pick::Folder => dialog.pick_folder().await.into_iter().collect(),
            };
            done(chosen.iter().map(|file| file.path().to_owned()).collect());
        });
        // Without an event loop there is no window to ask in.
        let _ = asked;
    })
}

/// The log: a line is made when it comes into sight.
struct LogModel {
    desk: Weak<Desk>,
    lines: Vec<Line>,
    small: RefCell<HashMap<PathBuf, Image>>,
    notify: ModelNotify,
}

impl Model for LogModel {
    type Data = LogLine;

    fn row_count(&self) -> usize {
        self.lines.len()
    }

    fn row_data(&self, row: usize) -> Option<LogLine> {
        let line = *self.lines.get(row)?;
        let desk = self.desk.upgrade()?;
        // While a command is at work the line waits for the next showing.
        let shown = desk.app.try_borrow().ok()?.log_row(line);
        let small = shown.small.map(|path| {
            let mut held = self.small.borrow_mut();
            if held.len() > HELD {
                held.clear();
            }
            held.entry(path)
                .or_insert_with_key(|path| small(path))
                .clone()
        });
        Some(LogLine {
            says: format!("{}, {}", shown.title, shown.detail)
                .trim_end_matches(", ")
                .into(),
            title: shown.title.into(),
            detail: shown.detail.into(),
            day: shown.day,
            small: small.unwrap_or_default(),
        })
    }

    fn model_tracker(&self) -> &dyn ModelTracker {
        &self.notify
    }
}

/// A small copy; nothing where there is none yet.
fn small(path: &std::path::Path) -> Image {
    let read = std::fs::File::open(path).ok().and_then(|mut file| {
        let (picture, _) = crate::photo::decode(&mut file, crate::app::SMALL).ok()?;
        let buffer =
            SharedPixelBuffer::clone_from_slice(&picture.rgb, picture.width, picture.height);
        Some(Image::from_rgb8(buffer))
    });
    read.unwrap_or_default()
}

/// Touches, wheels, keys and files.
pub(super) fn connect(desk: &Rc<Desk>) {
    let page = desk.window.global::<Page<'_>>();
    let weak = Rc::downgrade(desk);
    page.on_touched(move |what, x, y| {
        let what = match what {
            0 => Touch::Down,
            1 => Touch::Move,
            2 => Touch::Up,
            _ => Touch::Cancel,
        };
        let Some(desk) = weak.upgrade() else { return };
        let before = desk.app.borrow().can_undo();
        desk.app.borrow_mut().touch(what, x, y);
        // A moving finger changes the picture alone; the list waits until it lifts.
        if what == Touch::Move && before == desk.app.borrow().can_undo() {
            desk.show_soon(Soon::Picture);
        } else {
            desk.show();
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_zoomed(move |by, x, y, across, down| {
        // A pinch says all twice, as one and as a turn.
        if (by - 1.0).abs() < 1e-6 && across == 0.0 && down == 0.0 {
            return;
        }
        if let Some(desk) = weak.upgrade() {
            desk.app.borrow_mut().zoom_photo(by, (x, y), (across, down));
            desk.show_soon(Soon::Page);
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_nudged(move |across, down| {
        if let Some(desk) = weak.upgrade() {
            desk.act(|app| app.send(Command::Photo(PhotoCommand::Nudge(across, down))));
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_open_line(move |row| {
        let Some(desk) = weak.upgrade() else { return };
        let line = usize::try_from(row)
            .ok()
            .and_then(|row| desk.log.borrow().get(row).copied());
        let command = line.and_then(|line| desk.app.borrow().log_leads(line));
        if let Some(command) = command {
            desk.act(|app| app.send(command));
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_hush(move || {
        if let Some(desk) = weak.upgrade() {
            desk.act(App::hush);
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_pasted(move || {
        if let Some(desk) = weak.upgrade() {
            paste(&desk);
        }
    });
    // What is on its way in, and what appears in the watched folder.
    let weak = Rc::downgrade(desk);
    desk.pictures.start(
        slint::TimerMode::Repeated,
        Duration::from_millis(250),
        move || {
            let Some(desk) = weak.upgrade() else { return };
            let taking = desk.app.borrow().is_taking();
            if desk.app.borrow_mut().look_into_folder() || taking {
                desk.pictures_came();
            }
            if desk.app.borrow_mut().another_came_in() {
                desk.show();
            }
        },
    );
    #[cfg(not(target_os = "android"))]
    take_drops(desk);
}

/// Files dropped on the window.
#[cfg(not(target_os = "android"))]
fn take_drops(desk: &Rc<Desk>) {
    use slint::winit_030::{EventResult, WinitWindowAccessor, winit::event::WindowEvent};
    let weak = Rc::downgrade(desk);
    desk.window.window().on_winit_window_event(move |_, event| {
        let WindowEvent::DroppedFile(path) = event else {
            return EventResult::Propagate;
        };
        if let Some(desk) = weak.upgrade() {
            let files = vec![path.clone()];
            desk.act(|app| app.send(Command::Photo(PhotoCommand::Take(files))));
        }
        EventResult::PreventDefault
    });
}

impl Desk {
    /// Shows what came in, or how far it is.
    pub(super) fn pictures_came(self: &Rc<Self>) {
        let (came, seen) = {
            let mut app = self.app.borrow_mut();
            (app.pictures_came(), app.look_through_camera())
        };
        let looks = self.with_app(|app| {
            matches!(app.here(), Here::Photos | Here::Photo(_)) && app.pad.is_none()
        });
        if came || seen == Seen::Changed || looks {
            self.show();
        } else if seen == Seen::Frame {
            // The list stays; only what the camera sees is new.
            paint(self, &self.app.borrow(), None);
        }
    }

    /// Whether a command is one that only a window can do; then it is done.
    pub(super) fn in_window(self: &Rc<Self>, command: &Command) -> bool {
        let what = match command {
            Command::Photo(PhotoCommand::Pick) if !self.app.borrow().has_activity() => Pick::Files,
            Command::Photo(PhotoCommand::PickFolder) => Pick::Folder,
            Command::Photo(PhotoCommand::Paste) => {
                paste(self);
                return true;
            }
            _ => return false,
        };
        let picker = Rc::clone(&self.picker.borrow());
        let weak = Rc::downgrade(self);
        picker(
            what,
            Box::new(move |files| {
                let Some(desk) = weak.upgrade() else { return };
                desk.act(|app| {
                    if files.is_empty() {
                        // A system without a dialog answers like a person who changed their mind.
                        app.said = "Nothing was chosen. If no dialog opened, drop pictures here, or copy and paste them.".into();
                    } else {
                        app.send(Command::Photo(PhotoCommand::Take(files)));
                    }
                });
            }),
        );
        true
    }

    /// Looks at another clipboard than the system's.
    pub fn set_clipboard(&self, clipboard: Clipboard) {
        *self.clipboard.borrow_mut() = clipboard;
    }

    /// Asks for files in another way than by the window's dialog.
    pub fn set_picker(&self, picker: Picker) {
        *self.picker.borrow_mut() = picker;
    }
}

/// The log and the tools of a screen.
pub(super) fn show(desk: &Rc<Desk>, app: &App, screen: &Screen, numbered: &mut Numbered) {
    let page = desk.window.global::<Page<'_>>();
    page.set_has_log(screen.log.is_some());
    page.set_has_photo(screen.photo);
    page.set_nudges(app.nudges());
    page.set_tools(model(screen.tools.iter().zip(Tool::BAR).map(
        |(chip, tool)| Tab {
            label: chip.label.as_str().into(),
            icon: icon(tool),
            on: chip.on,
            command: numbered.number(chip.command.clone()),
        },
    )));
    let lines = screen.log.clone().unwrap_or_default();
    // The same job and the same lines keep their place in the list, and what is in sight.
    let same = *desk.log.borrow() == lines
        && desk
            .logged
            .borrow()
            .as_ref()
            .is_some_and(|job| job == &app.job.photos);
    if !same {
        *desk.logged.borrow_mut() = screen.log.is_some().then(|| app.job.photos.clone());
        desk.log.borrow_mut().clone_from(&lines);
        page.set_log(ModelRc::new(LogModel {
            desk: Rc::downgrade(desk),
            lines,
            small: RefCell::default(),
            notify: ModelNotify::default(),
        }));
    }
}

/// The picture under the finger; with its spots where a list of commands is being made.
pub(super) fn paint(desk: &Desk, app: &App, numbered: Option<&mut Numbered>) {
    let page = desk.window.global::<Page<'_>>();
    let (width, height) = desk.picture.get();
    if width < 40.0 || height < 40.0 {
        return;
    }
    let (pixels, taps) = app.paint_photo((width, height), desk.window.window().scale_factor());
    let buffer = SharedPixelBuffer::<Rgba8Pixel>::clone_from_slice(
        &pixels.rgba,
        pixels.width,
        pixels.height,
    );
    page.set_picture(Image::from_rgba8_premultiplied(buffer));
    let Some(numbered) = numbered else { return };
    page.set_spots(model(taps.into_iter().map(
        |([x, y, w, h], command, says)| {
            let (wide, high) = (w.max(48.0), h.max(48.0));
            Spot {
                x: x + (w - wide) / 2.0,
                y: y + (h - high) / 2.0,
                width: wide,
                height: high,
                says: plain(&says).into(),
                command: numbered.number(command),
            }
        },
    )));
}

fn icon(tool: Tool) -> Image {
    let bytes: &[u8] = match tool {
        Tool::Look => include_bytes!("../../assets/icons/tool-look.svg"),
        Tool::Dimension | Tool::Edge => include_bytes!("../../assets/icons/tool-dimension.svg"),
        Tool::Angle => include_bytes!("../../assets/icons/tool-angle.svg"),
        Tool::Area => include_bytes!("../../assets/icons/tool-area.svg"),
        Tool::Level => include_bytes!("../../assets/icons/tool-level.svg"),
        Tool::Arrow => include_bytes!("../../assets/icons/tool-arrow.svg"),
        Tool::Note => include_bytes!("../../assets/icons/tool-note.svg"),
        Tool::Freehand => include_bytes!("../../assets/icons/tool-freehand.svg"),
        Tool::Hidden | Tool::Anchor => include_bytes!("../../assets/icons/tool-hidden.svg"),
        Tool::Flatten => include_bytes!("../../assets/icons/tool-flatten.svg"),
    };
    Image::load_from_svg_data(bytes).unwrap_or_default()
}
