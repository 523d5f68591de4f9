//! How much paint each surface takes.

use super::{Ask, Coats, Lot, Part, Purpose, Texture, Trim, film};
use crate::handbook::{
    Cite, Sourced,
    paint::{self as book, Spread},
};
use crate::measure::quantity::{
    Area, SpreadRate, Volume, area, litres, square_feet_per_gallon, square_metres,
};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Step, Term};

/// The rate of a product on a surface, with its range and where it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rate {
    used: SpreadRate,
    range: (SpreadRate, SpreadRate),
    cite: Cite,
}

/// The label's figure; else what its solids and film make; else the trade's figure for the surface.
pub(super) fn rate(coats: &Coats, surface: &Sourced<Spread>) -> Rate {
    if let Some(label) = coats.label_rate {
        return alone(label, Cite::practice("the spread on the label, as entered"));
    }
    let solids = coats.volume_solids.zip(coats.dry_film);
    if let Some(made) = solids.and_then(|(share, dry)| film::spread(share, dry)) {
        return alone(
            made,
            Cite::computed("solids by volume over dry film, nothing lost"),
        );
    }
    let spread = surface.value;
    Rate {
        used: square_feet_per_gallon(spread.used),
        range: (
            square_feet_per_gallon(spread.least),
            square_feet_per_gallon(spread.most),
        ),
        cite: surface.cite,
    }
}

fn alone(rate: SpreadRate, cite: Cite) -> Rate {
    Rate {
        used: rate,
        range: (rate, rate),
        cite,
    }
}

/// The trade's spread on a surface, primed or not.
pub(super) fn surface_spread(kind: Texture, primed: bool) -> &'static Sourced<Spread> {
    match (kind, primed) {
        (Texture::Smooth, _) | (Texture::BareBoard, true) => &book::SMOOTH,
        (Texture::BareBoard, false) => &book::BARE_BOARD,
        (Texture::Textured | Texture::Masonry, _) => &book::ROUGH,
        (Texture::HeavyTexture, _) => &book::HEAVY_TEXTURE,
    }
}

/// The face of a run of trim that paint goes on: `length · face`.
///
/// # Inputs
/// A run of trim.
/// # Gives
/// What is really painted; what an estimator counts is [`counted_area`].
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_square_feet}, trades::paint::{Trim, painted_area}};
/// let base = Trim { name: "Base".into(), length: Length::feet(26), face: Length::inches(6) };
/// assert!((in_square_feet(painted_area(&base)) - 13.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn painted_area(trim: &Trim) -> Area {
    area(trim.length, trim.face)
}

/// The area that an estimator counts for a run of trim: at least a foot across.
///
/// # Inputs
/// A run of trim.
/// # Gives
/// `length · max(face, 1 ft)`: a measure of the work, not of the paint.
/// # Source
/// Standard P10 of the Painting Contractors Association, in summary.
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_square_feet}, trades::paint::{Trim, counted_area}};
/// let base = Trim { name: "Base".into(), length: Length::feet(26), face: Length::inches(4) };
/// assert!((in_square_feet(counted_area(&base)) - 26.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn counted_area(trim: &Trim) -> Area {
    area(trim.length, trim.face.max(book::NARROW_COUNTS.value))
}

/// The paint for an area: `V = A · coats / R`.
///
/// # Inputs
/// `covered`: one coat's area. `coats`: how many. `rate`: the spread, more than nothing.
/// # Gives
/// The volume, unrounded; nothing where there is no rate.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::measure::quantity::{in_gallons, square_feet, square_feet_per_gallon};
/// let paint = storyrod::trades::paint::paint_for(square_feet(350.0), 2, square_feet_per_gallon(350.0));
/// assert!((in_gallons(paint) - 2.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn paint_for(covered: Area, coats: u8, rate: SpreadRate) -> Volume {
    if rate.value > 0.0 {
        covered * f64::from(coats) / rate
    } else {
        litres(0.0)
    }
}

/// Every lot of the ask with its step of working, primer first.
pub(super) fn lots(ask: &Ask) -> Vec<(Lot, Step)> {
    let mut lots = Vec::new();
    let primer = rate(&ask.primer, &book::PRIMER);
    if ask.primer.coats > 0 {
        for surface in &ask.surfaces {
            if surface.kind == Texture::BareBoard {
                let about = (Purpose::Primer, surface.name.clone());
                lots.push(lot(about, surface.area, ask.primer.coats, primer));
            }
        }
        let spots: Area = ask
            .patched
            .iter()
            .fold(square_metres(0.0), |sum, spot| sum + *spot);
        if spots.value > 0.0 {
            let about = (Purpose::Primer, "Patched spots".to_owned());
            lots.push(lot(about, spots, ask.primer.coats, primer));
        }
    }
    for surface in &ask.surfaces {
        let purpose = match surface.part {
            Part::Wall => Purpose::Wall,
            Part::Ceiling => Purpose::Ceiling,
        };
        let spread = surface_spread(surface.kind, ask.primer.coats > 0);
        let about = (purpose, surface.name.clone());
        let rate = rate(&ask.finish, spread);
        lots.push(lot(about, surface.area, ask.finish.coats, rate));
    }
    for trim in &ask.trim {
        let about = (Purpose::Trim, trim.name.clone());
        let rate = rate(&ask.trim_finish, &book::SMOOTH);
        lots.push(lot(about, painted_area(trim), ask.trim_finish.coats, rate));
    }
    lots
}

fn lot((purpose, name): (Purpose, String), covered: Area, coats: u8, rate: Rate) -> (Lot, Step) {
    let volume = paint_for(covered, coats, rate.used);
    let lot = Lot {
        purpose,
        name,
        area: covered,
        coats,
        rate: rate.used,
        range: rate.range,
        volume,
        volume_range: (
            paint_for(covered, coats, rate.range.1),
            paint_for(covered, coats, rate.range.0),
        ),
    };
    let step = Step {
        what: what(&lot),
        sum: vec![
            covered.into(),
            Term::Word("×"),
            Amount::Count(i64::from(coats)).into(),
            Term::Word("÷"),
            rate.used.into(),
        ],
        gives: volume.into(),
        cite: rate.cite,
    };
    (lot, step)
}

fn what(lot: &Lot) -> Phrase {
    if lot.range.0 != lot.range.1 {
        let range = Amount::Range(Box::new(lot.range.0.into()), Box::new(lot.range.1.into()));
        let text = match lot.purpose {
            Purpose::Primer => "Primer; the sources give {0}",
            Purpose::Wall => "Wall paint; the sources give {0}",
            Purpose::Ceiling => "Ceiling paint; the sources give {0}",
            Purpose::Trim => "Trim paint; the sources give {0}",
        };
        return Phrase::with(text, [range]);
    }
    Phrase::plain(match lot.purpose {
        Purpose::Primer => "Primer",
        Purpose::Wall => "Wall paint",
        Purpose::Ceiling => "Ceiling paint",
        Purpose::Trim => "Trim paint",
    })
}

/// All edges, once round.
pub(super) fn cut_in(ask: &Ask) -> Length {
    ask.surfaces.iter().map(|surface| surface.cut_in).sum()
}
