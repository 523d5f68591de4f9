//! Board in sheets on the buying list.

use super::Shelf;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::{Board, Material};

/// What it is called, and where it stands; `None` for what goes with no sheets.
pub(super) fn named(material: &Material) -> Option<(Shelf, String)> {
    let inches = |length: Length| {
        Units::FeetInches { marks: 64 }.length(length, Rounding::Nearest, Figures::Set)
    };
    Some(match material {
        Material::Sheet {
            board,
            long,
            short,
            thickness,
        } => (
            Shelf::Board,
            format!(
                "{} {}, {} × {}",
                name(*board),
                inches(*thickness),
                inches(*short),
                inches(*long)
            ),
        ),
        Material::SheetScrews { board, length } => (
            Shelf::Fasteners,
            format!(
                "Screws for {}, {}",
                name(*board).to_lowercase(),
                inches(*length)
            ),
        ),
        Material::MeshTape => (Shelf::Board, "Glass mesh tape".to_owned()),
        _ => return None,
    })
}

/// A board by its name.
fn name(board: Board) -> &'static str {
    match board {
        Board::Gypsum => "Gypsum board",
        Board::Cement => "Cement board",
        Board::Plywood => "Plywood",
    }
}
