//! What is taken, and what is not.

use super::super::limits::{Limited, length, within};
use super::{
    Ask, Bed, Drain, Fall, Field, Label, Mix, NotchShape, Parts, Problem, Setting, Shrink, Under,
    Work, factor,
};
use crate::measure::quantity::{
    cubic_feet, kilograms, litres, pounds, pounds_per_cubic_foot, square_feet, square_metres,
};
use crate::measure::{Amount, Length};

/// The largest area, in ft².
pub const MOST_AREA: f64 = 20_000.0;
/// The smallest and the largest side of a tile.
pub const TILE: (Length, Length) = (Length::mm(3), Length::feet(12));
/// The smallest and the largest notch.
pub const NOTCH: (Length, Length) = (Length::mm(1), Length::inches(2));
/// The thickest skim.
pub const MOST_SKIM: Length = Length::in_64(0, 32);
/// The smallest and the largest bag, in lb.
pub const BAG: (f64, f64) = (0.5, 110.0);
/// The least and the most that a bag covers, in ft².
pub const COVERS: (f64, f64) = (0.1, 10_000.0);
/// The least and the most that a bag makes, in ft³.
pub const MAKES: (f64, f64) = (0.001, 5.0);
/// The smallest and the largest side of a bed.
pub const BED_SIDE: (Length, Length) = (Length::inches(6), Length::feet(100));
/// The thinnest and the thickest bed at the drain.
pub const AT_DRAIN: (Length, Length) = (Length::ZERO, Length::inches(6));
/// The drain's centre stays so far off the rim.
pub const OFF_RIM: Length = Length::inches(1);
/// The steepest fall.
pub const MOST_SLOPE: f64 = 0.25;
/// The highest rim above the drain.
pub const MOST_RISE: Length = Length::feet(2);
/// The most mortar, in ft³.
pub const MOST_VOLUME: f64 = 10_000.0;
/// The most parts of one thing.
pub const MOST_PARTS: f64 = 20.0;
/// The least and the most dry volume for one of wet.
pub const FACTOR: (f64, f64) = (1.0, 2.0);
/// The most water to one of cement.
pub const MOST_WATER: f64 = 3.0;
/// The most that is mixed beyond the need.
pub const MOST_WASTE: f64 = 1.0;
/// The smallest and the largest bucket, in litres.
pub const BUCKET: (f64, f64) = (0.5, 1_000.0);
/// The slowest and the fastest pace, in ft² an hour.
pub const PACE: (f64, f64) = (0.5, 1_000.0);
/// The most hours.
pub const MOST_HOURS: f64 = 24.0;
/// The most minutes of rest.
pub const MOST_MINUTES: f64 = 120.0;

/// Every figure of the ask within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    match &ask.work {
        Work::Setting(one) => setting(one)?,
        Work::Bed(one, by) => {
            bed(one)?;
            mix(by)?;
        }
        Work::Volume(wet, by) => {
            let most = cubic_feet(MOST_VOLUME);
            let inside = wet.value > 0.0 && *wet <= most;
            within(
                inside,
                Field::Volume,
                Amount::Bulk(litres(0.0)),
                Amount::Bulk(most),
            )?;
            mix(by)?;
        }
    }
    number(Field::Waste, ask.waste, (0.0, MOST_WASTE), Amount::Share)?;
    let batch = &ask.batch;
    let (least, most) = (litres(BUCKET.0), litres(BUCKET.1));
    let inside = batch.bucket >= least && batch.bucket <= most;
    within(inside, Field::Bucket, least, most)?;
    number(Field::Fill, batch.fill, (0.05, 1.0), Amount::Share)?;
    let (least, most) = (square_feet(PACE.0), square_feet(PACE.1));
    let inside = batch.pace >= least && batch.pace <= most;
    within(inside, Field::Pace, least, most)
}

fn setting(ask: &Setting) -> Result<(), Problem> {
    let most = square_feet(MOST_AREA);
    let inside = ask.area.value > 0.0 && ask.area <= most;
    within(inside, Field::Area, square_metres(0.0), most)?;
    if let Under::Tile { a, b } = ask.under {
        length(Field::Tile, a, TILE)?;
        length(Field::Tile, b, TILE)?;
    }
    let notch = &ask.notch;
    length(Field::NotchWidth, notch.width, NOTCH)?;
    // A half round at the bottom needs at least its own half of depth.
    let least = match notch.shape {
        NotchShape::U => notch.width.half().max(NOTCH.0),
        NotchShape::Square | NotchShape::V => NOTCH.0,
    };
    length(Field::NotchDepth, notch.depth, (least, NOTCH.1))?;
    length(Field::Land, notch.land, (Length::ZERO, NOTCH.1))?;
    if let Some(skim) = ask.back_butter {
        length(Field::BackButter, skim, (Length::ZERO, MOST_SKIM))?;
    }
    label(&ask.label)
}

fn label(label: &Label) -> Result<(), Problem> {
    bag(label.bag)?;
    if let Some(covers) = label.covers {
        let (least, most) = (square_feet(COVERS.0), square_feet(COVERS.1));
        let inside = covers >= least && covers <= most;
        within(inside, Field::Covers, least, most)?;
    }
    label.makes.map_or(Ok(()), makes)?;
    water(label.water)?;
    if let Some((least, most)) = label.slake {
        number(Field::Slake, most, (0.0, MOST_MINUTES), Amount::Minutes)?;
        number(Field::Slake, least, (0.0, most), Amount::Minutes)?;
    }
    label.pot_life.map_or(Ok(()), |hours| {
        number(Field::PotLife, hours, (0.1, MOST_HOURS), Amount::Hours)
    })
}

fn bag(bag: crate::measure::quantity::Mass) -> Result<(), Problem> {
    let (least, most) = (pounds(BAG.0), pounds(BAG.1));
    // A hair of room for a bag that went through pounds and back.
    let inside = bag >= least && bag <= most + kilograms(1e-9);
    within(inside, Field::Bag, least, most)
}

fn makes(makes: crate::measure::quantity::Volume) -> Result<(), Problem> {
    let (least, most) = (cubic_feet(MAKES.0), cubic_feet(MAKES.1));
    let inside = makes >= least && makes <= most;
    within(
        inside,
        Field::Makes,
        Amount::Bulk(least),
        Amount::Bulk(most),
    )
}

fn water(
    water: Option<(
        crate::measure::quantity::Volume,
        crate::measure::quantity::Volume,
    )>,
) -> Result<(), Problem> {
    let most = litres(100.0);
    let inside = water.is_none_or(|(from, to)| from.value > 0.0 && to >= from && to <= most);
    within(inside, Field::Water, litres(0.0), most)
}

fn bed(ask: &Bed) -> Result<(), Problem> {
    length(Field::BedSide, ask.across, BED_SIDE)?;
    length(Field::BedSide, ask.up, BED_SIDE)?;
    length(Field::AtDrain, ask.at_drain, AT_DRAIN)?;
    if let Drain::At(x, y) = ask.drain {
        let inside = |side: Length| (OFF_RIM, side - OFF_RIM);
        length(Field::DrainAcross, x, inside(ask.across))?;
        length(Field::DrainUp, y, inside(ask.up))?;
    }
    match ask.fall {
        Fall::OnLongest(slope) | Fall::OnShortest(slope) => {
            number(Field::Slope, slope, (0.0, MOST_SLOPE), Amount::Slope)?;
        }
        Fall::Rise(rise) => length(Field::Rise, rise, (Length::ZERO, MOST_RISE))?,
    }
    let level = matches!(ask.drain, Drain::None);
    let nothing = level && !ask.at_drain.is_positive();
    within(!nothing, Field::AtDrain, Length::in_64(0, 1), AT_DRAIN.1)
}

fn mix(mix: &Mix) -> Result<(), Problem> {
    match mix {
        Mix::Site(by) => parts(by),
        Mix::Bags {
            bag: mass,
            makes: volume,
            water: label,
        } => {
            bag(*mass)?;
            makes(*volume)?;
            water(*label)
        }
    }
}

fn parts(parts: &Parts) -> Result<(), Problem> {
    let some = (0.01, MOST_PARTS);
    number(Field::CementParts, parts.cement, some, Amount::Number)?;
    number(
        Field::LimeParts,
        parts.lime,
        (0.0, MOST_PARTS),
        Amount::Number,
    )?;
    number(Field::SandParts, parts.sand, some, Amount::Number)?;
    if let Some(weighs) = parts.cement_weighs {
        let (least, most) = (pounds_per_cubic_foot(50.0), pounds_per_cubic_foot(150.0));
        let inside = weighs >= least && weighs <= most;
        within(inside, Field::CementWeighs, least, most)?;
    }
    if let Some(water) = parts.water {
        let range = (0.0, MOST_WATER);
        number(Field::WaterCement, water, range, Amount::Number)?;
    }
    if let Shrink::Own(own) = parts.by {
        number(Field::Factor, own, FACTOR, Amount::Number)?;
    }
    match factor(parts, parts.by) {
        Some(_) => Ok(()),
        None => Err(Problem::NotMeasured),
    }
}

fn number(
    field: Field,
    value: f64,
    (least, most): (f64, f64),
    shown: fn(f64) -> Amount,
) -> Result<(), Problem> {
    let inside = value >= least && value <= most;
    within(inside, field, shown(least), shown(most))
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
    use super::super::{Notch, figure};
    use super::*;

    const fn in_64(n: i64) -> Length {
        Length::in_64(0, n)
    }

    #[track_caller]
    fn beyond(change: impl FnOnce(&mut Ask), field: Field) {
        let mut ask = Ask::default();
        change(&mut ask);
        match figure(&ask) {
            Err(Problem::Beyond { field: named, .. }) => assert_eq!(named, field),
            other => panic!("{field:?}: {other:?}"),
        }
    }

    fn with(change: impl FnOnce(&mut Setting)) -> impl FnOnce(&mut Ask) {
        |ask| {
            let mut one = Setting::default();
            change(&mut one);
            ask.work = Work::Setting(one);
        }
    }

    fn with_bed(change: impl FnOnce(&mut Bed)) -> impl FnOnce(&mut Ask) {
        |ask| {
            let mut one = Bed::default();
            change(&mut one);
            ask.work = Work::Bed(one, Mix::bags());
        }
    }

    fn with_parts(change: impl FnOnce(&mut Parts)) -> impl FnOnce(&mut Ask) {
        |ask| {
            let mut one = Parts::sand(4.0);
            change(&mut one);
            ask.work = Work::Volume(litres(1.0), Mix::Site(one));
        }
    }

    #[test]
    fn a_figure_beyond_its_limit_is_named() {
        let nan = f64::NAN;
        beyond(with(|s| s.area = square_feet(0.0)), Field::Area);
        beyond(with(|s| s.area = square_feet(nan)), Field::Area);
        beyond(
            with(|s| {
                s.under = Under::Tile {
                    a: Length::ZERO,
                    b: Length::inches(1),
                }
            }),
            Field::Tile,
        );
        beyond(with(|s| s.notch.width = Length::ZERO), Field::NotchWidth);
        beyond(
            with(|s| {
                s.notch = Notch {
                    shape: NotchShape::U,
                    ..Notch::square(in_64(32), in_64(15))
                }
            }),
            Field::NotchDepth,
        );
        beyond(with(|s| s.notch.land = -in_64(1)), Field::Land);
        beyond(
            with(|s| s.back_butter = Some(Length::inches(1))),
            Field::BackButter,
        );
        beyond(with(|s| s.label.bag = pounds(nan)), Field::Bag);
        beyond(
            with(|s| s.label.covers = Some(square_feet(0.0))),
            Field::Covers,
        );
        beyond(with(|s| s.label.makes = Some(litres(0.0))), Field::Makes);
        beyond(
            with(|s| s.label.water = Some((litres(nan), litres(1.0)))),
            Field::Water,
        );
        beyond(with(|s| s.label.slake = Some((5.0, nan))), Field::Slake);
        beyond(with(|s| s.label.pot_life = Some(0.0)), Field::PotLife);
        beyond(with_bed(|b| b.up = Length::ZERO), Field::BedSide);
        beyond(with_bed(|b| b.at_drain = -in_64(1)), Field::AtDrain);
        let off = Length::inches(36);
        beyond(
            with_bed(|b| b.drain = Drain::At(off, off)),
            Field::DrainAcross,
        );
        beyond(
            with_bed(|b| b.drain = Drain::At(off.half(), off * 2)),
            Field::DrainUp,
        );
        beyond(with_bed(|b| b.fall = Fall::OnLongest(nan)), Field::Slope);
        beyond(
            with_bed(|b| b.fall = Fall::Rise(Length::feet(3))),
            Field::Rise,
        );
        beyond(
            |ask| ask.work = Work::Volume(litres(0.0), Mix::bags()),
            Field::Volume,
        );
        beyond(with_parts(|p| p.cement = 0.0), Field::CementParts);
        beyond(with_parts(|p| p.lime = -1.0), Field::LimeParts);
        beyond(with_parts(|p| p.sand = nan), Field::SandParts);
        beyond(
            with_parts(|p| p.cement_weighs = Some(kilograms(1.0) / litres(1.0) * 0.1)),
            Field::CementWeighs,
        );
        beyond(with_parts(|p| p.water = Some(nan)), Field::WaterCement);
        beyond(with_parts(|p| p.by = Shrink::Own(0.5)), Field::Factor);
        beyond(|ask| ask.waste = -0.1, Field::Waste);
        beyond(|ask| ask.batch.bucket = litres(0.0), Field::Bucket);
        beyond(|ask| ask.batch.fill = 0.0, Field::Fill);
        beyond(|ask| ask.batch.pace = square_feet(nan), Field::Pace);
    }
}
