//! Two copies of one job brought together, entry by entry, so that nothing that either side has is lost.
//!
//! What follows from the marks, where the two differ:
//!
//! | | theirs as it was | theirs changed | theirs removed |
//! |---|---|---|---|
//! | ours as it was | | theirs | removed |
//! | ours changed | ours | both are kept | ours stays |
//! | ours removed | removed | theirs stays | |
//!
//! - An entry that one side never had is added. Two that differ though their marks are the same count as both changed:
//!   that is so where two devices have each brought the same two copies together.
//! - Both kept: ours stays as it is; theirs stands after it under a fresh name. A figure of theirs that they added or
//!   changed stands in the room as they have it; one that they did not change stands in ours. A figure that both have
//!   on the buying list is on it once, with ours. A line by hand of theirs is not ticked.
//! - A figure that names another, as grout names the layout of its tile, goes on naming ours where both are kept.
//! - A room stays that one side removed, where a figure that stays stands in it.
//! - Of the buying list, where both changed it, every key of either side is there; a tick, a price or a count that one
//!   side took away comes back. So does a line of the roll that one side cleared.
//! - Marks follow both sides. An entry that is then like neither side bears a change of a device of its own, so that
//!   it is newer than both: bringing the same two together again changes nothing.
//!
//! Entries are told apart by name alone. Within one job each has its own; of two that do not, the later one gets a
//! fresh one.

mod photos;
mod report;
mod steps;
mod values;

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::{Entry, EntryKind, HandLine, Job, Mark, Order, Stamps, StepNote, Task, entries};
use crate::photo::Photo;
use crate::site::{Id, Room};

pub use report::{Merge, Value};
use report::{figure_name, single_name};

/// Two copies of a job as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Merged {
    /// The job.
    pub job: Job,
    /// Who changed what how often, on both sides.
    pub stamps: Stamps,
    /// What happened to each entry that is not as ours was.
    pub report: Vec<Merge>,
}

/// Brings two copies of one job together. Where both changed an entry ours goes first; the module says how.
#[must_use]
pub fn merge(ours: &Job, our_stamps: &Stamps, theirs: &Job, their_stamps: &Stamps) -> Merged {
    let (ours, theirs) = (told_apart(ours), told_apart(theirs));
    let (ours, theirs) = (Side::of(&ours, our_stamps), Side::of(&theirs, their_stamps));
    let mut report = Vec::new();
    let mut job = ours.job.clone();
    values::head(&mut job, &ours, &theirs, &mut report);
    let mut placed_report = Vec::new();
    let placed = figures(&ours, &theirs, &mut placed_report);
    let rooms = Rooms::of(&ours, &theirs, &placed, &mut report);
    report.append(&mut placed_report);
    job.tasks = placed.into_iter().map(|at| rooms.seat(at)).collect();
    job.rooms = rooms.rooms;
    job.buying.by_hand = hand_lines(&ours, &theirs, &mut report);
    job.photos = photos::photos(&ours, &theirs, &mut report);
    job.steps = steps::steps(&ours, &theirs, &mut report);
    values::buying(&mut job, &ours, &theirs, &mut report);
    values::roll(&mut job, &theirs, &mut report);
    values::tape(&mut job, &ours, &theirs, &mut report);
    let stamps = marks(&ours, &theirs, &job);
    Merged {
        job,
        stamps,
        report,
    }
}

/// A job in which no two entries of a kind have one name.
fn told_apart(job: &Job) -> Cow<'_, Job> {
    let mut known = BTreeSet::new();
    if entries(job).into_iter().all(|entry| known.insert(entry)) {
        return Cow::Borrowed(job);
    }
    let mut job = job.clone();
    let (mut rooms, mut figures, mut lines) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let fresh = |known: &mut BTreeSet<Id>, id: &mut Id| {
        if !known.insert(*id) {
            *id = Id::fresh();
        }
    };
    for room in &mut job.rooms {
        fresh(&mut rooms, &mut room.id);
    }
    for task in &mut job.tasks {
        fresh(&mut figures, &mut task.id);
    }
    for line in &mut job.buying.by_hand {
        fresh(&mut lines, &mut line.id);
    }
    let mut photos = BTreeSet::new();
    for photo in &mut job.photos {
        fresh(&mut photos, &mut Arc::make_mut(photo).id);
    }
    let mut steps = BTreeSet::new();
    for note in &mut job.steps {
        fresh(&mut steps, &mut note.id);
    }
    Cow::Owned(job)
}

/// One copy of the job, its entries found by name.
struct Side<'a> {
    job: &'a Job,
    stamps: &'a Stamps,
    rooms: BTreeMap<Id, usize>,
    figures: BTreeMap<Id, usize>,
    lines: BTreeMap<Id, usize>,
    photos: BTreeMap<Id, usize>,
    steps: BTreeMap<Id, usize>,
}

/// Where each name stands; the first of two.
fn places(ids: impl DoubleEndedIterator<Item = Id> + ExactSizeIterator) -> BTreeMap<Id, usize> {
    ids.enumerate().rev().map(|(at, id)| (id, at)).collect()
}

impl<'a> Side<'a> {
    fn of(job: &'a Job, stamps: &'a Stamps) -> Side<'a> {
        Side {
            rooms: places(job.rooms.iter().map(|room| room.id)),
            figures: places(job.tasks.iter().map(|task| task.id)),
            lines: places(job.buying.by_hand.iter().map(|line| line.id)),
            photos: places(job.photos.iter().map(|photo| photo.id)),
            steps: places(job.steps.iter().map(|note| note.id)),
            job,
            stamps,
        }
    }

    fn room(&self, id: Id) -> Option<&'a Room> {
        self.rooms.get(&id).map(|at| &self.job.rooms[*at])
    }
    fn figure(&self, id: Id) -> Option<&'a Task> {
        self.figures.get(&id).map(|at| &self.job.tasks[*at])
    }
    fn line(&self, id: Id) -> Option<&'a HandLine> {
        self.lines.get(&id).map(|at| &self.job.buying.by_hand[*at])
    }
    fn photo(&self, id: Id) -> Option<&'a Arc<Photo>> {
        self.photos.get(&id).map(|at| &self.job.photos[*at])
    }
    fn step(&self, id: Id) -> Option<&'a StepNote> {
        self.steps.get(&id).map(|at| &self.job.steps[*at])
    }
    /// The name of the room that a figure stands in.
    fn room_of(&self, task: &Task) -> Option<Id> {
        let room = self.job.rooms.get(task.room?)?;
        Some(room.id)
    }

    fn has(&self, (kind, id): Entry) -> bool {
        match kind {
            EntryKind::Room => self.rooms.contains_key(&id),
            EntryKind::Figure => self.figures.contains_key(&id),
            EntryKind::HandLine => self.lines.contains_key(&id),
            EntryKind::Photo => self.photos.contains_key(&id),
            EntryKind::Step => self.steps.contains_key(&id),
            EntryKind::Head | EntryKind::Buying | EntryKind::Tape => true,
        }
    }

    /// Whether an entry is the same on both sides, or on neither.
    fn same(&self, other: &Side<'_>, (kind, id): Entry) -> bool {
        match kind {
            EntryKind::Room => self.room(id) == other.room(id),
            EntryKind::Figure => match (self.figure(id), other.figure(id)) {
                (Some(a), Some(b)) => {
                    a.ask == b.ask && a.on_list == b.on_list && self.room_of(a) == other.room_of(b)
                }
                (a, b) => a.is_none() && b.is_none(),
            },
            EntryKind::HandLine => self.line(id) == other.line(id),
            EntryKind::Photo => self.photo(id) == other.photo(id),
            EntryKind::Step => self.step(id) == other.step(id),
            EntryKind::Head => self.job.name == other.job.name && self.job.units == other.job.units,
            EntryKind::Buying => values::same_buying(&self.job.buying, &other.job.buying),
            EntryKind::Tape => self.job.tape == other.job.tape,
        }
    }
}

/// Which copies of an entry stay.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stays {
    Ours,
    Theirs,
    Both,
    Neither,
}

/// What is said of an entry, but for both being kept.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Said {
    Nothing,
    Added,
    Updated,
    Removed,
    Changed,
}

impl Said {
    fn into(self, report: &mut Vec<Merge>, entry: Entry, name: impl FnOnce() -> String) {
        report.extend(match self {
            Said::Nothing => None,
            Said::Added => Some(Merge::Added {
                entry,
                name: name(),
            }),
            Said::Updated => Some(Merge::Updated {
                entry,
                name: name(),
            }),
            Said::Removed => Some(Merge::Removed {
                entry,
                name: name(),
            }),
            Said::Changed => Some(Merge::ChangedStays {
                entry,
                name: name(),
            }),
        });
    }
}

/// What becomes of a room, a figure or a line by hand.
fn verdict(ours: &Side<'_>, theirs: &Side<'_>, entry: Entry) -> (Stays, Said) {
    let (a, b) = (ours.stamps.of(entry), theirs.stamps.of(entry));
    let order = a.against(&b);
    match (ours.has(entry), theirs.has(entry)) {
        (true, true) => match order {
            _ if ours.same(theirs, entry) => (Stays::Ours, Said::Nothing),
            Order::Ours => (Stays::Ours, Said::Nothing),
            Order::Theirs => (Stays::Theirs, Said::Updated),
            Order::Both | Order::Same => (Stays::Both, Said::Nothing),
        },
        (true, false) => match order {
            _ if !b.gone => (Stays::Ours, Said::Nothing),
            Order::Theirs => (Stays::Neither, Said::Removed),
            Order::Both => (Stays::Ours, Said::Changed),
            Order::Ours | Order::Same => (Stays::Ours, Said::Nothing),
        },
        (false, true) => match order {
            _ if !a.gone => (Stays::Theirs, Said::Added),
            Order::Ours => (Stays::Neither, Said::Nothing),
            Order::Both => (Stays::Theirs, Said::Changed),
            Order::Theirs | Order::Same => (Stays::Theirs, Said::Added),
        },
        (false, false) => (Stays::Neither, Said::Nothing),
    }
}

/// The names of one kind on both sides: ours in order, then those that theirs alone has.
fn all_ids(ours: impl Iterator<Item = Id>, theirs: impl Iterator<Item = Id>) -> Vec<Id> {
    let mut known = BTreeSet::new();
    ours.chain(theirs).filter(|id| known.insert(*id)).collect()
}

/// A figure that stays, and where it stands before rooms are brought together.
struct Placed {
    task: Task,
    room: Option<Id>,
    /// It is as they have it, and so is the room that it stands in.
    theirs: bool,
}

impl Placed {
    fn of(side: &Side<'_>, task: &Task, theirs: bool) -> Placed {
        Placed {
            room: side.room_of(task),
            task: task.clone(),
            theirs,
        }
    }
}

fn figures(ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) -> Vec<Placed> {
    let mut placed = Vec::new();
    let ids = all_ids(
        ours.job.tasks.iter().map(|task| task.id),
        theirs.job.tasks.iter().map(|task| task.id),
    );
    for id in ids {
        let entry = (EntryKind::Figure, id);
        let (stays, said) = verdict(ours, theirs, entry);
        let (a, b) = (ours.figure(id), theirs.figure(id));
        let name = || match (a, b) {
            (Some(task), _) => figure_name(ours.job, task),
            (None, Some(task)) => figure_name(theirs.job, task),
            (None, None) => single_name(EntryKind::Figure).to_owned(),
        };
        said.into(report, entry, name);
        match (stays, a, b) {
            (Stays::Ours, Some(a), _) => placed.push(Placed::of(ours, a, false)),
            (Stays::Theirs, _, Some(b)) => placed.push(Placed::of(theirs, b, true)),
            (Stays::Both, Some(a), Some(b)) => {
                let both = [Placed::of(ours, a, false), Placed::of(theirs, b, true)];
                both_figures(both, &mut placed, report, name());
            }
            _ => {}
        }
    }
    placed
}

/// A figure that both changed: ours, and theirs after it under a fresh name; one, where they differ in no more than
/// being on the buying list, and then it is on it.
fn both_figures(
    [mut kept, mut copy]: [Placed; 2],
    placed: &mut Vec<Placed>,
    report: &mut Vec<Merge>,
    name: String,
) {
    let entry = (EntryKind::Figure, kept.task.id);
    let listed = kept.task.on_list;
    if kept.task.ask == copy.task.ask && kept.room == copy.room {
        kept.task.on_list = true;
        if !listed {
            report.push(Merge::Updated { entry, name });
        }
        placed.push(kept);
        return;
    }
    copy.task.id = Id::fresh();
    copy.task.on_list &= !listed;
    report.push(Merge::KeptBoth {
        entry,
        name,
        copy: (EntryKind::Figure, copy.task.id),
    });
    placed.extend([kept, copy]);
}

/// The rooms that stay, and where each of either side stands among them.
struct Rooms {
    rooms: Vec<Room>,
    ours: BTreeMap<Id, usize>,
    theirs: BTreeMap<Id, usize>,
}

impl Rooms {
    fn of(ours: &Side<'_>, theirs: &Side<'_>, placed: &[Placed], report: &mut Vec<Merge>) -> Rooms {
        let used: BTreeSet<Id> = placed.iter().filter_map(|figure| figure.room).collect();
        let mut rooms = Rooms {
            rooms: Vec::new(),
            ours: BTreeMap::new(),
            theirs: BTreeMap::new(),
        };
        let ids = all_ids(
            ours.job.rooms.iter().map(|room| room.id),
            theirs.job.rooms.iter().map(|room| room.id),
        );
        for id in ids {
            let entry = (EntryKind::Room, id);
            let (mut stays, mut said) = verdict(ours, theirs, entry);
            let (a, b) = (ours.room(id), theirs.room(id));
            if stays == Stays::Neither && used.contains(&id) {
                said = Said::Changed;
                stays = if a.is_some() {
                    Stays::Ours
                } else {
                    Stays::Theirs
                };
            }
            said.into(report, entry, || {
                a.or(b).map(|room| room.name.clone()).unwrap_or_default()
            });
            match (stays, a, b) {
                (Stays::Ours, Some(room), _) | (Stays::Theirs, _, Some(room)) => {
                    rooms.ours.insert(id, rooms.rooms.len());
                    rooms.theirs.insert(id, rooms.rooms.len());
                    rooms.rooms.push(room.clone());
                }
                (Stays::Both, Some(a), Some(b)) => rooms.both(a, b, report),
                _ => {}
            }
        }
        rooms
    }

    fn both(&mut self, ours: &Room, theirs: &Room, report: &mut Vec<Merge>) {
        let copy = Room {
            id: Id::fresh(),
            name: their_copy(&theirs.name),
            ..theirs.clone()
        };
        report.push(Merge::KeptBoth {
            entry: (EntryKind::Room, ours.id),
            name: ours.name.clone(),
            copy: (EntryKind::Room, copy.id),
        });
        self.ours.insert(ours.id, self.rooms.len());
        self.rooms.push(ours.clone());
        self.theirs.insert(theirs.id, self.rooms.len());
        self.rooms.push(copy);
    }

    /// A figure with the place of its room.
    fn seat(&self, figure: Placed) -> Task {
        let rooms = if figure.theirs {
            &self.theirs
        } else {
            &self.ours
        };
        Task {
            room: figure.room.and_then(|id| rooms.get(&id).copied()),
            ..figure.task
        }
    }
}

/// What theirs is called beside ours.
fn their_copy(name: &str) -> String {
    format!("{name}, their copy")
}

fn hand_lines(ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) -> Vec<HandLine> {
    let mut lines = Vec::new();
    let ids = all_ids(
        ours.job.buying.by_hand.iter().map(|line| line.id),
        theirs.job.buying.by_hand.iter().map(|line| line.id),
    );
    for id in ids {
        let entry = (EntryKind::HandLine, id);
        let (stays, said) = verdict(ours, theirs, entry);
        let (a, b) = (ours.line(id), theirs.line(id));
        said.into(report, entry, || {
            a.or(b).map(|line| line.text.clone()).unwrap_or_default()
        });
        match (stays, a, b) {
            (Stays::Ours, Some(line), _) | (Stays::Theirs, _, Some(line)) => {
                lines.push(line.clone());
            }
            (Stays::Both, Some(a), Some(b)) => {
                let copy = HandLine {
                    id: Id::fresh(),
                    text: their_copy(&b.text),
                    ..b.clone()
                };
                report.push(Merge::KeptBoth {
                    entry,
                    name: a.text.clone(),
                    copy: (EntryKind::HandLine, copy.id),
                });
                lines.extend([a.clone(), copy]);
            }
            _ => {}
        }
    }
    lines
}

/// The marks of both sides; an entry that a mark would take for what it is not bears one change more.
fn marks(ours: &Side<'_>, theirs: &Side<'_>, job: &Job) -> Stamps {
    let mut stamps = Stamps::default();
    let merged = Side::of(job, ours.stamps);
    let mut all: BTreeSet<Entry> = entries(ours.job).into_iter().collect();
    all.extend(entries(theirs.job));
    all.extend(ours.stamps.marks.keys());
    all.extend(theirs.stamps.marks.keys());
    // A device that no other is, for what neither side has said.
    let device = Id::fresh().0;
    for entry in all {
        let (a, b) = (ours.stamps.of(entry), theirs.stamps.of(entry));
        let mut mark = a.with(&b);
        mark.gone = !merged.has(entry) && (a.gone || b.gone);
        let unlike = |side: &Side<'_>, of: &Mark| {
            (side.has(entry) || of.gone) && of.changes == mark.changes && !side.same(&merged, entry)
        };
        if unlike(ours, &a) || unlike(theirs, &b) {
            mark.changes.insert(device, 1);
        }
        let marked = |side: &Side<'_>| side.stamps.marks.contains_key(&entry);
        if mark != Mark::default() || marked(ours) || marked(theirs) {
            stamps.marks.insert(entry, mark);
        }
    }
    stamps
}
