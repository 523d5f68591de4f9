//! What is known to be hidden behind a patch, drawn where it runs through its sketch.

use super::elevation_more::hidden_role;
use super::{Align, Fit, Line, Mark, Pen, Stroke};
use crate::geometry::Point;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{Hidden, HiddenKind, Known};
use crate::trades::patch::Rect;

/// Pipes, cables and the like that run through the part of a wall that is shown, each with what is known of it.
pub(super) fn behind(hidden: &[&Hidden], view: &Rect, units: Units, marks: &mut Vec<Mark>) {
    let down = |from_left: Length, up: Length| Point::new(from_left, -up);
    for hidden in hidden {
        // Studs and blocking are drawn as the patch knows them.
        if matches!(hidden.kind, HiddenKind::Stud | HiddenKind::Blocking) {
            continue;
        }
        let role = hidden_role(hidden.kind);
        let pen = Pen {
            role,
            stroke: Stroke::Heavy,
            line: Line::Dashed,
        };
        let mut words_at = None;
        if let [only] = hidden.line[..] {
            let inside = only.from_left >= view.left
                && only.from_left <= view.right
                && only.up >= view.bottom
                && only.up <= view.top;
            if inside {
                let centre = down(only.from_left, only.up);
                let half = hidden.width.map_or(Length::inches(1), Length::half);
                words_at = Some(centre + Point::new(half, Length::ZERO));
                marks.push(Mark::Circle {
                    centre,
                    radius: half,
                    pen: Some(Pen::dashed(role, Stroke::Medium)),
                    fill: None,
                });
            }
        }
        for pair in hidden.line.windows(2) {
            let ends = [pair[0], pair[1]].map(|spot| [spot.from_left, spot.up].map(Length::metres));
            let Some([a, b]) = within(ends, view) else {
                continue;
            };
            let place =
                |[x, y]: [f64; 2]| Some(down(Length::from_metres(x)?, Length::from_metres(y)?));
            let (Some(a), Some(b)) = (place(a), place(b)) else {
                continue;
            };
            // Words stand at the upper end, else at the left one.
            let upper = if (a.y, a.x) <= (b.y, b.x) { a } else { b };
            words_at = words_at.or(Some(upper));
            marks.push(Mark::Path {
                points: vec![a, b],
                closed: false,
                pen: Some(pen),
                fill: None,
            });
        }
        if let Some(at) = words_at {
            let set = |length| units.length(length, Rounding::Nearest, Figures::Set);
            let mut words = hidden.kind.name().to_owned();
            if let Some(depth) = hidden.depth {
                words = format!("{words}, {} deep", set(depth));
            }
            if let Known::Picture(give) = hidden.known {
                words = format!("{words} ± {}", set(give));
            }
            marks.push(Mark::Text {
                at: at + Point::new(Length::in_64(0, 32), Length::inches(1)),
                text: words,
                role,
                align: Align::Start,
                fit: Fit::Always,
                bold: false,
            });
        }
    }
}

/// What of a stretch lies within a view, in metres.
fn within([a, b]: [[f64; 2]; 2], view: &Rect) -> Option<[[f64; 2]; 2]> {
    let low = [view.left, view.bottom].map(Length::metres);
    let high = [view.right, view.top].map(Length::metres);
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let run = b[axis] - a[axis];
        if run.abs() < 1e-9 {
            if a[axis] < low[axis] || a[axis] > high[axis] {
                return None;
            }
            continue;
        }
        let (first, second) = ((low[axis] - a[axis]) / run, (high[axis] - a[axis]) / run);
        from = from.max(first.min(second));
        to = to.min(first.max(second));
    }
    let at = |share: f64| [0, 1].map(|axis| a[axis] + share * (b[axis] - a[axis]));
    (from < to).then(|| [at(from), at(to)])
}
