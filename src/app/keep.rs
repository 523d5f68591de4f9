//! Where edits go: the job's file, the shelf of profiles, and how the program looks.

use std::path::{Path, PathBuf};

use chrono::Local;

use super::App;
use crate::drawing::Theme;
use crate::measure::Units;
use crate::site::Room;
use crate::store;
use crate::takeoff::Job;

/// How the program looks on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prefs {
    /// Day, night or sun.
    pub theme: Theme,
    /// Text size in per cent, 85 to 150.
    pub text: u16,
}

/// Keeps a job in its file, and what belongs to the device in the data folder.
#[derive(Debug, Default)]
pub struct Keeper {
    folder: Option<PathBuf>,
    job: Option<PathBuf>,
    shelf: Vec<Room>,
    text: Option<u16>,
    theme: Theme,
}

impl Keeper {
    /// Keeps nothing: for figures that are thrown away.
    #[must_use]
    pub fn nowhere() -> Keeper {
        Keeper::default()
    }

    /// Keeps the job at `job`, and the rest in `folder`.
    #[must_use]
    pub fn at(folder: &Path, job: &Path) -> Keeper {
        let prefs = store::open_prefs(&folder.join("settings")).unwrap_or_default();
        Keeper {
            folder: Some(folder.to_owned()),
            job: Some(job.to_owned()),
            shelf: store::open_shelf(&folder.join("shelf")).unwrap_or_default(),
            text: Some(prefs.text).filter(|text| (85..=150).contains(text)),
            theme: [Theme::Day, Theme::Night, Theme::Sun]
                .get(usize::from(prefs.theme))
                .copied()
                .unwrap_or_default(),
        }
    }

    pub(super) fn prefs(&self) -> Prefs {
        Prefs {
            theme: self.theme,
            text: self.text.unwrap_or(100),
        }
    }

    pub(super) fn keep(&self, job: &Job) -> Result<(), String> {
        match &self.job {
            Some(path) => store::save_job(path, job).map_err(|why| format!("Not kept: {why}")),
            None => Ok(()),
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
        };
        store::save_prefs(&folder.join("settings"), &kept).map_err(|why| format!("Not kept: {why}"))
    }

    /// The shelf of room profiles.
    pub(super) fn shelf(&self) -> &[Room] {
        &self.shelf
    }

    pub(super) fn keep_room(&mut self, room: &Room) -> Result<(), String> {
        let mut shelf = self.shelf.clone();
        shelf.push(room.clone());
        if let Some(folder) = &self.folder {
            store::save_shelf(&folder.join("shelf"), &shelf)
                .map_err(|why| format!("Not kept: {why}"))?;
        }
        self.shelf = shelf;
        Ok(())
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
        store::jobs_in(folder)
            .into_iter()
            .filter(|path| Some(path) != self.job.as_ref())
            .map(|path| {
                (
                    path.file_stem()
                        .map(|stem| stem.to_string_lossy().into_owned())
                        .unwrap_or_default(),
                    path,
                )
            })
            .collect()
    }
}

impl App {
    /// A new, empty job in its own file; the open one stays as it was saved.
    pub(super) fn new_job(&mut self) {
        let job = Job::new("New job", Local::now().fixed_offset(), self.job.units);
        let Some(folder) = self.keeper.folder.clone() else {
            return;
        };
        match store::create_job(&folder, &job) {
            Ok(path) => self.turn_to(job, Keeper::at(&folder, &path)),
            Err(why) => self.said = format!("No new job: {why}"),
        }
    }

    /// Opens another job; the open one stays as it was saved.
    pub(super) fn open_job(&mut self, path: &Path) {
        let Some(folder) = self.keeper.folder.clone() else {
            return;
        };
        match store::open_job(path) {
            Ok(job) => self.turn_to(job, Keeper::at(&folder, path)),
            Err(why) => self.said = why.to_string(),
        }
    }

    fn turn_to(&mut self, job: Job, keeper: Keeper) {
        let prefs = self.prefs;
        *self = App::new(job, keeper);
        self.prefs = prefs;
        self.keep_prefs();
    }
}

/// Opens the program on the last job of a data folder, or on the demo at a first start.
///
/// # Errors
/// In words, where the folder or the job cannot be used.
pub fn start(folder: &Path, job: Option<&Path>, demo: bool) -> Result<App, String> {
    std::fs::create_dir_all(folder)
        .map_err(|why| format!("The data folder cannot be used: {why}"))?;
    let last = store::open_prefs(&folder.join("settings"))
        .ok()
        .and_then(|prefs| prefs.last)
        .filter(|path| path.exists());
    let known = job.map(Path::to_owned).or_else(|| {
        if demo {
            None
        } else {
            last.or_else(|| store::jobs_in(folder).first().cloned())
        }
    });
    let (path, job) = match known {
        Some(path) if path.exists() => {
            let job = store::open_job(&path).map_err(|why| format!("{}: {why}", path.display()))?;
            (path, job)
        }
        Some(path) => {
            let name = path
                .file_stem()
                .map(|stem| stem.to_string_lossy().into_owned())
                .unwrap_or_else(|| "New job".into());
            let job = Job::new(
                name,
                Local::now().fixed_offset(),
                Units::FeetInches { marks: 16 },
            );
            store::save_job(&path, &job).map_err(|why| format!("{}: {why}", path.display()))?;
            (path, job)
        }
        None => {
            let job = super::demo_job(Local::now().fixed_offset());
            let path = store::create_job(folder, &job).map_err(|why| why.to_string())?;
            (path, job)
        }
    };
    let mut app = App::new(job, Keeper::at(folder, &path));
    // Settings that cannot be kept are no reason not to open the job.
    app.keep_prefs();
    if let Err(why) = store::open_shelf(&folder.join("shelf")) {
        app.said = format!("The shelf of profiles cannot be opened: {why}");
    }
    Ok(app)
}
