//! What a room left over, on hand for the other rooms of the job.

use std::collections::BTreeMap;

use super::{Buying, Setup};
use crate::measure::Length;
use crate::site::Id;
use crate::trades::Material;

/// A rectangle by its sides.
pub type Sides = (Length, Length);

/// What one room left of one material.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Left {
    /// In opened packs, as a plain number: see [`number_of`](super::number_of).
    pub part: f64,
    /// Rests of sticks.
    pub sticks: Vec<Length>,
    /// Off-cuts by size, and how many of each.
    pub pieces: Vec<(Sides, u32)>,
}

impl Left {
    /// Nothing is left.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.part <= 0.0 && self.sticks.is_empty() && self.pieces.is_empty()
    }
}

impl Buying {
    /// What is on hand of a material in opened packs, as a plain number.
    #[must_use]
    pub fn on_hand(&self, material: &Material) -> f64 {
        let of = self.left.iter().filter(|((of, _), _)| of == material);
        of.map(|(_, left)| left.part.max(0.0)).sum()
    }

    /// The same list with what `counts` lets count: rests of sticks among the off-cuts on hand. What a room left is no longer
    /// there twice: while its own figures are on the list, their packs are figured anew and nothing is left yet.
    #[must_use]
    pub fn with_left(&self, counts: impl Fn(&Material, Id) -> bool) -> Buying {
        let mut now = self.clone();
        now.left
            .retain(|(material, room), _| counts(material, *room));
        for ((material, _), left) in &now.left {
            if !left.sticks.is_empty() {
                let setup = now
                    .cutting
                    .entry(material.clone())
                    .or_insert_with(|| Setup::usual(material));
                setup.offcuts.extend(left.sticks.iter().copied());
            }
        }
        now
    }
}

/// How many of some tiles need not be cut out of new ones, because off-cuts on hand are large enough for all their pieces.
///
/// The smallest off-cut that does is taken, each once; a piece counts by its box, the way round that it lies unless it may be
/// turned.
///
/// # Inputs
/// For each tile that is cut the boxes of its pieces; the off-cuts with how many of each; whether a piece may be turned.
/// # Gives
/// A count. More off-cuts never give fewer, and it is never more than there are tiles or off-cuts.
/// # Source
/// Arithmetic; a greedy choice, so that one more may do now and then.
/// # Example
/// ```
/// use storyrod::{measure::Length, takeoff::tiles_saved};
/// let inches = |a, b| (Length::inches(a), Length::inches(b));
/// // Two pieces of 4 in out of two off-cuts of 7 in; a third tile gives two pieces and has none left.
/// let cut = [vec![inches(4, 12)], vec![inches(4, 12)], vec![inches(5, 12), inches(5, 12)]];
/// assert_eq!(tiles_saved(&cut, &[(inches(7, 12), 2)], false), 2);
/// ```
#[must_use]
pub fn tiles_saved(tiles: &[Vec<Sides>], offcuts: &[(Sides, u32)], turns: bool) -> usize {
    let mut free: BTreeMap<Sides, u32> = BTreeMap::new();
    for (sides, count) in offcuts {
        *free.entry(*sides).or_default() += *count;
    }
    let fits = |piece: &Sides, (a, b): &Sides| {
        let lies = piece.0 <= *a && piece.1 <= *b;
        lies || (turns && piece.0 <= *b && piece.1 <= *a)
    };
    let area = |(a, b): &Sides| a.metres() * b.metres();
    // Tiles of one small piece first: they save the most.
    let mut order: Vec<&Vec<Sides>> = tiles.iter().filter(|pieces| !pieces.is_empty()).collect();
    order.sort_by(|a, b| {
        let all = |pieces: &[Sides]| pieces.iter().map(area).sum::<f64>();
        (a.len().cmp(&b.len())).then(all(a).total_cmp(&all(b)))
    });
    let mut saved = 0;
    for pieces in order {
        let mut left = free.clone();
        let all = pieces.iter().all(|piece| {
            let these = left
                .iter()
                .filter(|(sides, n)| **n > 0 && fits(piece, sides));
            let best = these.min_by(|a, b| area(a.0).total_cmp(&area(b.0)));
            let Some(best) = best.map(|(sides, _)| *sides) else {
                return false;
            };
            left.entry(best).and_modify(|n| *n -= 1);
            true
        });
        if all {
            free = left;
            saved += 1;
        }
    }
    saved
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_offcut_serves_once_and_only_where_it_is_large_enough() {
        let inches = |a, b| (Length::inches(a), Length::inches(b));
        let tiles = [
            vec![inches(4, 12)],
            vec![inches(8, 12)],
            vec![inches(12, 3)],
        ];
        let check = |offcuts: &[(Sides, u32)], turns, saved| {
            assert_eq!(tiles_saved(&tiles, offcuts, turns), saved, "{offcuts:?}");
        };
        check(&[], true, 0);
        check(&[(inches(7, 12), 1)], false, 1);
        check(&[(inches(7, 12), 9)], false, 1);
        check(&[(inches(7, 12), 9)], true, 2);
        check(&[(inches(9, 12), 2)], true, 2);
        check(&[(inches(9, 12), 3)], true, 3);
        check(&[(inches(3, 3), 50)], true, 0);
    }
}
