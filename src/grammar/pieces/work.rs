//! Questions about the work itself: what is still untold, in which order to go, what gets looked at.

use super::Say;
use super::atoms::{In, Out, sep};
use super::phrase::{ends, said};
use crate::grammar::Query;
use crate::grammar::ask::WorkAsk;
use crate::grammar::draft::Clause;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::sequence::delimited;

/// "what have I forgotten", "what's next", "what does the inspector look at".
pub fn work(input: In<'_>) -> Out<'_, Say> {
    let untold = said(&[
        "what have i forgotten",
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
    ]);
    let order = said(&[
        "what 's next",
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
    ]);
    let look = said(&[
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
    ]);
    let what = alt((value(WorkAsk::Untold, untold), value(WorkAsk::Order, order), value(WorkAsk::Inspector, look)));
    let lead = opt(said(&["so", "ok", "ok so", "and", "alright", "now"]));
    delimited((lead, opt(sep(","))), what, peek(ends))
        .map(|ask| Say::Clause(Clause::Query(Query::Work(ask))))
        .parse(input)
}
