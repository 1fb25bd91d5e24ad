//! Builds the seam: compiles it, takes it apart into its pieces, generates its bindings, and shrinks each piece.

use crate::site::{Files, Form, SEAM_PACKAGE, hash_of, text};
use crate::toolchain::{self, WasmToolchain};
use crate::workspace::{Workspace, files_below, run, say};
use anyhow::{Context, Result, bail, ensure};
use std::path::{Path, PathBuf};

/// What cargo calls the compiled seam.
const SEAM_WASM: &str = "stillroom_web.wasm";

/// Compiles the seam, and says where it lies.
pub fn compile(workspace: &Workspace, toolchain: &WasmToolchain, form: Form) -> Result<PathBuf> {
    let profile = match form {
        Form::Released => "release",
        Form::Quick => "quick",
    };
    say(&format!("compiling the seam ({profile})"));
    let (mut command, folder) = match form {
        Form::Released => toolchain.cargo_for_release(workspace, "rustc"),
        Form::Quick => (toolchain.cargo(workspace, "rustc"), toolchain.target_folder(workspace)),
    };
    // A library that other crates could link to as well would not be optimised as a whole.
    command.args(["--package", SEAM_PACKAGE, "--lib", "--crate-type", "cdylib", "--profile", profile]);
    if form == Form::Released {
        // The splitter follows what refers to what.
        command.args(["--features", "split", "--", "-Clink-args=--emit-relocs"]);
    }
    run(&mut command)?;
    Ok(folder.join(toolchain::TARGET).join(profile).join(SEAM_WASM))
}

/// Generates the bindings of the compiled seam: its scripts and types, and the pieces it is taken apart into.
pub fn generate_bindings(workspace: &Workspace, wasm: &Path, form: Form) -> Result<Files> {
    let folder = workspace.target.join("xtask/seam");
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    let (input, is_split) = match form {
        Form::Released => (split_wasm(workspace, wasm, &folder)?, true),
        Form::Quick => (wasm.to_owned(), false),
    };
    let mut bindgen = wasm_bindgen_cli_support::Bindgen::new();
    bindgen
        .input_path(&input)
        .web(true)?
        .typescript(true)
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        // What the pieces share with the first one is exported under the linker's names.
        .keep_lld_exports(is_split)
        .out_name("stillroom");
    bindgen.generate(&folder).context("the seam's bindings could not be generated")?;
    let mut files = Files::new();
    for path in files_below(&folder)? {
        let content = std::fs::read(folder.join(&path))?;
        files.insert(path, content);
    }
    if is_split {
        join_scripts(&mut files)?;
    }
    Ok(files)
}

/// The script that fetches pieces, as the splitter names it and the bindings import it.
const FETCHING: &str = "__wasm_split.js";

/// Puts the script that fetches the pieces into the bindings: one file less to ask for, and a page that asks for the
/// bindings again, under another address, after they failed to arrive does not end up with two of them.
fn join_scripts(files: &mut Files) -> Result<()> {
    let fetching = text(files, FETCHING)?;
    let bindings = text(files, "stillroom.js")?;
    let own_import = format!("import {{ initSync }} from \"./{}\";", "stillroom.js");
    ensure!(fetching.contains(&own_import), "the script that fetches pieces begins otherwise than it used to");
    let mut loaders = Vec::new();
    let mut body = String::new();
    for line in fetching.replace(&own_import, "").lines() {
        if let Some(loader) = line.strip_prefix("export const ") {
            loaders.push(loader.split(' ').next().unwrap_or_default().to_owned());
            body.push_str("const ");
            body.push_str(loader);
        } else {
            body.push_str(line);
        }
        body.push('\n');
    }
    ensure!(!loaders.is_empty(), "the script that fetches pieces fetches none");
    let mut joined = format!("const pieces = (() => {{\n{body}return {{ {} }};\n}})();\n", loaders.join(", "));
    for line in bindings.lines() {
        let imports = format!("from \"./{FETCHING}\"");
        let property = format!("\"./{FETCHING}\": ");
        if line.starts_with("import * as ") && line.contains(&imports) {
            continue;
        }
        match line.trim_start().strip_prefix(&property) {
            Some(_) => joined.extend([property.as_str(), "pieces,"]),
            None => joined.push_str(line),
        }
        joined.push('\n');
    }
    ensure!(joined.matches(FETCHING).count() == joined.matches(": pieces,").count(), "an import of the pieces is left");
    // Parts that several pieces share are numbered by what else there is: plain names do not change with that.
    let shared: Vec<String> = files.keys().filter(|path| path.starts_with("chunk_")).cloned().collect();
    for (at, path) in shared.iter().enumerate() {
        let name = if at == 0 { "common.wasm".to_owned() } else { format!("common{}.wasm", at + 1) };
        joined = joined.replace(path.as_str(), &name);
        let content = files.remove(path).unwrap_or_default();
        files.insert(name, content);
    }
    files.insert("stillroom.js".to_owned(), joined.into_bytes());
    Ok(())
}

/// Takes the compiled seam apart into the first part, which is returned, and pieces beside it in `folder`, with the script
/// that fetches them. The splitter is a program of its own, so that `serve` need not compile it.
fn split_wasm(workspace: &Workspace, wasm: &Path, folder: &Path) -> Result<PathBuf> {
    let first = workspace.target.join("xtask/seam-first.wasm");
    let mut command = workspace.cargo("run");
    command.args(["--quiet", "--package", "xtask", "--features", "wasm-splitter", "--bin", "wasm-splitter", "--"]);
    run(command.arg(wasm).arg(folder).arg(&first))?;
    Ok(first)
}

/// The compiler has inlined already. Doing it again saves raw bytes but makes functions less alike: brotli then needs
/// about 6 % more, as measured on the whole seam.
const WASM_OPT_FLAGS: [&str; 13] = [
    "-Oz",
    "--always-inline-max-function-size=0",
    "--flexible-inline-max-function-size=0",
    "--one-caller-inline-max-function-size=0",
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
    "--strip-producers",
    "--strip-debug",
    "--strip-target-features",
];

/// Whether the sections of a WebAssembly file fill it to its end.
fn is_whole_wasm(file: &[u8]) -> bool {
    let Some(mut rest) = file.strip_prefix(b"\0asm\x01\0\0\0") else { return false };
    while let [_, length @ ..] = rest {
        let (mut size, mut shift, mut at) = (0_usize, 0, 0);
        // A length of seven bits a byte, the lowest first.
        while let Some(byte) = length.get(at).filter(|_| shift < 32) {
            size |= usize::from(byte & 0x7f) << shift;
            (shift, at) = (shift + 7, at + 1);
            if byte & 0x80 == 0 {
                break;
            }
        }
        match length.get(at..).and_then(|body| body.get(size..)) {
            Some(after) if at > 0 => rest = after,
            _ => return false,
        }
    }
    true
}

/// Runs `wasm-opt` over a piece of the seam, unless it has done so for the very same bytes before.
pub fn shrink(workspace: &Workspace, wasm: &[u8]) -> Result<Vec<u8>> {
    let mut command = toolchain::wasm_opt(workspace).context("wasm-opt is missing from tests/browser/node_modules")?;
    let folder = workspace.target.join("xtask/wasm-opt");
    std::fs::create_dir_all(&folder)?;
    let lock = std::fs::read(workspace.node_side().join("package-lock.json"))?;
    let key = &hash_of(&[wasm, &lock, WASM_OPT_FLAGS.concat().as_bytes()])[..24];
    let (before, after) = (folder.join("seam.wasm"), folder.join(format!("{key}.wasm")));
    if !after.is_file() {
        say("shrinking a piece of the seam with wasm-opt");
        std::fs::write(&before, wasm)?;
        let unfinished = folder.join("unfinished.wasm");
        run(command.args(WASM_OPT_FLAGS).arg("-o").arg(&unfinished).arg(&before))?;
        // On a full disk it writes a part and says nothing.
        if !is_whole_wasm(&std::fs::read(&unfinished)?) {
            bail!("wasm-opt left a part of {} bytes: is the disk full?", wasm.len());
        }
        std::fs::rename(&unfinished, &after)?;
    }
    Ok(std::fs::read(&after)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_was_cut_off_is_no_whole_one() {
        let whole = b"\0asm\x01\0\0\0\x00\x81\x00x\x0b\x02ab";
        assert!(is_whole_wasm(whole) && is_whole_wasm(&whole[..8]));
        assert!((9..whole.len()).filter(|end| *end != 12).all(|end| !is_whole_wasm(&whole[..end])));
        assert!(!is_whole_wasm(b"") && !is_whole_wasm(b"<html>"));
    }
}
