//! What has to be there.

use super::ask::Ask;
use super::figure::Figure;
use crate::handbook::pipe::Family;
use crate::measure::{Amount, Phrase};
use crate::trades::{Material, Need};

/// Pipe by the piece, fittings, what joints take, hangers.
pub(super) fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let mut needs = Vec::new();
    let mut need = |material: Material, amount: Amount, why: Phrase| {
        needs.push(Need {
            material,
            amount,
            why,
        });
    };
    for piece in &figure.pieces {
        let material = Material::Pipe {
            pipe: piece.pipe,
            size: piece.size,
            stick: ask.stick,
        };
        let why = Phrase::with("piece {0}", [Amount::Count(i64::from(piece.number))]);
        need(material, piece.cut.into(), why);
    }
    for (item, count) in &figure.fittings {
        let material = Material::PipeFitting {
            family: item.family,
            kind: item.kind,
            turn: item.turn,
            size: item.size,
            other: item.other,
            street: item.street,
        };
        need(
            material,
            Amount::Count(i64::from(*count)),
            "run of pipe".into(),
        );
    }
    if let Some(solder) = figure.solder {
        need(Material::Solder, solder.mass.into(), "joints".into());
        need(Material::Flux, solder.flux.into(), "joints".into());
    }
    if let Some((cement, primer)) = figure.cement {
        let family = ask.pipe.family();
        need(
            Material::PipeCement { family },
            cement.into(),
            "joints".into(),
        );
        // ABS takes none as a rule; its label says.
        if family != Family::AbsDrain {
            need(Material::PipePrimer, primer.into(), "joints".into());
        }
    }
    if let Some(hangers) = figure.hangers {
        let material = Material::PipeHanger {
            family: ask.pipe.family(),
            size: ask.size,
        };
        need(
            material,
            Amount::Count(i64::from(hangers)),
            "run of pipe".into(),
        );
    }
    needs
}
