//! The `storyrod` program: a window, or a packet and checks without one.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use storyrod::{app, store};

/// Says a line; whoever stopped listening is no reason to fail.
macro_rules! say {
    ($($text:tt)*) => {{
        use std::io::Write;
        let _ = writeln!(std::io::stdout(), $($text)*);
    }};
}

const HELP: &str = "Storyrod: from what the tape said to what is cut, bought and mixed.

  storyrod                      open the last job; the demo job at a first start
  storyrod JOB                  open a job, or begin one there
  storyrod --demo               open a fresh demo job
  storyrod packet JOB --out DIR write the buying list, the cutting plan and every sketch
  storyrod packet --demo --out DIR
  storyrod check JOB            say what of a job is whole and what is not
  storyrod recover JOB --out NEW  save every whole part and picture of a damaged job as a new one
  storyrod share JOB --out FILE   hand a job over as one file with its pictures
  storyrod take FILE --out NEW    a job that was handed over, or plain JSON, as a new job
  storyrod json JOB --out FILE    everything as plain JSON
  storyrod --version, --help

Exit codes: 0 done; 1 it could not be done; 2 no display, or not understood.
";

/// What the command line asks for.
enum Asked {
    Window { job: Option<PathBuf>, demo: bool },
    Packet { job: Option<PathBuf>, out: PathBuf },
    Check(PathBuf),
    Recover { job: PathBuf, out: PathBuf },
    Share { job: PathBuf, out: PathBuf },
    Take { file: PathBuf, out: PathBuf },
    Json { job: PathBuf, out: PathBuf },
    Say(String),
}

fn main() -> ExitCode {
    let asked = match read_arguments() {
        Ok(asked) => asked,
        Err(why) => {
            eprintln!("storyrod: {why}. See storyrod --help.");
            return ExitCode::from(2);
        }
    };
    let outcome = match asked {
        Asked::Say(text) => {
            say!("{}", text.trim_end());
            Ok(())
        }
        Asked::Check(job) => check(&job),
        Asked::Recover { job, out } => recover(&job, &out),
        Asked::Share { job, out } => share(&job, &out),
        Asked::Take { file, out } => take(&file, &out),
        Asked::Json { job, out } => json(&job, &out),
        Asked::Packet { job, out } => packet(job.as_deref(), &out),
        Asked::Window { job, demo } => return window(job.as_deref(), demo),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("storyrod: {why}");
            ExitCode::FAILURE
        }
    }
}

fn read_arguments() -> Result<Asked, String> {
    use lexopt::prelude::{Long, Short, Value};
    let mut parser = lexopt::Parser::from_env();
    let (mut words, mut demo, mut out) = (Vec::new(), false, None);
    while let Some(argument) = parser.next().map_err(|why| why.to_string())? {
        match argument {
            Long("help") | Short('h') => return Ok(Asked::Say(HELP.to_owned())),
            Long("version") | Short('V') => {
                return Ok(Asked::Say(format!(
                    "storyrod {}\n",
                    env!("CARGO_PKG_VERSION")
                )));
            }
            Long("demo") => demo = true,
            Long("out") => {
                out = Some(PathBuf::from(
                    parser.value().map_err(|why| why.to_string())?,
                ));
            }
            Value(word) => words.push(word),
            other => return Err(other.unexpected().to_string()),
        }
    }
    let mut words = words.into_iter();
    let first = words.next();
    match first.as_deref().and_then(std::ffi::OsStr::to_str) {
        Some("packet") => {
            let job = words.next().map(PathBuf::from);
            if job.is_none() && !demo {
                return Err("packet wants a job file, or --demo".to_owned());
            }
            let out = out.ok_or("packet wants --out and a folder")?;
            Ok(Asked::Packet {
                job: job.filter(|_| !demo),
                out,
            })
        }
        Some(word @ ("share" | "take" | "json")) => {
            let file: PathBuf = words
                .next()
                .ok_or(format!("{word} wants a job or a file"))?
                .into();
            let out = out.ok_or(format!("{word} wants --out and a new place"))?;
            Ok(match word {
                "share" => Asked::Share { job: file, out },
                "take" => Asked::Take { file, out },
                _ => Asked::Json { job: file, out },
            })
        }
        Some("recover") => {
            let job = words.next().ok_or("recover wants a job")?.into();
            let out = out.ok_or("recover wants --out and a new place")?;
            Ok(Asked::Recover { job, out })
        }
        Some("check") => words
            .next()
            .map(|job| Asked::Check(job.into()))
            .ok_or_else(|| "check wants a job file".to_owned()),
        _ => Ok(Asked::Window {
            job: first.map(PathBuf::from),
            demo,
        }),
    }
}

#[cfg(feature = "gui")]
fn data_folder() -> Result<PathBuf, String> {
    let named = std::env::var_os("STORYROD_DATA").map(PathBuf::from);
    named.or_else(store::data_folder).ok_or_else(|| {
        "this system names no folder for a program's data; name a job file".to_owned()
    })
}

fn check(path: &Path) -> Result<(), String> {
    let named = |why: store::OpenError| format!("{}: {why}", path.display());
    let found = store::check_job(path).map_err(named)?;
    if let Ok(snapshot) = store::open_job(path) {
        let job = &snapshot.job;
        say!(
            "{}: {} rooms, {} figures, {} lines on the roll, {} steps of undo.",
            job.name,
            job.rooms.len(),
            job.tasks.len(),
            job.roll.len(),
            snapshot.done.len()
        );
    }
    say!("Parts: {} whole, {} not.", found.whole, found.lost.len());
    for lost in &found.lost {
        say!("  not whole: {lost}");
    }
    say!(
        "Pictures: {} whole, {} not.",
        found.pictures,
        found.picture_faults.len()
    );
    for fault in &found.picture_faults {
        match fault {
            store::pictures::PictureFault::Damaged { name } => say!("  damaged: {name}"),
            store::pictures::PictureFault::Placed { name } => {
                say!("  says where it was taken: {name}");
            }
            store::pictures::PictureFault::Unreadable { name, why } => {
                say!("  unreadable: {name}: {why}");
            }
        }
    }
    let (open, all) = found.versions;
    say!("Earlier versions: {open} of {all} open.");
    match found.fault {
        Some(why) => Err(named(why)),
        None if !found.picture_faults.is_empty() => {
            Err(format!("{}: some pictures are not whole", path.display()))
        }
        None => {
            say!("{} is whole.", path.display());
            Ok(())
        }
    }
}

fn recover(path: &Path, out: &Path) -> Result<(), String> {
    let recovered =
        store::recover_job(path, out).map_err(|why| format!("{}: {why}", path.display()))?;
    say!(
        "{}: {} parts whole, {} from earlier versions, {} pictures.",
        out.display(),
        recovered.whole,
        recovered.earlier,
        recovered.pictures
    );
    for lost in &recovered.lost {
        say!("  lost: {lost}");
    }
    Ok(())
}

/// Writes a new file; one that is there is left as it is.
fn write_new(path: &Path, bytes: &[u8]) -> Result<(), String> {
    use std::io::Write;
    std::fs::File::create_new(path)
        .and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()))
        .map_err(|why| format!("{}: {why}", path.display()))
}

fn share(job: &Path, out: &Path) -> Result<(), String> {
    let shared =
        store::share::write_share(job).map_err(|why| format!("{}: {why}", job.display()))?;
    write_new(out, &shared.bytes)?;
    say!("{}: {} bytes.", out.display(), shared.bytes.len());
    match shared.left_out.len() {
        0 => Ok(()),
        n => Err(format!("{n} pictures are damaged and were left out")),
    }
}

fn json(job: &Path, out: &Path) -> Result<(), String> {
    let snapshot = store::open_job(job).map_err(|why| format!("{}: {why}", job.display()))?;
    let text = store::json::to_json(&snapshot).map_err(|why| why.to_string())?;
    write_new(out, text.as_bytes())?;
    say!("{}: {} bytes.", out.display(), text.len());
    Ok(())
}

/// A handed-over file or plain JSON as a new job.
fn take(file: &Path, out: &Path) -> Result<(), String> {
    let named = |why: String| format!("{}: {why}", file.display());
    if out.exists() {
        return Err(format!("{} is there already", out.display()));
    }
    let bytes = std::fs::read(file).map_err(|why| named(why.to_string()))?;
    let now = chrono::Local::now().fixed_offset();
    let mut writer = store::Writer::new_at(out);
    if bytes.first() == Some(&b'{') {
        let text = String::from_utf8(bytes).map_err(|why| named(why.to_string()))?;
        let snapshot = store::json::from_json(&text).map_err(|why| named(why.to_string()))?;
        writer.keep(&snapshot, now).map_err(|why| why.to_string())?;
    } else {
        let opened = store::share::read_share(&bytes).map_err(|why| named(why.to_string()))?;
        writer
            .keep(&opened.snapshot, now)
            .map_err(|why| why.to_string())?;
        drop(writer);
        store::share::keep_pictures(&opened, out).map_err(|why| why.to_string())?;
    }
    say!("{} is a job now.", out.display());
    Ok(())
}

fn packet(path: Option<&Path>, out: &Path) -> Result<(), String> {
    let job = match path {
        Some(path) => {
            let opened = store::open_job(path);
            let snapshot = opened.map_err(|why| format!("{}: {why}", path.display()))?;
            (*snapshot.job).clone()
        }
        None => app::demo_job(chrono::Local::now().fixed_offset()),
    };
    std::fs::create_dir_all(out).map_err(|why| format!("{}: {why}", out.display()))?;
    let files = app::App::new(job, app::Keeper::nowhere()).packet()?;
    for (name, bytes) in &files {
        std::fs::write(out.join(name), bytes).map_err(|why| format!("{name}: {why}"))?;
    }
    say!("{} files in {}", files.len(), out.display());
    Ok(())
}

#[cfg(feature = "gui")]
fn window(job: Option<&Path>, demo: bool) -> ExitCode {
    let app = match data_folder().and_then(|folder| app::start(&folder, job, demo)) {
        Ok(app) => app,
        Err(why) => {
            eprintln!("storyrod: {why}");
            return ExitCode::FAILURE;
        }
    };
    match storyrod::gui::run(app) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => {
            eprintln!(
                "storyrod: no display to open a window on; write the packet instead: storyrod packet --demo --out DIR"
            );
            ExitCode::from(2)
        }
    }
}

#[cfg(not(feature = "gui"))]
fn window(_: Option<&Path>, _: bool) -> ExitCode {
    eprintln!(
        "storyrod: built without its screens; write the packet instead: storyrod packet --demo --out DIR"
    );
    ExitCode::from(2)
}
