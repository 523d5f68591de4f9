//! The plan of a room: its walls, letters and dimensions.

use super::{Align, Dimension, Edge, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{self, Room, Wall};

/// What a tap on a plan asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanTag {
    /// A wall's length.
    Wall(usize),
    /// An opening.
    Opening(usize),
    /// The ceiling's height.
    Ceiling,
    /// A wall's elevation.
    WallFace(usize),
}

/// The plan of a room as it stands, measured or not.
#[must_use]
pub fn plan(room: &Room, units: Units) -> Scene<PlanTag> {
    let shape = site::sketch(room);
    let corners = &shape.corners.points;
    let pen = Pen {
        role: Role::Ink,
        stroke: Stroke::Heavy,
        line: Line::Solid,
    };
    let mut marks = vec![Mark::Path {
        points: corners.clone(),
        closed: true,
        pen: Some(pen),
        fill: Some(Role::Sheet),
    }];
    let mut dimensions = Vec::new();
    for (index, &(length, known)) in shape.walls.iter().enumerate() {
        let (from, to) = (corners[index], corners[(index + 1) % corners.len()]);
        marks.push(letter(index, from, to));
        dimensions.push(dimension(index, (from, to), (length, known), units));
    }
    let says = format!("Plan of {}, {} walls", room.name, room.walls.len());
    Scene {
        marks,
        dimensions,
        hot: Vec::new(),
        says,
        window: None,
    }
}

/// A wall's letter, a little inside its middle.
fn letter(index: usize, from: Point, to: Point) -> Mark {
    let (run, long) = (to - from, from.distance(to).metres().max(1e-9));
    let inside = |share: f64| Length::from_metres(0.15 * share / long).unwrap_or_default();
    let middle = Point::new((from.x + to.x).half(), (from.y + to.y).half());
    let off = Point::new(inside(-run.y.metres()), inside(run.x.metres()));
    Mark::Text {
        at: middle + off,
        text: Wall::named(index),
        role: Role::Soft,
        align: Align::Middle,
        bold: true,
    }
}

/// A wall's length, outside it.
fn dimension(
    index: usize,
    (from, to): (Point, Point),
    (length, known): (Length, site::Standing),
    units: Units,
) -> Dimension<PlanTag> {
    let figure = |figures| units.length(length, Rounding::Nearest, figures);
    let name = Wall::named(index);
    let measured = format!("Wall {name}, {}", figure(Figures::Plain));
    let (text, standing, says) = match known {
        site::Standing::Measured => (figure(Figures::Set), Standing::Yours, measured),
        site::Standing::Follows => (figure(Figures::Set), Standing::Ours, measured),
        site::Standing::NotYet => (
            "?".to_owned(),
            Standing::Asked,
            format!("Wall {name}, still to measure"),
        ),
    };
    let tag = Some(PlanTag::Wall(index));
    Dimension {
        from,
        to,
        edge: Edge::Left(1),
        text,
        standing,
        tag,
        says,
    }
}
