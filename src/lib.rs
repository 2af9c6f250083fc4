//! `railhand` talks a deck guard layout through at the keyboard.
//!
//! The way of a line, one room after the other:
//!
//! 1. [`grammar`] splits a typed line into words, finds islands of measure and
//!    meaning in them, and binds the islands to readings.
//! 2. [`session`] picks one reading or asks, resolves it against what was said
//!    before, and makes the change: `step(&session, line) -> (delta, reply)`, pure.
//! 3. [`job`] holds what has been told; [`quantity`] is the table of all that can be told or asked, and what
//!    follows from what; [`solve`] is where every figure's inputs come from, and [`provide`] hands it what the
//!    engines work out.
//! 4. [`layout`] places posts, [`notch`] cuts their feet,
//!    [`infill`] places balusters; [`stairs`] and [`gate`] carry the guard down a flight and
//!    through a gate; [`strength`] puts what 200 lb asks of a part beside what it is allowed;
//!    [`takeoff`] counts parts and cuts them from stock; [`rules`] looks the result over; [`sums`]
//!    does arithmetic at the prompt.
//! 5. [`reply`] is one value of tagged spans, rendered as plain text or JSON.
//! 6. [`paper`] lays a job out as notes and sheets: what leaves the program.
//! 7. [`store`] keeps what was told in the job file, before the answer is shown.
//! 8. [`console`], [`store`] and the binary are the only rooms that touch the outside.
//!
//! Below them all stand [`measure`] (exact lengths), [`limits`] (limits with their
//! sources) and [`figure`] (a value that cannot be made without its reason).
//! Arrows run one way: no room reaches back up.

#![forbid(unsafe_code)]

pub mod console;
pub mod figure;
pub mod gate;
pub mod grammar;
pub mod infill;
pub mod job;
pub mod layout;
pub mod limits;
pub mod measure;
pub mod notch;
pub mod paper;
pub mod provide;
pub mod quantity;
pub mod reply;
pub mod rules;
pub mod session;
pub mod solve;
pub mod stairs;
pub mod store;
pub mod strength;
pub mod sums;
pub mod takeoff;
