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

/// The body of an entry out of what it was in the state after: so many bytes of its front, these, so many of its end.
/// Of an entry that was not there nothing stays.
#[derive(Serialize, Deserialize)]
struct BodyRecord {
    front: u32,
    between: Vec<u8>,
    end: u32,
}

/// Kind and name of an entry, and its body; without one the entry is not there.
type Changed = (u16, u64, Option<BodyRecord>);

#[derive(Serialize, Deserialize)]
struct StepRecord {
    changed: Vec<Changed>,
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
        let mut changed: Vec<Changed> = Vec::new();
        for part in other.entries {
            let old = self.body(part.kind, part.id);
            if old != Some(&part.body) {
                let body = BodyRecord::of(old.map_or(&[], Vec::as_slice), &part.body);
                changed.push((part.kind, part.id, Some(body)));
            }
        }
        changed.extend(
            self.entries
                .iter()
                .filter(|part| other.body(part.kind, part.id).is_none())
                .map(|part| (part.kind, part.id, None)),
        );
        let mut followed = self.entries.to_vec();
        let followed_all = change(&mut followed, &changed);
        debug_assert!(
            followed_all.is_some(),
            "a step leads from the state that it was taken in"
        );
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
        change(&mut self.entries, &step.changed)?;
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

impl BodyRecord {
    fn of(old: &[u8], new: &[u8]) -> BodyRecord {
        let same = |a: &mut dyn Iterator<Item = (&u8, &u8)>| a.take_while(|(a, b)| a == b).count();
        let front = same(&mut old.iter().zip(new));
        let rest = old.len().min(new.len()) - front;
        let end = same(&mut old.iter().rev().zip(new.iter().rev())).min(rest);
        BodyRecord {
            front: front as u32,
            between: new[front..new.len() - end].to_vec(),
            end: end as u32,
        }
    }

    /// The body that it makes of the old one; `None` where that is shorter than what stays of it.
    fn body(&self, old: &[u8]) -> Option<Vec<u8>> {
        let front = old.get(..self.front as usize)?;
        let end = old.get(old.len().checked_sub(self.end as usize)?..)?;
        Some([front, &self.between, end].concat())
    }
}

/// Changes entries; `None` where a change does not fit them.
fn change(entries: &mut Vec<Part>, changed: &[Changed]) -> Option<()> {
    for (kind, id, body) in changed {
        let at = entries
            .iter()
            .position(|part| (part.kind, part.id) == (*kind, *id));
        match (at, body) {
            (Some(at), Some(body)) => entries[at].body = body.body(&entries[at].body)?,
            (Some(at), None) => {
                entries.remove(at);
            }
            (None, Some(body)) => entries.push(Part {
                kind: *kind,
                id: *id,
                body: body.body(&[])?,
            }),
            (None, None) => {}
        }
    }
    Some(())
}
