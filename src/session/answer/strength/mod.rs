//! Answers about span and strength: what is asked of a part beside what it is allowed.
//!
//! Each says what the wood was taken as, shows the other wood and the other load duration
//! beside it, and never calls anything safe.

mod bay;
mod bolt;
mod left;
mod post;
mod refused;
mod rows;
mod section;
mod stiffer;
mod taken;

use super::Figs;
use crate::figure::Fig;
use crate::grammar::ask::{About, StrengthAsk};
use crate::job::{Fact, Job, Member, Order, PostRole, PostSize, Setting, SlotId, TimberTold};
use crate::layout::lay_out;
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status, Style};
use crate::strength::Refused;
use taken::{Taken, longest_bay};

pub(super) use post::how_big;

/// A strength question answered, or refused with the range.
pub fn strength(job: &Job, ask: &StrengthAsk) -> (Reply, Figs) {
    let taken = Taken::of(job, ask);
    let answered = match ask.about {
        About::Bay | About::Reach => bay::bay(job, ask, &taken),
        About::Longest => bay::longest(&taken),
        About::Stiffer => stiffer::stiffer(job, ask, &taken),
        About::Post => post::post(job, ask, &taken),
        About::Left => left::left(job, ask, &taken),
        About::Bolt => bolt::bolt(job, ask, &taken),
    };
    match answered {
        Ok((mut reply, figs)) => {
            let told = against(job, ask).into_iter().filter(|f| reply.findings.iter().all(|g| g.rule != f.rule));
            let told: Vec<Finding> = told.collect();
            reply.findings.extend(told);
            reply.findings.sort_by_key(|f| f.level);
            found_first(&mut reply);
            reply.lines.push(Line::say(Role::Detail, CLOSING));
            (reply, figs)
        }
        Err(refused) => (Reply { lines: refused::worded(&refused), ..Reply::of(Status::Refused) }, Vec::new()),
    }
}

/// A figure inside is no word on what else was found of the part, its bolts or its foot: that opens the answer.
fn found_first(reply: &mut Reply) {
    let first = reply.lines.first().and_then(|l| l.spans.first());
    let inside = matches!(first, Some(Span::Say(lead)) if lead.starts_with("Inside "));
    let lead = reply.findings.first().filter(|_| inside).and_then(|f| match f.level {
        Level::Stop => Some(("Stop: ", f)),
        Level::Check => Some(("Check: ", f)),
        Level::Note => None,
    });
    if let Some((level, found)) = lead {
        let spans = [say(level)].into_iter().chain(found.spans.clone());
        reply.lines.insert(0, Line::new(Role::Answer, spans));
    }
}

/// What the job itself tells against the part asked about: never kept in silence beside a figure.
fn against(job: &Job, ask: &StrengthAsk) -> Vec<Finding> {
    let of_posts = ["guard-too-low", "through-bolts-missing", "bolts-too-thin", "posts-on-decking", "post-under-4x4"];
    let rules: &[&str] = match ask.about {
        About::Post | About::Left | About::Bolt => &of_posts,
        About::Bay | About::Reach | About::Longest | About::Stiffer => &of_posts[..1],
    };
    let layout = lay_out(job);
    rules.iter().filter_map(|id| crate::rules::find(id)).flat_map(|rule| rule.findings(job, &layout)).collect()
}

const CLOSING: &str = "This is arithmetic, not a judgement that it will do: for that ask the building department or an \
                       engineer.";

/// What an answer is, or why there is none.
type Answered = Result<(Reply, Figs), Refused>;

/// The posts a question about a bay supposes: with others the layout is another.
pub fn other_posts(ask: &StrengthAsk) -> Option<Fact> {
    let of_bay = matches!(ask.about, About::Bay | About::Reach);
    ask.post.filter(|_| of_bay).map(|l| Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(l))))
}

/// The facts a question supposes, waiting for "keep it": only one that stretches a bay, or
/// asks what other posts would do.
pub fn supposed_by(ask: &StrengthAsk) -> Vec<Fact> {
    let span = ask.span.filter(|l| ask.about == About::Reach && SlotId::ClearMax.takes(*l));
    let Some(span) = span else { return other_posts(ask).into_iter().collect() };
    let told = [
        ask.post.map(|l| Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(l)))),
        Some(Fact::Set(Setting::ClearMax(span))),
        ask.rail.map(|l| Fact::Order(Order::Rail(Member::Top, Some(l)))),
        ask.lie.map(|l| Fact::Order(Order::Lay(Member::Top, l))),
        ask.cap.map(|l| Fact::Order(Order::Rail(Member::Cap, Some(l)))),
        ask.species.map(|s| Fact::Set(Setting::Timber(TimberTold::Species(s)))),
    ];
    told.into_iter().flatten().collect()
}

/// What a what-if does to the rail of the longest bay, beside what stands; nothing where the
/// longest bay stays as it is.
pub fn beside(now: &Job, then: &Job) -> Option<Line> {
    let (stands, would) = (longest_bay(now)?, longest_bay(then)?);
    if stands.as_length() == would.as_length() {
        return None;
    }
    let taken = Taken::of(then, &StrengthAsk::of(About::Bay));
    let rail = |span: &Fig| bay::Rail::over(&taken.inputs.pieces, &taken, &taken.inputs.wood, span);
    let mut spans =
        vec![say("The rail, by arithmetic (a "), taken.rail_words(), say(", "), taken.wood_words(), say("): at ")];
    spans.push(fig(&would));
    spans.extend(rail(&would).map_or_else(|_| vec![say(" it is far over what can be judged")], |r| r.sag_spans()));
    spans.extend([say("; as it stands, at "), fig(&stands)]);
    spans.extend(rail(&stands).map_or_else(|_| vec![say(" far over what can be judged")], |r| r.sag_spans()));
    spans.push(say("."));
    Some(detail(spans))
}

/// A figure to the tape, or to its unit's places.
fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

/// A figure in inches alone.
fn inches(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Inches)
}

fn say(words: &'static str) -> Span {
    Span::Say(words)
}

fn detail(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Detail, spans)
}
