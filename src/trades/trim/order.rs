//! The order of trim: old trim off, pieces cut and tried, nailed, holes filled and the edge caulked.

use super::{Ask, Figure, Kind};
use crate::handbook::{Cite, trim as book};
use crate::measure::{Amount, Phrase};
use crate::trades::{Order, Work};

/// The steps of a cutting list; walls are painted and floors laid before it, casing comes before base.
pub(super) fn order(ask: &Ask, figure: &Figure) -> Vec<Order> {
    let pieces = Amount::Count(figure.pieces.len() as i64);
    let mut steps = Vec::new();
    if ask.old {
        steps.push(Order::of(
            Work::StripTrim,
            "Score the paint along the old trim, pry it off at its nails, and pull what is left of them.",
            Cite::practice("old trim is cut loose from the wall before it is pried off"),
        ));
    }
    let cut = match ask.kind {
        Kind::Base => {
            "Cut {0} pieces of base in the order of their numbers, and try each in its place before the next."
        }
        Kind::Casing => {
            "Cut {0} pieces of casing, and try the mitres of each head on its legs before you nail."
        }
    };
    steps.push(Order::of(
        Work::CutTrim,
        Phrase::with(cut, [pieces.clone()]),
        Cite::practice("a piece is tried before the next one is measured to it"),
    ));
    let (work, nail) = match ask.kind {
        Kind::Base => (
            Work::NailBase,
            "Nail the base in the order of its numbers: {0} pieces, {1} nails.",
        ),
        Kind::Casing => (
            Work::NailCasing,
            "Nail the casing to jamb and studs: {0} pieces, {1} nails.",
        ),
    };
    steps.push(Order::of(
        work,
        Phrase::with(nail, [pieces, Amount::Count(figure.nails)]),
        book::NAILS_APART.cite,
    ));
    if ask.caulk.is_some() {
        steps.push(Order::of(
            Work::CaulkTrim,
            "Fill the nail holes, caulk the edge at the wall, and touch up the paint.",
            book::CAULK,
        ));
    }
    steps
}
