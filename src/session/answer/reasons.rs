//! "why?" and "says who": the chain behind the last figures.

use super::{Figs, reported};
use crate::figure::{Fig, Why};
use crate::grammar::{Act, Query, canon};
use crate::job::Job;
use crate::layout::Focus;
use crate::limits::Limit;
use crate::reply::{Finding, Line, Reply, Role, Span, Status, Style};

/// How deep a chain is followed: told facts are never deeper.
const DEEPEST: usize = 5;
/// How many figures are explained at once.
const MOST: usize = 4;

/// Why the last figures are what they are; the layout's, where none were given yet.
pub fn why(job: &Job, last: &Figs, width: usize) -> (Reply, Figs) {
    let mut figs = last.clone();
    if figs.is_empty() {
        let (reply, from_layout) = reported(job, None, Focus::Bays, width);
        if from_layout.is_empty() {
            return (reply, Vec::new());
        }
        figs = from_layout;
    }
    let mut reply = Reply::of(Status::Answered);
    let mut said = Vec::new();
    for (name, fig) in figs.iter().take(MOST) {
        explain(name, fig, 0, &mut reply.lines, &mut said);
    }
    reply.lines.push(Line::say(Role::Detail, "Rounded once, last, to the tape; an exact tie goes up."));
    reply.readback = Some(canon::write(&Act::Query(Query::Why)));
    (reply, figs)
}

/// What an answer rests on that is published: limits, tables, and the rules that found something.
#[derive(Default)]
struct Sources {
    limits: Vec<&'static Limit>,
    tables: Vec<[&'static str; 3]>,
}

/// Where the limits and tables behind the last figures are published, and what was found.
pub fn sources(last: &Figs, found: &[Finding]) -> (Reply, Figs) {
    let mut sources = Sources::default();
    last.iter().for_each(|(name, fig)| sources.of(name, fig, 0));
    let mut reply = Reply::of(Status::Answered);
    reply.lines.extend(sources.limits.iter().map(|l| Line::new(Role::Answer, cited(l))));
    let tables = sources
        .tables
        .iter()
        .map(|[name, what, source]| [say(name), say(", "), say(what), say(": "), say(source), say(".")]);
    reply.lines.extend(tables.map(|spans| Line::new(Role::Answer, spans)));
    let limited = |f: &&Finding| !sources.limits.iter().any(|l| l.source == f.source);
    reply.lines.extend(found.iter().filter(limited).map(found_by));
    if reply.lines.is_empty() {
        reply.lines.push(Line::say(Role::Answer, "Nothing published: only what you told me, and arithmetic."));
    }
    reply.readback = Some(canon::write(&Act::Query(Query::Sources)));
    (reply, last.clone())
}

/// A finding's rule and its source.
fn found_by(finding: &Finding) -> Line {
    let rule = crate::rules::find(finding.rule);
    let title = rule.map_or(finding.rule, |r| r.title);
    Line::new(Role::Answer, [say(title), say(": "), say(finding.source), say(".")])
}

/// A limit and where it is published.
pub fn cited(limit: &'static Limit) -> Vec<Span> {
    vec![say(limit.says), say(": "), say(limit.source), say(".")]
}

impl Sources {
    fn of(&mut self, name: &'static str, fig: &Fig, depth: usize) {
        if depth > DEEPEST {
            return;
        }
        match fig.why() {
            Why::Default(limit) | Why::Limit(limit) => {
                if !self.limits.iter().any(|l| l.id == limit.id) {
                    self.limits.push(limit);
                }
            }
            Why::Formula(_, inputs) => inputs.iter().for_each(|(n, f)| self.of(n, f, depth + 1)),
            Why::Table(what, source) => {
                // A factor's own name says which it is.
                let same = |t: &[&str; 3]| t[1..] == [*what, *source] && (*what != "a factor" || t[0] == name);
                if !self.tables.iter().any(same) {
                    self.tables.push([name, what, source]);
                }
            }
            Why::Told(_) => {}
        }
    }
}

/// The chain of one figure: the rule or formula, the numbers put in, the result; then where
/// each of those comes from.
pub fn chain(name: &'static str, fig: &Fig) -> Vec<Line> {
    let mut lines = Vec::new();
    explain(name, fig, 0, &mut lines, &mut Vec::new());
    lines
}

fn explain(name: &'static str, fig: &Fig, depth: usize, lines: &mut Vec<Line>, said: &mut Vec<(&'static str, Fig)>) {
    if depth > DEEPEST || said.iter().any(|(n, f)| *n == name && f == fig) {
        return;
    }
    said.push((name, fig.clone()));
    let mut spans = vec![say(INDENT[depth.min(DEEPEST)])];
    if !is_words_alone(fig) {
        spans.extend([say(name), say(" "), Span::Fig(fig.clone(), Style::InchesExact), say(": ")]);
    }
    match fig.why() {
        Why::Told(what) => spans.extend([say("told, "), say(what)]),
        Why::Default(limit) => spans.extend([say("not told, so the default: ")].into_iter().chain(cited(limit))),
        Why::Limit(limit) => spans.extend([say("a limit: ")].into_iter().chain(cited(limit))),
        Why::Table(what, source) => spans.extend([say(what), say(", "), say(source)]),
        Why::Formula(says, inputs) => spans.extend(put_in(says, inputs)),
    }
    lines.push(Line::new(if depth == 0 { Role::Answer } else { Role::Detail }, spans));
    if let Why::Formula(_, inputs) = fig.why() {
        for (name, input) in inputs {
            explain(name, input, depth + 1, lines, said);
        }
    }
}

/// True for a rule that is no figure, only words.
fn is_words_alone(fig: &Fig) -> bool {
    matches!(fig.why(), Why::Limit(l) | Why::Default(l) if l.unit == "none")
}

/// A formula's words with each figure put in behind its name; those it does not name follow.
fn put_in(says: &'static str, inputs: &[(&'static str, Fig)]) -> Vec<Span> {
    let (named, rest) = places(says, inputs);
    let (mut spans, mut from) = (Vec::new(), 0);
    for (end, fig) in named {
        spans.extend([say(&says[from..end]), say(" "), Span::Fig(fig.clone(), Style::InchesExact)]);
        from = end;
    }
    spans.push(say(&says[from..]));
    for (i, (name, fig)) in rest.iter().enumerate() {
        let lead = if i == 0 { " (" } else { ", " };
        // A name said in full where its own line comes is said short here.
        let short = name.split([',', ';', ':']).next().unwrap_or(name);
        spans.extend([say(lead), say(short), say(" "), Span::Fig((*fig).clone(), Style::InchesExact)]);
    }
    spans.extend((!rest.is_empty()).then_some(say(")")));
    spans
}

/// The inputs that are named in the words, by where their names end; and the others.
type Places<'a> = (Vec<(usize, &'a Fig)>, Vec<(&'static str, &'a Fig)>);

fn places<'a>(says: &'static str, inputs: &'a [(&'static str, Fig)]) -> Places<'a> {
    let mut taken: Vec<(usize, usize, &Fig)> = Vec::new();
    let mut rest = Vec::new();
    // "line post" before "post": a longer name is not taken for a shorter one.
    let mut longest: Vec<&(&'static str, Fig)> = inputs.iter().collect();
    longest.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
    for (name, fig) in longest {
        let free = |at: &usize| !taken.iter().any(|(from, to, _)| *at < *to && at + name.len() > *from);
        match says.match_indices(name).map(|(at, _)| at).filter(|at| is_word(says, *at, name.len())).find(free) {
            Some(at) => taken.push((at, at + name.len(), fig)),
            None => rest.push((*name, fig)),
        }
    }
    taken.sort_by_key(|(at, ..)| *at);
    (taken.into_iter().map(|(_, end, fig)| (end, fig)).collect(), rest)
}

/// True where the stretch is a word or words of their own, not a part of one.
fn is_word(says: &str, at: usize, len: usize) -> bool {
    let letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    !letter(says[..at].chars().next_back()) && !letter(says[at + len..].chars().next())
}

fn say(words: &'static str) -> Span {
    Span::Say(words)
}

const INDENT: [&str; DEEPEST + 1] = ["", "from ", "  from ", "    from ", "      from ", "        from "];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Length, Tape};
    use crate::reply::plain;

    fn told(n: i64) -> Fig {
        Fig::told(Length::inches(n), "the test's")
    }

    fn words(says: &'static str, inputs: &[(&'static str, Fig)]) -> String {
        let line = Line::new(Role::Answer, put_in(says, inputs));
        plain(&Reply { lines: vec![line], ..Reply::of(Status::Answered) }, 200, Tape::SIXTEENTHS).trim().to_owned()
    }

    #[test]
    fn figures_stand_behind_their_names() {
        type Row<'a> = (&'static str, &'a [(&'static str, Fig)], &'a str);
        let rows: [Row<'_>; 4] = [
            (
                "(span less line posts) over bays",
                &[("span", told(137)), ("line posts", told(7)), ("bays", told(2))],
                "(span 137\" less line posts 7\") over bays 2\"",
            ),
            ("clear and a post", &[("post", told(3)), ("clear", told(66))], "clear 66\" and a post 3\""),
            ("the posts in it", &[("post", told(3))], "the posts in it (post 3\")"),
            ("a post, a line post", &[("post", told(3)), ("line post", told(4))], "a post 3\", a line post 4\""),
        ];
        for (says, inputs, want) in rows {
            assert_eq!(words(says, inputs), want);
        }
    }
}
