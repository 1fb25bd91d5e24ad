//! Runs every test there is, step by step, and sums up.

use crate::delegate;
use crate::format;
use crate::serve::Site;
use crate::site::{self, Built, Form};
use crate::supply;
use crate::texts;
use crate::tidy;
use crate::toolchain::{self, WasmToolchain};
use crate::workspace::{Workspace, run_showing, say};
use anyhow::{Context as _, Result, bail};
use std::fmt::Write as _;
use std::net::TcpListener;
use std::process::Command;
use std::sync::Arc;
use std::time::{Duration, Instant};

/// Test cases that really ran.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
struct Cases {
    passed: u64,
    failed: u64,
}

/// What the steps share.
struct Bench<'w> {
    workspace: &'w Workspace,
    /// The site, once a step has built it.
    built: Option<Built>,
}

type Step = fn(&mut Bench) -> Result<Cases>;

/// Every step: its name for `--only`, what it does, and how.
const STEPS: [(&str, &str, Step); 14] = [
    ("fmt", "formatting", format),
    ("clippy", "lints", lint),
    ("native", "tests of every crate", test_natively),
    ("evidence", "published values the core is held to", hold_to_evidence),
    ("data", "the files of the catalogue", check_data),
    ("doc", "examples in the documentation", test_documentation),
    ("tidy", "house rules", keep_house_rules),
    ("supply", "crates of other people", look_at_crates),
    ("site", "the site builds", build_site),
    ("seam", "the kept types are the generated ones", compare_seam),
    ("types", "types of the page's scripts", check_types),
    ("browser", "the page in a headless browser", test_page),
    ("firefox", "the main job in Firefox", test_in_firefox),
    ("fuzz", "hostile input, for a moment", fuzz_shortly),
];

/// How a step ended.
struct Outcome {
    name: &'static str,
    cases: Cases,
    error: Option<String>,
    took: Duration,
}

/// Runs the steps asked for, all of them by default, and says whether all went well.
pub fn check(workspace: &Workspace, only: Option<&str>) -> Result<bool> {
    let wanted = wanted_steps(only)?;
    let mut bench = Bench { workspace, built: None };
    let mut outcomes = Vec::new();
    for (name, about, step) in STEPS.into_iter().filter(|(name, ..)| wanted.contains(name)) {
        println!("\n== {name}: {about}");
        let start = Instant::now();
        let result = step(&mut bench);
        let took = start.elapsed();
        let (cases, error) = match result {
            Ok(cases) => (cases, None),
            Err(error) => (Cases::default(), Some(format!("{error:#}"))),
        };
        if let Some(error) = &error {
            println!("{name} failed: {error}");
        }
        outcomes.push(Outcome { name, cases, error, took });
    }
    print!("{}", summary(&outcomes));
    Ok(outcomes.iter().all(Outcome::is_good))
}

fn wanted_steps(only: Option<&str>) -> Result<Vec<&'static str>> {
    let all = STEPS.map(|(name, ..)| name);
    let Some(only) = only else {
        return Ok(all.to_vec());
    };
    only.split(',')
        .map(|word| {
            let known = all.into_iter().find(|name| *name == word);
            known.with_context(|| format!("`{word}` is no step; there are {}", all.join(", ")))
        })
        .collect()
}

impl Outcome {
    fn is_good(&self) -> bool {
        self.error.is_none() && self.cases.failed == 0
    }

    /// A step that failed without a failed case, since it did not come that far, counts as one.
    fn failed(&self) -> u64 {
        self.cases.failed.max(u64::from(!self.is_good()))
    }
}

/// The closing table; its last line counts the cases that ran.
fn summary(outcomes: &[Outcome]) -> String {
    let mut text = "\n".to_owned();
    for outcome in outcomes {
        let word = if outcome.is_good() { "ok" } else { "FAILED" };
        let Cases { passed, failed } = outcome.cases;
        let cases = if passed + failed == 0 { String::new() } else { format!("{passed} passed, {failed} failed") };
        let line = format!("{:<8} {word:<6} {:>6.1} s  {cases}", outcome.name, outcome.took.as_secs_f64());
        let _ = writeln!(text, "{}", line.trim_end());
        if let Some(error) = &outcome.error {
            let _ = writeln!(text, "         {}", error.lines().next().unwrap_or_default());
        }
    }
    let took: Duration = outcomes.iter().map(|outcome| outcome.took).sum();
    let passed: u64 = outcomes.iter().map(|outcome| outcome.cases.passed).sum();
    let failed: u64 = outcomes.iter().map(Outcome::failed).sum();
    let _ = writeln!(text, "in all          {:>6.1} s\n\n{passed} passed, {failed} failed", took.as_secs_f64());
    text
}

fn format(bench: &mut Bench) -> Result<Cases> {
    format::format(bench.workspace, format::Form::Check).context("`cargo xtask fmt` formats everything")?;
    Ok(Cases::default())
}

fn lint(bench: &mut Bench) -> Result<Cases> {
    toolchain::ensure_component(bench.workspace, "clippy", "clippy")?;
    let mut command = bench.workspace.cargo("clippy");
    succeed(command.args(["--workspace", "--all-targets", "--", "-D", "warnings"]))?;
    let toolchain = toolchain::wasm_toolchain()?;
    if matches!(toolchain, WasmToolchain::FromSource { .. }) {
        say("clippy has no library for the browser here: what only compiles there is not looked at");
        return Ok(Cases::default());
    }
    let mut command = toolchain.cargo(bench.workspace, "clippy");
    succeed(command.args([
        "--package",
        site::SEAM_PACKAGE,
        // The tests run natively and were looked at above.
        "--lib",
        "--features",
        "split",
        "--",
        "-D",
        "warnings",
    ]))
}

/// What the property tests of a run begin with.
const SEED: &str = "20261127";

fn test_natively(bench: &mut Bench) -> Result<Cases> {
    let mut command = bench.workspace.cargo("test");
    // The same cases each time: a run that fails can be looked into, and one that passes says the same tomorrow. Without the
    // seed, `cargo test` draws others.
    command.env("PROPTEST_RNG_SEED", SEED);
    test(command.args(["--workspace", "--lib", "--bins", "--tests", "--no-fail-fast"]))
}

/// Prints every set of published values with its largest deviation, and fails where one is out of its tolerance.
fn hold_to_evidence(bench: &mut Bench) -> Result<Cases> {
    let mut command = bench.workspace.cargo("run");
    succeed(command.args(["--quiet", "--package", "stillroom-reference", "--bin", "evidence"]))
}

fn check_data(bench: &mut Bench) -> Result<Cases> {
    let mut command = bench.workspace.cargo("run");
    succeed(command.args(["--quiet", "--package", "stillroom-catalogue", "--bin", "data", "--", "check"]))?;
    let mut command = bench.workspace.cargo("run");
    succeed(command.args(["--quiet", "--package", "stillroom-catalogue", "--bin", "data", "--", "report"]))
}

fn test_documentation(bench: &mut Bench) -> Result<Cases> {
    let mut command = bench.workspace.cargo("test");
    test(command.args(["--workspace", "--doc", "--no-fail-fast"]))
}

fn keep_house_rules(bench: &mut Bench) -> Result<Cases> {
    let mut cases = Cases::default();
    for verdict in tidy::check(bench.workspace)? {
        if verdict.broken.is_empty() {
            println!("ok      {}", verdict.rule);
            cases.passed += 1;
        } else {
            println!("BROKEN  {}\n          {}", verdict.rule, verdict.broken.join("\n          "));
            cases.failed += 1;
        }
    }
    Ok(cases)
}

/// Licences, sources and duplicates of what the locks name.
fn look_at_crates(bench: &mut Bench) -> Result<Cases> {
    let broken = supply::check(bench.workspace)?;
    for sentence in &broken {
        println!("BROKEN  {sentence}");
    }
    let passed = u64::from(broken.is_empty());
    Ok(Cases { passed, failed: broken.len() as u64 })
}

impl Bench<'_> {
    /// The site, built at most once a run.
    fn built(&mut self) -> Result<&Built> {
        if self.built.is_none() {
            self.built = Some(site::build(self.workspace, Form::Released)?);
        }
        self.built.as_ref().context("the site was not built")
    }
}

fn build_site(bench: &mut Bench) -> Result<Cases> {
    bench.built().map(|_| Cases::default())
}

fn compare_seam(bench: &mut Bench) -> Result<Cases> {
    bench.built()?;
    let built = bench.built.as_ref().context("the site was not built")?;
    site::compare_kept_types(bench.workspace, built)?;
    Ok(Cases::default())
}

fn check_types(bench: &mut Bench) -> Result<Cases> {
    texts::compare_kept_types(bench.workspace, &texts::read(bench.workspace)?)?;
    let node = toolchain::ensure_node_packages(bench.workspace)?;
    // The page, its worker and the tests live in worlds of different globals.
    for project in ["tsconfig.json", "tsconfig.worker.json", "tsconfig.tests.json"] {
        let mut command = Command::new(&node);
        command.current_dir(bench.workspace.node_side());
        succeed(command.args(["node_modules/typescript/bin/tsc", "--project", project]))?;
    }
    Ok(Cases::default())
}

fn test_page(bench: &mut Bench) -> Result<Cases> {
    bench.built()?;
    let node = toolchain::ensure_node_packages(bench.workspace)?;
    let browser = toolchain::chromium();
    toolchain::ensure_programs(&[(&browser, "chromium")])?;
    let folder = bench.workspace.node_side();
    let report = bench.workspace.target.join("xtask/browser-report.json");
    let _ = std::fs::remove_file(&report);
    let mut command = Command::new(node);
    command
        .current_dir(&folder)
        .args(["node_modules/@playwright/test/cli.js", "test", "--reporter=list,json"])
        .env("PLAYWRIGHT_JSON_OUTPUT_FILE", &report)
        .env("CHROME_PATH", browser)
        .env("STILLROOM_XTASK", std::env::current_exe()?)
        .env("STILLROOM_PORT", free_port()?.to_string());
    let (succeeded, _) = run_showing(&mut command)?;
    let report = std::fs::read_to_string(&report).context("the browser tests left no report")?;
    let cases = count_page_cases(&report)?;
    if !succeeded && cases.failed == 0 {
        bail!("the browser tests did not run to their end");
    }
    if cases.passed == 0 {
        bail!("no browser test passed");
    }
    Ok(cases)
}

/// The main job in Firefox, which is driven by a standard of the web.
fn test_in_firefox(bench: &mut Bench) -> Result<Cases> {
    bench.built()?;
    let node = toolchain::ensure_node_packages(bench.workspace)?;
    let browser = toolchain::firefox();
    toolchain::ensure_programs(&[(&browser, "firefox-esr")])?;
    let site = Arc::new(Site::open(&bench.workspace.dist(), free_port()?)?);
    let address = site.address()?;
    std::thread::spawn(move || site.serve());
    let mut command = Command::new(node);
    command
        .current_dir(bench.workspace.node_side())
        .args(["--test", "--test-reporter=tap", "firefox/smoke.mjs"])
        .env("STILLROOM_ADDRESS", address)
        .env("FIREFOX_PATH", browser);
    let (succeeded, printed) = run_showing(&mut command)?;
    let cases = count_node_cases(&printed);
    if cases.passed == 0 || (!succeeded && cases.failed == 0) {
        bail!("the tests in Firefox did not run to their end");
    }
    Ok(cases)
}

/// Adds up the closing lines of Node's test runner.
fn count_node_cases(printed: &[String]) -> Cases {
    let number = |word: &str| {
        let line = printed.iter().rev().find_map(|line| line.trim_start().strip_prefix(word));
        line.and_then(|number| number.trim().parse().ok()).unwrap_or(0)
    };
    Cases { passed: number("# pass "), failed: number("# fail ") + number("# cancelled ") }
}

/// Seconds each fuzz target gets in a test run: enough to see that it runs and holds on its corpus.
const FUZZ_SECONDS: u32 = 2;

fn fuzz_shortly(bench: &mut Bench) -> Result<Cases> {
    let targets = delegate::fuzz(bench.workspace, FUZZ_SECONDS)?;
    Ok(Cases { passed: targets, failed: 0 })
}

/// A port that nobody listens on at this moment.
fn free_port() -> Result<u16> {
    Ok(TcpListener::bind(("127.0.0.1", 0))?.local_addr()?.port())
}

/// Runs a command that either succeeds or not.
fn succeed(command: &mut Command) -> Result<Cases> {
    crate::workspace::run(command).map(|()| Cases::default())
}

/// Runs a cargo test command and counts its cases.
fn test(command: &mut Command) -> Result<Cases> {
    let (succeeded, printed) = run_showing(command)?;
    let cases = count_cases(&printed);
    if !succeeded && cases.failed == 0 {
        bail!("the tests did not run to their end");
    }
    if !succeeded {
        say("some tests failed");
    }
    Ok(cases)
}

/// Adds up the closing lines of Rust's test programs.
fn count_cases(printed: &[String]) -> Cases {
    let mut cases = Cases::default();
    for line in printed.iter().filter_map(|line| line.trim_start().strip_prefix("test result: ")) {
        cases.passed += number_before(line, " passed");
        cases.failed += number_before(line, " failed");
    }
    cases
}

fn number_before(line: &str, word: &str) -> u64 {
    line.split(word)
        .next()
        .filter(|before| before.len() < line.len())
        .and_then(|before| before.rsplit(' ').next())
        .and_then(|number| number.parse().ok())
        .unwrap_or(0)
}

/// Counts the cases of a browser test report. One that passed only when tried again has failed.
fn count_page_cases(report: &str) -> Result<Cases> {
    let report: serde_json::Value = serde_json::from_str(report)?;
    let number = |name: &str| report["stats"][name].as_u64().with_context(|| format!("the report counts no {name}"));
    let errors = report["errors"].as_array().map_or(0, Vec::len) as u64;
    Ok(Cases { passed: number("expected")?, failed: number("unexpected")? + number("flaky")? + errors })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcome(name: &'static str, passed: u64, failed: u64, error: Option<&str>) -> Outcome {
        let error = error.map(str::to_owned);
        Outcome { name, cases: Cases { passed, failed }, error, took: Duration::from_secs(2) }
    }

    #[test]
    fn closing_lines_are_added_up() {
        let printed = [
            "running 3 tests",
            "test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.02s",
            "test result: FAILED. 12 passed; 2 failed; 0 ignored; 0 measured; 1 filtered out; finished in 0.1s",
            "not a result: 7 passed",
        ]
        .map(str::to_owned);
        assert_eq!(count_cases(&printed), Cases { passed: 15, failed: 2 });
    }

    #[test]
    fn closing_lines_of_node_are_read() {
        let printed = ["ok 1 - opens", "# tests 4", "# pass 3", "# fail 1", "# cancelled 0"].map(str::to_owned);
        assert_eq!(count_node_cases(&printed), Cases { passed: 3, failed: 1 });
        assert_eq!(count_node_cases(&[]), Cases::default());
    }

    #[test]
    fn a_page_test_that_needed_a_second_try_has_failed() {
        let report = r#"{"errors":[],"stats":{"expected":5,"unexpected":1,"flaky":1,"skipped":2}}"#;
        assert_eq!(count_page_cases(report).unwrap(), Cases { passed: 5, failed: 2 });
        assert!(count_page_cases("{}").is_err());
    }

    #[test]
    fn the_last_line_counts_what_ran() {
        let text = summary(&[outcome("native", 15, 2, None), outcome("doc", 1, 0, None)]);
        assert_eq!(text.lines().last(), Some("16 passed, 2 failed"));
    }

    #[test]
    fn a_step_that_breaks_down_is_a_failure() {
        let text = summary(&[outcome("fmt", 0, 0, Some("not formatted")), outcome("doc", 1, 0, None)]);
        assert_eq!(text.lines().last(), Some("1 passed, 1 failed"));
        assert!(text.contains("FAILED") && text.contains("not formatted"));
    }

    #[test]
    fn a_step_that_does_not_exist_is_named() {
        assert_eq!(wanted_steps(Some("fmt,tidy")).unwrap(), ["fmt", "tidy"]);
        assert!(wanted_steps(Some("fmt,tidyness")).unwrap_err().to_string().contains("tidyness"));
        assert_eq!(wanted_steps(None).unwrap().len(), STEPS.len());
    }
}
