//! A "why" with words of its own, its measures resolved.

use super::{MOST_CHOICES, Problem, Resolved, Resolver};
use crate::grammar::ask::{NotchAsk, WhyAsk};
use crate::grammar::draft::WhyDraft;
use crate::grammar::{Act, Query};
use crate::job::{PostRole, PostSize, RunId, SlotId};
use crate::measure::{Length, Lumber, Meaning, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

impl Resolver<'_> {
    /// The question with its lengths; a bare number that may be two is asked.
    pub(super) fn why(&self, draft: &WhyDraft) -> Result<Resolved, Problem> {
        let one = |ask| Ok(self.says(vec![Act::Query(Query::WhyOf(ask))], false));
        match draft {
            WhyDraft::NotBay(m, apart) => self.of_lengths(m, SlotId::ClearMax, |l| WhyAsk::NotBay(l, *apart)),
            WhyDraft::NotBays(n) => one(WhyAsk::NotBays(self.spoken_of()?, *n)),
            WhyDraft::PostAt(m) => {
                let run = self.spoken_of()?;
                self.of_lengths(m, SlotId::RunLength, |l| WhyAsk::PostAt(run, l))
            }
            WhyDraft::LinePosts => one(WhyAsk::LinePosts(self.spoken_of()?)),
            WhyDraft::Figure(m) => self.figure(m),
            WhyDraft::Counted(what, n) => one(WhyAsk::Counted(*what, *n)),
            WhyDraft::Notch => {
                let may = NotchAsk::May(self.lumber_of_posts());
                Ok(self.says(vec![Act::Query(Query::Notch(may))], false))
            }
        }
    }

    fn spoken_of(&self) -> Result<RunId, Problem> {
        let none =
            Problem::Ask("No run has been told yet, so nothing stands anywhere. Which run, how long?", Vec::new());
        targets::focus(self.session, &self.session.job).map(|r| r.id).ok_or(none)
    }

    fn of_lengths(&self, m: &Measure, slot: SlotId, ask: impl Fn(Length) -> WhyAsk) -> Result<Resolved, Problem> {
        let fits = fits(m, slot, None);
        let acts: Vec<Act> = fits.lengths.iter().map(|(l, _)| Act::Query(Query::WhyOf(ask(*l)))).collect();
        if acts.is_empty() || acts.len() > MOST_CHOICES {
            return Err(Problem::NoLength);
        }
        let doubt = fits.doubtful || acts.len() > 1 || shaded(m);
        Ok(self.says(acts, doubt))
    }

    /// A figure as said: one without a unit is looked for in any.
    fn figure(&self, m: &Measure) -> Result<Resolved, Problem> {
        let asks: Vec<WhyAsk> = match &m.meaning {
            Meaning::Bare(n) => vec![WhyAsk::Number(n.value)],
            Meaning::Length(l, _) => vec![WhyAsk::Length(*l)],
            Meaning::Doubt(_, lengths) => lengths.iter().map(|l| WhyAsk::Length(*l)).collect(),
            Meaning::Lumber(_) | Meaning::By(..) => Vec::new(),
        };
        if asks.is_empty() || asks.len() > MOST_CHOICES {
            return Err(Problem::Unfit("Which figure? Say it as I said it."));
        }
        let acts: Vec<Act> = asks.into_iter().map(|a| Act::Query(Query::WhyOf(a))).collect();
        let doubt = acts.len() > 1 || shaded(m);
        Ok(self.says(acts, doubt))
    }

    /// The lumber the job's posts are of; a 4x4 where none was told.
    fn lumber_of_posts(&self) -> Lumber {
        match self.session.job.settings.post(PostRole::Line) {
            Some(PostSize::Lumber(l)) => l,
            _ => Lumber::FOUR_BY_FOUR,
        }
    }
}

/// What a question has no place for: lost, it is asked about.
fn shaded(m: &Measure) -> bool {
    m.about || m.shade.is_some()
}
