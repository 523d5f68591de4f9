//! A mark of a scene put on its sheet: lines, circles, arcs, dots and text in pixels.

use tiny_skia::{Path, PathBuilder, Rect};

use super::face;
use super::layout::{Canvas, Piece, Sheet};
use super::{Align, Line, Mark, Pen, Role, Stroke};

fn pen_line(pen: Pen, heft: f32) -> (Role, f32, Vec<f32>) {
    let width = match pen.stroke {
        Stroke::Hair => 1.0,
        Stroke::Thin => 1.5,
        Stroke::Medium => 2.5,
        Stroke::Heavy => 9.0 * heft,
    };
    let dash = match pen.line {
        Line::Solid => Vec::new(),
        Line::Dashed => vec![7.0, 5.0],
        Line::DashDot => vec![12.0, 4.0, 2.0, 4.0],
    };
    (pen.role, width, dash)
}

/// Adds a mark to the sheet, in pixels.
pub(super) fn draw_mark<T>(
    sheet: &mut Sheet<T>,
    mark: &Mark,
    canvas: &Canvas,
    heft: f32,
    clip: Option<Rect>,
) {
    let place = sheet.place;
    let mut shape = |path: Option<Path>, fill, pen: Option<Pen>| {
        if let Some(path) = path {
            sheet.pieces.push(Piece::Shape {
                path,
                fill,
                line: pen.map(|pen| pen_line(pen, heft)),
                clip,
            });
        }
    };
    match mark {
        Mark::Path {
            points,
            closed,
            pen,
            fill,
        } => {
            let mut path = PathBuilder::new();
            for (n, point) in points.iter().enumerate() {
                let (x, y) = place.of(*point);
                if n == 0 {
                    path.move_to(x, y);
                } else {
                    path.line_to(x, y);
                }
            }
            if *closed {
                path.close();
            }
            shape(path.finish(), *fill, *pen);
        }
        Mark::Circle {
            centre,
            radius,
            pen,
            fill,
        } => {
            let (x, y) = place.of(*centre);
            shape(
                PathBuilder::from_circle(x, y, (radius.metres() * place.scale) as f32),
                *fill,
                *pen,
            );
        }
        Mark::Arc {
            centre,
            radius,
            from,
            sweep,
            pen,
        } => {
            let mut path = PathBuilder::new();
            let r = radius.metres() * place.scale;
            let (cx, cy) = place.of(*centre);
            for n in 0..=32 {
                let angle =
                    (from.in_degrees() + sweep.in_degrees() * f64::from(n) / 32.0).to_radians();
                let (x, y) = (cx + (angle.cos() * r) as f32, cy + (angle.sin() * r) as f32);
                if n == 0 {
                    path.move_to(x, y);
                } else {
                    path.line_to(x, y);
                }
            }
            shape(path.finish(), None, Some(*pen));
        }
        Mark::Dot { at, role } => {
            let (x, y) = place.of(*at);
            shape(PathBuilder::from_circle(x, y, 3.2), Some(*role), None);
        }
        Mark::Text {
            at,
            text,
            role,
            align,
            bold,
            within,
        } => {
            let (x, y) = place.of(*at);
            let outside = |r: Rect| x < r.left() || x > r.right() || y < r.top() || y > r.bottom();
            if clip.is_some_and(outside) {
                return;
            }
            let size = 16.0 * canvas.text;
            let width = face::width(text, size, *bold);
            let room = within.map(|room| (room.metres() * place.scale) as f32);
            if room.is_some_and(|room| width > room) {
                return;
            }
            let x = match align {
                Align::Start => x,
                Align::Middle => x - width / 2.0,
                Align::End => x - width,
            };
            let x = x.clamp(2.0, (canvas.width - width - 2.0).max(2.0));
            // From the top of an ascender to the foot of a descender.
            let baseline = (y + size * 0.36).clamp(size, (canvas.height - size * 0.3).max(size));
            sheet.pieces.push(Piece::Text {
                text: text.clone(),
                at: (x, baseline),
                size,
                bold: *bold,
                role: *role,
                clip,
            });
        }
    }
}
