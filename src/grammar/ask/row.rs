//! A row of the table asked for, with what the line gives for it.

use crate::figure::Value;
use crate::quantity::RowId;

/// One row wanted. What is given counts for this answer alone and is never kept.
#[derive(Clone, Debug, PartialEq)]
pub struct RowAsk {
    /// The row.
    pub want: RowId,
    /// The premises, in the order said.
    pub given: Vec<(RowId, Value)>,
}
