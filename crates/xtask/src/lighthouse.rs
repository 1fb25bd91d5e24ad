//! What Lighthouse says of the built site on its settings for a phone.

use crate::serve::{Site, USUAL_PORT};
use crate::site::{self, Form};
use crate::toolchain;
use crate::workspace::{Workspace, run};
use anyhow::Result;
use std::process::Command;
use std::sync::Arc;

/// Where its packages are locked, with the script that runs it. They are many, and nothing else needs them.
const FOLDER: &str = "tests/lighthouse";

/// Builds the site, serves it and prints the scores and times.
pub fn measure(workspace: &Workspace) -> Result<()> {
    site::build(workspace, Form::Released)?;
    let node = toolchain::ensure_packages_of(workspace, FOLDER)?;
    let browser = toolchain::chromium();
    toolchain::ensure_programs(&[(&browser, "chromium")])?;
    let site = Arc::new(Site::open(&workspace.dist(), USUAL_PORT)?);
    let address = site.address()?;
    std::thread::spawn(move || site.serve());
    let mut command = Command::new(&node);
    command.current_dir(workspace.path(FOLDER)).arg("run.mjs");
    run(command.env("STILLROOM_ADDRESS", address).env("CHROME_PATH", &browser))
}
