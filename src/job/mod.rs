//! What has been told: runs, gates, settings, notes; and the facts that change them.

pub(crate) mod apply;
mod deck;
mod fact;
pub mod outline;
mod retold;
mod run;
mod settings;
mod slots;
pub mod walk;

pub use apply::{Impossible, Job, NumberedNote};
pub use deck::DeckFact;
pub use fact::{Fact, RunPatch};
pub use retold::retold;
pub use run::{Basis, End, Flank, Gate, GateAt, Run, RunId, StairAt, StairOpening, Told, Turn};
pub use settings::{
    Blocking, Fixing, HouseEnd, JoistsRun, Mount, NotchTold, PostRole, PostSize, Setting, Settings, View,
};
pub use slots::{BareUnit, SLOTS, Slot, SlotId};
