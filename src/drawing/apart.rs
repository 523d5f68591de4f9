//! Words that would lie over each other: the later one goes to the nearest free place, at the end of a line.

use tiny_skia::PathBuilder;

use super::layout::{Canvas, Piece, word_box};

/// How far off a word may stand, in its own sizes.
const OFF: [f32; 7] = [0.9, 1.2, 1.6, 2.1, 2.8, 3.6, 4.6];
/// Ways that are tried round its place.
const WAYS: u8 = 16;
/// More words than this are numbers of pieces, which are led.
const MOST: usize = 200;

type Box4 = [f32; 4];

fn clash(a: &Box4, b: &Box4) -> bool {
    let gap = 1.5;
    a[0] < b[0] + b[2] + gap
        && b[0] < a[0] + a[2] + gap
        && a[1] < b[1] + b[3] + gap
        && b[1] < a[1] + a[3] + gap
}

/// Sets words apart; `free` are the pieces that may go elsewhere, in their order. One without a free place near by stays.
pub(super) fn set_apart(pieces: &mut Vec<Piece>, free: &[usize], canvas: &Canvas) {
    if free.len() > MOST {
        return;
    }
    let stays = pieces.iter().enumerate().filter(|(n, _)| !free.contains(n));
    let mut taken: Vec<Box4> = stays.filter_map(|(_, piece)| word_box(piece)).collect();
    let mut leaders = Vec::new();
    for n in free {
        let Some(at) = pieces.get(*n).and_then(word_box) else {
            continue;
        };
        let found = if taken.iter().any(|other| clash(&at, other)) {
            near(at, &taken, canvas)
        } else {
            None
        };
        let Some(found) = found else {
            taken.push(at);
            continue;
        };
        if let Some(Piece::Text {
            at: start,
            role,
            clip,
            ..
        }) = pieces.get_mut(*n)
        {
            *start = (start.0 + found[0] - at[0], start.1 + found[1] - at[1]);
            let middle = (at[0] + at[2] / 2.0, at[1] + at[3] / 2.0);
            let end = (
                middle.0.clamp(found[0], found[0] + found[2]),
                middle.1.clamp(found[1], found[1] + found[3]),
            );
            let mut line = PathBuilder::new();
            line.move_to(middle.0, middle.1);
            line.line_to(end.0, end.1);
            let line = line.finish().filter(|_| middle != end);
            leaders.extend(line.map(|path| Piece::Shape {
                path,
                fill: None,
                line: Some((*role, 0.8, Vec::new())),
                clip: *clip,
            }));
        }
        taken.push(found);
    }
    pieces.extend(leaders);
}

/// The nearest free box of the same size; away from the sheet's middle first.
fn near(at: Box4, taken: &[Box4], canvas: &Canvas) -> Option<Box4> {
    let [x, y, w, h] = at;
    let outward = (y + h / 2.0 - canvas.height / 2.0).atan2(x + w / 2.0 - canvas.width / 2.0);
    let boxes = OFF.iter().flat_map(|off| {
        (0..WAYS).map(move |way| {
            let turn = f32::from(way.div_ceil(2)) * if way % 2 == 0 { 1.0 } else { -1.0 };
            let angle = outward + turn * std::f32::consts::TAU / f32::from(WAYS);
            // A wide word goes further across than a letter.
            let across = angle.cos() * (off * h + (w - h).max(0.0) / 2.0);
            [x + across, y + angle.sin() * off * h, w, h]
        })
    });
    boxes.into_iter().find(|b| {
        b[0] >= 2.0
            && b[1] >= 2.0
            && b[0] + b[2] <= canvas.width - 2.0
            && b[1] + b[3] <= canvas.height - 4.0
            && !taken.iter().any(|other| clash(b, other))
    })
}
