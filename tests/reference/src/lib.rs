//! Published values and worked examples the core is held to.
//!
//! Each module owns one or more sets of outside values: it reads them from `data/`, runs the core on every row and
//! answers an [`EvidenceSet`] with the worst deviation found. A row that cannot be read or computed ends the run: a set
//! never grows smaller silently.
//!
//! To add a set: a module with `pub fn evidence() -> Vec<EvidenceSet>`, a line in [`SETS`], and a test that calls
//! [`hold`] with the number of cases the fixture has today.

use serde::Serialize;
use serde::de::DeserializeOwned;

pub mod arithmetic;
pub mod bench_run;
pub mod catalogue_chemistry;
pub mod catalogue_oils;
pub mod costs;
pub mod emulsions;
pub mod findings_chemistry;
pub mod formulas;
pub mod glycerol;
pub mod labels;
pub mod limits;
pub mod ph;
pub mod preservation;
pub mod rebuilding;
pub mod second_table;
pub mod solutions;

/// Every module's sets, in the order they are printed.
pub const SETS: &[fn() -> Vec<EvidenceSet>] = &[
    arithmetic::evidence,
    catalogue_oils::evidence,
    catalogue_chemistry::evidence,
    second_table::evidence,
    findings_chemistry::evidence,
    glycerol::evidence,
    solutions::evidence,
    bench_run::evidence,
    emulsions::evidence,
    limits::evidence,
    preservation::evidence,
    formulas::evidence,
    ph::evidence,
    rebuilding::evidence,
    labels::evidence,
    costs::evidence,
];

/// What a comparison with one set of outside values found.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct EvidenceSet {
    /// Name of the set, as `glycerol.density`.
    pub set: &'static str,
    /// Who published the values, and how many were read there, computed from a published formula or recalled.
    pub source: String,
    /// How many comparisons were made.
    pub cases: usize,
    /// Largest deviation found, in `unit`.
    pub worst: f64,
    /// Largest deviation accepted, in `unit`.
    pub tolerance: f64,
    /// Unit of both.
    pub unit: &'static str,
}

impl EvidenceSet {
    /// A set of what a comparison found.
    #[must_use]
    pub fn of(set: &'static str, source: String, worst: Worst, tolerance: f64, unit: &'static str) -> Self {
        Self { set, source, cases: worst.cases, worst: worst.deviation, tolerance, unit }
    }

    /// Whether something was compared and nothing deviates by more than the tolerance.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.cases > 0 && self.worst <= self.tolerance
    }
}

/// Runs every set.
#[must_use]
pub fn collect() -> Vec<EvidenceSet> {
    SETS.iter().flat_map(|set| set()).collect()
}

/// Fails the test unless each named set holds with at least the expected number of cases, and no other set is there.
///
/// # Panics
/// That is its purpose.
pub fn hold(found: &[EvidenceSet], expected: &[(&str, usize)]) {
    let names: Vec<_> = found.iter().map(|set| set.set).collect();
    let wanted: Vec<_> = expected.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, wanted, "the sets of this module");
    for (set, (_, cases)) in found.iter().zip(expected) {
        assert!(set.cases >= *cases, "{}: {} cases, expected {cases}", set.set, set.cases);
        assert!(set.holds(), "{}: worst {} {} against {}", set.set, set.worst, set.unit, set.tolerance);
    }
}

/// The rows of a fixture.
///
/// # Panics
/// If a row does not parse, naming the row.
#[must_use]
pub fn rows<Row: DeserializeOwned>(name: &str, fixture: &str) -> Vec<Row> {
    csv::Reader::from_reader(fixture.as_bytes())
        .deserialize()
        .enumerate()
        .map(|(index, row)| row.unwrap_or_else(|error| panic!("{name}, row {}: {error}", index + 1)))
        .collect()
}

/// Keeps the largest deviation and counts comparisons.
#[derive(Debug, Clone, Copy, Default)]
pub struct Worst {
    /// Comparisons made.
    pub cases: usize,
    /// Largest deviation so far.
    pub deviation: f64,
}

impl Worst {
    /// Counts one comparison. What is not a number counts as an infinite deviation.
    pub fn see(&mut self, deviation: f64) {
        self.cases += 1;
        let size = if deviation.is_nan() { f64::INFINITY } else { deviation.abs() };
        self.deviation = self.deviation.max(size);
    }
}

/// How each basis is represented in a set, for its source text: `29 published, 5 memory`.
#[must_use]
pub fn count_bases<'a>(bases: impl Iterator<Item = &'a str>) -> String {
    let mut counts = std::collections::BTreeMap::<&str, usize>::new();
    for basis in bases {
        *counts.entry(basis).or_default() += 1;
    }
    let mut counts: Vec<_> = counts.into_iter().collect();
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counts.iter().map(|(basis, count)| format!("{count} {basis}")).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(cases: usize, worst: f64) -> EvidenceSet {
        EvidenceSet { set: "a.set", source: String::new(), cases, worst, tolerance: 0.5, unit: "g" }
    }

    #[test]
    fn a_set_holds_only_if_something_was_compared_and_nothing_deviates_too_far() {
        assert!(set(3, 0.5).holds());
        assert!(!set(3, 0.51).holds());
        assert!(!set(3, f64::NAN).holds());
        assert!(!set(0, 0.0).holds());
    }

    #[test]
    fn what_is_not_a_number_is_the_worst_deviation() {
        let mut worst = Worst::default();
        worst.see(-2.0);
        worst.see(1.0);
        assert!(worst.cases == 2 && (worst.deviation - 2.0).abs() < f64::EPSILON);
        worst.see(f64::NAN);
        assert!(worst.deviation.is_infinite());
    }

    #[test]
    #[should_panic(expected = "numbers, row 2")]
    fn a_row_that_does_not_parse_ends_the_run() {
        let _ = rows::<(f64, f64)>("numbers", "a,b\n1,2\n1,x\n");
    }

    #[test]
    fn names_of_sets_are_unique() {
        let mut names: Vec<_> = collect().iter().map(|set| set.set).collect();
        names.sort_unstable();
        let before = names.len();
        names.dedup();
        assert_eq!(names.len(), before);
    }
}
