//! Packs on sale, and the packs that cover a need.

use crate::handbook::{Cite, cutting, documents};
use crate::measure::quantity::{gallons, kilograms, litres, pounds};
use crate::measure::{Amount, Length, Money, Phrase};
use crate::trades::{Compound, Grout, Material};

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
    /// What it holds as a whole number, the same for ever: millionths of a litre, of a metre, of a square metre, of a
    /// kilogram, or of a piece.
    #[must_use]
    pub fn millionths(&self) -> i64 {
        let holds = match &self.holds {
            Amount::Volume(volume) => volume.value * 1e3,
            Amount::Mass(mass) => mass.value,
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
        Material::Tile { in_box: 0, .. } => vec![pack("1 tile", Amount::Count(1), practice)],
        Material::MosaicSheet { in_box: 0, .. } => {
            vec![pack("1 sheet", Amount::Count(1), practice)]
        }
        Material::Tile { in_box, .. } | Material::MosaicSheet { in_box, .. } => vec![Pack {
            name: Phrase::with("box of {0}", [Amount::Count(i64::from(*in_box))]),
            holds: Amount::Count(i64::from(*in_box)),
            cite: Cite::practice("as you said the box holds"),
        }],
        Material::Screws { .. } => vec![pack("box of 200", Amount::Count(200), practice)],
        Material::AdhesivePatch { .. } => vec![pack("1 patch", Amount::Count(1), practice)],
        Material::Sheet { .. } => vec![pack("1 sheet", Amount::Count(1), practice)],
        Material::SheetScrews { .. } => vec![pack("box of 185", Amount::Count(185), practice)],
        Material::MeshTape => vec![
            pack("150 ft roll", Length::feet(150).into(), practice),
            pack("50 ft roll", Length::feet(50).into(), practice),
        ],
        Material::ShieldPlate => vec![pack("1 plate", Amount::Count(1), practice)],
        Material::JointTape => vec![
            pack("250 ft roll", Length::feet(250).into(), practice),
            pack("75 ft roll", Length::feet(75).into(), practice),
        ],
        Material::Board { .. } => vec![pack(
            "sheet, 4 by 8 ft",
            Amount::Size(Length::feet(4), Length::feet(8)),
            practice,
        )],
        Material::Lumber { .. } | Material::Trim { .. } => {
            sticks_on_sale(material, &[Length::feet(8)])
        }
        Material::FinishNails { .. } => vec![
            pack("box of 500", Amount::Count(500), practice),
            pack("box of 100", Amount::Count(100), practice),
        ],
        Material::Sealant { .. } | Material::Caulk if metric => {
            vec![pack("300 mL", litres(0.3).into(), practice)]
        }
        Material::Sealant { .. } | Material::Caulk => {
            vec![pack("10.1 fl oz", gallons(10.1 / 128.0).into(), practice)]
        }
        Material::Pipe { stick, .. } => sticks_on_sale(material, &[*stick]),
        Material::PipeFitting { .. } | Material::PipeHanger { .. } => {
            vec![pack("1 piece", Amount::Count(1), practice)]
        }
        Material::Solder => [
            ("1 lb roll", 1.0),
            ("1/2 lb roll", 0.5),
            ("1/4 lb roll", 0.25),
        ]
        .map(|(name, weighs)| pack(name, pounds(weighs).into(), practice))
        .to_vec(),
        Material::Flux => vec![pack("2 oz tin", pounds(0.125).into(), practice)],
        Material::PipeCement { .. } | Material::PipePrimer => {
            [("1 qt", 0.25), ("1 pt", 0.125), ("8 oz", 1.0 / 16.0)]
                .map(|(name, holds)| pack(name, gallons(holds).into(), practice))
                .to_vec()
        }
        Material::Grout { .. }
        | Material::SettingMortar { .. }
        | Material::BedMix
        | Material::Cement
        | Material::Sand
        | Material::Lime => bags(material, metric)
            .iter()
            .map(|(name, weighs)| {
                let mass = if metric {
                    kilograms(*weighs)
                } else {
                    pounds(*weighs)
                };
                pack(name, mass.into(), practice)
            })
            .collect(),
    }
}

/// Sticks of a material in these lengths.
#[must_use]
pub fn sticks_on_sale(material: &Material, lengths: &[Length]) -> Vec<Pack> {
    let is_pipe = matches!(material, Material::Pipe { .. });
    let is_stick = is_pipe || matches!(material, Material::Trim { .. });
    let cite = if is_pipe {
        Cite::practice("as you said the sticks are")
    } else {
        cutting::LENGTHS.cite
    };
    let each = lengths.iter().map(|length| Pack {
        name: if is_stick {
            Phrase::with("stick of {0}", [Amount::Length(*length)])
        } else if *length == Length::feet(8) {
            Phrase::plain("8 ft board")
        } else {
            Phrase::with("{0} board", [Amount::Length(*length)])
        },
        holds: (*length).into(),
        cite,
    });
    each.collect()
}

/// Bags of what is sold by weight, in pounds or in kilograms, largest first.
fn bags(material: &Material, metric: bool) -> &'static [(&'static str, f64)] {
    match (material, metric) {
        (Material::Grout { .. }, true) => &[
            ("20 kg bag", 20.0),
            ("10 kg bag", 10.0),
            ("5 kg bag", 5.0),
            ("2 kg bag", 2.0),
        ],
        (
            Material::Grout {
                kind: Grout::Unsanded,
                ..
            },
            false,
        ) => &[("10 lb bag", 10.0)],
        (Material::Grout { .. }, false) => &[("25 lb bag", 25.0)],
        (Material::SettingMortar { .. } | Material::Sand | Material::Lime, false) => {
            &[("50 lb bag", 50.0)]
        }
        (Material::BedMix, false) => &[("80 lb bag", 80.0), ("60 lb bag", 60.0)],
        (Material::Cement, false) => &[("94 lb bag", 94.0), ("47 lb bag", 47.0)],
        (
            Material::SettingMortar { .. }
            | Material::Sand
            | Material::Lime
            | Material::BedMix
            | Material::Cement,
            true,
        ) => &[("25 kg bag", 25.0)],
        _ => &[],
    }
}

/// How many of each pack cover a need: least left over, then fewest packs; or cheapest where every price is known, then
/// least left over, then fewest packs.
///
/// # Inputs
/// - `needed`: no less than nothing, in the unit of `sizes`.
/// - `sizes`: each more than nothing; `prices` beside them, none less than nothing.
///
/// # Gives
/// A count for each size, in their order. Nothing better exists where every size is a whole number of one 1/100 (or
/// coarser part) of the smallest, and the largest at most a thousand times it; any other mix is covered, perhaps not so well.
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
    let good = |size: &f64| size.is_finite() && *size > 0.0;
    let Some(smallest) = sizes.iter().copied().reduce(f64::min) else {
        return counts;
    };
    if !needed.is_finite() || needed <= 0.0 || !sizes.iter().all(good) {
        return counts;
    }
    let unit = unit_of(sizes, smallest);
    let prices: Option<Vec<i64>> = (choice == Choice::Cheapest && prices.len() == sizes.len())
        .then(|| {
            prices
                .iter()
                .map(|price| Some(price.as_ref()?.as_minor().max(0)))
        })
        .and_then(Iterator::collect);
    let packs: Vec<Held> = (sizes.iter().enumerate())
        .map(|(at, size)| Held {
            // A size that is no whole number of units counts for less than it is, never for more.
            units: (size / unit + 1e-6).floor().max(1.0) as u64,
            price: prices.as_ref().map_or(0, |prices| prices[at]),
        })
        .collect();
    let goal = ((needed / unit) - 1e-9).ceil().max(1.0) as u64;
    let Some(bulk) = best_value(&packs) else {
        return counts;
    };
    let at_bulk = packs[bulk].units;
    let largest = packs.iter().map(|pack| pack.units).max().unwrap_or(1);
    // See `best_value`: beyond this, one kind of pack carries the rest.
    let mixed = (at_bulk - 1).saturating_mul(largest).min(FINEST * FINEST);
    let of_bulk = goal.saturating_sub(mixed) / at_bulk;
    let rest = goal - of_bulk * at_bulk;
    if largest <= FINEST * 100 {
        for pack in mix(&packs, rest as usize, largest as usize, prices.is_some()) {
            counts[pack] += 1;
        }
    } else {
        counts[bulk] = u32::try_from(rest.div_ceil(at_bulk)).unwrap_or(u32::MAX);
    }
    counts[bulk] = counts[bulk].saturating_add(u32::try_from(of_bulk).unwrap_or(u32::MAX));
    counts
}

/// The most units in the largest pack for which the cover is proved.
pub const FINEST: u64 = 1_000;

/// A pack in whole units.
struct Held {
    units: u64,
    /// In minor units of money; nothing where prices do not count.
    price: i64,
}

/// The pack that gives most for its price, and of those the largest: it carries what is far beyond one pack.
///
/// Say it holds `b` units, and that a best cover has `b` or more other packs. Taken one after another, their units leave
/// at most `b` remainders by `b`, so some of them together hold a multiple of `b`. As many of this pack in their
/// place hold the same, cost no more and are no more packs. So there is a best cover with fewer than `b` others, which
/// hold at most `(b − 1) × largest`; all that is needed beyond is this pack.
fn best_value(packs: &[Held]) -> Option<usize> {
    (0..packs.len()).min_by(|a, b| {
        let (a, b) = (&packs[*a], &packs[*b]);
        let (cost_a, cost_b) = (
            i128::from(a.price) * i128::from(b.units),
            i128::from(b.price) * i128::from(a.units),
        );
        cost_a.cmp(&cost_b).then(b.units.cmp(&a.units))
    })
}

/// The packs that cover `goal` units, one by one: by price, then by what is left over, then by their number.
fn mix(packs: &[Held], goal: usize, largest: usize, by_price: bool) -> Vec<usize> {
    let end = goal + largest;
    // best[n]: the least price and number of packs that hold exactly n units, and the last pack taken.
    let mut best: Vec<Option<(i64, u32, usize)>> = vec![None; end + 1];
    best[0] = Some((0, 0, 0));
    for n in 1..=end {
        for (at, pack) in packs.iter().enumerate() {
            let before = n.checked_sub(pack.units as usize);
            if let Some((price, number, _)) = before.and_then(|before| best[before]) {
                let so_far = (price.saturating_add(pack.price), number + 1);
                if best[n].is_none_or(|(price, number, _)| so_far < (price, number)) {
                    best[n] = Some((so_far.0, so_far.1, at));
                }
            }
        }
    }
    let covers = (goal..=end).filter_map(|n| best[n].map(|(price, number, _)| (n, price, number)));
    let chosen = if by_price {
        covers.min_by_key(|(n, price, number)| (*price, *n, *number))
    } else {
        covers.min_by_key(|(n, _, number)| (*n, *number))
    };
    let mut n = chosen.map_or(0, |(n, ..)| n);
    let mut taken = Vec::new();
    while let Some((.., at)) = best[n].filter(|_| n > 0) {
        taken.push(at);
        n -= packs[at].units as usize;
    }
    taken
}

/// The largest part of the smallest size, down to a hundredth, of which every size is a whole number; or a hundredth.
fn unit_of(sizes: &[f64], smallest: f64) -> f64 {
    let whole = |unit: f64| {
        sizes
            .iter()
            .all(|size| ((size / unit) - (size / unit).round()).abs() < 1e-6)
    };
    (1..=100)
        .map(|parts| smallest / f64::from(parts))
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

    /// Arithmetic of our own: 500 gallons are 500 single ones at 3.00, not 60 fives at 140.00 and the rest in ones.
    #[test]
    fn far_beyond_one_room_the_best_value_carries_the_bulk() {
        let prices = [
            Some(Money::minor(14_000)),
            Some(Money::minor(300)),
            Some(Money::minor(1_400)),
        ];
        assert_eq!(cover(500.0, &CANS, &prices, Choice::Cheapest), [0, 500, 0]);
        check(1_000_001.25, [200_000, 1, 1]);
    }

    #[test]
    fn sizes_and_needs_beyond_reason_are_still_covered() {
        let none = [None; 2];
        let cover = |needed, sizes: [f64; 2]| cover(needed, &sizes, &none, Choice::LeastLeftOver);
        for (needed, sizes) in [
            (1e7, [1e6, 0.001]),
            (12.0, [1e9, 1.0]),
            (77.7, [std::f64::consts::PI, std::f64::consts::E]),
            (7.0, [1.0, 1.0]),
        ] {
            let counts = cover(needed, sizes);
            let held: f64 = (counts.iter().zip(sizes))
                .map(|(count, size)| f64::from(*count) * size)
                .sum();
            assert!(held >= needed - 1e-9, "{needed} {sizes:?}: {counts:?}");
        }
        assert_eq!(cover(1e300, [5.0, 1.0])[0], u32::MAX);
        for needed in [f64::NAN, f64::INFINITY, -1.0] {
            assert_eq!(cover(needed, [5.0, 1.0]), [0, 0]);
        }
        assert_eq!(cover(3.0, [5.0, 0.0]), [0, 0]);
        assert_eq!(cover(3.0, [5.0, f64::NAN]), [0, 0]);
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
