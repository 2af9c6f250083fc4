//! What is still untold, the order of the work, and what an inspector looks at.

use super::{Figs, help};
use crate::figure::{Fig, Why};
use crate::grammar::ask::WorkAsk;
use crate::job::{Job, Member, Stage};
use crate::layout::{Layout, lay_out};
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::takeoff::{longest, parts};

/// The answer to a question about the work itself.
pub(super) fn work(job: &Job, ask: WorkAsk) -> (Reply, Figs) {
    if let WorkAsk::Help(task) = ask {
        return help::with(task);
    }
    let layout = lay_out(job);
    let mut reply = Reply::of(Status::Answered);
    reply.lines = match ask {
        WorkAsk::Untold => untold(job, &layout),
        WorkAsk::Order => order(job),
        WorkAsk::Inspector => inspector(job),
        WorkAsk::Notes => notes(job),
        // With nothing listed and nothing told before, nothing can have changed.
        WorkAsk::Changed | WorkAsk::Help(_) => rows("Nothing has been listed yet that could have changed.", []),
    };
    (reply, Vec::new())
}

fn rows(first: &'static str, rows: impl IntoIterator<Item = &'static str>) -> Vec<Line> {
    let rows = rows.into_iter().map(|says| Line::say(Role::Detail, says));
    std::iter::once(Line::say(Role::Answer, first)).chain(rows).collect()
}

/// Every fact a full answer lacks, each once.
fn untold(job: &Job, layout: &Layout) -> Vec<Line> {
    if job.runs.is_empty() {
        return rows("The guard itself: how long each run is, and what it goes between.", []);
    }
    let mut lacks: Vec<&'static str> = Vec::new();
    for run in &layout.runs {
        lacks.extend(run.result.as_ref().err().into_iter().flatten().map(|l| l.says()));
        lacks.extend(run.result.as_ref().ok().into_iter().flat_map(|p| &p.still).map(|l| l.says()));
    }
    lacks.extend(parts(job, layout, |size| longest(job, size)).iter().flat_map(|p| &p.lacks).map(|l| l.says()));
    let s = &job.settings;
    let more = [
        (s.grade.is_none(), "how high the deck stands over the ground (\"deck's 34 up\")"),
        (s.height_top.is_none(), "the height to the top (\"guard height 36\")"),
        (s.posts.is_empty(), "what the posts are (\"4x4 posts\")"),
        (
            s.overhang.is_none() || s.skirt.is_none() || s.rim.is_none(),
            "the deck's edge, for the posts' feet (\"overhang 1, skirt 3/4, rim 2x10\")",
        ),
        (
            s.joists.is_none(),
            "the joists, for what the bolts meet (\"joists 16 oc, first joist at 3/4, joists run out\")",
        ),
    ];
    lacks.extend(more.into_iter().filter(|(lacks, _)| *lacks).map(|(_, says)| says));
    let mut seen: Vec<&'static str> = Vec::new();
    lacks.retain(|says| {
        !seen.contains(says) && {
            seen.push(says);
            true
        }
    });
    if lacks.is_empty() {
        return rows("Nothing I know of: ask for the layout, the cuts or the buying list.", []);
    }
    let listed = lacks.into_iter().map(|says| Line::new(Role::Detail, [Span::Say("- "), Span::Say(says)]));
    std::iter::once(Line::say(Role::Answer, "Still to tell, for a full answer:")).chain(listed).collect()
}

fn has_stairs(job: &Job) -> bool {
    job.runs.iter().any(|r| !r.stairs.is_empty() || crate::session::targets::has_stair_head(r))
        || job.flight.risers.is_some()
}

/// The steps of the work, each with the stage it belongs to; those this job has none of left out
/// (common practice, no source).
fn steps(job: &Job) -> Vec<(Option<Stage>, &'static str)> {
    let stairs = has_stairs(job);
    let gate = job.runs.iter().any(|r| r.gate.is_some());
    let cap = crate::solve::order::member(job, Member::Cap) != Some(None);
    let all = [
        (true, Some(Stage::Lines), "1. Measure every side as built; snap the baluster line."),
        (
            true,
            Some(Stage::Blocking),
            "2. Look at the framing at each post; block it, and set what holds the posts back. Hold there: blocking and hold-downs are looked at, and photographed, before anything covers them.",
        ),
        (
            true,
            Some(Stage::Posts),
            "3. Set the corner posts, and those at the stair head; plumb and brace them. String a line from corner to corner; set the line posts to it, then check each mark again.",
        ),
        (
            true,
            Some(Stage::Rails),
            "4. Cut the rails to the clear at the posts' feet; fix the bottom rail, pull the tops in to match.",
        ),
        (true, Some(Stage::Balusters), "5. Mark the balusters from one pull of the tape, and fix them."),
        (cap, Some(Stage::Caps), "6. Caps last of the level guard, joints over posts."),
        (stairs, Some(Stage::StairGuard), "7. The stair guard, its balusters, then the handrail."),
        (gate, Some(Stage::Gate), "8. The gate last of all, once its posts stand plumb and stiff."),
        (true, None, "Then go round with a ball of the gap's size before the inspector does."),
    ];
    all.into_iter().filter(|(has, ..)| *has).map(|(_, stage, says)| (stage, says)).collect()
}

/// The order a crew goes in, what is done ticked off and what is next said first.
fn order(job: &Job) -> Vec<Line> {
    let first = if job.done.is_empty() {
        Line::say(
            Role::Answer,
            "Measure, framing, corner posts, line posts, rails, balusters, caps (common practice, no source):",
        )
    } else {
        next(job)
    };
    let step = |(stage, says): (Option<Stage>, &'static str)| {
        let tick = if stage.is_some_and(|s| job.done.contains(&s)) { "done: " } else { "" };
        Line::new(Role::Detail, [Span::Say(tick), Span::Say(says)])
    };
    std::iter::once(first).chain(steps(job).into_iter().map(step)).collect()
}

/// "Next: rails.", the first stage not done behind the last that is.
fn next(job: &Job) -> Line {
    let stages: Vec<Stage> = steps(job).into_iter().filter_map(|(stage, _)| stage).collect();
    let after = job.done.last().copied();
    let open = |s: &&Stage| !job.done.contains(s);
    let next = stages.iter().filter(|s| after.is_none_or(|last| **s > last)).find(open);
    match next.or_else(|| stages.iter().find(open)) {
        Some(stage) => Line::new(Role::Answer, [Span::Say("Next: "), Span::Say(stage.name()), Span::Say(".")]),
        None => Line::say(
            Role::Answer,
            "All done: go round with a ball of the gap's size, and push on every post, before the inspector does.",
        ),
    }
}

/// The answer to a stage told as done: what is next, and what was passed over.
pub(super) fn ticked(job: &Job) -> Vec<Line> {
    let mut lines = vec![next(job)];
    let passed = Stage::ALL.into_iter().filter(|s| job.done.last().is_some_and(|last| s < last));
    let passed: Vec<Stage> = passed.filter(|s| !job.done.contains(s)).collect();
    let here = |s: &&Stage| steps(job).iter().any(|(stage, _)| *stage == Some(**s));
    let passed: Vec<&Stage> = passed.iter().filter(here).collect();
    if !passed.is_empty() {
        let named = passed.iter().enumerate();
        let named = named.flat_map(|(k, s)| [Span::Say(if k == 0 { "" } else { ", " }), Span::Say(s.name())]);
        let spans = std::iter::once(Span::Say("Not told as done: ")).chain(named).chain([Span::Say(".")]);
        lines.push(Line::new(Role::Detail, spans));
    }
    if passed.contains(&&Stage::Blocking) {
        lines.push(Line::say(
            Role::Detail,
            "Have what holds the posts looked at before anything covers it (common practice, no source).",
        ));
    }
    lines
}

/// Every note kept, with its number.
fn notes(job: &Job) -> Vec<Line> {
    if job.notes.is_empty() {
        return rows("No note is kept. Say \"note: inspector thursday\" to keep one.", []);
    }
    let kept = job.notes.iter().map(|n| {
        let number = Fig::count(u64::from(n.id), Why::Told("the note's number"));
        let words = Span::Phrase(n.text.clone());
        Line::new(Role::Detail, [Span::Say("- "), Span::Fig(number, Style::Tape), Span::Say(": "), words])
    });
    std::iter::once(Line::say(Role::Answer, "Notes kept:")).chain(kept).collect()
}

/// What gets looked at (common practice, no source).
fn inspector(job: &Job) -> Vec<Line> {
    let stairs = has_stairs(job);
    let gate = job.runs.iter().any(|r| r.gate.is_some());
    let looks = [
        (true, "- The height at several spots, from the decking to the top."),
        (true, "- A 4 in. ball: between balusters, under the rail, at the wall, where two posts stand at a corner."),
        (gate, "- The same ball at the gate's hinges, its latch and under it."),
        (
            stairs,
            "- On the stairs a 4 3/8 in. ball between balusters and a 6 in. one under the rail; the landing; the handrail's grip, height and ends.",
        ),
        (
            true,
            "- A push at the top, 200 lb by the code: posts, bolts and hold-downs that were seen before they were covered.",
        ),
        (true, "- Cuts in treated wood brushed, fasteners made for it, papers for listed hardware at hand."),
        (true, "Your building department decides what it looks at and when: ask before you cover anything."),
    ];
    rows(
        "Heights, gaps, the push at the top, and how the posts are held (common practice, no source):",
        looks.into_iter().filter(|(has, _)| *has).map(|(_, says)| says),
    )
}
