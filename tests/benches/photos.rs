//! What pictures cost, each figure beside its referee, measured in the same run.
//!
//! `cargo bench --no-default-features --bench photos`
//!
//! A name after `--` runs a part alone: `copies`, `memory`, `log`, `flat`, `coverage`.
//!
//! Each figure is one line that ends in whether its goal is met: `met` or `short`; `short` also where its referee is not
//! there. Times are medians. Memory is the most that a process of its own ever held (`VmHWM`, so on Linux alone).
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "clock.rs"]
mod clock;
#[path = "photos/simulated.rs"]
mod simulated;

use std::fs::File;
use std::hint::black_box;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use clock::{median, milliseconds, outcome};
use storyrod::app::{SMALL, start, take_picture};
use storyrod::geometry::{Bent, Lens, PlaneView, Reference, Shape};
use storyrod::photo::{
    Format, Photo, Picture, WORKING, Watch, What, Window, decode, encode, flatten,
};
use storyrod::store::pictures::{name_for, put_copy};
use storyrod::store::{self, RealDisk};

const PILLOW: &str = include_str!("photos/pillow_copy.py");
const HOW: &str =
    "python3 -m pip install pillow numpy, then cargo bench --no-default-features --bench photos";

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    if let [_, what, file, folder] = &arguments[..]
        && what == "take"
    {
        let watch = Watch::default();
        let photo = take_picture(&RealDisk, Path::new(folder), Path::new(file), &watch).unwrap();
        println!("{} {}", most_held(), photo.size.0);
        return;
    }
    // `cargo test --all-targets` runs this as well, where times say nothing.
    if !arguments.iter().any(|argument| argument == "--bench") {
        return;
    }
    let wanted = |part: &str| {
        let mut named = arguments
            .iter()
            .skip(1)
            .filter(|name| !name.starts_with("--"));
        named.clone().next().is_none() || named.any(|name| name == part)
    };
    if wanted("copies") || wanted("memory") {
        let folder = tempfile::tempdir().unwrap();
        if pillow(&["make", folder.path().to_str().unwrap()]).is_none() {
            println!("photos/copies and memory: no pictures without Pillow ({HOW}): short");
        } else {
            if wanted("copies") {
                copies(folder.path());
            }
            if wanted("memory") {
                memory(folder.path());
            }
        }
    }
    for (name, part) in [("log", log as fn()), ("flat", flat), ("coverage", coverage)] {
        if wanted(name) {
            part();
        }
    }
}

/// One figure: what, how much, its referee's name and figure, the goal, and whether it is met.
fn say(what: &str, (ours, unit): (f64, &str), referee: (&str, f64), goal: &str, met: bool) {
    let (name, theirs) = referee;
    let outcome = outcome(met);
    println!(
        "photos/{what}: {ours:.2} {unit}, {name} {theirs:.2} {unit}, ratio {:.2}, goal {goal}: {outcome}",
        ours / theirs
    );
}

fn pillow(arguments: &[&str]) -> Option<String> {
    let done = Command::new("python3")
        .arg("-c")
        .arg(PILLOW)
        .args(arguments)
        .output();
    let done = done.ok().filter(|done| done.status.success())?;
    String::from_utf8(done.stdout).ok()
}

/// From the file to a working copy, upright and in sRGB, against Pillow's draft mode and thumbnail.
fn copies(folder: &Path) {
    for (name, times) in [("12", 9), ("48", 7)] {
        let path = folder.join(format!("{name}.jpg"));
        let ours =
            median((0..times).map(|_| {
                milliseconds(|| decode(&mut File::open(&path).unwrap(), WORKING).unwrap())
            }));
        let theirs = pillow(&["time", path.to_str().unwrap(), &times.to_string()]);
        let theirs = theirs
            .and_then(|said| said.trim().parse().ok())
            .unwrap_or(f64::NAN);
        let what = format!("{name} megapixels to 2,048 pixels");
        let goal = "0.7 times";
        say(
            &what,
            (ours, "ms"),
            ("Pillow", theirs),
            goal,
            ours <= 0.7 * theirs,
        );
    }
}

/// The most that this process ever held, in kilobytes.
fn most_held() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok())
        .unwrap_or(u64::MAX)
}

/// A picture taken in whole, copied, decoded, its copies written, in a process of its own.
fn memory(folder: &Path) {
    let own: PathBuf = std::env::current_exe().unwrap();
    for (name, most) in [("12", 200.0), ("48", 200.0), ("200", 250.0)] {
        let file = folder.join(format!("{name}.jpg"));
        let job = tempfile::tempdir().unwrap();
        let begun = Instant::now();
        let done = Command::new(&own)
            .arg("take")
            .arg(&file)
            .arg(job.path())
            .output()
            .unwrap();
        let taken = begun.elapsed().as_secs_f64() * 1e3;
        let said = String::from_utf8(done.stdout).unwrap();
        let held: f64 = said.split(' ').next().unwrap().parse::<f64>().unwrap() / 1e3;
        let size = std::fs::metadata(&file).unwrap().len() as f64 / 1e6;
        let what = format!("most held while {name} megapixels come in ({taken:.0} ms in all)");
        say(
            &what,
            (held, "MB"),
            ("its file", size),
            &format!("{most} MB"),
            held < most,
        );
    }
}

/// A job with 1,000 pictures in its log from the disk to its first screen: read, the log sorted, the lines in sight made,
/// their small copies decoded. Against reading just those files' bytes.
fn log() {
    let folder = tempfile::tempdir().unwrap();
    let size = (256, 192);
    let rgb: Vec<u8> = (0..size.0 * size.1 * 3)
        .map(|n| (n * 7 % 253) as u8)
        .collect();
    let small = encode(size, &rgb, Format::Jpeg).unwrap();
    let begun = chrono::DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
    let mut job = storyrod::app::demo_job(begun);
    for n in 0..1000i64 {
        let name = name_for(&n.to_le_bytes(), "jpg");
        let when = begun + chrono::Duration::minutes(47 * n);
        let mut photo = Photo::new(name, (4000, 3000), when);
        photo.title = format!("Wall {n}");
        photo.note = "Before the board went on; hot left, cold right.".into();
        for at in 0..4 {
            let at = f64::from(at) * 100.0;
            photo.add_mark(What::Dimension(None), vec![[at, 10.0], [at, 900.0]]);
        }
        job.photos.push(std::sync::Arc::new(photo));
    }
    let path = folder.path().join("log.site");
    store::save_job(&path, &job).unwrap();
    for photo in &job.photos {
        put_copy(&path, &photo.picture, SMALL, &small).unwrap();
    }
    let shown = 12;
    let data = folder.path().join("data");
    let mut files = Vec::new();
    let ours = median((0..9).map(|_| {
        files.clear();
        milliseconds(|| {
            let mut app = start(&data, Some(&path), false).unwrap();
            app.send(storyrod::app::Command::Go(storyrod::app::Here::Photos));
            let lines = app.screen().log.unwrap();
            for line in lines.into_iter().take(shown) {
                if let Some(path) = app.log_row(line).small {
                    decode(&mut File::open(&path).unwrap(), SMALL).unwrap();
                    files.push(path);
                }
            }
        })
    }));
    let bytes = median((0..9).map(|_| {
        milliseconds(|| {
            files
                .iter()
                .map(|path| std::fs::read(path).unwrap().len())
                .sum::<usize>()
                + std::fs::read(path.join("job")).unwrap().len()
        })
    }));
    say(
        "a log of 1,000 to its first screen",
        (ours, "ms"),
        ("reading its bytes", bytes),
        "150 ms",
        ours <= 150.0,
    );
}

/// A working copy laid flat for a screen of 1,180 by 820, and at its own size.
fn flat() {
    let (width, height) = (2048u32, 1536u32);
    let rgb = (0..width * height * 3).map(|n| (n % 251) as u8).collect();
    let picture = Picture {
        width,
        height,
        rgb,
        original: (8000, 6000),
    };
    let lens = Bent {
        lens: Lens {
            bend: -0.03,
            ..Lens::straight(8000.0, 6000.0)
        },
        spread: 0.001,
    };
    let reference = Reference {
        corners: [
            [900.0, 700.0],
            [6900.0, 1100.0],
            [7100.0, 5200.0],
            [1100.0, 5600.0],
        ],
        shape: Shape::rectangle([1.2, 0.8], [0.001; 2]),
    };
    let view = PlaneView::new(&reference, &[], lens, 6.0).unwrap();
    let plane = view.plane_of().unwrap();
    for size in [(1180, 820), (width, height)] {
        let window = Window::around([0.0, 0.0], [1.2, 0.8], size);
        let times = (0..31).map(|_| milliseconds(|| flatten(&picture, &plane, &window, [0; 3])));
        let ours = median(times);
        let what = format!("laid flat at {} by {}", size.0, size.1);
        let pixels = f64::from(size.0 * size.1);
        let copied = median((0..31).map(|_| {
            let rgb = &picture.rgb;
            milliseconds(|| black_box(rgb.clone()))
        }));
        println!("photos/{what}: {:.1} ns a pixel", ours * 1e6 / pixels);
        say(
            &what,
            (ours, "ms"),
            ("copying its bytes", copied),
            "25 ms",
            ours <= 25.0,
        );
    }
    // So that the decoder of a stored working copy is not forgotten: what opening one on the screen takes.
    let jpeg = encode((width, height), &picture.rgb, Format::Jpeg).unwrap();
    let opened =
        median((0..9).map(|_| milliseconds(|| decode(&mut Cursor::new(&jpeg), WORKING).unwrap())));
    println!("photos/a working copy opened: {opened:.1} ms");
}

/// 10,000 views, each with its stated ± at the truth or not.
fn coverage() {
    let rectangle = simulated::Form::Rectangle;
    for (what, form, lens, tapes) in [
        ("a straight lens", rectangle, 0.0, 0),
        ("a lens within its allowance", rectangle, 0.004, 0),
        ("and two tapes on it", rectangle, 0.004, 2),
        (
            "four sides and a right angle",
            simulated::Form::Cornered,
            0.004,
            0,
        ),
        (
            "four sides and a diagonal",
            simulated::Form::Braced,
            0.004,
            0,
        ),
    ] {
        let begun = Instant::now();
        let (share, stated) = simulated::covered(10_000, 20_261_126, form, lens, tapes);
        let met = (0.90..=0.99).contains(&share);
        println!(
            "photos/stated ± covers the truth, 10,000 views, 1.5 px clicks, {what}: {:.2} %, stated at the median {:.2} % of the length, {:.0} ms, goal 90 to 99 %: {}",
            share * 100.0,
            stated * 100.0,
            begun.elapsed().as_secs_f64() * 1e3,
            outcome(met)
        );
    }
    for (what, level, tapes) in [
        ("by the sheet's edge", false, 0),
        ("by a level line too", true, 0),
        ("by both and two tapes", true, 2),
    ] {
        let share = simulated::placed_within(10_000, 20_261_126, level, tapes);
        println!(
            "photos/a place on the wall is within what is said, 10,000 walls, {what}: {:.2} %, a circle, so goal 95 % or more: {}",
            share * 100.0,
            outcome(share >= 0.95)
        );
    }
}
