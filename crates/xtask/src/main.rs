//! The developer's commands. `cargo xtask help` lists them.

mod arguments;
mod bench;
mod check;
mod compress;
mod delegate;
mod http;
mod policy;
mod serve;
mod site;
mod size;
mod supply;
mod tidy;
mod toolchain;
mod workspace;

use anyhow::{Context, Result, bail};
use arguments::Arguments;
use site::Form;
use std::process::ExitCode;
use workspace::Workspace;

const HELP: &str = "\
The developer's commands of Stillroom:
  cargo xtask serve [--port N] [--release] [--no-build] [--folder PATH]
                                  build the site, soon done or as released, and serve it on this machine
  cargo xtask build               build the site into dist/, as small as it gets
  cargo xtask test [--only STEP,...]
                                  run every test: fmt, clippy, native, doc, tidy, supply, site, seam, types, browser, fuzz
  cargo xtask size [--json]       bytes of the built site against its budget
  cargo xtask bench [WORD] [--json]
                                  run the benchmarks, or those whose file name contains WORD
  cargo xtask evidence [--json]   every set of outside values the core is held to, with the worst deviation
  cargo xtask data check|report [--json]
                                  the state of the catalogue
  cargo xtask data sample [--seed N] [--count N]
                                  published values drawn by a seed, to be looked up again in their sources
  cargo xtask fuzz --seconds N    fuzz every target for N seconds each
  cargo xtask help                this list";

fn main() -> ExitCode {
    match dispatch(Arguments::new(std::env::args().skip(1))) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(mut arguments: Arguments) -> Result<ExitCode> {
    let command = arguments.word().unwrap_or_else(|| "help".to_owned());
    match command.as_str() {
        "serve" => serve_site(arguments),
        "build" => build_site(arguments),
        "test" => run_tests(arguments),
        "size" => show_size(arguments),
        "bench" => show_benchmarks(arguments),
        "evidence" => {
            let passed_on = flags(arguments, &["--json"], None)?;
            delegate::run_binary(&Workspace::find()?, "stillroom-reference", "evidence", &passed_on)
        }
        "data" => {
            let question = arguments
                .word()
                .filter(|word| ["check", "report", "sample"].contains(&word.as_str()))
                .context("say `data check`, `data report` or `data sample`")?;
            let mut drawn = Vec::new();
            for name in ["--seed", "--count"].into_iter().filter(|_| question == "sample") {
                if let Some(number) = arguments.option::<u64>(name)? {
                    drawn.extend([name.to_owned(), number.to_string()]);
                }
            }
            let mut passed_on = flags(arguments, &["--json"], Some(question))?;
            passed_on.append(&mut drawn);
            delegate::run_binary(&Workspace::find()?, "stillroom-catalogue", "data", &passed_on)
        }
        "fuzz" => {
            let seconds = arguments.option("--seconds")?.context("say for how long: --seconds N")?;
            arguments.finish()?;
            delegate::fuzz(&Workspace::find()?, seconds)?;
            Ok(ExitCode::SUCCESS)
        }
        "help" => {
            println!("{HELP}");
            Ok(ExitCode::SUCCESS)
        }
        unknown => bail!("`{unknown}` is no command.\n{HELP}"),
    }
}

/// The flags that another program is to get, after the word it starts with.
fn flags(mut arguments: Arguments, known: &[&str], word: Option<String>) -> Result<Vec<String>> {
    let mut passed_on: Vec<String> = word.into_iter().collect();
    passed_on.extend(known.iter().filter(|flag| arguments.flag(flag)).map(|flag| (*flag).to_owned()));
    arguments.finish()?;
    Ok(passed_on)
}

fn serve_site(mut arguments: Arguments) -> Result<ExitCode> {
    let port = arguments.option("--port")?.unwrap_or(serve::USUAL_PORT);
    let folder = arguments.option::<std::path::PathBuf>("--folder")?;
    let no_build = arguments.flag("--no-build");
    let released = arguments.flag("--release");
    arguments.finish()?;
    let workspace = Workspace::find()?;
    if !no_build && folder.is_none() {
        site::build(&workspace, if released { Form::Released } else { Form::Quick })?;
    }
    serve::serve(&folder.unwrap_or_else(|| workspace.dist()), port)?;
    Ok(ExitCode::SUCCESS)
}

fn build_site(arguments: Arguments) -> Result<ExitCode> {
    arguments.finish()?;
    let workspace = Workspace::find()?;
    let built = site::build(&workspace, Form::Released)?;
    site::keep_types(&workspace, &built)?;
    println!("{}", workspace.dist().display());
    Ok(ExitCode::SUCCESS)
}

fn run_tests(mut arguments: Arguments) -> Result<ExitCode> {
    let only = arguments.option::<String>("--only")?;
    arguments.finish()?;
    Ok(exit_code(check::check(&Workspace::find()?, only.as_deref())?))
}

fn show_size(mut arguments: Arguments) -> Result<ExitCode> {
    let json = arguments.flag("--json");
    arguments.finish()?;
    let workspace = Workspace::find()?;
    let built = site::build(&workspace, Form::Released)?;
    let report = size::measure(&workspace, &built)?;
    if json {
        println!("{}", serde_json::to_string(&report)?);
    } else {
        print!("{}", report.table());
    }
    Ok(exit_code(report.is_within_budget()))
}

fn show_benchmarks(mut arguments: Arguments) -> Result<ExitCode> {
    let json = arguments.flag("--json");
    let only = arguments.word();
    arguments.finish()?;
    let times = bench::measure(&Workspace::find()?, only.as_deref())?;
    if json {
        println!("{}", serde_json::to_string(&times)?);
    } else {
        print!("{}", bench::table(&times));
    }
    Ok(ExitCode::SUCCESS)
}

fn exit_code(is_good: bool) -> ExitCode {
    if is_good { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
