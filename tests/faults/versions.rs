//! Which older documents stay: the newest twenty, and the newest of each of the last ten days.

use std::path::Path;

use chrono::{DateTime, FixedOffset, TimeDelta};
use storyrod::store::folder::{Folder, load, load_version, size_of, versions};
use storyrod::store::{Disk, RealDisk};

use super::sim_disk::SimDisk;

const FOLDER: &str = "jobs/cabin";

fn begun() -> DateTime<FixedOffset> {
    // Late in the evening: the day there is not the day of the stamp.
    DateTime::parse_from_rfc3339("2026-03-14T20:00:00-05:00").unwrap()
}

/// What each version holds, newest first.
fn numbers(disk: &SimDisk) -> Vec<u64> {
    versions(disk, Path::new(FOLDER))
        .unwrap()
        .iter()
        .map(|version| {
            let bytes = load_version(disk, version).unwrap();
            u64::from_le_bytes(bytes.try_into().unwrap())
        })
        .collect()
}

#[test]
fn the_newest_twenty_and_one_a_day_stay() {
    let disk = SimDisk::new();
    let mut folder = Folder::create(&disk, Path::new(FOLDER)).unwrap();
    let mut now = begun();
    // Thirty days of three saves in an evening, then forty in one.
    for n in 0..90u64 {
        now = begun() + TimeDelta::days(n as i64 / 3) + TimeDelta::hours(n as i64 % 3);
        folder.save(&disk, &n.to_le_bytes(), now).unwrap();
    }
    // The newest twenty reach over seven days, the day of the last save among them; three more days follow.
    let expected: Vec<u64> = (69..89).rev().chain([68, 65, 62]).collect();
    assert_eq!(numbers(&disk), expected);
    now += TimeDelta::hours(1);
    for n in 90..130u64 {
        now += TimeDelta::seconds(1);
        folder.save(&disk, &n.to_le_bytes(), now).unwrap();
    }
    // 89 and what follows is of the last evening.
    let expected: Vec<u64> = (109..129).rev().chain((62..=86).rev().step_by(3)).collect();
    assert_eq!(numbers(&disk), expected);
    // Opened again it goes on alike.
    let mut folder = Folder::open(&disk, Path::new(FOLDER)).unwrap();
    let saved = folder.save(&disk, &130u64.to_le_bytes(), now).unwrap();
    assert_eq!(saved.thinned, 1);
    assert_eq!(numbers(&disk)[..2], [129, 128]);
    assert_eq!(numbers(&disk).len(), expected.len());
    let all = versions(&disk, Path::new(FOLDER)).unwrap();
    assert_eq!(size_of(&all), 8 * all.len() as u64);
}

#[test]
fn a_clock_that_goes_back_loses_nothing() {
    let disk = SimDisk::new();
    let mut folder = Folder::create(&disk, Path::new(FOLDER)).unwrap();
    for n in 0..15u64 {
        let now = begun() - TimeDelta::days(400 * n as i64);
        folder.save(&disk, &n.to_le_bytes(), now).unwrap();
    }
    assert_eq!(numbers(&disk), (0..14).rev().collect::<Vec<_>>());
}

#[test]
fn a_file_of_another_name_is_left_alone() {
    let disk = SimDisk::new();
    let mut folder = Folder::create(&disk, Path::new(FOLDER)).unwrap();
    let notes = Path::new(FOLDER).join("versions/notes.txt");
    disk.write_new(&notes, b"mine").unwrap();
    for n in 0..60u64 {
        folder.save(&disk, &n.to_le_bytes(), begun()).unwrap();
    }
    assert_eq!(disk.read(&notes, 4).unwrap(), b"mine");
    assert_eq!(numbers(&disk).len(), 20);
}

#[test]
fn a_folder_that_is_there_is_not_made_anew() {
    let disk = SimDisk::new();
    Folder::create(&disk, Path::new(FOLDER)).unwrap();
    assert!(Folder::create(&disk, Path::new(FOLDER)).is_err());
    assert!(Folder::open(&disk, Path::new("jobs/gone")).is_err());
}

#[test]
fn the_real_disk_keeps_versions_too() {
    let above = tempfile::tempdir().unwrap();
    let path = above.path().join("a/cabin");
    let mut folder = Folder::create(&RealDisk, &path).unwrap();
    for n in 0..30u64 {
        folder.save(&RealDisk, &n.to_le_bytes(), begun()).unwrap();
    }
    let older = versions(&RealDisk, &path).unwrap();
    assert_eq!(older.len(), 20);
    let bytes = load_version(&RealDisk, &older[0]).unwrap();
    assert_eq!(bytes, 28u64.to_le_bytes());
    assert_eq!(load(&RealDisk, &path).unwrap(), 29u64.to_le_bytes());
    assert!(RealDisk.read(&path.join("job"), 7).is_err(), "too long");
    // A folder without its versions is made whole by the next save.
    std::fs::remove_dir_all(path.join("versions")).unwrap();
    let mut folder = Folder::open(&RealDisk, &path).unwrap();
    folder.save(&RealDisk, b"next", begun()).unwrap();
    assert_eq!(versions(&RealDisk, &path).unwrap().len(), 1);
    let left: Vec<_> = std::fs::read_dir(&path).unwrap().collect();
    assert_eq!(left.len(), 2, "nothing is left over");
}
