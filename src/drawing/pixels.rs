//! A sheet in pixels, and as PNG.

use std::io::Cursor;

use tiny_skia::{Color, FillRule, Mask, Paint, Path, PathBuilder, Pixmap, Rect, Stroke, Transform};

use super::layout::dashed;
use super::{Colour, Palette, Piece, Role, Sheet, face};

/// Premultiplied RGBA, row by row.
#[derive(Clone, Debug)]
pub struct Pixels {
    /// Across.
    pub width: u32,
    /// Down.
    pub height: u32,
    /// Four bytes a pixel.
    pub rgba: Vec<u8>,
}

/// The largest picture that is painted, in pixels a side.
const LARGEST: f32 = 8192.0;

/// Paints a sheet at so many pixels to a logical pixel.
#[must_use]
pub fn paint<T>(sheet: &Sheet<T>, palette: &Palette, scale: f32) -> Pixels {
    paint_on(sheet, palette, scale, None)
}

/// Paints a sheet whose board is a picture, so many pixels as the sheet; the rest as ever.
#[must_use]
pub fn paint_on<T>(
    sheet: &Sheet<T>,
    palette: &Palette,
    scale: f32,
    board: Option<Pixels>,
) -> Pixels {
    let side = |length: f32| (length * scale).ceil().clamp(1.0, LARGEST) as u32;
    let Some(mut pixmap) = Pixmap::new(side(sheet.width), side(sheet.height)) else {
        return Pixels {
            width: 1,
            height: 1,
            rgba: vec![0; 4],
        };
    };
    let whole = Transform::from_scale(scale, scale);
    pixmap.fill(colour(palette.colour(Role::Paper)));
    let board = board.and_then(|board| {
        let size = tiny_skia::IntSize::from_wh(board.width, board.height)?;
        Pixmap::from_vec(board.rgba, size)
    });
    let mut board = board.as_ref();
    // A sheet has one window at most, so one mask is kept.
    let mut window: Option<(Rect, Mask)> = None;
    for piece in &sheet.pieces {
        let (Piece::Shape { clip, .. } | Piece::Text { clip, .. }) = piece;
        if let Some(clip) = clip
            && window.as_ref().is_none_or(|(rect, _)| rect != clip)
        {
            window = mask(*clip, &pixmap, whole).map(|mask| (*clip, mask));
        }
        let mask = clip.and(window.as_ref()).map(|(_, mask)| mask);
        draw(&mut pixmap, piece, palette, whole, mask);
        // The first board is the wall; its edge is drawn again over the picture.
        if let Piece::Shape {
            path,
            fill: Some(Role::Board),
            ..
        } = piece
            && let Some(picture) = board.take()
        {
            let paint = Paint {
                shader: tiny_skia::Pattern::new(
                    picture.as_ref(),
                    tiny_skia::SpreadMode::Pad,
                    tiny_skia::FilterQuality::Nearest,
                    1.0,
                    Transform::from_scale(1.0 / scale, 1.0 / scale),
                ),
                anti_alias: true,
                ..Paint::default()
            };
            pixmap.fill_path(path, &paint, FillRule::Winding, whole, mask);
        }
    }
    Pixels {
        width: pixmap.width(),
        height: pixmap.height(),
        rgba: pixmap.take(),
    }
}

/// What lies inside a window.
fn mask(window: Rect, pixmap: &Pixmap, whole: Transform) -> Option<Mask> {
    let mut mask = Mask::new(pixmap.width(), pixmap.height())?;
    let path = PathBuilder::from_rect(window);
    mask.fill_path(&path, FillRule::Winding, false, whole);
    Some(mask)
}

fn draw(
    pixmap: &mut Pixmap,
    piece: &Piece,
    palette: &Palette,
    whole: Transform,
    mask: Option<&Mask>,
) {
    let mut fill_in = |path: &Path, role: Role, smooth: bool| {
        let mut ink = ink(palette.colour(role));
        ink.anti_alias = smooth;
        pixmap.fill_path(path, &ink, FillRule::Winding, whole, mask);
    };
    match piece {
        Piece::Shape {
            path, fill, line, ..
        } => {
            if let Some(role) = fill {
                // A whole line over its edge is what is seen of it: a thousand tiles are filled in half the time.
                let covered = (line.as_ref())
                    .is_some_and(|(_, width, dash)| dash.is_empty() && *width >= 1.0);
                fill_in(path, *role, !covered);
            }
            if let Some((role, width, dash)) = line {
                let broken = (!dash.is_empty()).then(|| dashed(path, dash)).flatten();
                let stroke = Stroke {
                    width: palette.line_width(*width),
                    ..Stroke::default()
                };
                let ink = ink(palette.colour(*role));
                let path = broken.as_ref().unwrap_or(path);
                pixmap.stroke_path(path, &ink, &stroke, whole, mask);
            }
        }
        Piece::Text {
            text,
            at,
            size,
            bold,
            role,
            ..
        } => {
            if let Some(path) = face::outline(text, *at, *size, *bold) {
                fill_in(&path, *role, true);
            }
        }
    }
}

/// Pixels as a PNG file.
///
/// # Errors
/// When the encoder refuses, which it does for no picture that [`paint`] gives.
pub fn png(pixels: &Pixels) -> Result<Vec<u8>, image::ImageError> {
    let mut bytes = Vec::new();
    // The ground is opaque, so premultiplied is straight.
    image::write_buffer_with_format(
        &mut Cursor::new(&mut bytes),
        &pixels.rgba,
        pixels.width,
        pixels.height,
        image::ExtendedColorType::Rgba8,
        image::ImageFormat::Png,
    )?;
    Ok(bytes)
}

pub(super) fn colour(c: Colour) -> Color {
    Color::from_rgba8(c.r, c.g, c.b, 255)
}
pub(super) fn ink(c: Colour) -> Paint<'static> {
    let mut paint = Paint {
        anti_alias: true,
        ..Paint::default()
    };
    paint.set_color_rgba8(c.r, c.g, c.b, 255);
    paint
}
