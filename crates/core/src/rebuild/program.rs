//! A linear program and its least cost: the one place that knows which solver works it out.
//!
//! Rows and columns are brought to the size of one before they are solved and the answer is put back into every row
//! afterwards: what does not hold there is an error, never an answer. Scaling is by powers of two, which change no digit.

use microlp::{ComparisonOp, Error, OptimizationDirection, Problem, Variable};

/// Something whose amount is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Cost of one of it.
    pub cost: f64,
    /// Least.
    pub low: f64,
    /// Most; may be infinite.
    pub high: f64,
}

/// A sum that has to stay within bounds.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Row {
    /// Columns that count, each once, with its factor.
    pub terms: Vec<(usize, f64)>,
    /// Least; may be minus infinity.
    pub low: f64,
    /// Most; may be infinite.
    pub high: f64,
}

/// Columns and rows: find the amounts of least cost.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Program {
    /// What is looked for.
    pub columns: Vec<Column>,
    /// What has to hold.
    pub rows: Vec<Row>,
}

/// The amounts of least cost.
#[derive(Debug, Clone, PartialEq)]
pub struct Optimum {
    /// What they cost.
    pub cost: f64,
    /// The amount of each column.
    pub amounts: Vec<f64>,
}

/// Why there is no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoOptimum {
    /// No amounts satisfy every row.
    #[error("no amounts satisfy every row")]
    Infeasible,
    /// The cost falls without end.
    #[error("the cost falls without end")]
    Unbounded,
    /// A number is none, or the arithmetic lost its digits.
    #[error("the arithmetic failed")]
    Failed,
    /// It is larger than is solved.
    #[error("more than {MOST_FIELDS} fields")]
    TooLarge,
}

/// Most fields of a program that is solved: columns times rows. The solver knows no end but an answer, so what could keep a
/// page waiting is refused beforehand.
pub const MOST_FIELDS: usize = 600_000;

impl NoOptimum {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Infeasible => "program.infeasible",
            Self::Unbounded => "program.unbounded",
            Self::Failed => "program.failed",
            Self::TooLarge => "program.too-large",
        }
    }
}

/// How far a row may miss its bound, as a share of what it adds up, before an answer is none.
const ACCURACY: f64 = 1e-7;
/// What two bounds may cross, or differ by and still be one, as a share of them.
fn tolerated(bound: f64) -> f64 {
    if bound.is_finite() { bound.abs().max(1.0) * 1e-9 } else { 0.0 }
}

/// Passes over rows and columns in which the factors of both come near one.
const PASSES: usize = 4;

impl Program {
    /// Adds a column and answers its position.
    pub fn column(&mut self, cost: f64, low: f64, high: f64) -> usize {
        self.columns.push(Column { cost, low, high });
        self.columns.len() - 1
    }

    /// Adds a row.
    pub fn row(&mut self, terms: Vec<(usize, f64)>, low: f64, high: f64) {
        self.rows.push(Row { terms, low, high });
    }

    /// The amounts of least cost. The same program always gives the same answer.
    ///
    /// *Method*: the simplex method (Dantzig, 1947), as the crate `microlp` has it.
    ///
    /// # Errors
    /// [`NoOptimum`].
    ///
    /// ```
    /// use stillroom_core::rebuild::program::Program;
    /// // Alligation: how much of a 75 % and of a 10 % solution makes 100 g of 30 %?
    /// let mut program = Program::default();
    /// let strong = program.column(1.0, 0.0, f64::INFINITY);
    /// let weak = program.column(1.0, 0.0, f64::INFINITY);
    /// program.row(vec![(strong, 1.0), (weak, 1.0)], 100.0, 100.0);
    /// program.row(vec![(strong, 0.75), (weak, 0.10)], 30.0, 30.0);
    /// let found = program.solve()?;
    /// assert!((found.amounts[strong] - 30.769).abs() < 1e-3);
    /// # Ok::<(), stillroom_core::rebuild::program::NoOptimum>(())
    /// ```
    pub fn solve(&self) -> Result<Optimum, NoOptimum> {
        if self.columns.len().saturating_mul(self.rows.len()) > MOST_FIELDS {
            return Err(NoOptimum::TooLarge);
        }
        if !self.is_sound() {
            return Err(NoOptimum::Failed);
        }
        let crossed = |low: f64, high: f64| low > high + tolerated(low).max(tolerated(high));
        let columns = self.columns.iter().any(|column| crossed(column.low, column.high));
        if columns || self.rows.iter().any(|row| crossed(row.low, row.high)) {
            return Err(NoOptimum::Infeasible);
        }
        let empty = |row: &&Row| row.terms.is_empty();
        if self.rows.iter().filter(empty).any(|row| row.low > tolerated(row.low) || row.high < -tolerated(row.high)) {
            return Err(NoOptimum::Infeasible);
        }
        // Where the digits got lost by one set of factors they need not by another: what holds in every row is an answer.
        match self.solve_scaled(&self.scales(PASSES)) {
            Err(NoOptimum::Failed) => self.solve_scaled(&self.scales(0)),
            found => found,
        }
    }

    fn solve_scaled(&self, (of_rows, of_columns): &(Vec<f64>, Vec<f64>)) -> Result<Optimum, NoOptimum> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let variables: Vec<Variable> = self
            .columns
            .iter()
            .zip(of_columns)
            .map(|(column, scale)| problem.add_var(column.cost * scale, (column.low / scale, column.high / scale)))
            .collect();
        for (row, scale) in self.rows.iter().zip(of_rows).filter(|(row, _)| !row.terms.is_empty()) {
            let terms = || row.terms.iter().map(|(at, factor)| (variables[*at], factor * of_columns[*at] * scale));
            let (low, high) = (row.low * scale, row.high * scale);
            if low.is_finite() && high.is_finite() && high - low <= tolerated(low) {
                problem.add_constraint(terms().collect::<Vec<_>>(), ComparisonOp::Eq, low);
            } else if low.is_finite() && high.is_finite() {
                // One row and a variable between the bounds, rather than two rows.
                let sum = problem.add_var(0.0, (low, high));
                problem.add_constraint(terms().chain([(sum, -1.0)]).collect::<Vec<_>>(), ComparisonOp::Eq, 0.0);
            } else if low.is_finite() {
                problem.add_constraint(terms().collect::<Vec<_>>(), ComparisonOp::Ge, low);
            } else if high.is_finite() {
                problem.add_constraint(terms().collect::<Vec<_>>(), ComparisonOp::Le, high);
            }
        }
        let solution = problem.solve().map_err(|error| match error {
            Error::Infeasible => NoOptimum::Infeasible,
            Error::Unbounded => NoOptimum::Unbounded,
            Error::InternalError(_) | Error::Limit => NoOptimum::Failed,
        })?;
        let amounts: Vec<f64> = variables
            .iter()
            .zip(of_columns)
            .zip(&self.columns)
            // A basic variable may stick out by the last digits.
            .map(|((variable, scale), column)| (solution[*variable] * scale).max(column.low).min(column.high))
            .collect();
        if !self.holds(&amounts) {
            return Err(NoOptimum::Failed);
        }
        let cost = amounts.iter().zip(&self.columns).map(|(amount, column)| amount * column.cost).sum();
        Ok(Optimum { cost, amounts })
    }

    /// Whether every number is one and every row names columns that are there, each once.
    fn is_sound(&self) -> bool {
        let bounds =
            |low: f64, high: f64| !low.is_nan() && !high.is_nan() && low < f64::INFINITY && high > f64::NEG_INFINITY;
        let columns = self.columns.iter().all(|column| column.cost.is_finite() && bounds(column.low, column.high));
        let mut met = vec![usize::MAX; self.columns.len()];
        columns
            && self.rows.iter().enumerate().all(|(place, row)| {
                bounds(row.low, row.high)
                    && row.terms.iter().all(|(at, factor)| {
                        let new = met.get(*at).is_some_and(|last| *last != place);
                        if new {
                            met[*at] = place;
                        }
                        new && factor.is_finite()
                    })
            })
    }

    /// Factors for rows and columns that bring what is solved near one: the geometric mean of the largest and the smallest,
    /// as the next power of two.
    fn scales(&self, passes: usize) -> (Vec<f64>, Vec<f64>) {
        let mut rows = vec![1.0_f64; self.rows.len()];
        let mut columns = vec![1.0_f64; self.columns.len()];
        for _ in 0..passes {
            for (row, scale) in self.rows.iter().zip(&mut rows) {
                let sizes = row.terms.iter().map(|(at, factor)| (factor * columns[*at]).abs());
                *scale = balance(sizes).unwrap_or(*scale);
            }
            let mut sizes = vec![(f64::INFINITY, 0.0_f64); self.columns.len()];
            for (row, scale) in self.rows.iter().zip(&rows) {
                for (at, factor) in row.terms.iter().filter(|(_, factor)| *factor != 0.0) {
                    let size = (factor * scale).abs();
                    sizes[*at] = (sizes[*at].0.min(size), sizes[*at].1.max(size));
                }
            }
            for ((low, high), scale) in sizes.into_iter().zip(&mut columns) {
                *scale = balance([low, high].into_iter().filter(|size| *size > 0.0)).unwrap_or(*scale);
            }
        }
        (rows, columns)
    }

    /// Whether amounts satisfy every row, as far as binary fractions can tell.
    fn holds(&self, amounts: &[f64]) -> bool {
        amounts.iter().all(|amount| amount.is_finite())
            && self.rows.iter().all(|row| {
                let mut sum = 0.0;
                let mut size = 0.0_f64;
                for (at, factor) in &row.terms {
                    sum += factor * amounts[*at];
                    size = size.max((factor * amounts[*at]).abs());
                }
                let bound = [row.low, row.high]
                    .into_iter()
                    .filter(|bound| bound.is_finite())
                    .fold(0.0_f64, |a, b| a.max(b.abs()));
                let largest = row.terms.iter().fold(0.0_f64, |largest, (_, factor)| largest.max(factor.abs()));
                let off = (row.low - sum).max(sum - row.high);
                off <= ACCURACY * size.max(bound).max(largest)
            })
    }
}

/// The power of two nearest to one over the geometric mean of the largest and smallest of some sizes.
fn balance(sizes: impl Iterator<Item = f64>) -> Option<f64> {
    let (low, high) = sizes
        .filter(|size| *size > 0.0 && size.is_finite())
        .fold((f64::INFINITY, 0.0_f64), |(low, high), size| (low.min(size), high.max(size)));
    (high > 0.0).then(|| (-(low * high).sqrt().log2()).round().exp2())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_contradicts_itself_is_infeasible_and_what_falls_for_ever_unbounded() {
        let mut program = Program::default();
        let only = program.column(-1.0, 0.0, f64::INFINITY);
        assert_eq!(program.solve(), Err(NoOptimum::Unbounded));
        program.row(vec![(only, 1.0)], 2.0, 3.0);
        assert!((program.solve().unwrap().amounts[only] - 3.0).abs() < 1e-9);
        program.row(vec![(only, 1.0)], f64::NEG_INFINITY, 1.0);
        assert_eq!(program.solve(), Err(NoOptimum::Infeasible));
        program.rows[1].terms.clear();
        assert!(program.solve().is_ok(), "nothing is less than one");
        program.rows[1].low = 1.0;
        assert_eq!(program.solve(), Err(NoOptimum::Infeasible), "and not at least one");
    }

    #[test]
    fn what_is_no_number_or_no_column_fails() {
        let mut program = Program::default();
        let only = program.column(f64::NAN, 0.0, 1.0);
        assert_eq!(program.solve(), Err(NoOptimum::Failed));
        program.columns[only].cost = 1.0;
        program.row(vec![(only, 1.0), (only, 1.0)], 0.0, 1.0);
        assert_eq!(program.solve(), Err(NoOptimum::Failed), "a column twice");
        program.rows[0].terms = vec![(7, 1.0)];
        assert_eq!(program.solve(), Err(NoOptimum::Failed), "no such column");
    }

    #[test]
    fn what_is_larger_than_is_solved_is_refused_at_once() {
        let mut program = Program::default();
        let only = program.column(1.0, 0.0, 1.0);
        program.row(vec![(only, 1.0)], 0.0, 1.0);
        assert!(program.solve().is_ok());
        program.rows.resize(MOST_FIELDS + 1, program.rows[0].clone());
        assert_eq!(program.solve(), Err(NoOptimum::TooLarge));
    }
}
