//! Plain text of a reply: the lines in their order, then the choices, then what the
//! rules found, the gravest first.

use super::print::{glued, text};
use super::wrap::wrap;
use super::{Finding, Level, Line, Reply, Role, Span};
use crate::measure::Tape;
use std::borrow::Cow;

/// How much a stretch of text wants to be noticed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// As the rest.
    Plain,
    /// Something to be careful about.
    Caution,
    /// Something not to build.
    Stop,
}

/// One line of a reply as text: several rows where it was wrapped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// How much it wants to be noticed; its words say so too.
    pub tone: Tone,
    /// True for details, notes and drawings: on a small window they may wait to be asked for.
    pub may_wait: bool,
    /// The rows, with no newline at the end.
    pub text: String,
}

/// The answer as plain text, wrapped to `width` columns, figures read to `tape`.
/// Rows are joined by newlines, with none at the end. No control character is in it.
pub fn plain(reply: &Reply, width: usize, tape: Tape) -> String {
    let rows: Vec<String> = shown(reply, width, tape).into_iter().map(|s| s.text).collect();
    rows.join("\n")
}

/// The answer line by line, for a front end that paints.
pub fn shown(reply: &Reply, width: usize, tape: Tape) -> Vec<Shown> {
    let mut rows = Vec::new();
    let mut number = 0;
    for line in lines(reply).iter() {
        number += usize::from(line.role == Role::Choice);
        rows.push(line_row(line, number, width, tape));
    }
    let mut findings: Vec<&Finding> = reply.findings.iter().filter(|f| !is_said(reply, f)).collect();
    findings.sort_by_key(|f| f.level);
    rows.extend(findings.into_iter().map(|f| finding_row(f, width, tape)));
    rows
}

/// True for a finding the answer itself says word for word, source and all: it is not said twice.
fn is_said(reply: &Reply, finding: &Finding) -> bool {
    let source = Span::Say(finding.source);
    let says = |line: &Line| {
        let words = line.spans.windows(finding.spans.len().max(1)).any(|w| *w == finding.spans[..]);
        words && line.spans.contains(&source)
    };
    reply.lines.iter().any(|line| line.role == Role::Answer && says(line))
}

/// The reply's lines, with its choices after them where no line shows them.
fn lines(reply: &Reply) -> Cow<'_, [Line]> {
    if reply.choices.is_empty() || reply.lines.iter().any(|l| l.role == Role::Choice) {
        return Cow::Borrowed(&reply.lines);
    }
    let choice = |c: &String| Line::new(Role::Choice, [Span::Phrase(c.clone())]);
    Cow::Owned(reply.lines.iter().cloned().chain(reply.choices.iter().map(choice)).collect())
}

fn line_row(line: &Line, number: usize, width: usize, tape: Tape) -> Shown {
    let tone = if line.role == Role::Caution { Tone::Caution } else { Tone::Plain };
    let may_wait = matches!(line.role, Role::Detail | Role::Drawing);
    let (lead, hang) = match line.role {
        // Both stand to scale or under one another: breaking them would make them say something else.
        Role::Drawing | Role::Pointer => return Shown { tone, may_wait, text: text(&line.spans, tape) },
        Role::Unused | Role::Answer | Role::Question => (Cow::Borrowed(""), 2),
        Role::Heard => (Cow::Borrowed("heard: "), 2),
        Role::Detail => (Cow::Borrowed("  "), 4),
        Role::Caution => (Cow::Borrowed("careful: "), 2),
        Role::Choice => (Cow::Owned(format!("  {number}. ")), 5),
    };
    Shown { tone, may_wait, text: wrap(&lead, &glued(&line.spans, tape), hang, width) }
}

/// A line's own words, unwrapped, with no mark of its role.
pub fn line_text(line: &Line, tape: Tape) -> String {
    text(&line.spans, tape)
}

/// What a rule found and where it comes from, unwrapped.
pub fn finding_text(finding: &Finding, tape: Tape) -> String {
    format!("{} [{}]", text(&finding.spans, tape), super::safe(finding.source))
}

fn finding_row(finding: &Finding, width: usize, tape: Tape) -> Shown {
    let tone = match finding.level {
        Level::Stop => Tone::Stop,
        Level::Check => Tone::Caution,
        Level::Note => Tone::Plain,
    };
    let lead = format!("{}: ", finding.level.name());
    let said = format!("{} [{}]", glued(&finding.spans, tape), super::safe(finding.source));
    Shown { tone, may_wait: finding.level == Level::Note, text: wrap(&lead, &said, 2, width) }
}

#[cfg(test)]
mod tests {
    use super::super::{Status, Style, Typed};
    use super::*;
    use crate::figure::{Fig, Why};
    use crate::measure::Length;
    use insta::assert_snapshot;

    fn fig(sixteenths: i64, style: Style) -> Span {
        Span::Fig(Fig::told(Length::sixteenths(sixteenths), "length"), style)
    }

    fn finding(level: Level, says: &'static str) -> Finding {
        Finding { rule: "a-rule", level, spans: vec![Span::Say(says)], source: "IRC R312.1.3" }
    }

    fn told() -> Reply {
        let posts = Span::Fig(Fig::count(3, Why::Told("posts")), Style::Tape);
        let mut reply = Reply::of(Status::Told);
        reply.lines = vec![
            Line::new(
                Role::Unused,
                [Span::Say("I made nothing of \""), Span::Typed(Typed::new("wib\u{1b}ble")), Span::Say("\".")],
            ),
            Line::new(
                Role::Answer,
                [posts, Span::Say(" posts on the run, the longest bay "), fig(915, Style::Full), Span::Say(" clear.")],
            ),
            Line::new(Role::Heard, [Span::Phrase("run 1: 10'-6 3/4\" from corner to stair head".into())]),
            Line::new(
                Role::Detail,
                [Span::Say("post 2 at "), fig(1014, Style::Tape), Span::Say(" from the corner post's outside face")],
            ),
            Line::new(Role::Drawing, [Span::Drawn("[]-----------------[]-----------------[]".into())]),
            Line::say(Role::Caution, "the jamb post at the stair head carries the gate"),
        ];
        reply.findings = vec![
            finding(Level::Note, "good to know"),
            finding(Level::Check, "look at it"),
            finding(Level::Stop, "do not"),
        ];
        reply
    }

    #[test]
    fn the_lines_keep_their_order_and_stops_come_first_of_the_findings() {
        assert_snapshot!(plain(&told(), 100, Tape::SIXTEENTHS), @r#"
        I made nothing of "wib�ble".
        3 posts on the run, the longest bay 4'-9 3/16" = 57 3/16" clear.
        heard: run 1: 10'-6 3/4" from corner to stair head
          post 2 at 5'-3 3/8" from the corner post's outside face
        []-----------------[]-----------------[]
        careful: the jamb post at the stair head carries the gate
        stop: do not [IRC R312.1.3]
        check: look at it [IRC R312.1.3]
        note: good to know [IRC R312.1.3]
        "#);
    }

    #[test]
    fn a_narrow_screen_wraps_all_but_the_drawing() {
        assert_snapshot!(plain(&told(), 32, Tape::SIXTEENTHS), @r#"
        I made nothing of "wib�ble".
        3 posts on the run, the longest
          bay 4'-9 3/16" = 57 3/16"
          clear.
        heard: run 1: 10'-6 3/4" from
          corner to stair head
          post 2 at 5'-3 3/8" from the
            corner post's outside face
        []-----------------[]-----------------[]
        careful: the jamb post at the
          stair head carries the gate
        stop: do not [IRC R312.1.3]
        check: look at it [IRC R312.1.3]
        note: good to know [IRC
          R312.1.3]
        "#);
    }

    #[test]
    fn choices_are_numbered_whether_a_line_shows_them_or_not() {
        let mut reply = Reply::of(Status::Asks);
        reply.choices = vec!["run 1: 10'-6\"".into(), "run 1: 10'-7 3/16\"".into()];
        reply.lines = vec![Line::say(Role::Question, "Which is it?")];
        let bare = plain(&reply, 80, Tape::SIXTEENTHS);
        assert_eq!(bare, "Which is it?\n  1. run 1: 10'-6\"\n  2. run 1: 10'-7 3/16\"");
        let shown = reply.choices.iter().map(|c| Line::new(Role::Choice, [Span::Phrase(c.clone())]));
        reply.lines.extend(shown.collect::<Vec<_>>());
        assert_eq!(plain(&reply, 80, Tape::SIXTEENTHS), bare);
    }

    #[test]
    fn the_tone_follows_the_role_and_the_level() {
        let tones: Vec<Tone> = shown(&told(), 100, Tape::SIXTEENTHS).into_iter().map(|s| s.tone).collect();
        use Tone::{Caution, Plain, Stop};
        assert_eq!(tones, [Plain, Plain, Plain, Plain, Plain, Caution, Stop, Caution, Plain]);
    }

    #[test]
    fn no_span_lets_a_control_character_through() {
        let text = "a\u{1b}[2J\0\u{9b}\u{202e}b\nc";
        let spans = [Span::Phrase(text.into()), Span::Drawn(text.into()), Span::Typed(Typed::new(text))];
        for role in [Role::Answer, Role::Heard, Role::Drawing, Role::Pointer, Role::Choice] {
            for span in &spans {
                let mut reply = Reply::of(Status::Told);
                reply.lines = vec![Line::new(role, [span.clone()])];
                let shown = plain(&reply, 80, Tape::SIXTEENTHS);
                assert!(shown.chars().all(|c| c == '\n' || !super::super::typed::is_unsafe(c)), "{shown:?}");
            }
        }
    }
}
