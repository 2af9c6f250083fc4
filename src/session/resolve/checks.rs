//! What keeps a reading from being taken though each of its parts can be: two things in
//! one line that do not go together, or leave something out.

use super::Problem;
use crate::grammar::ask::TakeoffAsk;
use crate::grammar::draft::{Clause, Reading, RunDraft};
use crate::grammar::{Query, Talk};
use crate::job::{Fact, Job, RunId, Setting};

/// A question told in the same breath as facts is about what they tell: a run of its own
/// or a size of lumber would go unsaid in the read-back.
pub(super) fn one_question(facts: &[Fact], then: Option<&Query>) -> Result<(), Problem> {
    let told = |id: RunId| facts.iter().any(|f| matches!(f, Fact::Run(run, _) if *run == id));
    let other = match then {
        Some(Query::Posts(Some(id)) | Query::Bays(Some(id)) | Query::Layout(Some(id)) | Query::RunLength(id)) => {
            !told(*id)
        }
        Some(Query::Actual(_)) => true,
        // Figures of its own would go unsaid too.
        Some(Query::Takeoff(ask)) => !matches!(
            ask,
            TakeoffAsk::Balusters(None) | TakeoffAsk::Parts | TakeoffAsk::Cuts | TakeoffAsk::Buy | TakeoffAsk::Cost
        ),
        // Of a foot only what the foot hangs on is told beside the question.
        Some(Query::Notch(_)) => facts.iter().any(|f| !matches!(f, Fact::Set(s) if !matches!(s, Setting::Post(..)))),
        _ => false,
    };
    if other && !facts.is_empty() {
        return Err(Problem::Ask("One thing at a time: tell me the one, then ask the other.", Vec::new()));
    }
    Ok(())
}

/// True when two facts give one thing two values: "12, it's 11-9" says not which holds.
pub(super) fn at_odds(facts: &[Fact]) -> bool {
    let odd = |a: &Fact, b: &Fact| match (a, b) {
        (Fact::Run(one, a), Fact::Run(other, b)) if one == other => {
            let two = |x: bool, y: bool, same: bool| x && y && !same;
            two(a.length.is_some(), b.length.is_some(), a.length == b.length)
                || two(a.bays.is_some(), b.bays.is_some(), a.bays == b.bays)
                || two(a.from.is_some(), b.from.is_some(), a.from == b.from)
                || two(a.to.is_some(), b.to.is_some(), a.to == b.to)
                || two(a.gate.is_some(), b.gate.is_some(), a.gate == b.gate)
                || two(a.stairs.is_some(), b.stairs.is_some(), a.stairs == b.stairs)
        }
        (Fact::Set(Setting::Post(one, a)), Fact::Set(Setting::Post(other, b))) => one == other && a != b,
        (Fact::Set(Setting::Timber(a)), Fact::Set(Setting::Timber(b))) => {
            std::mem::discriminant(a) == std::mem::discriminant(b) && a != b
        }
        (Fact::Set(Setting::Foot(a)), Fact::Set(Setting::Foot(b))) => {
            std::mem::discriminant(a) == std::mem::discriminant(b) && a != b
        }
        (Fact::Set(a), Fact::Set(b)) => std::mem::discriminant(a) == std::mem::discriminant(b) && a != b,
        _ => false,
    };
    facts.iter().enumerate().any(|(k, a)| facts[k + 1..].iter().any(|b| odd(a, b)))
}

/// True for a run told with its length and both ends: it corrects nothing.
pub(super) fn tells_whole_run(reading: &Reading) -> bool {
    let whole = |c: &Clause| matches!(c, Clause::Run(r) if r.length.is_some() && r.from.is_some() && r.to.is_some());
    reading.clauses.iter().any(whole)
}

/// Undo and its like, and a swap, are of the line before: with anything else beside them
/// it is not clear which of the two is wanted.
pub(super) fn one_thing(reading: &Reading) -> Result<(), Problem> {
    let hello = |c: &&Clause| !matches!(c, Clause::Fine | Clause::Talk(Talk::Hello | Talk::Thanks));
    let said: Vec<&Clause> = reading.clauses.iter().filter(hello).collect();
    // "what's the span for 2x8 joists": of the floor, not of the guard.
    let any = |test: fn(&Clause) -> bool| said.iter().any(|c| test(c));
    if any(|c| matches!(c, Clause::Strength(_))) && any(|c| matches!(c, Clause::Joists(_))) {
        return Err(Problem::Refuse(
            "Joist spans are not mine: ask the building department, or go by their span tables.",
        ));
    }
    let turns = |c: &&Clause| matches!(c, Clause::Talk(_) | Clause::Swap);
    let no_help =
        reading.corrects && matches!(reading.clauses[..], [Clause::Talk(Talk::Help | Talk::Hello | Talk::Thanks)]);
    // "left 10', right the same" copies the one run told; "front same is 24" says not what.
    let runs: Vec<&RunDraft> =
        said.iter().filter_map(|c| if let Clause::Run(r) = c { Some(r) } else { None }).collect();
    let copies = said.iter().any(|c| matches!(c, Clause::Same { .. })) && !runs.is_empty();
    let named = said.iter().all(|c| !matches!(c, Clause::Same { like: None, .. } | Clause::Same { what: None, .. }));
    let unclear = copies && (runs.len() > 1 && !named || runs.first().is_some_and(|r| r.name.is_none()));
    let copy = said.iter().any(|c| matches!(c, Clause::Same { .. }));
    let other = |c: &&Clause| !matches!(c, Clause::Same { .. } | Clause::Run(_) | Clause::Walk { .. });
    let unclear = unclear || copy && said.iter().any(other);
    // "and no home": which way it goes instead is not told.
    let home = |c: &&Clause| matches!(c, Clause::Walk { length: None, .. });
    let unclear = unclear || reading.denies && said.iter().any(home);
    let swap = said.iter().all(|c| matches!(c, Clause::Swap));
    if said.len() > 1 && !swap && said.iter().any(turns) || no_help || unclear {
        return Err(Problem::Ask("One thing at a time: say the one on a line of its own, then the other.", Vec::new()));
    }
    Ok(())
}

/// True when a line makes several runs and leaves one of them without its length.
pub(super) fn half_told(job: &Job, facts: &[Fact]) -> bool {
    let fresh = |id: &RunId| job.run(*id).is_none();
    // The sides of an outline may well wait for their lengths.
    let walked = facts.iter().any(|f| matches!(f, Fact::Run(_, p) if p.turn.is_some()));
    if walked {
        return false;
    }
    let made = facts.iter().filter_map(|f| if let Fact::Run(id, _) = f { Some(*id) } else { None }).filter(fresh);
    let mut made: Vec<RunId> = made.collect();
    made.dedup();
    let long = |id: &RunId| facts.iter().any(|f| matches!(f, Fact::Run(i, p) if i == id && p.length.is_some()));
    made.len() > 1 && !made.iter().all(long)
}

/// Asked of a rail told with its corners and one length.
pub(super) const WHERE_IT_TURNS: &str =
    "Where does the corner fall? Say each leg by itself: so much to the corner, so much from it.";

/// "an L shaped rail, 24 ft": one length for a rail that turns, and nothing of its legs.
pub(super) fn one_length(reading: &Reading) -> bool {
    let legs: Vec<&RunDraft> =
        reading.clauses.iter().filter_map(|c| if let Clause::Run(r) = c { Some(r) } else { None }).collect();
    let walks = reading.clauses.iter().any(|c| matches!(c, Clause::Walk { .. } | Clause::Deck(..)));
    matches!(legs[..], [leg] if leg.length.is_some() && leg.name.is_none() && leg.from.is_none() && leg.to.is_none())
        && !walks
}
