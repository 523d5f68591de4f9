//! The key of a sketch: what its colours mean, in a row or a few below it.

use tiny_skia::{PathBuilder, Rect};

use super::layout::{Canvas, Piece};
use super::{Pen, Role};
use super::{face, hatch};

/// What a colour or a line of a sketch means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Key {
    /// The fill that is told; none for a line.
    pub fill: Option<Role>,
    /// Its outline, or the line that is told.
    pub pen: Pen,
    /// What it means.
    pub says: String,
}

/// A swatch's side, and what stands between it, its word and the next, as shares of the word's size.
const SWATCH: f32 = 0.9;
const APART: f32 = 0.45;

/// The entries by rows, each with where it begins.
fn rows<'a>(key: &'a [Key], canvas: &Canvas) -> Vec<Vec<(f32, &'a Key)>> {
    let size = size(canvas);
    let mut rows: Vec<Vec<(f32, &Key)>> = Vec::new();
    let mut x = f32::MAX;
    for entry in key {
        let wide = size * (SWATCH + APART) + face::width(&entry.says, size, false);
        if x + wide > canvas.width - 8.0 {
            rows.push(Vec::new());
            x = 8.0;
        }
        if let Some(row) = rows.last_mut() {
            row.push((x, entry));
        }
        x += wide + size * APART * 2.0;
    }
    rows
}

fn size(canvas: &Canvas) -> f32 {
    14.0 * canvas.text.max(1.0).min(canvas.height / 200.0)
}

/// How much of a sheet the key takes at its foot.
pub(super) fn height(key: &[Key], canvas: &Canvas) -> f32 {
    let rows = rows(key, canvas).len();
    if rows == 0 {
        0.0
    } else {
        rows as f32 * size(canvas) * 1.35 + 4.0
    }
}

/// The hatching of a swatch, as the drawing has it.
fn hatching(entry: &Key, swatch: Option<Rect>) -> Option<Piece> {
    let (role, r) = (hatch::over(entry.fill)?, swatch?);
    let ring = vec![
        (r.left(), r.top()),
        (r.right(), r.top()),
        (r.right(), r.bottom()),
        (r.left(), r.bottom()),
    ];
    Some(Piece::Shape {
        path: hatch::lines(&[ring])?,
        fill: None,
        line: Some((role, 1.0, Vec::new())),
        clip: None,
    })
}

/// Draws the key at the foot of a sheet, and at its end how many numbers found no room.
pub(super) fn draw(pieces: &mut Vec<Piece>, key: &[Key], without: usize, canvas: &Canvas) {
    let mut key = key.to_vec();
    if without > 0 && !key.is_empty() {
        key.push(Key {
            fill: None,
            pen: Pen::solid(Role::Soft, super::Stroke::Hair),
            says: format!("{without} numbers: in the list"),
        });
    }
    let (rows, size) = (rows(&key, canvas), size(canvas));
    for (n, row) in rows.iter().enumerate() {
        let from_foot = (rows.len() - n) as f32 * size * 1.35;
        let middle = canvas.height - from_foot + size * 0.5;
        for (x, entry) in row {
            let side = size * SWATCH;
            let mut path = PathBuilder::new();
            let swatch = Rect::from_xywh(*x, middle - side / 2.0, side, side);
            if let (Some(_), Some(swatch)) = (entry.fill, swatch) {
                path.push_rect(swatch);
            } else {
                path.move_to(*x, middle);
                path.line_to(x + side, middle);
            }
            pieces.extend(path.finish().map(|path| Piece::Shape {
                path,
                fill: entry.fill,
                line: Some(super::ink::pen_line(entry.pen, 1.0)),
                clip: None,
            }));
            pieces.extend(hatching(entry, swatch));
            pieces.push(Piece::Text {
                text: entry.says.clone(),
                at: (x + side + size * APART, middle + size * 0.36),
                size,
                bold: false,
                role: Role::Soft,
                clip: None,
            });
        }
    }
}
