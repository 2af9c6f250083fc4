//! How many steps, how high, how far out, how steep.

use super::super::Figs;
use super::known::Known;
use super::say::{
    answer, breaks, by, caution, cited, count, decides, detail, exact, ft, inch, inches, limit, mind, reply, s, stop,
    taken, w,
};
use super::{Answer, Trouble};
use crate::figure::{Fig, Why};
use crate::grammar::ask::Size;
use crate::job::{RiserKind, Settings};
use crate::limits;
use crate::reply::{Line, RakeFig, Reply, Span};
use crate::rules::{Matter, stops_on};
use crate::solve::{in_force, limit_length};
use crate::stairs::check::{Known as Measured, check as checked, risers_are_high, spread, uneven};
use crate::stairs::flight::Flight;
use crate::stairs::{Lack, Unready, handrail};

fn riser_words(f: &Flight) -> Vec<Span> {
    vec![ft(&f.risers), w(" riser"), s(f.riser_count()), w(" of "), exact(&f.rise)]
}

fn with_rake(known: &Known, mut reply: Reply) -> Reply {
    let flight = known.flight().ok();
    if let Ok(rake) = known.rake() {
        reply.values.rake = Some(RakeFig {
            angle: rake.angle(),
            run: flight.as_ref().and_then(|f| f.going.as_ref().map(|g| g.run.clone())),
            rise: flight.as_ref().map(|f| f.total_rise.clone()),
            slope: flight.as_ref().and_then(Flight::slope_length),
        });
    }
    if let Some(f) = flight {
        let more = [("risers", &f.risers), ("riser", &f.rise), ("total_rise", &f.total_rise), ("treads", &f.treads)];
        reply.values.more.extend(more.into_iter().map(|(name, fig)| (name, fig.clone())));
        let going = f.going.iter().flat_map(|g| [("tread", g.tread.clone()), ("total_run", g.run.clone())]);
        reply.values.more.extend(going);
    }
    reply
}

fn done(known: &Known, lines: Vec<Line>, result: Fig, figs: Figs) -> Answer {
    let mut reply = with_rake(known, reply(lines));
    reply.values.result = Some(result);
    Ok((reply, figs))
}

/// What the answer rests on: how the stairs hang, where the rise came from.
fn basis(known: &Known, f: &Flight) -> Vec<Line> {
    let here = known.here();
    let mut lines: Vec<Line> = Vec::new();
    if known.falls() {
        lines.push(detail([
            w("The rise is taken at the stairs' foot, "),
            ft(&f.total_rise),
            w(" down, where the ground told has fallen so far: measure it there once the foot is marked."),
        ]));
    } else if known.rise_from_ground() {
        lines.push(detail([
            w("The rise is taken as the decking's height above level ground, "),
            ft(&f.total_rise),
            w(": measure it plumb down to where the stairs land."),
        ]));
    }
    lines.extend(f.taken.iter().map(|l| match l.id == limits::RISER_MOST.id {
        true => {
            let source = w(here.law.source(l));
            detail([w("The fewest risers that are no more than "), limit(here, l), w(" each ("), source, w(").")])
        }
        false => taken(l),
    }));
    lines
}

fn is_open(kind: Option<RiserKind>) -> bool {
    matches!(kind, Some(RiserKind::Open | RiserKind::Opening(_)))
}

/// Breaches of the limits, as cautions.
fn breaches(known: &Known, f: &Flight) -> Vec<Line> {
    let here = known.here();
    let width = known.clear_width().and_then(|f| f.as_length());
    let nosing = known.given.size(Size::Nosing).or(known.flight.nosing);
    let open_riser = match known.flight.between {
        Some(RiserKind::Opening(l)) => Some(l),
        Some(RiserKind::Open | RiserKind::Closed) | None => None,
    };
    let found = checked(
        f,
        &Measured { nosing, width, landing: known.flight.landing, open_riser, open: is_open(known.flight.between) },
        here,
    );
    let mut lines: Vec<Line> = found.iter().map(|b| breaks(here, &b.found, b.limit)).collect();
    if risers_are_high(f, here) && known.flight.between == Some(RiserKind::Open) {
        let lead = [w("Check the open risers, more than "), limit(here, &limits::GUARD_TRIGGER), w(" up: ")];
        lines.push(caution(lead.into_iter().chain(cited(here, &limits::OPEN_RISER))));
    }
    if !lines.is_empty() {
        lines.push(decides());
    }
    lines
}

/// "how many steps".
pub fn steps(known: &Known) -> Answer {
    let f = match (known.flight(), known.told().risers) {
        (Err(Trouble::Unready(Unready::Untold(Lack::Rise))), Some(risers)) => return treads_of(risers),
        (f, _) => f?,
    };
    let mut spans = riser_words(&f);
    spans.extend([w("; "), ft(&f.treads), w(" tread"), s(f.tread_count()), w(".")]);
    let mut lines = vec![answer(spans), detail([w("Total rise "), ft(&f.total_rise), w(".")])];
    if let Some(g) = &f.going {
        lines.push(detail([w("Treads "), exact(&g.tread), w(", total run "), ft(&g.run), w(".")]));
    }
    lines.extend(basis(known, &f));
    lines.push(handrail_line(f.riser_count()));
    lines.extend(breaches(known, &f));
    done(known, lines, f.risers.clone(), vec![("risers", f.risers.clone()), ("riser", f.rise.clone())])
}

/// "9 risers of 7 1/4" make 5'-5 1/4"; 8 treads of 10" come out 6'-8", at 35.9 degrees".
pub fn in_a_line(f: &Flight) -> Line {
    let mut spans = riser_words(f);
    spans.extend([w(" make "), ft(&f.total_rise)]);
    if let Some(g) = &f.going {
        spans.extend([w("; "), ft(&f.treads), w(" tread"), s(f.tread_count()), w(" of "), exact(&g.tread)]);
        spans.extend([w(" come out "), ft(&g.run)]);
    }
    spans.extend(f.rake().into_iter().flat_map(|rake| [w(", at "), ft(&rake.angle())]));
    spans.push(w("."));
    detail(spans)
}

/// Risers told, and nothing to work their height from.
fn treads_of(risers: u16) -> Answer {
    let n = Fig::count(u64::from(risers), Why::Told("the risers"));
    let why = Why::Formula("risers less one: the decking is the last tread", vec![("risers", n.clone())]);
    let treads = Fig::count(u64::from(risers.saturating_sub(1)), why);
    let first =
        [ft(&n), w(" riser"), s(risers), w(", "), ft(&treads), w(" tread"), s(risers.saturating_sub(1)), w(".")];
    let lines = vec![answer(first), taken(&limits::HUNG_ONE_DOWN), mind(&limits::HUNG_ONE_DOWN), handrail_line(risers)];
    let mut reply = reply(lines);
    reply.values.result = Some(treads.clone());
    reply.values.more = vec![("risers", n), ("treads", treads.clone())];
    Ok((reply, vec![("treads", treads)]))
}

fn handrail_line(risers: u16) -> Line {
    let words = if handrail::needed(risers) {
        "Four risers or more: a handrail on at least one side ("
    } else {
        "Under four risers: no handrail is asked for ("
    };
    detail([w(words), w(limits::HANDRAIL_RISERS.source), w(").")])
}

/// "how high is it": the total rise.
pub fn total(known: &Known) -> Answer {
    let f = known.flight()?;
    if known.rise_from_ground() && !known.falls() {
        let mind = "Where the ground falls away the rise is more at the stairs' foot: measure it plumb there.";
        let first = answer([ft(&f.total_rise), w(" above the ground, as you told me.")]);
        let lines = vec![first, detail([w(mind)])];
        let mut reply = reply(lines);
        reply.values.result = Some(f.total_rise.clone());
        return Ok((reply, vec![("the deck's height", f.total_rise)]));
    }
    let ground = known.told().ground.filter(|_| known.falls());
    if let Some(ground) = ground {
        let above = Fig::told(ground.above, "the decking above the ground");
        let mut spans = vec![ft(&above), w(" above the ground at the stairs' head, and "), ft(&f.total_rise)];
        spans.push(w(" above it where they land: "));
        spans.extend(riser_words(&f));
        spans.push(w("."));
        let mut lines = vec![answer(spans)];
        lines.extend(basis(known, &f));
        lines.extend(breaches(known, &f));
        let figs = vec![("at the head", above), ("total rise", f.total_rise.clone())];
        return done(known, lines, f.total_rise.clone(), figs);
    }
    let mut spans = vec![ft(&f.total_rise), w(" = "), exact(&f.total_rise), w(" total rise: ")];
    spans.extend(riser_words(&f));
    spans.push(w("."));
    let mut lines =
        vec![answer(spans), detail([w("From the top of the decking plumb down to where the stairs land.")])];
    lines.extend(breaches(known, &f));
    done(known, lines, f.total_rise.clone(), vec![("total rise", f.total_rise.clone())])
}

/// "how far out do they come".
pub fn run(known: &Known) -> Answer {
    let here = known.here();
    let f = known.flight()?;
    let g = f.going.clone().ok_or(Trouble::Unready(Unready::Untold(Lack::Tread)))?;
    let first = [
        ft(&g.run),
        w(" = "),
        exact(&g.run),
        w(" total run: "),
        ft(&f.treads),
        w(" treads of "),
        exact(&g.tread),
        w("."),
    ];
    let mut lines = vec![answer(first)];
    lines.push(detail([
        w("Then a landing at the foot at least "),
        limit(here, &limits::LANDING),
        w(" deep, as wide as the stairs ("),
        w(limits::LANDING.source),
        w(")."),
    ]));
    lines.extend(basis(known, &f));
    lines.extend(breaches(known, &f));
    done(known, lines, g.run.clone(), vec![("total run", g.run)])
}

/// "what's the rake".
pub fn rake(known: &Known) -> Answer {
    let rake = known.rake()?;
    let angle = rake.angle();
    let mut lines = vec![answer([ft(&angle), w(": "), exact(rake.rise()), w(" up on "), exact(rake.tread()), w(".")])];
    lines.push(detail([w("A plumb cut is the saw set to "), ft(&angle), w(" off square.")]));
    lines.push(detail([w("Nosing to nosing along the slope "), exact(&rake.step()), w(".")]));
    let rail = Fig::told(crate::measure::Length::sixteenths(56), "a 2x4's width");
    lines.push(detail([
        w("A "),
        inch(&rail),
        w(" rail on edge measures "),
        exact(&rake.plumb(&rail)),
        w(" through a plumb cut."),
    ]));
    if let Ok(f) = known.flight() {
        if let Some(slope) = f.slope_length() {
            lines.push(detail([
                w("The nosing line is "),
                ft(&slope),
                w(" long, over "),
                count(f.riser_count().saturating_sub(1), "the nosings below the decking's"),
                w(" treads."),
            ]));
        }
        lines.extend(basis(known, &f));
        lines.extend(breaches(known, &f));
    }
    done(known, lines, angle.clone(), vec![("rake", angle)])
}

/// "how deep must the landing be".
pub fn landing(known: &Known) -> Answer {
    let here = known.here();
    let least = in_force(here, &limits::LANDING);
    let lines = vec![
        answer([
            w("At least "),
            inch(&least),
            w(" deep in the way you walk, and as wide as the stairs, at the top and at the bottom."),
        ]),
        by(here, &limits::LANDING),
        mind(&limits::LANDING),
        decides(),
    ];
    let mut reply = reply(lines);
    reply.values.result = Some(least.clone());
    Ok((reply, vec![("landing", least)]))
}

/// "are my stairs ok", "are 8 inch risers ok".
pub fn check(known: &Known) -> Answer {
    let here = known.here();
    if known.given.size(Size::LeastRise).is_some() {
        return even(known);
    }
    let width_alone = known.given.sizes.keys().all(|s| *s == Size::Width) && known.given.risers.is_none();
    let f = match (known.flight(), singles(known)) {
        // "is 36 wide enough for stairs" asks of the width, whatever flight was told.
        (_, single) if width_alone && !single.is_empty() => return one_by_one(here, &single),
        // Nothing makes a flight: the sizes given are looked at one by one, else the width told.
        (Err(Trouble::Unready(Unready::Untold(_))), single) if !single.is_empty() => return one_by_one(here, &single),
        (Err(Trouble::Unready(Unready::Untold(_))), _) if known.clear_width().is_some() => {
            return one_by_one(here, &width_held(known));
        }
        (f, _) => f?,
    };
    let found = breaches(known, &f);
    let stops = stops_on(known.job, &[Matter::Stairs, Matter::StairGuard]);
    let first = match found.is_empty() && stops.is_empty() {
        true => vec![
            w("Nothing I check speaks against "),
            ft(&f.risers),
            w(" riser"),
            s(f.riser_count()),
            w(" of "),
            exact(&f.rise),
            w("."),
        ],
        false => vec![w("No, not as told: see what is named below.")],
    };
    let mut lines = vec![answer(first)];
    lines.push(detail([w("Looked at: riser, tread, nosing, width and flight rise, as far as told; not the framing.")]));
    lines.push(by(here, &limits::STAIR_SPREAD));
    lines.extend(basis(known, &f));
    lines.push(handrail_line(f.riser_count()));
    lines.extend(found);
    done(known, lines, f.rise.clone(), vec![("riser", f.rise.clone())])
}

/// A stair's clear width held to its limit.
fn width_held(known: &Known) -> Vec<(&'static limits::Limit, Fig, bool)> {
    let holds = |f: &Fig| inches(f) >= limit_length(known.here(), &limits::STAIR_WIDTH);
    known.clear_width().into_iter().map(|f| (&limits::STAIR_WIDTH, f.clone(), holds(&f))).collect()
}

/// Sizes given each held to its own limit: the limit, the size, whether it holds.
fn singles(known: &Known) -> Vec<(&'static limits::Limit, Fig, bool)> {
    let here = known.here();
    let size = |s, what| known.given.size(s).map(|l| Fig::told(l, what));
    let over = |f: Fig, l: &'static limits::Limit| {
        let ok = inches(&f) <= limit_length(here, l);
        (l, f, ok)
    };
    let under = |f: Fig, l: &'static limits::Limit| {
        let ok = inches(&f) >= limit_length(here, l);
        (l, f, ok)
    };
    let mut all = Vec::new();
    all.extend(size(Size::Rise, "the riser").map(|f| over(f, &limits::RISER_MOST)));
    all.extend(size(Size::Tread, "the tread").map(|f| under(f, &limits::TREAD_LEAST)));
    all.extend(size(Size::Width, "the stair's width").map(|f| under(f, &limits::STAIR_WIDTH)));
    all.extend(size(Size::Nosing, "the nosing").map(|f| {
        let holds = inches(&f) >= limit_length(here, &limits::NOSING_LEAST)
            && inches(&f) <= limit_length(here, &limits::NOSING_MOST);
        (&limits::NOSING_LEAST, f, holds)
    }));
    all
}

fn one_by_one(here: &Settings, all: &[(&'static limits::Limit, Fig, bool)]) -> Answer {
    let mut lines: Vec<Line> = Vec::new();
    for (i, (limit, fig, holds)) in all.iter().enumerate() {
        let spans = match holds {
            true => vec![w("Yes: "), exact(fig), w(" keeps to it. "), w(limit.says), stop(limit.says)],
            false => vec![w("No: "), exact(fig), w(" breaks it. "), w(limit.says), stop(limit.says)],
        };
        lines.push(if i == 0 { answer(spans) } else { detail(spans) });
        lines.push(detail([w("Source: "), w(here.law.source(limit)), w(".")]));
    }
    lines.push(by(here, &limits::STAIR_SPREAD));
    lines.push(decides());
    let figs: Figs = all.iter().map(|(_, f, _)| ("the size given", f.clone())).collect();
    let mut reply = reply(lines);
    reply.values.result = all.first().map(|(_, f, _)| f.clone());
    Ok((reply, figs))
}

/// "my risers are 7 1/2 and 7, is that ok": how far they differ.
fn even(known: &Known) -> Answer {
    let here = known.here();
    let sizes = [Size::Rise, Size::LeastRise];
    let measured: Vec<_> = sizes.iter().filter_map(|s| known.given.size(*s)).collect();
    let spread = spread(&measured, "the riser").ok_or(Trouble::PastMe)?;
    let fails = uneven(&measured, "the riser", here).is_some();
    let most = in_force(here, &limits::STAIR_SPREAD);
    let first = match fails {
        true => vec![w("No: they differ by "), exact(&spread), w(", and may by no more than "), inch(&most), w(".")],
        false => vec![w("They differ by "), exact(&spread), w(", within the "), inch(&most), w(" they may.")],
    };
    let mut lines = vec![answer(first), by(here, &limits::STAIR_SPREAD), mind(&limits::STAIR_SPREAD)];
    let high = measured.iter().any(|l| *l > limit_length(here, &limits::RISER_MOST));
    lines.extend(high.then(|| {
        caution([w("Check: the largest breaks this: "), w(limits::RISER_MOST.says), stop(limits::RISER_MOST.says)])
    }));
    lines.push(decides());
    let mut reply = reply(lines);
    reply.values.result = Some(spread.clone());
    Ok((reply, vec![("the difference", spread)]))
}
