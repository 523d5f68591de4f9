//! Lengths cut from sticks: the fewest sticks, proven where that can be done in so many steps, and the waste gathered
//! into one long rest.

mod gather;
mod greedy;
mod knapsack;
mod prices;
mod search;
mod solve;
#[cfg(test)]
mod tests;
mod work;

use std::cmp::Reverse;

use crate::measure::Length;
use work::{Effort, Kind, Pattern, Work, divisor};

/// Most pieces in one order.
pub const MOST_PIECES: usize = 10_000;

/// A kind of stick on sale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stick {
    /// How long.
    pub length: Length,
    /// How many there are; `None` for any number.
    pub count: Option<u32>,
    /// What one weighs in the choice, at least 1: equal for the fewest sticks, its length or its price for the least of
    /// that.
    pub cost: u32,
}

/// What is to be cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    /// The pieces.
    pub pieces: Vec<Length>,
    /// What the saw takes with each cut.
    pub kerf: Length,
    /// Sticks on sale.
    pub sticks: Vec<Stick>,
    /// Offcuts on hand.
    pub offcuts: Vec<Length>,
}

/// Where a stick comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Origin {
    /// An offcut on hand, by its place in the order.
    Offcut(usize),
    /// Bought, by the place of its kind in the order.
    Stick(usize),
    /// As long as the longest on sale, but more of them than there are.
    Missing,
}

/// One stick, cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Where it comes from.
    pub from: Origin,
    /// How long it is.
    pub length: Length,
    /// The pieces by their places in the order, the longest first.
    pub pieces: Vec<usize>,
    /// What remains of it.
    pub rest: Length,
    /// What the saw takes of it.
    pub sawn: Length,
}

/// All sticks, cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Offcuts first, then sticks, the one with the longest rest last.
    pub cuts: Vec<Cut>,
    /// What the sticks bought cost.
    pub cost: i64,
    /// No plan costs less; equal to `cost` where that is proven.
    pub least: i64,
    /// No plan of this cost leaves a longer rest of a bought stick.
    pub longest_rest: bool,
}

impl Plan {
    /// No plan costs less.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.cost == self.least
    }
    /// Sticks to buy.
    #[must_use]
    pub fn bought(&self) -> usize {
        let bought = |cut: &&Cut| !matches!(cut.from, Origin::Offcut(_));
        self.cuts.iter().filter(bought).count()
    }
    /// Sticks that are needed beyond what there is.
    #[must_use]
    pub fn missing(&self) -> usize {
        let missing = |cut: &&Cut| cut.from == Origin::Missing;
        self.cuts.iter().filter(missing).count()
    }
}

/// Why there is no plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// No piece is asked for.
    NoPieces,
    /// More pieces than [`MOST_PIECES`].
    TooMany(usize),
    /// There is no stick at all.
    NoSticks,
    /// A piece, by its place, is no length.
    NoLength(usize),
    /// A piece, by its place, is longer than the longest stick.
    TooLong(usize, Length),
    /// The saw takes less than nothing, or as much as the longest stick.
    Kerf,
    /// A stick is no length, or beyond [`Length::LONGEST`].
    StickLength(Length),
}

/// A plan for cutting an order: fewest sticks, or the least cost, then offcuts that save nothing left alone, then the
/// longest rest.
///
/// With n pieces of lengths l and a kerf k a stick of length L holds them where Σ(l + k) ≤ L + k: after the last piece
/// the saw need not come in.
///
/// # Inputs
/// Pieces from more than nothing to the longest stick, at most [`MOST_PIECES`]; the kerf from nothing; sticks with their
/// counts and costs; offcuts, which cost nothing.
///
/// # Gives
/// The plan, what it costs, and the least that any plan costs. The work is bounded by counted steps; where they run out
/// before the proof, `least` is less than `cost`. Where sticks are limited and do not suffice, the plan takes more of the
/// longest and says so.
///
/// # Errors
/// [`Problem`]: nothing to cut or to cut from, a piece longer than any stick.
///
/// # Example
/// ```
/// use storyrod::geometry::stock::{Order, Stick, plan};
/// use storyrod::measure::Length;
/// let halves = Order {
///     pieces: vec![Length::inches(48); 2],
///     kerf: Length::in_64(0, 8),
///     sticks: vec![Stick { length: Length::inches(96), count: None, cost: 1 }],
///     offcuts: Vec::new(),
/// };
/// let cut = plan(&halves).unwrap();
/// assert_eq!((cut.bought(), cut.is_proven()), (2, true));
/// ```
pub fn plan(order: &Order) -> Result<Plan, Problem> {
    let work = stated(order)?;
    let mut effort = Effort { left: STEPS };
    let solved = solve::solve(&work.work, &mut effort);
    let mut cuts = gather::leave_offcuts(&work.work, solved.plan, &mut effort);
    gather::shrink(&work.work, &mut cuts);
    let longest_rest = gather::gather(&work.work, &mut cuts, &mut effort);
    Ok(Plan {
        cost: work.work.cost(&cuts),
        least: solved.least,
        longest_rest,
        cuts: work.told(order, &cuts),
    })
}

/// Steps for one order.
const STEPS: u64 = 3_000_000;

/// The order in whole numbers.
struct Stated {
    work: Work,
    /// Nanometres in one.
    unit: i64,
    /// Places of the pieces of each size.
    places: Vec<Vec<usize>>,
    /// Where the sticks of each kind come from; offcuts of one length are one kind.
    from: Vec<Vec<Origin>>,
}

fn stated(order: &Order) -> Result<Stated, Problem> {
    let Order {
        pieces,
        kerf,
        sticks,
        offcuts,
    } = order;
    if pieces.is_empty() {
        return Err(Problem::NoPieces);
    }
    if pieces.len() > MOST_PIECES {
        return Err(Problem::TooMany(pieces.len()));
    }
    let lengths = sticks
        .iter()
        .map(|stick| stick.length)
        .chain(offcuts.iter().copied());
    let wrong = |length: &Length| !length.is_positive() || *length > Length::LONGEST;
    if let Some(length) = lengths.clone().find(wrong) {
        return Err(Problem::StickLength(length));
    }
    let longest = lengths.max().ok_or(Problem::NoSticks)?;
    if *kerf < Length::ZERO || *kerf >= longest {
        return Err(Problem::Kerf);
    }
    if let Some(at) = pieces.iter().position(|piece| !piece.is_positive()) {
        return Err(Problem::NoLength(at));
    }
    if let Some(at) = pieces.iter().position(|piece| *piece > longest) {
        return Err(Problem::TooLong(at, longest));
    }
    let mut kinds: Vec<(Kind, Vec<Origin>)> = Vec::new();
    for (at, offcut) in offcuts.iter().enumerate() {
        let holds = (*offcut + *kerf).as_nm();
        match kinds.iter_mut().find(|(kind, _)| kind.holds == holds) {
            Some((kind, from)) => {
                from.push(Origin::Offcut(at));
                kind.most = Some(from.len() as u32);
            }
            None => kinds.push((
                Kind {
                    holds,
                    cost: 0,
                    most: Some(1),
                },
                vec![Origin::Offcut(at)],
            )),
        }
    }
    let enough = pieces.len() as u32;
    for (at, stick) in sticks.iter().enumerate() {
        let kind = Kind {
            holds: (stick.length + *kerf).as_nm(),
            cost: i64::from(stick.cost.max(1)),
            most: stick.count.map(|count| count.min(enough)),
        };
        kinds.push((kind, vec![Origin::Stick(at)]));
    }
    let endless = kinds.iter().filter(|(kind, _)| kind.most.is_none());
    let endless = endless.map(|(kind, _)| kind.holds).max().unwrap_or(0);
    let longest_piece = pieces.iter().copied().max().unwrap_or_default();
    if endless < (longest_piece + *kerf).as_nm() {
        let limited = kinds
            .iter()
            .map(|(kind, _)| kind.cost * i64::from(kind.most.unwrap_or(enough)));
        let dear = kinds
            .iter()
            .map(|(kind, _)| kind.cost)
            .max()
            .unwrap_or(1)
            .max(1);
        let missing = Kind {
            holds: (longest + *kerf).as_nm(),
            // Dearer than all that there is.
            cost: limited.sum::<i64>() / dear * dear + dear,
            most: None,
        };
        kinds.push((missing, vec![Origin::Missing]));
    }
    let mut places: Vec<usize> = (0..pieces.len()).collect();
    places.sort_by_key(|at| Reverse(pieces[*at]));
    let mut sizes: Vec<i64> = Vec::new();
    let mut of: Vec<Vec<usize>> = Vec::new();
    for at in places {
        let size = (pieces[at] + *kerf).as_nm();
        if sizes.last() != Some(&size) {
            sizes.push(size);
            of.push(Vec::new());
        }
        if let Some(places) = of.last_mut() {
            places.push(at);
        }
    }
    let unit = sizes
        .iter()
        .chain(kinds.iter().map(|(kind, _)| &kind.holds))
        .fold(0, |all, length| divisor(all, *length))
        .max(1);
    for (kind, _) in &mut kinds {
        kind.holds /= unit;
    }
    let (kinds, from) = kinds.into_iter().unzip();
    Ok(Stated {
        work: Work {
            sizes: sizes.iter().map(|size| size / unit).collect(),
            counts: of.iter().map(|places| places.len() as u32).collect(),
            kinds,
        },
        unit,
        places: of,
        from,
    })
}

impl Stated {
    /// The plan in lengths, with the places of its pieces.
    fn told(mut self, order: &Order, plan: &[Pattern]) -> Vec<Cut> {
        let mut plan: Vec<&Pattern> = plan.iter().filter(|cut| self.work.load(cut) > 0).collect();
        plan.sort_by_key(|cut| {
            let kind = self.work.kinds[cut.kind];
            let rest = (kind.holds - self.work.load(cut)).max(0);
            (kind.cost > 0, rest, Reverse(kind.holds), Reverse(&cut.of))
        });
        let mut cuts = Vec::with_capacity(plan.len());
        for cut in plan {
            let from = &mut self.from[cut.kind];
            // Offcuts of one length are one kind, and each is taken once.
            let from = match from.first() {
                Some(Origin::Offcut(_)) => from.remove(0),
                other => other.copied().unwrap_or(Origin::Missing),
            };
            let length = Length::nm(self.work.kinds[cut.kind].holds * self.unit) - order.kerf;
            let mut pieces = Vec::new();
            for (count, places) in cut.of.iter().zip(&mut self.places) {
                pieces.extend(places.drain(..places.len().min(*count as usize)));
            }
            let cut_off: Length = pieces.iter().map(|at| order.pieces[*at]).sum();
            let rest = length - cut_off - order.kerf * pieces.len() as i64;
            let rest = rest.max(Length::ZERO);
            cuts.push(Cut {
                from,
                length,
                sawn: length - cut_off - rest,
                rest,
                pieces,
            });
        }
        cuts
    }
}
