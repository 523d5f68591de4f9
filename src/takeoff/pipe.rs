//! Pipe on the buying list.

use super::Shelf;
use crate::trades::Material;

/// What it is called, and where it stands; `None` for what is no pipe.
pub(super) fn named(material: &Material) -> Option<(Shelf, String)> {
    let name = match material {
        Material::Pipe { pipe, size, .. } => format!("{} {}", size.name(), pipe.name()),
        Material::PipeFitting {
            family,
            kind,
            turn,
            size,
            other,
            street,
        } => format!(
            "{} {} {}",
            size.by(*other),
            family.name(),
            kind.called(*turn, *street)
        ),
        Material::Solder => "Solder without lead, wire of 1/8 in".to_owned(),
        Material::Flux => "Flux for solder".to_owned(),
        Material::PipeCement { family } => format!("Cement for {}", family.name()),
        Material::PipePrimer => "Primer for solvent cement".to_owned(),
        Material::PipeHanger { family, size } => {
            format!("hangers or straps for {} {}", size.name(), family.name())
        }
        _ => return None,
    };
    Some((Shelf::Pipe, capital(&name)))
}

/// With a capital to begin with.
fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
