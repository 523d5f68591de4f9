//! Mortar of cement, lime and sand: how much of each makes so much wet mortar.

use super::{Ingredient, Measured, Parts, Shrink};
use crate::handbook::mortar as book;
use crate::measure::quantity::{
    Mass, MassDensity, Volume, cubic_feet, in_cubic_feet, in_pounds, pounds, pounds_per_cubic_foot,
};

/// The dry volume for one of wet mortar, as a convention counts it.
///
/// The conventions differ because sand does: damp and loose it takes 15 to 30 % more room than dry and loose. Rule 38
/// (38/27 = 1.407) and 1.33 count it damp, Sabin's barrels (1.114, 1.095, 1.079 for 1:3, 1:4, 1:5) count it dry.
///
/// # Inputs
/// Parts by loose volume; cement and sand more than nothing.
/// # Gives
/// `None` for [`Shrink::DryLoose`] where nothing was measured: with lime, or other than 3, 4 or 5 parts of sand.
/// # Source
/// NAVEDTRA 14043; teaching pages; Gillette and Hill, 1908; [`Shrink::SandFills`] by the weights of ASTM C270, from memory.
/// # Example
/// ```
/// use storyrod::trades::mortar::{Parts, Shrink, factor};
/// assert!((factor(&Parts::sand(4.0), Shrink::DryLoose).unwrap() - 1.095).abs() < 5e-4);
/// ```
#[must_use]
pub fn factor(parts: &Parts, by: Shrink) -> Option<f64> {
    let all = parts.cement + parts.lime + parts.sand;
    match by {
        Shrink::Rule38 => Some(book::RULE_38.value / 27.0),
        Shrink::Dry133 => Some(book::DRY_FACTOR.value),
        Shrink::SandFills => Some(all / parts.sand),
        Shrink::Own(factor) => Some(factor),
        Shrink::DryLoose => barrels(parts).map(|barrels| {
            let cement = barrels * book::BARREL.value.1 / 27.0;
            cement * all / parts.cement
        }),
    }
}

/// Sabin's barrels of cement for a yd³.
fn barrels(parts: &Parts) -> Option<f64> {
    let sand = parts.sand / parts.cement;
    let measured = |(of, _): &(f64, f64)| (of - sand).abs() < 1e-9;
    (parts.lime == 0.0)
        .then(|| book::SABIN.value.into_iter().find(measured))
        .flatten()
        .map(|(_, barrels)| barrels)
}

/// What so much wet mortar is mixed from: `wet · factor`, shared out by the parts.
///
/// # Inputs
/// `wet`: mortar in place. `by`: the convention.
/// # Gives
/// Cement, lime where there is any, sand; each by mass and loose volume, sand weighed dry. `None` as for [`factor`].
/// # Source
/// As for [`factor`]. Cement 94 lb/ft³, a barrel of 380 lb by Sabin; sand dry 100, damp 80, lime 40 lb/ft³, the last two
/// from memory.
/// # Example
/// ```
/// use storyrod::measure::quantity::{cubic_feet, in_cubic_feet};
/// use storyrod::trades::mortar::{Parts, Shrink, mixed};
/// let yard = mixed(cubic_feet(27.0), &Parts::sand(3.0), Shrink::Rule38).unwrap();
/// assert!((in_cubic_feet(yard[0].volume) - 9.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn mixed(wet: Volume, parts: &Parts, by: Shrink) -> Option<Vec<Measured>> {
    let dry = wet * factor(parts, by)?;
    let all = parts.cement + parts.lime + parts.sand;
    let share = |part: f64| dry * (part / all);
    let (barrel, in_barrel) = book::BARREL.value;
    let cement = match (parts.cement_weighs, by) {
        (Some(own), _) => own,
        (None, Shrink::DryLoose) => pounds_per_cubic_foot(barrel / in_barrel),
        (None, _) => pounds_per_cubic_foot(book::CEMENT.value),
    };
    let sand = if by == Shrink::DryLoose {
        book::DRY_SAND.value
    } else {
        book::DAMP_SAND.value
    };
    let measured = |what, part, weighs: MassDensity| Measured {
        what,
        mass: share(part) * weighs,
        volume: share(part),
    };
    let mut list = vec![measured(Ingredient::Cement, parts.cement, cement)];
    if parts.lime > 0.0 {
        let lime = pounds_per_cubic_foot(book::LIME.value);
        list.push(measured(Ingredient::Lime, parts.lime, lime));
    }
    list.push(measured(
        Ingredient::Sand,
        parts.sand,
        pounds_per_cubic_foot(sand),
    ));
    Some(list)
}

/// The room that cement, water and sand take without any air: what a mix would make if nothing were left between.
///
/// # Inputs
/// Masses and a volume, none less than nothing.
/// # Gives
/// 94 lb of cement are 0.478 ft³; sand is taken at 2.65 times water.
/// # Source
/// Articles on absolute volumes.
/// # Example
/// ```
/// use storyrod::measure::quantity::{gallons, in_cubic_feet, pounds};
/// let paste = storyrod::trades::mortar::absolute_volume(pounds(94.0), gallons(5.0), pounds(0.0));
/// assert!((in_cubic_feet(paste) - 1.146).abs() < 0.001);
/// ```
#[must_use]
pub fn absolute_volume(cement: Mass, water: Volume, sand: Mass) -> Volume {
    let cement = in_pounds(cement) / book::CEMENT.value * book::CEMENT_SOLID.value;
    let sand = in_pounds(sand) / (book::SAND_GRAVITY.value * book::WATER.value);
    cubic_feet(cement + sand) + water
}

/// The factor that absolute volumes make, sand dry and loose: it falls as water rises, which is why the conventions part.
///
/// # Inputs
/// `sand`: parts to one of cement, by loose volume. `water`: to one of cement, by mass.
/// # Gives
/// 1.460 for 1:4 with 0.35 of water, 1.135 with 1.0: stiff mortar shrinks more on paper, since no air is counted.
/// # Source
/// Computed from the articles' weights; dry loose sand at 100 lb/ft³ from Gillette and Hill.
/// # Example
/// ```
/// let factor = storyrod::trades::mortar::absolute_factor(4.0, 0.35);
/// assert!((factor - 1.460).abs() < 5e-4);
/// ```
#[must_use]
pub fn absolute_factor(sand: f64, water: f64) -> f64 {
    let cement = pounds(book::CEMENT.value);
    let water = cubic_feet(water * book::CEMENT.value / book::WATER.value);
    let solid = absolute_volume(cement, water, pounds(sand * book::DRY_SAND.value));
    (1.0 + sand) / in_cubic_feet(solid)
}
