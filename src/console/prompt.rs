//! The line editor's adapter: the only module that knows its traits.

use super::colours::{HINT, of_kind};
use super::lines::split;
use super::offers::{Offer, offers};
use super::out::{Out, Trouble};
use super::screen::Screen;
use super::talk::{Form, Talk, Turn};
use super::{PROMPT, paths, welcome};
use crate::grammar::kinds::{Kind, kinds};
use crate::reply::safe;
use crate::session::{Peek, Session, peek};
use crossterm::terminal::{disable_raw_mode, enable_raw_mode};
use nu_ansi_term::{Color, Style};
use reedline::{
    ColumnarMenu, Completer, CompletionResult, EditCommand, EditMode, Emacs, FileBackedHistory, Highlighter, Hinter,
    History, KeyCode, KeyModifiers, MenuBuilder, Prompt, PromptEditMode, PromptHistorySearch,
    PromptHistorySearchStatus, Reedline, ReedlineEvent, ReedlineMenu, ReedlineRawEvent, Signal, Span, StyledText,
    Suggestion, default_emacs_keybindings,
};
use std::borrow::Cow;
use std::io::{self, Write};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// The menu Tab opens.
const OFFERS: &str = "offers";

/// Lines remembered from one day to the next.
const REMEMBERED: usize = 1_000;

/// Talks at a terminal until the person leaves; `found` is what the job file was found like.
///
/// # Errors
/// What could not be read or written.
pub(super) fn converse(talk: &mut Talk, found: &str) -> Result<(), Trouble> {
    let history = paths::history();
    let mut out = Out::new(Returning(io::stdout()));
    if history.as_ref().is_none_or(|file| !file.exists()) {
        out.write(&welcome())?;
    }
    out.write(found)?;
    out.flush()?;
    talk.fold();
    super::rescue::hold(talk);
    let seen = Seen::of(talk.session());
    let mut editor = editor(history.and_then(|file| FileBackedHistory::with_file(REMEMBERED, file).ok()), &seen);
    loop {
        let signal = editor.read_line(&Mark);
        let _raw = Raw::held();
        match signal.map_err(Trouble::Read)? {
            Signal::Success(typed) => {
                if answer(talk, &typed, &mut out)? == Turn::Leave {
                    return Ok(());
                }
                seen.renew(talk.session());
                super::rescue::hold(talk);
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
fn answer(talk: &mut Talk, typed: &str, out: &mut Out<Returning>) -> Result<Turn, Trouble> {
    let before = talk.begin_paste();
    let turn = each(talk, typed, out);
    talk.end_paste(before);
    turn
}

fn each(talk: &mut Talk, typed: &str, out: &mut Out<Returning>) -> Result<Turn, Trouble> {
    for line in talk.pasted(split(typed).collect()) {
        match Talk::turn(&line) {
            Turn::Leave => return Ok(Turn::Leave),
            Turn::Nothing => {}
            Turn::More => out.answer(&talk.more(Screen::of_stdout()), Form::Text)?,
            Turn::Answer => out.answer(&talk.answer(&line, Screen::of_stdout()), Form::Text)?,
        }
    }
    out.flush()?;
    Ok(Turn::Answer)
}

/// The terminal kept raw while a line is answered: keys pressed meanwhile stay what they are. Cooked, the terminal would
/// make another key of Enter, and the editor would lose what was typed behind it.
struct Raw;

impl Raw {
    fn held() -> Raw {
        // Where it cannot be, a fast typist types ahead at their own risk.
        let _ = enable_raw_mode();
        Raw
    }
}

impl Drop for Raw {
    fn drop(&mut self) {
        let _ = disable_raw_mode();
    }
}

/// A raw terminal's output: the carriage is returned by us.
struct Returning(io::Stdout);

impl Write for Returning {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        for (n, row) in bytes.split(|b| *b == b'\n').enumerate() {
            if n > 0 {
                self.0.write_all(b"\r\n")?;
            }
            self.0.write_all(row)?;
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.flush()
    }
}

fn editor(history: Option<FileBackedHistory>, seen: &Seen) -> Reedline {
    let mut keys = default_emacs_keybindings();
    let offer = ReedlineEvent::UntilFound(vec![ReedlineEvent::Menu(OFFERS.to_owned()), ReedlineEvent::MenuNext]);
    keys.add_binding(KeyModifiers::NONE, KeyCode::Tab, offer);
    keys.add_binding(KeyModifiers::SHIFT, KeyCode::BackTab, ReedlineEvent::MenuPrevious);
    // An Enter that the terminal has made a line feed of keeps the lines apart; taken for Enter, it would lose the rest.
    let apart = ReedlineEvent::Edit(vec![EditCommand::InsertNewline]);
    keys.add_binding(KeyModifiers::CONTROL, KeyCode::Char('j'), apart);
    // One to a row, so that what each is stands beside it; the one chosen is in reverse, whatever the theme.
    let menu = ColumnarMenu::default()
        .with_name(OFFERS)
        .with_marker(PROMPT)
        .with_columns(1)
        .with_text_style(Style::new())
        .with_selected_text_style(Style::new().reverse())
        .with_match_text_style(Style::new())
        .with_selected_match_text_style(Style::new().reverse())
        .with_description_text_style(Style::new().fg(Color::Fixed(HINT)));
    let editor = Reedline::create()
        .use_bracketed_paste(true)
        .with_ansi_colors(Screen::paints())
        .with_highlighter(Box::new(Painted(seen.clone())))
        .with_hinter(Box::new(Heard { seen: seen.clone(), last: None }))
        .with_completer(Box::new(Offered(seen.clone())))
        .with_menu(ReedlineMenu::EngineCompleter(Box::new(menu)))
        .with_quick_completions(true)
        .with_edit_mode(Box::new(Guarded(Emacs::new(keys))));
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

/// The talk as the editor sees it: renewed after each line.
#[derive(Clone)]
struct Seen(Arc<Mutex<Session>>);

impl Seen {
    fn of(session: &Session) -> Seen {
        Seen(Arc::new(Mutex::new(session.clone())))
    }

    fn renew(&self, session: &Session) {
        *self.session() = session.clone();
    }

    fn session(&self) -> MutexGuard<'_, Session> {
        // A session is only ever replaced whole, so one left by a panic is whole as well.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Shows the line as typed, its words coloured by kind, what cannot be read underlined.
struct Painted(Seen);

impl Highlighter for Painted {
    fn highlight(&self, line: &str, cursor: usize) -> StyledText {
        let mut shown = StyledText::new();
        let deep = Screen::of_stdout().deep;
        let mut at = 0;
        let names = self.0.session().names();
        for (span, kind) in kinds(line, &names) {
            shown.push((Style::new(), line[at..span.start].to_owned()));
            at = span.end;
            // A word still being typed is not called unreadable.
            let begun = span.end == line.len() && cursor == line.len();
            let style = match (kind, of_kind(kind)) {
                (Kind::Unread, _) if !begun => Style::new().underline(),
                (_, Some(colour)) if deep => Style::new().fg(Color::Fixed(colour)),
                _ => Style::new(),
            };
            shown.push((style, line[span].to_owned()));
        }
        shown.push((Style::new(), line[at..].to_owned()));
        shown
    }
}

/// The hint behind the line: what it would be heard as, where there is room for it. It is never taken into the
/// line, and the answer says it again.
struct Heard {
    seen: Seen,
    /// The line looked at last and its hint: the editor asks at every repaint.
    last: Option<(String, String)>,
}

/// The fewest columns a hint is shown in.
const HINT_ROOM: usize = 16;

impl Hinter for Heard {
    fn handle(&mut self, line: &str, pos: usize, _: &dyn History, colours: bool, _: &str) -> String {
        // Without colour a hint could be taken for what was typed.
        if !colours || pos < line.len() || line.contains('\n') {
            return String::new();
        }
        if self.last.as_ref().is_none_or(|(of, _)| of != line) {
            let says = match peek(&self.seen.session(), line) {
                Peek::Heard(phrase) => phrase,
                Peek::Asks => "I would ask which".to_owned(),
                Peek::Nothing => String::new(),
            };
            self.last = Some((line.to_owned(), says));
        }
        let says = self.last.as_ref().map_or("", |(_, says)| says);
        let used = PROMPT.width() + line.width();
        let room = Screen::of_stdout().width.saturating_sub(used + 1);
        if says.is_empty() || says == line.trim() || room < HINT_ROOM {
            return String::new();
        }
        Style::new().fg(Color::Fixed(HINT)).paint(cut(&format!("  = {}", safe(says)), room)).to_string()
    }

    fn complete_hint(&self) -> String {
        String::new()
    }

    fn next_hint_token(&self) -> String {
        String::new()
    }
}

/// The text in at most so many columns, "..." where it is cut.
fn cut(text: &str, columns: usize) -> String {
    if text.width() <= columns {
        return text.to_owned();
    }
    let mut kept = String::new();
    for c in text.chars() {
        if kept.width() + c.width().unwrap_or(0) + 3 > columns {
            break;
        }
        kept.push(c);
    }
    kept + "..."
}

/// What Tab offers.
struct Offered(Seen);

impl Completer for Offered {
    fn complete(&mut self, line: &str, pos: usize) -> CompletionResult {
        let suggest = |offer: Offer| Suggestion {
            value: offer.put,
            description: Some(offer.about),
            span: Span::new(offer.over.start, offer.over.end),
            ..Suggestion::default()
        };
        let found: Vec<Suggestion> = offers(line, pos, &self.0.session()).into_iter().map(suggest).collect();
        CompletionResult::fresh(found)
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
