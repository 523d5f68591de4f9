//! A job handed over as one file, and one that was handed over to us.

use std::path::{Path, PathBuf};

use super::{App, Command, Here, Row, Screen, UNDO_STEPS};
use crate::store::{json, share};

/// Writes bytes under a name that is still free into the first place that takes them.
pub(super) fn write_out(
    places: &[PathBuf],
    stem: &str,
    ends: &str,
    bytes: &[u8],
) -> Result<PathBuf, String> {
    let mut why = "there is no folder to put it in".to_owned();
    for place in places {
        let free = (1..1_000)
            .map(|n| match n {
                1 => place.join(format!("{stem}.{ends}")),
                n => place.join(format!("{stem}-{n}.{ends}")),
            })
            .find(|path| !path.exists());
        let Some(path) = free else { continue };
        match std::fs::write(&path, bytes) {
            Ok(()) => return Ok(path),
            Err(refused) => why = refused.to_string(),
        }
    }
    Err(why)
}

impl App {
    /// Where files are handed over: the person's downloads, documents, and the data folder.
    pub(super) fn exchange(&self) -> Vec<PathBuf> {
        if let Some(out) = self.goes_out() {
            return vec![out.to_owned()];
        }
        let mut places = Vec::new();
        if let Some(user) = directories::UserDirs::new() {
            places.extend(user.download_dir().map(Path::to_owned));
            places.extend(user.document_dir().map(Path::to_owned));
        }
        places.extend(self.keeper.folder().map(Path::to_owned));
        places.retain(|place| place.is_dir());
        places.dedup();
        places
    }

    /// Where files lie that were handed over to us.
    fn come_from(&self) -> Vec<PathBuf> {
        self.comes_in()
            .map_or_else(|| self.exchange(), |place| vec![place.to_owned()])
    }

    /// What is said of a file that was written to be handed over.
    pub(super) fn written_to(path: &Path, by_activity: bool) -> String {
        let name = path.file_name().map(|name| name.to_string_lossy());
        match name.filter(|_| by_activity) {
            Some(name) => format!("{name} goes into the downloads of this device."),
            None => format!("Written: {}", path.display()),
        }
    }

    /// Handed-over files in those places, the newest first.
    fn handed_over(&self) -> Vec<PathBuf> {
        let places = self.come_from();
        let mut files: Vec<_> = places
            .iter()
            .filter_map(|place| std::fs::read_dir(place).ok())
            .flat_map(Iterator::flatten)
            .filter(|entry| {
                let path = entry.path();
                path.extension().is_some_and(|end| end == share::SHARE_ENDS) && path.is_file()
            })
            .map(|entry| {
                let changed = entry.metadata().and_then(|about| about.modified()).ok();
                (changed, entry.path())
            })
            .collect();
        files.sort_by(|a, b| b.cmp(a));
        files.into_iter().map(|(_, path)| path).collect()
    }

    /// Writes bytes under the job's name in the first place that takes them.
    pub(super) fn hand_out(&mut self, ends: &str, bytes: &[u8]) {
        let stem = self.keeper.path().and_then(Path::file_stem).map_or_else(
            || "job".to_owned(),
            |stem| stem.to_string_lossy().into_owned(),
        );
        self.hand_out_as(&stem, ends, bytes);
    }

    /// Writes bytes under a name of their own there.
    pub(super) fn hand_out_as(&mut self, stem: &str, ends: &str, bytes: &[u8]) {
        self.said = match write_out(&self.exchange(), stem, ends, bytes) {
            Ok(path) => App::written_to(&path, self.has_activity()),
            Err(why) => format!("Not written: {why}"),
        };
    }

    /// Hands the job over as one file with its pictures.
    pub(super) fn share(&mut self) {
        let Some(path) = self.keeper.path().map(Path::to_owned) else {
            return;
        };
        // What is handed over is what is on the disk.
        self.keeper.wait();
        match share::write_share(&path) {
            Ok(shared) => {
                self.hand_out(share::SHARE_ENDS, &shared.bytes);
                if !shared.left_out.is_empty() {
                    let count = shared.left_out.len();
                    self.said
                        .push_str(&format!("; without {count} pictures that are damaged"));
                }
            }
            Err(why) => self.said = format!("Not written: {why}"),
        }
    }

    /// Writes the job as plain JSON.
    pub(super) fn write_json(&mut self) {
        match json::to_json(&self.snapshot()) {
            Ok(text) => self.hand_out("json", text.as_bytes()),
            Err(why) => self.said = format!("Not written: {why}"),
        }
    }

    /// Takes in a file that was named when the program was started: brought together with the copy of its job that is in
    /// the data folder, where there is one.
    pub(super) fn take_in_named(&mut self, path: &Path) {
        if let Ok(opened) = share::open_share(path) {
            let id = opened.snapshot.job.id;
            let ours = self
                .keeper
                .jobs()
                .into_iter()
                .map(|(_, job)| job)
                .find(|job| crate::store::open_job(job).is_ok_and(|known| known.job.id == id));
            if let Some(job) = ours.filter(|_| self.job.id != id) {
                self.open_job(&job);
            }
        }
        self.take_in(path);
        self.here = Here::Sharing;
    }

    /// Takes in a file: a copy of this job is brought together with it, another job becomes a new one.
    pub(super) fn take_in(&mut self, path: &Path) {
        self.brought.clear();
        let opened = match share::open_share(path) {
            Ok(opened) => opened,
            Err(why) => {
                self.said = format!("{}: {why}", path.display());
                return;
            }
        };
        match share::merge_into(&self.snapshot(), &opened) {
            Err(share::OtherJob { .. }) => self.take_in_new(path),
            Ok((merged, report)) => {
                if self.keeper.is_reading() {
                    self.said = "This job is only read here: nothing was changed.".to_owned();
                    return;
                }
                // Pictures first: the job never names one that is not there.
                if let Some(folder) = self.keeper.path()
                    && let Err(why) = share::keep_pictures(&opened, folder)
                {
                    self.said = format!("Its pictures cannot be kept: {why}");
                    return;
                }
                self.brought = report.iter().map(ToString::to_string).collect();
                if self.brought.is_empty() {
                    self.said = "Nothing in it was new.".to_owned();
                    return;
                }
                self.said = format!("{} entries brought together", self.brought.len());
                self.job = (*merged.job).clone();
                (self.now, self.done, self.undone) = (merged.job, merged.done, merged.undone);
                // Marks as they came: nothing of it was changed here.
                self.stamps = merged.stamps;
                let surplus = self.done.len().saturating_sub(UNDO_STEPS);
                self.done.drain(..surplus);
                self.leave_what_is_gone();
                self.keeper.submit(self.snapshot());
            }
        }
    }

    fn take_in_new(&mut self, path: &Path) {
        let Some(folder) = self.keeper.folder().map(Path::to_owned) else {
            return;
        };
        let taken = std::fs::read(path)
            .map_err(|why| why.to_string())
            .and_then(|bytes| share::import_new(&bytes, &folder).map_err(|why| why.to_string()));
        match taken {
            Ok(job) => {
                self.open_job(&job);
                if self.said.is_empty() {
                    self.said = "Taken in as a job of its own.".to_owned();
                }
            }
            Err(why) => self.said = format!("Not taken in: {why}"),
        }
    }

    /// Handing over and taking in.
    pub(super) fn sharing_page(&self) -> Screen {
        let mut rows = vec![
            Row::Text(
                "One file holds the job with its pictures. Whoever opens it gets it as a new job; whoever has the job already gets both copies brought together, entry by entry, and nothing of either is lost.".into(),
            ),
            Row::Button {
                label: "Write this job as one file".into(),
                main: true,
                command: Command::Share,
            },
            Row::button("Write it as plain JSON", Command::WriteJson),
        ];
        if !self.brought.is_empty() {
            rows.push(Row::Heading("What was brought together".into()));
            rows.extend(self.brought.iter().map(|line| Row::Text(line.clone())));
        }
        rows.push(Row::Heading("Files that were handed over".into()));
        let files = self.handed_over();
        if self.has_activity() {
            rows.push(Row::button("A file of this device …", Command::Fetch));
        } else if files.is_empty() {
            let places: Vec<String> = self
                .exchange()
                .iter()
                .map(|p| p.display().to_string())
                .collect();
            rows.push(Row::Text(format!(
                "None here. Put a file that ends in .{} into {}.",
                share::SHARE_ENDS,
                places.join(" or ")
            )));
        }
        rows.extend(files.into_iter().take(30).map(|path| {
            let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
            Row::Figure {
                label: name.unwrap_or_default(),
                detail: (path.parent().filter(|_| !self.has_activity()))
                    .map_or_else(String::new, |p| p.display().to_string()),
                value: "take in".into(),
                command: Some(Command::TakeIn(path)),
            }
        }));
        Screen {
            crumb: self.job.name.clone(),
            title: "Hand over, take in".into(),
            back: Some(Here::More),
            rows,
            ..Screen::default()
        }
    }
}
