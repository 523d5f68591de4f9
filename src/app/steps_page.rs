//! The order of work: what is next, what waits and until when, what is done, room by room.

use chrono::{DateTime, FixedOffset, Local};

use super::steps_words::day;
use super::{App, Big, Chip, Command, Here, Row, Screen, Slot, Tone, words};
use crate::photo::Stage;
use crate::site::{Id, On};
use crate::takeoff::{self, Ask, Hold, Ordered, State, Step, StepKey, StepNote, StepOf, TileOn};
use crate::trades::{Order, Work, drain, grout, mortar, paint, patch, pipe};

/// Pieces fitted dry, of how many, where there are any.
type Fitted = Option<(usize, usize)>;

/// Something done to the order of work.
#[derive(Clone, Debug, PartialEq)]
pub enum StepCommand {
    /// A step ticked now, or no longer.
    Tick(StepKey, bool),
    /// Which steps are shown.
    Show(Shown),
    /// Done ones are shown as well.
    ShowDone(bool),
    /// A step one up, or one down.
    Move(StepKey, bool),
    /// A step back where it belongs.
    PutBack(StepKey),
    /// An own step into a room, or to the whole job.
    Room(Id, Option<Id>),
    /// An own step fewer.
    Remove(Id),
}

/// Which steps are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shown {
    /// All.
    #[default]
    All,
    /// Of the whole job alone.
    Job,
    /// Of one room.
    Room(Id),
}

/// What of the steps is shown.
#[derive(Clone, Debug, Default)]
pub(super) struct StepsView {
    shown: Shown,
    done: bool,
    /// What was ticked here stays in its place until the page is left, so that nothing shifts under the finger.
    pub(super) ticked: Vec<StepKey>,
}

fn command(what: StepCommand) -> Command {
    Command::Step(what)
}

impl App {
    /// The order of work as it stands at a time.
    #[must_use]
    pub fn steps_at(&self, now: DateTime<FixedOffset>) -> Vec<Step> {
        takeoff::steps(&self.job, &self.ordered(), now)
    }

    /// The same now.
    pub(super) fn steps(&self) -> Vec<Step> {
        self.steps_at(Local::now().fixed_offset())
    }

    /// Every figure with its trade's order, as it is figured in its room.
    fn ordered(&self) -> Vec<Ordered> {
        let tasks = self.job.tasks.iter().enumerate();
        tasks
            .filter_map(|(at, task)| {
                let (order, dry) = self.order_of(at)?;
                let room = task.room.and_then(|room| self.job.rooms.get(room));
                let room = room.map(|room| room.id);
                let (wall, tile) = match &task.ask {
                    Ask::Patch(_, wall) => (*wall, None),
                    Ask::Sheets(_, TileOn::Wall(wall)) => (Some(*wall), None),
                    Ask::Pipe(_, on) => match on.map(|on| on.on) {
                        Some(On::Wall(wall)) => (Some(wall), None),
                        Some(On::Floor(_)) | None => (None, None),
                    },
                    Ask::Grout(_, of) | Ask::Mortar(_, of) => (None, *of),
                    _ => (None, None),
                };
                Some(Ordered {
                    figure: task.id,
                    room,
                    wall,
                    tile,
                    dry,
                    photographed: self.photographed(&task.ask, room, wall),
                    order,
                })
            })
            .collect()
    }

    /// The order of one figure; `None` where it cannot be figured yet.
    fn order_of(&self, at: usize) -> Option<(Vec<Order>, Fitted)> {
        let task = self.job.tasks.get(at)?;
        let order = match &task.ask {
            Ask::Patch(..) => patch::figure(&self.patch_ask(at)?).ok()?.order,
            Ask::Paint(..) => paint::figure(&self.paint_ask(at)?).ok()?.order,
            Ask::Tile(..) => match self.tile_figure(&self.tile_ask(at)?).as_ref() {
                Ok(figure) => figure.order.clone(),
                Err(_) => return None,
            },
            Ask::Grout(..) => grout::figure(&self.grout_ask(at)?).ok()?.order,
            Ask::Mortar(..) => mortar::figure(&self.mortar_ask(at)?).ok()?.order,
            Ask::Drain(ask) => drain::figure(ask).ok()?.order,
            Ask::Sheets(..) => match self.sheets_figure(&self.sheets_ask(at)?).as_ref() {
                Ok(figure) => figure.order.clone(),
                Err(_) => return None,
            },
            Ask::Trim(..) => self.trim_figure(at)?.order,
            Ask::Pipe(ask, _) => {
                let figure = pipe::figure(ask).ok()?;
                return Some((figure.order, Some(figure.dry)));
            }
        };
        Some((order, None))
    }

    /// When the open wall was photographed last, as the log has it.
    fn photographed(
        &self,
        ask: &Ask,
        room: Option<Id>,
        wall: Option<usize>,
    ) -> Option<DateTime<FixedOffset>> {
        let bare = matches!(ask, Ask::Patch(..)).then_some(Stage::Stripped);
        let stages = [Some(Stage::DryFitted), Some(Stage::ClosedUp), bare];
        let shows = self.job.photos.iter().filter(|photo| {
            room.is_some()
                && photo.room == room
                && wall.is_none_or(|wall| photo.wall == Some(wall))
                && photo
                    .stage
                    .is_some_and(|stage| stages.contains(&Some(stage)))
        });
        shows.map(|photo| photo.when).max()
    }

    /// The order of work.
    pub(super) fn steps_page(&self) -> Screen {
        let now = Local::now().fixed_offset();
        let all = self.steps_at(now);
        let view = &self.steps_view;
        let mut rows = Vec::new();
        if all.is_empty() {
            rows.push(Row::Text(
                "Nothing to do yet. Figure something, and its steps stand here in their order; or write a step of your own."
                    .into(),
            ));
        }
        let (strip, next) = self.next_step(&all, now);
        if let Some(step) = next {
            rows.push(Row::Text(self.step_does(step)));
            if matches!(step.key, StepKey::Figure(_, Work::Photograph, _)) {
                rows.push(Row::button("To the photos", Command::Go(Here::Photos)));
            }
        }
        rows.extend(self.filter_chips(&all));
        let mut groups: Vec<Option<Id>> = self.job.rooms.iter().map(|r| Some(r.id)).collect();
        groups.push(None);
        for group in groups {
            let wanted = match view.shown {
                Shown::All => true,
                Shown::Job => group.is_none(),
                Shown::Room(id) => group == Some(id),
            };
            let of = all.iter().filter(|step| step.room == group);
            let of: Vec<&Step> = of
                .filter(|step| {
                    let stays = view.done || view.ticked.contains(&step.key);
                    stays || !matches!(step.state, State::Done(_))
                })
                .collect();
            if !wanted || (of.is_empty() && view.shown == Shown::All) {
                continue;
            }
            rows.push(Row::Heading(self.room_named(group)));
            if of.is_empty() {
                rows.push(Row::Text("Nothing is left to do here.".into()));
            }
            rows.extend(of.into_iter().map(|step| self.to_do_row(step, &all, now)));
        }
        let room = match view.shown {
            Shown::Room(id) => Some(id),
            Shown::All | Shown::Job => None,
        };
        rows.push(Row::button(
            "Write a step of your own",
            Command::Pad(Slot::NewStep(room)),
        ));
        rows.push(Row::Text(
            "Waits and holds come from the sources named beside them. Labels, the local code and licensed people have the last word on when work may go on.".into(),
        ));
        Screen {
            crumb: self.job.name.clone(),
            title: "Steps".into(),
            main: next
                .map(|step| Chip::new("Done", true, command(StepCommand::Tick(step.key, true)))),
            rows,
            strip,
            ..Screen::default()
        }
    }

    /// What is next, in the biggest type, and the step itself where it can be done now.
    fn next_step<'a>(
        &self,
        all: &'a [Step],
        now: DateTime<FixedOffset>,
    ) -> (Vec<Big>, Option<&'a Step>) {
        let shown = self.steps_view.shown;
        let mut of = all.iter().filter(|step| match shown {
            Shown::All => true,
            Shown::Job => step.room.is_none(),
            Shown::Room(id) => step.room == Some(id),
        });
        let open = of.clone().find(|step| step.state == State::Open);
        let until = |step: &&Step| match &step.state {
            State::Waits { until, .. } => Some(*until),
            _ => None,
        };
        let waiting = of.clone().filter(|s| until(s).is_some()).min_by_key(until);
        let left = of.clone().filter(|s| !matches!(s.state, State::Done(_)));
        let left = left.count();
        let mut strip = Vec::new();
        if let Some(step) = open {
            strip.push(Big {
                value: self.step_title(step),
                label: format!("next · {}", self.step_place(step)),
            });
        } else if let Some((step, until)) = waiting.and_then(|s| Some((s, until(&s)?))) {
            strip.push(Big {
                value: format!("{} after {}", self.step_title(step), day(until, now)),
                label: format!("next · {}", self.step_place(step)),
            });
        } else if let Some(step) = of.find(|s| matches!(s.state, State::Held(_))) {
            strip.push(Big {
                value: self.step_title(step),
                label: format!("held · {}", self.step_place(step)),
            });
        } else if !all.is_empty() {
            strip.push(Big {
                value: "All ticked".into(),
                label: "nothing is left to do here".into(),
            });
        }
        if left > 0 {
            strip.push(Big {
                value: left.to_string(),
                label: "still to do".into(),
            });
        }
        (strip, open)
    }

    fn filter_chips(&self, all: &[Step]) -> Vec<Row> {
        let view = &self.steps_view;
        let chip = |label: String, of: Shown| {
            Chip::new(label, view.shown == of, command(StepCommand::Show(of)))
        };
        let mut chips = vec![chip("All".into(), Shown::All)];
        let rooms = self.job.rooms.iter();
        chips.extend(rooms.map(|room| chip(room.name.clone(), Shown::Room(room.id))));
        if !self.job.rooms.is_empty() {
            chips.push(chip("The whole job".into(), Shown::Job));
        }
        let mut rows = Vec::new();
        if chips.len() > 1 {
            rows.push(Row::choice("Steps of", chips));
        }
        let done = all.iter().filter(|s| matches!(s.state, State::Done(_)));
        let done = done.count();
        if !all.is_empty() {
            rows.push(Row::choice(
                format!("{done} done"),
                [(false, "Hidden"), (true, "Shown")].map(|(on, label)| {
                    Chip::new(label, view.done == on, command(StepCommand::ShowDone(on)))
                }),
            ));
        }
        rows
    }

    fn to_do_row(&self, step: &Step, all: &[Step], now: DateTime<FixedOffset>) -> Row {
        let on = matches!(step.state, State::Done(_));
        let says = self.step_says(step, all, now);
        let parts = [self.step_figure(step), says];
        let detail: Vec<String> = parts.into_iter().filter(|p| !p.is_empty()).collect();
        let tick = match (step.key, self.step_task(step.key)) {
            // What is fitted dry is ticked on its run, piece by piece.
            (StepKey::Figure(_, Work::FitDry, _), Some(task)) => Command::Go(Here::Task(task)),
            _ => command(StepCommand::Tick(step.key, !on)),
        };
        let value = match step.state {
            State::Done(_) => "done",
            State::Open => "more",
            State::Waits { .. } => "waits",
            State::Held(_) => "held",
        };
        Row::Check {
            label: self.step_title(step),
            detail: detail.join(" · "),
            value: value.into(),
            on,
            command: tick,
            more: Some(Command::Go(Here::Step(step.key))),
        }
    }

    /// One step: what is done, how it stands, where that is written, where it goes.
    pub(super) fn step_page(&self, key: StepKey) -> Screen {
        let now = Local::now().fixed_offset();
        let all = self.steps_at(now);
        let Some(step) = all.iter().find(|step| step.key == key) else {
            return self.steps_page();
        };
        let on = matches!(step.state, State::Done(_));
        let mut rows = vec![Row::Text(self.step_does(step))];
        let says = self.step_says(step, &all, now);
        if !says.is_empty() {
            let tone = match step.state {
                State::Done(_) => Tone::Good,
                State::Open => Tone::Note,
                State::Waits { .. } | State::Held(_) => Tone::Caution,
            };
            rows.push(Row::Note {
                tone,
                text: says,
                detail: String::new(),
                mend: None,
            });
        }
        if let Some(cite) = &step.cite {
            rows.push(Row::Text(words::cite(cite)));
        }
        if let Some(task) = self.step_task(key) {
            rows.push(Row::Figure {
                label: "Its figure".into(),
                detail: String::new(),
                value: self.task_name(task),
                command: Some(Command::Go(Here::Task(task))),
            });
        }
        if matches!(key, StepKey::Figure(_, Work::Photograph, _)) {
            rows.push(Row::button("To the photos", Command::Go(Here::Photos)));
            rows.push(Row::Text("It counts as done once the log has a picture of that wall at the stage Dry-fitted or Closed up, or when you tick it.".into()));
        }
        if let StepKey::Own(id) = key {
            rows.push(Row::yours(
                "What is done",
                &step.own,
                Command::Pad(Slot::StepText(id)),
            ));
            let chip = |label: &str, room: Option<Id>| {
                let to = command(StepCommand::Room(id, room));
                Chip::new(label, step.room == room, to)
            };
            let mut chips = vec![chip("The whole job", None)];
            let rooms = self.job.rooms.iter();
            chips.extend(rooms.map(|room| chip(&room.name, Some(room.id))));
            rows.push(Row::choice("It belongs to", chips));
        }
        rows.push(Row::choice(
            "Its place",
            [("Earlier", true), ("Later", false)]
                .map(|(label, up)| Chip::new(label, false, command(StepCommand::Move(key, up)))),
        ));
        let note = self.job.steps.iter().find(|note| note.key() == key);
        if note.is_some_and(|note| note.rank.is_some()) {
            rows.push(Row::button(
                "Back to the place that follows from the work",
                command(StepCommand::PutBack(key)),
            ));
        }
        if let StepKey::Own(id) = key {
            rows.push(Row::button(
                "Remove this step",
                command(StepCommand::Remove(id)),
            ));
        }
        let main = match (key, self.step_task(key)) {
            (StepKey::Figure(_, Work::FitDry, _), Some(task)) => {
                Chip::new("To its pieces", true, Command::Go(Here::Task(task)))
            }
            _ if on => Chip::new(
                "Not done after all",
                false,
                command(StepCommand::Tick(key, false)),
            ),
            _ => Chip::new("Done", true, command(StepCommand::Tick(key, true))),
        };
        let place = all.iter().filter(|other| other.room == step.room);
        let place: Vec<StepKey> = place.map(|step| step.key).collect();
        let at = place.iter().position(|other| *other == key).unwrap_or(0);
        Screen {
            crumb: self.step_place(step),
            title: self.step_title(step),
            back: Some(Here::Steps),
            rows,
            strip: vec![Big {
                value: format!("{} of {}", at + 1, place.len()),
                label: format!("in order, {}", self.room_named(step.room)),
            }],
            main: Some(main),
            ..Screen::default()
        }
    }

    /// Does what a tap on the order of work asks for.
    pub(super) fn step_command(&mut self, what: StepCommand) {
        match what {
            StepCommand::Show(shown) => self.steps_view.shown = shown,
            StepCommand::ShowDone(done) => self.steps_view.done = done,
            StepCommand::Tick(key, true) => self.tick_step(key),
            StepCommand::Tick(key, false) => {
                self.edit("Not done after all", |job| job.tick_step(key, None));
            }
            StepCommand::Move(key, up) => {
                let all = self.steps();
                let Some(room) = all.iter().find(|s| s.key == key).map(|s| s.room) else {
                    return;
                };
                let beside = all.iter().filter(|step| step.room == room);
                let beside: Vec<_> = beside.map(|step| (step.key, step.rank)).collect();
                let said = if up { "Moved up" } else { "Moved down" };
                self.edit(said, |job| job.move_step(&beside, key, up));
            }
            StepCommand::PutBack(key) => {
                self.edit("Back in its place", |job| job.unrank_step(key));
            }
            StepCommand::Room(id, to) => self.edit("", |job| {
                let note = job.steps.iter_mut().find(|note| note.id == id);
                if let Some(StepOf::Own(room, _)) = note.map(|note| &mut note.of) {
                    *room = to;
                }
            }),
            StepCommand::Remove(id) => {
                self.edit("Step removed", |job| job.steps.retain(|note| note.id != id));
                self.go(Here::Steps);
                self.said = "Step removed".into();
            }
        }
    }

    /// Ticks a step now, unless it is held by something that is not skipped: pieces to be fitted dry, a test.
    fn tick_step(&mut self, key: StepKey) {
        let now = Local::now().fixed_offset();
        let all = self.steps_at(now);
        let Some(step) = all.iter().find(|step| step.key == key) else {
            return;
        };
        let held = match step.state {
            State::Held(Hold::DryFit(fitted, of)) => Some(format!(
                "{fitted} of {of} pieces are fitted dry. Tick the others on the run's page first."
            )),
            State::Held(Hold::Before(before @ StepKey::Figure(_, Work::Test, _))) => {
                let test = all.iter().find(|step| step.key == before);
                let place = test.map_or_else(String::new, |test| self.step_place(test));
                Some(format!(
                    "The test is not ticked yet: {place}. It comes first."
                ))
            }
            _ => None,
        };
        if let Some(held) = held {
            self.said = held;
            return;
        }
        let said = match &step.state {
            State::Waits { until, .. } => format!(
                "{}: ticked before its wait is over, {}",
                self.step_title(step),
                day(*until, now)
            ),
            _ => format!("{}: done", self.step_title(step)),
        };
        self.edit(said, |job| job.tick_step(key, Some(now)));
        self.steps_view.ticked.push(key);
    }
}

/// Words of the person's own into the order of work.
pub(super) fn fill_words(job: &mut takeoff::Job, slot: &Slot, text: String) {
    match slot {
        Slot::NewStep(room) => job.steps.push(StepNote::own(*room, text)),
        Slot::StepText(id) => {
            let note = job.steps.iter_mut().find(|note| note.id == *id);
            if let Some(StepOf::Own(_, own)) = note.map(|note| &mut note.of) {
                *own = text;
            }
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests;
