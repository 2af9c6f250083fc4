//! JSON of the readings a line was weighed by.

use crate::session::Considered;
use serde_json::{Value, json};

/// Each reading's plain phrases, its cost, what it leaves out, and why it cannot be taken.
pub(super) fn readings_json(weighed: &[Considered]) -> Value {
    let one = |reading: &Considered| {
        let left_out: Vec<&str> = reading.left_out.iter().map(|t| t.as_str()).collect();
        json!({ "says": reading.says, "cost": reading.cost, "left_out": left_out, "fails": reading.fails })
    };
    weighed.iter().map(one).collect()
}
