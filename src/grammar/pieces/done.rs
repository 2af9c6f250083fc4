//! Stages of the work told as done: "posts are in", "rails are on", "done with the balusters".
//!
//! ```text
//! done = stage ["are" | "is"] ["all" | "not"] fixed | ("done" | "finished") ["with"] stage
//! ```

use super::Say;
use super::atoms::{In, Out};
use super::phrase::{ends, said};
use crate::grammar::draft::Clause;
use crate::job::Stage;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map, opt, peek, value};
use nom::sequence::{preceded, terminated};

fn stage(input: In<'_>) -> Out<'_, Stage> {
    let the = opt(said(&["the", "all the", "all", "my", "all of the", "every one of the"]));
    let what = alt((
        value(Stage::Lines, said(&["lines", "line", "baluster line", "layout lines", "string line"])),
        value(Stage::Blocking, said(&["blocking", "blocks", "hold downs", "hold-downs", "blocking and hold downs"])),
        value(Stage::StairGuard, said(&["stair guard", "stair rail", "stair rails", "stair railing", "rake rail"])),
        value(Stage::Posts, said(&["posts", "post", "line posts"])),
        value(Stage::Rails, said(&["rails", "railing", "level rails", "top and bottom rails"])),
        value(
            Stage::Balusters,
            said(&["balusters", "pickets", "spindles", "level balusters", "picket", "infill", "panels"]),
        ),
        // "cap on" tells of a cap; that it is on is done.
        value(
            Stage::Caps,
            alt((
                said(&["caps"]),
                terminated(said(&["cap", "cap rail", "cap board"]), peek(said(&["is", "'s", "isn't"]))),
            )),
        ),
        value(Stage::Gate, alt((said(&["gates"]), terminated(said(&["gate"]), peek(is_or_end))))),
    ));
    preceded(the, what).parse(input)
}

/// Behind a thing there is one of: "gate on" may tell where it is, "gate is on" does not.
fn is_or_end(input: In<'_>) -> Out<'_, ()> {
    alt((said(&["is", "'s", "isn't", "isnt", "aint"]), ends)).parse(input)
}

/// "in", "done", "all set", "not on yet".
fn fixed(input: In<'_>) -> Out<'_, bool> {
    let not = said(&["not", "aren't", "arent", "isn't", "isnt", "are not", "is not", "'s not", "aint", "ain't"]);
    let is = opt(said(&["are", "is", "'s", "'re", "all", "are all", "is all", "are now", "all of them are", "got"]));
    let held = || {
        said(&[
            "in",
            "all in",
            "done",
            "all done",
            "on",
            "all on",
            "up",
            "all up",
            "set",
            "all set",
            "hung",
            "fixed",
            "finished",
            "installed",
            "fastened",
            "snapped",
            "bolted",
            "stood",
            "screwed down",
            "screwed on",
            "bolted on",
            "are in",
            "are on",
            "are up",
            "are set",
            "is in",
            "is on",
            "is up",
            "is hung",
            "in and plumb",
            "in now",
            "on now",
            "up now",
            "done now",
            "nailed",
            "nailed on",
        ])
    };
    let yet = || opt(said(&["yet", "now", "already", "finally", "today"]));
    alt((value(false, (not, held(), yet())), value(true, (is, held(), yet())))).parse(input)
}

/// A stage of the work, and whether it is done.
pub fn done(input: In<'_>) -> Out<'_, Say> {
    let told = (stage, fixed);
    let lead = said(&[
        "done with",
        "finished with",
        "finished",
        "i 'm done with",
        "im done with",
        "done",
        "we finished",
        "i finished",
        "just finished",
    ]);
    // "got a cap" has one; "got the caps on" is done with them.
    let got = (said(&["got", "we got", "i got", "got all"]), stage, said(&["in", "on", "up", "done", "hung", "set"]));
    let held = opt(said(&["in", "on", "up", "done", "hung", "set"]));
    let first = (terminated(lead, peek(stage)), stage, held).map(|((), s, _)| (s, true));
    let so = opt(said(&["ok", "ok so", "alright", "so", "and", "now"]));
    let any = alt((told, first, got.map(|((), s, ())| (s, true))));
    map(terminated(preceded(so, any), peek(ends)), |(s, done)| Say::Clause(Clause::Done(s, done))).parse(input)
}
