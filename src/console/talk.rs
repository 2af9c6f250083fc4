//! One conversation, and a line of it turned into what is shown.

use super::colours::paint;
use super::copy::{self, Wanted};
use super::screen::Screen;
use super::weighed::readings_json;
use crate::paper::{HEAD, lines_to_take};
use crate::reply::{
    Line, Reply, Role, Shown, Span, Status, Typed, fold, json_line, plain, reply_json, rows as rows_of, shown, tape_of,
};
use crate::session::{Considered, Session, considered, meant, step};
use crate::store::{Kept, NotKept, Opened, Pasted, Store, pasted};
use std::borrow::Cow;

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
    /// The word for what waits of the last answer.
    More,
    /// Everything else.
    Answer,
}

/// The widest a run is drawn: to scale it reads no better wider.
const DRAWN: usize = 72;

/// Rows of a window that are not the answer's: the line typed, the next prompt, the row that tells what waits.
const ROOM: usize = 4;
/// The fewest rows an answer is folded to.
const LEAST: usize = 8;

/// A conversation, the form it is held in, and the file it is kept in.
pub(super) struct Talk {
    session: Session,
    form: Form,
    store: Option<Store>,
    /// True where answers are folded to the window.
    folds: bool,
    /// What of the last answer waits for "more".
    waits: Vec<Shown>,
    /// The last answer, to be copied.
    last: Option<Reply>,
}

impl Talk {
    /// A fresh conversation, or the one a job file holds.
    pub(super) fn new(form: Form, job: Option<Opened>) -> Talk {
        let (session, store) = match job {
            Some(opened) => (opened.session, Some(opened.store)),
            None => (Session::new(), None),
        };
        Talk { session, form, store, folds: false, waits: Vec::new(), last: None }
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
            "more" | "more?" | "the rest" => Turn::More,
            _ => Turn::Answer,
        }
    }

    /// Takes the line in and gives the answer as it is to be written, with no line break at its
    /// end. What it told is in the job file by then, or the answer says that it is not.
    pub(super) fn answer(&mut self, line: &str, screen: Screen) -> String {
        super::rescue::stumble(line);
        self.session.set_width(screen.width.min(DRAWN));
        if let Some(wanted) = copy::wanted(line) {
            return self.leaving(line, wanted);
        }
        // Weighed against the talk as it stands before the line is taken in.
        let weighed = if self.form == Form::Json { considered(&self.session, line) } else { Vec::new() };
        let reply = match pasted(line) {
            _ if line.trim_end() == HEAD => {
                let says = "Those are notes without the job at their end: nothing was taken in. Paste them whole.";
                Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }
            }
            Pasted::Line => self.take(line, line),
            Pasted::Phrase(phrase, said) => self.take(phrase, said),
            other => out_of_a_file(other),
        };
        let job = self.session.job();
        let text = match self.form {
            Form::Json => self.json(line, &reply, &weighed),
            Form::Text => {
                let rows = shown(&reply, screen.width, tape_of(job));
                self.folded(rows, screen)
            }
        };
        self.last = Some(reply);
        text
    }

    /// The line's object: the contract's keys, and with a job file whether it holds everything.
    fn json(&self, line: &str, reply: &Reply, weighed: &[Considered]) -> String {
        let mut object = reply_json(line, reply, self.session.job());
        if let Some(fields) = object.as_object_mut() {
            fields.extend(self.store.iter().map(|s| ("kept".to_owned(), s.holds_all().into())));
            fields.insert("readings".into(), readings_json(weighed));
        }
        json_line(&object)
    }

    /// Notes, or what is copied: written as it is, neither wrapped nor painted.
    fn leaving(&mut self, line: &str, wanted: Wanted) -> String {
        let job = self.session.job();
        let last = self.last.as_ref().map_or(String::new(), |reply| plain(reply, copy::COLUMNS, tape_of(job)));
        let text = copy::text(wanted, job, &last);
        let text = if text.is_empty() { "There is no answer to copy yet.".to_owned() } else { text };
        if self.form == Form::Json {
            let mut reply = Reply::of(Status::Answered);
            reply.lines = text.lines().map(|row| Line::new(Role::Drawing, [Span::Drawn(row.to_owned())])).collect();
            return self.json(line, &reply, &[]);
        }
        let text = text.trim_end().to_owned();
        // Only a person's terminal has a clipboard; whether it lets us is not told, so the text is shown as well.
        match copy::clipboard(&text).filter(|_| self.folds && wanted != Wanted::Notes) {
            Some(control) => {
                format!("{control}On the clipboard, where your terminal lets me; else take it from here:\n{text}")
            }
            None => text,
        }
    }

    /// The lines of a paste that are to be taken in: of notes pasted back, their job.
    pub(super) fn pasted<'a>(&self, lines: Vec<Cow<'a, str>>) -> Vec<Cow<'a, str>> {
        // Cut off, notes say nothing: their head alone is answered.
        lines_to_take(&lines).unwrap_or_else(|| vec![Cow::Borrowed(HEAD)])
    }

    /// The job file, where it holds everything told.
    pub(super) fn file(&self) -> Option<String> {
        self.store.as_ref().filter(|s| s.holds_all()).map(|s| s.name().to_owned())
    }

    /// The conversation so far.
    pub(super) fn session(&self) -> &Session {
        &self.session
    }

    /// From here on answers are folded to the window: a person sits there.
    pub(super) fn fold(&mut self) {
        self.folds = true;
    }

    /// An answer's rows, painted; what the window has no room for waits for "more".
    fn folded(&mut self, lines: Vec<Shown>, screen: Screen) -> String {
        let most = if self.folds { screen.height.saturating_sub(ROOM).max(LEAST) } else { usize::MAX - 2 };
        let folded = fold(lines, most);
        let mut rows: Vec<String> = folded.shown.iter().map(|s| paint(s.tone, &s.text, screen)).collect();
        if !folded.waits.is_empty() {
            rows.insert(folded.at, format!("  ... {} rows wait: say more", rows_of(&folded.waits)));
        }
        self.waits = folded.waits;
        rows.join("\n")
    }

    /// What waits of the last answer.
    pub(super) fn more(&mut self, screen: Screen) -> String {
        let waits = std::mem::take(&mut self.waits);
        if waits.is_empty() {
            return "There is no more to the last answer.".to_owned();
        }
        // Asked for, it is all shown: whoever asks can scroll.
        let rows: Vec<String> = waits.iter().map(|s| paint(s.tone, &s.text, screen)).collect();
        rows.join("\n")
    }

    /// Takes a line in; `said` are the words it was said in, where they are not the line.
    fn take(&mut self, line: &str, said: &str) -> Reply {
        let meant = meant(&self.session, line);
        if let Some(meant) = &meant {
            if let Some(store) = &mut self.store {
                store.take(&self.session, &meant.delta, &meant.reply, &meant.phrase);
            }
            self.session.apply(meant.delta.clone());
        }
        let (delta, reply) = step(&self.session, line);
        let mut reply = match meant {
            Some(meant) => meant.named_in(reply),
            None => reply,
        };
        if let Some(store) = &mut self.store {
            let kept = store.take(&self.session, &delta, &reply, said);
            reply.lines.extend(kept_line(store.name(), &kept));
        }
        self.session.apply(delta);
        reply
    }

    /// Tells a phrase without an answer; whether it was taken.
    pub(super) fn tell(&mut self, phrase: &str) -> bool {
        self.take(phrase, phrase).status == Status::Told
    }

    /// What is told from here on comes in one paste: one undo takes it back.
    pub(super) fn begin_paste(&mut self) -> usize {
        if let Some(store) = &mut self.store {
            store.begin_paste();
        }
        self.session.told_count()
    }

    /// The paste that began with so many told lines before it has ended.
    pub(super) fn end_paste(&mut self, before: usize) {
        let kept = self.store.as_mut().and_then(Store::end_paste);
        self.session.join_after(kept.unwrap_or(before));
    }

    /// Ends the conversation.
    ///
    /// # Errors
    /// The job file, and why it does not hold everything told.
    pub(super) fn finish(&mut self) -> Result<(), (String, NotKept)> {
        let Some(store) = &mut self.store else { return Ok(()) };
        store.finish().map_err(|why| (store.name().to_owned(), why))
    }
}

/// The answer to a line that stands in job files and is nothing to be taken in.
fn out_of_a_file(line: Pasted<'_>) -> Reply {
    let says = match line {
        Pasted::Head => "That is the head of a job file: nothing to take in. Go on with its lines.",
        Pasted::NewerHead => {
            "That is the head of a later railhand's job file: I may not know all its lines. Look at what I hear."
        }
        Pasted::Aside => "That was set aside in a job file, so I leave it. Say it another way, without the \"?\".",
        _ => "That is a comment in a job file: nothing to take in.",
    };
    Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Answered) }
}

/// What is said of the job file under an answer: nothing while all is well.
fn kept_line(name: &str, kept: &Kept) -> Option<Line> {
    let name = || Span::Typed(Typed::new(name));
    match kept {
        Kept::AsAlways => None,
        Kept::Again => Some(Line::new(Role::Detail, [name(), Span::Say(" holds everything told again.")])),
        Kept::Not(why) => Some(Line::new(
            Role::Caution,
            [
                Span::Say("not kept in "),
                name(),
                Span::Say(": "),
                Span::Say(why.says()),
                Span::Say(". I go on in memory."),
            ],
        )),
    }
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
            ("more", Turn::More),
            ("more posts", Turn::Answer),
            ("gate at the exit", Turn::Answer),
            ("quit it", Turn::Answer),
        ];
        for (line, want) in rows {
            assert_eq!(Talk::turn(line), want, "{line:?}");
        }
    }
}
