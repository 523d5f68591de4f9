//! The packs that cover a need, against every way of buying there is.

use proptest::prelude::*;
use storyrod::measure::Money;
use storyrod::takeoff::{Choice, cover};

/// What a choice comes to, in the order in which it counts: price (nothing where it does not count), held, packs.
type Worth = (i64, u64, u64);

fn worth(counts: &[u32], sizes: &[u64], prices: &[i64]) -> Worth {
    let sum = |values: &mut dyn Iterator<Item = u64>| values.sum();
    let packs = counts.iter().map(|count| u64::from(*count));
    let price = (counts.iter().zip(prices))
        .map(|(count, price)| i64::from(*count) * price)
        .sum();
    let held = sum(&mut packs.clone().zip(sizes).map(|(count, size)| count * size));
    (price, held, sum(&mut packs.clone()))
}

/// Every way to buy, no pack more often than it would cover the need by itself.
fn least_of_all(needed: u64, sizes: &[u64], prices: &[i64], counts: &mut Vec<u32>) -> Worth {
    if counts.len() == sizes.len() {
        let found = worth(counts, sizes, prices);
        return if found.1 >= needed {
            found
        } else {
            (i64::MAX, u64::MAX, u64::MAX)
        };
    }
    let most = needed.div_ceil(sizes[counts.len()]);
    (0..=most as u32)
        .map(|count| {
            counts.push(count);
            let least = least_of_all(needed, sizes, prices, counts);
            counts.pop();
            least
        })
        .min()
        .unwrap()
}

/// One unit after another, the best for each, with no shortcut however much is needed.
fn least_step_by_step(needed: u64, sizes: &[u64], prices: &[i64]) -> Worth {
    let end = needed + sizes.iter().max().unwrap();
    let mut best: Vec<Option<Worth>> = vec![Some((0, 0, 0))];
    for n in 1..=end {
        let before = sizes.iter().zip(prices).filter_map(|(size, price)| {
            let (so_far, held, packs) = best[n.checked_sub(*size)? as usize]?;
            Some((so_far + price, held + size, packs + 1))
        });
        let least = before.min();
        best.push(least);
    }
    best[needed as usize..]
        .iter()
        .flatten()
        .min()
        .copied()
        .unwrap()
}

fn ours(needed: u64, sizes: &[u64], prices: Option<&[i64]>) -> Worth {
    let floats: Vec<f64> = sizes.iter().map(|size| *size as f64).collect();
    let nothing = vec![0; sizes.len()];
    let (tags, choice) = match prices {
        Some(prices) => (
            prices
                .iter()
                .map(|price| Some(Money::minor(*price)))
                .collect(),
            Choice::Cheapest,
        ),
        None => (vec![None; sizes.len()], Choice::LeastLeftOver),
    };
    let counts = cover(needed as f64, &floats, &tags, choice);
    worth(&counts, sizes, prices.unwrap_or(&nothing))
}

/// One to three packs with their prices.
fn packs(largest: u64) -> impl Strategy<Value = (Vec<u64>, Vec<i64>)> {
    prop::collection::vec((1..=largest, 0i64..40), 1..4).prop_map(|packs| packs.into_iter().unzip())
}

proptest! {
    #[test]
    fn prop_no_way_of_buying_is_better((sizes, prices) in packs(12), needed in 1u64..40) {
        let free = vec![0; sizes.len()];
        prop_assert_eq!(
            ours(needed, &sizes, None),
            least_of_all(needed, &sizes, &free, &mut Vec::new())
        );
        prop_assert_eq!(
            ours(needed, &sizes, Some(&prices)),
            least_of_all(needed, &sizes, &prices, &mut Vec::new())
        );
    }

    #[test]
    fn prop_a_large_need_is_bought_as_well_as_a_small_one(
        (sizes, prices) in packs(60), needed in 1u64..8_000,
    ) {
        let free = vec![0; sizes.len()];
        prop_assert_eq!(ours(needed, &sizes, None), least_step_by_step(needed, &sizes, &free));
        prop_assert_eq!(
            ours(needed, &sizes, Some(&prices)),
            least_step_by_step(needed, &sizes, &prices)
        );
    }
}
