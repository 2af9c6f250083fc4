//! One opening's balusters: the count or the gap first, then what it was taken for and the marks.

use super::super::Figs;
use super::words::{detail, exact, fig, inches, no_spread, refused, row};
use crate::figure::{Fig, Why};
use crate::gate::gap;
use crate::grammar::ask::Infill;
use crate::infill::{HeldGap, Opening, Spread, Start, count_fig, fewest, gap_fig, mark_fig, pitch_fig, widest_fig};
use crate::job::{Job, StartWith};
use crate::measure::Length;
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::takeoff::baluster_fig;

/// What an opening is filled with, as figures.
struct Asked {
    opening: Opening,
    clear: Fig,
    baluster: Fig,
    held: HeldGap,
    limit: Fig,
}

fn asked(job: &Job, i: &Infill) -> Asked {
    let baluster = i.baluster.map_or_else(|| baluster_fig(job), |b| Fig::told(b, "one baluster's width"));
    let held = i.limit.map_or_else(|| gap::level(job), |l| HeldGap::under(Fig::told(l, "the gap limit")));
    let mut opening = crate::takeoff::opening(job, i.clear, i.clear);
    opening.baluster = baluster.as_length().unwrap_or(opening.baluster);
    opening.limit = held.limit();
    if let Some(start) = i.start {
        opening.start = if start == StartWith::Gap { Start::Gap } else { Start::Baluster };
    }
    Asked { opening, clear: Fig::told(i.clear, "the clear opening"), baluster, limit: held.most.clone(), held }
}

/// One opening: the fewest balusters, or what so many leave.
pub fn opening(job: &Job, i: &Infill) -> (Reply, Figs) {
    let asked = asked(job, i);
    let found = fewest(asked.opening);
    let spread = match i.count {
        Some(n) => Spread::of(asked.opening, u32::from(n)),
        None => found.map(|f| f.taped),
    };
    let spread = match spread {
        Ok(spread) => spread,
        Err(why) => return (refused(no_spread(why)), Vec::new()),
    };
    let count = match i.count {
        Some(n) => Fig::count(u64::from(n), Why::Told("how many balusters")),
        None => count_fig(&spread, &asked.limit),
    };
    let gap = gap_fig(&spread, &count);
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, first(&asked, i, &spread, &count, &gap)));
    let fewest_now = found.as_ref().ok().map(|f| f.taped);
    if !spread.passes() {
        reply.findings.push(fails(job, &asked, &spread, &gap));
        reply.lines.extend(fewest_now.map(|f| would_do(&asked, &f)));
    }
    if let Some(found) = found.ok().filter(|f| i.count.is_none() && f.taped.count() > f.exact.count()) {
        let fewer = Fig::count(u64::from(found.exact.count()), Why::Formula("by exact gaps alone", Vec::new()));
        reply.lines.push(detail(vec![
            Span::Say("One more than the exact gaps need: "),
            fig(&fewer),
            Span::Say(" would leave a gap of the limit itself on the tape, and that lets the ball through."),
        ]));
    }
    reply.lines.push(taken(&asked));
    reply.lines.extend(super::bays::at_the_pool(job).filter(|_| i.limit.is_none()));
    reply.lines.extend(marks(&asked, &spread, &gap));
    reply.findings.extend(drying(&spread));
    let on_centre = pitch_fig(&spread, &gap);
    reply.values.takeoff.marks = (0..spread.count()).map(|k| mark_fig(&spread, k, &gap)).collect();
    reply.values.more = vec![
        ("balusters", count.clone()),
        ("gap", gap.clone()),
        ("on_centre", on_centre.clone()),
        ("opening", asked.clear),
        ("baluster", asked.baluster),
        ("gap_max", asked.limit),
    ];
    (reply, vec![("balusters", count), ("gap", gap), ("on centre", on_centre)])
}

/// "12 balusters, gaps of 3 7/8" (exactly 3 23/26")."
fn first(asked: &Asked, i: &Infill, spread: &Spread, count: &Fig, gap: &Fig) -> Vec<Span> {
    let many = if spread.count() == 1 { " baluster" } else { " balusters" };
    if i.count.is_none() && spread.count() == 0 {
        let says = " is under the limit by itself: no baluster is needed.";
        return vec![Span::Say("None: "), inches(&asked.clear), Span::Say(says)];
    }
    let gaps = [fig(count), Span::Say(many), Span::Say(", gaps of "), exact(gap)];
    let lead = match (i.count, spread.passes()) {
        (Some(_), false) => Some(Span::Say("No: ")),
        _ => None,
    };
    let tail = match (i.count, spread.passes()) {
        (None, _) => vec![Span::Say(".")],
        (Some(_), true) => vec![Span::Say(under(&asked.held, ", every one ")), exact(&asked.limit), Span::Say(".")],
        (Some(_), false) if asked.opening.limit.allows(spread.gap()) => {
            let says = "; on the tape some come to the limit of ";
            vec![Span::Say(says), exact(&asked.limit), Span::Say(".")]
        }
        (Some(_), false) => {
            vec![Span::Say(under(&asked.held, ", and they must be ")), exact(&asked.limit), Span::Say(".")]
        }
    };
    lead.into_iter().chain(gaps).chain(tail).collect()
}

/// "under", or "no more than" where a gap of just the limit passes.
fn under(held: &HeldGap, lead: &'static str) -> &'static str {
    match (lead, held.equal_passes) {
        (", every one ", true) => ", every one no more than ",
        (", every one ", false) => ", every one under ",
        (_, true) => ", and they must be no more than ",
        (_, false) => ", and they must be under ",
    }
}

fn would_do(asked: &Asked, fewest: &Spread) -> Line {
    let count = count_fig(fewest, &asked.limit);
    let gap = gap_fig(fewest, &count);
    detail(vec![fig(&count), Span::Say(" is the fewest that do: gaps of "), exact(&gap), Span::Say(".")])
}

fn fails(job: &Job, asked: &Asked, spread: &Spread, gap: &Fig) -> Finding {
    let told = asked.limit.clone();
    Finding {
        rule: "baluster-gap",
        level: Level::Stop,
        spans: vec![
            Span::Say("A ball of "),
            inches(&told),
            Span::Say(" passes a gap of "),
            inches(&widest_fig(spread, gap)),
            Span::Say(if asked.held.equal_passes { "." } else { ": a gap of just the limit lets it through." }),
        ],
        source: gap::source(job, &asked.held),
    }
}

/// What was told and what was taken.
fn taken(asked: &Asked) -> Line {
    let told = |f: &Fig| matches!(f.why(), Why::Told(_));
    let baluster = if told(&asked.baluster) { ", balusters " } else { ", balusters taken as 2x2s, " };
    let limit = match (gap::by_pool(&asked.held), told(&asked.limit)) {
        (true, _) => " wide, gaps no more than the pool barrier's ",
        (_, true) => " wide, gaps under ",
        _ => " wide, gaps under the level guard's ",
    };
    let start = match asked.opening.start {
        Start::Gap => ", a gap at each post.",
        Start::Baluster => ", a baluster tight to each post.",
    };
    detail(vec![
        fig(&asked.clear),
        Span::Say(" clear, face to face"),
        Span::Say(baluster),
        inches(&asked.baluster),
        Span::Say(limit),
        exact(&asked.limit),
        Span::Say(start),
    ])
}

/// The marks of one pull of the tape, and what stepping off would do.
pub fn marks_of(spread: &Spread, gap: &Fig) -> Vec<Line> {
    if spread.count() == 0 {
        return Vec::new();
    }
    let all: Vec<Fig> = (0..spread.count()).map(|k| mark_fig(spread, k, gap)).collect();
    let head = Span::Say("Marks, tape hooked on the first post's face, near side of each baluster: ");
    vec![detail(std::iter::once(head).chain(row(&all)).chain([Span::Say(".")]).collect())]
}

fn marks(asked: &Asked, spread: &Spread, gap: &Fig) -> Vec<Line> {
    let mut lines = marks_of(spread, gap);
    if spread.count() == 0 {
        return lines;
    }
    let pitch = pitch_fig(spread, gap);
    let mut spans = vec![exact(&pitch), Span::Say(" on centre.")];
    let drift = spread.drift();
    let off = if drift < Length::ZERO { -drift } else { drift };
    if asked.opening.tape.round(off).is_positive() {
        let why = Why::Formula("count x (rounded centres - exact centres)", vec![("on centre", pitch)]);
        spans.extend([
            Span::Say(" Stepped off with a rounded spacing the last one comes "),
            inches(&Fig::length(off, why)),
            Span::Say(" off: pull the marks, and use a spacer block only to check."),
        ]);
    }
    lines.push(detail(spans));
    lines
}

/// Wet lumber that dries where it stands opens gaps that were under the limit.
pub fn drying(spread: &Spread) -> Option<Finding> {
    use crate::infill::dry::{find, growth, lost};
    let wood = find("douglas-fir")?;
    let lost = |size| lost(size, wood);
    let (post, opening) = (crate::measure::Lumber::FOUR_BY_FOUR.dressed()?.1, spread.opening());
    let grown = growth(lost(opening.baluster), lost(post));
    let dried = spread.widest() + grown.end;
    (spread.passes() && spread.count() > 0 && !opening.limit.allows(dried)).then(|| Finding {
        rule: "gaps-dried",
        level: Level::Note,
        spans: vec![
            Span::Say("Put up wet, balusters and posts shrink and open these gaps up to "),
            inches(&Fig::length(grown.end, Why::Table("Douglas-fir from 25 to 12 per cent", wood.source))),
            Span::Say(", past the limit: use dry lumber, or one baluster more."),
        ],
        source: wood.source,
    })
}

/// The gap balusters leave at a spacing on centre.
pub fn on_centre(job: &Job, centre: Length, baluster: Option<Length>) -> (Reply, Figs) {
    let width = baluster.map_or_else(|| baluster_fig(job), |b| Fig::told(b, "one baluster's width"));
    let held = gap::level(job);
    let limit = held.most.clone();
    let spacing = Fig::told(centre, "the spacing on centre");
    let clear = centre - width.as_length().unwrap_or(Length::ZERO);
    if !clear.is_positive() {
        return (refused("At that spacing they touch: there is no gap left."), Vec::new());
    }
    let from = vec![("on centre", spacing), ("one baluster", width.clone())];
    let gap = Fig::length(clear, Why::Formula("on centre less one baluster", from));
    let passes = held.limit().allows(clear);
    let mut reply = Reply::of(Status::Answered);
    let (lead, tail) =
        if passes { ("The gap is ", ", under ") } else { ("No: the gap is ", ", and it must be under ") };
    let spans = vec![Span::Say(lead), exact(&gap), Span::Say(tail), exact(&limit), Span::Say(".")];
    reply.lines.push(Line::new(Role::Answer, spans));
    let says = "That is the gap between two of them: the gap at each post counts too.";
    reply.lines.push(Line::say(Role::Detail, says));
    if !passes {
        reply.findings.push(lets_through(job, &gap, &held));
    }
    reply.values.more = vec![("gap", gap.clone()), ("baluster", width), ("gap_max", limit)];
    (reply, vec![("gap", gap)])
}

fn lets_through(job: &Job, gap: &Fig, held: &HeldGap) -> Finding {
    let spans = vec![
        Span::Say("A gap of "),
        inches(gap),
        Span::Say(" lets a ball of "),
        exact(&held.most),
        Span::Say(" through."),
    ];
    let source = gap::source(job, held);
    Finding { rule: "baluster-gap", level: Level::Stop, spans, source }
}

/// Whether one gap passes.
pub fn gap(job: &Job, gap: Length, held: &HeldGap) -> (Reply, Figs) {
    let passes = held.limit().allows(gap);
    let (gap, limit) = (Fig::told(gap, "the gap"), held.most.clone());
    let mut reply = Reply::of(Status::Answered);
    let (lead, tail) = match (passes, held.equal_passes) {
        (true, false) => ("Yes: ", " is under "),
        (true, true) => ("Yes: ", " is no more than "),
        (false, false) => ("No: ", " must be under "),
        (false, true) => ("No: ", " must be no more than "),
    };
    let ball = "; a ball of that size must not pass, on the level and under the bottom rail alike.";
    reply.lines.push(Line::new(
        Role::Answer,
        [Span::Say(lead), inches(&gap), Span::Say(tail), exact(&limit), Span::Say(ball)],
    ));
    let says = "Measure it at its widest: under a rail at the deck's lowest spot, between balusters at the top and the bottom. Stairs have limits of their own.";
    reply.lines.push(Line::say(Role::Detail, says));
    if !passes {
        reply.findings.push(lets_through(job, &gap, held));
    }
    reply.values.more = vec![("gap", gap.clone()), ("gap_max", limit)];
    (reply, vec![("gap", gap)])
}

/// A gap told by what passes it proves little: the measure is a ball.
pub fn by_object(job: &Job) -> Reply {
    let limit = gap::level(job).most;
    let spans = vec![
        Span::Say("What is the gap on a tape? A ball of "),
        exact(&limit),
        Span::Say(" must not pass; a softball is smaller than that and a can is smaller still, so neither settles it."),
    ];
    Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) }
}
