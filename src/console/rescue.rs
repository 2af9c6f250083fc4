//! When the program itself makes a mistake: one line that says sorry, what was told kept, and status 70.

use super::paths;
use super::talk::Talk;
use crate::store::whole_file;
use crossterm::terminal::disable_raw_mode;
use std::fs;
use std::io::{self, Write as _};
use std::panic::PanicHookInfo;
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

/// "An internal software error has been detected": `EX_SOFTWARE` of BSD's sysexits.h.
const SOFTWARE: i32 = 70;

/// Where what was told is, should the next line be the one that fails.
#[derive(Default)]
enum Held {
    /// Nobody sits at it: what was told can be told again.
    #[default]
    Nowhere,
    /// In this file.
    File(String),
    /// Only in memory, as plain phrases.
    Memory(Vec<String>),
}

static HELD: Mutex<Held> = Mutex::new(Held::Nowhere);

/// Ends the program decently where it fails: to be called once, at the start.
pub fn at_a_mistake() {
    std::panic::set_hook(Box::new(|info| {
        let _ = disable_raw_mode();
        let _ = writeln!(io::stderr(), "{}", sorry(info));
        std::process::exit(SOFTWARE);
    }));
}

/// Remembers where what was told is, after each line of a person's talk.
pub(super) fn hold(talk: &Talk) {
    let held = match talk.file() {
        Some(file) => Held::File(file),
        None => Held::Memory(talk.session().told_phrases()),
    };
    *HELD.lock().unwrap_or_else(PoisonError::into_inner) = held;
}

fn sorry(info: &PanicHookInfo<'_>) -> String {
    let at = info.location().map_or(String::new(), |l| format!(" ({}:{})", l.file(), l.line()));
    let held = HELD.lock().map_or_else(|_| Held::Nowhere, |mut held| std::mem::take(&mut *held));
    let kept = match held {
        Held::Nowhere => String::new(),
        Held::File(file) => format!(" What you told me is in {file}."),
        Held::Memory(phrases) if phrases.is_empty() => String::new(),
        Held::Memory(phrases) => match saved(&phrases) {
            Some(file) => format!(" What you told me is in {}: open it as a job file.", file.display()),
            None => " What you told me could not be kept.".to_owned(),
        },
    };
    format!("railhand: sorry, that was a mistake of mine{at}.{kept} Please report the line you gave me.")
}

/// Writes the phrases as a job file of its own, beside the history.
fn saved(phrases: &[String]) -> Option<PathBuf> {
    let folder = paths::data()?;
    fs::create_dir_all(&folder).ok()?;
    let file = folder.join(format!("rescued-{}.job", std::process::id()));
    fs::write(&file, whole_file(phrases)).ok()?;
    Some(file)
}

/// In a debug build, fails at the line that `RAILHAND_STUMBLE` names: so that failing can be tried.
pub(super) fn stumble(line: &str) {
    if cfg!(debug_assertions) && std::env::var_os("RAILHAND_STUMBLE").is_some_and(|at| at == line) {
        panic!("asked to");
    }
}
