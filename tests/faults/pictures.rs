//! Pictures: kept once, whole or not at all, and found out where they are not what they were.

use std::io::ErrorKind;
use std::path::Path;

use storyrod::store::Disk;
use storyrod::store::folder::{Folder, sweep};
use storyrod::store::pictures::{PictureFault, check_pictures, picture_path, put_picture};

use super::sim_disk::{SimDisk, UNSYNCED};

const FOLDER: &str = "jobs/cabin";
const PICTURE: &[u8] = b"a wall behind the wallboard";

fn folder() -> &'static Path {
    Path::new(FOLDER)
}

fn disk() -> SimDisk {
    let disk = SimDisk::new();
    Folder::create(&disk, folder()).unwrap();
    disk.settled()
}

#[test]
fn the_same_picture_is_kept_once() {
    let disk = disk();
    let name = put_picture(&disk, folder(), PICTURE, "JPG").unwrap();
    // The standard's own example, so that the name means the same anywhere.
    assert_eq!(
        put_picture(&disk, folder(), b"abc", "").unwrap(),
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    );
    assert!(name.ends_with(".jpg"));
    let names = disk.names();
    let steps = disk.steps();
    assert_eq!(put_picture(&disk, folder(), PICTURE, ".jpg").unwrap(), name);
    assert_eq!(disk.names(), names);
    assert!(
        disk.steps() - steps < PICTURE.len(),
        "it is not written again"
    );
    let odd = put_picture(&disk, folder(), PICTURE, "../../x").unwrap();
    assert_eq!(odd.len(), 64);
    assert_eq!(check_pictures(&disk, folder()).unwrap(), []);
}

#[test]
fn no_name_leads_out_of_the_folder() {
    let hash = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assert!(picture_path(folder(), hash).is_some());
    assert!(picture_path(folder(), &format!("{hash}.png")).is_some());
    for name in [
        "",
        "../job",
        "/etc/passwd",
        &hash[1..],
        &format!("{hash}."),
        &format!("{hash}.p/g"),
        &format!("{hash}.png.exe"),
        &hash.to_uppercase(),
    ] {
        assert_eq!(picture_path(folder(), name), None, "{name}");
    }
}

#[test]
fn a_damaged_picture_is_found_and_written_anew() {
    let disk = disk();
    let name = put_picture(&disk, folder(), PICTURE, "png").unwrap();
    let path = picture_path(folder(), &name).unwrap();
    disk.damage(&path);
    let damaged = PictureFault::Damaged { name };
    assert_eq!(check_pictures(&disk, folder()).unwrap(), [damaged]);
    put_picture(&disk, folder(), PICTURE, "png").unwrap();
    assert_eq!(check_pictures(&disk, folder()).unwrap(), []);
}

#[test]
fn a_stop_at_any_step_leaves_a_whole_picture_or_none() {
    for steps in 0.. {
        let disk = disk();
        disk.stop_after(steps);
        let put = put_picture(&disk, folder(), PICTURE, "png");
        for kept in 0..1 << disk.uncertain() {
            for unsynced in UNSYNCED {
                let cut = disk.after_a_cut(kept, unsynced);
                assert_eq!(check_pictures(&cut, folder()).unwrap(), [], "{steps}");
                if let Ok(name) = &put {
                    let path = picture_path(folder(), name).unwrap();
                    assert_eq!(cut.read(&path, 1 << 20).unwrap(), PICTURE);
                }
                sweep(&cut, folder()).unwrap();
                put_picture(&cut, folder(), PICTURE, "png").unwrap();
                let pictures = cut.list(&folder().join("pictures")).unwrap();
                assert_eq!(pictures.len(), 1, "nothing is left over");
            }
        }
        if !disk.stopped() {
            put.unwrap();
            assert!(steps > PICTURE.len());
            return;
        }
    }
}

#[test]
fn a_disk_that_fills_up_keeps_no_half_of_a_picture() {
    for call in 0.. {
        let disk = disk();
        let begun = disk.calls();
        disk.fail(call, ErrorKind::StorageFull, false);
        let put = put_picture(&disk, folder(), PICTURE, "png");
        if disk.calls() - begun <= call {
            put.unwrap();
            return;
        }
        assert!(put.is_err(), "call {call}");
        disk.heal();
        assert_eq!(check_pictures(&disk, folder()).unwrap(), [], "call {call}");
        put_picture(&disk, folder(), PICTURE, "png").unwrap();
    }
}
