//! The order of mending: opened, closed with its piece, three coats each dry before the next, sanded.

use super::{Figure, Method};
use crate::handbook::Cite;
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// The steps of a patch; the waits are those of [`Figure::waits`].
pub(super) fn order(figure: &Figure) -> Vec<Order> {
    let mut steps = Vec::new();
    if let Some(look) = &figure.inspection {
        steps.push(Order::of(
            Work::OpenUp,
            "Look in through a small hole, then cut the opening along its lines.",
            look.cite,
        ));
    }
    let piece = match figure.method {
        Method::Fill => None,
        Method::AdhesivePatch => Some("Press the patch on, smooth from its middle out."),
        Method::BackedPatch => Some("Screw the backing in, then the piece to it."),
        Method::CutBack => Some("Screw the piece to studs, blocking and cleats."),
    };
    steps.extend(piece.map(|does| {
        let rule = Cite::practice("a piece is backed and screwed before its joints are taped");
        Order::of(Work::Board, does, rule)
    }));
    // The first wait is for a warm room; then one a coat, where the air's figures are known.
    let dry = |coat: usize| figure.waits.get(coat);
    for coat in 1..=usize::from(figure.coats) {
        let cite = figure.waits.first().map_or(COATS, |warm| warm.cite);
        steps.push(Order::of(
            Work::Coat,
            Phrase::with(
                "Compound, coat {0} of {1}, in a room kept warm.",
                [
                    Amount::Count(coat as i64),
                    Amount::Count(figure.coats.into()),
                ],
            ),
            cite,
        ));
        steps.push(match dry(coat) {
            Some(wait) => Order::wait(wait.what.clone(), Some(wait.hours), wait.cite),
            None => Order::wait("Wait until it is dry and white all over.", None, COATS),
        });
    }
    steps.push(Order::of(
        Work::Sand,
        "Sand under a side light, with a mask on and the room sealed off.",
        COATS,
    ));
    steps
}

/// One coat after the other.
static COATS: Cite =
    Cite::practice("each coat is dry and white before the next, and before it is sanded");
