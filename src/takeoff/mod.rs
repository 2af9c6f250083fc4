//! From the layout to the saw and the yard: parts, cut lengths, the buying list, the cost.
//!
//! - [`fill`] counts the balusters of every bay, [`parts`] every part with its cut length.
//! - [`lengths`] says how long a part is, from what it stands between.
//! - [`cutplan`] cuts every piece from the fewest feet of stock, proved; [`buy`] makes the
//!   buying list of it, [`cost`] the bill, [`price_rows`] reads a yard's list, [`splits`] a layout that suits the sticks.
//!
//! Everything here is a pure function of the job and its layout.

mod balusters;
mod bays;
mod buy;
mod caps;
pub mod cost;
pub mod cutplan;
mod flights;
mod gates;
pub mod lengths;
mod parts;
mod posts;
mod pricelist;
mod stockwise;

pub use balusters::{CannotFill, FilledBay, baluster_fig, fill, gap_limit_fig, opening, start};
pub use bays::{Bevels, RailBay, Where, rail_bays};
pub use buy::{Bought, SOLD, bill_of, buy, kerf, longest, order};
pub use caps::{CapPiece, caps};
pub use flights::{down_the_stairs, flights, rake_guard, site_of};
pub use gates::{leaf_in, leaf_told};
pub use parts::{BALUSTER, Lack, Part, Parts, RAIL, What, baluster_length, baluster_size, parts, post_length, stack};
pub use posts::{Posts, posts};
pub use pricelist::{MOST_ROWS, PriceRow, price_rows};
pub use stockwise::{Split, splits};
