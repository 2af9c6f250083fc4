//! A strength question's measures resolved.

use super::{MOST_CHOICES, Problem, Resolved, Resolver};
use crate::grammar::ask::{About, StrengthAsk};
use crate::grammar::draft::StrengthDraft;
use crate::grammar::{Act, Query};
use crate::job::{Fact, PostRole, Setting, SlotId};
use crate::layout::post_width;
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;

impl Resolver<'_> {
    /// The question with its span and height as lengths; a bare number that may be two is asked.
    pub(super) fn strength(&self, draft: &StrengthDraft) -> Result<Resolved, Problem> {
        let (mut spans, span_doubt) = lengths(draft.span.as_ref(), SlotId::RunLength)?;
        if spans == [None] && draft.ask.post.is_some() && draft.ask.about == About::Reach {
            spans = vec![self.bay_supposed(draft)];
        }
        let (heights, height_doubt) = lengths(draft.height.as_ref(), SlotId::HeightTop)?;
        let span = |l: Length| if draft.on_centre && draft.span.is_some() { l - self.post(draft) } else { l };
        let ask = |s: &Option<Length>, h: &Option<Length>| StrengthAsk { span: s.map(span), height: *h, ..draft.ask };
        let asks = spans.iter().flat_map(|s| heights.iter().map(move |h| ask(s, h)));
        let acts: Vec<Act> = asks.map(|a| Act::Query(Query::Strength(a))).collect();
        if acts.len() > MOST_CHOICES {
            return Err(Problem::Ask("That can be meant in too many ways: say feet or inches.", Vec::new()));
        }
        // A question has no place for "about" or "strong": what would be lost is asked about.
        let shaded = |m: &Measure| m.about || m.shade.is_some();
        let doubt = span_doubt || height_doubt || acts.len() > 1;
        let ask = doubt || draft.span.iter().chain(&draft.height).any(shaded);
        Ok(self.says(acts, ask))
    }

    /// "would a 6x6 let me": the bay just supposed, clear between posts so wide.
    fn bay_supposed(&self, draft: &StrengthDraft) -> Option<Length> {
        let of = |fact: &Fact| match fact {
            Fact::Set(Setting::ClearMax(l)) => Some(*l),
            Fact::Set(Setting::CentreMax(l)) => Some(*l - self.post(draft)),
            _ => None,
        };
        self.session.talk.supposed.iter().rev().find_map(of)
    }

    /// A post's width: on centre less this is clear.
    fn post(&self, draft: &StrengthDraft) -> Length {
        let asked = draft.ask.post.and_then(|l| l.dressed()).map(|(_, wide)| wide);
        let stands = || post_width(&self.session.job.settings, &[PostRole::Line]).as_length();
        asked.or_else(stands).unwrap_or(Length::ZERO)
    }
}

/// The lengths a measure may be, and whether even one is to be asked about.
fn lengths(m: Option<&Measure>, slot: SlotId) -> Result<(Vec<Option<Length>>, bool), Problem> {
    let Some(m) = m else { return Ok((vec![None], false)) };
    let fits = fits(m, slot, None);
    let found: Vec<Option<Length>> = fits.lengths.into_iter().map(|(l, _)| Some(l)).collect();
    if found.is_empty() {
        return Err(Problem::Ask("How much? I can't take that as a length.", Vec::new()));
    }
    Ok((found, fits.doubtful))
}
