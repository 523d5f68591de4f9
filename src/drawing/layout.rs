//! A scene fitted to a sheet of so many pixels: what is drawn where, and what can be tapped.

use tiny_skia::{Path, PathBuilder, PathStroker, Rect};

use super::face;
use super::ink::draw_mark;
use super::{Dimension, Edge, Mark, Role, Scene, Standing};
use crate::geometry::Point;

/// The sheet that a scene is laid out for, in logical pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Canvas {
    /// Across.
    pub width: f32,
    /// Down.
    pub height: f32,
    /// Text size, 1 is as designed.
    pub text: f32,
    /// Kept clear all round.
    pub margin: f32,
}

/// A scene laid out: pieces in pixels, colours still by meaning.
#[derive(Clone, Debug)]
pub struct Sheet<T> {
    /// Across.
    pub width: f32,
    /// Down.
    pub height: f32,
    /// What is drawn, lowest first.
    pub pieces: Vec<Piece>,
    /// What can be tapped, the topmost last.
    pub hot: Vec<HotSpot<T>>,
    /// The boxes of the figures, in the order of the dimensions: x, y, width, height.
    pub boxes: Vec<[f32; 4]>,
    /// Pixels a metre, and where the origin of the scene lies.
    pub place: Place,
}

/// Where a scene lies on its sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Pixels a metre.
    pub scale: f64,
    /// The scene's origin on the sheet.
    pub origin: (f64, f64),
}

impl Place {
    /// A point of the scene on the sheet.
    #[must_use]
    pub fn of(&self, point: Point) -> (f32, f32) {
        (
            (self.origin.0 + point.x.metres() * self.scale) as f32,
            (self.origin.1 + point.y.metres() * self.scale) as f32,
        )
    }
}

/// One thing drawn on a sheet.
#[derive(Clone, Debug)]
pub enum Piece {
    /// A shape, filled, stroked or both.
    Shape {
        /// Its outline.
        path: Path,
        /// Its inside.
        fill: Option<Role>,
        /// Its line: colour, thickness, dashes.
        line: Option<(Role, f32, Vec<f32>)>,
        /// Cut off at the window.
        clip: Option<Rect>,
    },
    /// A line of text from the start of its baseline.
    Text {
        /// What it says, as set.
        text: String,
        /// Start of the baseline.
        at: (f32, f32),
        /// Its size.
        size: f32,
        /// Bold.
        bold: bool,
        /// Its colour.
        role: Role,
        /// Cut off at the window.
        clip: Option<Rect>,
    },
}

/// A place that can be tapped.
#[derive(Clone, Debug)]
pub struct HotSpot<T> {
    /// Left.
    pub x: f32,
    /// Top.
    pub y: f32,
    /// Across, at least 48.
    pub w: f32,
    /// Down, at least 48.
    pub h: f32,
    /// What a tap asks for.
    pub tag: T,
    /// What it is, in words.
    pub says: String,
}

/// The smallest side of what can be tapped.
const FINGER: f32 = 48.0;
/// From one row of dimension lines to the next.
const ROW: f32 = 46.0;

/// Lays a scene out; the dimension whose tag is `lit` stands out.
#[must_use]
pub fn lay_out<T: Clone + PartialEq>(
    scene: &Scene<T>,
    canvas: &Canvas,
    lit: Option<&T>,
) -> Sheet<T> {
    let place = fit(scene, canvas);
    let mut sheet = Sheet {
        width: canvas.width,
        height: canvas.height,
        pieces: Vec::new(),
        hot: Vec::new(),
        boxes: Vec::new(),
        place,
    };
    let clip = scene.window.and_then(|(min, max)| {
        let ((x0, y0), (x1, y1)) = (place.of(min), place.of(max));
        Rect::from_ltrb(x0.min(x1), y0.min(y1), x0.max(x1), y0.max(y1))
    });
    let heft = (canvas.width.min(canvas.height) / 480.0).clamp(0.55, 1.15);
    for mark in &scene.marks {
        draw_mark(&mut sheet, mark, canvas, heft, clip);
    }
    for hot in &scene.hot {
        let ((x0, y0), (x1, y1)) = (place.of(hot.min), place.of(hot.max));
        let spot = finger(
            [x0.min(x1), y0.min(y1), (x1 - x0).abs(), (y1 - y0).abs()],
            canvas,
        );
        sheet.hot.push(HotSpot {
            x: spot[0],
            y: spot[1],
            w: spot[2],
            h: spot[3],
            tag: hot.tag.clone(),
            says: hot.says.clone(),
        });
    }
    let drawn: Vec<Drawn> = scene
        .dimensions
        .iter()
        .map(|d| measure_up(d, &place, canvas))
        .collect();
    for (dimension, drawn) in scene.dimensions.iter().zip(&drawn) {
        draw_lines(
            &mut sheet,
            dimension,
            drawn,
            lit.is_some() && dimension.tag.as_ref() == lit,
        );
    }
    for (dimension, drawn) in scene.dimensions.iter().zip(&drawn) {
        let at = find_room(drawn, &sheet.boxes, canvas);
        sheet.boxes.push(at);
        draw_box(
            &mut sheet,
            dimension,
            at,
            canvas,
            lit.is_some() && dimension.tag.as_ref() == lit,
        );
        if let Some(tag) = &dimension.tag {
            let spot = finger(at, canvas);
            sheet.hot.push(HotSpot {
                x: spot[0],
                y: spot[1],
                w: spot[2],
                h: spot[3],
                tag: tag.clone(),
                says: dimension.says.clone(),
            });
        }
    }
    sheet
}

/// Grown to a fingertip about its middle, and kept on the canvas.
fn finger([x, y, w, h]: [f32; 4], canvas: &Canvas) -> [f32; 4] {
    let (wide, high) = (
        w.max(FINGER).min(canvas.width),
        h.max(FINGER).min(canvas.height),
    );
    let x = (x + w / 2.0 - wide / 2.0).clamp(0.0, canvas.width - wide);
    let y = (y + h / 2.0 - high / 2.0).clamp(0.0, canvas.height - high);
    [x, y, wide, high]
}

/// The unit vector from one end to the other on the sheet, and the one that points to the dimension's side.
fn directions<T>(dimension: &Dimension<T>) -> ((f32, f32), (f32, f32), u8) {
    let (dx, dy) = (
        (dimension.to.x - dimension.from.x).metres(),
        (dimension.to.y - dimension.from.y).metres(),
    );
    let length = dx.hypot(dy).max(1e-9);
    let along = ((dx / length) as f32, (dy / length) as f32);
    match dimension.edge {
        Edge::Left(row) => (along, (along.1, -along.0), row),
        Edge::Right(row) => (along, (-along.1, along.0), row),
    }
}

fn box_size<T>(dimension: &Dimension<T>, text: f32) -> (f32, f32) {
    let ours = dimension.standing == Standing::Ours;
    let width = face::width(&dimension.text, 18.0 * text, true);
    if ours {
        (width + 12.0, 28.0 * text)
    } else {
        ((width + 22.0).max(40.0), 38.0 * text)
    }
}

/// The scale and place at which the marks, the rows of dimensions and their figures all fit.
fn fit<T>(scene: &Scene<T>, canvas: &Canvas) -> Place {
    let (mut min, mut max) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
    let mut take = |x: f64, y: f64| {
        min = (min.0.min(x), min.1.min(y));
        max = (max.0.max(x), max.1.max(y));
    };
    if let Some((from, to)) = scene.window {
        take(from.x.metres(), from.y.metres());
        take(to.x.metres(), to.y.metres());
    } else {
        for mark in &scene.marks {
            match mark {
                Mark::Path { points, .. } => {
                    points.iter().for_each(|p| take(p.x.metres(), p.y.metres()));
                }
                Mark::Circle { centre, radius, .. } | Mark::Arc { centre, radius, .. } => {
                    take((centre.x - *radius).metres(), (centre.y - *radius).metres());
                    take((centre.x + *radius).metres(), (centre.y + *radius).metres());
                }
                Mark::Dot { at, .. } | Mark::Text { at, .. } => take(at.x.metres(), at.y.metres()),
            }
        }
        for d in &scene.dimensions {
            take(d.from.x.metres(), d.from.y.metres());
            take(d.to.x.metres(), d.to.y.metres());
        }
    }
    if min.0 > max.0 {
        return Place {
            scale: 1.0,
            origin: (
                f64::from(canvas.width) / 2.0,
                f64::from(canvas.height) / 2.0,
            ),
        };
    }
    let mut pad = [canvas.margin; 4]; // left, top, right, bottom
    for d in &scene.dimensions {
        let (_, out, row) = directions(d);
        if row == 0 {
            continue;
        }
        let (w, h) = box_size(d, canvas.text);
        let reach = f32::from(row) * ROW * canvas.text - 8.0;
        for (side, push, half) in [
            (0, -out.0, w / 2.0),
            (1, -out.1, h / 2.0),
            (2, out.0, w / 2.0),
            (3, out.1, h / 2.0),
        ] {
            if push > 0.3 {
                pad[side] = pad[side].max(push * reach + half + 4.0);
            }
        }
    }
    let room = |across: f32, a: f32, b: f32| f64::from((across - a - b).max(across * 0.3));
    let (wide, high) = (
        room(canvas.width, pad[0], pad[2]),
        room(canvas.height, pad[1], pad[3]),
    );
    let scale = (wide / (max.0 - min.0).max(1e-6)).min(high / (max.1 - min.1).max(1e-6));
    let (free_x, free_y) = (
        wide - (max.0 - min.0) * scale,
        high - (max.1 - min.1) * scale,
    );
    let squeeze = |a: f32, b: f32, across: f32| {
        f64::from(if a + b > across * 0.7 {
            a * across * 0.7 / (a + b)
        } else {
            a
        })
    };
    Place {
        scale,
        origin: (
            squeeze(pad[0], pad[2], canvas.width) + free_x / 2.0 - min.0 * scale,
            squeeze(pad[1], pad[3], canvas.height) + free_y / 2.0 - min.1 * scale,
        ),
    }
}

/// A dimension on the sheet: its line, and where its figure would like to stand.
struct Drawn {
    from: (f32, f32),
    to: (f32, f32),
    line: ((f32, f32), (f32, f32)),
    along: (f32, f32),
    out: (f32, f32),
    size: (f32, f32),
    wish: (f32, f32),
}

fn measure_up<T>(dimension: &Dimension<T>, place: &Place, canvas: &Canvas) -> Drawn {
    let (along, out, row) = directions(dimension);
    let (from, to) = (place.of(dimension.from), place.of(dimension.to));
    let off = if row == 0 {
        0.0
    } else {
        f32::from(row) * ROW * canvas.text - 8.0
    };
    let shift = |p: (f32, f32)| (p.0 + out.0 * off, p.1 + out.1 * off);
    let line = (shift(from), shift(to));
    let size = box_size(dimension, canvas.text);
    let long = (line.1.0 - line.0.0).hypot(line.1.1 - line.0.1);
    let needs = (along.0.abs() * size.0 + along.1.abs() * size.1) + 18.0;
    let aside = if long < needs {
        (out.0.abs() * size.0 + out.1.abs() * size.1) / 2.0 + 8.0
    } else {
        0.0
    };
    let wish = (
        (line.0.0 + line.1.0) / 2.0 + out.0 * aside,
        (line.0.1 + line.1.1) / 2.0 + out.1 * aside,
    );
    Drawn {
        from,
        to,
        line,
        along,
        out,
        size,
        wish,
    }
}

/// The nearest place to the wish where the figure covers no other figure.
fn find_room(drawn: &Drawn, taken: &[[f32; 4]], canvas: &Canvas) -> [f32; 4] {
    let (w, h) = drawn.size;
    let at = |dx: f32, dy: f32| {
        let x = (drawn.wish.0 + dx - w / 2.0).clamp(1.0, (canvas.width - w - 1.0).max(1.0));
        let y = (drawn.wish.1 + dy - h / 2.0).clamp(1.0, (canvas.height - h - 1.0).max(1.0));
        [x, y, w, h]
    };
    let clear = |b: &[f32; 4]| {
        taken.iter().all(|t| {
            b[0] + b[2] + 3.0 <= t[0]
                || t[0] + t[2] + 3.0 <= b[0]
                || b[1] + b[3] + 3.0 <= t[1]
                || t[1] + t[3] + 3.0 <= b[1]
        })
    };
    for step in 0u8..60 {
        let by = f32::from(step) * 6.0;
        for (along, out) in [
            (by, 0.0),
            (-by, 0.0),
            (0.0, by),
            (0.0, -by),
            (by, by),
            (-by, by),
            (by, -by),
            (-by, -by),
        ] {
            let b = at(
                drawn.along.0 * along + drawn.out.0 * out,
                drawn.along.1 * along + drawn.out.1 * out,
            );
            if clear(&b) {
                return b;
            }
        }
    }
    at(0.0, 0.0)
}

fn draw_lines<T>(sheet: &mut Sheet<T>, dimension: &Dimension<T>, drawn: &Drawn, lit: bool) {
    let role = if dimension.standing == Standing::Ours {
        Role::Ink
    } else {
        Role::Chalk
    };
    let dash = if matches!(dimension.standing, Standing::Estimate | Standing::Asked) {
        vec![6.0, 4.0]
    } else {
        Vec::new()
    };
    let width = if lit { 3.0 } else { 1.5 };
    let (a, b) = drawn.line;
    let mut lines = vec![(a, b, width, dash)];
    for (end, on) in [(drawn.from, a), (drawn.to, b)] {
        let long = (on.0 - end.0).hypot(on.1 - end.1);
        if long > 8.0 {
            let gap = |d: f32| (end.0 + drawn.out.0 * d, end.1 + drawn.out.1 * d);
            lines.push((gap(6.0), gap(long + 6.0), 1.0, Vec::new()));
        }
        let tick = (
            (drawn.along.0 + drawn.out.0) * 5.0,
            (drawn.along.1 + drawn.out.1) * 5.0,
        );
        lines.push((
            (on.0 - tick.0, on.1 - tick.1),
            (on.0 + tick.0, on.1 + tick.1),
            2.2,
            Vec::new(),
        ));
    }
    for (from, to, width, dash) in lines {
        let mut path = PathBuilder::new();
        path.move_to(from.0, from.1);
        path.line_to(to.0, to.1);
        if let Some(path) = path.finish() {
            sheet.pieces.push(Piece::Shape {
                path,
                fill: None,
                line: Some((role, width, dash)),
                clip: None,
            });
        }
    }
}

fn draw_box<T>(
    sheet: &mut Sheet<T>,
    dimension: &Dimension<T>,
    [x, y, w, h]: [f32; 4],
    canvas: &Canvas,
    lit: bool,
) {
    let (fill, line, text) = match dimension.standing {
        _ if lit => (
            Role::Chalk,
            Some((Role::Chalk, 2.0, Vec::new())),
            Role::Sheet,
        ),
        Standing::Yours => (
            Role::ChalkWash,
            Some((Role::Chalk, 1.3, Vec::new())),
            Role::Chalk,
        ),
        Standing::Ours => (Role::Sheet, None, Role::Ink),
        Standing::Estimate | Standing::Asked => (
            Role::Sheet,
            Some((Role::Chalk, 1.5, vec![5.0, 4.0])),
            Role::Chalk,
        ),
    };
    if let Some(path) = rounded(x, y, w, h, 6.0) {
        sheet.pieces.push(Piece::Shape {
            path,
            fill: Some(fill),
            line,
            clip: None,
        });
    }
    let size = 18.0 * canvas.text;
    let start = x + (w - face::width(&dimension.text, size, true)) / 2.0;
    sheet.pieces.push(Piece::Text {
        text: dimension.text.clone(),
        at: (start, y + h / 2.0 + size * 0.37),
        size,
        bold: true,
        role: text,
        clip: None,
    });
}

fn rounded(x: f32, y: f32, w: f32, h: f32, r: f32) -> Option<Path> {
    let r = r.min(w / 2.0).min(h / 2.0);
    let mut path = PathBuilder::new();
    path.move_to(x + r, y);
    path.line_to(x + w - r, y);
    path.quad_to(x + w, y, x + w, y + r);
    path.line_to(x + w, y + h - r);
    path.quad_to(x + w, y + h, x + w - r, y + h);
    path.line_to(x + r, y + h);
    path.quad_to(x, y + h, x, y + h - r);
    path.line_to(x, y + r);
    path.quad_to(x, y, x + r, y);
    path.close();
    path.finish()
}

/// Dashes a path, for painters that cannot.
#[must_use]
pub(super) fn dashed(path: &Path, dash: &[f32]) -> Option<Path> {
    let dash = tiny_skia::StrokeDash::new(dash.to_vec(), 0.0)?;
    path.dash(
        &dash,
        PathStroker::compute_resolution_scale(&tiny_skia::Transform::identity()),
    )
}
