//! A round of lines walked by length and direction: how far it misses its start, and the compass rule.

/// A line of a traverse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// How long.
    pub length: f64,
    /// Which way: radians from straight up the sheet, clockwise, as a bearing from north.
    pub bearing: f64,
}

/// A traverse that was walked back to its start.
#[derive(Clone, Debug, PartialEq)]
pub struct Closed {
    /// By how much it misses its start: to the right, and up.
    pub misses: [f64; 2],
    /// All of its length for one of what it misses; `None` where it misses nothing.
    pub one_in: Option<f64>,
    /// The corners after the compass rule, the first at nothing: to the right, and up.
    pub corners: Vec<[f64; 2]>,
}

/// A closed traverse balanced by the compass rule: `correction = −miss × leg ÷ Σ legs`, to the right and up apart.
///
/// # Inputs
/// Its legs in order, lengths of any one unit.
/// # Gives
/// What it misses its start by, its closure as one in so much, and its corners after the rule. Without legs, no corners.
/// # Errors
/// None.
/// # Source
/// Compass (Bowditch) rule; a worked traverse in the teaching pages of an engineering course (ASM 215, Purdue): read.
/// # Example
/// ```
/// use storyrod::geometry::{Leg, balance};
/// let legs = [0.0_f64, 90.0, 180.0, 270.0].map(|way| Leg { length: 10.0, bearing: way.to_radians() });
/// let round = balance(&legs);
/// assert!(round.misses[0].abs() < 1e-9 && (round.corners[2][0] - 10.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn balance(legs: &[Leg]) -> Closed {
    let step = |leg: &Leg| {
        [
            leg.length * leg.bearing.sin(),
            leg.length * leg.bearing.cos(),
        ]
    };
    let mut misses = [0.0, 0.0];
    let mut long = 0.0;
    for leg in legs {
        let by = step(leg);
        misses = [misses[0] + by[0], misses[1] + by[1]];
        long += leg.length;
    }
    let mut corners = Vec::with_capacity(legs.len());
    let mut at = [0.0, 0.0];
    for leg in legs {
        corners.push(at);
        let (by, share) = (step(leg), leg.length / long);
        at = [
            at[0] + by[0] - misses[0] * share,
            at[1] + by[1] - misses[1] * share,
        ];
    }
    let gap = misses[0].hypot(misses[1]);
    Closed {
        misses,
        one_in: (gap > 0.0).then(|| long / gap),
        corners,
    }
}
