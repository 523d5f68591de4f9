//! A sheet as SVG: text as outlines, so that it looks the same everywhere.

use std::fmt::Write;

use tiny_skia::{Path, PathSegment, Rect};

use super::{Colour, Palette, Piece, Role, Sheet, face};
use crate::measure::plain;

/// A sheet as an SVG file.
#[must_use]
pub fn svg<T>(sheet: &Sheet<T>, palette: &Palette, title: &str) -> String {
    let size = (sheet.width.to_string(), sheet.height.to_string());
    sized(sheet, palette, title, &size)
}

/// A sheet as an SVG file that prints at its own size, so many pixels to the inch.
pub(super) fn to_scale<T>(sheet: &Sheet<T>, palette: &Palette, title: &str, pixels: f64) -> String {
    let inches = |side: f32| format!("{:.4}in", f64::from(side) / pixels);
    let size = (inches(sheet.width), inches(sheet.height));
    sized(sheet, palette, title, &size)
}

fn sized<T>(
    sheet: &Sheet<T>,
    palette: &Palette,
    title: &str,
    (wide, high): &(String, String),
) -> String {
    let (w, h) = (sheet.width, sheet.height);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w} {h}\" width=\"{wide}\" height=\"{high}\" role=\"img\">\n<title>{}</title>\n<rect width=\"{w}\" height=\"{h}\" fill=\"{}\"/>\n",
        escaped(&plain(title)),
        hex(palette.colour(Role::Paper)),
    );
    let mut windows: Vec<Rect> = Vec::new();
    for piece in &sheet.pieces {
        let (Piece::Shape { clip, .. } | Piece::Text { clip, .. }) = piece;
        let cut = clip.map_or(String::new(), |clip| cut_off(&mut out, &mut windows, clip));
        // Writing to a string cannot fail.
        let _ = match piece {
            Piece::Shape {
                path, fill, line, ..
            } => writeln!(
                out,
                "<path d=\"{}\" {}{cut}/>",
                data(path),
                style(*fill, line.as_ref(), palette)
            ),
            Piece::Text {
                text,
                at,
                size,
                bold,
                role,
                ..
            } => match face::outline(text, *at, *size, *bold) {
                Some(path) => writeln!(
                    out,
                    "<path aria-label=\"{}\" fill=\"{}\" d=\"{}\"{cut}/>",
                    escaped(&plain(text)),
                    hex(palette.colour(*role)),
                    data(&path)
                ),
                None => Ok(()),
            },
        };
    }
    out.push_str("</svg>\n");
    out
}

/// The attribute that cuts a piece off at a window, each window written once.
fn cut_off(out: &mut String, windows: &mut Vec<Rect>, clip: Rect) -> String {
    let known = windows.iter().position(|window| *window == clip);
    let n = known.unwrap_or(windows.len());
    if known.is_none() {
        windows.push(clip);
        let _ = writeln!(
            out,
            "<clipPath id=\"c{n}\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/></clipPath>",
            clip.x(),
            clip.y(),
            clip.width(),
            clip.height()
        );
    }
    format!(" clip-path=\"url(#c{n})\"")
}

/// How a shape is filled and stroked.
fn style(fill: Option<Role>, line: Option<&(Role, f32, Vec<f32>)>, palette: &Palette) -> String {
    let inside = fill.map_or("none".to_owned(), |role| hex(palette.colour(role)));
    let mut style = format!("fill=\"{inside}\"");
    if let Some((role, width, dash)) = line {
        let (colour, width) = (hex(palette.colour(*role)), palette.line_width(*width));
        let _ = write!(style, " stroke=\"{colour}\" stroke-width=\"{width}\"");
        if !dash.is_empty() {
            let dash: Vec<String> = dash.iter().map(ToString::to_string).collect();
            let _ = write!(style, " stroke-dasharray=\"{}\"", dash.join(" "));
        }
    }
    style
}

fn hex(c: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", c.r, c.g, c.b)
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
        .replace(|c: char| c.is_control(), " ")
}

fn data(path: &Path) -> String {
    let mut d = String::new();
    for segment in path.segments() {
        let _ = match segment {
            PathSegment::MoveTo(p) => write!(d, "M{:.2} {:.2}", p.x, p.y),
            PathSegment::LineTo(p) => write!(d, "L{:.2} {:.2}", p.x, p.y),
            PathSegment::QuadTo(a, p) => write!(d, "Q{:.2} {:.2} {:.2} {:.2}", a.x, a.y, p.x, p.y),
            PathSegment::CubicTo(a, b, p) => write!(
                d,
                "C{:.2} {:.2} {:.2} {:.2} {:.2} {:.2}",
                a.x, a.y, b.x, b.y, p.x, p.y
            ),
            PathSegment::Close => write!(d, "Z"),
        };
    }
    d
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Align, Canvas, Fit, Mark, Pen, Scene, Stroke, Theme, lay_out, paint};
    use crate::geometry::Point;
    use crate::measure::Length;

    const CANVAS: Canvas = Canvas {
        width: 200.0,
        height: 100.0,
        text: 1.0,
        margin: 10.0,
    };

    fn at(x: i64, y: i64) -> Point {
        Point::new(Length::inches(x), Length::inches(y))
    }
    fn text(place: Point) -> Mark {
        Mark::Text {
            at: place,
            text: "Word".into(),
            role: Role::Red,
            align: Align::Middle,
            bold: true,
            fit: Fit::Always,
        }
    }
    fn line(pen: Pen) -> Mark {
        Mark::Path {
            points: vec![at(-50, 5), at(60, 5)],
            closed: false,
            pen: Some(pen),
            fill: None,
        }
    }

    #[test]
    fn by_a_bright_window_lines_are_heavier_in_both_pictures() {
        let mut scene: Scene<()> = Scene::empty("a");
        scene.window = Some((at(0, 0), at(20, 10)));
        scene.marks = vec![line(Pen::solid(Role::Ink, Stroke::Medium))];
        let sheet = lay_out(&scene, &CANVAS, None);
        for (theme, wanted) in [
            (Theme::Day, "2.5"),
            (Theme::Night, "2.5"),
            (Theme::Sun, "3.5"),
        ] {
            let palette = Palette::of(theme);
            let drawn = svg(&sheet, &palette, "a");
            assert!(
                drawn.contains(&format!("stroke-width=\"{wanted}\"")),
                "{drawn}"
            );
            // So many pixels of the middle column are not paper, at ten pixels to a unit.
            let pixels = paint(&sheet, &palette, 10.0);
            let paper = palette.colour(Role::Paper);
            let column = (0..pixels.height).filter(|y| {
                let at = ((y * pixels.width + pixels.width / 2) * 4) as usize;
                pixels.rgba[at..at + 3] != [paper.r, paper.g, paper.b]
            });
            let thick = column.count() as f32 / 10.0;
            assert!(
                (thick - wanted.parse::<f32>().unwrap()).abs() <= 0.2,
                "{thick}"
            );
        }
    }

    #[test]
    fn a_window_is_written_once_and_cuts_words_too() {
        let mut scene: Scene<()> = Scene::empty("a");
        scene.window = Some((at(0, 0), at(20, 10)));
        let pen = Pen::solid(Role::Ink, Stroke::Medium);
        scene.marks = vec![line(pen), line(pen), text(at(20, 5)), text(at(60, 5))];
        let sheet = lay_out(&scene, &CANVAS, None);
        let drawn = svg(&sheet, &Palette::of(Theme::Day), "a");
        assert_eq!(drawn.matches("<clipPath").count(), 1);
        assert_eq!(drawn.matches("clip-path=").count(), 3);
        assert_eq!(
            drawn.matches("aria-label").count(),
            1,
            "a word outside is not written"
        );
        let pixels = paint(&sheet, &Palette::of(Theme::Day), 1.0);
        let right = sheet.place.of(at(20, 0)).0.ceil() as u32 + 1;
        let red = Palette::of(Theme::Day).colour(Role::Red);
        for y in 0..pixels.height {
            for x in right..pixels.width {
                let at = ((y * pixels.width + x) * 4) as usize;
                assert_ne!(pixels.rgba[at..at + 3], [red.r, red.g, red.b]);
            }
        }
    }

    #[test]
    fn a_word_never_leaves_the_sheet() {
        let mut scene: Scene<()> = Scene::empty("a");
        scene.marks = vec![
            text(at(0, 0)),
            text(at(300, 0)),
            text(at(300, 150)),
            text(at(0, 150)),
        ];
        let canvas = Canvas {
            margin: 0.0,
            ..CANVAS
        };
        for piece in lay_out(&scene, &canvas, None).pieces {
            let Piece::Text {
                text,
                at,
                size,
                bold,
                ..
            } = piece
            else {
                continue;
            };
            let bounds = face::outline(&text, at, size, bold).unwrap().bounds();
            assert!(
                bounds.top() >= 0.0 && bounds.bottom() <= canvas.height,
                "{bounds:?}"
            );
            assert!(
                bounds.left() >= 0.0 && bounds.right() <= canvas.width,
                "{bounds:?}"
            );
        }
    }
}
