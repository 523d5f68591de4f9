//! The worthiest pieces that one stick holds: branch and bound over whole numbers.

use super::work::Effort;

/// Pieces of one size that may go on a stick.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    /// Which size.
    pub at: usize,
    pub size: i64,
    /// What one is worth, at least nothing.
    pub value: i64,
    /// How many there are.
    pub most: u32,
}

/// What was found for one stick.
#[derive(Clone, Debug, Default)]
pub(super) struct Filled {
    /// What the pieces are worth.
    pub value: i64,
    /// No stick of this length is worth more than this; equal to `value` where the search came to its end.
    pub bound: i64,
    /// Sizes, and how many of each.
    pub of: Vec<(usize, u32)>,
}

struct Search<'a> {
    items: &'a [Item],
    /// The least size from each item on.
    least: Vec<i64>,
    taken: Vec<u32>,
    best: i64,
    best_taken: Vec<u32>,
    steps: u64,
    whole: bool,
}

impl Search<'_> {
    /// More than `room` can be worth with the items from `from` on, by filling it with fractions of the densest.
    fn bound(&self, from: usize, mut room: i64) -> i64 {
        let mut worth = 0;
        for item in &self.items[from..] {
            let all = item.size.saturating_mul(i64::from(item.most));
            if all <= room {
                room -= all;
                worth += item.value * i64::from(item.most);
            } else {
                // Never less than the exact share: whole numbers to 2^53 divide with an error far under one.
                return worth + (item.value as f64 * (room as f64 / item.size as f64)) as i64 + 1;
            }
        }
        worth
    }

    /// Goes deeper only where something is taken, so that many sizes are no deep call.
    fn go(&mut self, from: usize, room: i64, worth: i64) {
        if worth > self.best {
            self.best = worth;
            self.best_taken.clone_from(&self.taken);
        }
        for at in from..self.items.len() {
            if room < self.least[at] {
                return;
            }
            if self.steps == 0 {
                self.whole = false;
                return;
            }
            self.steps -= 1;
            if worth + self.bound(at, room) <= self.best {
                return;
            }
            let item = self.items[at];
            let most = (room / item.size).min(i64::from(item.most)) as u32;
            for count in (1..=most).rev() {
                self.taken[at] = count;
                let count = i64::from(count);
                self.go(at + 1, room - item.size * count, worth + item.value * count);
                if self.steps == 0 {
                    self.whole = false;
                    self.taken[at] = 0;
                    return;
                }
            }
            self.taken[at] = 0;
        }
    }
}

/// The worthiest pieces that fit in `room`, or the worthiest found in so many steps; only what is worth more than `over`
/// is looked for.
pub(super) fn fill(items: &[Item], room: i64, over: i64, most: u64, effort: &mut Effort) -> Filled {
    let mut items: Vec<Item> = items
        .iter()
        .copied()
        .filter(|item| item.value > 0 && item.size <= room && item.most > 0)
        .collect();
    items.sort_by(|a, b| {
        let (one, other) = (
            i128::from(a.value) * i128::from(b.size),
            i128::from(b.value) * i128::from(a.size),
        );
        other.cmp(&one).then(b.size.cmp(&a.size))
    });
    let mut least = vec![i64::MAX; items.len() + 1];
    for (at, item) in items.iter().enumerate().rev() {
        least[at] = least[at + 1].min(item.size);
    }
    let given = most.min(effort.left);
    let mut search = Search {
        least,
        taken: vec![0; items.len()],
        best: over,
        best_taken: Vec::new(),
        steps: given,
        whole: true,
        items: &items,
    };
    let bound = search.bound(0, room);
    search.go(0, room, 0);
    effort.left -= given - search.steps;
    let of: Vec<(usize, u32)> = search
        .best_taken
        .iter()
        .zip(search.items)
        .filter(|(count, _)| **count > 0)
        .map(|(count, item)| (item.at, *count))
        .collect();
    Filled {
        value: if of.is_empty() { 0 } else { search.best },
        bound: if search.whole { search.best } else { bound },
        of,
    }
}
