//! Questions about the work itself: what is still untold, in which order to go, what gets looked at.

use super::Say;
use super::atoms::{In, Out, sep};
use super::phrase::{ends, said};
use crate::grammar::Query;
use crate::grammar::ask::{Task, WorkAsk};
use crate::grammar::draft::Clause;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::sequence::{delimited, terminated};

/// "help notches", "help with the stairs", "how do I do a gate".
pub fn help_with(input: In<'_>) -> Out<'_, Say> {
    let lead = said(&[
        "help",
        "help with",
        "help me with",
        "help on",
        "help for",
        "how do i do",
        "how do i tell you",
        "what can i say about",
        "what can i ask about",
        "tell me about",
    ]);
    let the = opt(said(&["the", "a", "my", "an"]));
    let task = alt((
        value(Task::Layout, said(&["layout", "runs", "run", "deck", "ends", "sides"])),
        value(Task::Posts, said(&["posts", "post", "spacing", "bays"])),
        value(Task::Notches, said(&["notches", "notch", "notching", "feet", "post feet", "foot"])),
        value(Task::Balusters, said(&["balusters", "baluster", "pickets", "spindles", "infill", "gaps", "gap"])),
        value(Task::Stairs, said(&["stairs", "stair", "steps", "handrail", "handrails", "stair rail"])),
        value(Task::Gate, said(&["gate", "gates", "pool"])),
        value(Task::Strength, said(&["strength", "span", "spans", "bolts", "sag"])),
        value(
            Task::Order,
            said(&["order", "cuts", "cut list", "shopping list", "cost", "prices", "price", "buying", "lumber"]),
        ),
        value(Task::Code, said(&["code", "rules", "codes", "rule", "law"])),
        value(Task::Notes, said(&["notes", "note", "job file", "saving", "files", "file"])),
    ));
    delimited((lead, the), task, (opt(sep("?")), peek(ends)))
        .map(|task| Say::Clause(Clause::Query(Query::Work(WorkAsk::Help(task)))))
        .parse(input)
}

/// Asks what is still untold.
const UNTOLD: &[&str] = &[
    "what have i forgotten",
    "what have i forgot",
    "what did i leave out",
    "what have i left out",
    "what have i not told you",
    "what haven't i told you",
    "what did i forget",
    "what am i forgetting",
    "what am i missing",
    "what did i miss",
    "what have i missed",
    "what 's missing",
    "whats missing",
    "what is missing",
    "what 's left to tell you",
    "whats left to tell you",
    "what else do you need",
    "what do you still need",
    "what else do you need to know",
    "what do you need from me",
    "what else",
    "anything else you need",
    "am i missing anything",
    "did i forget anything",
    "have i forgotten anything",
    "what don't you know",
    "what dont you know",
    "what do you not know",
    "what else should i tell you",
    "what do you need to know",
    "what have you not got",
    "untold",
];

/// Asks in which order to go, and what is left.
const ORDER: &[&str] = &[
    "what 's next",
    "what 's left to do",
    "whats left to do",
    "what is left to do",
    "what have i left to do",
    "what do i still have to do",
    "what 's still to do",
    "where am i",
    "where was i",
    "what 's left",
    "whats left",
    "what have i done",
    "what 's done",
    "whats next",
    "what is next",
    "what 's the order",
    "whats the order",
    "what order do i go in",
    "what order do i do it in",
    "what order",
    "in what order",
    "what comes first",
    "what do i do first",
    "where do i start",
    "what do i start with",
    "what 's the order of work",
    "order of work",
    "what 's first",
    "whats first",
    "what do i do next",
    "what comes next",
    "walk me through it",
    "what are the steps",
    "what now",
];

/// Asks what gets looked at.
const LOOK: &[&str] = &[
    "what does the inspector look at",
    "what does the inspector check",
    "what will the inspector look at",
    "what will the inspector check",
    "what do they check",
    "what do they look at",
    "what does an inspector look at",
    "what does an inspector check",
    "what 's the inspector going to look at",
    "what will they check",
    "inspection list",
    "inspection checklist",
    "inspection",
    "what gets inspected",
    "what do inspectors look at",
    "what do inspectors check",
    "what does the inspector want to see",
];

/// Asks what is not as it was.
const CHANGED: &[&str] = &[
    "what changed",
    "what 's changed",
    "whats changed",
    "what has changed",
    "what does that change",
    "what did that change",
    "what 's different",
    "what 's different now",
    "what is different",
    "what is different now",
    "what 's new",
    "does that change anything",
    "did that change anything",
    "does anything change",
    "did anything change",
    "has anything changed",
    "what moved",
];

/// Since when.
const SINCE: &[&str] = &[
    "since the list",
    "since the last list",
    "since the cut list",
    "since then",
    "since last time",
    "in the list",
    "on the list",
    "in the cut list",
    "on the cut list",
    "from before",
    "now",
];

/// Asks for the notes kept.
const NOTES: &[&str] = &[
    "what notes have i got",
    "what notes are there",
    "read me my notes",
    "read me the notes",
    "read my notes",
    "read back my notes",
    "read back the notes",
    "show me my notes",
    "show my notes",
    "my notes",
    "what did i note",
    "what have i noted",
    "list my notes",
    "list the notes",
];

/// "what have I forgotten", "what's next", "what does the inspector look at".
pub fn work(input: In<'_>) -> Out<'_, Say> {
    let untold = said(UNTOLD);
    let order = said(ORDER);
    let look = said(LOOK);
    let changed = said(CHANGED);
    let since = opt(said(SINCE));
    let notes = said(NOTES);
    let what = alt((
        terminated(value(WorkAsk::Changed, changed), since),
        value(WorkAsk::Notes, notes),
        value(WorkAsk::Untold, untold),
        value(WorkAsk::Order, order),
        value(WorkAsk::Inspector, look),
    ));
    let lead = opt(said(&["so", "ok", "ok so", "and", "alright", "now"]));
    delimited((lead, opt(sep(","))), what, peek(ends))
        .map(|ask| Say::Clause(Clause::Query(Query::Work(ask))))
        .parse(input)
}
