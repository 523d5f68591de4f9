//! Sticks cut as CP-SAT of OR-Tools 9.15 cuts them (`ortools_sticks.py` wrote the jobs and their fewest sticks).

use storyrod::geometry::stock::plan;

use super::stick_jobs::job;

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
