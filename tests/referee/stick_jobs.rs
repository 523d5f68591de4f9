//! A cutting job as `ortools_sticks.csv` has it, for the test and for the bench.

use storyrod::geometry::stock::{Order, Stick};
use storyrod::measure::Length;

/// A job as it stands on a line, its fewest sticks, and how they are known.
pub fn job(line: &str) -> (Order, i64, &str) {
    let fields: [&str; 7] = line.split(',').collect::<Vec<_>>().try_into().unwrap();
    let [unit, kerf, sticks, offcuts, pieces, bought, how] = fields;
    let unit: i64 = unit.parse().unwrap();
    let length = |text: &str| Length::nm(text.parse::<i64>().unwrap() * unit);
    let counted = |text: &str| match text.split_once('x') {
        Some((of, count)) => (length(of), Some(count.parse::<u32>().unwrap())),
        None => (length(text), None),
    };
    let order = Order {
        pieces: pieces
            .split(' ')
            .map(counted)
            .flat_map(|(of, count)| vec![of; count.unwrap() as usize])
            .collect(),
        kerf: length(kerf),
        sticks: sticks
            .split(' ')
            .map(counted)
            .map(|(length, count)| Stick {
                length,
                count,
                cost: 1,
            })
            .collect(),
        offcuts: offcuts.split_terminator(' ').map(length).collect(),
    };
    (order, bought.parse().unwrap(), how)
}
