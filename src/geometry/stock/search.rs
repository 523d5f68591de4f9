//! Whether a plan of a given cost exists: sticks completed one after the other, each with the longest piece that is left.
//!
//! Two exchanges lose nothing: a piece that still fits on the stick may as well be on it, and so may a longer piece in
//! place of a shorter one. What a stick wastes by any prices that are valid ([`Prices`]) comes off an allowance, and
//! what was found to lead nowhere is remembered.

use std::collections::HashMap;

use super::prices::Prices;
use super::work::{Effort, Kind, Pattern, Work};

/// One figure for each of the two price lists.
type Both = [i64; 2];
/// The same, of what a whole plan may come to.
type Allowance = [i128; 2];

/// Most ways of completing one stick that are looked at, fewer where there are many sizes.
fn most_ways(sizes: usize) -> usize {
    (200_000 / sizes.max(1)).clamp(200, 4_000)
}

/// What came out.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Outcome {
    /// A plan.
    Found(Vec<Pattern>),
    /// There is none.
    None,
    /// Not known: left before the end.
    Left,
}

struct Search<'a> {
    sizes: &'a [i64],
    kinds: &'a [Kind],
    prices: [&'a Prices; 2],
    /// The densest price from each size on, by each price list.
    density: [Vec<f64>; 2],
    counts: Vec<u32>,
    left: Vec<u32>,
    plan: Vec<Pattern>,
    /// The most cost that was left where a state led nowhere.
    nowhere: HashMap<Box<[u32]>, i64>,
    effort: &'a mut Effort,
    /// No way was passed over.
    whole: bool,
}

/// A way to complete a stick, being made.
struct Way {
    /// What it has to be worth at least, by each price list.
    needs: Both,
    of: Vec<u32>,
    found: Vec<(i64, Vec<u32>)>,
}

/// A plan that costs no more than `target`, if there is one.
pub(super) fn search(
    work: &Work,
    prices: [&Prices; 2],
    target: i64,
    effort: &mut Effort,
) -> Outcome {
    let density = prices.map(|list| {
        let mut all = vec![0.0f64; work.sizes.len() + 1];
        for at in (0..work.sizes.len()).rev() {
            all[at] = all[at + 1].max(list.of[at] as f64 / work.sizes[at] as f64);
        }
        all
    });
    let endless = u32::MAX;
    let mut search = Search {
        density,
        sizes: &work.sizes,
        kinds: &work.kinds,
        prices,
        counts: work.counts.clone(),
        left: work
            .kinds
            .iter()
            .map(|kind| kind.most.unwrap_or(endless))
            .collect(),
        plan: Vec::new(),
        nowhere: HashMap::new(),
        effort,
        whole: true,
    };
    let allowance = prices
        .map(|list| i128::from(list.unit) * i128::from(target) - i128::from(list.total(work)));
    if search.go(target, allowance) {
        Outcome::Found(search.plan)
    } else if search.whole {
        Outcome::None
    } else {
        Outcome::Left
    }
}

impl Search<'_> {
    /// What a stick of a kind is worth, by each price list.
    fn worth(&self, kind: usize) -> Allowance {
        let cost = self.kinds[kind].cost;
        self.prices
            .map(|list| i128::from(list.unit) * i128::from(cost) + i128::from(list.extra[kind]))
    }

    fn go(&mut self, cost: i64, allowance: Allowance) -> bool {
        let Some(pivot) = self.counts.iter().position(|count| *count > 0) else {
            return true;
        };
        if allowance.iter().any(|left| *left < 0) {
            return false;
        }
        if self.effort.left == 0 {
            self.whole = false;
            return false;
        }
        let state: Box<[u32]> = self.counts[pivot..]
            .iter()
            .chain(&self.left)
            .copied()
            .chain([pivot as u32])
            .collect();
        if self.nowhere.get(&state).is_some_and(|most| *most >= cost) {
            return false;
        }
        let before = self.whole;
        self.whole = true;
        let mut ways = Vec::new();
        for kind in 0..self.kinds.len() {
            let stick = self.kinds[kind];
            if self.left[kind] == 0 || stick.cost > cost || stick.holds < self.sizes[pivot] {
                continue;
            }
            let worth = self.worth(kind);
            let mut way = Way {
                // Beyond what a number holds no stick is worth enough, or each is.
                needs: [0, 1].map(|n| {
                    let needs = worth[n] - allowance[n];
                    needs.clamp(i128::from(i64::MIN), i128::from(i64::MAX)) as i64
                }),
                of: vec![0; self.sizes.len()],
                found: Vec::new(),
            };
            way.of[pivot] = 1;
            let got = self.prices.map(|list| list.of[pivot]);
            self.counts[pivot] -= 1;
            self.complete(&mut way, pivot, stick.holds - self.sizes[pivot], got);
            self.counts[pivot] += 1;
            for (value, of) in way.found {
                ways.push((worth[0] - i128::from(value), kind, of));
            }
        }
        ways.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| b.2.cmp(&a.2)));
        for (_, kind, of) in ways {
            let stick = self.kinds[kind];
            let mut less = allowance;
            for ((less, list), worth) in less.iter_mut().zip(self.prices).zip(self.worth(kind)) {
                let each = list.of.iter().zip(&of);
                let got: i64 = each.map(|(price, count)| price * i64::from(*count)).sum();
                *less -= worth - i128::from(got);
            }
            for (count, off) in self.counts.iter_mut().zip(&of) {
                *count -= off;
            }
            let endless = stick.most.is_none();
            if !endless {
                self.left[kind] -= 1;
            }
            self.plan.push(Pattern { kind, of });
            if self.go(cost - stick.cost, less) {
                return true;
            }
            if let Some(cut) = self.plan.pop() {
                for (count, off) in self.counts.iter_mut().zip(&cut.of) {
                    *count += off;
                }
            }
            if !endless {
                self.left[kind] += 1;
            }
            if self.effort.left == 0 {
                self.whole = false;
                return false;
            }
        }
        if self.whole {
            self.nowhere.insert(state, cost);
        }
        self.whole &= before;
        false
    }

    /// Every way that the exchanges leave to fill `room` with sizes from `at` on.
    fn complete(&mut self, way: &mut Way, at: usize, room: i64, got: Both) {
        if self.effort.left == 0 || way.found.len() >= most_ways(self.sizes.len()) {
            self.whole = false;
            return;
        }
        self.effort.left -= 1;
        // Sizes that do not fit, or of which none is left, are gone by here and not in deeper calls.
        let next = (at..self.sizes.len()).find(|n| self.counts[*n] > 0 && self.sizes[*n] <= room);
        let short = (0..2).any(|n| {
            let density = next.map_or(0.0, |next| self.density[n][next]);
            got[n] + (density * room as f64 * (1.0 + 1e-12)) as i64 + 1 < way.needs[n]
        });
        if short {
            return;
        }
        let Some(at) = next else {
            let enough = got[0] >= way.needs[0] && got[1] >= way.needs[1];
            if enough && self.holds_its_own(way, room) {
                way.found.push((got[0], way.of.clone()));
            }
            return;
        };
        let size = self.sizes[at];
        let most = (room / size).min(i64::from(self.counts[at])) as u32;
        for count in (0..=most).rev() {
            way.of[at] += count;
            self.counts[at] -= count;
            let count64 = i64::from(count);
            let more = [0, 1].map(|n| got[n] + self.prices[n].of[at] * count64);
            self.complete(way, at + 1, room - size * count64, more);
            way.of[at] -= count;
            self.counts[at] += count;
        }
    }

    /// Neither exchange makes more of it.
    fn holds_its_own(&self, way: &Way, room: i64) -> bool {
        let mut longer: Option<usize> = None;
        for at in 0..self.sizes.len() {
            if way.of[at] > 0 && longer.is_some_and(|n| self.sizes[n] - self.sizes[at] <= room) {
                return false;
            }
            if self.counts[at] > 0 {
                if self.sizes[at] <= room {
                    return false;
                }
                longer = Some(at);
            }
        }
        true
    }
}
