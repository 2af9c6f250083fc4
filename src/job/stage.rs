//! The stages of a guard's work, ticked off as told.

/// A stage of the work, in the order a crew goes (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Sides measured, the baluster line snapped.
    Lines,
    /// Blocking and hold-downs.
    Blocking,
    /// Every post set.
    Posts,
    /// Rails fixed.
    Rails,
    /// Balusters fixed.
    Balusters,
    /// Caps on.
    Caps,
    /// The guard down the stairs.
    StairGuard,
    /// The gate hung.
    Gate,
}

impl Stage {
    /// Every stage, in order.
    pub const ALL: [Stage; 8] = [
        Stage::Lines,
        Stage::Blocking,
        Stage::Posts,
        Stage::Rails,
        Stage::Balusters,
        Stage::Caps,
        Stage::StairGuard,
        Stage::Gate,
    ];

    /// What is done at that stage, in the trade's words.
    pub fn name(self) -> &'static str {
        match self {
            Stage::Lines => "lines",
            Stage::Blocking => "blocking and hold-downs",
            Stage::Posts => "posts",
            Stage::Rails => "rails",
            Stage::Balusters => "balusters",
            Stage::Caps => "caps",
            Stage::StairGuard => "stair guard",
            Stage::Gate => "gate",
        }
    }
}
