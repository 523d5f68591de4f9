//! What it costs to plan cuts from sticks, beside OR-Tools on the same jobs in the same run.
//!
//! `cargo bench --no-default-features --bench pipe`
//!
//! Each figure is one line that ends in whether its goal is met: `met` or `short`; `short` also where its referee is not
//! there. Of each job the median of five runs counts, but for the most of all jobs the fastest of five: another program's turn
//! on the core is not the job's, and on Linux the waits for it are taken off. A plan here is all of it: the fewest sticks, the proof, offcuts left
//! alone, the longest rest; the referee looks for the fewest sticks and their proof alone.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

use std::hint::black_box;
use std::io::Write as _;
use std::process::{Command, Stdio};
use std::time::Instant;

use storyrod::geometry::stock::{Order, Plan, Stick, plan};
use storyrod::measure::Length;

#[path = "../referee/stick_jobs.rs"]
mod jobs;

const JOBS: &str = include_str!("../referee/ortools_sticks.csv");
const HOW: &str =
    "python3 -m pip install ortools, then cargo bench --no-default-features --bench pipe";

fn main() {
    // `cargo test --all-targets` runs this as well, where times say nothing.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    referee_jobs();
    two_hundred();
}

/// Milliseconds that the thread was ready and its core ran another, as Linux says; nothing elsewhere.
fn waited() -> f64 {
    let said = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let nanoseconds = said
        .split(' ')
        .nth(1)
        .and_then(|waits| waits.parse::<f64>().ok());
    nanoseconds.unwrap_or(0.0) / 1e6
}

/// A plan, and the time that it took less the waits for a core.
fn timed(order: &Order) -> (f64, Plan) {
    let (begun, before) = (Instant::now(), waited());
    let cut = black_box(plan(black_box(order)).unwrap());
    let time = begun.elapsed().as_secs_f64() * 1e3;
    ((time - (waited() - before)).max(0.001), cut)
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

fn outcome(met: bool) -> &'static str {
    if met { "met" } else { "short" }
}

/// Every job of the referee.
fn referee_jobs() {
    let lines: Vec<&str> = JOBS.lines().filter(|line| !line.starts_with('#')).collect();
    let (mut times, mut most) = (Vec::new(), 0.0f64);
    let mut proven = 0;
    for line in &lines {
        let (order, fewest, _) = jobs::job(line);
        let runs: Vec<(f64, Plan)> = (0..5).map(|_| timed(&order)).collect();
        let (_, cut) = &runs[0];
        proven += usize::from((cut.cost, cut.least) == (fewest, fewest));
        let fastest = runs
            .iter()
            .map(|(time, _)| *time)
            .fold(f64::INFINITY, f64::min);
        most = most.max(fastest);
        times.push(median(runs.iter().map(|(time, _)| *time).collect()));
    }
    println!(
        "pipe/{} jobs of at most 60 pieces, proven as few as the referee's: {proven}, referee {}, ratio {:.2}, goal all: {}",
        lines.len(),
        lines.len(),
        proven as f64 / lines.len() as f64,
        outcome(proven == lines.len()),
    );
    let Some(theirs) = by_ortools() else {
        println!("pipe/the most of these: {most:.3} ms, no OR-Tools here ({HOW}): short");
        println!(
            "pipe/median of these: {:.3} ms, no OR-Tools here ({HOW}): short",
            median(times)
        );
        return;
    };
    let their_most = theirs.iter().map(|(time, _)| *time).fold(0.0, f64::max);
    let given_up = theirs.iter().filter(|(_, proven)| !proven).count();
    println!(
        "pipe/the most of these: {most:.3} ms, CP-SAT {their_most:.3} ms (given up after 2 s: {given_up}), ratio {:.2}, goal 50 ms: {}",
        their_most / most,
        outcome(most <= 50.0),
    );
    let same = theirs.len() == times.len();
    let ratios = theirs
        .iter()
        .zip(&times)
        .map(|((theirs, _), ours)| theirs / ours);
    let (each, ours) = (median(ratios.collect()), median(times));
    let theirs = median(theirs.into_iter().map(|(time, _)| time).collect());
    println!(
        "pipe/median of these: {ours:.3} ms, CP-SAT {theirs:.3} ms, ratio {:.2} (job by job {each:.2}), goal 20 times as fast: {}",
        theirs / ours,
        outcome(same && (theirs / ours).min(each) >= 20.0),
    );
}

/// Milliseconds of CP-SAT for each job, and whether it proved it.
fn by_ortools() -> Option<Vec<(f64, bool)>> {
    let script = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/referee/ortools_sticks.py"
    );
    let mut python = Command::new("python3")
        .args([script, "--time"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    let mut into = python.stdin.take()?;
    // Where OR-Tools is missing it has ended before it reads. It reads as it goes, so that it is fed beside.
    let feeding = std::thread::spawn(move || drop(into.write_all(JOBS.as_bytes())));
    let said = String::from_utf8(python.wait_with_output().ok()?.stdout).ok()?;
    feeding.join().ok()?;
    let times: Vec<(f64, bool)> = said
        .lines()
        .filter_map(|line| {
            let mut words = line.split(' ');
            let time = words.next()?.parse().ok()?;
            Some((time, words.nth(1)? == "1"))
        })
        .collect();
    (!times.is_empty()).then_some(times)
}

/// A simple row of figures without an order that shows, the same in every run.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: i64, to: i64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        from + ((self.0 >> 33) % (to - from + 1) as u64) as i64
    }
}

/// 200 pieces: pipe of any sixteenth, metric pieces, and sticks cut to nothing.
fn two_hundred() {
    let sixteenth = |n: i64| Length::in_64(0, 4 * n);
    let order = |pieces: Vec<Length>, stick: Length, kerf: Length| Order {
        pieces,
        kerf,
        sticks: vec![Stick {
            length: stick,
            count: None,
            cost: 1,
        }],
        offcuts: Vec::new(),
    };
    let mut dice = Dice(20_261_126);
    let mut orders = Vec::new();
    for n in 0..10 {
        let most = [500, 800, 1_200][n % 3];
        let pipe = (0..200).map(|_| sixteenth(dice.roll(48, most))).collect();
        let stick = Length::feet([10, 20][n % 2]);
        orders.push(order(pipe, stick, sixteenth((n % 3) as i64)));
        let metric = (0..200)
            .map(|_| Length::mm(dice.roll(150, 2_600)))
            .collect();
        orders.push(order(metric, Length::mm(6_000), Length::mm(3)));
        let thirds = (0..66).flat_map(|_| {
            let one = dice.roll(384, 768);
            let two = dice.roll((1_536 - one) / 4, (1_536 - one) * 3 / 4);
            [one, two, 1_536 - one - two].map(sixteenth)
        });
        orders.push(order(thirds.collect(), Length::feet(8), Length::ZERO));
    }
    let (mut most, mut proven, mut gap, mut widest) = (0.0f64, 0, 0, 0.0f64);
    for order in &orders {
        let runs: Vec<(f64, Plan)> = (0..3).map(|_| timed(order)).collect();
        let fastest = runs
            .iter()
            .map(|(time, _)| *time)
            .fold(f64::INFINITY, f64::min);
        let (_, cut) = &runs[0];
        most = most.max(fastest);
        proven += usize::from(cut.is_proven());
        gap = gap.max(cut.cost - cut.least);
        widest = widest.max((cut.cost - cut.least) as f64 / cut.least as f64 * 100.0);
    }
    println!(
        "pipe/the most of {} jobs of about 200 pieces: {most:.3} ms, referee 300 ms, ratio {:.2}, goal 300 ms, gap stated: {}",
        orders.len(),
        300.0 / most,
        outcome(most <= 300.0),
    );
    println!(
        "pipe/of these proven: {proven} of {}, widest gap {gap} stick or {widest:.1} %, referee the bound, ratio 1.00, goal stated: {}",
        orders.len(),
        outcome(gap >= 0),
    );
}
