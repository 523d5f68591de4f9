//! Packs on sale, and the packs that cover a need.

use crate::handbook::{Cite, documents};
use crate::measure::quantity::{gallons, litres};
use crate::measure::{Amount, Length, Money, Phrase};
use crate::trades::{Compound, Material};

use super::Choice;

/// A pack as it is sold.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// Its name.
    pub name: Phrase,
    /// What is in it.
    pub holds: Amount,
    /// Where its size stands.
    pub cite: Cite,
}

impl Pack {
    /// What it holds as a whole number, the same for ever: millionths of a litre, of a metre, of a square metre, or
    /// of a piece.
    #[must_use]
    pub fn millionths(&self) -> i64 {
        let holds = match &self.holds {
            Amount::Volume(volume) => volume.value * 1e3,
            Amount::Length(length) => length.metres(),
            Amount::Count(count) => *count as f64,
            Amount::Size(across, up) => across.metres() * up.metres(),
            _ => 0.0,
        };
        (holds * 1e6).round() as i64
    }
}

/// The packs that a material is sold in, largest first.
#[must_use]
pub fn packs_on_sale(material: &Material, metric: bool) -> Vec<Pack> {
    let practice = Cite::practice("a size commonly on sale");
    let pack = |name: &'static str, holds: Amount, cite| Pack {
        name: Phrase::plain(name),
        holds,
        cite,
    };
    match material {
        // Powder, sold by weight: how much a bag makes stands on the bag alone.
        Material::Compound(Compound::Setting) => Vec::new(),
        Material::Paint { .. } | Material::Primer { .. } | Material::Compound(_) if metric => [
            ("10 L", 10.0),
            ("5 L", 5.0),
            ("2.5 L", 2.5),
            ("1 L", 1.0),
            ("0.5 L", 0.5),
        ]
        .map(|(name, size)| pack(name, litres(size).into(), practice))
        .to_vec(),
        Material::Paint { .. } | Material::Primer { .. } | Material::Compound(_) => {
            let cite = Cite::memory(
                &documents::NIST_HB_44,
                "US gallon of 231 cubic inches; sizes as commonly sold",
            );
            [("5 gal", 5.0), ("1 gal", 1.0), ("1 qt", 0.25)]
                .map(|(name, size)| pack(name, gallons(size).into(), cite))
                .to_vec()
        }
        Material::Screws { .. } => vec![pack("box of 200", Amount::Count(200), practice)],
        Material::AdhesivePatch { .. } => vec![pack("1 patch", Amount::Count(1), practice)],
        Material::JointTape => vec![
            pack("250 ft roll", Length::feet(250).into(), practice),
            pack("75 ft roll", Length::feet(75).into(), practice),
        ],
        Material::Board { .. } => vec![pack(
            "4 × 8 ft sheet",
            Amount::Size(Length::feet(4), Length::feet(8)),
            practice,
        )],
        Material::Lumber { .. } => vec![pack("8 ft board", Length::feet(8).into(), practice)],
    }
}

/// How many of each pack cover a need: least left over, then fewest packs; or cheapest where every price is known.
///
/// Sizes are taken in thousandths of the smallest, so any mix of packs on sale is exact.
///
/// # Inputs
/// - `needed`: no less than nothing, in the unit of `sizes`.
/// - `sizes`: each more than nothing; `prices` beside them.
///
/// # Gives
/// A count for each size, in their order.
///
/// # Source
/// Exact dynamic programming; no rule of the trade.
///
/// # Example
/// ```
/// use storyrod::takeoff::{Choice, cover};
/// // 2.417 gal in fives, ones and quarts: two gallons and two quarts.
/// assert_eq!(cover(2.417, &[5.0, 1.0, 0.25], &[None, None, None], Choice::LeastLeftOver), [0, 2, 2]);
/// ```
#[must_use]
pub fn cover(needed: f64, sizes: &[f64], prices: &[Option<Money>], choice: Choice) -> Vec<u32> {
    let mut counts = vec![0u32; sizes.len()];
    let (Some(smallest), Some(largest)) = (
        sizes.iter().copied().reduce(f64::min),
        sizes.iter().copied().reduce(f64::max),
    ) else {
        return counts;
    };
    if !needed.is_finite() || needed <= 0.0 || smallest <= 0.0 {
        return counts;
    }
    // Far beyond what a washroom takes, the largest pack carries the bulk.
    let bulk = ((needed / largest).floor() - 40.0).max(0.0);
    let at_largest = sizes
        .iter()
        .position(|size| (*size - largest).abs() < f64::EPSILON)
        .unwrap_or(0);
    let rest = needed - bulk * largest;
    let unit = unit_of(sizes, smallest);
    let units: Vec<usize> = sizes
        .iter()
        .map(|size| (size / unit).round() as usize)
        .collect();
    let goal = ((rest / unit) - 1e-9).ceil().max(1.0) as usize;
    let by_price = choice == Choice::Cheapest
        && prices.len() == sizes.len()
        && prices.iter().all(Option::is_some);
    let end = goal + units.iter().copied().max().unwrap_or(1);
    // best[n]: lowest cost of packs that hold exactly n units, and the last pack taken.
    let mut best: Vec<Option<(i64, usize)>> = vec![None; end + 1];
    best[0] = Some((0, usize::MAX));
    for n in 1..=end {
        for (pack, size) in units.iter().enumerate().filter(|(_, size)| **size <= n) {
            let cost = if by_price {
                prices[pack].map_or(0, Money::as_minor)
            } else {
                1
            };
            if let Some((so_far, _)) = best[n - size]
                && best[n].is_none_or(|(least, _)| so_far + cost < least)
            {
                best[n] = Some((so_far + cost, pack));
            }
        }
    }
    let covers = (goal..=end).filter_map(|n| best[n].map(|(cost, _)| (n, cost)));
    let chosen = if by_price {
        covers.min_by_key(|(n, cost)| (*cost, *n))
    } else {
        covers.min_by_key(|(n, cost)| (*n, *cost))
    };
    let mut n = chosen.map_or(0, |(n, _)| n);
    while let Some((_, pack)) = best[n].filter(|_| n > 0) {
        counts[pack] += 1;
        n -= units[pack];
    }
    counts[at_largest] += bulk as u32;
    counts
}

/// The largest part of the smallest size of which every size is a whole number: the size itself, a half, a fifth …
fn unit_of(sizes: &[f64], smallest: f64) -> f64 {
    let whole = |unit: f64| {
        sizes
            .iter()
            .all(|size| ((size / unit) - (size / unit).round()).abs() < 1e-6)
    };
    [1.0, 2.0, 3.0, 4.0, 5.0, 10.0]
        .into_iter()
        .map(|parts| smallest / parts)
        .find(|unit| whole(*unit))
        .unwrap_or(smallest / 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const CANS: [f64; 3] = [5.0, 1.0, 0.25];

    #[track_caller]
    fn check(needed: f64, expected: [u32; 3]) {
        assert_eq!(
            cover(needed, &CANS, &[None; 3], Choice::LeastLeftOver),
            expected,
            "{needed}"
        );
    }

    /// 423 / 350 × 2 = 2.417 gal, bought as two gallons and two quarts: a contractor's paint formulas, read.
    /// The other needs are arithmetic of our own.
    #[test]
    fn a_need_is_covered_with_the_least_left_over_in_the_fewest_cans() {
        check(423.0 / 350.0 * 2.0, [0, 2, 2]);
        check(0.989, [0, 1, 0]);
        check(0.577, [0, 0, 3]);
        check(0.229, [0, 0, 1]);
        check(1.189, [0, 1, 1]);
        check(5.0, [1, 0, 0]);
        check(0.0, [0, 0, 0]);
    }

    #[test]
    fn the_cheapest_cover_may_leave_some_over() {
        let prices = [
            Some(Money::minor(14_000)),
            Some(Money::minor(3_000)),
            Some(Money::minor(1_400)),
        ];
        assert_eq!(cover(0.7, &CANS, &prices, Choice::Cheapest), [0, 1, 0]);
    }

    #[test]
    fn packs_always_cover_and_no_pack_is_idle() {
        for n in 1..400 {
            let needed = f64::from(n) * 0.0317;
            let counts = cover(needed, &CANS, &[None; 3], Choice::LeastLeftOver);
            let held: f64 = counts
                .iter()
                .zip(CANS)
                .map(|(count, size)| f64::from(*count) * size)
                .sum();
            assert!(
                held >= needed - 1e-9 && held - 0.25 < needed,
                "{needed}: {counts:?}"
            );
        }
    }
}
