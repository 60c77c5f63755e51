//! A Cholesky factor that keeps only what lies between the first entry of a row and its diagonal.
//!
//! Along a walk each station is tied to the one before it, so the rows of the normal matrix are
//! short and stay so when factored; only a check across the house makes a long one. An outline of
//! two hundred legs is factored in the time of a few thousand products, not of ten million.
//! After Jennings, *A compact storage scheme for the solution of symmetric linear simultaneous
//! equations*, 1966, from memory.

use nalgebra::{DMatrix, DVector};

/// Lower factor of a symmetric matrix, row by row.
pub(super) struct Envelope {
    rows: Vec<Row>,
}

/// A row of the factor: its entries from column `first` to the diagonal.
struct Row {
    first: usize,
    entries: Vec<f64>,
}

impl Row {
    fn diagonal(&self) -> f64 {
        self.entries.last().copied().unwrap_or(0.0)
    }

    /// The entries from column `from` to before column `to`.
    fn between(&self, from: usize, to: usize) -> &[f64] {
        &self.entries[from - self.first..to - self.first]
    }
}

impl Envelope {
    /// Factors a symmetric matrix, of which the upper half is read: its columns lie in a row. None
    /// where a pivot is not above 0.
    pub fn factor(matrix: &DMatrix<f64>) -> Option<Envelope> {
        let mut rows: Vec<Row> = Vec::with_capacity(matrix.nrows());
        for i in 0..matrix.nrows() {
            let column = matrix.column(i);
            let above = column.rows(0, i);
            let first = above.iter().position(|a| a.abs() > 0.0).unwrap_or(i);
            let mut row = Row {
                first,
                entries: Vec::with_capacity(i + 1 - first),
            };
            for j in first..i {
                let above = &rows[j];
                let from = first.max(above.first);
                let taken = dot(row.between(from, j), above.between(from, j));
                row.entries
                    .push((matrix[(i, j)] - taken) / above.diagonal());
            }
            let pivot = column[i] - dot(&row.entries, &row.entries);
            if pivot.is_nan() || pivot <= 0.0 {
                return None;
            }
            row.entries.push(pivot.sqrt());
            rows.push(row);
        }
        Some(Envelope { rows })
    }

    /// Squares of the factor's diagonal: the pivots of the elimination.
    pub fn pivots(&self) -> impl Iterator<Item = f64> {
        self.rows.iter().map(|row| row.diagonal().powi(2))
    }

    /// The solution of matrix times x is `right`.
    pub fn solve(&self, right: &DVector<f64>) -> DVector<f64> {
        let mut x = right.clone();
        self.solve_from(0, x.as_mut_slice());
        x
    }

    /// The inverse of the matrix.
    pub fn inverse(&self) -> DMatrix<f64> {
        let n = self.rows.len();
        let mut inverse = DMatrix::zeros(n, n);
        for k in 0..n {
            inverse[(k, k)] = 1.0;
            // Columns lie one after the other.
            self.solve_from(k, &mut inverse.as_mut_slice()[k * n..(k + 1) * n]);
        }
        inverse
    }

    /// Solves in place; `x` is 0 before entry `start`.
    fn solve_from(&self, start: usize, x: &mut [f64]) {
        for i in start..self.rows.len() {
            let row = &self.rows[i];
            let from = row.first.max(start);
            if from < i {
                x[i] -= dot(row.between(from, i), &x[from..i]);
            }
            x[i] /= row.diagonal();
        }
        for (i, row) in self.rows.iter().enumerate().rev() {
            x[i] /= row.diagonal();
            let found = x[i];
            for (x, entry) in x[row.first..i].iter_mut().zip(&row.entries) {
                *x -= entry * found;
            }
        }
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A chain of `n` with a tie from its start to its end.
    fn chain(n: usize) -> DMatrix<f64> {
        DMatrix::from_fn(n, n, |i, j| {
            if i == j {
                4.0 + i as f64 / 10.0
            } else if i.abs_diff(j) == 1 {
                -1.0
            } else if i.abs_diff(j) == n - 1 {
                -0.5
            } else {
                0.0
            }
        })
    }

    #[test]
    fn a_factor_solves_and_inverts() {
        let matrix = chain(12);
        let factor = Envelope::factor(&matrix).expect("positive");
        let right = DVector::from_fn(12, |i, _| i as f64 - 3.0);
        assert!((&matrix * factor.solve(&right) - right).amax() < 1e-12);
        let one = &matrix * factor.inverse();
        assert!((one - DMatrix::identity(12, 12)).amax() < 1e-12);
    }

    #[test]
    fn pivots_multiply_to_the_determinant() {
        let matrix = chain(6);
        let factor = Envelope::factor(&matrix).expect("positive");
        let product: f64 = factor.pivots().product();
        assert!((product / matrix.determinant() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_matrix_without_a_pivot_has_no_factor() {
        let mut matrix = chain(5);
        matrix[(3, 3)] = 0.0;
        assert!(Envelope::factor(&matrix).is_none());
    }

    #[test]
    fn rows_of_a_chain_stay_short() {
        let factor = Envelope::factor(&chain(200)).expect("positive");
        let short = factor.rows.iter().filter(|row| row.entries.len() <= 2);
        assert_eq!(short.count(), 199);
    }
}
