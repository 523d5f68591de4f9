//! A sheet as SVG: text as outlines, so that it looks the same everywhere.

use std::fmt::Write;

use tiny_skia::{Path, PathSegment};

use super::{Colour, Palette, Piece, Role, Sheet, face};
use crate::measure::plain;

/// A sheet as an SVG file.
#[must_use]
pub fn svg<T>(sheet: &Sheet<T>, palette: &Palette, title: &str) -> String {
    let (w, h) = (sheet.width, sheet.height);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w} {h}\" width=\"{w}\" height=\"{h}\" role=\"img\">\n<title>{}</title>\n<rect width=\"{w}\" height=\"{h}\" fill=\"{}\"/>\n",
        escaped(&plain(title)),
        hex(palette.colour(Role::Paper)),
    );
    for (n, piece) in sheet.pieces.iter().enumerate() {
        // Writing to a string cannot fail.
        let _ = match piece {
            Piece::Shape {
                path,
                fill,
                line,
                clip,
            } => {
                let mut style = format!(
                    "fill=\"{}\"",
                    fill.map_or("none".to_owned(), |role| hex(palette.colour(role)))
                );
                if let Some((role, width, dash)) = line {
                    let _ = write!(
                        style,
                        " stroke=\"{}\" stroke-width=\"{width}\"",
                        hex(palette.colour(*role))
                    );
                    if !dash.is_empty() {
                        let dash: Vec<String> = dash.iter().map(ToString::to_string).collect();
                        let _ = write!(style, " stroke-dasharray=\"{}\"", dash.join(" "));
                    }
                }
                if let Some(clip) = clip {
                    let _ = writeln!(
                        out,
                        "<clipPath id=\"c{n}\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/></clipPath>",
                        clip.x(),
                        clip.y(),
                        clip.width(),
                        clip.height()
                    );
                    let _ = write!(style, " clip-path=\"url(#c{n})\"");
                }
                writeln!(out, "<path d=\"{}\" {style}/>", data(path))
            }
            Piece::Text {
                text,
                at,
                size,
                bold,
                role,
            } => match face::outline(text, *at, *size, *bold) {
                Some(path) => writeln!(
                    out,
                    "<path aria-label=\"{}\" fill=\"{}\" d=\"{}\"/>",
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
