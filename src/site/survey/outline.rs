//! The outline as the tape has it: corners out of square, each with its ±, and how well the measurements agree.

use std::cell::RefCell;

use super::{Room, What};
use crate::geometry::{Adjusted, Network, Observation, Point, Polygon, Sight, Unsettled, adjust};
use crate::handbook::tape::CORNER_OFF;
use crate::measure::{Angle, Length};
use crate::site::shape::laid_as_said;

/// A measurement against the outline that fits all of them best.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    /// What was measured.
    pub what: What,
    /// As it was read.
    pub read: Length,
    /// As it comes out.
    pub comes_out: Length,
    /// What it may be off, in about nineteen cases of twenty.
    pub plus_minus: Length,
    /// How much of an error of it the others show, from 0 (nothing checks it) to 1.
    pub checked: f64,
}

/// A wall of the outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallFound {
    /// As it comes out.
    pub length: Length,
    /// More or less.
    pub plus_minus: Length,
}

/// A corner of the outline; it has the number of the wall whose left end it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CornerFound {
    /// Where it is.
    pub at: Point,
    /// How far it may be off across its worst way, held at the first wall.
    pub plus_minus: Length,
    /// How far it turns more than was said (less than nothing: less).
    pub off: Angle,
    /// More or less.
    pub off_plus_minus: Angle,
    /// What that makes at the far end of the shorter of its two walls.
    pub over: Length,
    /// The tape settles it; otherwise it is taken as it was said.
    pub by_tape: bool,
}

/// A room's outline from all that was measured of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Surveyed {
    /// The outline, clockwise.
    pub outline: Polygon,
    /// Its walls.
    pub walls: Vec<WallFound>,
    /// Its corners.
    pub corners: Vec<CornerFound>,
    /// Each measurement of the outline against it.
    pub checks: Vec<Check>,
    /// By how much the walls miss their start when they are walked with their corners as said; `None` until each is
    /// measured.
    pub gap: Option<Length>,
    /// Measurements of the tape beyond those that are needed.
    pub spare: usize,
    /// They agree within what a tape and a reading may be off.
    pub agrees: bool,
    /// The area inside.
    pub area: crate::measure::quantity::Area,
    /// More or less.
    pub area_plus_minus: crate::measure::quantity::Area,
}

/// How far the floor may be off: by all that was measured across; or, where nothing was, by the estimates among its
/// walls, each along the side that it changes. `None` where nothing is uncertain beyond the tape.
#[must_use]
pub fn floor_plus_minus(room: &Room) -> Option<crate::measure::quantity::Area> {
    if let Some(found) = surveyed(room) {
        return Some(found.area_plus_minus);
    }
    let area = |room: &Room| Some(crate::site::shape(room).ok()?.corners.area().value);
    let whole = area(room)?;
    let mut variance = 0.0;
    for wall in 0..room.walls.len() {
        let what = What::Wall(wall);
        if let (Some(read), Some(more_or_less)) = (room.measured(what), room.mark(what).estimate) {
            let mut other = room.clone();
            other.walls[wall].length = Some(read + more_or_less);
            variance += (area(&other)? - whole).powi(2);
        }
    }
    (variance > 0.0).then(|| crate::measure::quantity::square_metres(variance.sqrt()))
}

/// How far a wall that follows from others may be off where those are estimates: `√Σ (change with each)²`. `None` where
/// it was measured, or nothing that it follows from is an estimate.
#[must_use]
pub fn follows_plus_minus(room: &Room, wall: usize) -> Option<Length> {
    if room.measured(What::Wall(wall)).is_some() {
        return None;
    }
    let long = |room: &Room| Some(crate::site::sketch(room).walls.get(wall)?.0.metres());
    let here = long(room)?;
    let mut variance = 0.0;
    for other in 0..room.walls.len() {
        let what = What::Wall(other);
        if let (Some(read), Some(more_or_less)) = (room.measured(what), room.mark(what).estimate) {
            let mut changed = room.clone();
            changed.walls[other].length = Some(read + more_or_less);
            variance += (long(&changed)? - here).powi(2);
        }
    }
    let more_or_less = Length::from_metres(variance.sqrt())?;
    (more_or_less > Length::nm(100_000)).then_some(more_or_less)
}

/// What was measured between the corners, and how it is weighed.
pub(super) struct Sights {
    pub network: Network,
    /// What each observation was measured as; `None` for a corner as it was said.
    pub whats: Vec<Option<What>>,
}

/// A corner that the tape has nothing to say of is taken as it was said; one that it settles is free.
const FREE: f64 = 10.0;
/// A corner is settled by the tape where that leaves it no more than this share of what it may be off as built.
const SETTLED: f64 = 0.5;

impl Sights {
    /// The measurements of a room as they stand; the corners as the walls walk when they are square.
    pub fn of(room: &Room) -> Option<Sights> {
        let walls = room.walls.len();
        let square = laid_as_said(room)?;
        let start: Vec<[f64; 2]> = square
            .iter()
            .map(|corner| [corner.x.metres(), corner.y.metres()])
            .collect();
        let mut held = vec![[false, false]; walls];
        held[0] = [true, true];
        // The first wall stays on its way: level or plumb on the sheet.
        let run = square[1 % walls] - square[0];
        held[1 % walls] = if run.y.abs() > run.x.abs() {
            [true, false]
        } else {
            [false, true]
        };
        let (mut observations, mut whats) = (Vec::new(), Vec::new());
        let figures = (0..walls).map(What::Wall).chain(
            room.survey
                .figures
                .keys()
                .copied()
                .filter(|what| matches!(what, What::Diagonal(..)) && room.has(*what)),
        );
        for what in figures {
            let (a, b) = ends(what, walls)?;
            if let Some(length) = room.measured(what) {
                observations.push(Observation {
                    sight: Sight::Distance(a, b),
                    value: length.metres(),
                    sigma: room.sigma(what, length),
                });
                whats.push(Some(what));
            }
        }
        for (wall, turn) in room.walls.iter().map(|wall| wall.turn).enumerate() {
            observations.push(Observation {
                sight: Sight::Turn(wall, (wall + 1) % walls, (wall + 2) % walls),
                value: turn.in_degrees().to_radians(),
                sigma: CORNER_OFF.value.to_radians(),
            });
            whats.push(None);
        }
        Some(Sights {
            network: Network {
                start,
                held,
                observations,
            },
            whats,
        })
    }

    /// How far each corner may turn otherwise: as it was said, or freely where the tape alone settles it.
    fn weigh_corners(&mut self, freely: impl Fn(usize) -> bool) {
        let turns = self.network.observations.len() - self.network.start.len();
        for (wall, turn) in self.network.observations[turns..].iter_mut().enumerate() {
            let off = if freely(wall) { FREE } else { CORNER_OFF.value };
            turn.sigma = off.to_radians();
        }
    }

    /// The outline with the corners that the tape settles left to the tape.
    pub fn adjusted_by_tape(&mut self) -> Result<Adjusted, Unsettled> {
        self.weigh_corners(|_| true);
        let Ok(free) = adjust(&self.network) else {
            self.weigh_corners(|_| false);
            return adjust(&self.network);
        };
        let turns = self.network.observations.len() - self.network.start.len();
        let settled: Vec<bool> = self.network.observations[turns..]
            .iter()
            .map(|turn| {
                let sigma = free.figure(turn.sight).map(|(_, sigma)| sigma);
                sigma.is_some_and(|sigma| sigma.to_degrees() < CORNER_OFF.value * SETTLED)
            })
            .collect();
        self.weigh_corners(|wall| settled[wall]);
        adjust(&self.network)
    }

    /// The outline with each corner as it was said, half a degree off or so.
    pub fn adjusted_as_said(&mut self) -> Result<Adjusted, Unsettled> {
        self.weigh_corners(|_| false);
        adjust(&self.network)
    }

    /// Whether a corner (of the turns, by the wall that it ends) is free.
    fn is_free(&self, wall: usize) -> bool {
        let turns = self.network.observations.len() - self.network.start.len();
        self.network
            .observations
            .get(turns + wall)
            .is_some_and(|turn| turn.sigma > CORNER_OFF.value.to_radians() * 1.5)
    }
}

/// The two corners that a measurement runs between.
pub(super) fn ends(what: What, walls: usize) -> Option<(usize, usize)> {
    match what {
        What::Wall(wall) => Some((wall, (wall + 1) % walls)),
        What::Diagonal(a, b) => Some((a, b)),
        _ => None,
    }
}

/// A χ² that as many spare measurements seldom exceed, once in a hundred.
///
/// Wilson and Hilferty's cube.
pub(super) fn seldom(freedom: usize) -> f64 {
    let n = freedom.max(1) as f64;
    let part = 2.0 / (9.0 * n);
    n * (1.0 - part + 2.326 * part.sqrt()).powi(3)
}

fn twice(sigma: f64) -> Length {
    Length::from_metres(2.0 * sigma).unwrap_or(Length::LONGEST)
}

/// The outline of a room from all that was measured of it, by least squares.
///
/// Walls and diagonals weigh by the tape and the reading (an estimate by its ±), a corner as it was said by half a
/// degree where the tape does not settle it, and by nothing where it does.
///
/// # Inputs
/// A room whose turns come to 360° and whose walls are measured, or follow, so far that it can be drawn.
/// # Gives
/// The outline in the place and on the way in which the plan draws it, every ± in about nineteen cases of twenty; `None`
/// while a wall is neither measured nor settled by the rest, or no diagonal was measured.
/// # Findings
/// [`Surveyed::agrees`], and then [`misreads`](super::misreads).
/// # Source
/// Least squares; tolerances of NIST Handbook 44, section 5.52; twice the standard uncertainty: JCGM 100, from memory.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Room, What, surveyed}};
/// let mut room = Room::rectangle("Washroom");
/// for (wall, inches) in [96, 60, 96, 60].into_iter().enumerate() {
///     room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
/// }
/// // Square, the diagonals would be 113 3/16 in both.
/// room.measure(What::Diagonal(0, 2), Some(Length::inches(114)), None);
/// let found = surveyed(&room).unwrap();
/// assert!(found.corners[1].off.in_degrees() < -0.8);
/// ```
#[must_use]
pub fn surveyed(room: &Room) -> Option<Surveyed> {
    let diagonal = |what: &What| matches!(what, What::Diagonal(..));
    if !room.survey.figures.keys().any(diagonal) {
        return None;
    }
    // A screen asks for the same room many times over.
    thread_local! {
        static FIGURED: RefCell<Vec<(Room, Option<Surveyed>)>> = const { RefCell::new(Vec::new()) };
    }
    FIGURED.with_borrow_mut(|known| {
        if let Some((_, found)) = known.iter().find(|(known, _)| known == room) {
            return found.clone();
        }
        let found = figured(room);
        if known.len() >= REMEMBERED {
            known.remove(0);
        }
        known.push((room.clone(), found.clone()));
        found
    })
}

/// Rooms whose outline is remembered.
const REMEMBERED: usize = 6;

fn figured(room: &Room) -> Option<Surveyed> {
    let walls = room.walls.len();
    let mut sights = Sights::of(room)?;
    let found = sights.adjusted_by_tape().ok()?;
    let length = |metres| Length::from_metres(metres).unwrap_or_default();
    let points: Vec<Point> = found
        .points
        .iter()
        .map(|[x, y]| Point::new(length(*x), length(*y)))
        .collect();
    let walls_found: Option<Vec<WallFound>> = (0..walls)
        .map(|wall| {
            let (long, sigma) = found.figure(Sight::Distance(wall, (wall + 1) % walls))?;
            Some(WallFound {
                length: Length::from_metres(long)?,
                plus_minus: twice(sigma),
            })
        })
        .collect();
    let walls_found = walls_found?;
    let corner = |at: usize| corner_found(room, &sights, &found, &points, &walls_found, at);
    let (area, sigma) = area(&found);
    let tape = found.residuals.iter().zip(&sights.network.observations);
    let tape: f64 = tape
        .zip(&sights.whats)
        .filter(|(_, what)| what.is_some())
        .map(|((residual, observation), _)| (residual / observation.sigma).powi(2))
        .sum();
    // What the tape's own measurements check each other by; corners as said that the tape leaves open count for none.
    let worth = found.redundancy.iter().zip(&sights.whats);
    let worth: f64 = worth
        .filter(|(_, what)| what.is_some())
        .map(|(worth, _)| worth)
        .sum();
    let spare = worth.round() as usize;
    let square_metres = crate::measure::quantity::square_metres;
    Some(Surveyed {
        walls: walls_found.clone(),
        corners: (0..walls).map(corner).collect(),
        checks: checks(&sights, &found),
        gap: gap(room),
        spare,
        agrees: tape <= seldom(spare),
        area: square_metres(area),
        area_plus_minus: square_metres(2.0 * sigma),
        outline: Polygon { points },
    })
}

fn corner_found(
    room: &Room,
    sights: &Sights,
    found: &Adjusted,
    points: &[Point],
    walls: &[WallFound],
    at: usize,
) -> CornerFound {
    let count = points.len();
    let before = (at + count - 1) % count;
    let sight = Sight::Turn(before, at, (at + 1) % count);
    let (turn, sigma) = found.figure(sight).unwrap_or_default();
    let angle = |radians: f64| Angle::from_degrees(radians.to_degrees()).unwrap_or_default();
    let off = angle(turn) - room.walls[before].turn;
    let shorter = walls[before].length.min(walls[at].length);
    let over = shorter.metres() * off.in_degrees().to_radians().sin();
    CornerFound {
        at: points[at],
        plus_minus: twice(worst(found, at)),
        off,
        off_plus_minus: angle(2.0 * sigma),
        over: Length::from_metres(over).unwrap_or_default(),
        by_tape: sights.is_free(before),
    }
}

/// The standard uncertainty of a point across its worst way: the long half-axis of its ellipse.
fn worst(found: &Adjusted, at: usize) -> f64 {
    let (xx, xy, yy) = (
        found.covariance((at, 0), (at, 0)),
        found.covariance((at, 0), (at, 1)),
        found.covariance((at, 1), (at, 1)),
    );
    let half = f64::midpoint(xx, -yy).hypot(xy);
    (f64::midpoint(xx, yy) + half).max(0.0).sqrt()
}

/// The area, and its standard uncertainty: `A = ½ Σ (xᵢ yᵢ₊₁ − xᵢ₊₁ yᵢ)`, which grows with each corner by half the way
/// between its neighbours.
fn area(found: &Adjusted) -> (f64, f64) {
    let (points, count) = (&found.points, found.points.len());
    let mut doubled = 0.0;
    let mut changes = Vec::with_capacity(count);
    for at in 0..count {
        let (before, after) = (points[(at + count - 1) % count], points[(at + 1) % count]);
        doubled += points[at][0] * after[1] - after[0] * points[at][1];
        changes.push((
            at,
            [
                f64::midpoint(after[1], -before[1]),
                f64::midpoint(before[0], -after[0]),
            ],
        ));
    }
    ((doubled / 2.0).abs(), found.uncertainty(&changes))
}

fn checks(sights: &Sights, found: &Adjusted) -> Vec<Check> {
    let observations = sights.network.observations.iter().zip(&sights.whats);
    let results = found.residuals.iter().zip(&found.redundancy);
    let check = |((observation, what), (residual, checked)): ((&Observation, &Option<What>), _)| {
        let (residual, checked): (&f64, &f64) = (residual, checked);
        let length = |metres| Length::from_metres(metres).unwrap_or_default();
        Some(Check {
            what: (*what)?,
            read: length(observation.value),
            comes_out: length(observation.value + residual),
            plus_minus: twice(observation.sigma),
            checked: *checked,
        })
    };
    observations.zip(results).filter_map(check).collect()
}

/// By how much walls that are all measured miss their start, their corners as said.
fn gap(room: &Room) -> Option<Length> {
    let mut at = [0.0, 0.0];
    let ways = crate::site::shape::headings(room);
    for (wall, way) in room.walls.iter().zip(ways) {
        let ((sine, cosine), long) = (way.sin_cos(), wall.length?.metres());
        at = [at[0] + long * cosine, at[1] + long * sine];
    }
    Length::from_metres(at[0].hypot(at[1]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn room(walls: [i64; 4], diagonals: &[(usize, usize, Length)]) -> Room {
        let mut room = Room::rectangle("a");
        for (wall, inches) in walls.into_iter().enumerate() {
            room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        for (a, b, length) in diagonals {
            room.measure(What::diagonal(*a, *b), Some(*length), None);
        }
        room
    }

    /// Handbook arithmetic: 60 × 96 in with diagonals of 113 1/4 and 112 3/4 in leans 0.281°, 0.294 in over 60 in.
    /// The walls alone cannot all be right then: √(60² + 96²) = 113.208 lies outside both; what comes out is between.
    #[test]
    fn two_diagonals_say_how_far_a_room_leans() {
        let room = room(
            [96, 60, 96, 60],
            &[
                (0, 2, Length::in_64(113, 16)),
                (1, 3, Length::in_64(112, 48)),
            ],
        );
        let found = surveyed(&room).unwrap();
        let off = found.corners[1].off.in_degrees();
        assert!((off.abs() - 0.281).abs() < 0.005, "{off}");
        assert!(off < 0.0, "the longer diagonal opens the corner beside it");
        assert!((found.corners[1].over.in_inches().abs() - 0.294).abs() < 0.005);
        assert!(found.corners.iter().all(|corner| corner.by_tape));
        assert_eq!(found.spare, 1);
    }

    #[test]
    fn one_diagonal_settles_a_room_of_four_walls_and_checks_nothing() {
        let found = surveyed(&room([96, 60, 96, 60], &[(0, 2, Length::inches(114))])).unwrap();
        assert_eq!((found.spare, found.agrees), (0, true));
        assert!(found.checks.iter().all(|check| check.checked < 0.01));
        assert!((found.walls[2].length - Length::inches(96)).abs() < Length::nm(100_000));
    }

    #[test]
    fn an_estimate_makes_the_floor_uncertain() {
        let mut room = room([96, 60, 96, 60], &[(0, 2, Length::in_64(113, 13))]);
        let sure = surveyed(&room).unwrap().area_plus_minus;
        room.measure(
            What::Wall(1),
            Some(Length::inches(60)),
            Some(Length::inches(2)),
        );
        let guessed = surveyed(&room).unwrap();
        assert!(guessed.area_plus_minus > sure * 5.0);
        assert!(guessed.walls[1].plus_minus > Length::inches(1));
    }

    /// What follows from a guess is a guess, and so is the floor.
    #[test]
    fn a_wall_that_follows_from_an_estimate_has_its_more_or_less() {
        let mut room = Room::rectangle("a");
        let inch = Length::inches(1);
        room.measure(What::Wall(0), Some(Length::inches(96)), Some(inch));
        room.measure(What::Wall(1), Some(Length::inches(60)), None);
        assert_eq!(follows_plus_minus(&room, 2), Some(inch));
        assert_eq!(follows_plus_minus(&room, 3), None);
        // 1 by 60 in.
        let floor = floor_plus_minus(&room).unwrap();
        assert!((floor.value - 60.0 * 0.0254 * 0.0254).abs() < 1e-9);
    }

    /// 99 % quantiles of χ² from any table: 6.635, 9.210, 23.209 at 1, 2 and 10.
    #[test]
    fn what_spare_measurements_seldom_exceed() {
        for (freedom, printed) in [(1, 6.635), (2, 9.210), (10, 23.209)] {
            assert!((seldom(freedom) / printed - 1.0).abs() < 0.02);
        }
    }
}
