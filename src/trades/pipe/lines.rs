//! Lines beside a run, an equal way apart from bend to bend.

use super::ask::Ask;
use super::problem::Problem;
use super::walk::{Walk, cross, dot, plus, turn_between};
use crate::measure::Length;

/// By how much the pipe of each leg is longer in the next line than in the one before.
///
/// At a bend the next fitting is shifted along the run by `apart · tan(θ/2)`, back where the line lies on the side that
/// the run turns to; across the plane of a bend nothing is shifted.
pub(super) fn longer(ask: &Ask, walk: &Walk) -> Result<Vec<Length>, Problem> {
    let Some(lines) = ask.lines else {
        return Ok(vec![Length::ZERO; walk.headings.len()]);
    };
    let mut aside = lines.to.vector();
    if dot(aside, walk.headings[0]).abs() > 1e-9 {
        return Err(Problem::NotAside { leg: 0 });
    }
    let mut shares = vec![0.0; walk.headings.len()];
    for bend in 1..walk.headings.len() {
        let (from, to) = (walk.headings[bend - 1], walk.headings[bend]);
        let round = cross(from, to);
        let sine = dot(round, round).sqrt();
        if sine == 0.0 {
            continue;
        }
        // The side that the run turns to, at right angles to the leg before; and the same side after the bend.
        let axis = round.map(|part| part / sine);
        let (before, after) = (cross(axis, from), cross(axis, to));
        let inside = dot(aside, before);
        let half = (turn_between(from, to).in_degrees() / 2.0)
            .to_radians()
            .tan();
        shares[bend - 1] -= inside * half;
        shares[bend] -= inside * half;
        aside = plus(plus(aside, before, -inside), after, inside);
    }
    let longer = |share: f64| Length::from_metres(lines.apart.metres() * share).unwrap_or_default();
    Ok(shares.into_iter().map(longer).collect())
}
