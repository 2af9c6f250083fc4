//! One line: read, chosen, made, answered.

mod loose;
mod lost;
mod unclear;

use super::answer;
use super::bind::{Bound, asks_figure, bound, completed, is_foreign, is_labeled, unclear, with_held};
use super::choose::{Choice, changes_nothing, choose, opened};
use super::point::{no_length, pointer, typed};
use super::resolve::{NO_LENGTH, Problem, Resolved};
use super::retell::focus_after;
use super::state::{Delta, Focus, Log, Pending, Session, Talk as Turn};
use crate::figure::Fig;
use crate::grammar::ask::{RowAsk, StrengthAsk, TakeoffAsk, WorkAsk};
use crate::grammar::draft::{Clause, Reading, Weight};
use crate::grammar::items::{Is, Item, cuts, likeliest};
use crate::grammar::sense::{Foreign, Sense};
use crate::grammar::slips::{said_once, without_hums};
use crate::grammar::words::{Word, words};
use crate::grammar::{Act, Query, Talk, canon};
use crate::job::{Fact, Impossible, Job, Order, Setting};
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status, Typed};
use loose::{bound_to, show_beside};
use std::ops::Range;
use tracing::{debug, info_span};
use unclear::asked_back;

/// The longest line read, in characters.
pub const LONGEST: usize = 4_000;

/// What a line means for the conversation, and the answer to it.
pub fn step(session: &Session, line: &str) -> (Delta, Reply) {
    let (mut delta, reply) = stepped(session, line);
    let reply = lost::named(session, line, &mut delta, reply);
    let reply = super::answer::cited(reply, &session.job.settings.law);
    remember(&mut delta.talk, &reply);
    delta.talk.heard(line);
    (delta, reply)
}

/// Keeps what an answer said for a "why" after it; one that gives no figure changes nothing.
fn remember(talk: &mut Turn, reply: &Reply) {
    let spans = reply.lines.iter().flat_map(|l| &l.spans).chain(reply.findings.iter().flat_map(|f| &f.spans));
    let figs: Vec<Fig> = spans.filter_map(|s| if let Span::Fig(f, _) = s { Some(f.clone()) } else { None }).collect();
    let reasons = reply.readback.as_deref().is_some_and(|r| r.starts_with("why") || r == "sources?");
    if !reasons && reply.status != Status::Refused && !(figs.is_empty() && reply.findings.is_empty()) {
        (talk.said, talk.found) = (figs, reply.findings.clone());
    }
}

/// A question about a job, answered: drawings in characters are for 72 columns.
pub fn ask(job: &Job, query: &Query) -> Reply {
    answer::cited(answer::query(job, query, 72).0, &job.settings.law)
}

pub(super) fn stepped(session: &Session, line: &str) -> (Delta, Reply) {
    let _span = info_span!("step", bytes = line.len()).entered();
    if line.chars().nth(LONGEST).is_some() {
        let words = Line::say(Role::Answer, "That line is too long to be about a guard: 4,000 characters at most.");
        return same(session, refused([words]));
    }
    let line_words = said_once(words(line));
    if line_words.is_empty() {
        return same(session, Reply::of(Status::Answered));
    }
    if let Some(act) = canon::read(line) {
        debug!(?act, "read as a plain phrase");
        let focus = match &act {
            Act::Tell(facts) | Act::TellWith(facts, _) => focus_after(session.talk.focus.clone(), facts),
            _ => session.talk.focus.clone(),
        };
        let resolved = Resolved { acts: vec![act], ask: false, focus, then: None };
        return perform(session, resolved);
    }
    if let Some(bound) = completed(session, line).filter(|_| session.talk.pending.is_none()) {
        return bound_to(session, bound);
    }
    if let Some(bound) = is_labeled(line).then(|| bound(session, line)).flatten() {
        return bound_to(session, bound);
    }
    let choice = choose(session, &line_words);
    debug!(?choice, "chosen");
    let back = unclear(session, line).and_then(|how| asked_back(session, how, line, &line_words, &choice));
    if let Some(reply) = back {
        return pend(session, reply, None);
    }
    if let Some((words, choice)) = stuck(&choice).then(|| without_hums(&line_words)).flatten().and_then(|words| {
        let choice = choose(session, &words);
        (!stuck(&choice) && asks_nothing_less(&line_words, &choice)).then_some((words, choice))
    }) {
        debug!(?choice, "chosen without its hums");
        return turn(session, line, &words, choice);
    }
    // What reads whole is done. What does not gives way: wholly where nothing reads, to a sure question of rows where words are left over.
    let unsure = stuck(&choice) || matches!(choice, Choice::NotMine(_)) && !is_foreign(session, line);
    let bound = (unsure || is_loose(session, &choice)).then(|| bound(session, line)).flatten();
    let of_rows = |b: &Bound| b.is_certain() && !b.lacks && matches!(b.acts[..], [Act::Query(Query::Row(_))]);
    let gives_way = |b: &Bound| match &choice {
        // A rule is no answer to figures it says nothing of.
        Choice::Topic(_, left) => of_rows(b) || holds_figure(&line_words, left),
        // Beside another trade's word only what is the guard's own is told: its runs and the deck.
        Choice::NotMine(_) => match b.acts.first() {
            Some(Act::Tell(facts) | Act::TellWith(facts, _)) => facts.iter().any(is_of_the_guard),
            act => b.is_sure_whatever_is_left() && matches!(act, Some(Act::Query(Query::Row(_) | Query::Rule(_)))),
        },
        // What does not fit was not meant.
        Choice::Problem(Problem::Impossible(Impossible::OutOfRange(..)), _) => b.is_certain() && !b.lacks,
        // A question back without an answer to choose is better answered by a line that is sure of itself.
        Choice::Problem(Problem::Ask(_, acts), reading) if acts.is_empty() && !holds_note(reading) => {
            let figure =
                |act: &Act| matches!(act, Act::Tell(facts) if facts.iter().any(|f| matches!(f, Fact::Row(..))));
            b.is_certain() && !b.lacks && !b.acts.iter().any(figure)
        }
        _ => unsure || of_rows(b),
    };
    match bound {
        Some(bound) if gives_way(&bound) => bound_to(session, bound),
        _ => turn(session, line, &line_words, no_rule(session, line, choice)),
    }
}

/// True where one of these words is a figure.
fn holds_figure(words: &[Word], left: &[Range<usize>]) -> bool {
    let figure = |i: &Item| matches!(i.is, Is::Measure(_)) && left.iter().any(|l| l.contains(&i.words.start));
    likeliest(words, &[]).iter().any(figure)
}

/// A rule that a question for a figure only touches does not answer it.
fn no_rule(session: &Session, line: &str, choice: Choice) -> Choice {
    match choice {
        Choice::Topic(limit, left) if line.contains(|c: char| c.is_ascii_digit()) && asks_figure(session, line) => {
            Choice::NotWorked(limit, left.into_iter().next().unwrap_or(0..0))
        }
        choice => choice,
    }
}

/// True where words of weight have no part in what was chosen, or where it is one of several things.
fn is_loose(session: &Session, choice: &Choice) -> bool {
    match choice {
        Choice::Do { reading: Some(reading), resolved } => {
            // Behind a question a fact may be a premise of the same question: "and with 5 foot stairs".
            let tells = resolved.acts.iter().any(|a| matches!(a, Act::Tell(_)));
            reading.left.iter().any(|l| l.weight > Weight::Light) || tells && session.talk.asked.is_some()
        }
        Choice::Which { .. } | Choice::Idle(_) => true,
        // "and with 12?": what the question before was about settles what a bare figure is.
        Choice::Problem(Problem::Ask(_, acts), _) => acts.is_empty() || session.talk.asked.is_some(),
        Choice::Problem(Problem::Impossible(Impossible::OutOfRange(..)), _) => true,
        _ => false,
    }
}

/// "are lags ok": an "ok" behind something may be what asks, and without it nothing is told.
fn asks_nothing_less(words: &[Word], choice: &Choice) -> bool {
    let ok = words.iter().skip(1).any(|w| matches!(w.text.as_str(), "ok" | "okay"));
    let tells = |acts: &[Act]| acts.iter().any(|a| matches!(a, Act::Tell(_) | Act::Suppose(_)));
    match choice {
        Choice::Do { resolved, .. } => !ok || !tells(&resolved.acts),
        Choice::Which { acts, .. } => !ok || !tells(acts),
        _ => !ok,
    }
}

/// True for what no other trade's line tells: a run with an end or an opening, the deck at the house; a note may be of anything.
fn is_of_the_guard(fact: &Fact) -> bool {
    match fact {
        Fact::Run(_, p) => p.from.is_some() || p.to.is_some() || p.gate.is_some() || p.stairs.is_some(),
        fact => matches!(fact, Fact::DeckAlong(_) | Fact::DropNote(_)),
    }
}

fn holds_note(reading: &Reading) -> bool {
    reading.clauses.iter().any(|c| matches!(c, Clause::Note(_)))
}

/// True where the words were not read as they stand.
fn stuck(choice: &Choice) -> bool {
    match choice {
        // A question of its own, one that one measure would settle, and a refusal stand.
        Choice::Problem(_, reading) if holds_note(reading) => false,
        Choice::Problem(problem, _) => matches!(problem, Problem::Unfit(_)),
        Choice::Unplaced { .. }
        | Choice::Topic(..)
        | Choice::NotWorked(..)
        | Choice::NoAnswer(_)
        | Choice::Unread(_) => true,
        _ => false,
    }
}

fn turn(session: &Session, line: &str, words: &[Word], choice: Choice) -> (Delta, Reply) {
    match choice {
        Choice::Do { resolved, reading } => done(session, line, words, resolved, reading.as_ref()),
        Choice::Which { acts, reading } => {
            let mut reply = asks([Line::say(Role::Question, question(&acts, &reading))], &acts);
            show_beside(session, &mut reply, &acts);
            mark_unused(line, words, &reading, &mut reply);
            pend(session, reply, opened(&acts))
        }
        Choice::Unplaced { words: at, without } => unplaced(session, line, words, &at, &without),
        Choice::Problem(problem, reading) => {
            if let Some(fact) = note(line, words, &reading) {
                return perform(session, plainly(session, Act::Tell(vec![fact])));
            }
            if matches!(problem, Problem::NoLength) {
                return unplaced(session, line, words, &no_length(words), &[]);
            }
            let (delta, mut reply) = troubled(session, problem, &reading);
            mark_unused(line, words, &reading, &mut reply);
            (delta, reply)
        }
        Choice::Topic(limit, unknown) => {
            let (delta, mut reply) = perform(session, plainly(session, Act::Query(Query::Rule(limit.into()))));
            reply.unused = unknown.iter().map(|w| typed(line, words, w)).collect();
            let named = reply.unused.clone();
            reply.lines.extend(took_no_part("No part of that answer: ", named));
            (delta, reply)
        }
        Choice::WhySo(at) => {
            let (delta, mut reply) = perform(session, plainly(session, Act::Query(Query::Why)));
            reply.unused = vec![typed(line, words, &at)];
            (delta, reply)
        }
        Choice::Unread(at) => {
            let (delta, mut reply) = unplaced(session, line, words, &at, &[]);
            reply.status = Status::Refused;
            (delta, reply)
        }
        other => same(session, not_taken(line, words, &other)),
    }
}

/// An act on its own, about what was spoken of before.
fn plainly(session: &Session, act: Act) -> Resolved {
    Resolved { acts: vec![act], ask: false, focus: session.talk.focus.clone(), then: None }
}

fn done(
    session: &Session,
    line: &str,
    words: &[Word],
    resolved: Resolved,
    reading: Option<&Reading>,
) -> (Delta, Reply) {
    let resolved = match reading.and_then(|r| note(line, words, r)) {
        Some(fact) => Resolved { acts: vec![Act::Tell(vec![fact])], ..resolved },
        None => resolved,
    };
    let (delta, mut reply) = perform(session, resolved);
    if let Some(reading) = reading {
        mark_unused(line, words, reading, &mut reply);
    }
    (delta, reply)
}

/// The answer to a line nothing is made of: why, and what it would take.
fn not_taken(line: &str, words: &[Word], choice: &Choice) -> Reply {
    let whole = 0..words.len();
    let of = |reply: Reply, at| Reply { unused: vec![typed(line, words, at)], ..reply };
    let say = |text| Line::say(Role::Answer, text);
    match choice {
        Choice::NotMine(foreign) => not_mine(*foreign),
        Choice::Idle(at) => of(Reply { lines: vec![say("Go on.")], ..Reply::of(Status::Answered) }, at),
        Choice::NotWorked(limit, at) => {
            let touches = [Span::Say("The rule it touches: "), Span::Say(limit.says)];
            let source = [Span::Say(" ("), Span::Say(limit.source), Span::Say(").")];
            let rule = Line::new(Role::Detail, touches.into_iter().chain(source));
            of(refused([say("I can't work that one out yet."), rule]), at)
        }
        Choice::NoAnswer(at) => {
            let says =
                "I can't answer that yet. Ask the building department or an engineer before you build on a guess.";
            of(refused([say(says)]), at)
        }
        Choice::Tangled => {
            let says = "That is too tangled for one line. Say it in smaller pieces, please.";
            of(refused([say(says), Line::say(Role::Detail, "Nothing was changed.")]), &whole)
        }
        Choice::Absurd(says) => refused([say(says), Line::say(Role::Detail, "Nothing was changed.")]),
        _ => {
            let says =
                "I don't follow. Tell me a run (\"run 10 ft between corner and stair head\"), ask a sum, or say help.";
            of(refused([say(says)]), &whole)
        }
    }
}

/// The note a reading holds, word for word as typed.
fn note(line: &str, words: &[Word], reading: &Reading) -> Option<Fact> {
    let range = reading.clauses.iter().find_map(|c| if let Clause::Note(r) = c { Some(r.clone()) } else { None })?;
    let span = words.get(range.start)?.span.start..words.get(range.end.checked_sub(1)?)?.span.end;
    canon::clean_note(line.get(span)?).map(Fact::Note)
}

// --- making the change -----------------------------------------------------------------------

pub(super) fn perform(session: &Session, resolved: Resolved) -> (Delta, Reply) {
    let Resolved { acts, focus, then, .. } = resolved;
    let Some(act) = acts.into_iter().next() else { return same(session, Reply::of(Status::Answered)) };
    let act = match act {
        Act::Query(Query::Row(ask)) => Act::Query(Query::Row(with_held(session, ask))),
        act => act,
    };
    let stands = &session.talk;
    let mut turn = Turn { focus, pending: None, supposed: Vec::new(), filling: None, weighed: None, ..stands.clone() };
    match &act {
        Act::Query(Query::Row(ask)) => turn.asked = Some(ask.clone()),
        Act::Query(Query::Given(ask)) | Act::TellWith(_, ask) => turn.asked = Some(with_given(turn.asked.take(), ask)),
        Act::Query(Query::Takeoff(TakeoffAsk::Infill(infill))) => turn.asked = Some(RowAsk::from(*infill)),
        // What was only held for the next question goes with what is taken back.
        Act::Talk(Talk::Undo) => turn.asked = turn.asked.take().filter(|a| !a.wants.is_empty()),
        // What was given for the next question still is.
        Act::Tell(_) => turn.asked = turn.asked.take().filter(|a| a.wants.is_empty()),
        _ => {}
    }
    match act {
        Act::Tell(facts) => tell(session, facts, turn, then.as_ref()),
        Act::TellWith(facts, given) => tell(session, facts, turn, Some(&Query::Given(given))),
        Act::Suppose(facts) => suppose(session, facts, turn, then.as_ref()),
        Act::Query(query) => {
            let unused = not_used(session, &query);
            let (delta, mut reply) = query_act(session, query, turn);
            reply.lines.splice(0..0, unused);
            (delta, reply)
        }
        Act::Sum(sum) => {
            let (reply, figs) = answer::sum(&sum);
            let turn = Turn { supposed: session.talk.supposed.clone(), last: figs, ..turn };
            (Delta { job: None, log: Log::Same, talk: turn }, reply)
        }
        Act::Talk(talk) => talked(session, talk, turn),
    }
}

/// What was told for the next question, named where that is answered from the job alone.
fn not_used(session: &Session, query: &Query) -> Option<Line> {
    let held = session.talk.asked.as_ref().filter(|a| a.wants.is_empty() && !a.given.is_empty())?;
    let of_the_job = match query {
        Query::Layout(_) | Query::MarksBack(_) | Query::Posts(_) | Query::Bays(_) | Query::RunLength(_) => true,
        Query::Flank(..) => true,
        Query::Takeoff(ask) => !matches!(ask, TakeoffAsk::Infill(_)),
        _ => false,
    };
    let said = canon::write(&Act::Query(Query::Given(held.clone())));
    let premises = said.strip_prefix("given: ").unwrap_or(&said).to_owned();
    let says = [Span::Say("Answered from the job, without: "), Span::Phrase(premises), Span::Say(".")];
    of_the_job.then(|| Line::new(Role::Detail, says))
}

/// What was asked or given before, with what is given now; a row given anew takes the place of what it was.
fn with_given(before: Option<RowAsk>, now: &RowAsk) -> RowAsk {
    let Some(before) = before else { return now.clone() };
    let anew = |row: &RowId| now.given.iter().any(|(r, _)| r == row);
    let stays = before.given.into_iter().filter(|(row, _)| !anew(row));
    RowAsk {
        given: stays.chain(now.given.iter().copied()).collect(),
        supposed: before.supposed.into_iter().chain(now.supposed.iter().cloned()).collect(),
        ..RowAsk { wants: before.wants, mood: before.mood, given: Vec::new(), supposed: Vec::new() }
    }
}

fn tell(session: &Session, facts: Vec<Fact>, mut turn: Turn, then: Option<&Query>) -> (Delta, Reply) {
    let job = match session.job.with_all(&facts) {
        Ok(job) => job,
        Err(impossible) => return same(session, answer::impossible(&impossible)),
    };
    if let Some(disagrees) = answer::disagrees(&job).filter(|_| answer::disagrees(&session.job).is_none()) {
        return same(session, refused([disagrees, Line::say(Role::Detail, "Nothing was changed.")]));
    }
    if let Some(nothing) = answer::leaves_nothing(&job).filter(|_| answer::leaves_nothing(&session.job).is_none()) {
        return same(session, nothing);
    }
    let act = Act::Tell(facts);
    let (mut reply, figs) = answer::told(&session.job, &job, &act, then, session.width);
    reply.status = Status::Told;
    if let Act::Tell(facts) = &act {
        let at = reply.lines.iter().position(|l| l.role == Role::Heard).unwrap_or(reply.lines.len());
        reply.lines.splice(at..at, answer::before(&session.job, facts));
    }
    // A note that stood before this line has been read once; stops and checks are said again.
    let before = crate::rules::check(&session.job, &crate::layout::lay_out(&session.job));
    reply.findings.retain(|f| f.level != crate::reply::Level::Note || !before.contains(f));
    if changes_nothing(&session.job, &act) {
        reply.lines.push(Line::say(Role::Detail, "That is as it already stands."));
    }
    if let Some(listed) = &session.talk.listed {
        let at = reply.lines.iter().position(|l| l.role == Role::Heard).unwrap_or(reply.lines.len());
        reply.lines.splice(at..at, answer::since_list(listed, &session.job, &job));
    }
    turn.last = figs;
    let Act::Tell(facts) = act else { return same(session, reply) };
    (Delta { job: Some(job), log: Log::Told(facts), talk: turn }, reply)
}

fn suppose(session: &Session, facts: Vec<Fact>, mut turn: Turn, then: Option<&Query>) -> (Delta, Reply) {
    let job = match session.job.with_all(&facts) {
        Ok(job) => job,
        Err(impossible) => return same(session, answer::impossible(&impossible)),
    };
    let (reply, figs) = answer::supposed(&session.job, &job, &facts, then, session.width);
    turn.focus = session.talk.focus.clone();
    turn.last = figs;
    turn.supposed = facts;
    (Delta { job: None, log: Log::Same, talk: turn }, reply)
}

fn query_act(session: &Session, query: Query, turn: Turn) -> (Delta, Reply) {
    let filled = if let Query::Takeoff(TakeoffAsk::Infill(infill)) = &query { Some(*infill) } else { None };
    let (reply, figs) = match query {
        Query::Why => answer::why(&session.job, &session.talk.last, session.width),
        Query::WhyOf(ask) => {
            let before = answer::Before { named: &session.talk.last, said: &session.talk.said };
            answer::why_of(&session.job, &ask, &before, session.width)
        }
        Query::Sources => answer::sources(&session.talk.last, &session.talk.found),
        Query::Work(WorkAsk::Changed) => {
            let reply = answer::changed(&was(session), &session.job);
            (Reply { readback: Some(canon::write(&Act::Query(query))), ..reply }, Vec::new())
        }
        Query::Strength(ask) => return strength_act(session, &ask, turn),
        query => answer::query(&session.job, &query, session.width),
    };
    let listed = reply.values.takeoff.has_list().then(|| session.job.clone()).or_else(|| session.talk.listed.clone());
    let filling = filled.filter(|_| reply.status == Status::Answered);
    let last = if figs.is_empty() { session.talk.last.clone() } else { figs };
    // What a question asks back is answered by its choices.
    let acts: Vec<Act> = reply.choices.iter().filter_map(|c| canon::read(c)).collect();
    let turn = Turn { supposed: session.talk.supposed.clone(), last, pending: opened(&acts), listed, filling, ..turn };
    (Delta { job: None, log: Log::Same, talk: turn }, reply)
}

/// What "keep it" tells: what was supposed; else what the last question of rows gave.
fn to_keep(session: &Session) -> Vec<Fact> {
    let asked = session.talk.asked.iter().filter(|_| session.talk.supposed.is_empty());
    let facts = |ask: &RowAsk| answer::to_keep(&session.job, ask);
    session.talk.supposed.iter().cloned().chain(asked.flat_map(facts)).collect()
}

/// The job as it was last listed; where nothing was, as it stood before the last told line.
fn was(session: &Session) -> Job {
    let before = || session.told.split_last().and_then(|(_, told)| Job::default().with_all(told.iter().flatten()).ok());
    session.talk.listed.clone().or_else(before).unwrap_or_default()
}

/// A strength question: it builds on what was supposed, and one that stretches a bay or tries
/// other posts is a what-if itself.
fn strength_act(session: &Session, ask: &StrengthAsk, turn: Turn) -> (Delta, Reply) {
    let mut supposed = session.talk.supposed.clone();
    let with = |facts: &[Fact]| session.job.with_all(facts).unwrap_or_else(|_| session.job.clone());
    let posts: Vec<Fact> = supposed.iter().cloned().chain(answer::other_posts(ask)).collect();
    let (mut reply, last) = answer::query(&with(&posts), &Query::Strength(*ask), session.width);
    let facts = if reply.status == Status::Answered { answer::supposed_by(ask) } else { Vec::new() };
    supposed.retain(|f| !facts.iter().any(|g| same_slot(f, g)));
    supposed.extend(facts.iter().cloned());
    if answer::other_posts(ask).is_some() && !facts.is_empty() {
        reply.lines.extend(answer::relaid(&session.job, &with(&supposed), session.width));
    }
    if !facts.is_empty() {
        reply.lines.push(Line::say(Role::Detail, kept_by(ask)));
    }
    (Delta { job: None, log: Log::Same, talk: Turn { supposed, last, weighed: Some(*ask), ..turn } }, reply)
}

/// True where the later of two facts sets what the earlier set.
fn same_slot(a: &Fact, b: &Fact) -> bool {
    use std::mem::discriminant;
    match (a, b) {
        (Fact::Set(Setting::Post(one, _)), Fact::Set(Setting::Post(other, _))) => one == other,
        (Fact::Set(a), Fact::Set(b)) => discriminant(a) == discriminant(b),
        (Fact::Order(Order::Rail(one, _)), Fact::Order(Order::Rail(other, _))) => one == other,
        (Fact::Order(Order::Lay(one, _)), Fact::Order(Order::Lay(other, _))) => one == other,
        _ => false,
    }
}

/// What "keep it" would keep of such a question.
fn kept_by(ask: &StrengthAsk) -> &'static str {
    match ask.span {
        Some(_) => "Nothing is changed. Say \"keep it\" to let this job's bays run so long.",
        None => "Nothing is changed. Say \"keep it\" to keep those posts.",
    }
}

fn talked(session: &Session, talk: Talk, turn: Turn) -> (Delta, Reply) {
    match talk {
        Talk::Undo => match session.told.split_last() {
            Some((_, before)) => replayed(session, before, Log::Undo, "Taken back.", turn),
            None => same(session, refused([Line::say(Role::Answer, "There is nothing to take back.")])),
        },
        Talk::Redo => match session.undone.last() {
            Some(next) => {
                let told: Vec<Vec<Fact>> = session.told.iter().cloned().chain([next.clone()]).collect();
                replayed(session, &told, Log::Redo, "Done again.", turn)
            }
            None => same(session, refused([Line::say(Role::Answer, "There is nothing to do again.")])),
        },
        Talk::Keep if to_keep(session).is_empty() => {
            same(session, refused([Line::say(Role::Answer, "Nothing was supposed, so there is nothing to keep.")]))
        }
        Talk::Keep => tell(session, to_keep(session), turn, None),
        Talk::Leave => {
            let mut reply = Reply::of(Status::Answered);
            reply.readback = Some(canon::write(&Act::Talk(talk)));
            reply.lines = vec![Line::say(Role::Answer, "Left as it was.")];
            (Delta { job: None, log: Log::Same, talk: turn }, reply)
        }
        Talk::Help => same(session, answer::help(&session.job)),
        Talk::Hello | Talk::Thanks => same(session, answer::hello(talk)),
    }
}

fn replayed(session: &Session, told: &[Vec<Fact>], log: Log, says: &'static str, turn: Turn) -> (Delta, Reply) {
    let Ok(mut job) = Job::default().with_all(told.iter().flatten()) else {
        return same(
            session,
            refused([Line::say(Role::Answer, "What was told no longer fits together, so nothing was changed.")]),
        );
    };
    // A run's number given out once is not given out again. A note's is counted out by the lines told:
    // told again without this one, in a job file too, the next note bears it.
    job.last_run = job.last_run.max(session.job.last_run);
    let mut reply = Reply::of(Status::Told);
    reply.readback = Some(if matches!(log, Log::Undo) { "undo" } else { "redo" }.to_owned());
    reply.lines = vec![Line::say(Role::Answer, says)];
    let focus = focus_after(Focus::default(), &told.concat());
    (Delta { job: Some(job), log, talk: Turn { focus, last: Vec::new(), ..turn } }, reply)
}

// --- asking and refusing ----------------------------------------------------------------------

fn same(session: &Session, reply: Reply) -> (Delta, Reply) {
    (Delta { job: None, log: Log::Same, talk: Turn { pending: None, ..session.talk.clone() } }, reply)
}

fn pend(session: &Session, reply: Reply, pending: Option<Pending>) -> (Delta, Reply) {
    (Delta { job: None, log: Log::Same, talk: Turn { pending, ..session.talk.clone() } }, reply)
}

fn refused(lines: impl IntoIterator<Item = Line>) -> Reply {
    Reply { lines: lines.into_iter().collect(), ..Reply::of(Status::Refused) }
}

fn asks(lines: impl IntoIterator<Item = Line>, acts: &[Act]) -> Reply {
    let choices: Vec<String> = acts.iter().map(canon::write).collect();
    let shown = choices.iter().map(|c| Line::new(Role::Choice, [Span::Phrase(c.clone())]));
    let lines = lines.into_iter().chain(shown).collect();
    Reply { lines, choices, ..Reply::of(Status::Asks) }
}

fn question(acts: &[Act], reading: &Reading) -> &'static str {
    let query = acts.iter().all(|a| matches!(a, Act::Query(_)));
    let lengths = |a: &Act| matches!(a, Act::Tell(facts) if facts.iter().any(|f| matches!(f, Fact::Run(_, p) if p.length.is_some())));
    let gate = |c: &Clause| matches!(c, Clause::Run(r) if r.gate.is_some() && r.length.is_none());
    let doubt = reading.clauses.iter().any(gate) && !acts.iter().any(lengths);
    let measured = |a: &Act| matches!(a, Act::Tell(facts) if facts.iter().any(|f| matches!(f, Fact::Run(_, p) if p.stairs.as_ref().is_some_and(|s| s.iter().any(|s| s.recess.is_some())))));
    if acts.len() > 1 && acts.iter().all(measured) {
        return "What is that width between: the posts, the decking, the treads or the framing? Say the number, or say it in words.";
    }
    match (acts.len(), query, doubt) {
        (1, ..) => "Did you mean this? Say yes, or say it another way.",
        (_, _, true) => "Where does it go? Say the number, or say it in full.",
        (_, true, _) => "Which length is that? Say the number, or say it with its unit.",
        _ => "That can be read more than one way. Which? Say the number, or say it in full.",
    }
}

fn unplaced(
    session: &Session,
    line: &str,
    words: &[Word],
    at: &std::ops::Range<usize>,
    without: &[Act],
) -> (Delta, Reply) {
    let what = typed(line, words, at);
    let lead = Line::new(
        Role::Question,
        [Span::Say("I can't place \""), Span::Typed(what.clone()), Span::Say("\", so nothing was changed.")],
    );
    let mut lines = vec![lead];
    lines.extend(pointer(line, words, at));
    if without.is_empty() {
        lines.push(Line::say(Role::Detail, "Say it another way, or in smaller pieces."));
    } else {
        lines.push(Line::say(
            Role::Detail,
            "Without those words it would be this: say 1 to take it, or say it another way.",
        ));
    }
    let mut reply = asks(lines, without);
    reply.unused = vec![what];
    pend(session, reply, opened(without))
}

fn troubled(session: &Session, problem: Problem, reading: &Reading) -> (Delta, Reply) {
    match problem {
        Problem::Impossible(i) => same(session, answer::impossible(&i)),
        Problem::Ask(says, acts) => pend(session, asks([Line::say(Role::Question, says)], &acts), opened(&acts)),
        Problem::Lacks(says, lack) => {
            let pending = Pending { choices: Vec::new(), lacks: Some((reading.clone(), lack)), likely: None };
            pend(session, asks([Line::say(Role::Question, says)], &[]), Some(pending))
        }
        Problem::NoLength => pend(session, asks([Line::say(Role::Question, NO_LENGTH)], &[]), None),
        Problem::Unfit(says) => pend(session, asks([Line::say(Role::Question, says)], &[]), None),
        Problem::Refuse(says) => same(session, refused([Line::say(Role::Answer, says)])),
    }
}

fn not_mine(foreign: Foreign) -> Reply {
    let says = match foreign {
        Foreign::Trade => "Not mine: I only know deck guards. Ask someone of that trade.",
        Foreign::SignOff => {
            "I can't do that: I'm not an engineer or an inspector. Ask the building department or a licensed engineer."
        }
        Foreign::Else => "Not mine: I only know deck guards.",
    };
    refused([Line::say(Role::Answer, says)])
}

/// Names what took no part: first in the answer where it was not known filler.
fn mark_unused(line: &str, words: &[Word], reading: &Reading, reply: &mut Reply) {
    let named: Vec<Typed> =
        reading.left.iter().filter(|l| l.weight > Weight::Light).map(|l| typed(line, words, &l.words)).collect();
    let spoken = |l: &&crate::grammar::draft::Left| {
        words[l.words.clone()].iter().any(|w| w.text.chars().any(char::is_alphanumeric))
    };
    reply.unused = reading.left.iter().filter(spoken).map(|l| typed(line, words, &l.words)).collect();
    let basis: Vec<Typed> = idle_basis(words, reading, reply).iter().map(|w| typed(line, words, w)).collect();
    reply.unused.extend(basis.iter().cloned());
    let named: Vec<Typed> = named.into_iter().chain(basis).collect();
    let mut first: Vec<Line> = Vec::new();
    for near in &reading.near {
        let spans = [
            Span::Say("I took \""),
            Span::Typed(typed(line, words, near)),
            Span::Say("\" for the word it is a slip away from: look at what I heard."),
        ];
        first.push(Line::new(Role::Unused, spans));
    }
    for heard in &reading.heard {
        let spans = [
            Span::Say("I took \""),
            Span::Typed(typed(line, words, heard)),
            Span::Say("\" for the number it sounds like: look at what I heard, and say it again if it is not so."),
        ];
        first.push(Line::new(Role::Unused, spans));
    }
    first.extend(took_no_part("I made nothing of ", named));
    reply.lines.splice(0..0, first);
}

/// What a lone length was said to be measured between: read back, a length has no place for it.
fn idle_basis(words: &[Word], reading: &Reading, reply: &Reply) -> Vec<std::ops::Range<usize>> {
    let lone = reply.readback.as_deref().is_some_and(|r| r.starts_with("length "));
    if !lone || !matches!(&reading.clauses[..], [Clause::Run(draft)] if draft.basis.is_some()) {
        return Vec::new();
    }
    let items = cuts(words, &[]).into_iter().next().map(|(_, items)| items).unwrap_or_default();
    let basis = |i: &Item| i.senses().iter().any(|s| matches!(s, Sense::Basis(_)));
    items.iter().filter(|i| basis(i)).map(|i| i.words.clone()).collect()
}

/// The line that names words without a part; none when there are none.
fn took_no_part(lead: &'static str, named: Vec<Typed>) -> Option<Line> {
    if named.is_empty() {
        return None;
    }
    let mut spans = vec![Span::Say(lead)];
    for (k, word) in named.into_iter().enumerate() {
        spans.push(Span::Say(if k == 0 { "\"" } else { ", \"" }));
        spans.extend([Span::Typed(word), Span::Say("\"")]);
    }
    spans.push(Span::Say("."));
    Some(Line::new(Role::Unused, spans))
}

impl From<Impossible> for Problem {
    fn from(i: Impossible) -> Problem {
        Problem::Impossible(i)
    }
}
