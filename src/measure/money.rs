//! Money in minor units.

use std::iter::Sum;
use std::ops::Add;

/// A sum of money in whole minor units (cents), of the one currency that the job uses.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(i64);

impl Money {
    /// Whole minor units.
    #[must_use]
    pub const fn minor(n: i64) -> Money {
        Money(n)
    }
    /// The whole minor units.
    #[must_use]
    pub const fn as_minor(self) -> i64 {
        self.0
    }
    /// So many at this price.
    #[must_use]
    pub const fn times(self, n: i64) -> Money {
        Money(self.0.saturating_mul(n))
    }
}

impl Add for Money {
    type Output = Money;
    fn add(self, other: Money) -> Money {
        Money(self.0.saturating_add(other.0))
    }
}
impl Sum for Money {
    fn sum<I: Iterator<Item = Money>>(sums: I) -> Money {
        sums.fold(Money(0), Add::add)
    }
}

impl Money {
    /// As it is written: the symbol, a space, two places.
    #[must_use]
    pub fn show(self, symbol: &str) -> String {
        let (sign, minor) = (if self.0 < 0 { "−" } else { "" }, self.0.unsigned_abs());
        format!("{sign}{symbol} {}.{:02}", minor / 100, minor % 100)
    }
}
