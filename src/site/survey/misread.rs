//! Which measurement was most likely misread, and how.

use super::outline::{Sights, seldom};
use super::{Room, Surveyed, What, surveyed};
use crate::geometry::{Adjusted, Network, Sight, adjust};
use crate::measure::{Length, Units};
use crate::site::shape;

/// How a tape is misread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// A foot too much or too little.
    Foot,
    /// Ten centimetres too much or too little.
    TenCentimetres,
    /// An inch too much or too little.
    Inch,
    /// Two figures exchanged.
    Exchanged,
    /// A 6 read for a 9, or a 9 for a 6.
    SixForNine,
    /// In some other way.
    Otherwise,
}

/// A measurement that the others contradict.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Misread {
    /// What was measured.
    pub what: What,
    /// As it was read.
    pub read: Length,
    /// What the others say that it is.
    pub likely: Length,
    /// More or less.
    pub plus_minus: Length,
    /// How it may have been misread.
    pub how: How,
    /// How much the explanation leaves unexplained; the least is the likeliest.
    pub strain: f64,
}

/// The most measurements that are tried; the worst are tried first.
const TRIED: usize = 12;
/// What an error of any size may span, in metres: two feet either way.
const ANY: f64 = 1.2;
/// How often a misreading is one of the usual ways, of one that has so many.
const USUAL: f64 = 0.8;

/// Readings that a tape shows and an eye may take for this one, each with how.
fn mistaken_for(read: Length, units: Units) -> Vec<(f64, How)> {
    let metres = read.metres();
    let mut all: Vec<(f64, How)> = Vec::new();
    let mut add = |is: f64, how: How| {
        let new = is > 0.0
            && (is - metres).abs() > 0.02
            && all.iter().all(|(known, _)| (known - is).abs() > 1e-4);
        if new {
            all.push((is, how));
        }
    };
    let metric = matches!(
        units,
        Units::Millimetres | Units::Centimetres | Units::Metres
    );
    if metric {
        for by in [-0.1, 0.1] {
            add(metres + by, How::TenCentimetres);
        }
        for (is, how) in digits((metres * 1000.0).round() as i64) {
            add(is as f64 / 1000.0 + (metres * 1000.0).fract() / 1000.0, how);
        }
    } else {
        for by in [-0.3048, 0.3048] {
            add(metres + by, How::Foot);
        }
        for by in [-0.0254, 0.0254] {
            add(metres + by, How::Inch);
        }
        let inches = read.in_inches();
        let (whole, rest) = (inches.floor() as i64, inches.fract());
        for (is, how) in digits(whole) {
            add((is as f64 + rest) * 0.0254, how);
        }
        let (feet, over) = (whole / 12, whole % 12);
        // Feet and inches are read apart: 7' 8" for 8' 7".
        if over > 0 {
            add(((over * 12 + feet) as f64 + rest) * 0.0254, How::Exchanged);
        }
        for (is, how) in digits(feet) {
            add(((is * 12 + over) as f64 + rest) * 0.0254, how);
        }
        for (is, how) in digits(over).into_iter().filter(|(is, _)| *is < 12) {
            add(((feet * 12 + is) as f64 + rest) * 0.0254, how);
        }
    }
    // A tape of either kind may have both.
    for by in [-0.1, 0.1] {
        add(metres + by, How::TenCentimetres);
    }
    if metric {
        for by in [-0.3048, 0.3048] {
            add(metres + by, How::Foot);
        }
    }
    all
}

/// The reading that an eye may have taken for this one and that lies within what is known otherwise: the nearest of them.
///
/// # Inputs
/// The length as read; what it is likely, more or less; the units in which the tape is read.
/// # Gives
/// What may have stood there, and how it was misread; `None` where no usual misreading explains it.
/// # Source
/// The ways in which a tape is misread, from no source.
/// # Example
/// ```
/// use storyrod::{measure::{Length, Units}, site::{How, taken_for}};
/// let inches = |n| Length::inches(n);
/// let found = taken_for(inches(43), inches(34), inches(1), Units::FeetInches { marks: 16 });
/// assert_eq!(found, Some((inches(34), How::Exchanged)));
/// ```
#[must_use]
pub fn taken_for(
    read: Length,
    likely: Length,
    plus_minus: Length,
    units: Units,
) -> Option<(Length, How)> {
    let (is, within) = (likely.metres(), plus_minus.metres());
    let off = |value: f64| (value - is).abs();
    let all = mistaken_for(read, units).into_iter();
    let (value, how) = all
        .filter(|(value, _)| off(*value) <= within)
        .min_by(|a, b| off(a.0).total_cmp(&off(b.0)))?;
    Some((Length::from_metres(value)?, how))
}

/// A number with two of its digits exchanged that stand side by side, or with a 6 for a 9.
fn digits(number: i64) -> Vec<(i64, How)> {
    let text: Vec<u8> = number.max(0).to_string().into_bytes();
    let mut all = Vec::new();
    let read = |digits: &[u8]| {
        digits
            .iter()
            .fold(0, |sum, digit| sum * 10 + i64::from(digit - b'0'))
    };
    for at in 0..text.len() {
        let mut other = text.clone();
        if at + 1 < text.len() && text[at] != text[at + 1] {
            other.swap(at, at + 1);
            all.push((read(&other), How::Exchanged));
        }
        let mut other = text.clone();
        match text[at] {
            b'6' => other[at] = b'9',
            b'9' => other[at] = b'6',
            _ => continue,
        }
        all.push((read(&other), How::SixForNine));
    }
    all
}

/// The network without one measurement, and what the others make of it.
fn without(network: &Network, at: usize) -> Option<(Adjusted, f64, f64)> {
    let mut rest = network.clone();
    let gone = rest.observations.remove(at);
    let found = adjust(&rest).ok()?;
    let (is, sigma) = found.figure(gone.sight)?;
    Some((found, is, sigma.hypot(gone.sigma)))
}

/// What is most likely misread, the likeliest first; nothing where the measurements agree.
///
/// Each measurement in turn is left out, and what the others say of it is held against the ways in which a tape is
/// misread: `strain = χ²(without it) + ((mistaken for − what the others say) ÷ σ)² − 2 ln(how usual)`.
///
/// # Inputs
/// A room with spare measurements; the units in which its tape is read.
/// # Gives
/// A measurement once, with its likeliest misreading, at most twelve.
/// # Source
/// Leaving out one observation at a time, as in the search for blunders in any text on the adjustment of surveys; how
/// usual each misreading is, from no source.
/// # Example
/// ```
/// use storyrod::{measure::{Length, Units}, site::{How, Room, What, misreads}};
/// let mut room = Room::rectangle("Washroom");
/// // Wall A is 96 in.
/// for (wall, inches) in [99, 60, 96, 60].into_iter().enumerate() {
///     room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
/// }
/// for (a, b) in [(0, 2), (1, 3)] {
///     room.measure(What::diagonal(a, b), Some(Length::in_64(113, 13)), None);
/// }
/// let found = misreads(&room, Units::FeetInches { marks: 16 });
/// assert_eq!((found[0].what, found[0].how), (What::Wall(0), How::SixForNine));
/// ```
#[must_use]
pub fn misreads(room: &Room, units: Units) -> Vec<Misread> {
    let across = |what: &What| matches!(what, What::Diagonal(..)) && room.has(*what);
    let agrees = surveyed(room).is_some_and(|found| found.agrees);
    // Without an outline at all something is misread the more.
    if agrees && shape(room).is_ok() || !room.survey.figures.keys().any(across) {
        Vec::new()
    } else {
        suspects(room, units)
    }
}

/// What is most likely misread of walls and diagonals.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspicion {
    /// The likeliest first; never empty.
    pub found: Vec<Misread>,
    /// The tape alone does not contradict it: a corner as it was said, and not measured across, has a part in it.
    pub if_square: bool,
}

impl Suspicion {
    /// The likeliest; of those that are about as likely the one that was taken last, for the rest agreed before it.
    #[must_use]
    pub fn of(&self, last: What) -> Option<&Misread> {
        let first = self.found.first()?;
        let as_likely = |found: &&Misread| found.strain <= first.strain + AS_LIKELY;
        let mut near = self.found.iter().take_while(as_likely);
        near.find(|found| found.what == last).or(Some(first))
    }
}

/// From here on a measurement is checked by others: so much of an error of it they show.
const CHECKED: f64 = 0.05;

/// A strain that is no more than this above another is about as likely: e times less.
const AS_LIKELY: f64 = 2.0;

/// What is suspected of the measurements so far: by the tape where it contradicts itself ([`misreads`]); and while nothing
/// is measured twice over, by the corners as they were said, where the outline is further from them than a room as built
/// is once in a hundred times (the same threshold, with half a degree a corner).
///
/// # Inputs
/// A room, as far as it is measured; the units in which its tape is read.
/// # Gives
/// `None` where nothing is suspected, or the tape has settled the corners and agrees.
/// # Source
/// As of [`misreads`].
/// # Example
/// ```
/// use storyrod::{measure::{Length, Units}, site::{How, Room, What, suspicion}};
/// let mut room = Room::rectangle("Washroom");
/// for (wall, inches) in [96, 60].into_iter().enumerate() {
///     room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
/// }
/// // It is 113 3/16 in across where the corner is square.
/// room.measure(What::Diagonal(0, 2), Some(Length::in_64(101, 12)), None);
/// let found = suspicion(&room, Units::FeetInches { marks: 16 }).unwrap();
/// assert_eq!((found.found[0].what, found.found[0].how), (What::Diagonal(0, 2), How::Foot));
/// assert!(found.if_square);
/// ```
#[must_use]
pub fn suspicion(room: &Room, units: Units) -> Option<Suspicion> {
    let outline = surveyed(room);
    let found = misreads(room, units);
    if !found.is_empty() {
        let by_tape = |found: &Surveyed| found.corners.iter().all(|corner| corner.by_tape);
        return Some(Suspicion {
            found,
            if_square: !outline.is_some_and(|found| by_tape(&found)),
        });
    }
    let all = Sights::of(room)?.adjusted_as_said().ok()?;
    if all.freedom == 0 || all.chi_square <= seldom(all.freedom) {
        return None;
    }
    let found = suspects(room, units);
    let first = found.first()?.what;
    // Other measurements have checked it and agree: so far out of square the room is.
    let checked = outline.is_some_and(|all| {
        let mut checks = all.checks.iter();
        checks.any(|check| check.what == first && check.checked > CHECKED)
    });
    (!checked).then_some(Suspicion {
        found,
        if_square: true,
    })
}

/// The same, whether the measurements agree or not.
fn suspects(room: &Room, units: Units) -> Vec<Misread> {
    let Some(mut sights) = Sights::of(room) else {
        return Vec::new();
    };
    // As said: how square a corner is built tells one wall from another where the tape alone does not.
    let all = sights.adjusted_as_said().ok();
    let network = &sights.network;
    // How far each is off, as a share of what it would show of an error of its own.
    let worth = |at: &usize| {
        let Some(all) = &all else { return 0.0 };
        let sigma = network.observations[*at].sigma;
        let shows = all.redundancy[*at].max(1e-6).sqrt();
        (all.residuals[*at] / sigma / shows).abs()
    };
    let mut tried: Vec<usize> = (0..sights.whats.len())
        .filter(|at| sights.whats[*at].is_some())
        .collect();
    tried.sort_by(|a, b| worth(b).total_cmp(&worth(a)));
    tried.truncate(TRIED);
    let mut found: Vec<Misread> = tried
        .into_iter()
        .filter_map(|at| suspect(&sights, at, units))
        .collect();
    found.sort_by(|a, b| a.strain.total_cmp(&b.strain));
    found
}

fn suspect(sights: &Sights, at: usize, units: Units) -> Option<Misread> {
    let what = sights.whats[at]?;
    let observation = sights.network.observations[at];
    debug_assert!(matches!(observation.sight, Sight::Distance(..)));
    let (rest, is, sigma) = without(&sights.network, at)?;
    let read = Length::from_metres(observation.value)?;
    let ways = mistaken_for(read, units);
    let off = |value: f64| ((value - is) / sigma).powi(2);
    // A usual way is as likely as another; any other error is as likely anywhere in its span.
    let usual = -2.0 * (USUAL / ways.len().max(1) as f64).ln();
    let density = (std::f64::consts::TAU).sqrt() * sigma;
    let otherwise = -2.0 * ((1.0 - USUAL) * density / ANY).min(1.0).ln();
    let best = ways
        .iter()
        .map(|(value, how)| (off(*value) + usual, *value, *how))
        .chain([(otherwise, is, How::Otherwise)])
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(Misread {
        what,
        read,
        likely: Length::from_metres(best.1)?,
        plus_minus: Length::from_metres(2.0 * sigma)?,
        how: best.2,
        strain: rest.chi_square + best.0,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const FEET: Units = Units::FeetInches { marks: 16 };

    fn room(walls: [i64; 4], diagonals: [i64; 2]) -> Room {
        let mut room = Room::rectangle("a");
        for (wall, inches) in walls.into_iter().enumerate() {
            room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        let [one, other] = diagonals.map(|sixteenths| Length::in_64(0, sixteenths * 4));
        room.measure(What::Diagonal(0, 2), Some(one), None);
        room.measure(What::Diagonal(1, 3), Some(other), None);
        room
    }

    /// 96 × 60 in: diagonals of 113 3/16.
    #[track_caller]
    fn check(walls: [i64; 4], diagonals: [i64; 2], what: What, likely: i64, how: How) {
        let found = misreads(&room(walls, diagonals), FEET);
        let first = found.first().copied().unwrap();
        assert_eq!((first.what, first.how), (what, how), "{found:?}");
        assert!((first.likely - Length::in_64(0, likely * 4)).abs() < Length::in_64(0, 12));
    }

    #[test]
    fn the_usual_misreadings_are_told_by_name() {
        let right = 113 * 16 + 3;
        check(
            [96, 60, 96, 72],
            [right, right],
            What::Wall(3),
            960,
            How::Foot,
        );
        check(
            [96, 90, 96, 60],
            [right, right],
            What::Wall(1),
            960,
            How::SixForNine,
        );
        check(
            [96, 61, 96, 60],
            [right, right],
            What::Wall(1),
            960,
            How::Inch,
        );
        check(
            [69, 60, 96, 60],
            [right, right],
            What::Wall(0),
            96 * 16,
            How::Exchanged,
        );
        check(
            [96, 60, 96, 60],
            [right, right + 192],
            What::Diagonal(1, 3),
            right,
            How::Foot,
        );
        assert_eq!(misreads(&room([96, 60, 96, 60], [right, right]), FEET), []);
    }

    /// One diagonal checks nothing by the tape alone; a foot too short it makes a corner of 77°, which no room is built
    /// with, and 113 1/2 one of 90.2°, which many are. What was typed last is named of two walls that miss each other.
    #[test]
    fn a_diagonal_that_no_square_corner_explains_is_suspected_at_once() {
        let taken = |walls: &[i64], diagonal: Option<i64>| {
            let mut room = Room::rectangle("a");
            for (wall, inches) in walls.iter().enumerate() {
                room.measure(What::Wall(wall), Some(Length::inches(*inches)), None);
            }
            let sixteenths = diagonal.map(|n| Length::in_64(0, n * 4));
            room.measure(What::Diagonal(0, 2), sixteenths, None);
            suspicion(&room, FEET)
        };
        let across = 113 * 16 + 3;
        for walls in [&[96, 60][..], &[96, 60, 96], &[96, 60, 96, 60]] {
            let found = taken(walls, Some(across - 192)).unwrap();
            let first = found.of(What::Diagonal(0, 2)).unwrap();
            assert_eq!((first.what, first.how), (What::Diagonal(0, 2), How::Foot));
            assert!(found.if_square);
            assert_eq!(taken(walls, Some(across + 5)), None, "{walls:?}");
        }
        let found = taken(&[96, 60, 84], None).unwrap();
        for last in [What::Wall(2), What::Wall(0)] {
            assert_eq!(
                found.of(last).map(|found| (found.what, found.how)),
                Some((last, How::Foot))
            );
        }
        // Half an inch over five feet is half a degree.
        let mut room = room([96, 60, 96, 60], [across, across]);
        room.measure(What::Diagonal(0, 2), None, None);
        room.measure(What::Diagonal(1, 3), None, None);
        room.measure(What::Wall(2), Some(Length::in_64(96, 32)), None);
        assert_eq!(suspicion(&room, FEET), None);
        // Both diagonals agree that it is 3° off: so it is.
        room.measure(What::Wall(2), Some(Length::inches(96)), None);
        let lean = 3.0_f64.to_radians().sin();
        for (what, sign) in [(What::Diagonal(0, 2), 1.0), (What::Diagonal(1, 3), -1.0)] {
            let (a, b) = (96.0_f64, 60.0);
            let long = (a * a + b * b + sign * 2.0 * a * b * lean).sqrt();
            room.measure(what, Length::from_metres(long * 0.0254), None);
        }
        assert_eq!(suspicion(&room, FEET), None);
    }

    #[test]
    fn a_number_is_taken_for_another_with_two_digits_exchanged_or_six_for_nine() {
        assert_eq!(
            digits(96),
            [
                (69, How::Exchanged),
                (66, How::SixForNine),
                (99, How::SixForNine)
            ]
        );
        assert_eq!(digits(0), []);
    }
}
