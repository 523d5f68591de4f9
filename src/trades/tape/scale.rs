//! Drawing scales: inches on paper to the foot, and ratios.

use super::{Field, Problem, positive};
use crate::handbook::{Cite, documents};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Step, Term};

/// A drawing scale: so long on paper for a foot on site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    /// On paper, for a foot.
    to_the_foot: Length,
}

/// The usual architectural scales: inches (and 64ths) on paper for a foot, and the ratio.
///
/// Source: tables of drawing scales. One chart prints 6 in to the foot as 1:6; it is 1:2.
pub static USUAL_SCALES: [(Length, i64); 13] = [
    (Length::inches(12), 1),
    (Length::inches(6), 2),
    (Length::inches(3), 4),
    (Length::in_64(1, 32), 8),
    (Length::inches(1), 12),
    (Length::in_64(0, 48), 16),
    (Length::in_64(0, 32), 24),
    (Length::in_64(0, 24), 32),
    (Length::in_64(0, 16), 48),
    (Length::in_64(0, 12), 64),
    (Length::in_64(0, 8), 96),
    (Length::in_64(0, 6), 128),
    (Length::in_64(0, 4), 192),
];

/// Where the scales stand.
const TABLE: Cite = Cite::read(
    &documents::SCALE_TABLE,
    "ratio = 12 over inches to the foot",
);

impl Scale {
    /// A scale by what a foot is on paper: more than nothing, up to a foot.
    ///
    /// # Inputs
    /// `on_paper`: for a foot on site.
    /// # Gives
    /// The scale.
    /// # Errors
    /// [`Problem::Beyond`] for nothing, or more than a foot.
    /// # Source
    /// Tables of drawing scales.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, trades::tape::Scale};
    /// assert_eq!(Scale::to_the_foot(Length::inches(1)).unwrap().ratio(), 12.0);
    /// ```
    pub fn to_the_foot(on_paper: Length) -> Result<Scale, Problem> {
        positive(Field::Scale, on_paper)?;
        if on_paper > Length::feet(1) {
            return Err(Problem::Beyond {
                field: Field::Scale,
            });
        }
        Ok(Scale {
            to_the_foot: on_paper,
        })
    }

    /// A scale by its ratio, 1 to `real`: `foot on paper = 12 in / real`.
    ///
    /// # Inputs
    /// `real`: 1 to 10,000.
    /// # Gives
    /// The scale, its foot on paper to the nearest nanometre.
    /// # Errors
    /// [`Problem::Beyond`] outside the limits.
    /// # Source
    /// Tables of drawing scales.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, trades::tape::Scale};
    /// assert_eq!(Scale::one_to(12).unwrap(), Scale::to_the_foot(Length::inches(1)).unwrap());
    /// ```
    pub fn one_to(real: i64) -> Result<Scale, Problem> {
        if (1..=10_000).contains(&real) {
            Scale::to_the_foot(Length::feet(1).divided(real))
        } else {
            Err(Problem::Beyond {
                field: Field::Scale,
            })
        }
    }

    /// A foot on site, on paper.
    #[must_use]
    pub fn foot_on_paper(self) -> Length {
        self.to_the_foot
    }

    /// The ratio: `12 / inches to the foot`.
    ///
    /// # Gives
    /// How many times the site is larger.
    /// # Source
    /// Tables of drawing scales.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, trades::tape::Scale};
    /// assert_eq!(Scale::to_the_foot(Length::inches(6)).unwrap().ratio(), 2.0);
    /// ```
    #[must_use]
    pub fn ratio(self) -> f64 {
        Length::feet(1).as_nm() as f64 / self.to_the_foot.as_nm() as f64
    }

    /// What stands on site, on paper: `site · paper foot / foot`.
    ///
    /// # Inputs
    /// `on_site`: any length.
    /// # Gives
    /// To the nearest nanometre, halfway to even, with its sum.
    /// # Source
    /// Computed.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, trades::tape::Scale};
    /// let half = Scale::to_the_foot(Length::in_64(0, 32)).unwrap();
    /// assert_eq!(half.on_paper(Length::feet(8)).0, Length::inches(4));
    /// ```
    #[must_use]
    pub fn on_paper(self, on_site: Length) -> (Length, Step) {
        let gives = times(on_site, self.to_the_foot, Length::feet(1));
        let step = Step {
            what: Phrase::plain("On paper"),
            sum: vec![
                on_site.into(),
                Term::Word("÷"),
                Amount::Number(self.ratio()).into(),
            ],
            gives: gives.into(),
            cite: TABLE,
        };
        (gives, step)
    }

    /// What stands on paper, on site: `paper · foot / paper foot`.
    ///
    /// # Inputs
    /// `on_paper`: any length.
    /// # Gives
    /// To the nearest nanometre, halfway to even, with its sum.
    /// # Source
    /// Computed.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, trades::tape::Scale};
    /// let quarter = Scale::one_to(48).unwrap();
    /// assert_eq!(quarter.on_site(Length::inches(2)).0, Length::feet(8));
    /// ```
    #[must_use]
    pub fn on_site(self, on_paper: Length) -> (Length, Step) {
        let gives = times(on_paper, Length::feet(1), self.to_the_foot);
        let step = Step {
            what: Phrase::plain("On site"),
            sum: vec![
                on_paper.into(),
                Term::Word("×"),
                Amount::Number(self.ratio()).into(),
            ],
            gives: gives.into(),
            cite: TABLE,
        };
        (gives, step)
    }
}

/// `length · by / over`, to the nearest nanometre, halfway to even, and no further than [`Length::LONGEST`] goes.
fn times(length: Length, by: Length, over: Length) -> Length {
    let product = i128::from(length.as_nm()) * i128::from(by.as_nm());
    let over = i128::from(over.as_nm().max(1));
    let (whole, rest) = (product.div_euclid(over), product.rem_euclid(over));
    let up = match (rest * 2).cmp(&over) {
        std::cmp::Ordering::Less => 0,
        std::cmp::Ordering::Greater => 1,
        std::cmp::Ordering::Equal => whole.rem_euclid(2),
    };
    let most = i128::from(i64::MAX);
    Length::nm((whole + up).clamp(-most, most) as i64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_usual_scale_is_its_ratio() {
        for (on_paper, ratio) in USUAL_SCALES {
            let scale = Scale::to_the_foot(on_paper).unwrap();
            assert_eq!(scale, Scale::one_to(ratio).unwrap());
            assert_eq!(scale.ratio(), ratio as f64);
        }
    }

    #[test]
    fn there_and_back_is_the_same_length() {
        for (on_paper, _) in USUAL_SCALES {
            let scale = Scale::to_the_foot(on_paper).unwrap();
            let wall = Length::in_64(103, 24);
            assert_eq!(scale.on_paper(scale.on_site(wall).0).0, wall);
        }
    }

    #[test]
    fn no_scale_is_nothing_or_larger_than_life() {
        for on_paper in [Length::ZERO, Length::nm(-1), Length::inches(13)] {
            assert!(Scale::to_the_foot(on_paper).is_err());
        }
        assert!(Scale::one_to(0).is_err());
        assert!(Scale::one_to(10_001).is_err());
        let small = Scale::to_the_foot(Length::nm(1)).unwrap();
        assert!(small.on_site(Length::LONGEST).0.is_positive());
    }
}
