//! The ways one line may be meant, so far.

use super::{Branch, Branches, MOST_CHOICES, Problem};

/// The ways a line may be meant: one at least, whatever was read.
#[derive(Clone, Debug)]
pub(super) struct Ways {
    first: Branch,
    more: Vec<Branch>,
}

impl Ways {
    /// One way, and no doubt.
    pub fn one(first: Branch) -> Ways {
        Ways { first, more: Vec::new() }
    }

    /// The likeliest way.
    pub fn first(&self) -> &Branch {
        &self.first
    }

    /// Every way, likeliest first.
    pub fn iter(&self) -> impl Iterator<Item = &Branch> {
        std::iter::once(&self.first).chain(&self.more)
    }

    /// How many ways there are.
    pub fn len(&self) -> usize {
        1 + self.more.len()
    }

    /// Every way taken a step further; a problem where none can be.
    pub fn grow(self, step: impl Fn(Branch) -> Branches) -> Result<Ways, Problem> {
        let mut all = grow(self.into_vec(), step)?.into_iter();
        let first = all.next().ok_or(Problem::NoLength)?;
        Ok(Ways { first, more: all.collect() })
    }

    /// The ways as a list.
    pub fn into_vec(self) -> Vec<Branch> {
        std::iter::once(self.first).chain(self.more).collect()
    }
}

/// Grows every branch; those that cannot be are cut, unless none is left.
pub(super) fn grow(branches: Vec<Branch>, step: impl Fn(Branch) -> Branches) -> Branches {
    let mut grown = Vec::new();
    let mut problem = None;
    for branch in branches {
        match step(branch) {
            Ok(more) => grown.extend(more),
            Err(p) => problem = problem.or(Some(p)),
        }
    }
    if grown.len() > MOST_CHOICES * 2 {
        return Err(Problem::Ask("That can be meant in too many ways: say it one piece at a time.", Vec::new()));
    }
    some(grown, problem)
}

/// The branches that can be, of those made one for each length a measure may be.
pub(super) fn first_problem(branches: Vec<Result<Branch, Problem>>) -> Branches {
    let mut out = Vec::new();
    let mut problem = None;
    for b in branches {
        match b {
            Ok(b) => out.push(b),
            Err(p) => problem = problem.or(Some(p)),
        }
    }
    some(out, problem)
}

/// Some branches, or why there is none: a measure that is no length ("16s" counts pieces) makes none.
fn some(branches: Vec<Branch>, problem: Option<Problem>) -> Branches {
    if branches.is_empty() { Err(problem.unwrap_or(Problem::NoLength)) } else { Ok(branches) }
}
