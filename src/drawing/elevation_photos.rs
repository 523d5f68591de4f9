//! Pictures pinned on a wall's elevation: a small camera with a number, where the picture is anchored or under the wall.

use super::{Align, Fit, Hot, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::measure::Length;

/// A picture of a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Pinned<T> {
    /// The number that it bears.
    pub number: usize,
    /// From the wall's left corner, and up from the floor, where it is anchored.
    pub at: Option<(Length, Length)>,
    /// What a tap asks for.
    pub tag: T,
    /// What it is, for a screen reader.
    pub says: String,
}

/// Most pictures that stand in the row under a wall; the others are in the list and in the log.
const MOST: usize = 8;

/// Pins pictures on an elevation of a wall so long: those that are anchored in their places, the newest of the others in
/// a row under it.
pub fn pin_photos<T: Clone>(scene: &mut Scene<T>, long: Length, pinned: &[Pinned<T>]) {
    let wide = long.divided(14).max(Length::inches(3));
    let high = wide.divided(3) * 2;
    let loose: Vec<&Pinned<T>> = pinned.iter().filter(|p| p.at.is_none()).collect();
    let loose = &loose[loose.len().saturating_sub(MOST)..];
    let apart = long.divided(i64::try_from(loose.len().max(1)).unwrap_or(1));
    let row = loose.iter().enumerate().map(|(n, photo)| {
        let from_left = apart * i64::try_from(n).unwrap_or(0) + apart.half();
        (*photo, Point::new(from_left, high + high.half()))
    });
    let anchored = pinned.iter().filter_map(|photo| {
        let (from_left, up) = photo.at?;
        Some((photo, Point::new(from_left, -up)))
    });
    let all: Vec<_> = anchored.chain(row).collect();
    for (photo, at) in all {
        let pen = Some(Pen::solid(Role::Ink, Stroke::Thin));
        let corner = |x: Length, y: Length| at + Point::new(x, y);
        let (w, h) = (wide.half(), high.half());
        let (hump, top) = (wide.divided(6), -h - high.divided(5));
        scene.marks.push(Mark::Path {
            points: vec![
                corner(-w, -h),
                corner(-hump, -h),
                corner(-hump, top),
                corner(hump, top),
                corner(hump, -h),
                corner(w, -h),
                corner(w, h),
                corner(-w, h),
            ],
            closed: true,
            pen,
            fill: Some(Role::Sheet),
        });
        scene.marks.push(Mark::Circle {
            centre: at,
            radius: high.divided(4),
            pen,
            fill: None,
        });
        scene.marks.push(Mark::Text {
            at: corner(w + wide.divided(4), Length::ZERO),
            text: photo.number.to_string(),
            role: Role::Ink,
            align: Align::Start,
            bold: true,
            fit: Fit::Always,
        });
        scene.hot.push(Hot {
            min: corner(-w, -h),
            max: corner(w, h),
            tag: photo.tag.clone(),
            says: photo.says.clone(),
        });
    }
}
