//! A mark of a scene put on its sheet: lines, circles, arcs, dots and text in pixels.

use tiny_skia::{Path, PathBuilder, Rect};

use super::face;
use super::layout::{Canvas, Piece, Place};
use super::{Align, Fit, Line, Mark, Pen, Role, Stroke, hatch};
use crate::geometry::Point;
use crate::measure::{Angle, Length};

pub(super) fn pen_line(pen: Pen, heft: f32) -> (Role, f32, Vec<f32>) {
    let width = match pen.stroke {
        Stroke::Hair => 1.0,
        Stroke::Thin => 1.5,
        Stroke::Medium => 2.5,
        Stroke::Heavy => 9.0 * heft,
        Stroke::Gap => 9.0 * heft + 2.0,
    };
    let dash = match pen.line {
        Line::Solid => Vec::new(),
        Line::Dashed => vec![7.0, 5.0],
        Line::DashDot => vec![12.0, 4.0, 2.0, 4.0],
    };
    (pen.role, width, dash)
}

/// A line through points of the sheet.
fn through(points: impl Iterator<Item = (f32, f32)>, closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    add(&mut path, points, closed);
    path.finish()
}

fn add(path: &mut PathBuilder, points: impl Iterator<Item = (f32, f32)>, closed: bool) {
    for (n, (x, y)) in points.enumerate() {
        if n == 0 {
            path.move_to(x, y);
        } else {
            path.line_to(x, y);
        }
    }
    if closed {
        path.close();
    }
}

/// Points along an arc, its ends among them.
pub(super) fn arc(
    centre: Point,
    radius: Length,
    from: Angle,
    sweep: Angle,
) -> impl Iterator<Item = Point> {
    (0u8..=32).map(move |n| {
        let degrees = from.in_degrees() + sweep.in_degrees() * f64::from(n) / 32.0;
        let (sine, cosine) = degrees.to_radians().sin_cos();
        let part = |share: f64| Length::from_metres(radius.metres() * share).unwrap_or_default();
        centre + Point::new(part(cosine), part(sine))
    })
}

/// The outline of a mark on the sheet; `None` for a word and for nothing.
fn outline(mark: &Mark, place: &Place) -> Option<Path> {
    let long = |length: Length| (length.metres() * place.scale) as f32;
    match mark {
        Mark::Path { points, closed, .. } => {
            through(points.iter().map(|point| place.of(*point)), *closed)
        }
        Mark::Rings { rings, .. } => {
            let mut path = PathBuilder::new();
            for ring in rings {
                add(&mut path, ring.iter().map(|point| place.of(*point)), true);
            }
            path.finish()
        }
        Mark::Circle { centre, radius, .. } => {
            let (x, y) = place.of(*centre);
            PathBuilder::from_circle(x, y, long(*radius))
        }
        Mark::Arc {
            centre,
            radius,
            from,
            sweep,
            ..
        } => {
            let points = arc(*centre, *radius, *from, *sweep);
            through(points.map(|point| place.of(point)), false)
        }
        Mark::Dot { at, .. } => {
            let (x, y) = place.of(*at);
            PathBuilder::from_circle(x, y, 3.2)
        }
        Mark::Text { .. } => None,
    }
}

/// How small a word is set where room is short, as a share of its size.
const LEAST_SHRUNK: f32 = 0.6;

/// A word on the sheet, kept on it; `None` outside the window or where it has no room.
fn word(mark: &Mark, place: &Place, canvas: &Canvas, clip: Option<Rect>) -> Option<Piece> {
    let Mark::Text {
        at,
        text,
        role,
        align,
        bold,
        fit,
    } = mark
    else {
        return None;
    };
    let (x, y) = place.of(*at);
    let outside = |r: Rect| x < r.left() || x > r.right() || y < r.top() || y > r.bottom();
    let full = 16.0 * canvas.text;
    let wide = face::width(text, full, *bold);
    let pixels = |room: &Length| (room.metres() * place.scale) as f32;
    let shrunk = match fit {
        Fit::Always => 1.0,
        Fit::Whole(room) if wide > pixels(room) => return None,
        Fit::Whole(_) => 1.0,
        // A digit is higher than wide.
        Fit::Shrunk(room) | Fit::Led(room) => (pixels(room) / wide.max(full * 0.75)).min(1.0),
    };
    if clip.is_some_and(outside) || shrunk < LEAST_SHRUNK {
        return None;
    }
    let (size, width) = (full * shrunk, wide * shrunk);
    let x = match align {
        Align::Start => x,
        Align::Middle => x - width / 2.0,
        Align::End => x - width,
    };
    let x = x.clamp(2.0, (canvas.width - width - 2.0).max(2.0));
    // From the top of an ascender to the foot of a descender.
    let baseline = (y + size * 0.36).clamp(size, (canvas.height - size * 0.3).max(size));
    Some(Piece::Text {
        text: text.clone(),
        at: (x, baseline),
        size,
        bold: *bold,
        role: *role,
        clip,
    })
}

/// A mark on the sheet, in pixels; `None` where nothing of it is drawn.
pub(super) fn draw_mark(
    mark: &Mark,
    place: &Place,
    canvas: &Canvas,
    clip: Option<Rect>,
) -> Option<Piece> {
    let heft = (canvas.width.min(canvas.height) / 480.0).clamp(0.55, 1.15);
    let (fill, pen) = match mark {
        Mark::Path { fill, pen, .. }
        | Mark::Rings { fill, pen, .. }
        | Mark::Circle { fill, pen, .. } => (*fill, *pen),
        Mark::Arc { pen, .. } => (None, Some(*pen)),
        Mark::Dot { role, .. } => (Some(*role), None),
        Mark::Text { .. } => return word(mark, place, canvas, clip),
    };
    Some(Piece::Shape {
        path: outline(mark, place)?,
        fill,
        line: pen.map(|pen| pen_line(pen, heft)),
        clip,
    })
}

/// The hatching of a mark whose colour is not to be missed.
pub(super) fn hatched(mark: &Mark, place: &Place, clip: Option<Rect>) -> Option<Piece> {
    let Mark::Rings { rings, fill, .. } = mark else {
        return None;
    };
    let role = hatch::over(*fill)?;
    let on_sheet = |ring: &Vec<Point>| ring.iter().map(|point| place.of(*point)).collect();
    let rings: Vec<Vec<(f32, f32)>> = rings.iter().map(on_sheet).collect();
    Some(Piece::Shape {
        path: hatch::lines(&rings)?,
        fill: None,
        line: Some((role, 1.0, Vec::new())),
        clip,
    })
}
