//! Dimensions on a sheet: their lines, and their figures where each finds room.

use tiny_skia::{Path, PathBuilder};

use super::face;
use super::layout::{Canvas, FINGER, Piece, Place};
use super::{Dimension, Edge, Role, Standing};

/// From one row of dimension lines to the next.
const ROW: f32 = 46.0;

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
        Edge::Across => (along, (along.1, -along.0), 0),
        Edge::Right(row) => (along, (-along.1, along.0), row),
    }
}

/// How far from what it measures a row of dimension lines stands.
fn reach(row: u8, canvas: &Canvas) -> f32 {
    if row == 0 {
        0.0
    } else {
        f32::from(row) * ROW * canvas.text - 8.0
    }
}

/// How large a figure's box is; on a small sheet it sits closer round its figure.
fn box_size<T>(dimension: &Dimension<T>, canvas: &Canvas) -> (f32, f32) {
    let snug = (canvas.width.min(canvas.height) / 420.0).clamp(0.7, 1.0);
    let width = face::width(&dimension.text, 18.0 * canvas.text, true);
    if dimension.standing == Standing::Ours {
        (width + 12.0 * snug, 28.0 * canvas.text)
    } else {
        (
            (width + 22.0 * snug).max(40.0 * snug),
            38.0 * snug * canvas.text,
        )
    }
}

/// A dimension on the sheet: its line, and where its figure would like to stand.
pub(super) struct Drawn {
    from: (f32, f32),
    to: (f32, f32),
    line: ((f32, f32), (f32, f32)),
    along: (f32, f32),
    out: (f32, f32),
    pub size: (f32, f32),
    pub wish: (f32, f32),
}

impl Drawn {
    /// How long its line is.
    pub fn long(&self) -> f32 {
        let (from, to) = self.line;
        (to.0 - from.0).hypot(to.1 - from.1)
    }
}

pub(super) fn measure_up<T>(dimension: &Dimension<T>, place: &Place, canvas: &Canvas) -> Drawn {
    let (along, out, row) = directions(dimension);
    let (from, to) = (place.of(dimension.from), place.of(dimension.to));
    let off = reach(row, canvas);
    let shift = |p: (f32, f32)| (p.0 + out.0 * off, p.1 + out.1 * off);
    let line = (shift(from), shift(to));
    let size = box_size(dimension, canvas);
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

/// How far a figure may be from its wish before a place elsewhere is looked for.
const NEAR: f32 = 360.0;

/// Whether two boxes keep so far apart.
fn apart(a: &[f32; 4], b: &[f32; 4], gap: f32) -> bool {
    a[0] + a[2] + gap <= b[0]
        || b[0] + b[2] + gap <= a[0]
        || a[1] + a[3] + gap <= b[1]
        || b[1] + b[3] + gap <= a[1]
}

/// The nearest place to the wish where the figure covers no other figure and, if that can be, no word: along its line
/// first, then to its sides, then wherever there is room.
pub(super) fn find_room(
    drawn: &Drawn,
    taken: &[[f32; 4]],
    words: &[[f32; 4]],
    canvas: &Canvas,
) -> [f32; 4] {
    let (w, h) = drawn.size;
    // A fingertip about the middle stays on the sheet as well.
    let keep = |middle: f32, side: f32, sheet: f32| {
        let half = (side / 2.0 + 1.0).max(FINGER / 2.0).min(sheet / 2.0);
        middle.clamp(half, sheet - half) - side / 2.0
    };
    let on_sheet = |x: f32, y: f32| [keep(x, w, canvas.width), keep(y, h, canvas.height), w, h];
    let clear = |b: &[f32; 4]| taken.iter().all(|t| apart(b, t, 3.0));
    let bare = |b: &[f32; 4]| words.iter().all(|t| apart(b, t, 1.0));
    let near = nearby(drawn).map(|(x, y)| on_sheet(x, y));
    let step = 6.0;
    let (columns, rows) = (canvas.width / step, canvas.height / step);
    let grid = (0..(columns * rows).max(0.0) as usize).map(|n| {
        let across = (columns as usize).max(1);
        on_sheet((n % across) as f32 * step, (n / across) as f32 * step)
    });
    let far = |b: &[f32; 4]| (b[0] + w / 2.0 - drawn.wish.0).hypot(b[1] + h / 2.0 - drawn.wish.1);
    let nearest = |keep: &dyn Fn(&[f32; 4]) -> bool| {
        grid.clone()
            .filter(|b| keep(b))
            .min_by(|a, b| far(a).total_cmp(&far(b)))
    };
    near.clone()
        .find(|b| clear(b) && bare(b))
        .or_else(|| nearest(&|b| clear(b) && bare(b)))
        .or_else(|| near.clone().find(clear))
        .or_else(|| nearest(&clear))
        .unwrap_or(on_sheet(drawn.wish.0, drawn.wish.1))
}

/// The place on its own line, the nearest to its middle, where a figure covers no other, no word and none of the other
/// lines, so that it is plain whose it is; `None` where there is none. It keeps off both ends, where other lines meet.
pub(super) fn on_its_line(
    drawn: &Drawn,
    (w, h): (f32, f32),
    taken: &[[f32; 4]],
    (words, others): (&[[f32; 4]], &[&Drawn]),
    canvas: &Canvas,
) -> Option<[f32; 4]> {
    let long = drawn.long();
    let most = long / 2.0 - (drawn.along.0.abs() * w + drawn.along.1.abs() * h) / 2.0 - ENDS;
    let steps = (0u16..).map(|step| f32::from(step) * 6.0);
    let places = steps.take_while(|by| *by <= most).flat_map(|by| [by, -by]);
    let boxes = places.map(|by| {
        let middle = (
            f32::midpoint(drawn.line.0.0, drawn.line.1.0) + drawn.along.0 * by,
            f32::midpoint(drawn.line.0.1, drawn.line.1.1) + drawn.along.1 * by,
        );
        [middle.0 - w / 2.0, middle.1 - h / 2.0, w, h]
    });
    let mut free = boxes.filter(|b| {
        b[0] >= 1.0
            && b[1] >= 1.0
            && b[0] + w < canvas.width
            && b[1] + h < canvas.height
            && taken.iter().all(|t| apart(b, t, 4.0))
            && words.iter().all(|t| apart(b, t, 2.0))
            && !others.iter().any(|other| crosses(other.line, b))
    });
    free.next()
}

/// Whether a line runs under a box.
fn crosses((from, to): ((f32, f32), (f32, f32)), [x, y, w, h]: &[f32; 4]) -> bool {
    (0u8..=100).any(|n| {
        let share = f32::from(n) / 100.0;
        let on = (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        );
        on.0 > *x && on.0 < x + w && on.1 > *y && on.1 < y + h
    })
}

/// Kept free at either end of a line across.
const ENDS: f32 = 14.0;

/// Places round the wish, the nearest first: along the line and out from it.
fn nearby(drawn: &Drawn) -> impl Iterator<Item = (f32, f32)> + Clone {
    let (along, out, wish) = (drawn.along, drawn.out, drawn.wish);
    let steps = (0u8..).map(|step| f32::from(step) * 6.0);
    steps
        .take_while(|by| *by < NEAR)
        .flat_map(|by| {
            [
                (by, 0.0),
                (-by, 0.0),
                (0.0, by),
                (0.0, -by),
                (by, by),
                (-by, by),
                (by, -by),
                (-by, -by),
            ]
        })
        .map(move |(by, off)| {
            (
                wish.0 + along.0 * by + out.0 * off,
                wish.1 + along.1 * by + out.1 * off,
            )
        })
}

/// A figure so far off its line still stands at it; further off it is led to, for another line may be as near.
const NEXT: f32 = 2.0;

/// From a figure that stands off its line to the line's middle.
fn leader(line: ((f32, f32), (f32, f32)), [x, y, w, h]: [f32; 4]) -> Option<Line> {
    let touches = (0u8..=32).any(|n| {
        let share = f32::from(n) / 32.0;
        let on = (
            line.0.0 + (line.1.0 - line.0.0) * share,
            line.0.1 + (line.1.1 - line.0.1) * share,
        );
        on.0 >= x - NEXT && on.0 <= x + w + NEXT && on.1 >= y - NEXT && on.1 <= y + h + NEXT
    });
    let middle = (
        f32::midpoint(line.0.0, line.1.0),
        f32::midpoint(line.0.1, line.1.1),
    );
    (!touches).then_some((middle, (x + w / 2.0, y + h / 2.0), 1.0, Vec::new()))
}

/// From, to, width and dashes.
type Line = ((f32, f32), (f32, f32), f32, Vec<f32>);

/// The extension lines and ticks, or an arrow where it begins beyond what is shown.
fn ends<T>(dimension: &Dimension<T>, drawn: &Drawn) -> Vec<Line> {
    let (a, b) = drawn.line;
    let mut lines = Vec::new();
    let ends = [(drawn.from, a, dimension.beyond), (drawn.to, b, false)];
    for (end, on, beyond) in ends {
        let shift = |along: f32, out: f32| {
            (
                on.0 + drawn.along.0 * along + drawn.out.0 * out,
                on.1 + drawn.along.1 * along + drawn.out.1 * out,
            )
        };
        if beyond {
            lines.push((shift(10.0, 5.0), on, 2.2, Vec::new()));
            lines.push((shift(10.0, -5.0), on, 2.2, Vec::new()));
            continue;
        }
        let long = (on.0 - end.0).hypot(on.1 - end.1);
        if long > 8.0 {
            let gap = |d: f32| (end.0 + drawn.out.0 * d, end.1 + drawn.out.1 * d);
            lines.push((gap(6.0), gap(long + 6.0), 1.0, Vec::new()));
        }
        lines.push((shift(-5.0, -5.0), shift(5.0, 5.0), 2.2, Vec::new()));
    }
    lines
}

/// The dimension line, its extension lines and ticks, and a leader where its figure stands elsewhere.
pub(super) fn draw_lines<T>(
    pieces: &mut Vec<Piece>,
    dimension: &Dimension<T>,
    drawn: &Drawn,
    at: &[f32; 4],
    lit: bool,
) {
    let pale = is_pale(at);
    let role = match dimension.standing {
        _ if pale => Role::Soft,
        Standing::Ours => Role::Ink,
        _ => Role::Chalk,
    };
    let dash = if matches!(dimension.standing, Standing::Estimate | Standing::Asked) {
        vec![6.0, 4.0]
    } else {
        Vec::new()
    };
    let width = match (lit, pale) {
        (true, _) => 3.0,
        (false, true) => 1.0,
        (false, false) => 1.5,
    };
    let (a, b) = drawn.line;
    let mut lines: Vec<Line> = vec![(a, b, width, dash)];
    if !pale {
        lines.extend(leader(drawn.line, *at));
        lines.extend(ends(dimension, drawn));
    }
    for (from, to, width, dash) in lines {
        let mut path = PathBuilder::new();
        path.move_to(from.0, from.1);
        path.line_to(to.0, to.1);
        if let Some(path) = path.finish() {
            pieces.push(Piece::Shape {
                path,
                fill: None,
                line: Some((role, width, dash)),
                clip: None,
            });
        }
    }
}

/// A line across that bears no figure has an empty box.
pub(super) fn is_pale([_, _, w, _]: &[f32; 4]) -> bool {
    *w == 0.0
}

/// The figure in its box.
pub(super) fn draw_box<T>(
    pieces: &mut Vec<Piece>,
    dimension: &Dimension<T>,
    [x, y, w, h]: [f32; 4],
    canvas: &Canvas,
    lit: bool,
) {
    if is_pale(&[x, y, w, h]) {
        return;
    }
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
        pieces.push(Piece::Shape {
            path,
            fill: Some(fill),
            line,
            clip: None,
        });
    }
    let size = 18.0 * canvas.text;
    let start = x + (w - face::width(&dimension.text, size, true)) / 2.0;
    pieces.push(Piece::Text {
        text: dimension.text.clone(),
        at: (start, y + h / 2.0 + size * 0.37),
        size,
        bold: true,
        role: text,
        clip: None,
    });
}

/// A rectangle with round corners.
pub(super) fn rounded(x: f32, y: f32, w: f32, h: f32, r: f32) -> Option<Path> {
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
