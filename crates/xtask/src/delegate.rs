//! Commands that other programs of the repository answer: the evidence table, the state of the catalogue, fuzzing.

use crate::workspace::{Workspace, run, say};
use anyhow::{Context, Result, bail};
use std::process::{Command, ExitCode};

/// Runs a binary of the workspace with arguments, its output being ours, and passes its exit code on.
pub fn run_binary(workspace: &Workspace, package: &str, binary: &str, arguments: &[String]) -> Result<ExitCode> {
    if !workspace.has_binary(package, binary) {
        bail!("{package} has no binary `{binary}` yet");
    }
    let mut command = workspace.cargo();
    command.args(["run", "--quiet", "--package", package, "--bin", binary, "--"]).args(arguments);
    let status = command.status().with_context(|| format!("`{binary}` could not be started"))?;
    Ok(if status.success() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Runs every fuzz target for some seconds each.
pub fn fuzz(workspace: &Workspace, seconds: u32) -> Result<()> {
    let targets = fuzz_targets(workspace);
    if targets.is_empty() {
        println!("there are no fuzz targets in tests/fuzz yet: nothing was run");
        return Ok(());
    }
    if !crate::workspace::is_on_path("cargo-fuzz") {
        say("cargo-fuzz is missing, compiling it");
        run(workspace.cargo().args(["install", "cargo-fuzz"]))?;
    }
    let mut failed = Vec::new();
    for target in &targets {
        say(&format!("fuzzing {target} for {seconds} s"));
        let mut command: Command = workspace.cargo();
        // The instrumentation is an unstable option that the stable compiler has, too; without unsafe code of ours
        // there is nothing for a sanitiser to find.
        command
            .env("RUSTC_BOOTSTRAP", "1")
            .args(["fuzz", "run", "--fuzz-dir", "tests/fuzz", "--sanitizer", "none", target, "--"])
            .arg(format!("-max_total_time={seconds}"));
        if run(&mut command).is_err() {
            failed.push(target.as_str());
        }
    }
    println!("{} fuzz targets run for {seconds} s each", targets.len());
    if !failed.is_empty() {
        bail!("fuzzing found a failure in: {}", failed.join(", "));
    }
    Ok(())
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
