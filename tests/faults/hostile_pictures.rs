//! Pictures that are cut, damaged, wrongly named, far too large, or written to while they are read; disks that fill up.

use std::fs;
use std::io::{self, Cursor, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::Ordering::Relaxed;

use storyrod::app::take_picture;
use storyrod::photo::{Kind, LARGEST, Problem, Source, Watch, decode, facts, strip};
use storyrod::store::folder::{Folder, sweep};
use storyrod::store::pictures::{bring_picture, check_pictures, picture_path};
use storyrod::store::{Disk, Entry, RealDisk};

use super::sim_disk::SimDisk;

fn sample(name: &str) -> Vec<u8> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/referee/pictures");
    fs::read(Path::new(folder).join(name)).unwrap()
}

const SAMPLES: [&str; 6] = [
    "turned-6.jpg",
    "progressive.jpg",
    "inks.jpg",
    "lying.png",
    "lying.webp",
    "grey.jpg",
];

/// Everything that reads a picture.
fn read_all(bytes: &[u8]) -> Result<(u32, u32), Problem> {
    let _ = facts(&mut Cursor::new(bytes));
    if let Ok(plan) = strip(&mut Cursor::new(bytes)) {
        let _ = plan.write(&mut Cursor::new(bytes), &mut io::sink());
    }
    decode(&mut Cursor::new(bytes), 64).map(|(picture, _)| (picture.width, picture.height))
}

#[test]
fn a_picture_cut_anywhere_is_refused_and_never_half_shown() {
    for name in SAMPLES {
        let whole = sample(name);
        // The last bytes say no more than that it ends.
        for length in (0..whole.len() - 16).step_by(3) {
            let outcome = read_all(&whole[..length]);
            let Err(why) = outcome else {
                // What follows the pixels of a WebP and a PNG is not needed to show it.
                assert!(
                    !name.ends_with("jpg"),
                    "{name} at {length} of {}",
                    whole.len()
                );
                continue;
            };
            if length == 0 {
                assert_eq!(why, Problem::Empty);
            } else {
                let fits = matches!(
                    why,
                    Problem::CutShort | Problem::Damaged | Problem::NotAPicture
                );
                assert!(fits, "{name} at {length}: {why:?}");
            }
        }
    }
}

#[test]
fn a_damaged_picture_is_shown_or_refused_and_nothing_stops() {
    for name in SAMPLES {
        let whole = sample(name);
        for at in 0..whole.len() {
            let mut bytes = whole.clone();
            bytes[at] ^= 1 << (at % 8);
            if let Ok((width, height)) = read_all(&bytes) {
                assert!(width <= 64 && height <= 64, "{name} at {at}");
            }
        }
    }
}

fn png_of(width: u32, height: u32) -> Vec<u8> {
    let mut png = b"\x89PNG\r\n\x1a\n".to_vec();
    let mut chunk = |name: &[u8; 4], body: &[u8]| {
        png.extend((body.len() as u32).to_be_bytes());
        let named = [&name[..], body].concat();
        png.extend(&named);
        png.extend(crc32fast::hash(&named).to_be_bytes());
    };
    let size = [width.to_be_bytes(), height.to_be_bytes()].concat();
    chunk(b"IHDR", &[&size[..], &[8, 2, 0, 0, 0]].concat());
    chunk(b"IDAT", &[0x78, 0x9C, 0x63, 0, 0, 0, 1, 0, 1]);
    chunk(b"IEND", &[]);
    png
}

/// A JPEG whose header says another size than it has.
fn jpeg_of(name: &str, width: u16, height: u16) -> Vec<u8> {
    let mut jpeg = sample(name);
    let frame = |pair: &[u8]| pair[0] == 0xFF && matches!(pair[1], 0xC0 | 0xC2);
    let at = jpeg.windows(2).position(frame).unwrap();
    jpeg[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    jpeg[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    jpeg
}

#[test]
fn what_claims_more_pixels_than_fit_in_memory_is_refused_before_it_is_decoded() {
    let too_many = |bytes: &[u8], size: (u32, u32)| {
        let outcome = decode(&mut Cursor::new(bytes), 2048);
        let Err(Problem::TooManyPixels {
            width,
            height,
            most,
        }) = outcome
        else {
            panic!("{outcome:?}");
        };
        assert_eq!((width, height), size);
        assert!(most > 20);
    };
    too_many(&png_of(30_000, 30_000), (30_000, 30_000));
    too_many(&png_of(u32::MAX >> 1, 1), (u32::MAX >> 1, 1));
    too_many(&jpeg_of("turned-1.jpg", 65_500, 65_500), (65_500, 65_500));
    too_many(&jpeg_of("progressive.jpg", 9_000, 7_000), (9_000, 7_000));
    for (width, height) in [(0, 0), (0, 64)] {
        let jpeg = jpeg_of("turned-1.jpg", width, height);
        assert!(decode(&mut Cursor::new(jpeg), 2048).is_err());
    }
    // Within what is decoded, its data for a thousandth of it: what is shown is no larger than a working copy.
    let short = jpeg_of("turned-1.jpg", 16_000, 12_000);
    if let Ok((picture, _)) = decode(&mut Cursor::new(short), 2048) {
        assert_eq!(picture.rgb.len(), 2048 * 1536 * 3);
    }
}

struct Place {
    folder: tempfile::TempDir,
    job: PathBuf,
}

fn place() -> Place {
    let folder = tempfile::tempdir().unwrap();
    let job = folder.path().join("cabin.site");
    Folder::create(&RealDisk, &job).unwrap();
    Place { job, folder }
}

impl Place {
    fn file(&self, name: &str, bytes: &[u8]) -> PathBuf {
        let path = self.folder.path().join(name);
        fs::write(&path, bytes).unwrap();
        path
    }
    fn pictures(&self) -> usize {
        let pictures = self.job.join("pictures");
        fs::read_dir(pictures).map_or(0, Iterator::count)
    }
}

#[test]
fn a_wrong_name_does_no_harm() {
    let place = place();
    let watch = Watch::default();
    let jpeg = place.file("called.png", &sample("turned-6.jpg"));
    let photo = take_picture(&RealDisk, &place.job, &jpeg, &watch).unwrap();
    assert!(photo.picture.ends_with(".jpg"), "{}", photo.picture);
    assert_eq!(photo.size, (96, 64));
    assert_eq!(photo.when.to_rfc3339(), "2026-03-14T15:09:26-05:00");
    assert!(photo.located && photo.stripped != photo.picture);
    let kept = picture_path(&place.job, &photo.picture).unwrap();
    assert_eq!(fs::read(kept).unwrap(), sample("turned-6.jpg"));
    assert_eq!(check_pictures(&RealDisk, &place.job).unwrap(), []);
    // The same once more is one file.
    take_picture(&RealDisk, &place.job, &jpeg, &watch).unwrap();
    assert_eq!(place.pictures(), 1);
    for (name, bytes, why) in [
        ("text.jpg", &b"no picture"[..], Problem::NotAPicture),
        ("empty.jpg", b"", Problem::Empty),
        (
            "new.heic",
            b"\0\0\0\x18ftypheic\0\0\0\0mif1heic",
            Problem::Heic,
        ),
        ("cut.jpg", &sample("turned-1.jpg")[..700], Problem::CutShort),
    ] {
        let file = place.file(name, bytes);
        let outcome = take_picture(&RealDisk, &place.job, &file, &watch);
        assert_eq!(outcome, Err(why), "{name}");
        assert_eq!(place.pictures(), 1, "{name} leaves nothing");
        assert_eq!(fs::read(&file).unwrap(), bytes, "{name} is left as it is");
    }
    let gone = place.folder.path().join("gone.jpg");
    let outcome = take_picture(&RealDisk, &place.job, &gone, &watch);
    assert!(matches!(outcome, Err(Problem::Disk(_))), "{outcome:?}");
    let folder = take_picture(&RealDisk, &place.job, place.folder.path(), &watch);
    assert!(folder.is_err());
}

#[test]
fn a_file_far_too_large_is_not_read() {
    let place = place();
    let path = place.folder.path().join("large.jpg");
    // Nothing is written: the disk only remembers its length.
    fs::File::create(&path)
        .unwrap()
        .set_len(LARGEST + 1)
        .unwrap();
    let outcome = take_picture(&RealDisk, &place.job, &path, &Watch::default());
    let bytes = LARGEST + 1;
    assert_eq!(
        outcome,
        Err(Problem::TooLarge {
            bytes,
            most: LARGEST
        })
    );
}

#[test]
fn a_file_that_changes_while_it_is_read_is_not_taken() {
    let place = place();
    let path = place.file("growing.jpg", &sample("turned-1.jpg"));
    let watch = Watch::default();
    let mut source = Source::open(&path, &watch).unwrap();
    let mut all = Vec::new();
    source.read_to_end(&mut all).unwrap();
    assert_eq!(source.unchanged(), Ok(()));
    let mut file = fs::OpenOptions::new().append(true).open(&path).unwrap();
    file.write_all(b"more").unwrap();
    assert_eq!(source.unchanged(), Err(Problem::Changing));
    // One that is cut meanwhile, too.
    let watch = Watch::default();
    let mut source = Source::open(&path, &watch).unwrap();
    source.read_exact(&mut [0; 10]).unwrap();
    assert_eq!(source.unchanged(), Err(Problem::Changing));
}

#[test]
fn taking_in_can_be_stopped_and_leaves_nothing() {
    let place = place();
    let path = place.file("a.jpg", &sample("turned-1.jpg"));
    let watch = Watch::default();
    watch.stop.store(true, Relaxed);
    let outcome = take_picture(&RealDisk, &place.job, &path, &watch);
    assert_eq!(outcome, Err(Problem::Stopped));
    assert_eq!(place.pictures(), 0);
}

/// A real disk that is full after so many bytes of a picture.
struct Filling(usize);

impl Disk for Filling {
    fn read(&self, path: &Path, most: u64) -> io::Result<Vec<u8>> {
        RealDisk.read(path, most)
    }
    fn write_new(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        RealDisk.write_new(path, bytes)
    }
    fn write_from(&self, path: &Path, from: &mut dyn Read) -> io::Result<()> {
        let mut some = vec![0; self.0];
        let read = from.read(&mut some)?;
        RealDisk.write_new(path, &some[..read])?;
        Err(ErrorKind::StorageFull.into())
    }
    fn sync_file(&self, path: &Path) -> io::Result<()> {
        RealDisk.sync_file(path)
    }
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        RealDisk.rename(from, to)
    }
    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        RealDisk.link(from, to)
    }
    fn remove(&self, path: &Path) -> io::Result<()> {
        RealDisk.remove(path)
    }
    fn list(&self, folder: &Path) -> io::Result<Vec<Entry>> {
        RealDisk.list(folder)
    }
    fn make_folder(&self, path: &Path) -> io::Result<()> {
        RealDisk.make_folder(path)
    }
    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        RealDisk.sync_folder(path)
    }
    fn exists(&self, path: &Path) -> io::Result<bool> {
        RealDisk.exists(path)
    }
}

#[test]
fn a_full_disk_is_said_and_keeps_no_half_of_a_picture() {
    let place = place();
    let path = place.file("a.jpg", &sample("turned-1.jpg"));
    let outcome = take_picture(&Filling(500), &place.job, &path, &Watch::default());
    assert_eq!(outcome, Err(Problem::Disk("the disk is full".to_owned())));
    assert_eq!(place.pictures(), 0);
    assert_eq!(fs::read(&path).unwrap(), sample("turned-1.jpg"));
}

/// Whatever call of the disk fails, the picture is there whole, or not at all once the job is opened again.
#[test]
fn a_picture_brought_in_is_whole_or_not_there_whatever_call_fails() {
    let job = Path::new("jobs/cabin");
    let start = SimDisk::new();
    Folder::create(&start, job).unwrap();
    let start = start.settled();
    let bytes = sample("grey.jpg");
    let bring = |disk: &SimDisk| -> io::Result<String> {
        let incoming = bring_picture(disk, job, &mut &bytes[..], "jpg")?;
        incoming
            .keep()
            .map_err(|why| io::Error::other(why.to_string()))
    };
    let calls = {
        let disk = start.same();
        bring(&disk).unwrap();
        disk.calls() - start.calls()
    };
    assert!(calls >= 6, "{calls}");
    for call in 0..calls {
        for how in [ErrorKind::StorageFull, ErrorKind::PermissionDenied] {
            let disk = start.same();
            disk.fail(start.calls() + call, how, true);
            let outcome = bring(&disk);
            disk.heal();
            sweep(&disk, job).unwrap();
            assert_eq!(check_pictures(&disk, job).unwrap(), [], "call {call}");
            let there = disk
                .names()
                .iter()
                .filter(|name| name.extension().is_some_and(|e| e == "jpg"))
                .count();
            assert!(there == 1 || outcome.is_err(), "call {call}: {outcome:?}");
            assert_eq!(
                bring(&disk).map(|_| ()).ok(),
                Some(()),
                "tried again after call {call}"
            );
        }
    }
}

#[test]
fn what_a_file_is_does_not_hang_on_its_name() {
    for name in SAMPLES {
        let kind = Kind::of(&sample(name)).unwrap();
        assert!(kind.is_called(name.rsplit('.').next().unwrap()), "{name}");
    }
}
