//! The pieces answers about stairs and gates are said with.

use crate::figure::{Fig, Value, Why};
use crate::job::Settings;
use crate::limits::Limit;
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::in_force;

/// Words.
pub fn w(words: &'static str) -> Span {
    Span::Say(words)
}

/// A figure in feet and inches.
pub fn ft(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

/// A figure in inches alone, as risers, heights and gaps are said.
pub fn inch(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Inches)
}

/// A figure in inches, with what the tape leaves out behind it.
pub fn exact(f: &Fig) -> Span {
    // What is carried to nine places has no fraction to show.
    let style = if inches(f).is_exact() { Style::InchesExact } else { Style::Inches };
    Span::Fig(f.clone(), style)
}

/// A count.
pub fn count(n: u16, why: &'static str) -> Span {
    ft(&Fig::new(Value::Count(u64::from(n)), Why::Formula(why, Vec::new())))
}

/// A limit's figure as it holds for the job, in inches, or in millimetres where it is published so.
pub fn limit(here: &Settings, l: &'static Limit) -> Span {
    // A published 1070 mm rounded to the tape would say that 42 1/8 is under 42 1/8.
    let style = if here.law.is_metric(l) { Style::Millimetres } else { Style::Inches };
    Span::Fig(in_force(here, l), style)
}

/// A limit with where it is published, and what holds here in its stead.
pub fn by(here: &Settings, l: &'static Limit) -> Line {
    Line::new(Role::Detail, cited(here, l))
}

/// A limit's words and source; where the building department or the place asks something else, that
/// and whose it is.
pub fn cited(here: &Settings, l: &'static Limit) -> Vec<Span> {
    let law = &here.law;
    if !law.holds(l) {
        return vec![w(l.says), w(" ("), w(l.source), w("); what holds there in its place I do not hold: ask.")];
    }
    if !law.changes(l) {
        return vec![w(l.says), w(" ("), w(law.source(l)), w(").")];
    }
    let own = [w("); here it is "), limit(here, l), w(" instead ("), w(law.source(l)), w(").")];
    [w(l.says), w(" ("), w(l.source)].into_iter().chain(own).collect()
}

/// A figure that does not keep to a limit.
pub fn breaks(here: &Settings, found: &Fig, l: &'static Limit) -> Line {
    caution([w("Check: "), exact(found), w(" breaks this: ")].into_iter().chain(cited(here, l)))
}

/// A default that was taken, said aloud.
pub fn taken(l: &'static Limit) -> Line {
    Line::new(Role::Detail, [w("Taken: "), w(l.says), stop(l.says)])
}

/// A limit's warning, where it has one.
pub fn mind(l: &'static Limit) -> Line {
    Line::new(Role::Detail, [w("Mind: "), w(l.note), stop(l.note)])
}

/// A full stop, but for words that end in one ("3 in.").
pub fn stop(words: &'static str) -> Span {
    w(if words.ends_with('.') { "" } else { "." })
}

/// Detail under the answer.
pub fn detail(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Detail, spans)
}

/// The first line.
pub fn answer(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Answer, spans)
}

/// Something to be careful about.
pub fn caution(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Caution, spans)
}

/// "s" where there is not just one.
pub fn s(n: u16) -> Span {
    w(if n == 1 { "" } else { "s" })
}

/// Who decides.
pub fn decides() -> Line {
    Line::say(Role::Caution, "Your building department decides.")
}

/// A reply of these lines.
pub fn reply(lines: Vec<Line>) -> Reply {
    Reply { lines, ..Reply::of(Status::Answered) }
}

/// The inches of a figure made as a length.
pub fn inches(f: &Fig) -> Length {
    f.as_length().unwrap_or(Length::ZERO)
}
