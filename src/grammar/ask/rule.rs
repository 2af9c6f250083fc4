//! A question that a rule answers.

use crate::limits::Limit;

/// A limit and its source; where it is a word on what was asked, that.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RuleAsk {
    /// The limit.
    pub limit: &'static Limit,
    /// That it is so, or may be done, or that it is not; `None` where the rule alone is the answer.
    pub says: Option<bool>,
}

impl From<&'static Limit> for RuleAsk {
    fn from(limit: &'static Limit) -> RuleAsk {
        RuleAsk { limit, says: None }
    }
}
