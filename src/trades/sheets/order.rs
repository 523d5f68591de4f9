//! The order of boarding: sheets marked and cut, tried in their places, then fastened.

use super::Figure;
use crate::handbook::Cite;
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// The steps of a layout of sheets; what is hidden behind them comes before, compound and tile after.
pub(super) fn order(figure: &Figure) -> Vec<Order> {
    let cut = figure.pieces.iter().filter(|piece| !piece.whole).count();
    let mut steps = Vec::new();
    if cut > 0 {
        steps.push(Order::of(
            Work::CutSheets,
            Phrase::with(
                "Mark each piece with its number, cut {0} of {1}, and try them in their places.",
                [
                    Amount::Count(cut as i64),
                    Amount::Count(figure.pieces.len() as i64),
                ],
            ),
            Cite::practice("a piece is tried before it is fastened"),
        ));
    }
    steps.push(Order::of(
        Work::FastenSheets,
        Phrase::with(
            "Fasten the sheets in their order: {0} pieces, {1} screws.",
            [
                Amount::Count(figure.pieces.len() as i64),
                Amount::Count(figure.screws),
            ],
        ),
        Cite::practice("sheets are fastened in the order that they are laid"),
    ));
    steps
}
