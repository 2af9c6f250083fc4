//! The posts' feet, answered: what comes off, how long, how it is cut, what holds it.

mod cut;
mod fixing;
pub(super) mod judge;
mod left;
mod lengths;
mod old;
pub(in crate::session) use left::leaves_nothing;
pub(super) mod say;
mod steps;

use super::Figs;
use crate::figure::Fig;
use crate::grammar::ask::{NotchAsk, Whose};
use crate::job::{Job, Nosing};
use crate::layout::Kind;
use crate::measure::Length;
use crate::notch::{Feet, Post, Uncut, feet};
use crate::reply::{Line, Reply, Role, Span, Status};
use say::{answer, detail, fig};

/// A question about the feet.
pub(in crate::session) fn notch(job: &Job, ask: NotchAsk, width: usize) -> (Reply, Figs) {
    match ask {
        NotchAsk::Left { deep, post } => left::left(job, deep, post),
        NotchAsk::May(lumber) => left::may(job, lumber),
        NotchAsk::Old(lumber) => old::old(lumber),
        NotchAsk::Tall => lengths::tall(job),
        NotchAsk::Length(whose) => lengths::length(job, whose),
        NotchAsk::Above(whose) => lengths::above(job, whose),
        NotchAsk::Bolts(whose) => of_posts(job, whose, |_, posts| fixing::bolts(job, posts)),
        NotchAsk::Same => of_posts(job, Whose::All, |feet, _| cut::same(feet)),
        NotchAsk::Cut(whose) => of_cut(job, whose, |feet, posts| cut::cut(job, feet, posts)),
        NotchAsk::Steps(whose) => of_cut(job, whose, |feet, posts| steps::steps(job, feet, posts)),
        NotchAsk::Draw(whose) => of_cut(job, whose, |feet, posts| cut::drawn(job, feet, posts, width)),
    }
}

/// The lines of a whole foot after a fact that settles it, where there are posts to cut.
pub(in crate::session) fn settled(job: &Job) -> Option<(Reply, Figs)> {
    let feet = feet(job).ok()?;
    let posts: Vec<&Post> = feet.posts.iter().collect();
    (!posts.is_empty() && feet.nosing.is_some()).then(|| cut::cut(job, &feet, &posts))
}

/// A notch told: what it leaves of the job's posts.
pub(in crate::session) fn told_depth(job: &Job, deep: Length) -> (Reply, Figs) {
    left::told(job, deep)
}

/// A notch at the rail, up top: the foot stays whole.
pub(in crate::session) fn up_top(deep: Length) -> (Reply, Figs) {
    let told = Fig::told(deep, "the notch at the rail");
    let (mut reply, figs) = one(
        vec![
            Span::Say("Kept: a notch of "),
            fig(&told),
            Span::Say(" at the top for the rail, and the post whole at the bottom, where it meets the deck."),
        ],
        vec![("notch at the rail", told.clone())],
    );
    reply.lines.push(Line::say(
        Role::Detail,
        "The rule on notched posts speaks of the connection to the deck; a notch at the rail is not named there, but keep it shallow and off the bolts.",
    ));
    reply.values.more.push(("rail_notch", told));
    (reply, figs)
}

fn refused(says: &'static str) -> (Reply, Figs) {
    (Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }, Vec::new())
}

fn asks(says: &'static str) -> (Reply, Figs) {
    (Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) }, Vec::new())
}

type Answered = (Reply, Figs);

/// An answer about posts of the job that are there.
fn of_posts(job: &Job, whose: Whose, then: impl Fn(&Feet, &[&Post]) -> Answered) -> Answered {
    if job.runs.is_empty() {
        return asks("There is no layout yet: no run has been told. Say how long it is and what it goes between.");
    }
    let feet = match feet(job) {
        Ok(feet) => feet,
        Err(lacks) => return lacking(&lacks),
    };
    let posts: Vec<&Post> = feet.posts.iter().filter(|p| is(p, whose)).collect();
    match posts.is_empty() {
        true if feet.posts.is_empty() => {
            asks("No post is placed yet. Ask \"where do the posts go\" for what is still to tell.")
        }
        true => refused("There is no such post in this layout. Ask \"where do the posts go\" to see them."),
        false => then(&feet, &posts),
    }
}

/// As [`of_posts`], for what comes off them: uncut posts are told of, and an overhanging
/// nosing is asked about first.
fn of_cut(job: &Job, whose: Whose, then: impl Fn(&Feet, &[&Post]) -> Answered) -> Answered {
    of_posts(job, whose, |feet, posts| match (feet.uncut, feet.nosing) {
        (Some(uncut), _) => whole(uncut),
        (None, None) => which_nosing(feet),
        (None, Some(_)) => then(feet, posts),
    })
}

fn is(post: &Post, whose: Whose) -> bool {
    match whose {
        Whose::All => true,
        Whose::Line => post.kind == Kind::Line,
        Whose::Number(n) => usize::try_from(n).is_ok_and(|n| n == post.number),
        // A stair head at a recess stands on the inside corners of its head.
        Whose::At(crate::job::End::StairHead) => at_stairs(post),
        Whose::At(end) => post.kind == Kind::Fixed(end),
    }
}

fn at_stairs(post: &Post) -> bool {
    use crate::job::End;
    use crate::layout::Part;
    let recessed = matches!(post.part, Part::InLeft(_) | Part::InRight(_));
    post.kind == Kind::Fixed(End::StairHead) || recessed && post.kind == Kind::Fixed(End::InsideCorner)
}

fn lacking(lacks: &[crate::layout::Lack]) -> Answered {
    let mut spans = vec![Span::Say("Still to tell, before I can say what comes off: ")];
    for (k, lack) in lacks.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say("; ")));
        spans.push(Span::Say(lack.says()));
    }
    spans.push(Span::Say("."));
    (Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) }, Vec::new())
}

fn whole(uncut: Uncut) -> Answered {
    use crate::job::Mount;
    let says = match uncut {
        Uncut::Told => "Nothing comes off: no notch, so the posts stay whole.",
        Uncut::Mounted(Mount::Inside) => {
            "Nothing comes off: posts inside the rim stay whole; the decking is cut round them."
        }
        Uncut::Mounted(Mount::Outside) => {
            "Nothing comes off: posts on the rim's outside face stay whole, bolted flat to it."
        }
        Uncut::Mounted(_) => "Nothing comes off: posts on the decking stay whole.",
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::say(Role::Answer, says));
    reply.lines.push(Line::say(Role::Detail, "Ask \"how long do I cut the posts\" for their length."));
    (reply, Vec::new())
}

/// The nosing stands over the skirt: whole, the foot has two depths.
fn which_nosing(feet: &Feet) -> Answered {
    let mut reply = Reply::of(Status::Asks);
    let line = vec![
        Span::Say("The decking overhangs "),
        fig(&feet.overhang),
        Span::Say(": is its nosing cut back at the posts, or left whole (then the foot is stepped, with two depths)?"),
    ];
    reply.lines.push(Line::new(Role::Question, line));
    let acts = [Nosing::CutBack, Nosing::Whole].map(|n| {
        let fact = crate::job::Fact::Set(crate::job::Setting::Foot(crate::job::Foot::Nosing(n)));
        crate::grammar::canon::write(&crate::grammar::Act::Tell(vec![fact]))
    });
    reply.lines.extend(acts.iter().map(|a| Line::new(Role::Choice, [Span::Phrase(a.clone())])));
    reply.choices = acts.to_vec();
    (reply, Vec::new())
}

/// What was taken for granted, aloud.
fn taken(figs: &[&Fig]) -> Vec<Line> {
    let default = |f: &&&Fig| match f.why() {
        crate::figure::Why::Default(limit) => Some(*limit),
        _ => None,
    };
    let limits: Vec<_> = figs.iter().filter_map(|f| default(&f)).collect();
    let mut said = Vec::new();
    for limit in limits {
        if !said.contains(&limit.id) {
            said.push(limit.id);
        }
    }
    let line = |id: &&str| {
        crate::limits::find(id).map(|l| detail(vec![Span::Say("Taken: "), Span::Say(l.says), Span::Say(".")]))
    };
    said.iter().filter_map(line).collect()
}

/// An answer of one line and its figures.
fn one(line: Vec<Span>, figs: Figs) -> Answered {
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(answer(line));
    (reply, figs)
}
