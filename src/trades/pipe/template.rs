//! A strip wrapped round a pipe, to mark a cut that no cutter makes.

use crate::handbook::{Cite, documents};
use crate::measure::{Angle, Length};

/// The strip: its length, and how far the cut stands from its straight edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Template {
    /// Round the pipe.
    pub around: Length,
    /// From the longest point of the cut to the shortest.
    pub cut_back: Length,
    /// Along the strip, and across it from the straight edge; the last is where the first was.
    pub ordinates: Vec<(Length, Length)>,
}

/// How many parts the strip has; a quarter of them is a quarter round.
pub const STATIONS: u32 = 16;

/// How a cut at an angle is marked.
pub static CUT_BACK: Cite = Cite::read(
    &documents::STEELWORKER,
    "cut-back by the protractor at the outside diameter, half on each side of the line",
);

/// A wrap-around template: round `π · OD`, at φ round the pipe `y = OD/2 · tan α · (1 − cos φ)`, with `α` half the turn.
///
/// # Inputs
/// The outside diameter; the turn that two mitred ends make together, nothing for a square cut.
/// # Gives
/// Ordinates at equal stations, the first and the last at the longest point.
/// # Source
/// Geometry; NAVEDTRA 14251 marks half the cut-back on each side of the line. A mitred joint is no plumbing fitting.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::pipe::{STATIONS, template}};
/// let square = template(Length::inches(2), Angle::ZERO, STATIONS).unwrap();
/// assert!(square.ordinates.iter().all(|(_, up)| *up == Length::ZERO));
/// ```
#[must_use]
pub fn template(outside: Length, turn: Angle, stations: u32) -> Option<Template> {
    if !outside.is_positive() || turn < Angle::ZERO || turn > Angle::RIGHT || stations == 0 {
        return None;
    }
    let (sine, cosine) = turn.sin_cos();
    // tan of half the turn, from the turn itself.
    let tangent = sine / (1.0 + cosine);
    let radius = outside.metres() / 2.0;
    let around = outside.metres() * std::f64::consts::PI;
    let ordinates = (0..=stations).map(|n| {
        let share = f64::from(n) / f64::from(stations);
        let round = Angle::from_degrees(360.0 * share)?;
        let up = radius * tangent * (1.0 - round.sin_cos().1);
        Some((
            Length::from_metres(around * share)?,
            Length::from_metres(up)?,
        ))
    });
    Some(Template {
        around: Length::from_metres(around)?,
        cut_back: Length::from_metres(2.0 * radius * tangent)?,
        ordinates: ordinates.collect::<Option<_>>()?,
    })
}
