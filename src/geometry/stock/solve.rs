//! The fewest sticks: quick plans and quick bounds first, then prices, then the search for a plan or for the proof that
//! there is none.

use super::greedy::{correcting, longest_first};
use super::prices::{Prices, relax};
use super::search::{Outcome, search};
use super::work::{Effort, Pattern, Work};

/// A plan, and the cost below which there is none.
pub(super) struct Solved {
    pub plan: Vec<Pattern>,
    pub least: i64,
}

/// Most different sizes for which prices are looked for.
pub(super) const SIZES: usize = 600;
/// Most sticks in a plan that is searched whole.
const STICKS: usize = 120;

impl Solved {
    fn is_least(&self, work: &Work) -> bool {
        work.cost(&self.plan) <= self.least
    }
    /// The cheaper of two plans.
    fn take(&mut self, work: &Work, plan: Option<Vec<Pattern>>) {
        if let Some(plan) = plan.filter(|plan| work.cost(plan) < work.cost(&self.plan)) {
            self.plan = plan;
        }
    }
}

/// The cheapest plan that so many steps find.
pub(super) fn solve(work: &Work, effort: &mut Effort) -> Solved {
    let by_length = Prices::by_length(work);
    let mut solved = Solved {
        plan: longest_first(work).unwrap_or_default(),
        least: by_length.least(work).max(halves(work)),
    };
    if solved.is_least(work) || work.sizes.len() > SIZES {
        return solved;
    }
    // Few pieces are soon searched whole; many are better served by more plans.
    let many = work.pieces() > 60;
    let (steps, rounds) = if many { (60_000, 12) } else { (20_000, 4) };
    let mut part = effort.part(steps);
    let corrected = correcting(work, &work.sizes, solved.least, rounds, &mut part);
    effort.back(part);
    solved.take(work, corrected);
    if solved.is_least(work) {
        return solved;
    }
    let relaxed = relax(work, work.cost(&solved.plan), effort);
    solved.least = solved.least.max(relaxed.least);
    if solved.is_least(work) {
        return solved;
    }
    // Few pieces are soon searched whole; many are better served by more plans.
    let (steps, rounds) = if work.pieces() > 60 {
        (200_000, 30)
    } else {
        (20_000, 4)
    };
    let mut part = effort.part(steps);
    let corrected = correcting(work, &relaxed.prices.of, solved.least, rounds, &mut part);
    effort.back(part);
    solved.take(work, corrected);
    let lists = [&relaxed.prices, &by_length];
    for most in [30_000, 1_000_000] {
        close(work, lists, &mut solved, most, effort);
        if solved.is_least(work) {
            break;
        }
        let mut part = effort.part(most);
        let dived = dive(work, solved.least, &mut part);
        effort.back(part);
        solved.take(work, dived);
        if solved.is_least(work) {
            break;
        }
    }
    solved
}

/// Moves the plan down and the bound up until they meet or the steps run out.
fn close(work: &Work, lists: [&Prices; 2], solved: &mut Solved, most: u64, effort: &mut Effort) {
    let step = work.step();
    if solved.plan.len() > STICKS {
        return;
    }
    let mut part = effort.part(most);
    while !solved.is_least(work) && part.left > 0 {
        let cost = work.cost(&solved.plan);
        // Close together, the bound is tried; far apart, any better plan.
        let target = if cost - solved.least <= 2 * step {
            solved.least
        } else {
            cost - step
        };
        match search(work, lists, target, &mut part) {
            Outcome::Found(plan) => solved.plan = plan,
            Outcome::None => solved.least = target + step,
            Outcome::Left => break,
        }
    }
    effort.back(part);
}

/// Sticks of the relaxed problem that are used whole are taken, then those that nearly are; what is left is made anew.
fn dive(work: &Work, target: i64, effort: &mut Effort) -> Option<Vec<Pattern>> {
    let mut taken: Vec<Pattern> = Vec::new();
    loop {
        let rest = work.without(&taken);
        if rest.pieces() == 0 {
            return (work.cost(&taken) <= target).then_some(taken);
        }
        let left = target - work.cost(&taken);
        let relaxed = relax(&rest, left + 1, effort);
        if relaxed.least > left || effort.left == 0 {
            return None;
        }
        let by_length = Prices::by_length(&rest);
        let mut part = effort.part(60_000);
        let made = correcting(&rest, &relaxed.prices.of, left, 4, &mut part)
            .filter(|made| work.cost(made) <= left);
        let made =
            made.or_else(
                || match search(&rest, [&relaxed.prices, &by_length], left, &mut part) {
                    Outcome::Found(made) if rest.pieces() < 400 => Some(made),
                    _ => None,
                },
            );
        effort.back(part);
        if let Some(made) = made {
            taken.extend(made);
            return Some(taken);
        }
        let before = taken.len();
        for (cut, share) in &relaxed.parts {
            for _ in 0..(share + 1e-6).floor() as usize {
                if let Some(cut) = trimmed(&work.without(&taken), cut) {
                    taken.push(cut);
                }
            }
        }
        if taken.len() == before {
            let most = relaxed.parts.iter().max_by(|a, b| a.1.total_cmp(&b.1));
            let cut = most.and_then(|(cut, _)| trimmed(&work.without(&taken), cut))?;
            taken.push(cut);
        }
    }
}

/// A way of cutting without the pieces that are not asked for any more; `None` where nothing is left of it.
fn trimmed(rest: &Work, cut: &Pattern) -> Option<Pattern> {
    let of = cut
        .of
        .iter()
        .zip(&rest.counts)
        .map(|(count, left)| *count.min(left));
    let of: Vec<u32> = of.collect();
    let some = of.iter().any(|count| *count > 0) && rest.kinds[cut.kind].most != Some(0);
    some.then_some(Pattern { kind: cut.kind, of })
}

/// Pieces longer than half a stick take one each, and what is left of those sticks holds only so much (the bound L2 of
/// Martello and Toth, 1990); for a single kind of stick without end.
fn halves(work: &Work) -> i64 {
    let [kind] = work.kinds.as_slice() else {
        return 0;
    };
    if kind.most.is_some() {
        return 0;
    }
    let holds = kind.holds;
    let sizes = || {
        work.sizes
            .iter()
            .copied()
            .zip(work.counts.iter().map(|n| i64::from(*n)))
    };
    let at_least = |short: i64| {
        let long = sizes().filter(|(size, _)| *size > holds - short);
        let alone: i64 = long.map(|(_, count)| count).sum();
        let halves = || sizes().filter(|(size, _)| *size <= holds - short && 2 * size > holds);
        let half: i64 = halves().map(|(_, count)| count).sum();
        let over = half * holds - halves().map(|(size, count)| size * count).sum::<i64>();
        let small = sizes().filter(|(size, _)| 2 * size <= holds && *size >= short);
        let small: i64 = small.map(|(size, count)| size * count).sum();
        alone + half + ((small - over).max(0) + holds - 1) / holds
    };
    let shorts = work.sizes.iter().copied().filter(|size| 2 * size <= holds);
    let most = shorts.chain([0]).map(at_least).max().unwrap_or(0);
    most * kind.cost
}
