//! Any figure, with its unit still attached; and a sentence with figures in it.

use super::quantity::{Area, Mass, MassDensity, SpreadRate, ThermodynamicTemperature, Volume};
use super::{Angle, Length};

/// A figure of any kind, printed only when it is shown, in the units that the job shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Amount {
    /// A length on site.
    Length(Length),
    /// The thickness of a film of paint, shown in mils or micrometres.
    Film(Length),
    /// A turn.
    Angle(Angle),
    /// An area.
    Area(Area),
    /// A volume of something liquid.
    Volume(Volume),
    /// A mass.
    Mass(Mass),
    /// Area covered by a volume.
    Spread(SpreadRate),
    /// A temperature.
    Temperature(ThermodynamicTemperature),
    /// Hours of waiting.
    Hours(f64),
    /// Whole things.
    Count(i64),
    /// A plain number.
    Number(f64),
    /// A share of one, shown as a percentage: 0.35 is 35 %.
    Share(f64),
    /// A rectangle, across by up.
    Size(Length, Length),
    /// From the first to the second, of one kind.
    Range(Box<Amount>, Box<Amount>),
    /// A volume of mortar, sand or cement, shown in ft³ or litres.
    Bulk(Volume),
    /// A mass in a volume.
    Density(MassDensity),
    /// Rise over run, shown in inches a foot or as a percentage.
    Slope(f64),
    /// Minutes of waiting or working.
    Minutes(f64),
    /// The letter of a wall: A, B … Z, then A2; counted from 0.
    Letter(usize),
}

/// A sentence in English with `{0}`, `{1}` … where its figures stand.
///
/// The English text is also the key by which a translation is found, so figures are never glued into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Phrase {
    /// The sentence, in sentence case.
    pub text: &'static str,
    /// Its figures, in order.
    pub amounts: Vec<Amount>,
}

impl Amount {
    /// From one figure to another of its kind.
    #[must_use]
    pub fn range(from: impl Into<Amount>, to: impl Into<Amount>) -> Amount {
        Amount::Range(Box::new(from.into()), Box::new(to.into()))
    }
}

impl Phrase {
    /// A sentence without figures.
    #[must_use]
    pub fn plain(text: &'static str) -> Phrase {
        Phrase {
            text,
            amounts: Vec::new(),
        }
    }
    /// A sentence with figures.
    #[must_use]
    pub fn with(text: &'static str, amounts: impl Into<Vec<Amount>>) -> Phrase {
        Phrase {
            text,
            amounts: amounts.into(),
        }
    }
}

impl From<&'static str> for Phrase {
    fn from(text: &'static str) -> Phrase {
        Phrase::plain(text)
    }
}
impl From<Length> for Amount {
    fn from(length: Length) -> Amount {
        Amount::Length(length)
    }
}
impl From<Area> for Amount {
    fn from(area: Area) -> Amount {
        Amount::Area(area)
    }
}
impl From<Volume> for Amount {
    fn from(volume: Volume) -> Amount {
        Amount::Volume(volume)
    }
}
impl From<Mass> for Amount {
    fn from(mass: Mass) -> Amount {
        Amount::Mass(mass)
    }
}
impl From<MassDensity> for Amount {
    fn from(density: MassDensity) -> Amount {
        Amount::Density(density)
    }
}
impl From<SpreadRate> for Amount {
    fn from(rate: SpreadRate) -> Amount {
        Amount::Spread(rate)
    }
}
