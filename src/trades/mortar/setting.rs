//! What a notched trowel leaves, and what a bag covers with it.

use super::{Notch, NotchShape, Setting, Under};
use crate::handbook::mortar as book;
use crate::measure::Length;
use crate::measure::quantity::{Area, Mass, Volume, litres, pounds, square_feet};

/// The mortar that a comb leaves, trowel upright, as a bed of even thickness: the notch's area over its pitch.
///
/// Square `w d`, V `w d / 2`, U `w d − w² (1/2 − π/8)`, each over `w + land`.
///
/// # Inputs
/// A notch within [`super::limits`].
/// # Gives
/// For a square notch on as much steel, half its depth.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::mortar::{Notch, comb}};
/// let notch = Notch::square(Length::in_64(0, 32), Length::in_64(0, 32));
/// assert_eq!(comb(&notch), Length::in_64(0, 16));
/// ```
#[must_use]
pub fn comb(notch: &Notch) -> Length {
    metres(thickness(notch))
}

/// The same with the trowel at 45°: ridges stand 0.707 as high.
///
/// # Inputs
/// As for [`comb`].
/// # Gives
/// The bed that fully collapsed ridges make.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::mortar::{Notch, ridge_bed}};
/// let notch = Notch::square(Length::in_64(0, 16), Length::in_64(0, 16));
/// assert!((ridge_bed(&notch).in_inches() - 0.0884).abs() < 5e-5);
/// ```
#[must_use]
pub fn ridge_bed(notch: &Notch) -> Length {
    metres(thickness(notch) * book::TROWEL_LEAN.value)
}

/// In metres.
fn thickness(notch: &Notch) -> f64 {
    let (w, d, land) = (
        notch.width.metres(),
        notch.depth.metres(),
        notch.land.metres(),
    );
    let hole = match notch.shape {
        NotchShape::Square => w * d,
        NotchShape::V => w * d / 2.0,
        NotchShape::U => w * d - w * w * (0.5 - std::f64::consts::FRAC_PI_8),
    };
    hole / (w + land)
}

fn metres(value: f64) -> Length {
    Length::from_metres(value).unwrap_or_default()
}

/// A bed of even thickness over an area.
pub(super) fn slab(area: Area, thick: Length) -> Volume {
    area * uom::si::f64::Length::new::<uom::si::length::meter>(thick.metres())
}

/// What a bag covers by the articles' table, from and to, for the three square notches that stand in it.
///
/// # Inputs
/// `bag`: any; the table is for 50 lb and is taken in proportion.
/// # Gives
/// `None` for every other notch.
/// # Source
/// How-to articles, low authority; no association gives a table.
/// # Example
/// ```
/// use storyrod::measure::{Length, quantity::{in_square_feet, pounds}};
/// use storyrod::trades::mortar::{Notch, coverage};
/// let notch = Notch::square(Length::in_64(0, 32), Length::in_64(0, 32));
/// let (least, most) = coverage(&notch, pounds(50.0)).unwrap();
/// assert_eq!((in_square_feet(least).round(), in_square_feet(most).round()), (40.0, 50.0));
/// ```
#[must_use]
pub fn coverage(notch: &Notch, bag: Mass) -> Option<(Area, Area)> {
    let share = (bag / pounds(50.0)).value;
    let fits = |row: &&book::BagRow| {
        notch.shape == NotchShape::Square && row.width == notch.width && row.depth == notch.depth
    };
    let row = book::BAG_TABLE.value.iter().find(fits).copied()?;
    let (least, most) = row.covers;
    Some((square_feet(least * share), square_feet(most * share)))
}

/// The square notch that a how-to article names for a tile, by its longer side: width and depth.
///
/// # Inputs
/// The tile's sides.
/// # Gives
/// `None` under 4 in, where it names V notches.
/// # Source
/// How-to article, low authority; the associations give no table and ask for contact.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::mortar::suggested_notch};
/// let half = Length::in_64(0, 32);
/// assert_eq!(suggested_notch(Length::inches(12), Length::inches(24)), Some((half, half)));
/// ```
#[must_use]
pub fn suggested_notch(a: Length, b: Length) -> Option<(Length, Length)> {
    let side = a.max(b);
    let rows = book::NOTCH_BY_TILE.value.into_iter().rev();
    rows.filter(|(from, ..)| side >= *from)
        .map(|(_, width, depth)| (width, depth))
        .next()
}

/// What a mass of powder makes: the label's figure, else one maker's.
pub(super) fn makes(setting: &Setting) -> Volume {
    let label = &setting.label;
    label
        .makes
        .unwrap_or_else(|| litres(book::YIELD.value * label.bag.value))
}

/// Share of the tile that mortar has to touch.
pub(super) fn contact(setting: &Setting) -> crate::handbook::Sourced<f64> {
    if setting.place == super::Place::Wet {
        book::CONTACT_WET
    } else if setting.stone {
        book::CONTACT_STONE
    } else {
        book::CONTACT_DRY
    }
}

/// The tile's sides, where tile is set.
pub(super) fn tile(setting: &Setting) -> Option<(Length, Length)> {
    match setting.under {
        Under::Tile { a, b } => Some((a, b)),
        Under::Board => None,
    }
}
