//! What the benches share: how long a piece of work takes, and whether a goal is met.

use std::hint::black_box;
use std::time::Instant;

/// The last word of a figure's line.
pub fn outcome(met: bool) -> &'static str {
    if met { "met" } else { "short" }
}

/// How long a piece of work takes.
pub fn milliseconds<T>(work: impl FnOnce() -> T) -> f64 {
    let begun = Instant::now();
    black_box(work());
    begun.elapsed().as_secs_f64() * 1e3
}

/// The middle one of several times.
pub fn median(times: impl IntoIterator<Item = f64>) -> f64 {
    let mut times: Vec<f64> = times.into_iter().collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
