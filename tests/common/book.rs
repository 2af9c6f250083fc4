//! The phrase book, as written in `grammar/phrases/*.toml`: a file for each kind.
#![allow(dead_code)] // each test crate uses its own part of this

use serde::Deserialize;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// One row: the lines of a conversation, and what comes of the last.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Phrase {
    /// The lines, in order, in a fresh conversation.
    pub say: Vec<String>,
    /// The plain phrase of the last line's act ...
    pub read: Option<String>,
    /// ... or it is asked about ...
    #[serde(default)]
    pub asks: bool,
    /// ... or it cannot be taken.
    #[serde(default)]
    pub refused: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Kind {
    phrase: Vec<Phrase>,
}

/// Every row, by kind.
pub fn book() -> BTreeMap<String, Vec<Phrase>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/phrases");
    let mut kinds = BTreeMap::new();
    for file in fs::read_dir(&folder).expect("the phrase book is a folder of the project") {
        let path = file.expect("its files can be listed").path();
        if path.extension().is_none_or(|end| end != "toml") {
            continue;
        }
        let text = fs::read_to_string(&path).expect("its files can be read");
        let kind: Kind = toml::from_str(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let name = path.file_stem().map(|s| s.to_string_lossy().into_owned());
        kinds.insert(name.expect("a file has a name"), kind.phrase);
    }
    kinds
}
