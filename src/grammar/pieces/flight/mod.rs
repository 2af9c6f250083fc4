//! Questions about stairs, handrails and gates.
//!
//! ```text
//! flight = (word | size | count | ask | filler)+ to the line's end
//! ```
//! A question changes nothing, so it may be put in any order; but every word of it must be one that
//! has a part in such questions (`grammar/flight.toml`) and every number must be given to a size by the
//! words beside it. One word or number more and it is not read here.

mod built;
mod facts;
mod roles;
mod sizes;
mod tokens;
mod what;

pub use built::{between, fall, head, landing, pitch, two_grounds};
pub use facts::{nosing, rail, total_rise, total_run};

use super::Say;
use super::atoms::{In, Out};
use crate::grammar::draft::Clause;
use nom::Input as _;

/// A question about a flight or a gate, to the end of the line.
pub fn ask(input: In<'_>) -> Out<'_, Say> {
    let none = || nom::Err::Error(());
    let tokens = tokens::all(&input).ok_or_else(none)?;
    let draft = what::asked(&tokens).ok_or_else(none)?;
    Ok((input.take_from(input.len()), Say::Clause(Clause::Flight(draft))))
}
