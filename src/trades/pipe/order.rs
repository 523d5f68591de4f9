//! The order of work: nothing is joined before everything was fitted dry, and no wall is closed before the test.

use super::ask::Ask;
use super::figure::Figure;
use crate::handbook::pipe::{Family, SUPPLY_TEST, TEST_HEAD, TEST_MINUTES, TEST_PRESSURE};
use crate::handbook::{Cite, documents};
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// Everything is fitted dry before the first joint.
pub static DRY: Cite = Cite::practice("everything is fitted dry before the first joint is made");

/// The steps of a run.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let family = ask.pipe.family();
    let mut steps = Vec::new();
    let mut step = |work: Work, does: Phrase, cite: Cite, joins: bool| {
        steps.push(Order {
            joins,
            ..Order::of(work, does, cite)
        });
    };
    if family.drains() {
        step(
            Work::ShutOff,
            "Cap or plug the open drain or stack before anything else.".into(),
            Cite::read(&documents::SEWER_GAS, "open drains"),
            false,
        );
    } else {
        step(
            Work::ShutOff,
            "Shut the water off, open the line at its lowest point and let it run empty.".into(),
            Cite::practice("a line is empty before it is opened or heated"),
            false,
        );
    }
    step(
        Work::CutPipe,
        "Cut every piece square and ream it; the ones to cut last stay long.".into(),
        Cite::read(&documents::COPPER_STEPS, "cut square, ream"),
        false,
    );
    step(
        Work::FitDry,
        Phrase::with(
            "Fit all {0} pieces dry, to the bottom of every hub, and look at the far end.",
            [Amount::Count(figure.pieces.len() as i64)],
        ),
        DRY,
        false,
    );
    step(
        Work::Mark,
        "Strike a depth line at each hub and a clocking line across pipe and hub.".into(),
        Cite::read(
            &documents::PLUMBING_2022,
            "p. 328, turned and aligned by marks",
        ),
        false,
    );
    step(
        Work::TakeApart,
        "Take it apart in the order in which it goes together again.".into(),
        DRY,
        false,
    );
    joining(family, &mut step);
    if let Some(cure) = figure.cure {
        step(
            Work::Wait,
            Phrase::with(
                "Wait {0} after the last joint, or as long as the label says.",
                [Amount::Hours(cure.hours)],
            ),
            cure.cite,
            true,
        );
    }
    testing(family, &mut step);
    step(
        Work::Close,
        "Only then close the wall.".into(),
        Cite::practice("nothing is covered before its test"),
        true,
    );
    for step in &mut steps {
        if step.work == Work::Wait {
            step.hours = figure.cure.map(|cure| cure.hours);
        }
    }
    steps
}

fn joining(family: Family, step: &mut impl FnMut(Work, Phrase, Cite, bool)) {
    let (does, cite) = match family {
        Family::Copper => (
            "Clean, flux and solder each joint on the day it is fluxed, back to its lines.",
            Cite::read(
                &documents::COPPER_STEPS,
                "clean, flux, assemble, heat, feed",
            ),
        ),
        Family::PvcDrain | Family::AbsDrain | Family::Pvc40 | Family::Cpvc => (
            "Prime where the label asks, cement, push home with a quarter turn to the clocking line, and hold.",
            Cite::read(&documents::PLUMBING_2022, "pp. 328 to 330"),
        ),
        Family::Pex => (
            "Make each joint as the maker of its fittings says, and gauge every ring.",
            Cite::practice("joints as the maker of the fittings says"),
        ),
        Family::Steel => (
            "Seal the threads and screw up from the start, the last piece cut after the rest is made up.",
            Cite::practice("threaded pipe is made up from one end"),
        ),
    };
    step(Work::Join, does.into(), cite, true);
}

fn testing(family: Family, step: &mut impl FnMut(Work, Phrase, Cite, bool)) {
    let minutes = Amount::Minutes(TEST_MINUTES.value);
    if family.drains() {
        step(
            Work::Test,
            Phrase::with(
                "Fill the drain with water to {0} above its highest fitting, {1} psi, and hold {2} without a leak.",
                [
                    TEST_HEAD.value.into(),
                    Amount::Number(TEST_PRESSURE.value),
                    minutes,
                ],
            ),
            TEST_HEAD.cite,
            true,
        );
    } else {
        step(
            Work::Test,
            Phrase::with(
                "Fill the line with water, bleed it, and hold the working pressure or more for {0} without a leak.",
                [minutes],
            ),
            SUPPLY_TEST,
            true,
        );
    }
}
