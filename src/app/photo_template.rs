//! A traced outline with what is cut out of it, as a template: points from its lower left corner, each with its ±.

use std::fmt::Write;

use super::Command;
use super::photo_page::name;
use crate::drawing::{
    Align, Dimension, Edge, Fit, Mark as Drawn, Pen, Role, Scene, Standing, Stroke,
};
use crate::geometry::{PlaneView, Point, Spot, distance};
use crate::measure::{Length, plain};
use crate::photo::{Mark, Photo, STATED, What};

/// A point of a template: right and up from the outline's lower left corner, in metres, and by how much it may be off.
pub(super) type Place = (Spot, f64);

/// An outline and what is cut out of it.
pub(super) struct Template {
    pub outline: Vec<Place>,
    pub cuts: Vec<Cut>,
}

/// What is cut out.
pub(super) struct Cut {
    pub name: String,
    pub places: Vec<Place>,
    /// It is round, of this width.
    pub round: Option<Length>,
}

impl Template {
    /// The most that any of its points may be off.
    pub(super) fn give(&self) -> Length {
        let places = self.cuts.iter().flat_map(|cut| &cut.places);
        let most = places.chain(&self.outline).map(|(_, give)| *give);
        Length::from_metres(most.fold(0.0, f64::max)).unwrap_or_default()
    }

    /// Across and up.
    pub(super) fn size(&self) -> (Length, Length) {
        let most = |axis: usize| {
            let along = self.outline.iter().map(|(place, _)| place[axis]);
            Length::from_metres(along.fold(0.0, f64::max)).unwrap_or_default()
        };
        (most(0), most(1))
    }
}

/// Whether a place lies within an outline.
fn within(outline: &[Spot], at: Spot) -> bool {
    let mut inside = false;
    for (n, a) in outline.iter().enumerate() {
        let b = outline[(n + 1) % outline.len()];
        if (a[1] > at[1]) != (b[1] > at[1])
            && at[0] < a[0] + (at[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        {
            inside = !inside;
        }
    }
    inside
}

/// An area mark as a template, from its lower left corner; other areas and hidden points within it are cut out.
pub(super) fn template(photo: &Photo, view: &PlaneView, number: u32) -> Option<Template> {
    let mark = photo.mark(number).filter(|mark| is_outline(mark))?;
    let flat = |mark: &Mark| -> Option<Vec<Spot>> {
        let places = mark.points.iter();
        places.map(|spot| view.place(*spot)).collect()
    };
    let outline = flat(mark)?;
    let left = outline.iter().map(|p| p[0]).fold(f64::MAX, f64::min);
    let low = outline.iter().map(|p| p[1]).fold(f64::MIN, f64::max);
    // What the figures are told from: the corner nearest to the lower left.
    let corner = (0..outline.len()).min_by(|a, b| {
        let off = |n: usize| distance(outline[n], [left, low]);
        off(*a).total_cmp(&off(*b))
    })?;
    let from = mark.points[corner];
    let place = |spot: Spot, flat: Spot| -> Option<Place> {
        let spread = if spot == from {
            0.0
        } else {
            view.distance(from, spot)?.spread
        };
        Some(([flat[0] - left, low - flat[1]], spread * STATED))
    };
    let all = |mark: &Mark, flat: &[Spot]| -> Option<Vec<Place>> {
        let pairs = mark.points.iter().zip(flat);
        pairs.map(|(spot, flat)| place(*spot, *flat)).collect()
    };
    let mut cuts = Vec::new();
    for other in photo.marks.iter().filter(|other| other.number != number) {
        let (cut, round) = match &other.what {
            What::Area(_) => (is_outline(other), None),
            What::Hidden(behind) => (other.points.len() == 1, behind.width),
            _ => continue,
        };
        let Some(flat) =
            flat(other).filter(|flat| cut && flat.iter().all(|p| within(&outline, *p)))
        else {
            continue;
        };
        cuts.push(Cut {
            name: name(other),
            places: all(other, &flat)?,
            round,
        });
    }
    Some(Template {
        outline: all(mark, &outline)?,
        cuts,
    })
}

pub(super) fn is_outline(mark: &Mark) -> bool {
    matches!(mark.what, What::Area(_)) && mark.points.len() >= 3
}

/// The template as a drawing: dashed, for it is an estimate; its points numbered, its width and height as they are given.
pub(super) fn sketch(template: &Template, [width, height]: [String; 2]) -> Scene<Command> {
    let mut scene = Scene::empty("Outline from a picture, estimated");
    let (wide, high) = template.size();
    let at = |x: Length, y: Length| Point::new(x, -y);
    for (to, edge, text, what) in [
        (at(wide, Length::ZERO), Edge::Right(1), width, "Width"),
        (at(Length::ZERO, high), Edge::Left(1), height, "Height"),
    ] {
        scene.dimensions.push(Dimension {
            from: at(Length::ZERO, Length::ZERO),
            to,
            beyond: false,
            edge,
            says: format!("{what}, estimated, {}", plain(&text)),
            text,
            standing: Standing::Estimate,
            tag: None,
        });
    }
    let shapes = template.cuts.iter().map(|cut| (&cut.places, cut.round));
    for (places, round) in std::iter::once((&template.outline, None)).chain(shapes) {
        let points: Vec<Point> = places.iter().filter_map(|(place, _)| up(*place)).collect();
        if let [middle] = points[..] {
            scene.marks.push(Drawn::Circle {
                centre: middle,
                radius: round.map_or(Length::in_64(0, 32), Length::half),
                pen: Some(Pen::dashed(Role::Chalk, Stroke::Medium)),
                fill: None,
            });
        }
        for (n, at) in points.iter().enumerate() {
            scene.marks.push(Drawn::Text {
                at: *at,
                text: (n + 1).to_string(),
                role: Role::Soft,
                align: Align::End,
                bold: false,
                fit: Fit::Always,
            });
        }
        if points.len() > 1 {
            scene.marks.push(Drawn::Path {
                points,
                closed: true,
                pen: Some(Pen::dashed(Role::Ink, Stroke::Medium)),
                fill: None,
            });
        }
    }
    scene
}

/// The template as an SVG a millimetre of which is one of the wall, cut-outs and all; `says` goes into its title.
pub(super) fn svg(template: &Template, says: &str) -> String {
    let (wide, high) = template.size();
    let (wide, high) = (wide.metres() * 1e3, high.metres() * 1e3);
    let at = |place: &Place| (place.0[0] * 1e3, high - place.0[1] * 1e3);
    let look = "fill=\"none\" stroke=\"black\" stroke-width=\"0.5\" stroke-dasharray=\"4 2\"";
    let mut shapes = String::new();
    let cuts = template.cuts.iter().map(|cut| (&cut.places, cut.round));
    for (places, round) in std::iter::once((&template.outline, None)).chain(cuts) {
        if let [middle] = &places[..] {
            let (x, y) = at(middle);
            let radius = round.map_or(5.0, |round| round.metres() * 500.0);
            let _ = writeln!(
                shapes,
                "<circle cx=\"{x:.2}\" cy=\"{y:.2}\" r=\"{radius:.2}\" {look}/>"
            );
            continue;
        }
        let points: Vec<String> = places
            .iter()
            .map(|place| {
                let (x, y) = at(place);
                format!("{x:.2},{y:.2}")
            })
            .collect();
        let _ = writeln!(shapes, "<polygon points=\"{}\" {look}/>", points.join(" "));
    }
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide:.2}mm\" height=\"{high:.2}mm\" viewBox=\"0 0 {wide:.2} {high:.2}\">\n<title>Outline from a picture, an estimate: put a tape on it before you cut. {says}</title>\n{shapes}</svg>\n"
    )
}

/// A place as a point of a sketch.
pub(super) fn up(place: Spot) -> Option<Point> {
    Some(Point::new(
        Length::from_metres(place[0])?,
        -Length::from_metres(place[1])?,
    ))
}
