//! The power goes at every step of a save, and at every byte; every call of it fails once.

use std::io::ErrorKind;
use std::path::Path;

use chrono::{DateTime, FixedOffset};
use storyrod::store::Kind;
use storyrod::store::document::{self, Part};
use storyrod::store::folder::{self, Folder, load, load_version, versions};

use super::sim_disk::{SimDisk, UNSYNCED};

const FOLDER: &str = "jobs/cabin";

fn at(minute: u32) -> DateTime<FixedOffset> {
    let text = format!("2026-03-14T09:{minute:02}:00-05:00");
    DateTime::parse_from_rfc3339(&text).unwrap()
}

/// A small document that says which it is.
fn document(n: u64) -> Vec<u8> {
    let part = Part {
        kind: 1,
        id: n,
        body: format!("document {n}").into_bytes(),
    };
    document::write(Kind::Job, &[part]).unwrap()
}

/// A disk with a job folder, saved so many times.
fn disk_with(saves: u64) -> (SimDisk, Folder) {
    let disk = SimDisk::new();
    let mut folder = Folder::create(&disk, Path::new(FOLDER)).unwrap();
    for n in 1..=saves {
        folder.save(&disk, &document(n), at(n as u32)).unwrap();
    }
    (disk, folder)
}

/// The number of the document that opens; none where there is none. Anything else fails.
#[track_caller]
fn opens(disk: &SimDisk, what: &str) -> Option<u64> {
    match load(disk, Path::new(FOLDER)) {
        Ok(bytes) => {
            let parts = document::read(Kind::Job, &bytes);
            let parts = parts.unwrap_or_else(|why| panic!("{what}: {why}, {} bytes", bytes.len()));
            let n = parts[0].id;
            assert_eq!(bytes, document(n), "{what}");
            Some(n)
        }
        Err(why) if why.kind() == ErrorKind::NotFound => None,
        Err(why) => panic!("{what}: {why}"),
    }
}

/// After the cut the job is one of `allowed`, and can be saved again.
#[track_caller]
fn holds_after_any_cut(disk: &SimDisk, allowed: &[Option<u64>], what: &str) -> usize {
    let mut tried = 0;
    for kept in 0..1 << disk.uncertain() {
        for unsynced in UNSYNCED {
            let what = format!("{what}, names {kept:b}, bytes {unsynced:?}");
            let cut = disk.after_a_cut(kept, unsynced);
            let found = opens(&cut, &what);
            assert!(allowed.contains(&found), "{what}: {found:?} opens");
            let mut folder = Folder::open(&cut, Path::new(FOLDER)).unwrap();
            folder.save(&cut, &document(99), at(59)).unwrap();
            assert_eq!(opens(&cut, &what), Some(99));
            assert!(
                !cut.names()
                    .iter()
                    .any(|path| path.to_str().unwrap().contains(".save-")),
                "{what}: something is left over"
            );
            let older = versions(&cut, Path::new(FOLDER)).unwrap();
            if let Some(n) = found {
                let newest = load_version(&cut, &older[0]).unwrap();
                assert_eq!(newest, document(n), "{what}");
            }
            tried += 1;
        }
    }
    tried
}

/// Saves `new` over `old` saves with the power going after every number of steps.
fn stop_everywhere(old: u64, settled: bool) -> usize {
    let (mut steps, mut tried) = (0, 0);
    loop {
        let (disk, mut folder) = disk_with(old);
        let disk = if settled { disk.settled() } else { disk };
        disk.stop_after(steps);
        let new = old + 1;
        let saved = folder.save(&disk, &document(new), at(new as u32));
        let before = (old > 0).then_some(old);
        let what = format!("{old} saves, stopped after {steps} steps");
        if saved.is_ok() {
            tried += holds_after_any_cut(&disk, &[Some(new)], &what);
        } else {
            assert!(disk.stopped(), "{what}: {saved:?}");
            tried += holds_after_any_cut(&disk, &[before, Some(new)], &what);
        }
        if !disk.stopped() {
            saved.unwrap();
            assert!(steps > document(new).len(), "every byte was a step");
            return tried;
        }
        steps += 1;
    }
}

#[test]
fn a_stop_at_any_step_leaves_the_old_or_the_new_document() {
    let mut tried = 0;
    for (saves, settled) in [(0, true), (1, true), (1, false), (2, false), (21, true)] {
        tried += stop_everywhere(saves, settled);
    }
    println!("{tried} disks after a power cut");
    assert!(tried > 1_000, "{tried}");
}

#[test]
fn what_a_save_confirmed_outlasts_any_cut() {
    for saves in 1..=4 {
        let (disk, _) = disk_with(saves);
        holds_after_any_cut(&disk, &[Some(saves)], &format!("{saves} saves"));
    }
}

/// Fails each call in turn; gives how many were failed.
fn fail_everywhere(how: ErrorKind, for_good: bool, saves: u64) -> usize {
    for call in 0.. {
        let (disk, mut folder) = disk_with(saves);
        let disk = disk.settled();
        let begun = disk.calls();
        disk.fail(call, how, for_good);
        let new = saves + 1;
        let saved = folder.save(&disk, &document(new), at(new as u32));
        let calls = disk.calls() - begun;
        if calls <= call {
            saved.unwrap();
            return call;
        }
        disk.heal();
        let what = format!("call {call} fails with {how:?}");
        let found = opens(&disk, &what);
        if saved.is_ok() {
            assert_eq!(found, Some(new), "{what}: only thinning may fail unsaid");
            holds_after_any_cut(&disk, &[Some(new)], &what);
        } else {
            assert!([(saves > 0).then_some(saves), Some(new)].contains(&found));
            holds_after_any_cut(&disk, &[(saves > 0).then_some(saves), Some(new)], &what);
        }
        // The same folder goes on where it was.
        for later in new..new + 3 {
            folder
                .save(&disk, &document(later), at(later as u32))
                .unwrap();
            assert_eq!(opens(&disk, &what), Some(later));
        }
        holds_after_any_cut(&disk.settled(), &[Some(new + 2)], &what);
        no_version_twice(&disk, &what);
    }
    unreachable!()
}

#[track_caller]
fn no_version_twice(disk: &SimDisk, what: &str) {
    let older = versions(disk, Path::new(FOLDER)).unwrap();
    let mut numbers: Vec<Vec<u8>> = older
        .iter()
        .map(|version| load_version(disk, version).unwrap())
        .collect();
    let all = numbers.len();
    numbers.sort();
    numbers.dedup();
    // A failed save of a document and a later one of the same: at most that one stands twice.
    assert!(all - numbers.len() <= 1, "{what}");
}

#[test]
fn a_disk_that_fills_up_or_fails_at_any_call_loses_nothing() {
    let mut failed = 0;
    for how in [ErrorKind::StorageFull, ErrorKind::Other] {
        for for_good in [false, true] {
            for saves in [0, 1, 22] {
                failed += fail_everywhere(how, for_good, saves);
            }
        }
    }
    println!("{failed} calls failed");
    assert!(failed >= 4 * (4 + 5 + 6), "{failed}");
}

#[test]
fn until_the_rename_a_failed_save_leaves_the_old_document() {
    // Written, synced, linked, renamed.
    for call in 0..4 {
        let (disk, mut folder) = disk_with(1);
        let before = disk.names();
        disk.fail(call, ErrorKind::StorageFull, false);
        assert!(folder.save(&disk, &document(2), at(2)).is_err());
        assert_eq!(opens(&disk, "after a failed save"), Some(1));
        assert_eq!(disk.names(), before, "nothing is left over");
    }
}

#[test]
fn opening_to_read_takes_nothing_away() {
    let (disk, mut folder) = disk_with(1);
    disk.stop_after(20);
    assert!(folder.save(&disk, &document(2), at(2)).is_err());
    let disk = disk.same();
    let before = disk.names();
    assert_eq!(opens(&disk, "to read"), Some(1));
    versions(&disk, Path::new(FOLDER)).unwrap();
    assert_eq!(disk.names(), before);
    assert_eq!(folder::sweep(&disk, Path::new(FOLDER)).unwrap(), 1);
    assert_eq!(folder::sweep(&disk, Path::new(FOLDER)).unwrap(), 0);
}

#[test]
fn tries_that_fail_push_no_older_document_out() {
    // Renaming fails thirty times over, then syncing the folder.
    let (disk, mut folder) = disk_with(5);
    for _ in 0..30 {
        disk.fail(3, ErrorKind::Other, false);
        assert!(folder.save(&disk, &document(6), at(6)).is_err());
    }
    assert_eq!(opens(&disk, "not renamed"), Some(5));
    for tries in 0..30 {
        // Only the first of them keeps the fifth as a version: a call more.
        disk.fail(if tries == 0 { 4 } else { 3 }, ErrorKind::Other, false);
        assert!(folder.save(&disk, &document(6), at(6)).is_err());
        assert_eq!(opens(&disk, "renamed"), Some(6));
    }
    disk.heal();
    folder.save(&disk, &document(6), at(6)).unwrap();
    let older = versions(&disk, Path::new(FOLDER)).unwrap();
    let held: Vec<_> = older
        .iter()
        .map(|version| load_version(&disk, version).unwrap())
        .collect();
    assert_eq!(held, [5, 4, 3, 2, 1].map(document));
}
