//! The formatters: rustfmt for Rust, prettier for the scripts and style sheets. Both are pinned, prettier by the lock file
//! of `tests/browser`; its rules are in `.prettierrc.json`.

use crate::toolchain;
use crate::workspace::{Workspace, run};
use anyhow::Result;
use std::process::Command;

/// What prettier formats: everything of these kinds that is written by hand.
const FORMATTED: [&str; 4] =
    ["www/**/*.{js,css}", "tests/browser/*.{js,mjs}", "tests/bench/*.mjs", "tests/browser/*.json"];

/// What is to be done with a file that is not as its formatter would have it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Say so.
    Check,
    /// Write it anew.
    Write,
}

/// Formats every file, or names those that are not formatted. Node packages are installed if they are missing.
pub fn format(workspace: &Workspace, form: Form) -> Result<()> {
    toolchain::ensure_component(workspace, "fmt", "rustfmt")?;
    let mut rust = workspace.cargo("fmt");
    rust.arg("--all");
    if form == Form::Check {
        rust.arg("--check");
    }
    run(&mut rust)?;
    let mut page = Command::new(toolchain::ensure_node_packages(workspace)?);
    page.current_dir(&workspace.root).arg("tests/browser/node_modules/prettier/bin/prettier.cjs");
    page.args(["--log-level", "warn", if form == Form::Check { "--check" } else { "--write" }]);
    run(page.args(FORMATTED))
}
