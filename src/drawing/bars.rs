//! Sticks drawn as bars, each piece with its mark and its length, what remains hatched open.

use super::{Align, Fit, Hot, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};

/// One stick to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Stick {
    /// What it is: "1", "Offcut 2".
    pub name: String,
    /// How long.
    pub length: Length,
    /// What the saw takes with each cut.
    pub kerf: Length,
    /// Its pieces from the left: mark and length.
    pub pieces: Vec<(String, Length)>,
    /// What remains at the right.
    pub rest: Length,
}

/// Bars under each other, the longest across the sheet; a tap on a piece gives its stick and its place on it.
#[must_use]
pub fn bars_sketch(sticks: &[Stick], units: Units) -> Scene<(usize, usize)> {
    let mut scene = Scene::empty("The sticks as bars, each with its pieces and what remains");
    let longest = sticks.iter().map(|stick| stick.length).max();
    let longest = longest.unwrap_or_default();
    // As high as a line of words, so that what stands on a bar can be read; nearer where there are many.
    let rows = (sticks.len() as i64).clamp(5, 16);
    let (high, apart) = ((longest * 3).divided(rows * 5), longest.divided(rows));
    let set = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    for (row, stick) in sticks.iter().enumerate() {
        let top = apart * row as i64;
        let mut left = Length::ZERO;
        let edge = |role| Some(Pen::solid(role, Stroke::Medium));
        for (place, (mark, length)) in stick.pieces.iter().enumerate() {
            let (from, to) = (
                Point::new(left, top),
                Point::new(left + *length, top + high),
            );
            scene
                .marks
                .push(bar(from, to, edge(Role::Ink), Some(Role::Board)));
            scene.marks.extend(words(from, to, mark, &set(*length)));
            scene.hot.push(Hot {
                min: from,
                max: to,
                tag: (row, place),
                says: format!(
                    "Stick {}, piece {mark}, {}",
                    stick.name,
                    units.length(*length, Rounding::Nearest, Figures::Plain)
                ),
            });
            left = left + *length + stick.kerf;
        }
        let end = Point::new(stick.length, top + high);
        if stick.rest.is_positive() {
            let from = Point::new(stick.length - stick.rest, top);
            let open = Some(Pen::dashed(Role::Soft, Stroke::Thin));
            scene.marks.push(bar(from, end, open, None));
            scene.marks.push(Mark::Text {
                at: middle(from, end),
                text: set(stick.rest),
                role: Role::Soft,
                align: Align::Middle,
                bold: false,
                fit: Fit::Shrunk(stick.rest),
            });
        }
    }
    scene
}

fn bar(from: Point, to: Point, pen: Option<Pen>, fill: Option<Role>) -> Mark {
    Mark::Path {
        points: vec![from, Point::new(to.x, from.y), to, Point::new(from.x, to.y)],
        closed: true,
        pen,
        fill,
    }
}

fn middle(from: Point, to: Point) -> Point {
    Point::new(
        from.x + (to.x - from.x).half(),
        from.y + (to.y - from.y).half(),
    )
}

/// The mark over the length, as far as the piece has room for them.
fn words(from: Point, to: Point, mark: &str, length: &str) -> [Mark; 2] {
    let (wide, at) = (to.x - from.x, middle(from, to));
    let lift = (to.y - from.y).divided(4);
    let word = |up: Length, text: &str, bold| Mark::Text {
        at: Point::new(at.x, at.y + up),
        text: text.to_owned(),
        role: Role::Ink,
        align: Align::Middle,
        bold,
        fit: Fit::Shrunk((wide * 9).divided(10)),
    };
    [word(-lift, mark, true), word(lift, length, false)]
}
