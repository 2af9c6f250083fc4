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
    /// What can be said of one task.
    Help(Task),
}

/// A task help is given with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// Runs and decks.
    Layout,
    /// Where posts stand, and their size.
    Posts,
    /// The posts' feet.
    Notches,
    /// What fills the bays.
    Balusters,
    /// Stairs.
    Stairs,
    /// A gate.
    Gate,
    /// Span and strength.
    Strength,
    /// The saw, the yard, the money.
    Order,
    /// What the code says.
    Code,
    /// Notes and the job file.
    Notes,
}

impl Task {
    /// Every task.
    pub const ALL: [Task; 10] = [
        Task::Layout,
        Task::Posts,
        Task::Notches,
        Task::Balusters,
        Task::Stairs,
        Task::Gate,
        Task::Strength,
        Task::Order,
        Task::Code,
        Task::Notes,
    ];

    /// The task in one word.
    pub fn name(self) -> &'static str {
        match self {
            Task::Layout => "layout",
            Task::Posts => "posts",
            Task::Notches => "notches",
            Task::Balusters => "balusters",
            Task::Stairs => "stairs",
            Task::Gate => "gate",
            Task::Strength => "strength",
            Task::Order => "order",
            Task::Code => "code",
            Task::Notes => "notes",
        }
    }
}
