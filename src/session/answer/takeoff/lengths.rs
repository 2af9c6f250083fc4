//! How long one kind of part is cut.

use super::super::Figs;
use super::words::{cut, detail, fig, lacks, not_laid_out, number, places};
use crate::figure::{Fig, Why};
use crate::job::{BalustersAt, Job, LongPart};
use crate::layout::Layout;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::takeoff::{Lack, What, baluster_length, post_length, stack};

/// How long balusters or posts are cut.
pub fn of_part(job: &Job, layout: &Layout, part: LongPart) -> (Reply, Figs) {
    match (part, crate::solve::order::cut(job, part)) {
        (_, Some(told)) => {
            let f = Fig::told(told, "the cut length");
            let name = if part == LongPart::Post { "post_length" } else { "baluster_length" };
            answered(name, f, " as told.", Vec::new())
        }
        (LongPart::Baluster, None) => balusters(job),
        (LongPart::Post, None) => {
            let _ = layout;
            match post_length(job) {
                Some(l) => {
                    let why = Why::Formula("to the shoulder, and the leg past decking and rim", Vec::new());
                    answered("post_length", Fig::length(l, why), ", as their feet ask.", Vec::new())
                }
                None => (asks(&[Lack::PostLength], "How long the posts are cut depends on their feet."), Vec::new()),
            }
        }
    }
}

fn balusters(job: &Job) -> (Reply, Figs) {
    let (stack, length) = match (stack(job), baluster_length(job)) {
        (Ok(stack), Ok(Some(length))) => (stack, length),
        (Ok(_), _) => {
            return (super::words::refused("The rails leave no room for balusters at that height."), Vec::new());
        }
        (Err(lacking), _) => return (asks(&lacking, "The balusters' length can't be told yet."), Vec::new()),
    };
    let (s, at) = stack;
    let told = |l, what| Fig::told(l, what);
    let mut inputs = vec![
        ("height", told(s.height, "the height")),
        ("gap under", told(s.gap_under, "the gap under")),
        ("cap", told(s.cap, "the cap")),
    ];
    let (formula, says) = match at {
        BalustersAt::Between => {
            inputs.extend([
                ("top rail", told(s.top, "the top rail")),
                ("bottom rail", told(s.bottom, "the bottom rail")),
            ]);
            (
                "height - gap under - cap - top rail - bottom rail",
                ", between the rails: the height less the cap, both rails and the gap under.",
            )
        }
        BalustersAt::Faces => (
            "height - gap under - cap",
            ", on the rails' faces: from the top rail's top to the bottom rail's underside.",
        ),
    };
    let f = Fig::length(length, Why::Formula(formula, inputs));
    answered(
        "baluster_length",
        f,
        says,
        vec![Line::say(Role::Detail, "Cut one and try it at both ends of a bay before the rest.")],
    )
}

fn answered(name: &'static str, f: Fig, says: &'static str, more: Vec<Line>) -> (Reply, Figs) {
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, [Span::Fig(f.clone(), Style::Full), Span::Say(says)]));
    reply.lines.extend(more);
    reply.values.result = Some(f.clone());
    reply.values.more = vec![(name, f.clone())];
    (reply, vec![("cut length", f)])
}

fn asks(lacking: &[Lack], says: &'static str) -> Reply {
    let mut reply = Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    reply.lines.extend(lacks(lacking));
    reply
}

/// How long rails are cut, bay by bay.
pub fn of_rails(job: &Job, layout: &Layout) -> (Reply, Figs) {
    let parts = match crate::takeoff::parts(job, layout, |_| None) {
        Ok(parts) => parts,
        Err(cannot) => return (super::words::cannot_fill(&cannot), Vec::new()),
    };
    let rails: Vec<_> = parts.list.iter().filter(|p| p.what == What::TopRail && p.cut.is_some()).collect();
    let mut reply = Reply::of(if rails.is_empty() { Status::Asks } else { Status::Answered });
    if rails.is_empty() {
        reply.lines.push(Line::say(Role::Question, "No bay has been told yet: rails for what?"));
    }
    for (k, rail) in rails.iter().enumerate() {
        let role = if k == 0 { Role::Answer } else { Role::Detail };
        let length = cut(rail.cut.unwrap_or(crate::measure::Length::ZERO));
        let mut spans = vec![fig(&length)];
        spans.extend(super::words::bevels(&rail.bevels));
        spans.extend([Span::Say(", top and bottom: "), Span::Phrase(places(&rail.at))]);
        spans.extend([Span::Say(" ("), number(u64::from(rail.count)), Span::Say(" of each).")]);
        reply.lines.push(Line::new(role, spans));
    }
    if job.told(crate::quantity::RowId::Bracket).is_none() && !rails.is_empty() {
        reply.lines.push(detail(vec![Span::Say(
            "Tight between the posts: say what the brackets take at each end, if there are any.",
        )]));
    }
    not_laid_out(layout, &mut reply.lines);
    super::lists::rails_and_lengths(&mut reply, &parts);
    (reply, Vec::new())
}
