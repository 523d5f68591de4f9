//! The order of hanging or laying sheets.

use super::{Ask, Figure, Surface};
use crate::handbook::Cite;
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// One after the other, as they are numbered.
static NUMBERED: Cite = Cite::practice("sheets go in the order in which their courses are begun");

/// The steps of sheets: on a wall or a ceiling they close it.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let pieces = [Amount::Count(figure.pieces.len() as i64)];
    let (work, does) = match ask.on {
        Surface::Floor => (
            Work::Board,
            "Lay the sheets in the order of their numbers: {0} pieces.",
        ),
        Surface::Wall | Surface::Ceiling => (
            Work::Close,
            "Hang the sheets in the order of their numbers: {0} pieces.",
        ),
    };
    vec![Order::of(work, Phrase::with(does, pieces), NUMBERED)]
}
