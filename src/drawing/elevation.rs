//! One wall seen from inside: its studs, openings and dimensions.

use super::elevation_more;
use super::plan_more::doubt;
use super::{Dimension, Edge, Hot, Line, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{self, Opening, OpeningKind, Room, Side, Size, Studs, Wall, What};

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
    /// An opening, all of it.
    Opening(usize),
    /// A fixed point, all of it.
    Point(usize),
    /// A fixture, all of it.
    Fixture(usize),
    /// A size of a fixed point.
    Fixed(usize, Size),
}

/// The height that is drawn while none is measured.
const SKETCHED_HEIGHT: Length = Length::inches(96);

/// A wall as seen from inside, floor at nothing and ceiling above it; empty where there is no such wall.
#[must_use]
pub fn wall(room: &Room, index: usize, units: Units) -> Scene<WallTag> {
    let shape = site::sketch(room);
    let says = format!("Wall {}", Wall::named(index));
    let mut scene = Scene::empty(says);
    let (Some(wall), Some(&followed)) = (room.walls.get(index), shape.walls.get(index)) else {
        return scene;
    };
    let (long, known) = drawable(wall, followed);
    let measured = wall.height.or(room.ceiling);
    let high = measured.unwrap_or(SKETCHED_HEIGHT);
    let (none, edge) = (Length::ZERO, Pen::solid(Role::Ink, Stroke::Medium));
    let (left_high, right_high) = room.heights_of(index).unwrap_or((high, high));
    let at = |(across, up): (Length, Length)| Point::new(across, -up);
    let stands = site::elevation(room, index);
    // While it cannot be known as it stands, from its length and its heights.
    let [[a, b], [d, c]] = stands.as_ref().map_or(
        [
            [(none, none), (none, left_high)],
            [(long, none), (long, right_high)],
        ],
        |stands| [stands.left, stands.right],
    );
    scene.marks.push(Mark::Path {
        points: [a, b, c, d].map(at).to_vec(),
        closed: true,
        pen: Some(edge),
        fill: Some(Role::Board),
    });
    if let Some(studs) = &wall.studs {
        draw_studs(&mut scene.marks, studs, (long, high));
    }
    // One that is not measured is sketched beside the one before it.
    let mut free = Length::inches(12);
    let openings = room.openings.iter().enumerate();
    for (number, opening) in openings.filter(|(_, opening)| opening.wall == index) {
        let right = draw_opening(&mut scene, number, opening, (free, long), units);
        free = free.max(right + Length::inches(8));
    }
    elevation_more::fixtures(&mut scene, room, index);
    elevation_more::hidden(&mut scene, room, index, units);
    elevation_more::fixed(&mut scene, room, index, (long, high), units);
    let (floor, side) = (Point::new(long, none), Point::new(none, -high));
    let height = measured.map_or(Standing::Asked, |_| Standing::Yours);
    for (to, edge, figure, tag) in [
        (floor, Edge::Right(1), (long, whose(known)), WallTag::Length),
        (side, Edge::Left(1), (high, height), WallTag::Height),
    ] {
        let ends = (Point::default(), to);
        scene
            .dimensions
            .push(dimension(ends, edge, figure, tag, units));
    }
    if let Some(length) = scene.dimensions.iter_mut().rev().nth(1) {
        doubt(room, What::Wall(index), length, units);
    }
    scene
}

/// A wall's length and standing; one that would have to run backwards is asked for.
pub(super) fn drawable(
    wall: &Wall,
    (length, known): (Length, site::Standing),
) -> (Length, site::Standing) {
    if known == site::Standing::Follows && !length.is_positive() {
        (wall.sketched, site::Standing::NotYet)
    } else {
        (length, known)
    }
}

/// How a figure of the site stands on a drawing.
pub(super) fn whose(known: site::Standing) -> Standing {
    match known {
        site::Standing::Measured => Standing::Yours,
        site::Standing::Follows => Standing::Ours,
        site::Standing::NotYet => Standing::Asked,
    }
}

/// Studs behind the board: faces dashed, centres dash-dot.
fn draw_studs(marks: &mut Vec<Mark>, studs: &Studs, (long, high): (Length, Length)) {
    let centre = Pen {
        role: Role::Soft,
        stroke: Stroke::Thin,
        line: Line::DashDot,
    };
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

/// An opening and its measures, and where its right edge is; one that is not measured is sketched dashed, from `free`
/// on in a wall so `long`, with question marks.
fn draw_opening(
    scene: &mut Scene<WallTag>,
    number: usize,
    opening: &Opening,
    (free, long): (Length, Length),
    units: Units,
) -> Length {
    let door = opening.kind == OpeningKind::Door;
    // Sizes to draw while none is measured; they figure nothing.
    let [wide, high, up] = if door { [30, 80, 0] } else { [24, 30, 48] }.map(Length::inches);
    let room = long - opening.width.unwrap_or(wide);
    let sketched = [free.min(room).max(Length::ZERO), wide, high, up];
    let given = [
        opening.from_left,
        opening.width,
        opening.height,
        opening.sill,
    ];
    let [left, w, h, sill] = [0, 1, 2, 3].map(|n| given[n].unwrap_or(sketched[n]));
    let edge = Pen {
        role: Role::Ink,
        stroke: Stroke::Medium,
        line: if given.iter().all(Option::is_some) {
            Line::Solid
        } else {
            Line::Dashed
        },
    };
    scene
        .marks
        .push(rectangle(left, sill, (w, h), edge, Role::Paper));
    scene.hot.push(Hot {
        min: Point::new(left, -(sill + h)),
        max: Point::new(left + w, -sill),
        tag: WallTag::Opening(number),
        says: format!("{}, all its figures", if door { "Door" } else { "Opening" }),
    });
    if door {
        scene.marks.extend(leaf(opening, left, sill, (w, h)));
    }
    let sizes = [left, w, h, sill];
    for figure in opening_figures(number, given, sizes, units) {
        // A door has no sill.
        if !(door && figure.tag == Some(WallTag::OpeningSill(number))) {
            scene.dimensions.push(figure);
        }
    }
    left + w
}

/// An opening's measures, from the left, across, up and its sill, as drawn; what is not given is asked for.
fn opening_figures(
    number: usize,
    given: [Option<Length>; 4],
    drawn: [Length; 4],
    units: Units,
) -> impl Iterator<Item = Dimension<WallTag>> {
    let [left, w, h, sill] = drawn;
    let at = |x, y: Length| Point::new(x, -y);
    let (top, middle, across) = (sill + h, sill + h.half(), left + w.half());
    let right = left + w;
    // Width and height first, so that they stand nearest to what they measure.
    [
        (
            1,
            (at(left, top), at(right, top)),
            Edge::Left(1),
            WallTag::OpeningWidth(number),
        ),
        (
            2,
            (at(right, top), at(right, sill)),
            Edge::Left(1),
            WallTag::OpeningHeight(number),
        ),
        (
            0,
            (at(Length::ZERO, middle), at(left, middle)),
            Edge::Left(0),
            WallTag::OpeningFromLeft(number),
        ),
        (
            3,
            (at(across, sill), at(across, Length::ZERO)),
            Edge::Left(0),
            WallTag::OpeningSill(number),
        ),
    ]
    .into_iter()
    .filter(move |(n, ..)| drawn[*n].is_positive())
    .map(move |(n, ends, edge, tag)| {
        let standing = given[n].map_or(Standing::Asked, |_| Standing::Yours);
        dimension(ends, edge, (drawn[n], standing), tag, units)
    })
}

/// A door's leaf: its swing as two dashed lines that meet at the hinges, on the side where the plan hangs it, and its
/// threshold.
fn leaf(opening: &Opening, left: Length, sill: Length, (w, h): (Length, Length)) -> [Mark; 2] {
    let at = |x, y: Length| Point::new(x, -y);
    let right = left + w;
    let path = |points, pen| Mark::Path {
        points,
        closed: false,
        pen: Some(pen),
        fill: None,
    };
    let side = opening.hinge.unwrap_or_default().side;
    let (hinges, lock) = match side {
        Side::Left => (left, right),
        Side::Right => (right, left),
    };
    let swing = vec![
        at(lock, sill + h),
        at(hinges, sill + h.half()),
        at(lock, sill),
    ];
    // A saddle under the leaf, a little wider than the way through.
    let (low, high) = (sill, sill + Length::in_64(0, 48));
    let (from, to) = (left - Length::inches(1), right + Length::inches(1));
    [
        path(swing, Pen::dashed(Role::Soft, Stroke::Thin)),
        Mark::Path {
            points: vec![at(from, low), at(from, high), at(to, high), at(to, low)],
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
            fill: Some(Role::Ink),
        },
    ]
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
pub(super) fn dimension(
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
        WallTag::Fixed(_, Size::FromLeft) => "Left corner to the fixed point",
        WallTag::Fixed(..) => "Floor to the fixed point",
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
            hinge: None,
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
