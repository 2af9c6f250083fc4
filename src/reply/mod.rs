//! One reply value of tagged spans; plain text, JSON and drawings are renderings of it.

mod fold;
mod json;
mod json_choices;
mod json_job;
mod json_order;
mod json_stairs;
mod json_takeoff;
mod plain;
mod print;
mod takeoff_values;
mod typed;
mod values;
mod wrap;

pub use fold::{Folded, fold, rows};
pub(crate) use json::tape_of;
pub use json::{json_line, reply_json};
pub use json_job::job_json;
pub use plain::{Shown, Tone, finding_text, line_text, plain, shown};
pub use takeoff_values::{PartFig, StickFig, TakeoffFigs};
pub use typed::Typed;
pub(crate) use typed::safe;
pub use values::{BayFig, GateFig, LevelFig, NotchFig, PostFig, RakeFig, StrengthFig, Values};
pub(crate) use wrap::wrap;

use crate::figure::Fig;

/// What became of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// The job changed.
    Told,
    /// A question, sum or what-if was answered; the job is as it was.
    Answered,
    /// It asks back; the job is as it was.
    Asks,
    /// It cannot be taken; the job is as it was.
    Refused,
}

impl Status {
    /// The word in the JSON contract.
    pub fn name(self) -> &'static str {
        match self {
            Status::Told => "told",
            Status::Answered => "answered",
            Status::Asks => "asks",
            Status::Refused => "refused",
        }
    }
}

/// How a figure is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Style {
    /// Feet and inches to the tape; with the exact value where they differ.
    #[default]
    Tape,
    /// Inches alone to the tape.
    Inches,
    /// Inches alone, and the exact fraction behind it where the tape reading is rounded.
    InchesExact,
    /// Feet and inches, then inches, and the exact fraction where rounded.
    Full,
    /// Millimetres.
    Millimetres,
    /// Millimetres, and the tape's inches behind them.
    MetricFirst,
}

/// A piece of a reply. Numbers get in only as figures: literal text is `&'static`.
#[derive(Clone, Debug, PartialEq)]
pub enum Span {
    /// The program's own words.
    Say(&'static str),
    /// A figure.
    Fig(Fig, Style),
    /// Words as typed, made safe for a terminal.
    Typed(Typed),
    /// A read-back phrase, written by the writer from a resolved act.
    Phrase(String),
    /// A line of a drawing, made from figures by the layout.
    Drawn(String),
}

/// What a line of a reply is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Words that took no part: named first.
    Unused,
    /// The answer itself.
    Answer,
    /// What was heard.
    Heard,
    /// Detail under the answer.
    Detail,
    /// A drawing.
    Drawing,
    /// A caution or finding.
    Caution,
    /// A question asked back.
    Question,
    /// One numbered choice of a question.
    Choice,
    /// The typed line with the words pointed at.
    Pointer,
}

/// One line of a reply.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it is for.
    pub role: Role,
    /// Its pieces, in order.
    pub spans: Vec<Span>,
}

impl Line {
    /// A line of one role.
    pub fn new(role: Role, spans: impl IntoIterator<Item = Span>) -> Line {
        Line { role, spans: spans.into_iter().collect() }
    }

    /// A line of the program's own words.
    pub fn say(role: Role, text: &'static str) -> Line {
        Line::new(role, [Span::Say(text)])
    }
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Do not build it so.
    Stop,
    /// Look at it before building.
    Check,
    /// Good to know.
    Note,
}

impl Level {
    /// The word in the JSON contract.
    pub fn name(self) -> &'static str {
        match self {
            Level::Stop => "stop",
            Level::Check => "check",
            Level::Note => "note",
        }
    }
}

/// What a rule found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The rule's id.
    pub rule: &'static str,
    /// How much it matters.
    pub level: Level,
    /// What it says here.
    pub spans: Vec<Span>,
    /// Where the rule comes from.
    pub source: &'static str,
}

/// The answer to one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Reply {
    /// What became of the line.
    pub status: Status,
    /// What was heard, in the plain phrase that means the same.
    pub readback: Option<String>,
    /// Words that took no part.
    pub unused: Vec<Typed>,
    /// When it asks: the choices, each a phrase that may be typed.
    pub choices: Vec<String>,
    /// How a line of loose talk could be read: plain phrases with their probability, likeliest first.
    pub readings: Vec<(String, f32)>,
    /// The lines of the answer.
    pub lines: Vec<Line>,
    /// The figures, by their contract names.
    pub values: Values,
    /// What the rules found.
    pub findings: Vec<Finding>,
}

impl Reply {
    /// An empty reply of one status.
    pub fn of(status: Status) -> Reply {
        Reply {
            status,
            readback: None,
            unused: Vec::new(),
            choices: Vec::new(),
            readings: Vec::new(),
            lines: Vec::new(),
            values: Values::default(),
            findings: Vec::new(),
        }
    }
}
