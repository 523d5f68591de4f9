//! Ticks, moves and own steps brought together: what either side ticked stays ticked.

use super::report::Merge;
use super::{EntryKind, Side, Stays, all_ids, their_copy, verdict};
use crate::site::Id;
use crate::takeoff::{StepNote, StepOf};

/// What a step is called where it stands among others.
fn called(note: &StepNote) -> String {
    match &note.of {
        StepOf::Figure(_, work, _) => format!("Step “{}”", work.name()),
        StepOf::Own(_, text) => format!("Step “{text}”"),
    }
}

/// Both sides' ticks and places of one step: the earlier tick, and ours before theirs.
fn joined(ours: &StepNote, theirs: &StepNote) -> StepNote {
    let done = match (ours.done, theirs.done) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    StepNote {
        done,
        rank: ours.rank.or(theirs.rank),
        ..ours.clone()
    }
}

/// The notes that stay. Of an own step whose words both changed both are there.
pub(super) fn steps(ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) -> Vec<StepNote> {
    let mut steps = Vec::new();
    let ids = all_ids(
        ours.job.steps.iter().map(|note| note.id),
        theirs.job.steps.iter().map(|note| note.id),
    );
    for id in ids {
        let entry = (EntryKind::Step, id);
        let (stays, said) = verdict(ours, theirs, entry);
        let (a, b) = (ours.step(id), theirs.step(id));
        said.into(report, entry, || a.or(b).map(called).unwrap_or_default());
        match (stays, a, b) {
            (Stays::Ours, Some(note), _) | (Stays::Theirs, _, Some(note)) => {
                steps.push(note.clone());
            }
            (Stays::Both, Some(a), Some(b)) if a.of == b.of => {
                let note = joined(a, b);
                if note != *a {
                    let name = called(a);
                    report.push(Merge::Updated { entry, name });
                }
                steps.push(note);
            }
            (Stays::Both, Some(a), Some(b)) => {
                let mut copy = StepNote {
                    id: Id::fresh(),
                    ..b.clone()
                };
                if let StepOf::Own(_, text) = &mut copy.of {
                    *text = their_copy(text);
                }
                report.push(Merge::KeptBoth {
                    entry,
                    name: called(a),
                    copy: (EntryKind::Step, copy.id),
                });
                steps.extend([a.clone(), copy]);
            }
            _ => {}
        }
    }
    steps
}
