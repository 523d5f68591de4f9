//! Two programs want to write one job: the second is told, and has it when the first ends in any way.

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};

use storyrod::store::{Held, Lock};

/// The folder that the child holds; whoever runs the tests does not set it.
const HOLD: &str = "STORYROD_TEST_HOLDS";

/// Not a test by itself: the program that came first.
#[test]
fn holds_until_killed() {
    let Some(path) = std::env::var_os(HOLD) else {
        return;
    };
    let _lock = Lock::take(Path::new(&path)).unwrap();
    writeln!(std::io::stdout().lock(), "\nheld").unwrap();
    loop {
        std::thread::park();
    }
}

#[test]
fn a_job_that_another_program_writes_is_not_taken() {
    let folder = tempfile::tempdir().unwrap();
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "two_programs::holds_until_killed", "--nocapture"])
        .env(HOLD, folder.path())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    assert!(lines.any(|line| line.unwrap() == "held"));
    let second = Lock::take(folder.path());
    child.kill().unwrap();
    child.wait().unwrap();
    assert_eq!(second.unwrap_err(), Held::ByAnother);
    assert!(
        Lock::take(folder.path()).is_ok(),
        "a killed program holds nothing"
    );
}

#[test]
fn a_lock_let_go_is_free_and_what_is_not_there_cannot_be_had() {
    let folder = tempfile::tempdir().unwrap();
    let first = Lock::take(folder.path()).unwrap();
    assert_eq!(Lock::take(folder.path()).unwrap_err(), Held::ByAnother);
    drop(first);
    assert!(Lock::take(folder.path()).is_ok());
    assert!(matches!(
        Lock::take(&folder.path().join("gone")),
        Err(Held::Disk(_))
    ));
}
