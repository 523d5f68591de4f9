//! The sketch of a drain along its run: the joists or studs on its way, each hole with its height, and the limits.

use super::{Align, Dimension, Edge, Fit, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::handbook::drain as book;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::drain::{Ask, Field, Figure, Through};

/// How thick a joist or a stud is drawn.
const THICK: Length = Length::in_64(1, 32);
/// How far studs are shown above and below the pipe.
const ROUND: Length = Length::inches(7);

fn at(along: Length, height: Length) -> Point {
    Point::new(along, -height)
}

fn solid(from: Point, to: Point, pen: Option<Pen>, fill: Option<Role>) -> Mark {
    Mark::Path {
        points: vec![from, Point::new(to.x, from.y), to, Point::new(from.x, to.y)],
        closed: true,
        pen,
        fill,
    }
}

fn line(from: Point, to: Point, pen: Pen) -> Mark {
    Mark::Path {
        points: vec![from, to],
        closed: false,
        pen: Some(pen),
        fill: None,
    }
}

/// The run from its upper end at the left; a tap on a blue figure asks for its field.
#[must_use]
pub fn drain_sketch(ask: &Ask, figure: &Figure, units: Units) -> Scene<Field> {
    let mut scene = Scene::empty("The drain along its run, from its upper end at the left");
    let pipe = ask.size.of(&book::OUTSIDE.value);
    let (low, high) = match ask.through {
        Through::Joists { depth, .. } => (Length::ZERO, depth),
        _ => (figure.end - ROUND, figure.start + ROUND),
    };
    members(ask, figure, (low, high), &mut scene.marks);
    let half = pipe.half();
    let ends = (at(Length::ZERO, figure.start), at(ask.run, figure.end));
    scene.marks.push(Mark::Path {
        points: vec![
            Point::new(ends.0.x, ends.0.y - half),
            Point::new(ends.1.x, ends.1.y - half),
            Point::new(ends.1.x, ends.1.y + half),
            Point::new(ends.0.x, ends.0.y + half),
        ],
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::ChalkWash),
    });
    scene
        .marks
        .push(line(ends.0, ends.1, Pen::centre(Role::Ink)));
    holes(ask, figure, units, &mut scene.marks);
    scene.dimensions = dimensions(ask, figure, (low, high), units);
    scene
}

/// The joists cut through, or the studs seen from the room, and where the centre of a hole may stand.
fn members(ask: &Ask, figure: &Figure, (low, high): (Length, Length), marks: &mut Vec<Mark>) {
    let edge = Some(Pen::solid(Role::Soft, Stroke::Thin));
    for hole in &figure.holes {
        let (left, right) = (hole.at - THICK.half(), hole.at + THICK.half());
        marks.push(solid(
            at(left, low),
            at(right, high),
            edge,
            Some(Role::Board),
        ));
    }
    if !matches!(ask.through, Through::Joists { .. }) {
        return;
    }
    let soft = Pen::solid(Role::Soft, Stroke::Hair);
    for edge in [low, high] {
        marks.push(line(at(Length::ZERO, edge), at(ask.run, edge), soft));
    }
    if let Some((from, to)) = figure.place {
        for limit in [from, to] {
            let pen = Pen::dashed(Role::Green, Stroke::Hair);
            marks.push(line(at(Length::ZERO, limit), at(ask.run, limit), pen));
        }
    }
}

/// Each hole in its member, red where it is beyond its limits, with the height of its centre beside it.
fn holes(ask: &Ask, figure: &Figure, units: Units, marks: &mut Vec<Mark>) {
    let spacing = match ask.through {
        Through::Joists { spacing, .. } | Through::Studs { spacing, .. } => spacing,
        Through::Open => return,
    };
    for hole in figure.holes.iter().filter(|hole| !hole.clear) {
        let role = if hole.faults.is_empty() {
            Role::Ink
        } else {
            Role::Red
        };
        let (half, radius) = (THICK.half(), figure.hole.half());
        // A hole cut through lengthwise is as wide as its member.
        for edge in [hole.centre - radius, hole.centre + radius] {
            let pen = Pen::solid(role, Stroke::Medium);
            marks.push(line(
                at(hole.at - half, edge),
                at(hole.at + half, edge),
                pen,
            ));
        }
        marks.push(Mark::Dot {
            at: at(hole.at, hole.centre),
            role,
        });
        let below = match ask.through {
            Through::Joists { depth, .. } => hole.centre.min(depth) - radius - THICK,
            _ => hole.centre - radius - THICK,
        };
        marks.push(Mark::Text {
            at: at(hole.at, below),
            text: units.length(hole.centre, Rounding::Nearest, Figures::Set),
            role,
            align: Align::Middle,
            bold: !hole.faults.is_empty(),
            fit: Fit::Shrunk((spacing * 9).divided(10)),
        });
    }
}

fn dimensions(
    ask: &Ask,
    figure: &Figure,
    (low, high): (Length, Length),
    units: Units,
) -> Vec<Dimension<Field>> {
    let set = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    let said = |length: Length| units.length(length, Rounding::Nearest, Figures::Plain);
    let none = Length::ZERO;
    let mut list = Vec::new();
    let mut push = |(from, to): (Point, Point), edge, length: Length, field, yours, what: &str| {
        list.push(Dimension {
            from,
            to,
            beyond: false,
            edge,
            text: set(length),
            standing: if yours {
                Standing::Yours
            } else {
                Standing::Ours
            },
            tag: field,
            says: format!("{what}, {}", said(length)),
        });
    };
    push(
        (at(none, low), at(ask.run, low)),
        Edge::Right(1),
        ask.run,
        Some(Field::Run),
        true,
        "Run",
    );
    if let Through::Joists {
        first,
        spacing,
        depth,
        ..
    } = ask.through
    {
        push(
            (at(ask.run, none), at(ask.run, depth)),
            Edge::Right(1),
            depth,
            Some(Field::Depth),
            true,
            "Depth of a joist",
        );
        spaced(&mut push, figure, (first, spacing), high);
    } else if let Through::Studs { first, spacing, .. } = ask.through {
        spaced(&mut push, figure, (first, spacing), high);
    }
    push(
        (at(none, low.max(none)), at(none, figure.start)),
        Edge::Left(1),
        figure.start,
        Some(Field::Start),
        ask.start.is_some(),
        "Height at the upper end",
    );
    list
}

/// From the upper end to the first member, and from it to the next.
fn spaced(
    push: &mut impl FnMut((Point, Point), Edge, Length, Option<Field>, bool, &str),
    figure: &Figure,
    (first, spacing): (Length, Length),
    high: Length,
) {
    if first.is_positive() && !figure.holes.is_empty() {
        push(
            (at(Length::ZERO, high), at(first, high)),
            Edge::Left(1),
            first,
            Some(Field::First),
            true,
            "Upper end to the first",
        );
    }
    if figure.holes.len() > 1 {
        push(
            (at(first, high), at(first + spacing, high)),
            Edge::Left(1),
            spacing,
            Some(Field::Spacing),
            true,
            "From one to the next",
        );
    }
}
