//! What becomes of the gaps once balusters are up or bought: dried, of another width, or in
//! rails whose holes are there already.

use super::super::Figs;
use super::words::{cannot_fill, detail, exact, fig, inches, number, places, refused};
use crate::figure::{Fig, Value, Why};
use crate::gate::gap;
use crate::infill::dry::{Species, growth, lost, worst};
use crate::infill::{HeldGap, Routed, Spread};
use crate::job::{Job, Species as Wood};
use crate::layout::Layout;
use crate::limits::{self, Trust};
use crate::measure::{Length, Q};
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::solve::{choice, source_of};
use crate::takeoff::{baluster_fig, fill, gap_limit_fig, rail_bays};

/// What gaps open to when balusters and posts put up wet dry where they stand.
pub fn dried(job: &Job, layout: &Layout, wood: Option<Wood>, gap: Option<Length>) -> (Reply, Figs) {
    let named = wood.or(choice::timber(job).species);
    let Some(species) = worst(named) else {
        return (refused("I hold no shrinkage figures for that wood: ask who mills it, or buy it dry."), Vec::new());
    };
    let grown = Grown::of(job, species);
    let gap = gap.map(|g| Fig::told(g, "the gap as put up")).or_else(|| widest_of(job, layout));
    let held = gap::level(job);
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(match &gap {
        Some(gap) => grown.verdict(gap, &held),
        None => grown.opens(Role::Answer),
    });
    reply.lines.extend(gap.as_ref().map(|_| grown.opens(Role::Detail)));
    reply.lines.extend(grown.most_wet(job, &held));
    reply.lines.push(grown.taken(species, named.is_some()));
    reply.values.more = vec![("gap_growth", grown.middle.clone()), ("gap_growth_at_post", grown.end.clone())];
    (reply, vec![("growth", grown.middle), ("growth at a post", grown.end)])
}

/// The widest gap of the job as it is marked out; `None` where nothing is laid out.
fn widest_of(job: &Job, layout: &Layout) -> Option<Fig> {
    let bays = fill(job, layout, None).ok()?;
    let widest = bays.iter().filter(|b| b.spread.count() > 0).map(|b| b.spread.widest()).max()?;
    Some(Fig::length(widest, Why::Formula("the widest gap the job's marks leave", Vec::new())))
}

/// The widest post of the job.
fn widest_post(job: &Job) -> Length {
    crate::solve::widest_post(job).as_length().unwrap_or(Length::ZERO)
}

/// Up to the next 1/32: what a gap may open by is never said smaller than it is.
fn up(l: Length) -> Length {
    let step = Length::new(1, 32).unwrap_or(l);
    l.ratio(step).and_then(|n| Length::new(n.ceil().to_integer(), 32)).unwrap_or(l)
}

/// What the gaps grow by, as figures.
struct Grown {
    baluster: Fig,
    middle: Fig,
    end: Fig,
}

impl Grown {
    fn of(job: &Job, species: &'static Species) -> Grown {
        let baluster = baluster_fig(job);
        let post = widest_post(job);
        let grown = growth(lost(baluster.as_length().unwrap_or(Length::ZERO), species), lost(post, species));
        let post = Fig::length(post, Why::Table("the widest post, dressed dry", "PS 20-05 size table"));
        let percent = Value::Number(num_rational::Ratio::new(species.tangential, 10));
        let table = || Fig::new(percent, Why::Table("per cent lost from green to no moisture", species.source));
        let from = |post: Option<Fig>| {
            let figs = [Some(("one baluster", baluster.clone())), post.map(|p| ("one post", p))];
            figs.into_iter().flatten().chain([("shrinkage", table())]).collect()
        };
        let middle =
            Why::Formula("what one baluster loses from 25 to 12 per cent moisture, up to the next 1/32", from(None));
        let end = Why::Formula(
            "half of what a baluster and a post lose from 25 to 12 per cent, up to the next 1/32",
            from(Some(post)),
        );
        let (middle, end) = (Fig::length(up(grown.middle), middle), Fig::length(up(grown.end), end));
        Grown { baluster, middle, end }
    }

    /// "No: a gap of 3 15/16" at a post opens to 4 1/32", and it must stay under 4"."
    fn verdict(&self, gap: &Fig, held: &HeldGap) -> Line {
        let sum = |by: &Fig| gap.as_length().unwrap_or(Length::ZERO) + by.as_length().unwrap_or(Length::ZERO);
        let dried = sum(&self.end);
        let passes = held.limit().allows(dried);
        let limit = &held.most;
        let why = Why::Formula("the gap and what it opens by at a post", vec![("gap", gap.clone())]);
        let (lead, tail) =
            if passes { ("Yes: a gap of ", ", under ") } else { ("No: a gap of ", ", and must stay under ") };
        Line::new(
            Role::Answer,
            [
                Span::Say(lead),
                inches(gap),
                Span::Say(" beside a post opens to "),
                exact(&Fig::length(dried, why)),
                Span::Say(tail),
                exact(limit),
                Span::Say("."),
            ],
        )
    }

    fn opens(&self, role: Role) -> Line {
        let spans = [
            Span::Say("Put up wet, a gap between two balusters opens by "),
            exact(&self.middle),
            Span::Say(" as they dry, one beside a post by "),
            exact(&self.end),
            Span::Say("."),
        ];
        Line::new(role, spans)
    }

    /// The widest mark on the tape that still passes once dry.
    fn most_wet(&self, job: &Job, held: &HeldGap) -> Option<Line> {
        let limit = &held.most;
        let room = limit.as_length()? - self.end.as_length()?;
        let step = Length::new(1, crate::reply::tape_of(job).den())?;
        let marks = room.ratio(step)?;
        let marks = if held.equal_passes { marks.floor() } else { marks.ceil() - Q::from_integer(1) };
        let marks = marks.to_integer().max(0);
        let most = Length::new(marks, crate::reply::tape_of(job).den()).filter(|l| l.is_positive())?;
        let why = Why::Formula("the limit less what a gap opens by, to the mark below", vec![("limit", limit.clone())]);
        Some(detail(vec![
            Span::Say("Wet, keep every gap to "),
            inches(&Fig::length(most, why)),
            Span::Say(" or less."),
        ]))
    }

    fn taken(&self, species: &'static Species, named: bool) -> Line {
        let lead =
            if named { "Taken as " } else { "No wood told, so taken as the one that shrinks most of those I hold, " };
        let trust = if species.trust == Trust::Memory { " (from memory, not checked)" } else { "" };
        detail(vec![
            Span::Say(lead),
            Span::Say(species.name),
            Span::Say(", balusters "),
            inches(&self.baluster),
            Span::Say(
                " wide, dried from 25 to 12 per cent moisture (common practice, no source) with their centres fixed. [",
            ),
            Span::Say(species.source),
            Span::Say(trust),
            Span::Say("]"),
        ])
    }
}

/// Balusters in rails with holes at a pitch: of one opening, or of every bay of the job.
pub fn routed(
    job: &Job,
    layout: &Layout,
    pitch: Length,
    clear: Option<Length>,
    baluster: Option<Length>,
) -> (Reply, Figs) {
    let width = baluster.map_or_else(|| baluster_fig(job), |b| Fig::told(b, "one baluster's width"));
    let held = gap::level(job);
    let pitch = Fig::told(pitch, "hole to hole");
    let mut bays: Vec<(Option<String>, Length)> = match clear {
        Some(clear) => vec![(None, clear)],
        None => rail_bays(job, layout).iter().map(|b| (Some(places(&[b.at])), b.clear)).collect(),
    };
    bays.dedup_by_key(|(_, clear)| *clear);
    if bays.is_empty() {
        let says = "In how wide a bay, face to face? Say it with the holes: \"holes 4 1/2 on center in 64 3/8\".";
        return (Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) }, Vec::new());
    }
    let mut reply = Reply::of(Status::Answered);
    let mut figs = Vec::new();
    for (at, clear) in bays {
        let lead = at.map_or_else(Vec::new, |at| vec![Span::Phrase(at), Span::Say(": ")]);
        let role = if reply.lines.is_empty() { Role::Answer } else { Role::Detail };
        let (spans, end) = holes(clear, &width, &pitch, &held);
        reply.lines.push(Line::new(role, lead.into_iter().chain(spans)));
        figs.extend(end.map(|end| ("end gap", end)));
    }
    let says = "The holes are centred in the bay, so both end gaps are alike; cut the rail to suit.";
    reply.lines.push(Line::say(Role::Detail, says));
    reply.values.more = figs.first().map(|(_, f)| ("end_gap", f.clone())).into_iter().collect();
    (reply, figs)
}

/// What holes at a pitch leave in an opening, or why nothing passes.
fn holes(clear: Length, width: &Fig, pitch: &Fig, held: &HeldGap) -> (Vec<Span>, Option<Fig>) {
    let limit = &held.most;
    let length = |f: &Fig| f.as_length().unwrap_or(Length::ZERO);
    let found = crate::infill::routed(clear, length(width), length(pitch), held.limit());
    let between = Fig::length(
        length(pitch) - length(width),
        Why::Formula("hole to hole less one baluster", vec![("pitch", pitch.clone()), ("one baluster", width.clone())]),
    );
    let Some(Routed { count, end, .. }) = found else {
        let spans = vec![
            Span::Say("No: those holes leave "),
            exact(&between),
            Span::Say(" between balusters, or more than the limit at a post; every gap must be under "),
            exact(limit),
            Span::Say("."),
        ];
        return (spans, None);
    };
    let from = vec![("clear opening", Fig::told(clear, "the clear opening")), ("pitch", pitch.clone())];
    let end = Fig::length(end, Why::Formula("(clear - (count - 1) x pitch - baluster) / 2", from));
    let spans = vec![
        number(u64::from(count)),
        Span::Say(if count == 1 { " baluster; " } else { " balusters; " }),
        exact(&end),
        Span::Say(" at each post, "),
        exact(&between),
        Span::Say(" between, every one under "),
        exact(limit),
        Span::Say("."),
    ];
    (spans, Some(end))
}

/// Whether the job's marks do for balusters that measure another width.
pub fn measured(job: &Job, layout: &Layout, width: Length) -> Reply {
    let bays = match fill(job, layout, None) {
        Ok(bays) => bays,
        Err(cannot) => return cannot_fill(&cannot),
    };
    let spreads = bays.iter().map(|b| b.spread).filter(|s| s.count() > 0);
    let Some(spread) = spreads.max_by_key(|s| s.widest_with(width)) else {
        let says = "On which marks? Tell the run they were laid out in first.";
        return Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    };
    same_marks(job, &spread, width)
}

fn same_marks(job: &Job, spread: &Spread, width: Length) -> Reply {
    let limit = &gap_limit_fig(job);
    let told = Fig::told(width, "one baluster as measured");
    let laid = Fig::told(spread.opening().baluster, "the width they were laid out for");
    let from = vec![("laid out for", laid.clone()), ("measured", told.clone())];
    let widest = Fig::length(spread.widest_with(width), Why::Formula("the widest gap on the same marks", from));
    let passes = widest.as_length().is_some_and(|gap| spread.opening().limit.allows(gap));
    let mut reply = Reply::of(Status::Answered);
    let (lead, tail) = if passes {
        ("Yes: the widest gap becomes ", ", under ")
    } else {
        ("No: the widest gap becomes ", ", and must be under ")
    };
    let spans = [Span::Say(lead), exact(&widest), Span::Say(tail), exact(limit), Span::Say(".")];
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.lines.push(detail(vec![
        Span::Say("Marks laid out for "),
        fig(&laid),
        Span::Say(", near side of each. To spread them anew say \"balusters "),
        inches(&told),
        Span::Say("\"."),
    ]));
    if !passes {
        reply.findings.push(Finding {
            rule: "baluster-gap",
            level: Level::Stop,
            spans: vec![
                Span::Say("A ball of "),
                exact(limit),
                Span::Say(" passes a gap of "),
                inches(&widest),
                Span::Say("."),
            ],
            source: source_of(job, &limits::LEVEL_GAP, limit),
        });
    }
    reply.values.more = vec![("gap", widest)];
    reply
}
