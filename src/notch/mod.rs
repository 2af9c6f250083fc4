//! What of a post's foot comes off, where it is marked, how it is cut.
//!
//! A post stands centred on the baluster line. Where that brings its foot over the deck,
//! the part over the deck is cut away up to the walking surface: the shoulder sits on the
//! decking, and the leg, what is left, runs down past it.
//!
//! 1. `ground` finds each post's spot on the deck's edge: on the whole outline where the
//!    walk comes home, else on a straight edge or a corner of its own.
//! 2. `brink` gives the region of the deck at one level: the decking, and what it overhangs.
//! 3. `overlay` lays the footprint over it, with a polygon library on a whole-number grid.
//! 4. [`Cut`] and [`Shape`] say what comes off; [`Stack`] where it is marked along the post;
//!    [`Saw`] what the blade reaches; [`batches`] which posts are cut alike; [`draw_foot`]
//!    and [`draw_faces`] show it.
//!
//! Everything here is a pure function of the job. What is left is judged in `strength`.

mod brink;
mod cut;
mod draw;
mod face;
mod feet;
mod ground;
mod level;
mod overlay;
mod point;
mod same;
mod saw;
mod shape;
mod stack;
mod tidy;

pub use cut::{Cut, Depths, Size, Spot};
pub use draw::{draw_faces, draw_foot};
pub use face::{Face, telling};
pub use feet::{Fault, Feet, Foot, Post, Uncut, feet, feet_with};
pub use level::{Level, section_corners};
pub use same::{Batch, batches, same_cut};
pub use saw::Saw;
pub use shape::{Hand, Shape};
pub use stack::{Bolts, Stack, Untold};
