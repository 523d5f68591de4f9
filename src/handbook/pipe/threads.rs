//! How far a taper pipe thread goes in.

use super::{Size, tenths};
use crate::handbook::{Cite, Sourced, documents};
use crate::measure::Length;

/// A taper pipe thread of a size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// Threads an inch.
    pub an_inch: f64,
    /// As far as it goes by hand.
    pub hand: Sourced<Length>,
    /// By the wrench, on top of that.
    pub wrench: Sourced<Length>,
    /// Threads that hold.
    pub effective: Sourced<Length>,
    /// What one trade table rounds the make-up to.
    pub rounded: Option<Sourced<Length>>,
}

impl Thread {
    /// By hand and wrench.
    #[must_use]
    pub fn makeup(&self) -> Length {
        self.hand.value + self.wrench.value
    }
    /// Two turns: either member may be one turn off by the gauge.
    #[must_use]
    pub fn two_turns(&self) -> Length {
        Length::from_inches(2.0 / self.an_inch).unwrap_or_default()
    }
}

const TABLE: Cite = Cite::read(&documents::B1_20_1, "lengths of engagement");
/// That page misprints the effective thread of 3 in as 1.250; two others give 1.200.
const MENDED: Cite = Cite::read(
    &documents::B1_20_1,
    "3 in, by two other pages; the page itself misprints 1.250",
);
const ROUNDED: Cite = Cite::read(
    &documents::TUBE_TABLES,
    "make-up of threaded pipe, rounded; tables differ by up to 1/8 in",
);

/// The thread of that size.
#[must_use]
pub fn thread(size: Size) -> Option<Thread> {
    // Threads an inch times ten; hand, wrench and effective in 0.0001 in; the rounded make-up in 1/64 in.
    let (an_inch, hand, wrench, effective, rounded) = match size {
        Size::Half => (140, 3_200, 2_143, 5_337, 28),
        Size::ThreeQuarters => (140, 3_390, 2_143, 5_457, 32),
        Size::One => (115, 4_000, 2_609, 6_828, 36),
        Size::OneQuarter => (115, 4_200, 2_609, 7_068, 36),
        Size::OneHalf => (115, 4_200, 2_609, 7_235, 36),
        Size::Two => (115, 4_360, 2_609, 7_565, 40),
        // The rounded make-up of this row was not legible.
        Size::TwoHalf => (80, 6_820, 2_500, 11_375, 0),
        Size::Three => (80, 7_660, 2_500, 12_000, 64),
        Size::Four => (80, 8_440, 2_500, 13_000, 68),
        _ => return None,
    };
    let cite = if size == Size::Three { MENDED } else { TABLE };
    Some(Thread {
        an_inch: f64::from(an_inch) / 10.0,
        hand: Sourced::new(tenths(hand), TABLE),
        wrench: Sourced::new(tenths(wrench), TABLE),
        effective: Sourced::new(tenths(effective), cite),
        rounded: (rounded > 0).then(|| Sourced::new(Length::in_64(0, rounded), ROUNDED)),
    })
}

/// What the gauge lets pass.
pub static GAUGE: Cite = Cite::read(
    &documents::THREAD_PAGE,
    "one turn either way on each member",
);
