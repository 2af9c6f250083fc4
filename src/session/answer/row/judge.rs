//! A word on a row: its figure beside what it is held to. It opens with "Yes" or "No"; where nothing is held to, it never says yes.

use super::asked::Asked;
use super::case::Case;
use super::judged::Judged;
use super::{Figs, alike, say, taken};
use crate::figure::Value;
use crate::grammar::ask::{Mood, RowAsk};
use crate::job::Job;
use crate::quantity::RowId;
use crate::reply::{Reply, Status};

/// The answer; `told` is the job without what is tried on.
pub(super) fn judge(told: &Job, asked: &Asked) -> (Reply, Figs) {
    let (mut reply, mut figs) = (Reply::of(Status::Asks), Vec::new());
    let (mut used, mut defaults, mut worked) = (Vec::new(), Vec::new(), Vec::new());
    let asks = each_value(asked);
    let each: Vec<Asked> = asks.iter().map(|ask| Asked::of(asked.job, ask)).collect();
    for want in &asked.ask.wants {
        let cases: Vec<Case> = each.iter().map(|one| Case::of(one, *want)).collect();
        figs.extend(word(told, asked, &each, &cases, &mut reply));
        for solved in cases.iter().flat_map(Case::solved) {
            used.extend(solved.used.iter().copied());
            defaults.extend(solved.defaults.iter().copied());
            worked.push(solved.fig.clone());
        }
        used.extend(cases.iter().flat_map(|case| &case.limited_by));
        used.extend(cases.iter().filter_map(Case::needed));
    }
    defaults.sort();
    defaults.dedup();
    if reply.status == Status::Answered {
        let unused = if each.len() > 1 { taken::idle(asked, &used) } else { taken::unused(asked, &used) };
        reply.lines.extend(taken::both(unused, taken::taken(asked.job, &defaults, worked.iter())));
    }
    (reply, figs)
}

/// The question for each value of the one row that is given several times; else the question itself.
fn each_value(asked: &Asked) -> Vec<RowAsk> {
    let mut over: Vec<RowId> = asked.over().map(|(row, _)| row).collect();
    over.dedup();
    let [row] = over[..] else { return vec![asked.ask.clone()] };
    let with = |value: Value| {
        let others = asked.ask.given.iter().copied().filter(|(r, _)| *r != row);
        RowAsk { given: others.chain([(row, value)]).collect(), ..asked.ask.clone() }
    };
    asked.ask.given.iter().filter(|(r, _)| *r == row).map(|(_, value)| with(*value)).collect()
}

/// A row given several figures, of which none is judged itself: what follows from one of them leaves the others out.
fn doubled(asked: &Asked, cases: &[Case]) -> Option<RowId> {
    let row = asked.over().map(|(row, _)| row).next()?;
    (cases.len() > 1 && cases.iter().all(|case| case.want != row)).then_some(row)
}

/// The word on one row: of several values the first that fails, else a word on them together, else the first that asks, else the one with
/// the least room.
fn word(told: &Job, asked: &Asked, each: &[Asked], cases: &[Case], reply: &mut Reply) -> Figs {
    let all = || cases.iter().zip(each);
    if let (true, Some(row)) = (cases.iter().any(Case::is_beside_the_rest), doubled(asked, cases)) {
        reply.lines.push(say::which(row));
        return Vec::new();
    }
    let failing = all().find(|(case, _)| case.fails());
    let want = cases.first().map(|case| case.want);
    let together = want.and_then(|want| Some((want, alike::values(asked, want)?))).filter(|_| failing.is_none());
    if let Some(figs) = together.and_then(|(want, values)| alike::word(asked, want, &values, reply)) {
        return figs;
    }
    let asking = || {
        all().find(|(case, one)| {
            let mut tried = Reply::of(Status::Asks);
            case.answer(told, one, &mut tried);
            tried.status != Status::Answered
        })
    };
    let tight = || all().min_by_key(|(case, _)| case.tightest().map(Judged::room));
    // Where it may be left off is asked of the spot that is named first.
    let named = all().next().filter(|(case, _)| asked.ask.mood == Mood::Without && case.tightest().is_some());
    let Some((case, one)) = named.or(failing).or_else(asking).or_else(tight) else { return Vec::new() };
    case.answer(told, one, reply);
    // Which of several spots may go without is a word on each.
    let each = cases.iter().filter(|_| asked.ask.mood == Mood::Without);
    let others = each.filter(|other| !std::ptr::eq(*other, case)).filter_map(Case::tightest);
    let asked_for = others.filter(|j| j.asks()).map(|j| j.line(asked.ask.mood, None));
    reply.lines.extend(asked_for.collect::<Vec<_>>());
    case.figs()
}
