//! The sketch of a patch: studs, the hole, the piece over it, and its screws.

use super::{Dimension, Edge, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::patch::{Ask, Field, Figure, HoleShape, Rect};

/// How much wall is shown round the damage.
const ROUND: Length = Length::inches(10);

/// The wall round a hole as seen from inside; a tap on a blue figure asks for its field.
#[must_use]
pub fn patch_sketch(ask: &Ask, figure: Option<&Figure>, units: Units) -> Scene<Field> {
    let (width, height) = ask.hole.shape.size();
    let (from_corner, from_floor) = figure.map_or((true, true), |figure| {
        (figure.from_corner, figure.from_floor)
    });
    let left = if from_corner {
        ask.hole.from_left.unwrap_or(Length::ZERO)
    } else {
        Length::ZERO
    };
    let bottom = if from_floor {
        ask.hole.above_floor.unwrap_or(Length::ZERO)
    } else {
        Length::ZERO
    };
    let hole = Rect {
        left,
        right: left + width,
        bottom,
        top: bottom + height,
    };
    let opening = figure.and_then(|figure| figure.opening);
    let shown = opening.map_or(hole, |opening| opening.with(&hole));
    let view = shown.inset(-ROUND);
    let mut scene = Scene::empty("The hole and its patch, seen from inside the room");
    scene.window = Some((at(view.left, view.top), at(view.right, view.bottom)));
    scene.marks.push(rectangle(&view, None, Some(Role::Board)));
    if from_corner {
        studs(ask, &view, &mut scene.marks);
    }
    let piece = opening.or_else(|| {
        figure
            .and_then(|figure| figure.patch_side)
            .map(|side| square_over(&hole, side))
    });
    if let Some(piece) = piece {
        scene.marks.push(rectangle(
            &piece,
            Some(Pen::solid(Role::Ink, Stroke::Medium)),
            Some(Role::ChalkWash),
        ));
    }
    if let Some(figure) = figure {
        scene.marks.extend(
            figure.backing.iter().map(|strip| {
                rectangle(&strip.at, Some(Pen::dashed(Role::Soft, Stroke::Thin)), None)
            }),
        );
    }
    scene.marks.push(match ask.hole.shape {
        HoleShape::Rectangle { .. } => rectangle(&hole, None, Some(Role::Hole)),
        HoleShape::Round { across } => Mark::Circle {
            centre: at(hole.middle().0, hole.middle().1),
            radius: across.half(),
            pen: None,
            fill: Some(Role::Hole),
        },
    });
    if let Some(figure) = figure {
        scene
            .marks
            .extend(figure.screws.iter().map(|(x, y)| Mark::Dot {
                at: at(*x, *y),
                role: Role::Ink,
            }));
    }
    figures(ask, &hole, opening.as_ref(), units, &mut scene);
    scene
}

fn figures(ask: &Ask, hole: &Rect, opening: Option<&Rect>, units: Units, scene: &mut Scene<Field>) {
    let set = |length| units.length(length, Rounding::Nearest, Figures::Set);
    let mut dimension =
        |from: Point, to: Point, edge: Edge, length: Length, what: (&str, Option<Field>)| {
            let standing = if what.1.is_some() {
                Standing::Yours
            } else {
                Standing::Ours
            };
            let says = format!(
                "{}, {}",
                what.0,
                units.length(length, Rounding::Nearest, Figures::Plain)
            );
            scene.dimensions.push(Dimension {
                from,
                to,
                edge,
                text: set(length),
                standing,
                tag: what.1,
                says,
            });
        };
    let (across, up) = match ask.hole.shape {
        HoleShape::Rectangle { .. } => (Field::HoleWidth, Some(Field::HoleHeight)),
        HoleShape::Round { .. } => (Field::HoleAcross, None),
    };
    let (low_left, low_right, top_right) = (
        at(hole.left, hole.bottom),
        at(hole.right, hole.bottom),
        at(hole.right, hole.top),
    );
    dimension(
        low_left,
        low_right,
        Edge::Right(1),
        hole.width(),
        ("Hole across", Some(across)),
    );
    if let Some(up) = up {
        dimension(
            top_right,
            low_right,
            Edge::Left(1),
            hole.height(),
            ("Hole up", Some(up)),
        );
    }
    if let Some(opening) = opening {
        let (a, b, c) = (
            at(opening.left, opening.top),
            at(opening.right, opening.top),
            at(opening.left, opening.bottom),
        );
        dimension(
            a,
            b,
            Edge::Left(1),
            opening.width(),
            ("Opening across", None),
        );
        dimension(a, c, Edge::Right(1), opening.height(), ("Opening up", None));
    }
}

/// The studs that stand in the view: faces dashed, centres dash-dot.
fn studs(ask: &Ask, view: &Rect, marks: &mut Vec<Mark>) {
    let Some(studs) = &ask.studs else { return };
    let (crate::site::Studs::Spaced { face, .. } | crate::site::Studs::Found { face, .. }) = studs;
    let upright = |x: Length, pen: Pen| Mark::Path {
        points: vec![at(x, view.top), at(x, view.bottom)],
        closed: false,
        pen: Some(pen),
        fill: None,
    };
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
        let scene = patch_sketch(&ask, Some(&figure), Units::FeetInches { marks: 16 });
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
}
