//! What the screen says about the disk: what is not kept, what is only read, and the earlier versions.

use chrono::Local;

use super::{App, Chip, Command, Here, Kept, Reading, Row, Screen, Tone};
use crate::store::{self, folder::size_of};

impl App {
    /// What stands before every page while the job is not kept, or only read.
    pub(super) fn kept_rows(&self) -> Vec<Row> {
        let note = |tone, text: String, mend| Row::Note {
            tone,
            text,
            detail: String::new(),
            mend,
        };
        match self.kept() {
            Kept::Yes | Kept::Soon | Kept::Nowhere => Vec::new(),
            Kept::No(why) => {
                let mut rows = vec![note(
                    Tone::Stop,
                    format!(
                        "The last edits are not on the disk: {why}. They are safe while this window is open, and it is tried again and again."
                    ),
                    None,
                )];
                let places = self.keeper.elsewhere();
                rows.push(Row::choice(
                    "Keep the job in another place from now on",
                    places.into_iter().take(4).map(|place| {
                        let label = place.display().to_string();
                        Chip::new(label, false, Command::KeepElsewhere(place))
                    }),
                ));
                rows
            }
            Kept::Reading(Reading::Another) => vec![note(
                Tone::Caution,
                "This job is open in another window, and is only read in this one.".into(),
                Some(Chip::new("Write it here", false, Command::TakeOver)),
            )],
            Kept::Reading(Reading::NoAccess(why)) => vec![note(
                Tone::Caution,
                format!("This job can only be read here: {why}."),
                Some(Chip::new("Try to write it", false, Command::TakeOver)),
            )],
            Kept::Reading(Reading::Damaged { lost }) => {
                let lost = if lost.is_empty() {
                    "Everything could be read or taken from an earlier version.".to_owned()
                } else {
                    format!("Not whole anywhere: {}.", lost.join(", "))
                };
                vec![note(
                    Tone::Stop,
                    format!(
                        "This job's file is damaged. What is whole is shown here and only read. {lost}"
                    ),
                    Some(Chip::new(
                        "Save what is whole as a new job",
                        false,
                        Command::Recover,
                    )),
                )]
            }
            Kept::Reading(Reading::Closed(why)) => vec![note(
                Tone::Stop,
                format!(
                    "The last job ({}) does not open: {why}. Nothing in it was changed.",
                    self.keeper.place()
                ),
                Some(Chip::new("Other jobs", false, Command::Go(Here::More))),
            )],
        }
    }

    /// One row that leads to the earlier versions, with their size.
    pub(super) fn versions_row(&self) -> Option<Row> {
        let versions = store::versions_of(self.keeper.path()?);
        (!versions.is_empty()).then(|| Row::Figure {
            label: "Earlier versions".into(),
            detail: format!("{} on disk", bytes(size_of(&versions))),
            value: versions.len().to_string(),
            command: Some(Command::Go(Here::Versions)),
        })
    }

    /// The earlier versions of the job, each a tap to go back to.
    pub(super) fn versions_page(&self) -> Screen {
        let versions = self
            .keeper
            .path()
            .map(store::versions_of)
            .unwrap_or_default();
        let mut rows = vec![Row::Text(
            "The last twenty, and the last of each of ten days. Going back is an edit: undo takes you here again.".into(),
        )];
        rows.extend(versions.into_iter().map(|version| {
            let when = version.when.with_timezone(&Local);
            Row::Figure {
                label: when.format("%-d %b %Y, %H:%M:%S").to_string(),
                detail: bytes(version.bytes),
                value: "go back".into(),
                command: Some(Command::Restore(version.path)),
            }
        }));
        Screen {
            crumb: self.job.name.clone(),
            title: "Earlier versions".into(),
            back: Some(Here::More),
            rows,
            ..Screen::default()
        }
    }
}

/// A size on disk, as people say it.
fn bytes(n: u64) -> String {
    match n {
        0..1_000 => format!("{n} bytes"),
        1_000..1_000_000 => format!("{:.1} kB", n as f64 / 1e3),
        _ => format!("{:.1} MB", n as f64 / 1e6),
    }
}
