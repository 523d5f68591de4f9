//! A scene fitted to a sheet of so many pixels: what is drawn where, and what can be tapped.

use tiny_skia::{Path, PathStroker, Rect};

use super::face;
use super::figure::{
    Crowd, Drawn, ENDS, draw_box, draw_lines, draw_ring, find_room, free_room, measure_beside,
    measure_up, on_its_line, ring,
};
use super::ink::{arc, draw_mark, hatched};
use super::{Dimension, Edge, Fit, Mark, Role, Scene, Standing, apart, key, led};
use crate::geometry::Point;
use crate::measure::Length;

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
    /// So many pixels of the sheet on the scene.
    #[must_use]
    pub fn long(&self, pixels: f32) -> Length {
        Length::from_metres(f64::from(pixels) / self.scale).unwrap_or_default()
    }
    /// A place of the sheet on the scene.
    #[must_use]
    pub fn back(&self, (x, y): (f32, f32)) -> Point {
        let metres = |at: f32, origin: f64| {
            Length::from_metres((f64::from(at) - origin) / self.scale).unwrap_or_default()
        };
        Point::new(metres(x, self.origin.0), metres(y, self.origin.1))
    }
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
    /// Across, at least 48 unless another is closer.
    pub w: f32,
    /// Down, likewise.
    pub h: f32,
    /// What a tap asks for.
    pub tag: T,
    /// What it is, in words.
    pub says: String,
}

/// The smallest side of what can be tapped.
pub(super) const FINGER: f32 = 48.0;

/// Lays a scene out; the dimension whose tag is `lit` stands out.
#[must_use]
pub fn lay_out<T: Clone + PartialEq>(
    scene: &Scene<T>,
    canvas: &Canvas,
    lit: Option<&T>,
) -> Sheet<T> {
    lay_out_at(scene, canvas, lit, fit(scene, &above_key(scene, canvas)))
}

/// The sheet less what its key takes at the foot.
fn above_key<T>(scene: &Scene<T>, canvas: &Canvas) -> Canvas {
    Canvas {
        height: canvas.height - key::height(&scene.key, canvas),
        ..*canvas
    }
}

/// The same where a scene is held, so that it neither moves nor grows while a finger slides a part of it.
#[must_use]
pub fn lay_out_at<T: Clone + PartialEq>(
    scene: &Scene<T>,
    canvas: &Canvas,
    lit: Option<&T>,
    place: Place,
) -> Sheet<T> {
    let mut sheet = Sheet {
        width: canvas.width,
        height: canvas.height,
        pieces: Vec::new(),
        hot: Vec::new(),
        boxes: Vec::new(),
        place,
    };
    let clip = scene.window.and_then(|(min, max)| {
        let [x, y, w, h] = between(place.of(min), place.of(max));
        Rect::from_xywh(x, y, w, h)
    });
    let (whole, canvas) = (canvas, &above_key(scene, canvas));
    let (mut bare, mut free) = (Vec::new(), Vec::new());
    for (n, mark) in scene.marks.iter().enumerate() {
        match draw_mark(mark, &place, canvas, clip) {
            Some(piece) => {
                let always = matches!(
                    mark,
                    Mark::Text {
                        fit: Fit::Always,
                        ..
                    }
                );
                free.extend(always.then_some(sheet.pieces.len()));
                sheet.pieces.push(piece);
                sheet.pieces.extend(hatched(mark, &place, clip));
            }
            None if led::is_led(mark) => bare.push(n),
            None => {}
        }
    }
    apart::set_apart(&mut sheet.pieces, &free, canvas);
    let marks = &scene.marks;
    let without = led::lead(&mut sheet.pieces, marks, &bare, (&place, canvas), clip);
    key::draw(&mut sheet.pieces, &scene.key, without, whole);
    for hot in &scene.hot {
        let at = between(place.of(hot.min), place.of(hot.max));
        sheet.hot.push(spot(at, canvas, &hot.tag, &hot.says));
    }
    figures(&mut sheet, scene, canvas, lit);
    share(&mut sheet.hot, canvas);
    sheet
}

/// Where a fingertip would cover the middle of one under it, as in a small notch, it moves off to end half way to it: each is
/// hit by a tap on its own middle. Where it would cover a third one there, it is cut off at that half instead.
fn share<T: PartialEq>(hot: &mut [HotSpot<T>], canvas: &Canvas) {
    let small = |spot: &HotSpot<T>| spot.w <= FINGER + 1.0 || spot.h <= FINGER + 1.0;
    let middles: Vec<(f32, f32)> = (hot.iter())
        .map(|spot| (spot.x + spot.w / 2.0, spot.y + spot.h / 2.0))
        .collect();
    let inside =
        |[x, y, w, h]: [f32; 4], (px, py): (f32, f32)| px > x && px < x + w && py > y && py < y + h;
    for top in 1..hot.len() {
        for under in 0..top {
            let one = hot[top].tag == hot[under].tag;
            if one || !small(&hot[top]) || !small(&hot[under]) {
                continue;
            }
            let (own, to) = (middles[top], middles[under]);
            let now = [hot[top].x, hot[top].y, hot[top].w, hot[top].h];
            let (dx, dy) = (to.0 - own.0, to.1 - own.1);
            // Two at one place cannot be told apart.
            if !inside(now, to) || dx.abs().max(dy.abs()) < APART {
                continue;
            }
            // Which way it goes: 0 across, 1 down.
            let way = usize::from(dx.abs() < dy.abs());
            let (to, own) = ([to.0, to.1][way], [own.0, own.1][way]);
            let sheet = [canvas.width, canvas.height][way];
            let (start, long, edge) = (now[way], now[way + 2], f32::midpoint(to, own));
            let mut moved = now;
            moved[way] = if to > own {
                start.min(edge - long).max(0.0)
            } else {
                start.max(edge).min(sheet - long)
            };
            let newly = |middle: &(f32, f32)| inside(moved, *middle) && !inside(now, *middle);
            let clears = !inside(moved, middles[under]) && inside(moved, middles[top]);
            if !clears || middles[..top].iter().any(newly) {
                moved = now;
                let end = if to > own { edge } else { start + long };
                moved[way] = if to > own { start } else { edge };
                moved[way + 2] = end - moved[way];
            }
            [hot[top].x, hot[top].y, hot[top].w, hot[top].h] = moved;
        }
    }
}

/// How far a piece's figure keeps off the ends of its leg.
const JOINT: f32 = 6.0;
/// So many pieces are led to their legs, whole.
const FEW: usize = 5;

/// Middles closer than this are one place.
const APART: f32 = 6.0;

/// The dimensions over the drawing: first all lines, then the figures.
fn figures<T: Clone + PartialEq>(
    sheet: &mut Sheet<T>,
    scene: &Scene<T>,
    canvas: &Canvas,
    lit: Option<&T>,
) {
    let words: Vec<[f32; 4]> = sheet.pieces.iter().filter_map(word_box).collect();
    let bare: Vec<_> = (scene.bare.iter())
        .map(|[from, to]| (sheet.place.of(*from), sheet.place.of(*to)))
        .collect();
    let lines: Vec<Drawn> = (scene.dimensions.iter())
        .map(|d| measure_beside(d, &bare, &sheet.place, canvas))
        .collect();
    // Pieces first, for each stays on its line: the longest first, so that those that are led go round the others. Then the
    // shortest of the rest: the figure of a long one has more places to go to.
    let is_piece = |n: usize| matches!(scene.dimensions[n].standing, Standing::Piece(_));
    let (mut order, mut rest): (Vec<usize>, Vec<usize>) =
        (0..lines.len()).partition(|n| is_piece(*n));
    let pieces = order.len();
    order.sort_by(|a, b| lines[*b].long().total_cmp(&lines[*a].long()));
    rest.sort_by(|a, b| lines[*a].long().total_cmp(&lines[*b].long()));
    order.extend(rest);
    sheet.boxes = vec![[0.0; 4]; lines.len()];
    let mut ringed = vec![None; lines.len()];
    let mut taken = Vec::with_capacity(lines.len());
    let is_lit = |d: &Dimension<T>| lit.is_some() && d.tag.as_ref() == lit;
    let across = |n: &usize| {
        let dimension = &scene.dimensions[*n];
        dimension.edge == Edge::Across && !is_lit(dimension)
    };
    // What has to stand somewhere comes first, what may be left out takes what is left.
    let (last, first): (Vec<usize>, Vec<usize>) = order.into_iter().partition(across);
    for n in first {
        let crowd = Crowd {
            taken: &taken,
            words: &words,
            bare: &bare,
        };
        let line = &lines[n];
        let at = if let Standing::Piece(number) = scene.dimensions[n].standing {
            let (at, whole) = piece_place(line, number, pieces <= FEW, &crowd, canvas);
            ringed[n] = (!whole).then_some(number);
            at
        } else {
            find_room(line, &crowd, canvas)
        };
        taken.push(at);
        sheet.boxes[n] = at;
    }
    let mut crowded = Vec::new();
    for n in last {
        let line = &lines[n];
        let crossing = |(other, d): &(usize, &Dimension<T>)| {
            *other != n && (d.edge == Edge::Across || d.edge == Edge::Left(0))
        };
        let others = scene.dimensions.iter().enumerate().filter(crossing);
        let lines = others.map(|(other, _)| lines[other].line);
        let bare: Vec<_> = bare.iter().copied().chain(lines).collect();
        let crowd = Crowd {
            taken: &taken,
            words: &words,
            bare: &bare,
        };
        let place = across_place(line, &crowd, canvas);
        match place {
            Some([x, y, 0.0, _]) => {
                let half = FINGER / 2.0;
                taken.push([x - half, y - half, FINGER, FINGER]);
            }
            Some(at) => taken.push(at),
            None => crowded.push(n),
        }
        let at = place.unwrap_or([line.wish.0, line.wish.1, 0.0, 0.0]);
        sheet.boxes[n] = at;
    }
    for ((dimension, line), at) in scene.dimensions.iter().zip(&lines).zip(&sheet.boxes) {
        draw_lines(&mut sheet.pieces, dimension, line, at, is_lit(dimension));
    }
    for (n, (dimension, at)) in scene.dimensions.iter().zip(&sheet.boxes).enumerate() {
        match ringed[n] {
            Some(number) => draw_ring(&mut sheet.pieces, number, *at, canvas.text),
            None => draw_box(&mut sheet.pieces, dimension, *at, canvas, is_lit(dimension)),
        }
        // A line that has room for neither is asked for in the list alone.
        if let Some(tag) = dimension.tag.as_ref().filter(|_| !crowded.contains(&n)) {
            sheet.hot.push(spot(*at, canvas, tag, &dimension.says));
        }
    }
}

/// Where a piece's figure stands, and whether whole: on its leg; where few are, led to it; else its number alone.
fn piece_place(
    line: &Drawn,
    number: u32,
    few: bool,
    crowd: &Crowd,
    canvas: &Canvas,
) -> ([f32; 4], bool) {
    let whole = on_its_line(line, line.size, JOINT, crowd, canvas);
    // Of many pieces that would be a thicket.
    let led = || free_room(&line.led(line.size), crowd, canvas).filter(|_| few);
    if let Some(at) = whole.or_else(led) {
        return (at, true);
    }
    let small = ring(number, canvas);
    let ringed = on_its_line(line, small, JOINT, crowd, canvas);
    let at = ringed.unwrap_or_else(|| find_room(&line.led(small), crowd, canvas));
    (at, false)
}

/// Where the figure of a line across stands on it; where it has no room, an empty box in the middle of a fingertip that has.
fn across_place(line: &Drawn, crowd: &Crowd, canvas: &Canvas) -> Option<[f32; 4]> {
    on_its_line(line, line.size, ENDS, crowd, canvas).or_else(|| {
        // A fingertip bears nothing that could hide a word or a line.
        let figures = Crowd {
            taken: crowd.taken,
            words: &[],
            bare: &[],
        };
        let at = on_its_line(line, (FINGER, FINGER), ENDS, &figures, canvas)?;
        Some([at[0] + FINGER / 2.0, at[1] + FINGER / 2.0, 0.0, 0.0])
    })
}

/// The box between two corners: x, y, width, height.
fn between((x0, y0): (f32, f32), (x1, y1): (f32, f32)) -> [f32; 4] {
    [x0.min(x1), y0.min(y1), (x1 - x0).abs(), (y1 - y0).abs()]
}

/// The box of a word.
pub(super) fn word_box(piece: &Piece) -> Option<[f32; 4]> {
    let Piece::Text {
        text,
        at,
        size,
        bold,
        ..
    } = piece
    else {
        return None;
    };
    let wide = face::width(text, *size, *bold);
    Some([at.0, at.1 - size * 0.8, wide, *size])
}

/// What can be tapped at a box.
fn spot<T: Clone>(at: [f32; 4], canvas: &Canvas, tag: &T, says: &str) -> HotSpot<T> {
    let [x, y, w, h] = finger(at, canvas);
    HotSpot {
        x,
        y,
        w,
        h,
        tag: tag.clone(),
        says: says.to_owned(),
    }
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

/// The least and the greatest of what is shown, in metres; `None` where nothing is.
fn shown<T>(scene: &Scene<T>) -> Option<[f64; 4]> {
    let mut all = [f64::MAX, f64::MAX, f64::MIN, f64::MIN];
    let mut take = |p: Point| {
        let (x, y) = (p.x.metres(), p.y.metres());
        all = [all[0].min(x), all[1].min(y), all[2].max(x), all[3].max(y)];
    };
    if let Some((from, to)) = scene.window {
        take(from);
        take(to);
    } else {
        for mark in &scene.marks {
            match mark {
                Mark::Path { points, .. } => points.iter().copied().for_each(&mut take),
                Mark::Rings { rings, .. } => rings.iter().flatten().copied().for_each(&mut take),
                Mark::Arc {
                    centre,
                    radius,
                    from,
                    sweep,
                    ..
                } => arc(*centre, *radius, *from, *sweep).for_each(&mut take),
                Mark::Circle { centre, radius, .. } => {
                    let corner = Point::new(*radius, *radius);
                    take(*centre - corner);
                    take(*centre + corner);
                }
                Mark::Dot { at, .. } | Mark::Text { at, .. } => take(*at),
            }
        }
        for d in &scene.dimensions {
            take(d.from);
            take(d.to);
        }
    }
    (all[0] <= all[2]).then_some(all)
}

/// Where a scene lies when so much is kept clear of what is shown: left, top, right, bottom.
fn placed([left, top, right, bottom]: [f64; 4], pad: [f32; 4], canvas: &Canvas) -> Place {
    // Where the rows would take most of a sheet, the drawing keeps its share of it.
    let room = |across: f32, a: f32, b: f32| f64::from((across - a - b).max(across * 0.3));
    let squeeze = |a: f32, b: f32, across: f32| {
        let most = across * 0.7;
        f64::from(if a + b > most { a * most / (a + b) } else { a })
    };
    let (wide, high) = (
        room(canvas.width, pad[0], pad[2]),
        room(canvas.height, pad[1], pad[3]),
    );
    let (across, down) = (right - left, bottom - top);
    let scale = (wide / across.max(1e-6)).min(high / down.max(1e-6));
    let (x, y) = (
        squeeze(pad[0], pad[2], canvas.width),
        squeeze(pad[1], pad[3], canvas.height),
    );
    Place {
        scale,
        origin: (
            x + (wide - across * scale) / 2.0 - left * scale,
            y + (high - down * scale) / 2.0 - top * scale,
        ),
    }
}

/// How far the figures reach past what is shown: left, top, right, bottom.
fn past<T>(scene: &Scene<T>, shown: [f64; 4], place: &Place, canvas: &Canvas) -> [f32; 4] {
    let (x, y) = place.origin;
    let mut edge = [x, y, x, y];
    for (edge, metres) in edge.iter_mut().zip(shown) {
        *edge += metres * place.scale;
    }
    let edge = edge.map(|edge| edge as f32);
    let mut past = [0.0_f32; 4];
    for d in &scene.dimensions {
        let drawn = measure_up(d, place, canvas);
        let ((x, y), (w, h)) = (drawn.wish, drawn.size);
        let reach = [
            edge[0] - (x - w / 2.0),
            edge[1] - (y - h / 2.0),
            x + w / 2.0 - edge[2],
            y + h / 2.0 - edge[3],
        ];
        for (side, by) in reach.into_iter().enumerate() {
            past[side] = past[side].max(by + 4.0);
        }
    }
    past
}

/// The scale and place at which the marks, the rows of dimensions and their figures all fit.
fn fit<T>(scene: &Scene<T>, canvas: &Canvas) -> Place {
    let Some(shown) = shown(scene) else {
        let middle = |side: f32| f64::from(side) / 2.0;
        return Place {
            scale: 1.0,
            origin: (middle(canvas.width), middle(canvas.height)),
        };
    };
    // A figure reaches further past a smaller drawing: a few rounds settle it.
    let mut pad = [canvas.margin; 4];
    for _ in 0..4 {
        let past = past(scene, shown, &placed(shown, pad, canvas), canvas);
        for (pad, past) in pad.iter_mut().zip(past) {
            *pad = pad.max(past);
        }
    }
    placed(shown, pad, canvas)
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
