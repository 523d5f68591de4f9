//! The problem in whole numbers: sizes with their counts, kinds of stick with theirs. A saw cut is part of each piece
//! and of each stick, for after the last piece none is needed.

/// A kind of stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Kind {
    /// What it holds: its length and one saw cut.
    pub holds: i64,
    /// What one costs; nothing for what is on hand.
    pub cost: i64,
    /// How many there are; `None` for any number.
    pub most: Option<u32>,
}

/// One stick, cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    /// Its kind.
    pub kind: usize,
    /// How many pieces of each size.
    pub of: Vec<u32>,
}

/// What is to be cut, and from what.
#[derive(Clone, Debug)]
pub(super) struct Work {
    /// Sizes of pieces with their saw cut, the longest first.
    pub sizes: Vec<i64>,
    /// How many of each.
    pub counts: Vec<u32>,
    pub kinds: Vec<Kind>,
}

/// How much may still be tried. Steps are counted, not timed, so that the same job has the same answer everywhere.
#[derive(Clone, Copy, Debug)]
pub(super) struct Effort {
    pub left: u64,
}

impl Effort {
    /// A part of it, to be given back with [`Effort::back`].
    pub fn part(&mut self, most: u64) -> Effort {
        let part = self.left.min(most);
        self.left -= part;
        Effort { left: part }
    }
    pub fn back(&mut self, part: Effort) {
        self.left += part.left;
    }
}

impl Work {
    /// All sizes and counts added up.
    pub fn total(&self) -> i64 {
        let each = self.sizes.iter().zip(&self.counts);
        each.map(|(size, count)| size * i64::from(*count)).sum()
    }
    pub fn pieces(&self) -> u32 {
        self.counts.iter().sum()
    }
    pub fn cost(&self, plan: &[Pattern]) -> i64 {
        plan.iter().map(|cut| self.kinds[cut.kind].cost).sum()
    }
    /// What the pieces of a stick take of it.
    pub fn load(&self, cut: &Pattern) -> i64 {
        let each = self.sizes.iter().zip(&cut.of);
        each.map(|(size, count)| size * i64::from(*count)).sum()
    }
    /// Every plan's cost is a multiple of this.
    pub fn step(&self) -> i64 {
        self.kinds
            .iter()
            .fold(0, |all, kind| divisor(all, kind.cost))
            .max(1)
    }
    /// What remains when sticks have been cut; pieces that were cut too often count once.
    pub fn without(&self, plan: &[Pattern]) -> Work {
        let mut rest = self.clone();
        for cut in plan {
            for (left, count) in rest.counts.iter_mut().zip(&cut.of) {
                *left = left.saturating_sub(*count);
            }
            if let Some(most) = &mut rest.kinds[cut.kind].most {
                *most = most.saturating_sub(1);
            }
        }
        rest
    }
}

/// The greatest common divisor.
pub(super) fn divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { divisor(b, a % b) }
}
