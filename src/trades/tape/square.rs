//! Squareness: diagonals, 3-4-5, and how far a corner is off.

use super::{Field, Problem, positive};
use crate::handbook::{Cite, documents};
use crate::measure::{Amount, Angle, Length, Phrase};
use crate::trades::{Step, Term};

/// The diagonal of two sides at a right angle: `d = √(a² + b²)`.
///
/// # Inputs
/// The sides, more than nothing.
/// # Gives
/// To the nearest nanometre, with its sum.
/// # Errors
/// [`Problem::Beyond`] for nothing or less.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tape::diagonal};
/// assert_eq!(diagonal(Length::feet(20), Length::feet(15)).unwrap().0, Length::feet(25));
/// ```
pub fn diagonal(across: Length, along: Length) -> Result<(Length, Step), Problem> {
    positive(Field::Side, across)?;
    positive(Field::Side, along)?;
    let gives = across.diagonal(along);
    let step = Step {
        what: Phrase::plain("Diagonal"),
        sum: vec![
            Term::Word("√("),
            across.into(),
            Term::Word("² +"),
            along.into(),
            Term::Word("²)"),
        ],
        gives: gives.into(),
        cite: Cite::computed("the long side of a right triangle"),
    };
    Ok((gives, step))
}

/// A right triangle to check a corner with: 3, 4 and 5 of one unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Triangle {
    /// Marked along the first side.
    pub across: Length,
    /// Marked along the second side.
    pub along: Length,
    /// Must be between the marks.
    pub between: Length,
}

/// The largest 3-4-5 triangle on two sides, in whole steps: `3u, 4u, 5u`.
///
/// # Inputs
/// The sides, more than nothing; `unit`: what `u` is a multiple of (1 in, 1 ft, 100 mm), more than nothing.
/// # Gives
/// The triangle, its 4 along the longer side where that is the larger; `None` where not even one unit fits.
/// # Errors
/// [`Problem::Beyond`] for a length of nothing or less.
/// # Source
/// Army engineer carpentry course, figures 1-36 and 1-39; that larger is better: framing text.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tape::three_four_five};
/// let check = three_four_five(Length::inches(60), Length::inches(96), Length::inches(1)).unwrap().unwrap();
/// assert_eq!(check.between, Length::inches(100));
/// ```
pub fn three_four_five(
    across: Length,
    along: Length,
    unit: Length,
) -> Result<Option<Triangle>, Problem> {
    positive(Field::Side, across)?;
    positive(Field::Side, along)?;
    positive(Field::Length, unit)?;
    let units = |three: Length, four: Length| {
        let third = three.as_nm() / (unit * 3).as_nm();
        third.min(four.as_nm() / (unit * 4).as_nm())
    };
    let (plain, turned) = (units(across, along), units(along, across));
    let (u, (a, b)) = if plain > turned || (plain == turned && across <= along) {
        (plain, (3, 4))
    } else {
        (turned, (4, 3))
    };
    Ok((u > 0).then(|| Triangle {
        across: unit * (a * u),
        along: unit * (b * u),
        between: unit * (5 * u),
    }))
}

/// How far a corner is from square.
#[derive(Clone, Debug, PartialEq)]
pub struct OutOfSquare {
    /// Away from a right angle; more than nothing where the first diagonal is the longer.
    pub off: Angle,
    /// How far the far end of the first side stands off, without sign.
    pub over_across: Length,
    /// How far the far end of the second side stands off, without sign.
    pub over_along: Length,
    /// The sum.
    pub working: Vec<Step>,
}

/// How far a four-sided room with equal opposite sides is off square: `sin(off) = (d₁² − d₂²) / 4ab`.
///
/// # Inputs
/// The sides `a`, `b` and the two diagonals, more than nothing. Opposite sides must be equal: equal diagonals alone do
/// not make a square corner.
/// # Gives
/// The angle to the nearest millionth of a degree, and what it makes over each side.
/// # Errors
/// [`Problem::Beyond`] for a length of nothing or less, [`Problem::NoSuchShape`] where a diagonal cannot span the sides.
/// # Source
/// Computed; equal diagonals and equal opposite sides: Army engineer carpentry course.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::tape::out_of_square};
/// let (d, room) = (Length::inches(100), (Length::inches(60), Length::inches(80)));
/// assert_eq!(out_of_square(room, (d, d)).unwrap().off, Angle::ZERO);
/// ```
pub fn out_of_square(
    (across, along): (Length, Length),
    (first, second): (Length, Length),
) -> Result<OutOfSquare, Problem> {
    for side in [across, along] {
        positive(Field::Side, side)?;
    }
    for diagonal in [first, second] {
        positive(Field::Diagonal, diagonal)?;
    }
    let (a, b) = (across.metres(), along.metres());
    let (long, short) = (first.metres(), second.metres());
    // The parallelogram law says what the two squares must add up to; a diagonal of another shape is a slip of the tape.
    let law = 2.0 * (a * a + b * b);
    let sine = (long + short) * (long - short) / (4.0 * a * b);
    let slip = ((long * long + short * short) / law - 1.0).abs();
    if sine.abs() >= 1.0 || slip > MOST_SLIP {
        return Err(Problem::NoSuchShape);
    }
    let off = Angle::from_degrees(sine.asin().to_degrees()).ok_or(Problem::NoSuchShape)?;
    let over = |side: f64| Length::from_metres((side * sine).abs()).ok_or(Problem::NoSuchShape);
    Ok(OutOfSquare {
        off,
        over_across: over(a)?,
        over_along: over(b)?,
        working: vec![Step {
            what: Phrase::plain("Sine of what the corner is off"),
            sum: vec![
                Term::Word("("),
                first.into(),
                Term::Word("² −"),
                second.into(),
                Term::Word("²) ÷ (4 ×"),
                across.into(),
                Term::Word("×"),
                along.into(),
                Term::Word(")"),
            ],
            gives: Amount::Number(sine),
            cite: Cite::read(
                &documents::ARMY_CARPENTRY,
                "diagonals agree and opposite sides are equal",
            ),
        }],
    })
}

/// How far the squares of the diagonals may miss what the sides make: about 1 1/2 in in 100 in.
const MOST_SLIP: f64 = 0.03;

#[cfg(test)]
mod tests {
    use super::*;

    fn check(across: i64, along: i64, wanted: Option<(i64, i64, i64)>) {
        let found =
            three_four_five(Length::feet(across), Length::feet(along), Length::feet(1)).unwrap();
        let wanted = wanted.map(|(a, b, c)| Triangle {
            across: Length::feet(a),
            along: Length::feet(b),
            between: Length::feet(c),
        });
        assert_eq!(found, wanted);
    }

    #[test]
    fn the_largest_triangle_stands_on_both_sides() {
        check(5, 8, Some((3, 4, 5)));
        check(6, 8, Some((6, 8, 10)));
        check(8, 6, Some((8, 6, 10)));
        check(20, 15, Some((20, 15, 25)));
        check(12, 12, Some((9, 12, 15)));
        check(2, 100, None);
    }

    #[test]
    fn a_diagonal_that_cannot_be_is_refused() {
        let room = (Length::inches(60), Length::inches(96));
        for diagonals in [(113, 90), (200, 200), (10, 10), (156, 1)] {
            let (d1, d2) = (Length::inches(diagonals.0), Length::inches(diagonals.1));
            assert_eq!(out_of_square(room, (d1, d2)), Err(Problem::NoSuchShape));
        }
        assert_eq!(
            out_of_square(room, (Length::ZERO, Length::inches(1))),
            Err(Problem::Beyond {
                field: Field::Diagonal
            })
        );
    }

    #[test]
    fn swapping_the_diagonals_turns_the_sign_alone() {
        let room = (Length::inches(60), Length::inches(96));
        let (long, short) = (Length::in_64(113, 16), Length::in_64(112, 48));
        let one = out_of_square(room, (long, short)).unwrap();
        let other = out_of_square(room, (short, long)).unwrap();
        assert_eq!(one.off, -other.off);
        assert_eq!(one.over_along, other.over_along);
    }
}
