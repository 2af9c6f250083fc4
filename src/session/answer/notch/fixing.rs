//! Bolts: where they go, how long they are, what they may hit, what each sees.

use super::say::{answer, detail, fig, numbered, say};
use super::{Answered, asks, taken};
use crate::figure::{Fig, Why};
use crate::job::{End, Fixing, Job};
use crate::layout::{Kind, Layout, Under, lay_out};
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::notch::{Bolts, Post, Shape, Stack};
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::choice;
use crate::strength::Inputs;
use crate::strength::tie::hold_down;

/// Where the bolts of these posts go.
pub(super) fn bolts(job: &Job, posts: &[&Post]) -> Answered {
    let stack = Stack::of(&job.settings);
    let Some(rim) = &stack.rim else {
        return asks("How tall is the rim? Say its size, for the bolts' places in it: the rim is a 2x10.");
    };
    let Some(bolts) = &stack.bolts else {
        let mut reply = Reply::of(Status::Refused);
        reply.lines.push(answer(vec![
            Span::Say("A rim of "),
            fig(rim),
            Span::Say(" has no room for two bolts at their edge distances: that I can't judge. Ask the building department or an engineer."),
        ]));
        return (reply, Vec::new());
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(answer(vec![
        Span::Say("Two bolts: holes "),
        fig(&bolts.upper),
        Span::Say(" and "),
        fig(&bolts.lower),
        Span::Say(" down from the shoulder, "),
        fig(&bolts.apart),
        Span::Say(" apart, centred on the leg."),
    ]));
    reply.lines.push(detail(vec![
        Span::Say("That is "),
        fig(&bolts.edge),
        Span::Say(" below the rim's top ("),
        Span::Say(limits::BOLT_MARGIN.source),
        Span::Say(")."),
    ]));
    reply.lines.extend(not_told_so(job).map(|says| Line::say(Role::Detail, says)));
    reply.lines.extend(through(job, posts));
    reply.lines.extend(pull(job));
    reply.lines.extend(in_the_way(job, posts));
    reply.values.more = vec![
        ("bolt_upper", bolts.upper.clone()),
        ("bolt_lower", bolts.lower.clone()),
        ("bolts_apart", bolts.apart.clone()),
    ];
    (reply, vec![("upper bolt", bolts.upper.clone()), ("lower bolt", bolts.lower.clone())])
}

/// Where something else than through bolts was told: what the places are for.
fn not_told_so(job: &Job) -> Option<&'static str> {
    match choice::fixing(job)? {
        Fixing::ThroughBolts => None,
        Fixing::Lags => {
            Some("Lags are told: these places are for through bolts, which the published guide shows in their stead.")
        }
        Fixing::Screws => Some("Structural screws are told: go by their listing; these places are for through bolts."),
    }
}

fn two_by() -> Fig {
    let thick = Lumber::by(2, 2).dressed().map_or(Length::ZERO, |(thick, _)| thick);
    Fig::length(thick, Why::Table("dressed dry thickness of 2-by lumber", "PS 20 size table"))
}

/// How long the bolts are, by what they go through.
fn through(job: &Job, posts: &[&Post]) -> Vec<Line> {
    let s = &job.settings;
    let size = crate::solve::taken(s, RowId::Bolt);
    let mut lengths: Vec<Fig> = Vec::new();
    for post in posts {
        let Ok(foot) = &post.foot else { continue };
        let leg = match foot.lower.shape {
            Shape::Straight { deep } => foot.lower.size.across - deep,
            Shape::AllButCorner { across, .. } => across,
            Shape::Corner { deep, .. } => foot.lower.size.across - deep,
            _ => foot.lower.size.across,
        };
        let leg = Fig::length(
            leg,
            Why::Formula("what is left of the post where the bolt passes", vec![("post", post.width.clone())]),
        );
        let mut parts = vec![("leg", leg)];
        parts.extend(s.skirt.filter(|l| l.is_positive()).map(|l| ("skirt", Fig::told(l, "the skirt"))));
        parts.push(("rim", s.rim.map_or_else(two_by, |l| Fig::told(l, "the rim"))));
        parts.push(("blocking behind", two_by()));
        let long = Bolts::length(parts);
        if !lengths.iter().any(|l| l.value() == long.value()) {
            lengths.push(long);
        }
    }
    let mut spans = vec![Span::Say("Bolts "), fig(&size), Span::Say(" thick, washers on both sides, at least ")];
    for (k, long) in lengths.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(" or ")));
        spans.push(fig(long));
    }
    spans.push(Span::Say(" long, with a 2-by block behind the rim. Holes a hair over the bolt, no more."));
    let mut lines = vec![detail(spans)];
    if s.skirt.is_some_and(Length::is_positive) {
        lines.push(say(Role::Detail, "Never clamp a bolt through a plastic skirt: cut the skirt at the post or pack behind it solid (common practice, no source)."));
    }
    lines.extend(taken(&[&size]));
    lines
}

/// The tension at the upper bolt.
fn pull(job: &Job) -> Vec<Line> {
    let Ok(tie) = Inputs::of(job).tie() else { return Vec::new() };
    let (Ok(pull), Ok(push)) = (tie.pull(), tie.push()) else { return Vec::new() };
    let quantity = |f: &Fig| Span::Fig(f.clone(), Style::Tape);
    let rated = hold_down();
    let over = pull.as_q() > rated.as_q();
    let mut lines = vec![detail(vec![
        Span::Say("Pushed outward at the top, the upper bolt pulls "),
        quantity(&pull),
        Span::Say(", the lower one is pressed "),
        quantity(&push),
        Span::Say(": hold the upper one back with listed hardware rated for at least "),
        quantity(if over { &pull } else { &rated }),
        Span::Say("."),
    ])];
    if over {
        let line = [
            Span::Say("Check: that is over the published "),
            quantity(&rated),
            Span::Say(" hold-down, given for guards up to 36 in. with bolts about 5 in. apart."),
        ];
        lines.push(Line::new(Role::Detail, line));
    }
    lines
}

/// What the bolts may hit.
fn in_the_way(job: &Job, posts: &[&Post]) -> Vec<Line> {
    let mut lines = Vec::new();
    let at_stairs = posts.iter().any(|p| p.kind == Kind::Fixed(End::StairHead) || p.turn < 0);
    if at_stairs {
        lines.push(say(
            Role::Detail,
            "At the stairs look behind the rim first: a doubled trimmer and its hangers foul the bolts.",
        ));
    }
    if posts.iter().any(|p| p.turn != 0) {
        lines.push(say(Role::Detail, "At a corner two sides' bolts cross: set one pair a bolt's width higher, and keep out of the rims' end grain."));
    }
    let quarter = |p: &&Post| p.foot.as_ref().is_ok_and(|f| matches!(f.lower.shape, Shape::AllButCorner { .. }));
    if posts.iter().any(quarter) {
        lines.push(say(Role::Detail, "Stop: a leg of one quarter has no room for a bolt and its edge distances. Use a whole post inside the rim there."));
    }
    lines.extend(behind(job, posts));
    lines
}

/// What a post finds behind the rim.
#[derive(Clone, Copy, PartialEq)]
enum Behind {
    Joist,
    OnJoist,
    NoJoist,
    RimAlong,
    Angled,
    Untold,
}

impl Behind {
    const ALL: [Behind; 6] =
        [Behind::OnJoist, Behind::NoJoist, Behind::RimAlong, Behind::Angled, Behind::Joist, Behind::Untold];

    /// To follow the posts' numbers and a colon.
    fn says(self) -> &'static str {
        match self {
            Behind::Joist => "a joist stands beside the leg: through rim and block, tied to that joist.",
            Behind::OnJoist => {
                "a joist stands in line with the leg, and the bolts run into its end: move the post beside it, or block on both sides of the joist and shift the bolts off it."
            }
            Behind::NoJoist => "no joist beside the leg: block from joist to joist behind the rim.",
            Behind::RimAlong => {
                "the rim runs along the joists: block back over two joist bays, not to the first joist alone (common practice, no source)."
            }
            Behind::Angled => "the joists meet the rim at an angle: blocks cut to it on both sides.",
            Behind::Untold => {
                "what stands behind the rim I was not told: a joist in line with the leg is hit end on. Block both sides, joist to joist, before the decking covers it."
            }
        }
    }

    fn of(layout: &Layout, post: &Post) -> Behind {
        let over = layout.framing.iter().find(|f| (f.run, f.part) == (post.run, post.part));
        match over.map(|f| &f.under) {
            Some(Under::RimAlong(_)) => Behind::RimAlong,
            Some(Under::Angled(_)) => Behind::Angled,
            Some(Under::Missed(missed)) => match missed.iter().find(|m| m.at.value() == post.at.value()) {
                Some(m) if m.on_joist => Behind::OnJoist,
                Some(_) => Behind::NoJoist,
                None => Behind::Joist,
            },
            Some(Under::Unknown) | None => Behind::Untold,
        }
    }
}

/// Posts alike in what they find, a line each. Corners and house ends have framing of their own.
fn behind(job: &Job, posts: &[&Post]) -> Vec<Line> {
    let layout = lay_out(job);
    let own = |p: &&&Post| !matches!(p.kind, Kind::Fixed(end) if end.is_corner() || end.is_wall());
    let found: Vec<(Behind, &Post)> = posts.iter().filter(own).map(|p| (Behind::of(&layout, p), *p)).collect();
    let line = |what: Behind| {
        let alike: Vec<&Post> = found.iter().filter(|(b, _)| *b == what).map(|(_, p)| *p).collect();
        let spans = numbered(&alike).into_iter().chain([Span::Say(": "), Span::Say(what.says())]).collect();
        (!alike.is_empty()).then(|| detail(spans))
    };
    Behind::ALL.into_iter().filter_map(line).collect()
}
