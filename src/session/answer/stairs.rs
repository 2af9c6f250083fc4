//! Answers about stairs as told.

use super::Figs;
use crate::grammar::ask::StairAsk;
use crate::grammar::canon;
use crate::job::{Fact, Job};
use crate::reply::{Line, Reply, Role, Span, Status};

/// The answer to one question.
pub(super) fn answer(job: &Job, ask: StairAsk) -> (Reply, Figs) {
    match ask {
        StairAsk::Told => told(job),
    }
}

fn only(line: Line) -> (Reply, Figs) {
    (Reply { lines: vec![line], ..Reply::of(Status::Answered) }, Vec::new())
}

/// The stairs as told, each in its plain phrase.
fn told(job: &Job) -> (Reply, Figs) {
    let of_stairs = |f: &Fact| match f {
        Fact::Run(_, patch) => patch.stairs.is_some(),
        Fact::StairWidth(_) | Fact::StairMeasure(_) | Fact::StairPlace(_) | Fact::Flight(_) => true,
        _ => false,
    };
    let facts = crate::job::retold(job).into_iter().filter(of_stairs);
    let mut lines: Vec<Line> = facts.map(|f| Line::new(Role::Answer, [Span::Phrase(canon::write_fact(&f))])).collect();
    if lines.is_empty() {
        return only(Line::say(Role::Answer, "No stairs have been told yet."));
    }
    lines.push(Line::say(Role::Detail, "Left and right as seen standing at the house, looking out."));
    (Reply { lines, ..Reply::of(Status::Answered) }, Vec::new())
}
