//! The order of tiling: lines chalked, then tile set from them.

use super::Figure;
use crate::handbook::Cite;
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// The steps of a layout; its mortar and its grout are figures of their own.
pub(super) fn order(figure: &Figure) -> Vec<Order> {
    let mut steps = Vec::new();
    if figure.chalk.is_some() {
        steps.push(Order::of(
            Work::Chalk,
            "Chalk the lines, and lay a row of each way dry along them.",
            Cite::practice("lines are chalked in joints near the middle"),
        ));
    }
    let cut: usize = figure.cuts.iter().map(|cut| cut.pieces.len()).sum();
    steps.push(Order::of(
        Work::SetTile,
        Phrase::with(
            "Set the tile from the lines outward: {0} pieces, {1} of them cut.",
            [
                Amount::Count(figure.layout.tiles.len() as i64),
                Amount::Count(cut as i64),
            ],
        ),
        Cite::practice("tile is set from the lines outward"),
    ));
    steps
}
