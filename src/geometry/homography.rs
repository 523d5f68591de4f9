//! A plane seen in a picture: four points in it fix the rest, in closed form.

/// A place in a picture or in a plane seen in it.
pub type Spot = [f64; 2];

type Matrix = [[f64; 3]; 3];

/// What leads from one plane to another so that straight lines stay straight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Homography {
    matrix: Matrix,
    /// Taken off before, put on after: figures stay near one.
    from: Frame,
    to: Frame,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Frame {
    middle: Spot,
    unit: f64,
}

impl Frame {
    /// About the middle of points, as large as they reach; `None` where they are one or none.
    fn about(points: &[Spot; 4]) -> Option<Frame> {
        let mean = |axis: usize| points.iter().map(|p| p[axis]).sum::<f64>() / 4.0;
        let middle = [mean(0), mean(1)];
        let unit = points.iter().map(|p| distance(*p, middle)).sum::<f64>() / 4.0;
        (unit.is_finite() && unit > 0.0).then_some(Frame { middle, unit })
    }
    fn take(&self, p: Spot) -> [f64; 3] {
        let part = |axis: usize| (p[axis] - self.middle[axis]) / self.unit;
        [part(0), part(1), 1.0]
    }
    fn give(&self, p: Spot) -> Spot {
        let part = |axis: usize| p[axis] * self.unit + self.middle[axis];
        [part(0), part(1)]
    }
}

/// How far one spot is from another.
#[must_use]
pub fn distance(a: Spot, b: Spot) -> f64 {
    (b[0] - a[0]).hypot(b[1] - a[1])
}

/// How far a place is from a stretch between two others.
#[must_use]
pub fn from_stretch(a: Spot, b: Spot, at: Spot) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let long = along[0] * along[0] + along[1] * along[1];
    let share = if long > 0.0 {
        (((at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1]) / long).clamp(0.0, 1.0)
    } else {
        0.0
    };
    distance([a[0] + share * along[0], a[1] + share * along[1]], at)
}

/// Twice the area of a triangle, more than nothing where it turns clockwise on a sheet whose y runs down.
#[must_use]
pub fn turn(a: Spot, b: Spot, c: Spot) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Transposed cofactors: the inverse but for the determinant.
fn adjugate(m: &Matrix) -> Matrix {
    let minor = |r: usize, c: usize| {
        let (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    std::array::from_fn(|r| std::array::from_fn(|c| minor(c, r)))
}

fn apply(m: &Matrix, v: [f64; 3]) -> [f64; 3] {
    std::array::from_fn(|r| m[r][0] * v[0] + m[r][1] * v[1] + m[r][2] * v[2])
}

fn multiply(a: &Matrix, b: &Matrix) -> Matrix {
    std::array::from_fn(|r| {
        std::array::from_fn(|c| a[r][0] * b[0][c] + a[r][1] * b[1][c] + a[r][2] * b[2][c])
    })
}

/// The first three points as columns, each so long that together they make the fourth.
fn basis(points: [[f64; 3]; 4]) -> Option<Matrix> {
    let columns: Matrix = std::array::from_fn(|r| std::array::from_fn(|c| points[c][r]));
    let adjugate = adjugate(&columns);
    let determinant: f64 = (0..3).map(|n| columns[0][n] * adjugate[n][0]).sum();
    let share = apply(&adjugate, points[3]);
    let least = share.iter().fold(determinant.abs(), |a, b| a.min(b.abs()));
    // Three of the four in a line leave a share of nothing.
    (least > 1e-9).then(|| {
        std::array::from_fn(|r| std::array::from_fn(|c| columns[r][c] * share[c] / determinant))
    })
}

impl Homography {
    /// What leads four points to four others; `None` where three of either lie in a line.
    ///
    /// With A the matrix of the first three points, each scaled so that their sum is the fourth, H = A′ adj(A).
    #[must_use]
    pub fn between(from: &[Spot; 4], to: &[Spot; 4]) -> Option<Homography> {
        let (from_frame, to_frame) = (Frame::about(from)?, Frame::about(to)?);
        let source = basis(from.map(|p| from_frame.take(p)))?;
        let target = basis(to.map(|p| to_frame.take(p)))?;
        let mut matrix = multiply(&target, &adjugate(&source));
        // What lies before the camera counts more than nothing.
        let [_, _, ahead] = apply(&matrix, from_frame.take(from[0]));
        for part in matrix.as_flattened_mut() {
            *part /= ahead;
        }
        Some(Homography {
            matrix,
            from: from_frame,
            to: to_frame,
        })
    }

    /// Where a place of the first plane lies in the second; `None` on the vanishing line and behind it.
    #[must_use]
    pub fn of(&self, place: Spot) -> Option<Spot> {
        let [x, y, ahead] = apply(&self.matrix, self.from.take(place));
        (ahead > 1e-9).then(|| self.to.give([x / ahead, y / ahead]))
    }

    /// The way back.
    #[must_use]
    pub fn back(&self) -> Homography {
        let matrix = adjugate(&self.matrix);
        let mut back = Homography {
            matrix,
            from: self.to,
            to: self.from,
        };
        // The sign in front of the camera is that of a place known to lie there: the image of the first frame's middle.
        let middle = apply(&self.matrix, [0.0, 0.0, 1.0]);
        let [_, _, ahead] = apply(&back.matrix, middle.map(|part| part / middle[2]));
        for part in back.matrix.as_flattened_mut() {
            *part /= ahead;
        }
        back
    }

    /// The nine numbers that lead there, row by row: x, y and the share by which both are divided.
    #[must_use]
    pub fn rows(&self) -> [[f64; 3]; 3] {
        let (from, to) = (self.from, self.to);
        let inward = [
            [1.0 / from.unit, 0.0, -from.middle[0] / from.unit],
            [0.0, 1.0 / from.unit, -from.middle[1] / from.unit],
            [0.0, 0.0, 1.0],
        ];
        let outward = [
            [to.unit, 0.0, to.middle[0]],
            [0.0, to.unit, to.middle[1]],
            [0.0, 0.0, 1.0],
        ];
        multiply(&multiply(&outward, &self.matrix), &inward)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEEN: [Spot; 4] = [
        [412.0, 300.0],
        [1650.0, 420.0],
        [1600.0, 1180.0],
        [380.0, 1300.0],
    ];
    const DOOR: [Spot; 4] = [[0.0, 0.0], [0.9, 0.0], [0.9, 2.0], [0.0, 2.0]];

    #[test]
    fn corners_lead_to_corners_and_back() {
        let there = Homography::between(&SEEN, &DOOR).unwrap();
        let rows = there.rows();
        for (seen, door) in SEEN.into_iter().zip(DOOR) {
            assert!(distance(there.of(seen).unwrap(), door) < 1e-12);
            assert!(distance(there.back().of(door).unwrap(), seen) < 1e-9);
            let [x, y, w] = apply(&rows, [seen[0], seen[1], 1.0]);
            assert!(distance([x / w, y / w], door) < 1e-12);
        }
    }

    #[test]
    fn the_middle_of_a_rectangle_is_where_its_diagonals_cross() {
        let there = Homography::between(&SEEN, &DOOR).unwrap();
        let middle = there.back().of([0.45, 1.0]).unwrap();
        assert!(turn(SEEN[0], SEEN[2], middle).abs() < 1e-6);
        assert!(turn(SEEN[1], SEEN[3], middle).abs() < 1e-6);
    }

    #[test]
    fn three_in_a_line_and_what_lies_behind_are_no_place() {
        let line = [[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [0.0, 1.0]];
        assert_eq!(Homography::between(&line, &DOOR), None);
        assert_eq!(Homography::between(&SEEN, &line), None);
        assert_eq!(Homography::between(&[[3.0, 3.0]; 4], &DOOR), None);
        let there = Homography::between(&SEEN, &DOOR).unwrap();
        // Its left and right sides meet far to the right: beyond that the wall is not seen.
        assert_eq!(there.of([9_000.0, 800.0]), None);
    }
}
