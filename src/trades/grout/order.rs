//! The order of grouting: the wait after the tile was set, the joints, the seams.

use super::answer::{longest_wait, wait};
use super::{Ask, Figure};
use crate::handbook::{Cite, grout as book};
use crate::measure::Phrase;
use crate::trades::{Order, Work};

/// The steps of grouting. The first is the wait since the tile was set, wherever that is kept.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let (hours, cite) = wait(ask);
    let mut steps = vec![
        Order::wait(
            Phrase::with("Wait {0} after the tile was set.", [hours.clone()]),
            longest_wait(&hours),
            cite,
        ),
        Order::of(
            Work::Grout,
            Phrase::with(
                "Grout: joints open to {0} at least; let each batch rest, stir it again, add no water.",
                [figure.open.into()],
            ),
            book::OPEN_SHARE.cite,
        ),
    ];
    if !figure.seams.is_empty() {
        steps.push(Order::wait(
            "Let the grout dry as long as the sealant's label says.",
            None,
            LABEL,
        ));
        steps.push(Order::of(
            Work::Seal,
            "Close the seams with sealant, not grout.",
            book::PLANE_CHANGE,
        ));
    }
    steps
}

/// Sealants differ.
static LABEL: Cite = Cite::practice("how dry grout has to be stands on the sealant's label");
