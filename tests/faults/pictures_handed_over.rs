//! Pictures as they are handed over, alone and in the packet, and two of a place side by side: decoded again and looked
//! at, pixel by pixel.

use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

use storyrod::app::{App, Command, Here, PhotoCommand, start};
use storyrod::drawing::{Palette, Pixels, Role, Theme};
use storyrod::measure::Length;
use storyrod::photo::{Format, Taped, What, decode, encode, facts};

const SIZE: (u32, u32) = (1200, 900);
const GREY: [u8; 3] = [120, 120, 120];

/// A job into which pictures were taken, and the folder that it is in.
fn job(pictures: &[Vec<u8>]) -> (tempfile::TempDir, App) {
    let folder = tempfile::tempdir().unwrap();
    let mut app = start(&folder.path().join("data"), None, false).unwrap();
    let write = |(n, bytes): (usize, &Vec<u8>)| -> PathBuf {
        let path = folder.path().join(format!("{n}.picture"));
        std::fs::write(&path, bytes).unwrap();
        path
    };
    let files = pictures.iter().enumerate().map(write).collect();
    app.send(Command::Photo(PhotoCommand::Take(files)));
    app.wait_for_pictures();
    assert_eq!(app.job.photos.len(), pictures.len(), "{}", app.said);
    (folder, app)
}

fn plain(colour: [u8; 3]) -> Vec<u8> {
    let rgb = colour.repeat((SIZE.0 * SIZE.1) as usize);
    encode(SIZE, &rgb, Format::Png).unwrap()
}

fn mark(app: &mut App, at: usize, what: What, points: Vec<[f64; 2]>) {
    let mut photo = (*app.job.photos[at]).clone();
    photo.add_mark(what, points);
    app.job.photos[at] = Arc::new(photo);
}

#[track_caller]
fn near(found: &[u8], expected: [u8; 3], give: u8) {
    let off = found.iter().zip(expected).map(|(a, b)| a.abs_diff(b)).max();
    assert!(off.unwrap() <= give, "{found:?} should be {expected:?}");
}

fn role(role: Role) -> [u8; 3] {
    let colour = Palette::of(Theme::Day).colour(role);
    [colour.r, colour.g, colour.b]
}

/// An arrow across grey: its colour in its middle, its halo beside it, the picture beyond; as PNG to the level, as JPEG
/// nearly.
#[test]
fn a_picture_is_handed_over_with_its_marks_in_their_places() {
    let (_folder, mut app) = job(&[plain(GREY)]);
    mark(
        &mut app,
        0,
        What::Arrow,
        vec![[100.0, 450.0], [1100.0, 450.0]],
    );
    for (format, give) in [(Format::Png, 2), (Format::Jpeg, 40)] {
        let bytes = app.marked_photo(0, format).unwrap();
        let begins: &[u8] = match format {
            Format::Png => b"\x89PNG",
            Format::Jpeg => &[0xFF, 0xD8, 0xFF],
        };
        assert!(bytes.starts_with(begins), "{format:?}");
        let (picture, _) = decode(&mut std::io::Cursor::new(&bytes), 2048).unwrap();
        assert_eq!((picture.width, picture.height), SIZE);
        let pixel = |x: usize, y: usize| &picture.rgb[3 * (y * SIZE.0 as usize + x)..][..3];
        // A line of 3.6 pixels lies in rows 448 to 451, its halo reaches two further.
        near(pixel(600, 449), role(Role::Chalk), give);
        near(pixel(600, 450), role(Role::Chalk), give);
        near(pixel(600, 446), role(Role::Sheet), give);
        near(pixel(600, 453), role(Role::Sheet), give);
        for (x, y) in [(600, 430), (600, 470), (60, 450), (1150, 450), (5, 5)] {
            near(pixel(x, y), GREY, 3);
        }
    }
}

/// The camera wrote where it was: that stays at home, whichever way the picture goes.
#[test]
fn a_picture_that_is_handed_over_says_no_place() {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/referee/pictures/turned-6.jpg"
    );
    let (_folder, mut app) = job(&[std::fs::read(path).unwrap()]);
    assert!(app.job.photos[0].located);
    mark(&mut app, 0, What::Note, vec![[40.0, 30.0]]);
    for format in [Format::Png, Format::Jpeg] {
        let bytes = app.marked_photo(0, format).unwrap();
        let (picture, found) = decode(&mut std::io::Cursor::new(&bytes), 2048).unwrap();
        // Upright without being told so.
        assert_eq!((picture.width, picture.height), (96, 64));
        assert!(!found.located && !facts(&mut std::io::Cursor::new(&bytes)).located);
        assert!(!bytes.windows(4).any(|part| part == b"Exif"), "{format:?}");
    }
}

/// In the packet are the pictures that something is marked on, and only those; a figure from the picture says its ±.
#[test]
fn the_packet_holds_the_marked_pictures() {
    let (_folder, mut app) = job(&[plain(GREY), plain([10, 20, 30])]);
    let taped = Some(Taped::read(Length::inches(12)));
    mark(
        &mut app,
        1,
        What::Dimension(taped),
        vec![[200.0, 300.0], [1000.0, 300.0]],
    );
    let marked = app
        .job
        .photos
        .iter()
        .position(|photo| !photo.marks.is_empty())
        .unwrap();
    let packet = app.packet().unwrap();
    let pictures: Vec<_> = packet
        .iter()
        .filter(|(name, _)| name.starts_with("photo-"))
        .collect();
    let [(name, bytes)] = &pictures[..] else {
        panic!("{} pictures", pictures.len());
    };
    let numbered = format!("photo-{}_", marked + 1);
    assert!(
        name.starts_with(&numbered) && name.ends_with(".jpg"),
        "{name}"
    );
    // Byte by byte they differ: the colour profile in them says when it was made.
    let shown = |bytes: &[u8]| decode(&mut std::io::Cursor::new(bytes), 2048).unwrap().0;
    let alone = app.marked_photo(marked, Format::Jpeg).unwrap();
    assert_eq!(shown(bytes), shown(&alone));
}

/// The one before at the left, this one at the right.
#[test]
fn before_and_after_stand_side_by_side() {
    let (red, blue) = ([200, 40, 40], [40, 40, 200]);
    let (_folder, mut app) = job(&[plain(red), plain(blue)]);
    let id = app.job.photos[0].id;
    app.send(Command::Photo(PhotoCommand::Before(1, Some(id))));
    app.send(Command::Go(Here::Photo(1)));
    app.send(Command::Photo(PhotoCommand::Beside(true)));
    let pixel = |shown: &Pixels, x: u32, y: u32| -> [u8; 3] {
        let at = 4 * (y * shown.width + x) as usize;
        [shown.rgba[at], shown.rgba[at + 1], shown.rgba[at + 2]]
    };
    // Their copies are decoded beside the screen; until then it shows a ground.
    let mut seen = Vec::new();
    for _ in 0..400 {
        let (shown, taps) = app.paint_photo((800.0, 300.0), 1.0);
        assert!(taps.is_empty());
        seen = [(200, 150), (600, 150)]
            .map(|(x, y)| pixel(&shown, x, y))
            .to_vec();
        if seen == [red, blue] {
            return;
        }
        std::thread::sleep(Duration::from_millis(25));
    }
    panic!("{seen:?}");
}
