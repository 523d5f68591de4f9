//! A program that saves without a pause is killed at any moment: what it confirmed is there.

use std::io::{BufRead, BufReader, Read, Write};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use chrono::DateTime;
use storyrod::store::document::{self, Part};
use storyrod::store::folder::{Folder, load, load_version, versions};
use storyrod::store::{Kind, RealDisk};

/// The folder that the child saves in; whoever runs the tests does not set it.
const IN: &str = "STORYROD_TEST_SAVES_IN";
/// How often the program is killed, for a longer run.
const TIMES: &str = "STORYROD_TEST_KILLS";

fn document(n: u64) -> Vec<u8> {
    let body = format!("document {n} ").repeat(400).into_bytes();
    let part = |id| Part {
        kind: 1,
        id,
        body: body.clone(),
    };
    document::write(Kind::Job, &[part(n), part(n + 1)]).unwrap()
}

/// The number of the document there; fails where it does not open or is not just as it was written.
fn number(bytes: &[u8]) -> u64 {
    let n = document::read(Kind::Job, bytes).unwrap()[0].id;
    assert_eq!(bytes, document(n));
    n
}

/// Not a test by itself: the program that is killed.
#[test]
fn saves_until_killed() {
    let Some(path) = std::env::var_os(IN) else {
        return;
    };
    let path = Path::new(&path);
    let mut folder = Folder::open(&RealDisk, path).unwrap();
    let first = number(&load(&RealDisk, path).unwrap()) + 1;
    let mut out = std::io::stdout().lock();
    writeln!(out, "\nbegun").unwrap();
    let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    for n in first.. {
        let now = begun + Duration::from_secs(n * 600);
        folder.save(&RealDisk, &document(n), now).unwrap();
        writeln!(out, "kept {n}").unwrap();
    }
}

/// Starts the program and waits until it is about to save.
fn start(path: &Path) -> (Child, BufReader<impl Read>) {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "killed::saves_until_killed", "--nocapture"])
        .env(IN, path)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut says = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    while line.trim() != "begun" {
        line.clear();
        assert!(says.read_line(&mut line).unwrap() > 0, "it did not begin");
    }
    (child, says)
}

#[test]
fn what_was_confirmed_is_there_after_a_kill() {
    let times = std::env::var(TIMES).map_or(300, |text| text.parse().unwrap());
    let above = tempfile::tempdir().unwrap();
    let path = above.path().join("cabin");
    let mut folder = Folder::create(&RealDisk, &path).unwrap();
    let now = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    folder.save(&RealDisk, &document(1), now).unwrap();
    // The newest that is certain to be there, and how often a document was left beside it.
    let (mut certain, mut left_over) = (1, 0);
    for kill in 0..times {
        let (mut child, says) = start(&path);
        // Spread over some saves, in steps that are no multiple of one.
        let wait = Duration::from_micros(kill * 1_237 % 29_989);
        let until = Instant::now() + wait;
        std::thread::sleep(until.saturating_duration_since(Instant::now()));
        child.kill().unwrap();
        child.wait().unwrap();
        for line in says.lines() {
            if let Some(n) = line.unwrap().strip_prefix("kept ") {
                certain = n.parse().unwrap();
            }
        }
        let there = number(&load(&RealDisk, &path).unwrap());
        assert!(
            there == certain || there == certain + 1,
            "kill {kill}: {certain} was confirmed, {there} is there"
        );
        certain = there;
        for version in versions(&RealDisk, &path).unwrap() {
            assert!(number(&load_version(&RealDisk, &version).unwrap()) <= there);
        }
        left_over += u64::from(std::fs::read_dir(&path).unwrap().any(|entry| {
            let name = entry.unwrap().file_name();
            name.to_str().unwrap().starts_with(".save-")
        }));
    }
    println!("{times} kills, {certain} saves, {left_over} stopped between writing and renaming");
    assert!(certain > times / 2, "it was killed before it saved");
    assert!(left_over > 0, "no kill came between writing and renaming");
}
