//! Pictures of real encoders in each of the eight ways of EXIF, against what Pillow 13.0.0 shows of them;
//! `pillow_pictures.py` makes them.

use std::fs::File;
use std::io::{BufReader, Cursor};
use std::path::PathBuf;

use storyrod::photo::{Facts, Kind, decode, facts, strip};

fn path(name: &str) -> PathBuf {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/referee/pictures");
    PathBuf::from(folder).join(name)
}

/// A file, its size, and the colours of its blocks.
type Sheet = (String, (u32, u32), Vec<[u8; 3]>);

fn rows() -> Vec<Sheet> {
    let rows = include_str!("pillow_pictures.csv").lines().skip(1);
    let row = |row: &str| {
        let parts: Vec<&str> = row.split(',').collect();
        let colour = |hex: &str| {
            let part = |at: usize| u8::from_str_radix(&hex[at..at + 2], 16).unwrap();
            [part(0), part(2), part(4)]
        };
        let size = (parts[1].parse().unwrap(), parts[2].parse().unwrap());
        (
            parts[0].to_owned(),
            size,
            parts[3].split(' ').map(colour).collect(),
        )
    };
    rows.map(row).collect()
}

/// Colours may differ by the rounding of two decoders: 3 levels; of inks, by what a program takes them for: 24.
#[test]
fn every_picture_stands_upright_and_keeps_its_colours() {
    let rows = rows();
    assert_eq!(rows.len(), 15);
    for (name, size, colours) in rows {
        let mut file = File::open(path(&name)).unwrap();
        let (picture, _) = decode(&mut file, 2048).unwrap();
        assert_eq!((picture.width, picture.height), size, "{name}");
        assert_eq!(picture.original, size, "{name}");
        let most = if name == "inks.jpg" { 24 } else { 3 };
        for (n, colour) in colours.into_iter().enumerate() {
            let (x, y) = (n % 6 * 16 + 8, n / 6 * 16 + 8);
            let at = 3 * (y * size.0 as usize + x);
            let ours = &picture.rgb[at..at + 3];
            let off = ours.iter().zip(colour).map(|(a, b)| a.abs_diff(b)).max();
            assert!(
                off.unwrap() <= most,
                "{name} block {n}: {ours:?}, {colour:?}"
            );
        }
    }
}

fn read_facts(bytes: &[u8]) -> Facts {
    facts(&mut BufReader::new(Cursor::new(bytes)))
}

#[test]
fn what_the_camera_wrote_is_read() {
    for name in ["turned-6.jpg", "lying.png", "lying.webp"] {
        let facts = read_facts(&std::fs::read(path(name)).unwrap());
        assert_eq!(facts.turn.number(), 6, "{name}");
        let taken = facts.taken.unwrap();
        assert_eq!(taken.local.to_string(), "2026-03-14 15:09:26", "{name}");
        assert_eq!(taken.offset.unwrap().to_string(), "-05:00", "{name}");
        assert_eq!((facts.focal, facts.focal_35), (Some(4.25), Some(26.0)));
        assert!(facts.located, "{name}");
    }
}

/// Without its place the picture is the same to the last pixel, stands upright, and tells when but not where.
#[test]
fn a_stripped_picture_is_the_same_without_its_place() {
    for (name, ..) in rows() {
        let bytes = std::fs::read(path(&name)).unwrap();
        let mut file = Cursor::new(&bytes);
        let mut without = Vec::new();
        let plan = strip(&mut file).unwrap();
        plan.write(&mut file, &mut without).unwrap();
        assert_eq!(Kind::of(&without), Kind::of(&bytes));
        let (before, old) = decode(&mut Cursor::new(&bytes), 2048).unwrap();
        let (after, new) = decode(&mut Cursor::new(&without), 2048).unwrap();
        assert!(before == after, "{name}");
        assert_eq!(
            new,
            Facts {
                located: false,
                ..old
            },
            "{name}"
        );
        for word in ["A maker", "2026:03:14 15:09:26"] {
            let has = |bytes: &[u8]| bytes.windows(word.len()).any(|w| w == word.as_bytes());
            let kept = word != "A maker" && has(&bytes);
            assert_eq!(has(&without), kept, "{name}: {word}");
        }
        // Once more changes nothing, so that a copy of a copy bears the same name.
        let mut again = Vec::new();
        let plan = strip(&mut Cursor::new(&without)).unwrap();
        plan.write(&mut Cursor::new(&without), &mut again).unwrap();
        assert!(again == without, "{name}");
    }
}

/// Read by `image` as well, so that no reader of ours alone takes it.
#[test]
fn a_stripped_picture_opens_elsewhere() {
    for name in ["turned-6.jpg", "lying.png", "lying.webp", "progressive.jpg"] {
        let mut file = File::open(path(name)).unwrap();
        let mut without = Vec::new();
        let plan = strip(&mut file).unwrap();
        plan.write(&mut file, &mut without).unwrap();
        let there = image::load_from_memory(&std::fs::read(path(name)).unwrap()).unwrap();
        assert_eq!(image::load_from_memory(&without).unwrap(), there, "{name}");
    }
}
