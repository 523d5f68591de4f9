//! Fewest tiles, or sheets, for a number of pieces of which it is known which two lie on one together.
//!
//! Every set of shapes that fits on a tile is listed; a linear program over them gives a bound that holds for any plan,
//! and a plan that is near it. Where there are too many sets, pieces are put in one by one, and the bound is by area.

use std::collections::{BTreeMap, BTreeSet};

use super::simplex::weights;

/// Tiles and the shapes that come out of each, and how few tiles any plan takes.
#[derive(Debug)]
pub(crate) struct Covered {
    /// Shapes by their places, one for each piece.
    pub tiles: Vec<Vec<usize>>,
    /// Tiles that any plan takes.
    pub at_least: usize,
}

/// Most shapes of which every set is sought.
const MOST_SHAPES: usize = 60;
/// Most sets that are listed.
const MOST_SETS: usize = 1_500;
/// Most steps in listing them, and in seeking a plan as good as the bound.
const MOST_STEPS: usize = 60_000;

/// A shape and how far its tile is turned.
type Turned = (usize, usize);
/// Whether two of them lie on one tile together.
type Together<'a> = &'a dyn Fn(Turned, Turned) -> bool;

/// What is known of the shapes.
struct Shapes<'a> {
    counts: &'a [usize],
    areas: &'a [i128],
    /// Twice the area of a tile.
    tile: i128,
    steps: usize,
    together: Together<'a>,
    /// Pairs that were asked for: the second turned by so much more than the first.
    known: BTreeMap<(usize, usize, usize), bool>,
}

impl Shapes<'_> {
    fn pair(&mut self, (a, at): Turned, (b, other): Turned) -> bool {
        if self.areas[a] + self.areas[b] > self.tile {
            return false;
        }
        // Turned alike, two pieces lie to each other as they did.
        let turn = (other + self.steps - at) % self.steps;
        let (together, key) = (self.together, (a, b, turn));
        *(self.known.entry(key)).or_insert_with(|| together((a, 0), (b, turn)))
    }

    /// A turn in which a shape lies with all of some that lie on a tile.
    fn fits(&mut self, shape: usize, on: &[Turned]) -> Option<usize> {
        let taken: i128 = on.iter().map(|(n, _)| self.areas[*n]).sum();
        if taken + self.areas[shape] > self.tile {
            return None;
        }
        (0..self.steps).find(|turn| on.iter().all(|other| self.pair(*other, (shape, *turn))))
    }

    /// The pieces one by one, each into the fullest tile that takes it.
    fn one_by_one(&mut self, counts: &[usize]) -> Vec<Vec<Turned>> {
        let mut tiles: Vec<(i128, Vec<Turned>)> = Vec::new();
        for (shape, count) in counts.iter().enumerate() {
            // What does not fit on a tile once does not fit on the same tile later.
            let mut refused: BTreeSet<usize> = BTreeSet::new();
            for _ in 0..*count {
                let mut fullest: Vec<usize> =
                    (0..tiles.len()).filter(|n| !refused.contains(n)).collect();
                fullest.sort_by_key(|n| (std::cmp::Reverse(tiles[*n].0), *n));
                let found = fullest.into_iter().find_map(|n| {
                    let turn = self.fits(shape, &tiles[n].1);
                    if turn.is_none() {
                        refused.insert(n);
                    }
                    turn.map(|turn| (n, turn))
                });
                match found {
                    Some((n, turn)) => {
                        tiles[n].0 += self.areas[shape];
                        tiles[n].1.push((shape, turn));
                    }
                    None => tiles.push((self.areas[shape], vec![(shape, 0)])),
                }
            }
        }
        tiles.into_iter().map(|(_, on)| on).collect()
    }

    /// Every set of shapes that fits on a tile and takes no other of a later place; `None` where there are too many.
    fn sets(&mut self) -> Option<Vec<Vec<usize>>> {
        if self.counts.len() > MOST_SHAPES {
            return None;
        }
        let mut found = BTreeSet::new();
        let mut steps = MOST_STEPS;
        for first in 0..self.counts.len() {
            self.grow(&mut vec![(first, 0)], &mut found, &mut steps)?;
        }
        Some(found.into_iter().collect())
    }

    fn grow(
        &mut self,
        on: &mut Vec<Turned>,
        found: &mut BTreeSet<Vec<usize>>,
        steps: &mut usize,
    ) -> Option<()> {
        let last = *on.last()?;
        let mut grew = false;
        let taken: i128 = on.iter().map(|(n, _)| self.areas[*n]).sum();
        for shape in last.0..self.counts.len() {
            if taken + self.areas[shape] > self.tile
                || on.iter().filter(|(n, _)| *n == shape).count() == self.counts[shape]
            {
                continue;
            }
            for turn in 0..self.steps {
                *steps = steps.checked_sub(1)?;
                let next = (shape, turn);
                if next >= last && on.iter().all(|other| self.pair(*other, next)) {
                    on.push(next);
                    self.grow(on, found, steps)?;
                    on.pop();
                    grew = true;
                }
            }
        }
        if !grew {
            found.insert(on.iter().map(|(n, _)| *n).collect());
            if found.len() > MOST_SETS {
                return None;
            }
        }
        Some(())
    }
}

/// Tiles for pieces of some shapes, so many of each, the largest first; and how few do in any plan.
pub(crate) fn cover(
    counts: &[usize],
    areas: &[i128],
    tile: i128,
    steps: usize,
    together: Together<'_>,
) -> Covered {
    let mut shapes = Shapes {
        counts,
        areas,
        tile,
        steps: steps.max(1),
        together,
        known: BTreeMap::new(),
    };
    let plain = |tiles: Vec<Vec<Turned>>| -> Vec<Vec<usize>> {
        let shape = |on: Vec<Turned>| on.into_iter().map(|(n, _)| n).collect();
        tiles.into_iter().map(shape).collect()
    };
    let mut tiles = plain(shapes.one_by_one(counts));
    let mut at_least = by_area(counts, areas, tile);
    if tiles.len() == at_least {
        return Covered { tiles, at_least };
    }
    let Some(sets) = shapes.sets() else {
        return Covered { tiles, at_least };
    };
    let solved = weights(counts, &sets);
    at_least = at_least.max(solved.at_least);
    if tiles.len() > at_least {
        // As many whole tiles of each set as the program takes, and the rest one by one.
        let mut left = counts.to_vec();
        let mut found = Vec::new();
        for (set, times) in sets.iter().zip(&solved.times) {
            for _ in 0..*times {
                take(set, &mut left, &mut found);
            }
        }
        let mut rest = found.clone();
        rest.extend(plain(shapes.one_by_one(&left)));
        if rest.len() < tiles.len() {
            tiles = rest;
        }
        if tiles.len() > at_least {
            let mut sought = Sought {
                sets: &sets,
                weights: &solved.weights,
                most: solved.most,
                steps: MOST_STEPS,
            };
            if let Some(exact) = sought.best(counts, at_least, tiles.len()) {
                at_least = at_least.max(exact.0);
                tiles = exact.1.unwrap_or(tiles);
            } else {
                sought.steps = MOST_STEPS;
                let begun = found.len();
                if at_least > begun
                    && let Some(true) = sought.seek(&mut left, at_least - begun, &mut found)
                {
                    tiles = found;
                }
            }
        }
    }
    Covered { tiles, at_least }
}

/// Takes what is left of a set onto a tile.
fn take(set: &[usize], left: &mut [usize], tiles: &mut Vec<Vec<usize>>) {
    let mut on = Vec::new();
    for shape in set {
        if left[*shape] > 0 {
            left[*shape] -= 1;
            on.push(*shape);
        }
    }
    if !on.is_empty() {
        tiles.push(on);
    }
}

/// A search for a plan of so many tiles.
struct Sought<'a> {
    sets: &'a [Vec<usize>],
    weights: &'a [i64],
    /// The most that a set weighs.
    most: i64,
    steps: usize,
}

impl Sought<'_> {
    /// Tries each number of tiles from a bound up to one short of a plan: the fewest, and a plan of as many where that is
    /// fewer than the plan; `None` where it takes too many steps to tell.
    fn best(
        &mut self,
        counts: &[usize],
        at_least: usize,
        planned: usize,
    ) -> Option<(usize, Option<Vec<Vec<usize>>>)> {
        for count in at_least..planned {
            let mut tiles = Vec::new();
            if self.seek(&mut counts.to_vec(), count, &mut tiles)? {
                return Some((count, Some(tiles)));
            }
        }
        Some((planned, None))
    }

    /// Whether so many tiles take what is left; `None` where it takes too many steps to tell.
    fn seek(
        &mut self,
        left: &mut Vec<usize>,
        count: usize,
        tiles: &mut Vec<Vec<usize>>,
    ) -> Option<bool> {
        let Some(largest) = left.iter().position(|n| *n > 0) else {
            return Some(true);
        };
        let weight: i64 = (left.iter().zip(self.weights))
            .map(|(n, weight)| {
                i64::try_from(*n)
                    .unwrap_or(i64::MAX)
                    .saturating_mul(*weight)
            })
            .fold(0, i64::saturating_add);
        let room = i64::try_from(count)
            .unwrap_or(i64::MAX)
            .saturating_mul(self.most);
        if count == 0 || weight > room {
            return Some(false);
        }
        for set in self.sets.iter().filter(|set| set.contains(&largest)) {
            self.steps = self.steps.checked_sub(1)?;
            let before = left.clone();
            take(set, left, tiles);
            if self.seek(left, count - 1, tiles)? {
                return Some(true);
            }
            tiles.pop();
            *left = before;
        }
        Some(false)
    }
}

/// Tiles that the areas take at least: those over half a tile each take one, and what is smaller takes what they leave.
fn by_area(counts: &[usize], areas: &[i128], tile: i128) -> usize {
    let pieces = || {
        areas
            .iter()
            .zip(counts)
            .map(|(area, n)| (*area, *n as i128))
    };
    let bound = |small: i128| {
        let (mut alone, mut large, mut rest) = (0, 0, 0);
        for (area, n) in pieces() {
            if area > tile - small {
                alone += n;
            } else if area * 2 > tile {
                large += n;
                rest -= n * (tile - area);
            } else if area >= small {
                rest += n * area;
            }
        }
        alone + large + (rest.max(0) + tile - 1) / tile.max(1)
    };
    let halves = areas.iter().filter(|area| *area * 2 <= tile);
    let least = halves.map(|small| bound(*small)).max();
    let least = least.unwrap_or(0).max(bound(0));
    usize::try_from(least).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Tiles of 100 and pieces that lie together wherever their areas do.
    #[track_caller]
    fn check(pieces: &[(usize, i128)], tiles: usize, at_least: usize) {
        let counts: Vec<usize> = pieces.iter().map(|p| p.0).collect();
        let areas: Vec<i128> = pieces.iter().map(|p| p.1).collect();
        let found = cover(&counts, &areas, 100, 1, &|_, _| true);
        assert_eq!((found.tiles.len(), found.at_least), (tiles, at_least));
        let mut used = vec![0; counts.len()];
        for on in &found.tiles {
            assert!(on.iter().map(|n| areas[*n]).sum::<i128>() <= 100, "{on:?}");
            on.iter().for_each(|n| used[*n] += 1);
        }
        assert_eq!(used, counts);
    }

    #[test]
    fn areas_alone_prove_the_simple_ones() {
        check(&[(4, 60)], 4, 4);
        check(&[(6, 50)], 3, 3);
        check(&[(3, 70), (3, 30)], 3, 3);
        check(&[], 0, 0);
    }

    /// The fewest tiles, by trying every way to part the pieces.
    fn by_hand(pieces: &[usize], together: &dyn Fn(&[usize]) -> bool) -> usize {
        fn put(
            rest: &[usize],
            on: &mut Vec<Vec<usize>>,
            together: &dyn Fn(&[usize]) -> bool,
        ) -> usize {
            let Some((piece, rest)) = rest.split_first() else {
                return on.len();
            };
            let mut best = usize::MAX;
            for n in 0..=on.len() {
                if n == on.len() {
                    on.push(Vec::new());
                }
                on[n].push(*piece);
                if together(&on[n]) {
                    best = best.min(put(rest, on, together));
                }
                on[n].pop();
                on.retain(|tile| !tile.is_empty());
            }
            best
        }
        put(pieces, &mut Vec::new(), together)
    }

    #[test]
    fn no_plan_is_better_than_the_bound_and_most_plans_meet_it() {
        let mut state = 7u64;
        let mut drawn = |most: u64| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            (state >> 33) % most
        };
        let mut proven = 0;
        for round in 0..200 {
            let shapes = 2 + drawn(4) as usize;
            let counts: Vec<usize> = (0..shapes).map(|_| 1 + drawn(2) as usize).collect();
            let mut areas: Vec<i128> = (0..shapes).map(|_| 15 + i128::from(drawn(50))).collect();
            areas.sort_by_key(|area| std::cmp::Reverse(*area));
            // Some pairs lie together, others never.
            let apart: BTreeSet<(usize, usize)> = (0..shapes)
                .flat_map(|a| (a..shapes).map(move |b| (a, b)))
                .filter(|_| drawn(3) == 0)
                .collect();
            let pair = |a: usize, b: usize| !apart.contains(&(a.min(b), a.max(b)));
            let found = cover(&counts, &areas, 100, 1, &|a, b| pair(a.0, b.0));
            let pieces: Vec<usize> = (0..shapes)
                .flat_map(|n| std::iter::repeat_n(n, counts[n]))
                .collect();
            let fits = |on: &[usize]| {
                let each = |n: usize| on[n + 1..].iter().all(|other| pair(on[n], *other));
                on.iter().map(|n| areas[*n]).sum::<i128>() <= 100 && (0..on.len()).all(each)
            };
            let fewest = by_hand(&pieces, &fits);
            let (planned, bound) = (found.tiles.len(), found.at_least);
            assert!(
                bound <= fewest && fewest <= planned,
                "round {round}: {bound} {fewest} {planned}"
            );
            proven += usize::from(planned == bound);
        }
        assert!(proven > 180, "{proven}");
    }
}
