//! What it costs to keep and to open a job, each figure beside its referee, measured in turn in the same run.
//!
//! `cargo bench --no-default-features --features sqlite --bench store`
//!
//! Each figure is one line that ends in whether its goal is met: `met` or `short`; `short` also where its referee is not
//! there. Times are medians.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "clock.rs"]
mod clock;
#[cfg(feature = "sqlite")]
#[path = "store/database.rs"]
mod database;
#[path = "store/job_of_size.rs"]
mod job_of_size;
#[path = "store/json.rs"]
mod json;
#[path = "store/memory.rs"]
mod memory;

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use clock::{median, milliseconds, outcome};
use job_of_size::{Edited, Row};
use storyrod::app::{self, Command, Here, Kept, Slot};
use storyrod::store::pictures::put_picture;
use storyrod::store::{RealDisk, Snapshot, Writer, folder, open_job, open_to_write};

const FEW: usize = 100;
const MANY: usize = 5_000;
/// How often each side saves.
const SAVES: usize = 160;
/// How many edits the screen's thread takes.
const TAPS: usize = 600;
const OPENINGS: usize = 31;
const PICTURES: usize = 1_000;
const HOW: &str = "cargo bench --no-default-features --features sqlite --bench store";

fn main() {
    // `cargo test --all-targets` runs this as well, where times say nothing.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    let place = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let saves = [FEW, MANY].map(|lines| saves(place.path(), lines));
    on_disk(&saves);
    on_the_screens_thread(place.path(), saves[1].ours);
    opening(place.path());
    size();
    against_a_database(&saves);
}

/// One figure: what, how much, its referee's name and figure, the goal, and whether it is met.
fn say(what: &str, (ours, unit): (f64, &str), referee: (&str, f64), goal: &str, met: bool) {
    let (name, theirs) = referee;
    let outcome = outcome(met);
    println!(
        "store/{what}: {ours:.2} {unit}, {name} {theirs:.2} {unit}, ratio {:.2}, goal {goal}: {outcome}",
        ours / theirs
    );
}

/// Medians of the same edits kept by each side, in milliseconds.
struct Saves {
    lines: usize,
    ours: f64,
    /// The same bytes, with nothing done but what makes them certain.
    bare: f64,
    database: Option<f64>,
}

/// The least that a document can be kept with: written beside the old one, synced, renamed over it, its name synced.
fn keep_barely(folder: &Path, bytes: &[u8]) {
    let (beside, name) = (folder.join("bare-beside"), folder.join("bare"));
    let mut file = File::create_new(&beside).unwrap();
    file.write_all(bytes).unwrap();
    file.sync_all().unwrap();
    drop(file);
    fs::rename(beside, name).unwrap();
    File::open(folder).unwrap().sync_all().unwrap();
}

/// Keeps edit after edit of a job of so many lines, by each side in turn.
fn saves(place: &Path, lines: usize) -> Saves {
    let mut edited = Edited::of(lines);
    let path = place.join(format!("{lines}.site"));
    let mut writer = Writer::new_at(&path);
    writer.keep(&edited.snapshot(), edited.now()).unwrap();
    let mut database = Other::of(&place.join(format!("{lines}.db")), &edited);
    let (mut ours, mut bare, mut theirs) = (Vec::new(), Vec::new(), Vec::new());
    for turn in 0..SAVES {
        let rows = edited.edit();
        let (snapshot, now) = (edited.snapshot(), edited.now());
        // Whoever comes first pays for what the others left to the disk: each does as often.
        for side in 0..3 {
            match (side + turn) % 3 {
                0 => ours.push(milliseconds(|| writer.keep(&snapshot, now).unwrap())),
                1 => {
                    let bytes = fs::read(folder::document_path(&path)).unwrap();
                    bare.push(milliseconds(|| keep_barely(&path, &bytes)));
                }
                _ => theirs.extend(database.keep(&rows)),
            }
        }
    }
    assert_eq!(open_job(&path).unwrap(), edited.snapshot());
    database.check(&edited);
    Saves {
        lines,
        ours: median(ours),
        bare: median(bare),
        database: (!theirs.is_empty()).then(|| median(theirs)),
    }
}

/// The database, where it is built in.
struct Other {
    #[cfg(feature = "sqlite")]
    database: database::Database,
}

#[cfg(feature = "sqlite")]
impl Other {
    fn of(path: &Path, edited: &Edited) -> Other {
        Other {
            database: database::Database::of(path, &edited.rows()),
        }
    }
    fn keep(&mut self, rows: &[Row]) -> Option<f64> {
        Some(milliseconds(|| self.database.keep(rows)))
    }
    fn check(&self, edited: &Edited) {
        assert_eq!(self.database.count(), edited.rows().len());
    }
}

#[cfg(not(feature = "sqlite"))]
impl Other {
    fn of(_: &Path, _: &Edited) -> Other {
        Other {}
    }
    fn keep(&mut self, _: &[Row]) -> Option<f64> {
        None
    }
    fn check(&self, _: &Edited) {}
}

fn on_disk(saves: &[Saves; 2]) {
    for Saves {
        lines, ours, bare, ..
    } in saves
    {
        let (goal, most) = match *lines {
            FEW => ("ratio 1.30", bare * 1.3),
            _ => ("bare write + 8 ms", bare + 8.0),
        };
        let what = format!("an edit on disk, {lines} lines");
        say(
            &what,
            (*ours, "ms"),
            ("bare write", *bare),
            goal,
            *ours <= most,
        );
    }
}

/// What an edit takes of the thread that the person waits for: the program takes what is on the pad.
fn on_the_screens_thread(place: &Path, save: f64) {
    let edited = Edited::of(MANY);
    let path = place.join("screen.site");
    Writer::new_at(&path)
        .keep(&edited.snapshot(), edited.now())
        .unwrap();
    let mut app = app::start(&place.join("data"), Some(&path), false).unwrap();
    app.send(Command::Go(Here::Tape));
    let (mut times, mut own) = (Vec::new(), Vec::new());
    for tap in 0..TAPS {
        app.send(Command::Pad(Slot::Roll));
        let pad = app.pad.as_mut().unwrap();
        pad.typed = format!("{}' {} 3/8", 1 + tap % 13, tap % 12);
        let waited = waited_for_a_core();
        let time = milliseconds(|| app.take());
        times.push(time);
        own.push(time - (waited_for_a_core() - waited));
        assert!(app.pad.is_none());
        // Some edits come while a save runs, some after it.
        if tap % 3 == 0 {
            while app.kept() != Kept::Yes {
                std::thread::yield_now();
            }
        }
    }
    app.finish().unwrap();
    assert_eq!(app.job.roll.len(), edited.job.roll.len() + TAPS);
    let most = |times: &[f64]| times.iter().copied().fold(0.0, f64::max);
    let (clock, worst) = (most(&times), most(&own));
    let what = format!("an edit on the screen's thread, {MANY} lines");
    let referee = ("the save itself", save);
    let middle = median(times);
    say(
        &format!("{what}, median"),
        (middle, "ms"),
        referee,
        "2 ms",
        middle <= 2.0,
    );
    let what = format!("{what}, worst of {TAPS} less waits for a core ({clock:.2} ms with them)");
    say(&what, (worst, "ms"), referee, "2 ms", worst <= 2.0);
}

/// How long this thread has waited, ready to run, while its core ran another, in milliseconds; 0 where the system does
/// not say. A core taken by another program says nothing of ours; a wait for a lock or the disk is not in it.
fn waited_for_a_core() -> f64 {
    let says = fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let waited = says.split(' ').nth(1).and_then(|n| n.parse::<f64>().ok());
    waited.unwrap_or(0.0) / 1e6
}

/// A job with its whole history and a thousand pictures.
fn opening(place: &Path) {
    let edited = Edited::of(MANY);
    let path = place.join("opening.site");
    Writer::new_at(&path)
        .keep(&edited.snapshot(), edited.now())
        .unwrap();
    for n in 0..PICTURES {
        put_picture(&RealDisk, &path, format!("picture {n}").as_bytes(), "png").unwrap();
    }
    let (mut read, mut write, mut bare) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..OPENINGS {
        read.push(milliseconds(|| open_job(&path).unwrap()));
        write.push(milliseconds(|| open_to_write(&path).unwrap()));
        bare.push(milliseconds(|| {
            fs::read(folder::document_path(&path)).unwrap()
        }));
    }
    let bare = ("reading its bytes", median(bare));
    for (how, times) in [("to read", read), ("to write", write)] {
        let time = median(times);
        let what = format!("opening {how}, {MANY} lines, {PICTURES} pictures");
        say(&what, (time, "ms"), bare, "60 ms", time <= 60.0);
    }
    let (opened, peak) = memory::peak(|| open_job(&path).unwrap());
    assert_eq!(opened, edited.snapshot());
    let referee = (
        "the document",
        megabytes(fs::read(folder::document_path(&path)).unwrap().len()),
    );
    let peak = megabytes(peak);
    let what = format!("memory at its most while opening, {MANY} lines");
    say(&what, (peak, "MB"), referee, "20 MB", peak <= 20.0);
}

fn megabytes(bytes: usize) -> f64 {
    bytes as f64 / 1e6
}

/// The same content, without history, as a document and as JSON.
fn size() {
    let place = tempfile::tempdir().unwrap();
    for lines in [FEW, MANY] {
        let edited = Edited::of(lines);
        let path: PathBuf = place.path().join(format!("{lines}.site"));
        let snapshot = Snapshot::of((*edited.job).clone());
        Writer::new_at(&path).keep(&snapshot, edited.now()).unwrap();
        let ours = fs::metadata(folder::document_path(&path)).unwrap().len() as f64 / 1e3;
        let json = json::job(&edited.job).len() as f64 / 1e3;
        let what = format!("the document, {lines} lines");
        say(
            &what,
            (ours, "kB"),
            ("compact JSON", json),
            "ratio 0.30",
            ours <= 0.3 * json,
        );
    }
}

fn against_a_database(saves: &[Saves; 2]) {
    for save in saves {
        let what = format!("an edit against SQLite, {} lines", save.lines);
        match save.database {
            Some(theirs) => {
                let referee = ("SQLite", theirs);
                say(
                    &what,
                    (save.ours, "ms"),
                    referee,
                    "ratio below 1",
                    save.ours < theirs,
                );
            }
            None => println!(
                "store/{what}: {:.2} ms, SQLite not built in (`{HOW}`), ratio unknown, goal ratio below 1: short",
                save.ours
            ),
        }
    }
}
