//! The order of a drain: capped, laid to its fall, tested, covered.

use super::{Ask, Figure};
use crate::handbook::pipe::{TEST_HEAD, TEST_MINUTES, TEST_PRESSURE};
use crate::handbook::{Cite, documents};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Order, Work};

/// The steps of a drain.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let slope = figure.fall.as_nm() as f64 / Length::feet(1).as_nm() as f64;
    let laid = Phrase::with(
        "Bore what it passes through and lay the drain from its low end, falling {0}.",
        [Amount::Slope(slope)],
    );
    vec![
        Order::of(
            Work::ShutOff,
            "Cap or plug the open drain or stack before anything else.",
            Cite::read(&documents::SEWER_GAS, "open drains"),
        ),
        Order::of(
            Work::LayDrain,
            laid,
            super::least_fall(ask.code, ask.size, ask.eighth_approved).1,
        ),
        Order::of(
            Work::Test,
            Phrase::with(
                "Fill the drain with water to {0} above its highest fitting, {1} psi, and hold {2} without a leak.",
                [
                    TEST_HEAD.value.into(),
                    Amount::Number(TEST_PRESSURE.value),
                    Amount::Minutes(TEST_MINUTES.value),
                ],
            ),
            TEST_HEAD.cite,
        ),
        Order::of(
            Work::Close,
            "Only then close floor and wall.",
            Cite::practice("nothing is covered before its test"),
        ),
    ]
}
