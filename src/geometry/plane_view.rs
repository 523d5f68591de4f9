//! Measuring in a plane seen in a picture, each figure with how far it may be off.

use super::four_points::{NoShape, Shape};
use super::homography::{Homography, Spot, distance, turn};
use super::lens::Bent;
use super::plane_fit::{Round, dot};

/// Four points of known shape as they are seen, clockwise from the one that is the origin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reference {
    /// Its corners in pixels: origin, along its width, across from the origin, along its height.
    pub corners: [Spot; 4],
    /// What is known of them.
    pub shape: Shape,
}

/// A length in the plane that was measured with a tape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// Its ends in pixels.
    pub ends: [Spot; 2],
    /// In metres.
    pub length: f64,
    /// One standard deviation, in metres.
    pub spread: f64,
}

/// A figure and one standard deviation of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The figure.
    pub value: f64,
    /// One standard deviation.
    pub spread: f64,
}

/// Why four points show no plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoPlane {
    /// Three of them lie in a line, or nearly so.
    InLine,
    /// They do not go round: two sides cross, or a corner points inward.
    NotRound,
    /// A width, a height or a spread is none.
    NoSize,
    /// Nothing has such sides.
    NoShape(NoShape),
}

/// The plane of a wall as a picture shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlaneView {
    /// One standard deviation of a click, in pixels.
    click: f64,
    lens: Bent,
    /// As they were clicked.
    corners: [Spot; 4],
    shape: Shape,
    known: Vec<Known>,
    /// What is believed: eight coordinates of corners, bend, the figures of their shape, then four coordinates for each
    /// known length.
    state: Vec<f64>,
    /// How sure, as a covariance, row by row.
    sure: Vec<f64>,
    /// By how many standard deviations each known length differs from what all the others say.
    misfits: Vec<f64>,
    /// Which known lengths are not fitted: they contradict the others.
    left_out: Vec<bool>,
}

/// A known length contradicts the rest from so many standard deviations, more than chance makes likely: three in a
/// thousand by the normal law.
pub const CONTRADICTS: f64 = 3.0;

/// Where the bend stands in the state, after the corners.
const BEND: usize = 8;
/// Half a step of a derivative, in standard deviations.
const STEP: f64 = 0.02;

impl PlaneView {
    /// A plane from four points of known shape and lengths measured in it.
    ///
    /// Everything clicked, typed and taken for granted is an unknown with its own spread; the known lengths are fitted
    /// by least squares over all of them (Gauss–Newton, four rounds from the clicks). One that contradicts the rest by
    /// [`CONTRADICTS`] standard deviations or more is left out, the worst first, and the others are looked at again: the
    /// search for blunders by standardized residuals, one by one, as in any text on the adjustment of surveys.
    ///
    /// # Errors
    /// [`NoPlane`].
    pub fn new(
        reference: &Reference,
        known: &[Known],
        lens: Bent,
        click: f64,
    ) -> Result<PlaneView, NoPlane> {
        let figures = reference.shape.figures().iter();
        let spread = |x: f64| x.is_finite() && x >= 0.0;
        let mut given = figures
            .clone()
            .map(|figure| figure.spread)
            .chain([click, lens.spread]);
        if !given.all(spread) {
            return Err(NoPlane::NoSize);
        }
        reference.shape.corners().map_err(|why| match why {
            NoShape::NoLength => NoPlane::NoSize,
            why => NoPlane::NoShape(why),
        })?;
        goes_round(&reference.corners)?;
        let mut state: Vec<f64> = reference.corners.as_flattened().to_vec();
        state.push(lens.lens.bend);
        state.extend(figures.clone().map(|figure| figure.value));
        let mut spreads = vec![click; 8];
        spreads.push(lens.spread);
        spreads.extend(figures.map(|figure| figure.spread));
        for length in known {
            state.extend(length.ends.as_flattened());
            spreads.extend([click; 4]);
        }
        let n = state.len();
        let mut sure = vec![0.0; n * n];
        for (at, spread) in spreads.iter().enumerate() {
            sure[at * n + at] = spread * spread;
        }
        let mut view = PlaneView {
            click,
            lens,
            corners: reference.corners,
            shape: reference.shape,
            known: known.to_vec(),
            state,
            sure,
            misfits: vec![0.0; known.len()],
            left_out: vec![false; known.len()],
        };
        view.plane(&view.state).ok_or(NoPlane::InLine)?;
        view.fit(&spreads);
        Ok(view)
    }

    /// How much of the state comes before the known lengths.
    fn fixed(&self) -> usize {
        BEND + 1 + self.shape.figures().len()
    }

    /// The plane that a state of belief makes of the picture.
    fn plane(&self, state: &[f64]) -> Option<Plane> {
        let mut lens = self.lens.lens;
        lens.bend = state[BEND];
        let corner = |n: usize| lens.straightened([state[2 * n], state[2 * n + 1]]);
        let to = self.shape.with(&state[BEND + 1..self.fixed()]).ok()?;
        let there = Homography::between(&std::array::from_fn(corner), &to)?;
        Some(Plane { lens, there })
    }

    /// The n-th known length in a state of belief.
    fn length(&self, state: &[f64], n: usize) -> Option<f64> {
        let plane = self.plane(state)?;
        let at = self.fixed() + 4 * n;
        let a = plane.of([state[at], state[at + 1]])?;
        let b = plane.of([state[at + 2], state[at + 3]])?;
        Some(distance(a, b))
    }

    /// Fits the known lengths; one that lies behind the plane is left out, and one that contradicts the others.
    fn fit(&mut self, spreads: &[f64]) {
        let prior = self.state.clone();
        let mut used: Vec<usize> = (0..self.known.len())
            .filter(|at| self.length(&prior, *at).is_some())
            .collect();
        while !used.is_empty() {
            let Some(round) = self.round(&used, spreads, &prior) else {
                return;
            };
            let misfits = round.misfits();
            let worst = (0..used.len()).max_by(|a, b| {
                let size = |at: usize| misfits[at].abs();
                size(*a).total_cmp(&size(*b))
            });
            for (at, misfit) in used.iter().zip(&misfits) {
                self.misfits[*at] = *misfit;
            }
            match worst.filter(|at| misfits[*at].abs() >= CONTRADICTS) {
                Some(at) => self.left_out[used.remove(at)] = true,
                None => break,
            }
        }
        for number in 0..4 {
            let Some(round) = self.round(&used, spreads, &prior) else {
                return;
            };
            let next = round.state(&prior);
            if !used.iter().all(|at| self.length(&next, *at).is_some()) {
                return;
            }
            self.state = next;
            if number == 3 {
                round.surer(&mut self.sure, prior.len());
            }
        }
    }

    /// What the known lengths in use make of the belief so far; `None` where they cannot be told apart.
    fn round(&self, used: &[usize], spreads: &[f64], prior: &[f64]) -> Option<Round> {
        // What each known length would change by: derivatives times variances.
        let slopes: Vec<Vec<f64>> = used
            .iter()
            .map(|at| self.slope(&self.state, spreads, |s| self.length(s, *at)))
            .collect();
        let with: Vec<Vec<f64>> = slopes
            .iter()
            .map(|slope| {
                let parts = slope.iter().zip(spreads);
                parts.map(|(d, spread)| d * spread * spread).collect()
            })
            .collect();
        let moved: Vec<f64> = prior.iter().zip(&self.state).map(|(p, s)| p - s).collect();
        let off = used.iter().zip(&slopes).map(|(at, slope)| {
            let now = self.length(&self.state, *at).unwrap_or_default();
            self.known[*at].length - now - dot(slope, &moved)
        });
        let own = used.iter().map(|at| self.known[*at].spread);
        Round::new(&slopes, with, &own.collect::<Vec<f64>>(), off.collect())
    }

    /// The slope of a figure over a state of belief; nothing where it cannot be figured beside it.
    fn slope(
        &self,
        state: &[f64],
        spreads: &[f64],
        of: impl Fn(&[f64]) -> Option<f64>,
    ) -> Vec<f64> {
        let mut near = state.to_vec();
        let mut slope = vec![0.0; state.len()];
        for at in 0..state.len() {
            let step = STEP * spreads[at];
            if step == 0.0 {
                continue;
            }
            near[at] = state[at] + step;
            let more = of(&near);
            near[at] = state[at] - step;
            let less = of(&near);
            near[at] = state[at];
            if let (Some(more), Some(less)) = (more, less) {
                slope[at] = (more - less) / (2.0 * step);
            }
        }
        slope
    }

    /// A figure of places in the plane, and one standard deviation of it; places that are corners or ends of known
    /// lengths count as those. `None` where one lies behind the plane.
    pub fn estimate(&self, places: &[Spot], of: impl Fn(&[Spot]) -> f64) -> Option<Estimate> {
        let n = self.state.len();
        let known = |place: &Spot| self.place_of(*place);
        let at: Vec<Option<usize>> = places.iter().map(known).collect();
        // The figure in a state that ends in the clicks of this figure's own places.
        let figure = |state: &[f64]| -> Option<f64> {
            let plane = self.plane(&state[..n])?;
            let mut found = Vec::with_capacity(places.len());
            for (number, at) in at.iter().enumerate() {
                let at = at.unwrap_or(n + 2 * number);
                found.push(plane.of([state[at], state[at + 1]])?);
            }
            Some(of(&found))
        };
        let mut state = self.state.clone();
        state.extend(places.as_flattened());
        let mut spreads: Vec<f64> = (0..n)
            .map(|at| self.sure[at * n + at].max(0.0).sqrt())
            .collect();
        for at in &at {
            let own = if at.is_none() { self.click } else { 0.0 };
            spreads.extend([own; 2]);
        }
        let value = figure(&state)?;
        let slope = self.slope(&state, &spreads, figure);
        let mut variance: f64 = (n..state.len())
            .map(|at| (slope[at] * spreads[at]).powi(2))
            .sum();
        for (r, row) in self.sure.chunks(n).enumerate() {
            if slope[r] != 0.0 {
                let part: f64 = row.iter().zip(&slope).map(|(sure, d)| sure * d).sum();
                variance += slope[r] * part;
            }
        }
        let spread = variance.max(0.0).sqrt();
        (value.is_finite() && spread.is_finite()).then_some(Estimate { value, spread })
    }

    /// Where the coordinates of a place stand in the state, if it is a corner or an end of a known length.
    fn place_of(&self, place: Spot) -> Option<usize> {
        let mut ends = self.known.iter().flat_map(|known| known.ends);
        let end = ends.position(|end| end == place);
        let corner = || self.corners.iter().position(|corner| *corner == place);
        end.map(|end| self.fixed() + 2 * end)
            .or_else(|| corner().map(|corner| 2 * corner))
    }

    /// How far it is between two places of the picture.
    #[must_use]
    pub fn distance(&self, a: Spot, b: Spot) -> Option<Estimate> {
        self.estimate(&[a, b], |p| distance(p[0], p[1]))
    }

    /// Where a place of the picture lies in the plane, in metres from the reference's first corner.
    #[must_use]
    pub fn place(&self, seen: Spot) -> Option<Spot> {
        self.plane(&self.state)?.of(seen)
    }

    /// What turns the picture into the plane: its lens, and the way from the straightened picture.
    #[must_use]
    pub fn plane_of(&self) -> Option<Plane> {
        self.plane(&self.state)
    }

    /// By how many standard deviations each known length differs from what the picture and the other lengths say.
    #[must_use]
    pub fn misfits(&self) -> &[f64] {
        &self.misfits
    }

    /// Which known lengths are not fitted, because they contradict the others.
    #[must_use]
    pub fn left_out(&self) -> &[bool] {
        &self.left_out
    }

    /// How far the plane is tilted away from the camera at a place, in degrees; `None` where it is not seen.
    #[must_use]
    pub fn tilt(&self, seen: Spot) -> Option<f64> {
        let plane = self.plane(&self.state)?;
        let step = self.lens.lens.unit * 1e-3;
        let [x, y] = seen;
        let across = [plane.of([x + step, y])?, plane.of([x - step, y])?];
        let down = [plane.of([x, y + step])?, plane.of([x, y - step])?];
        let slope = |[a, b]: [Spot; 2]| [a[0] - b[0], a[1] - b[1]];
        let (u, v) = (slope(across), slope(down));
        // The longer and the shorter half-axis of the ellipse that a small circle of the picture is on the wall.
        let (uu, vv, uv) = (
            u[0] * u[0] + u[1] * u[1],
            v[0] * v[0] + v[1] * v[1],
            u[0] * v[0] + u[1] * v[1],
        );
        let (mean, off) = (f64::midpoint(uu, vv), ((uu - vv) / 2.0).hypot(uv));
        let share = ((mean - off).max(0.0) / (mean + off)).sqrt();
        Some(share.clamp(0.0, 1.0).acos().to_degrees())
    }
}

/// A picture's way into its plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// The lens that bent it.
    pub lens: super::lens::Lens,
    /// From the straightened picture to metres in the plane.
    pub there: Homography,
}

impl Plane {
    /// Where a place of the picture lies, in metres; `None` behind the plane.
    #[must_use]
    pub fn of(&self, seen: Spot) -> Option<Spot> {
        self.there.of(self.lens.straightened(seen))
    }
}

/// Whether four corners go round, all to one side; and no three nearly in a line.
fn goes_round(corners: &[Spot; 4]) -> Result<(), NoPlane> {
    let turns: [f64; 4] =
        std::array::from_fn(|n| turn(corners[n], corners[(n + 1) % 4], corners[(n + 2) % 4]));
    if !turns.iter().all(|turn| turn.is_finite()) {
        return Err(NoPlane::InLine);
    }
    let long = (0..4).map(|n| distance(corners[n], corners[(n + 1) % 4]));
    let long = long.fold(0.0, f64::max);
    if turns.iter().any(|turn| turn.abs() <= 1e-4 * long * long) {
        return Err(NoPlane::InLine);
    }
    if turns.iter().any(|turn| turn.signum() != turns[0].signum()) {
        return Err(NoPlane::NotRound);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::lens::Lens;

    /// A wall before a camera of 3,000 px focal length, turned by 30° and tilted by 10°, 3 m away.
    fn seen([x, y]: Spot) -> Spot {
        let (s, c) = 30.0_f64.to_radians().sin_cos();
        let (t, d) = 10.0_f64.to_radians().sin_cos();
        let (x, y) = (x - 0.5, y - 1.0);
        let (x1, z1) = (x * c, x * s);
        let (y2, z2) = (y * d - z1 * t, y * t + z1 * d);
        let z = z2 + 3.0;
        [2000.0 + 3000.0 * x1 / z, 1500.0 + 3000.0 * y2 / z]
    }
    fn door() -> Reference {
        Reference {
            corners: [[0.0, 0.0], [0.9, 0.0], [0.9, 2.0], [0.0, 2.0]].map(seen),
            shape: Shape::rectangle([0.9, 2.0], [0.0005; 2]),
        }
    }
    fn lens(spread: f64) -> Bent {
        Bent {
            lens: Lens::straight(4000.0, 3000.0),
            spread,
        }
    }

    #[test]
    fn a_length_in_the_plane_is_found_with_its_spread() {
        let view = PlaneView::new(&door(), &[], lens(0.0), 1.5).unwrap();
        let inside = view.distance(seen([0.1, 0.2]), seen([0.6, 1.4])).unwrap();
        assert!((inside.value - 1.3).abs() < 1e-9, "{inside:?}");
        assert!(inside.spread > 0.0005 && inside.spread < 0.01, "{inside:?}");
        let beside = view.distance(seen([1.6, 0.2]), seen([2.1, 1.4])).unwrap();
        assert!(beside.spread > 1.5 * inside.spread, "{beside:?}");
        let bent = PlaneView::new(&door(), &[], lens(0.01), 1.5).unwrap();
        let bent = bent.distance(seen([0.1, 0.2]), seen([0.6, 1.4])).unwrap();
        assert!(bent.spread > inside.spread, "{bent:?}");
    }

    #[test]
    fn a_tape_on_one_length_makes_the_others_surer() {
        let tape = Known {
            ends: [seen([1.5, 0.3]), seen([1.5, 1.8])],
            length: 1.5,
            spread: 0.0005,
        };
        let before = PlaneView::new(&door(), &[], lens(0.005), 1.5).unwrap();
        let after = PlaneView::new(&door(), &[tape], lens(0.005), 1.5).unwrap();
        let of = |view: &PlaneView| view.distance(seen([1.2, 1.0]), seen([1.9, 1.0])).unwrap();
        assert!(of(&after).spread < 0.9 * of(&before).spread);
        assert!((of(&after).value - 0.7).abs() < 1e-6, "{:?}", of(&after));
        let own = after.distance(tape.ends[0], tape.ends[1]).unwrap();
        assert!(own.spread < 0.000_51, "{own:?}");
        assert!(after.misfits()[0].abs() < 0.1);
        let wrong = Known {
            length: 1.6,
            ..tape
        };
        let wrong = PlaneView::new(&door(), &[wrong], lens(0.005), 1.5).unwrap();
        assert!(wrong.misfits()[0] > 3.0, "{:?}", wrong.misfits());
    }

    /// One misread tape among three: it is named, and neither the rest nor how sure it is changes by it.
    #[test]
    fn a_tape_that_contradicts_the_others_is_left_out_and_spoils_nothing() {
        let tape = |from: Spot, to: Spot, length: f64| Known {
            ends: [seen(from), seen(to)],
            length,
            spread: 0.0008,
        };
        let good = [
            tape([1.5, 0.3], [1.5, 1.8], 1.5),
            tape([0.1, 0.2], [1.3, 0.2], 1.2),
        ];
        // 0.87 m read as 1.10: 43 1/2 in for 34 1/2.
        let misread = tape([0.2, 1.9], [1.07, 1.9], 1.10);
        let without = PlaneView::new(&door(), &good, lens(0.005), 1.5).unwrap();
        let all = [good[0], misread, good[1]];
        let with = PlaneView::new(&door(), &all, lens(0.005), 1.5).unwrap();
        assert_eq!(with.left_out(), [false, true, false]);
        assert!(with.misfits()[1] > 10.0, "{:?}", with.misfits());
        assert!(with.misfits()[0].abs() < 1.0 && with.misfits()[2].abs() < 1.0);
        let of = |view: &PlaneView| view.distance(seen([1.2, 1.0]), seen([1.9, 1.0])).unwrap();
        let (with, without) = (of(&with), of(&without));
        assert!(
            (with.value - without.value).abs() < 1e-9,
            "{with:?} {without:?}"
        );
        assert!(
            (with.spread - without.spread).abs() < 1e-9,
            "{with:?} {without:?}"
        );
    }

    #[test]
    fn four_points_that_show_no_plane_say_why() {
        let with = |corners: [Spot; 4], size: [f64; 2]| {
            let reference = Reference {
                corners,
                shape: Shape::rectangle(size, [0.0005; 2]),
            };
            PlaneView::new(&reference, &[], lens(0.0), 1.0).err()
        };
        let good = door().corners;
        assert_eq!(with(good, [0.9, 2.0]), None);
        assert_eq!(with(good, [0.0, 2.0]), Some(NoPlane::NoSize));
        assert_eq!(with(good, [f64::NAN, 2.0]), Some(NoPlane::NoSize));
        let [a, b, c, d] = good;
        assert_eq!(with([a, c, b, d], [0.9, 2.0]), Some(NoPlane::NotRound));
        let middle = [f64::midpoint(a[0], b[0]), f64::midpoint(a[1], b[1])];
        assert_eq!(with([a, middle, b, d], [0.9, 2.0]), Some(NoPlane::InLine));
        assert_eq!(
            with([a, b, c, [f64::NAN; 2]], [0.9, 2.0]),
            Some(NoPlane::InLine)
        );
    }

    #[test]
    fn tilt_is_that_of_the_camera() {
        let view = PlaneView::new(&door(), &[], lens(0.0), 1.0).unwrap();
        // cos of the tilt: cos 30° cos 10°, by the angle between the view and the wall's upright; at the middle.
        let tilt = view.tilt([2000.0, 1500.0]).unwrap();
        let expected = (30.0_f64.to_radians().cos() * 10.0_f64.to_radians().cos()).acos();
        assert!((tilt - expected.to_degrees()).abs() < 0.05, "{tilt}");
    }
}
