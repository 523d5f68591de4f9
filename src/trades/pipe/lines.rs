//! Lines beside a run, an equal way apart from bend to bend.

use super::ask::{Ask, Place};
use super::problem::Problem;
use super::walk::{Heading, Walk, along, cross, dot, plus, turn_between, way_of};
use crate::measure::Length;

/// How the next line lies to the one before, in shares of how far they are apart.
struct Aside {
    /// By how much the pipe of each leg is longer.
    longer: Vec<f64>,
    /// Where each node is shifted to; one more than legs.
    shifts: Vec<Heading>,
}

/// At a bend the next fitting is shifted along the run by `tan(θ/2)`, back where the line lies on the side that the run
/// turns to; across the plane of a bend nothing is shifted.
fn aside(to: Heading, headings: &[Heading]) -> Aside {
    let mut aside = to;
    let mut longer = vec![0.0; headings.len()];
    let mut shifts = vec![aside];
    for bend in 1..headings.len() {
        let (from, to) = (headings[bend - 1], headings[bend]);
        let round = cross(from, to);
        let sine = dot(round, round).sqrt();
        if sine == 0.0 {
            shifts.push(aside);
            continue;
        }
        // The side that the run turns to, at right angles to the leg before; and the same side after the bend.
        let axis = round.map(|part| part / sine);
        let (before, after) = (cross(axis, from), cross(axis, to));
        let inside = dot(aside, before);
        let half = (turn_between(from, to).in_degrees() / 2.0)
            .to_radians()
            .tan();
        longer[bend - 1] -= inside * half;
        longer[bend] -= inside * half;
        shifts.push(plus(aside, from, -inside * half));
        aside = plus(plus(aside, before, -inside), after, inside);
    }
    shifts.push(aside);
    Aside { longer, shifts }
}

/// By how much the pipe of each leg is longer in the next line than in the one before.
pub(super) fn longer(ask: &Ask, walk: &Walk) -> Result<Vec<Length>, Problem> {
    let Some(lines) = ask.lines else {
        return Ok(vec![Length::ZERO; walk.headings.len()]);
    };
    let to = lines.to.vector();
    if dot(to, walk.headings[0]).abs() > 1e-9 {
        return Err(Problem::NotAside { leg: 0 });
    }
    let longer = |share: f64| Length::from_metres(lines.apart.metres() * share).unwrap_or_default();
    let aside = aside(to, &walk.headings);
    Ok(aside.longer.into_iter().map(longer).collect())
}

/// Where the fittings of all lines of a run are, line by line, the run itself first.
///
/// # Inputs
/// The run, and where its own fittings are. Lines on no side of the first leg are left out.
/// # Gives
/// One list for each line, as long as `places`.
/// # Source
/// Equal spread: at a bend the fittings lie on the line that halves it.
/// # Example
/// ```
/// use storyrod::trades::pipe::{Ask, beside, sketch};
/// let ask = Ask::default();
/// assert_eq!(beside(&ask, &sketch(&ask)), [sketch(&ask)]);
/// ```
#[must_use]
pub fn beside(ask: &Ask, places: &[Place]) -> Vec<Vec<Place>> {
    let mut found = vec![places.to_vec()];
    let headings: Vec<Heading> = ask.legs.iter().map(|leg| way_of(leg.way)).collect();
    let lines = ask.lines.filter(|lines| {
        let first = headings.first();
        first.is_some_and(|first| dot(lines.to.vector(), *first).abs() <= 1e-9)
    });
    let Some(lines) = lines else {
        return found;
    };
    let shifts = aside(lines.to.vector(), &headings).shifts;
    // What is a whole number but for the arithmetic of an angle is one.
    let whole = |part: f64| {
        if (part - part.round()).abs() < 1e-9 {
            part.round()
        } else {
            part
        }
    };
    for line in 1..i64::from(lines.count.min(super::limits::MOST_LINES)) {
        let moved = places.iter().zip(&shifts);
        let moved =
            moved.map(|(place, shift)| place.plus(along(lines.apart * line, shift.map(whole))));
        found.push(moved.collect());
    }
    found
}
