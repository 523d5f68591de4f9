//! What is taken, and what is not.

use super::super::limits::{Limited, length, within};
use super::{Ask, Field, JointOf, Problem};
use crate::measure::quantity::{
    kilograms, litres, pounds, pounds_per_cubic_foot, square_feet, square_metres,
};
use crate::measure::{Amount, Length};

/// The largest area, in ft².
pub const MOST_AREA: f64 = 20_000.0;
/// The smallest and the largest side of a tile.
pub const TILE: (Length, Length) = (Length::mm(3), Length::feet(12));
/// The narrowest and the widest joint that is figured.
pub const WIDTH: (Length, Length) = (Length::nm(100_000), Length::inches(2));
/// The shallowest and the deepest joint.
pub const DEPTH: (Length, Length) = (Length::mm(1), Length::inches(3));
/// The smallest and the largest bag, in lb.
pub const BAG: (f64, f64) = (0.5, 110.0);
/// The least and the most that a bag covers, in ft².
pub const COVERS: (f64, f64) = (0.1, 10_000.0);
/// The lightest and the heaviest powder in a joint, in lb/ft³.
pub const DENSITY: (f64, f64) = (30.0, 200.0);
/// The most that is bought beyond the joints.
pub const MOST_WASTE: f64 = 1.0;
/// The longest seam.
pub const MOST_SEAM: Length = Length::feet(2_000);
/// The most hours.
pub const MOST_HOURS: f64 = 1_000.0;
/// The most minutes of rest.
pub const MOST_MINUTES: f64 = 120.0;

/// Every figure of the ask within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    let most = square_feet(MOST_AREA);
    within(
        ask.area.value > 0.0 && ask.area <= most,
        Field::Area,
        square_metres(0.0),
        most,
    )?;
    match ask.joints {
        JointOf::Grid { a, b } => {
            length(Field::Tile, a, TILE)?;
            length(Field::Tile, b, TILE)?;
        }
        JointOf::Hexagon { flats } => length(Field::Tile, flats, TILE)?,
        JointOf::Area(joints) => within(
            joints.value >= 0.0 && joints <= ask.area,
            Field::JointArea,
            square_metres(0.0),
            ask.area,
        )?,
    }
    length(Field::Width, ask.width, WIDTH)?;
    length(Field::Depth, ask.depth, DEPTH)?;
    number(Field::Waste, ask.waste, MOST_WASTE, Amount::Share)?;
    label(ask)?;
    for (i, seam) in ask.seams.iter().enumerate() {
        let (least, most) = (Length::ZERO, MOST_SEAM);
        length(Field::SeamLength(i), seam.length, (least, most))?;
        length(Field::SeamWidth(i), seam.width, WIDTH)?;
        length(Field::SeamDepth(i), seam.depth, DEPTH)?;
    }
    Ok(())
}

fn label(ask: &Ask) -> Result<(), Problem> {
    let label = &ask.label;
    if let Some(bag) = label.bag {
        // A hair of room for a bag that went through pounds and back.
        let (least, most) = (pounds(BAG.0), pounds(BAG.1));
        let inside = bag >= least && bag <= most + kilograms(1e-9);
        within(inside, Field::Bag, least, most)?;
    }
    if let Some(covers) = label.covers {
        let (least, most) = (square_feet(COVERS.0), square_feet(COVERS.1));
        let inside = covers >= least && covers <= most;
        within(inside, Field::Covers, least, most)?;
    }
    if let Some(density) = label.density {
        let (least, most) = (
            pounds_per_cubic_foot(DENSITY.0),
            pounds_per_cubic_foot(DENSITY.1),
        );
        let inside = density >= least && density <= most;
        within(inside, Field::Density, least, most)?;
    }
    if let Some((least, most)) = label.water {
        let inside = least.value > 0.0 && most >= least && most <= litres(100.0);
        within(inside, Field::Water, litres(0.0), litres(100.0))?;
    }
    if let Some((least, most)) = label.slake {
        number(Field::Slake, least, most, Amount::Minutes)?;
        number(Field::Slake, most, MOST_MINUTES, Amount::Minutes)?;
    }
    if let Some(hours) = label.pot_life {
        number(Field::PotLife, hours, MOST_HOURS, Amount::Hours)?;
    }
    label.wait.map_or(Ok(()), |hours| {
        number(Field::Wait, hours, MOST_HOURS, Amount::Hours)
    })
}

fn number(field: Field, value: f64, most: f64, shown: fn(f64) -> Amount) -> Result<(), Problem> {
    let inside = value >= 0.0 && value <= most;
    within(inside, field, shown(0.0), shown(most))
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
    use super::super::{Meeting, Seam, figure};
    use super::*;

    #[track_caller]
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
        let side = Length::inches(12);
        for area in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            check(|a| a.area = square_feet(area), Field::Area);
        }
        check(
            |a| {
                a.joints = JointOf::Grid {
                    a: side,
                    b: Length::ZERO,
                }
            },
            Field::Tile,
        );
        check(
            |a| a.joints = JointOf::Hexagon { flats: -side },
            Field::Tile,
        );
        check(
            |a| a.joints = JointOf::Area(square_feet(41.0)),
            Field::JointArea,
        );
        check(|a| a.width = Length::ZERO, Field::Width);
        check(|a| a.depth = Length::feet(1), Field::Depth);
        check(|a| a.waste = f64::NAN, Field::Waste);
        check(|a| a.label.bag = Some(pounds(0.0)), Field::Bag);
        check(|a| a.label.covers = Some(square_feet(0.0)), Field::Covers);
        check(
            |a| a.label.density = Some(pounds_per_cubic_foot(0.0)),
            Field::Density,
        );
        check(
            |a| a.label.water = Some((litres(2.0), litres(1.0))),
            Field::Water,
        );
        check(|a| a.label.slake = Some((10.0, 5.0)), Field::Slake);
        check(|a| a.label.pot_life = Some(-1.0), Field::PotLife);
        check(|a| a.label.wait = Some(f64::NAN), Field::Wait);
        let seam = Seam {
            at: Meeting::Perimeter,
            length: Length::feet(-1),
            width: Length::in_64(0, 16),
            depth: Length::in_64(0, 8),
        };
        check(|a| a.seams = vec![seam], Field::SeamLength(0));
    }
}
