//! The plan of a room: its walls, letters and dimensions.

use super::elevation::{drawable, whose};
use super::plan_more;
use super::{Align, Dimension, Edge, Fit, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::{Point, Polygon};
use crate::measure::{Angle, Figures, Length, Rounding, Units};
use crate::site::{self, Opening, OpeningKind, Room, Side, Wall};

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
    /// A diagonal, by its corners.
    Diagonal(usize, usize),
    /// A corner, by the wall whose left end it is.
    Corner(usize),
    /// A wall itself, for changing the outline.
    WallBody(usize),
    /// A fixture.
    Fixture(usize),
    /// A fixed point on the floor.
    Fixed(usize),
}

/// What is shown on a plan besides walls and openings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PlanLook {
    /// The diagonals that are measured or worth measuring.
    pub diagonals: bool,
    /// How many times the corners are drawn further out of square than they are; 0 draws the room as it is.
    pub exaggerated: u8,
    /// Walls and corners can be tapped.
    pub handles: bool,
    /// The corner or wall that is chosen.
    pub chosen: Option<PlanTag>,
    /// What is asked next: its figure stands on the plan whatever else has to give way.
    pub asked: Option<site::What>,
}

/// The plan of a room as it stands, measured or not.
#[must_use]
pub fn plan(room: &Room, units: Units) -> Scene<PlanTag> {
    plan_seen(room, units, &PlanLook::default())
}

/// The plan of a room with more on it.
#[must_use]
pub fn plan_seen(room: &Room, units: Units, look: &PlanLook) -> Scene<PlanTag> {
    let shape = site::sketch(room);
    let drawn = plan_more::exaggerated(room, &shape, look.exaggerated);
    let corners = &drawn.unwrap_or_else(|| shape.corners.points.clone());
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
    let square = look.exaggerated > 0;
    if square {
        marks.extend(plan_more::as_said(&shape, corners));
    }
    let mut dimensions = Vec::new();
    let least = least_told(corners);
    if !square {
        marks.extend(plan_more::under_floor(room, &shape));
        marks.extend(plan_more::fixtures(room, &shape));
    }
    for (index, (wall, followed)) in room.walls.iter().zip(&shape.walls).enumerate() {
        let (length, known) = drawable(wall, *followed);
        let (from, to) = (corners[index], corners[(index + 1) % corners.len()]);
        let chosen = look.chosen == Some(PlanTag::WallBody(index));
        if from.distance(to) < least && !chosen {
            continue;
        }
        marks.push(letter(index, from, to));
        let mut wall = dimension(index, (from, to), (length, known), units);
        plan_more::doubt(room, site::What::Wall(index), &mut wall, units);
        // In a notch the figures of two walls stand close together: each says whose it is.
        if room.juts_in(index) {
            wall.text = format!("{} {}", Wall::named(index), wall.text);
        }
        dimensions.push(wall);
    }
    if look.diagonals {
        dimensions.extend(plan_more::diagonals(room, corners, look.asked, units));
    }
    let mut hot: Vec<_> = (0..room.walls.len())
        .filter_map(|wall| plan_more::wall_face(corners, wall, least))
        .collect();
    if !square {
        hot.extend(plan_more::floor_points(room, &shape, &mut marks));
    }
    if square {
        marks.extend(plan_more::corner_words(room, corners, units));
    }
    for (number, opening) in room.openings.iter().enumerate() {
        if let Some((from, to)) = ends(opening, corners) {
            marks.extend(gap(opening, from, to));
            hot.push(Hot {
                min: from,
                max: to,
                tag: PlanTag::Opening(number),
                says: format!("Opening in wall {}", Wall::named(opening.wall)),
            });
        }
    }
    if look.handles {
        hot.clear();
        // They all stay, so that the sketch keeps its scale.
        for dimension in &mut dimensions {
            let body = dimension.tag.map(plan_more::body);
            // A figure chooses its wall, which may be too short for a finger; the chosen one's is measured.
            if body != look.chosen {
                dimension.tag = body;
            }
        }
        hot.extend(plan_more::handles(corners, look.chosen, &mut marks));
    }
    let says = format!("Plan of {}, {} walls", room.name, room.walls.len());
    Scene {
        marks,
        dimensions,
        hot,
        says,
        window: None,
        key: Vec::new(),
        bare: Vec::new(),
    }
}

/// Walls beyond which a plan has no room for the figures of them all.
const TOLD: usize = 16;

/// How long a wall is at least that bears its letter and its figure on a plan; the list has every one.
fn least_told(corners: &[Point]) -> Length {
    if corners.len() <= TOLD {
        return Length::ZERO;
    }
    let bounds = Polygon {
        points: corners.to_vec(),
    }
    .bounds();
    bounds.map_or(Length::ZERO, |(least, most)| {
        (most.x - least.x).max(most.y - least.y).divided(8)
    })
}

/// Where an opening begins and ends on its wall's line, once it is measured.
fn ends(opening: &Opening, corners: &[Point]) -> Option<(Point, Point)> {
    let (from, to) = (
        *corners.get(opening.wall)?,
        corners[(opening.wall + 1) % corners.len()],
    );
    let (run, long) = (to - from, from.distance(to).metres().max(1e-9));
    let along = |by: Length| {
        let share = by.metres() / long;
        let part = |length: Length| Length::from_metres(length.metres() * share);
        Some(from + Point::new(part(run.x)?, part(run.y)?))
    };
    let left = opening.from_left?;
    Some((along(left)?, along(left + opening.width?)?))
}

/// A gap in the wall; a door with its leaf and swing, anything else with a line across.
fn gap(opening: &Opening, from: Point, to: Point) -> Vec<Mark> {
    let kind = opening.kind;
    let line = |a: Point, b: Point, pen: Pen| Mark::Path {
        points: vec![a, b],
        closed: false,
        pen: Some(pen),
        fill: None,
    };
    let thin = Pen::solid(Role::Ink, Stroke::Thin);
    let mut marks = vec![line(from, to, Pen::solid(Role::Sheet, Stroke::Gap))];
    if kind == OpeningKind::Door {
        let run = to - from;
        let hinge = opening.hinge.unwrap_or_default();
        // Inside is to the right of the way along the wall: the leaf stands a quarter turn in, or out.
        let side = if hinge.out { -1 } else { 1 };
        let left = hinge.side == Side::Left;
        let pivot = if left { from } else { to };
        let leaf = pivot + Point::new(-run.y * side, run.x * side);
        let way = run.y.metres().atan2(run.x.metres()).to_degrees();
        // From the closed leaf clockwise to the open one, or the other way about.
        let starts = match (left, hinge.out) {
            (true, false) => way,
            (true, true) => way - 90.0,
            (false, false) => way + 90.0,
            (false, true) => way + 180.0,
        };
        marks.push(line(pivot, leaf, thin));
        marks.push(Mark::Arc {
            centre: pivot,
            radius: from.distance(to),
            from: Angle::from_degrees(starts).unwrap_or_default(),
            sweep: Angle::RIGHT,
            pen: thin,
        });
    } else {
        let pen = if kind == OpeningKind::PassThrough {
            Pen::dashed(Role::Ink, Stroke::Thin)
        } else {
            thin
        };
        marks.push(line(from, to, pen));
    }
    marks
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
        fit: Fit::Always,
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
    let standing = whose(known);
    let (text, says) = if standing == Standing::Asked {
        ("?".to_owned(), format!("Wall {name}, still to measure"))
    } else {
        (
            figure(Figures::Set),
            format!("Wall {name}, {}", figure(Figures::Plain)),
        )
    };
    let tag = Some(PlanTag::Wall(index));
    Dimension {
        from,
        to,
        beyond: false,
        edge: Edge::Left(1),
        text,
        standing,
        tag,
        says,
    }
}
