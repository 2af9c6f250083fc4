//! A row given several times: one answer for each of its values, and all of them together where they add up.

use super::asked::{Asked, Found};
use super::compared::apart;
use super::{Figs, defaults, figs_of, say, taken, used, values};
use crate::figure::{Fig, Value, Why};
use crate::grammar::ask::RowAsk;
use crate::job::Job;
use crate::quantity::{Kind, Owner, RowId};
use crate::reply::{Line, Reply, Role, Span, Status};

/// Counts that add up over openings. Posts do not: runs share them.
const ADD_UP: [RowId; 1] = [RowId::BalusterCount];

/// The values' names in the contract, and those of what is said beside them.
const NAMES: [(&str, &str); 6] = [
    ("first", "first_beside"),
    ("second", "second_beside"),
    ("third", "third_beside"),
    ("fourth", "fourth_beside"),
    ("fifth", "fifth_beside"),
    ("sixth", "sixth_beside"),
];

/// The names of what each follows from.
const GIVEN: [&str; 6] = ["with_first", "with_second", "with_third", "with_fourth", "with_fifth", "with_sixth"];

/// One of the values, how often it was said, and what comes of it.
struct Each {
    value: Value,
    times: u64,
    found: Found,
}

/// The answer where one row is given several times, one row is wanted, and it follows from each; else `None`.
pub(super) fn each(told: &Job, asked: &Asked) -> Option<(Reply, Figs)> {
    let [want] = asked.ask.wants[..] else { return None };
    let row = asked.over().next()?.0;
    let with = said_with(asked, row)?;
    // What takes all of them at once is one answer: runs add up to the guard in all.
    if asked.solve(want).is_ok_and(|s| s.whole.contains(&row)) {
        return None;
    }
    let all = split(asked, want, row, with)?;
    let mut spans = Vec::new();
    for (i, one) in all.iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend(said(want, row, one, i == 0));
    }
    let sum = together(want, row, &all).or_else(|| bought(want, row, with, &all));
    if let Some(sum) = &sum {
        spans.push(Span::Say("; "));
        spans.extend(say::sentence(want, sum, false));
        spans.push(Span::Say(" in all"));
    }
    // Of two that are alternatives, how far they are apart: "how much more guard with a 36 gate than with a 42".
    let apart = between(&all).filter(|_| sum.is_none() && row.row().owner != Owner::Bay);
    if let Some(apart) = &apart {
        spans.extend([Span::Say("; "), say::fig(apart), Span::Say(" apart")]);
    }
    spans.push(Span::Say("."));
    let mut reply = reply(asked, spans, &all, sum.as_ref());
    let found: Vec<Found> = all.iter().map(|one| one.found.clone()).collect();
    reply.findings = super::warned::found(told, asked, &found);
    reply.values.more.extend(apart.map(|f| ("apart", f)));
    Some((reply, figs(want, &all, sum)))
}

/// The row given several times beside the first, value for value: "the 12 at 14.85, the 16 at 21.10". `None` where others are given
/// several times that do not go with it.
fn said_with(asked: &Asked, row: RowId) -> Option<Option<RowId>> {
    let of = |row: RowId| asked.ask.given.iter().filter(move |(r, _)| *r == row).count();
    let mut others: Vec<RowId> = asked.over().map(|(other, _)| other).filter(|other| *other != row).collect();
    others.dedup();
    match others[..] {
        [] => Some(None),
        // Parts of two lengths come out of the same sticks: their counts do not stand side by side.
        [with] if of(with) == of(row) && asked.ask.wants.iter().all(|w| w.row().kind != Kind::Count) => {
            let both = asked.ask.given.iter().map(|(r, _)| *r).filter(|r| *r == row || *r == with);
            let turns = both.collect::<Vec<_>>().chunks(2).all(|pair| pair[0] == row && pair.get(1) == Some(&with));
            turns.then_some(Some(with))
        }
        _ => None,
    }
}

fn split(asked: &Asked, want: RowId, row: RowId, with: Option<RowId>) -> Option<Vec<Each>> {
    let mut all: Vec<Each> = Vec::new();
    let of = |row: RowId| asked.ask.given.iter().filter(move |(r, _)| *r == row).map(|(_, value)| *value);
    let beside = with.map(|with| of(with).collect::<Vec<_>>());
    for (i, value) in of(row).enumerate() {
        if let Some(same) = all.iter_mut().find(|one| one.value == value && with.is_none()) {
            same.times += 1;
            continue;
        }
        let pair = with.zip(beside.as_ref().and_then(|all| all.get(i).copied()));
        let others = asked.ask.given.iter().copied().filter(|(r, _)| *r != row && Some(*r) != with);
        let ask = RowAsk { given: others.chain([(row, value)]).chain(pair).collect(), ..asked.ask.clone() };
        let found = Asked::of(asked.job, &ask).find(want).ok()?;
        all.push(Each { value, times: 1, found });
    }
    let takes = |one: &Each| [Some(row), with].into_iter().flatten().all(|r| one.found.solved.used.contains(&r));
    let follows = all.len() <= NAMES.len() && all.iter().all(takes);
    follows.then_some(all)
}

/// "10 balusters, the gap 4 1/11", with the bay 60", 2 times".
fn said(want: RowId, row: RowId, one: &Each, opens: bool) -> Vec<Span> {
    let mut spans = say::sentence(want, &one.found.solved.fig, opens);
    for (beside, solved) in &one.found.beside {
        spans.push(Span::Say(", "));
        spans.extend(say::beside(*beside, &solved.fig));
    }
    spans.push(Span::Say(", with "));
    spans.extend(say::beside(row, &Fig::new(one.value, Why::Told(row.said()))));
    if one.times > 1 {
        let times = Fig::count(one.times, Why::Told("how often it was said"));
        spans.extend([Span::Say(", "), say::fig(&times), Span::Say(" times")]);
    }
    spans
}

/// How far the answers to two values are apart; `None` where they come to the same.
fn between(all: &[Each]) -> Option<Fig> {
    let [a, b] = all else { return None };
    let [a, b] = [a, b].map(|one| &one.found.solved.fig);
    apart(a, b).filter(|_| a.value() != b.value())
}

/// All of them, each as often as it was said; `None` where they do not stand side by side: of two widths one is meant.
fn together(want: RowId, over: RowId, all: &[Each]) -> Option<Fig> {
    matches!(over.row().owner, Owner::Bay | Owner::Run | Owner::Stairs | Owner::Gate).then_some(())?;
    let count = |one: &Each| match one.found.solved.fig.value() {
        Value::Count(n) => n.checked_mul(one.times),
        _ => None,
    };
    let n = all.iter().map(count).sum::<Option<u64>>().filter(|_| ADD_UP.contains(&want))?;
    let from = all.iter().map(|one| (want.row().name, one.found.solved.fig.clone())).collect();
    Some(Fig::count(n, Why::Formula("each as often as it was said, together", from)))
}

/// What goods come to together, each so many at a price; `None` for anything else.
fn bought(want: RowId, row: RowId, with: Option<RowId>, all: &[Each]) -> Option<Fig> {
    let goods = row.row().kind == Kind::Count && with.is_some_and(|w| w.row().kind == Kind::Money);
    let money = |one: &Each| if let Value::Money(m) = one.found.solved.fig.value() { Some(m) } else { None };
    let sum = all.iter().map(money).try_fold(rust_decimal::Decimal::ZERO, |sum, m| sum.checked_add(m?))?;
    let from = all.iter().map(|one| (want.row().name, one.found.solved.fig.clone())).collect();
    (goods && want == RowId::Cost).then(|| Fig::new(Value::Money(sum), Why::Formula("the goods together", from)))
}

fn reply(asked: &Asked, spans: Vec<Span>, all: &[Each], sum: Option<&Fig>) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, spans));
    let found = || all.iter().map(|one| &one.found);
    reply.lines.extend(found().find_map(|one| say::working(&one.solved.fig)));
    let used: Vec<RowId> = used(found());
    let taken = taken::taken(asked.job, &defaults(found()), figs_of(found()));
    reply.lines.extend(taken::both(taken::idle(asked, &used), taken));
    reply.values.result = sum.or_else(|| found().next().map(|one| &one.solved.fig)).cloned();
    if let Some(sum) = sum {
        values::put_row(&mut reply, asked.ask.wants[0], sum);
    }
    for (one, (name, beside)) in found().zip(NAMES) {
        reply.values.more.push((name, one.solved.fig.clone()));
        reply.values.more.extend(one.beside.first().map(|(_, s)| (beside, s.fig.clone())));
    }
    found().for_each(|one| values::put_working(&mut reply, &one.solved.fig, 4));
    for (one, name) in all.iter().zip(GIVEN) {
        reply.values.more.push((name, Fig::new(one.value, Why::Told("as given"))));
    }
    reply
}

fn figs(want: RowId, all: &[Each], sum: Option<Fig>) -> Figs {
    let name = want.row().name;
    let each = all.iter().map(|one| (name, one.found.solved.fig.clone()));
    sum.map(|f| (name, f)).into_iter().chain(each).collect()
}
