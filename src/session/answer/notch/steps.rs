//! How a foot is cut, step by step, with the cautions where they bite.

use super::say::{answer, detail, fig, number, say};
use super::{Answered, cut, taken};
use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::measure::Length;
use crate::notch::{Feet, Post, Saw, Shape, Stack};
use crate::reply::{Line, Reply, Role, Span};

/// The cut and its marks, then the steps.
pub(super) fn steps(job: &Job, feet: &Feet, posts: &[&Post]) -> Answered {
    let (mut reply, figs) = cut::cut(job, feet, posts);
    // The rule and what comes off stand first, then the steps, then what they rest on.
    let (first, rest): (Vec<Line>, Vec<Line>) = reply.lines.into_iter().partition(|l| l.role == Role::Answer);
    reply.lines = first;
    steps_of(job, posts, &mut reply);
    reply.lines.extend(rest);
    (reply, figs)
}

fn steps_of(job: &Job, posts: &[&Post], reply: &mut Reply) {
    let stack = Stack::of(&job.settings);
    let Some(saw) = Saw::of(&job.settings) else {
        reply.lines.push(say(Role::Detail, "A blade that small does not cut a post: say which saw you have."));
        return;
    };
    let deepest = posts
        .iter()
        .filter_map(|p| p.foot.as_ref().ok())
        .filter_map(|f| deepest(&f.lower.shape, f.lower.size.across, f.lower.size.along))
        .max();
    let Some((deep, wide)) = deepest else { return };
    let deep = Fig::length(deep, Why::Formula("the deepest cut of these feet", Vec::new()));
    for (k, line) in numbered(&saw, &stack, &deep, wide).into_iter().enumerate() {
        let mut spans = vec![number(k + 1, "the step's number"), Span::Say(". ")];
        spans.extend(line);
        reply.lines.push(detail(spans));
    }
    reply.lines.extend(cautions());
    reply.lines.extend(taken(&[&saw.blade]));
}

/// The deepest a cut of that shape goes, and how wide the face is it goes along.
fn deepest(shape: &Shape, across: Length, along: Length) -> Option<(Length, Length)> {
    match *shape {
        Shape::Straight { deep } => Some((deep, along)),
        Shape::Side { deep, .. } => Some((deep, across)),
        Shape::Corner { along, deep, .. } => Some((along.max(deep), along.max(deep))),
        Shape::AllButCorner { along: a, across: b, .. } => Some(((along - a).max(across - b), along)),
        Shape::Clear | Shape::Whole | Shape::Other => None,
    }
}

/// The steps, each in its words.
fn numbered(saw: &Saw, stack: &Stack, deep: &Fig, wide: Length) -> Vec<Vec<Span>> {
    let deep_by = deep.as_length().unwrap_or(Length::ZERO);
    let mut steps = vec![
        mark(stack),
        vec![Span::Say(
            "Write waste on the waste, and which face looks to the deck, on every post before the first cut. Crown out, straightest posts to corners and gate.",
        )],
        vec![Span::Say(
            "Clamp a stop block so that the blade stops at the shoulder line, on the waste side; cut one foot in scrap first and try it on the deck.",
        )],
    ];
    let shoulder = match saw.cuts(deep_by) {
        true => vec![
            Span::Say("Cut the shoulder across the grain, "),
            fig(deep),
            Span::Say(" deep, from each face that is notched."),
        ],
        false => vec![
            Span::Say("The shoulder is "),
            fig(deep),
            Span::Say(" deep and the blade reaches "),
            fig(&saw.reach),
            Span::Say(": cut as deep as it goes and finish with a hand saw."),
        ],
    };
    steps.push(shoulder);
    steps.push(rip(saw, wide));
    let web = saw.web(deep).map(|web| {
        vec![
            Span::Say(
                "Stop the rip where the blade's top touches the shoulder line: a round blade leaves a web about ",
            ),
            fig(&web),
            Span::Say(" long at the bottom of the cut. Finish it with a hand saw; never plunge on to save it."),
        ]
    });
    steps.extend(web);
    steps.push(vec![Span::Say(
        "Pare the inside corner clean and square with a chisel, no deeper than the lines: an overcut starts the split.",
    )]);
    steps.push(vec![Span::Say("Try it on: it fits snug and is trimmed down to fit, never shimmed. Brush preservative on every cut, notch and hole (AWPA M4).")]);
    steps
}

fn mark(stack: &Stack) -> Vec<Span> {
    let mut spans = vec![
        Span::Say("Mark the shoulder "),
        fig(&stack.shoulder),
        Span::Say(" from the post's top, square round all faces"),
    ];
    if let Some(leg) = &stack.leg {
        spans.extend([Span::Say("; the foot's end "), fig(leg), Span::Say(" below it")]);
    }
    spans.push(Span::Say("; then the depth lines from the deck-side face."));
    spans
}

/// The long cut down the leg, from one face or from both.
fn rip(saw: &Saw, wide: Length) -> Vec<Span> {
    let face = Fig::length(wide, Why::Formula("the face the long cut goes through", Vec::new()));
    match (saw.cuts(wide), saw.cuts(wide / 2)) {
        (true, _) => vec![
            Span::Say("Rip down to the shoulder from the foot's end, "),
            fig(&face),
            Span::Say(" through in one pass."),
        ],
        (false, true) => vec![
            Span::Say("Rip from the foot's end up to the shoulder: the blade reaches "),
            fig(&saw.reach),
            Span::Say(" and the post is "),
            fig(&face),
            Span::Say(" through, so half from one face, half from the other."),
        ],
        (false, false) => vec![
            Span::Say("The blade reaches "),
            fig(&saw.reach),
            Span::Say(" and the post is "),
            fig(&face),
            Span::Say(" through: it cannot meet in the middle. Finish with a hand saw, or use a bigger blade."),
        ],
    }
}

fn cautions() -> Vec<Line> {
    [
        "Never cut a notch free-hand on a mitre saw: the work is not held against the fence and kicks.",
        "Small waste flies: let the blade stop before you reach for it. Guard down, eyes and ears covered, a dust mask, gloves off near the blade.",
        "Treated dust: cut outdoors, wash before you eat, never burn the waste. At the open edge, work tied back or behind a barrier.",
    ]
    .into_iter()
    .map(|words| say(Role::Detail, words))
    .chain([answer(vec![Span::Say("Check the first one on the deck before you cut the batch.")])].into_iter().map(|mut l| {
        l.role = Role::Detail;
        l
    }))
    .collect()
}
