//! What can be said, by task, with examples that fit the job.

use super::Figs;
use crate::grammar::ask::Task;
use crate::grammar::{Talk, canon};
use crate::job::Job;
use crate::reply::{Line, Reply, Role, Span, Status};

fn row(says: &'static str) -> Line {
    Line::say(Role::Answer, says)
}

/// The short help: one row a task, what is wanted next first.
pub(in crate::session) fn help(job: &Job) -> Reply {
    let mut lines = vec![row(match job {
        _ if job.runs.is_empty() => "Begin with a run: \"run 10 ft between corner and stair head, gate at top\".",
        _ if job.told(crate::quantity::RowId::HeightTop).is_none() => {
            "Next the height and the gap below: \"guard height 36\", \"gap under 3\"."
        }
        _ if crate::solve::told_sizes(job).is_empty() => "Next the posts: \"6x6 on the corners and 4x4 in between\".",
        _ => "Ask what is open: \"what have I forgotten\"; or go on: \"what's next\".",
    })];
    lines.extend([
        row("Put it right: \"make it eleven and a half\", \"3 bays\", \"undo\". Try it: \"what if max is 5 foot clear\"."),
        row("Layout: \"layout\", \"how many posts\", \"spacing\", \"post at 7 ft\"."),
        row("Feet: \"notches\", \"draw the corner post\". Infill: \"balusters\", \"what's the gap\"."),
        row("Saw and yard: \"cut list\", \"shopping list\", \"2x4x8 is 7.98\", \"what does it cost\"."),
        row("Stairs and gate: \"7 risers 7 1/2 on 10\", \"how long is the stair rail\", \"how wide is the leaf\"."),
        row("Will it hold: \"is a 4x4 enough at 42\". The code: \"what's the max gap\", \"rules\", \"why?\", \"says who\"."),
        row("Sums: \"take 3/8 off 40 1/4\", \"half of 7/8\". Notes: \"note: inspector thursday\"."),
        row("More of one: help with layout, posts, notches, balusters, stairs, gate, strength, order, code or notes."),
    ]);
    Reply { lines, readback: Some(canon::write(&crate::grammar::Act::Talk(Talk::Help))), ..Reply::of(Status::Answered) }
}

/// Help with one task.
pub(super) fn with(task: Task) -> (Reply, Figs) {
    let rows: &[&'static str] = match task {
        Task::Layout => &[
            "A run is a length and what it goes between: \"run 12-6 house to corner\", \"front 16 corner to corner\".",
            "Ends: house, corner, inside corner, stair head, gate post, end post, wall, open end.",
            "A length is out to out unless you say: \"run 10 ft clear corner to corner\", \"run 10 ft on centre corner to corner\".",
            "A whole deck: \"deck 16 along the house, 12 out\", \"u shape, 12 16 12\".",
            "Ask: \"layout\", \"spacing\", \"marks from the far end\".",
        ],
        Task::Posts => &[
            "Size: \"4x4 posts\", \"6x6 on the corners and 4x4 in between\".",
            "Place: \"post at 7 ft\", \"no post within 18 in of the house\", \"post 2 landed at 61 1/4\".",
            "How far: \"3 bays\", \"posts no more than 5 ft on centre\", \"what if posts were 5 ft apart\".",
            "Told nothing, I keep them to 6 ft on centre; ask \"why?\".",
        ],
        Task::Notches => &[
            "Tell the deck's edge: \"overhang 1, skirt 3/4, rim 2x10\", and whether the nosing is cut back at the posts.",
            "Ask: \"notches\", \"how long are the posts\", \"draw the corner post\", \"how do I cut the notch\".",
            "A 4x4 guard post is not to be notched where it connects; \"can I notch a 4x4\" says what the code says.",
        ],
        Task::Balusters => &[
            "One opening: \"58 inch opening, how many 2x2s\", then \"what if 12\".",
            "The job: \"balusters\", \"what's the gap\", \"start with a baluster\", \"balusters 3/4\".",
            "A gap of exactly 4 in. lets the ball through and fails; I count for less.",
        ],
        Task::Stairs => &[
            "Where: \"stairs 4 ft wide in the middle of the front\". The flight: \"7 risers 7 1/2 on 10\", \"open both sides\".",
            "Ask: \"how long is the stair rail\", \"rake angle\", \"do I need a handrail\", \"stair balusters\".",
        ],
        Task::Gate => &[
            "\"36 inch gate in the middle\", \"gate at the top of the stairs\", \"it swings in\", \"hinge gap 1/2\".",
            "Ask: \"how wide is the leaf\", \"which way does the gate swing\". By a pool say \"there's a pool\".",
        ],
        Task::Strength => &[
            "\"is a 2x4 rail ok at 6 ft\", then \"and on edge\", \"what about cedar\", \"and at 8 ft\".",
            "\"is a 4x4 enough at 42\", \"could I get away with 8 foot\", \"how hard does the upper bolt pull\".",
            "It is arithmetic beside published figures, never a judgement: that is the building department's or an engineer's.",
        ],
        Task::Order => &[
            "\"cut list\", \"shopping list\", \"parts\", \"add ten percent\", \"rails come in 8s and 12s\".",
            "Prices: \"2x4x8 is 7.98\", or start with --prices and a list. I make no price up.",
        ],
        Task::Code => &[
            "\"what's the max gap\", \"when do I need a guard\", \"how high\", \"says who\", \"rules\".",
            "\"we're on the 2018\", \"the county wants 42 inch rails\", \"we're in Canada\". Your building department decides.",
        ],
        Task::Notes => &[
            "\"note: inspector thursday\"; \"my notes\" reads them back.",
            "Start with --job and a file to keep the talk: it goes on where it was left.",
        ],
    };
    let first = rows.iter().map(|says| row(says)).collect();
    (Reply { lines: first, ..Reply::of(Status::Answered) }, Vec::new())
}

/// A greeting, and the answer to thanks.
pub(in crate::session) fn hello(talk: Talk) -> Reply {
    let says = match talk {
        Talk::Thanks => "Right you are. What you told me stands; \"what's left\" tells you what is still open.",
        _ => "Hello. Tell me a run of guard: how long, and what it goes between.",
    };
    let lines = vec![Line::new(Role::Answer, [Span::Say(says)])];
    Reply { lines, readback: Some(canon::write(&crate::grammar::Act::Talk(talk))), ..Reply::of(Status::Answered) }
}
