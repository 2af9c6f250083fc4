//! Facts of the deck as a whole that are no length of a side.

use super::apply::in_range;
use super::{Impossible, Job, SlotId};
use crate::measure::Length;

/// A fact of the deck as a whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DeckFact {
    /// Another deck: the runs, the deck's sizes and its stairs go; settings and notes stand.
    New,
    /// Everything told goes, settings and notes as well.
    StartOver,
    /// How wide a walkway or another strip of deck is, that lies along no house.
    Wide(Length),
}

impl Job {
    /// Takes a fact of the deck in. Numbers of runs and notes once given out stay given out.
    pub(super) fn take_deck(&mut self, fact: DeckFact) -> Result<(), Impossible> {
        match fact {
            DeckFact::New => {
                let (settings, notes) = (self.settings.clone(), self.notes.clone());
                *self = Job { settings, notes, ..self.blank() };
            }
            DeckFact::StartOver => *self = self.blank(),
            DeckFact::Wide(l) => self.deck_wide = Some(in_range(SlotId::DeckSide, l)?),
        }
        Ok(())
    }

    fn blank(&self) -> Job {
        Job { last_run: self.last_run, last_note: self.last_note, ..Job::default() }
    }
}
