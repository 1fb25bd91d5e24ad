//! Checks the data files and packs them. A problem in them fails the build, each with its file and line.

// The build uses a part of what the library offers.
#[allow(dead_code)]
#[path = "src/packed.rs"]
mod packed;
#[path = "src/packing.rs"]
mod packing;
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
    println!("cargo::rerun-if-changed=src/packed.rs");
    println!("cargo::rerun-if-changed=src/packing.rs");
    println!("cargo::rerun-if-changed=src/property.rs");
    println!("cargo::rerun-if-changed=src/stored.rs");
    let (tables, problems) = tables::read(&folder);
    for problem in &problems {
        println!("cargo::error=data/{problem}");
    }
    if problems.is_empty() {
        for (name, extent) in [("catalogue", tables::Extent::Cards), ("main-job", tables::Extent::MainJob)] {
            let bytes = tables::pack_bytes(&tables, extent).map_err(|problem| problem.to_string())?;
            std::fs::write(out.join(format!("{name}.postcard")), bytes)?;
        }
        for table in tables::EXTRA_TABLES {
            let bytes = tables::pack_table(&tables, table).map_err(|problem| problem.to_string())?;
            std::fs::write(out.join(format!("{}.postcard", table.file)), bytes)?;
        }
    }
    Ok(())
}
