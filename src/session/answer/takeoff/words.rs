//! Words shared by the answers here.

use crate::figure::{Fig, Unit, Why};
use crate::infill::NoSpread;
use crate::job::RunId;
use crate::layout::{Layout, Skew};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::takeoff::{Bevels, CannotFill, Lack, Part, Parts, What, Where};

/// A count made by counting.
pub fn count(n: u64) -> Fig {
    Fig::count(n, Why::Formula("counted over the parts", Vec::new()))
}

/// A figure in inches.
pub fn inches(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Inches)
}

/// A figure in inches, and what exactly.
pub fn exact(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::InchesExact)
}

/// A figure in feet and inches, or a count.
pub fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

/// A number counted.
pub fn number(n: u64) -> Span {
    fig(&count(n))
}

/// A line under the answer.
pub fn detail(spans: Vec<Span>) -> Line {
    Line::new(Role::Detail, spans)
}

/// A cut length.
pub fn cut(l: Length) -> Fig {
    Fig::length(l, Why::Formula("cut length, read to the tape", Vec::new()))
}

/// How far off square an end is cut.
pub fn bevel(skew: &Skew) -> Fig {
    Fig::quantity(
        skew.degrees(),
        Unit::Degrees,
        Why::Formula("how far the post is turned from square to the run", vec![]),
    )
}

/// " long point to long point, cut 22.5 degrees off square at both ends", where any is.
pub fn bevels(bevels: &Bevels) -> Vec<Span> {
    let of = |skew: &Skew, lead: &'static str, end: &'static str| {
        let says = if skew.is_arris() { " both ways, over the post's corner," } else { " off square" };
        vec![Span::Say(lead), fig(&bevel(skew)), Span::Say(says), Span::Say(end)]
    };
    match bevels {
        [Some(a), Some(b)] if a == b => of(a, " long point to long point, cut ", " at both ends"),
        [Some(a), Some(b)] => {
            let first = of(a, " long point to long point, cut ", " at one end");
            first.into_iter().chain(of(b, " and ", " at the other")).collect()
        }
        [Some(a), None] => of(a, " to the long point, cut ", " at one end"),
        [None, _] => Vec::new(),
    }
}

/// A stick's length.
pub fn stock(l: Length) -> Fig {
    Fig::told(l, "a stick's length")
}

/// Figures in a row, with commas.
pub fn row(figs: &[Fig]) -> Vec<Span> {
    let mut spans = Vec::new();
    for (k, f) in figs.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(", ")));
        spans.push(inches(f));
    }
    spans
}

/// Where parts go, the bays of one run together: "run 1 bays 1 to 4, run 2 bay 1".
pub fn places(at: &[Where]) -> String {
    let mut groups: Vec<(String, Vec<u16>)> = Vec::new();
    for place in at {
        let (name, bay) = match place {
            Where::Bay(run, part, bay) => (format!("run {}{}", run.0, part.suffix()), Some(*bay)),
            Where::Run(..) | Where::Stairs(_) => (place.label(), None),
            Where::Told(bay) => (String::new(), Some(*bay)),
        };
        match groups.iter_mut().find(|(n, _)| *n == name) {
            Some((_, bays)) => bays.extend(bay),
            None => groups.push((name, bay.into_iter().collect())),
        }
    }
    groups.iter().map(|(name, bays)| group(name, bays)).collect::<Vec<_>>().join(", ")
}

fn group(name: &str, bays: &[u16]) -> String {
    let lead = if name.is_empty() { String::new() } else { format!("{name} ") };
    match bays {
        [] => name.to_owned(),
        [one] => format!("{lead}bay {one}"),
        [first, .., last] if usize::from(last - first) + 1 == bays.len() => format!("{lead}bays {first} to {last}"),
        many => format!("{lead}bays {}", many.iter().map(u16::to_string).collect::<Vec<_>>().join(", ")),
    }
}

/// Lumber that no list can hold, for want of a length or a size: in order, each once.
fn left_out(parts: &Parts) -> Vec<&'static str> {
    let mut names: Vec<&'static str> = Vec::new();
    let no_list = |p: &&Part| p.what < What::Block && (p.cut.is_none() || p.size.is_none());
    for part in parts.list.iter().filter(no_list) {
        let name = part.what.name(part.count > 1);
        names.extend((!names.contains(&name)).then_some(name));
    }
    names.extend(parts.no_cap_stick.map(|_| "caps"));
    names.extend((!parts.unfilled.is_empty()).then_some("a gate whose leaf does not go in its opening"));
    names
}

/// "Not in this list: 4 stair posts, ...", with why each cannot be.
pub fn not_in_this(parts: &Parts) -> Option<Line> {
    let mut spans = Vec::new();
    for part in parts.list.iter().filter(|p| p.what <= What::Block && (p.cut.is_none() || p.size.is_none())) {
        spans.push(Span::Say(if spans.is_empty() { "Not in this list: " } else { ", " }));
        spans.extend([number(u64::from(part.count)), Span::Say(" "), Span::Say(part.what.name(part.count > 1))]);
        spans.push(Span::Say(match (part.cut.is_some(), part.size.is_some()) {
            _ if part.what == What::Block => " (from what is left over)",
            (true, _) => " (what they are cut from is not told)",
            _ => match part.what {
                What::StairPost => " (each of its own length: its height at its tread and what its foot takes)",
                What::StairBaluster => " (how far apart the stair's rails are is not told)",
                What::GateBaluster => " (how the leaf's frame is made is not told)",
                _ => " (length still to tell)",
            },
        }));
    }
    spans.push(Span::Say("."));
    (spans.len() > 1).then(|| detail(spans))
}

/// " Not in it yet: posts, balusters.": the lumber no list can hold, for want of a length or a size.
pub fn not_in_it(parts: &Parts) -> Vec<Span> {
    let names = left_out(parts);
    let mut spans = Vec::new();
    for (k, name) in names.into_iter().enumerate() {
        spans.extend([Span::Say(if k == 0 { " Not in it yet: " } else { ", " }), Span::Say(name)]);
    }
    spans.extend((!spans.is_empty()).then_some(Span::Say(".")));
    spans
}

/// What parts still lack, in one line.
pub fn lacks(lacks: &[Lack]) -> Option<Line> {
    let mut spans = vec![Span::Say("Still to tell: ")];
    for (k, lack) in lacks.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say("; ")));
        spans.push(Span::Say(lack.says()));
    }
    spans.push(Span::Say("."));
    (!lacks.is_empty()).then(|| detail(spans))
}

/// Runs that are told and cannot be laid out are named: they are not in the list.
pub fn not_laid_out(layout: &Layout, lines: &mut Vec<Line>) {
    let mut named: Vec<RunId> = Vec::new();
    for run in layout.runs.iter().filter(|r| r.result.is_err()) {
        if !named.contains(&run.id) {
            named.push(run.id);
            let number = Fig::count(u64::from(run.id.0), Why::Told("the run's number"));
            let lacks = run.result.as_ref().err().and_then(|l| l.first()).map_or("", |l| l.says());
            lines.push(detail(vec![
                Span::Say("Not in this: run "),
                fig(&number),
                Span::Say(". Still to tell: "),
                Span::Say(lacks),
                Span::Say("."),
            ]));
        }
    }
}

/// Why balusters cannot be spread.
pub fn no_spread(why: NoSpread) -> &'static str {
    match why {
        NoSpread::TooMany => "They leave no room for a gap: fewer or thinner balusters, or a wider opening.",
        NoSpread::TooFew => "Tight to both posts there are at least two balusters.",
        NoSpread::Nothing => "An opening and a baluster must both be more than nothing.",
    }
}

/// A bay that cannot be filled, refused.
pub fn cannot_fill(cannot: &CannotFill) -> Reply {
    let spans = [Span::Phrase(cannot.at.label()), Span::Say(" can't be filled: "), Span::Say(no_spread(cannot.why))];
    Reply { lines: vec![Line::new(Role::Answer, spans)], ..Reply::of(Status::Refused) }
}

/// A refusal in the program's own words.
pub fn refused(says: &'static str) -> Reply {
    Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }
}
