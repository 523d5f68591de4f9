//! From a job and its history to a document and back. What did not change since the last save is not written anew.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::container::{Kind, OpenError};
use super::document::{self, Part};
use super::history::State;
use super::job_record::{LINES, kind, read_job, write_lines};
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

const KINDS: [EntryKind; 6] = [
    EntryKind::Head,
    EntryKind::Room,
    EntryKind::Figure,
    EntryKind::HandLine,
    EntryKind::Buying,
    EntryKind::Tape,
];

#[derive(Serialize, Deserialize)]
struct StampRecord {
    kind: u8,
    id: u64,
    changes: Vec<(u64, u32)>,
    gone: bool,
}

fn write_stamps(stamps: &Stamps) -> Vec<u8> {
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

/// A step between two states, as it was written before.
struct Written {
    from: Arc<Job>,
    to: Arc<Job>,
    id: u64,
    body: Vec<u8>,
}

/// Writes snapshots, each mostly like the one before.
#[derive(Default)]
pub(super) struct Scribe {
    /// The job that was saved last.
    last: Option<(Arc<Job>, Arc<State>)>,
    roll: Vec<(Vec<Arc<RollLine>>, Part)>,
    steps: Vec<Written>,
    next_step: u64,
    press: document::Pressed,
}

impl Scribe {
    /// The document of a snapshot.
    pub fn document(&mut self, snapshot: &Snapshot) -> Result<Vec<u8>, SaveError> {
        let parts = self.parts(snapshot)?;
        document::write_with(Kind::Job, parts, &mut self.press)
    }

    fn parts(&mut self, snapshot: &Snapshot) -> Result<Vec<Part>, SaveError> {
        let state = self.state_of(&snapshot.job);
        self.check(&state.1)?;
        let mut parts = state.1.entries.clone();
        parts.extend(self.roll_parts(&snapshot.job.roll));
        let mut kept = Vec::with_capacity(snapshot.done.len() + snapshot.undone.len());
        for (kind, states) in [(kind::UNDO, &snapshot.done), (kind::REDO, &snapshot.undone)] {
            let mut from = Arc::clone(&snapshot.job);
            let mut here = state.clone();
            for to in states.iter().rev() {
                let step = match self.written(&from, to) {
                    Some(step) => step,
                    None => {
                        if !Arc::ptr_eq(&here.0, &from) {
                            here = self.state_of(&from);
                        }
                        let there = self.state_of(to);
                        let body = here.1.step_to(&there.1);
                        here = there;
                        self.next_step += 1;
                        Written {
                            from,
                            to: Arc::clone(to),
                            id: self.next_step,
                            body,
                        }
                    }
                };
                parts.push(Part {
                    kind,
                    id: step.id,
                    body: step.body.clone(),
                });
                kept.push(step);
                from = Arc::clone(to);
            }
        }
        self.steps = kept;
        self.last = Some(state);
        parts.push(Part {
            kind: kind::STAMPS,
            id: 0,
            body: write_stamps(&snapshot.stamps),
        });
        Ok(parts)
    }

    fn state_of(&self, job: &Arc<Job>) -> (Arc<Job>, Arc<State>) {
        match &self.last {
            Some(last) if Arc::ptr_eq(&last.0, job) => last.clone(),
            _ => (Arc::clone(job), Arc::new(State::of(job))),
        }
    }

    /// What is new since the last save opens again; what is not new did.
    fn check(&self, state: &State) -> Result<(), SaveError> {
        let old = self.last.as_ref().map(|(_, state)| state);
        let new: Vec<Part> = state
            .entries
            .iter()
            .filter(|part| old.is_none_or(|old| !old.entries.contains(part)))
            .cloned()
            .collect();
        if read_job(&new).unread.is_empty() {
            Ok(())
        } else {
            Err(SaveError::WouldNotOpen)
        }
    }

    fn roll_parts(&mut self, roll: &[Arc<RollLine>]) -> Vec<Part> {
        for (at, lines) in roll.chunks(LINES).enumerate() {
            let known = self.roll.get(at).is_some_and(|(known, _)| {
                known.len() == lines.len()
                    && known.iter().zip(lines).all(|(a, b)| Arc::ptr_eq(a, b))
            });
            if !known {
                let part = (lines.to_vec(), write_lines(at, lines));
                match self.roll.get_mut(at) {
                    Some(place) => *place = part,
                    None => self.roll.push(part),
                }
            }
        }
        self.roll.truncate(roll.len().div_ceil(LINES));
        self.roll.iter().map(|(_, part)| part.clone()).collect()
    }

    /// The step from one state to another, if it was written before.
    fn written(&mut self, from: &Arc<Job>, to: &Arc<Job>) -> Option<Written> {
        let at = (self.steps.iter())
            .position(|step| Arc::ptr_eq(&step.from, from) && Arc::ptr_eq(&step.to, to))?;
        Some(self.steps.swap_remove(at))
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
