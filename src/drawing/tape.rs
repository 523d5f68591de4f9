//! The picture of a tape measure on the length pad.

use tiny_skia::{FillRule, PathBuilder, Pixmap, Rect, Transform};

use super::pixels::{colour, ink};
use super::{Palette, Pixels, Role, face};
use crate::measure::Length;

/// Logical pixels to an inch of the tape, and to a centimetre of a metric one.
const PER_INCH: f32 = 62.0;
const PER_CENTIMETRE: f32 = 60.0;

/// How far a drag of so many logical pixels pulls the tape.
#[must_use]
pub fn length_of_drag(px: f32, metric: bool) -> Length {
    let metres = if metric {
        f64::from(px / PER_CENTIMETRE) / 100.0
    } else {
        f64::from(px / PER_INCH) * 0.0254
    };
    Length::from_metres(metres).unwrap_or(Length::ZERO)
}

/// The tape with `at` under the pointer in its middle.
#[must_use]
pub fn tape(
    at: Length,
    metric: bool,
    (width, height): (f32, f32),
    scale: f32,
    palette: &Palette,
) -> Pixels {
    let size = |side: f32| (side * scale).ceil().clamp(1.0, 8192.0) as u32;
    let Some(mut pixmap) = Pixmap::new(size(width), size(height)) else {
        return Pixels {
            width: 1,
            height: 1,
            rgba: vec![0; 4],
        };
    };
    let whole = Transform::from_scale(scale, scale);
    pixmap.fill(colour(palette.tape()));
    ruled(&mut pixmap, at, metric, (width, height), whole, palette);
    pointer(&mut pixmap, (width, height), whole, palette);
    Pixels {
        width: pixmap.width(),
        height: pixmap.height(),
        rgba: pixmap.take(),
    }
}

/// The marks and numbers.
fn ruled(
    pixmap: &mut Pixmap,
    at: Length,
    metric: bool,
    (width, height): (f32, f32),
    whole: Transform,
    palette: &Palette,
) {
    let (dark, red) = (
        ink(palette.colour(Role::Ink)),
        ink(palette.colour(Role::Red)),
    );
    // Marks: sixteenths of an inch, or millimetres; so many to a number.
    let (marks, per_mark, mark) = if metric {
        (10, PER_CENTIMETRE / 10.0, Length::mm(1))
    } else {
        (16, PER_INCH / 16.0, Length::in_64(0, 4))
    };
    let here = at.as_nm() as f64 / mark.as_nm() as f64;
    let reach = f64::from(width / per_mark) / 2.0 + 40.0;
    let first = (here - reach).floor().max(0.0) as i64;
    let last = (here + reach).ceil() as i64;
    for n in first..=last {
        let x = width / 2.0 + ((n as f64 - here) * f64::from(per_mark)) as f32;
        let share = tick_height(n.rem_euclid(marks), metric);
        let wide = if n % marks == 0 { 2.2 } else { 1.2 };
        if let Some(rect) = Rect::from_xywh(x - wide / 2.0, 0.0, wide, height * share) {
            pixmap.fill_path(
                &PathBuilder::from_rect(rect),
                &dark,
                FillRule::Winding,
                whole,
                None,
            );
        }
        if n % marks == 0 {
            let label = (n / marks).to_string();
            let foot = !metric && n > 0 && n % (12 * marks) == 0;
            if let Some(path) = face::outline(&label, (x + 5.0, height - 10.0), 22.0, true) {
                let ink = if foot { &red } else { &dark };
                pixmap.fill_path(&path, ink, FillRule::Winding, whole, None);
            }
        }
    }
}

/// The line and the arrow in the middle.
fn pointer(pixmap: &mut Pixmap, (width, height): (f32, f32), whole: Transform, palette: &Palette) {
    let red = ink(palette.colour(Role::Red));
    if let Some(line) = Rect::from_xywh(width / 2.0 - 1.5, 0.0, 3.0, height) {
        pixmap.fill_path(
            &PathBuilder::from_rect(line),
            &red,
            FillRule::Winding,
            whole,
            None,
        );
    }
    let mut arrow = PathBuilder::new();
    arrow.move_to(width / 2.0 - 10.0, 0.0);
    arrow.line_to(width / 2.0 + 10.0, 0.0);
    arrow.line_to(width / 2.0, 13.0);
    arrow.close();
    if let Some(arrow) = arrow.finish() {
        pixmap.fill_path(&arrow, &red, FillRule::Winding, whole, None);
    }
}

/// How far down a mark reaches.
fn tick_height(at: i64, metric: bool) -> f32 {
    match (metric, at) {
        (_, 0) => 0.62,
        (true, 5) | (false, 8) => 0.44,
        (true, _) => 0.26,
        (false, 4 | 12) => 0.34,
        (false, n) if n % 2 == 0 => 0.25,
        _ => 0.18,
    }
}
