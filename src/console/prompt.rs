//! The line editor's adapter: the only module that knows its traits.

use super::lines::split;
use super::out::{Out, Trouble};
use super::screen::Screen;
use super::talk::{Form, Talk, Turn};
use super::{PROMPT, paths, welcome};
use crate::reply::safe;
use reedline::{
    Color, EditCommand, EditMode, Emacs, FileBackedHistory, Highlighter, Prompt, PromptEditMode, PromptHistorySearch,
    PromptHistorySearchStatus, Reedline, ReedlineEvent, ReedlineRawEvent, Signal, StyledText,
    default_emacs_keybindings,
};
use std::borrow::Cow;
use std::io;

/// Lines remembered from one day to the next.
const REMEMBERED: usize = 1_000;

/// Talks at a terminal until the person leaves; `found` is what the job file was found like.
///
/// # Errors
/// What could not be read or written.
pub(super) fn converse(talk: &mut Talk, found: &str) -> Result<(), Trouble> {
    let history = paths::history();
    let mut out = Out::new(io::stdout());
    if history.as_ref().is_none_or(|file| !file.exists()) {
        out.write(&welcome())?;
    }
    out.write(found)?;
    out.flush()?;
    let mut editor = editor(history.and_then(|file| FileBackedHistory::with_file(REMEMBERED, file).ok()));
    loop {
        match editor.read_line(&Mark).map_err(Trouble::Read)? {
            Signal::Success(typed) => {
                if answer(talk, &typed, &mut out)? == Turn::Leave {
                    return Ok(());
                }
                // Kept line by line, for the day the window is closed; where it cannot be, the talk goes on.
                let _ = editor.sync_history();
            }
            Signal::CtrlD => return Ok(()),
            // Ctrl-C has cleared the line; nothing else is ever sent.
            _ => {}
        }
    }
}

/// Answers what was entered: a line, or a paste of several, each in turn. One undo takes a paste back.
fn answer(talk: &mut Talk, typed: &str, out: &mut Out<io::Stdout>) -> Result<Turn, Trouble> {
    let before = talk.begin_paste();
    let turn = each(talk, typed, out);
    talk.end_paste(before);
    turn
}

fn each(talk: &mut Talk, typed: &str, out: &mut Out<io::Stdout>) -> Result<Turn, Trouble> {
    for line in split(typed) {
        match Talk::turn(&line) {
            Turn::Leave => return Ok(Turn::Leave),
            Turn::Nothing => {}
            Turn::Answer => out.answer(&talk.answer(&line, Screen::of_stdout()), Form::Text)?,
        }
    }
    out.flush()?;
    Ok(Turn::Answer)
}

fn editor(history: Option<FileBackedHistory>) -> Reedline {
    let editor = Reedline::create()
        .use_bracketed_paste(true)
        .with_ansi_colors(Screen::paints())
        .with_highlighter(Box::new(Unpainted))
        .with_edit_mode(Box::new(Guarded(Emacs::new(default_emacs_keybindings()))));
    match history {
        Some(history) => editor.with_history(Box::new(history)),
        None => editor,
    }
}

/// The prompt.
struct Mark;

impl Prompt for Mark {
    fn render_prompt_left(&self) -> Cow<'_, str> {
        Cow::Borrowed("")
    }

    fn render_prompt_right(&self) -> Cow<'_, str> {
        Cow::Borrowed("")
    }

    fn render_prompt_indicator(&self, _: PromptEditMode) -> Cow<'_, str> {
        Cow::Borrowed(PROMPT)
    }

    fn render_prompt_multiline_indicator(&self) -> Cow<'_, str> {
        Cow::Borrowed("  ")
    }

    fn render_prompt_history_search_indicator(&self, search: PromptHistorySearch) -> Cow<'_, str> {
        let found = match search.status {
            PromptHistorySearchStatus::Passing => "said before",
            PromptHistorySearchStatus::Failing => "never said",
        };
        Cow::Owned(format!("({found}: {}) ", safe(&search.term)))
    }

    fn get_prompt_color(&self) -> Color {
        Color::Default
    }

    fn get_prompt_multiline_color(&self) -> Color {
        Color::Default
    }

    fn get_indicator_color(&self) -> Color {
        Color::Default
    }
}

/// Shows the line as typed.
struct Unpainted;

impl Highlighter for Unpainted {
    fn highlight(&self, line: &str, _cursor: usize) -> StyledText {
        let mut shown = StyledText::new();
        shown.push((Default::default(), line.to_owned()));
        shown
    }
}

/// Keys as the editor knows them, but nothing typed or pasted can steer the terminal:
/// the editor prints its line as it holds it, so an escape sequence in a paste must not
/// get into the line.
struct Guarded(Emacs);

impl EditMode for Guarded {
    fn parse_event(&mut self, event: ReedlineRawEvent) -> ReedlineEvent {
        guarded(self.0.parse_event(event))
    }

    fn edit_mode(&self) -> PromptEditMode {
        self.0.edit_mode()
    }
}

fn guarded(event: ReedlineEvent) -> ReedlineEvent {
    match event {
        ReedlineEvent::Edit(commands) => ReedlineEvent::Edit(commands.into_iter().map(guarded_edit).collect()),
        ReedlineEvent::Multiple(events) => ReedlineEvent::Multiple(events.into_iter().map(guarded).collect()),
        other => other,
    }
}

fn guarded_edit(command: EditCommand) -> EditCommand {
    match command {
        EditCommand::InsertChar(c) => {
            EditCommand::InsertChar(safe(c.encode_utf8(&mut [0; 4])).chars().next().unwrap_or(c))
        }
        EditCommand::InsertString(s) => EditCommand::InsertString(safe(&s.replace('\t', " "))),
        other => other,
    }
}
