//! Checks on flights and gates: the flight against its limits, the handrail, the swing.

use super::say::{fig, held, inches};
use crate::figure::Fig;
use crate::gate::gap;
use crate::gate::pool::{Barrier, breaches, latch_on_pool_side};
use crate::job::{Job, RiserKind, Swing};
use crate::layout::Layout;
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Span, Style};
use crate::solve::{choice, limit_length, told_length};
use crate::stairs::check::{Known, check, risers_are_high};
use crate::stairs::flight::{Flight, work_out};
use crate::stairs::{Told, handrail};

/// Every flight told that differs from the others.
fn flights(job: &Job) -> Vec<crate::job::Flight> {
    let mut all: Vec<_> = job.runs.iter().flat_map(|r| r.stairs.iter().map(|s| job.flight(s))).collect();
    all.push(job.flight);
    let mut distinct: Vec<crate::job::Flight> = Vec::new();
    for flight in all {
        if flight != crate::job::Flight::default() && !distinct.contains(&flight) {
            distinct.push(flight);
        }
    }
    distinct
}

/// The flights that work out, each with what else is known of it.
fn worked(job: &Job) -> Vec<(Flight, crate::job::Flight)> {
    let of = |f: crate::job::Flight| work_out(&Told::of(&f, told_length(job, RowId::Grade))).ok().map(|w| (w, f));
    flights(job).into_iter().filter_map(of).collect()
}

fn known(told: &crate::job::Flight) -> Known {
    let open_riser = match told.between {
        Some(RiserKind::Opening(l)) => Some(l),
        _ => None,
    };
    let open = matches!(told.between, Some(RiserKind::Open | RiserKind::Opening(_)));
    Known { nosing: told.nosing, landing: told.landing, open_riser, open, ..Known::default() }
}

/// Flights that break one limit.
fn breaking(job: &Job, which: &[&'static Limit]) -> Vec<Vec<Span>> {
    let found = worked(job).into_iter().flat_map(|(flight, told)| check(&flight, &known(&told), &job.settings));
    let named = found.filter(|b| which.iter().any(|l| l.id == b.limit.id));
    let says = |b: crate::stairs::check::Breach| {
        let mut spans = vec![
            Span::Say("the stairs have "),
            fig(&b.found),
            Span::Say(". "),
            Span::Say(b.limit.says),
            stop(b.limit.says),
        ];
        if job.settings.law.changes(b.limit) {
            spans.extend([Span::Say(" Here it is "), held(job, b.limit), Span::Say(".")]);
        }
        spans
    };
    named.map(says).collect()
}

/// A full stop, but for words that end in one ("3 in.").
fn stop(words: &'static str) -> Span {
    Span::Say(if words.ends_with('.') { "" } else { "." })
}

/// A riser told that is over the limit, with or without a whole flight.
pub(super) fn riser_too_high(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let most = limit_length(job, &limits::RISER_MOST);
    let told = flights(job).into_iter().filter_map(|f| f.rise);
    let made = worked(job).into_iter().filter_map(|(f, _)| f.rise.as_length());
    let mut over: Vec<Length> = told.chain(made).filter(|l| *l > most).collect();
    over.dedup();
    over.first()
        .map(|l| {
            vec![
                Span::Say("a riser of "),
                inches(*l, "the riser"),
                Span::Say(" is over "),
                held(job, &limits::RISER_MOST),
                Span::Say("."),
            ]
        })
        .into_iter()
        .collect()
}

/// A tread told under the least.
pub(super) fn tread_too_shallow(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let least = limit_length(job, &limits::TREAD_LEAST);
    let found = flights(job).into_iter().filter_map(|f| f.tread).find(|l| *l < least);
    found
        .map(|l| {
            vec![
                Span::Say("a tread of "),
                inches(l, "the tread"),
                Span::Say(" is under "),
                held(job, &limits::TREAD_LEAST),
                Span::Say("."),
            ]
        })
        .into_iter()
        .collect()
}

/// A flight that rises too far without a landing.
pub(super) fn flight_too_high(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    breaking(job, &[&limits::FLIGHT_RISE])
}

/// A nosing out of its range.
pub(super) fn nosing_off(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    breaking(job, &[&limits::NOSING_LEAST, &limits::NOSING_MOST])
}

/// A landing told too short.
pub(super) fn landing_short(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let least = limit_length(job, &limits::LANDING);
    let short = flights(job).into_iter().filter_map(|f| f.landing).find(|l| *l < least);
    short
        .map(|l| {
            let says = " deep at the foot of the stairs is under ";
            vec![
                Span::Say("a landing "),
                inches(l, "the landing"),
                Span::Say(says),
                held(job, &limits::LANDING),
                Span::Say("."),
            ]
        })
        .into_iter()
        .collect()
}

/// Risers open too wide, high up.
pub(super) fn open_risers(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    breaking(job, &[&limits::OPEN_RISER])
}

/// Risers told open, high up, and not how much.
pub(super) fn open_risers_untold(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let high = |f: &Flight| risers_are_high(f, &job.settings);
    let open = worked(job).into_iter().filter(|(f, told)| told.between == Some(RiserKind::Open) && high(f));
    let says = [
        Span::Say("the stairs have open risers more than "),
        held(job, &limits::GUARD_TRIGGER),
        Span::Say(" up: what is open there must stop a "),
        held(job, &limits::OPEN_RISER),
        Span::Say(" ball; tell how much it is."),
    ];
    open.take(1).map(|_| says.to_vec()).collect()
}

/// A gap limit told that is wider than the pool's barrier lets; the barrier's is kept to.
pub(super) fn pool_gaps(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let kept = gap::level(job);
    let wide = told_length(job, RowId::GapMax).filter(|_| gap::by_pool(&kept));
    let says = |l| {
        vec![
            Span::Say("a gap limit of "),
            inches(l, "the gap limit"),
            Span::Say(" is wider than the "),
            Span::Fig(kept.most.clone(), Style::Inches),
            Span::Say(
                " a guard that closes off a pool may have with its rails' tops so near, or not told how near; the tighter is kept to.",
            ),
        ]
    };
    wide.map(says).into_iter().collect()
}

/// A leaf told wide for one.
pub(super) fn leaf_too_wide(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let most = limit_length(job, &limits::GATE_LEAF);
    let told = |r: &crate::job::Run| r.gate.and_then(|g| g.hung.leaf).filter(|l| *l > most);
    let wide = job.runs.iter().filter_map(|r| Some((r, told(r)?)));
    let says = " wide is heavy and sags: two do better, on stiffer posts.";
    wide.map(|(r, l)| super::say::about(r, [Span::Say("a leaf "), inches(l, "the leaf"), Span::Say(says)])).collect()
}

/// A guard told to close off a pool, and too low for that.
pub(super) fn pool_guard_low(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let barrier = Barrier::of(job).filter(|_| told_length(job, RowId::HeightTop).is_some());
    let low = barrier.filter(|b| breaches(b, &job.settings).contains(&&limits::POOL_TOP));
    let says = " high that closes off a pool is under ";
    low.map(|b| {
        let lead = [Span::Say("a guard "), inches(b.top, "the guard"), Span::Say(says)];
        lead.into_iter().chain([held(job, &limits::POOL_TOP), Span::Say(".")]).collect()
    })
    .into_iter()
    .collect()
}

/// A gate told not to close by itself, at a pool.
pub(super) fn pool_gate_open(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let pool = choice::pool(job);
    let open = job.runs.iter().filter(|r| pool && r.gate.is_some_and(|g| g.hung.self_closing == Some(false)));
    let says = "a gate at a pool closes and latches by itself, and this one is told not to.";
    open.map(|r| super::say::about(r, [Span::Say(says)])).collect()
}

/// A latch told lower than a child is kept from, at a pool.
pub(super) fn pool_latch_low(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let up = |r: &crate::job::Run| {
        let latch = r.gate.and_then(|g| g.hung.latch_height)?;
        let barrier = Barrier { latch: Some(latch), ..Barrier::of(job)? };
        latch_on_pool_side(&barrier, &job.settings).filter(|low| *low).map(|_| latch)
    };
    let low = job.runs.iter().filter_map(|r| Some((r, up(r)?)));
    let says = " up is under ";
    let then = ": it goes on the pool side, at least 3 in. below the gate's top, with no opening over 1/2 in. near it.";
    low.map(|(r, l)| {
        let spans = [Span::Say("a latch "), inches(l, "the latch"), Span::Say(says), held(job, &limits::POOL_LATCH)];
        super::say::about(r, spans.into_iter().chain([Span::Say(then)]))
    })
    .collect()
}

/// Risers enough for a handrail.
pub(super) fn handrail_needed(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let needing = flights(job).into_iter().filter_map(|f| f.risers).find(|n| handrail::needed(*n));
    let says = " risers: a handrail is asked for on at least one side, one a hand can close on.";
    needing
        .map(|n| vec![fig(&Fig::count(u64::from(n), crate::figure::Why::Told("the risers"))), Span::Say(says)])
        .into_iter()
        .collect()
}

/// A stair rail told too low.
pub(super) fn rail_too_low(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let settings = &job.settings;
    let least = limit_length(settings, &limits::STAIR_GUARD_LOW);
    let holds = settings.law.holds(&limits::STAIR_GUARD_LOW);
    let low = flights(job).into_iter().filter_map(|f| f.height).find(|l| holds && *l < least);
    low.map(|l| {
        let says = " above the line of the nosings is under ";
        vec![
            Span::Say("a stair rail "),
            inches(l, "the stair rail"),
            Span::Say(says),
            held(job, &limits::STAIR_GUARD_LOW),
            Span::Say("."),
        ]
    })
    .into_iter()
    .collect()
}

/// A stair rail told too high to be the handrail as well.
pub(super) fn rail_over_handrail(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let most = limit_length(job, &limits::HANDRAIL_HIGH);
    let high = flights(job).into_iter().filter_map(|f| f.height).find(|l| *l > most);
    let says = " is over the handrail's range: its top is no handrail, and one of its own goes on its side.";
    high.map(|l| vec![Span::Say("a stair rail at "), inches(l, "the stair rail"), Span::Say(says)])
        .into_iter()
        .collect()
}

/// Stairs let into the deck less deep than they come out.
pub(super) fn handrail_past_mouth(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let openings = job.runs.iter().flat_map(|r| r.stairs.iter());
    let found = openings.filter_map(|s| {
        let run = work_out(&Told::of(&job.flight(s), told_length(job, RowId::Grade))).ok()?.going?.run;
        let recess = s.recess.filter(|deep| run.as_length().is_some_and(|l| *deep < l))?;
        Some(vec![
            Span::Say("the stairs come out "),
            fig(&run),
            Span::Say(" and are let in only "),
            inches(recess, "how deep the stairs are let in"),
            Span::Say(": the handrail goes on past the mouth to the lowest nosing, across the guard there; carry it on posts or blocks."),
        ])
    });
    found.collect()
}

/// A gate told to swing out over the stairs.
pub(super) fn gate_swings_out(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let out =
        job.runs.iter().filter(|r| r.gate.is_some_and(|g| matches!(g.hung.swing, Some(Swing::Out | Swing::Both))));
    let says = "the gate swings out off the deck: over stairs it is asking for a fall; swing it over the deck.";
    out.map(|r| super::say::about(r, [Span::Say(says)])).collect()
}
