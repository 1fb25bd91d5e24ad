//! The developer's commands. `cargo xtask help` lists them.

mod arguments;
mod bench;
mod check;
mod compress;
mod dead;
mod delegate;
mod format;
mod http;
mod lighthouse;
mod pictures;
mod policy;
mod seam;
mod serve;
mod site;
mod size;
mod supply;
mod texts;
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
                                  run every test: fmt, clippy, native, doc, tidy, supply, site, seam, types, browser,
                                  firefox, fuzz
  cargo xtask fmt                 format every file of Rust, JavaScript and CSS
  cargo xtask messages            rewrite the types of the page's texts, and name what languages do not agree in
  cargo xtask size [--json]       bytes of the built site against its budget
  cargo xtask bench [WORD] [--json]
                                  run the benchmarks, or those whose file name contains WORD
  cargo xtask bench lighthouse    what Lighthouse says of the built site on a phone: scores, paints, interactive
  cargo xtask pictures [--language TAG] [--no-build] [WORD...]
                                  pictures of every room, or of those named, into target/pictures
  cargo xtask evidence [--json]   every set of outside values the core is held to, with the worst deviation
  cargo xtask data check|report [--json]
                                  the state of the catalogue
  cargo xtask data sample [--seed N] [--count N]
                                  published values drawn by a seed, to be looked up again in their sources
  cargo xtask fuzz --seconds N    fuzz every target for N seconds each
  cargo xtask help                this list; --help and -h behind any command as well";

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
    let asks_for_help = arguments.flag("--help") | arguments.flag("-h");
    let command = arguments.word().filter(|_| !asks_for_help).unwrap_or_else(|| "help".to_owned());
    match command.as_str() {
        "serve" => serve_site(arguments),
        "build" => build_site(arguments),
        "test" => run_tests(arguments),
        "fmt" => {
            arguments.finish()?;
            format::format(&Workspace::find()?, format::Form::Write)?;
            Ok(ExitCode::SUCCESS)
        }
        "messages" => {
            arguments.finish()?;
            let workspace = Workspace::find()?;
            let catalogue = texts::read(&workspace)?;
            texts::keep_types(&workspace, &catalogue)?;
            for disagreement in &catalogue.disagreements {
                println!("{disagreement}");
            }
            Ok(if catalogue.disagreements.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
        }
        "size" => show_size(arguments),
        "bench" => show_benchmarks(arguments),
        "pictures" => {
            let mut wanted = pictures::Wanted { language: arguments.option("--language")?, ..Default::default() };
            wanted.build = !arguments.flag("--no-build");
            while let Some(word) = arguments.word() {
                wanted.words.push(word);
            }
            arguments.finish()?;
            pictures::take(&Workspace::find()?, wanted)?;
            Ok(ExitCode::SUCCESS)
        }
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
    if only.as_deref() == Some("lighthouse") {
        lighthouse::measure(&Workspace::find()?)?;
        return Ok(ExitCode::SUCCESS);
    }
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
