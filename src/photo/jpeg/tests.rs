use super::*;
use jpeg_decoder::{ColorTransform, Decoder};

/// Pictures of a real encoder (`tests/referee/pillow_pictures.py`): colour at half the width and height of brightness, at
/// half its width with restarts, and as large.
const PICTURES: [(&str, &[u8]); 5] = [
    (
        "rough",
        include_bytes!("../../../tests/referee/pictures/rough.jpg"),
    ),
    (
        "restarts",
        include_bytes!("../../../tests/referee/pictures/restarts.jpg"),
    ),
    (
        "turned-1",
        include_bytes!("../../../tests/referee/pictures/turned-1.jpg"),
    ),
    (
        "turned-6",
        include_bytes!("../../../tests/referee/pictures/turned-6.jpg"),
    ),
    (
        "profiled",
        include_bytes!("../../../tests/referee/pictures/profiled.jpg"),
    ),
];

/// What the library makes of the planes, three bytes a pixel, colour drawn out to as many pixels as brightness.
fn by_library(bytes: &[u8], eighths: usize) -> (usize, Vec<u8>) {
    let mut decoder = Decoder::new(bytes);
    decoder.set_color_transform(ColorTransform::RGB);
    decoder.read_info().unwrap();
    let info = decoder.info().unwrap();
    let side = |full: u16| (usize::from(full) * eighths).div_ceil(8) as u16;
    let (wide, _) = decoder.scale(side(info.width), side(info.height)).unwrap();
    assert_eq!(wide, side(info.width));
    (usize::from(wide), decoder.decode().unwrap())
}

/// The bytes of a plane are the library's: brightness always, colour where it has as many pixels.
#[track_caller]
fn check(name: &str, bytes: &[u8], eighths: usize) {
    let planes = planes(bytes, eighths).unwrap_or_else(|| panic!("{name}: left to the library"));
    let (wide, rows) = by_library(bytes, eighths);
    let whole = planes
        .iter()
        .filter(|plane| plane.stride == planes[0].stride);
    for (n, plane) in whole.enumerate() {
        for (row, theirs) in rows.chunks(3 * wide).enumerate() {
            let ours = &plane.bytes[row * plane.stride..][..wide];
            let theirs: Vec<u8> = theirs.iter().skip(n).step_by(3).copied().collect();
            assert_eq!(ours, theirs, "{name}, {eighths}/8, plane {n}, row {row}");
        }
    }
}

#[test]
fn planes_are_those_of_the_library_bit_for_bit() {
    for (name, bytes) in PICTURES {
        for eighths in [1, 2, 4] {
            check(name, bytes, eighths);
        }
    }
}

#[test]
fn what_is_unusual_or_cut_short_is_left_to_the_library() {
    let (_, bytes) = PICTURES[1];
    assert!(planes(bytes, 3).is_none() && planes(bytes, 8).is_none());
    for name in ["grey", "inks", "progressive"] {
        let path = format!(
            "{}/tests/referee/pictures/{name}.jpg",
            env!("CARGO_MANIFEST_DIR")
        );
        assert!(
            planes(&std::fs::read(path).unwrap()[..], 4).is_none(),
            "{name}"
        );
    }
    let ends = (0..bytes.len() - 64)
        .step_by(61)
        .chain(bytes.len() - 64..bytes.len() - 1);
    for end in ends {
        assert!(planes(&bytes[..end], 4).is_none(), "cut at {end}");
    }
}

/// A bit of a file changed: whatever comes of it, ours is none or the same brightness as the library's.
#[test]
fn a_damaged_file_is_the_librarys_or_none() {
    let (_, bytes) = PICTURES[2];
    let mut changed = bytes.to_vec();
    let mut read = 0;
    for at in 0..bytes.len() {
        for bit in [0, 3, 7] {
            changed[at] ^= 1 << bit;
            if let Some([bright, ..]) = planes(&changed[..], 4) {
                read += 1;
                let (wide, rows) = by_library(&changed, 4);
                for (row, theirs) in rows.chunks(3 * wide).enumerate() {
                    let ours = &bright.bytes[row * bright.stride..][..wide];
                    let theirs: Vec<u8> = theirs.iter().step_by(3).copied().collect();
                    assert_eq!(ours, theirs, "byte {at}, bit {bit}");
                }
            }
            changed[at] ^= 1 << bit;
        }
    }
    assert!(read > 100, "{read}");
}
