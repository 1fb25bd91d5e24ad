//! Where the repository is, and how other programs are run in it.
//!
//! What a command reports goes to standard output; everything about its progress, also what the programs it starts
//! print, goes to standard error, so that `--json` output can be piped.

use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The repository and what cargo says about it.
#[derive(Debug)]
pub struct Workspace {
    /// The folder that holds the workspace's `Cargo.toml`.
    pub root: PathBuf,
    /// The folder cargo builds into.
    pub target: PathBuf,
    /// `cargo metadata` of the workspace's own packages.
    pub metadata: Value,
}

impl Workspace {
    /// Asks cargo where the workspace is.
    pub fn find() -> Result<Self> {
        let home = std::env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let mut command = Command::new(cargo());
        command.current_dir(&home).args(["metadata", "--locked", "--no-deps", "--format-version", "1"]);
        let metadata: Value =
            serde_json::from_str(&capture(&mut command)?).context("`cargo metadata` did not answer with JSON")?;
        let folder = |name: &str| {
            metadata[name].as_str().map(PathBuf::from).with_context(|| format!("`cargo metadata` names no {name}"))
        };
        Ok(Self { root: folder("workspace_root")?, target: folder("target_directory")?, metadata })
    }

    /// A path inside the repository.
    pub fn path(&self, relative: &str) -> PathBuf {
        self.root.join(relative)
    }

    /// The built site.
    pub fn dist(&self) -> PathBuf {
        self.path("dist")
    }

    /// The folder of the Node side: its packages and the browser tests.
    pub fn node_side(&self) -> PathBuf {
        self.path("tests/browser")
    }

    /// A cargo command started in the repository. What it compiles is what `Cargo.lock` says; a lock that is behind is an
    /// error.
    pub fn cargo(&self, subcommand: &str) -> Command {
        let mut command = Command::new(cargo());
        command.current_dir(&self.root).arg(subcommand);
        if !KNOW_NO_LOCK.contains(&subcommand) {
            command.arg("--locked");
        }
        command
    }

    /// Whether a package of the workspace has a binary of that name.
    pub fn has_binary(&self, package: &str, binary: &str) -> bool {
        self.packages()
            .filter(|found| found["name"] == package)
            .flat_map(|found| found["targets"].as_array().into_iter().flatten())
            .any(|target| target["name"] == binary && target["kind"][0] == "bin")
    }

    /// The workspace's own packages, as `cargo metadata` describes them.
    pub fn packages(&self) -> impl Iterator<Item = &Value> {
        self.metadata["packages"].as_array().into_iter().flatten()
    }
}

/// Subcommands that resolve no dependencies, and the fuzzer, whose own lock is looked at before it starts.
const KNOW_NO_LOCK: [&str; 2] = ["fmt", "fuzz"];

fn cargo() -> std::ffi::OsString {
    std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into())
}

/// Says on standard error what is being done.
pub fn say(sentence: &str) {
    eprintln!("xtask: {sentence}");
}

/// Runs a program to its end and fails if it fails. What it prints goes to standard error.
pub fn run(command: &mut Command) -> Result<()> {
    command.stdout(Stdio::from(std::io::stderr()));
    let name = name_of(command);
    let status = command.status().with_context(|| format!("`{name}` could not be started"))?;
    if !status.success() {
        bail!("`{name}` failed: {status}");
    }
    Ok(())
}

/// Runs a program to its end, fails if it fails, and returns what it printed on standard output.
pub fn capture(command: &mut Command) -> Result<String> {
    let name = name_of(command);
    let output = command.stderr(Stdio::inherit()).output().with_context(|| format!("`{name}` could not be started"))?;
    if !output.status.success() {
        bail!("`{name}` failed: {}", output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{name}` did not print text"))
}

/// Runs a program, shows each line it prints as it comes, and returns all of them and whether it succeeded.
pub fn run_showing(command: &mut Command) -> Result<(bool, Vec<String>)> {
    let name = name_of(command);
    let mut child = command.stdout(Stdio::piped()).spawn().with_context(|| format!("`{name}` could not be started"))?;
    let mut lines = Vec::new();
    if let Some(printed) = child.stdout.take() {
        for line in BufReader::new(printed).split(b'\n') {
            let line = String::from_utf8_lossy(&line?).into_owned();
            println!("{line}");
            lines.push(line);
        }
    }
    Ok((child.wait()?.success(), lines))
}

/// Whether a program of that name is on the search path.
pub fn is_on_path(program: &str) -> bool {
    std::env::var_os("PATH")
        .is_some_and(|path| std::env::split_paths(&path).any(|folder| folder.join(program).is_file()))
}

/// Every file below a folder, as paths relative to it with `/` between names, in order.
pub fn files_below(folder: &Path) -> Result<Vec<String>> {
    fn walk(folder: &Path, prefix: &str, found: &mut Vec<String>) -> Result<()> {
        let entries = std::fs::read_dir(folder).with_context(|| format!("{} cannot be listed", folder.display()))?;
        for entry in entries {
            let entry = entry?;
            let name = entry.file_name();
            let Some(name) = name.to_str() else {
                bail!("{} has a name that is no text", entry.path().display());
            };
            let relative = format!("{prefix}{name}");
            if entry.file_type()?.is_dir() {
                walk(&entry.path(), &format!("{relative}/"), found)?;
            } else {
                found.push(relative);
            }
        }
        Ok(())
    }
    let mut found = Vec::new();
    walk(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

/// What follows the last point of a file's name, nothing if there is no point.
pub fn ending(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(_, ending)| ending)
}

fn name_of(command: &Command) -> String {
    let mut name = command.get_program().to_string_lossy().into_owned();
    if let Some(short) = Path::new(&name).file_name() {
        name = short.to_string_lossy().into_owned();
    }
    for argument in command.get_args().take(3) {
        name.push(' ');
        name.push_str(&argument.to_string_lossy());
    }
    name
}
