//! Small symmetric systems of equations, solved by Cholesky's square root.

/// A symmetric matrix that is more than nothing in every direction, as its lower root.
pub(super) struct Root {
    size: usize,
    /// Rows of the lower triangle, one after another.
    rows: Vec<f64>,
}

/// A row that the others leave without a figure of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Open(pub usize);

/// What is left of a row's own figure when it counts as nothing: what rounding leaves of one that is nothing.
const NOTHING: f64 = 1e-11;

fn place(row: usize, column: usize) -> usize {
    row * (row + 1) / 2 + column
}

/// A symmetric matrix being summed up, its lower triangle.
pub(super) struct Sums {
    size: usize,
    rows: Vec<f64>,
}

impl Sums {
    pub fn new(size: usize) -> Sums {
        Sums {
            size,
            rows: vec![0.0; size * (size + 1) / 2],
        }
    }

    /// Adds `weight · row · rowᵀ`, the row given by its few figures.
    pub fn add(&mut self, row: &[(usize, f64)], weight: f64) {
        for &(i, a) in row {
            for &(j, b) in row {
                if j <= i {
                    self.rows[place(i, j)] += weight * a * b;
                }
            }
        }
    }

    /// Its lower root, or the first row without one.
    pub fn root(self) -> Result<Root, Open> {
        let Sums { size, mut rows } = self;
        for row in 0..size {
            let own = rows[place(row, row)];
            for column in 0..=row {
                let mut sum = rows[place(row, column)];
                for k in 0..column {
                    sum -= rows[place(row, k)] * rows[place(column, k)];
                }
                if column < row {
                    rows[place(row, column)] = sum / rows[place(column, column)];
                } else if sum > own * NOTHING && sum.is_finite() {
                    rows[place(row, row)] = sum.sqrt();
                } else {
                    return Err(Open(row));
                }
            }
        }
        Ok(Root { size, rows })
    }
}

impl Root {
    /// Solves for one right side, in place.
    pub fn solve(&self, side: &mut [f64]) {
        for row in 0..self.size {
            for k in 0..row {
                side[row] -= self.rows[place(row, k)] * side[k];
            }
            side[row] /= self.rows[place(row, row)];
        }
        for row in (0..self.size).rev() {
            for k in row + 1..self.size {
                side[row] -= self.rows[place(k, row)] * side[k];
            }
            side[row] /= self.rows[place(row, row)];
        }
    }

    /// The inverse, whole.
    pub fn inverse(&self) -> Vec<Vec<f64>> {
        let column = |at: usize| {
            let mut side = vec![0.0; self.size];
            side[at] = 1.0;
            self.solve(&mut side);
            side
        };
        (0..self.size).map(column).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sums(rows: &[&[f64]]) -> Sums {
        let mut sums = Sums::new(rows[0].len());
        for row in rows {
            let row: Vec<_> = row.iter().copied().enumerate().collect();
            sums.add(&row, 1.0);
        }
        sums
    }

    /// By hand: (1 1)(1 1)ᵀ + (1 −1)(1 −1)ᵀ = 2 on the diagonal.
    #[test]
    fn a_system_is_solved_and_one_without_an_answer_is_told() {
        let root = sums(&[&[1.0, 1.0], &[1.0, -1.0]])
            .root()
            .unwrap_or_else(|_| unreachable!());
        let mut side = [4.0, 6.0];
        root.solve(&mut side);
        assert!((side[0] - 2.0).abs() < 1e-12 && (side[1] - 3.0).abs() < 1e-12);
        assert!((root.inverse()[1][1] - 0.5).abs() < 1e-12);
        let open = sums(&[&[1.0, 1.0], &[2.0, 2.0]]).root();
        assert_eq!(open.err(), Some(Open(1)));
    }
}
