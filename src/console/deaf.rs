//! A terminal that never says where its cursor is: the line editor would wait for it at every line.

use crossterm::cursor::position;
use crossterm::event::{Event, KeyCode, KeyModifiers, poll, read};
use std::time::Duration;

/// Asks the terminal once where its cursor is. Where it says nothing, gives what was typed while it was asked, which
/// nobody else will read; `None` for a terminal that answers.
pub(super) fn typed_at_a_deaf_terminal() -> Option<String> {
    if position().is_ok() {
        return None;
    }
    let mut typed = String::new();
    while poll(Duration::ZERO).unwrap_or(false) {
        let Ok(event) = read() else { break };
        let Event::Key(key) = event else { continue };
        match key.code {
            KeyCode::Char(c) if !key.modifiers.contains(KeyModifiers::CONTROL) => typed.push(c),
            // A line break typed before the keys were read raw comes as Ctrl-J.
            KeyCode::Char('j') if key.modifiers.contains(KeyModifiers::CONTROL) => typed.push('\n'),
            KeyCode::Enter => typed.push('\n'),
            KeyCode::Backspace => _ = typed.pop(),
            _ => {}
        }
    }
    Some(typed)
}
