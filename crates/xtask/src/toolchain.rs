//! What the commands need on the machine: the wasm target, Node, wasm-opt, a browser. Each is found, or installed where
//! that can be done without asking, or named exactly.

use crate::workspace::{Workspace, is_on_path, run, say};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The platform the page runs on.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// Where the source of the standard library lies below a compiler's folder.
const LIBRARY_SOURCE: &str = "lib/rustlib/src/rust/library/std";

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

/// What the fallback needs: a compiler of the system, the source of its standard library, and a linker.
#[derive(Debug, Default, Clone)]
struct SystemCompiler {
    compiler: bool,
    std_source: bool,
    linker: Option<String>,
}

impl SystemCompiler {
    fn look() -> Self {
        Self {
            compiler: Path::new("/usr/bin/rustc").is_file(),
            std_source: Path::new("/usr").join(LIBRARY_SOURCE).is_dir(),
            linker: ["wasm-ld", "wasm-ld-21", "wasm-ld-20", "wasm-ld-19"]
                .into_iter()
                .find(|linker| is_on_path(linker))
                .map(str::to_owned),
        }
    }

    /// The toolchain these make, if none is missing.
    fn toolchain(&self) -> Option<WasmToolchain> {
        let linker = self.linker.clone()?;
        (self.compiler && self.std_source).then_some(WasmToolchain::FromSource { linker })
    }
}

const NO_WASM: &str = "no compiler here can build for the browser. Any one of these cures it:\n  \
     rustup target add wasm32-unknown-unknown          (a Rust toolchain managed by rustup)\n  \
     apt-get install -y rustc-web rust-web-src lld-19  (Debian; then run this command again)";

/// Finds a wasm toolchain in the documented order and says which it took.
pub fn wasm_toolchain() -> Result<WasmToolchain> {
    let has_it = || sysroot("rustc").is_some_and(|root| has_target(&root));
    if has_it() {
        say("wasm target: installed");
        return Ok(WasmToolchain::Installed);
    }
    if is_on_path("rustup") {
        say("wasm target: not installed, asking rustup to add it");
        let mut add = Command::new("rustup");
        if run(add.args(["target", "add", TARGET])).is_ok() && has_it() {
            say("wasm target: added by rustup");
            return Ok(WasmToolchain::Added);
        }
    }
    let Some(fallback) = SystemCompiler::look().toolchain() else {
        bail!(NO_WASM);
    };
    say("wasm target: the system's compiler with the standard library built from its source");
    Ok(fallback)
}

impl WasmToolchain {
    /// A cargo command that compiles for the browser with this toolchain. The subcommand and its arguments may follow.
    pub fn cargo(&self, workspace: &Workspace, subcommand: &str) -> Command {
        let mut command = workspace.cargo(subcommand);
        command.args(["--target", TARGET]);
        // The built file must not tell whose machine built it, and must be the same on each. Later remaps win.
        let mut remaps = vec![(workspace.root.clone(), "stillroom")];
        if let Some(home) = cargo_home() {
            let sources = home.join("registry/src");
            remaps.push((home, "cargo"));
            let registries = std::fs::read_dir(sources).into_iter().flatten().flatten();
            remaps.extend(registries.map(|registry| (registry.path(), "crates")));
        }
        if let Some(root) = sysroot("rustc") {
            remaps.push((root, "rust"));
        }
        let flags: Vec<String> =
            remaps.iter().map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display())).collect();
        command.arg("--config").arg(format!("target.{TARGET}.rustflags={}", toml_array(&flags)));
        // The bindings generator reads there which features of WebAssembly are in use, and strips the rest itself.
        command.args(["--config", "profile.release.strip=\"debuginfo\""]);
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

    /// A cargo command for what is released, and where it builds. The standard library is built with it, for size, and
    /// a panic traps at once: nobody reads its message in a browser, and with the library as it comes the first visit
    /// waits for a tenth more. Of the compiler this asks for options that are not stable; its version is pinned. Where the library's
    /// source cannot be had, it is the library as it comes.
    pub fn cargo_for_release(&self, workspace: &Workspace, subcommand: &str) -> (Command, PathBuf) {
        let mut command = self.cargo(workspace, subcommand);
        if matches!(self, Self::FromSource { .. }) || !has_library_source() {
            return (command, self.target_folder(workspace));
        }
        // A folder of its own: build scripts look at the variable, and would be run again by every other command.
        let folder = workspace.target.join("from-source");
        command
            .env("RUSTC_BOOTSTRAP", "1")
            .args(["-Z", "build-std=std,panic_abort", "-Z", "build-std-features=optimize_for_size"])
            .args([
                "-Z",
                "panic-immediate-abort",
                "--config",
                "profile.release.panic=\"immediate-abort\"",
                "--target-dir",
            ])
            .arg(&folder);
        (command, folder)
    }

    /// Where this toolchain's builds go: two compilers must not undo each other's work.
    pub fn target_folder(&self, workspace: &Workspace) -> PathBuf {
        match self {
            Self::Installed | Self::Added => workspace.target.clone(),
            Self::FromSource { .. } => workspace.target.join("from-source"),
        }
    }
}

/// Whether the standard library's source is there, or rustup can add it.
fn has_library_source() -> bool {
    let is_there = || sysroot("rustc").is_some_and(|root| root.join(LIBRARY_SOURCE).is_dir());
    if is_there() {
        return true;
    }
    if is_on_path("rustup") {
        say("the standard library's source is missing, asking rustup to add it");
        if run(Command::new("rustup").args(["component", "add", "rust-src"])).is_ok() && is_there() {
            return true;
        }
    }
    say("the standard library's source cannot be had: the seam will be about 20 kB larger than its budget knows");
    false
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
        let mut command = Command::new("cargo");
        command
            .current_dir(&workspace.root)
            .args([subcommand, "--version"])
            .stdout(Stdio::null())
            .stderr(Stdio::null());
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
            where_to_say(program)
        );
    }
    Ok(())
}

/// How to name a browser that lies elsewhere.
fn where_to_say(program: &str) -> &'static str {
    if program.contains("chromium") {
        " and set CHROME_PATH to the browser"
    } else if program.contains("firefox") {
        " and set FIREFOX_PATH to the browser"
    } else {
        ""
    }
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

/// The other browser: it runs the main job.
pub fn firefox() -> String {
    std::env::var("FIREFOX_PATH").unwrap_or_else(|_| "/usr/bin/firefox-esr".to_owned())
}

/// The oldest Node that the packages of `tests/browser` accept.
const OLDEST_NODE: u32 = 20;
/// What is fetched as a package where the system's Node is older than that.
const FETCHED_NODE: &str = "22.23.3";

/// Makes sure that Node is there and new enough, and returns the program.
fn ensure_node(workspace: &Workspace) -> Result<PathBuf> {
    ensure_programs(&[("node", "nodejs"), ("npm", "npm")])?;
    if let Some(node) = node(workspace) {
        return Ok(node);
    }
    let architecture = match std::env::consts::ARCH {
        "x86_64" => "x64",
        "aarch64" => "arm64",
        other => bail!("Node is older than {OLDEST_NODE}, and none is packaged for {other}: install a newer one"),
    };
    say(&format!("Node is older than {OLDEST_NODE}: fetching {FETCHED_NODE} as a package"));
    let folder = fetched_node(workspace);
    std::fs::create_dir_all(&folder)?;
    run(Command::new("npm")
        .args(["install", "--no-save", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix"])
        .arg(&folder)
        .arg(format!("node-{}-{architecture}@{FETCHED_NODE}", std::env::consts::OS)))?;
    node(workspace).with_context(|| format!("install Node {OLDEST_NODE} or newer"))
}

fn fetched_node(workspace: &Workspace) -> PathBuf {
    workspace.target.join("xtask/node")
}

/// Node, if one that is new enough is already there.
pub fn node(workspace: &Workspace) -> Option<PathBuf> {
    let fetched = std::fs::read_dir(fetched_node(workspace).join("node_modules"))
        .into_iter()
        .flatten()
        .flatten()
        .map(|package| package.path().join("bin/node"));
    std::iter::once(PathBuf::from("node")).chain(fetched).find(|program| {
        Command::new(program).arg("--version").output().is_ok_and(|output| {
            major_version(&String::from_utf8_lossy(&output.stdout)).is_some_and(|major| major >= OLDEST_NODE)
        })
    })
}

fn major_version(answer: &str) -> Option<u32> {
    answer.trim().strip_prefix('v')?.split('.').next()?.parse().ok()
}

/// Makes sure that Node and the packages of `tests/browser` are there, and returns the program.
pub fn ensure_node_packages(workspace: &Workspace) -> Result<PathBuf> {
    ensure_packages_of(workspace, "tests/browser")
}

/// Makes sure that Node and the packages that the lock of a folder names are there, and returns the program.
pub fn ensure_packages_of(workspace: &Workspace, place: &str) -> Result<PathBuf> {
    let node = ensure_node(workspace)?;
    let folder = workspace.path(place);
    let lock = std::fs::read(folder.join("package-lock.json")).context("package-lock.json cannot be read")?;
    let stamp = folder.join("node_modules/.installed-from");
    if std::fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(node);
    }
    say(&format!("installing the Node packages of {place}"));
    let mut install = Command::new("npm");
    run(install.current_dir(&folder).args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"]))?;
    std::fs::write(&stamp, lock)?;
    Ok(node)
}

/// wasm-opt, if Node and its package are already there.
pub fn wasm_opt(workspace: &Workspace) -> Option<Command> {
    let script = workspace.node_side().join("node_modules/binaryen/bin/wasm-opt");
    if !script.is_file() {
        return None;
    }
    let mut command = Command::new(node(workspace)?);
    command.arg(script);
    Some(command)
}

/// Node with a script of the Node side, if both Node and the package the script needs are there.
pub fn node_script(workspace: &Workspace, script: &str, package: &str) -> Option<Command> {
    let folder = workspace.node_side();
    if !folder.join("node_modules").join(package).is_dir() {
        return None;
    }
    let mut command = Command::new(node(workspace)?);
    command.arg(script).current_dir(folder);
    Some(command)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fallback_needs_compiler_source_and_linker() {
        let whole = SystemCompiler { compiler: true, std_source: true, linker: Some("wasm-ld-19".to_owned()) };
        let linker = "wasm-ld-19".to_owned();
        assert_eq!(whole.toolchain(), Some(WasmToolchain::FromSource { linker }));
        for part in [
            SystemCompiler { compiler: false, ..whole.clone() },
            SystemCompiler { std_source: false, ..whole.clone() },
            SystemCompiler { linker: None, ..whole },
        ] {
            assert_eq!(part.toolchain(), None);
        }
    }

    #[test]
    fn flags_survive_paths_with_spaces_and_quotes() {
        let flags = ["--remap-path-prefix=/a b/\"c\"\\d=x".to_owned()];
        let parsed: toml::Table = toml::from_str(&format!("flags = {}", toml_array(&flags))).unwrap();
        assert_eq!(parsed["flags"][0].as_str(), Some(flags[0].as_str()));
    }

    #[test]
    fn the_age_of_node_is_read_from_its_answer() {
        assert_eq!(major_version("v20.20.2\n"), Some(20));
        assert_eq!(major_version("v9.1.0"), Some(9));
        assert_eq!(major_version("node: not found"), None);
    }

    #[test]
    fn programs_are_found_by_name_and_by_path() {
        assert!(exists("sh") && exists("/bin/sh"));
        assert!(!exists("/no/such/program") && !exists("no-such-program"));
    }
}
