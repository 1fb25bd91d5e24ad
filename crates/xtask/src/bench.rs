//! Runs the benchmarks of `tests/bench`, in Node over the built seam and in a browser over the built page, and collects
//! what they print.

use crate::site::{self, Form};
use crate::toolchain;
use crate::workspace::{Workspace, capture, ending, files_below, say};
use anyhow::{Context, Result, bail};
use serde::{Deserialize, Serialize};
use std::fmt::Write as _;
use std::process::Command;

const FOLDER: &str = "tests/bench";
/// What the benchmarks share; it measures nothing itself.
const HARNESS: &str = "harness.mjs";

/// One benchmark's times in milliseconds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Times {
    name: String,
    median_ms: f64,
    mean_ms: f64,
    p99_ms: f64,
}

/// Builds the site and runs every benchmark, or those whose file name contains a word.
pub fn measure(workspace: &Workspace, only: Option<&str>) -> Result<Vec<Times>> {
    let built = site::build(workspace, Form::Released)?;
    let node = toolchain::ensure_node_packages(workspace)?;
    let browser = toolchain::chromium();
    toolchain::ensure_programs(&[(&browser, "chromium")])?;
    let site = workspace.dist().join(format!("v-{}", built.version));
    let mut times = Vec::new();
    for file in files_below(&workspace.path(FOLDER))? {
        if ending(&file) != "mjs" || file == HARNESS || only.is_some_and(|word| !file.contains(word)) {
            continue;
        }
        say(&format!("measuring {file}"));
        let mut command = Command::new(&node);
        command.current_dir(&workspace.root).arg(format!("{FOLDER}/{file}"));
        command.env("STILLROOM_BUILT", &site).env("CHROME_PATH", &browser);
        let found = collect(&capture(&mut command)?).with_context(|| format!("{FOLDER}/{file}"))?;
        if found.is_empty() {
            bail!("{FOLDER}/{file} measured nothing");
        }
        times.extend(found);
    }
    Ok(times)
}

/// Reads the harness's lines: one JSON object each. Anything else a benchmark prints is not a result.
fn collect(printed: &str) -> Result<Vec<Times>> {
    printed
        .lines()
        .filter(|line| line.starts_with('{'))
        .map(|line| serde_json::from_str(line).with_context(|| format!("`{line}` is no result")))
        .collect()
}

/// The results as a table.
pub fn table(times: &[Times]) -> String {
    let width = times.iter().map(|times| times.name.len()).max().unwrap_or(0).max(9);
    let mut table = format!("{:<width$} {:>11} {:>11} {:>11}\n", "benchmark", "median ms", "mean ms", "p99 ms");
    for Times { name, median_ms, mean_ms, p99_ms } in times {
        let _ = writeln!(table, "{name:<width$} {median_ms:>11.4} {mean_ms:>11.4} {p99_ms:>11.4}");
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_are_the_lines_that_are_json() {
        let printed = "warming up\n{\"name\":\"edit\",\"median_ms\":0.05,\"mean_ms\":0.06,\"p99_ms\":0.2}\n";
        let times = collect(printed).unwrap();
        assert_eq!(times.len(), 1);
        assert!(table(&times).contains("edit") && table(&times).contains("0.0500"));
        assert!(collect("{\"name\":\"edit\"}").is_err());
    }
}
