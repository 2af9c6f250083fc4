//! Lines that are one thing and no fact: sums, measures, conversation.

use super::{Branch, Problem, Resolved, Resolver};
use crate::grammar::ask::{Infill, TakeoffAsk};
use crate::grammar::draft::{Clause, Reading, RunDraft};
use crate::grammar::{Act, Query, Talk};
use crate::job::SlotId;
use crate::measure::{Guess, Length, Meaning, Measure, Q, Said};
use crate::session::lengths::{Fits, fits};
use crate::session::state::Focus;
use crate::session::targets;
use crate::sums::{Expr, Sum};

impl Resolver<'_> {
    /// Lines that are one thing and no fact: sums, measures, conversation.
    pub(super) fn alone(&self, reading: &Reading) -> Result<Option<Resolved>, Problem> {
        let answered = |act| {
            let focus = self.session.talk.focus.clone();
            Ok(Some(Resolved { acts: vec![act], ask: false, focus, then: None }))
        };
        let mut clauses: Vec<&Clause> = reading.clauses.iter().filter(|c| !is_aside(c)).collect();
        if clauses.is_empty() {
            clauses = reading.clauses.iter().filter(|c| matches!(c, Clause::Talk(_))).take(1).collect();
        }
        match clauses[..] {
            [] => Err(Problem::Ask(
                if reading.corrects { "Change what, to what?" } else { "Nothing in that I can use." },
                Vec::new(),
            )),
            // "16 by 16", asked for the deck's size.
            [Clause::Sum(Sum::Value(Expr::Times(..)))] if self.awaits_deck() => {
                Err(Problem::Unfit("Is that the deck's size? Say so much along the house, so much out."))
            }
            [Clause::Sum(sum)] => answered(Act::Sum(sum.clone())),
            // "no would a 6x6 ...": the "no" takes nothing back.
            [Clause::Strength(_)] if reading.denies => Err(Problem::Ask("No to what? Ask it by itself.", Vec::new())),
            [Clause::Strength(draft)] => self.strength(draft).map(Some),
            [Clause::StrengthMore(draft)] => self.strength_more(draft).map(Some),
            [Clause::Why(_)] if reading.denies => Err(Problem::Ask("No to what? Ask it by itself.", Vec::new())),
            [Clause::Why(draft)] => self.why(draft).map(Some),
            [Clause::Query(query)] => answered(Act::Query(query.clone())),
            // What was only supposed is let go; nothing told is taken back with it.
            [Clause::Talk(Talk::Undo)] if !self.session.talk.supposed.is_empty() => answered(Act::Talk(Talk::Leave)),
            [Clause::Talk(talk)] => answered(Act::Talk(*talk)),
            [Clause::Ask(ask)] => answered(Act::Query(self.asked(*ask, &self.session.job)?)),
            [Clause::Takeoff(draft)] => self.takeoff_alone(draft).map(Some),
            [Clause::Cut(m)] => self.cut_at(m).map(Some),
            [Clause::Run(draft)] if reading.supposes && self.another_count(draft).is_some() => {
                let infill =
                    self.another_count(draft).into_iter().map(|i| Act::Query(Query::Takeoff(TakeoffAsk::Infill(i))));
                Ok(Some(self.says(infill.collect(), false)))
            }
            // "across 8" in a walk is its next side, not a measure said alone.
            [Clause::Run(draft)]
                if self.only_a_measure(draft, reading)
                    && !reading.left.is_empty()
                    && super::walks::under_way(&self.session.job) =>
            {
                Err(Problem::Unfit("Which way does that side go: out, across, back, to the left or to the right?"))
            }
            [Clause::Run(draft)] if self.only_a_measure(draft, reading) => self.measure_alone(draft).map(Some),
            [Clause::Shape] => Err(Problem::Ask(
                "Walk me round it, starting at the house on the left: so far out, so far across, so far back, then home.",
                Vec::new(),
            )),
            [Clause::KeepLength(m)] => self.keep(m).map(Some),
            _ => Ok(None),
        }
    }

    /// "what if 12", "and 14", behind a question how many balusters an opening takes: another count.
    fn another_count(&self, draft: &RunDraft) -> Option<Infill> {
        let stands = self.session.talk.filling.as_ref()?;
        let bare = RunDraft { length: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        let whole = match &draft.length.as_ref()?.meaning {
            Meaning::Bare(n) if bare && !n.fraction && n.value.is_integer() => n.value.to_integer(),
            _ => return None,
        };
        let count = u16::try_from(whole).ok().filter(|n| (1..=200).contains(n))?;
        Some(Infill { count: Some(count), ..*stands })
    }

    /// True where the deck was spoken of last and neither of its sizes is told.
    fn awaits_deck(&self) -> bool {
        let job = &self.session.job;
        self.session.talk.focus.deck && job.deck_along.is_none() && job.deck_out.is_none()
    }

    /// A length and perhaps its basis, that fills no slot of any run.
    pub(super) fn only_a_measure(&self, draft: &RunDraft, reading: &Reading) -> bool {
        let bare =
            RunDraft { length: None, basis: None, it: false, words: 0..0, ..draft.clone() } == RunDraft::default();
        let focus = targets::focus(self.session, &self.session.job);
        let fills = focus.is_some_and(|r| r.length.is_none());
        let changes = (self.corrects || reading.supposes || draft.it)
            && (focus.is_some() || self.session.talk.focus.slot.is_some());
        bare && draft.length.is_some() && !fills && !changes
    }

    pub(super) fn measure_alone(&self, draft: &RunDraft) -> Result<Resolved, Problem> {
        let Some(m) = &draft.length else { return Err(Problem::Refuse("There is no length in that.")) };
        if !self.corrects {
            return self.measured(m);
        }
        let new = RunDraft { run_word: true, ..draft.clone() };
        let start = Branch { job: self.session.job.clone(), facts: Vec::new(), focus: Focus::default(), ask: true };
        let acts = self.run(start, &new)?.into_iter().map(|b| Act::Tell(b.facts)).collect();
        Err(Problem::Ask("No run has been told yet, so there is nothing to change. A new run?", acts))
    }

    /// "cut it at forty-two ten": nobody cuts a stick of 42 ft, so the ten may count sixteenths.
    pub(super) fn cut_at(&self, m: &Measure) -> Result<Resolved, Problem> {
        let stick = Length::inches(i64::from(*crate::takeoff::SOLD.last().unwrap_or(&16)) * 12);
        match &m.meaning {
            Meaning::Length(l, _) if m.guess == Some(Guess::SpokenPair) && *l > stick => {
                let (feet, inches) = ((l.q() / 12).floor(), l.q() % Q::from_integer(12));
                let marks = Length::from_q(feet + inches / 16);
                let acts = [marks, Some(*l)].into_iter().flatten();
                let acts = acts.map(|length| Act::Query(Query::Measure { length, shade: m.shade, about: m.about }));
                Ok(self.says(acts.collect(), true))
            }
            _ => self.measured(m),
        }
    }

    /// A measure said alone: read back.
    pub(super) fn measured(&self, m: &Measure) -> Result<Resolved, Problem> {
        if let Meaning::Lumber(l) = m.meaning {
            return Ok(self.says(vec![Act::Query(Query::Actual(l))], false));
        }
        let fits = match &m.meaning {
            Meaning::Bare(n) if !n.fraction && n.value <= 60.into() => {
                let lengths =
                    [Length::from_q(n.value * num_rational::Ratio::from_integer(12)), Length::from_q(n.value)];
                Fits { lengths: lengths.into_iter().flatten().map(|l| (l, Said::Feet)).collect(), doubtful: true }
            }
            // Said alone a length has no slot to be absurd in.
            Meaning::Length(l, said) => Fits { lengths: vec![(*l, *said)], doubtful: false },
            Meaning::Bare(n) => Fits {
                lengths: Length::from_q(n.value).map(|l| (l, Said::Inches)).into_iter().collect(),
                doubtful: false,
            },
            _ => fits(m, SlotId::RunLength, None),
        };
        let acts = fits
            .lengths
            .iter()
            .map(|(length, _)| Act::Query(Query::Measure { length: *length, shade: m.shade, about: m.about }));
        let acts: Vec<Act> = acts.collect();
        if acts.is_empty() {
            return Err(Problem::Ask("What is that a measure of?", Vec::new()));
        }
        Ok(self.says(acts, fits.doubtful))
    }

    pub(super) fn says(&self, acts: Vec<Act>, ask: bool) -> Resolved {
        Resolved { acts, ask, focus: self.session.talk.focus.clone(), then: None }
    }

    /// "keep the 14": nothing changes when that is what stands.
    pub(super) fn keep(&self, m: &Measure) -> Result<Resolved, Problem> {
        let stands = targets::focus(self.session, &self.session.job).and_then(|r| r.length);
        let said = fits(m, SlotId::RunLength, self.session.talk.focus.said);
        if said.lengths.iter().any(|(l, _)| stands.is_some_and(|t| t.length == *l)) {
            return Ok(self.says(vec![Act::Talk(Talk::Leave)], false));
        }
        Err(Problem::Ask("That is not what stands. Say the run and its length.", Vec::new()))
    }
}

/// Said beside what a line is about.
fn is_aside(clause: &Clause) -> bool {
    matches!(clause, Clause::Fine | Clause::Talk(Talk::Hello | Talk::Thanks))
}
