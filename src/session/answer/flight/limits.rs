//! What a flight may be by the published limits alone: open between its treads, or rising far in
//! one go.

use super::Answer;
use super::known::Known;
use super::say::{answer, by, caution, decides, detail, exact, ft, inch, inches, limit, reply, w};
use super::trouble::Trouble;
use crate::figure::{Fig, Why};
use crate::grammar::ask::Size;
use crate::job::{RiserKind, Settings};
use crate::limits;
use crate::quantity::RowId;
use crate::reply::{Line, Span};
use crate::solve::{self, in_force, limit_length};
use crate::stairs::triangle::short_of;

/// "do I need closed risers", "can I leave the risers open".
pub fn open_risers(known: &Known) -> Answer {
    let here = known.here();
    let told = match known.flight.between {
        Some(RiserKind::Opening(l)) => Some(l),
        _ => None,
    };
    let gap = known.given.size(Size::OpenRiser).or(told).map(|l| Fig::told(l, "the opening between treads"));
    let fails = gap.as_ref().is_some_and(|g| inches(g) >= limit_length(here, &limits::OPEN_RISER));
    let first: Vec<Span> = match &gap {
        Some(g) if fails => vec![
            w("Not more than "),
            limit(here, &limits::GUARD_TRIGGER),
            w(" above what is below: "),
            exact(g),
            w(" lets a "),
            limit(here, &limits::OPEN_RISER),
            w(" ball through. Lower down it may be open."),
        ],
        Some(g) => {
            vec![
                exact(g),
                w(" open stops a "),
                limit(here, &limits::OPEN_RISER),
                w(" ball: it may stay so at any height."),
            ]
        }
        None => vec![
            w("Risers may be open, but one more than "),
            limit(here, &limits::GUARD_TRIGGER),
            w(" above what is below must stop a "),
            limit(here, &limits::OPEN_RISER),
            w(" ball: close it, or close all but less than that."),
        ],
    };
    let mut lines = vec![answer(first)];
    lines.extend(highest(known));
    lines.push(by(here, &limits::OPEN_RISER));
    // The words of that limit name the trigger as it is published.
    lines.extend(here.law.changes(&limits::GUARD_TRIGGER).then(|| by(here, &limits::GUARD_TRIGGER)));
    lines.push(decides());
    let mut reply = reply(lines);
    reply.values.result = gap.clone();
    let most = in_force(here, &limits::OPEN_RISER);
    let mut figs = vec![("an open riser's most", most)];
    figs.extend(gap.map(|g| ("the opening", g)));
    Ok((reply, figs))
}

/// Whether any riser of the flight told stands so high that it counts.
fn highest(known: &Known) -> Option<Line> {
    let here = known.here();
    let f = known.flight().ok()?;
    let from = vec![("total rise", f.total_rise.clone()), ("riser", f.rise.clone())];
    let top = Fig::length(inches(&f.total_rise) - inches(&f.rise), Why::Formula("total rise less the top riser", from));
    let high = inches(&top) > limit_length(here, &limits::GUARD_TRIGGER);
    let words =
        if high { ": it counts, and so does each below it that high." } else { ": none of yours is that high." };
    Some(detail([w("Your top riser starts "), ft(&top), w(" above level ground"), w(words)]))
}

/// "can I do 20 risers in one go".
pub fn one_flight(known: &Known) -> Answer {
    let here = known.here();
    let most = in_force(here, &limits::FLIGHT_RISE);
    let told = known.told();
    let Some(risers) = known.given.risers else {
        let mut lines = vec![answer([w("One flight rises no more than "), ft(&most), w("; then there is a landing.")])];
        lines.extend(known.flight().ok().map(|f| {
            let over = inches(&f.total_rise) > limit_length(here, &limits::FLIGHT_RISE);
            detail([w("Yours rises "), ft(&f.total_rise), w(if over { ": too much for one." } else { "." })])
        }));
        lines.extend([by(here, &limits::FLIGHT_RISE), decides()]);
        return Ok((reply(lines), vec![("the most a flight rises", most)]));
    };
    let count = Fig::count(u64::from(risers), Why::Told("the risers"));
    let each = |l: Fig, says, a: &'static str| {
        let from = vec![(a, l.clone()), ("risers", count.clone())];
        Fig::length(inches(&l) / i64::from(risers.max(1)), Why::Formula(says, from))
    };
    let room = each(most.clone(), "the most a flight rises over its risers", "most");
    let rise = told.rise.map(|l| Fig::told(l, "the riser"));
    let rise = rise.or_else(|| {
        told.total_rise.map(|l| each(Fig::told(l, "the total rise"), "total rise over risers", "total rise"))
    });
    let (ok, mut lines) = match &rise {
        Some(rise) => {
            let ok = inches(rise) <= inches(&room);
            (ok, vec![answer(of_a_height(ok, &count, rise, &most)?)])
        }
        None => {
            let ok = inches(&room) >= limit_length(here, &limits::RISER_MOST);
            // On the last mark short of it: the nearest one could pass the limit.
            (ok, vec![answer(of_any_height(here, ok, &count, &short_of(&room, known.tape), &most))])
        }
    };
    if !ok {
        lines.push(caution([
            w("Past that a landing goes between, as deep as "),
            limit(here, &limits::LANDING),
            w(" and as wide as the stairs."),
        ]));
    }
    lines.push(by(here, &limits::FLIGHT_RISE));
    lines.push(decides());
    let mut reply = reply(lines);
    reply.values.result = Some(room.clone());
    Ok((reply, vec![("the most a flight rises", most), ("most for each riser", room)]))
}

fn of_a_height(ok: bool, count: &Fig, rise: &Fig, most: &Fig) -> Result<Vec<Span>, Trouble> {
    let total = solve::by(RowId::TotalRise, &[(RowId::Risers, count), (RowId::Rise, rise)]).ok_or(Trouble::PastMe)?;
    let verdict = if ok { "Yes: " } else { "No: " };
    let says = if ok { ", and one flight may rise " } else { ", and one flight rises no more than " };
    Ok(vec![w(verdict), ft(count), w(" risers of "), exact(rise), w(" rise "), ft(&total), w(says), ft(most), w(".")])
}

fn of_any_height(here: &Settings, ok: bool, count: &Fig, room: &Fig, most: &Fig) -> Vec<Span> {
    if ok {
        let says = w(" risers of any height allowed stay under the ");
        return vec![w("Yes: "), ft(count), says, ft(most), w(" one flight may rise.")];
    }
    vec![
        w("Only if each is no more than "),
        inch(room),
        w(": one flight rises no more than "),
        ft(most),
        w(", and "),
        ft(count),
        w(" risers of "),
        limit(here, &limits::RISER_MOST),
        w(" pass it."),
    ]
}
