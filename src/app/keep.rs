//! Where edits go: the job's folder behind a saver, the shelf of profiles, and how the program looks.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use chrono::Local;

use super::App;
use crate::drawing::Theme;
use crate::measure::{Length, Units};
use crate::site::{Id, Room};
use crate::store::{self, Held, OpenError, SaveError, Saver, Snapshot, State, Writer};
use crate::takeoff::Job;
use crate::trades::pipe::Measured;

/// How long quitting waits for the disk.
const PATIENCE: Duration = Duration::from_secs(10);

/// How the program looks on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prefs {
    /// Day, night or sun.
    pub theme: Theme,
    /// Text size in per cent, 85 to 150.
    pub text: u16,
}

/// Why the open job is only read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Another program writes it.
    Another,
    /// It may not be written here.
    NoAccess(String),
    /// It is damaged; what is whole of it is shown.
    Damaged {
        /// What is nowhere whole, in words.
        lost: Vec<String>,
    },
    /// It does not open at all; what is shown is an empty job.
    Closed(String),
}

/// Whether what is on the screen is on the disk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// It is, and synced.
    Yes,
    /// It soon will be.
    Soon,
    /// It is not, for this reason; it is tried again and again.
    No(String),
    /// It is only read.
    Reading(Reading),
    /// It is kept nowhere: figures that are thrown away.
    Nowhere,
}

/// Called on the saver's thread when [`App::kept`] may have changed.
pub(super) type Wake = Arc<Mutex<Option<Box<dyn Fn() + Send>>>>;

/// The saver of the open job. Whoever lets it go without asking still waits for the disk.
#[derive(Default)]
struct Behind(Option<Saver<Snapshot>>);

impl Behind {
    /// Waits until the newest edit is on the disk.
    fn finish(&mut self) -> Result<(), String> {
        match self.0.take() {
            Some(saver) => saver.finish(PATIENCE).map_err(|why| why.to_string()),
            None => Ok(()),
        }
    }
}

impl Drop for Behind {
    fn drop(&mut self) {
        // Nobody is left to be told.
        let _ = self.finish();
    }
}

/// Keeps a job in its folder, and what belongs to the device in the data folder.
#[derive(Default)]
pub struct Keeper {
    folder: Option<PathBuf>,
    job: Option<PathBuf>,
    saver: Behind,
    reading: Option<Reading>,
    wake: Wake,
    shelf: Vec<Room>,
    fittings: Vec<Measured>,
    text: Option<u16>,
    theme: Theme,
    device: u64,
    /// The camera's command, its folder, and how near is too near to something hidden.
    photos: store::PhotoPrefs,
}

impl Keeper {
    /// Keeps nothing: for figures that are thrown away.
    #[must_use]
    pub fn nowhere() -> Keeper {
        Keeper::default()
    }

    /// What belongs to the device, from its data folder.
    fn of_device(folder: &Path) -> Keeper {
        let prefs = store::open_prefs(&folder.join("settings")).unwrap_or_default();
        Keeper {
            folder: Some(folder.to_owned()),
            shelf: store::open_shelf(&folder.join("shelf")).unwrap_or_default(),
            fittings: store::open_fittings(&folder.join("fittings")).unwrap_or_default(),
            text: Some(prefs.text).filter(|text| (85..=150).contains(text)),
            theme: [Theme::Day, Theme::Night, Theme::Sun]
                .get(usize::from(prefs.theme))
                .copied()
                .unwrap_or_default(),
            device: if prefs.device == 0 {
                Id::fresh().0
            } else {
                prefs.device
            },
            photos: prefs.photos,
            ..Keeper::default()
        }
    }

    /// Keeps a job through its writer, on a thread of its own.
    fn writing(folder: &Path, mut writer: Writer) -> Result<Keeper, SaveError> {
        let mut keeper = Keeper::of_device(folder);
        keeper.job = Some(writer.path().to_owned());
        let wake = Arc::clone(&keeper.wake);
        keeper.saver = Behind(Some(Saver::start(
            move |snapshot| writer.keep(snapshot, Local::now().fixed_offset()),
            move || {
                let wake = wake.lock().unwrap_or_else(PoisonError::into_inner);
                if let Some(wake) = &*wake {
                    wake();
                }
            },
        )?));
        Ok(keeper)
    }

    fn reading(folder: &Path, job: &Path, why: Reading) -> Keeper {
        Keeper {
            job: Some(job.to_owned()),
            reading: Some(why),
            ..Keeper::of_device(folder)
        }
    }

    pub(super) fn prefs(&self) -> Prefs {
        Prefs {
            theme: self.theme,
            text: self.text.unwrap_or(100),
        }
    }

    /// What this device marks its changes with.
    pub(super) fn device(&self) -> u64 {
        self.device
    }

    /// Whether the open job is only read.
    pub(super) fn is_reading(&self) -> bool {
        self.reading.is_some()
    }

    /// Hands the newest state to the saver; never waits.
    pub(super) fn submit(&self, snapshot: Snapshot) {
        if let Some(saver) = &self.saver.0 {
            saver.submit(snapshot);
        }
    }

    fn kept(&self) -> Kept {
        match (&self.reading, &self.saver.0) {
            (Some(why), _) => Kept::Reading(why.clone()),
            (None, None) => Kept::Nowhere,
            (None, Some(saver)) => match saver.state() {
                State::Kept => Kept::Yes,
                State::Saving => Kept::Soon,
                State::Failing(why) => Kept::No(why),
            },
        }
    }

    pub(super) fn keep_prefs(&self, prefs: &Prefs) -> Result<(), String> {
        let Some(folder) = &self.folder else {
            return Ok(());
        };
        let theme = match prefs.theme {
            Theme::Day => 0,
            Theme::Night => 1,
            Theme::Sun => 2,
        };
        let kept = store::Prefs {
            theme,
            text: prefs.text,
            last: self.job.clone(),
            device: self.device,
            photos: self.photos.clone(),
        };
        store::save_prefs(&folder.join("settings"), &kept).map_err(|why| format!("Not kept: {why}"))
    }

    /// The command that opens the camera; empty where there is none.
    pub(super) fn camera(&self) -> &str {
        &self.photos.camera
    }

    /// The folder that the camera saves in.
    pub(super) fn watched(&self) -> Option<PathBuf> {
        self.photos.watched.clone()
    }

    /// How near is too near to something hidden. Common practice, no published source: a hand's breadth is too much and
    /// a finger's too little; 1 1/2 in unless it is chosen.
    pub(super) fn clear(&self) -> Length {
        self.photos.clear.unwrap_or(Length::in_64(1, 32))
    }

    pub(super) fn set_camera(&mut self, command: &str) -> Result<(), String> {
        command.clone_into(&mut self.photos.camera);
        self.keep_photo_prefs()
    }

    pub(super) fn set_watched(&mut self, folder: Option<PathBuf>) -> Result<(), String> {
        self.photos.watched = folder;
        self.keep_photo_prefs()
    }

    pub(super) fn set_clear(&mut self, clear: Length) -> Result<(), String> {
        self.photos.clear = Some(clear);
        self.keep_photo_prefs()
    }

    fn keep_photo_prefs(&self) -> Result<(), String> {
        self.keep_prefs(&self.prefs())
    }

    /// What is called when something happened behind the screen's back.
    pub(super) fn wake(&self) -> Wake {
        Arc::clone(&self.wake)
    }

    /// The shelf of room profiles.
    pub(super) fn shelf(&self) -> &[Room] {
        &self.shelf
    }

    pub(super) fn keep_room(&mut self, room: &Room) -> Result<(), String> {
        let mut shelf = self.shelf.clone();
        shelf.push(room.clone());
        self.keep_shelf(shelf)
    }

    /// A profile off the shelf; gives it.
    pub(super) fn drop_room(&mut self, at: usize) -> Result<Option<Room>, String> {
        let mut shelf = self.shelf.clone();
        if at >= shelf.len() {
            return Ok(None);
        }
        let gone = shelf.remove(at);
        self.keep_shelf(shelf)?;
        Ok(Some(gone))
    }

    fn keep_shelf(&mut self, shelf: Vec<Room>) -> Result<(), String> {
        if let Some(folder) = &self.folder {
            store::save_shelf(&folder.join("shelf"), &shelf)
                .map_err(|why| format!("Not kept: {why}"))?;
        }
        self.shelf = shelf;
        Ok(())
    }

    /// The shelf of fittings that were measured.
    pub(super) fn fittings(&self) -> &[Measured] {
        &self.fittings
    }

    /// Puts a fitting on it, in place of an older measurement.
    pub(super) fn keep_fitting(&mut self, own: Measured) -> Result<(), String> {
        let mut fittings = self.fittings.clone();
        super::pipe_choices::onto_shelf(&mut fittings, own);
        if let Some(folder) = &self.folder {
            store::save_fittings(&folder.join("fittings"), &fittings)
                .map_err(|why| format!("Not kept on the shelf of fittings: {why}"))?;
        }
        self.fittings = fittings;
        Ok(())
    }

    /// The device's data folder.
    pub(super) fn folder(&self) -> Option<&Path> {
        self.folder.as_deref()
    }

    /// Waits a little for the newest edit to be on the disk.
    pub(super) fn wait(&self) {
        let until = std::time::Instant::now() + PATIENCE;
        while self.kept() == Kept::Soon && std::time::Instant::now() < until {
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    /// Where the job is kept.
    pub(super) fn path(&self) -> Option<&Path> {
        self.job.as_deref()
    }

    /// Where the job is kept, in words.
    pub(super) fn place(&self) -> String {
        self.job.as_ref().map_or_else(
            || "nowhere yet".to_owned(),
            |path| path.display().to_string(),
        )
    }

    /// The other jobs in the folder, newest first.
    pub(super) fn jobs(&self) -> Vec<(String, PathBuf)> {
        let Some(folder) = &self.folder else {
            return Vec::new();
        };
        let stem = |path: &Path| path.file_stem().map(|s| s.to_string_lossy().into_owned());
        store::jobs_in(folder)
            .into_iter()
            .filter(|path| Some(path) != self.job.as_ref())
            .map(|path| (stem(&path).unwrap_or_default(), path))
            .collect()
    }

    /// Other places on this device where a job can be kept, when its own cannot be written.
    pub(super) fn elsewhere(&self) -> Vec<PathBuf> {
        let mut places: Vec<PathBuf> = self.folder.iter().cloned().collect();
        if let Some(user) = directories::UserDirs::new() {
            places.extend(user.document_dir().map(Path::to_owned));
            places.push(user.home_dir().to_owned());
        }
        places.push(std::env::temp_dir());
        let now = self.job.as_deref().and_then(Path::parent);
        places.retain(|place| Some(place.as_path()) != now && place.is_dir());
        places.dedup();
        places
    }
}

impl App {
    /// Whether what is on the screen is on the disk.
    #[must_use]
    pub fn kept(&self) -> Kept {
        self.keeper.kept()
    }

    /// Calls this, on another thread, whenever [`App::kept`] may have changed.
    pub fn on_kept(&self, wake: impl Fn() + Send + 'static) {
        let mut place = (self.keeper.wake.lock()).unwrap_or_else(PoisonError::into_inner);
        *place = Some(Box::new(wake));
    }

    /// Waits for the disk before the program is left.
    ///
    /// # Errors
    /// In words, where the last edits are not on the disk.
    pub fn finish(&mut self) -> Result<(), String> {
        self.keeper.saver.finish()
    }

    /// A new, empty job in its own folder; the open one stays as it was saved.
    pub(super) fn new_job(&mut self) {
        let job = Job::new("New job", Local::now().fixed_offset(), self.job.units);
        self.turn_to_new(&Snapshot::of(job));
    }

    /// A snapshot as a new job in the data folder.
    pub(super) fn turn_to_new(&mut self, snapshot: &Snapshot) {
        let Some(folder) = self.keeper.folder.clone() else {
            return;
        };
        match store::create(&folder, snapshot) {
            Ok(path) => self.open_job(&path),
            Err(why) => self.said = format!("No new job: {why}"),
        }
    }

    /// Opens another job; the open one stays as it was saved.
    pub(super) fn open_job(&mut self, path: &Path) {
        let Some(folder) = self.keeper.folder.clone() else {
            return;
        };
        if let Kept::No(_) = self.kept() {
            self.said = "This job is not kept yet. Keep it elsewhere first.".to_owned();
            return;
        }
        if self.waits_for_pictures() {
            return;
        }
        match open(&folder, path) {
            Ok(app) => self.turn_to(app),
            Err(why) => self.said = why,
        }
    }

    fn turn_to(&mut self, mut app: App) {
        let prefs = self.prefs;
        let wake = Arc::clone(&self.keeper.wake);
        let place = wake.lock().unwrap_or_else(PoisonError::into_inner).take();
        app.take_devices(self);
        *self = app;
        if let Some(wake) = place {
            self.on_kept(wake);
        }
        self.prefs = prefs;
        self.keep_prefs();
    }

    /// Tries to write a job that was only read.
    pub(super) fn take_over(&mut self) {
        let Some(path) = self.keeper.job.clone() else {
            return;
        };
        self.open_job(&path);
        if self.said.is_empty() {
            self.said = match self.kept() {
                Kept::Reading(_) => "It is still open elsewhere, or may not be written.".to_owned(),
                _ => "This window writes it now.".to_owned(),
            };
        }
    }

    /// Saves what is whole of a damaged job as a new one, and opens that.
    pub(super) fn recover(&mut self) {
        let (Some(path), Some(folder)) = (self.keeper.job.clone(), self.keeper.folder.clone())
        else {
            return;
        };
        let stem = path.file_stem().unwrap_or_default().to_string_lossy();
        let out = (1..1000)
            .map(|n| folder.join(format!("{stem}-recovered-{n}.{}", store::FOLDER_ENDS)))
            .find(|out| !out.exists());
        let Some(out) = out else { return };
        match store::recover_job(&path, &out) {
            Ok(_) => {
                self.open_job(&out);
                self.said = "Saved as a new job; the damaged one is left as it is.".to_owned();
            }
            Err(why) => self.said = format!("Nothing could be saved: {why}"),
        }
    }

    /// Keeps the job in another place from now on, pictures and history with it.
    pub(super) fn keep_elsewhere(&mut self, place: &Path) {
        let snapshot = self.snapshot();
        match store::create(place, &snapshot) {
            Err(why) => self.said = format!("Not there either: {why}"),
            Ok(path) => {
                if let Some(old) = &self.keeper.job
                    && let Err(why) = store::copy_pictures(old, &path)
                {
                    self.said = format!("Its pictures are not there: {why}");
                }
                let folder = self
                    .keeper
                    .folder
                    .clone()
                    .unwrap_or_else(|| place.to_owned());
                match open(&folder, &path) {
                    Ok(app) => {
                        // The old place gets no more tries: what it lacks is in the new one.
                        drop(self.keeper.saver.0.take());
                        self.turn_to(app);
                        self.said = format!("Kept in {} from now on.", path.display());
                    }
                    Err(why) => self.said = why,
                }
            }
        }
    }

    /// Goes back to an earlier version of the job; an edit like any other, which can be undone.
    pub(super) fn restore(&mut self, version: &Path) {
        let Some(path) = self.keeper.job.clone() else {
            return;
        };
        let versions = store::versions_of(&path);
        let Some(version) = versions.iter().find(|v| v.path == version) else {
            return;
        };
        match store::open_version(version) {
            Err(why) => self.said = format!("That version does not open: {why}"),
            Ok(snapshot) => {
                self.edit("Gone back to the earlier version", |job| {
                    *job = (*snapshot.job).clone();
                });
                self.leave_what_is_gone();
            }
        }
    }
}

/// Opens a job to write it, or to read it where it can only be read.
fn open(folder: &Path, path: &Path) -> Result<App, String> {
    match store::open_to_write(path) {
        Ok((snapshot, Ok(writer))) => {
            let keeper = Keeper::writing(folder, writer).map_err(|why| why.to_string())?;
            Ok(App::open(snapshot, keeper))
        }
        Ok((snapshot, Err(held))) => {
            let why = match held {
                Held::ByAnother => Reading::Another,
                Held::Disk(why) => Reading::NoAccess(why),
            };
            Ok(App::open(snapshot, Keeper::reading(folder, path, why)))
        }
        Err(why @ (OpenError::Damaged | OpenError::CutShort | OpenError::NotOurs)) => {
            let recovered = store::salvage_job(path).map_err(|_| why.to_string())?;
            let reading = Reading::Damaged {
                lost: recovered.lost,
            };
            Ok(App::open(
                recovered.snapshot,
                Keeper::reading(folder, path, reading),
            ))
        }
        Err(why) => Err(why.to_string()),
    }
}

/// Opens the program on the last job of a data folder, or on the demo at a first start.
///
/// # Errors
/// In words, where the folder or the job that was asked for cannot be used.
pub fn start(folder: &Path, job: Option<&Path>, demo: bool) -> Result<App, String> {
    std::fs::create_dir_all(folder)
        .map_err(|why| format!("The data folder cannot be used: {why}"))?;
    let last = || {
        let prefs = store::open_prefs(&folder.join("settings")).ok()?;
        prefs.last.filter(|path| path.exists())
    };
    let handed_over = |path: &&Path| {
        path.extension()
            .is_some_and(|e| e == store::share::SHARE_ENDS)
    };
    let taken = job.filter(handed_over);
    let mut app = match job.filter(|path| !handed_over(path)) {
        Some(path) if path.exists() => {
            open(folder, path).map_err(|why| format!("{}: {why}", path.display()))?
        }
        Some(path) => begin_at(folder, path)?,
        None if demo => begin_demo(folder)?,
        None => match last().or_else(|| store::jobs_in(folder).first().cloned()) {
            None => begin_demo(folder)?,
            Some(path) => open(folder, &path).unwrap_or_else(|why| {
                // Nobody named it, so nobody reads an answer on a command line: the window says it.
                let now = Local::now().fixed_offset();
                let empty = Job::new("No job", now, Units::FeetInches { marks: 16 });
                let keeper = Keeper::reading(folder, &path, Reading::Closed(why));
                App::open(Snapshot::of(empty), keeper)
            }),
        },
    };
    if let Some(file) = taken {
        app.take_in_named(file);
    }
    // Settings that cannot be kept are no reason not to open the job.
    app.keep_prefs();
    if let Err(why) = store::open_shelf(&folder.join("shelf")) {
        app.said = format!("The shelf of profiles cannot be opened: {why}");
    }
    if let Err(why) = store::open_fittings(&folder.join("fittings")) {
        app.said = format!("The shelf of fittings cannot be opened: {why}");
    }
    Ok(app)
}

/// A new job at a path that somebody named.
fn begin_at(folder: &Path, path: &Path) -> Result<App, String> {
    let name = path.file_stem().map_or_else(
        || "New job".into(),
        |stem| stem.to_string_lossy().into_owned(),
    );
    let job = Job::new(
        name,
        Local::now().fixed_offset(),
        Units::FeetInches { marks: 16 },
    );
    store::save_job(path, &job).map_err(|why| format!("{}: {why}", path.display()))?;
    open(folder, path)
}

fn begin_demo(folder: &Path) -> Result<App, String> {
    let job = super::demo_job(Local::now().fixed_offset());
    let path = store::create_job(folder, &job).map_err(|why| why.to_string())?;
    open(folder, &path)
}
