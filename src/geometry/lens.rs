//! How a lens bends straight lines: one radial term about the middle of the picture.

use super::homography::{Spot, distance};

/// The least and the most that a lens is taken to bend: at the least a corner of the picture still has a place.
pub const LENS_LEAST: f64 = -0.14;
/// See [`LENS_LEAST`].
pub const LENS_MOST: f64 = 0.5;

/// A lens: a place at the distance r from the middle is seen at r (1 + k r²), r in halves of the picture's diagonal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lens {
    /// The middle of the picture.
    pub middle: Spot,
    /// Half its diagonal.
    pub unit: f64,
    /// The radial term k: less than nothing for a barrel, more for a cushion.
    pub bend: f64,
}

impl Lens {
    /// A lens that bends nothing, for a picture of so many pixels across and down.
    #[must_use]
    pub fn straight(width: f64, height: f64) -> Lens {
        Lens {
            middle: [width / 2.0, height / 2.0],
            unit: (width.hypot(height) / 2.0).max(1.0),
            bend: 0.0,
        }
    }

    /// Where a place is seen that a lens without fault would show at `place`.
    #[must_use]
    pub fn seen(&self, place: Spot) -> Spot {
        let r = distance(place, self.middle) / self.unit;
        self.scaled(place, 1.0 + self.bend * r * r)
    }

    /// Where a lens without fault would show what is seen at `place`.
    #[must_use]
    pub fn straightened(&self, place: Spot) -> Spot {
        let seen = distance(place, self.middle) / self.unit;
        if seen == 0.0 || self.bend == 0.0 {
            return place;
        }
        let mut r = seen;
        for _ in 0..12 {
            let slope = (1.0 + 3.0 * self.bend * r * r).max(0.05);
            let step = (r * (1.0 + self.bend * r * r) - seen) / slope;
            r -= step;
            if step.abs() < 1e-15 {
                break;
            }
        }
        self.scaled(place, r / seen)
    }

    fn scaled(&self, place: Spot, by: f64) -> Spot {
        let part = |axis: usize| self.middle[axis] + (place[axis] - self.middle[axis]) * by;
        [part(0), part(1)]
    }
}

/// A lens and one standard deviation of its bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bent {
    /// The lens.
    pub lens: Lens,
    /// One standard deviation of its bend.
    pub spread: f64,
}

/// The bend under which edges that are straight look straight: each edge three points or more along it.
///
/// The least sum of squared distances of the straightened points from the straight line fitted to each edge; its
/// spread is the click's standard deviation (in pixels) over half the root of that sum's second derivative. `None`
/// where no edge has three points, or all run through the middle, where a lens bends nothing.
#[must_use]
pub fn bend_of(edges: &[Vec<Spot>], flat: Lens, click: f64) -> Option<Bent> {
    let edges: Vec<&Vec<Spot>> = edges.iter().filter(|edge| edge.len() >= 3).collect();
    if edges.is_empty() {
        return None;
    }
    let cost = |bend: f64| {
        let lens = Lens { bend, ..flat };
        edges.iter().map(|edge| crooked(edge, &lens)).sum::<f64>()
    };
    let steps = 64;
    let at = |n: i32| LENS_LEAST + (LENS_MOST - LENS_LEAST) * f64::from(n) / f64::from(steps);
    let best = (0..=steps).min_by(|a, b| cost(at(*a)).total_cmp(&cost(at(*b))))?;
    let bend = lowest(&cost, at((best - 1).max(0)), at((best + 1).min(steps)));
    let h = 1e-3;
    let curve = (cost(bend + h) - 2.0 * cost(bend) + cost(bend - h)) / (h * h);
    let spread = click * (2.0 / curve).sqrt();
    (curve > 0.0 && spread.is_finite()).then_some(Bent {
        lens: Lens { bend, ..flat },
        spread,
    })
}

/// Where a curve with one low is lowest, by golden section.
fn lowest(cost: &impl Fn(f64) -> f64, mut from: f64, mut to: f64) -> f64 {
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..48 {
        let (a, b) = (to - (to - from) * golden, from + (to - from) * golden);
        if cost(a) < cost(b) {
            to = b;
        } else {
            from = a;
        }
    }
    f64::midpoint(from, to)
}

/// The squared distances of an edge's points from the straight line that fits them best, in pixels as seen.
fn crooked(edge: &[Spot], lens: &Lens) -> f64 {
    let straight: Vec<Spot> = edge.iter().map(|p| lens.straightened(*p)).collect();
    let n = straight.len() as f64;
    let mean = |axis: usize| straight.iter().map(|p| p[axis]).sum::<f64>() / n;
    let (mx, my) = (mean(0), mean(1));
    let sum = |f: &dyn Fn(f64, f64) -> f64| {
        straight
            .iter()
            .map(|p| f(p[0] - mx, p[1] - my))
            .sum::<f64>()
    };
    let (xx, xy, yy) = (sum(&|x, _| x * x), sum(&|x, y| x * y), sum(&|_, y| y * y));
    // Across the direction of most spread.
    let (sine, cosine) = (0.5 * (2.0 * xy).atan2(xx - yy)).sin_cos();
    let off = straight.iter().zip(edge).map(|(p, seen)| {
        let off = (p[1] - my) * cosine - (p[0] - mx) * sine;
        // A straightened picture is smaller or larger; what counts is pixels as they were clicked.
        let back = distance(*seen, lens.middle) / distance(*p, lens.middle).max(1e-9);
        (off * back) * (off * back)
    });
    off.sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bent_place_comes_back_straight() {
        for bend in [LENS_LEAST, -0.05, 0.0, 0.02, 0.3] {
            let lens = Lens {
                bend,
                ..Lens::straight(4000.0, 3000.0)
            };
            for place in [
                [0.0, 0.0],
                [2000.0, 1500.0],
                [3999.0, 10.0],
                [1234.0, 2345.0],
            ] {
                let back = lens.seen(lens.straightened(place));
                assert!(distance(back, place) < 1e-6, "{bend} {place:?}: {back:?}");
            }
        }
    }

    #[test]
    fn straight_edges_tell_the_bend() {
        let flat = Lens::straight(2048.0, 1536.0);
        let lens = Lens {
            bend: -0.06,
            ..flat
        };
        let edge = |a: Spot, b: Spot| -> Vec<Spot> {
            let along = |n: u8| f64::from(n) / 4.0;
            let at = |n: u8| {
                [
                    a[0] + (b[0] - a[0]) * along(n),
                    a[1] + (b[1] - a[1]) * along(n),
                ]
            };
            (0..5).map(|n| lens.seen(at(n))).collect()
        };
        let edges = [
            edge([60.0, 80.0], [1990.0, 120.0]),
            edge([90.0, 60.0], [100.0, 1480.0]),
            edge([1950.0, 70.0], [1900.0, 1480.0]),
        ];
        let found = bend_of(&edges, flat, 1.5).unwrap();
        assert!((found.lens.bend + 0.06).abs() < 1e-6, "{found:?}");
        assert!(found.spread > 0.0 && found.spread < 0.01, "{found:?}");
        assert_eq!(bend_of(&[], flat, 1.5), None);
        assert_eq!(bend_of(&[vec![[0.0, 0.0], [9.0, 9.0]]], flat, 1.5), None);
    }
}
