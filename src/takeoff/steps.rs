//! The order of work over the whole job: from the figures, each step after those that it needs, and steps by hand.
//!
//! Which follows which, beyond the order within a figure:
//!
//! - Nothing is joined before its run is fitted dry; the ticks of the run say so, and none is kept here.
//! - A wall closes, and a patch of its room goes in, after every test in that room, or on that wall where walls are known.
//! - Painting follows the patches of its room; tile the bed that is for it; grout the tile that it is for.
//! - Casing follows the painted walls of its room; base these, the tile of its floor and the casing.
//!
//! All that is common practice or stands in the trade's own order, with its source. Nothing here says that work is safe.

use chrono::{DateTime, Duration, FixedOffset};

use super::Job;
use crate::handbook::Cite;
use crate::measure::Phrase;
use crate::site::Id;
use crate::trades::{Order, Work};

/// What a step is known by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StepKey {
    /// A step of a figure: the figure, what is done, and which of several it is, from 0.
    Figure(Id, Work, u8),
    /// One of the person's own.
    Own(Id),
}

/// What a person said of a step.
#[derive(Clone, Debug, PartialEq)]
pub struct StepNote {
    /// What it is known by in every copy of the job: for a step of a figure it follows from the figure.
    pub id: Id,
    /// Which step.
    pub of: StepOf,
    /// When it was ticked, in local time.
    pub done: Option<DateTime<FixedOffset>>,
    /// Where it was moved to.
    pub rank: Option<i64>,
}

/// Which step a note is of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StepOf {
    /// A step of a figure.
    Figure(Id, Work, u8),
    /// One of the person's own, in a room or for the whole job.
    Own(Option<Id>, String),
}

impl StepNote {
    /// A note of a step of a figure, with nothing said yet.
    #[must_use]
    pub fn figure(figure: Id, work: Work, nth: u8) -> StepNote {
        let place = Work::ALL.iter().position(|one| *one == work).unwrap_or(0);
        // Multiplied and folded, the bits are spread, so that no two notes meet but by chance.
        let spread = |bits: u64| {
            let once = (bits ^ (bits >> 31)).wrapping_mul(0x9e37_79b9_7f4a_7c15);
            let twice = (once ^ (once >> 29)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            twice ^ (twice >> 32)
        };
        let step = ((place as u64) << 8) | u64::from(nth);
        StepNote {
            id: Id(spread(spread(figure.0) ^ step).max(1)),
            of: StepOf::Figure(figure, work, nth),
            done: None,
            rank: None,
        }
    }
    /// A step of the person's own.
    #[must_use]
    pub fn own(room: Option<Id>, text: impl Into<String>) -> StepNote {
        StepNote {
            id: Id::fresh(),
            of: StepOf::Own(room, text.into()),
            done: None,
            rank: None,
        }
    }
    /// The step that it is of.
    #[must_use]
    pub fn key(&self) -> StepKey {
        match self.of {
            StepOf::Figure(figure, work, nth) => StepKey::Figure(figure, work, nth),
            StepOf::Own(..) => StepKey::Own(self.id),
        }
    }
}

/// A figure with its order of work.
#[derive(Clone, Debug)]
pub struct Ordered {
    /// The figure.
    pub figure: Id,
    /// Its room.
    pub room: Option<Id>,
    /// The wall of it, counted from 0, where it stands on one.
    pub wall: Option<usize>,
    /// The figure of the tile that it is for.
    pub tile: Option<Id>,
    /// Its steps.
    pub order: Vec<Order>,
    /// Pieces fitted dry, of how many, where it is a run.
    pub dry: Option<(usize, usize)>,
    /// When its open wall was photographed, where the log has such a picture.
    pub photographed: Option<DateTime<FixedOffset>>,
}

/// Why a step is not to be done yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// So many pieces are fitted dry, of so many.
    DryFit(usize, usize),
    /// Another step comes first.
    Before(StepKey),
}

/// How a step stands.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Done; when, where that is known.
    Done(Option<DateTime<FixedOffset>>),
    /// It can be done.
    Open,
    /// Something has to pass.
    Waits {
        /// Until when.
        until: DateTime<FixedOffset>,
        /// How long in all, in hours.
        hours: f64,
        /// Where that stands.
        cite: Cite,
    },
    /// Something has to be done first.
    Held(Hold),
}

/// A step of the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What it is known by.
    pub key: StepKey,
    /// Its room; `None` for the whole job.
    pub room: Option<Id>,
    /// What is done.
    pub does: Phrase,
    /// The same in the person's own words, where it is theirs.
    pub own: String,
    /// How many of this kind its figure has.
    pub of: u8,
    /// What has to pass before it though no figure says how long.
    pub wants: Option<(Phrase, Cite)>,
    /// Where it stands that it is done then.
    pub cite: Option<Cite>,
    /// Its place.
    pub rank: i64,
    /// How it stands.
    pub state: State,
}

/// A step that comes before another, and what passes between.
#[derive(Clone)]
struct After {
    key: StepKey,
    pause: Option<(f64, Cite)>,
}

/// A step on its way into the list.
struct Draft {
    step: Step,
    after: Vec<After>,
    joins: Option<(usize, usize)>,
    wall: Option<usize>,
    /// When it was done, and whether it is done though nobody said when.
    done: Option<Option<DateTime<FixedOffset>>>,
}

/// Where kinds of work come in the whole job; what is between is left to their order within it.
fn phase(work: Work) -> i64 {
    match work {
        Work::ShutOff | Work::StripTrim => 0,
        Work::CutPipe
        | Work::FitDry
        | Work::Mark
        | Work::TakeApart
        | Work::Join
        | Work::Wait
        | Work::LayDrain
        | Work::Test => 1,
        Work::Photograph | Work::Close => 2,
        Work::OpenUp
        | Work::Board
        | Work::Coat
        | Work::Sand
        | Work::CutSheets
        | Work::FastenSheets => 3,
        Work::Prime | Work::Ceiling | Work::Walls | Work::Trim => 4,
        Work::Bed => 5,
        Work::Chalk | Work::SetTile => 6,
        Work::Grout | Work::Seal => 7,
        Work::CutTrim | Work::NailCasing | Work::NailBase | Work::CaulkTrim => 8,
    }
}

/// Where steps of the person's own come that were not moved.
const OWN: i64 = 9;
/// Room between two steps, for those that are moved there.
const APART: i64 = 1 << 20;

fn rank(phase: i64, figure: usize, at: usize) -> i64 {
    let part = |n: usize, bits: u32| i64::try_from(n).unwrap_or(i64::MAX).min((1 << bits) - 1);
    ((phase << 22) + (part(figure, 14) << 8) + part(at, 8)) * APART
}

/// The steps of the whole job in their order, each with how it stands `now`.
///
/// # Inputs
/// `figures`: each figure of the job with its trade's order, in the job's order. `now`: local time.
/// # Gives
/// What is done, what waits and until when, what is held and by what. Where nothing was moved: roughing in, tests, walls
/// closed, patches and sheets, paint, beds, tile, grout, trim; steps by hand last.
/// # Source
/// Each step's and each wait's own; that these trades follow each other so is common practice, no published source.
/// # Example
/// ```
/// use chrono::DateTime;
/// use storyrod::{measure::Units, takeoff::{Job, StepNote, steps}};
/// let now = DateTime::UNIX_EPOCH.fixed_offset();
/// let mut job = Job::new("Cabin", now, Units::Metres);
/// job.steps.push(StepNote::own(None, "Order the tile"));
/// assert_eq!(steps(&job, &[], now)[0].own, "Order the tile");
/// ```
#[must_use]
pub fn steps(job: &Job, figures: &[Ordered], now: DateTime<FixedOffset>) -> Vec<Step> {
    let mut drafts: Vec<Draft> = Vec::new();
    let mut first_waits = Vec::new();
    for (at, figure) in figures.iter().enumerate() {
        let (own, leading) = within(at, figure, figures);
        first_waits.push(leading);
        drafts.extend(own);
    }
    between(&mut drafts, figures, &first_waits);
    for (at, note) in job.steps.iter().enumerate() {
        let known = drafts.iter_mut().find(|draft| draft.step.key == note.key());
        match (known, &note.of) {
            (Some(draft), _) => {
                draft.step.rank = note.rank.unwrap_or(draft.step.rank);
                // What is ticked on the run's own page is not ticked here.
                if draft.done.is_none() {
                    draft.done = note.done.map(Some);
                }
            }
            (None, StepOf::Own(room, text)) => {
                let room = room.filter(|id| job.rooms.iter().any(|room| room.id == *id));
                drafts.push(Draft {
                    step: Step {
                        key: note.key(),
                        room,
                        does: "".into(),
                        own: text.clone(),
                        of: 1,
                        wants: None,
                        cite: None,
                        rank: note.rank.unwrap_or_else(|| rank(OWN, at, 0)),
                        state: State::Open,
                    },
                    after: Vec::new(),
                    joins: None,
                    wall: None,
                    done: note.done.map(Some),
                });
            }
            // A figure that is gone, or has fewer coats now.
            (None, StepOf::Figure(..)) => {}
        }
    }
    let done: Vec<_> = drafts.iter().map(|d| (d.step.key, d.done)).collect();
    let mut steps: Vec<Step> = drafts
        .into_iter()
        .map(|draft| {
            let state = state(&draft, &done, now);
            Step {
                state,
                ..draft.step
            }
        })
        .collect();
    steps.sort_by_key(|step| (step.rank, step.key));
    steps
}

/// The steps within a figure, each after the one before it, and the wait before its first.
fn within(at: usize, figure: &Ordered, all: &[Ordered]) -> (Vec<Draft>, Option<(f64, Cite)>) {
    let mut drafts: Vec<Draft> = Vec::new();
    let (mut leading, mut pause) = (None, None);
    let mut wants = None;
    let mut last: Option<StepKey> = None;
    // Tile that is a figure of its own is set there, not where its mortar is figured.
    let set_elsewhere = figure
        .tile
        .is_some_and(|tile| all.iter().any(|f| f.figure == tile));
    let count = |work: Work| figure.order.iter().filter(|o| o.work == work).count();
    for order in &figure.order {
        if order.work == Work::Wait {
            pause = order.hours.map(|hours| (hours, order.cite));
            wants = order
                .hours
                .is_none()
                .then(|| (order.does.clone(), order.cite));
            continue;
        }
        if order.work == Work::SetTile && set_elsewhere {
            continue;
        }
        let covers =
            order.work == Work::Close || (order.work == Work::Board && count(Work::OpenUp) > 0);
        let nth = |drafts: &[Draft], work: Work| {
            let same = |d: &&Draft| matches!(d.step.key, StepKey::Figure(_, w, _) if w == work);
            u8::try_from(drafts.iter().filter(same).count()).unwrap_or(u8::MAX)
        };
        let follows = last.map(|key| After {
            key,
            pause: pause.take(),
        });
        if last.is_none() {
            leading = pause.take();
        }
        let mut draft = |work: Work, does: Phrase, cite: Cite, after: Option<After>| {
            let key = StepKey::Figure(figure.figure, work, nth(&drafts, work));
            let place = rank(phase(order.work), at, drafts.len());
            let done = match work {
                Work::FitDry => figure.dry.filter(|(fitted, of)| fitted == of).map(|_| None),
                Work::Photograph => figure.photographed.map(Some),
                _ => None,
            };
            drafts.push(Draft {
                step: Step {
                    key,
                    room: figure.room,
                    does,
                    own: String::new(),
                    of: u8::try_from(count(work)).unwrap_or(u8::MAX),
                    wants: None,
                    cite: Some(cite),
                    rank: place,
                    state: State::Open,
                },
                after: after.into_iter().collect(),
                joins: figure.dry.filter(|(fitted, of)| order.joins && fitted < of),
                wall: figure.wall,
                done,
            });
            key
        };
        if covers {
            draft(
                Work::Photograph,
                "Photograph what is in the wall, a tape in the picture, before it is closed up."
                    .into(),
                PHOTO,
                follows.clone(),
            );
        }
        last = Some(draft(order.work, order.does.clone(), order.cite, follows));
        if let Some(draft) = drafts.last_mut() {
            draft.step.wants = wants.take();
        }
    }
    (drafts, leading)
}

/// Before anything is covered.
static PHOTO: Cite = Cite::practice("what is in a wall is photographed before it is covered");

/// What holds between figures.
fn between(drafts: &mut [Draft], figures: &[Ordered], leading: &[Option<(f64, Cite)>]) {
    let tests: Vec<_> = (drafts.iter())
        .filter(|d| matches!(d.step.key, StepKey::Figure(_, Work::Test, _)))
        .map(|d| (d.step.key, d.step.room, d.wall))
        .collect();
    for draft in drafts.iter_mut() {
        let StepKey::Figure(_, Work::Close | Work::Board, _) = draft.step.key else {
            continue;
        };
        for (key, room, wall) in &tests {
            let elsewhere = draft.wall.zip(*wall).is_some_and(|(a, b)| a != b);
            let known = draft.after.iter().any(|after| after.key == *key);
            if *room == draft.step.room && room.is_some() && !elsewhere && !known {
                draft.after.push(After {
                    key: *key,
                    pause: None,
                });
            }
        }
    }
    for (figure, leading) in figures.iter().zip(leading) {
        let has = |work: Work| figure.order.iter().any(|order| order.work == work);
        let of = |wanted: &Ordered, works: &[Work]| -> Option<StepKey> {
            let last = drafts.iter().rev().find(|d| {
                matches!(d.step.key, StepKey::Figure(id, work, _) if id == wanted.figure && works.contains(&work))
            });
            last.map(|d| d.step.key)
        };
        let mut preceding: Vec<After> = Vec::new();
        for other in figures {
            let same_room = other.room == figure.room && figure.room.is_some();
            let key = if figure.tile == Some(other.figure) && has(Work::Grout) {
                of(other, &[Work::SetTile])
            } else if other.tile == Some(figure.figure) && has(Work::SetTile) {
                of(other, &[Work::Bed])
            } else if same_room && (has(Work::Walls) || has(Work::Ceiling)) {
                of(other, &[Work::Sand, Work::StripTrim])
            } else if same_room && has(Work::NailBase) {
                of(
                    other,
                    &[Work::Walls, Work::SetTile, Work::Grout, Work::NailCasing],
                )
            } else if same_room && has(Work::NailCasing) {
                of(other, &[Work::Walls])
            } else {
                None
            };
            preceding.extend(key.map(|key| After {
                key,
                pause: *leading,
            }));
        }
        // Old trim comes off before anything else.
        let first = drafts.iter_mut().find(|d| {
            matches!(d.step.key, StepKey::Figure(id, work, _) if id == figure.figure && work != Work::StripTrim)
        });
        if let Some(first) = first {
            first.after.extend(preceding);
        }
    }
}

type Done = Vec<(StepKey, Option<Option<DateTime<FixedOffset>>>)>;

fn state(draft: &Draft, done: &Done, now: DateTime<FixedOffset>) -> State {
    if let Some(when) = draft.done {
        return State::Done(when);
    }
    if let Some((fitted, of)) = draft.joins {
        return State::Held(Hold::DryFit(fitted, of));
    }
    let mut waits: Option<(DateTime<FixedOffset>, f64, Cite)> = None;
    for after in &draft.after {
        let known = done.iter().find(|(key, _)| *key == after.key);
        match known.and_then(|(_, done)| *done) {
            None => return State::Held(Hold::Before(after.key)),
            Some(None) => {}
            Some(Some(when)) => {
                let Some((hours, cite)) = after.pause else {
                    continue;
                };
                let Some(until) = passed(when, hours).filter(|until| *until > now) else {
                    continue;
                };
                if waits.is_none_or(|(latest, ..)| until > latest) {
                    waits = Some((until, hours, cite));
                }
            }
        }
    }
    match waits {
        Some((until, hours, cite)) => State::Waits { until, hours, cite },
        None => State::Open,
    }
}

/// So many hours after a time; `None` beyond the calendar.
fn passed(when: DateTime<FixedOffset>, hours: f64) -> Option<DateTime<FixedOffset>> {
    let seconds = Duration::try_seconds((hours * 3600.0).clamp(0.0, 1e9).round() as i64)?;
    when.checked_add_signed(seconds)
}

impl Job {
    /// What was said of a step, to change it.
    fn step_note(&mut self, key: StepKey) -> Option<&mut StepNote> {
        if !self.steps.iter().any(|note| note.key() == key)
            && let StepKey::Figure(figure, work, nth) = key
        {
            self.steps.push(StepNote::figure(figure, work, nth));
        }
        self.steps.iter_mut().find(|note| note.key() == key)
    }

    /// A step ticked at a time, or no longer. What says nothing any more is dropped.
    pub fn tick_step(&mut self, key: StepKey, done: Option<DateTime<FixedOffset>>) {
        if let Some(note) = self.step_note(key) {
            note.done = done;
        }
        self.drop_silent();
    }

    /// A step moved to a place between others.
    pub fn rank_step(&mut self, key: StepKey, rank: i64) {
        if let Some(note) = self.step_note(key) {
            note.rank = Some(rank);
        }
    }

    /// A step back in the place that follows from its figure.
    pub fn unrank_step(&mut self, key: StepKey) {
        if let Some(note) = self.step_note(key) {
            note.rank = None;
        }
        self.drop_silent();
    }

    fn drop_silent(&mut self) {
        self.steps.retain(|note| {
            matches!(note.of, StepOf::Own(..)) || note.done.is_some() || note.rank.is_some()
        });
    }

    /// A step moved one up or down among those that are shown, which are given in their order. Where two have no room
    /// between them they exchange their places.
    pub fn move_step(&mut self, shown: &[(StepKey, i64)], key: StepKey, up: bool) {
        let Some(at) = shown.iter().position(|(one, _)| *one == key) else {
            return;
        };
        let rank_of = |at: usize| shown.get(at).map(|(_, rank)| *rank);
        let other = if up { at.checked_sub(1) } else { Some(at + 1) };
        let Some((other, beside)) = other.and_then(|other| Some((other, rank_of(other)?))) else {
            return;
        };
        let beyond = if up {
            other.checked_sub(1).and_then(rank_of)
        } else {
            rank_of(other + 1)
        };
        let far = if up { -APART } else { APART };
        let between = beyond.map_or(beside.saturating_add(far), |b| i64::midpoint(beside, b));
        if between == beside || Some(between) == beyond {
            self.rank_step(shown[other].0, shown[at].1);
            self.rank_step(key, beside);
        } else {
            self.rank_step(key, between);
        }
    }
}

#[cfg(test)]
mod tests;
