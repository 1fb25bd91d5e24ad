//! The developer's commands. `cargo xtask help` lists them.

mod arguments;
mod compress;
mod policy;
mod serve;
mod site;
mod toolchain;
mod workspace;

use anyhow::{Result, bail};
use arguments::Arguments;
use site::Shrink;
use std::process::ExitCode;
use workspace::Workspace;

const HELP: &str = "\
The developer's commands of Stillroom:
  cargo xtask serve [--port N] [--debug] [--no-build] [--folder PATH]
                                  build the site and serve it on this machine
  cargo xtask build               build the site into dist/, as small as it gets
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
        "serve" => serve_site(arguments)?,
        "build" => {
            arguments.finish()?;
            let workspace = Workspace::find()?;
            let built = site::build(&workspace, true, Shrink::Required)?;
            site::keep_types(&workspace, &built)?;
            println!("{}", workspace.dist().display());
        }
        "help" => println!("{HELP}"),
        unknown => bail!("`{unknown}` is no command.\n{HELP}"),
    }
    Ok(ExitCode::SUCCESS)
}

fn serve_site(mut arguments: Arguments) -> Result<()> {
    let port = arguments.option("--port")?.unwrap_or(serve::USUAL_PORT);
    let folder = arguments.option::<std::path::PathBuf>("--folder")?;
    let no_build = arguments.flag("--no-build");
    let debug = arguments.flag("--debug");
    // Release is what is served anyway; the flag lets a script say so.
    arguments.flag("--release");
    arguments.finish()?;
    let workspace = Workspace::find()?;
    if !no_build && folder.is_none() {
        site::build(&workspace, !debug, Shrink::IfPresent)?;
    }
    serve::serve(&folder.unwrap_or_else(|| workspace.dist()), port)
}
