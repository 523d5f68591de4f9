//! Saving behind the screen's back: the newest is kept, a failure is said and tried again, quitting waits.

use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use storyrod::store::{SaveError, Saver, State};

/// Long enough for any machine; nothing waits for the end of it where all is well.
const PATIENCE: Duration = Duration::from_secs(120);

/// A saver of which each try waits for an answer; gives what is tried, and takes the answers.
struct Bench {
    saver: Saver<u32>,
    tried: Receiver<u32>,
    answers: Sender<Result<(), SaveError>>,
    changes: Receiver<()>,
}

fn bench() -> Bench {
    let (say, tried) = channel();
    let (answers, wait) = channel();
    let (changed, changes) = channel();
    let saver = Saver::start(
        move |n: &u32| {
            say.send(*n).unwrap();
            wait.recv().unwrap_or(Ok(()))
        },
        move || {
            let _ = changed.send(());
        },
    )
    .unwrap();
    Bench {
        saver,
        tried,
        answers,
        changes,
    }
}

fn full() -> SaveError {
    SaveError::Disk("the disk is full".to_owned())
}

impl Bench {
    /// Waits for a change after which the state is this one.
    fn becomes(&self, state: &State) {
        while self.saver.state() != *state {
            self.changes.recv_timeout(PATIENCE).unwrap();
        }
    }
    fn tries(&self) -> u32 {
        self.tried.recv_timeout(PATIENCE).unwrap()
    }
}

#[test]
fn the_newest_wins_and_submitting_never_waits() {
    let bench = bench();
    assert_eq!(bench.saver.state(), State::Kept);
    assert_eq!(bench.saver.submit(0), 1);
    assert_eq!(bench.tries(), 0);
    // The first is held up on the disk; a thousand more do not wait for it.
    for n in 1..=1_000 {
        assert_eq!(bench.saver.submit(n), u64::from(n) + 1);
    }
    assert_eq!(bench.saver.state(), State::Saving);
    assert_eq!(bench.saver.kept_up_to(), 0);
    bench.answers.send(Ok(())).unwrap();
    assert_eq!(bench.tries(), 1_000, "those between are passed over");
    assert_eq!(bench.saver.kept_up_to(), 1);
    bench.answers.send(Ok(())).unwrap();
    bench.becomes(&State::Kept);
    assert_eq!(bench.saver.kept_up_to(), 1_001);
    bench.saver.finish(PATIENCE).unwrap();
    assert!(bench.tried.recv().is_err(), "its thread has ended");
}

#[test]
fn a_failure_is_said_and_the_same_is_tried_again() {
    let bench = bench();
    bench.saver.submit(7);
    assert_eq!(bench.tries(), 7);
    bench.answers.send(Err(full())).unwrap();
    bench.becomes(&State::Failing(full().to_string()));
    assert_eq!(bench.saver.kept_up_to(), 0);
    assert_eq!(bench.tries(), 7, "nothing newer has come");
    bench.answers.send(Ok(())).unwrap();
    bench.becomes(&State::Kept);
}

#[test]
fn a_newer_one_takes_the_place_of_one_that_fails() {
    let bench = bench();
    bench.saver.submit(1);
    assert_eq!(bench.tries(), 1);
    bench.saver.submit(2);
    bench.answers.send(Err(full())).unwrap();
    assert_eq!(bench.tries(), 2);
    assert!(matches!(bench.saver.state(), State::Failing(_)));
    bench.answers.send(Ok(())).unwrap();
    bench.becomes(&State::Kept);
    assert_eq!(bench.saver.kept_up_to(), 2);
}

#[test]
fn quitting_waits_for_the_newest() {
    let kept = Arc::new(Mutex::new(Vec::new()));
    let keeps = Arc::clone(&kept);
    let mut fails = 1;
    let saver = Saver::start(
        move |n: &u32| {
            if *n == 50 && fails > 0 {
                fails -= 1;
                return Err(full());
            }
            keeps.lock().unwrap().push(*n);
            Ok(())
        },
        || {},
    )
    .unwrap();
    for n in 1..=50 {
        saver.submit(n);
    }
    saver.finish(PATIENCE).unwrap();
    assert_eq!(kept.lock().unwrap().last(), Some(&50));
}

#[test]
fn quitting_says_what_is_not_kept() {
    let bench = bench();
    bench.saver.submit(1);
    bench.tries();
    bench.answers.send(Err(full())).unwrap();
    bench.becomes(&State::Failing(full().to_string()));
    let not_kept = bench.saver.finish(Duration::ZERO).unwrap_err();
    assert_eq!(not_kept.why, Some(full().to_string()));
    // Its thread ends, whether it was at a try or at rest.
    drop(bench.answers);
    while bench.tried.recv().is_ok() {}
}

#[test]
fn a_save_that_panics_is_a_failure_like_any_other() {
    let mut first = true;
    let saver = Saver::start(
        move |_: &u32| {
            assert!(!std::mem::take(&mut first), "meant to");
            Ok(())
        },
        || {},
    )
    .unwrap();
    saver.submit(1);
    saver.finish(PATIENCE).unwrap();
}

#[test]
fn a_saver_dropped_still_tries_the_newest() {
    let bench = bench();
    bench.saver.submit(1);
    bench.tries();
    bench.saver.submit(2);
    drop(bench.saver);
    bench.answers.send(Err(full())).unwrap();
    assert_eq!(bench.tried.recv_timeout(PATIENCE), Ok(2));
    bench.answers.send(Err(full())).unwrap();
    assert!(bench.tried.recv_timeout(PATIENCE).is_err(), "and ends");
}
