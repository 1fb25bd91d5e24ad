//! What the commands need on the machine: the wasm target, Node, wasm-opt, a browser. Each is found, or installed where
//! that can be done without asking, or named exactly.

use crate::workspace::{Workspace, capture, is_on_path, run, say};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The platform the page runs on.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// Where a compiler for [`TARGET`] comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WasmToolchain {
    /// The usual compiler has the target's standard library.
    Installed,
    /// The same, since rustup has just added it.
    Added,
    /// Another compiler of the system builds the standard library from its source first.
    FromSource {
        /// The linker to use.
        linker: String,
    },
}

/// What a machine offers, as far as the choice of a wasm toolchain goes.
#[derive(Debug, Default, Clone)]
struct Offer {
    target_installed: bool,
    rustup: bool,
    system_compiler: bool,
    system_library_source: bool,
    wasm_linker: Option<String>,
}

impl Offer {
    fn look() -> Self {
        Self {
            target_installed: sysroot("rustc").is_some_and(|root| has_target(&root)),
            rustup: is_on_path("rustup"),
            system_compiler: Path::new("/usr/bin/rustc").is_file(),
            system_library_source: Path::new("/usr/lib/rustlib/src/rust/library/std").is_dir(),
            wasm_linker: ["wasm-ld", "wasm-ld-21", "wasm-ld-20", "wasm-ld-19"]
                .into_iter()
                .find(|linker| is_on_path(linker))
                .map(str::to_owned),
        }
    }

    /// The fallback, if everything it needs is there.
    fn from_source(&self) -> Option<WasmToolchain> {
        let linker = self.wasm_linker.clone()?;
        (self.system_compiler && self.system_library_source).then_some(WasmToolchain::FromSource { linker })
    }
}

const NO_WASM: &str = "no compiler here can build for the browser. Any one of these cures it:\n  \
     rustup target add wasm32-unknown-unknown          (a Rust toolchain managed by rustup)\n  \
     apt-get install -y rustc-web rust-web-src lld-19  (Debian; then run this command again)";

/// Finds a wasm toolchain in the documented order and says which it took.
pub fn wasm_toolchain() -> Result<WasmToolchain> {
    let offer = Offer::look();
    if offer.target_installed {
        say("wasm target: installed");
        return Ok(WasmToolchain::Installed);
    }
    if offer.rustup {
        say("wasm target: not installed, asking rustup to add it");
        let mut add = Command::new("rustup");
        if run(add.args(["target", "add", TARGET])).is_ok() && sysroot("rustc").is_some_and(|root| has_target(&root)) {
            say("wasm target: added by rustup");
            return Ok(WasmToolchain::Added);
        }
    }
    let Some(fallback) = offer.from_source() else {
        bail!(NO_WASM);
    };
    say("wasm target: the system's compiler with the standard library built from its source");
    Ok(fallback)
}

impl WasmToolchain {
    /// A cargo command that compiles for the browser with this toolchain. The subcommand and its arguments may follow.
    pub fn cargo(&self, workspace: &Workspace, subcommand: &str) -> Command {
        let mut command = workspace.cargo();
        command.args([subcommand, "--target", TARGET]);
        // The built file must not tell whose machine built it, and must be the same on each.
        let mut remaps = vec![(workspace.root.clone(), "stillroom")];
        if let Some(home) = cargo_home() {
            remaps.push((home, "cargo"));
        }
        let flags: Vec<String> =
            remaps.iter().map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display())).collect();
        command.arg("--config").arg(format!("target.{TARGET}.rustflags={}", toml_array(&flags)));
        if let Self::FromSource { linker } = self {
            command
                .env("RUSTC", "/usr/bin/rustc")
                .env("RUSTC_BOOTSTRAP", "1")
                .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker)
                .args(["-Z", "build-std=std,panic_abort", "--target-dir"])
                .arg(self.target_folder(workspace));
        }
        command
    }

    /// Where this toolchain's builds go: two compilers must not undo each other's work.
    pub fn target_folder(&self, workspace: &Workspace) -> PathBuf {
        match self {
            Self::Installed | Self::Added => workspace.target.clone(),
            Self::FromSource { .. } => workspace.target.join("from-source"),
        }
    }
}

fn toml_array(words: &[String]) -> String {
    // A JSON array of strings is a TOML array of basic strings.
    serde_json::Value::from(words).to_string()
}

fn cargo_home() -> Option<PathBuf> {
    std::env::var_os("CARGO_HOME").map(PathBuf::from).or_else(|| std::env::home_dir().map(|home| home.join(".cargo")))
}

fn sysroot(compiler: &str) -> Option<PathBuf> {
    let output = Command::new(compiler).args(["--print", "sysroot"]).stderr(Stdio::null()).output().ok()?;
    Some(PathBuf::from(String::from_utf8(output.stdout).ok()?.trim()))
}

fn has_target(sysroot: &Path) -> bool {
    let libraries = sysroot.join("lib/rustlib").join(TARGET).join("lib");
    std::fs::read_dir(libraries).is_ok_and(|mut entries| entries.next().is_some())
}

/// Makes sure that a component of the Rust toolchain is there, such as `clippy`.
pub fn ensure_component(workspace: &Workspace, subcommand: &str, component: &str) -> Result<()> {
    let answers = |workspace: &Workspace| {
        let mut command = workspace.cargo();
        command.args([subcommand, "--version"]).stdout(Stdio::null()).stderr(Stdio::null());
        command.status().is_ok_and(|status| status.success())
    };
    if answers(workspace) {
        return Ok(());
    }
    if is_on_path("rustup") {
        say(&format!("{component} is missing, asking rustup to add it"));
        run(Command::new("rustup").args(["component", "add", component]))?;
    }
    if answers(workspace) {
        return Ok(());
    }
    bail!("{component} is missing. Install it: rustup component add {component} (or apt-get install rust-{component})")
}

/// Makes sure that programs of Debian's packages are there. Installs them as root on Debian and its kin; anywhere else
/// says what to install.
pub fn ensure_programs(wanted: &[(&str, &str)]) -> Result<()> {
    let missing: Vec<_> = wanted.iter().filter(|(program, _)| !exists(program)).collect();
    if missing.is_empty() {
        return Ok(());
    }
    let packages: Vec<&str> = missing.iter().map(|(_, package)| *package).collect();
    let list = packages.join(" ");
    if is_on_path("apt-get") && is_root() {
        say(&format!("installing {list}"));
        run(Command::new("apt-get").args(["update", "--quiet"]))?;
        run(Command::new("apt-get")
            .args(["install", "--yes", "--quiet", "--no-install-recommends"])
            .args(&packages)
            .env("DEBIAN_FRONTEND", "noninteractive"))?;
    }
    if let Some((program, package)) = missing.iter().find(|(program, _)| !exists(program)) {
        bail!(
            "{program} is missing. On Debian: sudo apt-get install -y {list}. Elsewhere install what `{package}` is called \
             there{}",
            if program.contains("chromium") { " and set CHROME_PATH to the browser" } else { "" }
        );
    }
    Ok(())
}

fn exists(program: &str) -> bool {
    if program.contains('/') { Path::new(program).is_file() } else { is_on_path(program) }
}

fn is_root() -> bool {
    Command::new("id").arg("-u").output().is_ok_and(|output| output.stdout.trim_ascii() == b"0")
}

/// The browser the tests drive.
pub fn chromium() -> String {
    std::env::var("CHROME_PATH").unwrap_or_else(|_| "/usr/bin/chromium".to_owned())
}

/// The program that lets wasm tests drive the browser.
pub fn chromedriver() -> String {
    std::env::var("CHROMEDRIVER").unwrap_or_else(|_| "/usr/bin/chromedriver".to_owned())
}

/// Makes sure that Node and the packages of `tests/browser` are there.
pub fn ensure_node_packages(workspace: &Workspace) -> Result<()> {
    ensure_programs(&[("node", "nodejs"), ("npm", "npm")])?;
    let version = capture(Command::new("node").arg("--version"))?;
    let major: u32 = version
        .trim()
        .trim_start_matches('v')
        .split('.')
        .next()
        .and_then(|major| major.parse().ok())
        .with_context(|| format!("`node --version` answered `{}`", version.trim()))?;
    if major < 18 {
        bail!("Node {} is too old: 18 or newer is needed", version.trim());
    }
    let folder = workspace.node_side();
    let lock = std::fs::read(folder.join("package-lock.json")).context("package-lock.json cannot be read")?;
    let stamp = folder.join("node_modules/.installed-from");
    if std::fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(());
    }
    say("installing the Node packages of tests/browser");
    let mut install = Command::new("npm");
    run(install.current_dir(&folder).args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"]))?;
    std::fs::write(&stamp, lock)?;
    Ok(())
}

/// wasm-opt, if Node and its package are already there.
pub fn wasm_opt(workspace: &Workspace) -> Option<Command> {
    let script = workspace.node_side().join("node_modules/binaryen/bin/wasm-opt");
    if !script.is_file() || !is_on_path("node") {
        return None;
    }
    let mut command = Command::new("node");
    command.arg(script);
    Some(command)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fallback_needs_compiler_source_and_linker() {
        let whole = Offer {
            system_compiler: true,
            system_library_source: true,
            wasm_linker: Some("wasm-ld-19".to_owned()),
            ..Offer::default()
        };
        let linker = "wasm-ld-19".to_owned();
        assert_eq!(whole.from_source(), Some(WasmToolchain::FromSource { linker }));
        for part in [
            Offer { system_compiler: false, ..whole.clone() },
            Offer { system_library_source: false, ..whole.clone() },
            Offer { wasm_linker: None, ..whole },
        ] {
            assert_eq!(part.from_source(), None);
        }
    }

    #[test]
    fn flags_survive_paths_with_spaces_and_quotes() {
        let flags = ["--remap-path-prefix=/a b/\"c\"\\d=x".to_owned()];
        let parsed: toml::Table = toml::from_str(&format!("flags = {}", toml_array(&flags))).unwrap();
        assert_eq!(parsed["flags"][0].as_str(), Some(flags[0].as_str()));
    }

    #[test]
    fn programs_are_found_by_name_and_by_path() {
        assert!(exists("sh") && exists("/bin/sh"));
        assert!(!exists("/no/such/program") && !exists("no-such-program"));
    }
}
