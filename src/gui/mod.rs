//! The screens: they show what `app` says and send what was tapped. No arithmetic.
//!
//! Every tap is a number into the list of commands that the last [`show`](Desk::show) laid out.

#[allow(
    missing_docs,
    unreachable_pub,
    unused_qualifications,
    clippy::all,
    clippy::pedantic,
    clippy::unwrap_used,
    clippy::panic,
    clippy::todo
)]
mod generated {
    slint::include_modules!();
}

#[cfg(target_os = "android")]
mod android;
#[cfg(feature = "camera")]
mod camera;
mod clipboard;
mod pad;
mod page;
mod photo;
mod theme;

use std::cell::{Cell, RefCell};
use std::rc::Rc;

pub use clipboard::{Clipboard, Pasted};
pub use generated::MainWindow;
pub use photo::{Pick, Picker};
use slint::ComponentHandle;

use crate::app::{App, Command, Here, Kept, Row, Slot};
use crate::drawing::Place;

/// A fingertip on the screen, in logical pixels.
const FINGER: f32 = 48.0;
/// How many pages back it is remembered how far down they were left.
const WAY: usize = 16;

/// The window and the program behind it.
pub struct Desk {
    app: RefCell<App>,
    window: MainWindow,
    commands: RefCell<Vec<Command>>,
    picture: Cell<(f32, f32)>,
    /// Where the sketch lies on its sheet, and the same while a finger holds it.
    place: Cell<Option<Place>>,
    held: Cell<Option<Place>>,
    tape: Cell<f32>,
    shown: RefCell<Option<Here>>,
    clock: slint::Timer,
    /// The lines of the log that are shown, and the pictures that they are of.
    log: RefCell<Vec<crate::photo::Line>>,
    logged: RefCell<Option<Vec<std::sync::Arc<crate::photo::Photo>>>>,
    picker: RefCell<Picker>,
    clipboard: RefCell<Clipboard>,
    pictures: slint::Timer,
    /// The pages that one came by, and how far down each was left.
    way: RefCell<Vec<(Here, f32)>>,
    /// What asked last for the top of a page.
    top: Cell<u32>,
    /// What is painted once all that came at once is taken in.
    soon: Cell<Soon>,
    /// The page shows that a save failed.
    troubled: Cell<bool>,
    /// Whoever closes was told once that edits would be lost.
    warned: Cell<bool>,
}

/// What a finger's way leaves to be painted: a touch screen tells of it more often than it can be shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
enum Soon {
    #[default]
    Nothing,
    /// The picture alone.
    Picture,
    /// The whole page.
    Page,
}

/// Opens a window on the program; the window is not run yet.
///
/// # Errors
/// Where there is no display to open it on.
pub fn open(mut app: App) -> Result<Rc<Desk>, slint::PlatformError> {
    app.watch_again();
    let window = MainWindow::new()?;
    let desk = Rc::new(Desk {
        app: RefCell::new(app),
        window,
        commands: RefCell::default(),
        picture: Cell::new((0.0, 0.0)),
        place: Cell::new(None),
        held: Cell::new(None),
        tape: Cell::new(360.0),
        shown: RefCell::new(None),
        clock: slint::Timer::default(),
        log: RefCell::default(),
        logged: RefCell::default(),
        picker: RefCell::new(photo::dialog()),
        clipboard: RefCell::new(clipboard::system()),
        pictures: slint::Timer::default(),
        way: RefCell::default(),
        top: Cell::new(0),
        soon: Cell::default(),
        troubled: Cell::new(false),
        warned: Cell::new(false),
    });
    page::connect(&desk);
    pad::connect(&desk);
    photo::connect(&desk);
    follow_the_disk(&desk);
    follow_the_clock(&desk);
    desk.show();
    Ok(desk)
}

/// Runs the program in a window until it is closed.
///
/// # Errors
/// Where there is no display to open it on.
pub fn run(app: App) -> Result<(), slint::PlatformError> {
    // On Android the activity has chosen already.
    #[cfg(not(target_os = "android"))]
    if std::env::var_os("SLINT_BACKEND").is_none() {
        slint::BackendSelector::new()
            .backend_name("winit".into())
            .renderer_name("software".into())
            .select()?;
    }
    #[cfg(feature = "camera")]
    let app = {
        let mut app = app;
        app.set_camera_source(camera::source());
        app
    };
    let desk = open(app)?;
    desk.window.run()
}

/// While a batch is in the bucket its minutes run on the screen.
fn follow_the_clock(desk: &Rc<Desk>) {
    let weak = Rc::downgrade(desk);
    desk.clock.start(
        slint::TimerMode::Repeated,
        std::time::Duration::from_secs(10),
        move || {
            if let Some(desk) = weak.upgrade() {
                let (runs, typing) =
                    desk.with_app(|app| (app.job.batch.is_some(), app.pad.is_some()));
                if runs && !typing {
                    desk.show();
                }
            }
        },
    );
}

/// Shows what becomes of a save, and lets the window close only when nothing is lost by it.
fn follow_the_disk(desk: &Rc<Desk>) {
    let window = desk.window.as_weak();
    let weak = Rc::downgrade(desk);
    desk.window.on_kept_changed(move || {
        if let Some(desk) = weak.upgrade() {
            desk.kept_changed();
        }
    });
    desk.app.borrow().on_kept(move || {
        // Where the event loop is gone nobody looks any longer.
        let _ = window.upgrade_in_event_loop(|window| window.invoke_kept_changed());
    });
    let weak = Rc::downgrade(desk);
    desk.window.window().on_close_requested(move || {
        let stays = weak.upgrade().is_some_and(|desk| !desk.may_close());
        if stays {
            slint::CloseRequestResponse::KeepWindowShown
        } else {
            slint::CloseRequestResponse::HideWindow
        }
    });
}

impl Desk {
    /// The saver has something new to say: a word in the header, or rows on the page.
    fn kept_changed(self: &Rc<Self>) {
        self.pictures_came();
        let kept = self.app.borrow().kept();
        let rows = matches!(kept, Kept::No(_));
        if rows || self.troubled.get() {
            self.troubled.set(rows);
            self.show();
        } else {
            page::kept(self, &self.app.borrow());
        }
    }

    /// Waits for the disk. Where the last edits are not on it the first request to close is refused, and says why.
    fn may_close(self: &Rc<Self>) -> bool {
        let kept = self.app.borrow().kept();
        if matches!(kept, Kept::No(_)) && !self.warned.replace(true) {
            self.act(|app| {
                app.said = "The last edits are not on the disk. Close again to lose them.".into();
            });
            return false;
        }
        let _ = self.app.borrow_mut().finish();
        true
    }

    /// The window, for tests and for whoever runs it.
    #[must_use]
    pub fn window(&self) -> &MainWindow {
        &self.window
    }

    /// Where the sketch lies on its sheet, for tests; `None` before there is one.
    #[must_use]
    pub fn place_of_sketch(&self) -> Option<Place> {
        self.place.get()
    }

    /// How far down the list is, for tests; less than nothing.
    #[must_use]
    pub fn scrolled(&self) -> f32 {
        self.window.global::<generated::Page<'_>>().get_scroll()
    }

    /// The program behind the window.
    pub fn with_app<R>(&self, ask: impl FnOnce(&App) -> R) -> R {
        ask(&self.app.borrow())
    }

    /// Changes the program, then shows it anew.
    pub fn act(self: &Rc<Self>, change: impl FnOnce(&mut App)) {
        change(&mut self.app.borrow_mut());
        self.show();
    }

    /// Shows the program when all that has come by now is taken in.
    fn show_soon(self: &Rc<Self>, what: Soon) {
        let waits = self.soon.get();
        self.soon.set(waits.max(what));
        if waits != Soon::Nothing {
            return;
        }
        let weak = Rc::downgrade(self);
        slint::Timer::single_shot(std::time::Duration::ZERO, move || {
            let Some(desk) = weak.upgrade() else { return };
            match desk.soon.replace(Soon::Nothing) {
                Soon::Nothing => {}
                Soon::Picture => photo::paint(&desk, &desk.app.borrow(), None),
                Soon::Page => desk.show(),
            }
        });
    }

    /// Shows the program as it is now.
    pub fn show(self: &Rc<Self>) {
        // What waits is shown with it.
        self.soon.set(Soon::Nothing);
        let app = self.app.borrow();
        let screen = app.screen();
        let list = self.window.global::<generated::Page<'_>>();
        let left_at = list.get_scroll();
        let mut numbered = page::show(self, &app, &screen);
        pad::show(self, &app, &mut numbered);
        let commands = numbered.commands();
        *self.commands.borrow_mut() = commands;
        let here = app.here().clone();
        let left = self.shown.replace(Some(here.clone()));
        let top = self.top.replace(app.top());
        if left.as_ref() != Some(&here) {
            list.set_turned(!list.get_turned());
            list.set_scroll(self.comes_to(left, left_at, &here));
        } else if top != app.top() {
            list.set_scroll(0.0);
        }
    }

    /// How far down a page is shown: where it was left when one comes back to it, else from its top.
    fn comes_to(&self, left: Option<Here>, left_at: f32, here: &Here) -> f32 {
        let mut way = self.way.borrow_mut();
        if let Some(at) = way.iter().position(|(place, _)| place == here) {
            let (_, back_at) = way[at].clone();
            way.truncate(at);
            return back_at;
        }
        way.extend(left.map(|left| (left, left_at)));
        if way.len() > WAY {
            way.remove(0);
        }
        0.0
    }

    /// What lies where the finger came down on the sketch is slid, so many pixels from there.
    fn slid(self: &Rc<Self>, from: (f32, f32), (across, down): (f32, f32), done: bool) {
        let Some(place) = self.held.get().or(self.place.get()) else {
            return;
        };
        let (at, to) = (
            place.back(from),
            place.back((from.0 + across, from.1 + down)),
        );
        self.held.set((!done).then_some(place));
        (self.app.borrow_mut()).slide(at, place.long(FINGER / 2.0), to - at, done);
        if done {
            self.show();
        } else {
            self.show_soon(Soon::Page);
        }
    }

    /// The sketch is tapped where it has no figure.
    fn poked(self: &Rc<Self>, at: (f32, f32)) {
        if let Some(place) = self.place.get() {
            self.act(|app| app.poke(place.back(at), place.long(FINGER / 2.0)));
        }
    }

    /// Sends the command that a tap stands for.
    fn send(self: &Rc<Self>, number: i32) {
        let command = usize::try_from(number)
            .ok()
            .and_then(|n| self.commands.borrow().get(n).cloned());
        if let Some(command) = command
            && !self.in_window(&command)
        {
            self.act(|app| app.send(command));
        }
    }
}

/// The slot that a row's tap opens, if it opens one.
fn slot_of(row: &Row) -> Option<&Slot> {
    match row {
        Row::Figure {
            command: Some(Command::Pad(slot)),
            ..
        } => Some(slot),
        _ => None,
    }
}
