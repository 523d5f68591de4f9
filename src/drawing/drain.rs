//! The sketch of a drain along its run: the joists or studs on its way, each hole with its height, and the limits.

use super::{Align, Dimension, Edge, Fit, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::handbook::drain as book;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::drain::{Ask, Field, Figure, Through};

/// How thick a joist or a stud is drawn.
const THICK: Length = Length::in_64(1, 32);
/// How far studs are shown above and below the pipe.
const ROUND: Length = Length::inches(4);

/// Places along the run and heights, which are drawn so many times as large.
#[derive(Clone, Copy)]
struct Frame {
    stretch: i64,
    low: Length,
    high: Length,
}

impl Frame {
    fn at(self, along: Length, height: Length) -> Point {
        Point::new(along, -height * self.stretch)
    }
    /// Where the heights of holes are written, below all that is drawn.
    fn foot(self) -> Length {
        self.low - (self.high - self.low).divided(6)
    }
}

/// The lowest and the highest that is drawn.
fn reach(ask: &Ask, figure: &Figure) -> (Length, Length) {
    let half = ask.size.of(&book::OUTSIDE.value).half();
    let (low, high) = (figure.end - half, figure.start + half);
    match ask.through {
        Through::Joists { depth, .. } => (low.min(Length::ZERO), high.max(depth)),
        Through::Studs { .. } => (low - ROUND, high + ROUND),
        Through::Open => (low - half, high + half),
    }
}

/// How many times as large as lengths heights are drawn, so that the fall can be seen.
#[must_use]
pub fn drain_stretch(ask: &Ask, figure: &Figure) -> i64 {
    let (low, high) = reach(ask, figure);
    let tall = (high - low).as_nm().max(1);
    (ask.run.as_nm() * 2 / 5 / tall).clamp(1, 12)
}

/// The run from its upper end at the left; a tap on a blue figure asks for its field.
#[must_use]
pub fn drain_sketch(ask: &Ask, figure: &Figure, units: Units) -> Scene<Field> {
    let (low, high) = reach(ask, figure);
    let frame = Frame {
        stretch: drain_stretch(ask, figure),
        low,
        high,
    };
    let mut scene = Scene::empty(format!(
        "The drain along its run, from its upper end at the left, heights drawn {} times as large",
        frame.stretch
    ));
    members(ask, figure, frame, &mut scene.marks);
    let half = ask.size.of(&book::OUTSIDE.value).half();
    let (upper, lower) = (figure.start, figure.end);
    scene.marks.push(Mark::Path {
        points: vec![
            frame.at(Length::ZERO, upper + half),
            frame.at(ask.run, lower + half),
            frame.at(ask.run, lower - half),
            frame.at(Length::ZERO, upper - half),
        ],
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::ChalkWash),
    });
    let ends = (frame.at(Length::ZERO, upper), frame.at(ask.run, lower));
    scene
        .marks
        .push(Mark::line(ends.0, ends.1, Pen::centre(Role::Ink)));
    let level = frame.at(ask.run, upper);
    scene.marks.push(Mark::line(
        ends.0,
        level,
        Pen::dashed(Role::Soft, Stroke::Hair),
    ));
    holes(ask, figure, units, frame, &mut scene.marks);
    scene.dimensions = dimensions(ask, figure, frame, units);
    scene
}

/// The joists cut through, or the studs seen from the room, and where the centre of a hole may stand.
fn members(ask: &Ask, figure: &Figure, frame: Frame, marks: &mut Vec<Mark>) {
    let (low, high) = match ask.through {
        Through::Joists { depth, .. } => (Length::ZERO, depth),
        _ => (frame.low, frame.high),
    };
    let at = |along, height| frame.at(along, height);
    let edge = Some(Pen::solid(Role::Soft, Stroke::Thin));
    for hole in &figure.holes {
        let (left, right) = (hole.at - THICK.half(), hole.at + THICK.half());
        marks.push(Mark::rectangle(
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
        marks.push(Mark::line(at(Length::ZERO, edge), at(ask.run, edge), soft));
    }
    if let Some((from, to)) = figure.place {
        for limit in [from, to] {
            let pen = Pen::dashed(Role::Green, Stroke::Hair);
            marks.push(Mark::line(at(Length::ZERO, limit), at(ask.run, limit), pen));
        }
    }
}

/// Each hole in its member, red where it is beyond its limits, with the height of its centre below it.
fn holes(ask: &Ask, figure: &Figure, units: Units, frame: Frame, marks: &mut Vec<Mark>) {
    let Some((_, spacing, _)) = ask.through.spaced() else {
        return;
    };
    for hole in figure.holes.iter().filter(|hole| !hole.clear) {
        let good = hole.faults.is_empty();
        let role = if good { Role::Ink } else { Role::Red };
        let (half, radius) = (THICK.half(), figure.hole.half());
        // Cut lengthwise, a hole is as wide as its member.
        for edge in [hole.centre - radius, hole.centre + radius] {
            let ends = [hole.at - half, hole.at + half].map(|along| frame.at(along, edge));
            marks.push(Mark::line(
                ends[0],
                ends[1],
                Pen::solid(role, Stroke::Heavy),
            ));
        }
        marks.push(Mark::Dot {
            at: frame.at(hole.at, hole.centre),
            role,
        });
        marks.push(Mark::Text {
            at: frame.at(hole.at, frame.foot()),
            text: units.length(hole.centre, Rounding::Nearest, Figures::Set),
            role,
            align: Align::Middle,
            bold: !good,
            fit: Fit::Shrunk((spacing * 9).divided(10)),
        });
    }
}

fn dimensions(ask: &Ask, figure: &Figure, frame: Frame, units: Units) -> Vec<Dimension<Field>> {
    let at = |along, height| frame.at(along, height);
    // Below the heights of the holes.
    let low = frame.foot() - (frame.high - frame.low).divided(12);
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
        spaced(&mut push, figure, (first, spacing), frame);
    } else if let Through::Studs { first, spacing, .. } = ask.through {
        spaced(&mut push, figure, (first, spacing), frame);
    }
    if ask.through == Through::Open {
        push(
            (at(ask.run, figure.end), at(ask.run, figure.start)),
            Edge::Right(1),
            figure.total,
            None,
            false,
            "Fall over the run",
        );
    }
    // In studs the floor is far below.
    let from = if matches!(ask.through, Through::Studs { .. }) {
        frame.low
    } else {
        none
    };
    push(
        (at(none, from), at(none, figure.start)),
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
    frame: Frame,
) {
    let at = |along, height| frame.at(along, height);
    let high = frame.high;
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
