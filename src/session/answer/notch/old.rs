//! Posts notched long ago, and loose or failed.

use super::Answered;
use super::say::{barred, detail, finding, is_four, not_barred, say, ways_out};
use crate::measure::{Length, Lumber};
use crate::reply::{Reply, Role, Span, Status};

/// What to look at, and what to do.
pub(super) fn old(lumber: Option<Lumber>) -> Answered {
    let mut reply = Reply::of(Status::Answered);
    let width = lumber.and_then(Lumber::dressed).map_or(Length::inches(3), |(thick, _)| thick);
    reply.lines.push(say(
        Role::Answer,
        "Do not lean on them: a loose notched post is to be replaced or repaired, not tightened and trusted.",
    ));
    reply.lines.push(if is_four(width) { barred() } else { not_barred() });
    reply.findings.push(finding(width));
    for words in [
        "Check first, with a screwdriver and a push: a split up from the notch's corner; soft wood at the shoulder, the bolt holes and the end; bolts that spin, rust or are lags; a rim that rolls when the post is pushed.",
        "Split or soft: replace the post. Sound: the wobble is in the bolts, the rim or the joists behind it; block it and put the upper bolt into listed hardware back to a joist.",
        "Whether older work may stay is for the building department where you are; new posts follow the code in force.",
    ] {
        reply.lines.push(say(Role::Detail, words));
    }
    if let Some(l) = lumber {
        reply.lines.push(detail(vec![Span::Say("For the "), Span::Phrase(l.to_string()), Span::Say(" posts:")]));
    }
    reply.lines.extend(ways_out());
    (reply, Vec::new())
}
