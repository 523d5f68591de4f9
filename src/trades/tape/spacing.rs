//! Equal spaces, middles and halves, as running positions from one end.

use super::{Field, Problem, positive};
use crate::handbook::Cite;
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Step, Term};

/// The most things that are spaced out.
pub const MOST_THINGS: u32 = 1_000;

/// Whether things stand at the two ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// A space before the first and after the last, equal to the others.
    Open,
    /// The first and the last stand flush with the ends.
    Taken,
}

/// Things spaced equally over a length.
#[derive(Clone, Debug, PartialEq)]
pub struct Spacing {
    /// The clear space between two, before rounding to the tape.
    pub space: Length,
    /// From centre to centre.
    pub centres: Length,
    /// Near edge and centre of each, running from one end; each is rounded alone, so nothing adds up.
    pub positions: Vec<(Length, Length)>,
    /// The sum.
    pub working: Vec<Step>,
}

/// Equal spaces: `space = (L − n·w) / (n + 1)`, or `/ (n − 1)` with things at both ends.
///
/// # Inputs
/// `over`: the length, more than nothing. `count`: 1 to 1,000, and 2 or more where the ends are taken. `width`: of one
/// thing, nothing for a mark. `ends`: whether things stand at both ends.
/// # Gives
/// The space, the centres, and for each thing its near edge and centre, running, to the nearest nanometre.
/// # Errors
/// [`Problem::Beyond`] for a figure outside its limits, [`Problem::DoesNotFit`] where the things are longer than `over`.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tape::{Ends, spaced}};
/// let hooks = spaced(Length::inches(60), 4, Length::ZERO, Ends::Open).unwrap();
/// assert_eq!(hooks.space, Length::inches(12));
/// assert_eq!(hooks.positions[3].1, Length::inches(48));
/// ```
pub fn spaced(over: Length, count: u32, width: Length, ends: Ends) -> Result<Spacing, Problem> {
    positive(Field::Length, over)?;
    let least = if ends == Ends::Taken { 2 } else { 1 };
    if !(least..=MOST_THINGS).contains(&count) {
        return Err(Problem::Beyond {
            field: Field::Count,
        });
    }
    if width < Length::ZERO || width > Length::LONGEST {
        return Err(Problem::Beyond {
            field: Field::Width,
        });
    }
    let things = i64::from(count);
    let takes = width * things;
    if takes > over {
        return Err(Problem::DoesNotFit {
            takes,
            there_is: over,
        });
    }
    let (spaces, first) = match ends {
        Ends::Open => (things + 1, 1),
        Ends::Taken => (things - 1, 0),
    };
    let free = over - takes;
    let space = free.divided(spaces);
    let positions = (0..things)
        .map(|i| {
            let near = (free * (i + first)).divided(spaces) + width * i;
            (near, near + width.half())
        })
        .collect();
    Ok(Spacing {
        space,
        centres: space + width,
        positions,
        working: vec![Step {
            what: Phrase::plain("Space between two"),
            sum: vec![
                Term::Word("("),
                over.into(),
                Term::Word("−"),
                Amount::Count(things).into(),
                Term::Word("×"),
                width.into(),
                Term::Word(") ÷"),
                Amount::Count(spaces).into(),
            ],
            gives: space.into(),
            cite: Cite::computed("equal spaces"),
        }],
    })
}

/// A thing in the middle of a length.
#[derive(Clone, Debug, PartialEq)]
pub struct Centred {
    /// From the left end to the thing.
    pub left: Length,
    /// From the thing to the right end.
    pub right: Length,
    /// From the left end to the thing's middle.
    pub middle: Length,
    /// The sum.
    pub working: Vec<Step>,
}

/// The margins of a thing in the middle: `left = (L − w) / 2`.
///
/// # Inputs
/// `over`: the length, more than nothing. `width`: of the thing, 0 or more.
/// # Gives
/// Margins that add up to the length with the thing, exactly; a nanometre left over stands at the right.
/// # Errors
/// [`Problem::Beyond`] and [`Problem::DoesNotFit`] as for [`spaced`].
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tape::centred};
/// let mirror = centred(Length::inches(60), Length::inches(24)).unwrap();
/// assert_eq!((mirror.left, mirror.middle), (Length::inches(18), Length::inches(30)));
/// ```
pub fn centred(over: Length, width: Length) -> Result<Centred, Problem> {
    let one = spaced(over, 1, width, Ends::Open)?;
    Ok(Centred {
        left: one.space,
        right: over - width - one.space,
        middle: over.half(),
        working: vec![Step {
            what: Phrase::plain("Margin on each side"),
            sum: vec![
                Term::Word("("),
                over.into(),
                Term::Word("−"),
                width.into(),
                Term::Word(") ÷ 2"),
            ],
            gives: one.space.into(),
            cite: Cite::computed("half of what is left"),
        }],
    })
}

/// A length halved, with its sum: `L / 2`.
///
/// # Inputs
/// `length`: more than nothing.
/// # Gives
/// Half, to the nearest nanometre; half of every mark of a tape is exact.
/// # Errors
/// [`Problem::Beyond`] for nothing or less.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tape::halved};
/// assert_eq!(halved(Length::in_64(5, 16)).unwrap().0, Length::in_64(2, 40));
/// ```
pub fn halved(length: Length) -> Result<(Length, Step), Problem> {
    positive(Field::Length, length)?;
    let half = length.half();
    let step = Step {
        what: Phrase::plain("Half"),
        sum: vec![length.into(), Term::Word("÷ 2")],
        gives: half.into(),
        cite: Cite::computed("half"),
    };
    Ok((half, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(over: i64, count: u32, width: i64, ends: Ends, space: i64, centres: &[i64]) {
        let found = spaced(Length::inches(over), count, Length::inches(width), ends).unwrap();
        assert_eq!(found.space, Length::inches(space));
        let middles: Vec<Length> = found.positions.iter().map(|p| p.1).collect();
        let wanted: Vec<Length> = centres.iter().map(|c| Length::inches(*c)).collect();
        assert_eq!(middles, wanted);
    }

    #[test]
    fn spaces_are_equal_with_and_without_ends() {
        check(60, 4, 0, Ends::Open, 12, &[12, 24, 36, 48]);
        check(60, 4, 0, Ends::Taken, 20, &[0, 20, 40, 60]);
        check(60, 3, 4, Ends::Open, 12, &[14, 30, 46]);
        check(60, 3, 4, Ends::Taken, 24, &[2, 30, 58]);
        check(10, 1, 10, Ends::Open, 0, &[5]);
    }

    #[test]
    fn thirds_do_not_add_up_an_error() {
        let found = spaced(Length::inches(100), 1_000, Length::ZERO, Ends::Taken).unwrap();
        assert_eq!(found.positions[999].0, Length::inches(100));
        let thirds = spaced(Length::nm(100), 3, Length::ZERO, Ends::Open).unwrap();
        assert_eq!(thirds.positions[2].0, Length::nm(75));
    }

    #[test]
    fn what_does_not_fit_is_said() {
        let sixty = Length::inches(60);
        assert_eq!(
            spaced(sixty, 4, Length::inches(16), Ends::Open),
            Err(Problem::DoesNotFit {
                takes: Length::inches(64),
                there_is: sixty
            })
        );
        for (over, count, width, ends) in [
            (Length::ZERO, 1, Length::ZERO, Ends::Open),
            (sixty, 0, Length::ZERO, Ends::Open),
            (sixty, 1, Length::ZERO, Ends::Taken),
            (sixty, 1_001, Length::ZERO, Ends::Open),
            (sixty, 1, Length::nm(-1), Ends::Open),
        ] {
            assert!(matches!(
                spaced(over, count, width, ends),
                Err(Problem::Beyond { .. })
            ));
        }
    }

    #[test]
    fn margins_add_up() {
        let found = centred(Length::nm(1_001), Length::nm(500)).unwrap();
        assert_eq!(found.left + found.right, Length::nm(501));
        assert_eq!(
            halved(Length::ZERO),
            Err(Problem::Beyond {
                field: Field::Length
            })
        );
    }
}
