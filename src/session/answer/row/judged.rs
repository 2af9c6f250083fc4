//! A figure beside the limit it is held to, in one line.

use super::compared::apart;
use super::held::{Held, none_required};
use super::{say, taken};
use crate::figure::{Fig, Value};
use crate::grammar::ask::Mood;
use crate::job::Job;
use crate::layout::lay_out;
use crate::limits::{self, Sense};
use crate::measure::Q;
use crate::quantity::{Kind, RowId};
use crate::reply::{Finding, Level, Line, Role, Span};
use crate::rules::{check, find};
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

    /// True where it is known to keep to its limit, or only asks for something by it.
    fn is_kept(&self) -> bool {
        self.held.known && (self.keeps() || self.asks())
    }

    /// True for a limit that asks for a guard or a handrail: past it nothing is amiss.
    pub fn asks(&self) -> bool {
        matches!(self.held.sense, Sense::Over | Sense::From)
    }

    /// The limit it fails, as a finding; `None` where it fails none.
    pub fn finding(&self, told: &Job, laid: &Job) -> Option<Finding> {
        if !self.held.known || self.keeps() || self.asks() {
            return None;
        }
        let limit = self.held.limit;
        let of_it = |f: &Finding| {
            f.level != Level::Note && limit.is_some_and(|l| find(f.rule).is_some_and(|r| r.limit.id == l.id))
        };
        let before: Vec<Finding> = check(told, &lay_out(told)).into_iter().filter(of_it).collect();
        // A stop that stands in the job opens the answer, and comes with it.
        if before.iter().any(|f| f.level == Level::Stop) {
            return None;
        }
        let new = check(laid, &lay_out(laid)).into_iter().filter(of_it).find(|f| !before.contains(f));
        new.or_else(|| before.into_iter().next()).or_else(|| Some(self.plain_finding()))
    }

    /// The limit in its own words; one that is no published limit by its figure.
    fn plain_finding(&self) -> Finding {
        let (rule, spans) = match (self.held.limit, self.row.row().kind) {
            (Some(limit), _) => (limit.id, vec![Span::Say(limit.says)]),
            (None, Kind::Number) => ("bending-over-allowed", vec![Span::Say("It bends past what its wood is allowed")]),
            (None, _) => {
                ("limit-as-told", [Span::Say("The limit is ")].into_iter().chain([self.limit_figure()]).collect())
            }
        };
        Finding { rule, level: Level::Check, spans, source: self.held.source }
    }

    fn is_at(&self) -> bool {
        self.solved.fig.as_q() == self.held.most.as_q()
    }

    /// "No: with 9 balusters, 4 9/20" is over the 4" gap limit (IRC ...)."
    pub fn line(&self, mood: Mood, with: Option<(RowId, &Fig)>) -> Line {
        if !self.held.known {
            return Line::say(Role::Answer, UNKNOWN);
        }
        if self.row.row().kind == Kind::Count {
            return self.counted(mood);
        }
        let mut spans = vec![Span::Say(self.opens(mood))];
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

    /// How far past its limit a length is.
    pub fn past(&self) -> Option<Fig> {
        let fails = self.held.known && !self.keeps() && !self.is_at();
        apart(&self.solved.fig, &self.held.most).filter(|past| fails && past.as_length().is_some())
    }

    /// The same as a detail, without the word.
    pub fn aside(&self) -> Line {
        let mut line = self.line(Mood::Judge, None);
        line.role = Role::Detail;
        if self.held.known {
            line.spans.remove(0);
        }
        line
    }

    /// A guard that a drop asks for is a yes, however it is asked, but where it is asked to be left off.
    fn opens(&self, mood: Mood) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over | Sense::From, keeps) if mood == Mood::Without => say::opens(Mood::Judge, keeps),
            (Sense::Over | Sense::From, false) => "Yes: ",
            (Sense::Over, true) if self.is_at() => "No, by a hair: ",
            (Sense::Over | Sense::From, true) => "No: ",
            (_, keeps) => say::opens(mood, keeps),
        }
    }

    /// A count: "No: 3 risers are fewer than 4, so no handrail is required (IRC ...)."
    fn counted(&self, mood: Mood) -> Line {
        let mut spans = vec![Span::Say(self.opens(mood))];
        spans.extend(say::things(self.row, &self.solved.fig));
        let one = self.solved.fig.value() == Value::Count(1);
        let fewer = self.keeps() == (self.held.sense == Sense::From);
        spans.push(Span::Say(match (one, fewer) {
            (true, true) => " is fewer than ",
            (true, false) => " is at least ",
            (false, true) => " are fewer than ",
            (false, false) => " are at least ",
        }));
        spans.push(say::fig(&self.held.most));
        spans.extend([Span::Say(self.closes()), Span::Say(" ("), Span::Say(self.held.source), Span::Say(").")]);
        Line::new(Role::Answer, spans)
    }

    fn relation(&self) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over, false) => "more than ",
            (Sense::Over, true) => "not more than ",
            _ if self.is_at() => "just ",
            (Sense::Least, true) => "over ",
            (Sense::Least, false) | (Sense::Under | Sense::Most | Sense::From | Sense::None, true) => "under ",
            (_, false) => "over ",
        }
    }

    /// "the 4" gap limit", "the 36" limit for the height to the top".
    fn limit(&self) -> Vec<Span> {
        let figure = self.limit_figure();
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

    fn limit_figure(&self) -> Span {
        self.held.style.map_or_else(|| say::fig(&self.held.most), |style| Span::Fig(self.held.most.clone(), style))
    }

    fn closes(&self) -> &'static str {
        match (self.held.sense, self.keeps()) {
            (Sense::Over, false) => ", so a guard is required",
            (Sense::Over, true) => ", so no guard is required",
            (Sense::From, false) => ", so a handrail is required",
            (Sense::From, true) => ", so no handrail is required",
            _ if self.row.row().kind == Kind::Count => "",
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
        } else if let Some(limit) = self.held.limit.filter(|_| self.is_kept() && !self.is_worked()) {
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
