//! Beds that fall to a drain: their volume, their depths and their slopes.

use super::{Bed, BedFigure, Drain, Fall, Run, Spot, SpotKind, Wall};
use crate::measure::Length;
use crate::measure::quantity::{Area, Volume, area};

/// A bed with a level rim that falls straight to one point: `V = A t + 2/3 A rise`, wherever the point is.
///
/// It is a prism as thick as the rim less a pyramid of the rise; the drain's own size is neglected.
///
/// # Inputs
/// `floor`: its area. `at_drain`: thickness there. `rise`: of the rim above the drain.
/// # Gives
/// The volume.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::measure::{Length, quantity::{in_cubic_feet, square_feet}};
/// let bed = storyrod::trades::mortar::point_bed(square_feet(12.0), Length::inches(1), Length::inches(3));
/// assert!((in_cubic_feet(bed) - 3.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn point_bed(floor: Area, at_drain: Length, rise: Length) -> Volume {
    floor * thick(at_drain.metres() + rise.metres() * 2.0 / 3.0)
}

/// A bed that falls evenly to a channel along one wall: `V = A (t + rise / 2)`.
///
/// # Inputs
/// As for [`point_bed`].
/// # Gives
/// The volume of the wedge.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::measure::{Length, quantity::{in_cubic_feet, square_feet}};
/// let bed = storyrod::trades::mortar::linear_bed(square_feet(12.0), Length::inches(1), Length::inches(2));
/// assert!((in_cubic_feet(bed) - 2.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn linear_bed(floor: Area, at_drain: Length, rise: Length) -> Volume {
    floor * thick(at_drain.metres() + rise.metres() / 2.0)
}

fn thick(metres: f64) -> uom::si::f64::Length {
    uom::si::f64::Length::new::<uom::si::length::meter>(metres)
}

/// A place on the rim and how far it is from the drain.
struct Rim {
    what: SpotKind,
    at: (Length, Length),
    /// Nothing where it lies on the drain itself.
    run: Length,
}

/// The bed's volume, depths and falls.
pub(super) fn bed(ask: &Bed) -> (Volume, BedFigure) {
    let floor = area(ask.across, ask.up);
    let drains = drains(ask);
    let rim = rim(ask);
    let runs = || {
        rim.iter()
            .map(|rim| rim.run)
            .filter(|run| run.is_positive())
    };
    let rise = match (ask.drain, ask.fall) {
        (Drain::None, _) => Length::ZERO,
        (_, Fall::Rise(rise)) => rise,
        // A channel has one fall, from the far wall.
        (Drain::Along(_), Fall::OnShortest(slope)) | (_, Fall::OnLongest(slope)) => {
            by_slope(runs().max(), slope)
        }
        (_, Fall::OnShortest(slope)) => by_slope(runs().min(), slope),
    };
    let volume = match ask.drain {
        Drain::None => floor * thick(ask.at_drain.metres()),
        Drain::Centre | Drain::At(..) => point_bed(floor, ask.at_drain, rise),
        Drain::Along(_) => linear_bed(floor, ask.at_drain, rise),
    };
    let mut spots: Vec<Spot> = drains
        .into_iter()
        .map(|(across, up)| Spot {
            what: SpotKind::Drain,
            across,
            up,
            depth: ask.at_drain,
        })
        .collect();
    let mut falls = Vec::new();
    for rim in &rim {
        let above = depth_above(ask, rim, rise);
        if rim.run.is_positive() {
            falls.push(Run {
                from: spots.len(),
                length: rim.run,
                slope: above.metres() / rim.run.metres(),
            });
        }
        spots.push(Spot {
            what: rim.what,
            across: rim.at.0,
            up: rim.at.1,
            depth: ask.at_drain + above,
        });
    }
    let mean = Length::from_metres((volume / floor).value).unwrap_or_default();
    let figure = BedFigure {
        area: floor,
        rise,
        mean,
        spots,
        runs: falls,
    };
    (volume, figure)
}

/// How much higher than the drain the rim is there.
fn depth_above(ask: &Bed, rim: &Rim, rise: Length) -> Length {
    match ask.drain {
        Drain::None => Length::ZERO,
        Drain::Centre | Drain::At(..) => rise,
        // A channel's own ends are at its height; halfway along a side wall it has half the rise.
        Drain::Along(wall) => {
            let whole = depth_of(ask, wall);
            let share = rim.run.metres() / whole.metres();
            Length::from_metres(rise.metres() * share).unwrap_or(rise)
        }
    }
}

/// How far a bed reaches away from a wall.
fn depth_of(ask: &Bed, wall: Wall) -> Length {
    match wall {
        Wall::Left | Wall::Right => ask.across,
        Wall::Near | Wall::Far => ask.up,
    }
}

fn by_slope(run: Option<Length>, slope: f64) -> Length {
    run.and_then(|run| Length::from_metres(run.metres() * slope))
        .unwrap_or_default()
}

/// The drain, or both ends of a channel.
fn drains(ask: &Bed) -> Vec<(Length, Length)> {
    let (across, up, none) = (ask.across, ask.up, Length::ZERO);
    match ask.drain {
        Drain::None => Vec::new(),
        Drain::Centre => vec![(across.half(), up.half())],
        Drain::At(x, y) => vec![(x, y)],
        Drain::Along(Wall::Left) => vec![(none, none), (none, up)],
        Drain::Along(Wall::Right) => vec![(across, none), (across, up)],
        Drain::Along(Wall::Near) => vec![(none, none), (across, none)],
        Drain::Along(Wall::Far) => vec![(none, up), (across, up)],
    }
}

/// Corners, and on each side the place square across from the drain; for a channel the middle of each side.
fn rim(ask: &Bed) -> Vec<Rim> {
    let (across, up, none) = (ask.across, ask.up, Length::ZERO);
    let (x, y) = match ask.drain {
        Drain::At(x, y) => (x, y),
        _ => (across.half(), up.half()),
    };
    let corners = [(none, none), (across, none), (across, up), (none, up)];
    let sides = [(x, none), (across, y), (x, up), (none, y)];
    let run = |at: (Length, Length)| match ask.drain {
        Drain::None => none,
        Drain::Centre | Drain::At(..) => (at.0 - x).diagonal(at.1 - y),
        Drain::Along(Wall::Left) => at.0,
        Drain::Along(Wall::Right) => across - at.0,
        Drain::Along(Wall::Near) => at.1,
        Drain::Along(Wall::Far) => up - at.1,
    };
    let rim = |what: SpotKind| {
        move |at: (Length, Length)| Rim {
            what,
            at,
            run: run(at),
        }
    };
    corners
        .into_iter()
        .map(rim(SpotKind::Corner))
        .chain(sides.into_iter().map(rim(SpotKind::Side)))
        .collect()
}
