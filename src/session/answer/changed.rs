//! What is not as it was: marks and parts, beside the job as it was last listed.

use crate::figure::{Fig, Value, Why};
use crate::job::Job;
use crate::layout::{Layout, Placed, RunLayout, lay_out};
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::takeoff::{Part, longest, parts};

/// Lines of change shown behind a told line; "what changed" shows them all.
const AT_ONCE: usize = 4;

/// The answer to "what changed": the job now beside the job as it was.
pub fn changed(before: &Job, now: &Job) -> Reply {
    let mut lines = differences(before, now);
    let first = match lines.len() {
        0 => "Nothing that is marked or cut has changed.",
        _ => "Changed:",
    };
    lines.insert(0, Line::say(Role::Answer, first));
    Reply { lines, ..Reply::of(Status::Answered) }
}

/// What a told line changed of the last list, shortly; nothing where nothing did.
pub fn since_list(listed: &Job, before: &Job, now: &Job) -> Vec<Line> {
    let lines = differences(listed, now);
    if lines.is_empty() || lines == differences(listed, before) {
        return Vec::new();
    }
    let more = lines.len() > AT_ONCE;
    let shown = lines.into_iter().take(if more { AT_ONCE - 1 } else { AT_ONCE });
    let rest = more.then(|| Line::say(Role::Detail, "More has changed: ask what changed."));
    std::iter::once(Line::say(Role::Detail, "Changed since your last list:")).chain(shown).chain(rest).collect()
}

fn differences(before: &Job, now: &Job) -> Vec<Line> {
    let (was, is) = (lay_out(before), lay_out(now));
    marks(&was, &is).into_iter().chain(part_lines((before, &was), (now, &is))).collect()
}

fn detail(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Detail, std::iter::once(Span::Say("- ")).chain(spans))
}

fn run_name(run: &RunLayout) -> [Span; 2] {
    let fig = Fig::new(Value::Count(u64::from(run.id.0)), Why::Told("the run's number"));
    [Span::Say("run "), Span::Fig(fig, Style::Tape)]
}

/// Every run whose posts stand elsewhere.
fn marks(was: &Layout, is: &Layout) -> Vec<Line> {
    let key = |r: &RunLayout| (r.id, r.part);
    let mut lines = Vec::new();
    for old in &was.runs {
        let new = is.runs.iter().find(|r| key(r) == key(old));
        match (new, &old.result, new.map(|n| &n.result)) {
            (None, ..) => lines.push(detail(run_name(old).into_iter().chain([Span::Say(" is gone.")]))),
            (Some(run), Ok(_), Some(Err(_))) => {
                lines.push(detail(run_name(run).into_iter().chain([Span::Say(" can't be laid out any more.")])));
            }
            (Some(run), Ok(a), Some(Ok(b))) => lines.extend(moved(run, a, b, was)),
            (Some(run), Err(_), Some(Ok(b))) => lines.push(fresh(run, b)),
            _ => {}
        }
    }
    let new = is.runs.iter().filter(|r| was.runs.iter().all(|o| key(o) != key(r)));
    lines.extend(new.filter_map(|r| r.result.as_ref().ok().map(|placed| fresh(r, placed))));
    lines
}

fn fresh(run: &RunLayout, placed: &Placed) -> Line {
    let lead = run_name(run).into_iter().chain([Span::Say(" is new, centres of posts at ")]);
    detail(lead.chain(centres(placed)).chain([Span::Say(".")]))
}

fn centres(placed: &Placed) -> Vec<Span> {
    let at = placed.posts.iter().enumerate();
    at.flat_map(|(k, p)| [Span::Say(if k == 0 { "" } else { ", " }), Span::Fig(p.at.clone(), Style::Tape)]).collect()
}

fn moved(run: &RunLayout, was: &Placed, is: &Placed, layout: &Layout) -> Option<Line> {
    let read = |p: &Placed| -> Vec<String> {
        let length = |f: &Fig| if let Value::Length(l) = f.value() { layout.tape.read(l) } else { String::new() };
        p.posts.iter().map(|p| length(&p.at)).collect()
    };
    if read(was) == read(is) {
        return None;
    }
    let spans = run_name(run).into_iter().chain([Span::Say(", centres of posts: now ")]).chain(centres(is));
    Some(detail(spans.chain([Span::Say("; were ")]).chain(centres(was)).chain([Span::Say(".")])))
}

/// Every part of another count or another length. Where the parts can be counted no more, or could not be before,
/// that is said: silence would mean that they are as they were.
fn part_lines(was: (&Job, &Layout), is: (&Job, &Layout)) -> Vec<Line> {
    let counted = |(job, layout): (&Job, &Layout)| parts(job, layout, |size| longest(job, size)).map(|p| p.list);
    let (old, new) = match (counted(was), counted(is)) {
        (Ok(old), Ok(new)) => (old, new),
        (Err(_), Err(_)) => return Vec::new(),
        (Ok(_), Err(_)) => return vec![detail([Span::Say("the parts can't be counted any more: ask for the list.")])],
        (Err(_), Ok(_)) => return vec![detail([Span::Say("the parts can be counted now: ask for the list.")])],
    };
    let key = |p: &Part| (p.what, p.size, p.cut.map(|l| was.1.tape.read(l)));
    let count = |list: &[Part], of: &Part| list.iter().filter(|p| key(p) == key(of)).map(|p| p.count).sum::<u32>();
    let mut told = Vec::new();
    let mut lines = Vec::new();
    for part in new.iter().chain(&old) {
        let (now, before) = (count(&new, part), count(&old, part));
        if now != before && !told.contains(&key(part)) {
            told.push(key(part));
            lines.push(part_line(part, now, before));
        }
    }
    lines
}

/// "2 top rails, 2x4, cut 4'-6 5/8": none before".
fn part_line(part: &Part, now: u32, before: u32) -> Line {
    let count = |n: u32| Span::Fig(Fig::new(Value::Count(u64::from(n)), Why::Formula("counted", vec![])), Style::Tape);
    let mut spans = match now {
        0 => vec![Span::Say("no ")],
        n => vec![count(n), Span::Say(" ")],
    };
    spans.push(Span::Say(part.what.name(now != 1)));
    spans.extend(part.size.into_iter().flat_map(|s| [Span::Say(", "), Span::Phrase(s.to_string())]));
    if let Some(l) = part.cut {
        let cut = Fig::new(Value::Length(l), Why::Formula("cut from what it stands between", vec![]));
        spans.extend([Span::Say(", cut "), Span::Fig(cut, Style::Tape)]);
    }
    match before {
        0 => spans.push(Span::Say(": none before.")),
        n => spans.extend([Span::Say(": "), count(n), Span::Say(" before.")]),
    }
    detail(spans)
}
