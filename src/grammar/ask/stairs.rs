//! Questions about stairs as told.

/// A question about stairs as told; what is worked out is a [`super::FlightAsk`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StairAsk {
    /// The stairs told: how wide, where, how many risers.
    Told,
}
