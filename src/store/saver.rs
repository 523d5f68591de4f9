//! Saves behind the screen's back: an edit never waits for the disk, and the newest one wins.

use std::fmt;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use super::keep::SaveError;

/// How long a failed save rests before it is tried again, at first and at most.
const FIRST_PAUSE: Duration = Duration::from_secs(1);
const LONGEST_PAUSE: Duration = Duration::from_secs(10);

/// Whether what is on the screen is on the disk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum State {
    /// It is.
    Kept,
    /// It soon will be.
    Saving,
    /// It is not: the last try failed, for this reason. It is tried again until it succeeds.
    Failing(String),
}

/// The newest edits were not on the disk when patience ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotKept {
    /// Why the last try failed, if one did.
    pub why: Option<String>,
}

impl fmt::Display for NotKept {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.why {
            Some(why) => write!(f, "the last edits are not kept: {why}"),
            None => write!(f, "the last edits are not kept yet: the disk is slow"),
        }
    }
}

struct Desk<T> {
    /// The newest that no try has taken yet.
    waiting: Option<(u64, T)>,
    submitted: u64,
    kept: u64,
    failing: Option<String>,
    /// No more is submitted.
    closing: bool,
    /// Nobody waits any longer: a failed try is the last.
    given_up: bool,
}

struct Shared<T> {
    desk: Mutex<Desk<T>>,
    changed: Condvar,
}

impl<T> Shared<T> {
    fn desk(&self) -> MutexGuard<'_, Desk<T>> {
        // Nothing on the desk is ever left half changed.
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A thread that saves the newest of what it is given.
pub struct Saver<T> {
    shared: Arc<Shared<T>>,
    worker: Option<JoinHandle<()>>,
}

impl<T: Send + 'static> Saver<T> {
    /// Starts the thread. `save` is tried until it succeeds or there is a newer one; `on_change` is called on the
    /// thread whenever [`Saver::state`] may have changed.
    ///
    /// # Errors
    /// Where the system gives no thread.
    pub fn start(
        save: impl FnMut(&T) -> Result<(), SaveError> + Send + 'static,
        on_change: impl Fn() + Send + 'static,
    ) -> Result<Saver<T>, SaveError> {
        let shared = Arc::new(Shared {
            desk: Mutex::new(Desk {
                waiting: None,
                submitted: 0,
                kept: 0,
                failing: None,
                closing: false,
                given_up: false,
            }),
            changed: Condvar::new(),
        });
        let worker = Worker {
            shared: Arc::clone(&shared),
            save,
            on_change,
        };
        let thread = std::thread::Builder::new()
            .name("saver".to_owned())
            .spawn(move || worker.run())?;
        Ok(Saver {
            shared,
            worker: Some(thread),
        })
    }

    /// Hands over the newest; never waits for the disk. Gives its number.
    pub fn submit(&self, newest: T) -> u64 {
        let mut desk = self.shared.desk();
        desk.submitted += 1;
        let serial = desk.submitted;
        let older = desk.waiting.replace((serial, newest));
        drop(desk);
        self.shared.changed.notify_all();
        drop(older);
        serial
    }

    /// Whether the newest is on the disk.
    #[must_use]
    pub fn state(&self) -> State {
        let desk = self.shared.desk();
        match &desk.failing {
            Some(why) => State::Failing(why.clone()),
            None if desk.kept == desk.submitted => State::Kept,
            None => State::Saving,
        }
    }

    /// The number of the newest that is on the disk; 0 before the first.
    #[must_use]
    pub fn kept_up_to(&self) -> u64 {
        self.shared.desk().kept
    }

    /// Waits until the newest is on the disk and the thread has ended; for quitting.
    ///
    /// # Errors
    /// [`NotKept`], where that takes longer than `patience`; a try that still runs then is the last one.
    pub fn finish(mut self, patience: Duration) -> Result<(), NotKept> {
        let until = Instant::now().checked_add(patience);
        let mut desk = self.shared.desk();
        desk.closing = true;
        self.shared.changed.notify_all();
        while desk.kept < desk.submitted {
            let left = match until {
                Some(until) => until.saturating_duration_since(Instant::now()),
                None => patience,
            };
            if left.is_zero() {
                desk.given_up = true;
                let why = desk.failing.clone();
                drop(desk);
                self.shared.changed.notify_all();
                return Err(NotKept { why });
            }
            let woken = self.shared.changed.wait_timeout(desk, left);
            desk = woken.unwrap_or_else(PoisonError::into_inner).0;
        }
        drop(desk);
        if let Some(worker) = self.worker.take() {
            // It has nothing left to do but to let go of what it holds.
            let _ = worker.join();
        }
        Ok(())
    }
}

impl<T> Drop for Saver<T> {
    /// Without [`Saver::finish`] the newest is tried once more, and nobody waits for it.
    fn drop(&mut self) {
        let mut desk = self.shared.desk();
        desk.closing = true;
        desk.given_up = true;
        drop(desk);
        self.shared.changed.notify_all();
    }
}

struct Worker<T, S, C> {
    shared: Arc<Shared<T>>,
    save: S,
    on_change: C,
}

impl<T, S: FnMut(&T) -> Result<(), SaveError>, C: Fn()> Worker<T, S, C> {
    fn run(mut self) {
        while let Some((serial, newest)) = self.next() {
            self.keep(serial, newest);
        }
    }

    /// The next to save, once there is one; none when nothing more comes.
    fn next(&self) -> Option<(u64, T)> {
        let mut desk = self.shared.desk();
        loop {
            if let Some(next) = desk.waiting.take() {
                return Some(next);
            }
            if desk.closing {
                return None;
            }
            let woken = self.shared.changed.wait(desk);
            desk = woken.unwrap_or_else(PoisonError::into_inner);
        }
    }

    /// Tries until it is kept, a newer one waits, or nobody waits for it.
    fn keep(&mut self, serial: u64, newest: T) {
        let mut pause = FIRST_PAUSE;
        loop {
            (self.on_change)();
            let tried = catch_unwind(AssertUnwindSafe(|| (self.save)(&newest)));
            let failed = match tried {
                Ok(Ok(())) => None,
                Ok(Err(why)) => Some(why.to_string()),
                Err(_) => Some("the save broke off".to_owned()),
            };
            let mut desk = self.shared.desk();
            desk.failing = failed;
            let kept = desk.failing.is_none();
            if kept {
                desk.kept = serial;
            }
            drop(desk);
            self.shared.changed.notify_all();
            (self.on_change)();
            if kept || !self.rest(pause) {
                return;
            }
            pause = (pause * 2).min(LONGEST_PAUSE);
        }
    }

    /// Rests after a failed try; gives whether the same is to be tried again.
    fn rest(&self, pause: Duration) -> bool {
        let until = Instant::now() + pause;
        let mut desk = self.shared.desk();
        let closing_before = desk.closing;
        loop {
            if desk.waiting.is_some() || desk.given_up {
                return false;
            }
            let left = until.saturating_duration_since(Instant::now());
            // Whoever quits is not kept waiting for the rest of a pause.
            if left.is_zero() || desk.closing != closing_before {
                return true;
            }
            let woken = self.shared.changed.wait_timeout(desk, left);
            desk = woken.unwrap_or_else(PoisonError::into_inner).0;
        }
    }
}
