//! The geometry of joints, and what they hold.

use crate::handbook::grout as book;
use crate::measure::Length;
use crate::measure::quantity::{Area, Mass, MassDensity, Volume, area};
use crate::trades::Grout;

/// The share of a tiled area that is joint, tiles of `a` by `b` in a grid or a running bond: `1 − ab / ((a + j)(b + j))`.
///
/// # Inputs
/// Sides and joint, none less than nothing, the sides more.
/// # Gives
/// The share, exact but for rounding of the last digits.
/// # Source
/// Geometry: each tile has a cell of its side and one joint both ways.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::grout::grid_fraction};
/// let share = grid_fraction(Length::mm(300), Length::mm(300), Length::mm(3));
/// assert!((share * 10.0 * 1.6 - 0.3153).abs() < 5e-5); // kg in a square metre, 10 mm deep
/// ```
#[must_use]
pub fn grid_fraction(a: Length, b: Length, joint: Length) -> f64 {
    let (a, b, j) = (a.metres(), b.metres(), joint.metres());
    // (a + j)(b + j) − ab, without taking two nearly equal figures apart.
    j * (a + b + j) / ((a + j) * (b + j))
}

/// The share of joint between regular hexagons: `1 − (f / (f + j))²`.
///
/// # Inputs
/// `flats`: across the flats, more than nothing.
/// # Gives
/// The share.
/// # Source
/// Geometry: the cell is a hexagon one joint wider across its flats.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::grout::hexagon_fraction};
/// let share = hexagon_fraction(Length::inches(2), Length::in_64(0, 8));
/// assert!((share - 0.114_19).abs() < 5e-6);
/// ```
#[must_use]
pub fn hexagon_fraction(flats: Length, joint: Length) -> f64 {
    grid_fraction(flats, flats, joint)
}

/// The form in common use, `(a + b) j / (ab)`: shown as a check, never bought by.
///
/// # Inputs
/// As for [`grid_fraction`].
/// # Gives
/// More than [`grid_fraction`], always; beyond 1 for small tile.
/// # Source
/// Trade formula, from memory.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::grout::{grid_fraction, product_fraction}};
/// let (tile, joint) = (Length::mm(20), Length::mm(2));
/// assert!((product_fraction(tile, tile, joint) / grid_fraction(tile, tile, joint) - 1.1524).abs() < 1e-4);
/// ```
#[must_use]
pub fn product_fraction(a: Length, b: Length, joint: Length) -> f64 {
    let (a, b, j) = (a.metres(), b.metres(), joint.metres());
    j * (a + b) / (a * b)
}

/// By how much the form in common use is over the exact one, as a share.
///
/// # Inputs
/// As for [`grid_fraction`], the joint more than nothing.
/// # Gives
/// 0.016 for 12 in tile and 1/8 in joints, 0.256 for 3/8 in mosaic and 1/16 in.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::grout::overstatement};
/// let over = overstatement(Length::in_64(0, 24), Length::in_64(0, 24), Length::in_64(0, 4));
/// assert!((over - 0.2564).abs() < 5e-5);
/// ```
#[must_use]
pub fn overstatement(a: Length, b: Length, joint: Length) -> f64 {
    product_fraction(a, b, joint) / grid_fraction(a, b, joint) - 1.0
}

/// The powder in the joints: `m = A · share · depth · density`.
///
/// # Inputs
/// `tiled`: tile and joints. `share`: of joint. `density`: powder in a volume of joint.
/// # Gives
/// The mass, net.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::measure::{Length, quantity::{in_pounds, pounds_per_cubic_foot, square_feet}};
/// use storyrod::trades::grout::mass_for;
/// let mass = mass_for(square_feet(12.0), 0.5, Length::inches(1), pounds_per_cubic_foot(100.0));
/// assert!((in_pounds(mass) - 50.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn mass_for(tiled: Area, share: f64, depth: Length, density: MassDensity) -> Mass {
    let deep = uom::si::f64::Length::new::<uom::si::length::meter>(depth.metres());
    tiled * share * deep * density
}

/// The grout for a joint: unsanded under 1/8 in, sanded from there, heavier sand over 3/8 in.
///
/// # Inputs
/// `scratches`: sand would mark the tile's face; it decides at exactly 1/8 in, where both are taken.
/// # Gives
/// The kind that the rule takes.
/// # Source
/// The tile council's answers on grout; the 1/8 in that both take, with a household page.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::{Grout, grout::kind_for}};
/// assert_eq!(kind_for(Length::in_64(0, 8), false), Grout::Sanded);
/// assert_eq!(kind_for(Length::in_64(0, 8), true), Grout::Unsanded);
/// ```
#[must_use]
pub fn kind_for(joint: Length, scratches: bool) -> Grout {
    let either = book::SANDED_FROM.value;
    if joint < either || (joint == either && scratches) {
        Grout::Unsanded
    } else if joint <= book::HEAVY_SAND_OVER.value {
        Grout::Sanded
    } else {
        Grout::HeavySand
    }
}

/// Parts of fine sand to one of cement for grout mixed on the job.
///
/// # Inputs
/// The joint.
/// # Gives
/// 1 to 1/8 in, 2 to 1/2 in, 3 beyond.
/// # Source
/// A stone manual, in a trade magazine of May 2018.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::grout::job_mix};
/// assert_eq!(job_mix(Length::in_64(0, 16)), 2);
/// ```
#[must_use]
pub fn job_mix(joint: Length) -> u8 {
    let rows = book::JOB_MIX.value.into_iter();
    rows.filter(|(widest, _)| joint <= *widest)
        .map(|(_, parts)| parts)
        .next()
        .unwrap_or(book::JOB_MIX_WIDE)
}

/// The sealant in a seam: `V = length · width · depth`.
///
/// # Inputs
/// None less than nothing.
/// # Gives
/// The seam filled square; what is tooled off is waste.
/// # Source
/// Computed.
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_litres}, trades::grout::sealant_for};
/// let seam = sealant_for(Length::mm(10_000), Length::mm(6), Length::mm(5));
/// assert!((in_litres(seam) - 0.3).abs() < 1e-12);
/// ```
#[must_use]
pub fn sealant_for(length: Length, width: Length, depth: Length) -> Volume {
    area(length, width) * uom::si::f64::Length::new::<uom::si::length::meter>(depth.metres())
}
