//! Plans made quickly: the longest first, and sticks filled by prices that learn where waste comes from.

use super::knapsack::{Item, fill};
use super::work::{Effort, Pattern, Work};

/// Steps for one stick.
const STEPS: u64 = 300;

/// The longest piece that fits goes on, stick after stick.
pub(super) fn longest_first(work: &Work) -> Option<Vec<Pattern>> {
    sticks(work, |rest, holds| {
        let mut room = holds;
        let sizes = rest.sizes.iter().zip(&rest.counts);
        let fit = sizes.map(|(size, count)| {
            let fit = (room / size).min(i64::from(*count));
            room -= fit * size;
            fit as u32
        });
        fit.collect()
    })
}

/// Sticks filled with what is worth most, by prices.
pub(super) fn by_prices(work: &Work, prices: &[i64], effort: &mut Effort) -> Option<Vec<Pattern>> {
    sticks(work, |rest, holds| {
        let items: Vec<Item> = (0..rest.sizes.len())
            .map(|at| Item {
                at,
                size: rest.sizes[at],
                value: prices[at],
                most: rest.counts[at],
            })
            .collect();
        let mut of = vec![0; rest.sizes.len()];
        for (at, count) in fill(&items, holds, 0, STEPS, effort).of {
            of[at] = count;
        }
        of
    })
}

/// Stick after stick, each of the kind that costs least for what it holds, filled by a rule; `None` where the pieces
/// outlast the sticks.
fn sticks(work: &Work, mut rule: impl FnMut(&Work, i64) -> Vec<u32>) -> Option<Vec<Pattern>> {
    let mut rest = work.clone();
    let mut plan = Vec::new();
    while rest.pieces() > 0 {
        let mut best: Option<(Pattern, (i64, i64))> = None;
        for kind in 0..rest.kinds.len() {
            let stick = rest.kinds[kind];
            if stick.most == Some(0) {
                continue;
            }
            let cut = Pattern {
                kind,
                of: rule(&rest, stick.holds),
            };
            let load = rest.load(&cut);
            // What is free is judged by how full it is.
            let cost = if stick.cost == 0 {
                (0, stick.holds)
            } else {
                (1, stick.cost)
            };
            let better = best.as_ref().is_none_or(|(other, (of, size))| {
                let theirs = i128::from(rest.load(other)) * i128::from(cost.1);
                cost.0 < *of || (cost.0 == *of && i128::from(load) * i128::from(*size) > theirs)
            });
            if load > 0 && better {
                best = Some((cut, cost));
            }
        }
        let (cut, _) = best?;
        // As often as it can be had again.
        let again = cut
            .of
            .iter()
            .zip(&rest.counts)
            .filter(|(count, _)| **count > 0);
        let again = again.map(|(count, left)| left / count).min().unwrap_or(1);
        let again = again
            .min(rest.kinds[cut.kind].most.unwrap_or(u32::MAX))
            .max(1);
        let same = vec![cut; again as usize];
        rest = rest.without(&same);
        plan.extend(same);
    }
    Some(plan)
}

/// Plans one after the other, each by prices that the waste of the one before has corrected; left at a cost of `enough`.
pub(super) fn correcting(
    work: &Work,
    first: &[i64],
    enough: i64,
    rounds: u32,
    effort: &mut Effort,
) -> Option<Vec<Pattern>> {
    let longest = work.sizes.first().copied().unwrap_or(1) as f64;
    let mut prices: Vec<f64> = first.iter().map(|price| *price as f64).collect();
    let most = prices.iter().copied().fold(1.0, f64::max);
    prices.iter_mut().for_each(|price| *price *= 1e6 / most);
    let mut best: Option<Vec<Pattern>> = None;
    for _ in 0..rounds {
        let whole: Vec<i64> = prices.iter().map(|price| price.max(1.0) as i64).collect();
        let Some(plan) = by_prices(work, &whole, effort) else {
            return best;
        };
        for cut in &plan {
            let load = work.load(cut) as f64;
            let share = work.kinds[cut.kind].holds as f64 / load;
            for (at, count) in cut.of.iter().enumerate().filter(|(_, count)| **count > 0) {
                let size = work.sizes[at] as f64 / longest;
                let worth = 1e6 * size.powf(1.03) * share;
                let weight = 1.0 + f64::from(work.counts[at]) / f64::from(*count);
                prices[at] = (prices[at] * (weight - 1.0) + worth) / weight;
            }
        }
        let better = best
            .as_ref()
            .is_none_or(|best| work.cost(&plan) < work.cost(best));
        if better {
            let cost = work.cost(&plan);
            best = Some(plan);
            if cost <= enough {
                break;
            }
        }
        if effort.left == 0 {
            break;
        }
    }
    best
}
