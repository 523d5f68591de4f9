//! The strip that is wrapped round a pipe: on screen, and as a sheet that prints at its own size.

use super::{
    Align, Canvas, Dimension, Edge, Fit, Mark, Palette, Pen, Role, Scene, Standing, Stroke,
    lay_out, svg::to_scale,
};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::pipe::Template;

/// Kept clear of the cut on either side.
const MARGIN: Length = Length::inches(1);
/// The bar by which a print is checked.
const BAR: Length = Length::inches(4);
/// Pixels an inch of a sheet that prints at its own size.
const PIXELS: f64 = 96.0;

/// The strip laid flat: its straight edge below, the cut across it, a line at each station.
#[must_use]
pub fn strip(template: &Template, units: Units) -> Scene<()> {
    let mut scene = flat(template, units);
    let show = |length: Length, figures| units.length(length, Rounding::Nearest, figures);
    let corner = Point::new(template.around, Length::ZERO);
    scene.dimensions.push(Dimension {
        from: Point::default(),
        to: corner,
        beyond: false,
        edge: Edge::Right(1),
        text: show(template.around, Figures::Set),
        standing: Standing::Ours,
        tag: None,
        says: format!("Round the pipe, {}", show(template.around, Figures::Plain)),
    });
    scene
}

/// A strip as SVG that prints at its own size, with a bar to check that it did.
///
/// Its size is in inches in the file; a printer that fits it to the page spoils it, which the bar shows.
#[must_use]
pub fn strip_sheet(template: &Template, units: Units) -> String {
    let mut scene = flat(template, units);
    let high = template.cut_back + MARGIN * 2;
    let (wide, deep) = (template.around.max(BAR) + MARGIN, high + MARGIN * 2);
    let pen = Pen::solid(Role::Ink, Stroke::Medium);
    let below = MARGIN;
    // The frame says how large the sheet is; everything stands inside it.
    let frame = [
        Point::new(-MARGIN.half(), below + MARGIN.half()),
        Point::new(wide - MARGIN.half(), below + MARGIN.half()),
        Point::new(wide - MARGIN.half(), below + MARGIN.half() - deep),
        Point::new(-MARGIN.half(), below + MARGIN.half() - deep),
    ];
    scene.marks.push(Mark::Path {
        points: frame.to_vec(),
        closed: true,
        pen: Some(Pen::solid(Role::Rule, Stroke::Hair)),
        fill: None,
    });
    for x in [Length::ZERO, BAR] {
        scene.marks.push(Mark::Path {
            points: vec![
                Point::new(x, below.half() - MARGIN.divided(8)),
                Point::new(x, below.half() + MARGIN.divided(8)),
            ],
            closed: false,
            pen: Some(pen),
            fill: None,
        });
    }
    scene.marks.push(Mark::Path {
        points: vec![
            Point::new(Length::ZERO, below.half()),
            Point::new(BAR, below.half()),
        ],
        closed: false,
        pen: Some(pen),
        fill: None,
    });
    scene.marks.push(Mark::Text {
        at: Point::new(BAR.half(), below - MARGIN.divided(8)),
        text: format!(
            "{} on your tape",
            units.length(BAR, Rounding::Nearest, Figures::Set)
        ),
        role: Role::Ink,
        align: Align::Middle,
        bold: false,
        fit: Fit::Whole(BAR),
    });
    let pixels = |length: Length| (length.in_inches() * PIXELS) as f32;
    let canvas = Canvas {
        width: pixels(wide),
        height: pixels(deep),
        text: 1.0,
        margin: 0.0,
    };
    let sheet = lay_out(&scene, &canvas, None);
    let palette = Palette::of(super::Theme::Sun);
    to_scale(&sheet, &palette, &scene.says, PIXELS)
}

/// The strip without its measure.
fn flat(template: &Template, units: Units) -> Scene<()> {
    let mut scene = Scene::empty("A strip to wrap round the pipe");
    let high = template.cut_back + MARGIN * 2;
    let at = |x: Length, up: Length| Point::new(x, -up);
    scene.marks.push(Mark::Path {
        points: vec![
            at(Length::ZERO, Length::ZERO),
            at(template.around, Length::ZERO),
            at(template.around, high),
            at(Length::ZERO, high),
        ],
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
        fill: Some(Role::Board),
    });
    let last = template.ordinates.len().saturating_sub(1);
    for (station, (along, up)) in template.ordinates.iter().enumerate() {
        let quarter = station % 4 == 0;
        scene.marks.push(Mark::Path {
            points: vec![at(*along, Length::ZERO), at(*along, MARGIN + *up)],
            closed: false,
            pen: Some(if quarter {
                Pen::solid(Role::Soft, Stroke::Thin)
            } else {
                Pen::dashed(Role::Soft, Stroke::Hair)
            }),
            fill: None,
        });
        if quarter && station != last && *up > Length::ZERO {
            scene.marks.push(Mark::Text {
                at: at(*along, MARGIN.half()),
                text: units.length(*up, Rounding::Nearest, Figures::Set),
                role: Role::Ink,
                align: Align::Middle,
                bold: false,
                fit: Fit::Shrunk(template.around.divided(5)),
            });
        }
    }
    scene.marks.push(Mark::Path {
        points: cut(template),
        closed: false,
        pen: Some(Pen::solid(Role::Chalk, Stroke::Medium)),
        fill: None,
    });
    scene
}

/// The cut as a fine line: between two stations the same cosine as at them.
fn cut(template: &Template) -> Vec<Point> {
    const FINE: i64 = 128;
    (0..=FINE)
        .map(|n| {
            let round = std::f64::consts::TAU * n as f64 / FINE as f64;
            let up = template.cut_back.metres() * (1.0 - round.cos()) / 2.0;
            Point::new(
                (template.around * n).divided(FINE),
                -(MARGIN + Length::from_metres(up).unwrap_or_default()),
            )
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Angle;
    use crate::trades::pipe::{STATIONS, template};

    /// What is drawn between stations goes through them.
    #[test]
    fn the_line_goes_through_every_ordinate() {
        let strip = template(Length::inches(2), Angle::degrees(45), STATIONS).expect("a strip");
        let line = cut(&strip);
        for (station, (along, up)) in strip.ordinates.iter().enumerate() {
            let point = line[station * 8];
            assert!((point.x - *along).abs() <= Length::nm(2));
            assert!((-point.y - MARGIN - *up).abs() <= Length::nm(2));
        }
    }

    /// A sheet is as large in its file as the strip is round the pipe, an inch clear.
    #[test]
    fn a_sheet_prints_at_its_own_size() {
        for across in [2, 4] {
            let strip = template(Length::inches(across), Angle::ZERO, STATIONS).expect("a strip");
            let text = strip_sheet(&strip, Units::FeetInches { marks: 16 });
            let wide = (across as f64 * std::f64::consts::PI).max(4.0) + 1.0;
            let width = text
                .split("width=\"")
                .nth(1)
                .and_then(|rest| rest.split("in\"").next());
            let width: f64 = width
                .and_then(|width| width.parse().ok())
                .expect("in inches");
            assert!((width - wide).abs() < 1e-3, "{width} {wide}");
            // The frame reaches from edge to edge, so that nothing was shrunk to fit.
            let edge = format!("L{:.2} ", wide * PIXELS);
            assert!(text.contains(&edge), "{edge}");
        }
    }
}
