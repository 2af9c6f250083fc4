//! What has been told: runs, gates, settings, notes; and the facts that change them.

pub(crate) mod apply;
mod choice;
mod deck;
mod fact;
mod foot;
mod gate;
mod law;
mod order;
pub mod outline;
mod retold;
mod rows;
mod run;
mod settings;
mod stage;
mod stairs;
mod timber;
pub mod walk;

pub use crate::quantity::{BareUnit, RowId as SlotId};
pub use apply::{Impossible, Job, NumberedNote};
pub use choice::{Choice, Choices, EndOf, KeepOff, Spot, Thing};
pub use deck::DeckFact;
pub use fact::{Fact, RunPatch};
pub use foot::{Anyway, Foot, FootTold, Nosing, Turned};
pub use gate::{Gate, GateAt, Hung, Jamb, Swing};
pub use law::{Law, LawTold, Local};
pub use order::{BalustersAt, LongPart, Member, Order, OrderBook, Percent, StartWith, StickOf};
pub use retold::retold;
pub use run::{Basis, End, Run, RunId, Told, Turn};
pub use settings::{
    Blocking, Fixing, HouseEnd, JoistsRun, Mount, NotchTold, PostRole, PostSize, Setting, Settings, View,
};
pub use stage::Stage;
pub use stairs::{
    Fall, Flank, Flight, FlightFact, Head, Lands, Newels, OpenSides, RiserKind, StairAt, StairMeasure, StairOpening,
    StairPlace, Stairs,
};
pub use timber::{Duration, Grade, Lie, Species, Timber, TimberTold};
