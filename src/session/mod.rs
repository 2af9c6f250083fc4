//! The conversation: one line in, a change and a reply out. Pure.
//!
//! [`step`] reads a line ([`crate::grammar`]), chooses one reading or asks ([`choose`]),
//! resolves it against what was said before ([`resolve`]), makes the change and words
//! the answer ([`answer`]). [`retell`] takes in what a job file holds, without an answer.

mod absurd;
mod answer;
mod bind;
mod choose;
mod considered;
mod lengths;
mod meant;
mod peek;
mod point;
mod resolve;
mod retell;
mod state;
mod step;
mod targets;
mod topics;

pub use considered::{Considered, considered};
pub use meant::{Meant, meant};
pub use peek::{MOST_WORDS, Peek, peek};
pub use retell::Retelling;
pub use state::{Delta, Log, Session};
pub use step::{LONGEST, ask, step};
