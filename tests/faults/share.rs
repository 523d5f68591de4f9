//! A job as one file, handed over: damaged in every way that is short enough to try, and made to break out.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use proptest::prelude::*;
use storyrod::measure::Length;
use storyrod::site::Id;
use storyrod::store::document::{self, Part};
use storyrod::store::pictures::{PictureFault, check_pictures, picture_path, put_picture};
use storyrod::store::share::{
    ImportError, OtherJob, Share, ShareError, import_new, keep_pictures, merge_into, open_share,
    read_share, write_share,
};
use storyrod::store::{
    Kind, OpenError, RealDisk, SaveError, Snapshot, check_job, jobs_in, open_job,
};

use super::job_file::{full_snapshot, keep};

const PICTURE: u16 = 10;
/// The standard's own example, and its hash.
const ABC: &[u8] = b"abc";
const ABC_HASH: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

/// A job with two pictures in a folder of its own; and what stands around it.
struct Site {
    folder: tempfile::TempDir,
    job: PathBuf,
    full: Snapshot,
}

fn site() -> Site {
    let folder = tempfile::tempdir().unwrap();
    let job = folder.path().join("jobs/a.site");
    fs::create_dir(folder.path().join("jobs")).unwrap();
    let full = full_snapshot();
    keep(&job, &full);
    put_picture(&RealDisk, &job, ABC, "png").unwrap();
    put_picture(&RealDisk, &job, b"a wall behind the wallboard", "jpg").unwrap();
    Site { folder, job, full }
}

fn shared() -> Vec<u8> {
    write_share(&site().job).unwrap().bytes
}

/// A picture's part as it is written, with whatever name and id.
fn picture(name: &str, id: u64, bytes: &[u8]) -> Part {
    let mut body = Vec::new();
    for field in [name.as_bytes(), bytes] {
        let mut length = field.len();
        while length >= 0x80 {
            body.push(length as u8 | 0x80);
            length >>= 7;
        }
        body.push(length as u8);
        body.extend_from_slice(field);
    }
    Part {
        kind: PICTURE,
        id,
        body,
    }
}

fn abc_id() -> u64 {
    u64::from_str_radix(&ABC_HASH[..16], 16).unwrap()
}

/// A shared file of the full job with one more part.
fn with_part(part: Part) -> Vec<u8> {
    let mut parts = document::read(Kind::Share, &shared()).unwrap();
    parts.retain(|part| part.kind != PICTURE);
    parts.push(part);
    document::write(Kind::Share, &parts).unwrap()
}

#[test]
fn a_job_comes_over_with_its_pictures_and_without_its_steps() {
    let site = site();
    let out = write_share(&site.job).unwrap();
    assert_eq!(out.left_out, []);
    let share = read_share(&out.bytes).unwrap();
    assert_eq!(share.snapshot.job, site.full.job);
    assert_eq!(share.snapshot.stamps, site.full.stamps);
    assert!(share.snapshot.done.is_empty() && share.snapshot.undone.is_empty());
    assert_eq!(share.pictures.len(), 2);

    let file = site.folder.path().join("a.rodshare");
    fs::write(&file, &out.bytes).unwrap();
    assert_eq!(open_share(&file), Ok(share.clone()));
    let elsewhere = site.folder.path().join("elsewhere");
    let new = import_new(&out.bytes, &elsewhere).unwrap();
    assert_eq!(open_job(&new), Ok(share.snapshot));
    assert_eq!(check_pictures(&RealDisk, &new).unwrap(), []);
    for (name, bytes) in &share.pictures {
        assert_eq!(&fs::read(picture_path(&new, name).unwrap()).unwrap(), bytes);
    }
    assert_eq!(write_share(&new).unwrap().bytes, out.bytes);
}

#[test]
fn every_cut_is_refused() {
    let whole = shared();
    for length in 0..whole.len() {
        assert!(read_share(&whole[..length]).is_err(), "cut at {length}");
    }
    assert!(read_share(&[&whole[..], &[0]].concat()).is_err());
}

#[test]
fn every_flipped_bit_is_refused() {
    let whole = shared();
    for bit in (0..whole.len() * 8).step_by(7) {
        let mut bytes = whole.clone();
        bytes[bit / 8] ^= 1 << (bit % 8);
        assert!(read_share(&bytes).is_err(), "bit {bit}");
    }
}

#[test]
fn a_newer_format_and_another_kind_are_refused_as_such() {
    let whole = shared();
    let mut newer = whole.clone();
    newer[8] = 9;
    let refused = Err(OpenError::Newer { found: 9 });
    assert_eq!(read_share(&newer), refused);
    let folder = tempfile::tempdir().unwrap();
    let import = import_new(&newer, folder.path());
    assert_eq!(
        import,
        Err(ImportError::Open(OpenError::Newer { found: 9 }))
    );
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
    let job = fs::read(site().job.join("job")).unwrap();
    assert_eq!(read_share(&job), Err(OpenError::WrongKind));
    let parts = document::read(Kind::Share, &whole).unwrap();
    let as_job = document::write(Kind::Job, &parts).unwrap();
    assert_eq!(read_share(&as_job), Err(OpenError::WrongKind));
}

#[test]
fn no_name_of_a_picture_leads_out_of_the_job() {
    let right = format!("{ABC_HASH}.png");
    assert!(read_share(&with_part(picture(&right, abc_id(), ABC))).is_ok());
    let long = "a".repeat(100_000);
    for name in [
        "../../x",
        "/elsewhere/x",
        "C:\\x",
        "job",
        "",
        "a\0b",
        &long,
        &format!("{ABC_HASH}.png\0"),
        &format!("../{ABC_HASH}.png"),
        &format!("/{ABC_HASH}"),
        &format!("{ABC_HASH}/../../x"),
        &format!("{ABC_HASH}.p/g"),
        &format!("{ABC_HASH}.."),
        &format!("{ABC_HASH}.{long}"),
        &ABC_HASH.to_uppercase(),
    ] {
        let bytes = with_part(picture(name, abc_id(), ABC));
        assert_eq!(read_share(&bytes), Err(OpenError::Damaged), "{name}");
        let folder = tempfile::tempdir().unwrap();
        let within = folder.path().join("jobs");
        assert!(import_new(&bytes, &within).is_err());
        assert!(!within.exists(), "nothing is written for {name}");
    }
}

#[test]
fn a_picture_that_is_not_what_it_is_named_by_is_damage() {
    let right = format!("{ABC_HASH}.png");
    let damaged = Err(OpenError::Damaged);
    assert_eq!(
        read_share(&with_part(picture(&right, abc_id(), b"abd"))),
        damaged
    );
    assert_eq!(read_share(&with_part(picture(&right, 7, ABC))), damaged);
    let mut longer = picture(&right, abc_id(), ABC);
    longer.body.push(0);
    assert_eq!(read_share(&with_part(longer)), damaged);
    let mut twice =
        document::read(Kind::Share, &with_part(picture(&right, abc_id(), ABC))).unwrap();
    twice.push(picture(&right, abc_id(), ABC));
    assert_eq!(
        read_share(&document::write(Kind::Share, &twice).unwrap()),
        damaged
    );
}

#[test]
fn two_entries_of_one_name_are_damage() {
    let mut parts = document::read(Kind::Share, &shared()).unwrap();
    let room = parts.iter().find(|part| part.kind == 2).unwrap().clone();
    parts.push(room);
    let bytes = document::write(Kind::Share, &parts).unwrap();
    assert_eq!(read_share(&bytes), Err(OpenError::Damaged));
}

#[test]
fn a_job_without_its_head_is_damage_and_steps_are_passed_over() {
    let parts = document::read(Kind::Share, &shared()).unwrap();
    let headless: Vec<Part> = parts.iter().filter(|p| p.kind != 1).cloned().collect();
    let bytes = document::write(Kind::Share, &headless).unwrap();
    assert_eq!(read_share(&bytes), Err(OpenError::Damaged));
    let mut stepped =
        document::read(Kind::Job, &fs::read(site().job.join("job")).unwrap()).unwrap();
    assert!(stepped.iter().any(|part| part.kind == 7));
    stepped.push(Part {
        kind: 999,
        id: 0,
        body: vec![1, 2, 3],
    });
    let share = read_share(&document::write(Kind::Share, &stepped).unwrap()).unwrap();
    assert!(share.snapshot.done.is_empty() && share.snapshot.undone.is_empty());
}

#[test]
fn a_damaged_picture_stays_at_home_and_is_named() {
    let site = site();
    let name = format!("{ABC_HASH}.png");
    fs::write(picture_path(&site.job, &name).unwrap(), b"abd").unwrap();
    let out = write_share(&site.job).unwrap();
    assert_eq!(out.left_out, [PictureFault::Damaged { name }]);
    assert_eq!(read_share(&out.bytes).unwrap().pictures.len(), 1);
}

#[test]
fn a_picture_too_large_for_a_part_is_said() {
    let site = site();
    let name = put_picture(&RealDisk, &site.job, &vec![7; 64 << 20], "png").unwrap();
    let refused = ShareError::PictureTooLarge { name };
    assert_eq!(write_share(&site.job), Err(refused));
}

/// A link in place of the job's pictures, or of one of them, is not followed.
#[cfg(unix)]
#[test]
fn a_link_in_the_job_is_not_followed() {
    use std::os::unix::fs::symlink;
    let site = site();
    let share = read_share(&shared()).unwrap();
    let outside = site.folder.path().join("outside");
    fs::create_dir(&outside).unwrap();
    fs::write(outside.join("diary"), b"mine").unwrap();
    let untouched = || {
        assert_eq!(fs::read(outside.join("diary")).unwrap(), b"mine");
        assert_eq!(fs::read_dir(&outside).unwrap().count(), 1);
    };
    let pictures = site.job.join("pictures");

    for (name, _) in &share.pictures {
        let at = picture_path(&site.job, name).unwrap();
        fs::remove_file(&at).unwrap();
        symlink(outside.join("diary"), &at).unwrap();
        assert_eq!(keep_pictures(&share, &site.job), Err(SaveError::Link));
        untouched();
        fs::remove_file(&at).unwrap();
        symlink(outside.join("not there"), &at).unwrap();
        assert_eq!(keep_pictures(&share, &site.job), Err(SaveError::Link));
        untouched();
        fs::remove_file(&at).unwrap();
        // What a save leaves beside it, made beforehand as a link.
        let beside = pictures.join(format!(".save-{name}"));
        symlink(outside.join("not there"), beside).unwrap();
        assert_eq!(keep_pictures(&share, &site.job), Ok(2));
        untouched();
    }

    fs::remove_dir_all(&pictures).unwrap();
    symlink(&outside, &pictures).unwrap();
    assert_eq!(keep_pictures(&share, &site.job), Err(SaveError::Link));
    untouched();
    fs::write(outside.join(".save-1"), b"theirs").unwrap();
    drop(storyrod::store::open_to_write(&site.job).unwrap());
    assert!(outside.join(".save-1").exists(), "not swept through a link");
}

#[test]
fn a_new_job_that_cannot_be_saved_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let shared = shared();
    let mut share = document::read(Kind::Share, &shared).unwrap();
    // A name whose folder cannot be made: what is in its place is a file.
    let within = folder.path().join("jobs");
    fs::write(&within, b"a file").unwrap();
    assert!(matches!(
        import_new(&shared, &within),
        Err(ImportError::Save(_))
    ));
    fs::remove_file(&within).unwrap();
    // A second copy goes beside the first and takes nothing from it.
    share.retain(|part| part.kind != PICTURE);
    let bytes = document::write(Kind::Share, &share).unwrap();
    let first = import_new(&shared, &within).unwrap();
    let second = import_new(&bytes, &within).unwrap();
    assert_ne!(first, second);
    assert_eq!(jobs_in(&within).len(), 2);
    assert_eq!(
        open_job(&first).unwrap().job,
        open_job(&second).unwrap().job
    );
    let pictures = |job: &Path| check_job(job).unwrap().pictures;
    assert_eq!((pictures(&first), pictures(&second)), (2, 0));
    for path in [first, second] {
        assert_eq!(path.parent(), Some(&*within));
    }
}

#[test]
fn a_name_of_a_job_leads_nowhere() {
    let folder = tempfile::tempdir().unwrap();
    let within = folder.path().join("jobs");
    for name in ["../../x", "/etc/x", "a\0b", "..", "", "C:\\x"] {
        let mut snapshot = full_snapshot();
        Arc::make_mut(&mut snapshot.job).name = name.into();
        let job = folder.path().join("from.site");
        keep(&job, &snapshot);
        let new = import_new(&write_share(&job).unwrap().bytes, &within).unwrap();
        assert_eq!(new.parent(), Some(&*within), "{name}");
        assert_eq!(open_job(&new).unwrap().job, snapshot.job);
        fs::remove_dir_all(&job).unwrap();
    }
}

#[test]
fn a_copy_comes_back_and_is_one_with_ours() {
    let site = site();
    let ours = open_job(&site.job).unwrap();
    let mut theirs = ours.clone();
    let before = Arc::clone(&theirs.job);
    Arc::make_mut(&mut theirs.job).rooms[0].ceiling = Some(Length::mm(2345));
    Arc::make_mut(&mut theirs.stamps).mark(11, &before, &theirs.job);
    let share = Share {
        snapshot: theirs.clone(),
        pictures: Vec::new(),
    };
    let (merged, report) = merge_into(&ours, &share).unwrap();
    assert_eq!(report.len(), 1);
    assert_eq!(merged.job, theirs.job);
    assert_eq!(merged.done.last(), Some(&ours.job), "a step back to ours");
    assert!(merged.undone.is_empty());
    let (again, report) = merge_into(&merged, &share).unwrap();
    assert_eq!(
        (again, report),
        (merged, vec![]),
        "no step where nothing changes"
    );

    let mut other = share.clone();
    Arc::make_mut(&mut other.snapshot.job).id = Id::fresh();
    assert_eq!(merge_into(&ours, &other), Err(OtherJob));
    let mut nameless = ours.clone();
    Arc::make_mut(&mut nameless.job).id = Id::NONE;
    Arc::make_mut(&mut other.snapshot.job).id = Id::NONE;
    assert_eq!(merge_into(&nameless, &other), Err(OtherJob));
}

proptest! {
    #[test]
    fn prop_any_bytes_are_refused(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(read_share(&bytes).is_err());
    }

    #[test]
    fn prop_any_bodies_behind_good_checksums_are_read_or_refused(
        bodies in proptest::collection::vec((0u16..12, any::<u64>(), proptest::collection::vec(any::<u8>(), 0..200)), 0..6),
        whole in any::<bool>(),
    ) {
        let mut parts = if whole { document::read(Kind::Share, &shared()).unwrap() } else { Vec::new() };
        parts.extend(bodies.into_iter().map(|(kind, id, body)| Part { kind, id, body }));
        if let Ok(share) = read_share(&document::write(Kind::Share, &parts).unwrap()) {
            let folder = tempfile::tempdir().unwrap();
            let new = folder.path().join("a.site");
            keep(&new, &share.snapshot);
            prop_assert_eq!(open_job(&new).unwrap().job, share.snapshot.job.clone());
            let _ = merge_into(&full_snapshot(), &share);
            let mut ours = full_snapshot();
            Arc::make_mut(&mut ours.job).id = share.snapshot.job.id;
            let _ = merge_into(&ours, &share);
        }
    }
}
