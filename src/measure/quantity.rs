//! Areas, volumes, masses, rates and temperatures as `uom` quantities in SI, with exact customary units.
//!
//! `uom`'s own gallon, quart, pound and cubic units are rounded to seven digits; the exact ones stand here and a
//! test keeps the others out of the crate.

pub use uom::si::f64::{
    Area, Mass, MassDensity, ReciprocalLength, ThermodynamicTemperature, Volume,
};

use super::Length;

/// Area that one unit of volume covers in one coat (an area over a volume is a reciprocal length).
pub type SpreadRate = ReciprocalLength;

/// The exact area of a rectangle.
///
/// # Example
/// ```
/// use storyrod::measure::{Length, quantity::{area, in_square_feet}};
/// assert_eq!(in_square_feet(area(Length::feet(8), Length::feet(5))), 40.0);
/// ```
#[must_use]
pub fn area(across: Length, up: Length) -> Area {
    square_metres(across.metres() * up.metres())
}

/// Square metres as an area.
#[must_use]
pub fn square_metres(value: f64) -> Area {
    Area::new::<uom::si::area::square_meter>(value)
}
/// Square feet as an area; 1 ft² is exactly 0.09290304 m².
#[must_use]
pub fn square_feet(value: f64) -> Area {
    square_metres(value * SQUARE_FOOT)
}
/// Cubic metres as a volume.
#[must_use]
pub fn cubic_metres(value: f64) -> Volume {
    Volume::new::<uom::si::volume::cubic_meter>(value)
}
/// Litres as a volume.
#[must_use]
pub fn litres(value: f64) -> Volume {
    cubic_metres(value / 1000.0)
}
/// US gallons as a volume; 231 in³ exactly.
#[must_use]
pub fn gallons(value: f64) -> Volume {
    litres(value * GALLON_LITRES)
}
/// Cubic feet as a volume; 1728 in³ exactly.
#[must_use]
pub fn cubic_feet(value: f64) -> Volume {
    litres(value * CUBIC_FOOT_LITRES)
}
/// Kilograms as a mass.
#[must_use]
pub fn kilograms(value: f64) -> Mass {
    Mass::new::<uom::si::mass::kilogram>(value)
}
/// Avoirdupois pounds as a mass; 0.45359237 kg exactly.
#[must_use]
pub fn pounds(value: f64) -> Mass {
    kilograms(value * POUND_KILOGRAMS)
}
/// Pounds a cubic foot as a density.
#[must_use]
pub fn pounds_per_cubic_foot(value: f64) -> MassDensity {
    pounds(value) / cubic_feet(1.0)
}
/// Kilograms a cubic metre as a density.
#[must_use]
pub fn kilograms_per_cubic_metre(value: f64) -> MassDensity {
    MassDensity::new::<uom::si::mass_density::kilogram_per_cubic_meter>(value)
}
/// Kilograms a litre as a density.
#[must_use]
pub fn kilograms_per_litre(value: f64) -> MassDensity {
    kilograms(value) / litres(1.0)
}
/// Square feet a US gallon as a spread rate.
#[must_use]
pub fn square_feet_per_gallon(value: f64) -> SpreadRate {
    square_feet(value) / gallons(1.0)
}
/// Square metres a litre as a spread rate.
#[must_use]
pub fn square_metres_per_litre(value: f64) -> SpreadRate {
    square_metres(value) / litres(1.0)
}
/// Degrees Fahrenheit as a temperature.
#[must_use]
pub fn fahrenheit(value: f64) -> ThermodynamicTemperature {
    celsius((value - 32.0) / 1.8)
}
/// Degrees Celsius as a temperature.
#[must_use]
pub fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(value + 273.15)
}

/// In square metres.
#[must_use]
pub fn in_square_metres(area: Area) -> f64 {
    area.value
}
/// In square feet.
#[must_use]
pub fn in_square_feet(area: Area) -> f64 {
    area.value / SQUARE_FOOT
}
/// In litres.
#[must_use]
pub fn in_litres(volume: Volume) -> f64 {
    volume.value * 1000.0
}
/// In US gallons.
#[must_use]
pub fn in_gallons(volume: Volume) -> f64 {
    in_litres(volume) / GALLON_LITRES
}
/// In cubic feet.
#[must_use]
pub fn in_cubic_feet(volume: Volume) -> f64 {
    in_litres(volume) / CUBIC_FOOT_LITRES
}
/// In kilograms.
#[must_use]
pub fn in_kilograms(mass: Mass) -> f64 {
    mass.value
}
/// In avoirdupois pounds.
#[must_use]
pub fn in_pounds(mass: Mass) -> f64 {
    mass.value / POUND_KILOGRAMS
}
/// In pounds a cubic foot.
#[must_use]
pub fn in_pounds_per_cubic_foot(density: MassDensity) -> f64 {
    density.value / pounds_per_cubic_foot(1.0).value
}
/// In kilograms a litre.
#[must_use]
pub fn in_kilograms_per_litre(density: MassDensity) -> f64 {
    density.value / 1000.0
}
/// In square feet a US gallon.
#[must_use]
pub fn in_square_feet_per_gallon(rate: SpreadRate) -> f64 {
    rate.value / square_feet_per_gallon(1.0).value
}
/// In square metres a litre.
#[must_use]
pub fn in_square_metres_per_litre(rate: SpreadRate) -> f64 {
    rate.value / 1000.0
}
/// In degrees Celsius.
#[must_use]
pub fn in_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.value - 273.15
}

/// 1 ft² in m²: 0.3048 squared, exact.
const SQUARE_FOOT: f64 = 0.092_903_04;
/// 1 US gallon in litres: 231 in³, exact.
const GALLON_LITRES: f64 = 3.785_411_784;
/// 1 ft³ in litres: 0.3048 m cubed, exact.
const CUBIC_FOOT_LITRES: f64 = 28.316_846_592;
/// 1 lb in kilograms, exact.
const POUND_KILOGRAMS: f64 = 0.453_592_37;
