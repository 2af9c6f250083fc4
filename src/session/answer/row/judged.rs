//! A figure beside the limit it is held to, in one line.

use super::held::{Held, none_required};
use super::{say, taken};
use crate::figure::Fig;
use crate::job::Job;
use crate::limits::{self, Sense};
use crate::measure::Q;
use crate::quantity::{Kind, RowId};
use crate::reply::{Line, Role, Span};
use crate::solve::Solved;

/// A row's figure and a limit it is held to.
pub(super) struct Judged {
    pub row: RowId,
    pub solved: Solved,
    pub held: Held,
}

impl Judged {
    pub fn keeps(&self) -> bool {
        self.held.keeps(&self.solved.fig)
    }

    /// How far the figure is from the limit.
    pub fn room(&self) -> Q {
        let by = self.solved.fig.as_q() - self.held.most.as_q();
        if by < 0.into() { -by } else { by }
    }

    /// True where its working is said, which leaves the limit's own words out.
    fn is_worked(&self) -> bool {
        say::working(&self.solved.fig).is_some()
    }

    fn is_at(&self) -> bool {
        self.solved.fig.as_q() == self.held.most.as_q()
    }

    /// "No: with 9 balusters, 4 9/20" is over the 4" gap limit (IRC ...)."
    pub fn line(&self, with: Option<(RowId, &Fig)>) -> Line {
        if !self.held.known {
            return Line::say(Role::Answer, UNKNOWN);
        }
        let mut spans = vec![Span::Say(self.opens())];
        if let Some((row, fig)) = with {
            spans.push(Span::Say("with "));
            spans.extend(say::beside(row, fig));
            spans.push(Span::Say(", "));
        }
        spans.extend(say::figure(self.row, &self.solved.fig));
        spans.extend([Span::Say(" is "), Span::Say(self.relation())]);
        spans.extend(self.limit());
        spans.extend([Span::Say(self.closes()), Span::Say(" ("), Span::Say(self.held.source), Span::Say(").")]);
        Line::new(Role::Answer, spans)
    }

    /// The same as a detail, without the word.
    pub fn aside(&self) -> Line {
        let mut line = self.line(None);
        line.role = Role::Detail;
        if self.held.known {
            line.spans.remove(0);
        }
        line
    }

    /// A guard that a drop asks for is a yes.
    fn opens(&self) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over, false) => "Yes: ",
            (Sense::Over, true) if self.is_at() => "No, by a hair: ",
            (Sense::Over, true) | (_, false) => "No: ",
            (_, true) => "Yes: ",
        }
    }

    fn relation(&self) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over, false) => "more than ",
            (Sense::Over, true) => "not more than ",
            _ if self.is_at() => "just ",
            (Sense::Least, true) => "over ",
            (Sense::Least, false) | (Sense::Under | Sense::Most | Sense::None, true) => "under ",
            (_, false) => "over ",
        }
    }

    /// "the 4" gap limit", "the 36" limit for the height to the top".
    fn limit(&self) -> Vec<Span> {
        let figure = match self.held.style {
            Some(style) => Span::Fig(self.held.most.clone(), style),
            None => say::fig(&self.held.most),
        };
        if self.held.sense == Sense::Over {
            return vec![figure];
        }
        if self.row.row().kind == Kind::Number {
            return vec![figure, Span::Say(" of what its wood is allowed")];
        }
        let (name, behind) = (self.row.row().name, self.row.row().behind);
        if !behind.is_empty() {
            return vec![Span::Say("the "), figure, Span::Say(" limit "), Span::Say(behind)];
        }
        match name.contains(' ') {
            true => vec![Span::Say("the "), figure, Span::Say(" limit for "), Span::Say(self.row.said())],
            false => vec![Span::Say("the "), figure, Span::Say(" "), Span::Say(name), Span::Say(" limit")],
        }
    }

    fn closes(&self) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over, false) => ", so a guard is required",
            (Sense::Over, true) => ", so none is required",
            (Sense::Under, false) if self.is_at() => ", and it must stay under it",
            (_, true) if self.is_at() => ", and that passes",
            _ => "",
        }
    }

    /// The limit in its own words, and what bends it here.
    pub fn more(&self, job: &Job) -> Vec<Line> {
        let mut lines = Vec::new();
        if self.held.sense == Sense::Over {
            lines.push(Line::say(Role::Detail, EDGE));
        } else if let Some(limit) = self.held.limit.filter(|_| self.held.known && !self.is_worked()) {
            lines.push(Line::new(Role::Detail, [Span::Say(limit.says), Span::Say(taken::stop(limit))]));
        }
        let of_height = self.held.limit.is_some_and(|l| l.id == limits::GUARD_HEIGHT.id) && !self.keeps();
        if let Some(drop) = none_required(job).filter(|_| of_height) {
            let spans = [
                Span::Say("It holds where a guard is required: at a drop of "),
                say::fig(&drop),
                Span::Say(" none is."),
            ];
            lines.push(Line::new(Role::Detail, spans));
        }
        lines
    }
}

/// What is said where no value is held.
pub(super) const UNKNOWN: &str = "I can't judge that: I hold no value for it there. Ask the building department.";

const EDGE: &str = "The drop is looked for at every place along the run, down to the lowest ground within 36 in. of the edge: one spot that is deeper makes it required.";
