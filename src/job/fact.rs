//! One resolved change to the job: no "it", no bare number left.

use super::{
    Basis, Choice, DeckFact, End, FlightFact, Gate, Order, RunId, Setting, Stage, StairMeasure, StairPlace, Stairs,
    Told, Turn,
};
use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId;

/// What is set on a run; `None` leaves a field as it was.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RunPatch {
    /// A name.
    pub name: Option<String>,
    /// A length.
    pub length: Option<Told>,
    /// What it was measured between.
    pub basis: Option<Basis>,
    /// The end it starts from.
    pub from: Option<End>,
    /// The end it goes to.
    pub to: Option<End>,
    /// A gate, or `Some(None)` to take it away.
    pub gate: Option<Option<Gate>>,
    /// All its stair openings; none to take them away.
    pub stairs: Option<Stairs>,
    /// A bay count, or `Some(None)` for the fewest again.
    pub bays: Option<Option<u16>>,
    /// Makes the run a side of the outline.
    pub turn: Option<Turn>,
    /// Where posts are wanted or not wanted, in the order told.
    pub choices: Vec<Choice>,
}

impl RunPatch {
    /// Takes in what a later patch sets; the later wins.
    pub fn take(&mut self, later: RunPatch) {
        self.name = later.name.or_else(|| self.name.take());
        self.length = later.length.or(self.length);
        self.basis = later.basis.or(self.basis);
        self.from = later.from.or(self.from);
        self.to = later.to.or(self.to);
        self.gate = later.gate.or(self.gate);
        self.stairs = later.stairs.or_else(|| self.stairs.take());
        self.bays = later.bays.or(self.bays);
        self.turn = later.turn.or(self.turn);
        // Told twice in one breath, a choice is one.
        let again = |c: &Choice, before: &[Choice]| before.last() == Some(c);
        for choice in later.choices {
            if !again(&choice, &self.choices) {
                self.choices.push(choice);
            }
        }
    }

    /// True when nothing is set.
    pub fn is_empty(&self) -> bool {
        *self == RunPatch::default()
    }
}

/// One resolved change to the job.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// Sets fields on a run; makes the run when it is not there.
    Run(RunId, RunPatch),
    /// Takes a run away; its number is not used again.
    DropRun(RunId),
    /// Sets one setting.
    Set(Setting),
    /// The deck's length along the house.
    DeckAlong(Length),
    /// How far the deck comes out.
    DeckOut(Length),
    /// A fact of the deck as a whole.
    Deck(DeckFact),
    /// How wide the stairs are, where no run holds them.
    StairWidth(Length),
    /// What that width was measured between.
    StairMeasure(StairMeasure),
    /// One fact of the stairs, for every flight not told otherwise.
    Flight(FlightFact),
    /// Where they are, before the side they stand in was told.
    StairPlace(StairPlace),
    /// No stairs at all: what was told of any is dropped.
    NoStairs,
    /// A note, sanitised: it stays words and never becomes layout.
    Note(String),
    /// Takes a note away by its number.
    DropNote(u32),
    /// Something for the parts, the saw or the yard.
    Order(Order),
    /// A figure of the table that no other part of the job keeps: it stands for the questions after it.
    Row(RowId, Value),
    /// Such a figure taken back.
    DropRow(RowId),
    /// A stage of the work done, or not done after all.
    Done(Stage, bool),
}
