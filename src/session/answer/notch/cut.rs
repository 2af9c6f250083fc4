//! What comes off each foot, where it is marked, which posts are the same cut, and drawings.

use super::judge;
use super::say::{
    answer, barred, detail, fig, finding, is_four, kinds, name_of, not_barred, number, numbered, overlaid, say,
    ways_out,
};
use super::{Answered, taken};
use crate::figure::{Fig, Unit, Why};
use crate::job::{Anyway, Job};
use crate::measure::Length;
use crate::notch::{
    Batch, Cut, Depths, Face, Fault, Feet, Foot, Hand, Level, Post, Shape, Stack, batches, draw_faces, draw_foot,
    telling,
};
use crate::reply::{LevelFig, Line, NotchFig, Reply, Role, Span, Status, tape_of};
use crate::solve::choice;

/// The posts asked about, batch by batch of one cut.
fn asked<'a>(feet: &'a Feet, posts: &[&'a Post]) -> Vec<(Batch, Vec<&'a Post>)> {
    let of = |b: Batch| {
        let all: Vec<&Post> =
            b.posts.iter().map(|k| &feet.posts[*k]).filter(|p| posts.iter().any(|q| q.number == p.number)).collect();
        (b, all)
    };
    batches(feet).into_iter().map(of).filter(|(_, all)| !all.is_empty()).collect()
}

/// What comes off, where it is marked, what is left, and what the rule says of it.
pub(super) fn cut(job: &Job, feet: &Feet, posts: &[&Post]) -> Answered {
    let mut reply = Reply::of(Status::Answered);
    let groups = asked(feet, posts);
    let sleeve = choice::notched_anyway(job) == Some(Anyway::Sleeve);
    head(&mut reply, posts, sleeve);
    let stack = Stack::of(&job.settings);
    let mut figs = Vec::new();
    for (_, group) in &groups {
        let Ok(foot) = &group[0].foot else { continue };
        let entry = notch_fig(foot, group, &stack, feet);
        reply.lines.push(answer(headline(group, foot, &entry)));
        reply.lines.extend(marks(foot));
        if !sleeve {
            reply.lines.extend(judge::lines(&judge::of_cut(job, foot.weakest(), &group[0].width)));
        }
        figs.extend(entry.off.clone().map(|f| ("notch", f)));
        figs.extend(entry.left.clone().map(|f| ("left of the post", f)));
        reply.values.notches.push(entry);
    }
    reply.lines.extend(faults(posts));
    reply.lines.extend(shoulder(&stack));
    if !sleeve && cuts_any(posts) {
        reply.lines.extend(ways_out());
    }
    if posts.iter().any(|p| p.turn % 90 != 0) && choice::turned(job).is_none() {
        let says =
            "Taken: a post at an angled corner square to the side it is counted on (say: angled posts split the turn).";
        reply.lines.push(say(Role::Detail, says));
    }
    let line: Vec<&Fig> = feet.line.iter().chain([&feet.overhang, &stack.decking]).collect();
    reply.lines.extend(taken(&line));
    reply.values.result = reply.values.notches.first().and_then(|n| n.off.clone());
    if reply.values.notches.is_empty() {
        reply.status = Status::Refused;
    }
    (reply, figs)
}

fn cuts_any(posts: &[&Post]) -> bool {
    posts.iter().any(|p| p.foot.as_ref().is_ok_and(|f| !matches!(f.lower.shape, Shape::Clear | Shape::Whole)))
}

/// The rule, at the top, where it applies.
fn head(reply: &mut Reply, posts: &[&Post], sleeve: bool) {
    if !cuts_any(posts) {
        return;
    }
    if sleeve {
        reply.lines.push(say(
            Role::Answer,
            "Cut as a sleeve that carries nothing: a whole post stands inside it and does the work.",
        ));
        return;
    }
    let widths: Vec<Length> = posts.iter().map(|p| p.size.along.min(p.size.across)).collect();
    let (least, most) = (widths.iter().min().copied(), widths.iter().max().copied());
    if let Some(w) = least.filter(|w| is_four(*w)) {
        reply.lines.push(barred());
        reply.findings.push(finding(w));
    }
    if let Some(w) = most.filter(|w| !is_four(*w)) {
        reply.lines.push(not_barred());
        reply.findings.push(finding(w));
    }
}

/// "Posts 2 and 3 (line post): half comes off, 1 3/4" deep from the deck side; 1 3/4" stays."
fn headline(group: &[&Post], foot: &Foot, entry: &NotchFig) -> Vec<Span> {
    let mut spans = numbered(group);
    spans.extend(kinds(group));
    spans.push(Span::Say(": "));
    let name = foot.lower.shape.name(foot.lower.size);
    match foot.lower.shape {
        Shape::Clear => spans.push(Span::Say("nothing comes off.")),
        Shape::Whole => spans.push(Span::Say("stands wholly on the deck: no notch.")),
        _ => {
            spans.extend([Span::Say(name), Span::Say(" comes off")]);
            spans.extend(depths(foot, entry));
        }
    }
    if foot.is_stepped() {
        spans.push(Span::Say(" Stepped: deeper where it passes the decking."));
    }
    spans
}

fn depths(foot: &Foot, entry: &NotchFig) -> Vec<Span> {
    let of = |name: &str| entry.depths.iter().find(|(n, _)| *n == name).map(|(_, f)| fig(f));
    let (along, across) = (of("along"), of("across"));
    let left = entry.left.as_ref().map(fig);
    match (&foot.lower.shape, along, across, left) {
        (Shape::Straight { .. }, _, Some(deep), Some(left)) => {
            vec![Span::Say(", "), deep, Span::Say(" deep from the deck side; "), left, Span::Say(" stays.")]
        }
        (Shape::Side { .. }, Some(deep), _, Some(left)) => {
            vec![Span::Say(", "), deep, Span::Say(" deep from one side; "), left, Span::Say(" stays.")]
        }
        (Shape::Corner { .. }, Some(along), Some(deep), _) => {
            vec![
                Span::Say(": a block "),
                along,
                Span::Say(" along the edge by "),
                deep,
                Span::Say(" in from the deck side; an L stays."),
            ]
        }
        (Shape::AllButCorner { .. }, Some(along), Some(deep), Some(left)) => {
            vec![
                Span::Say(", "),
                along,
                Span::Say(" along the edge and "),
                deep,
                Span::Say(" across it; one leg stays, "),
                left,
                Span::Say(" across."),
            ]
        }
        _ => vec![Span::Say(", slanted: mark it face by face as below.")],
    }
}

/// The figures of one cut.
fn notch_fig(foot: &Foot, group: &[&Post], stack: &Stack, feet: &Feet) -> NotchFig {
    let (cut, post) = (&foot.lower, group[0]);
    let inputs = inputs(post, feet);
    let sizes = Sizes::of(cut, &inputs);
    NotchFig {
        post: name_of(post.size),
        posts: group.iter().map(|p| p.number).collect(),
        shape: cut.shape.name(cut.size),
        off: sizes.off,
        depths: sizes.depths,
        left: sizes.left,
        areas: Some(areas(cut, &inputs)),
        shoulder: Some(stack.shoulder.clone()),
        leg: stack.leg.clone(),
        total: stack.total.clone(),
        levels: if foot.is_stepped() { levels(foot, &inputs) } else { Vec::new() },
    }
}

type Inputs = Vec<(&'static str, Fig)>;

/// What a foot's figures rest on.
fn inputs(post: &Post, feet: &Feet) -> Inputs {
    let mut all = vec![("post", post.width.clone()), ("overhang", feet.overhang.clone())];
    all.extend(feet.line.clone().map(|l| ("line", l)));
    all
}

/// The area that comes off at one level and the area left.
fn areas(cut: &Cut, inputs: &Inputs) -> (Fig, Fig) {
    let square = |q| Fig::quantity(q, Unit::In2, Why::Formula("the area of the overlay", inputs.clone()));
    (square(cut.area_off()), square(cut.area_left()))
}

/// A stepped foot, level by level.
fn levels(foot: &Foot, inputs: &Inputs) -> Vec<LevelFig> {
    let weakest = foot.weakest_level().0;
    let of = |(level, cut): (Level, &Cut)| {
        let Sizes { off, depths, left } = Sizes::of(cut, inputs);
        let (shape, areas) = (cut.shape.name(cut.size), areas(cut, inputs));
        LevelFig { at: level.name(), shape, off, depths, left, areas, weakest: level == weakest }
    };
    foot.levels().into_iter().map(of).collect()
}

/// The sizes of one level of a cut, where it is square to the post.
struct Sizes {
    /// How deep from the deck side.
    off: Option<Fig>,
    /// How deep each way it is marked.
    depths: Vec<(&'static str, Fig)>,
    /// What stays.
    left: Option<Fig>,
}

impl Sizes {
    fn of(cut: &Cut, inputs: &Inputs) -> Sizes {
        let length = |l: Length| overlaid(l, inputs.clone());
        let Depths { along, across, left } = cut.depths();
        let depths = [("along", along), ("across", across)];
        let depths = depths.into_iter().filter_map(|(n, l)| Some((n, length(l?)))).collect();
        Sizes { off: cut.depths().off().map(length), depths, left: left.map(length) }
    }
}

/// Where each face is marked, for someone on the deck looking out over the edge.
fn marks(foot: &Foot) -> Vec<Line> {
    let level = |cut: &Cut, where_: &'static str| match &cut.shape {
        Shape::Straight { .. } => vec![detail(vec![
            Span::Say(where_),
            Span::Say(
                "standing on the deck looking out, line both side faces and square across the deck-side face; the deck side is waste.",
            ),
        ])],
        Shape::Corner { hand, .. } => vec![detail(vec![
            Span::Say(where_),
            Span::Say("standing on the deck looking out, the waste is the near corner on your "),
            Span::Say(side(*hand)),
            Span::Say("."),
        ])],
        Shape::AllButCorner { hand, .. } => vec![detail(vec![
            Span::Say(where_),
            Span::Say("standing on the deck looking out, only the far corner on your "),
            Span::Say(side(*hand)),
            Span::Say(" stays; all else is waste."),
        ])],
        Shape::Clear | Shape::Whole => Vec::new(),
        _ => faces(cut, where_),
    };
    if foot.is_stepped() {
        let mut lines = level(&foot.upper, "Past the decking: ");
        lines.extend(level(&foot.lower, "Past the skirt and rim: "));
        lines.extend(past_decking(&foot.upper));
        lines.push(say(Role::Detail, "A stepped foot slides on from outside; it does not drop over the nosing."));
        return lines;
    }
    level(&foot.lower, "Marks: ")
}

/// The depths of a stepped foot where it passes the decking.
fn past_decking(cut: &Cut) -> Option<Line> {
    let sizes = Sizes::of(cut, &Vec::new());
    let of = |name: &str| sizes.depths.iter().find(|(n, _)| *n == name).map(|(_, f)| fig(f));
    let mut spans = vec![Span::Say("Past the decking it is ")];
    match (&cut.shape, of("along"), of("across")) {
        (Shape::AllButCorner { along, across, .. }, Some(off_along), Some(off_across)) => {
            let stays = [along, across].map(|l| fig(&overlaid(*l, Vec::new())));
            spans.extend([off_along, Span::Say(" along the edge and "), off_across, Span::Say(" across it; a leg ")]);
            let [stays_along, stays_across] = stays;
            spans.extend([stays_along, Span::Say(" by "), stays_across, Span::Say(" stays.")]);
        }
        (Shape::Corner { .. }, Some(along), Some(deep)) => {
            spans.extend([along, Span::Say(" along the edge by "), deep, Span::Say(" deep from the deck side.")]);
        }
        (Shape::Straight { .. }, _, Some(deep)) => spans.extend([deep, Span::Say(" deep from the deck side.")]),
        (Shape::Side { .. }, Some(deep), _) => spans.extend([deep, Span::Say(" deep from one side.")]),
        (Shape::Whole, ..) => return Some(say(Role::Detail, "Past the decking nothing of it is left.")),
        _ => return None,
    }
    Some(detail(spans))
}

fn side(hand: Hand) -> &'static str {
    match hand {
        Hand::Left => "left",
        Hand::Right => "right",
    }
}

/// A cut that is not square to the post, face by face.
fn faces(cut: &Cut, lead: &'static str) -> Vec<Line> {
    let mut lines =
        vec![detail(vec![Span::Say(lead), Span::Say("on each face, from its left edge as you look straight at it:")])];
    for face in Face::ALL {
        for (from, to) in face.cut_away(cut) {
            let spans = [
                Span::Say("  "),
                Span::Say(face.name()),
                Span::Say(": waste from "),
                fig(&overlaid(from, Vec::new())),
                Span::Say(" to "),
                fig(&overlaid(to, Vec::new())),
            ];
            lines.push(detail(spans.into()));
        }
    }
    lines
}

/// The lengths down the post.
pub(super) fn shoulder(stack: &Stack) -> Vec<Line> {
    let mut spans = vec![Span::Say("Shoulder "), fig(&stack.shoulder), Span::Say(" down from the post's top")];
    if let (Some(leg), Some(total)) = (&stack.leg, &stack.total) {
        spans.extend([
            Span::Say("; leg "),
            fig(leg),
            Span::Say(" below it; "),
            fig(total),
            Span::Say(" of post in all."),
        ]);
    } else {
        spans.push(Span::Say(". Still to tell for the leg: the rim's size (say: the rim is a 2x10)."));
    }
    let mut lines = vec![detail(spans)];
    if stack.leg.is_some() {
        lines.push(say(Role::Detail, "Pull both marks from the post's top, the end you keep square."));
    }
    lines
}

/// What keeps a foot from being worked out.
fn faults(posts: &[&Post]) -> Vec<Line> {
    let mut lines = Vec::new();
    for post in posts {
        let Err(fault) = &post.foot else { continue };
        let mut spans = numbered(&[post]);
        spans.extend(kinds(&[post]));
        spans.push(Span::Say(": "));
        spans.extend(wrong(fault));
        lines.push(answer(spans));
    }
    lines
}

fn wrong(fault: &Fault) -> Vec<Span> {
    let words = |w| vec![Span::Say(w)];
    match fault {
        Fault::TurnUntold => words("how many degrees the angled corner turns is still to tell."),
        Fault::OffDeck => words("no part of it stands over the deck: look at the baluster line and the overhang told."),
        Fault::NothingLeft => words("the notch told leaves nothing of it."),
        Fault::EdgeTooShort => words("an edge of the deck is too short for the overhang or the baluster line told."),
        Fault::SkirtTooThick => words("the skirt told is as thick as the post or thicker: look at it again."),
        Fault::NotchAgainstLine(made) => {
            vec![
                Span::Say("the notch told and the baluster line told do not go together; the line makes it "),
                fig(made),
                Span::Say(". Which holds?"),
            ]
        }
        Fault::NoBrink => words("stands at the stairs' foot, not on the deck's edge."),
    }
}

/// Which posts are the same cut.
pub(super) fn same(feet: &Feet) -> Answered {
    if let Some(uncut) = feet.uncut {
        return super::whole(uncut);
    }
    let posts: Vec<&Post> = feet.posts.iter().collect();
    let groups = asked(feet, &posts);
    let mut reply = Reply::of(Status::Answered);
    let count = number(groups.len(), "counted over the cuts of this layout");
    let kinds_of = if groups.len() == 1 { " cut for all posts." } else { " different cuts; cut each batch together:" };
    reply.lines.push(answer(vec![count, Span::Say(kinds_of)]));
    for (batch, group) in &groups {
        let Ok(foot) = &group[0].foot else { continue };
        let mut spans = numbered(group);
        spans.extend(kinds(group));
        spans.extend([Span::Say(": the same, "), Span::Say(foot.lower.shape.name(foot.lower.size))]);
        spans.extend(batch.mirrors.map(|_| Span::Say(", the mirror image of an earlier batch")));
        spans.push(Span::Say("."));
        reply.lines.push(detail(spans));
    }
    reply.lines.extend(faults(&posts));
    if cuts_any(&posts) && posts.iter().any(|p| is_four(p.size.across)) {
        reply.lines.push(barred_short());
        reply.findings.push(finding(Length::inches(3)));
    }
    (reply, Vec::new())
}

/// The rule in a line below, where the answer itself is not a cut.
fn barred_short() -> Line {
    let rule = &crate::limits::NOTCHED_POST;
    detail(vec![Span::Say("Stop: "), Span::Say(rule.says), Span::Say(" ("), Span::Say(rule.source), Span::Say(").")])
}

/// The foot from above and two of its faces.
pub(super) fn drawn(job: &Job, feet: &Feet, posts: &[&Post], width: usize) -> Answered {
    let (mut reply, figs) = cut(job, feet, posts);
    reply.lines.retain(|l| l.role == Role::Answer);
    let stack = Stack::of(&job.settings);
    let mut drawing = Vec::new();
    for (_, group) in asked(feet, posts) {
        let Ok(foot) = &group[0].foot else { continue };
        drawing.push("From above, out at the top (x comes off, # stays, . deck):".to_owned());
        if foot.is_stepped() {
            drawing.extend(draw_foot(&foot.upper));
            drawing.push("and below the decking:".to_owned());
        }
        drawing.extend(draw_foot(&foot.lower));
        drawing.extend(draw_faces(foot, &stack, telling(&foot.lower), tape_of(job)));
    }
    let fits = |row: &String| row.chars().count() <= width.max(80);
    let lines = drawing.into_iter().filter(fits).map(|row| Line::new(Role::Drawing, [Span::Drawn(row)]));
    reply.lines.extend(lines);
    reply.lines.push(say(
        Role::Detail,
        "Ask for the notch of a post for its marks and strength, and how to cut it for the steps.",
    ));
    (reply, figs)
}
