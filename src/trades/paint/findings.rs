//! What deserves a remark, and what can hurt.

use super::{Ask, Binder, Built, Coats, Figure, Part, Pole, Sheen, Texture, film};
use crate::handbook::{
    Cite,
    cautions::{self, Caution},
    documents, paint as book,
};
use crate::measure::quantity::square_feet;
use crate::measure::{Amount, Phrase};
use crate::trades::{Finding, Weight};

/// Everything remarked, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut found: Vec<Finding> = [
        lead_rule(ask),
        shining(ask),
        unprimed(ask),
        porous(ask),
        too_high(figure),
    ]
    .into_iter()
    .flatten()
    .collect();
    for coats in [&ask.primer, &ask.finish, &ask.trim_finish] {
        found.extend(film_check(coats));
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    found
}

fn lead_rule(ask: &Ask) -> Option<Finding> {
    if ask.built == Built::From1978 || ask.disturbed <= square_feet(0.0) {
        return None;
    }
    let limit = square_feet(book::LEAD_ROOM_LIMIT.value);
    let (weight, text) = match (ask.disturbed > limit, ask.paid_job) {
        (true, true) => (
            Weight::Stop,
            "You disturb {0} of old paint in this room; above {1} paid work takes a certified firm and lead-safe practice. Test the paint, or disturb less.",
        ),
        (true, false) => (
            Weight::Caution,
            "You disturb {0} of old paint in this room; above {1} paid work would fall under the lead rule. In your own home the rule does not bind you, but the dust is the same: test the paint first.",
        ),
        (false, _) => (
            Weight::Note,
            "You disturb {0} of old paint in this room; the lead rule starts above {1}, with whole removed parts counted, and never lets windows be replaced.",
        ),
    };
    Some(Finding {
        weight,
        says: Phrase::with(text, [Amount::Area(ask.disturbed), Amount::Area(limit)]),
        rule: book::LEAD_ROOM_LIMIT.cite,
    })
}

fn shining(ask: &Ask) -> Option<Finding> {
    let level = ask.level?;
    let shines = ask.sheen >= Sheen::SemiGloss && level < book::GLOSS_LEVEL.value;
    shines.then(|| Finding {
        weight: Weight::Note,
        says: Phrase::with(
            "A shining paint over level {0} shows the joints; it wants level {1}, or a flatter paint.",
            [level, book::GLOSS_LEVEL.value].map(|level| Amount::Count(i64::from(level))),
        ),
        rule: book::GLOSS_LEVEL.cite,
    })
}

fn unprimed(ask: &Ask) -> Option<Finding> {
    let bare = ask
        .surfaces
        .iter()
        .any(|surface| surface.kind == Texture::BareBoard);
    let spots = ask.patched.iter().any(|spot| *spot > square_feet(0.0));
    ((bare || spots) && ask.primer.coats == 0).then(|| Finding {
        weight: Weight::Caution,
        says: Phrase::plain(
            "Bare board and patched spots drink paint unevenly; give them one coat of primer first.",
        ),
        rule: Cite::read(&documents::GA_214, "level 4: a primer before the finish"),
    })
}

fn porous(ask: &Ask) -> Option<Finding> {
    let rough = ask
        .surfaces
        .iter()
        .any(|surface| surface.kind >= Texture::Masonry);
    (rough && ask.finish.label_rate.is_none()).then(|| Finding {
        weight: Weight::Note,
        says: Phrase::plain(
            "No two rough walls take the same; enter the label's spread, or paint a square yard and see.",
        ),
        rule: book::HEAVY_TEXTURE.cite,
    })
}

fn too_high(figure: &Figure) -> Option<Finding> {
    let answer = figure.pole.filter(|answer| answer.pole == Pole::Beyond)?;
    Some(Finding {
        weight: Weight::Caution,
        says: Phrase::with(
            "The top at {0} takes {1} of pole, more than the {2} that are common; roll it from a platform.",
            [answer.height, answer.needed, book::LONG_POLE.value].map(Amount::Length),
        ),
        rule: book::LONG_POLE.cite,
    })
}

/// Whether the label's spread leaves the film that is wanted.
fn film_check(coats: &Coats) -> Option<Finding> {
    let (label, share, wanted) = (coats.label_rate?, coats.volume_solids?, coats.dry_film?);
    let made = film::spread(share, wanted)?;
    let off = (label / made).value - 1.0;
    if off.abs() <= book::FILM_AGREES.value {
        return None;
    }
    let left = film::dry_film(film::wet_film_at(label)?, share)?;
    Some(Finding {
        weight: if off > 0.0 {
            Weight::Caution
        } else {
            Weight::Note
        },
        says: Phrase::with(
            "The label spreads {0}, but its solids and dry film make {1}: at the label's spread a coat dries to {2}, and {3} was wanted. Look at both figures again.",
            [
                label.into(),
                made.into(),
                Amount::Film(left),
                Amount::Film(wanted),
            ],
        ),
        rule: book::FILM_AGREES.cite,
    })
}

/// What can hurt, the heaviest first.
pub(super) fn cautions(ask: &Ask, figure: &Figure) -> Vec<&'static Caution> {
    let old = ask.built != Built::From1978;
    let texture = |kind| matches!(kind, Texture::Textured | Texture::HeavyTexture);
    let textured = ask.surfaces.iter().any(|surface| texture(surface.kind));
    let ceiling = ask
        .surfaces
        .iter()
        .any(|surface| surface.part == Part::Ceiling);
    let pole = figure.pole.map_or(Pole::None, |answer| answer.pole);
    let alkyd = ask.binder == Binder::Alkyd;
    let all: [(bool, &'static Caution); 7] = [
        (old, &cautions::LEAD),
        (old && textured, &cautions::OLD_TEXTURE),
        (alkyd, &cautions::SOLVENT_FIRE),
        (true, &cautions::PAINT_FUMES),
        (alkyd, &cautions::OILY_RAGS),
        // The roller reaches; the brush along the ceiling does not.
        (ceiling || pole > Pole::None, &cautions::STEPLADDER),
        (pole > Pole::None, &cautions::METAL_POLE),
    ];
    all.into_iter()
        .filter(|(says, _)| *says)
        .map(|(_, caution)| caution)
        .collect()
}
