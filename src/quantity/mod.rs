//! The table of quantities and the relations among them.
//!
//! Everything that can be told or asked is a row of [`ROWS`]; nothing about it stands anywhere else. What follows from what is a
//! [`Relation`] of [`RELATIONS`], written once, with its words. Neither knows a job: [`crate::solve`] does.

mod relation;
mod relations;
mod row;
mod table;

pub use relation::{
    Args, Input, Relation, Way, also, counted, every, first, follows, given, money, nothing, told, value, want,
};
pub use relations::relations;
pub use row::{Alike, BareUnit, Default, Enough, Kind, Owner, Row};
pub use table::{ROWS, RowId};
