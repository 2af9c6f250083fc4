//! The parts, and every cut to be read at the saw.

use super::words::{bevel, bevels, count, cut, detail, fig, lacks, not_in_this, number, places};
use crate::figure::Fig;
use crate::job::{CapTold, Job, LongPart, Member};
use crate::layout::Layout;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::reply::{Line, PartFig, Reply, Role, Span, Status};
use crate::solve::order;
use crate::takeoff::{Part, Parts, What};

/// Every part, with its size, cut length and count.
pub fn parts(job: &Job, _: &Layout, parts: &Parts) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    let mut first = Vec::new();
    for (k, (what, n)) in totals(parts).into_iter().enumerate() {
        first.extend((k > 0).then_some(Span::Say(", ")));
        first.extend([number(u64::from(n)), Span::Say(" "), Span::Say(what.name(n > 1))]);
    }
    reply.lines.push(Line::new(Role::Answer, first.into_iter().chain([Span::Say(".")])));
    reply.lines.extend(parts.list.iter().filter(|p| is_lumber(p)).map(line));
    reply.lines.extend(hardware(parts));
    reply.lines.extend(taken(job, parts));
    reply.lines.extend(lacks(&parts.lacks));
    reply.values.takeoff.parts = parts.list.iter().map(figure).collect();
    rails_and_lengths(&mut reply, parts);
    reply
}

fn is_lumber(part: &Part) -> bool {
    part.what <= What::Block
}

/// Lumber by kind, all lengths together.
fn totals(parts: &Parts) -> Vec<(What, u32)> {
    let mut all: Vec<(What, u32)> = Vec::new();
    for part in parts.list.iter().filter(|p| is_lumber(p)) {
        match all.iter_mut().find(|(what, _)| *what == part.what) {
            Some((_, n)) => *n += part.count,
            None => all.push((part.what, part.count)),
        }
    }
    all
}

/// "8 top rails, 2x4, cut 4'-11 5/16": run 1 bays 1 to 4".
fn line(part: &Part) -> Line {
    let mut spans = vec![number(u64::from(part.count)), Span::Say(" "), Span::Say(part.what.name(part.count > 1))];
    spans.extend(part.size.into_iter().flat_map(|s| [Span::Say(", "), Span::Phrase(s.to_string())]));
    match part.cut {
        Some(l) => spans.extend([Span::Say(", cut "), fig(&cut(l))]),
        None => spans.push(Span::Say(", length still to tell")),
    }
    spans.extend(bevels(&part.bevels));
    if !part.at.is_empty() {
        spans.extend([Span::Say(": "), Span::Phrase(places(&part.at))]);
    }
    detail(spans)
}

/// Hardware and what else goes on the order.
pub fn hardware(parts: &Parts) -> Option<Line> {
    let mut spans = vec![Span::Say("Also: ")];
    for part in parts.list.iter().filter(|p| !is_lumber(p)) {
        spans.extend((spans.len() > 1).then_some(Span::Say(", ")));
        let counted = part.what != What::Preservative;
        spans.extend(counted.then(|| number(u64::from(part.count))));
        spans.extend(counted.then_some(Span::Say(" ")));
        spans.push(Span::Say(part.what.name(part.count > 1)));
    }
    spans.push(Span::Say("."));
    (spans.len() > 2).then(|| detail(spans))
}

/// Sizes nobody told.
pub fn taken(job: &Job, parts: &Parts) -> Vec<Line> {
    let rails = [What::TopRail, What::BottomRail].iter().any(|w| parts.list.iter().any(|p| p.what == *w));
    let untold = [Member::Top, Member::Bottom].iter().any(|m| order::member(job, *m).is_none());
    let mut lines = Vec::new();
    if rails && untold {
        lines.push(Line::say(
            Role::Detail,
            "Rails not told are taken as 2x4s, one top and one bottom in every bay (AWC DCA 6, from memory, not checked).",
        ));
    }
    if rails {
        lines.push(Line::say(
            Role::Detail,
            "Rails are cut to fit between the posts; run over the posts' faces they are longer.",
        ));
    }
    if order::member(job, Member::Cap).is_none() {
        let says = match job.cap() {
            CapTold::Thick(_) => "The cap is not in this: only how thick it is was told. Say its size, \"2x6 cap\".",
            CapTold::None | CapTold::Untold => "No cap is in this: say \"2x6 cap\" for one, or \"no cap\".",
        };
        lines.push(Line::say(Role::Detail, says));
    }
    if parts.no_cap_stick.is_some() {
        lines.push(Line::say(Role::Detail, "The cap is not in this: a bay is longer than any stick it is sold in."));
    }
    let down =
        parts.list.iter().any(|p| matches!(p.what, What::StairPost | What::StairTopRail | What::StairBottomRail));
    if down {
        let says = if job.runs.is_empty() {
            "Down the stairs: rails tip to tip, both ends plumb-cut; posts each of its own length (\"stair post heights\"); no handrail and no hardware."
        } else {
            "Down the stairs: rails tip to tip, both ends plumb-cut; posts each of its own length (\"stair post heights\"); the top posts are the level guard's; no handrail and no hardware."
        };
        lines.push(Line::say(Role::Detail, says));
    }
    if parts.list.iter().any(|p| p.what == What::GateBaluster) {
        let says = "Of a gate only its balusters are counted, between stiles taken as 2x4s on the flat: its frame, brace, hinges and latch are not.";
        lines.push(Line::say(Role::Detail, says));
        let two = job.runs.iter().any(|r| r.gate.is_some_and(|g| g.hung.leaves == Some(2)));
        let says = "Two leaves are taken as hinged on both jambs, the latch's gap between them.";
        lines.extend(two.then(|| Line::say(Role::Detail, says)));
    }
    if parts.list.iter().any(|p| p.what == What::Post && p.cut.is_some()) && order::cut(job, LongPart::Post).is_none() {
        let says =
            "The posts' length is worked out from the height, the decking and the rim (\"how long are the posts\").";
        lines.push(Line::say(Role::Detail, says));
    }
    if job.told(crate::quantity::RowId::Spares).is_none() && parts.list.iter().any(|p| p.what == What::Baluster) {
        lines.push(Line::say(
            Role::Detail,
            "No spares are in this: two or three balusters more are usual (common practice).",
        ));
    }
    lines
}

fn figure(part: &Part) -> PartFig {
    PartFig {
        part: part.what.name(false),
        stock: part.size.map(|s| s.to_string()),
        cut: part.cut.map(cut),
        bevels: part.bevels.iter().flatten().map(bevel).collect(),
        count: count(u64::from(part.count)),
        at: part.at.iter().map(|w| w.label()).collect(),
    }
}

/// The cut lengths by the names of the contract.
pub fn rails_and_lengths(reply: &mut Reply, parts: &Parts) {
    let of = |what: What| parts.list.iter().filter(move |p| p.what == what).filter_map(|p| p.cut);
    let mut rails: Vec<Length> = of(What::TopRail).chain(of(What::BottomRail)).collect();
    rails.sort_by(|a, b| b.cmp(a));
    rails.dedup();
    reply.values.takeoff.rails = rails.iter().map(|l| cut(*l)).collect();
    let one = |name, lengths: Vec<Length>| match lengths.as_slice() {
        [first, rest @ ..] if rest.iter().all(|l| l == first) => Some((name, cut(*first))),
        _ => None,
    };
    reply.values.more.extend(one("rail_length", rails));
    reply.values.more.extend(one("post_length", of(What::Post).collect()));
    reply.values.more.extend(one("baluster_length", of(What::Baluster).collect()));
}

/// Every cut, grouped by size, the longest first.
pub fn cuts(job: &Job, _: &Layout, parts: &Parts) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    let cut_parts = || parts.list.iter().filter(|p| p.cut.is_some());
    let mut sizes: Vec<Option<Lumber>> = Vec::new();
    cut_parts().for_each(|p| {
        if !sizes.contains(&p.size) {
            sizes.push(p.size)
        }
    });
    let pieces: u32 = cut_parts().map(|p| p.count).sum();
    if pieces == 0 {
        let mut reply = Reply::of(Status::Asks);
        reply.lines.push(Line::say(Role::Question, "Nothing can be cut yet."));
        reply.lines.extend(lacks(&parts.lacks));
        return reply;
    }
    let says = if pieces == 1 { " piece to cut." } else { " pieces to cut, longest first." };
    reply.lines.push(Line::new(Role::Answer, [number(u64::from(pieces)), Span::Say(says)]));
    for size in sizes {
        let name = size.map_or("as told".to_owned(), |s| s.to_string());
        reply.lines.push(detail(vec![Span::Phrase(name), Span::Say(":")]));
        let mut own: Vec<&Part> = cut_parts().filter(|p| p.size == size).collect();
        own.sort_by_key(|p| std::cmp::Reverse(p.cut));
        reply.lines.extend(own.into_iter().map(cut_line));
    }
    reply.lines.extend(not_in_this(parts));
    reply.lines.extend(taken(job, parts));
    reply.lines.extend(lacks(&parts.lacks));
    reply.lines.push(Line::say(
        Role::Detail,
        "Measure each bay at the posts' feet before you cut its rails: cut both to that, then pull the post tops to them (common practice).",
    ));
    reply.lines.push(Line::new(Role::Detail, [Span::Say(limits::FIELD_TREATMENT.says), Span::Say(".")]));
    reply.values.takeoff.parts = cut_parts().map(figure).collect();
    rails_and_lengths(&mut reply, parts);
    reply
}

/// "  4 at 4'-11 5/16", top rail: run 1 bays 1 to 4".
fn cut_line(part: &Part) -> Line {
    let length: Fig = cut(part.cut.unwrap_or(Length::ZERO));
    let mut spans = vec![Span::Say("  "), number(u64::from(part.count)), Span::Say(" at "), fig(&length)];
    spans.extend(bevels(&part.bevels));
    spans.extend([Span::Say(", "), Span::Say(part.what.name(part.count > 1))]);
    if !part.at.is_empty() {
        spans.extend([Span::Say(": "), Span::Phrase(places(&part.at))]);
    }
    detail(spans)
}
