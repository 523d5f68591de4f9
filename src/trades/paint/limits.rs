//! What is taken, and what is not.

use super::super::limits::{Limited, length, within};
use super::{Ask, Coats, Field, Problem, Product};
use crate::measure::quantity::{Area, square_feet, square_feet_per_gallon};
use crate::measure::{Amount, Length};

/// The largest area of one thing, in ft².
pub const MOST_AREA: f64 = 20_000.0;
/// The most coats of one product.
pub const MOST_COATS: u8 = 10;
/// The least and the most spread on a label, in ft² a US gallon.
pub const LABEL: (f64, f64) = (20.0, 2_000.0);
/// The longest edge or run.
pub const MOST_LENGTH: Length = Length::feet(2_000);
/// The highest surface.
pub const MOST_HEIGHT: Length = Length::feet(40);
/// The thinnest and the thickest dry film.
pub const FILM: (Length, Length) = (Length::nm(2_540), Length::nm(2_540_000));
/// The smallest and the largest person.
pub const STATURE: (Length, Length) = (Length::inches(36), Length::inches(96));

/// Every figure of the ask within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    if ask.surfaces.is_empty() && ask.trim.is_empty() && ask.patched.is_empty() {
        return Err(Problem::Nothing);
    }
    for (i, surface) in ask.surfaces.iter().enumerate() {
        an_area(Field::SurfaceArea(i), surface.area)?;
        length(Field::CutIn(i), surface.cut_in, (Length::ZERO, MOST_LENGTH))?;
        if let Some(height) = surface.height {
            length(
                Field::SurfaceHeight(i),
                height,
                (Length::inches(1), MOST_HEIGHT),
            )?;
        }
        if let Some(width) = surface.width {
            length(
                Field::SurfaceWidth(i),
                width,
                (Length::inches(1), MOST_LENGTH),
            )?;
        }
    }
    for (i, trim) in ask.trim.iter().enumerate() {
        length(
            Field::TrimLength(i),
            trim.length,
            (Length::ZERO, MOST_LENGTH),
        )?;
        length(Field::TrimFace(i), trim.face, (Length::ZERO, MOST_HEIGHT))?;
    }
    for (i, area) in ask.patched.iter().enumerate() {
        an_area(Field::Patched(i), *area)?;
    }
    an_area(Field::Disturbed, ask.disturbed)?;
    some_coats(Product::Primer, &ask.primer)?;
    some_coats(Product::Finish, &ask.finish)?;
    some_coats(Product::Trim, &ask.trim_finish)?;
    if let Some(stature) = ask.reach.stature {
        length(Field::Stature, stature, STATURE)?;
    }
    let off = ask.reach.standing_off;
    length(Field::StandingOff, off, (Length::ZERO, Length::feet(10)))?;
    within(
        ask.level.is_none_or(|level| level <= 5),
        Field::Level,
        Amount::Count(0),
        Amount::Count(5),
    )
}

fn some_coats(product: Product, coats: &Coats) -> Result<(), Problem> {
    let (least, most) = (Amount::Count(0), Amount::Count(i64::from(MOST_COATS)));
    within(
        coats.coats <= MOST_COATS,
        Field::Coats(product),
        least,
        most,
    )?;
    if let Some(rate) = coats.label_rate {
        let (least, most) = (
            square_feet_per_gallon(LABEL.0),
            square_feet_per_gallon(LABEL.1),
        );
        // A hair of room for a figure that went through m²/L and back.
        let inside = rate >= least * (1.0 - 1e-9) && rate <= most * (1.0 + 1e-9);
        within(inside, Field::LabelRate(product), least, most)?;
    }
    if let Some(share) = coats.volume_solids {
        within(
            share > 0.0 && share <= 1.0,
            Field::VolumeSolids(product),
            Amount::Share(0.01),
            Amount::Share(1.0),
        )?;
    }
    coats.dry_film.map_or(Ok(()), |film| {
        within(
            film >= FILM.0 && film <= FILM.1,
            Field::DryFilm(product),
            Amount::Film(FILM.0),
            Amount::Film(FILM.1),
        )
    })
}

fn an_area(field: Field, area: Area) -> Result<(), Problem> {
    let most = square_feet(MOST_AREA);
    let none = square_feet(0.0);
    within(area >= none && area <= most, field, none, most)
}

impl Limited for Field {
    type Problem = Problem;
    fn beyond(self, least: Amount, most: Amount) -> Problem {
        Problem::Beyond {
            field: self,
            least,
            most,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Reach, figure};
    use super::*;

    fn check(change: impl FnOnce(&mut Ask), field: Field) {
        let mut ask = Ask::default();
        change(&mut ask);
        match figure(&ask) {
            Err(Problem::Beyond { field: named, .. }) => assert_eq!(named, field),
            other => panic!("{field:?}: {other:?}"),
        }
    }

    #[test]
    fn a_figure_beyond_its_limit_is_named() {
        check(
            |a| a.surfaces[0].area = square_feet(-1.0),
            Field::SurfaceArea(0),
        );
        check(
            |a| a.surfaces[0].area = square_feet(f64::NAN),
            Field::SurfaceArea(0),
        );
        check(
            |a| a.surfaces[0].height = Some(Length::feet(41)),
            Field::SurfaceHeight(0),
        );
        check(|a| a.surfaces[0].cut_in = Length::nm(-1), Field::CutIn(0));
        check(|a| a.finish.coats = 11, Field::Coats(Product::Finish));
        check(
            |a| a.finish.label_rate = Some(square_feet_per_gallon(0.0)),
            Field::LabelRate(Product::Finish),
        );
        check(
            |a| a.primer.volume_solids = Some(f64::NAN),
            Field::VolumeSolids(Product::Primer),
        );
        check(
            |a| a.trim_finish.dry_film = Some(Length::ZERO),
            Field::DryFilm(Product::Trim),
        );
        check(
            |a| {
                a.reach = Reach {
                    stature: Some(Length::inches(10)),
                    ..Reach::default()
                }
            },
            Field::Stature,
        );
        check(|a| a.level = Some(6), Field::Level);
        check(
            |a| a.patched = vec![square_feet(f64::INFINITY)],
            Field::Patched(0),
        );
        check(|a| a.disturbed = square_feet(-0.1), Field::Disturbed);
    }

    #[test]
    fn nothing_to_paint_is_said() {
        let ask = Ask {
            surfaces: Vec::new(),
            ..Ask::default()
        };
        assert_eq!(figure(&ask), Err(Problem::Nothing));
    }
}
