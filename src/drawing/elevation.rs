//! One wall seen from inside: its studs, openings and dimensions.

use super::{Dimension, Edge, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{self, Room, Wall};

/// What a tap on an elevation asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallTag {
    /// The wall's length.
    Length,
    /// Its height.
    Height,
    /// From the left corner to an opening.
    OpeningFromLeft(usize),
    /// An opening's width.
    OpeningWidth(usize),
    /// An opening's height.
    OpeningHeight(usize),
    /// An opening's sill.
    OpeningSill(usize),
    /// The first stud.
    FirstStud,
    /// The studs' spacing.
    StudSpacing,
    /// An opening.
    Opening(usize),
}

/// The height that is drawn while none is measured.
const SKETCHED_HEIGHT: Length = Length::inches(96);

/// A wall as seen from inside, floor at nothing and ceiling above it; empty where there is no such wall.
#[must_use]
pub fn wall(room: &Room, index: usize, units: Units) -> Scene<WallTag> {
    let shape = site::sketch(room);
    let says = format!("Wall {}", Wall::named(index));
    let mut scene = Scene {
        marks: vec![],
        dimensions: vec![],
        hot: vec![],
        says,
        window: None,
    };
    let (Some(wall), Some(&(long, known))) = (room.walls.get(index), shape.walls.get(index)) else {
        return scene;
    };
    let measured = wall.height.or(room.ceiling);
    let high = measured.unwrap_or(SKETCHED_HEIGHT);
    let edge = Pen {
        role: Role::Ink,
        stroke: Stroke::Medium,
        line: Line::Solid,
    };
    scene.marks.push(rectangle(
        Length::ZERO,
        Length::ZERO,
        (long, high),
        edge,
        Role::Board,
    ));
    let centre = Pen {
        role: Role::Soft,
        stroke: Stroke::Thin,
        line: Line::DashDot,
    };
    for at in wall.studs.iter().flat_map(|studs| studs.centres(long)) {
        let points = vec![Point::new(at, Length::ZERO), Point::new(at, -high)];
        scene.marks.push(Mark::Path {
            points,
            closed: false,
            pen: Some(centre),
            fill: None,
        });
    }
    let openings = room.openings.iter().enumerate();
    for (number, opening) in openings.filter(|(_, opening)| opening.wall == index) {
        if let (Some(left), Some(w), Some(h)) = (opening.from_left, opening.width, opening.height) {
            let sill = opening.sill.unwrap_or_default();
            scene
                .marks
                .push(rectangle(left, sill, (w, h), edge, Role::Paper));
            opening_figures(&mut scene, number, (left, sill), (w, h), units);
        }
    }
    let floor = (Point::default(), Point::new(long, Length::ZERO));
    let whose = match known {
        site::Standing::Measured => Standing::Yours,
        site::Standing::Follows => Standing::Ours,
        site::Standing::NotYet => Standing::Asked,
    };
    scene.dimensions.push(dimension(
        floor,
        Edge::Right(1),
        (long, whose),
        WallTag::Length,
        units,
    ));
    let side = (Point::default(), Point::new(Length::ZERO, -high));
    let whose = measured.map_or(Standing::Asked, |_| Standing::Yours);
    scene.dimensions.push(dimension(
        side,
        Edge::Left(1),
        (high, whose),
        WallTag::Height,
        units,
    ));
    scene
}

/// The measures of an opening: how far from the left corner, its size, and its sill where it has one.
fn opening_figures(
    scene: &mut Scene<WallTag>,
    number: usize,
    (left, sill): (Length, Length),
    (w, h): (Length, Length),
    units: Units,
) {
    let at = |x, y: Length| Point::new(x, -y);
    let mut add = |from, to, edge, length, tag| {
        let figure = (length, Standing::Yours);
        scene
            .dimensions
            .push(dimension((from, to), edge, figure, tag, units));
    };
    let top = sill + h;
    add(
        at(left, top),
        at(left + w, top),
        Edge::Left(1),
        w,
        WallTag::OpeningWidth(number),
    );
    add(
        at(left + w, top),
        at(left + w, sill),
        Edge::Left(1),
        h,
        WallTag::OpeningHeight(number),
    );
    if left.is_positive() {
        let middle = sill + h.half();
        add(
            at(Length::ZERO, middle),
            at(left, middle),
            Edge::Left(0),
            left,
            WallTag::OpeningFromLeft(number),
        );
    }
    if sill.is_positive() {
        let x = left + w.half();
        add(
            at(x, sill),
            at(x, Length::ZERO),
            Edge::Left(0),
            sill,
            WallTag::OpeningSill(number),
        );
    }
}

/// A rectangle by its left edge, its height over the floor and its size.
fn rectangle(left: Length, sill: Length, (w, h): (Length, Length), pen: Pen, fill: Role) -> Mark {
    let at = |x, y: Length| Point::new(x, -y);
    Mark::Path {
        points: vec![
            at(left, sill),
            at(left, sill + h),
            at(left + w, sill + h),
            at(left + w, sill),
        ],
        closed: true,
        pen: Some(pen),
        fill: Some(fill),
    }
}

/// A figure, or a question mark where it is still asked.
fn dimension(
    (from, to): (Point, Point),
    edge: Edge,
    (length, standing): (Length, Standing),
    tag: WallTag,
    units: Units,
) -> Dimension<WallTag> {
    let what = match tag {
        WallTag::Height => "Height",
        WallTag::OpeningFromLeft(_) => "From left corner",
        WallTag::OpeningWidth(_) => "Width of the opening",
        WallTag::OpeningHeight(_) => "Height of the opening",
        WallTag::OpeningSill(_) => "Floor to the opening",
        _ => "Length",
    };
    let figure = |figures| units.length(length, Rounding::Nearest, figures);
    let (text, says) = if standing == Standing::Asked {
        ("?".to_owned(), format!("{what}, still to measure"))
    } else {
        (
            figure(Figures::Set),
            format!("{what}, {}", figure(Figures::Plain)),
        )
    };
    Dimension {
        from,
        to,
        edge,
        text,
        standing,
        tag: Some(tag),
        says,
    }
}
