//! Lines to chalk, a triangle to prove them square, and marks along a batten.

use super::lay::box_of;
use super::pattern::{Frame, module};
use super::{Ask, Layout, Pattern};
use crate::geometry::Point;
use crate::measure::Length;

/// Two lines at right angles, each in a joint, near the middle of the field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chalk {
    /// From the left edge of the surface to the line that runs up and down the sheet.
    pub from_left: Length,
    /// From that line to the right edge.
    pub to_right: Length,
    /// From the top edge of the surface to the line that runs across.
    pub from_top: Length,
    /// From that line to the bottom edge.
    pub to_bottom: Length,
    /// A triangle on the two lines: along one, along the other, and between its ends.
    pub triangle: (Length, Length, Length),
}

/// The joints of a direction, as running distances from the edge of the surface: left to right, or top to bottom.
///
/// # Inputs
/// A layout of this ask, square to the sheet; `across` for joints that run up and down.
/// # Gives
/// The middle of each joint within the field, rising, in bond those of the rows that are not shifted; nothing for a
/// pattern that has no straight joints that way.
/// # Source
/// Arithmetic: start and module.
/// # Example
/// ```
/// use storyrod::{geometry::Point, measure::Length, trades::tile::{Ask, lay, running}};
/// let ask = Ask::default();
/// let marks = running(&ask, &lay(&ask, Point::default()).unwrap(), true);
/// // A gap of 1/4 in, a tile of 11 7/8, half a joint: 12 3/16, then every 12 in.
/// assert_eq!(marks[0], Length::in_64(12, 12));
/// assert_eq!(marks.len(), 4);
/// ```
#[must_use]
pub fn running(ask: &Ask, layout: &Layout, across: bool) -> Vec<Length> {
    let quarter = ask.turn.as_microdegrees().rem_euclid(360_000_000);
    if quarter % 90_000_000 != 0 {
        return Vec::new();
    }
    let turned = quarter % 180_000_000 != 0;
    // Joints across the rows are straight in a grid alone; those between rows wherever there are rows.
    let between_rows = across == turned;
    let straight = match ask.pattern {
        Pattern::Grid => true,
        // Of the rows that are not shifted: every other one, or every third.
        Pattern::Bond { .. } => true,
        Pattern::Planks { .. } => between_rows,
        Pattern::Basketweave => true,
        _ => false,
    };
    if !straight {
        return Vec::new();
    }
    let (along, between) = module(ask);
    let step = match (ask.pattern, between_rows) {
        (Pattern::Basketweave, _) => between * 2,
        (_, true) => between,
        (_, false) => along,
    };
    // Of mosaic the joints between sheets.
    let (times, first) = match &layout.sheets {
        Some(sheets) if between_rows => (i64::from(sheets.sheet.rows), sheets.first),
        Some(sheets) => (i64::from(sheets.sheet.along), sheets.first),
        None => (1, (0, 0)),
    };
    let step = step * times;
    let (least, size) = box_of(&layout.parts);
    let Some((edge, _)) = ask.surface.bounds() else {
        return Vec::new();
    };
    // A joint lies half a joint before the pattern's corner, on the side where its rows begin.
    let frame = Frame::of(ask, layout.start);
    let half = -ask.joint.half().as_nm();
    let at = frame.out(
        half + along.as_nm() * i64::from(first.0),
        half + between.as_nm() * i64::from(first.1),
    );
    let pick = |p: Point| if across { p.x } else { p.y };
    let (low, high) = (pick(least), pick(least) + pick(size));
    let steps = (pick(at) - low).as_nm().div_euclid(step.as_nm().max(1));
    let first = pick(at) - step * steps;
    std::iter::successors(Some(first), |mark| Some(*mark + step))
        .skip_while(|mark| *mark <= low)
        .take_while(|mark| *mark < high)
        .map(|mark| mark - pick(edge))
        .collect()
}

/// The lines to chalk.
///
/// # Inputs
/// A layout of this ask.
/// # Gives
/// The joints nearest the middle of the surface, each measured from both walls, and a 3-4-5 triangle that fits on them;
/// `None` where the pattern has no straight joint both ways.
/// # Source
/// Geometry; chalk lines in joints near the middle are common practice.
/// # Example
/// ```
/// use storyrod::{geometry::Point, measure::Length, trades::tile::{Ask, chalk, lay}};
/// let ask = Ask::default();
/// let lines = chalk(&ask, &lay(&ask, Point::default()).unwrap()).unwrap();
/// assert_eq!(lines.from_left + lines.to_right, Length::inches(60));
/// ```
#[must_use]
pub fn chalk(ask: &Ask, layout: &Layout) -> Option<Chalk> {
    let (least, most) = ask.surface.bounds()?;
    let size = most - least;
    let middle = |marks: Vec<Length>, length: Length| {
        let off = |mark: &Length| (*mark - length.half()).abs();
        marks.into_iter().min_by_key(off)
    };
    let from_left = middle(running(ask, layout, true), size.x)?;
    let from_top = middle(running(ask, layout, false), size.y)?;
    let room = |a: Length, b: Length| a.max(b);
    let (wide, high) = (
        room(from_left, size.x - from_left),
        room(from_top, size.y - from_top),
    );
    Some(Chalk {
        from_left,
        to_right: size.x - from_left,
        from_top,
        to_bottom: size.y - from_top,
        triangle: triangle(wide, high),
    })
}

/// The largest 3-4-5 of whole inches that fits in a corner.
fn triangle(wide: Length, high: Length) -> (Length, Length, Length) {
    let inch = Length::inches(1).as_nm();
    let times =
        |three: Length, four: Length| (three.as_nm() / (3 * inch)).min(four.as_nm() / (4 * inch));
    let (lying, standing) = (times(wide, high), times(high, wide));
    let n = lying.max(standing).max(1);
    if lying >= standing {
        (
            Length::inches(3 * n),
            Length::inches(4 * n),
            Length::inches(5 * n),
        )
    } else {
        (
            Length::inches(4 * n),
            Length::inches(3 * n),
            Length::inches(5 * n),
        )
    }
}
