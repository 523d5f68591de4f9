//! From a job and its history to a document and back. What did not change since the last save is not written anew.

use std::collections::VecDeque;
use std::sync::{Arc, Weak};

use serde::{Deserialize, Serialize};

use super::container::{Kind, OpenError};
use super::document::{self, Part, Press, Pressed};
use super::history::{State, View};
use super::job_record::{LINES, kind, read_job, write_entries, write_lines};
use super::keep::SaveError;
use super::record::{read, write};
use super::{container, format_1};
use crate::site::Id;
use crate::takeoff::{EntryKind, Job, Mark, RollLine, Stamps};

/// A job as it is kept: with the way back, the way forward, and who changed what.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapshot {
    /// The job.
    pub job: Arc<Job>,
    /// States that undo leads to, the nearest last.
    pub done: Vec<Arc<Job>>,
    /// States that redo leads to, the nearest last.
    pub undone: Vec<Arc<Job>>,
    /// Who changed what how often.
    pub stamps: Arc<Stamps>,
}

impl Snapshot {
    /// A job without a history.
    #[must_use]
    pub fn of(job: Job) -> Snapshot {
        Snapshot {
            job: Arc::new(job),
            done: Vec::new(),
            undone: Vec::new(),
            stamps: Arc::default(),
        }
    }
}

const KINDS: [EntryKind; 8] = [
    EntryKind::Head,
    EntryKind::Room,
    EntryKind::Figure,
    EntryKind::HandLine,
    EntryKind::Buying,
    EntryKind::Tape,
    EntryKind::Photo,
    EntryKind::Step,
];

#[derive(Serialize, Deserialize)]
struct StampRecord {
    kind: u8,
    id: u64,
    changes: Vec<(u64, u32)>,
    gone: bool,
}

pub(super) fn write_stamps(stamps: &Stamps) -> Vec<u8> {
    let record = |((kind, id), mark): (&(EntryKind, Id), &Mark)| StampRecord {
        kind: super::record::code(&KINDS, kind),
        id: id.0,
        changes: mark.changes.iter().map(|(d, n)| (*d, *n)).collect(),
        gone: mark.gone,
    };
    write(&stamps.marks.iter().map(record).collect::<Vec<_>>())
}

fn read_stamps(body: &[u8]) -> Option<Stamps> {
    let mut stamps = Stamps::default();
    for record in read::<Vec<StampRecord>>(body)? {
        let kind = *KINDS.get(usize::from(record.kind))?;
        let mark = Mark {
            changes: record.changes.into_iter().collect(),
            gone: record.gone,
        };
        stamps.marks.insert((kind, Id(record.id)), mark);
    }
    Some(stamps)
}

/// A step between two states, as it was written before. It keeps neither state, only its place in memory from being
/// taken by another.
struct Written {
    from: Weak<Job>,
    to: Weak<Job>,
    part: Pressed,
}

fn is(known: &Weak<Job>, job: &Arc<Job>) -> bool {
    std::ptr::eq(known.as_ptr(), Arc::as_ptr(job))
}

/// The job that was saved last.
struct Last {
    job: Weak<Job>,
    entries: Arc<Vec<Part>>,
    /// The same, in the same order.
    pressed: Vec<Pressed>,
}

/// Writes snapshots, each mostly like the one before.
#[derive(Default)]
pub(super) struct Scribe {
    last: Option<Last>,
    roll: Vec<(Vec<Arc<RollLine>>, Pressed)>,
    /// As they stood in the last document.
    steps: VecDeque<Written>,
    next_step: u64,
    press: Press,
}

impl Scribe {
    /// The document of a snapshot.
    pub fn document(&mut self, snapshot: &Snapshot) -> Result<Vec<u8>, SaveError> {
        let entries = self.entries_of(&snapshot.job);
        let pressed = self.press_entries(&entries)?;
        let mut parts = pressed.clone();
        parts.extend(self.roll_parts(&snapshot.job.roll));
        let mut steps = VecDeque::with_capacity(snapshot.done.len() + snapshot.undone.len());
        for (kind, states) in [(kind::UNDO, &snapshot.done), (kind::REDO, &snapshot.undone)] {
            let mut from = &snapshot.job;
            let mut here = Some(Arc::clone(&entries));
            for to in states.iter().rev() {
                let step = match self.written(kind, from, to) {
                    Some(step) => {
                        here = None;
                        step
                    }
                    None => {
                        let before = here.take().unwrap_or_else(|| self.entries_of(from));
                        let after = self.entries_of(to);
                        let body = view(&before, from).step_to(view(&after, to));
                        here = Some(after);
                        self.next_step += 1;
                        Written {
                            from: Arc::downgrade(from),
                            to: Arc::downgrade(to),
                            part: self.press.part(&Part {
                                kind,
                                id: self.next_step,
                                body,
                            }),
                        }
                    }
                };
                parts.push(step.part.clone());
                steps.push_back(step);
                from = to;
            }
        }
        parts.push(self.press.part(&Part {
            kind: kind::STAMPS,
            id: 0,
            body: write_stamps(&snapshot.stamps),
        }));
        self.steps = steps;
        self.last = Some(Last {
            job: Arc::downgrade(&snapshot.job),
            entries,
            pressed,
        });
        document::join(Kind::Job, &parts)
    }

    fn entries_of(&self, job: &Arc<Job>) -> Arc<Vec<Part>> {
        match &self.last {
            Some(last) if is(&last.job, job) => Arc::clone(&last.entries),
            _ => Arc::new(write_entries(job)),
        }
    }

    /// Entries as they stand in a document. What is new since the last save opens again; what is not new did.
    fn press_entries(&mut self, entries: &[Part]) -> Result<Vec<Pressed>, SaveError> {
        let known = |at: usize, part: &Part| {
            let last = self.last.as_ref()?;
            let old = &last.entries;
            let at = match old.get(at) {
                Some(same) if same == part => at,
                _ => old.iter().position(|old| old == part)?,
            };
            last.pressed.get(at).cloned()
        };
        let parts = entries.iter().enumerate();
        let known: Vec<_> = parts.map(|(at, part)| known(at, part)).collect();
        let new = entries.iter().zip(&known);
        let new: Vec<_> = new
            .filter(|(_, known)| known.is_none())
            .map(|(part, _)| part.clone())
            .collect();
        if !read_job(&new).unread.is_empty() {
            return Err(SaveError::WouldNotOpen);
        }
        let all = entries.iter().zip(known);
        Ok(all
            .map(|(part, known)| known.unwrap_or_else(|| self.press.part(part)))
            .collect())
    }

    fn roll_parts(&mut self, roll: &[Arc<RollLine>]) -> Vec<Pressed> {
        for (at, lines) in roll.chunks(LINES).enumerate() {
            let known = self.roll.get(at).is_some_and(|(known, _)| {
                known.len() == lines.len()
                    && known.iter().zip(lines).all(|(a, b)| Arc::ptr_eq(a, b))
            });
            if !known {
                let part = write_lines(at, lines);
                // Lines are only added: a full part of them stays.
                let part = match lines.len() {
                    LINES => self.press.lasting(&part),
                    _ => self.press.part(&part),
                };
                let part = (lines.to_vec(), part);
                match self.roll.get_mut(at) {
                    Some(place) => *place = part,
                    None => self.roll.push(part),
                }
            }
        }
        self.roll.truncate(roll.len().div_ceil(LINES));
        self.roll.iter().map(|(_, part)| part.clone()).collect()
    }

    /// The step of this kind from one state to another, if it was written before.
    fn written(&mut self, kind: u16, from: &Arc<Job>, to: &Arc<Job>) -> Option<Written> {
        // Mostly they come in the order of the last time, so that the first is the one.
        let at = self.steps.iter().position(|step| {
            step.part.kind() == kind && is(&step.from, from) && is(&step.to, to)
        })?;
        self.steps.remove(at)
    }
}

fn view<'a>(entries: &'a [Part], job: &'a Job) -> View<'a> {
    View {
        entries,
        roll: &job.roll,
    }
}

/// What was read of a document.
pub(super) struct Read {
    pub snapshot: Snapshot,
    /// Kinds and names of parts that did not read, but for steps.
    pub unread: Vec<(u16, u64)>,
    /// The head was there.
    pub headed: bool,
}

/// A snapshot from whichever of its parts read.
pub(super) fn assemble(parts: &[Part]) -> Read {
    let read = read_job(parts);
    let mut unread = read.unread;
    let mut stamps = Stamps::default();
    if let Some(part) = parts.iter().find(|part| part.kind == kind::STAMPS) {
        match read_stamps(&part.body) {
            Some(read) => stamps = read,
            None => unread.push((part.kind, part.id)),
        }
    }
    let job = Arc::new(read.job);
    let states = |what: u16| {
        let mut state = State::of(&job);
        let mut states = Vec::new();
        for step in parts.iter().filter(|part| part.kind == what) {
            let Some(job) = state.follow(&step.body).and_then(|()| state.job()) else {
                break;
            };
            states.push(Arc::new(job));
        }
        // Written from the nearest on; kept with the nearest last.
        states.reverse();
        states
    };
    Read {
        snapshot: Snapshot {
            done: states(kind::UNDO),
            undone: states(kind::REDO),
            job,
            stamps: Arc::new(stamps),
        },
        unread,
        headed: read.headed,
    }
}

/// A job from the bytes of its document, of this format or an older one.
///
/// # Errors
/// [`OpenError`], the first that applies.
pub(super) fn read_document(bytes: &[u8]) -> Result<Snapshot, OpenError> {
    if document::format_of(bytes) == Some(1) {
        let job = format_1::read_job(container::unseal(Kind::Job, bytes)?);
        return job.map(Snapshot::of).ok_or(OpenError::Damaged);
    }
    let read = assemble(&document::read(Kind::Job, bytes)?);
    if read.headed && read.unread.is_empty() {
        Ok(read.snapshot)
    } else {
        Err(OpenError::Damaged)
    }
}
