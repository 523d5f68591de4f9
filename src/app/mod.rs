//! What is open, what was asked, and every screen as plain data.
//!
//! One way round: a tap sends a [`Command`]; [`App::send`] changes the job, saves it and says what happened;
//! [`App::screen`] tells what to show. Nothing here knows a window.

mod activity;
mod asks;
mod batch;
mod bench_page;
mod buy_page;
mod change;
mod command;
mod compare_page;
mod cutting_page;
mod cutting_plan;
mod demo;
mod demo_pipes;
mod doubt;
mod doubt_known;
mod drain_inputs;
mod drain_page;
mod fill;
mod jobs_page;
mod keep;
mod kept_rows;
mod leftovers;
mod mix_inputs;
mod mix_page;
mod mortar_page;
mod near_rows;
mod outline_page;
mod packet;
mod pad;
mod paint_inputs;
mod paint_page;
mod patch_inputs;
mod patch_page;
mod photo_camera;
mod photo_change;
mod photo_command;
mod photo_copy;
mod photo_doubt;
mod photo_export;
mod photo_import;
mod photo_log;
mod photo_marks;
mod photo_page;
mod photo_plane_rows;
mod photo_sides;
mod photo_surface;
mod photo_take;
mod photo_template;
mod photo_touch;
mod photo_trace;
mod photo_wall;
mod pipe_choices;
mod pipe_clash;
mod pipe_fittings;
mod pipe_floor;
mod pipe_inputs;
mod pipe_page;
mod pipe_rows;
mod pipe_wall;
mod pipe_words;
mod profiles_page;
mod room_choices;
mod room_page;
mod rooms_view;
mod sharing;
mod sheets_ask;
mod sheets_inputs;
mod sheets_page;
mod slot;
mod square_page;
mod stands;
mod stands_true;
mod steps_page;
mod steps_words;
mod studs;
mod survey_page;
mod survey_words;
mod tape_page;
mod tile_fill;
mod tile_inputs;
mod tile_lines;
mod tile_page;
mod tile_slide;
mod trim_ask;
mod trim_inputs;
mod trim_page;
mod unsure;
mod view;
mod viewfinder;
mod wall_items;
mod wall_page;
mod wall_place;
mod words;

pub use command::{
    Choice, Command, CutChoice, DrainChoice, Here, Leftover, MixChoice, PipeChoice, Shape,
    TileChoice,
};
pub use demo::demo_job;
pub use keep::{Keeper, Kept, Prefs, Reading, start};
pub use pad::{FRACTIONS, Kind, Pad};
pub use photo_command::{PhotoCommand, PhotoSlot, Side, Tool};
pub use photo_log::LogRow;
pub use photo_take::{SMALL, take_picture};
pub use photo_touch::Touch;
pub use rooms_view::{Outline, RoomChoice};
pub use sheets_inputs::{SheetsChoice, SheetsSlot};
pub use slot::{
    CutSlot, JoistSlot, MixSlot, NoteOf, PaintSlot, PipeSlot, Slot, StudsOf, TapeSlot, ThingField,
    TileSlot,
};
pub use steps_page::{Shown, StepCommand};
pub use trim_inputs::{TrimChoice, TrimSlot};
pub use view::{Big, Card, Chip, Icon, Row, Screen, Tone};
pub use viewfinder::{OpenCamera, Seen};
pub use wall_place::Placing;

use std::cell::RefCell;
use std::sync::Arc;

use crate::measure::{Amount, Figures, Length, Rounding};
use crate::store::Snapshot;
use crate::takeoff::{Job, Stamps};

/// How many edits can be taken back.
const UNDO_STEPS: usize = 200;

/// The program, but for its window.
pub struct App {
    /// The open job.
    pub job: Job,
    /// How it looks.
    pub prefs: Prefs,
    /// The open pad.
    pub pad: Option<Pad>,
    /// What was just done or went wrong, in one line.
    pub said: String,
    /// What the last edit said.
    edit_said: String,
    /// The about sheet is shown.
    pub about: bool,
    keeper: Keeper,
    here: Here,
    trail: Vec<Here>,
    /// The open job as it was last handed to the saver.
    now: Arc<Job>,
    done: Vec<Arc<Job>>,
    undone: Vec<Arc<Job>>,
    stamps: Arc<Stamps>,
    /// A line of the roll, in the hand for the next figure that is tapped.
    held: Option<Length>,
    /// What a finger slides on a sketch.
    slide: Option<tile_slide::Slide>,
    /// The thing in the way of a figure whose measures are shown.
    picked: Option<(usize, usize)>,
    /// Chalk lines that moved with the last edit.
    moved_lines: Option<tile_slide::MovedLines>,
    /// What bringing together did, in words.
    brought: Vec<String>,
    /// How rooms are looked at and measured.
    rooms_view: rooms_view::RoomsView,
    /// Layouts that were figured, the newest last.
    laid: RefCell<Vec<(crate::trades::tile::Ask, tile_page::Laid)>>,
    /// Layouts of sheets, likewise.
    sheeted: RefCell<Vec<(crate::trades::sheets::Ask, sheets_ask::Sheeted)>>,
    /// The leg of a run that is in hand, and how runs are looked at; each as is usual for it until that is chosen.
    leg: usize,
    seen: Option<crate::drawing::View>,
    /// Grows with what the top of its page is to be seen after.
    top: u32,
    /// Pictures on their way in, what was not taken, the folder that is watched.
    taking: Option<photo_import::Taking>,
    /// A large picture on its way out.
    writing: Option<photo_export::Writing>,
    not_taken: Vec<photo_import::NotTaken>,
    watching: Option<photo_camera::Watching>,
    /// The activity around the program, on a system that has such.
    activity: Option<activity::Activity>,
    /// What of the steps is shown.
    steps_view: steps_page::StepsView,
    /// Where a camera comes from, and the one that is looked through.
    camera: Option<OpenCamera>,
    viewfinder: Option<viewfinder::Viewfinder>,
    /// What of the log is shown.
    log_filter: crate::photo::Filter,
    /// The picture under the finger.
    surface: photo_surface::Surface,
    /// What a figure comes to where uncertain walls are longer and shorter, for the job that it was figured from.
    unsure: RefCell<Option<unsure::Known>>,
}

impl App {
    /// Another number than before where the page in hand is to be seen from its top.
    #[must_use]
    pub const fn top(&self) -> u32 {
        self.top
    }

    /// The program with a job open; `keeper` is where edits go.
    #[must_use]
    pub fn new(job: Job, keeper: Keeper) -> App {
        App::open(Snapshot::of(job), keeper)
    }

    /// The program with a job and its history open; `keeper` is where edits go.
    #[must_use]
    pub fn open(snapshot: Snapshot, keeper: Keeper) -> App {
        let prefs = keeper.prefs();
        App {
            job: (*snapshot.job).clone(),
            now: snapshot.job,
            done: snapshot.done,
            undone: snapshot.undone,
            stamps: snapshot.stamps,
            prefs,
            pad: None,
            said: String::new(),
            edit_said: String::new(),
            about: false,
            keeper,
            here: Here::Rooms,
            trail: Vec::new(),
            held: None,
            slide: None,
            picked: None,
            moved_lines: None,
            brought: Vec::new(),
            rooms_view: rooms_view::RoomsView::default(),
            laid: RefCell::default(),
            sheeted: RefCell::default(),
            leg: 0,
            top: 0,
            seen: None,
            taking: None,
            writing: None,
            not_taken: Vec::new(),
            watching: None,
            activity: None,
            steps_view: steps_page::StepsView::default(),
            camera: None,
            viewfinder: None,
            log_filter: crate::photo::Filter::default(),
            surface: photo_surface::Surface::default(),
            unsure: RefCell::default(),
        }
    }

    /// Where the program is.
    #[must_use]
    pub fn here(&self) -> &Here {
        &self.here
    }
    /// Whether an edit can be taken back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.done.is_empty()
    }
    /// What is said was read.
    pub fn hush(&mut self) {
        self.said.clear();
    }

    /// Whether what is said is of the last edit, which can be taken back beside it.
    #[must_use]
    pub fn says_an_edit(&self) -> bool {
        self.can_undo() && self.said == self.edit_said
    }
    /// Whether an edit that was taken back can be done again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    /// What to show.
    #[must_use]
    pub fn screen(&self) -> Screen {
        let mut screen = self.page();
        self.tell_unsure(&mut screen);
        screen.rows.splice(0..0, self.batch_row());
        screen.rows.splice(0..0, self.kept_rows());
        if let Some(held) = self.held {
            let row = Row::choice(
                format!("{} is in your hand. Tap its figure.", self.show(held)),
                [Chip::new("Put it down", false, Command::Hold(None))],
            );
            screen.rows.insert(0, row);
        }
        screen
    }

    fn page(&self) -> Screen {
        match &self.here {
            Here::Rooms => self.rooms_page(),
            Here::Room(room) => self.room_page(*room),
            Here::Wall(room, wall) => self.wall_page(*room, *wall),
            Here::Bench => self.bench_page(),
            Here::Task(task) => self.task_page(*task),
            Here::Working(task) => self.working_page(*task),
            Here::Strip(task) => self.strip_page(*task),
            Here::Tape => self.tape_page(),
            Here::Buy => self.buy_page(),
            Here::Line(key) => self.line_page(key),
            Here::More => self.more_page(),
            Here::Compare(task) => self.compare_page(*task),
            Here::Versions => self.versions_page(),
            Here::Sharing => self.sharing_page(),
            Here::Cutting(material) => self.cutting_page(material.as_ref()),
            Here::Survey(room) => self.survey_page(*room),
            Here::Square(room) => self.square_page(*room),
            Here::Outline(room) => self.outline_page(*room),
            Here::Profiles => self.profiles_page(),
            Here::SideBySide(first, second) => self.rooms_compare_page(*first, *second),
            Here::Piece(task, piece) => self.piece_page(*task, *piece),
            Here::Photos => self.photos_page(),
            Here::Camera => self.viewfinder_page(),
            Here::Traced(at, number) => self.trace_page(*at, *number),
            Here::Photo(at) => self.photo_page(*at),
            Here::Steps => self.steps_page(),
            Here::Step(step) => self.step_page(*step),
        }
    }

    /// Goes somewhere, remembering the way back.
    fn go(&mut self, here: Here) {
        self.pad = None;
        self.said.clear();
        self.rooms_view.chosen = None;
        self.rooms_view.placing = None;
        self.rooms_view.told = None;
        if matches!(
            here,
            Here::Rooms | Here::Bench | Here::Buy | Here::Photos | Here::Steps
        ) {
            self.trail.clear();
        } else if self.here != here {
            self.trail.push(self.here.clone());
        }
        if self.here != here {
            self.surface.reset();
            self.steps_view.ticked.clear();
        }
        self.here = here;
    }

    /// Where Back goes from here.
    #[must_use]
    pub fn back(&self) -> Option<&Here> {
        self.trail.last()
    }

    /// Takes an edit, whatever it changes.
    fn edit(&mut self, said: impl Into<String>, change: impl FnOnce(&mut Job)) {
        self.edited(said, change);
    }

    /// Takes an edit: remembers the job as it was, and saves the new one. Gives whether anything was changed.
    fn edited(&mut self, said: impl Into<String>, change: impl FnOnce(&mut Job)) -> bool {
        if self.keeper.is_reading() {
            self.said = "This job is only read here: nothing was changed.".to_owned();
            return false;
        }
        let before = self.before_edit();
        change(&mut self.job);
        if self.job == *self.now {
            return false;
        }
        self.moved_lines = self.lines_moved(before);
        self.done.push(Arc::clone(&self.now));
        if self.done.len() > UNDO_STEPS {
            self.done.remove(0);
        }
        self.undone.clear();
        self.said = said.into();
        self.edit_said.clone_from(&self.said);
        self.save();
        true
    }

    /// Hands the job as it is now to the saver, which keeps it behind the screen's back.
    fn save(&mut self) {
        let device = self.keeper.device();
        Arc::make_mut(&mut self.stamps).mark(device, &self.now, &self.job);
        self.now = Arc::new(self.job.clone());
        self.keeper.submit(self.snapshot());
    }

    /// The job with its history.
    fn snapshot(&self) -> Snapshot {
        Snapshot {
            job: Arc::clone(&self.now),
            done: self.done.clone(),
            undone: self.undone.clone(),
            stamps: Arc::clone(&self.stamps),
        }
    }

    /// Does what a tap asked for.
    pub fn send(&mut self, command: Command) {
        match command {
            Command::Go(here) => self.go(here),
            // A tool in hand is put down first; what was begun with it waits.
            Command::Back if self.puts_tool_down() => {}
            Command::Back => {
                self.pad = None;
                self.said.clear();
                self.here = self.trail.pop().unwrap_or_default();
            }
            Command::Pad(slot) => {
                // What is typed is taken first, as from one row to the next; what cannot be keeps its pad.
                if self.take_before(&slot) {
                    self.rooms_view.placing = None;
                    self.open_pad(slot);
                }
            }
            Command::Walk(slots) => {
                if slots.first().is_some_and(|first| self.take_before(first)) {
                    self.rooms_view.placing = None;
                    self.walk(slots);
                }
            }
            Command::Undo => self.step_back(true),
            Command::Redo => self.step_back(false),
            Command::About(shown) => self.about = shown,
            Command::Theme(theme) => {
                self.prefs.theme = theme;
                self.keep_prefs();
            }
            Command::TextSize(percent) => {
                self.prefs.text = percent.clamp(85, 150);
                self.keep_prefs();
            }
            Command::Leg(leg) => self.leg = leg,
            Command::Seen(view) => self.seen = Some(view),
            Command::Hold(length) => {
                self.held = length;
                self.said.clear();
            }
            Command::NewJob => self.new_job(),
            Command::OpenJob(path) => self.open_job(&path),
            Command::TakeOver => self.take_over(),
            Command::Recover => self.recover(),
            Command::KeepElsewhere(place) => self.keep_elsewhere(&place),
            Command::Restore(version) => self.restore(&version),
            Command::Share => self.share(),
            Command::TakeIn(path) => self.take_in(&path),
            Command::Fetch => {
                self.ask_activity(activity::Wish::File);
            }
            Command::WriteJson => self.write_json(),
            Command::Of(room, choice) => self.choose_in_room(room, choice),
            Command::HandOver(room, material, left, on) => {
                self.hand_over(room, &material, left, on);
            }
            Command::Bought(room) => self.edit("Off the buying list", |job| {
                let of = job.tasks.iter_mut().filter(|task| task.room == Some(room));
                of.for_each(|task| task.on_list = false);
            }),
            Command::TakeMirrored(profile) => self.take_mirrored(profile),
            Command::DropProfile(profile) => self.drop_profile(profile),
            Command::PutProfileBack => self.put_profile_back(),
            Command::Photo(command) => self.photo_command(command),
            Command::Step(command) => self.step_command(command),
            other => self.change(other),
        }
    }

    pub(super) fn keep_prefs(&mut self) {
        if let Err(why) = self.keeper.keep_prefs(&self.prefs) {
            self.said = why;
        }
    }

    /// One step of undo, or of redo.
    fn step_back(&mut self, back: bool) {
        let (from, to) = if back {
            (&mut self.done, &mut self.undone)
        } else {
            (&mut self.undone, &mut self.done)
        };
        if self.keeper.is_reading() {
            return;
        }
        let Some(job) = from.pop() else { return };
        to.push(Arc::clone(&self.now));
        self.job = (*job).clone();
        let typed = self.pad.take().filter(Pad::is_typed);
        self.rooms_view.told = None;
        self.moved_lines = None;
        self.said.clear();
        self.leave_what_is_gone();
        self.keep_typed(typed);
        self.save();
    }

    /// Goes to the nearest place that still exists.
    fn leave_what_is_gone(&mut self) {
        let (rooms, tasks) = (&self.job.rooms, self.job.tasks.len());
        let photos = self.job.photos.len();
        let exists = |here: &Here| match here {
            Here::Room(room) | Here::Survey(room) | Here::Square(room) | Here::Outline(room) => {
                *room < rooms.len()
            }
            Here::SideBySide(first, second) => (*first).max(*second) < rooms.len(),
            Here::Wall(room, wall) => rooms.get(*room).is_some_and(|r| *wall < r.walls.len()),
            Here::Task(task)
            | Here::Working(task)
            | Here::Compare(task)
            | Here::Strip(task)
            | Here::Piece(task, _) => *task < tasks,
            Here::Photo(at) => *at < photos,
            _ => true,
        };
        self.trail.retain(&exists);
        if !exists(&self.here) {
            self.here = self.trail.pop().unwrap_or_default();
        }
    }

    /// A length as it is set on this job's screens.
    fn show(&self, length: Length) -> String {
        self.job
            .units
            .length(length, Rounding::Nearest, Figures::Set)
    }
    /// A length or a question mark.
    fn show_or_ask(&self, length: Option<Length>) -> String {
        length.map_or_else(|| "?".to_owned(), |l| self.show(l))
    }
    /// Any figure as it is set on this job's screens.
    fn amount(&self, amount: impl Into<Amount>) -> String {
        self.job.units.amount(&amount.into(), Figures::Set)
    }
}
