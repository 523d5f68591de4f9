//! Points from more measurements than they need: least squares, with what each measurement and each point is worth.

use super::normal::{Open, Root, Sums};

/// What was measured between points, by their places in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// From one to the other, in metres.
    Distance(usize, usize),
    /// At the middle one: from the way that leads to it to the way that leads on, in radians, clockwise on the sheet.
    Turn(usize, usize, usize),
}

/// One measurement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observation {
    /// What was measured.
    pub sight: Sight,
    /// What it came to.
    pub value: f64,
    /// Its standard uncertainty, in the same unit, more than nothing.
    pub sigma: f64,
}

/// Points to be found, from where they are guessed to be.
#[derive(Clone, Debug, PartialEq)]
pub struct Network {
    /// Where each is guessed to be, in metres, x to the right and y down.
    pub start: Vec<[f64; 2]>,
    /// Which of its two places is not to move; a figure on its own needs three that do not.
    pub held: Vec<[bool; 2]>,
    /// What was measured.
    pub observations: Vec<Observation>,
}

/// Points as they come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjusted {
    /// Where each is.
    pub points: Vec<[f64; 2]>,
    /// Each measurement as it comes out less as it was measured, in the order given.
    pub residuals: Vec<f64>,
    /// How much of an error of each measurement shows in its own residual, from 0 (none: nothing checks it) to 1.
    pub redundancy: Vec<f64>,
    /// Measurements beyond those that are needed.
    pub freedom: usize,
    /// `Σ (residual / sigma)²`.
    pub chi_square: f64,
    /// Covariance of the places that move, before any scaling by what the residuals say.
    covariance: Vec<Vec<f64>>,
    /// Where each place that moves stands in it.
    place: Vec<[Option<usize>; 2]>,
}

/// Why points cannot be found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsettled {
    /// Nothing that was measured holds this point.
    Point(usize),
    /// The measurements pull so far apart that no places come out.
    NoEnd,
    /// A measurement names a point that is not there, two that are one, or is no number; by its place.
    Measurement(usize),
}

const MOST_STEPS: usize = 60;
/// A step shorter than this, in metres, changes nothing that is shown.
const SMALL: f64 = 1e-11;

fn turned(radians: f64) -> f64 {
    let turn = std::f64::consts::TAU;
    radians - turn * (radians / turn).round()
}

/// How a figure changes with each of its points, across and down.
type Changes = Vec<(usize, [f64; 2])>;

/// The measurement as the points have it, and how it changes with each of its points; `None` where two are one.
fn seen(sight: Sight, points: &[[f64; 2]]) -> Option<(f64, Changes)> {
    let way = |a: usize, b: usize| {
        let (x, y) = (points[b][0] - points[a][0], points[b][1] - points[a][1]);
        let long = x.hypot(y);
        (long > 1e-9).then_some((x, y, long))
    };
    match sight {
        Sight::Distance(a, b) => {
            let (x, y, long) = way(a, b)?;
            let by = [x / long, y / long];
            Some((long, vec![(a, [-by[0], -by[1]]), (b, by)]))
        }
        Sight::Turn(a, b, c) => {
            let ((x1, y1, l1), (x2, y2, l2)) = (way(a, b)?, way(b, c)?);
            // The direction of a way changes across it, the more the shorter it is.
            let (to, on) = (
                [-y1 / (l1 * l1), x1 / (l1 * l1)],
                [-y2 / (l2 * l2), x2 / (l2 * l2)],
            );
            let at = [-on[0] - to[0], -on[1] - to[1]];
            Some((
                turned(y2.atan2(x2) - y1.atan2(x1)),
                vec![(a, to), (b, at), (c, on)],
            ))
        }
    }
}

/// One measurement among the equations: how far off, in sigmas, and its row.
struct Row {
    off: f64,
    row: Vec<(usize, f64)>,
}

fn rows(
    network: &Network,
    place: &[[Option<usize>; 2]],
    points: &[[f64; 2]],
) -> Result<Vec<Row>, Unsettled> {
    let row = |(at, observation): (usize, &Observation)| {
        let (is, changes) = seen(observation.sight, points).ok_or(Unsettled::Measurement(at))?;
        let off = match observation.sight {
            Sight::Distance(..) => observation.value - is,
            Sight::Turn(..) => turned(observation.value - is),
        };
        let mut row = Vec::with_capacity(6);
        for (point, by) in changes {
            for axis in 0..2 {
                if let Some(column) = place[point][axis] {
                    row.push((column, by[axis] / observation.sigma));
                }
            }
        }
        Ok(Row {
            off: off / observation.sigma,
            row,
        })
    };
    network.observations.iter().enumerate().map(row).collect()
}

fn chi_square(rows: &[Row]) -> f64 {
    rows.iter().map(|row| row.off * row.off).sum()
}

fn root(rows: &[Row], place: &[[Option<usize>; 2]], size: usize) -> Result<Root, Unsettled> {
    let mut sums = Sums::new(size);
    for row in rows {
        sums.add(&row.row, 1.0);
    }
    let of = |column: usize| place.iter().position(|point| point.contains(&Some(column)));
    sums.root()
        .map_err(|Open(column)| Unsettled::Point(of(column).unwrap_or_default()))
}

fn sound(network: &Network) -> Result<(), Unsettled> {
    let count = network.start.len();
    for (at, observation) in network.observations.iter().enumerate() {
        let points: &[usize] = match &observation.sight {
            Sight::Distance(a, b) => &[*a, *b],
            Sight::Turn(a, b, c) => &[*a, *b, *c],
        };
        let there = points.iter().all(|point| *point < count) && points[0] != points[1];
        let sound = observation.value.is_finite()
            && observation.sigma.is_finite()
            && observation.sigma > 0.0;
        if !there || !sound {
            return Err(Unsettled::Measurement(at));
        }
    }
    if network.held.len() != count || network.start.iter().flatten().any(|at| !at.is_finite()) {
        return Err(Unsettled::NoEnd);
    }
    Ok(())
}

/// Where points are that were measured more often than they need: the places with the least `Σ (residual / sigma)²`.
///
/// From the guess by Gauss and Newton's steps, each halved while it makes the sum worse, until nothing moves.
///
/// # Inputs
/// The points as guessed, near enough that the outline is the right way round; at least three places held that fix
/// where the figure lies and how it is turned; measurements in metres and radians with their standard uncertainty.
/// # Gives
/// The points, the residual of each measurement (as it comes out less as measured), how well each is checked, and the
/// covariance of the points.
/// # Errors
/// [`Unsettled`].
/// # Source
/// Weighted least squares by variation of coordinates, as in any text on the adjustment of surveys; Benning (2011),
/// example 8-2, as in Krumm, *Geodetic Network Adjustment Examples* (2020), 3.1.1: read in a copy of its figures.
/// # Example
/// ```
/// use storyrod::geometry::{Network, Observation, Sight, adjust};
/// let far = |a, b, value| Observation { sight: Sight::Distance(a, b), value, sigma: 0.001 };
/// // 3, 4 and 5 m: the third point lies 4 m below the first.
/// let network = Network {
///     start: vec![[0.0, 0.0], [3.0, 0.0], [0.2, 3.5]],
///     held: vec![[true, true], [false, true], [false, false]],
///     observations: vec![far(0, 1, 3.0), far(0, 2, 4.0), far(1, 2, 5.0)],
/// };
/// let found = adjust(&network).unwrap();
/// assert!((found.points[2][1] - 4.0).abs() < 1e-9 && found.freedom == 0);
/// ```
pub fn adjust(network: &Network) -> Result<Adjusted, Unsettled> {
    sound(network)?;
    let mut size = 0;
    let mut number = |held: bool| {
        (!held).then(|| {
            size += 1;
            size - 1
        })
    };
    let place: Vec<_> = network
        .held
        .iter()
        .map(|[x, y]| [number(*x), number(*y)])
        .collect();
    let mut points = network.start.clone();
    let mut now = rows(network, &place, &points)?;
    let mut settled = false;
    for _ in 0..MOST_STEPS {
        let mut step = vec![0.0; size];
        for row in &now {
            for (column, by) in &row.row {
                step[*column] += by * row.off;
            }
        }
        root(&now, &place, size)?.solve(&mut step);
        let (better, next, share) = shortened(network, &place, &points, &step, chi_square(&now))?;
        points = better;
        now = next;
        if step.iter().all(|by| (by * share).abs() < SMALL) {
            settled = true;
            break;
        }
    }
    if !settled {
        return Err(Unsettled::NoEnd);
    }
    let covariance = root(&now, &place, size)?.inverse();
    let worth = |row: &Row| {
        let part = |(i, a): &(usize, f64)| {
            let of: f64 = row.row.iter().map(|(j, b)| covariance[*i][*j] * b).sum();
            a * of
        };
        (1.0 - row.row.iter().map(part).sum::<f64>()).clamp(0.0, 1.0)
    };
    let observations = &network.observations;
    Ok(Adjusted {
        residuals: (now.iter().zip(observations))
            .map(|(row, observation)| -row.off * observation.sigma)
            .collect(),
        redundancy: now.iter().map(worth).collect(),
        freedom: observations.len().saturating_sub(size),
        chi_square: chi_square(&now),
        points,
        covariance,
        place,
    })
}

type Stepped = (Vec<[f64; 2]>, Vec<Row>, f64);

/// The points after as much of a step as makes the sum of squares no worse.
fn shortened(
    network: &Network,
    place: &[[Option<usize>; 2]],
    points: &[[f64; 2]],
    step: &[f64],
    before: f64,
) -> Result<Stepped, Unsettled> {
    let mut share = 1.0;
    loop {
        let mut moved = points.to_vec();
        for (point, columns) in moved.iter_mut().zip(place) {
            for (at, column) in point.iter_mut().zip(columns) {
                *at += column.map_or(0.0, |column| step[column] * share);
            }
        }
        let next = rows(network, place, &moved)?;
        let after = chi_square(&next);
        if after <= before * (1.0 + 1e-9) + 1e-12 || share < 1e-3 {
            return if after.is_finite() {
                Ok((moved, next, share))
            } else {
                Err(Unsettled::NoEnd)
            };
        }
        share /= 2.0;
    }
}

impl Adjusted {
    /// The covariance of one place of a point with one of another; nothing where either is held.
    #[must_use]
    pub fn covariance(&self, (a, x): (usize, usize), (b, y): (usize, usize)) -> f64 {
        match (self.place[a][x], self.place[b][y]) {
            (Some(i), Some(j)) => self.covariance[i][j],
            _ => 0.0,
        }
    }

    /// The standard uncertainty of a figure that changes so much with each point: `√(g C gᵀ)`.
    #[must_use]
    pub fn uncertainty(&self, changes: &[(usize, [f64; 2])]) -> f64 {
        let mut variance = 0.0;
        for (a, by) in changes {
            for (b, with) in changes {
                for (x, one) in by.iter().enumerate() {
                    for (y, other) in with.iter().enumerate() {
                        variance += one * other * self.covariance((*a, x), (*b, y));
                    }
                }
            }
        }
        variance.max(0.0).sqrt()
    }

    /// A distance or a turn as the points have it, and its standard uncertainty; `None` where two points are one.
    #[must_use]
    pub fn figure(&self, sight: Sight) -> Option<(f64, f64)> {
        let (is, changes) = seen(sight, &self.points)?;
        Some((is, self.uncertainty(&changes)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn far(a: usize, b: usize, value: f64) -> Observation {
        Observation {
            sight: Sight::Distance(a, b),
            value,
            sigma: 0.001,
        }
    }

    fn triangle(sides: [f64; 3]) -> Network {
        Network {
            start: vec![[0.0, 0.0], [3.0, 0.0], [0.5, 3.0]],
            held: vec![[true, true], [false, true], [false, false]],
            observations: vec![
                far(0, 1, sides[0]),
                far(0, 2, sides[1]),
                far(1, 2, sides[2]),
            ],
        }
    }

    /// A side measured twice comes out at its mean, each reading half off, each half checked. By hand.
    #[test]
    fn a_side_measured_twice_comes_out_between() {
        let mut network = triangle([3.0, 4.0, 5.0]);
        network.observations.push(far(0, 1, 3.002));
        let found = adjust(&network).unwrap();
        assert!((found.points[1][0] - 3.001).abs() < 1e-9);
        assert!((found.residuals[0] - 0.001).abs() < 1e-9);
        assert!((found.redundancy[0] - 0.5).abs() < 1e-9 && found.redundancy[1] < 1e-9);
        let (_, sigma) = found.figure(Sight::Distance(0, 1)).unwrap();
        assert!((sigma - 0.001 / 2.0_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn what_nothing_holds_and_what_is_no_measure_is_named() {
        let mut network = triangle([3.0, 4.0, 5.0]);
        network.observations.truncate(2);
        assert_eq!(adjust(&network), Err(Unsettled::Point(2)));
        network.observations.push(far(1, 9, 1.0));
        assert_eq!(adjust(&network), Err(Unsettled::Measurement(2)));
        network.observations[2] = far(1, 2, f64::NAN);
        assert_eq!(adjust(&network), Err(Unsettled::Measurement(2)));
    }

    /// A quarter turn to the right at the second corner.
    #[test]
    fn a_turn_settles_a_corner() {
        let network = Network {
            start: vec![[0.0, 0.0], [2.0, 0.0], [2.3, 1.0]],
            held: vec![[true, true], [false, true], [false, false]],
            observations: vec![
                far(0, 1, 2.0),
                far(1, 2, 1.0),
                Observation {
                    sight: Sight::Turn(0, 1, 2),
                    value: std::f64::consts::FRAC_PI_2,
                    sigma: 0.01,
                },
            ],
        };
        let found = adjust(&network).unwrap();
        assert!((found.points[2][0] - 2.0).abs() < 1e-9 && (found.points[2][1] - 1.0).abs() < 1e-9);
        let (_, sigma) = found.figure(Sight::Turn(0, 1, 2)).unwrap();
        assert!((sigma - 0.01).abs() < 1e-9);
    }
}
