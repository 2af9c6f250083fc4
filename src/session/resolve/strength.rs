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

    /// "and on edge": what was asked last, with what is said now in its place.
    pub(super) fn strength_more(&self, draft: &StrengthDraft) -> Result<Resolved, Problem> {
        // "what about a 2x6 on edge", asked first: of the bays as they stand.
        let rail = draft.ask.rail.is_some() && draft.ask.lie.is_some() && !self.session.job.runs.is_empty();
        let first = rail.then(|| StrengthAsk::of(About::Bay));
        let Some(last) = self.session.talk.weighed.or(first) else {
            return Err(Problem::Unfit("Of what? Ask it whole, \"is a 2x6 on edge ok at 6 ft\"."));
        };
        // Posts supposed under a bay are a what-if of the layout.
        if draft.ask.post.is_some() && matches!(last.about, About::Bay | About::Reach) {
            return Err(Problem::Unfit("Those posts are of the layout: ask what if with them."));
        }
        let (now, of_post) = (draft.ask, matches!(last.about, About::Post | About::Left | About::Bolt));
        let (span, height) = match (&draft.span, &draft.height) {
            // Of a post a length is its height.
            (Some(m), None) if of_post => (None, Some(m.clone())),
            (span, height) => (span.clone(), height.clone()),
        };
        let merged = StrengthAsk {
            post: now.post.or(last.post),
            rail: now.rail.or(last.rail),
            lie: now.lie.or(last.lie),
            species: now.species.or(last.species),
            ..last
        };
        let kept = StrengthDraft { ask: merged, span, height, on_centre: draft.on_centre };
        let mut resolved = self.strength(&kept)?;
        for act in &mut resolved.acts {
            if let Act::Query(Query::Strength(ask)) = act {
                ask.span = ask.span.or(last.span);
                ask.height = ask.height.or(last.height);
            }
        }
        Ok(resolved)
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
        return Err(Problem::NoLength);
    }
    Ok((found, fits.doubtful))
}
