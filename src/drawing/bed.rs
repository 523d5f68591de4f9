//! The sketch of a sloped bed: its depths where they are set, and how it falls.

use super::{Align, Dimension, Edge, Fit, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::mortar::{BedFigure, SpotKind};

/// A bed seen from above, the near side at the bottom; 0 taps its width, 1 its depth up the sheet.
#[must_use]
pub fn bed_sketch((across, up): (Length, Length), bed: &BedFigure, units: Units) -> Scene<u8> {
    let mut scene = Scene::empty(
        "The bed from above, with its thickness at the drain, the corners and the sides",
    );
    let at = |x: Length, y: Length| Point::new(x, up - y);
    let none = Length::ZERO;
    scene.marks.push(Mark::Path {
        points: vec![
            at(none, none),
            at(none, up),
            at(across, up),
            at(across, none),
        ],
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::Board),
    });
    let drain = bed.spots.iter().find(|spot| spot.what == SpotKind::Drain);
    for spot in &bed.spots {
        let place = at(spot.across, spot.up);
        if let (Some(drain), SpotKind::Corner) = (drain, spot.what) {
            // Short of the depths written at both ends.
            let way = at(drain.across, drain.up) - place;
            let part = |share: i64| {
                place + Point::new((way.x * share).divided(10), (way.y * share).divided(10))
            };
            scene.marks.push(Mark::Path {
                points: vec![part(4), part(8)],
                closed: false,
                pen: Some(Pen::dashed(Role::Soft, Stroke::Hair)),
                fill: None,
            });
        }
        if spot.what == SpotKind::Drain {
            scene.marks.push(Mark::Dot {
                at: place,
                role: Role::Ink,
            });
        }
        // Written a little inside the bed, so that nothing stands on its edge.
        let inward = |place: Length, size: Length| {
            let (least, most) = (size.divided(8), size - size.divided(8));
            place.clamp(least, most)
        };
        let lift = if spot.what == SpotKind::Drain {
            up.divided(14)
        } else {
            none
        };
        scene.marks.push(Mark::Text {
            at: at(inward(spot.across, across), inward(spot.up, up) + lift),
            text: units.length(spot.depth, Rounding::Nearest, Figures::Set),
            role: Role::Ink,
            align: Align::Middle,
            bold: spot.what == SpotKind::Drain,
            fit: Fit::Always,
        });
    }
    for (from, to, edge, length, tag) in [
        (at(none, none), at(across, none), Edge::Right(1), across, 0),
        (at(none, up), at(none, none), Edge::Right(1), up, 1),
    ] {
        scene.dimensions.push(Dimension {
            from,
            to,
            beyond: false,
            edge,
            text: units.length(length, Rounding::Nearest, Figures::Set),
            standing: Standing::Yours,
            tag: Some(tag),
            says: units.length(length, Rounding::Nearest, Figures::Plain),
        });
    }
    scene
}
