//! Pictures of every room at phone and desk sizes, light and dark, and with text at twice its size: for somebody to look at.

use crate::serve::{Site, USUAL_PORT};
use crate::site::{self, Form};
use crate::toolchain;
use crate::workspace::{Workspace, run};
use anyhow::Result;
use std::process::Command;
use std::sync::Arc;

/// What goes through the rooms and takes the pictures.
const SCRIPT: &str = "tests/browser/pictures.mjs";

/// Which pictures are taken.
#[derive(Debug, Default)]
pub struct Wanted {
    /// Language of the page, by its tag.
    pub language: Option<String>,
    /// Whether the site is built first.
    pub build: bool,
    /// Names of scenes, and of sizes with their scheme, such as `390-dark`; all of them if none is named.
    pub words: Vec<String>,
}

/// Takes them of the built site, into `target/pictures`.
pub fn take(workspace: &Workspace, wanted: Wanted) -> Result<()> {
    let node = toolchain::ensure_node_packages(workspace)?;
    let browser = toolchain::chromium();
    toolchain::ensure_programs(&[(&browser, "chromium")])?;
    if wanted.build {
        site::build(workspace, Form::Released)?;
    }
    let site = Arc::new(Site::open(&workspace.dist(), USUAL_PORT)?);
    let address = site.address()?;
    std::thread::spawn(move || site.serve());
    let language = wanted.language.unwrap_or_else(|| "en".to_owned());
    let mut command = Command::new(&node);
    command.current_dir(&workspace.root).arg(SCRIPT).args(wanted.words);
    command.env("STILLROOM_ADDRESS", address).env("STILLROOM_LANGUAGE", language).env("CHROME_PATH", &browser);
    command.env("STILLROOM_PICTURES", workspace.target.join("pictures"));
    run(&mut command)
}
