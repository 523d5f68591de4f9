//! One round of fitting a plane to lengths that were taped in it.

/// One round of the fit.
pub(super) struct Round {
    /// By how much each known length is more than is believed.
    off: Vec<f64>,
    /// The inverse of how uncertain they are together.
    inverse: Vec<f64>,
    /// How each moves with everything believed.
    with: Vec<Vec<f64>>,
}

impl Round {
    /// From how each known length changes with everything believed, as slopes and times its variance; its own spread, and
    /// by how much it is more than is believed. `None` where they cannot be told apart.
    pub fn new(
        slopes: &[Vec<f64>],
        with: Vec<Vec<f64>>,
        own: &[f64],
        off: Vec<f64>,
    ) -> Option<Round> {
        let m = off.len();
        let mut normal = vec![0.0; m * m];
        for (r, slope) in slopes.iter().enumerate() {
            for (c, with) in with.iter().enumerate() {
                normal[r * m + c] = dot(slope, with);
            }
            normal[r * m + r] += own[r].powi(2).max(1e-14);
        }
        let inverse = inverted(&normal, m)?;
        Some(Round { off, inverse, with })
    }

    /// What each known length pulls with.
    fn weights(&self) -> Vec<f64> {
        let m = self.off.len().max(1);
        let rows = self.inverse.chunks(m);
        rows.map(|row| dot(row, &self.off)).collect()
    }

    /// By how many standard deviations each differs from what all the others say: `(Q⁻¹ v)ᵢ ÷ √(Q⁻¹)ᵢᵢ`.
    pub fn misfits(&self) -> Vec<f64> {
        let m = self.off.len();
        let weights = self.weights().into_iter().enumerate();
        weights
            .map(|(at, weight)| weight / self.inverse[at * m + at].max(1e-300).sqrt())
            .collect()
    }

    /// What is believed with them.
    pub fn state(&self, prior: &[f64]) -> Vec<f64> {
        let mut next = prior.to_vec();
        for (weight, with) in self.weights().iter().zip(&self.with) {
            for (place, with) in next.iter_mut().zip(with) {
                *place += with * weight;
            }
        }
        next
    }

    /// How much surer everything is by them.
    pub fn surer(&self, sure: &mut [f64], n: usize) {
        let m = self.off.len();
        for (r, row) in sure.chunks_mut(n).enumerate() {
            for (c, sure) in row.iter_mut().enumerate() {
                for (a, with_a) in self.with.iter().enumerate() {
                    let part: f64 = (0..m)
                        .map(|b| self.inverse[a * m + b] * self.with[b][c])
                        .sum();
                    *sure -= with_a[r] * part;
                }
            }
        }
    }
}

/// The sum of products.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// The inverse of a matrix of so many rows, by elimination with the largest pivot; `None` where it has none.
fn inverted(matrix: &[f64], n: usize) -> Option<Vec<f64>> {
    let mut left = matrix.to_vec();
    let mut right = vec![0.0; n * n];
    for at in 0..n {
        right[at * n + at] = 1.0;
    }
    for column in 0..n {
        let pivot = (column..n).max_by(|a, b| {
            left[a * n + column]
                .abs()
                .total_cmp(&left[b * n + column].abs())
        })?;
        if left[pivot * n + column].abs() < 1e-300 {
            return None;
        }
        for c in 0..n {
            left.swap(pivot * n + c, column * n + c);
            right.swap(pivot * n + c, column * n + c);
        }
        let by = left[column * n + column];
        for c in 0..n {
            left[column * n + c] /= by;
            right[column * n + c] /= by;
        }
        for r in (0..n).filter(|r| *r != column) {
            let by = left[r * n + column];
            for c in 0..n {
                left[r * n + c] -= by * left[column * n + c];
                right[r * n + c] -= by * right[column * n + c];
            }
        }
    }
    Some(right)
}
