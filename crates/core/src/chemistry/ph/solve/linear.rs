//! The linear equations of one step: small, positive definite, and with unknowns that may not be there.

use super::UNKNOWNS;

pub(super) type Matrix = [[f64; UNKNOWNS]; UNKNOWNS];

/// Cholesky's factor of a positive definite matrix, worked out with its diagonal brought to 1 so that large and small
/// amounts stand beside each other. Of the unknowns that are not there the factor holds nothing.
pub(super) fn factorise(matrix: &Matrix, there: &[usize]) -> Option<Matrix> {
    let mut scaling = [0.0; UNKNOWNS];
    for &at in there {
        scaling[at] = if matrix[at][at] > 0.0 { 1.0 / matrix[at][at].sqrt() } else { return None };
    }
    let mut factor = [[0.0; UNKNOWNS]; UNKNOWNS];
    for (place, &row) in there.iter().enumerate() {
        for &column in &there[..=place] {
            let mut left = matrix[row][column] * scaling[row] * scaling[column];
            for &at in there.iter().take_while(|&&at| at < column) {
                left -= factor[row][at] * factor[column][at];
            }
            factor[row][column] = if row == column { left.max(1e-14).sqrt() } else { left / factor[column][column] };
        }
    }
    // Rows are brought back to the scale of the matrix.
    for &row in there {
        for cell in &mut factor[row] {
            *cell /= scaling[row];
        }
    }
    Some(factor)
}

/// Solves with a factor of [`factorise`].
pub(super) fn substitute(factor: &Matrix, right: &[f64; UNKNOWNS], there: &[usize]) -> [f64; UNKNOWNS] {
    let mut half = [0.0; UNKNOWNS];
    for &row in there {
        let known: f64 = there.iter().take_while(|&&at| at < row).map(|&at| factor[row][at] * half[at]).sum();
        half[row] = (right[row] - known) / factor[row][row];
    }
    let mut whole = [0.0; UNKNOWNS];
    for &row in there.iter().rev() {
        let known: f64 = there.iter().rev().take_while(|&&at| at > row).map(|&at| factor[at][row] * whole[at]).sum();
        whole[row] = (half[row] - known) / factor[row][row];
    }
    whole
}
