//! The order of painting: primer, ceiling, walls, trim, each coat dry before the next.

use super::answer::recoat;
use super::{Ask, Figure, Purpose};
use crate::handbook::Cite;
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// From the top down.
static DOWN: Cite = Cite::practice("primer first, then from the top down: ceiling, walls, trim");

/// The steps of painting; between coats the longer of the hours until the next.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let dry = recoat(ask.binder);
    let coats = |purpose: Purpose| {
        let lots = figure.lots.iter().filter(|lot| lot.purpose == purpose);
        lots.map(|lot| lot.coats).max().unwrap_or(0)
    };
    let mut steps = Vec::new();
    for (purpose, work, does) in [
        (Purpose::Primer, Work::Prime, "Prime, coat {0} of {1}."),
        (
            Purpose::Ceiling,
            Work::Ceiling,
            "Paint the ceiling, coat {0} of {1}.",
        ),
        (
            Purpose::Wall,
            Work::Walls,
            "Paint the walls, coat {0} of {1}.",
        ),
        (
            Purpose::Trim,
            Work::Trim,
            "Paint the trim, coat {0} of {1}.",
        ),
    ] {
        let of = coats(purpose);
        for coat in 1..=of {
            let counts = [Amount::Count(coat.into()), Amount::Count(of.into())];
            steps.push(Order::of(work, Phrase::with(does, counts), DOWN));
            steps.push(Order::wait(
                "Let it dry to its next coat; the label has the last word.",
                Some(dry.value.1),
                dry.cite,
            ));
        }
    }
    steps
}
