//! Compiles the message files: a function a message, and the tables that hold what it says in each language.

use std::error::Error;
use std::fs;
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::var("CARGO_MANIFEST_DIR")?).join("messages");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    println!("cargo::rerun-if-changed=messages");
    let catalogue = stillroom_messages::read(&folder)?;
    // What languages do not agree in, a test names; until it is mended the first language stands in.
    let (code, tables) = stillroom_messages::write_code(&catalogue);
    fs::write(out.join("messages.rs"), code)?;
    for (name, table) in tables {
        fs::write(out.join(format!("{name}.txt")), table)?;
    }
    // Natively the tests speak every language; a page fetches what it needs.
    let data = folder.join("../../catalogue/data");
    println!("cargo::rerun-if-changed={}", data.join("material-names.csv").display());
    println!("cargo::rerun-if-changed={}", data.join("words.csv").display());
    for language in &stillroom_messages::LANGUAGES[1..] {
        fs::write(out.join(format!("{language}-names.txt")), stillroom_messages::pack_names(&data, language)?)?;
        fs::write(out.join(format!("{language}-words.txt")), stillroom_messages::pack_words(&data, language)?)?;
    }
    Ok(())
}
