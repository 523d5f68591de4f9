//! The sketch of what is painted: every surface to one scale, side by side.

use super::{Align, Dimension, Edge, Fit, Hot, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::quantity::in_square_metres;
use crate::measure::{Amount, Figures, Length, Rounding, Units};
use crate::trades::paint::{Ask, Part, Surface};

/// Between two surfaces.
const GAP: Length = Length::inches(14);

/// What can be tapped on it; surfaces count from 0 as they are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaintTag {
    /// The width of a surface.
    Width(usize),
    /// The height of a surface; of a ceiling, its other side.
    Height(usize),
    /// The surface itself.
    Surface(usize),
}

/// Sides of a surface that nobody measured yet.
const SKETCHED: Length = Length::feet(8);
/// Most surfaces that have both their figures on the drawing.
const BOTH: usize = 3;

/// Walls in a row, ceilings in a row above them; each with its name and its area.
///
/// `own`: the surfaces are measured by hand, and each has its figures; else they are a room's, and share its height.
#[must_use]
pub fn paint_sketch(ask: &Ask, own: bool, units: Units) -> Scene<PaintTag> {
    let mut scene = Scene::empty("What is painted, every surface to one scale");
    let tallest = row(&mut scene, ask, Part::Wall, own, Length::ZERO, units);
    row(&mut scene, ask, Part::Ceiling, own, -tallest - GAP, units);
    scene
}

/// The surfaces of one kind in a row that stands on a height; gives how tall the row is.
fn row(
    scene: &mut Scene<PaintTag>,
    ask: &Ask,
    part: Part,
    own: bool,
    floor: Length,
    units: Units,
) -> Length {
    let few = own && ask.surfaces.len() <= BOTH;
    let (mut x, mut tallest, mut first) = (Length::ZERO, Length::ZERO, None);
    let all = ask.surfaces.iter().enumerate();
    for (at, surface) in all.filter(|(_, s)| s.part == part).take(12) {
        let (width, height) = size(surface, own);
        draw(scene, surface, (x, floor), (width, height), units);
        scene.hot.push(Hot {
            min: Point::new(x, floor - height),
            max: Point::new(x + width, floor),
            tag: PaintTag::Surface(at),
            says: surface.name.clone(),
        });
        if own {
            // Below a wall, above a ceiling: clear of the other row.
            let (y, edge) = match part {
                Part::Wall => (floor, Edge::Right(1)),
                Part::Ceiling => (floor - height, Edge::Left(1)),
            };
            let ends = (Point::new(x, y), Point::new(x + width, y));
            let what = (PaintTag::Width(at), surface.width, "width");
            scene.dimensions.push(Dimension {
                edge,
                ..figure(surface, ends, what, units)
            });
        }
        if few {
            let ends = (Point::new(x, floor - height), Point::new(x, floor));
            let what = (PaintTag::Height(at), surface.height, "height");
            scene.dimensions.push(figure(surface, ends, what, units));
        }
        tallest = tallest.max(height);
        first = first.or(Some((at, surface)));
        x = x + width + GAP;
    }
    // One height for the whole row.
    if let Some((at, surface)) = first.filter(|_| !few && part == Part::Wall) {
        let ends = (
            Point::new(Length::ZERO, floor - tallest),
            Point::new(Length::ZERO, floor),
        );
        let what = (PaintTag::Height(at), Some(tallest), "height");
        scene.dimensions.push(figure(surface, ends, what, units));
    }
    tallest
}

/// A wall as wide and high as it is known to be; else a square of its area, or as it is sketched.
fn size(surface: &Surface, own: bool) -> (Length, Length) {
    let side = Length::from_metres(in_square_metres(surface.area).sqrt())
        .filter(|side| side.is_positive() && !own)
        .unwrap_or(SKETCHED);
    // A room's ceiling keeps the height that it hangs at, which is no side of it.
    if !own && surface.part == Part::Ceiling {
        return (side, side);
    }
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
    let area = if surface.area.value > 0.0 {
        units.amount(&Amount::Area(surface.area), Figures::Set)
    } else {
        String::new()
    };
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
            fit: Fit::Whole(within),
        });
    }
}

/// A figure of a surface: the person's own, or still asked for.
fn figure(
    surface: &Surface,
    (from, to): (Point, Point),
    (tag, length, what): (PaintTag, Option<Length>, &str),
    units: Units,
) -> Dimension<PaintTag> {
    let show = |figures| {
        length.map_or_else(
            || "?".to_owned(),
            |length| units.length(length, Rounding::Nearest, figures),
        )
    };
    Dimension {
        from,
        to,
        beyond: false,
        edge: Edge::Right(1),
        text: show(Figures::Set),
        standing: if length.is_some() {
            Standing::Yours
        } else {
            Standing::Asked
        },
        tag: Some(tag),
        says: format!("{}, {what}, {}", surface.name, show(Figures::Plain)),
    }
}
