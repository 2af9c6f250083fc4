//! One conversation, and a line of it turned into what is shown.

use super::screen::Screen;
use crate::reply::{Tone, json_line, reply_json, shown, tape_of};
use crate::session::{Session, step};

/// How answers are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// For a person.
    Text,
    /// For a program: one JSON object a line.
    Json,
}

impl Form {
    /// JSON where asked for.
    pub(super) fn of(json: bool) -> Form {
        if json { Form::Json } else { Form::Text }
    }
}

/// What a line typed at a prompt is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Turn {
    /// An empty line: nothing.
    Nothing,
    /// The word to leave.
    Leave,
    /// Everything else.
    Answer,
}

/// A conversation and the form it is held in.
pub(super) struct Talk {
    session: Session,
    form: Form,
}

impl Talk {
    /// A fresh conversation.
    pub(super) fn new(form: Form) -> Talk {
        Talk { session: Session::new(), form }
    }

    /// The form answers are written in.
    pub(super) fn form(&self) -> Form {
        self.form
    }

    /// What a line typed at a prompt is for. Only the whole line leaves: "exit" inside a
    /// phrase is a word of the phrase.
    pub(super) fn turn(line: &str) -> Turn {
        match line.trim().to_ascii_lowercase().as_str() {
            "" => Turn::Nothing,
            "quit" | "exit" | "bye" => Turn::Leave,
            _ => Turn::Answer,
        }
    }

    /// Takes the line in and gives the answer as it is to be written, with no line break at its end.
    pub(super) fn answer(&mut self, line: &str, screen: Screen) -> String {
        let (delta, reply) = step(&self.session, line);
        self.session.apply(delta);
        let job = self.session.job();
        match self.form {
            Form::Json => json_line(&reply_json(line, &reply, job)),
            Form::Text => {
                let rows = shown(&reply, screen.width, tape_of(job));
                let rows: Vec<String> = rows.into_iter().map(|s| paint(s.tone, s.text, screen.colour)).collect();
                rows.join("\n")
            }
        }
    }
}

/// Cautions in yellow, stops in bold red (ECMA-48 SGR); the words say the same without it.
fn paint(tone: Tone, text: String, colour: bool) -> String {
    let code = match tone {
        Tone::Caution => "33",
        Tone::Stop => "1;31",
        Tone::Plain => return text,
    };
    if !colour {
        return text;
    }
    let rows: Vec<String> = text.split('\n').map(|row| format!("\x1b[{code}m{row}\x1b[0m")).collect();
    rows.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_whole_line_leaves() {
        let rows = [
            ("", Turn::Nothing),
            ("  ", Turn::Nothing),
            ("quit", Turn::Leave),
            (" Bye ", Turn::Leave),
            ("EXIT", Turn::Leave),
            ("gate at the exit", Turn::Answer),
            ("quit it", Turn::Answer),
        ];
        for (line, want) in rows {
            assert_eq!(Talk::turn(line), want, "{line:?}");
        }
    }

    #[test]
    fn paint_covers_each_row_and_only_where_welcome() {
        let text = || "a\nb".to_owned();
        assert_eq!(paint(Tone::Stop, text(), true), "\x1b[1;31ma\x1b[0m\n\x1b[1;31mb\x1b[0m");
        assert_eq!(paint(Tone::Stop, text(), false), "a\nb");
        assert_eq!(paint(Tone::Plain, text(), true), "a\nb");
    }
}
