//! The sketch of a patch: studs, the hole, the piece over it, and its screws.

use super::patch_behind::behind;
use super::{Dimension, Edge, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::Hidden;
use crate::trades::patch::{Ask, Field, Figure, Hole, HoleShape, Rect};

/// How much wall is shown round the damage.
const ROUND: Length = Length::inches(10);

/// The wall round a hole as seen from inside, with what is known to be hidden behind it; a tap on a blue figure asks for its field.
#[must_use]
pub fn patch_sketch(
    ask: &Ask,
    figure: Option<&Figure>,
    hidden: &[&Hidden],
    units: Units,
) -> Scene<Field> {
    let known = figure.map_or(
        (ask.hole.from_left.is_some(), ask.hole.above_floor.is_some()),
        |figure| (figure.from_corner, figure.from_floor),
    );
    let hole = rect(&ask.hole, ask, known);
    let opening = figure.and_then(|figure| figure.opening);
    let shown = opening.map_or(hole, |opening| opening.with(&hole));
    let view = in_wall(shown.inset(-ROUND), ask, known);
    let mut scene = Scene::empty("The hole and its patch, seen from inside the room");
    scene.window = Some((at(view.left, view.top), at(view.right, view.bottom)));
    scene.marks.push(rectangle(&view, None, Some(Role::Board)));
    if known.0 {
        studs(ask, &view, &mut scene.marks);
    }
    work(ask, figure, &hole, known, &mut scene.marks);
    if known == (true, true) {
        behind(hidden, &view, units, &mut scene.marks);
    }
    ends_of_wall(&view, ask, known, &mut scene.marks);
    scene.dimensions = sizes(ask, &hole, opening.as_ref(), units);
    scene.dimensions.extend(places(&hole, &view, known, units));
    scene
}

/// The piece, what carries it, the holes under it and its screws.
fn work(
    ask: &Ask,
    figure: Option<&Figure>,
    hole: &Rect,
    known: (bool, bool),
    marks: &mut Vec<Mark>,
) {
    let adhesive = figure.and_then(|figure| figure.patch_side);
    let piece = figure
        .and_then(|figure| figure.opening)
        .or(adhesive.map(|side| square_over(hole, side)));
    let edge = Some(Pen::solid(Role::Ink, Stroke::Medium));
    if let Some(piece) = &piece {
        let wash = Some(Role::ChalkWash);
        marks.push(rectangle(piece, edge, wash));
    }
    let strips = figure.map_or(&[][..], |figure| &figure.backing);
    let behind = Some(Pen::dashed(Role::Soft, Stroke::Thin));
    marks.extend(
        strips
            .iter()
            .map(|strip| rectangle(&strip.at, behind, None)),
    );
    let screws = figure.map_or(&[][..], |figure| &figure.screws);
    if known == (true, true) {
        for other in &ask.other_holes {
            if other.from_left.is_some() && other.above_floor.is_some() {
                void(&other.shape, &rect(other, ask, known), screws, marks);
            }
        }
    }
    void(&ask.hole.shape, hole, screws, marks);
    if let Some(piece) = &piece {
        marks.push(rectangle(piece, edge, None));
    }
    marks.extend(screws.iter().map(|(x, y)| Mark::Dot {
        at: at(*x, *y),
        role: Role::Ink,
    }));
}

/// The rectangle over a hole, from the corner and the floor where those are known.
fn rect(hole: &Hole, ask: &Ask, known: (bool, bool)) -> Rect {
    let (width, height) = hole.shape.size();
    let far = ask.wall.length.unwrap_or(Length::feet(100));
    let from_stud = || {
        let (named, along) = hole.from_stud?;
        let centres = ask.studs.as_ref()?.centres(far);
        Some(*centres.get(named)? + along)
    };
    let left = hole.from_left.or_else(from_stud).filter(|_| known.0);
    let (left, bottom) = (
        left.unwrap_or_default(),
        hole.above_floor.filter(|_| known.1).unwrap_or_default(),
    );
    Rect {
        left,
        right: left + width,
        bottom,
        top: bottom + height,
    }
}

/// What of a view lies on the wall, as far as its ends are known.
fn in_wall(view: Rect, ask: &Ask, known: (bool, bool)) -> Rect {
    let (length, height) = (
        ask.wall.length.filter(|end| *end > view.left),
        ask.wall.height.filter(|end| *end > view.bottom),
    );
    let mut seen = view;
    if known.0 {
        seen.left = view.left.max(Length::ZERO);
        seen.right = length.map_or(view.right, |end| view.right.min(end));
    }
    if known.1 {
        seen.bottom = view.bottom.max(Length::ZERO);
        seen.top = height.map_or(view.top, |end| view.top.min(end));
    }
    seen
}

/// The corners, the floor and the ceiling, where they stand in the view.
fn ends_of_wall(view: &Rect, ask: &Ask, known: (bool, bool), marks: &mut Vec<Mark>) {
    let (low, high) = (at(view.left, view.bottom), at(view.right, view.top));
    let (low_right, high_left) = (at(view.right, view.bottom), at(view.left, view.top));
    for (there, from, to) in [
        (known.0 && view.left == Length::ZERO, low, high_left),
        (
            known.0 && Some(view.right) == ask.wall.length,
            low_right,
            high,
        ),
        (known.1 && view.bottom == Length::ZERO, low, low_right),
        (
            known.1 && Some(view.top) == ask.wall.height,
            high_left,
            high,
        ),
    ] {
        if there {
            marks.push(Mark::line(from, to, Pen::solid(Role::Ink, Stroke::Heavy)));
        }
    }
}

/// A hole: dark, or crossed out where the screws of the piece over it would not be seen on it.
fn void(shape: &HoleShape, hole: &Rect, screws: &[(Length, Length)], marks: &mut Vec<Mark>) {
    let inside = |(x, y): &(Length, Length)| {
        hole.left <= *x && *x <= hole.right && hole.bottom <= *y && *y <= hole.top
    };
    let crossed = screws.iter().any(inside);
    let pen = crossed.then_some(Pen::dashed(Role::Soft, Stroke::Thin));
    let fill = (!crossed).then_some(Role::Hole);
    let (middle, mut half) = (hole.middle(), (hole.width().half(), hole.height().half()));
    marks.push(match shape {
        HoleShape::Rectangle { .. } => rectangle(hole, pen, fill),
        HoleShape::Round { across } => {
            // The cross ends on the circle: 0.7071 of its radius each way.
            let leg = across.half().divided(10_000) * 7071;
            half = (leg, leg);
            Mark::Circle {
                centre: at(middle.0, middle.1),
                radius: across.half(),
                pen,
                fill,
            }
        }
    });
    if let Some(pen) = pen {
        for up in [half.1, -half.1] {
            marks.push(Mark::line(
                at(middle.0 - half.0, middle.1 - up),
                at(middle.0 + half.0, middle.1 + up),
                pen,
            ));
        }
    }
}

/// One figure of a patch.
fn dimension(
    (from, to, edge): (Point, Point, Edge),
    length: Length,
    what: &str,
    tag: Option<Field>,
    units: Units,
) -> Dimension<Field> {
    let figure = |figures| units.length(length, Rounding::Nearest, figures);
    Dimension {
        from,
        to,
        beyond: false,
        edge,
        text: figure(Figures::Set),
        standing: if tag.is_some() {
            Standing::Yours
        } else {
            Standing::Ours
        },
        tag,
        says: format!("{what}, {}", figure(Figures::Plain)),
    }
}

/// How large the hole is, and the opening where it is larger.
fn sizes(ask: &Ask, hole: &Rect, opening: Option<&Rect>, units: Units) -> Vec<Dimension<Field>> {
    let (across, up) = match ask.hole.shape {
        HoleShape::Rectangle { .. } => (Field::HoleWidth, Some(Field::HoleHeight)),
        HoleShape::Round { .. } => (Field::HoleAcross, None),
    };
    let low_right = at(hole.right, hole.bottom);
    let below = (at(hole.left, hole.bottom), low_right, Edge::Right(1));
    let beside = (at(hole.right, hole.top), low_right, Edge::Left(1));
    let mut all = vec![dimension(
        below,
        hole.width(),
        "Hole across",
        Some(across),
        units,
    )];
    if up.is_some() {
        all.push(dimension(beside, hole.height(), "Hole up", up, units));
    }
    let Some(opening) = opening else { return all };
    let (left, right) = (opening.left, opening.right);
    if opening.width() != hole.width() {
        let above = (at(left, opening.top), at(right, opening.top), Edge::Left(1));
        all.push(dimension(
            above,
            opening.width(),
            "Opening across",
            None,
            units,
        ));
    }
    if opening.height() != hole.height() {
        let ends = (
            at(left, opening.top),
            at(left, opening.bottom),
            Edge::Right(1),
        );
        all.push(dimension(ends, opening.height(), "Opening up", None, units));
    }
    all
}

/// Where the hole is, in a row with its sizes: from the left corner and from the floor, asked for while not known.
fn places(
    hole: &Rect,
    view: &Rect,
    known: (bool, bool),
    units: Units,
) -> impl Iterator<Item = Dimension<Field>> {
    let left = (
        at(view.left, hole.bottom),
        at(hole.left, hole.bottom),
        Edge::Right(1),
    );
    let up = (
        at(hole.right, view.bottom),
        at(hole.right, hole.bottom),
        Edge::Right(1),
    );
    [
        (
            left,
            hole.left,
            view.left,
            known.0,
            "Left corner to the hole",
            Field::FromLeft,
        ),
        (
            up,
            hole.bottom,
            view.bottom,
            known.1,
            "Floor to the hole",
            Field::AboveFloor,
        ),
    ]
    .into_iter()
    .map(move |(ends, length, end, known, what, field)| {
        let mut figure = dimension(ends, length, what, Some(field), units);
        figure.beyond = !known || end != Length::ZERO;
        if !known {
            figure.standing = Standing::Asked;
            figure.text = "?".to_owned();
            figure.says = format!("{what}, still to measure");
        }
        figure
    })
}

/// The studs that stand in the view: faces dashed, centres dash-dot.
fn studs(ask: &Ask, view: &Rect, marks: &mut Vec<Mark>) {
    let Some(studs) = &ask.studs else { return };
    let (crate::site::Studs::Spaced { face, .. } | crate::site::Studs::Found { face, .. }) = studs;
    let upright = |x: Length, pen: Pen| Mark::line(at(x, view.top), at(x, view.bottom), pen);
    let wall = ask.wall.length.unwrap_or(view.right);
    for centre in studs
        .centres(wall)
        .into_iter()
        .filter(|centre| *centre > view.left && *centre < view.right)
    {
        let half = face.half();
        marks.push(rectangle(
            &Rect {
                left: centre - half,
                right: centre + half,
                bottom: view.bottom,
                top: view.top,
            },
            None,
            Some(Role::Sheet),
        ));
        marks.push(upright(
            centre - half,
            Pen::dashed(Role::Soft, Stroke::Hair),
        ));
        marks.push(upright(
            centre + half,
            Pen::dashed(Role::Soft, Stroke::Hair),
        ));
        marks.push(upright(centre, Pen::centre(Role::Soft)));
    }
}

fn square_over(hole: &Rect, side: Length) -> Rect {
    let (x, y) = hole.middle();
    let half = side.half();
    Rect {
        left: x - half,
        right: x + half,
        bottom: y - half,
        top: y + half,
    }
}

/// A place across and up as a point of the sheet, which counts down.
fn at(across: Length, up: Length) -> Point {
    Point::new(across, -up)
}

fn rectangle(rect: &Rect, pen: Option<Pen>, fill: Option<Role>) -> Mark {
    let points = vec![
        at(rect.left, rect.bottom),
        at(rect.left, rect.top),
        at(rect.right, rect.top),
        at(rect.right, rect.bottom),
    ];
    Mark::Path {
        points,
        closed: true,
        pen,
        fill,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Canvas, lay_out};
    use crate::trades::patch;

    #[test]
    fn every_figure_of_a_patch_stays_on_the_sheet() {
        let ask = Ask::default();
        let figure = patch::figure(&ask).unwrap();
        let scene = patch_sketch(&ask, Some(&figure), &[], Units::FeetInches { marks: 16 });
        for (width, height) in [(412.0, 340.0), (360.0, 220.0), (824.0, 620.0)] {
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
            assert!(
                sheet.boxes.iter().all(|[x, y, w, h]| *x >= 0.0
                    && *y >= 0.0
                    && x + w <= width
                    && y + h <= height),
                "{:?}",
                sheet.boxes
            );
        }
        assert!(
            scene
                .dimensions
                .iter()
                .any(|d| d.tag == Some(Field::HoleWidth))
        );
    }

    #[test]
    fn where_a_hole_is_can_be_tapped_known_or_not() {
        let units = Units::FeetInches { marks: 16 };
        let place = |ask: &Ask| {
            let scene = patch_sketch(ask, patch::figure(ask).ok().as_ref(), &[], units);
            [Field::FromLeft, Field::AboveFloor].map(|field| {
                let found = scene.dimensions.iter().find(|d| d.tag == Some(field));
                let found = found.unwrap();
                (found.standing, found.text.clone(), found.beyond)
            })
        };
        let mut ask = Ask::default();
        let asked = (Standing::Asked, "?".to_owned(), true);
        assert_eq!(place(&ask), [asked.clone(), asked]);
        ask.hole.from_left = Some(Length::inches(33));
        ask.hole.above_floor = Some(Length::inches(4));
        let set = |n| units.length(Length::inches(n), Rounding::Nearest, Figures::Set);
        let yours = |n, beyond| (Standing::Yours, set(n), beyond);
        assert_eq!(place(&ask), [yours(33, true), yours(4, false)]);
    }

    #[test]
    fn a_hole_as_large_as_its_opening_hides_neither_cut_nor_screws() {
        let ask = Ask::default();
        let figure = patch::figure(&ask).unwrap();
        let hole = rect(&ask.hole, &ask, (false, false));
        assert_eq!(figure.opening, Some(hole), "the case this is about");
        let scene = patch_sketch(&ask, Some(&figure), &[], Units::FeetInches { marks: 16 });
        let dark = scene.marks.iter().any(|mark| {
            matches!(
                mark,
                Mark::Path {
                    fill: Some(Role::Hole),
                    ..
                }
            )
        });
        assert!(!dark);
        let ours = scene.dimensions.iter().filter(|d| d.tag.is_none());
        assert_eq!(ours.count(), 0, "no size is written twice");
    }

    #[test]
    fn a_hole_measured_from_a_stud_is_drawn_there() {
        let mut ask = Ask {
            studs: Some(crate::site::Studs::Found {
                centres: vec![Length::inches(16), Length::inches(32)],
                face: Length::in_64(1, 32),
            }),
            ..Ask::default()
        };
        ask.hole.from_stud = Some((1, Length::inches(2)));
        assert_eq!(
            rect(&ask.hole, &ask, (true, false)).left,
            Length::inches(34)
        );
    }
}
