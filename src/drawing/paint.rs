//! The sketch of what is painted: every surface to one scale, side by side.

use super::{Align, Dimension, Edge, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::quantity::in_square_metres;
use crate::measure::{Amount, Figures, Length, Rounding, Units};
use crate::trades::paint::{Ask, Part, Surface};

/// Between two surfaces.
const GAP: Length = Length::inches(14);

/// Walls in a row, ceilings in a row above them; each with its name and its area.
#[must_use]
pub fn paint_sketch<T>(ask: &Ask, units: Units) -> Scene<T> {
    let mut scene = Scene::empty("What is painted, every surface to one scale");
    let mut x = Length::ZERO;
    let mut tallest = Length::ZERO;
    for surface in ask
        .surfaces
        .iter()
        .filter(|s| s.part == Part::Wall)
        .take(12)
    {
        let (width, height) = size(surface);
        draw(
            &mut scene,
            surface,
            (x, Length::ZERO),
            (width, height),
            units,
        );
        if ask.surfaces.len() <= 2 {
            scene.dimensions.push(ours(
                Point::new(x, Length::ZERO),
                Point::new(x + width, Length::ZERO),
                Edge::Right(1),
                width,
                units,
            ));
        }
        tallest = tallest.max(height);
        x = x + width + GAP;
    }
    if tallest.is_positive() {
        scene.dimensions.push(ours(
            Point::new(Length::ZERO, -tallest),
            Point::new(Length::ZERO, Length::ZERO),
            Edge::Right(1),
            tallest,
            units,
        ));
    }
    ceilings(&mut scene, ask, tallest, units);
    scene
}

/// The ceilings in a row above the walls.
fn ceilings<T>(scene: &mut Scene<T>, ask: &Ask, tallest: Length, units: Units) {
    let mut left = Length::ZERO;
    for surface in ask.surfaces.iter().filter(|s| s.part == Part::Ceiling) {
        let side =
            Length::from_metres(in_square_metres(surface.area).sqrt()).unwrap_or(Length::ZERO);
        draw(scene, surface, (left, -tallest - GAP), (side, side), units);
        left = left + side + GAP;
    }
}

/// A wall as wide and high as it is known to be; else a square of its area.
fn size(surface: &Surface) -> (Length, Length) {
    let side = Length::from_metres(in_square_metres(surface.area).sqrt()).unwrap_or(Length::ZERO);
    (
        surface.width.unwrap_or(side),
        surface.height.unwrap_or(side),
    )
}

fn draw<T>(
    scene: &mut Scene<T>,
    surface: &Surface,
    (x, y): (Length, Length),
    (width, height): (Length, Length),
    units: Units,
) {
    let corner = |across, up| Point::new(x + across, y - up);
    let points = vec![
        corner(Length::ZERO, Length::ZERO),
        corner(Length::ZERO, height),
        corner(width, height),
        corner(width, Length::ZERO),
    ];
    scene.marks.push(Mark::Path {
        points,
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::ChalkWash),
    });
    // A wall's letter alone fits where its whole name does not.
    let name = surface.name.strip_prefix("Wall ").unwrap_or(&surface.name);
    let area = units.amount(&Amount::Area(surface.area), Figures::Set);
    // Both lines need room one above the other, and the area in its surface; what is left out stands in the list.
    let step = height.divided(4);
    for (text, up, role, within) in [
        (name.to_owned(), step.half() * 5, Role::Ink, width + GAP),
        (
            area,
            step.half() * 3,
            Role::Soft,
            width.min(height.divided(5) * 3),
        ),
    ] {
        scene.marks.push(Mark::Text {
            at: corner(width.half(), up),
            text,
            role,
            align: Align::Middle,
            bold: role == Role::Ink,
            within: Some(within),
        });
    }
}

fn ours<T>(from: Point, to: Point, edge: Edge, length: Length, units: Units) -> Dimension<T> {
    Dimension {
        from,
        to,
        beyond: false,
        edge,
        text: units.length(length, Rounding::Nearest, Figures::Set),
        standing: Standing::Ours,
        tag: None,
        says: units.length(length, Rounding::Nearest, Figures::Plain),
    }
}
