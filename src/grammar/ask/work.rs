//! What can be asked of the work itself.

/// A question about what is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum WorkAsk {
    /// What is still untold.
    Untold,
    /// In which order to go about it.
    Order,
    /// What an inspector looks at.
    Inspector,
    /// What is not as it was at the last list.
    Changed,
    /// The notes kept.
    Notes,
}
