//! The buying list with its cut plan, and a layout that suits the sticks.

use super::lists::{hardware, rails_and_lengths, taken};
use super::words::{count, cut, detail, fig, lacks, not_in_it, not_in_this, number, stock};
use crate::figure::{Fig, Why};
use crate::job::{Job, Member, Percent, RunId};
use crate::layout::Layout;
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, StickFig};
use crate::takeoff::cutplan::{CannotCut, CutPlan, CutStick, Effort, Proved};
use crate::takeoff::{Bought, Parts, RAIL, Split};

/// What to buy: the least there is, and how it is cut.
pub fn buy(job: &Job, _: &Layout, parts: &Parts) -> Reply {
    let list = crate::takeoff::buy(job, parts, &mut Effort::AT_THE_PROMPT.clone());
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, first(&list, parts)));
    for bought in &list {
        reply.lines.extend(plan_lines(bought));
    }
    reply.lines.extend(hardware(parts));
    reply.lines.extend(not_in_this(parts));
    reply.lines.extend(assumed(job, &list));
    reply.lines.extend(taken(job, parts));
    reply.lines.extend(lacks(&parts.lacks));
    if list.iter().all(|b| b.plan.is_err()) {
        reply.status = Status::Refused;
    }
    figures(&mut reply, &list);
    rails_and_lengths(&mut reply, parts);
    reply
}

/// "Buy 7 2x4x16, 12 2x2x8. Not in it yet: posts."
fn first(list: &[Bought], parts: &Parts) -> Vec<Span> {
    let mut spans = Vec::new();
    for bought in list {
        for (length, n) in &bought.list {
            spans.push(Span::Say(if spans.is_empty() { "Buy " } else { ", " }));
            let feet = length.q() / num_rational::Ratio::from_integer(12);
            spans.extend([number(u64::from(*n)), Span::Say(" "), Span::Phrase(format!("{}x{}", bought.size, feet))]);
        }
    }
    match (spans.is_empty(), list.is_empty()) {
        (true, true) => vec![Span::Say("Nothing to buy can be told yet: no cut length is known.")],
        (true, false) if list.iter().all(|b| b.plan.is_ok()) => {
            vec![Span::Say("Nothing to buy: what is on hand does it.")]
        }
        (true, false) => vec![Span::Say("That can't be cut from the stock told.")],
        (false, _) => spans.into_iter().chain([Span::Say(".")]).chain(not_in_it(parts)).collect(),
    }
}

fn plan_lines(bought: &Bought) -> Vec<Line> {
    let size = || Span::Phrase(bought.size.to_string());
    let plan = match &bought.plan {
        Err(cannot) => {
            let spans = [size(), Span::Say(": ")].into_iter().chain(cannot_cut(cannot));
            return vec![Line::new(Role::Detail, spans)];
        }
        Ok(plan) => plan,
    };
    let mut head = vec![size(), Span::Say(": ")];
    head.extend(proved(plan));
    let left =
        Fig::length(plan.left_over(), Why::Formula("what is left of every stick, saw cuts taken off", Vec::new()));
    head.extend([Span::Say("; "), fig(&left), Span::Say(" left over. Cut:")]);
    std::iter::once(detail(head)).chain(plan.sticks.iter().map(stick_line)).collect()
}

/// "112'-0" bought, and no plan buys less".
fn proved(plan: &CutPlan) -> Vec<Span> {
    let length = Fig::length(plan.bought, Why::Formula("every stick bought added up", Vec::new()));
    let bought = [fig(&length), Span::Say(" bought")];
    let tail = match plan.proved {
        Proved::Least if plan.price.is_some() => vec![Span::Say(", and no plan costs less")],
        Proved::Least => vec![Span::Say(", and no plan buys less")],
        Proved::NoLessThan(bound) => {
            let bound = Fig::length(bound, Why::Formula("linear bound over all cutting patterns", Vec::new()));
            vec![Span::Say(", the best found; no plan buys less than "), fig(&bound)]
        }
        Proved::NoCheaperThan(bound) => {
            let bound = Fig::money(bound, Why::Formula("linear bound over all cutting patterns", Vec::new()));
            vec![Span::Say(", the best found; no plan costs less than "), fig(&bound)]
        }
    };
    bought.into_iter().chain(tail).collect()
}

/// "  2 of 16'-0": 5'-8 1/2", 2 of 4'-7 5/8"; 1'-0" left".
fn stick_line(stick: &CutStick) -> Line {
    let mut spans = vec![Span::Say("  "), number(u64::from(stick.times)), Span::Say(" of "), fig(&stock(stick.stock))];
    spans.push(Span::Say(if stick.on_hand { " on hand: " } else { ": " }));
    for (k, (length, n)) in stick.cuts.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(", ")));
        spans.extend([number(u64::from(*n)), Span::Say(" at "), fig(&cut(*length))]);
    }
    let left = Fig::length(stick.left, Why::Formula("stick less pieces and the cuts between them", Vec::new()));
    spans.extend([Span::Say("; "), fig(&left), Span::Say(" left.")]);
    detail(spans)
}

/// Why a size has no plan.
pub fn cannot_cut(cannot: &CannotCut) -> Vec<Span> {
    let told = |l: &Length| fig(&Fig::told(*l, "as told"));
    match cannot {
        CannotCut::NothingWanted => vec![Span::Say("nothing to cut.")],
        CannotCut::NoStock => vec![Span::Say("no stock told to cut it from: say what lengths it comes in.")],
        CannotCut::TooLong { piece, longest } => vec![
            Span::Say("a piece of "),
            fig(&cut(*piece)),
            Span::Say(" is longer than the longest stick, "),
            told(longest),
            Span::Say(": longer stock, or a post between."),
        ],
        CannotCut::Kerf(kerf) => vec![Span::Say("a kerf of "), told(kerf), Span::Say(" leaves nothing of a stick.")],
        CannotCut::NotEnough => vec![Span::Say("what is on hand does not make it, and nothing can be bought.")],
        CannotCut::TooMuch => vec![Span::Say("more pieces than I can plan at once.")],
    }
}

/// What nobody told and the plan rests on.
fn assumed(job: &Job, list: &[Bought]) -> Vec<Line> {
    let mut lines = Vec::new();
    if job.told(crate::quantity::RowId::Kerf).is_none() {
        let saw = crate::solve::taken(job, crate::quantity::RowId::Kerf);
        lines.push(detail(vec![Span::Say("A saw cut is taken as "), fig(&saw), Span::Say(", between pieces only.")]));
    }
    if list.iter().any(|b| !b.told) {
        lines.push(Line::new(
            Role::Detail,
            [Span::Say(crate::limits::STOCK_LENGTHS.says), Span::Say(" where none was told.")],
        ));
    }
    if let Some(percent) = crate::solve::order::percent(job, Percent::Waste).filter(|p| !p.is_zero()) {
        let told = crate::measure::q_from_decimal(percent).unwrap_or_default();
        let told = Fig::new(crate::figure::Value::Number(told), Why::Told("the waste"));
        lines.push(detail(vec![fig(&told), Span::Say(" per cent for junk is on top of each count, rounded up.")]));
    }
    lines
}

fn figures(reply: &mut Reply, list: &[Bought]) {
    for bought in list {
        let size = bought.size.to_string();
        let rows = bought.list.iter().map(|(l, n)| (size.clone(), stock(*l), count(u64::from(*n))));
        reply.values.takeoff.buy.extend(rows);
        let Ok(plan) = &bought.plan else { continue };
        reply.values.takeoff.plan.extend(plan.sticks.iter().map(|s| StickFig {
            size: size.clone(),
            stock: stock(s.stock),
            on_hand: s.on_hand,
            times: count(u64::from(s.times)),
            cuts: s.cuts.iter().map(|(l, n)| (cut(*l), count(u64::from(*n)))).collect(),
            left: Fig::length(s.left, Why::Formula("stick less pieces and the cuts between them", Vec::new())),
        }));
    }
}

/// The even split of a run beside the one that wastes least.
pub fn splits(job: &Job, layout: &Layout, run: Option<RunId>) -> Reply {
    let laid: Vec<RunId> = layout.runs.iter().filter(|r| r.result.is_ok()).map(|r| r.id).collect();
    let run = run.or(match laid.as_slice() {
        [first, rest @ ..] if rest.iter().all(|id| id == first) => Some(*first),
        _ => None,
    });
    let size = crate::solve::order::rail(job, Member::Top).unwrap_or(RAIL);
    let Some(run) = run else {
        let says = if laid.is_empty() {
            "Split what? No run is laid out yet."
        } else {
            "Which run? Say its number or its side."
        };
        return Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    };
    let Some((even, best)) = crate::takeoff::splits(job, run, size) else {
        return super::words::refused(
            "No stick told makes that run's rails in any split: longer stock, or a post more.",
        );
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines = split_lines(&even, best.as_ref());
    reply.values.more = vec![("bays_count", count(u64::from(even.bays)))];
    reply
}

/// The lines that set the two splits side by side.
pub fn split_lines(even: &Split, best: Option<&Split>) -> Vec<Line> {
    let Some(best) = best else {
        let lead = [Span::Say("The even split wastes least as it is: ")];
        return vec![Line::new(Role::Answer, lead.into_iter().chain(split(even)))];
    };
    vec![
        Line::new(Role::Answer, [Span::Say("Wastes least: ")].into_iter().chain(split(best))),
        Line::new(Role::Detail, [Span::Say("As it stands: ")].into_iter().chain(split(even))),
        detail(vec![Span::Say("For that one say \""), number(u64::from(best.bays)), Span::Say(" bays\".")]),
    ]
}

fn split(s: &Split) -> Vec<Span> {
    let length = |l, why| fig(&Fig::length(l, Why::Formula(why, Vec::new())));
    let mut spans = vec![number(u64::from(s.bays)), Span::Say(if s.bays == 1 { " bay of " } else { " bays of " })];
    spans.extend([
        length(s.clear, "the widest bay"),
        Span::Say(" clear, "),
        number(s.posts as u64),
        Span::Say(" posts; rails from "),
    ]);
    for (k, (l, n)) in s.buy.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(" and ")));
        spans.extend([number(u64::from(*n)), Span::Say(" of "), fig(&stock(*l))]);
    }
    spans.extend([Span::Say(", "), length(s.waste, "what is left of them"), Span::Say(" left over.")]);
    spans
}
