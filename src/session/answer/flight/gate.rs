//! Gates: the leaf, its brace, its swing, its posts, and a pool.

use super::infill::kept_to;
use super::known::Known;
use super::say::{answer, breaks, by, caution, decides, detail, exact, ft, inch, inches, limit, mind, reply, taken, w};
use super::trouble::too_wide;
use super::{Answer, Trouble};
use crate::figure::{Fig, Why};
use crate::gate::brace::{Brace, brace as braced, leaf_height};
use crate::gate::gap;
use crate::gate::pool::{Barrier, breaches, latch_on_pool_side, top_for_plain_gap};
use crate::gate::{Leaf, LeafTold, Unfit, leaf as worked};
use crate::grammar::ask::Size;
use crate::job::outline::filled;
use crate::job::{End, Gate, Jamb, Job, PostRole, PostSize, Run, Settings, Swing};
use crate::layout::{BayKind, lay_out};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{GateFig, Line, Reply, Role, Span};
use crate::solve::{in_force, limit_length, told_length};
use crate::takeoff::leaf_told;

/// The opening the layout gives a gate: it may be worked out, as at recessed stairs.
fn laid(known: &Known) -> Option<Length> {
    let (run, gate) = known.gate()?;
    laid_in(known.job, run, gate)
}

fn laid_in(job: &Job, run: &Run, gate: Gate) -> Option<Length> {
    let layout = lay_out(job);
    let laid = layout.runs.iter().filter(|r| r.id == run.id).filter_map(|r| r.result.as_ref().ok());
    let found: Option<Fig> = laid
        .filter_map(|p| {
            let bay = p.bays.iter().find(|b| matches!(b.kind, BayKind::Gate | BayKind::GatedStairs));
            p.beyond.clone().or_else(|| bay.map(|b| b.clear.clone()))
        })
        .next();
    found.and_then(|f| f.as_length()).or(gate.width)
}

fn told(known: &Known) -> LeafTold {
    let g = known.given;
    let sizes = [Size::Opening, Size::SecondOpening, Size::ThirdOpening];
    let given: Vec<Length> = sizes.iter().filter_map(|s| g.size(*s)).collect();
    let hung = known.gate().map(|(_, gate)| gate.hung).unwrap_or_default();
    let openings = if given.is_empty() { laid(known).into_iter().collect() } else { given };
    let told = leaf_told(known.job, hung, openings);
    LeafTold {
        hinge_gap: g.size(Size::HingeGap).or(told.hinge_gap),
        latch_gap: g.size(Size::LatchGap).or(told.latch_gap),
        leaf: g.size(Size::Leaf).or(told.leaf),
        ..told
    }
}

fn leaf_of(known: &Known) -> Result<Leaf, Trouble> {
    worked(&told(known)).map_err(Trouble::Unfit)
}

fn swing_of(known: &Known) -> &'static str {
    match known.gate().and_then(|(_, g)| g.hung.swing) {
        Some(Swing::Out) => "out",
        Some(Swing::Both) => "both ways",
        Some(Swing::OverDeck) | None => "toward deck",
    }
}

fn with_leaf(mut reply: Reply, known: &Known, leaf: &Leaf) -> Reply {
    reply.values.gate = Some(GateFig {
        opening: leaf.opening.clone(),
        leaf: leaf.width.clone(),
        hinge_gap: leaf.hinge_gap.clone(),
        latch_gap: leaf.latch_gap.clone(),
        swing: swing_of(known),
    });
    reply
}

/// "how wide do I build the gate".
pub fn leaf(known: &Known) -> Answer {
    let l = leaf_of(known)?;
    let two = l.leaves == 2;
    let lead = if two { "Build each of the two leaves " } else { "Build the leaf " };
    let mut lines = vec![answer([w(lead), ft(&l.width), w(" = "), exact(&l.width), w(" wide.")])];
    lines.push(detail([
        w("The opening is "),
        exact(&l.opening),
        w(" less "),
        inch(&l.hinge_gap),
        w(if two { " at each jamb's hinges and " } else { " at the hinges and " }),
        inch(&l.latch_gap),
        w(if two { " between the leaves." } else { " at the latch." }),
    ]));
    match &l.differs {
        Some(by) => lines.push(detail([
            w("The smallest of the measures given goes; they differ by "),
            inch(by),
            w(": plumb the jambs first if you can."),
        ])),
        None => lines
            .push(detail([w("Measure the opening at the top, the middle and the bottom, and go by the smallest.")])),
    }
    lines.extend(l.taken.iter().filter(|t| t.id != "gate-stile").map(|t| taken(t)));
    lines.extend(gaps(known, &l));
    lines.extend(wide_lines(known, &l));
    lines.push(detail([w("Hinge and latch set the gaps: read their papers before you cut.")]));
    let mut reply = with_leaf(reply(lines), known, &l);
    reply.values.result = Some(l.width.clone());
    Ok((reply, vec![("the leaf", l.width.clone())]))
}

/// The gaps beside the leaf stop the ball like any other.
fn gaps(known: &Known, l: &Leaf) -> Option<Line> {
    let held = gap::level(known.job);
    let wide = [&l.hinge_gap, &l.latch_gap].into_iter().any(|g| !held.limit().allows(inches(g)));
    wide.then(|| {
        caution([
            w("Stop: a gap beside that leaf passes the "),
            exact(&held.most),
            w(" every opening is held to ("),
            w(gap::source(known.job, &held)),
            w(")."),
        ])
    })
}

fn wide_lines(known: &Known, l: &Leaf) -> Vec<Line> {
    let here = known.here();
    if !l.too_wide(here) {
        return Vec::new();
    }
    vec![caution([
        w("Check: a single leaf over "),
        ft(&in_force(here, &limits::GATE_LEAF)),
        w(" is heavy and sags: two leaves do better, on stiffer posts."),
    ])]
}

/// "how many balusters in the gate".
pub fn balusters(known: &Known) -> Answer {
    let l = leaf_of(known)?;
    let held = gap::level(known.job);
    let found = l.balusters(&known.baluster(), &held, known.tape);
    let (count, gap) =
        found.ok_or(Trouble::Ask("The stiles leave no room for balusters in that leaf: is the opening right?"))?;
    let lead = if l.leaves == 2 { " in each of the two leaves, " } else { " in the leaf, " };
    let mut lines = vec![answer([ft(&count), w(lead), exact(&gap), w(" clear between them.")])];
    lines.push(detail([
        w("Leaf "),
        exact(&l.width),
        w(", stiles "),
        inch(&l.stile),
        w(" each, balusters "),
        inch(&known.baluster()),
        w(" wide."),
    ]));
    lines.extend(l.taken.iter().map(|t| taken(t)));
    lines.push(kept_to(known.job, &held));
    let mut reply = with_leaf(reply(lines), known, &l);
    reply.values.result = Some(count.clone());
    reply.values.more = vec![("balusters", count.clone()), ("gap", gap.clone())];
    Ok((reply, vec![("balusters in the leaf", count), ("gap", gap)]))
}

/// The leaf's height: given, or the guard's less the gap under.
fn height_of(known: &Known) -> Result<Fig, Trouble> {
    if let Some(l) = known.given.size(Size::LeafHeight) {
        return Ok(Fig::told(l, "the leaf's height"));
    }
    let under = told_length(known.job, RowId::GapUnder).ok_or(Trouble::Ask(
        "How high is the leaf? Or tell the gap under the bottom rail: the leaf goes from there to the guard's top.",
    ))?;
    leaf_height(&known.level(), &Fig::told(under, "the gap under")).ok_or(Trouble::NoRoom)
}

/// "where does the gate brace go".
pub fn brace(known: &Known) -> Answer {
    let mut lines = vec![answer([w(
        "A wood brace goes from the bottom at the hinges up to the top at the latch: the leaf's weight pushes on it.",
    )])];
    lines.push(detail([w(
        "A cable or rod goes the other way, from the top at the hinges down to the latch: the weight pulls on it.",
    )]));
    let sized = leaf_of(known).and_then(|l| Ok((height_of(known)?, l)));
    let found: Option<(Brace, Leaf)> = sized.ok().and_then(|(height, l)| Some((braced(&l.width, &height)?, l)));
    let Some((b, l)) = found else {
        lines
            .push(detail([w("Tell the opening, and the leaf's height or the gap under it, and I give its diagonal.")]));
        return Ok((reply(lines), Vec::new()));
    };
    lines.push(detail([
        w("Square when both diagonals of the leaf are "),
        ft(&b.diagonal),
        w(": leaf "),
        exact(&l.width),
        w(" by "),
        exact(&b.height),
        w("."),
    ]));
    lines.push(detail([
        w("A brace corner to corner lies at "),
        ft(&b.angle),
        w(" from the level; mark it in place, it ends inside the frame."),
    ]));
    let mut reply = with_leaf(reply(lines), known, &l);
    reply.values.result = Some(b.diagonal.clone());
    reply.values.more = vec![("diagonal", b.diagonal.clone()), ("brace_angle", b.angle.clone())];
    Ok((reply, vec![("the diagonal", b.diagonal)]))
}

/// "which way does the gate swing".
pub fn swing(known: &Known) -> Answer {
    let here = known.here();
    let told = known.gate().and_then(|(_, g)| g.hung.swing);
    let mut lines =
        vec![answer([w("Over the deck, away from the stairs: nobody should have to step back down them to open it.")])];
    if matches!(told, Some(Swing::Out | Swing::Both)) {
        lines.push(caution([w(
            "Check: it was told to swing out. Over stairs that is asking for a fall; swing it onto the deck.",
        )]));
    }
    let opening = told_leaf_width(known);
    lines.push(match &opening {
        Some(leaf) => detail([w("Its leaf sweeps "), ft(leaf), w(" of deck: keep that free, and let it lie along a guard when open.")]),
        None => detail([w("Keep the deck it sweeps free, and let it lie along a guard when open: hinge it on the post the guard runs on from.")]),
    });
    lines.push(detail([
        w("Leave a landing "),
        limit(here, &limits::LANDING),
        w(" deep, clear of the open leaf, at the stair head ("),
        w(limits::LANDING.source),
        w(")."),
    ]));
    lines.push(mind(&limits::LANDING));
    lines.push(detail([w(
        "At a pool a gate opens away from the water: if the two disagree, ask the building department.",
    )]));
    lines.push(decides());
    Ok((reply(lines), vec![("landing", in_force(here, &limits::LANDING))]))
}

fn told_leaf_width(known: &Known) -> Option<Fig> {
    leaf_of(known).ok().map(|l| l.width)
}

/// "is a 5 foot gate too wide".
pub fn wide(known: &Known) -> Answer {
    let here = known.here();
    let told = known.given.size(Size::Leaf).or(known.given.size(Size::Opening)).or_else(|| laid(known));
    let width = Fig::told(told.ok_or(Trouble::Ask("How wide is the gate?"))?, "the gate's width");
    let most = in_force(here, &limits::GATE_LEAF);
    let over = inches(&width) > limit_length(here, &limits::GATE_LEAF);
    let first: Vec<Span> = if over {
        vec![
            w("Yes, "),
            ft(&width),
            w(" is wide for one leaf: over "),
            ft(&most),
            w(" it is heavy, sags and works its post loose."),
        ]
    } else {
        vec![ft(&width), w(" is no wider than I would question: single leaves go to about "), ft(&most), w(".")]
    };
    let mut lines = vec![answer(first)];
    if over {
        let why = Why::Formula("half the opening, before the gaps", vec![("gate", width.clone())]);
        let half = Fig::length(inches(&width) / 2, why);
        lines.push(detail([
            w("Two leaves of about "),
            ft(&half),
            w(" less their gaps do better, with a bolt down into the deck on one."),
        ]));
    }
    lines.push(detail([w(limits::GATE_POSTS.says), w(".")]));
    lines.push(detail([w("Both are common practice, no source.")]));
    let mut reply = reply(lines);
    reply.values.result = Some(width.clone());
    Ok((reply, vec![("the gate", width), ("most for one leaf", most)]))
}

/// "what posts for a gate".
pub fn posts(known: &Known) -> Answer {
    let size = crate::solve::post_size(known.job, PostRole::Gate);
    let six = matches!(size, Some(PostSize::Lumber(l)) if l.wide >= 6);
    let mut lines =
        vec![answer([w("Stiffer than the rest: a 6x6, or a whole post inside the rim, tied back both ways.")])];
    lines.push(detail([w(limits::GATE_POSTS.says), w(".")]));
    lines.push(detail([w("Both jambs stand in line with the run, so that the leaf closes flush with the guard.")]));
    if six {
        lines.push(detail([w("The gate posts are told as 6x6.")]));
    }
    lines.push(detail([w("How strong the hold-downs must be is for their papers or an engineer.")]));
    Ok((reply(lines), Vec::new()))
}

/// "how high is the gate, how far off the deck".
pub fn height(known: &Known) -> Answer {
    let here = known.here();
    let level = known.level();
    let under = told_length(known.job, RowId::GapUnder);
    let first = match under.map(|l| leaf_height(&level, &Fig::told(l, "the gap under"))) {
        Some(Some(high)) => vec![
            w("Top of the leaf with the guard's, "),
            inch(&level),
            w(" above the deck; the leaf itself is "),
            inch(&high),
            w(" high over the gap under it."),
        ],
        _ => vec![
            w("Top of the leaf with the guard's, "),
            inch(&level),
            w(" above the deck; the gap under it less than "),
            limit(here, &limits::LEVEL_GAP),
            w("."),
        ],
    };
    let mut lines = vec![answer(first)];
    lines.push(detail([w(
        "A gate across the guard is guard like the rest: the same height, the same ball at both edges and under it.",
    )]));
    lines.push(by(here, &limits::GUARD_HEIGHT));
    lines.push(by(here, &limits::LEVEL_GAP));
    lines.push(detail([w(
        "Leave enough under it to clear a high board and ice; a leaf that drops a little must still swing.",
    )]));
    lines.push(decides());
    let mut reply = reply(lines);
    reply.values.result = Some(level.clone());
    Ok((reply, vec![("the guard's height", level)]))
}

/// "latch height".
pub fn latch(known: &Known) -> Answer {
    let here = known.here();
    let most = in_force(here, &limits::POOL_LATCH);
    let told = known.gate().and_then(|(_, gate)| gate.hung.latch_height);
    let given = known.given.size(Size::LatchHeight).or(told).map(|l| Fig::told(l, "the latch"));
    let barrier = Barrier::of(known.job).map(|b| Barrier { latch: given.as_ref().and_then(Fig::as_length), ..b });
    let pool = barrier.is_some();
    let low = barrier.and_then(|b| latch_on_pool_side(&b, here)) == Some(true);
    let first: Vec<Span> = match (&given, pool) {
        (Some(l), true) if low => {
            vec![
                inch(l),
                w(" is under "),
                inch(&most),
                w(": the release then goes on the pool side, below the gate's top."),
            ]
        }
        (Some(l), true) => vec![inch(l), w(" or higher it may be on either side of the gate.")],
        (None, true) => vec![
            w("At "),
            inch(&most),
            w(" or higher on either side; lower, its release goes on the pool side, below the gate's top."),
        ],
        (_, false) => vec![w(
            "No code I know sets a height for a latch that closes off no pool: put it near the top, where a hand finds it.",
        )],
    };
    let mut lines = vec![answer(first)];
    if pool {
        lines.push(by(here, &limits::POOL_LATCH));
    } else {
        lines.push(detail([w(
            "That place is common practice, no source. At a pool it is another matter: say \"there's a pool\".",
        )]));
    }
    lines.push(decides());
    Ok((reply(lines), if pool { vec![("latch", most)] } else { Vec::new() }))
}

/// What is told of a gate that disagrees: a leaf its opening has no room for, or a house side
/// where no house is.
pub fn disagrees(job: &Job) -> Option<Line> {
    let outlined = filled(job).job;
    job.runs.iter().filter_map(|r| Some((r, r.gate?))).find_map(|(r, gate)| {
        let stands = outlined.run(r.id).unwrap_or(r);
        wrong_side(stands, gate).or_else(|| no_room(job, r, gate))
    })
}

fn no_room(job: &Job, run: &Run, gate: Gate) -> Option<Line> {
    gate.hung.leaf?;
    let openings = gate.width.or_else(|| laid_in(job, run, gate)).into_iter().collect();
    let told = leaf_told(job, gate.hung, openings);
    match worked(&told) {
        Err(Unfit::TooWide { leaf, most, by }) => Some(Line::new(Role::Answer, too_wide(&leaf, &most, &by))),
        _ => None,
    }
}

fn wrong_side(run: &Run, gate: Gate) -> Option<Line> {
    let house = |jamb: Option<Jamb>| jamb == Some(Jamb::House);
    let told = if house(gate.hung.hinge) { "hinged" } else { "latched" };
    let asked = house(gate.hung.hinge) || house(gate.hung.latch);
    let wall = [run.from, run.to].contains(&Some(End::House));
    let end = |e: Option<End>| w(e.map_or("an end not told", End::name));
    (asked && !wall).then(|| {
        Line::new(
            Role::Answer,
            [
                w("Run "),
                ft(&Fig::count(u64::from(run.id.0), Why::Told("the run's number"))),
                w(" goes from "),
                end(run.from),
                w(" to "),
                end(run.to),
                w(", with no end at the house, and its gate is told "),
                w(told),
                w(" on the house side. Which one holds?"),
            ],
        )
    })
}

/// "pool gate".
pub fn pool(known: &Known) -> Answer {
    let here = known.here();
    let level = known.level();
    let barrier = Barrier { top: inches(&level), ..Barrier::made_of(known.job) };
    let broken = breaches(&barrier, here);
    let mut lines = vec![answer([
        w("It closes and latches by itself, opens away from the pool, can be locked, and its top is at least "),
        limit(here, &limits::POOL_TOP),
        w(" up on the outside."),
    ])];
    if broken.contains(&&limits::POOL_TOP) {
        lines.push(caution([
            w("Check: a "),
            inch(&level),
            w(" guard is not the "),
            limit(here, &limits::POOL_TOP),
            w(" a pool barrier needs ("),
            w(limits::POOL_TOP.source),
            w(")."),
        ]));
    }
    let under = barrier.under.filter(|_| broken.contains(&&limits::POOL_GAP_DECK));
    lines.extend(under.map(|l| breaks(here, &Fig::told(l, "the gap under"), &limits::POOL_GAP_DECK)));
    lines.extend(rails_apart(&barrier, here));
    let rows =
        [&limits::POOL_GATE, &limits::POOL_LATCH, &limits::POOL_RAILS_APART, &limits::POOL_GAP_DECK, &limits::POOL_TOP];
    lines.extend(rows.into_iter().map(|l| by(here, l)));
    lines.push(mind(&limits::POOL_TOP));
    lines.push(decides());
    Ok((
        reply(lines),
        vec![("barrier's top", in_force(here, &limits::POOL_TOP)), ("latch", in_force(here, &limits::POOL_LATCH))],
    ))
}

/// How far apart the rails' tops are, and the gap that leaves; where they are too close, how high the
/// top would have to be for the plain gap.
fn rails_apart(barrier: &Barrier, here: &Settings) -> Option<Line> {
    let apart = barrier.rails_apart()?;
    let rail = Fig::told(barrier.bottom_rail_top?, "the gap under the bottom rail and its depth");
    let mut spans = vec![w("The rails' tops are "), inch(&apart), w(" apart: ")];
    if barrier.is_tight(here) {
        spans.extend([w("gaps are no more than "), limit(here, &limits::POOL_TIGHT_GAP)]);
        spans.extend([
            w("; with the top at "),
            inch(&top_for_plain_gap(&rail, barrier.cap, here)),
            w(" they may be the plain ones."),
        ]);
    } else {
        spans.extend([w("gaps stay under "), limit(here, &limits::LEVEL_GAP), w(" as on any guard.")]);
    }
    Some(detail(spans))
}
