//! What is still untold, the order of the work, and what an inspector looks at.

use super::Figs;
use crate::grammar::ask::WorkAsk;
use crate::job::{Job, Member};
use crate::layout::{Layout, lay_out};
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::takeoff::{longest, parts};

/// The answer to a question about the work itself.
pub(super) fn work(job: &Job, ask: WorkAsk) -> (Reply, Figs) {
    let layout = lay_out(job);
    let mut reply = Reply::of(Status::Answered);
    reply.lines = match ask {
        WorkAsk::Untold => untold(job, &layout),
        WorkAsk::Order => order(job),
        WorkAsk::Inspector => inspector(job),
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

/// The order a crew goes in (common practice, no source), steps this job has none of left out.
fn order(job: &Job) -> Vec<Line> {
    let stairs = has_stairs(job);
    let gate = job.runs.iter().any(|r| r.gate.is_some());
    let cap = job.order.rail(Member::Cap) != Some(None);
    let steps = [
        (true, "1. Measure every side as built; snap the baluster line."),
        (true, "2. Look at the framing at each post; block it, and set what holds the posts back."),
        (true, "3. Hold there: blocking and hold-downs are looked at, and photographed, before anything covers them."),
        (true, "4. Set the corner posts, and those at the stair head; plumb and brace them."),
        (true, "5. String a line from corner to corner; set the line posts to it, then check each mark again."),
        (true, "6. Cut the rails to the clear at the posts' feet; fix the bottom rail, pull the tops in to match."),
        (true, "7. Mark the balusters from one pull of the tape, and fix them."),
        (cap, "8. Caps last of the level guard, joints over posts."),
        (stairs, "9. The stair guard, its balusters, then the handrail."),
        (gate, "10. The gate last of all, once its posts stand plumb and stiff."),
        (true, "Then go round with a ball of the gap's size before the inspector does."),
    ];
    rows(
        "Measure, framing, corner posts, line posts, rails, balusters, caps (common practice, no source):",
        steps.into_iter().filter(|(has, _)| *has).map(|(_, says)| says),
    )
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
