//! The answer to one act, worded: the figure first, then what it rests on.

mod before;
mod changed;
mod drop;
mod flight;
mod help;
mod law;
mod notch;
mod outline;
mod reasons;
mod refusals;
mod row;
mod rules;
mod stair_ways;
mod stands;
mod strength;
mod sums;
mod takeoff;
mod why;
mod work;

pub(super) use before::before;
pub(super) use changed::{changed, since_list};
pub(super) use flight::disagrees;
pub(super) use help::{hello, help};
pub(super) use notch::leaves_nothing;
pub(super) use reasons::{sources, why};
pub(super) use refusals::impossible;
pub(super) use row::{of_both, settled, to_keep};
pub(super) use stair_ways::beside_choice;
use strength::beside;
pub(super) use strength::{other_posts, supposed_by};
pub(super) use sums::sum;
pub(super) use why::{Before, why_of};

use crate::figure::{Fig, Value, Why};
pub(super) use law::cited;

use crate::grammar::ask::RuleAsk;
use crate::grammar::{Act, Query, canon};
use crate::job::{DeckFact, End, Fact, Flank, Foot, Job, NotchTold, RunId, Setting};
use crate::layout::{Focus, lay_out};
use crate::limits::{Limit, Trust};
use crate::measure::{Length, Lumber, Shade};
use crate::quantity::RowId;
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status, Style, Values};
use crate::rules::{Report, report, report_on};
use crate::solve::known;

/// Figures kept for "why?", by what they are.
pub(super) type Figs = Vec<(&'static str, Fig)>;

fn heard(phrase: &str) -> Line {
    Line::new(Role::Heard, [Span::Phrase(phrase.to_owned())])
}

/// The runs a told line speaks of; `None` where it is about them all.
fn spoken_of(job: &Job, facts: &[Fact]) -> Vec<RunId> {
    let mut ids: Vec<RunId> = Vec::new();
    for fact in facts {
        match fact {
            Fact::Run(id, _) if !ids.contains(id) => ids.push(*id),
            Fact::Set(Setting::Foot(_) | Setting::Notch(_)) => {}
            Fact::Set(_) | Fact::DeckAlong(_) | Fact::DeckOut(_) => return job.runs.iter().map(|r| r.id).collect(),
            _ => {}
        }
    }
    ids
}

/// What was told, taken in: the layout it makes, then what was heard.
pub(super) fn told(before: &Job, job: &Job, act: &Act, then: Option<&Query>, width: usize) -> (Reply, Figs) {
    let Act::Tell(facts) = act else { return (Reply::of(Status::Told), Vec::new()) };
    let phrase = match then {
        Some(Query::Given(given)) => canon::write(&Act::TellWith(facts.clone(), given.clone())),
        _ => canon::write(act),
    };
    let runs = if outline::closes(before, job, facts) {
        job.runs.iter().map(|r| r.id).collect()
    } else {
        spoken_of(job, facts)
    };
    let settings_only = facts.iter().all(|f| matches!(f, Fact::Set(_)));
    let mut reply = Reply::of(Status::Told);
    let mut figs = Vec::new();
    if let Some(query @ Query::Takeoff(ask)) = then {
        let answered = takeoff::takeoff(job, ask);
        (reply, figs) = (Reply { status: Status::Told, ..beside_findings(answered.0, job, query) }, answered.1);
    } else if let Some((answered, of_feet)) = of_feet(job, facts, then, width) {
        (reply.lines, reply.values, figs) = (answered.lines, answered.values, of_feet);
        reply.findings = crate::rules::check(job, &lay_out(job));
        let fresh = answered.findings.into_iter().filter(|f| reply.findings.iter().all(|g| g.rule != f.rule));
        let fresh: Vec<_> = fresh.collect();
        reply.findings.extend(fresh);
    } else if let Some(query @ Query::Flight(ask)) = then {
        (reply, figs) = flight::flight(job, ask);
        reply = beside_findings(reply, job, query);
    } else if let (None, [Fact::Set(Setting::Law(told))]) = (then, facts.as_slice()) {
        reply.findings = crate::rules::check(job, &lay_out(job));
        reply.lines = law::told(job, told);
    } else if let (None, Some(answered)) = (then, drop::guard_needed(job, facts)) {
        (reply, figs) = answered;
        reply.lines.extend(flight::made(job, facts));
        reply.status = Status::Told;
        reply.findings = crate::rules::check(job, &lay_out(job));
    } else if matches!(facts.as_slice(), [Fact::Done(..), ..]) {
        reply.lines = work::ticked(job);
    } else if !runs.is_empty() {
        let (focus, which) = asked(then, if settings_only { Focus::Bays } else { Focus::Whole });
        let report = of_runs(job, &runs, which, focus, width);
        figs = figures(&report.values);
        take(&mut reply, report);
    } else {
        reply.findings = crate::rules::check(job, &lay_out(job));
        reply.lines.push(Line::say(Role::Answer, taken(facts)));
        reply.lines.extend(flight::made(job, facts));
    }
    reply.lines.extend(stair_ways::width_taken(job, facts));
    takeoff::add_up(facts, &mut reply);
    reply.lines.extend(takeoff::suits_the_sticks(job, facts));
    if stairs_unsized(job) {
        reply.lines.push(Line::say(Role::Detail, "Still to tell: how wide the stairs between the runs are."));
    }
    reply.lines.extend(outline::lines(before, job, facts));
    if let Some(Query::Given(given)) = then {
        row::beside_told(given, &mut reply);
    }
    reply.lines.push(heard(&phrase));
    reply.readback = Some(phrase);
    (reply, figs)
}

/// What is asked behind what is told, answered: the stops on it first, then all that the rules found in the job.
fn beside_findings(answered: Reply, job: &Job, query: &Query) -> Reply {
    let mut reply = stands::with_stops(answered, job, query);
    let all = crate::rules::check(job, &lay_out(job));
    let fresh: Vec<_> = all.into_iter().filter(|f| !reply.findings.contains(f)).collect();
    reply.findings.extend(fresh);
    reply.findings.sort_by_key(|f| f.level);
    reply
}

/// What a line that tells of the posts' feet, or asks of them, is answered with: the foot.
fn of_feet(job: &Job, facts: &[Fact], then: Option<&Query>, width: usize) -> Option<(Reply, Figs)> {
    let foot = |f: &Fact| match f {
        Fact::Set(Setting::Foot(Foot::RailNotch(l))) => Some(notch::up_top(*l)),
        Fact::Set(Setting::Notch(NotchTold::Deep(l))) => Some(notch::told_depth(job, *l)),
        Fact::Set(Setting::Foot(Foot::Nosing(_))) => notch::settled(job),
        _ => None,
    };
    match then {
        Some(Query::Notch(ask)) => Some(notch::notch(job, *ask, width)),
        Some(_) => None,
        None => facts.iter().find_map(foot),
    }
}

/// True where two runs end at the same stairs and nobody said how wide those are.
fn stairs_unsized(job: &Job) -> bool {
    let between = job.runs.windows(2).any(|r| r[0].to == Some(End::StairHead) && r[1].from == Some(End::StairHead));
    between && job.stair_width.is_none()
}

fn taken(facts: &[Fact]) -> &'static str {
    match facts {
        [Fact::Note(_)] => "Noted.",
        [Fact::DropNote(_)] => "That note is gone.",
        [Fact::DropRun(_)] => "That run is gone.",
        [Fact::Deck(DeckFact::New), ..] => "A new deck: how long is it along the house, and how far does it come out?",
        [Fact::Deck(DeckFact::StartOver), ..] => {
            "Everything told before is set aside; undo brings it back. What is the deck?"
        }
        [Fact::NoStairs] => "No stairs: noted.",
        [Fact::DeckAlong(_), ..] => "Kept. How far does it come out from the house?",
        [Fact::DeckOut(_), ..] => "Kept. How long is it along the house?",
        [Fact::Order(_), ..] => "Kept for the order.",
        [Fact::Row(..), ..] => "Kept for what you ask next.",
        [Fact::DropRow(_)] => "Gone.",
        _ => "Kept for this job.",
    }
}

fn asked(then: Option<&Query>, or: Focus) -> (Focus, Option<RunId>) {
    match then {
        Some(Query::Posts(id)) => (Focus::Posts, *id),
        Some(Query::Bays(id)) => (Focus::Bays, *id),
        Some(Query::MarksBack(id)) => (Focus::Back, *id),
        Some(Query::RunLength(id)) => (Focus::RunLength, Some(*id)),
        Some(Query::Layout(id)) => (Focus::Whole, *id),
        _ => (or, None),
    }
}

/// A report on some of the runs.
fn of_runs(job: &Job, runs: &[RunId], which: Option<RunId>, focus: Focus, width: usize) -> Report {
    report_on(job, |id| which.map_or_else(|| runs.contains(&id), |only| only == id), focus, width)
}

/// The report's lines without its cautions, which the reply carries as findings.
fn take(reply: &mut Reply, report: Report) {
    reply.lines.extend(report.lines.into_iter().filter(|l| l.role != Role::Caution));
    reply.values = report.values;
    reply.findings = report.findings;
}

/// A what-if: what it would be, beside what stands.
pub(super) fn supposed(
    now: &Job,
    then: &Job,
    facts: &[Fact],
    asked_for: Option<&Query>,
    width: usize,
) -> (Reply, Figs) {
    let phrase = canon::write(&Act::Suppose(facts.to_vec()));
    if let Some(disagrees) = disagrees(then).filter(|_| disagrees(now).is_none()) {
        let lines = vec![disagrees, Line::say(Role::Detail, "Nothing is changed."), heard(&phrase)];
        return (Reply { lines, readback: Some(phrase), ..Reply::of(Status::Refused) }, Vec::new());
    }
    let mut runs = spoken_of(then, facts);
    if runs.is_empty() {
        runs = then.runs.iter().map(|r| r.id).collect();
    }
    if let Some(Query::Takeoff(ask)) = asked_for {
        return supposed_parts(then, ask, phrase);
    }
    let (focus, which) = asked(asked_for, Focus::Bays);
    let mut reply = Reply::of(Status::Answered);
    if let Some((answered, figs)) = of_feet(then, facts, asked_for, width) {
        reply.lines.push(Line::say(Role::Answer, "If it were so:"));
        reply.lines.extend(answered.lines);
        (reply.values, reply.findings) = (answered.values, answered.findings);
        reply.lines.push(Line::say(Role::Detail, "Nothing is changed. Say \"keep it\" to keep it."));
        reply.lines.push(heard(&phrase));
        reply.readback = Some(phrase);
        return (reply, figs);
    }
    if let (None, Some((mut reply, figs))) = (asked_for, drop::guard_needed(then, facts)) {
        reply.lines.insert(0, Line::say(Role::Answer, "If it were so:"));
        reply.lines.push(Line::say(Role::Detail, "Nothing is changed. Say \"keep it\" to keep it."));
        reply.lines.push(heard(&phrase));
        reply.readback = Some(phrase);
        return (reply, figs);
    }
    let report = of_runs(then, &runs, which, focus, width);
    let figs = figures(&report.values);
    if then.runs.is_empty() {
        reply.findings = crate::rules::check(then, &lay_out(then));
        let clean = "No run is told to hold it against; of what is told, nothing I check speaks against it.";
        let found = "If it were so, this speaks against it:";
        let none = reply.findings.iter().all(|f| f.level == crate::reply::Level::Note);
        reply.lines.push(Line::say(Role::Answer, if none { clean } else { found }));
    } else {
        reply.lines.push(Line::say(Role::Answer, "If it were so:"));
        take(&mut reply, report);
    }
    let stands = of_runs(now, &runs, which, Focus::Bays, width);
    if let Some(first) = stands.lines.into_iter().find(|l| l.role == Role::Answer).filter(|_| !now.runs.is_empty()) {
        let spans = [Span::Say("As it stands: ")].into_iter().chain(first.spans);
        reply.lines.push(Line::new(Role::Detail, spans));
    }
    reply.lines.extend(flight::made(then, facts));
    reply.lines.extend(beside(now, then));
    reply.lines.push(Line::say(Role::Detail, "Nothing is changed. Say \"keep it\" to keep it."));
    reply.lines.push(heard(&phrase));
    reply.readback = Some(phrase);
    (reply, figs)
}

/// The layout as other posts or longer bays would make it, beside what stands; none without runs.
pub(super) fn relaid(now: &Job, then: &Job, width: usize) -> Vec<Line> {
    if now.runs.is_empty() {
        return Vec::new();
    }
    let bays = |job: &Job, lead| {
        let report = report(job, None, Focus::Bays, width);
        let first = report.lines.into_iter().find(|l| l.role == Role::Answer)?;
        Some(Line::new(Role::Detail, [Span::Say(lead)].into_iter().chain(first.spans)))
    };
    [bays(then, "Laid out so: "), bays(now, "As it stands: ")].into_iter().flatten().collect()
}

/// A what-if with a question about balusters, parts or cost in it.
fn supposed_parts(then: &Job, ask: &crate::grammar::ask::TakeoffAsk, phrase: String) -> (Reply, Figs) {
    let (reply, figs) = takeoff::takeoff(then, ask);
    let mut reply = stands::with_stops(reply, then, &Query::Takeoff(*ask));
    reply.lines.insert(0, Line::say(Role::Answer, "If it were so:"));
    reply.lines.push(Line::say(Role::Detail, "Nothing is changed. Say \"keep it\" to keep it."));
    reply.lines.push(heard(&phrase));
    reply.readback = Some(phrase);
    (reply, figs)
}

/// A question about the job, a rule or a measure.
pub(super) fn query(job: &Job, query: &Query, width: usize) -> (Reply, Figs) {
    let (mut reply, figs) = match query {
        Query::Layout(id) => reported(job, *id, Focus::Whole, width),
        Query::MarksBack(id) => reported(job, *id, Focus::Back, width),
        Query::Posts(id) => reported(job, *id, Focus::Posts, width),
        Query::Bays(id) => reported(job, *id, Focus::Bays, width),
        Query::RunLength(id) => reported(job, Some(*id), Focus::RunLength, width),
        Query::Flank(id, flank) => beside_stairs(job, *id, *flank),
        Query::Job => (told_so_far(job), Vec::new()),
        Query::Rule(ask) => drop::led_by_the_drop(job, ask.limit, of_rule(job, *ask)),
        Query::Actual(lumber) => actual(*lumber),
        Query::Measure { length, shade, about } => measure(*length, *shade, *about),
        Query::Flight(ask) => flight::flight(job, ask),
        Query::Strength(ask) => strength::strength(job, ask),
        Query::Takeoff(ask) => takeoff::takeoff(job, ask),
        Query::Row(ask) => row::row(job, ask),
        Query::Given(ask) => (row::given(job, ask), Vec::new()),
        Query::Work(ask) => work::work(job, *ask),
        Query::Law => (law::in_force(job), Vec::new()),
        Query::Notch(ask) => notch::notch(job, *ask, width),
        Query::Rules => (rules::all(), Vec::new()),
        Query::RulesFound => (rules::found(job), Vec::new()),
        Query::Why | Query::WhyOf(_) | Query::Sources => (Reply::of(Status::Answered), Vec::new()),
    };
    reply = stands::with_stops(reply, job, query);
    reply.readback = Some(canon::write(&Act::Query(query.clone())));
    (reply, figs)
}

/// A limit and its source, or what stands in its stead where the job is. Where it is the word on what was asked the answer opens with that.
fn of_rule(job: &Job, RuleAsk { limit, says }: RuleAsk) -> (Reply, Figs) {
    if let Some(reply) = law::instead(job, limit) {
        return (reply, Vec::new());
    }
    let (mut reply, figs) = rule(limit);
    if let (Some(yes), Some(line)) = (says, reply.lines.first_mut()) {
        let word = Span::Say(if yes { "Yes: " } else { "No: " });
        let source = [Span::Say(" ("), Span::Say(limit.source), Span::Say(").")];
        line.spans = [word, Span::Say(limit.says)].into_iter().chain(source).collect();
        reply.lines.retain(|line| line.spans.first() != Some(&Span::Say("Source: ")));
        let amiss =
            Finding { rule: limit.id, level: Level::Check, spans: vec![Span::Say(limit.says)], source: limit.source };
        reply.findings.extend((!yes).then_some(amiss));
    }
    reply.lines.extend(strength::how_big(job).filter(|_| limit.id == crate::limits::POST_SIZE.id));
    if let Some(left) = left_of_the_notch(job).filter(|_| limit.id == crate::limits::NOTCHED_POST.id) {
        let says =
            [Span::Fig(left.clone(), Style::InchesExact), Span::Say(" is left of the post as it was told here.")];
        reply.lines.push(Line::new(Role::Detail, says));
        reply.values.more.push(("left", left));
    }
    (reply, figs)
}

/// What is left of a post whose notch was told.
fn left_of_the_notch(job: &Job) -> Option<Fig> {
    job.told(RowId::NotchDepth)?;
    known(job, RowId::NotchLeft).filter(|left| left.as_length().is_some())
}

/// The guard on one side of a run's stairs.
fn beside_stairs(job: &Job, id: RunId, flank: Flank) -> (Reply, Figs) {
    let name = match flank {
        Flank::Left => "flank_left",
        Flank::Right => "flank_right",
    };
    let (mut reply, _) = reported(job, Some(id), Focus::RunLength, 72);
    let Some((_, fig)) = reply.values.more.iter().find(|(n, _)| *n == name).cloned() else {
        let says = Line::say(Role::Answer, "There are no stairs in that run, so it has no sides to them.");
        return (Reply { lines: vec![says], ..Reply::of(Status::Refused) }, Vec::new());
    };
    let side = if flank == Flank::Left { " of guard left of the stairs" } else { " of guard right of the stairs" };
    let seen = Line::say(Role::Detail, outline::seen_from(job));
    reply.lines =
        vec![Line::new(Role::Answer, [Span::Fig(fig.clone(), Style::Full), Span::Say(side), Span::Say(".")]), seen];
    reply.values.result = Some(fig.clone());
    (reply, vec![("guard beside the stairs", fig)])
}

fn reported(job: &Job, which: Option<RunId>, focus: Focus, width: usize) -> (Reply, Figs) {
    if job.runs.is_empty() {
        let says = "There is no layout yet: no run has been told. Say how long it is and what it goes between.";
        return (Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) }, Vec::new());
    }
    let mut reply = Reply::of(Status::Answered);
    let report = report(job, which, focus, width);
    let figs = figures(&report.values);
    take(&mut reply, report);
    (reply, figs)
}

/// Everything told, as phrases that can be typed again.
fn told_so_far(job: &Job) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    let facts = crate::job::retold(job);
    if facts.is_empty() {
        reply.lines.push(Line::say(Role::Answer, "Nothing has been told yet."));
    }
    reply.lines.extend(facts.iter().map(|f| Line::new(Role::Answer, [Span::Phrase(canon::write_fact(f))])));
    reply
}

/// A limit, its source, and how far it may be trusted.
fn rule(limit: &'static Limit) -> (Reply, Figs) {
    let mut reply = Reply::of(Status::Answered);
    let stop = if limit.says.ends_with('.') { "" } else { "." };
    reply.lines.push(Line::new(Role::Answer, [Span::Say(limit.says), Span::Say(stop)]));
    if !limit.note.is_empty() {
        let stop = if limit.note.ends_with('.') { "" } else { "." };
        reply.lines.push(Line::new(Role::Detail, [Span::Say("Mind: "), Span::Say(limit.note), Span::Say(stop)]));
    }
    reply.lines.push(Line::new(Role::Detail, [Span::Say("Source: "), Span::Say(limit.source), Span::Say(".")]));
    if limit.trust != Trust::Practice {
        reply.lines.push(Line::say(
            Role::Detail,
            "Your building department decides which code, edition and changes hold where you are.",
        ));
    }
    let is = match limit.unit {
        "in" | "sixteenths" => Fig::limit(limit),
        _ => Fig::new(Value::Number(i128::from(limit.value).into()), Why::Limit(limit)),
    };
    if matches!(limit.unit, "in" | "lb") {
        reply.values.more = vec![("limit", is.clone())];
    }
    (reply, vec![("limit", is)])
}

fn actual(lumber: Lumber) -> (Reply, Figs) {
    let Some((thick, wide)) = lumber.dressed() else {
        let says = Line::say(Role::Answer, "That is not a size of lumber I know.");
        return (Reply { lines: vec![says], ..Reply::of(Status::Refused) }, Vec::new());
    };
    let dressed = |l| Fig::length(l, Why::Table("dressed dry size", lumber.table()));
    let (thick, wide) = (dressed(thick), dressed(wide));
    let mut reply = Reply::of(Status::Answered);
    let inches = |f: &Fig| Span::Fig(f.clone(), Style::Inches);
    let line = [
        Span::Phrase(lumber.to_string()),
        Span::Say(" measures "),
        inches(&thick),
        Span::Say(" by "),
        inches(&wide),
        Span::Say(", dressed and dry."),
    ];
    reply.lines.push(Line::new(Role::Answer, line));
    reply.lines.push(Line::say(Role::Detail, "A wet one runs fatter: put your tape on it and tell me what it reads."));
    reply.values.result = Some(wide.clone());
    reply.values.more = vec![("thick", thick.clone()), ("wide", wide.clone())];
    (reply, vec![("thickness", thick), ("width", wide)])
}

fn measure(length: Length, shade: Option<Shade>, about: bool) -> (Reply, Figs) {
    let fig = Fig::told(length, "the measure");
    let mut reply = Reply::of(Status::Answered);
    let mut spans = vec![Span::Say(if about { "About " } else { "" }), Span::Fig(fig.clone(), Style::Full)];
    match shade {
        Some(Shade::Strong) => {
            spans.push(Span::Say(", strong: a touch over, how much is yours to say; I add nothing."))
        }
        Some(Shade::Shy) => {
            spans.push(Span::Say(", shy: a touch under, how much is yours to say; I take nothing off."))
        }
        None => spans.push(Span::Say(".")),
    }
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.values.result = Some(fig.clone());
    reply.values.shade = shade;
    reply.values.about = about;
    (reply, vec![("the measure", fig)])
}

/// The figures of an answer worth asking "why?" about, the first of each kind.
fn figures(values: &Values) -> Figs {
    let mut figs: Figs = Vec::new();
    figs.extend(values.bays.iter().find(|b| !b.gate).map(|b| ("clear between posts", b.clear.clone())));
    figs.extend(values.bays.iter().find(|b| !b.gate).and_then(|b| b.centre.clone()).map(|f| ("on centre", f)));
    let counted = [("posts_count", "posts"), ("bays_count", "bays")];
    let named = |(name, said): (&str, &'static str)| {
        values.more.iter().find(|(n, _)| *n == name).map(|(_, f)| (said, f.clone()))
    };
    figs.extend(counted.into_iter().filter_map(named));
    figs.extend(values.posts.get(1).map(|p| ("the second post's centre", p.at.clone())));
    figs.extend(values.clear_max.clone().map(|f| ("the most clear", f)));
    figs
}
