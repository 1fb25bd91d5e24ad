//! Puts what a person reads into the folder that is served: a table a language and piece for the session, a script a language
//! and room for the page.

use crate::site::{self, Files};
use crate::workspace::Workspace;
use anyhow::Result;
use stillroom_messages::{
    BESIDE, Catalogue, LANGUAGES, pack_names, pack_words, rooms_of_page, write_code, write_script, write_script_types,
};

/// Where the message files lie.
const MESSAGES: &str = "crates/web/messages";
/// Where the names of materials and the texts of tables lie.
const DATA: &str = "crates/catalogue/data";

/// Reads the message files.
pub fn read(workspace: &Workspace) -> Result<Catalogue> {
    Ok(stillroom_messages::read(&workspace.path(MESSAGES))?)
}

/// Adds the tables below `texts/` and the scripts below `words/LANGUAGE/`.
pub fn add(workspace: &Workspace, catalogue: &Catalogue, files: &mut Files) -> Result<()> {
    let (_, tables) = write_code(catalogue);
    for (name, table) in tables {
        files.insert(format!("texts/{name}.txt"), table.into_bytes());
    }
    let data = workspace.path(DATA);
    for language in &LANGUAGES[1..] {
        for (what, packed) in BESIDE.iter().zip([pack_names(&data, language)?, pack_words(&data, language)?]) {
            files.insert(format!("texts/{language}-{what}.txt"), packed.into_bytes());
        }
    }
    for language in LANGUAGES {
        for room in rooms_of_page(catalogue) {
            let script = write_script(catalogue, room, language);
            files.insert(format!("words/{language}/{room}.js"), script.into_bytes());
        }
    }
    Ok(())
}

/// Where the kept copy of the types of the page's texts lies, so that the page can be checked against it.
const KEPT_WORDS: &str = "www/words.d.ts";

/// Rewrites the kept copy of the types of the page's texts.
pub fn keep_types(workspace: &Workspace, catalogue: &Catalogue) -> Result<()> {
    site::keep(workspace, KEPT_WORDS, &write_script_types(catalogue))
}

/// Compares the kept copy with what the message files say.
pub fn compare_kept_types(workspace: &Workspace, catalogue: &Catalogue) -> Result<()> {
    site::compare_kept(workspace, KEPT_WORDS, &write_script_types(catalogue), "messages")
}

/// The words of each room, at the place of the script that loads them.
pub fn words_of_rooms(catalogue: &Catalogue) -> Vec<(String, String)> {
    let place_of = |room: &str| match room {
        "common" => "www/dom/words.js".to_owned(),
        "embed" => "www/embed/words.js".to_owned(),
        room => format!("www/rooms/{room}/words.js"),
    };
    let rooms = rooms_of_page(catalogue).into_iter().filter(|room| !["html", "docs"].contains(room));
    rooms.map(|room| (place_of(room), write_script(catalogue, room, LANGUAGES[0]))).collect()
}

/// Whether only a page in another language than the first fetches a file of the site.
pub fn is_of_another_language(path: &str) -> bool {
    LANGUAGES[1..]
        .iter()
        .any(|language| path.contains(&format!("/texts/{language}-")) || path.contains(&format!("/words/{language}/")))
}
