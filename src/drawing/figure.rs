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
    if matches!(dimension.standing, Standing::Ours | Standing::Piece(_)) {
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
    pub line: (Spot, Spot),
    along: (f32, f32),
    out: (f32, f32),
    pub size: (f32, f32),
    pub wish: (f32, f32),
    /// It has no line of its own: its figure is led to what it measures.
    led: bool,
}

impl Drawn {
    /// The middle of its line.
    fn middle(&self) -> Spot {
        let (from, to) = self.line;
        (f32::midpoint(from.0, to.0), f32::midpoint(from.1, to.1))
    }
    /// Whether its line lies across one of these, not counting what it measures itself.
    fn lies_across(&self, bare: &[(Spot, Spot)]) -> bool {
        let own = (self.from, self.to);
        (bare.iter()).any(|line| !within(own, *line) && meet(self.line, *line))
    }
    /// With a figure of another size, led to the line's middle.
    pub fn led(&self, size: (f32, f32)) -> Drawn {
        Drawn {
            size,
            led: true,
            wish: self.middle(),
            ..*self
        }
    }
    /// How long its line is.
    pub fn long(&self) -> f32 {
        let (from, to) = self.line;
        (to.0 - from.0).hypot(to.1 - from.1)
    }
}

pub(super) fn measure_up<T>(dimension: &Dimension<T>, place: &Place, canvas: &Canvas) -> Drawn {
    measured(dimension, directions(dimension), place, canvas)
}

/// The same where its line may not lie across others: on the other side then, and where it would there too, without a
/// line, its figure led to what it measures.
pub(super) fn measure_beside<T>(
    dimension: &Dimension<T>,
    bare: &[(Spot, Spot)],
    place: &Place,
    canvas: &Canvas,
) -> Drawn {
    let (along, out, row) = directions(dimension);
    let sides = [out, (-out.0, -out.1)];
    let drawn = sides.map(|out| measured(dimension, (along, out, row), place, canvas));
    let on = Drawn {
        led: true,
        ..measured(dimension, (along, out, 0), place, canvas)
    };
    let beside = drawn.into_iter().find(|drawn| !drawn.lies_across(bare));
    beside.unwrap_or(on)
}

fn measured<T>(
    dimension: &Dimension<T>,
    (along, out, row): (Spot, Spot, u8),
    place: &Place,
    canvas: &Canvas,
) -> Drawn {
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
        led: false,
    }
}

/// How far off what it measures a piece's figure is led.
const LED: f32 = 110.0;

/// How far a figure may be from its wish before a place elsewhere is looked for.
const NEAR: f32 = 360.0;

/// Whether two boxes keep so far apart.
fn apart(a: &[f32; 4], b: &[f32; 4], gap: f32) -> bool {
    a[0] + a[2] + gap <= b[0]
        || b[0] + b[2] + gap <= a[0]
        || a[1] + a[3] + gap <= b[1]
        || b[1] + b[3] + gap <= a[1]
}

/// What a figure keeps clear of.
pub(super) struct Crowd<'a> {
    /// Other figures: never covered as long as there is room on the sheet.
    pub taken: &'a [[f32; 4]],
    /// Words, and lines that would take the figure for theirs.
    pub words: &'a [[f32; 4]],
    pub bare: &'a [(Spot, Spot)],
}

/// A point of the sheet.
pub(super) type Spot = (f32, f32);

/// How far a figure keeps from a line that it may not hide.
const OFF_LINE: f32 = 3.0;

impl Crowd<'_> {
    /// Whether a box covers no figure.
    fn clear(&self, at: &[f32; 4]) -> bool {
        self.taken.iter().all(|other| apart(at, other, 3.0))
    }
    /// Whether it covers no word and no line but its own.
    fn bare(&self, at: &[f32; 4], own: Option<(Spot, Spot)>) -> bool {
        self.words.iter().all(|word| apart(at, word, 1.0))
            && (self.bare.iter()).all(|line| {
                own.is_some_and(|own| within(own, *line)) || !crosses(at, *line, OFF_LINE)
            })
    }
    /// Whether the way from a box to what it measures lies across no other line and under no other figure.
    fn leads(&self, at: &[f32; 4], drawn: &Drawn) -> bool {
        let to = drawn.middle();
        let way = ((at[0] + at[2] / 2.0, at[1] + at[3] / 2.0), to);
        let ends = |other: &[f32; 4]| crosses(other, (to, to), 0.0);
        (self.bare.iter()).all(|line| within(drawn.line, *line) || !meet(way, *line))
            && (self.taken.iter()).all(|other| ends(other) || !crosses(other, way, 2.0))
    }
}

/// Whether a line lies along another one, which is as long or longer.
fn within(of: (Spot, Spot), line: (Spot, Spot)) -> bool {
    let along = (line.1.0 - line.0.0, line.1.1 - line.0.1);
    let long = along.0.hypot(along.1).max(1e-6);
    [of.0, of.1].into_iter().all(|p| {
        let (x, y) = (p.0 - line.0.0, p.1 - line.0.1);
        let share = (x * along.0 + y * along.1) / (long * long);
        (along.0 * y - along.1 * x).abs() / long < 1.5 && (-0.05..=1.05).contains(&share)
    })
}

/// Whether two lines meet.
fn meet((a, b): (Spot, Spot), (c, d): (Spot, Spot)) -> bool {
    let side = |from: Spot, to: Spot, p: Spot| {
        (to.0 - from.0) * (p.1 - from.1) - (to.1 - from.1) * (p.0 - from.0)
    };
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Whether a line comes into a box, grown by so much.
fn crosses([x, y, w, h]: &[f32; 4], (from, to): (Spot, Spot), by: f32) -> bool {
    // What is left of the line between each pair of sides.
    let (mut enters, mut leaves) = (0.0_f32, 1.0_f32);
    let sides = [
        (from.0, to.0 - from.0, x - by, x + w + by),
        (from.1, to.1 - from.1, y - by, y + h + by),
    ];
    for (start, way, least, most) in sides {
        if way.abs() < 1e-6 {
            if start < least || start > most {
                return false;
            }
            continue;
        }
        let (a, b) = ((least - start) / way, (most - start) / way);
        enters = enters.max(a.min(b));
        leaves = leaves.min(a.max(b));
    }
    enters <= leaves
}

/// Where a box stands wholly on its own line, the nearest to its middle, and hides nothing, so that it is plain whose it is;
/// it keeps so far off both ends, where other lines meet.
pub(super) fn on_its_line(
    drawn: &Drawn,
    size: (f32, f32),
    ends: f32,
    crowd: &Crowd,
    canvas: &Canvas,
) -> Option<[f32; 4]> {
    let ((w, h), middle, along) = (size, drawn.middle(), drawn.along);
    // Where the line leaves the box: at the side that it comes to first.
    let half = (w / 2.0 / along.0.abs().max(1e-6)).min(h / 2.0 / along.1.abs().max(1e-6));
    let free = drawn.long() / 2.0 - half - ends;
    let steps = (0u16..).map(|n| f32::from(n.div_ceil(2)) * if n % 2 == 0 { -3.0 } else { 3.0 });
    let mut spots = steps.take_while(|by| by.abs() <= free).map(|by| {
        let (x, y) = (middle.0 + along.0 * by, middle.1 + along.1 * by);
        [x - w / 2.0, y - h / 2.0, w, h]
    });
    let on_sheet = |[x, y, w, h]: &[f32; 4]| {
        *x >= 1.0 && *y >= 1.0 && x + w < canvas.width && y + h < canvas.height
    };
    spots.find(|at| on_sheet(at) && crowd.clear(at) && crowd.bare(at, Some(drawn.line)))
}

/// How large the ring round a number is.
pub(super) fn ring(number: u32, canvas: &Canvas) -> (f32, f32) {
    let wide = face::width(&number.to_string(), RINGED * canvas.text, true);
    let side = (wide + 8.0).max(24.0 * canvas.text);
    (side, side)
}

/// The size of a number in its ring.
const RINGED: f32 = 15.0;

/// The nearest place to the wish where the figure covers no other figure and, if that can be, no word and no line that
/// has to be seen: along its line first, then to its sides, then wherever there is room.
pub(super) fn find_room(drawn: &Drawn, crowd: &Crowd, canvas: &Canvas) -> [f32; 4] {
    room(drawn, crowd, canvas, false).unwrap_or_default()
}

/// The same where there is a place that covers nothing at all and, for a figure that is led, whose way there is free.
pub(super) fn free_room(drawn: &Drawn, crowd: &Crowd, canvas: &Canvas) -> Option<[f32; 4]> {
    room(drawn, crowd, canvas, true)
}

fn room(drawn: &Drawn, crowd: &Crowd, canvas: &Canvas, free: bool) -> Option<[f32; 4]> {
    let (w, h) = drawn.size;
    // A fingertip about the middle stays on the sheet as well.
    let keep = |middle: f32, side: f32, sheet: f32| {
        let half = (side / 2.0 + 1.0).max(FINGER / 2.0).min(sheet / 2.0);
        middle.clamp(half, sheet - half) - side / 2.0
    };
    let on_sheet = |x: f32, y: f32| [keep(x, w, canvas.width), keep(y, h, canvas.height), w, h];
    let clear = |b: &[f32; 4]| crowd.clear(b);
    let bare = |b: &[f32; 4]| crowd.bare(b, None);
    let best = |b: &[f32; 4]| clear(b) && bare(b) && (!drawn.led || crowd.leads(b, drawn));
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
    let found = near.clone().find(best).or_else(|| nearest(&best));
    if free {
        return found.filter(|b| far(b) < LED);
    }
    let found = found
        .or_else(|| nearest(&|b| clear(b) && bare(b)))
        .or_else(|| near.clone().find(clear))
        .or_else(|| nearest(&clear))
        .unwrap_or(on_sheet(drawn.wish.0, drawn.wish.1));
    Some(found)
}

/// Kept free at either end of a line across, where others meet it.
pub(super) const ENDS: f32 = 14.0;

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
fn leader(drawn: &Drawn, [x, y, w, h]: [f32; 4]) -> Option<Line> {
    let line = drawn.line;
    let touches = (0u8..=32).any(|n| {
        let share = f32::from(n) / 32.0;
        let on = (
            line.0.0 + (line.1.0 - line.0.0) * share,
            line.0.1 + (line.1.1 - line.0.1) * share,
        );
        on.0 >= x - NEXT && on.0 <= x + w + NEXT && on.1 >= y - NEXT && on.1 <= y + h + NEXT
    });
    (!touches).then_some((drawn.middle(), (x + w / 2.0, y + h / 2.0), 1.0, Vec::new()))
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
        Standing::Ours | Standing::Piece(_) => Role::Ink,
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
    let mut lines: Vec<Line> = Vec::new();
    if !drawn.led {
        lines.push((a, b, width, dash));
    }
    if !pale {
        lines.extend(leader(drawn, *at));
    }
    if !pale && !drawn.led {
        lines.extend(ends(dimension, drawn));
    }
    if drawn.led {
        let mut dot = PathBuilder::new();
        let (x, y) = drawn.middle();
        dot.push_circle(x, y, 3.5);
        pieces.extend(dot.finish().map(|path| Piece::Shape {
            path,
            fill: Some(role),
            line: None,
            clip: None,
        }));
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

/// A piece's number in its ring.
pub(super) fn draw_ring(pieces: &mut Vec<Piece>, number: u32, [x, y, w, h]: [f32; 4], text: f32) {
    let mut round = PathBuilder::new();
    round.push_circle(x + w / 2.0, y + h / 2.0, w.min(h) / 2.0);
    if let Some(path) = round.finish() {
        pieces.push(Piece::Shape {
            path,
            fill: Some(Role::Sheet),
            line: Some((Role::Ink, 1.5, Vec::new())),
            clip: None,
        });
    }
    let (number, size) = (number.to_string(), RINGED * text);
    let start = x + (w - face::width(&number, size, true)) / 2.0;
    pieces.push(Piece::Text {
        text: number,
        at: (start, y + h / 2.0 + size * 0.36),
        size,
        bold: true,
        role: Role::Ink,
        clip: None,
    });
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
        Standing::Ours | Standing::Piece(_) => (Role::Sheet, None, Role::Ink),
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
