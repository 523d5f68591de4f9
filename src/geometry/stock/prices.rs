//! What each size has to be worth: a lower bound on the cost of every plan, by column generation.
//!
//! The bound is proven in whole numbers: prices are rounded down, the worthiest stick of each kind is found exactly by
//! them, and what a plan costs is at least the worth of its pieces over the worth of its sticks.

use super::knapsack::{Item, fill};
use super::work::{Effort, Pattern, Work};

/// What a cost of one is worth, about: enough that rounding down costs nothing that shows.
const SCALE: f64 = (1u64 << 36) as f64;

/// Prices by which no stick holds more than it costs.
#[derive(Clone, Debug)]
pub(super) struct Prices {
    /// Of one piece of each size.
    pub of: Vec<i64>,
    /// What a stick of each kind is worth beyond its cost; only where there are so many and no more.
    pub extra: Vec<i64>,
    /// A cost of one.
    pub unit: i64,
}

impl Prices {
    /// Prices with which no stick of a kind is worth more than said; `None` where a kind is free and without end.
    pub fn new(work: &Work, of: Vec<i64>, worth: &[i64], unit: i64) -> Prices {
        let mut unit = unit.max(1);
        for (kind, worth) in work.kinds.iter().zip(worth) {
            if kind.most.is_none() {
                unit = unit.max((worth + kind.cost - 1) / kind.cost.max(1));
            }
        }
        let extra = work.kinds.iter().zip(worth);
        let extra = extra.map(|(kind, worth)| (worth - unit.saturating_mul(kind.cost)).max(0));
        Prices {
            extra: extra.collect(),
            of,
            unit,
        }
    }

    /// Each size is worth what it is long.
    pub fn by_length(work: &Work) -> Prices {
        let worth: Vec<i64> = work.kinds.iter().map(|kind| kind.holds).collect();
        Prices::new(work, work.sizes.clone(), &worth, 1)
    }

    /// What the pieces are worth, less all that limited sticks can be worth beyond their cost.
    pub fn total(&self, work: &Work) -> i64 {
        let pieces = self.of.iter().zip(&work.counts);
        let pieces: i64 = pieces.map(|(price, count)| price * i64::from(*count)).sum();
        let sticks = self.extra.iter().zip(&work.kinds);
        let sticks = sticks.map(|(extra, kind)| extra * i64::from(kind.most.unwrap_or(0)));
        pieces - sticks.sum::<i64>()
    }

    /// No plan costs less.
    pub fn least(&self, work: &Work) -> i64 {
        let step = work.step();
        let total = i128::from(self.total(work).max(0));
        let each = i128::from(self.unit) * i128::from(step);
        ((total + each - 1) / each) as i64 * step
    }
}

/// What the relaxed problem says: prices, and how often each way of cutting is used in part.
pub(super) struct Relaxed {
    pub prices: Prices,
    pub least: i64,
    pub parts: Vec<(Pattern, f64)>,
}

/// Sizes, and how many of each.
type Counts = Vec<(usize, u32)>;

/// One column of the basis.
#[derive(Clone)]
enum Column {
    /// A stick, cut.
    Stick(usize, Counts),
    /// A piece too many of a size, or a stick of a limited kind that stays whole.
    Slack,
    /// A piece out of nowhere, dear.
    Nowhere,
}

struct Simplex {
    rows: usize,
    /// The inverse of the basis, row by row.
    inverse: Vec<f64>,
    at: Vec<f64>,
    cost: Vec<f64>,
    basis: Vec<Column>,
}

impl Simplex {
    fn prices(&self) -> Vec<f64> {
        let mut prices = vec![0.0; self.rows];
        for (row, cost) in self.inverse.chunks_exact(self.rows).zip(&self.cost) {
            if *cost != 0.0 {
                for (price, part) in prices.iter_mut().zip(row) {
                    *price += cost * part;
                }
            }
        }
        prices
    }

    /// A column into the basis; `false` where it cannot come in.
    fn enter(&mut self, column: Column, cost: f64, entries: &[(usize, f64)]) -> bool {
        let n = self.rows;
        let direction: Vec<f64> = self
            .inverse
            .chunks_exact(n)
            .map(|row| entries.iter().map(|(at, part)| row[*at] * part).sum())
            .collect();
        let ratio = |at: usize| self.at[at].max(0.0) / direction[at];
        let may: Vec<usize> = (0..n).filter(|at| direction[*at] > 1e-7).collect();
        let least = may
            .iter()
            .map(|at| ratio(*at))
            .fold(f64::INFINITY, f64::min);
        // On a tie the largest pivot, for the sake of the digits.
        let tied = may.into_iter().filter(|at| ratio(*at) <= least + 1e-9);
        let out = tied.max_by(|a, b| direction[*a].total_cmp(&direction[*b]));
        let Some(out) = out else {
            return false;
        };
        let ratio = self.at[out].max(0.0) / direction[out];
        let pivot: Vec<f64> = self.inverse[out * n..(out + 1) * n]
            .iter()
            .map(|part| part / direction[out])
            .collect();
        for (at, part) in direction.iter().enumerate() {
            if at == out || *part == 0.0 {
                continue;
            }
            for (own, by) in self.inverse[at * n..(at + 1) * n].iter_mut().zip(&pivot) {
                *own -= part * by;
            }
            self.at[at] -= part * ratio;
        }
        self.inverse[out * n..(out + 1) * n].copy_from_slice(&pivot);
        self.at[out] = ratio;
        self.cost[out] = cost;
        self.basis[out] = column;
        true
    }
}

/// The relaxed problem: begun from sticks of one size each.
fn begin(work: &Work, limited: &[usize]) -> Simplex {
    let sizes = work.sizes.len();
    let rows = sizes + limited.len();
    let mut simplex = Simplex {
        rows,
        inverse: vec![0.0; rows * rows],
        at: vec![0.0; rows],
        cost: vec![0.0; rows],
        basis: Vec::with_capacity(rows),
    };
    let dear = 4 * work.kinds.iter().map(|kind| kind.cost).max().unwrap_or(1);
    for (at, size) in work.sizes.iter().enumerate() {
        let endless = work.kinds.iter().enumerate();
        let count = |holds: i64| (holds / size).min(i64::from(work.counts[at]));
        let cheapest = endless
            .filter(|(_, kind)| kind.most.is_none() && kind.holds >= *size)
            .min_by_key(|(_, kind)| kind.cost * 1_000_000 / count(kind.holds).max(1));
        let (column, parts, cost) = match cheapest {
            Some((kind, of)) if work.counts[at] > 0 => {
                let parts = count(of.holds);
                let column = Column::Stick(kind, vec![(at, parts as u32)]);
                (column, parts as f64, of.cost as f64)
            }
            _ => (Column::Nowhere, 1.0, dear as f64),
        };
        simplex.inverse[at * rows + at] = 1.0 / parts;
        simplex.at[at] = f64::from(work.counts[at]) / parts;
        simplex.cost[at] = cost;
        simplex.basis.push(column);
    }
    for (n, kind) in limited.iter().enumerate() {
        let at = sizes + n;
        simplex.inverse[at * rows + at] = 1.0;
        simplex.at[at] = f64::from(work.kinds[*kind].most.unwrap_or(0));
        simplex.basis.push(Column::Slack);
    }
    simplex
}

/// The prices that prove the most, and the ways of cutting that they come from; left as soon as they prove `enough`.
pub(super) fn relax(work: &Work, enough: i64, effort: &mut Effort) -> Relaxed {
    let sizes = work.sizes.len();
    let limited: Vec<usize> = (0..work.kinds.len())
        .filter(|kind| work.kinds[*kind].most.is_some())
        .collect();
    let mut simplex = begin(work, &limited);
    let unit = {
        let dearest = work.kinds.iter().map(|kind| kind.cost).max();
        (SCALE / dearest.unwrap_or(1).max(1) as f64).floor() as i64
    };
    let mut best = Prices::by_length(work);
    let mut least = best.least(work);
    let mut search = 400;
    for _ in 0..40 * simplex.rows + 200 {
        if least >= enough || effort.left == 0 {
            break;
        }
        // What a step costs besides the search in it.
        effort.left = effort
            .left
            .saturating_sub((simplex.rows * simplex.rows / 32) as u64);
        let prices = simplex.prices();
        if let Some(at) = (0..simplex.rows).find(|at| {
            let wrong = if *at < sizes {
                -prices[*at]
            } else {
                prices[*at]
            };
            wrong > 1e-7
        }) {
            let part = if at < sizes { -1.0 } else { 1.0 };
            if !simplex.enter(Column::Slack, 0.0, &[(at, part)]) {
                break;
            }
            continue;
        }
        let of: Vec<i64> = prices[..sizes]
            .iter()
            .map(|price| (price.max(0.0) * unit as f64).floor() as i64)
            .collect();
        let items: Vec<Item> = (0..sizes)
            .map(|at| Item {
                at,
                size: work.sizes[at],
                value: of[at],
                most: work.counts[at],
            })
            .collect();
        let mut worth = Vec::with_capacity(work.kinds.len());
        // The most by which a stick is worth more than it costs.
        let mut entering: Option<(f64, usize, Counts)> = None;
        let mut exact = true;
        for (kind, stick) in work.kinds.iter().enumerate() {
            if stick.most == Some(0) {
                worth.push(0);
                continue;
            }
            let row = limited.iter().position(|at| *at == kind);
            let price = row.map_or(0.0, |row| -prices[sizes + row]) + stick.cost as f64;
            let filled = fill(&items, stick.holds, 0, search, effort);
            exact &= filled.bound == filled.value;
            worth.push(filled.bound);
            let gain = filled.value as f64 / unit as f64 - price;
            if gain > 1e-7 && entering.as_ref().is_none_or(|(most, _, _)| gain > *most) {
                entering = Some((gain, kind, filled.of));
            }
        }
        let candidate = Prices::new(work, of, &worth, unit);
        let proves = candidate.least(work);
        let more = i128::from(candidate.total(work)) * i128::from(best.unit)
            > i128::from(best.total(work)) * i128::from(candidate.unit);
        if more {
            least = least.max(proves);
            best = candidate;
        }
        let Some((_, kind, of)) = entering else {
            if exact || search > 200_000 {
                break;
            }
            search *= 20;
            continue;
        };
        let mut entries: Vec<(usize, f64)> = of
            .iter()
            .map(|(at, count)| (*at, f64::from(*count)))
            .collect();
        if let Some(row) = limited.iter().position(|at| *at == kind) {
            entries.push((sizes + row, 1.0));
        }
        let cost = work.kinds[kind].cost as f64;
        if !simplex.enter(Column::Stick(kind, of), cost, &entries) {
            break;
        }
    }
    let parts = simplex.basis.iter().zip(&simplex.at);
    let parts = parts.filter_map(|(column, share)| match column {
        Column::Stick(kind, of) if *share > 1e-9 => {
            let mut counts = vec![0; sizes];
            for (at, count) in of {
                counts[*at] = *count;
            }
            let cut = Pattern {
                kind: *kind,
                of: counts,
            };
            Some((cut, *share))
        }
        _ => None,
    });
    Relaxed {
        parts: parts.collect(),
        prices: best,
        least,
    }
}
