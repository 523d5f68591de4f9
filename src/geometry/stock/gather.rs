//! Among plans of one cost: no offcut cut into that saves nothing, the shortest stick that holds its pieces, and the
//! waste gathered into one long rest.

use super::prices::Prices;
use super::search::{Outcome, search};
use super::work::{Effort, Kind, Pattern, Work};

/// Most sticks among which the waste is moved.
const STICKS: usize = 24;
/// Steps for one try.
const STEPS: u64 = 10_000;
/// Most tries at one length.
const TRIES: u32 = 14;

/// The plan again without the offcuts that save no stick.
pub(super) fn leave_offcuts(work: &Work, plan: Vec<Pattern>, effort: &mut Effort) -> Vec<Pattern> {
    let offcut = |kind: usize| work.kinds[kind].cost == 0;
    if !plan.iter().any(|cut| offcut(cut.kind)) {
        return plan;
    }
    let cost = work.cost(&plan);
    // As many of each kind as the plan uses; first all of them left, then one less of each kind.
    let mut own = work.clone();
    for (at, kind) in own.kinds.iter_mut().enumerate() {
        if kind.cost == 0 {
            let used = plan.iter().filter(|cut| cut.kind == at).count();
            kind.most = Some(used as u32);
        }
    }
    let mut best = plan;
    let mut none = own.clone();
    for kind in &mut none.kinds {
        if kind.cost == 0 {
            kind.most = Some(0);
        }
    }
    let mut part = effort.part(8 * STEPS);
    let solved = super::solve::solve(&none, &mut part);
    effort.back(part);
    if !solved.plan.is_empty() && work.cost(&solved.plan) <= cost {
        return solved.plan;
    }
    let mut at = 0;
    while at < own.kinds.len() {
        let mut less = own.clone();
        match less.kinds[at].most {
            Some(most) if offcut(at) && most > 0 => less.kinds[at].most = Some(most - 1),
            _ => {
                at += 1;
                continue;
            }
        }
        if let Some(plan) = again(&less, cost, effort) {
            best = plan;
            own = less;
        } else {
            at += 1;
        }
    }
    best
}

/// A plan at the same cost, quickly.
fn again(work: &Work, cost: i64, effort: &mut Effort) -> Option<Vec<Pattern>> {
    let by_length = Prices::by_length(work);
    if by_length.least(work) > cost {
        return None;
    }
    let first = super::greedy::longest_first(work).filter(|plan| work.cost(plan) <= cost);
    first.or_else(|| {
        let mut part = effort.part(2 * STEPS);
        let found = search(work, [&by_length, &by_length], cost, &mut part);
        effort.back(part);
        match found {
            Outcome::Found(plan) => Some(plan),
            _ => None,
        }
    })
}

/// Each stick of the shortest endless kind that holds its pieces and costs no more.
pub(super) fn shrink(work: &Work, plan: &mut [Pattern]) {
    for cut in plan.iter_mut() {
        let own = work.kinds[cut.kind];
        let load = work.load(cut);
        let shorter = work.kinds.iter().enumerate().filter(|(_, kind)| {
            kind.most.is_none()
                && kind.holds >= load
                && kind.holds < own.holds
                && kind.cost <= own.cost
        });
        if own.cost > 0
            && let Some((kind, _)) = shorter.min_by_key(|(_, kind)| kind.holds)
        {
            cut.kind = kind;
        }
    }
}

/// Moves pieces so that one bought stick keeps the longest rest; whether no longer one is possible.
pub(super) fn gather(work: &Work, plan: &mut Vec<Pattern>, effort: &mut Effort) -> bool {
    if work.sizes.len() > super::solve::SIZES {
        return false;
    }
    let rest = |cut: &Pattern| work.kinds[cut.kind].holds - work.load(cut);
    plan.sort_by_key(rest);
    // The sticks with the most to give; the others stay as they are.
    let first = plan.len().saturating_sub(STICKS);
    let mut worst = plan.split_off(first);
    let mut proven = first == 0;
    let bought = |cut: &&Pattern| work.kinds[cut.kind].cost > 0;
    let mut kinds: Vec<usize> = worst.iter().filter(bought).map(|cut| cut.kind).collect();
    kinds.sort_by_key(|kind| std::cmp::Reverse(work.kinds[*kind].holds));
    kinds.dedup();
    for kind in kinds {
        proven &= shorten(work, &mut worst, kind, effort);
    }
    plan.append(&mut worst);
    let longest = plan.iter().filter(bought).map(rest).max().unwrap_or(0);
    // All that is wasted in one place: no rest can be longer.
    proven || longest == plan.iter().map(rest).sum::<i64>()
}

/// One stick of a kind as little used as can be, the others holding the rest; whether less is impossible.
fn shorten(work: &Work, plan: &mut Vec<Pattern>, kind: usize, effort: &mut Effort) -> bool {
    let longest = work.kinds[kind].holds;
    let used = |plan: &[Pattern]| {
        let bought = plan.iter().filter(|cut| work.kinds[cut.kind].cost > 0);
        let rests = bought.map(|cut| work.kinds[cut.kind].holds - work.load(cut));
        longest - rests.max().unwrap_or(0)
    };
    // The same sticks, no more of them, and one of the kind that is only so long.
    let mut own = work.clone();
    own.counts = vec![0; work.sizes.len()];
    for kind in &mut own.kinds {
        *kind = Kind {
            cost: 0,
            most: Some(0),
            ..*kind
        };
    }
    for cut in plan.iter() {
        for (all, count) in own.counts.iter_mut().zip(&cut.of) {
            *all += count;
        }
        own.kinds[cut.kind].most = own.kinds[cut.kind].most.map(|most| most + 1);
    }
    own.kinds[kind].most = own.kinds[kind].most.map(|most| most.saturating_sub(1));
    let others = own
        .kinds
        .iter()
        .map(|kind| kind.holds * i64::from(kind.most.unwrap_or(0)));
    let mut least = (own.total() - others.sum::<i64>()).max(0);
    let mut most = used(plan) - 1;
    let mut proven = true;
    let mut ask = least;
    let mut tries = 0;
    while least <= most {
        if tries == TRIES {
            return false;
        }
        tries += 1;
        let mut tried = own.clone();
        tried.kinds.push(Kind {
            holds: ask,
            cost: 0,
            most: Some(1),
        });
        let by_length = Prices::by_length(&tried);
        let mut part = effort.part(STEPS);
        let outcome = search(&tried, [&by_length, &by_length], 0, &mut part);
        effort.back(part);
        match outcome {
            Outcome::Found(mut found) => {
                let short = found
                    .iter()
                    .position(|cut| cut.kind == tried.kinds.len() - 1);
                let load = short.map_or(0, |at| tried.load(&found[at]));
                for cut in &mut found {
                    if cut.kind == tried.kinds.len() - 1 {
                        cut.kind = kind;
                    }
                }
                *plan = found;
                most = load - 1;
            }
            Outcome::None => least = ask + 1,
            Outcome::Left => {
                proven = false;
                least = ask + 1;
            }
        }
        ask = least + (most - least).max(0) / 2;
    }
    proven
}
