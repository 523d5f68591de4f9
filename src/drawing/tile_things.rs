//! What stands in the way of tile, on its sketch: its outline, and the measures that place it.

use super::tile::{ThingPart, TileTag};
use super::{Align, Dimension, Edge, Fit, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::measure::{Length, Units};
use crate::trades::tile::{Ask, ThingShape};

/// The outlines, each with its number, and the measures of the one that is picked: two from the walls, and its size.
pub(super) fn things(scene: &mut Scene<TileTag>, ask: &Ask, picked: Option<usize>, units: Units) {
    let Some((corner, _)) = ask.surface.bounds() else {
        return;
    };
    for (n, thing) in ask.things.iter().enumerate() {
        let role = if picked == Some(n) {
            Role::Chalk
        } else {
            Role::Ink
        };
        scene.marks.push(Mark::Path {
            points: thing.outline(corner).points,
            closed: true,
            pen: Some(Pen::solid(role, Stroke::Medium)),
            fill: Some(Role::Sheet),
        });
        let at = corner + Point::new(thing.from_left, thing.from_top);
        let (wide, high, centre) = match thing.shape {
            ThingShape::Round { across } => (across, across, at),
            ThingShape::Rectangle { width, height } => {
                (width, height, at + Point::new(width.half(), height.half()))
            }
        };
        if picked != Some(n) {
            scene.marks.push(Mark::Text {
                at: centre,
                text: format!("no. {}", n + 1),
                role: Role::Soft,
                align: Align::Middle,
                bold: false,
                fit: Fit::Shrunk(wide.min(high)),
            });
            continue;
        }
        let (least, most) = (
            centre - Point::new(wide.half(), high.half()),
            centre + Point::new(wide.half(), high.half()),
        );
        let mut measure = |from: Point, to: Point, edge, length: Length, part| {
            if length.is_positive() {
                let tag = Some(TileTag::Thing(n, part));
                scene
                    .dimensions
                    .push(Dimension::of((from, to), edge, length, tag, units));
            }
        };
        let low = Point::new(least.x, most.y);
        let left = (Point::new(corner.x, centre.y), Point::new(at.x, centre.y));
        measure(
            left.0,
            left.1,
            Edge::Left(0),
            thing.from_left,
            ThingPart::Left,
        );
        let top = (Point::new(centre.x, corner.y), Point::new(centre.x, at.y));
        measure(top.0, top.1, Edge::Left(0), thing.from_top, ThingPart::Top);
        measure(low, most, Edge::Right(1), wide, ThingPart::Width);
        if matches!(thing.shape, ThingShape::Rectangle { .. }) {
            let right = Point::new(most.x, least.y);
            measure(right, most, Edge::Left(1), high, ThingPart::Height);
        }
    }
}
