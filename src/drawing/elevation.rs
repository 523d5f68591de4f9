//! One wall seen from inside: its studs, openings and dimensions.

use super::{Dimension, Edge, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{self, Opening, OpeningKind, Room, Studs, Wall};

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
    if let Some(studs) = &wall.studs {
        draw_studs(&mut scene.marks, studs, (long, high), centre);
    }
    let openings = room.openings.iter().enumerate();
    for (number, opening) in openings.filter(|(_, opening)| opening.wall == index) {
        draw_opening(&mut scene, number, opening, units);
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

/// Studs behind the board: faces dashed, centres dash-dot.
fn draw_studs(marks: &mut Vec<Mark>, studs: &Studs, (long, high): (Length, Length), centre: Pen) {
    let (Studs::Spaced { face, .. } | Studs::Found { face, .. }) = studs;
    let half = face.half();
    for at in studs.centres(long) {
        let face = Pen::dashed(Role::Soft, Stroke::Hair);
        for (x, pen) in [(at - half, face), (at, centre), (at + half, face)] {
            marks.push(Mark::Path {
                points: vec![Point::new(x, Length::ZERO), Point::new(x, -high)],
                closed: false,
                pen: Some(pen),
                fill: None,
            });
        }
    }
}

/// An opening and its measures; one that is not measured is sketched dashed, with question marks.
fn draw_opening(scene: &mut Scene<WallTag>, number: usize, opening: &Opening, units: Units) {
    let door = opening.kind == OpeningKind::Door;
    // Sizes to draw while none is measured; they figure nothing.
    let sketched = if door {
        [12, 30, 80, 0]
    } else {
        [12, 24, 30, 48]
    }
    .map(Length::inches);
    let given = [
        opening.from_left,
        opening.width,
        opening.height,
        opening.sill,
    ];
    let [left, w, h, sill] = [0, 1, 2, 3].map(|n| given[n].unwrap_or(sketched[n]));
    let whole = given.iter().all(Option::is_some);
    let edge = Pen {
        role: Role::Ink,
        stroke: Stroke::Medium,
        line: if whole { Line::Solid } else { Line::Dashed },
    };
    scene
        .marks
        .push(rectangle(left, sill, (w, h), edge, Role::Paper));
    let at = |x, y: Length| Point::new(x, -y);
    let (top, middle, across) = (sill + h, sill + h.half(), left + w.half());
    let mut add = |ends, edge, n: usize, tag| {
        let length = given[n].unwrap_or(sketched[n]);
        let standing = if given[n].is_some() {
            Standing::Yours
        } else {
            Standing::Asked
        };
        if length.is_positive() {
            scene
                .dimensions
                .push(dimension(ends, edge, (length, standing), tag, units));
        }
    };
    let (width, height) = (
        WallTag::OpeningWidth(number),
        WallTag::OpeningHeight(number),
    );
    add((at(left, top), at(left + w, top)), Edge::Left(1), 1, width);
    add(
        (at(left + w, top), at(left + w, sill)),
        Edge::Left(1),
        2,
        height,
    );
    let from_left = (at(Length::ZERO, middle), at(left, middle));
    add(
        from_left,
        Edge::Left(0),
        0,
        WallTag::OpeningFromLeft(number),
    );
    if !door {
        let up = (at(across, sill), at(across, Length::ZERO));
        add(up, Edge::Left(0), 3, WallTag::OpeningSill(number));
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
        beyond: false,
        edge,
        text,
        standing,
        tag: Some(tag),
        says,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Canvas, lay_out};

    fn room() -> Room {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(Length::inches(88));
        room.ceiling = Some(Length::inches(96));
        let opening = |kind, from_left: Option<i64>| Opening {
            kind,
            wall: 0,
            from_left: from_left.map(Length::inches),
            width: None,
            height: Some(Length::inches(30)),
            sill: None,
        };
        room.openings = vec![
            opening(OpeningKind::Door, Some(4)),
            opening(OpeningKind::Window, None),
        ];
        room
    }

    #[test]
    fn what_is_not_measured_is_asked_for_on_the_drawing() {
        let scene = wall(&room(), 0, Units::FeetInches { marks: 16 });
        let standing = |tag| {
            scene
                .dimensions
                .iter()
                .find(|d| d.tag == Some(tag))
                .map(|d| d.standing)
        };
        assert_eq!(standing(WallTag::OpeningFromLeft(0)), Some(Standing::Yours));
        assert_eq!(standing(WallTag::OpeningWidth(0)), Some(Standing::Asked));
        assert_eq!(
            standing(WallTag::OpeningSill(0)),
            None,
            "a door has no sill"
        );
        assert_eq!(standing(WallTag::OpeningSill(1)), Some(Standing::Asked));
    }

    #[test]
    fn every_figure_of_a_wall_stays_on_the_sheet_and_off_the_others() {
        let scene = wall(&room(), 0, Units::FeetInches { marks: 16 });
        for (width, height) in [(412.0, 340.0), (824.0, 600.0), (1083.0, 740.0)] {
            let sheet = lay_out(
                &scene,
                &Canvas {
                    width,
                    height,
                    text: 1.0,
                    margin: 12.0,
                },
                None,
            );
            for (n, [x, y, w, h]) in sheet.boxes.iter().enumerate() {
                assert!(
                    *x >= 0.0 && *y >= 0.0 && x + w <= width && y + h <= height,
                    "{n}"
                );
                for [a, b, c, d] in &sheet.boxes[n + 1..] {
                    let apart = x + w <= *a || a + c <= *x || y + h <= *b || b + d <= *y;
                    assert!(apart, "figure {n} lies over another at {width} by {height}");
                }
            }
        }
    }
}
