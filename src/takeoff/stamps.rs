//! Who changed which entry how often, so that two copies of a job can be brought together.
//!
//! Each entry bears a count for every device that changed it (a version vector). Of two copies of an entry one follows
//! the other where none of its counts is less; where each has a count that is more, both sides changed it.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::Arc;

use super::Job;
use crate::photo::Photo;
use crate::site::Id;

/// What an entry of a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EntryKind {
    /// The job's name and units.
    Head,
    /// A room.
    Room,
    /// A figure.
    Figure,
    /// A line of the buying list by hand.
    HandLine,
    /// Ticks, prices, counts and choices of the buying list.
    Buying,
    /// The tape's bench.
    Tape,
    /// A picture of the log.
    Photo,
    /// A tick or a move of the order of work, or a step of the person's own.
    Step,
}

/// One entry of a job.
pub type Entry = (EntryKind, Id);

/// How often which device changed an entry.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mark {
    /// Changes by device.
    pub changes: BTreeMap<u64, u32>,
    /// The last change took it away.
    pub gone: bool,
}

/// How two copies of an entry stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// Neither side changed it since they were the same.
    Same,
    /// Ours was changed since, theirs was not.
    Ours,
    /// Theirs was changed since, ours was not.
    Theirs,
    /// Both were.
    Both,
}

impl Mark {
    /// How ours stands to theirs.
    #[must_use]
    pub fn against(&self, theirs: &Mark) -> Order {
        let more = |a: &Mark, b: &Mark| {
            a.changes
                .iter()
                .any(|(device, n)| b.changes.get(device).is_none_or(|other| n > other))
        };
        match (more(self, theirs), more(theirs, self)) {
            (false, false) => Order::Same,
            (true, false) => Order::Ours,
            (false, true) => Order::Theirs,
            (true, true) => Order::Both,
        }
    }

    /// Everything that either side knows.
    #[must_use]
    pub fn with(&self, theirs: &Mark) -> Mark {
        let mut both = self.clone();
        for (device, n) in &theirs.changes {
            let count = both.changes.entry(*device).or_default();
            *count = (*count).max(*n);
        }
        both
    }
}

/// The marks of a job's entries.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stamps {
    /// By entry; an entry that is gone keeps its mark.
    pub marks: BTreeMap<Entry, Mark>,
}

/// Every entry of a job that bears a mark.
#[must_use]
pub fn entries(job: &Job) -> Vec<Entry> {
    let mut all = vec![
        (EntryKind::Head, Id::NONE),
        (EntryKind::Buying, Id::NONE),
        (EntryKind::Tape, Id::NONE),
    ];
    all.extend(job.rooms.iter().map(|room| (EntryKind::Room, room.id)));
    all.extend(job.tasks.iter().map(|task| (EntryKind::Figure, task.id)));
    all.extend(
        job.buying
            .by_hand
            .iter()
            .map(|line| (EntryKind::HandLine, line.id)),
    );
    all.extend(job.photos.iter().map(|photo| (EntryKind::Photo, photo.id)));
    all.extend(job.steps.iter().map(|note| (EntryKind::Step, note.id)));
    all
}

/// Whether an entry is the same in two states of a job.
fn same(entry: Entry, a: &Job, b: &Job) -> bool {
    let (kind, id) = entry;
    match kind {
        EntryKind::Head => a.name == b.name && a.units == b.units,
        EntryKind::Room => {
            let room = |job: &Job| job.rooms.iter().position(|room| room.id == id);
            match (room(a), room(b)) {
                (Some(at), Some(bt)) => a.rooms[at] == b.rooms[bt],
                (a, b) => a == b,
            }
        }
        EntryKind::Figure => {
            let task = |job: &Job| job.tasks.iter().position(|task| task.id == id);
            match (task(a), task(b)) {
                (Some(at), Some(bt)) => {
                    let (x, y) = (&a.tasks[at], &b.tasks[bt]);
                    let room = |job: &Job, room: Option<usize>| {
                        room.and_then(|room| job.rooms.get(room))
                            .map(|room| room.id)
                    };
                    x.ask == y.ask && x.on_list == y.on_list && room(a, x.room) == room(b, y.room)
                }
                (a, b) => a == b,
            }
        }
        EntryKind::HandLine => {
            let line = |job: &Job| {
                job.buying
                    .by_hand
                    .iter()
                    .find(|line| line.id == id)
                    .cloned()
            };
            line(a) == line(b)
        }
        EntryKind::Buying => {
            let (x, y) = (&a.buying, &b.buying);
            x.ticked == y.ticked
                && x.overrides == y.overrides
                && x.prices == y.prices
                && x.symbol == y.symbol
                && x.choice == y.choice
                && x.metric_packs == y.metric_packs
                && x.cutting == y.cutting
                && x.left == y.left
        }
        EntryKind::Tape => a.tape == b.tape,
        EntryKind::Photo => {
            let photo = |job: &Job| job.photos.iter().find(|photo| photo.id == id).cloned();
            photo(a) == photo(b)
        }
        EntryKind::Step => {
            let note = |job: &Job| job.steps.iter().find(|note| note.id == id).cloned();
            note(a) == note(b)
        }
    }
}

impl Stamps {
    /// Marks what a device changed between two states of the job.
    pub fn mark(&mut self, device: u64, before: &Job, after: &Job) {
        let few = |(kind, _): &Entry| *kind != EntryKind::Photo;
        let now: BTreeSet<Entry> = entries(after).into_iter().filter(few).collect();
        let mut all = now.clone();
        all.extend(entries(before).into_iter().filter(few));
        for entry in all {
            if !same(entry, before, after) {
                self.changed(device, entry, !now.contains(&entry));
            }
        }
        // There may be thousands of pictures, of which an edit changes one.
        let mut known: HashMap<Id, &Arc<Photo>> = HashMap::new();
        known.extend(before.photos.iter().map(|photo| (photo.id, photo)));
        for photo in &after.photos {
            let same = known
                .remove(&photo.id)
                .is_some_and(|old| Arc::ptr_eq(old, photo) || old == photo);
            if !same {
                self.changed(device, (EntryKind::Photo, photo.id), false);
            }
        }
        for id in known.into_keys() {
            self.changed(device, (EntryKind::Photo, id), true);
        }
    }

    fn changed(&mut self, device: u64, entry: Entry, gone: bool) {
        let mark = self.marks.entry(entry).or_default();
        *mark.changes.entry(device).or_default() += 1;
        mark.gone = gone;
    }

    /// The mark of an entry; an entry that was never marked was never changed.
    #[must_use]
    pub fn of(&self, entry: Entry) -> Mark {
        self.marks.get(&entry).cloned().unwrap_or_default()
    }
}
