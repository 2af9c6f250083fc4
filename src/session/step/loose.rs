//! What a line of loose talk was bound to: done, answered with a word on what it was taken as, or offered.

use super::{asks, pend, perform, plainly, took_no_part};
use crate::grammar::{Act, Query, canon};
use crate::reply::{Line, Reply, Role, Span, Status, Typed};
use crate::session::answer;
use crate::session::bind::Bound;
use crate::session::choose::opened;
use crate::session::resolve::Resolved;
use crate::session::retell::focus_after;
use crate::session::state::{Delta, Likely, Session};

/// Does what a line was bound to, or asks which of several it is.
pub(super) fn bound_to(session: &Session, bound: Bound) -> (Delta, Reply) {
    let (delta, reply) = match &bound.acts[..] {
        [act] if bound.sure => {
            let focus = match act {
                Act::Tell(facts) | Act::TellWith(facts, _) => focus_after(session.talk.focus.clone(), facts),
                _ => session.talk.focus.clone(),
            };
            let made = perform(session, Resolved { focus, ..plainly(session, act.clone()) });
            if bound.is_certain() || bound.lacks || matches!(act, Act::Tell(_) | Act::TellWith(..)) {
                made
            } else {
                taken(made, act, &bound.others)
            }
        }
        acts => {
            let (mut delta, reply) = offered(session, acts);
            if let Some(open) = &mut delta.talk.pending {
                open.likely = likely(&bound);
            }
            (delta, reply)
        }
    };
    let readings = bound.readings.iter().map(|(act, odds)| (canon::write(act), *odds)).collect();
    let unused: Vec<Typed> = bound.spare.iter().map(|s| Typed::new(&s.text)).collect();
    let heavy = bound.spare.iter().filter(|s| s.bends).map(|s| Typed::new(&s.text)).collect();
    let lines = reply.lines.into_iter().chain(took_no_part("No part of that: ", heavy)).collect();
    (delta, Reply { readings, unused, lines, ..reply })
}

/// An answer to what was likely meant: it says what the line was taken as, and what else it may have been, to choose from.
fn taken((mut delta, mut reply): (Delta, Reply), act: &Act, others: &[Act]) -> (Delta, Reply) {
    if reply.status != Status::Answered {
        return (delta, reply);
    }
    let or = if others.is_empty() { "." } else { ". Or did you mean:" };
    let phrase = canon::write(act).trim_end_matches('?').to_owned();
    let says = [Span::Say("Took that as: "), Span::Phrase(phrase), Span::Say(or)];
    let Reply { lines, choices, .. } = asks([Line::new(Role::Detail, says)], others);
    reply.lines.extend(lines);
    reply.choices = choices;
    delta.talk.pending = opened(others);
    (delta, reply)
}

/// What an offered line is taken to have told where the talk goes on without an answer: the one telling that is likely enough.
fn likely(bound: &Bound) -> Option<Likely> {
    let act = bound.acts.first().filter(|_| bound.likely)?;
    let tells = matches!(act, Act::Tell(_) | Act::TellWith(..) | Act::Query(Query::Given(_)));
    tells.then(|| Likely { act: act.clone(), spare: bound.spare.iter().map(|s| s.text.clone()).collect() })
}

/// Readings of a line none of which is sure, to choose from.
fn offered(session: &Session, acts: &[Act]) -> (Delta, Reply) {
    let says = match acts.len() {
        1 => "Did you mean this? Say yes, or say it another way.",
        _ => "Did you mean one of these? Say the number, or say it another way.",
    };
    let mut reply = asks([Line::say(Role::Question, says)], acts);
    show_beside(session, &mut reply, acts);
    pend(session, reply, opened(acts))
}

/// Says beside each choice what follows from it.
pub(super) fn show_beside(session: &Session, reply: &mut Reply, acts: &[Act]) {
    let choices = reply.lines.iter_mut().filter(|l| l.role == Role::Choice);
    choices.zip(acts).for_each(|(line, act)| line.spans.extend(answer::beside_choice(&session.job, act)));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::Fig;
    use pretty_assertions::assert_eq;

    #[test]
    fn an_answer_that_is_not_certain_says_what_it_was_taken_as_and_what_else_it_may_have_been() {
        let act = |phrase: &str| canon::read(phrase).expect("a plain phrase");
        let asked = "figure: gap; with bay 4'-10\"; with balusters 9; with baluster 1 1/2\"?";
        let other = "figure: balusters; with bay 4'-10\"?";
        let bound = |right| Bound {
            acts: vec![act(asked)],
            sure: true,
            right,
            others: vec![act(other)],
            lacks: false,
            likely: false,
            readings: Vec::new(),
            spare: Vec::new(),
        };
        let (delta, reply) = bound_to(&Session::new(), bound(0.4));
        // (58 - 9 x 1 1/2) / 10
        assert_eq!(reply.values.result.as_ref().and_then(Fig::as_length), crate::measure::Length::new(89, 20));
        let text = crate::reply::plain(&reply, 200, crate::measure::Tape::SIXTEENTHS);
        assert!(
            text.contains("Took that as: figure: gap; with bay 4'-10\"") && text.contains("1. figure: balusters"),
            "{text}"
        );
        assert_eq!(delta.talk.pending.map(|p| p.choices), Some(vec![act(other)]));
        let (delta, reply) = bound_to(&Session::new(), bound(0.9));
        assert!(reply.choices.is_empty() && delta.talk.pending.is_none());
    }
}
