//! Sticks cut as CP-SAT of OR-Tools 9.15 cuts them (`ortools_sticks.py` wrote the jobs and their fewest sticks).

use storyrod::geometry::stock::{Order, Stick, plan};
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

#[test]
fn every_job_takes_as_few_sticks_as_or_tools_proves() {
    let (mut jobs, mut with_offcuts, mut proven_by_them) = (0, 0, 0);
    for line in include_str!("ortools_sticks.csv")
        .lines()
        .filter(|l| !l.starts_with('#'))
    {
        let (order, bought, how) = job(line);
        assert!(order.pieces.len() <= 60, "{line}");
        let cut = plan(&order).unwrap_or_else(|problem| panic!("{problem:?}: {line}"));
        assert_eq!((cut.cost, cut.least), (bought, bought), "{line}");
        assert_eq!(cut.bought() as i64, bought, "{line}");
        jobs += 1;
        with_offcuts += usize::from(!order.offcuts.is_empty());
        proven_by_them += usize::from(how == "proven");
    }
    assert!(jobs >= 300, "{jobs}");
    assert!(
        with_offcuts >= 50 && proven_by_them >= 250,
        "{with_offcuts} {proven_by_them}"
    );
}
