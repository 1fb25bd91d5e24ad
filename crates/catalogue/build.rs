//! Checks the data files and packs them. A problem in them fails the build, each with its file and line.

// The build uses a part of what the library offers.
#[allow(dead_code)]
#[path = "src/property.rs"]
mod property;
#[allow(dead_code)]
#[path = "src/stored.rs"]
mod stored;
#[allow(dead_code, unused_imports)]
#[path = "src/tables/mod.rs"]
mod tables;

use std::error::Error;
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::var("CARGO_MANIFEST_DIR")?).join("data");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    println!("cargo::rerun-if-changed=data");
    println!("cargo::rerun-if-changed=src/tables");
    println!("cargo::rerun-if-changed=src/property.rs");
    println!("cargo::rerun-if-changed=src/stored.rs");
    let (tables, problems) = tables::read(&folder);
    for problem in &problems {
        println!("cargo::error=data/{problem}");
    }
    if problems.is_empty() {
        let stored = tables::pack(&tables).map_err(|problem| problem.to_string())?;
        std::fs::write(out.join("catalogue.postcard"), postcard::to_stdvec(&stored)?)?;
    }
    Ok(())
}
