//! Balusters down the stairs, and the triangle under them.

use super::known::Known;
use super::say::{answer, by, caution, decides, detail, exact, ft, inch, mind, reply, taken, w};
use super::{Answer, Trouble};
use crate::figure::{Fig, Why};
use crate::gate::gap;
use crate::grammar::ask::Size;
use crate::infill::HeldGap;
use crate::job::Job;
use crate::limits;
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::reply::{Line, Span};
use crate::solve::{in_force, told_length};
use crate::stairs::guard::Laid;
use crate::stairs::infill::{Infill, infill, stock};
use crate::stairs::triangle::Overhang;
use crate::stairs::triangle::{Triangle, short_of, triangle as worked};
use crate::takeoff::down_the_stairs;

/// "balusters on the stairs".
pub fn balusters(known: &Known) -> Answer {
    let (site, g) = known.guard(Laid::Slope)?;
    let (baluster, held) = (known.baluster(), gap::stairs(known.job));
    let clear = &g.bays[0].clear;
    let bay = down_the_stairs(known.job, &g, &baluster, held, known.tape);
    let bay = infill(&site.rake, &bay).ok_or(Trouble::NoRoom)?;
    let bays = g.bays.len();
    let mut first: Vec<Span> = vec![ft(&bay.count), w(if bays > 1 { " to a bay, " } else { ", " })];
    first.extend([exact(&bay.gap), w(" clear between them on the level.")]);
    let mut lines = vec![answer(first)];
    if bays > 1 {
        let n = u64::try_from(bays).unwrap_or(0);
        let all = bay.count.as_q().to_integer().unsigned_abs() as u64 * n;
        let why = Why::Formula("to a bay x bays", vec![("to a bay", bay.count.clone()), ("bays", g.count.clone())]);
        lines.push(detail([
            ft(&Fig::count(all, why)),
            w(" in "),
            ft(&g.count),
            w(" bays of "),
            ft(clear),
            w(" clear on the level."),
        ]));
    }
    lines.extend(spacing(known.job, &bay, known.tape));
    lines.push(detail([
        w("Spaced on the level, cut on the angle: both ends at "),
        ft(&site.rake.angle()),
        w(", and each takes "),
        exact(&stock(&site.rake, &nothing(), &baluster)),
        w(" more stock than it is long plumb."),
    ]));
    lines.push(detail([w("Balusters "), inch(&baluster), w(" wide, plumb.")]));
    lines.push(taken(&limits::NEWEL_PLACE));
    let mut reply = reply(lines);
    reply.values.result = Some(bay.count.clone());
    let more = [
        ("balusters", &bay.count),
        ("gap", &bay.gap),
        ("gap_along", &bay.gap_along),
        ("centres", &bay.centre),
        ("centres_along", &bay.centre_along),
        ("stair_bay_clear", clear),
    ];
    reply.values.takeoff.marks = bay.marks.clone();
    reply.values.more = more.into_iter().map(|(n, f)| (n, f.clone())).collect();
    Ok((reply, vec![("balusters to a bay", bay.count.clone()), ("gap", bay.gap.clone())]))
}

fn nothing() -> Fig {
    Fig::length(Length::ZERO, Why::Formula("the stock over the plumb length alone", Vec::new()))
}

/// Marks along the rail, what is between them, and what the gaps were held to.
fn spacing(job: &Job, bay: &Infill, tape: Tape) -> Vec<Line> {
    let mut lines = Vec::new();
    if !bay.marks.is_empty() {
        let mut marks = vec![w("Marks along the slope, tape hooked on the upper post's face, upper side of each: ")];
        for (k, mark) in bay.marks.iter().enumerate() {
            marks.extend((k > 0).then_some(w(", ")));
            marks.push(inch(mark));
        }
        marks.push(w("."));
        lines.push(detail(marks));
    }
    let mut both =
        vec![w("Centers "), exact(&bay.centre), w(" on the level, "), inch(&bay.centre_along), w(" along the slope.")];
    if bay.drift.as_length().is_some_and(|l| tape.round(l).is_positive()) {
        both.extend([w(" Stepped off with that the last one comes "), inch(&bay.drift), w(" off: pull the marks.")]);
    }
    lines.push(detail(both));
    lines.push(detail([w("The gap along the slope is "), inch(&bay.gap_along), w(", which no limit is held to.")]));
    if bay.count.as_q().to_integer() != i128::from(bay.exact) {
        lines.push(detail([w(
            "One more than the exact split needs: rounded to the tape, a gap would reach the limit.",
        )]));
    }
    lines.push(kept_to(job, &bay.held));
    let own = bay.held.most == in_force(job, &limits::STAIR_GAP);
    if own && told_length(job, RowId::GapMax).is_some() {
        lines.push(detail([w("The gap limit told is for the level guard; here it is the stair's.")]));
    }
    if gap::by_pool(&bay.held) {
        lines.push(detail([w("At the pool told, the guard down the stairs is taken as part of its barrier.")]));
    }
    lines
}

/// What gaps are held to, and whose it is.
pub fn kept_to(job: &Job, held: &HeldGap) -> Line {
    let here = &job.settings;
    match held.most.why() {
        Why::Limit(l) => by(here, l),
        Why::Told(_) if !here.law.local.iter().any(|(_, l)| *l == held.length()) => {
            detail([w("Kept under the "), exact(&held.most), w(" told.")])
        }
        Why::Table(_, source) => detail([w("Kept under "), exact(&held.most), w(": "), w(source), w(".")]),
        _ => detail([w("Kept under "), exact(&held.most), w(": as told, your building department.")]),
    }
}

/// "triangle at the steps".
pub fn triangle(known: &Known) -> Answer {
    let here = known.here();
    let rake = known.rake()?;
    let (overhang, from) = known.nosing(rake.tread().as_length().unwrap_or(Length::ZERO));
    let given = known.given.size(Size::Lift);
    let lift = given.map_or_else(nothing, |l| Fig::told(l, "the bottom rail above the nosing line"));
    let t = worked(&rake, &overhang, &lift, here).ok_or(Trouble::PastMe)?;
    let set = short_of(&t.most_lift, known.tape);
    let mut lines = vec![answer(first(&t, given.is_some(), &set, known.tape))];
    if given.is_some() {
        lines.push(room(&t, &set));
    }
    lines.push(detail([
        w("That lift is plumb, to the rail's underside; square to the slope it is "),
        inch(&short_of(&t.most_square, known.tape)),
        w(". Both are rounded down, so that the ball stays short of its limit."),
    ]));
    lines.push(match from {
        Overhang::Told => {
            detail([w("With the nosing's "), inch(&overhang), w(" overhang counted in: it makes the triangle bigger.")])
        }
        Overhang::Most => detail([
            w("No nosing was told: taken as "),
            inch(&overhang),
            w(", the most one may stand out under treads this deep ("),
            w(here.law.source(&limits::NOSING_MOST)),
            w("); a shorter one makes the triangle smaller. Say yours."),
        ]),
        Overhang::None => detail([w(
            "No nosing was told and the rules ask for none there, so none is counted; an overhang makes the triangle bigger and the lift smaller.",
        )]),
    });
    lines.push(by(here, &limits::STAIR_TRIANGLE));
    if t.fails() {
        lines.push(decides());
    }
    let mut reply = reply(lines);
    reply.values.result = Some(t.ball.clone());
    reply.values.more = vec![("triangle_ball", t.ball.clone()), ("most_lift", set.clone())];
    Ok((reply, vec![("the ball that fits", t.ball.clone()), ("the most lift", t.most_lift.clone())]))
}

/// "how far can I lift the bottom rail": down stairs told, the triangle; along the deck, the ball.
pub fn lift(known: &Known) -> Answer {
    let here = known.here();
    let untold = crate::job::Flight::default();
    let stairs = known.flight != untold || !known.given.sizes.is_empty();
    if stairs && known.rake().is_ok() {
        return triangle(known);
    }
    let most = in_force(here, &limits::LEVEL_GAP);
    let lines = vec![
        answer([w("Along the deck, less than "), inch(&most), w(" above the decking, at the lowest spot.")]),
        by(here, &limits::LEVEL_GAP),
        detail([w(
            "Down the stairs it is the triangle of riser, tread and rail that counts: tell the riser and the tread and ask again.",
        )]),
        by(here, &limits::STAIR_TRIANGLE),
        decides(),
    ];
    let mut reply = reply(lines);
    reply.values.result = Some(most.clone());
    Ok((reply, vec![("the gap under", most)]))
}

fn first(t: &Triangle, lifted: bool, set: &Fig, tape: Tape) -> Vec<Span> {
    let up = set.as_length().is_some_and(Length::is_positive);
    match (t.fails(), lifted, up) {
        (true, true, _) => {
            vec![w("No: a ball of "), exact(&t.ball), w(" fits through, and a "), inch(&t.limit), w(" one must not.")]
        }
        // Rounded, the ball would be said as large as the limit it is under.
        (false, true, _) if t.ball.as_length().map(|l| tape.round(l)) == t.limit.as_length() => {
            vec![w("It passes: the biggest ball that fits is just under "), inch(&t.limit), w(".")]
        }
        (false, true, _) => {
            vec![w("It passes: the biggest ball that fits is "), exact(&t.ball), w(", under "), inch(&t.limit), w(".")]
        }
        (_, false, true) => vec![
            w("With the rail's underside on the nosing line the biggest ball is "),
            exact(&t.ball),
            w("; lift it no more than "),
            inch(set),
            w("."),
        ],
        (_, false, false) => vec![
            w("Even with the rail's underside on the nosing line a ball of "),
            exact(&t.ball),
            w(" fits: drop the rail below the line, or close the triangle."),
        ],
    }
}

fn room(t: &Triangle, set: &Fig) -> Line {
    if t.fails() {
        caution([w("Lower the rail to no more than "), inch(set), w(" above the nosing line, or close the triangle.")])
    } else {
        detail([w("It may be as much as "), inch(set), w(" above the nosing line.")])
    }
}

/// "how long are the balusters on the stairs".
pub fn length(known: &Known) -> Answer {
    let rake = known.rake()?;
    let baluster = known.baluster();
    let apart = known.given.size(Size::RailsApart).ok_or(Trouble::Ask(
        "How far apart are the two stair rails, square to the slope? The balusters fill that, longer because they stand plumb.",
    ))?;
    let apart = Fig::told(apart, "the rails, apart square to the slope");
    let plumb = rake.plumb(&apart);
    let cut = stock(&rake, &plumb, &baluster);
    let lines = vec![
        answer([
            exact(&plumb),
            w(" plumb, along its middle, for rails "),
            inch(&apart),
            w(" apart square to the slope."),
        ]),
        detail([
            w("Each takes "),
            exact(&cut),
            w(" of stock, long point to long point: both ends cut at "),
            ft(&rake.angle()),
            w(" the same way."),
        ]),
        detail([w("Balusters "), inch(&baluster), w(" wide. Cut one and try it before you cut the rest.")]),
    ];
    let mut reply = reply(lines);
    reply.values.result = Some(plumb.clone());
    reply.values.more = vec![("baluster_plumb", plumb.clone()), ("baluster_stock", cut.clone())];
    Ok((reply, vec![("plumb length", plumb), ("stock", cut)]))
}

/// "is 4 3/8 ok between balusters on the stairs".
pub fn gap(known: &Known) -> Answer {
    let told = known.given.size(Size::Gap).ok_or(Trouble::Ask("How wide is the gap?"))?;
    let gap = Fig::told(told, "the gap");
    let held = gap::stairs(known.job);
    let (most, passes) = (held.most.clone(), held.limit().allows(told));
    let first = match (passes, Some(told) == most.as_length()) {
        (true, _) => vec![
            w("Yes: "),
            inch(&gap),
            w(if held.equal_passes { " is no more than the " } else { " is under the " }),
            exact(&most),
            w(" a stair's open side may have, if it is measured on the level."),
        ],
        (_, true) => {
            vec![w("No: a gap of just "), inch(&gap), w(" lets the "), exact(&most), w(" ball through; keep under it.")]
        }
        _ => vec![w("No: "), inch(&gap), w(" lets a "), exact(&most), w(" ball through.")],
    };
    let lines = vec![answer(first), kept_to(known.job, &held), mind(&limits::STAIR_GAP), decides()];
    let mut reply = reply(lines);
    reply.values.result = Some(gap.clone());
    Ok((reply, vec![("the gap", gap), ("the most", most)]))
}
