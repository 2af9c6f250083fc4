//! The guard down the stairs: its posts, its rail, and how it meets the level guard.

use super::super::Figs;
use super::known::Known;
use super::say::{answer, count, detail, exact, ft, inch, limit, reply, s, taken, w};
use super::{Answer, Trouble};
use crate::figure::Fig;
use crate::grammar::ask::Size;
use crate::job::{OpenSides, Settings};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Line, RakeFig, Reply, Role, Span};
use crate::solve::{choice, told_length};
use crate::stairs::check::guarded_treads;
use crate::stairs::guard::{Laid, RakeGuard, RakePost, Site, Stands};
use crate::stairs::meet::{Choice, Meeting, meet};

fn mids(g: &RakeGuard) -> u16 {
    u16::try_from(g.bays.len().saturating_sub(1)).unwrap_or(0)
}

fn with_rake(mut reply: Reply, known: &Known, site: &Site) -> Result<Reply, Trouble> {
    let f = known.flight()?;
    reply.values.rake = Some(RakeFig {
        angle: site.rake.angle(),
        run: f.going.as_ref().map(|g| g.run.clone()),
        rise: Some(f.total_rise.clone()),
        slope: f.slope_length(),
    });
    Ok(reply)
}

/// What the layout was taken from, said.
fn basis(known: &Known, site: &Site) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    if choice::mount(known.job).is_none() && told_length(known.job, RowId::Line).is_none() {
        lines.push(detail([w(
            "Taken: the top post over the edge, centred on the decking's nosing; the mount moves it.",
        )]));
    } else {
        lines.push(detail([
            w("The top post's centre stands "),
            inch(&site.top_back),
            w(" inside the decking's edge, on the level guard's line, which shares it."),
        ]));
    }
    lines.push(taken(&limits::NEWEL_PLACE));
    lines.extend(known.flight().iter().flat_map(|f| f.taken.iter().map(|l| taken(l)).collect::<Vec<_>>()));
    lines
}

fn sides(known: &Known) -> Option<Line> {
    let words = match known.flight.open {
        Some(OpenSides::Both) => "Open on both sides: the same again on the other side, mirrored.",
        Some(OpenSides::Neither) => "Told open on neither side: no guard is needed there, a handrail may be.",
        Some(_) => "For the one open side.",
        None => "For one open side; with both open the other is the same, mirrored.",
    };
    Some(Line::say(Role::Detail, words))
}

/// Along which treads the guard is required: those higher above level ground than the trigger.
fn required(known: &Known) -> Option<Line> {
    let here = known.here();
    let flight = known.flight().ok().filter(|_| !known.falls() && here.law.holds(&limits::GUARD_TRIGGER))?;
    let treads = guarded_treads(&flight, here);
    let drop = limit(here, &limits::GUARD_TRIGGER);
    Some(match treads {
        0 => detail([
            w("No tread is more than "),
            drop,
            w(" above level ground: the rules ask for no guard along them."),
        ]),
        1 => detail([w("A guard is required along the top tread, more than "), drop, w(" above level ground.")]),
        n => detail([
            w("A guard is required along the "),
            count(n, "the treads higher than the trigger"),
            w(" upper treads, more than "),
            drop,
            w(" above level ground."),
        ]),
    })
}

fn stands(stands: Stands) -> Vec<Span> {
    match stands {
        Stands::Deck => vec![w("on the decking")],
        Stands::Tread(k) => vec![w("at tread "), count(k, "counted down from the decking")],
        Stands::Landing => vec![w("on the landing")],
    }
}

fn name(k: usize, last: usize) -> &'static str {
    match k {
        0 => "top post, shared with the level guard",
        k if k == last => "bottom newel",
        _ => "mid post",
    }
}

/// Along with which way the limit was laid, what the other way would ask for.
fn limit_lines(known: &Known, site: &Site, g: &RakeGuard) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some(most) = &site.most.centre {
        lines.push(detail([
            w("Limit: no more than "),
            ft(most),
            w(" on centre, taken along the slope as the rail runs."),
        ]));
    }
    if let Some(most) = &site.most.clear {
        lines.push(detail([w("Limit told: no more than "), ft(most), w(" clear, taken along the slope.")]));
    }
    if let Ok((_, level)) = known.guard(Laid::Level)
        && level.bays.len() != g.bays.len()
    {
        let n = mids(&level);
        let spans = [
            w("Taken on the level it would be "),
            count(n, "the mid posts on the level"),
            w(" mid post"),
            s(n),
            w(": the deck guide does not say which, so ask whoever inspects."),
        ];
        lines.push(detail(spans));
    }
    lines
}

/// "where's the mid post on the stairs".
pub fn posts(known: &Known) -> Answer {
    let (site, g) = known.guard(Laid::Slope)?;
    let n = mids(&g);
    let mut first: Vec<Span> = match n {
        0 => vec![w("No mid post: one bay")],
        _ => vec![count(n, "the posts between"), w(" mid post"), s(n), w(": "), ft(&g.count), w(" bays")],
    };
    first.extend([
        w(" of "),
        ft(&g.bays[0].clear),
        w(" clear on the level, "),
        ft(&g.bays[0].clear_along),
        w(" along the slope."),
    ]);
    let mut lines = vec![answer(first)];
    lines.push(detail([w("Centres from the top post's centre, on the level (along the slope):")]));
    let last = g.posts.len() - 1;
    lines.extend(g.posts.iter().enumerate().map(|(k, p)| mark(k, last, p)));
    lines.extend(limit_lines(known, &site, &g));
    lines.extend(sides(known));
    lines.extend(required(known));
    lines.extend(basis(known, &site));
    finish(known, &site, &g, lines)
}

fn mark(k: usize, last: usize, p: &RakePost) -> Line {
    let mut spans = vec![w("  "), ft(&p.at), w(" ("), ft(&p.along), w(") "), w(name(k, last)), w(", ")];
    spans.extend(stands(p.stands));
    if !p.behind.as_length().is_some_and(Length::is_zero) && p.stands != Stands::Landing && k > 0 {
        spans.extend([w(", "), inch(&p.behind), w(" behind its nosing")]);
    }
    detail(spans)
}

fn finish(known: &Known, site: &Site, g: &RakeGuard, lines: Vec<Line>) -> Answer {
    let mut reply = with_rake(reply(lines), known, site)?;
    let mid = g.posts.get(1).filter(|_| g.posts.len() > 2).map(|p| p.at.clone());
    reply.values.result = mid.clone();
    let more = [
        ("stair_bays", g.count.clone()),
        ("stair_bay_clear", g.bays[0].clear.clone()),
        ("stair_bay_along", g.bays[0].clear_along.clone()),
        ("stair_span", g.span.clone()),
        ("stair_slope", g.slope.clone()),
    ];
    reply.values.more = more.into();
    let mut figs: Figs =
        vec![("bays down the stairs", g.count.clone()), ("clear on the level", g.bays[0].clear.clone())];
    figs.extend(mid.map(|f| ("the mid post", f)));
    Ok((reply, figs))
}

/// "how high above the tread is the bottom post".
pub fn heights(known: &Known) -> Answer {
    let (site, g) = known.guard(Laid::Slope)?;
    let last = g.posts.len() - 1;
    let newel = &g.posts[last];
    let mut first = vec![w("At the bottom newel the rail's top is "), exact(&newel.above), w(" above ")];
    first.extend(match newel.stands {
        Stands::Landing => vec![w("the landing.")],
        _ => vec![w("the tread it stands at, "), exact(&g.newel_above_landing), w(" above the landing.")],
    });
    let mut lines = vec![answer(first)];
    lines.extend(g.posts.iter().enumerate().take(last).map(|(k, p)| {
        let mut spans = vec![w("  "), w(name(k, last)), w(": "), exact(&p.above), w(" ")];
        spans.extend(stands(p.stands));
        spans.push(w(" at its centre"));
        detail(spans)
    }));
    lines.push(height_line(known, &site.height));
    lines.push(detail([w(
        "That is the rail's top at each post's centre: add what the post stands above the rail, and its foot below.",
    )]));
    lines.extend(basis(known, &site));
    let mut reply = with_rake(reply(lines), known, &site)?;
    reply.values.result = Some(newel.above.clone());
    reply.values.more =
        vec![("newel_above_landing", g.newel_above_landing.clone()), ("stair_height", site.height.clone())];
    Ok((reply, vec![("the rail above the tread at the newel", newel.above.clone())]))
}

/// Where the stair guard's height was taken from.
fn height_line(known: &Known, height: &Fig) -> Line {
    let told = known.given.size(Size::Height).or(known.flight.height).is_some();
    let lead = if told { "Stair rail told at " } else { "Stair rail taken at " };
    detail([
        w(lead),
        inch(height),
        w(" plumb above the line of the nosings; 34 to 38 lets its top be the handrail's height ("),
        w(limits::HANDRAIL_LOW.source),
        w(")."),
    ])
}

/// "how long is the stair rail".
pub fn rail_length(known: &Known) -> Answer {
    let (site, g) = known.guard(Laid::Slope)?;
    let bay = &g.bays[0];
    let first = if g.bays.len() == 1 {
        vec![ft(&bay.clear_along), w(" along its edge between the posts, long point to short.")]
    } else {
        vec![
            ft(&g.count),
            w(" rails of "),
            ft(&bay.clear_along),
            w(" along the edge between the posts, long point to short."),
        ]
    };
    let mut lines = vec![answer(first)];
    lines.push(detail([
        w("In one piece over the posts' faces it is "),
        ft(&g.slope),
        w(" from the top post's centre to the newel's."),
    ]));
    lines.push(detail([
        w("Plumb cuts at both ends, the saw at "),
        ft(&site.rake.angle()),
        w("; level clear between the posts "),
        ft(&bay.clear),
        w("."),
    ]));
    let deep = Fig::told(Length::sixteenths(56), "a 2x4's width");
    lines.push(detail([
        w("A 2x4 on edge takes "),
        inch(&site.rake.drop(&deep)),
        w(" more of the stick: its two long points lie on opposite edges."),
    ]));
    lines.push(detail([w("Hold the rail to the posts and scribe it before cutting: posts are never quite plumb.")]));
    lines.extend(limit_lines(known, &site, &g));
    lines.extend(basis(known, &site));
    let (mut reply, mut figs) = finish(known, &site, &g, lines)?;
    reply.values.result = Some(bay.clear_along.clone());
    figs.insert(0, ("the rail along the slope", bay.clear_along.clone()));
    Ok((reply, figs))
}

/// "where does the top stair post go".
pub fn top_post_place(known: &Known) -> Answer {
    let back = known.line()?;
    let told = choice::mount(known.job).is_some() || told_length(known.job, RowId::Line).is_some();
    let first = match back.as_length() {
        Some(l) if l.is_zero() => {
            vec![w(
                "At the stair head on the level guard's line, its centre plumb over the decking's edge: both guards share it.",
            )]
        }
        _ => vec![
            w("At the stair head on the level guard's line, its centre "),
            inch(&back),
            w(" inside the decking's edge: both guards share it."),
        ],
    };
    let mut lines = vec![answer(first)];
    if !told {
        lines.push(detail([w("Taken: over the edge, centred on the decking's nosing; the mount moves it.")]));
    }
    lines.push(detail([w(
        "Across the stairs it stands in line with the bottom newel, so that the rake rail runs straight (common practice, no source).",
    )]));
    let mut reply = reply(lines);
    reply.values.result = Some(back.clone());
    Ok((reply, vec![("the top post inside the edge", back)]))
}

/// "why won't the stair rail meet the deck rail".
pub fn top_post(known: &Known) -> Answer {
    let site = known.site()?;
    let level = known.level();
    let m = meet(&site, &level, true, known.here());
    let mut lines = vec![answer(first(&m))];
    lines.push(detail([
        w("The rake rail leaves the post at its face, "),
        inch(&m.face),
        w(" past the decking's nosing, and has dropped "),
        inch(&m.drop),
        w(" there: its top is at "),
        inch(&m.rake),
        w(" against the level rail's "),
        inch(&m.level),
        w("."),
    ]));
    lines.extend(choices(known.here(), &m));
    lines.push(height_line(known, &site.height));
    lines.extend(basis(known, &site));
    let mut reply = with_rake(reply(lines), known, &site)?;
    reply.values.result = Some(m.step.clone());
    reply.values.more = vec![("rail_drop", m.drop.clone()), ("rail_step", m.step.clone())];
    let mut figs = vec![("how far apart the rails are", m.step.clone())];
    if let Choice::Raise(to) = &m.choice {
        reply.values.more.push(("raise_to", to.clone()));
        figs.push(("the stair rail raised", to.clone()));
    }
    Ok((reply, figs))
}

fn first(m: &Meeting) -> Vec<Span> {
    match &m.choice {
        Choice::Meets => vec![w("The two rails meet at the top post as they are.")],
        Choice::Raise(to) => vec![
            w("They miss by "),
            inch(&m.step),
            w(" at the top post: set the stair rail "),
            inch(to),
            w(" above the nosings and they meet, or step it at the post."),
        ],
        Choice::Step => vec![
            w("They miss by "),
            inch(&m.step),
            w(" at the top post: step it there, one rail into the post above the other."),
        ],
    }
}

fn choices(here: &Settings, m: &Meeting) -> Vec<Line> {
    let back = detail([w(
        "Or move the top post back until its face down the stairs is on the nosing: then nothing is dropped there.",
    )]);
    match &m.choice {
        Choice::Meets => Vec::new(),
        Choice::Raise(_) => vec![
            detail([
                w("Both lie within the "),
                limit(here, &limits::HANDRAIL_LOW),
                w(" to "),
                limit(here, &limits::HANDRAIL_HIGH),
                w(" a stair rail that is the handrail too may have ("),
                w(limits::HANDRAIL_LOW.source),
                w(")."),
            ]),
            back,
        ],
        Choice::Step => vec![
            detail([
                w("Raised to meet, the stair rail would be outside the "),
                limit(here, &limits::HANDRAIL_LOW),
                w(" to "),
                limit(here, &limits::HANDRAIL_HIGH),
                w(" it needs where its top is the handrail ("),
                w(limits::HANDRAIL_LOW.source),
                w(")."),
            ]),
            detail([w("With a handrail of its own on the side, the guard above may rise to meet.")]),
            back,
        ],
    }
}
