//! Steps of undo and redo, each kept as what it takes to get from the state after it to the state before it.
//!
//! Chained from the open job: the nearest step is read first, and where one is lost those beyond it are lost with it.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::document::Part;
use super::job_record::{LineOfRoll, read_job, read_line, write_entries, write_line};
use super::record::{all, read, write};
use crate::takeoff::{Job, RollLine};

/// A state of the job to step from or to: its entries as bytes, and the roll, whose lines never change.
#[derive(Clone, Copy)]
pub(super) struct View<'a> {
    pub entries: &'a [Part],
    pub roll: &'a [Arc<RollLine>],
}

/// A state of the job that steps are followed from.
pub(super) struct State {
    entries: Vec<Part>,
    roll: Vec<Arc<RollLine>>,
}

#[derive(Serialize, Deserialize)]
struct StepRecord {
    /// Kind and name of an entry, and its body; without one the entry is not there.
    changed: Vec<(u16, u64, Option<Vec<u8>>)>,
    /// The order of all entries, where it is not that of the state after.
    order: Option<Vec<(u16, u64)>>,
    /// Lines of the roll that stay, and those that follow them.
    roll_kept: u32,
    roll_then: Vec<LineOfRoll>,
}

impl<'a> View<'a> {
    fn body(self, kind: u16, id: u64) -> Option<&'a Vec<u8>> {
        let part = self
            .entries
            .iter()
            .find(|part| (part.kind, part.id) == (kind, id))?;
        Some(&part.body)
    }

    /// What leads from this state to another.
    pub fn step_to(self, other: View) -> Vec<u8> {
        let mut changed: Vec<_> = other
            .entries
            .iter()
            .filter(|part| self.body(part.kind, part.id) != Some(&part.body))
            .map(|part| (part.kind, part.id, Some(part.body.clone())))
            .collect();
        changed.extend(
            self.entries
                .iter()
                .filter(|part| other.body(part.kind, part.id).is_none())
                .map(|part| (part.kind, part.id, None)),
        );
        let mut followed = self.entries.to_vec();
        change(&mut followed, &changed);
        let order = keys(other.entries);
        let kept = self
            .roll
            .iter()
            .zip(other.roll)
            .take_while(|(a, b)| Arc::ptr_eq(a, b) || a == b)
            .count();
        write(&StepRecord {
            order: (keys(&followed) != order).then_some(order),
            changed,
            roll_kept: u32::try_from(kept).unwrap_or(u32::MAX),
            roll_then: other.roll[kept..].iter().map(|l| write_line(l)).collect(),
        })
    }
}

impl State {
    pub fn of(job: &Job) -> State {
        State {
            entries: write_entries(job),
            roll: job.roll.clone(),
        }
    }

    /// Follows a step; `None` where it does not read.
    pub fn follow(&mut self, step: &[u8]) -> Option<()> {
        let step: StepRecord = read(step)?;
        change(&mut self.entries, &step.changed);
        if let Some(order) = step.order {
            let place = |part: &Part| order.iter().position(|key| *key == (part.kind, part.id));
            self.entries.sort_by_key(place);
        }
        self.roll.truncate(step.roll_kept as usize);
        self.roll.extend(all(step.roll_then, read_line)?);
        Some(())
    }

    /// The job in this state; `None` where an entry does not read.
    pub fn job(&self) -> Option<Job> {
        let mut read = read_job(&self.entries);
        read.job.roll.clone_from(&self.roll);
        (read.headed && read.unread.is_empty()).then_some(read.job)
    }
}

fn keys(entries: &[Part]) -> Vec<(u16, u64)> {
    entries.iter().map(|part| (part.kind, part.id)).collect()
}

fn change(entries: &mut Vec<Part>, changed: &[(u16, u64, Option<Vec<u8>>)]) {
    for (kind, id, body) in changed {
        let at = entries
            .iter()
            .position(|part| (part.kind, part.id) == (*kind, *id));
        match (at, body) {
            (Some(at), Some(body)) => entries[at].body.clone_from(body),
            (Some(at), None) => {
                entries.remove(at);
            }
            (None, Some(body)) => entries.push(Part {
                kind: *kind,
                id: *id,
                body: body.clone(),
            }),
            (None, None) => {}
        }
    }
}
