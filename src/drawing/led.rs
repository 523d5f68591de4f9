//! Numbers of what is too small to bear them: each stands near by, at the end of a line that leads to it.

use tiny_skia::{PathBuilder, Rect};

use super::face;
use super::layout::{Canvas, Piece, Place, word_box};
use super::{Fit, Mark, Role};

/// Most numbers that are led; more would be a thicket.
const MOST: usize = 120;
/// A led number's size, as a share of a word's.
const SHARE: f32 = 0.72;
/// How far off a number may stand, in its own sizes.
const OFF: [f32; 5] = [1.2, 1.7, 2.4, 3.3, 4.4];
/// Ways that are tried round a piece.
const WAYS: u8 = 16;

type Box4 = [f32; 4];

fn clash(a: &Box4, b: &Box4) -> bool {
    a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3]
}

/// Sets the numbers that found no room on their pieces; `bare` are the places of those marks in the scene. Gives how many
/// have no room near by either.
pub(super) fn lead(
    pieces: &mut Vec<Piece>,
    marks: &[Mark],
    bare: &[usize],
    (place, canvas): (&Place, &Canvas),
    clip: Option<Rect>,
) -> usize {
    let size = 16.0 * canvas.text * SHARE;
    let mut taken: Vec<Box4> = pieces.iter().filter_map(word_box).collect();
    let numbers: Vec<((f32, f32), &str, Role)> = (bare.iter().take(MOST))
        .filter_map(|n| match &marks[*n] {
            Mark::Text { at, text, role, .. } => Some((place.of(*at), text.as_str(), *role)),
            _ => None,
        })
        .collect();
    // None stands on another small piece.
    let spots: Vec<Box4> = (numbers.iter())
        .map(|((x, y), ..)| [x - 3.0, y - 3.0, 6.0, 6.0])
        .collect();
    let middle = (canvas.width / 2.0, canvas.height / 2.0);
    let mut without = bare.len() - numbers.len();
    for (n, (at, text, role)) in numbers.iter().enumerate() {
        let wide = face::width(text, size, false) + 4.0;
        let outward = (at.1 - middle.1).atan2(at.0 - middle.0);
        let boxes = OFF.iter().flat_map(|off| {
            (0..WAYS).map(move |way| {
                // Outward first, then to either side of that.
                let turn = f32::from(way.div_ceil(2)) * if way % 2 == 0 { 1.0 } else { -1.0 };
                let angle = outward + turn * std::f32::consts::TAU / f32::from(WAYS);
                let (x, y) = (
                    at.0 + angle.cos() * off * size,
                    at.1 + angle.sin() * off * size,
                );
                [x - wide / 2.0, y - size / 2.0, wide, size]
            })
        });
        let mut free = boxes.filter(|b| {
            b[0] >= 2.0
                && b[1] >= 2.0
                && b[0] + b[2] <= canvas.width - 2.0
                && b[1] + b[3] <= canvas.height - 2.0
                && !taken.iter().any(|other| clash(b, other))
                && !spots
                    .iter()
                    .enumerate()
                    .any(|(m, spot)| m != n && clash(b, spot))
        });
        let Some(found) = free.next() else {
            without += 1;
            continue;
        };
        taken.push(found);
        let near = (
            at.0.clamp(found[0], found[0] + found[2]),
            at.1.clamp(found[1], found[1] + found[3]),
        );
        let mut line = PathBuilder::new();
        line.move_to(at.0, at.1);
        line.line_to(near.0, near.1);
        line.push_circle(at.0, at.1, 1.4);
        pieces.extend(line.finish().map(|path| Piece::Shape {
            path,
            fill: None,
            line: Some((*role, 0.8, Vec::new())),
            clip,
        }));
        pieces.push(Piece::Text {
            text: (*text).to_owned(),
            at: (found[0] + 2.0, found[1] + size * 0.86),
            size,
            bold: false,
            role: *role,
            clip,
        });
    }
    without
}

/// Marks that want to be led and are drawn as nothing.
pub(super) fn is_led(mark: &Mark) -> bool {
    matches!(
        mark,
        Mark::Text {
            fit: Fit::Led(_),
            ..
        }
    )
}
