//! The words of an answer, made of what the table says of its rows.

use crate::figure::{Fig, Value, Why};
use crate::grammar::ask::Mood;
use crate::measure::Length;
use crate::quantity::{Kind, ROWS, RowId};
use crate::reply::{Line, Role, Span, Style};
use std::sync::LazyLock;

/// Past so many inches a length is said in feet too.
const IN_FEET: i64 = 48;

/// A row's name in a sentence.
struct Words {
    /// "The gap is ".
    opens: &'static str,
    /// "the gap is ".
    is: &'static str,
    /// "the gap ".
    bare: &'static str,
    /// One of a count: "baluster"; empty where the name is no plural.
    one: &'static str,
}

fn words(row: RowId) -> &'static Words {
    static WORDS: LazyLock<Vec<Words>> = LazyLock::new(|| ROWS.iter().map(|r| worded(r.name, r.kind)).collect());
    &WORDS[row as usize]
}

fn worded(name: &'static str, kind: Kind) -> Words {
    let (first, rest) = name.split_at(name.find([' ', ',']).unwrap_or(name.len()));
    // "leaf's height" is one; so is "rails' tops apart", a distance.
    let plural = first.ends_with('s') && !first.ends_with("ss") && !first.contains('\'');
    let comma = if name.contains(", ") { "," } else { "" };
    let verb = if plural { "are" } else { "is" };
    let keep = |s: String| -> &'static str { s.leak() };
    let one = match first.strip_suffix("ves") {
        Some(stem) => format!("{stem}f{rest}"),
        None => format!("{}{rest}", first.strip_suffix('s').unwrap_or(first)),
    };
    Words {
        opens: keep(format!("The {name}{comma} {verb} ")),
        is: keep(format!("the {name}{comma} {verb} ")),
        bare: keep(format!("the {name}{comma} ")),
        one: if plural && kind == Kind::Count { keep(one) } else { "" },
    }
}

/// A fraction past it tells nobody anything.
const READ: i128 = 1000;

/// A figure, in feet too where it is long.
pub(super) fn fig(f: &Fig) -> Span {
    let length = f.as_length();
    let style = match length {
        Some(l) if l >= Length::inches(IN_FEET) => Style::Full,
        Some(l) if l.is_exact() && *l.q().denom() > READ => Style::Inches,
        _ => Style::InchesExact,
    };
    Span::Fig(f.clone(), style)
}

/// A figure in the working: inches alone.
fn inches(f: &Fig) -> Span {
    match fig(f) {
        Span::Fig(f, Style::Full) => Span::Fig(f, Style::InchesExact),
        other => other,
    }
}

/// A row's figure with its unit.
pub(super) fn figure(row: RowId, f: &Fig) -> [Span; 2] {
    let unit = match (row.row().kind, f.value()) {
        (Kind::Angle, Value::Number(_)) => " degrees",
        (Kind::Percent, _) => " %",
        _ => "",
    };
    [fig(f), Span::Say(unit)]
}

/// "9 balusters"; `None` for a row that is no count of things.
pub(super) fn counted(row: RowId, f: &Fig) -> Option<[Span; 3]> {
    let (Value::Count(n), one) = (f.value(), words(row).one) else { return None };
    let name = if n == 1 { one } else { row.row().name };
    (!one.is_empty()).then(|| [fig(f), Span::Say(" "), Span::Say(name)])
}

/// A count with the things it counts; one that is just another row's is said by that: "3 risers" of the risers for a handrail.
pub(super) fn things(row: RowId, f: &Fig) -> Vec<Span> {
    let other = match f.why() {
        Why::Formula(_, from) => match &from[..] {
            [(name, same)] if same.value() == f.value() => ROWS.iter().find(|r| r.name == *name).map(|r| r.id),
            _ => None,
        },
        _ => None,
    };
    counted(other.unwrap_or(row), f).map_or_else(|| vec![fig(f)], Into::into)
}

/// How a word opens: that it passes, or that something is amiss.
pub(super) fn opens(mood: Mood, passes: bool) -> &'static str {
    match (mood, passes) {
        (Mood::Fault, false) => "Yes, ",
        (Mood::Fault, true) | (_, false) => "No: ",
        (_, true) => "Yes: ",
    }
}

/// "The gap is 3 11/16"", "9 balusters".
pub(super) fn sentence(row: RowId, f: &Fig, opens: bool) -> Vec<Span> {
    if let Some(count) = counted(row, f) {
        return count.into();
    }
    if let Some(spans) = behind(row, f) {
        return spans;
    }
    let lead = if opens { words(row).opens } else { words(row).is };
    std::iter::once(Span::Say(lead)).chain(figure(row, f)).collect()
}

/// "the gap 4 9/20"", "4 posts".
pub(super) fn beside(row: RowId, f: &Fig) -> Vec<Span> {
    let bare = || std::iter::once(Span::Say(words(row).bare)).chain(figure(row, f)).collect();
    counted(row, f).map(Into::into).or_else(|| behind(row, f)).unwrap_or_else(bare)
}

/// "5'-3" = 63" on center"; `None` for a row whose name stands before its figure.
fn behind(row: RowId, f: &Fig) -> Option<Vec<Span>> {
    let words = row.row().behind;
    (!words.is_empty()).then(|| figure(row, f).into_iter().chain([Span::Say(" "), Span::Say(words)]).collect())
}

/// "By the clear less the balusters ...: bay 58", balusters 9." What is just another figure under another name is gone past.
pub(super) fn working(f: &Fig) -> Option<Line> {
    let Why::Formula(says, from) = f.why() else { return None };
    if let [(_, same)] = &from[..]
        && same.value() == f.value()
    {
        return working(same);
    }
    let link = if from.iter().any(|(name, _)| name.contains(',')) { "; " } else { ", " };
    let mut spans = vec![Span::Say("By "), Span::Say(says)];
    for (i, (name, input)) in from.iter().enumerate() {
        spans.extend([Span::Say(if i == 0 { ": " } else { link }), Span::Say(name), Span::Say(" "), inches(input)]);
    }
    spans.push(Span::Say("."));
    Some(Line::new(Role::Detail, spans))
}

/// The one question that would settle it: the fewest rows that would do.
pub(super) fn lacking(want: RowId, rows: &[RowId]) -> Line {
    if rows.is_empty() {
        let spans = [Span::Say("I can't work out "), Span::Say(want.said()), Span::Say(" from that.")];
        return Line::new(Role::Question, spans);
    }
    let mut spans = vec![Span::Say("For "), Span::Say(want.said()), Span::Say(" I still need ")];
    for (i, row) in rows.iter().enumerate() {
        let link = if i == 0 {
            ""
        } else if i + 1 == rows.len() {
            " and "
        } else {
            ", "
        };
        spans.extend([Span::Say(link), Span::Say(row.said())]);
    }
    spans.push(Span::Say("."));
    Line::new(Role::Question, spans)
}

/// The question where one thing has several figures, and only one can hold.
pub(super) fn which(row: RowId) -> Line {
    let spans = [Span::Say("You give "), Span::Say(row.said()), Span::Say(" several figures. Which one holds?")];
    Line::new(Role::Question, spans)
}

/// The question that would settle a word on a row that has no figure: it, or what it follows from.
pub(super) fn to_judge(want: RowId, rows: &[RowId]) -> Line {
    let mut spans = vec![Span::Say("To judge "), Span::Say(want.said()), Span::Say(" I need its figure")];
    for (i, row) in rows.iter().enumerate() {
        spans.extend([Span::Say(if i == 0 { ", or " } else { " and " }), Span::Say(row.said())]);
    }
    spans.push(Span::Say("."));
    Line::new(Role::Question, spans)
}
