//! The figure, put together.

use super::{
    Ask, Binder, Figure, Lot, PoleAnswer, Problem, Purpose, Texture, film, findings, limits, lots,
    pole,
};
use crate::handbook::{Cite, Sourced, paint as book};
use crate::measure::quantity::{Volume, fahrenheit, litres};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Material, Need, Step, Term};

/// The paint for a room: `V = A · coats / R` for each surface and product.
///
/// `R` is the label's spread; without one, solids by volume over dry film; without those, the trade's figure for the
/// surface. One coat's wet film is `1 / R`, its dry film `VS / R`.
///
/// # Inputs
/// [`Ask`]: areas with openings already off, within [`limits`].
/// # Gives
/// Volumes unrounded, each lot with its area, rate and the range that the sources give; the nap for the roughest
/// surface; the pole for the highest.
/// # Errors
/// [`Problem::Nothing`] where nothing is painted, [`Problem::Beyond`] for a figure outside its limits.
/// # Findings
/// Old paint disturbed beyond the lead rule's 6 ft²; a shining paint under level 5; bare board without primer; rough
/// walls without a label; a top beyond common poles; a label that does not leave the film wanted.
/// # Source
/// Spread: popular guide, painter's page, trade habit for heavy texture (from memory). Film: coating bulletin.
/// # Example
/// ```
/// use storyrod::{measure::quantity::in_gallons, trades::paint::{Ask, figure}};
/// let wall = figure(&Ask::default()).unwrap();
/// assert!((in_gallons(wall.walls) - 80.0 * 2.0 / 350.0).abs() < 1e-9);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    limits::checked(ask)?;
    let (lots, working): (Vec<Lot>, Vec<Step>) = lots::lots(ask).into_iter().unzip();
    let total = |purpose| sum(&lots, purpose);
    let wet_film = lots
        .iter()
        .find(|lot| matches!(lot.purpose, Purpose::Wall | Purpose::Ceiling))
        .and_then(|lot| film::wet_film_at(lot.rate));
    let dry_film = wet_film
        .zip(ask.finish.volume_solids)
        .and_then(|(wet, share)| film::dry_film(wet, share));
    let (least, most) = temperature(ask.binder).value;
    let mut figure = Figure {
        primer: total(Purpose::Primer),
        walls: total(Purpose::Wall),
        ceiling: total(Purpose::Ceiling),
        trim: total(Purpose::Trim),
        lots,
        wet_film,
        dry_film,
        pole: highest(ask).map(|height| pole(height, &ask.reach)),
        cut_in: lots::cut_in(ask),
        nap: nap(ask).value,
        recoat: hours(recoat(ask.binder).value),
        temperature: (fahrenheit(least), fahrenheit(most)),
        order: Vec::new(),
        account: Account::default(),
    };
    figure.order = super::order::order(ask, &figure);
    figure.account = Account {
        working: working.into_iter().chain(others(ask, &figure)).collect(),
        findings: findings::findings(ask, &figure),
        cautions: findings::cautions(ask, &figure),
        needs: needs(ask, &figure),
    };
    Ok(figure)
}

fn sum(lots: &[Lot], purpose: Purpose) -> Volume {
    lots.iter()
        .filter(|lot| lot.purpose == purpose)
        .fold(litres(0.0), |sum, lot| sum + lot.volume)
}

fn highest(ask: &Ask) -> Option<Length> {
    ask.surfaces
        .iter()
        .filter_map(|surface| surface.height)
        .max()
}

fn nap(ask: &Ask) -> &'static Sourced<(Length, Length)> {
    match ask.surfaces.iter().map(|surface| surface.kind).max() {
        None | Some(Texture::Smooth | Texture::BareBoard) => &book::NAP_SMOOTH,
        Some(Texture::Textured) => &book::NAP_TEXTURED,
        Some(Texture::Masonry | Texture::HeavyTexture) => &book::NAP_ROUGH,
    }
}

/// Hours until the next coat, from and to.
pub(super) fn recoat(binder: Binder) -> &'static Sourced<(f64, f64)> {
    match binder {
        Binder::Latex => &book::RECOAT_LATEX,
        Binder::Alkyd => &book::RECOAT_ALKYD,
    }
}

/// °F, from and to; the heavier of the two lower limits where latex has its own.
fn temperature(binder: Binder) -> Sourced<(f64, f64)> {
    match binder {
        Binder::Alkyd => book::TEMPERATURE,
        Binder::Latex => Sourced::new(
            (book::LATEX_LEAST.value, book::TEMPERATURE.value.1),
            book::LATEX_LEAST.cite,
        ),
    }
}

fn range(from: Amount, to: Amount) -> Amount {
    Amount::Range(Box::new(from), Box::new(to))
}

fn hours((from, to): (f64, f64)) -> Amount {
    range(Amount::Hours(from), Amount::Hours(to))
}

/// The steps after the volumes: film, reach, nap, wait, warmth.
fn others(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let taken = |what: &'static str, gives: Amount, cite: Cite| Step {
        what: Phrase::plain(what),
        sum: Vec::new(),
        gives,
        cite,
    };
    let mut steps = Vec::new();
    if let Some(wet) = figure.wet_film {
        let cite = Cite::computed("volume over area");
        steps.push(taken("Wet film of a coat", Amount::Film(wet), cite));
    }
    if let Some(((wet, dry), share)) = figure
        .wet_film
        .zip(figure.dry_film)
        .zip(ask.finish.volume_solids)
    {
        steps.push(Step {
            what: Phrase::plain("Dry film of a coat"),
            sum: vec![
                Amount::Film(wet).into(),
                Term::Word("×"),
                Amount::Share(share).into(),
            ],
            gives: Amount::Film(dry),
            cite: Cite::read(
                &crate::handbook::documents::FILM_BULLETIN,
                "wet film = dry film over solids",
            ),
        });
    }
    if let Some(answer) = figure.pole {
        steps.extend(reach_steps(ask, answer));
    }
    let (from, to) = figure.nap;
    steps.push(taken(
        "Nap of the roller cover",
        range(from.into(), to.into()),
        nap(ask).cite,
    ));
    let wait = recoat(ask.binder).cite;
    steps.push(taken("Until the next coat", figure.recoat.clone(), wait));
    let (from, to) = figure.temperature;
    steps.push(taken(
        "Air and wall while painting",
        range(Amount::Temperature(from), Amount::Temperature(to)),
        temperature(ask.binder).cite,
    ));
    steps
}

fn reach_steps(ask: &Ask, answer: PoleAnswer) -> [Step; 3] {
    let hands = match ask.reach.stature {
        Some(stature) => Step {
            what: Phrase::plain("Hands above the floor"),
            sum: vec![
                stature.into(),
                Term::Word("×"),
                Amount::Number(book::SHOULDER_SHARE.value).into(),
            ],
            gives: answer.hands.into(),
            cite: book::SHOULDER_SHARE.cite,
        },
        None => Step {
            what: Phrase::plain("Hands above the floor"),
            sum: Vec::new(),
            gives: answer.hands.into(),
            cite: book::HANDS.cite,
        },
    };
    let reach = Step {
        what: Phrase::plain("Hands to roller"),
        sum: vec![
            Term::Word("√(("),
            answer.height.into(),
            Term::Word("−"),
            answer.hands.into(),
            Term::Word(")² +"),
            ask.reach.standing_off.into(),
            Term::Word("²)"),
        ],
        gives: answer.reach.into(),
        cite: Cite::computed("the long side of a right triangle"),
    };
    let pole = Step {
        what: Phrase::plain("Pole, the roller frame off"),
        sum: vec![
            answer.reach.into(),
            Term::Word("−"),
            book::FRAME.value.into(),
        ],
        gives: answer.needed.into(),
        cite: book::FRAME.cite,
    };
    [hands, reach, pole]
}

fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let paint = |label: &str| Material::Paint {
        label: label.to_owned(),
    };
    let primer = Material::Primer {
        label: ask.primer.label.clone(),
    };
    [
        (primer, figure.primer, "Primer"),
        (paint(&ask.finish.label), figure.walls, "Walls"),
        (paint(&ask.finish.label), figure.ceiling, "Ceiling"),
        (paint(&ask.trim_finish.label), figure.trim, "Trim"),
    ]
    .into_iter()
    .filter(|(_, volume, _)| volume.value > 0.0)
    .map(|(material, volume, why)| Need {
        material,
        amount: volume.into(),
        why: Phrase::plain(why),
    })
    .collect()
}
