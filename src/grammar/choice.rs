//! Where posts are wanted or not wanted, as said.

use super::draft::{Mark, Which};
use crate::measure::Measure;

/// A choice as said: which run it is of is resolved later.
#[derive(Clone, Debug, PartialEq)]
pub enum ChoiceDraft {
    /// Posts at these marks; or, taken back, no longer there.
    Posts {
        /// The marks.
        at: Vec<Measure>,
        /// The end they are from, where said.
        from: Option<Mark>,
        /// True for "no post at".
        gone: bool,
    },
    /// "post 2 landed at 61 1/4": a post already in, by its number in the run.
    Landed {
        /// Which, from 1.
        number: u16,
        /// Its mark.
        at: Measure,
        /// The end that is from, where said.
        from: Option<Mark>,
    },
    /// A post in the middle of the run.
    Middle,
    /// "move the post to 6 ft".
    Move {
        /// The post's own mark, where said.
        which: Option<Measure>,
        /// Its new one.
        to: Measure,
        /// The end that is from, where said.
        from: Option<Mark>,
    },
    /// Posts mirrored about the stairs or the middle; or no longer.
    Mirrored(bool),
    /// No post within so much of a thing.
    KeepOff {
        /// How much.
        by: Measure,
        /// What of.
        of: Off,
    },
    /// No post from one mark to another.
    Between(Measure, Measure, Option<Mark>),
    /// Posts kept off nothing any more.
    Anywhere,
    /// Plain even bays again.
    Even,
    /// "what if I go 7 foot": a run's length or the bays', the words do not say.
    Go(Measure),
}

/// What posts are to keep off, as said.
#[derive(Clone, Debug, PartialEq)]
pub enum Off {
    /// An end of the run.
    End(Mark),
    /// Both ends that are this.
    Ends(crate::job::End),
    /// The stairs.
    Stairs,
    /// The gate.
    Gate,
    /// A door: where it stands along the run is not known.
    Door,
    /// A place along the run.
    At(Measure, Option<Mark>),
}

/// A choice and the run it was said of.
#[derive(Clone, Debug, PartialEq)]
pub struct ChoiceOf {
    /// The choice.
    pub choice: ChoiceDraft,
    /// The run, where it was named.
    pub on: Option<Which>,
}
