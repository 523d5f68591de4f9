//! What is marked on a picture, drawn over it: dimension lines with a halo, figures on plates, so that they are read on
//! any ground.

use tiny_skia::{
    FillRule, FilterQuality, LineCap, Paint, Path, PathBuilder, Pixmap, Stroke, Transform,
};

use super::figure::rounded;
use super::layout::dashed;
use super::photo_plates::{FIGURE, Plate, plates};
use super::pixels::ink;
use super::{Palette, Pixels, Role, face};

/// A place on the picture as it is shown, in pixels.
pub type At = (f32, f32);

/// How the ends of a line are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// As they are.
    Plain,
    /// Slashes of a dimension.
    Ticks,
    /// An arrow at the last point.
    Arrow,
    /// A ring about the only point: there is where it snapped.
    Ring,
}

/// One thing drawn over a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// The line through its points; one point is a dot.
    pub points: Vec<At>,
    /// The last is joined to the first.
    pub closed: bool,
    /// How its ends are drawn.
    pub ends: Ends,
    /// An estimate: dashed.
    pub dashed: bool,
    /// Its colour.
    pub role: Role,
    /// The figure or the words on its plate.
    pub label: String,
    /// It is the one in hand: its points are shown.
    pub picked: bool,
    /// The point that a finger holds: nothing is drawn over the place that it is to be put on.
    pub held: Option<usize>,
}

/// The part of a picture about a point, enlarged, away from the finger that hides it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loupe {
    /// What is looked at.
    pub at: At,
    /// The middle of the glass.
    pub glass: At,
    /// Its radius.
    pub radius: f32,
    /// How many times it enlarges.
    pub times: f32,
}

/// The glass of a loupe: the picture itself, enlarged about what is looked at.
#[derive(Clone)]
pub struct Glass {
    /// Where it stands.
    pub loupe: Loupe,
    /// The enlarged picture, as wide and as high as the glass.
    pub pixels: Pixels,
}

/// Draws notes over pixels; `heft` is pixels to a logical pixel, so that lines are as thick on any screen and to scale on
/// paper. Gives where each plate stands: left, top, width, height; nothing where there is none.
#[must_use]
pub fn annotate(
    base: Pixels,
    notes: &[Note],
    glass: Option<Glass>,
    palette: Palette,
    heft: f32,
) -> (Pixels, Vec<Option<[f32; 4]>>) {
    let (width, height) = (base.width, base.height);
    let size = tiny_skia::IntSize::from_wh(width, height);
    let Some(mut pixmap) = size.and_then(|size| Pixmap::from_vec(base.rgba, size)) else {
        let rgba = vec![0; 4 * width as usize * height as usize];
        let nothing = Pixels {
            width,
            height,
            rgba,
        };
        return (nothing, vec![None; notes.len()]);
    };
    let placed = plates(notes, (width as f32, height as f32), heft);
    draw_notes(&mut pixmap, notes, &placed, palette, heft);
    let plates = placed.iter().map(|plate| plate.map(|plate| plate.at));
    let plates = plates.collect();
    if let Some(glass) = glass {
        draw_loupe(&mut pixmap, glass, notes, palette, heft);
    }
    let rgba = pixmap.take();
    (
        Pixels {
            width,
            height,
            rgba,
        },
        plates,
    )
}

/// Rows that are painted at once on a picture that is large.
const ROWS: usize = 256;

/// Draws notes over pixels of three bytes, some rows at a time, so that a large picture needs little more memory than it
/// has itself. The same as [`annotate`] draws, without a loupe.
pub fn annotate_rows(
    rgb: &mut [u8],
    (width, height): (u32, u32),
    notes: &[Note],
    palette: Palette,
    heft: f32,
) {
    let placed = plates(notes, (width as f32, height as f32), heft);
    let row = 3 * width as usize;
    for (n, band) in rgb.chunks_mut((ROWS * row).max(1)).enumerate() {
        let up = (n * ROWS) as f32;
        let high = (band.len() / row.max(1)) as u32;
        let Some(mut pixmap) = Pixmap::new(width, high) else {
            return;
        };
        for (painted, pixel) in pixmap
            .data_mut()
            .chunks_exact_mut(4)
            .zip(band.chunks_exact(3))
        {
            painted.copy_from_slice(&[pixel[0], pixel[1], pixel[2], 255]);
        }
        let notes: Vec<Note> = notes.iter().map(|note| moved(note, up)).collect();
        let placed: Vec<Option<Plate>> = placed
            .iter()
            .map(|plate| plate.map(|p| p.moved(up)))
            .collect();
        draw_notes(&mut pixmap, &notes, &placed, palette, heft);
        for (painted, pixel) in pixmap.data().chunks_exact(4).zip(band.chunks_exact_mut(3)) {
            pixel.copy_from_slice(&painted[..3]);
        }
    }
}

/// A note as it stands on rows that begin so far down.
fn moved(note: &Note, up: f32) -> Note {
    Note {
        points: note.points.iter().map(|(x, y)| (*x, y - up)).collect(),
        ..note.clone()
    }
}

fn draw_notes(
    pixmap: &mut Pixmap,
    notes: &[Note],
    placed: &[Option<Plate>],
    palette: Palette,
    heft: f32,
) {
    for note in notes {
        line(pixmap, note, palette, heft);
    }
    for (note, plate) in notes.iter().zip(placed) {
        let leader = plate.as_ref().and_then(|plate| plate.leader);
        if let Some(path) = leader.and_then(|(from, to)| through(&[from, to], false)) {
            stroke(pixmap, &path, note.role, palette, 1.4 * heft, false);
        }
    }
    for (note, plate) in notes.iter().zip(placed) {
        if let Some(plate) = plate {
            draw_plate(pixmap, note, plate.at, palette, heft);
        }
    }
}

fn through(points: &[At], closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    for (n, (x, y)) in points.iter().enumerate() {
        if n == 0 {
            path.move_to(*x, *y);
        } else {
            path.line_to(*x, *y);
        }
    }
    if closed {
        path.close();
    }
    path.finish()
}

/// Light first and wide, then the colour: the halo keeps it off any ground.
fn stroke(pixmap: &mut Pixmap, path: &Path, role: Role, palette: Palette, wide: f32, dash: bool) {
    let pen = |width: f32| Stroke {
        width: palette.line_width(width),
        line_cap: LineCap::Butt,
        ..Stroke::default()
    };
    let whole = Transform::identity();
    let halo = ink(palette.colour(Role::Sheet));
    pixmap.stroke_path(path, &halo, &pen(wide * 2.2), whole, None);
    let broken = dash
        .then(|| dashed(path, &[wide * 3.4, wide * 2.2]))
        .flatten();
    let colour = ink(palette.colour(role));
    let path = broken.as_ref().unwrap_or(path);
    pixmap.stroke_path(path, &colour, &pen(wide), whole, None);
}

fn dot(pixmap: &mut Pixmap, (x, y): At, radius: f32, paint: &Paint<'_>) {
    if let Some(path) = PathBuilder::from_circle(x, y, radius) {
        pixmap.fill_path(&path, paint, FillRule::Winding, Transform::identity(), None);
    }
}

fn line(pixmap: &mut Pixmap, note: &Note, palette: Palette, heft: f32) {
    let wide = 3.0 * heft;
    let halo = ink(palette.colour(Role::Sheet));
    let own = ink(palette.colour(note.role));
    if let [only] = note.points[..] {
        if note.ends == Ends::Ring {
            if let Some(ring) = PathBuilder::from_circle(only.0, only.1, 11.0 * heft) {
                stroke(pixmap, &ring, note.role, palette, 2.4 * heft, false);
            }
            return;
        }
        if note.held.is_none() {
            dot(pixmap, only, 9.0 * heft, &halo);
            dot(pixmap, only, 6.5 * heft, &own);
        }
    }
    if let Some(path) = through(&note.points, note.closed).filter(|_| note.points.len() > 1) {
        stroke(pixmap, &path, note.role, palette, wide, note.dashed);
    }
    for end in ends(note, heft) {
        if let Some(path) = through(&end, false) {
            stroke(pixmap, &path, note.role, palette, wide, false);
        }
    }
    if note.picked {
        let shown = note.points.iter().enumerate();
        for (_, at) in shown.filter(|(n, _)| note.held != Some(*n)) {
            dot(pixmap, *at, 8.0 * heft, &halo);
            dot(pixmap, *at, 6.0 * heft, &own);
            dot(pixmap, *at, 2.0 * heft, &halo);
        }
    }
}

/// Slashes across a dimension's ends, or the barbs of an arrow.
fn ends(note: &Note, heft: f32) -> Vec<Vec<At>> {
    let (Some(first), Some(last)) = (note.points.first(), note.points.last()) else {
        return Vec::new();
    };
    let before = note.points[note.points.len().saturating_sub(2)];
    let (dx, dy) = (last.0 - before.0, last.1 - before.1);
    let long = dx.hypot(dy).max(1e-3);
    let (ux, uy) = (dx / long, dy / long);
    match note.ends {
        Ends::Plain | Ends::Ring => Vec::new(),
        Ends::Ticks => {
            let r = 10.0 * heft;
            // At 45° to the line, from lower left to upper right where it is level.
            let (sx, sy) = ((ux + uy) * r * 0.71, (uy - ux) * r * 0.71);
            let slash = |(x, y): At| vec![(x - sx, y - sy), (x + sx, y + sy)];
            vec![slash(*first), slash(*last)]
        }
        Ends::Arrow => {
            let r = 14.0 * heft;
            let barb = |side: f32| (last.0 - r * (ux + side * uy), last.1 - r * (uy - side * ux));
            vec![vec![barb(0.5), *last, barb(-0.5)]]
        }
    }
}

fn draw_plate(pixmap: &mut Pixmap, note: &Note, at: [f32; 4], palette: Palette, heft: f32) {
    let whole = Transform::identity();
    let (ground, words) = if note.picked {
        (note.role, Role::Sheet)
    } else {
        (Role::Sheet, note.role)
    };
    let [x, y, w, h] = at;
    let Some(path) = rounded(x, y, w, h, 6.0 * heft) else {
        return;
    };
    // The halo of the plate, its ground, its edge.
    let halo = Stroke {
        width: 4.0 * heft,
        ..Stroke::default()
    };
    pixmap.stroke_path(&path, &ink(palette.colour(Role::Sheet)), &halo, whole, None);
    pixmap.fill_path(
        &path,
        &ink(palette.colour(ground)),
        FillRule::Winding,
        whole,
        None,
    );
    let edge = Stroke {
        width: palette.line_width(2.0 * heft),
        ..Stroke::default()
    };
    let broken = note
        .dashed
        .then(|| dashed(&path, &[6.0 * heft, 4.0 * heft]))
        .flatten();
    let rim = broken.as_ref().unwrap_or(&path);
    pixmap.stroke_path(rim, &ink(palette.colour(note.role)), &edge, whole, None);
    let size = FIGURE * heft;
    let start = (at[0] + 11.0 * heft, at[1] + at[3] / 2.0 + size * 0.36);
    if let Some(text) = face::outline(&note.label, start, size, true) {
        pixmap.fill_path(
            &text,
            &ink(palette.colour(words)),
            FillRule::Winding,
            whole,
            None,
        );
    }
}

/// The enlarged picture with its lines as wide as beside it, and a cross on the place that is looked at.
fn draw_loupe(pixmap: &mut Pixmap, glass: Glass, notes: &[Note], palette: Palette, heft: f32) {
    let (loupe, pixels) = (glass.loupe, glass.pixels);
    let r = loupe.radius;
    let size = tiny_skia::IntSize::from_wh(pixels.width, pixels.height);
    let Some(mut glass) = size.and_then(|size| Pixmap::from_vec(pixels.rgba, size)) else {
        return;
    };
    let (x, y) = loupe.at;
    for note in notes {
        let points = note.points.iter();
        let near = |(px, py): &At| (r + (px - x) * loupe.times, r + (py - y) * loupe.times);
        let enlarged = Note {
            points: points.map(near).collect(),
            ..note.clone()
        };
        line(&mut glass, &enlarged, palette, heft);
    }
    for arm in [
        [(r, r - 18.0 * heft), (r, r + 18.0 * heft)],
        [(r - 18.0 * heft, r), (r + 18.0 * heft, r)],
    ] {
        if let Some(path) = through(&arm, false) {
            stroke(&mut glass, &path, Role::Red, palette, 1.6 * heft, false);
        }
    }
    let (gx, gy) = (loupe.glass.0 - r, loupe.glass.1 - r);
    let Some(round) = PathBuilder::from_circle(loupe.glass.0, loupe.glass.1, r) else {
        return;
    };
    let paint = Paint {
        shader: tiny_skia::Pattern::new(
            glass.as_ref(),
            tiny_skia::SpreadMode::Pad,
            FilterQuality::Nearest,
            1.0,
            Transform::from_translate(gx, gy),
        ),
        anti_alias: true,
        ..Paint::default()
    };
    pixmap.fill_path(
        &round,
        &paint,
        FillRule::Winding,
        Transform::identity(),
        None,
    );
    stroke(pixmap, &round, Role::Chalk, palette, 3.0 * heft, false);
}

/// Pixels of one colour.
#[must_use]
pub fn ground(width: u32, height: u32, palette: Palette, role: Role) -> Pixels {
    let c = palette.colour(role);
    let count = width as usize * height as usize;
    Pixels {
        width,
        height,
        rgba: [c.r, c.g, c.b, 255].repeat(count),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Colour, Theme, palette::contrast};

    fn on(grey: u8) -> (Pixels, Vec<Option<[f32; 4]>>) {
        let base = Pixels {
            width: 240,
            height: 120,
            rgba: [grey, grey, grey, 255].repeat(240 * 120),
        };
        let note = Note {
            points: vec![(20.0, 90.0), (220.0, 90.0)],
            closed: false,
            ends: Ends::Ticks,
            dashed: false,
            role: Role::Chalk,
            label: "8".into(),
            picked: false,
            held: None,
        };
        annotate(base, &[note], None, Palette::of(Theme::Day), 1.0)
    }

    fn at(pixels: &Pixels, x: usize, y: usize) -> Colour {
        let from = 4 * (y * pixels.width as usize + x);
        let [r, g, b] = [0, 1, 2].map(|n| pixels.rgba[from + n]);
        Colour { r, g, b }
    }

    /// WCAG 2.2: text 4.5 to 1 on what it stands on, lines 3 to 1 against what lies beside them.
    #[test]
    fn figures_and_lines_are_read_on_black_white_and_grey() {
        for grey in [0, 119, 255] {
            let (pixels, plates) = on(grey);
            let plate = plates[0].unwrap();
            // The darkest and the lightest within the plate are its words and its ground, whatever lies below.
            let whole = |part| Colour {
                r: part,
                g: part,
                b: part,
            };
            let (mut words, mut ground) = (whole(255), whole(0));
            let light = |c: Colour| u32::from(c.r) + u32::from(c.g) + u32::from(c.b);
            let inside = |n: f32, by: f32| (n + by) as usize;
            for y in inside(plate[1], 5.0)..inside(plate[1] + plate[3], -5.0) {
                for x in inside(plate[0], 5.0)..inside(plate[0] + plate[2], -5.0) {
                    let here = at(&pixels, x, y);
                    words = if light(here) < light(words) {
                        here
                    } else {
                        words
                    };
                    ground = if light(here) > light(ground) {
                        here
                    } else {
                        ground
                    };
                }
            }
            assert!(contrast(words, ground) >= 4.5, "on {grey}");
            let (line, halo, beside) = (
                at(&pixels, 40, 90),
                at(&pixels, 40, 87),
                at(&pixels, 40, 60),
            );
            assert!(contrast(line, halo) >= 3.0, "on {grey}: {line:?} {halo:?}");
            let stands_off = contrast(line, beside).max(contrast(halo, beside));
            assert!(stands_off >= 3.0, "on {grey}: {stands_off}");
        }
    }

    #[test]
    fn plates_keep_off_one_another_and_on_the_picture() {
        let note = |x: f32| Note {
            points: vec![(x, 30.0), (x + 20.0, 30.0)],
            closed: false,
            ends: Ends::Ticks,
            dashed: true,
            role: Role::Chalk,
            label: "3′ 7″".into(),
            picked: false,
            held: None,
        };
        let base = ground(200, 200, Palette::of(Theme::Day), Role::Board);
        let (_, plates) = annotate(
            base,
            &[note(5.0), note(15.0), note(25.0)],
            None,
            Palette::of(Theme::Day),
            1.0,
        );
        let plates: Vec<[f32; 4]> = plates.into_iter().flatten().collect();
        for (n, a) in plates.iter().enumerate() {
            assert!(a[0] >= 0.0 && a[1] >= 0.0 && a[0] + a[2] <= 200.0 && a[1] + a[3] <= 200.0);
            for b in &plates[n + 1..] {
                let apart = |n: usize| a[n] + a[n + 2] <= b[n] || b[n] + b[n + 2] <= a[n];
                assert!(apart(0) || apart(1), "{a:?} {b:?}");
            }
        }
    }

    #[test]
    fn rows_at_a_time_are_painted_as_all_at_once() {
        let size = (400, 700);
        let grey = |n: usize| [40, 120, 200][n % 3];
        let mut rgb: Vec<u8> = (0..3 * 400 * 700).map(grey).collect();
        let rgba = rgb
            .chunks_exact(3)
            .flat_map(|p| [p[0], p[1], p[2], 255])
            .collect();
        let note = |points: Vec<At>, label: &str| Note {
            points,
            closed: false,
            ends: Ends::Ticks,
            dashed: false,
            role: Role::Chalk,
            label: label.into(),
            picked: false,
            held: None,
        };
        // Across the seams at 256 and 512, one plate right on a seam.
        let notes = [
            note(vec![(30.0, 20.0), (370.0, 680.0)], "8′ 2″"),
            note(vec![(20.0, 256.0), (380.0, 256.0)], "3′"),
            note(vec![(200.0, 512.0)], "here"),
        ];
        let base = Pixels {
            width: 400,
            height: 700,
            rgba,
        };
        let palette = Palette::of(Theme::Day);
        let (whole, _) = annotate(base, &notes, None, palette, 1.0);
        annotate_rows(&mut rgb, size, &notes, palette, 1.0);
        let off = whole.rgba.chunks_exact(4).zip(rgb.chunks_exact(3));
        let most = off.map(|(a, b)| (0..3).map(|n| a[n].abs_diff(b[n])).max().unwrap_or(0));
        // A line that is cut off by a seam may have its edge a sixteenth of a pixel elsewhere.
        assert!(most.max().unwrap() <= 16);
    }
}
