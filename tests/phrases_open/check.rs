//! What one check finds, and what it looks at.

use super::record::Line;
use serde_json::{Map, Value};

/// What became of one expected thing.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// It came.
    Met,
    /// It is not there; what stands in its place.
    Missing(String),
    /// Something else is there.
    Contradicts(String),
    /// Only a person can judge it.
    Unchecked,
}

impl Found {
    /// Met where `is` holds, else contradicted by what `got` says.
    pub fn is(is: bool, got: impl std::fmt::Display) -> Found {
        if is { Found::Met } else { Found::Contradicts(got.to_string()) }
    }

    /// Met where `has` holds, else missing.
    pub fn has(has: bool, lack: impl std::fmt::Display) -> Found {
        if has { Found::Met } else { Found::Missing(lack.to_string()) }
    }

    /// The gravest of several: contradicted, missing, unchecked, met.
    pub fn worst(all: impl IntoIterator<Item = Found>) -> Found {
        all.into_iter().max_by_key(Found::weight).unwrap_or(Found::Met)
    }

    /// This, or `other` where it is less grave.
    pub fn or(self, other: impl FnOnce() -> Found) -> Found {
        if self == Found::Met {
            return self;
        }
        let other = other();
        if other.weight() < self.weight() && other != Found::Unchecked { other } else { self }
    }

    fn weight(&self) -> u8 {
        match self {
            Found::Met => 0,
            Found::Unchecked => 1,
            Found::Missing(_) => 2,
            Found::Contradicts(_) => 3,
        }
    }
}

/// Where an expected thing must stand, which decides whose failure its absence is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// In the job after the talk: any line may have failed to put it there.
    Job,
    /// In the figures of the last answer.
    Figures,
    /// In the words or the status of the last answer.
    Words,
}

/// What a check may look at.
#[derive(Clone, Copy, Debug)]
pub struct Seen<'a> {
    /// The job looked at: as a rule the one after the last line.
    pub job: &'a Value,
    /// The last line's JSON object.
    pub last: &'a Value,
    /// Every line of the talk.
    pub lines: &'a [Line],
    /// All that is expected.
    pub expect: &'a Map<String, Value>,
}

impl<'a> Seen<'a> {
    /// The figures of the last answer.
    pub fn values(&self) -> &'a Value {
        &self.last["values"]
    }

    /// The last line's status.
    pub fn status(&self) -> &'a str {
        self.last["status"].as_str().unwrap_or("")
    }

    /// The last line's plain answer, in lower case.
    pub fn text(&self) -> String {
        self.last["text"].as_str().unwrap_or("").to_lowercase()
    }

    /// The last line's read-back, in lower case.
    pub fn readback(&self) -> String {
        self.last["readback"].as_str().unwrap_or("").to_lowercase()
    }

    /// How far a length may lie from the one expected, in inches: what is told as `tol_in`,
    /// else what six decimals can hold.
    pub fn tolerance(&self) -> f64 {
        self.expect.get("tol_in").and_then(Value::as_f64).unwrap_or(1e-5)
    }
}
