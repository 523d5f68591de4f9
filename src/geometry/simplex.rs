//! A linear program of few rows: how many tiles of each set of shapes cover all pieces with fewest tiles.

/// What the program gives.
pub(super) struct Solved {
    /// Whole tiles of each set that it takes.
    pub times: Vec<usize>,
    /// What a piece of each shape weighs.
    pub weights: Vec<i64>,
    /// The most that a set weighs.
    pub most: i64,
    /// Tiles that any plan takes: all pieces by weight, over the most that a tile carries.
    pub at_least: usize,
}

/// What a whole tile weighs before rounding.
const TILE: f64 = 1e9;
/// Most exchanges; where they do not end before, the bound still holds.
const EXCHANGES: usize = 600;

/// Fewest tiles that cover so many pieces of each shape, parts of a tile allowed; its prices are the weights.
///
/// The bound is recomputed in whole numbers from the weights and every set, so that no rounding can spoil it.
pub(super) fn weights(counts: &[usize], sets: &[Vec<usize>]) -> Solved {
    let rows = counts.len();
    // The basis: one column a row, at first a tile for each piece alone.
    let mut inverse: Vec<Vec<f64>> = (0..rows)
        .map(|row| (0..rows).map(|c| f64::from(u8::from(row == c))).collect())
        .collect();
    let mut amount: Vec<f64> = counts.iter().map(|n| *n as f64).collect();
    let mut basis: Vec<Column> = (0..rows).map(Column::Alone).collect();
    let mut price = vec![1.0; rows];
    for _ in 0..EXCHANGES {
        // Prices: what the basis pays for one more piece of each shape.
        for (column, price) in price.iter_mut().enumerate() {
            let paid = (0..rows).map(|row| basis[row].cost() * inverse[row][column]);
            *price = paid.sum();
        }
        let Some(enters) = entering(sets, &price) else {
            break;
        };
        let along: Vec<f64> = inverse.iter().map(|row| enters.times(row, sets)).collect();
        let leaves = (0..rows)
            .filter(|row| along[*row] > 1e-9)
            .min_by(|a, b| (amount[*a] / along[*a]).total_cmp(&(amount[*b] / along[*b])));
        let Some(leaves) = leaves else { break };
        exchange(&mut inverse, &mut amount, &along, leaves);
        basis[leaves] = enters;
    }
    let weights: Vec<i64> = price
        .iter()
        .map(|p| (p.max(0.0) * TILE).floor() as i64)
        .collect();
    let weigh = |set: &Vec<usize>| set.iter().map(|n| weights[*n]).sum::<i64>();
    let most = sets.iter().map(weigh).max().unwrap_or(0).max(1);
    let all: i128 = (counts.iter().zip(&weights))
        .map(|(n, weight)| *n as i128 * i128::from(*weight))
        .sum();
    let at_least = all / i128::from(most) + i128::from(all % i128::from(most) > 0);
    let mut times = vec![0; sets.len()];
    for (column, amount) in basis.iter().zip(&amount) {
        if let Column::Set(n) = column {
            times[*n] = (amount + 1e-6).floor().max(0.0) as usize;
        }
    }
    Solved {
        times,
        weights,
        most,
        at_least: usize::try_from(at_least).unwrap_or(0),
    }
}

/// A column of the program.
#[derive(Clone, Copy)]
enum Column {
    /// One piece on a tile of its own.
    Alone(usize),
    /// A set of shapes on a tile.
    Set(usize),
    /// A piece more than is needed, for nothing.
    Spare(usize),
}

impl Column {
    fn cost(self) -> f64 {
        match self {
            Column::Alone(_) | Column::Set(_) => 1.0,
            Column::Spare(_) => 0.0,
        }
    }
    /// A row times this column.
    fn times(self, row: &[f64], sets: &[Vec<usize>]) -> f64 {
        match self {
            Column::Alone(n) => row[n],
            Column::Set(n) => sets[n].iter().map(|shape| row[*shape]).sum(),
            Column::Spare(n) => -row[n],
        }
    }
}

/// The column that saves most.
fn entering(sets: &[Vec<usize>], price: &[f64]) -> Option<Column> {
    let worth = |set: &Vec<usize>| set.iter().map(|n| price[*n]).sum::<f64>() - 1.0;
    let of_sets = sets
        .iter()
        .enumerate()
        .map(|(n, set)| (worth(set), Column::Set(n)));
    let spare = price
        .iter()
        .enumerate()
        .map(|(n, price)| (-price, Column::Spare(n)));
    of_sets
        .chain(spare)
        .filter(|(worth, _)| *worth > 1e-9)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, column)| column)
}

/// Takes a column into the basis for that of a row.
fn exchange(inverse: &mut [Vec<f64>], amount: &mut [f64], along: &[f64], leaves: usize) {
    let by = along[leaves];
    for value in &mut inverse[leaves] {
        *value /= by;
    }
    amount[leaves] /= by;
    let (pivot, moved) = (inverse[leaves].clone(), amount[leaves]);
    for row in 0..inverse.len() {
        if row != leaves && along[row] != 0.0 {
            for (value, pivot) in inverse[row].iter_mut().zip(&pivot) {
                *value -= along[row] * pivot;
            }
            amount[row] -= along[row] * moved;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_weights_prove_what_areas_cannot() {
        // Five pieces of which any two fit on a tile, never three: three tiles, whatever their areas are.
        let sets = vec![vec![0, 0]];
        assert_eq!(weights(&[5], &sets).at_least, 3);
        // A ring of five shapes, each fitting beside its two neighbours alone: 2 1/2 tiles, so three.
        let ring: Vec<Vec<usize>> = (0..5).map(|n| vec![n, (n + 1) % 5]).collect();
        let solved = weights(&[1; 5], &ring);
        assert_eq!(solved.at_least, 3);
        // Of a hundred each the halves come out even: 250.
        let solved = weights(&[100; 5], &ring);
        assert_eq!(solved.at_least, 250);
        assert_eq!(solved.times.iter().sum::<usize>(), 250);
    }
}
