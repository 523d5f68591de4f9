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

/// Most sticks on one sheet.
pub const MOST_STICKS: usize = 16;
/// From so many sticks on there is one line of words on each.
const ONE_LINE: usize = 6;

/// The first sticks as bars under each other, the longest across the sheet; a tap on a piece gives its stick and its place on it.
#[must_use]
pub fn bars_sketch(sticks: &[Stick], units: Units) -> Scene<(usize, usize)> {
    let mut scene = Scene::empty("The sticks as bars, each with its pieces and what remains");
    let longest = sticks.iter().map(|stick| stick.length).max();
    let longest = longest.unwrap_or_default();
    // As high as a line of words, so that what stands on a bar can be read; nearer where there are many.
    let rows = (sticks.len().min(MOST_STICKS) as i64).max(5);
    let (high, apart) = ((longest * 3).divided(rows * 5), longest.divided(rows));
    let set = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    for (row, stick) in sticks.iter().enumerate().take(MOST_STICKS) {
        let top = apart * row as i64;
        let mut left = Length::ZERO;
        let edge = |role| Some(Pen::solid(role, Stroke::Medium));
        for (place, (mark, length)) in stick.pieces.iter().enumerate() {
            let (from, to) = (
                Point::new(left, top),
                Point::new(left + *length, top + high),
            );
            scene.marks.push(Mark::rectangle(
                from,
                to,
                edge(Role::Ink),
                Some(Role::Board),
            ));
            let room = Fit::Shrunk((*length * 9).divided(10));
            let word = |at: Point, text: String, bold| Mark::Text {
                at,
                text,
                role: Role::Ink,
                align: Align::Middle,
                bold,
                fit: room,
            };
            let at = middle(from, to);
            if sticks.len() >= ONE_LINE {
                scene
                    .marks
                    .push(word(at, format!("{mark}: {}", set(*length)), false));
            } else {
                let lift = Point::new(Length::ZERO, high.divided(4));
                scene.marks.push(word(at - lift, mark.clone(), true));
                scene.marks.push(word(at + lift, set(*length), false));
            }
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
            scene.marks.push(Mark::rectangle(from, end, open, None));
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

fn middle(from: Point, to: Point) -> Point {
    Point::new(
        from.x + (to.x - from.x).half(),
        from.y + (to.y - from.y).half(),
    )
}
