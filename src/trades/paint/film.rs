//! Spread, solids and the thickness of a film.

use crate::measure::Length;
use crate::measure::quantity::SpreadRate;

/// The spread of a coat: `R = VS / DFT`.
///
/// That is 1604.1667 · VS / mils in ft² a US gallon, and 1000 · VS / µm in m² a litre; both are this one division.
///
/// # Inputs
/// `volume_solids`: share of the volume, more than 0 to 1. `dry_film`: more than nothing.
/// # Gives
/// The spread with nothing lost; `None` for a film of nothing or solids that are not a share.
/// # Source
/// Computed; as printed in the columns on coating coverage (the 100 in one metric line is a misprint of 1000).
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_square_metres_per_litre}, trades::paint::film};
/// let rate = film::spread(0.65, Length::nm(125_000)).unwrap();
/// assert!((in_square_metres_per_litre(rate) - 5.2).abs() < 1e-9);
/// ```
#[must_use]
pub fn spread(volume_solids: f64, dry_film: Length) -> Option<SpreadRate> {
    (is_share(volume_solids) && dry_film.is_positive()).then(|| {
        SpreadRate::new::<uom::si::reciprocal_length::reciprocal_meter>(
            volume_solids / dry_film.metres(),
        )
    })
}

/// What is covered in practice: `R = VS · T / DFT`, with the share `T` of the paint that arrives.
///
/// # Inputs
/// As for [`spread`]; `transfer`: share that arrives on the wall, more than 0 to 1.
/// # Gives
/// The spread; `None` as for [`spread`].
/// # Source
/// Column on coating coverage, October 2003. Its December 2009 sequel puts `VS` and `T` under the line: a misprint.
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_square_feet_per_gallon}, trades::paint::film};
/// let rate = film::practical_spread(0.52, 0.30, Length::nm(38_100)).unwrap();
/// assert_eq!(in_square_feet_per_gallon(rate).round(), 167.0);
/// ```
#[must_use]
pub fn practical_spread(volume_solids: f64, transfer: f64, dry_film: Length) -> Option<SpreadRate> {
    let all = spread(volume_solids, dry_film)?;
    is_share(transfer).then_some(all * transfer)
}

/// The wet film of a spread: `WFT = 1 / R`.
///
/// # Inputs
/// `rate`: more than nothing.
/// # Gives
/// To the nearest nanometre; `None` for no spread.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::quantity::square_feet_per_gallon, trades::paint::film};
/// let wet = film::wet_film_at(square_feet_per_gallon(400.0)).unwrap();
/// assert!((wet.in_inches() * 1000.0 - 4.01).abs() < 0.005);
/// ```
#[must_use]
pub fn wet_film_at(rate: SpreadRate) -> Option<Length> {
    (rate.value > 0.0)
        .then(|| Length::from_metres(1.0 / rate.value))
        .flatten()
}

/// The wet film that dries to `dry_film`: `WFT = DFT · (1 + thin) / VS`.
///
/// # Inputs
/// `thinned`: thinner added, as a share of the paint's volume, 0 or more.
/// # Gives
/// To the nearest nanometre; `None` as for [`spread`], or for thinner that is not a share from 0.
/// # Source
/// Coating bulletin.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::paint::film};
/// assert_eq!(film::wet_film(Length::nm(50_000), 0.5, 0.25), Some(Length::nm(125_000)));
/// ```
#[must_use]
pub fn wet_film(dry_film: Length, volume_solids: f64, thinned: f64) -> Option<Length> {
    (is_share(volume_solids) && thinned >= 0.0 && dry_film.is_positive())
        .then(|| Length::from_metres(dry_film.metres() * (1.0 + thinned) / volume_solids))
        .flatten()
}

/// What a wet film dries to: `DFT = WFT · VS`.
///
/// # Inputs
/// `volume_solids`: share of the volume, more than 0 to 1.
/// # Gives
/// To the nearest nanometre; `None` for solids that are not a share.
/// # Source
/// Coating bulletin.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::paint::film};
/// assert_eq!(film::dry_film(Length::nm(100_000), 0.4), Some(Length::nm(40_000)));
/// ```
#[must_use]
pub fn dry_film(wet_film: Length, volume_solids: f64) -> Option<Length> {
    is_share(volume_solids)
        .then(|| Length::from_metres(wet_film.metres() * volume_solids))
        .flatten()
}

fn is_share(share: f64) -> bool {
    share > 0.0 && share <= 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_film_of_nothing_has_no_spread() {
        assert_eq!(spread(0.5, Length::ZERO), None);
        assert_eq!(spread(f64::NAN, Length::nm(1)), None);
        assert_eq!(spread(1.01, Length::nm(1)), None);
        assert_eq!(wet_film_at(SpreadRate::default()), None);
        assert_eq!(wet_film(Length::nm(1), 0.5, f64::NAN), None);
    }

    #[test]
    fn wet_and_dry_undo_each_other() {
        let dry = Length::nm(38_100);
        let wet = wet_film(dry, 0.3, 0.0).unwrap();
        assert_eq!(dry_film(wet, 0.3), Some(dry));
    }
}
