//! How long posts are cut, and how tall the notch is.

use super::say::{answer, detail, fig, say};
use super::{Answered, taken};
use crate::grammar::ask::Whose;
use crate::job::Job;
use crate::notch::Stack;
use crate::quantity::RowId;
use crate::reply::{NotchFig, Reply, Role, Span, Status};
use crate::solve::default_of;

/// The piece to cut; until the rim is told, what of it stands above the decking.
pub(super) fn length(job: &Job, _: Whose) -> Answered {
    let stack = Stack::of(&job.settings);
    let Some(total) = stack.total.clone() else { return up_to(job, &stack, true) };
    let mut reply = Reply::of(Status::Answered);
    let mut spans = vec![fig(&total), Span::Say(" of post: "), fig(&stack.shoulder), Span::Say(" above the decking")];
    if let Some(leg) = &stack.leg {
        spans.extend([Span::Say(" and "), fig(leg), Span::Say(" below it, past the decking and the rim.")]);
    } else {
        spans.push(Span::Say(", standing on it."));
    }
    reply.lines.push(answer(spans));
    rest(job, &stack, &mut reply);
    reply.values.result = Some(total.clone());
    (reply, vec![("the post", total), ("above the decking", stack.shoulder)])
}

/// How much of a post stands above the decking.
pub(super) fn above(job: &Job, _: Whose) -> Answered {
    let stack = Stack::of(&job.settings);
    up_to(job, &stack, false)
}

fn up_to(job: &Job, stack: &Stack, whole: bool) -> Answered {
    let mut reply = Reply::of(Status::Answered);
    let tail = if whole {
        " above the decking, to the shoulder; the leg below comes on top of that."
    } else {
        " above the decking."
    };
    reply.lines.push(answer(vec![fig(&stack.shoulder), Span::Say(tail)]));
    if whole {
        reply
            .lines
            .push(say(Role::Detail, "Still to tell for the whole length: the rim's size (say: the rim is a 2x10)."));
    }
    rest(job, stack, &mut reply);
    reply.values.result = Some(stack.shoulder.clone());
    (reply, vec![("above the decking", stack.shoulder.clone())])
}

fn rest(job: &Job, stack: &Stack, reply: &mut Reply) {
    if job.told(RowId::HeightTop).is_none() {
        let spans = [
            Span::Say("Taken: "),
            fig(&stack.height),
            Span::Say(" to the top of the rail, the least a required guard may be."),
        ];
        reply.lines.push(detail(spans.into()));
    }
    if job.told(RowId::Cap).is_none() && job.told(RowId::Above).is_none() {
        reply.lines.extend(taken(&[&default_of(job, &crate::limits::POST_TOP)]));
    }
    if stack.leg.is_some() {
        reply.lines.extend(taken(&[&stack.decking]));
    }
    reply.lines.push(say(
        Role::Detail,
        "Leave a little over and trim the tops to one line once they stand, unless the shoulder sets them.",
    ));
    reply.values.notches.push(NotchFig {
        post: post_name(job),
        posts: Vec::new(),
        shape: "",
        off: None,
        depths: Vec::new(),
        left: None,
        areas: None,
        shoulder: Some(stack.shoulder.clone()),
        leg: stack.leg.clone(),
        total: stack.total.clone(),
        levels: Vec::new(),
    });
}

fn post_name(job: &Job) -> String {
    let width = crate::layout::post_width(&job.settings, &[crate::job::PostRole::Line]).as_length();
    width.map_or(String::new(), |w| super::say::name_of(crate::notch::Size::square(w)))
}

/// How tall the notch is: the decking and the rim.
pub(super) fn tall(job: &Job) -> Answered {
    let stack = Stack::of(&job.settings);
    let Some(tall) = stack.notch_tall() else {
        return super::asks(
            "How tall is the rim? Say its size: the rim is a 2x10. The notch is the decking and the rim, flush at the bottom.",
        );
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(answer(vec![
        fig(&tall),
        Span::Say(" tall, flush with the rim's bottom: decking "),
        fig(&stack.decking),
        Span::Say(" and rim."),
    ]));
    let past = stack.leg.as_ref().filter(|leg| leg.as_length() > tall.as_length());
    if let Some(leg) = past {
        reply.lines.push(detail(vec![
            Span::Say("The leg goes on to "),
            fig(leg),
            Span::Say(", to keep its end off the lower bolt."),
        ]));
    }
    reply.lines.extend(taken(&[&stack.decking]));
    reply.values.result = Some(tall.clone());
    (reply, vec![("notch height", tall)])
}
