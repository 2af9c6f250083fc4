//! The figures of a spread, each with its reason.

use super::{Spread, Start};
use crate::figure::{Fig, Why};

/// The inputs of a spread as figures of their own.
fn inputs(spread: &Spread, limit: &Fig) -> Vec<(&'static str, Fig)> {
    let o = spread.opening();
    vec![
        ("clear opening", Fig::told(o.clear, "the clear opening")),
        ("one baluster", Fig::told(o.baluster, "one baluster's width")),
        ("gap limit", limit.clone()),
    ]
}

/// How many, as the fewest the limit allows. `limit` is the limit's own figure.
pub fn count_fig(spread: &Spread, limit: &Fig) -> Fig {
    let why = "the fewest whose every gap is under the limit, exactly and as marked on the tape";
    Fig::count(u64::from(spread.count()), Why::Formula(why, inputs(spread, limit)))
}

/// The equal gap.
pub fn gap_fig(spread: &Spread, count: &Fig) -> Fig {
    let formula = match spread.opening().start {
        Start::Gap => "(clear opening - count x one baluster) / (count + 1)",
        Start::Baluster => "(clear opening - count x one baluster) / (count - 1), a baluster tight to each post",
    };
    let o = spread.opening();
    let from = vec![
        ("clear opening", Fig::told(o.clear, "the clear opening")),
        ("one baluster", Fig::told(o.baluster, "one baluster's width")),
        ("count", count.clone()),
    ];
    Fig::length(spread.gap(), Why::Formula(formula, from))
}

/// From one baluster to the next, centre to centre.
pub fn pitch_fig(spread: &Spread, gap: &Fig) -> Fig {
    let baluster = Fig::told(spread.opening().baluster, "one baluster's width");
    let from = vec![("gap", gap.clone()), ("one baluster", baluster)];
    Fig::length(spread.pitch(), Why::Formula("gap + one baluster", from))
}

/// A mark on the rail.
pub fn mark_fig(spread: &Spread, i: u32, gap: &Fig) -> Fig {
    let parts = crate::solve::tape_parts(spread.parts());
    let from = vec![("gap", gap.clone()), ("parts of an inch", parts)];
    Fig::length(spread.mark(i), Why::Formula("its own exact place, start + i x (gap + baluster), rounded once", from))
}

/// A spacer block.
pub fn spacer_fig(spread: &Spread, gap: &Fig) -> Fig {
    Fig::length(spread.spacer(), Why::Formula("the gap to the nearest tape mark", vec![("gap", gap.clone())]))
}

/// The widest gap the marks leave.
pub fn widest_fig(spread: &Spread, gap: &Fig) -> Fig {
    Fig::length(spread.widest(), Why::Formula("the widest gap between rounded marks", vec![("gap", gap.clone())]))
}
