//! Steps in words: what one is called, where it belongs, how it stands and until when.

use chrono::{DateTime, FixedOffset};

use super::{App, words};
use crate::measure::{Amount, Figures};
use crate::site::Id;
use crate::takeoff::{Hold, State, Step, StepKey, StepOf};

impl App {
    /// What a step is called, briefly.
    pub(super) fn step_title(&self, step: &Step) -> String {
        match step.key {
            StepKey::Own(_) => step.own.clone(),
            StepKey::Figure(_, work, nth) if step.of > 1 => {
                format!("{} {}", work.name(), nth + 1)
            }
            StepKey::Figure(_, work, _) => work.name().to_owned(),
        }
    }

    /// What a step of the person's own says.
    pub(super) fn own_step(&self, id: Id) -> String {
        let note = self.job.steps.iter().find(|note| note.id == id);
        match note.map(|note| &note.of) {
            Some(StepOf::Own(_, text)) => text.clone(),
            _ => String::new(),
        }
    }

    /// The figure of a step, by its place.
    pub(super) fn step_task(&self, key: StepKey) -> Option<usize> {
        match key {
            StepKey::Figure(id, ..) => self.job.tasks.iter().position(|task| task.id == id),
            StepKey::Own(_) => None,
        }
    }

    /// Where a step belongs, in words: its figure, or that it is the person's own.
    pub(super) fn step_place(&self, step: &Step) -> String {
        match self.step_task(step.key) {
            Some(task) => self.task_name(task),
            None => self.room_named(step.room),
        }
    }

    /// The trade of a step's figure, in a word; nothing for the person's own.
    pub(super) fn step_figure(&self, step: &Step) -> String {
        let Some(task) = self.step_task(step.key) else {
            return String::new();
        };
        let trade = self.task_trade(task);
        match self.estimated(task) {
            Some(mark) => format!("{trade} ({mark})"),
            None => trade,
        }
    }

    /// A room by its name; without one it is of the whole job.
    pub(super) fn room_named(&self, room: Option<Id>) -> String {
        let known = self.job.rooms.iter().find(|known| Some(known.id) == room);
        known.map_or_else(|| "The whole job".to_owned(), |room| room.name.clone())
    }

    /// How a step stands, in words; nothing where it is open.
    pub(super) fn step_says(
        &self,
        step: &Step,
        all: &[Step],
        now: DateTime<FixedOffset>,
    ) -> String {
        match &step.state {
            State::Done(Some(when)) => format!("Done {}", day(*when, now)),
            State::Done(None) => "Every piece is ticked as fitted dry".to_owned(),
            State::Open => match &step.wants {
                Some((does, cite)) => format!(
                    "Before it: {} ({})",
                    self.job.units.phrase(does, Figures::Set),
                    words::cite(cite)
                ),
                None => String::new(),
            },
            State::Waits { until, hours, cite } => format!(
                "After {}: {}, {}",
                day(*until, now),
                self.amount(Amount::Hours(*hours)),
                words::cite(cite)
            ),
            State::Held(Hold::DryFit(fitted, of)) => {
                format!("Held: {fitted} of {of} pieces are fitted dry")
            }
            State::Held(Hold::Before(key)) => {
                let first = all.iter().find(|step| step.key == *key);
                let named = first.map_or_else(String::new, |first| {
                    let title = self.step_title(first);
                    if same_figure(step.key, *key) {
                        title
                    } else {
                        format!("{title}, {}", self.step_place(first))
                    }
                });
                format!("After: {named}")
            }
        }
    }

    /// A step in full words.
    pub(super) fn step_does(&self, step: &Step) -> String {
        if step.own.is_empty() {
            self.job.units.phrase(&step.does, Figures::Set)
        } else {
            step.own.clone()
        }
    }

    /// The trade of a figure, in a word.
    pub(super) fn task_trade(&self, at: usize) -> String {
        let name = self.bare_name(at);
        let room = self.job.tasks.get(at).and_then(|task| task.room);
        let room = room.and_then(|room| self.job.rooms.get(room));
        room.and_then(|room| name.strip_suffix(&room.name))
            .map_or(name.clone(), |trade| {
                trade.trim_end_matches([',', ' ', '·']).to_owned()
            })
    }
}

fn same_figure(a: StepKey, b: StepKey) -> bool {
    matches!((a, b), (StepKey::Figure(a, ..), StepKey::Figure(b, ..)) if a == b)
}

/// A time as it is said at another: "07:40 tomorrow", "18:00", "09:10 on Mon 16 Mar".
pub(super) fn day(when: DateTime<FixedOffset>, now: DateTime<FixedOffset>) -> String {
    let when = when.with_timezone(now.offset());
    let days = (when.date_naive() - now.date_naive()).num_days();
    let time = when.format("%H:%M");
    match days {
        0 => time.to_string(),
        1 => format!("{time} tomorrow"),
        -1 => format!("{time} yesterday"),
        _ => format!("{time} on {}", when.format("%a %-d %b")),
    }
}
