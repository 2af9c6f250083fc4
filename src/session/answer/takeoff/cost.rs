//! What it costs, from the prices told and no others.

use super::words::{detail, fig, lacks, not_in_it, not_in_this};
use crate::figure::{Fig, Why};
use crate::job::{Job, StickOf};
use crate::layout::Layout;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::takeoff::cost::Bill;
use crate::takeoff::cutplan::Effort;
use crate::takeoff::{Parts, bill_of};
use rust_decimal::Decimal;

fn money(m: Decimal, why: &'static str) -> Fig {
    Fig::money(m, Why::Formula(why, Vec::new()))
}

/// The bill, or the sticks it has no price for.
pub fn cost(job: &Job, layout: &Layout, parts: &Parts) -> Reply {
    let list = crate::takeoff::buy(job, parts, &mut Effort::AT_THE_PROMPT.clone());
    if list.iter().any(|b| b.plan.is_err()) || list.is_empty() {
        return super::buy::buy(job, layout, parts);
    }
    match bill_of(job, &list) {
        Ok(bill) => billed(&bill, parts),
        Err(unpriced) if unpriced.is_empty() => super::words::refused("That comes to more money than I can add up."),
        Err(unpriced) => asks(&unpriced),
    }
}

fn billed(bill: &Bill, parts: &Parts) -> Reply {
    let total = money(bill.total, "lumber with markup, tax and labour");
    let mut reply = Reply::of(Status::Answered);
    let first = [fig(&total), Span::Say(" in all, for what the prices told cover.")];
    reply.lines.push(Line::new(Role::Answer, first.into_iter().chain(not_in_it(parts))));
    let rows = [
        ("Lumber ", bill.materials, "every stick at its price"),
        ("Markup ", bill.markup, "per cent of the lumber"),
        ("Tax ", bill.tax, "per cent of lumber and markup"),
        ("Labour ", bill.labour, "as told"),
    ];
    for (name, amount, why) in rows.into_iter().filter(|(_, m, _)| !m.is_zero()) {
        reply.lines.push(detail(vec![Span::Say(name), fig(&money(amount, why)), Span::Say(".")]));
    }
    reply
        .lines
        .push(Line::say(Role::Detail, "Hardware, fixings and preservative are not in it: no price is told for them."));
    reply.lines.extend(not_in_this(parts));
    reply.lines.extend(lacks(&parts.lacks));
    reply.values.more = vec![("cost", total)];
    reply
}

fn asks(unpriced: &[StickOf]) -> Reply {
    let mut spans = vec![Span::Say("What does one cost: ")];
    for (k, stick) in unpriced.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(", ")));
        spans.push(Span::Phrase(format!("{}x{}", stick.size, stick.feet)));
    }
    spans.push(Span::Say("? Say it as \"2x4x8 is 7.98\"; I make no price up."));
    Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) }
}
