//! Readings that neither ask for a figure nor tell one: a rule by its topic, a list, a note, the talk itself.

use super::About;
use super::asked::Way;
use super::readings::{Filled, Reading};
use super::rule::of_topic;
use crate::grammar::ask::{NotchAsk, TakeoffAsk};
use crate::grammar::scores::{self, How, Line};
use crate::grammar::words::words;
use crate::grammar::{Act, Query, Talk, canon};
use crate::job::Fact;
use crate::measure::Lumber;
use crate::quantity::RowId;

/// What it does; `None` where it does nothing known.
pub(super) fn other(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    let act = match (reading.act, reading.wants.first().copied()) {
        ("undo", _) => Act::Talk(Talk::Undo),
        ("keep", _) => Act::Talk(Talk::Keep),
        ("leave", _) => Act::Talk(Talk::Leave),
        ("why", _) if about.answered => Act::Query(Query::Why),
        ("drop", Some("notes")) => Act::Tell(vec![Fact::DropNote(note_meant(about)?)]),
        ("note", _) => Act::Tell(vec![Fact::Note(canon::clean_note(about.line)?)]),
        ("rule" | "judge" | "ask" | "suppose", Some("notch-allowed")) if size(line, reading).is_some() => {
            let bears = |f: &Filled<'_>| f.word.is_none() && f.row.is_none_or(|row| !BESIDE_NOTCH.contains(&row));
            let doubtful = reading.filled.iter().any(bears);
            let act = Act::Query(Query::Notch(NotchAsk::May(size(line, reading)?)));
            return Some(Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(0.0, act) });
        }
        // A rule alone is no answer to figures: beside them it is offered, but where a rule is what is asked for, or the line's own words point
        // to it.
        ("rule" | "judge" | "ask" | "suppose", Some(_)) => {
            let (ask, pointed) = of_topic(about, &reading.wants, reading.act == "judge")?;
            let doubtful = !pointed && reading.act != "rule" && line.values().next().is_some();
            let act = Act::Query(Query::Rule(ask));
            return Some(Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(0.0, act) });
        }
        // Nothing is laid out, but figures were told for what is asked next: those are all there is to list.
        ("list", Some("cutlist" | "buy"))
            if about.job.runs.is_empty() && about.asked.is_some_and(|a| a.wants.is_empty()) =>
        {
            Act::Query(Query::Given(about.asked?.clone()))
        }
        // Figures told by themselves are kept with the job: that is what there is to list.
        ("list", Some("cutlist" | "buy")) if about.job.runs.is_empty() && !about.job.figures.is_empty() => {
            Act::Query(Query::Job)
        }
        ("list", Some(list)) => listed(list)?,
        _ => return None,
    };
    Some(Way::plain(0.0, act))
}

/// The one note that shares most words with the line; `None` where none does, or two as many.
fn note_meant(about: &About<'_>) -> Option<u32> {
    let said: Vec<String> = stems(about.line);
    let shared = |text: &str| stems(text).iter().filter(|stem| said.contains(stem)).count();
    let mut notes: Vec<(usize, u32)> = about.job.notes.iter().map(|n| (shared(&n.text), n.id)).collect();
    notes.sort();
    let (most, id) = notes.pop().filter(|(shared, _)| *shared > 0)?;
    notes.last().is_none_or(|(next, _)| *next < most).then_some(id)
}

/// The words of a note that may tell it from another.
fn stems(text: &str) -> Vec<String> {
    const LIGHT: &[&str] =
        &["a", "an", "at", "for", "in", "is", "it", "note", "of", "on", "that", "the", "to", "remember"];
    let words = words(text)
        .into_iter()
        .filter(|w| !LIGHT.contains(&w.text.as_str()) && w.text.chars().any(char::is_alphanumeric));
    words.map(|w| scores::stem(&w.text)).collect()
}

/// What may be said beside the size of a post that is to be notched: none of it bends whether it may.
const BESIDE_NOTCH: &[RowId] = &[
    RowId::PostSize,
    RowId::Bolt,
    RowId::BoltCount,
    RowId::BoltsPerPost,
    RowId::Fixing,
    RowId::Mount,
    RowId::Edition,
    RowId::NotchCorner,
];

/// The post's size, where one is named.
fn size(line: &Line, reading: &Reading<'_>) -> Option<Lumber> {
    let at = reading.filled.iter().find(|f| f.row == Some(RowId::PostSize) && f.how == How::Set)?.at;
    let said = line.tokens.get(at)?.value.as_ref()?;
    said.readings.iter().find_map(|r| if let scores::Reading::Lumber(l) = r { Some(*l) } else { None })
}

fn listed(list: &str) -> Option<Act> {
    let query = match list {
        "layout" => Query::Layout(None),
        "job" | "notes" => Query::Job,
        "cutlist" => Query::Takeoff(TakeoffAsk::Cuts),
        "buy" => Query::Takeoff(TakeoffAsk::Buy),
        "cost" => Query::Takeoff(TakeoffAsk::Cost),
        _ => return None,
    };
    Some(Act::Query(query))
}
