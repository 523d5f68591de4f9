//! What else is on a plan: fixtures, points on the floor, diagonals, corners out of square, handles.

use super::plan::PlanTag;
use super::{Align, Dimension, Edge, Fit, Hot, Line, Mark, Pen, Role, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{self, On, Room, Shape, Wall, What};

/// A figure that is not sure: an estimate is dashed and bears its ±, a figure carried over is dashed.
pub(super) fn doubt<T>(room: &Room, what: What, dimension: &mut Dimension<T>, units: Units) {
    let mark = room.mark(what);
    let figure = |length: Length, figures| units.length(length, Rounding::Nearest, figures);
    if let (Standing::Ours, What::Wall(wall)) = (dimension.standing, what)
        && let Some(more_or_less) = site::follows_plus_minus(room, wall)
    {
        dimension.text = format!(
            "{} ± {}",
            dimension.text,
            figure(more_or_less, Figures::Set)
        );
        dimension.says = format!(
            "{}, more or less {}",
            dimension.says,
            figure(more_or_less, Figures::Plain)
        );
    }
    if dimension.standing != Standing::Yours {
        return;
    }
    if let Some(more_or_less) = mark.estimate {
        dimension.standing = Standing::Estimate;
        dimension.text = format!(
            "{} ± {}",
            dimension.text,
            figure(more_or_less, Figures::Set)
        );
        dimension.says = format!(
            "{}, an estimate, more or less {}",
            dimension.says,
            figure(more_or_less, Figures::Plain)
        );
    } else if mark.carried {
        dimension.standing = Standing::Estimate;
        dimension.says = format!("{}, carried over, not confirmed", dimension.says);
    }
}

/// The corners so many times further out of square than they are; `None` where the tape does not say.
pub(super) fn exaggerated(room: &Room, shape: &Shape, times: u8) -> Option<Vec<Point>> {
    if times == 0 {
        return None;
    }
    let found = site::surveyed(room)?;
    let square = site::laid_as_said(room)?;
    let times = i64::from(times);
    let corners = found.outline.points.iter().zip(&square);
    let drawn: Vec<Point> = corners
        .map(|(is, said)| {
            let off = *is - *said;
            *said + Point::new(off.x * times, off.y * times)
        })
        .collect();
    (drawn.len() == shape.corners.points.len()).then_some(drawn)
}

/// The room as it is, dashed, under one that is drawn further out of square.
pub(super) fn as_said(shape: &Shape, drawn: &[Point]) -> Option<Mark> {
    (shape.corners.points != drawn).then(|| Mark::Path {
        points: shape.corners.points.clone(),
        closed: true,
        pen: Some(Pen::dashed(Role::Soft, Stroke::Thin)),
        fill: None,
    })
}

/// How far each corner is out of square, beside it.
pub(super) fn corner_words(room: &Room, corners: &[Point], units: Units) -> Vec<Mark> {
    let Some(found) = site::surveyed(room) else {
        return Vec::new();
    };
    let (mut x, mut y) = (0.0, 0.0);
    for corner in corners {
        x += corner.x.metres() / corners.len() as f64;
        y += corner.y.metres() / corners.len() as f64;
    }
    let word = |(at, corner): (&Point, &site::CornerFound)| {
        let (dx, dy) = (x - at.x.metres(), y - at.y.metres());
        // Inside the corner, from its wall on, so that no word runs over the wall.
        let inside = |metres: f64| Length::from_metres(metres).unwrap_or_default();
        let (right, down) = (0.09_f64.copysign(dx), 0.2_f64.copysign(dy));
        let over = units.length(corner.over.abs(), Rounding::Nearest, Figures::Set);
        let open = match corner.off.as_microdegrees().signum() {
            -1 => "open",
            1 => "closed",
            _ => "square",
        };
        let nothing = corner.over.abs() < Length::in_64(0, 2);
        Mark::Text {
            at: *at + Point::new(inside(right), inside(down)),
            text: if nothing {
                "square".into()
            } else {
                format!("{over} {open}")
            },
            role: if nothing { Role::Soft } else { Role::Amber },
            align: if dx > 0.0 { Align::Start } else { Align::End },
            bold: false,
            fit: Fit::Always,
        }
    };
    corners.iter().zip(&found.corners).map(word).collect()
}

/// The fixtures as they stand.
pub(super) fn fixtures(room: &Room, shape: &Shape) -> Vec<Mark> {
    let mut marks = Vec::new();
    for fixture in &room.fixtures {
        let Some(corners) = site::footprint(fixture, shape) else {
            continue;
        };
        marks.push(Mark::Path {
            points: corners.to_vec(),
            closed: true,
            pen: Some(Pen::solid(Role::Soft, Stroke::Medium)),
            fill: Some(Role::Board),
        });
        let middle = |a: Point, b: Point| Point::new((a.x + b.x).half(), (a.y + b.y).half());
        let at = middle(corners[0], corners[2]);
        marks.push(Mark::Text {
            at,
            text: fixture.kind.name().into(),
            role: Role::Soft,
            align: Align::Middle,
            bold: false,
            fit: Fit::Shrunk(corners[0].distance(corners[1])),
        });
    }
    marks
}

/// What is hidden under the floor: dashed lines, and circles where there is one place.
pub(super) fn under_floor(room: &Room, shape: &Shape) -> Vec<Mark> {
    let mut marks = Vec::new();
    for hidden in &room.hidden {
        let On::Floor(wall) = hidden.on else { continue };
        let spots = hidden.line.iter();
        let points: Option<Vec<Point>> = spots
            .map(|spot| site::off_wall(shape, wall, spot.from_left, spot.up))
            .collect();
        let Some(points) = points.filter(|points| !points.is_empty()) else {
            continue;
        };
        let pen = Pen::dashed(Role::Chalk, Stroke::Medium);
        marks.push(if let [centre] = points[..] {
            Mark::Circle {
                centre,
                radius: hidden.width.map_or(Length::inches(2), Length::half),
                pen: Some(pen),
                fill: None,
            }
        } else {
            Mark::Path {
                points,
                closed: false,
                pen: Some(pen),
                fill: None,
            }
        });
    }
    marks
}

/// Fixed points: on the floor where they are, on a wall at its foot.
pub(super) fn floor_points(room: &Room, shape: &Shape, marks: &mut Vec<Mark>) -> Vec<Hot<PlanTag>> {
    let mut hot = Vec::new();
    for (number, point) in room.fixed.iter().enumerate() {
        let out = match point.on {
            On::Floor(_) => point.up.unwrap_or_default(),
            On::Wall(_) => Length::ZERO,
        };
        let Some(along) = point.from_left else {
            continue;
        };
        let Some(at) = site::off_wall(shape, point.on.wall(), along, out) else {
            continue;
        };
        if matches!(point.on, On::Floor(_)) {
            marks.push(Mark::Circle {
                centre: at,
                radius: point.width.map_or(Length::inches(2), Length::half),
                pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
                fill: Some(Role::Paper),
            });
        }
        marks.push(Mark::Dot {
            at,
            role: super::elevation_more::role(point.kind),
        });
        hot.push(Hot {
            min: at,
            max: at,
            tag: PlanTag::Fixed(number),
            says: format!(
                "{} at wall {}",
                point.kind.name(),
                Wall::named(point.on.wall())
            ),
        });
    }
    hot
}

/// The diagonals that were measured, and those that are worth measuring.
pub(super) fn diagonals(
    room: &Room,
    corners: &[Point],
    asked: Option<What>,
    units: Units,
) -> Vec<Dimension<PlanTag>> {
    let mut whats = room.across();
    let measured = room.survey.figures.keys().copied();
    for what in measured.filter(|what| matches!(what, What::Diagonal(..))) {
        if !whats.contains(&what) {
            whats.push(what);
        }
    }
    let dimension = |what: What| {
        let What::Diagonal(a, b) = what else {
            return None;
        };
        let read = room.measured(what);
        let passed = room.mark(what).passed.is_some();
        if read.is_none() && passed {
            return None;
        }
        let name = format!(
            "Across from corner {} to corner {}",
            Wall::named(a),
            Wall::named(b)
        );
        let figure = |figures| read.map(|read| units.length(read, Rounding::Nearest, figures));
        let mut dimension = Dimension {
            from: *corners.get(a)?,
            to: *corners.get(b)?,
            beyond: false,
            edge: if asked == Some(what) {
                Edge::Left(0)
            } else {
                Edge::Across
            },
            text: figure(Figures::Set).unwrap_or_else(|| "?".into()),
            standing: if read.is_some() {
                Standing::Yours
            } else {
                Standing::Asked
            },
            tag: Some(PlanTag::Diagonal(a, b)),
            says: match figure(Figures::Plain) {
                Some(figure) => format!("{name}, {figure}"),
                None => format!("{name}, still to measure"),
            },
        };
        doubt(room, what, &mut dimension, units);
        Some(dimension)
    };
    whats.into_iter().filter_map(dimension).collect()
}

/// The middle of a wall as it is tapped; `None` where it is no longer than that.
pub(super) fn wall_face(corners: &[Point], wall: usize, least: Length) -> Option<Hot<PlanTag>> {
    let (from, to) = (*corners.get(wall)?, corners[(wall + 1) % corners.len()]);
    if from.distance(to) < least {
        return None;
    }
    let part = |n: i64| {
        let share = |a: Length, b: Length| a + ((b - a) * n).divided(4);
        Point::new(share(from.x, to.x), share(from.y, to.y))
    };
    // The box about a slanted wall would take in half the room.
    let (across, down) = ((to.x - from.x).abs(), (to.y - from.y).abs());
    let thin = across.min(down) * 8 < across.max(down);
    let (min, max) = if thin {
        (part(1), part(3))
    } else {
        (part(2), part(2))
    };
    Some(Hot {
        min,
        max,
        tag: PlanTag::WallFace(wall),
        says: format!("Wall {}", Wall::named(wall)),
    })
}

/// What a wall's figure stands for where the outline is changed.
pub(super) fn body(tag: PlanTag) -> PlanTag {
    match tag {
        PlanTag::Wall(wall) => PlanTag::WallBody(wall),
        other => other,
    }
}

/// Under this a wall's middle lies under the fingertips of both its corners.
fn little(corners: &[Point]) -> Length {
    let bounds = crate::geometry::Polygon {
        points: corners.to_vec(),
    }
    .bounds();
    bounds.map_or(Length::ZERO, |(least, most)| {
        (most.x - least.x).max(most.y - least.y).divided(4)
    })
}

/// Walls and corners to be tapped, what is chosen drawn in chalk.
pub(super) fn handles(
    corners: &[Point],
    chosen: Option<PlanTag>,
    marks: &mut Vec<Mark>,
) -> Vec<Hot<PlanTag>> {
    let (mut hot, mut short) = (Vec::new(), Vec::new());
    let count = corners.len();
    let little = little(corners);
    for (wall, from) in corners.iter().enumerate() {
        let to = corners[(wall + 1) % count];
        let tag = PlanTag::WallBody(wall);
        if chosen == Some(tag) {
            marks.push(Mark::Path {
                points: vec![*from, to],
                closed: false,
                pen: Some(Pen {
                    role: Role::Chalk,
                    stroke: Stroke::Gap,
                    line: Line::Solid,
                }),
                fill: None,
            });
        }
        // The middle third, so that the corners have their own.
        let part = |share: i64| {
            let run = to - *from;
            *from + Point::new(run.x.divided(3) * share, run.y.divided(3) * share)
        };
        // The chosen wall is free for a finger to take hold of.
        // Where it is hardly longer than a fingertip it goes before its corners, which have their other halves.
        let here = if from.distance(to) < little {
            &mut short
        } else {
            &mut hot
        };
        if chosen != Some(tag) {
            here.push(Hot {
                min: part(1),
                max: part(2),
                tag,
                says: format!("Wall {} on the plan", Wall::named(wall)),
            });
        }
    }
    for (corner, at) in corners.iter().enumerate() {
        let tag = PlanTag::Corner(corner);
        let role = if chosen == Some(tag) {
            Role::Chalk
        } else {
            Role::Ink
        };
        marks.push(Mark::Dot { at: *at, role });
        if chosen == Some(tag) {
            marks.push(Mark::Circle {
                centre: *at,
                radius: Length::inches(3),
                pen: Some(Pen::solid(Role::Chalk, Stroke::Heavy)),
                fill: None,
            });
        }
        hot.push(Hot {
            min: *at,
            max: *at,
            tag,
            says: format!(
                "Corner {}–{}",
                Wall::named((corner + count - 1) % count),
                Wall::named(corner)
            ),
        });
    }
    hot.extend(short);
    hot
}
