//! How much is mixed at a time.

use super::{Ask, Batches, HeldBy, Label, Measured, Mix, Work};
use crate::handbook::{Cite, mortar as book};
use crate::measure::Amount;
use crate::measure::quantity::{
    Area, Mass, Volume, gallons, kilograms, litres, pounds, pounds_per_cubic_foot, square_metres,
};

/// Water for so much setting mortar: the label's, in proportion; else from 6 qt for 50 lb to 7.2 L for 25 kg.
///
/// # Inputs
/// Powder, and what the bag says.
/// # Gives
/// From and to; the bag governs.
/// # Source
/// How-to page (low authority) and one maker's article.
/// # Example
/// ```
/// use storyrod::measure::quantity::{in_litres, kilograms, litres};
/// use storyrod::trades::mortar::{Label, water_for};
/// let label = Label { bag: kilograms(25.0), water: Some((litres(7.0), litres(7.0))), ..Label::default() };
/// assert!((in_litres(water_for(kilograms(12.5), &label).0) - 3.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn water_for(powder: Mass, label: &Label) -> (Volume, Volume) {
    if let Some((least, most)) = label.water {
        let share = (powder / label.bag).value;
        return (least * share, most * share);
    }
    let least = gallons(book::WATER_FOR_50_POUNDS.value / 4.0) * (powder / pounds(50.0)).value;
    let most = litres(book::WATER_FOR_25_KILOGRAMS.value.1) * (powder / kilograms(25.0)).value;
    (least, most)
}

/// The mortar that so much powder makes: the label's, in proportion; else 0.711 L a kilogram.
///
/// # Inputs
/// Powder, and what the bag says.
/// # Gives
/// The volume, unrounded.
/// # Source
/// Computed from one maker's article: 25 kg and 7 L at 1.8 kg/L.
/// # Example
/// ```
/// use storyrod::measure::quantity::{in_litres, kilograms};
/// use storyrod::trades::mortar::{Label, yields};
/// assert!((in_litres(yields(kilograms(25.0), &Label::default())) - 17.8).abs() < 0.05);
/// ```
#[must_use]
pub fn yields(powder: Mass, label: &Label) -> Volume {
    match label.makes {
        Some(makes) => makes * (powder / label.bag).value,
        None => litres(book::YIELD.value * powder.value),
    }
}

/// Minutes of rest, and where they stand.
pub(super) fn slake(ask: &Ask) -> ((f64, f64), Cite) {
    match &ask.work {
        Work::Setting(setting) if setting.label.slake.is_some() => (
            setting.label.slake.unwrap_or_default(),
            Cite::practice("the rest on the bag, as entered"),
        ),
        _ => (book::SLAKE.value, book::SLAKE.cite),
    }
}

/// Minutes of work in a batch, and where they stand.
pub(super) fn minutes(ask: &Ask) -> (f64, Cite) {
    match &ask.work {
        Work::Setting(setting) => match setting.label.pot_life {
            // The rest is part of the pot life.
            Some(hours) => (
                (hours * 60.0 - slake(ask).0.1).max(1.0),
                Cite::practice("the pot life on the bag, as entered, less the rest"),
            ),
            None => (book::BATCH_MINUTES.value.0, book::BATCH_MINUTES.cite),
        },
        Work::Bed(..) | Work::Volume(..) => {
            (book::SITE_MIX_MINUTES.value, book::SITE_MIX_MINUTES.cite)
        }
    }
}

/// Whether the dry stuff is mixed in the bucket as well.
fn mixed_on_site(work: &Work) -> bool {
    matches!(
        work,
        Work::Bed(_, Mix::Site(_)) | Work::Volume(_, Mix::Site(_))
    )
}

/// The batches of so much mortar: what fits the bucket, and what is laid in time.
pub(super) fn batches(
    ask: &Ask,
    all: Volume,
    dry: &[Measured],
    water: Option<(Volume, Volume)>,
    floor: Option<Area>,
) -> Batches {
    let loose = dry.iter().fold(litres(0.0), |sum, one| sum + one.volume);
    // Cement and sand take more room before they are wet.
    let swell = if mixed_on_site(&ask.work) && all.value > 0.0 {
        (loose / all).value.max(1.0)
    } else {
        1.0
    };
    let by_bucket = ask.batch.bucket * ask.batch.fill / swell;
    let (minutes, _) = minutes(ask);
    let laid = floor.map(|floor| all / floor * (ask.batch.pace * (minutes / 60.0)));
    let by_time = laid.unwrap_or(all);
    let each = by_bucket.min(by_time).min(all);
    let held_by = if each >= all {
        HeldBy::All
    } else if by_bucket <= by_time {
        HeldBy::Bucket
    } else {
        HeldBy::Time
    };
    let count = ((all / each).value - 1e-9).ceil().max(1.0);
    let share = (each / all).value;
    let water = water.map(|(least, most)| (least * share, most * share));
    let weighs = pounds_per_cubic_foot(book::WATER.value);
    let (least, most) = slake(ask).0;
    Batches {
        count: count as u32,
        each,
        last: all - each * (count - 1.0),
        held_by,
        dry: dry
            .iter()
            .map(|one| Measured {
                what: one.what,
                mass: one.mass * share,
                volume: one.volume * share,
            })
            .collect(),
        water,
        water_weighs: water.map(|(least, most)| (least * weighs, most * weighs)),
        area: floor.map(|floor| square_metres(floor.value * share)),
        minutes,
        slake: Amount::range(Amount::Minutes(least), Amount::Minutes(most)),
        most_turns: book::MOST_TURNS.value,
    }
}
