//! The pieces these answers are said with.

use crate::figure::{Fig, Value, Why};
use crate::job::End;
use crate::layout::Kind;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::notch::{Post, Size};
use crate::reply::{Finding, Level, Line, Role, Span, Style};
use crate::strength::tie;

pub(super) fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Inches)
}

pub(super) fn answer(spans: Vec<Span>) -> Line {
    Line::new(Role::Answer, spans)
}

pub(super) fn detail(spans: Vec<Span>) -> Line {
    Line::new(Role::Detail, spans)
}

pub(super) fn say(role: Role, words: &'static str) -> Line {
    Line::say(role, words)
}

/// A count or number of something in the job.
pub(super) fn number(n: usize, what: &'static str) -> Span {
    Span::Fig(Fig::new(Value::Count(n as u64), Why::Formula(what, Vec::new())), Style::Tape)
}

/// A length read off the overlay of the post and the deck.
pub(super) fn overlaid(l: Length, from: Vec<(&'static str, Fig)>) -> Fig {
    Fig::length(l, Why::Formula("the post's footprint laid over the deck", from))
}

/// "posts 2, 3 and 5".
pub(in crate::session::answer) fn numbered(posts: &[&Post]) -> Vec<Span> {
    let mut spans = vec![Span::Say(if posts.len() == 1 { "post " } else { "posts " })];
    for (k, post) in posts.iter().enumerate() {
        let link = if k == 0 {
            ""
        } else if k + 1 == posts.len() {
            " and "
        } else {
            ", "
        };
        spans.extend((k > 0).then_some(Span::Say(link)));
        spans.push(number(post.number, "the post's number, counted along the runs as told"));
    }
    spans
}

/// The kinds of these posts, each once: "corner post, line post".
pub(in crate::session::answer) fn kinds(posts: &[&Post]) -> Vec<Span> {
    let mut names: Vec<&'static str> = Vec::new();
    for post in posts {
        let name = match post.kind {
            Kind::Fixed(End::Corner) => "corner",
            kind => kind.name(),
        };
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let mut spans = vec![Span::Say(" (")];
    for (k, name) in names.into_iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(", ")));
        spans.push(Span::Say(name));
    }
    spans.push(Span::Say(")"));
    spans
}

/// The lumber a post of that size is, where it is any.
pub(in crate::session::answer) fn lumber_of(size: Size) -> Option<Lumber> {
    size.lumber()
}

/// A post's name: its lumber, or its width.
pub(super) fn name_of(size: Size) -> String {
    let width = || format!("{} wide", crate::measure::exact_inches(size.along));
    lumber_of(size).map_or_else(width, |l| l.to_string())
}

/// True for a post the notching rule names: no wider than its nominal 4 in.
pub(in crate::session::answer) fn is_four(width: Length) -> bool {
    width <= Length::inches(limits::NOTCHED_POST.value)
}

/// The rule on notching, for the top of an answer.
pub(in crate::session::answer) fn barred() -> Line {
    let rule = &limits::NOTCHED_POST;
    answer(vec![Span::Say("Stop: "), Span::Say(rule.says), Span::Say(" ("), Span::Say(rule.source), Span::Say(").")])
}

/// The rule as it bears on a larger post.
pub(in crate::session::answer) fn not_barred() -> Line {
    let rule = &limits::NOTCHED_POST;
    answer(vec![
        Span::Say("Check: a post larger than a 4x4 is not barred by name ("),
        Span::Say(rule.source),
        Span::Say(" names 4x4 wood posts only), but what is left must be shown to carry "),
        Span::Fig(load(), Style::Tape),
        Span::Say(" at the guard's top."),
    ])
}

/// The push at a guard's top.
pub(super) fn load() -> Fig {
    crate::strength::beam::top_load()
}

/// What the rule finds, for the findings of an answer.
pub(in crate::session::answer) fn finding(width: Length) -> Finding {
    let (rule, level, says) = match is_four(width) {
        true => ("notch-in-4x4", Level::Stop, "a notched 4x4 where the guard connects to the deck"),
        false => ("notch-in-larger-post", Level::Check, "a notched post larger than a 4x4"),
    };
    Finding { rule, level, spans: vec![Span::Say(says)], source: limits::NOTCHED_POST.source }
}

/// The ways out of a notch.
pub(in crate::session::answer) fn ways_out() -> Vec<Line> {
    vec![
        detail(vec![
            Span::Say(
                "Ways out: a whole post inside the rim, blocked, its upper bolt held by listed hardware rated for at least ",
            ),
            Span::Fig(tie::hold_down(), Style::Tape),
            Span::Say(" of tension (on a deck already decked that means lifting boards);"),
        ]),
        say(
            Role::Detail,
            "  two whole posts at a corner, one on each side; a larger post, shown to carry the load; or a whole post \
             inside a notched sleeve that carries nothing (say: notch it anyway, it's a sleeve).",
        ),
    ]
}
