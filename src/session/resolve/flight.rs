//! Questions about stairs and gates: their numbers get their units.

use super::{Problem, Resolver};
use crate::grammar::Query;
use crate::grammar::ask::{FlightAsk, FlightWhat, Given, Size};
use crate::grammar::flight_draft::FlightDraft;
use crate::job::{Flight, Job, SlotId};
use crate::session::lengths::fits;

impl Resolver<'_> {
    pub(super) fn asked_flight(&self, draft: &FlightDraft, job: &Job) -> Result<Query, Problem> {
        // "do I need a mid post" names no stairs: where a run was told as well it may be of that.
        if draft.what == FlightWhat::Posts && !draft.named {
            match (job.flight == Flight::default(), job.runs.is_empty()) {
                (false, true) => {}
                (true, false) => return Ok(Query::Bays(None)),
                _ => return Err(Problem::Ask("A mid post down the stairs, or in a run? Say which.", Vec::new())),
            }
        }
        let mut given = Given {
            risers: draft.given.risers,
            treads: draft.given.treads,
            steps: draft.given.steps,
            lumber: draft.given.lumber,
            cap: draft.given.cap,
            ..Given::default()
        };
        for (size, m) in &draft.given.sizes {
            let slot = slot(*size);
            let found = fits(m, slot, None);
            match found.lengths[..] {
                [(l, _)] if slot.takes(l) && !found.doubtful => given.sizes.insert(of(draft.what, *size), l),
                _ => {
                    return Err(Problem::Ask(
                        "One of those figures can be meant in two ways: say it with its unit.",
                        Vec::new(),
                    ));
                }
            };
        }
        largest_first(&mut given);
        Ok(Query::Flight(FlightAsk { what: draft.what, given }))
    }
}

/// A gate asked about by its width is that wide, not its opening.
fn of(what: FlightWhat, size: Size) -> Size {
    if what == FlightWhat::Wide && size == Size::Opening { Size::Leaf } else { size }
}

/// The riser is the larger of two that differ.
fn largest_first(given: &mut Given) {
    if let (Some(rise), Some(least)) = (given.size(Size::Rise), given.size(Size::LeastRise))
        && least > rise
    {
        given.sizes.insert(Size::Rise, least);
        given.sizes.insert(Size::LeastRise, rise);
    }
}

/// The slot whose bare unit and sane range a size goes by.
fn slot(size: Size) -> SlotId {
    match size {
        Size::Rise | Size::LeastRise => SlotId::Rise,
        Size::TotalRise => SlotId::TotalRise,
        Size::Tread => SlotId::Tread,
        Size::TotalRun => SlotId::TotalRun,
        Size::Nosing | Size::HingeGap | Size::LatchGap | Size::Round | Size::Across | Size::Deep => SlotId::Nosing,
        Size::Width => SlotId::StairWidth,
        Size::Height => SlotId::StairHeight,
        Size::Level | Size::LeafHeight | Size::RailsApart | Size::LatchHeight => SlotId::HeightTop,
        Size::Gap => SlotId::GapMax,
        Size::OpenRiser => SlotId::OpenRiser,
        Size::Lift | Size::Baluster | Size::Projection => SlotId::GapUnder,
        Size::Opening | Size::SecondOpening | Size::ThirdOpening | Size::Leaf => SlotId::GateWidth,
    }
}
