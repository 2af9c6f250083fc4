//! The corpus: blocks of lines and what they mean, as `grammar/talk/*.txt` has them.

use railhand::grammar::scores::source_of;
use std::path::Path;

/// One meaning and the talks that say it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Block {
    /// Its id: the comment that is one, or else its meanings as written.
    pub id: String,
    /// What each line of the talk means.
    pub meanings: Vec<Meaning>,
    /// Talks, each of as many lines as there are meanings.
    pub talks: Vec<Vec<String>>,
}

/// What one line means.
#[derive(Clone, Debug, PartialEq)]
pub struct Meaning {
    /// What it does.
    pub act: String,
    /// The rows, topics or lists it wants.
    pub wants: Vec<String>,
    /// What it tells: a row, without the thing in front of it, and its value as written.
    pub facts: Vec<(String, String)>,
}

/// What a line may do.
pub const ACTS: &[&str] = &[
    "tell", "ask", "judge", "suppose", "rule", "why", "sum", "drop", "note", "undo", "keep", "leave", "talk", "list",
    "unclear", "foreign", "bad",
];

/// The folder's `.txt` files and their texts, in the order of their names; `topics.txt`, which lists what may be wanted besides
/// rows and holds no talk, left out.
fn texts(folder: &Path) -> Result<Vec<(String, String)>, String> {
    let said = |e: std::io::Error| format!("{}: {e}", folder.display());
    let entries: Result<Vec<_>, _> = std::fs::read_dir(folder).map_err(said)?.collect();
    let names = entries.map_err(said)?.into_iter().map(|e| e.file_name().to_string_lossy().into_owned());
    let mut names: Vec<String> = names.filter(|n| n.ends_with(".txt") && n != "topics.txt").collect();
    names.sort();
    let text = |name: String| Ok((name.clone(), std::fs::read_to_string(folder.join(&name)).map_err(said)?));
    names.into_iter().map(text).collect()
}

/// Every block of the folder.
pub fn read(folder: &Path) -> Result<Vec<Block>, String> {
    let mut blocks = Vec::new();
    for (name, text) in texts(folder)? {
        blocks.extend(parse(&text).map_err(|e| format!("{}/{name}:{e}", folder.display()))?);
    }
    Ok(blocks)
}

/// What the weights are learned from, as one number.
pub fn source(folder: &Path) -> Result<u64, String> {
    let texts = texts(folder)?;
    Ok(source_of(texts.iter().map(|(name, text)| (name.as_str(), text.as_str()))))
}

/// The blocks of one file; an error begins with the number of its line.
pub fn parse(text: &str) -> Result<Vec<Block>, String> {
    let mut blocks = Vec::new();
    let mut open = Block::default();
    for (at, line) in text.lines().chain([""]).enumerate() {
        let wrong = |why: String| format!("{}: {why}", at + 1);
        match line.trim() {
            "" if open.talks.is_empty() && open.meanings.is_empty() => open = Block::default(),
            "" if open.talks.is_empty() || open.meanings.is_empty() => {
                return Err(wrong("a block wants a meaning and a line".into()));
            }
            "" => blocks.push(std::mem::take(&mut open)),
            comment if comment.starts_with('#') => open.id = id(comment).unwrap_or(std::mem::take(&mut open.id)),
            said if said.starts_with('>') => {
                let talk: Vec<String> = said[1..].split(" || ").map(|s| s.trim().to_owned()).collect();
                if talk.len() != open.meanings.len() {
                    return Err(wrong(format!("{} lines for {} meanings", talk.len(), open.meanings.len())));
                }
                open.talks.push(talk);
            }
            _ if !open.talks.is_empty() => return Err(wrong("a meaning after the lines".into())),
            means => {
                open.meanings.push(meaning(means).map_err(wrong)?);
                if id(&format!("# {}", open.id)).is_none() {
                    open.id += means;
                }
            }
        }
    }
    Ok(blocks)
}

/// "# TC012" is an id: capital letters and figures.
fn id(comment: &str) -> Option<String> {
    let text = comment.trim_start_matches('#').trim();
    let figures = text.trim_start_matches(|c: char| c.is_ascii_uppercase());
    let is = figures.len() < text.len() && !figures.is_empty() && figures.bytes().all(|b| b.is_ascii_digit());
    is.then(|| text.to_owned())
}

/// `ACT [WANT[, WANT]] | ROW VALUE; ROW VALUE`
fn meaning(text: &str) -> Result<Meaning, String> {
    let (head, facts) = text.split_once('|').unwrap_or((text, ""));
    let (act, wants) = head.trim().split_once(' ').unwrap_or((head.trim(), ""));
    if !ACTS.contains(&act) {
        return Err(format!("no act is called {act}"));
    }
    let wants = listed(wants, ',').map(|want| of_thing(want).to_owned()).collect();
    let facts = listed(facts, ';').map(fact).collect::<Result<_, _>>()?;
    Ok(Meaning { act: act.to_owned(), wants, facts })
}

fn listed(text: &str, by: char) -> impl Iterator<Item = &str> {
    text.split(by).map(str::trim).filter(|t| !t.is_empty())
}

/// `run#2.run-length 144"`
fn fact(text: &str) -> Result<(String, String), String> {
    let (row, value) = text.split_once(' ').ok_or_else(|| format!("{text} has no value"))?;
    Ok((of_thing(row).to_owned(), value.trim().to_owned()))
}

/// The row without the thing it is of.
fn of_thing(row: &str) -> &str {
    row.rsplit_once('.').map_or(row, |(_, row)| row)
}
