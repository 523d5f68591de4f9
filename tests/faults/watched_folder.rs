//! The camera's folder: what appears in it is taken in by itself once it is whole, and what is none is left.

use std::fs;
use std::path::Path;
use std::time::Duration;

use storyrod::app::{App, Command, Here, PhotoCommand, PhotoSlot, Slot, start};

/// Types words into a field of the camera.
fn set(app: &mut App, field: PhotoSlot, text: &str) -> String {
    app.send(Command::Pad(Slot::Photo(0, field)));
    let pad = app.pad.as_mut().unwrap();
    (pad.typed, pad.fresh) = (text.to_owned(), false);
    app.take();
    app.pad.take().map_or_else(String::new, |pad| pad.wrong)
}

#[test]
fn a_new_picture_in_the_watched_folder_is_taken_in() {
    let folder = tempfile::tempdir().unwrap();
    let camera = folder.path().join("camera");
    fs::create_dir(&camera).unwrap();
    let mut app = start(&folder.path().join("data"), None, false).unwrap();
    app.send(Command::Go(Here::Photos));
    let wrong = set(&mut app, PhotoSlot::Watched, "/nowhere/at all");
    assert!(wrong.contains("no folder"), "{wrong}");
    assert_eq!(
        set(&mut app, PhotoSlot::Watched, camera.to_str().unwrap()),
        ""
    );
    assert_eq!(set(&mut app, PhotoSlot::Camera, "no-such-camera-here"), "");
    app.send(Command::Photo(PhotoCommand::Snap));
    assert!(app.said.contains("does not start"), "{}", app.said);
    let pictures = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/referee/pictures");
    fs::copy(pictures.join("turned-6.jpg"), camera.join("new.jpg")).unwrap();
    fs::write(camera.join("notes.txt"), "no picture").unwrap();
    for _ in 0..400 {
        app.look_into_folder();
        if app.is_taking() || !app.job.photos.is_empty() {
            break;
        }
        std::thread::sleep(Duration::from_millis(25));
    }
    app.wait_for_pictures();
    assert_eq!(app.job.photos.len(), 1, "{}", app.said);
    assert_eq!(
        app.job.photos[0].when.to_rfc3339(),
        "2026-03-14T15:09:26-05:00"
    );
    // The settings are there the next time.
    drop(app);
    let app = start(&folder.path().join("data"), None, false).unwrap();
    assert_eq!(app.job.photos.len(), 1);
    assert!(app.screen().rows.len() > 1);
}
