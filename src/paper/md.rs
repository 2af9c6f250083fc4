//! The document as Markdown: notes that paste back.

use super::doc::{Block, Document};
use std::borrow::Cow;

/// The first line of notes.
pub const HEAD: &str = "# Guard layout notes";
/// What opens the job in them.
const OPENS: &str = "```railhand";
const CLOSES: &str = "```";
/// How wide notes are.
const COLUMNS: usize = 72;

/// The document as Markdown, 72 columns wide but for what may not be broken.
pub fn markdown(document: &Document) -> String {
    let mut out = format!("{HEAD}\n");
    for part in &document.parts {
        out.push_str(&format!("\n## {}\n\n", part.heading));
        let mut drawing = false;
        for block in &part.blocks {
            let mono = matches!(block, Block::Mono(_));
            if mono != drawing {
                out.push_str(if mono { "\n```text\n" } else { "```\n\n" });
                drawing = mono;
            }
            match block {
                Block::Lead(words) => {
                    // A sentence behind a list would be taken into its last row.
                    out.push_str(if out.ends_with("\n\n") { "" } else { "\n" });
                    wrapped(&mut out, "", "", &escaped(words));
                    out.push('\n');
                }
                Block::Row(words) => wrapped(&mut out, "- ", "  ", &escaped(words)),
                Block::Check(words) => wrapped(&mut out, "- **Check:** ", "  ", &escaped(words)),
                Block::Stop(words) => wrapped(&mut out, "- **Stop:** ", "  ", &escaped(words)),
                Block::Mono(row) => out.push_str(&format!("{row}\n")),
                // Notes have the drawing in characters.
                Block::Figure(_) => {}
            }
        }
        if drawing {
            out.push_str("```\n");
        }
    }
    out.push_str("\n## The job: paste these notes back to go on\n\n");
    out.push_str(&format!("{OPENS}\n"));
    document.phrases.iter().for_each(|p| out.push_str(&format!("{p}\n")));
    out.push_str(&format!("{CLOSES}\n"));
    out
}

/// Signs that would be formatting, made plain. A list, a heading or a number at a line's start comes from here
/// alone: what is written always stands behind a lead of its own or is a sentence.
fn escaped(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.chars() {
        if matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '~') || c == '#' && out.is_empty() {
            out.push('\\');
        }
        out.push(c);
    }
    out
}

fn wrapped(out: &mut String, lead: &str, hang: &str, words: &str) {
    let mut row = lead.to_owned();
    let mut fresh = true;
    for word in words.split(' ').filter(|w| !w.is_empty()) {
        if !fresh && row.chars().count() + 1 + word.chars().count() > COLUMNS {
            out.push_str(&format!("{}\n", row.trim_end()));
            row = hang.to_owned();
            fresh = true;
        }
        if !fresh {
            row.push(' ');
        }
        row.push_str(word);
        fresh = false;
    }
    out.push_str(&format!("{}\n", row.trim_end()));
}

/// The lines of a paste to be taken in: all of them, or of notes pasted back the phrases of their job alone. `None`
/// for notes whose job was left out or cut off.
pub fn lines_to_take<'a>(lines: &[Cow<'a, str>]) -> Option<Vec<Cow<'a, str>>> {
    let Some(head) = lines.iter().position(|l| l.trim_end() == HEAD) else { return Some(lines.to_vec()) };
    let notes = &lines[head..];
    let open = notes.iter().position(|l| l.trim_end() == OPENS)?;
    let close = notes[open + 1..].iter().position(|l| l.trim_end() == CLOSES)?;
    Some(notes[open + 1..open + 1 + close].to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<Cow<'_, str>> {
        text.lines().map(Cow::Borrowed).collect()
    }

    #[test]
    fn signs_of_formatting_are_words() {
        assert_eq!(escaped("# a *b* <c> [d](e) `f` |g"), "\\# a \\*b\\* \\<c\\> \\[d\\](e) \\`f\\` \\|g");
        assert_eq!(escaped("10'-0\" = 120\""), "10'-0\" = 120\"");
    }

    #[test]
    fn notes_pasted_back_are_their_job_alone() {
        let text = "# Guard layout notes\n\n- not this\n```railhand\nrun 1\nheight\n```\nnor this";
        assert_eq!(lines_to_take(&lines(text)), Some(lines("run 1\nheight")));
        assert_eq!(lines_to_take(&lines("a\nb")), Some(lines("a\nb")));
        assert_eq!(lines_to_take(&lines("# Guard layout notes\nrun 1")), None);
        assert_eq!(lines_to_take(&lines("# Guard layout notes\n```railhand\nrun 1")), None);
    }
}
