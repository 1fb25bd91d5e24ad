//! Takes a compiled seam apart: `wasm-splitter COMPILED FOLDER FIRST`. Pieces and the script that fetches them go into
//! FOLDER, what a page begins with becomes FIRST.

use std::path::Path;
use std::process::ExitCode;
use wasm_split_cli_support::{Options, transform};

/// How the pieces find the bindings, which lie beside them.
const BINDINGS: &str = "./stillroom.js";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [compiled, folder, first] = arguments.as_slice() else {
        eprintln!("wasm-splitter: say which file to take apart, into which folder, and what the first part is called");
        return ExitCode::FAILURE;
    };
    let wasm = match std::fs::read(compiled) {
        Ok(wasm) => wasm,
        Err(error) => {
            eprintln!("wasm-splitter: {compiled}: {error}");
            return ExitCode::FAILURE;
        }
    };
    let mut options = Options::new(&wasm);
    options.output_dir = Path::new(folder);
    options.main_out_path = Path::new(first);
    options.main_module = BINDINGS;
    match transform(options) {
        Ok(_) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("wasm-splitter: {compiled}: {error:?}");
            ExitCode::FAILURE
        }
    }
}
