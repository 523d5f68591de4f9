//! The house rules that a compiler does not keep: who may use whom, how long a file is, what is written down.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

use std::fs;
use std::path::{Path, PathBuf};

/// From left to right; `store` and `packet` stand side by side.
const ROOMS: [(&str, u8); 12] = [
    ("measure", 0),
    ("handbook", 1),
    ("geometry", 2),
    ("site", 3),
    ("photo", 4),
    ("trades", 5),
    ("takeoff", 6),
    ("drawing", 7),
    ("store", 8),
    ("packet", 8),
    ("app", 9),
    ("gui", 10),
];
/// `uom` rounds these to seven digits; the exact ones stand in `measure::quantity`.
const ROUNDED_UNITS: [&str; 17] = [
    "foot",
    "inch",
    "yard",
    "mile",
    "mil",
    "gallon",
    "quart_liquid",
    "pint_liquid",
    "fluid_ounce",
    "pound",
    "ounce",
    "square_foot",
    "square_inch",
    "square_yard",
    "cubic_foot",
    "cubic_inch",
    "degree_fahrenheit",
];
const VAGUE_FOLDERS: [&str; 5] = ["utils", "helpers", "common", "manager", "misc"];
/// Public calculations whose words stand elsewhere, each with the reason.
const WORDS_ELSEWHERE: [(&str, &str, &str); 0] = [];

/// One file of ours, its path as written from the root of the project.
struct Source {
    path: String,
    text: String,
}

impl Source {
    /// Its room, or the empty text for `lib.rs` and `main.rs`.
    fn room(&self) -> &str {
        self.path
            .strip_prefix("src/")
            .and_then(|rest| rest.split_once('/'))
            .map_or("", |(room, _)| room)
    }
    /// Its lines of code with their numbers, comments left out.
    fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        let lines = self.text.lines().enumerate();
        lines
            .map(|(at, line)| (at + 1, line.split("//").next().unwrap_or_default()))
            .filter(|(_, line)| !line.trim().is_empty())
    }
    fn fault(&self, line: usize, what: &str) -> String {
        format!("{}:{line}: {what}", self.path)
    }
}

fn files_under(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files_under(&path, found);
        } else {
            found.push(path);
        }
    }
}

fn sources(folder: &str, extension: &str) -> Vec<Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    files_under(&root.join(folder), &mut found);
    found.sort();
    let found = found
        .into_iter()
        .filter(|path| path.extension().is_some_and(|e| e == extension));
    found
        .map(|path| Source {
            path: path
                .strip_prefix(root)
                .unwrap()
                .to_str()
                .unwrap()
                .replace('\\', "/"),
            text: fs::read_to_string(&path).unwrap(),
        })
        .collect()
}

fn words(line: &str) -> impl Iterator<Item = &str> {
    line.split(|c: char| !c.is_alphanumeric() && c != '_')
        .filter(|word| !word.is_empty())
}

/// The names that stand directly after `before`, through one pair of braces.
fn names_after<'a>(code: &'a str, before: &str) -> Vec<&'a str> {
    let mut names = Vec::new();
    for (at, _) in code.match_indices(before) {
        let rest = &code[at + before.len()..];
        if let Some(inner) = rest.strip_prefix('{') {
            let (mut depth, mut start) = (0, 0);
            for (at, c) in inner.char_indices() {
                match c {
                    '{' => depth += 1,
                    '}' | ',' if depth == 0 => {
                        names.extend(words(&inner[start..at]).next());
                        start = at + 1;
                        if c == '}' {
                            break;
                        }
                    }
                    '}' => depth -= 1,
                    _ => {}
                }
            }
        } else {
            names.extend(words(rest).next());
        }
    }
    names
}

fn code_as_one(source: &Source) -> String {
    source
        .code()
        .map(|(_, line)| line)
        .collect::<Vec<_>>()
        .join("\n")
}

fn place(room: &str) -> Option<u8> {
    ROOMS
        .iter()
        .find(|(name, _)| *name == room)
        .map(|(_, at)| *at)
}

fn arrow(source: &Source) -> Vec<String> {
    let own = source.room();
    let Some(at) = place(own) else {
        return Vec::new();
    };
    let code = code_as_one(source);
    let used = names_after(&code, "crate::").into_iter();
    let against = used.filter(|room| *room != own && place(room).is_some_and(|other| other >= at));
    against
        .map(|room| source.fault(0, &format!("{own} uses {room}, which stands to its right")))
        .collect()
}

fn trades_apart(source: &Source, trades: &[String]) -> Vec<String> {
    if source.room() != "trades" {
        return Vec::new();
    }
    let own = source.path.split('/').nth(2).unwrap_or_default();
    let code = code_as_one(source);
    if !trades.iter().any(|trade| trade == own) {
        return Vec::new();
    }
    let mut used = names_after(&code, "crate::trades::");
    used.extend(names_after(&code, "super::super::"));
    let others = used
        .into_iter()
        .filter(|name| *name != own && trades.iter().any(|t| t == name));
    others
        .map(|name| source.fault(0, &format!("the trade {own} uses the trade {name}")))
        .collect()
}

fn kept_in(source: &Source, word: &str, room: &str) -> Vec<String> {
    if source.room() == room {
        return Vec::new();
    }
    let named = source
        .code()
        .filter(|(_, line)| words(line).any(|name| name == word));
    named
        .map(|(at, _)| source.fault(at, &format!("{word} is named outside src/{room}")))
        .collect()
}

fn rounded_units(source: &Source) -> Vec<String> {
    let named = source.code().filter(|(_, line)| {
        line.contains("si::") && words(line).any(|word| ROUNDED_UNITS.contains(&word))
    });
    named
        .map(|(at, _)| source.fault(at, "a unit that uom rounds; use measure::quantity"))
        .collect()
}

fn length_of_file(source: &Source, most: usize) -> Vec<String> {
    let lines = source.text.lines().count();
    let fault = (lines > most).then(|| source.fault(lines, &format!("more than {most} lines")));
    fault.into_iter().collect()
}

fn folders(source: &Source) -> Vec<String> {
    let vague = source
        .path
        .split(['/', '.'])
        .find(|part| VAGUE_FOLDERS.contains(part));
    vague
        .map(|part| source.fault(0, &format!("{part} says nothing of what is in it")))
        .into_iter()
        .collect()
}

/// Every public calculation of a trade says where it stands and shows an example.
fn calculations(source: &Source) -> Vec<String> {
    let lines: Vec<&str> = source.text.lines().collect();
    let mut faults = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let Some(name) = line.trim().strip_prefix("pub fn ") else {
            continue;
        };
        let end = lines[at..]
            .iter()
            .position(|line| line.contains('{'))
            .unwrap_or(0);
        let signature = lines[at..=at + end].join(" ");
        let gives = signature.split("->").nth(1).unwrap_or_default();
        if !signature.contains("&Ask") && !words(gives).any(|word| word == "Figure") {
            continue;
        }
        let above = lines[..at].iter().rev().map(|line| line.trim());
        let above: Vec<&str> = above
            .take_while(|line| line.starts_with("///") || line.starts_with("#["))
            .collect();
        let says = |heading: &str| above.iter().any(|line| line.starts_with(heading));
        let name = words(name).next().unwrap_or_default();
        let listed = WORDS_ELSEWHERE
            .iter()
            .any(|(path, of, why)| *path == source.path && *of == name && !why.is_empty());
        let told = ["/// # Source", "/// # Example", "/// ```"]
            .into_iter()
            .all(says);
        if !listed && !told {
            faults.push(source.fault(at + 1, &format!("{name} has no # Source or no # Example")));
        }
    }
    faults
}

#[track_caller]
fn none(faults: &[String]) {
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

fn every(check: impl Fn(&Source) -> Vec<String>) {
    let all = sources("src", "rs");
    assert!(all.len() > 40, "the walk found only {} files", all.len());
    none(&all.iter().flat_map(check).collect::<Vec<_>>());
}

fn trade_folders() -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/trades");
    let folders = fs::read_dir(root)
        .unwrap()
        .map(Result::unwrap)
        .filter(|entry| entry.path().is_dir());
    folders
        .map(|entry| entry.file_name().into_string().unwrap())
        .collect()
}

#[test]
fn no_room_uses_one_to_its_right() {
    every(arrow);
}
#[test]
fn no_trade_uses_another() {
    let trades = trade_folders();
    assert!(trades.len() >= 2);
    every(|source| trades_apart(source, &trades));
}
#[test]
fn the_file_format_and_the_screens_keep_to_their_rooms() {
    every(|source| kept_in(source, "serde", "store"));
    every(|source| kept_in(source, "slint", "gui"));
}
#[test]
fn no_unit_is_rounded() {
    every(rounded_units);
}
#[test]
fn files_are_short_and_folders_say_what_is_in_them() {
    every(|source| length_of_file(source, 600));
    every(folders);
    let screens = sources("ui", "slint");
    assert!(!screens.is_empty());
    none(
        &screens
            .iter()
            .flat_map(|source| length_of_file(source, 300))
            .collect::<Vec<_>>(),
    );
}
#[test]
fn every_calculation_says_where_it_stands() {
    every(|source| {
        if source.room() == "trades" {
            calculations(source)
        } else {
            Vec::new()
        }
    });
}
#[test]
fn the_readme_says_how_to_start_and_how_to_check() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let readme = fs::read_to_string(root.join("README.md")).unwrap();
    for command in ["cargo run --release", "cargo test"] {
        assert!(
            readme.contains(command),
            "README.md does not say `{command}`"
        );
    }
}
#[test]
fn every_typeface_has_its_licence_beside_it() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/fonts");
    let licence = fs::read_to_string(folder.join("OFL.txt")).unwrap();
    assert!(licence.contains("SIL OPEN FONT LICENSE Version 1.1"));
    let fonts = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    let fonts: Vec<PathBuf> = fonts
        .filter(|path| path.extension().is_some_and(|e| e == "ttf"))
        .collect();
    assert!(!fonts.is_empty());
    for font in fonts {
        let name = font.file_name().unwrap().to_str().unwrap();
        assert!(licence.contains(name), "OFL.txt does not name {name}");
    }
}

/// The checks find what they are for: each planted fault is seen, and its honest neighbour is not.
#[test]
fn a_planted_fault_is_found() {
    let source = |path: &str, text: &str| Source {
        path: path.to_owned(),
        text: text.to_owned(),
    };
    let trades = ["paint".to_owned(), "patch".to_owned()];
    let found = |faults: Vec<String>| faults.len();

    assert_eq!(
        found(arrow(&source(
            "src/site/room.rs",
            "use crate::trades::paint;"
        ))),
        1
    );
    assert_eq!(
        found(arrow(&source(
            "src/site/room.rs",
            "use crate::{measure::{Length, Units},\n app};"
        ))),
        1
    );
    assert_eq!(
        found(arrow(&source("src/store/mod.rs", "use crate::packet;"))),
        1
    );
    assert_eq!(
        found(arrow(&source(
            "src/app/mod.rs",
            "use crate::store; // crate::gui"
        ))),
        0
    );

    let patch = |text: &str| {
        found(trades_apart(
            &source("src/trades/patch/ask.rs", text),
            &trades,
        ))
    };
    assert_eq!(patch("use crate::trades::{Need, paint};"), 1);
    assert_eq!(patch("use super::super::paint::Coat;"), 1);
    assert_eq!(patch("use crate::trades::{Need, patch};"), 0);

    assert_eq!(
        found(kept_in(
            &source("src/site/room.rs", "#[derive(serde::Serialize)]"),
            "serde",
            "store"
        )),
        1
    );
    assert_eq!(
        found(kept_in(
            &source("src/store/mod.rs", "use serde::Serialize;"),
            "serde",
            "store"
        )),
        0
    );
    assert_eq!(
        found(rounded_units(&source(
            "src/site/room.rs",
            "use uom::si::length::foot;"
        ))),
        1
    );
    assert_eq!(
        found(rounded_units(&source(
            "src/site/room.rs",
            "use uom::si::length::meter;"
        ))),
        0
    );
    assert_eq!(
        found(length_of_file(
            &source("src/a/b.rs", &"x\n".repeat(601)),
            600
        )),
        1
    );
    assert_eq!(
        found(length_of_file(
            &source("src/a/b.rs", &"x\n".repeat(600)),
            600
        )),
        0
    );
    assert_eq!(found(folders(&source("src/utils/b.rs", ""))), 1);

    let bare = "/// A figure.\n#[must_use]\npub fn figure(\n    ask: &Ask,\n) -> Figure {";
    assert_eq!(
        found(calculations(&source("src/trades/patch/mod.rs", bare))),
        1
    );
    let told = "/// # Source\n/// Here.\n/// # Example\n/// ```\n/// ```\npub fn figure(ask: &Ask) -> Figure {";
    assert_eq!(
        found(calculations(&source("src/trades/patch/mod.rs", told))),
        0
    );
}
