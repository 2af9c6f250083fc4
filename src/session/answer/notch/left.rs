//! What a notch of a told depth leaves of a post, and whether a post may be notched.

use super::judge::{judged, lines};
use super::say::{answer, barred, fig, finding, is_four, name_of, not_barred, overlaid, ways_out};
use super::{Answered, asks, one};
use crate::figure::{Fig, Why};
use crate::job::{Anyway, Job, PostRole, PostSize};
use crate::layout::post_width;
use crate::measure::{Length, Lumber};
use crate::notch::Size;
use crate::quantity::RowId;
use crate::reply::{Line, NotchFig, Reply, Role, Span, Status};
use crate::solve::{Source, choice};
use crate::strength::section::Push;

/// The post's width across the notch.
fn width_of(job: &Job, post: Option<PostSize>) -> Option<Fig> {
    match post {
        None => Some(post_width(&job.settings, &[PostRole::Line])),
        Some(PostSize::Width(w)) => Some(Fig::told(w, "the post's width")),
        Some(PostSize::Lumber(l)) => {
            l.dressed().map(|(_, wide)| Fig::length(wide, Why::Table("dressed dry width of the post told", l.table())))
        }
    }
}

/// A notch told for the job's posts: what it leaves of the smallest of them.
pub(super) fn told(job: &Job, deep: Length) -> Answered {
    let sleeve = choice::notched_anyway(job) == Some(Anyway::Sleeve);
    let (mut reply, figs) = left(job, deep, None);
    if sleeve {
        reply.findings.clear();
    }
    (reply, figs)
}

/// A refusal, where the notch told takes all of posts whose size is told.
pub(in crate::session) fn leaves_nothing(job: &Job) -> Option<Reply> {
    let deep = Source::told(job, RowId::NotchDepth)?.as_length()?;
    let width = Source::told(job, RowId::PostWidth)?.as_length()?;
    (deep >= width).then(|| {
        let (reply, _) = left(job, deep, None);
        let nothing = Line::say(Role::Detail, "Nothing was changed.");
        let lines = reply.lines.into_iter().chain([nothing]).collect();
        Reply { status: Status::Refused, lines, ..reply }
    })
}

/// What is left, beside the rule.
pub(super) fn left(job: &Job, deep: Length, post: Option<PostSize>) -> Answered {
    let Some(width) = width_of(job, post) else { return asks("What size is the post?") };
    let (w, told) = (width.as_length().unwrap_or(Length::ZERO), Fig::told(deep, "the notch"));
    if deep >= w {
        let spans = vec![
            Span::Say("Nothing would be left: a notch of "),
            fig(&told),
            Span::Say(" in a post of "),
            fig(&width),
            Span::Say("."),
        ];
        let (mut reply, figs) = one(spans, vec![("the post", width)]);
        reply.findings.push(finding(w));
        return (reply, figs);
    }
    let stays = crate::strength::left_by(&told, &width);
    let spans =
        vec![fig(&stays), Span::Say(" is left of "), fig(&width), Span::Say(" with "), fig(&told), Span::Say(" off.")];
    let (mut reply, figs) = one(spans, vec![("left of the post", stays.clone()), ("the post", width.clone())]);
    let along = along_of(post, w);
    let least = along.min(w);
    reply.lines.insert(0, if is_four(least) { barred() } else { not_barred() });
    reply.findings.push(finding(least));
    let size = Size { along, across: w };
    let (x, y) = (along / 2, w / 2);
    let ring = [(-x, -y + deep), (x, -y + deep), (x, y), (-x, y)];
    reply.lines.extend(lines(&judged(job, size, &ring, Push::Free, &width)));
    reply.lines.extend(ways_out());
    let deep = overlaid(deep, vec![("notch", told.clone())]);
    reply.values.result = Some(stays.clone());
    reply.values.left = Some(stays.clone());
    reply.values.notches.push(NotchFig {
        post: post.map_or_else(|| name_of(Size::square(w)), size_name),
        posts: Vec::new(),
        shape: "straight",
        off: Some(told),
        depths: vec![("across", deep)],
        left: Some(stays),
        areas: None,
        shoulder: None,
        leg: None,
        total: None,
        levels: Vec::new(),
    });
    (reply, figs)
}

fn size_name(post: PostSize) -> String {
    match post {
        PostSize::Lumber(l) => l.to_string(),
        PostSize::Width(w) => name_of(Size::square(w)),
    }
}

/// The post's other dimension.
fn along_of(post: Option<PostSize>, width: Length) -> Length {
    match post {
        Some(PostSize::Lumber(l)) => l.dressed().map_or(width, |(thick, _)| thick),
        _ => width,
    }
}

/// Whether a post of that size may be notched.
pub(super) fn may(job: &Job, lumber: Lumber) -> Answered {
    let Some((thick, wide)) = lumber.dressed() else {
        return asks("That is not a size of lumber I know. What size is the post?");
    };
    let barred_by_name = is_four(thick);
    let size = Span::Phrase(lumber.to_string());
    let spans = match barred_by_name {
        true => vec![Span::Say("No: a "), size, Span::Say(" guard post is not notched where it connects to the deck.")],
        false => vec![
            Span::Say("A notch in a "),
            size,
            Span::Say(" is not barred by name, but that is no yes: it must be shown to carry the load."),
        ],
    };
    let (mut reply, figs) = one(spans, Vec::new());
    reply.lines.push(if barred_by_name { barred() } else { not_barred() });
    reply.findings.push(finding(thick));
    // What half of it would leave, as an order of size.
    let width = Fig::length(wide, Why::Table("dressed dry width of the post told", lumber.table()));
    let (x, y) = (thick / 2, wide / 2);
    let half = [(-x, Length::ZERO), (x, Length::ZERO), (x, y), (-x, y)];
    reply.lines.push(answer(vec![Span::Say("Half of it off, as on a straight edge, would be:")]));
    reply.lines.extend(lines(&judged(job, Size { along: thick, across: wide }, &half, Push::Free, &width)));
    reply.lines.extend(ways_out());
    (reply, figs)
}
