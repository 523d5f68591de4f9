//! The embedded face: widths and outlines, the same for screen, PNG and SVG.

use std::sync::OnceLock;

use tiny_skia::{Path, PathBuilder, Transform};
use ttf_parser::{Face, OutlineBuilder};

static REGULAR: &[u8] = include_bytes!("../../assets/fonts/StoryrodSans-Regular.ttf");
static BOLD: &[u8] = include_bytes!("../../assets/fonts/StoryrodSans-Bold.ttf");

fn face(bold: bool) -> &'static Face<'static> {
    static FACES: OnceLock<[Face<'static>; 2]> = OnceLock::new();
    let faces = FACES.get_or_init(|| {
        [REGULAR, BOLD].map(|bytes| {
            Face::parse(bytes, 0).expect("the embedded face is whole: a test reads it")
        })
    });
    &faces[usize::from(bold)]
}

/// How wide a line of text is set at a size, in the units of the size.
#[must_use]
pub fn width(text: &str, size: f32, bold: bool) -> f32 {
    let face = face(bold);
    let scale = size / f32::from(face.units_per_em());
    text.chars()
        .filter_map(|c| face.glyph_hor_advance(face.glyph_index(c)?))
        .map(|advance| f32::from(advance) * scale)
        .sum()
}

/// The outline of a line of text from its baseline's start at (`x`, `y`), `y` down; `None` where nothing is to be drawn.
#[must_use]
pub fn outline(text: &str, at: (f32, f32), size: f32, bold: bool) -> Option<Path> {
    struct Pen(PathBuilder);
    impl OutlineBuilder for Pen {
        fn move_to(&mut self, x: f32, y: f32) {
            self.0.move_to(x, y);
        }
        fn line_to(&mut self, x: f32, y: f32) {
            self.0.line_to(x, y);
        }
        fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
            self.0.quad_to(x1, y1, x, y);
        }
        fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
            self.0.cubic_to(x1, y1, x2, y2, x, y);
        }
        fn close(&mut self) {
            self.0.close();
        }
    }
    let face = face(bold);
    let scale = size / f32::from(face.units_per_em());
    let mut line = PathBuilder::new();
    let mut x = at.0;
    for c in text.chars() {
        let Some(glyph) = face.glyph_index(c) else {
            continue;
        };
        let mut pen = Pen(PathBuilder::new());
        face.outline_glyph(glyph, &mut pen);
        if let Some(path) = pen
            .0
            .finish()
            .and_then(|p| p.transform(Transform::from_row(scale, 0.0, 0.0, -scale, x, at.1)))
        {
            line.push_path(&path);
        }
        x += f32::from(face.glyph_hor_advance(glyph).unwrap_or(0)) * scale;
    }
    line.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::fraction_glyph;

    #[test]
    fn every_fraction_of_a_tape_has_its_glyph_in_both_faces() {
        for bold in [false, true] {
            for under in [2, 4, 8, 16, 32, 64] {
                for over in (1..under).step_by(2) {
                    assert!(
                        face(bold)
                            .glyph_index(fraction_glyph(over, under))
                            .is_some(),
                        "{over}/{under}"
                    );
                }
            }
        }
    }

    #[test]
    fn digits_are_all_as_wide_as_one_another() {
        assert_eq!(width("1111", 20.0, true), width("8888", 20.0, true));
        assert!(outline("7′ 4", (0.0, 0.0), 20.0, false).is_some());
        assert!(outline("", (0.0, 0.0), 20.0, false).is_none());
    }
}
