//! Trim on the buying list.

use super::Shelf;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::Material;

/// What it is called, and where it stands; `None` for what goes with no trim.
pub(super) fn named(material: &Material) -> Option<(Shelf, String)> {
    let inches = |length: Length| {
        Units::FeetInches { marks: 64 }.length(length, Rounding::Nearest, Figures::Set)
    };
    Some(match material {
        Material::Trim {
            name,
            thickness,
            width,
        } => {
            let name = if name.is_empty() { "Trim" } else { name };
            (
                Shelf::Lumber,
                format!("{name}, {} × {}", inches(*thickness), inches(*width)),
            )
        }
        Material::FinishNails { length } => (
            Shelf::Fasteners,
            format!("Finishing nails, {}", inches(*length)),
        ),
        Material::Caulk => (Shelf::Paint, "Caulk, paintable".to_owned()),
        _ => return None,
    })
}
