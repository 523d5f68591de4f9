//! A turn, exact in millionths of a degree.

use std::ops::{Add, Neg, Sub};

use super::Figures;

/// An angle in whole millionths of a degree, so that four right angles are exactly a full turn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Angle(i64);

impl Angle {
    /// 90°, a corner that turns right (into the room) when the walls are walked clockwise.
    pub const RIGHT: Angle = Angle::degrees(90);
    /// −90°, a corner that juts into the room.
    pub const LEFT: Angle = Angle::degrees(-90);
    /// All the way round.
    pub const FULL: Angle = Angle::degrees(360);
    /// Not at all.
    pub const ZERO: Angle = Angle(0);

    /// Whole degrees.
    #[must_use]
    pub const fn degrees(n: i64) -> Angle {
        Angle(n * 1_000_000)
    }
    /// Whole millionths of a degree.
    #[must_use]
    pub const fn microdegrees(n: i64) -> Angle {
        Angle(n)
    }
    /// Degrees as computed; `None` when not finite or beyond ±3600°.
    #[must_use]
    pub fn from_degrees(degrees: f64) -> Option<Angle> {
        let micro = (degrees * 1e6).round();
        (micro.is_finite() && micro.abs() <= 3.6e9).then_some(Angle(micro as i64))
    }
    /// The whole millionths of a degree.
    #[must_use]
    pub const fn as_microdegrees(self) -> i64 {
        self.0
    }
    /// In degrees.
    #[must_use]
    pub fn in_degrees(self) -> f64 {
        self.0 as f64 / 1e6
    }
    /// Every place that it has: `90°`, `22.5°`; it reads back as the same angle.
    ///
    /// # Example
    /// ```
    /// use storyrod::measure::{Angle, Figures};
    /// assert_eq!(Angle::microdegrees(22_500_000).show(Figures::Plain), "22.5°");
    /// assert_eq!(Angle::LEFT.show(Figures::Set), "−90°");
    /// ```
    #[must_use]
    pub fn show(self, figures: Figures) -> String {
        let sign = match figures {
            _ if self.0 >= 0 => "",
            Figures::Plain => "-",
            Figures::Set => "−",
        };
        let (whole, part) = (
            self.0.unsigned_abs() / 1_000_000,
            self.0.unsigned_abs() % 1_000_000,
        );
        let part = format!(".{part:06}");
        let part = part.trim_end_matches('0').trim_end_matches('.');
        format!("{sign}{whole}{part}°")
    }
    /// Sine and cosine; exact at every quarter turn.
    #[must_use]
    pub fn sin_cos(self) -> (f64, f64) {
        match self.0.rem_euclid(Angle::FULL.0) {
            0 => (0.0, 1.0),
            90_000_000 => (1.0, 0.0),
            180_000_000 => (0.0, -1.0),
            270_000_000 => (-1.0, 0.0),
            micro => (micro as f64 / 1e6).to_radians().sin_cos(),
        }
    }
}

impl Add for Angle {
    type Output = Angle;
    fn add(self, other: Angle) -> Angle {
        Angle(self.0.saturating_add(other.0))
    }
}
impl Sub for Angle {
    type Output = Angle;
    fn sub(self, other: Angle) -> Angle {
        Angle(self.0.saturating_sub(other.0))
    }
}
impl Neg for Angle {
    type Output = Angle;
    fn neg(self) -> Angle {
        Angle(self.0.saturating_neg())
    }
}
