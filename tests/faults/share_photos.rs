//! Pictures handed over: without the place that their camera wrote into them, unless it is kept on purpose.

use std::fs;
use std::path::Path;
use std::sync::Arc;

use storyrod::app::take_picture;
use storyrod::photo::{Photo, Watch, facts};
use storyrod::store::pictures::{name_for, picture_path};
use storyrod::store::share::{import_new, merge_into, read_share, write_share};
use storyrod::store::{RealDisk, Snapshot, open_job, open_to_write};
use storyrod::takeoff::Job;

use super::job_file::{full_job, keep};

fn sample(name: &str) -> std::path::PathBuf {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/referee/pictures");
    Path::new(folder).join(name)
}

/// A job with two pictures that say where they were taken.
fn job(within: &Path) -> (std::path::PathBuf, Job) {
    let path = within.join("a.site");
    let mut job = full_job();
    keep(&path, &Snapshot::of(job.clone()));
    for name in ["turned-6.jpg", "lying.png"] {
        let photo = take_picture(&RealDisk, &path, &sample(name), &Watch::default()).unwrap();
        assert!(photo.located && photo.stripped != photo.picture);
        job.photos.push(Arc::new(photo));
    }
    again(&path, job.clone());
    (path, job)
}

/// Saves a job once more.
fn again(path: &Path, job: Job) {
    let (_, writer) = open_to_write(path).unwrap();
    let now = job.begun;
    writer.unwrap().keep(&Snapshot::of(job), now).unwrap();
}

fn located(bytes: &[u8]) -> bool {
    facts(&mut std::io::BufReader::new(std::io::Cursor::new(bytes))).located
}

#[test]
fn a_shared_picture_says_nothing_of_its_place_unless_on_purpose() {
    let folder = tempfile::tempdir().unwrap();
    let (path, job) = job(folder.path());
    let share = read_share(&write_share(&path).unwrap().bytes).unwrap();
    assert_eq!(share.pictures.len(), 2);
    for (name, bytes) in &share.pictures {
        assert!(!located(bytes), "{name}");
        let of = job.photos.iter().find(|photo| photo.stripped == *name);
        assert!(of.is_some(), "{name} is the name that the log knows it by");
        assert_eq!(*name, name_for(bytes, name.split_once('.').unwrap().1));
    }
    // At home they are as they came.
    for photo in &job.photos {
        let kept = fs::read(picture_path(&path, &photo.picture).unwrap()).unwrap();
        assert!(located(&kept));
    }
    let mut purpose = job.clone();
    let first: &mut Photo = Arc::make_mut(&mut purpose.photos[0]);
    first.place_shared = true;
    again(&path, purpose);
    let share = read_share(&write_share(&path).unwrap().bytes).unwrap();
    let places: Vec<bool> = share
        .pictures
        .iter()
        .map(|(_, bytes)| located(bytes))
        .collect();
    assert_eq!(places.iter().filter(|there| **there).count(), 1);
}

#[test]
fn a_picture_that_went_out_and_came_back_is_there_once() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (path, job) = job(here.path());
    let bytes = write_share(&path).unwrap().bytes;
    let theirs = import_new(&bytes, there.path()).unwrap();
    let back = read_share(&write_share(&theirs).unwrap().bytes).unwrap();
    let ours = open_job(&path).unwrap();
    let (merged, report) = merge_into(&ours, &back).unwrap();
    assert_eq!(report, []);
    assert_eq!(merged.job.photos, job.photos);
}
