//! The words questions about stairs, handrails and gates are put in: `grammar/flight.toml`.

use super::sense::{Row, spelled_from};

/// A word by what it means in such a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)] // The words themselves stand in `grammar/flight.toml`.
pub enum FlightWord {
    Steps,
    Stairs,
    Riser,
    Rise,
    Total,
    Tread,
    Treads,
    Run,
    Out,
    Rake,
    Nosing,
    Off,
    Wide,
    High,
    Long,
    Deck,
    Rail,
    LevelRail,
    BottomRail,
    Handrail,
    Grip,
    Cap,
    Round,
    Wall,
    Ends,
    Projects,
    Left,
    Post,
    Mid,
    Newel,
    TopPost,
    Meet,
    Triangle,
    Gate,
    Leaf,
    Opening,
    Hinge,
    Latch,
    Each,
    Brace,
    Square,
    Sag,
    Swing,
    Pool,
    SelfClose,
    Size,
    Under,
    Landing,
    Deep,
    Ok,
    Apart,
    Top,
    Bottom,
    Middle,
    On,
    Lowest,
    Baluster,
    Fill,
    /// "is", "does": asks where it opens.
    Aux,
    How,
    Which,
    PoolGate,
    Not,
    Gap,
    Lift,
    OpenRiser,
    Closed,
    OneGo,
    /// Read over, and named.
    Idle,
}

/// The listed spellings that begin with this word, longest first.
pub fn spellings(first: &str) -> &'static [Row<FlightWord>] {
    spelled_from(FLIGHT_WORDS, &FLIGHT_WORDS_FROM, first)
}

/// True for a word that is listed by itself.
pub fn is_listed(word: &str) -> bool {
    spellings(word).iter().any(|(words, _)| words.len() == 1)
}

include!(concat!(env!("OUT_DIR"), "/flight_words.rs"));
