//! An act: what one line does, resolved. No "it" and no bare number is left in it.

use super::ask::{FlightAsk, NotchAsk, RowAsk, RuleAsk, StrengthAsk, TakeoffAsk, WhyAsk, WorkAsk};
use crate::job::{Fact, Flank, RunId};
use crate::measure::{Length, Lumber, Shade};
use crate::sums::Sum;

/// What one line does.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Changes the job.
    Tell(Vec<Fact>),
    /// Changes the job, and gives what no part of the job keeps for what is asked next.
    TellWith(Vec<Fact>, RowAsk),
    /// Tries facts on without changing the job.
    Suppose(Vec<Fact>),
    /// Asks about the job or the rules.
    Query(Query),
    /// Arithmetic: never touches the job.
    Sum(Sum),
    /// Keeps the conversation going.
    Talk(Talk),
}

impl Act {
    /// What it tells the job; nothing for what leaves the job as it is.
    pub fn told(&self) -> &[Fact] {
        match self {
            Act::Tell(facts) | Act::TellWith(facts, _) => facts,
            _ => &[],
        }
    }
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum Query {
    /// The whole layout, of one run or of all: posts, marks, bays.
    Layout(Option<RunId>),
    /// The marks as pulled from the far end.
    MarksBack(Option<RunId>),
    /// How many posts.
    Posts(Option<RunId>),
    /// How far between posts.
    Bays(Option<RunId>),
    /// How long a run is.
    RunLength(RunId),
    /// How long the guard is on one side of a run's stairs.
    Flank(RunId, Flank),
    /// Everything told so far.
    Job,
    /// A limit and its source.
    Rule(RuleAsk),
    /// What named lumber really measures.
    Actual(Lumber),
    /// A measure said alone: read back in feet and inches.
    Measure {
        /// The length.
        length: Length,
        /// A shade on it.
        shade: Option<Shade>,
        /// Said as "about".
        about: bool,
    },
    /// Span and strength.
    Strength(StrengthAsk),
    /// Why the last figures are what they are.
    Why,
    /// Why of something named.
    WhyOf(WhyAsk),
    /// Where the last figures' limits are published.
    Sources,
    /// The rules there are.
    Rules,
    /// The rules that found something in the job.
    RulesFound,
    /// Whose rules hold.
    Law,
    /// Of the work itself.
    Work(WorkAsk),
    /// Of balusters, parts, cuts and cost.
    Takeoff(TakeoffAsk),
    /// About the posts' feet.
    Notch(NotchAsk),
    /// Of stairs, their guard and handrail, or of a gate.
    Flight(FlightAsk),
    /// A row of the table, with what the line gives.
    Row(RowAsk),
    /// Premises for what is asked next, where nothing is asked yet: no row is wanted.
    Given(RowAsk),
}

/// Conversation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Talk {
    /// Takes the last told line back.
    Undo,
    /// Does it again.
    Redo,
    /// Keeps what was supposed.
    Keep,
    /// Lets what was supposed go.
    Leave,
    /// A greeting.
    Hello,
    /// Thanks, or the end of the talk.
    Thanks,
    /// What can be said.
    Help,
}
