//! A length on site, in whole nanometres.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// Which way a length goes to the next mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest mark; exactly halfway goes to the even mark.
    ///
    /// Source: NIST Handbook 44, section 10.3 (reading a graduated scale).
    Nearest,
    /// Towards zero: a piece that must fit inside.
    FitInside,
    /// Away from zero: a piece that must cover.
    Cover,
}

/// A length, exact in whole nanometres.
///
/// One inch is 25,400,000 nm, so 1/64 in is 396,875 nm and every mark of a tape is a whole number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// Nothing at all.
    pub const ZERO: Length = Length(0);
    /// The longest length that is read or shown: 10 km.
    pub const LONGEST: Length = Length(10_000 * 1_000_000_000);
    /// 1/64 in, the finest mark that is shown.
    pub const SIXTY_FOURTH: Length = Length(396_875);

    /// Whole nanometres.
    #[must_use]
    pub const fn nm(n: i64) -> Length {
        Length(n)
    }
    /// Whole millimetres.
    #[must_use]
    pub const fn mm(n: i64) -> Length {
        Length(n * 1_000_000)
    }
    /// Whole inches.
    #[must_use]
    pub const fn inches(n: i64) -> Length {
        Length(n * 25_400_000)
    }
    /// Whole feet.
    #[must_use]
    pub const fn feet(n: i64) -> Length {
        Length(n * 304_800_000)
    }
    /// Inches and sixty-fourths: `in_64(3, 20)` is 3 5/16 in.
    #[must_use]
    pub const fn in_64(inches: i64, sixty_fourths: i64) -> Length {
        Length(inches * 25_400_000 + sixty_fourths * 396_875)
    }
    /// Metres as computed, to the nearest nanometre; `None` when not finite or beyond [`Length::LONGEST`].
    #[must_use]
    pub fn from_metres(metres: f64) -> Option<Length> {
        let nm = (metres * 1e9).round();
        (nm.is_finite() && nm.abs() <= Length::LONGEST.0 as f64).then_some(Length(nm as i64))
    }
    /// Inches as computed, to the nearest nanometre; `None` when not finite or beyond [`Length::LONGEST`].
    #[must_use]
    pub fn from_inches(inches: f64) -> Option<Length> {
        Length::from_metres(inches * 0.0254)
    }

    /// The whole nanometres.
    #[must_use]
    pub const fn as_nm(self) -> i64 {
        self.0
    }
    /// In metres, for a computation that need not be exact.
    #[must_use]
    pub fn metres(self) -> f64 {
        self.0 as f64 / 1e9
    }
    /// In millimetres, for a computation that need not be exact.
    #[must_use]
    pub fn millimetres(self) -> f64 {
        self.0 as f64 / 1e6
    }
    /// In inches, for a computation that need not be exact.
    #[must_use]
    pub fn in_inches(self) -> f64 {
        self.0 as f64 / 25_400_000.0
    }
    /// Without its sign.
    #[must_use]
    pub const fn abs(self) -> Length {
        Length(self.0.saturating_abs())
    }
    /// More than nothing.
    #[must_use]
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }
    /// Exactly half, rounded to even nanometres.
    #[must_use]
    pub fn half(self) -> Length {
        self.divided(2)
    }
    /// One of `parts` equal parts, to the nearest nanometre (halfway to even). `parts` is at least 1.
    #[must_use]
    pub fn divided(self, parts: i64) -> Length {
        Length(divide_to_even(i128::from(self.0), i128::from(parts.max(1))) as i64)
    }
    /// To a multiple of `mark` (more than zero), the way that `rounding` says.
    #[must_use]
    pub fn rounded(self, mark: Length, rounding: Rounding) -> Length {
        let (value, mark) = (i128::from(self.0), i128::from(mark.0.max(1)));
        let marks = match rounding {
            Rounding::Nearest => divide_to_even(value, mark),
            Rounding::FitInside => value / mark,
            Rounding::Cover => value / mark + if value % mark == 0 { 0 } else { value.signum() },
        };
        Length((marks * mark) as i64)
    }
    /// The straight line across two legs at a right angle, to the nearest nanometre.
    #[must_use]
    pub fn diagonal(self, other: Length) -> Length {
        Length(
            self.metres()
                .hypot(other.metres())
                .mul_add(1e9, 0.5)
                .floor() as i64,
        )
    }
}

/// `value / by`, halfway to the even quotient; `by` is more than zero.
fn divide_to_even(value: i128, by: i128) -> i128 {
    let (quotient, rest) = (value.div_euclid(by), value.rem_euclid(by));
    match (rest * 2).cmp(&by) {
        std::cmp::Ordering::Less => quotient,
        std::cmp::Ordering::Greater => quotient + 1,
        std::cmp::Ordering::Equal => quotient + quotient.rem_euclid(2),
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}
impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}
impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}
impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, times: i64) -> Length {
        Length(self.0.saturating_mul(times))
    }
}
impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        *self = *self + other;
    }
}
impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        *self = *self - other;
    }
}
impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}
