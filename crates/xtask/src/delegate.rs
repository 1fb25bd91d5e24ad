//! Commands that other programs of the repository answer: the evidence table, the state of the catalogue, fuzzing.

use crate::workspace::{Workspace, capture, run, say};
use anyhow::{Context, Result, bail};
use std::process::{Command, ExitCode};

/// Runs a binary of the workspace with arguments, its output being ours, and passes its exit code on.
pub fn run_binary(workspace: &Workspace, package: &str, binary: &str, arguments: &[String]) -> Result<ExitCode> {
    if !workspace.has_binary(package, binary) {
        bail!("{package} has no binary `{binary}` yet");
    }
    let mut command = workspace.cargo("run");
    command.args(["--quiet", "--package", package, "--bin", binary, "--"]).args(arguments);
    let status = command.status().with_context(|| format!("`{binary}` could not be started"))?;
    Ok(if status.success() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Longest one input may take, in seconds.
const LONGEST_INPUT: u32 = 5;
/// Largest input, in bytes. What a limit is about is tested for itself.
const LARGEST_INPUT: u32 = 4096;

/// Runs every fuzz target for some seconds each, from the kept corpus on, and says how many inputs each was given.
///
/// A target fails when something panics, takes longer than five seconds for one input, or holds more than 64 MB.
pub fn fuzz(workspace: &Workspace, seconds: u32) -> Result<u64> {
    let targets = fuzz_targets(workspace);
    if targets.is_empty() {
        bail!("there are no fuzz targets in tests/fuzz");
    }
    ensure_fuzzer(workspace)?;
    // The fuzzer resolves for itself and would write a lock that is behind anew.
    let mut locked = workspace.cargo("metadata");
    capture(locked.args(["--format-version", "1", "--manifest-path", "tests/fuzz/Cargo.toml"]))
        .context("tests/fuzz/Cargo.lock is behind: run `cargo update --workspace` in tests/fuzz and commit it")?;
    let (mut failed, mut counts) = (Vec::new(), Vec::new());
    for target in &targets {
        say(&format!("fuzzing {target} for {seconds} s"));
        // What is found goes into a folder that is not kept; the kept one is only read.
        let grown = workspace.target.join("xtask/fuzz").join(target);
        std::fs::create_dir_all(&grown)?;
        let mut command: Command = workspace.cargo("fuzz");
        // The instrumentation is an unstable option that the stable compiler has, too; without unsafe code of ours
        // there is nothing for a sanitiser to find.
        command
            .env("RUSTC_BOOTSTRAP", "1")
            .args(["run", "--fuzz-dir", "tests/fuzz", "--sanitizer", "none", target])
            .args([&grown, &workspace.path("tests/fuzz/corpus").join(target)])
            .arg("--")
            .arg(format!("-max_total_time={seconds}"))
            .arg(format!("-timeout={LONGEST_INPUT}"))
            .arg(format!("-max_len={LARGEST_INPUT}"))
            .arg("-print_final_stats=1");
        let (succeeded, printed) = run_collecting(&mut command)?;
        match executions(&printed) {
            Some(count) if succeeded => counts.push((target.as_str(), count)),
            _ => failed.push(target.as_str()),
        }
    }
    for (target, count) in &counts {
        println!("{target:<12} {count:>12} executions");
    }
    println!("{:<12} {:>12} executions", "in all", counts.iter().map(|(_, count)| count).sum::<u64>());
    if !failed.is_empty() {
        bail!("fuzzing found a failure in: {}", failed.join(", "));
    }
    Ok(counts.len() as u64)
}

/// The version of the fuzzer's own command.
const FUZZER: &str = "0.13.2";

fn ensure_fuzzer(workspace: &Workspace) -> Result<()> {
    let mut ask = Command::new("cargo-fuzz");
    let found = ask.arg("--version").output().ok();
    if found.is_some_and(|output| String::from_utf8_lossy(&output.stdout).trim() == format!("cargo-fuzz {FUZZER}")) {
        return Ok(());
    }
    say(&format!("cargo-fuzz {FUZZER} is missing, compiling it"));
    run(workspace.cargo("install").args(["cargo-fuzz", "--version", FUZZER]))
}

/// Runs a command and hands out what it says of its own running; a failure is shown.
fn run_collecting(command: &mut Command) -> Result<(bool, String)> {
    let output = command.output().context("cargo fuzz could not be started")?;
    let printed = String::from_utf8_lossy(&output.stderr).into_owned();
    if !output.status.success() {
        let tail: Vec<&str> = printed.lines().rev().take(40).collect();
        for line in tail.iter().rev() {
            println!("{line}");
        }
    }
    Ok((output.status.success(), printed))
}

/// How many inputs a target was given, as it says at its end.
fn executions(printed: &str) -> Option<u64> {
    let line = printed.lines().find_map(|line| line.strip_prefix("stat::number_of_executed_units:"))?;
    line.trim().parse().ok()
}

fn fuzz_targets(workspace: &Workspace) -> Vec<String> {
    let mut targets: Vec<String> = std::fs::read_dir(workspace.path("tests/fuzz/fuzz_targets"))
        .into_iter()
        .flatten()
        .flatten()
        .filter_map(|entry| entry.file_name().to_str()?.strip_suffix(".rs").map(str::to_owned))
        .collect();
    targets.sort();
    targets
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_target_says_how_many_inputs_it_was_given() {
        let printed = "Done 7 runs\nstat::number_of_executed_units: 1612730\nstat::peak_rss_mb: 38\n";
        assert_eq!(executions(printed), Some(1_612_730));
        assert_eq!(executions("error: could not compile"), None);
    }
}
