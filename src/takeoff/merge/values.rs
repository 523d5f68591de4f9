//! Entries of which a job has one: its head, its buying list but for lines by hand, its tape bench; and its roll.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::report::{Merge, Value, single_name, written};
use super::{EntryKind, Order, Side};
use crate::measure::{Length, Units};
use crate::site::Id;
use crate::takeoff::{Buying, Job, RollLine, Setup, TapeBench};
use crate::trades::Material;

fn updated(kind: EntryKind) -> Merge {
    Merge::Updated {
        entry: (kind, Id::NONE),
        name: single_name(kind).to_owned(),
    }
}

fn order(kind: EntryKind, ours: &Side<'_>, theirs: &Side<'_>) -> Order {
    let entry = (kind, Id::NONE);
    ours.stamps.of(entry).against(&theirs.stamps.of(entry))
}

/// The name and the units: the newer ones, or ours where both changed them. The earlier day is the day it was begun.
pub(super) fn head(job: &mut Job, ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) {
    job.begun = ours.job.begun.min(theirs.job.begun);
    let (a, b) = (ours.job, theirs.job);
    if (a.name == b.name && a.units == b.units)
        || order(EntryKind::Head, ours, theirs) == Order::Ours
    {
        return;
    }
    if order(EntryKind::Head, ours, theirs) == Order::Theirs {
        job.name.clone_from(&b.name);
        job.units = b.units;
        report.push(updated(EntryKind::Head));
        return;
    }
    if a.name != b.name {
        report.push(Merge::Differs(Value::Name {
            ours: a.name.clone(),
            theirs: b.name.clone(),
        }));
    }
    if a.units != b.units {
        report.push(Merge::Differs(Value::Units {
            ours: a.units,
            theirs: b.units,
        }));
    }
}

/// The buying list but for its lines by hand: the newer one, or key by key where both changed it.
pub(super) fn buying(job: &mut Job, ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) {
    let (a, b) = (&ours.job.buying, &theirs.job.buying);
    if same_buying(a, b) {
        return;
    }
    match order(EntryKind::Buying, ours, theirs) {
        Order::Ours => {}
        Order::Theirs => {
            let by_hand = std::mem::take(&mut job.buying.by_hand);
            job.buying = Buying {
                by_hand,
                ..b.clone()
            };
            report.push(updated(EntryKind::Buying));
        }
        Order::Both | Order::Same => {
            let into = &mut job.buying;
            into.ticked.extend(b.ticked.iter().cloned());
            let mut differ = keys(&mut into.prices, &b.prices, |pack, ours, theirs| {
                Value::Price { pack, ours, theirs }
            });
            differ.extend(keys(
                &mut into.overrides,
                &b.overrides,
                |pack, ours, theirs| Value::Count { pack, ours, theirs },
            ));
            differ.extend(choices(a, b));
            differ.extend(setups(&mut into.cutting, &b.cutting));
            // What is left of one material in one room is what our side counted, where both did.
            for (of, left) in &b.left {
                into.left.entry(of.clone()).or_insert_with(|| left.clone());
            }
            if !same_buying(a, into) {
                report.push(updated(EntryKind::Buying));
            }
            report.extend(differ.into_iter().map(Merge::Differs));
        }
    }
}

/// Whether two buying lists are the same but for their lines by hand.
pub(super) fn same_buying(a: &Buying, b: &Buying) -> bool {
    a.ticked == b.ticked
        && a.overrides == b.overrides
        && a.prices == b.prices
        && a.symbol == b.symbol
        && a.choice == b.choice
        && a.metric_packs == b.metric_packs
        && a.cutting == b.cutting
        && a.left == b.left
}

/// Adds the keys that theirs alone has; gives what differs under a key of both.
fn keys<K: Ord + Clone, V: Copy + PartialEq>(
    ours: &mut BTreeMap<K, V>,
    theirs: &BTreeMap<K, V>,
    differs: impl Fn(K, V, V) -> Value,
) -> Vec<Value> {
    let mut all = Vec::new();
    for (key, value) in theirs {
        let kept = *ours.entry(key.clone()).or_insert(*value);
        if kept != *value {
            all.push(differs(key.clone(), kept, *value));
        }
    }
    all
}

/// What was set about cutting: under a key of both ours stays, but for the offcuts, which are all there.
fn setups(ours: &mut BTreeMap<Material, Setup>, theirs: &BTreeMap<Material, Setup>) -> Vec<Value> {
    let mut all = Vec::new();
    for (material, setup) in theirs {
        let kept = ours
            .entry(material.clone())
            .or_insert_with(|| setup.clone());
        if kept == setup {
            continue;
        }
        // As many of each length as the side that has more of them.
        let count = |list: &[Length], of: Length| list.iter().filter(|at| **at == of).count();
        for offcut in &setup.offcuts {
            if count(&kept.offcuts, *offcut) < count(&setup.offcuts, *offcut) {
                kept.offcuts.push(*offcut);
            }
        }
        if kept.sticks != setup.sticks || kept.saw != setup.saw {
            all.push(Value::Cutting {
                material: material.clone(),
                ours: Box::new(kept.clone()),
                theirs: Box::new(setup.clone()),
            });
        }
    }
    all
}

/// The choices of the buying list that differ.
fn choices(ours: &Buying, theirs: &Buying) -> Vec<Value> {
    let symbol = (ours.symbol != theirs.symbol).then(|| Value::Symbol {
        ours: ours.symbol.clone(),
        theirs: theirs.symbol.clone(),
    });
    let choice = (ours.choice != theirs.choice).then_some(Value::Choice {
        ours: ours.choice,
        theirs: theirs.choice,
    });
    let packs = (ours.metric_packs != theirs.metric_packs).then_some(Value::MetricPacks {
        ours: ours.metric_packs,
        theirs: theirs.metric_packs,
    });
    [symbol, choice, packs].into_iter().flatten().collect()
}

/// The tape's bench: the newer one; where both changed it ours, and the lengths of theirs that differ go onto the roll.
pub(super) fn tape(job: &mut Job, ours: &Side<'_>, theirs: &Side<'_>, report: &mut Vec<Merge>) {
    let (a, b) = (&ours.job.tape, &theirs.job.tape);
    if a == b {
        return;
    }
    match order(EntryKind::Tape, ours, theirs) {
        Order::Ours => {}
        Order::Theirs => {
            job.tape = b.clone();
            report.push(updated(EntryKind::Tape));
        }
        Order::Both | Order::Same => {
            job.roll.extend(bench_lines(a, b, theirs.job.units));
            report.push(Merge::Differs(Value::Tape {
                ours: Box::new(a.clone()),
                theirs: Box::new(b.clone()),
            }));
        }
    }
}

/// The lengths of a bench, each with what it is.
fn lengths(bench: &TapeBench) -> [(&'static str, Option<Length>); 9] {
    [
        ("First side", bench.sides[0]),
        ("Second side", bench.sides[1]),
        ("First diagonal", bench.diagonals[0]),
        ("Second diagonal", bench.diagonals[1]),
        ("Run", bench.run),
        ("Width of one", bench.width),
        ("Scale, to the foot", Some(bench.scale)),
        ("On paper", bench.on_paper),
        ("On site", bench.on_site),
    ]
}

fn bench_lines(ours: &TapeBench, theirs: &TapeBench, units: Units) -> Vec<Arc<RollLine>> {
    let both = lengths(ours).into_iter().zip(lengths(theirs));
    both.filter(|((_, ours), (_, theirs))| ours != theirs)
        .filter_map(|(_, (what, theirs))| {
            let length = theirs?;
            Some(Arc::new(RollLine {
                id: Id::fresh(),
                label: format!("{what}, their copy"),
                typed: written(units, length),
                length,
            }))
        })
        .collect()
}

/// Every line of either roll: ours in order, then those that theirs alone has, in their order.
///
/// A line never changes, so that one which one side cleared and the other still has comes back. Two lines that differ
/// under one name, which no program of ours writes, are both kept.
pub(super) fn roll(job: &mut Job, theirs: &Side<'_>, report: &mut Vec<Merge>) {
    type Said = (String, String, Length);
    let said = |line: &RollLine| -> Said { (line.label.clone(), line.typed.clone(), line.length) };
    let mut known: BTreeMap<Id, Said> = (job.roll.iter())
        .map(|line| (line.id, said(line)))
        .collect();
    let mut anywhere: BTreeSet<Said> = known.values().cloned().collect();
    let before = job.roll.len();
    for line in &theirs.job.roll {
        let theirs = said(line);
        match known.get(&line.id) {
            None => {
                known.insert(line.id, theirs.clone());
                job.roll.push(Arc::clone(line));
            }
            Some(ours) if *ours == theirs || anywhere.contains(&theirs) => {}
            Some(_) => job.roll.push(Arc::new(RollLine {
                id: Id::fresh(),
                ..(**line).clone()
            })),
        }
        anywhere.insert(theirs);
    }
    let lines = job.roll.len() - before;
    if lines > 0 {
        report.push(Merge::Rolled { lines });
    }
}
