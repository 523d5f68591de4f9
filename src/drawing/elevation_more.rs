//! What else is on a wall: fixed points, fixtures and what is hidden behind it; and the wall seen from behind.

use super::elevation::{WallTag, dimension};
use super::{Align, Dimension, Edge, Fit, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Angle, Figures, Length, Rounding, Units};
use crate::site::{FixedKind, HiddenKind, Known, On, Room, Size, Spot};

/// The colour of a fixed point: hot red, cold chalk, all else ink.
pub(super) const fn role(kind: FixedKind) -> Role {
    match kind {
        FixedKind::Hot => Role::Red,
        FixedKind::Cold => Role::Chalk,
        _ => Role::Ink,
    }
}

/// A short word for a fixed point, set beside it.
const fn short(kind: FixedKind) -> &'static str {
    match kind {
        FixedKind::Hot => "H",
        FixedKind::Cold => "C",
        FixedKind::Drain => "D",
        FixedKind::Valve => "V",
        FixedKind::Outlet => "O",
        FixedKind::Switch => "S",
        FixedKind::Niche => "N",
        FixedKind::Blocking => "B",
        FixedKind::Vent => "F",
        FixedKind::Light => "L",
        FixedKind::Heat => "R",
        FixedKind::Other => "?",
    }
}

fn up(x: Length, y: Length) -> Point {
    Point::new(x, -y)
}

fn text(at: Point, text: String, role: Role, align: Align, fit: Fit) -> Mark {
    Mark::Text {
        at,
        text,
        role,
        align,
        bold: false,
        fit,
    }
}

fn path(points: Vec<Point>, closed: bool, pen: Pen, fill: Option<Role>) -> Mark {
    Mark::Path {
        points,
        closed,
        pen: Some(pen),
        fill,
    }
}

/// Fixtures that stand against a wall, as outlines before it.
pub(super) fn fixtures(scene: &mut Scene<WallTag>, room: &Room, wall: usize) {
    let here = room.fixtures.iter().enumerate();
    for (number, fixture) in here.filter(|(_, fixture)| fixture.wall == wall) {
        let (Some((left, right)), Some(high)) = (fixture.reach(), fixture.height) else {
            continue;
        };
        let none = Length::ZERO;
        // Under what is on the wall, and only its upper part, so that the rest stays free.
        scene.hot.push(Hot {
            min: up(left, high),
            max: up(right, high - high.divided(4).min(Length::inches(8))),
            tag: WallTag::Fixture(number),
            says: format!("{}, all its figures", fixture.kind.name()),
        });
        let corners = vec![
            up(left, none),
            up(left, high),
            up(right, high),
            up(right, none),
        ];
        scene.marks.push(path(
            corners,
            true,
            Pen::dashed(Role::Ink, Stroke::Thin),
            None,
        ));
        scene.marks.push(text(
            up((left + right).half(), high - Length::inches(4)),
            fixture.kind.name().into(),
            Role::Soft,
            Align::Middle,
            Fit::Shrunk(right - left),
        ));
    }
}

/// The colour of something hidden: what is live, what carries water, all else.
pub(super) const fn hidden_role(kind: HiddenKind) -> Role {
    match kind {
        HiddenKind::Cable | HiddenKind::ElectricBox => Role::Red,
        HiddenKind::Pipe | HiddenKind::Valve => Role::Chalk,
        _ => Role::Soft,
    }
}

/// What is behind the board: dashed lines, wider where the width is known, with kind and depth.
pub(super) fn hidden(scene: &mut Scene<WallTag>, room: &Room, wall: usize, units: Units) {
    let here = room
        .hidden
        .iter()
        .filter(|hidden| hidden.on == On::Wall(wall));
    for hidden in here {
        let role = hidden_role(hidden.kind);
        let points: Vec<Point> = hidden
            .line
            .iter()
            .map(|spot: &Spot| up(spot.from_left, spot.up))
            .collect();
        let Some(first) = points.first().copied() else {
            continue;
        };
        if points.len() == 1 && hidden.kind == HiddenKind::ElectricBox {
            let half = hidden.width.map_or(Length::inches(1), Length::half);
            let corner = |x: Length, y: Length| first + Point::new(x, y);
            let corners = [
                corner(-half, -half),
                corner(half, -half),
                corner(half, half),
                corner(-half, half),
            ];
            let pen = Pen::dashed(role, Stroke::Medium);
            scene.marks.push(path(corners.to_vec(), true, pen, None));
        } else if points.len() == 1 {
            let radius = hidden.width.map_or(Length::inches(2), Length::half);
            scene.marks.push(Mark::Circle {
                centre: first,
                radius,
                pen: Some(Pen::dashed(role, Stroke::Medium)),
                fill: None,
            });
        } else {
            let pen = Pen {
                role,
                stroke: Stroke::Heavy,
                line: Line::Dashed,
            };
            scene.marks.push(path(points, false, pen, None));
        }
        let mut words = hidden.kind.name().to_owned();
        if let Some(depth) = hidden.depth {
            words = format!("{words}, {} deep", set(depth, units));
        }
        if let Known::Picture(more_or_less) = hidden.known {
            words = format!("{words} ± {}", set(more_or_less, units));
        }
        let beside = first + Point::new(Length::inches(2), -Length::inches(2));
        scene
            .marks
            .push(text(beside, words, role, Align::Start, Fit::Always));
    }
}

fn set(length: Length, units: Units) -> String {
    units.length(length, Rounding::Nearest, Figures::Set)
}

/// The fixed points on a wall, each with its two figures.
pub(super) fn fixed(
    scene: &mut Scene<WallTag>,
    room: &Room,
    wall: usize,
    (long, high): (Length, Length),
    units: Units,
) {
    let here = room.fixed.iter().enumerate();
    for (number, point) in here.filter(|(_, point)| point.on == On::Wall(wall)) {
        // One that is not measured yet is drawn at the middle, and asked for.
        let at = up(
            point.from_left.unwrap_or_else(|| long.half()),
            point.up.unwrap_or_else(|| high.half()),
        );
        let role = role(point.kind);
        let unsure = matches!(point.known, Known::Picture(_))
            || point.from_left.is_none()
            || point.up.is_none();
        let pen = if unsure {
            Pen::dashed(role, Stroke::Medium)
        } else {
            Pen::solid(role, Stroke::Medium)
        };
        match (point.width, point.height) {
            (Some(width), Some(tall)) => {
                let (w, h) = (width.half(), tall.half());
                let corner = |x: Length, y: Length| at + Point::new(x, y);
                let corners = vec![corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)];
                scene.marks.push(path(corners, true, pen, None));
            }
            (width, _) => scene.marks.push(Mark::Circle {
                centre: at,
                radius: width.map_or(Length::inches(1), Length::half),
                pen: Some(pen),
                fill: Some(Role::Paper),
            }),
        }
        scene.marks.push(text(
            at - Point::new(Length::ZERO, Length::inches(4)),
            short(point.kind).into(),
            role,
            Align::Middle,
            Fit::Always,
        ));
        scene.hot.push(Hot {
            min: at,
            max: at,
            tag: WallTag::Point(number),
            says: format!("{}, all its figures", point.kind.name()),
        });
        scene
            .dimensions
            .extend(figures(number, point.from_left, point.up, at, units));
    }
}

/// From the left corner, and up from the floor.
fn figures(
    number: usize,
    from_left: Option<Length>,
    above: Option<Length>,
    at: Point,
    units: Units,
) -> [Dimension<WallTag>; 2] {
    let standing = |given: Option<Length>| given.map_or(Standing::Asked, |_| Standing::Yours);
    [
        (
            (Point::new(Length::ZERO, at.y), at),
            (from_left, at.x),
            Size::FromLeft,
        ),
        (
            (at, Point::new(at.x, Length::ZERO)),
            (above, -at.y),
            Size::Up,
        ),
    ]
    .map(|(ends, (given, drawn), size)| {
        let tag = WallTag::Fixed(number, size);
        dimension(ends, Edge::Left(0), (drawn, standing(given)), tag, units)
    })
}

/// The same wall from behind it: left and right exchanged, so that someone in the next room sees what is where.
#[must_use]
pub fn from_behind<T>(scene: Scene<T>, long: Length) -> Scene<T> {
    let mut scene = scene.with_points(|point| Point::new(long - point.x, point.y));
    for mark in &mut scene.marks {
        match mark {
            Mark::Arc { from, sweep, .. } => *from = Angle::degrees(180) - *from - *sweep,
            Mark::Text { align, .. } => {
                *align = match align {
                    Align::Start => Align::End,
                    Align::Middle => Align::Middle,
                    Align::End => Align::Start,
                };
            }
            _ => {}
        }
    }
    for dimension in &mut scene.dimensions {
        dimension.edge = match dimension.edge {
            Edge::Left(row) => Edge::Right(row),
            Edge::Right(row) => Edge::Left(row),
            Edge::Across => Edge::Across,
        };
    }
    scene.says = format!("{}, from behind", scene.says);
    // Its corners have changed sides.
    scene.window = scene
        .window
        .map(|(a, b)| (Point::new(b.x, a.y), Point::new(a.x, b.y)));
    scene
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::wall;
    use crate::site::{FixedPoint, Room};

    /// What is 20 in from the left is 76 in from the left of 96 in from behind; twice is the same wall.
    #[test]
    fn a_wall_from_behind_has_left_and_right_exchanged() {
        let mut room = Room::rectangle("a");
        let long = Length::inches(96);
        room.walls[0].length = Some(long);
        let mut point = FixedPoint::new(FixedKind::Hot, On::Wall(0));
        point.from_left = Some(Length::inches(20));
        point.up = Some(Length::inches(21));
        room.fixed.push(point);
        let scene = wall(&room, 0, Units::FeetInches { marks: 16 });
        let behind = from_behind(scene.clone(), long);
        let tag = Some(WallTag::Fixed(0, Size::FromLeft));
        let figure = behind.dimensions.iter().find(|d| d.tag == tag);
        assert_eq!(figure.map(|d| d.to.x), Some(Length::inches(76)));
        let again = from_behind(behind, long);
        assert_eq!(
            (again.marks, again.dimensions),
            (scene.marks, scene.dimensions)
        );
    }
}
