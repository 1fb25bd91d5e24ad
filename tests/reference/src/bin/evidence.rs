//! Prints every set of outside values the core is held to: set, source, cases, worst deviation, tolerance.
//!
//! With `--json` the same as an array of objects. Ends with 1 if a set fails.

use std::process::ExitCode;
use stillroom_reference::{EvidenceSet, collect};

fn main() -> ExitCode {
    let sets = collect();
    if std::env::args().skip(1).any(|argument| argument == "--json") {
        match serde_json::to_string_pretty(&sets) {
            Ok(json) => println!("{json}"),
            Err(error) => {
                eprintln!("{error}");
                return ExitCode::FAILURE;
            }
        }
    } else {
        print_table(&sets);
    }
    if sets.iter().all(EvidenceSet::holds) { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

fn print_table(sets: &[EvidenceSet]) {
    let name_width = sets.iter().map(|set| set.set.len()).max().unwrap_or(0);
    let unit_width = sets.iter().map(|set| set.unit.chars().count()).max().unwrap_or(0);
    println!(
        "     {:name_width$} {:>6} {:>10} {:>10} {:unit_width$} source",
        "set", "cases", "worst", "tolerance", "unit"
    );
    for set in sets {
        println!(
            "{:4} {:name_width$} {:>6} {:>10} {:>10} {:unit_width$} {}",
            if set.holds() { "ok" } else { "FAIL" },
            set.set,
            set.cases,
            round_to_three_digits(set.worst),
            round_to_three_digits(set.tolerance),
            set.unit,
            set.source
        );
    }
}

/// Three significant digits, in plain notation where that stays short.
fn round_to_three_digits(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    if !(1e-6..1e6).contains(&value.abs()) {
        return format!("{value:.2e}");
    }
    let rounded: f64 = format!("{value:.2e}").parse().unwrap_or(value);
    format!("{rounded}")
}
