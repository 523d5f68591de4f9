//! Exact fractions, between what is typed and what is kept.

/// An exact fraction; the lower number is more than nothing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ratio(pub(super) i128, pub(super) i128);

impl Ratio {
    pub(super) const fn whole(n: i128) -> Ratio {
        Ratio(n, 1)
    }
    /// In lowest terms, or `None` where the numbers outgrow any length.
    pub(super) fn new(over: Option<i128>, under: Option<i128>) -> Option<Ratio> {
        let (mut over, mut under) = (over?, under?);
        if under == 0 {
            return None;
        }
        if under < 0 {
            (over, under) = (-over, -under);
        }
        let (mut a, mut b) = (over.unsigned_abs(), under.unsigned_abs());
        while b > 0 {
            (a, b) = (b, a % b);
        }
        let by = i128::try_from(a.max(1)).ok()?;
        let ratio = Ratio(over / by, under / by);
        (ratio.0.unsigned_abs() < 1 << 62 && ratio.1 < 1 << 62).then_some(ratio)
    }
    pub(super) fn plus(self, other: Ratio) -> Option<Ratio> {
        let over = self
            .0
            .checked_mul(other.1)?
            .checked_add(other.0.checked_mul(self.1)?);
        Ratio::new(over, self.1.checked_mul(other.1))
    }
    pub(super) fn times(self, other: Ratio) -> Option<Ratio> {
        Ratio::new(self.0.checked_mul(other.0), self.1.checked_mul(other.1))
    }
    pub(super) fn over(self, other: Ratio) -> Option<Ratio> {
        Ratio::new(self.0.checked_mul(other.1), self.1.checked_mul(other.0))
    }
    pub(super) fn minus_sign(self) -> Ratio {
        Ratio(-self.0, self.1)
    }
    /// In so many parts of one, to the nearest whole part, halfway to even. `parts` is a million at most.
    pub(super) fn in_parts(self, parts: i128) -> i128 {
        Ratio(self.0 * parts, self.1).rounded()
    }
    /// To the nearest whole number, halfway to even.
    pub(super) fn rounded(self) -> i128 {
        let (whole, rest) = (self.0.div_euclid(self.1), self.0.rem_euclid(self.1));
        whole + i128::from(rest * 2 > self.1 || (rest * 2 == self.1 && whole % 2 != 0))
    }
}
