//! Do, offer or leave: by the odds of a candidate, for each kind of act its own.
//!
//! The odds that the best candidate is what was meant are a logistic over what speaks for it (`evidence`), fitted on lines of meanings the
//! scores had not seen by `railhand-train odds`; `grammar/talk/odds.weights` holds the weights.

use super::evidence::{Evidence, FEATURES, Kind};
use crate::grammar::{Act, Query, Talk};
use std::sync::LazyLock;

/// For each kind a weight for all, then one for each feature.
type Weights = Vec<(Kind, [f32; FEATURES + 1])>;

static WEIGHTS: LazyLock<Weights> = LazyLock::new(|| read(include_str!("../../../grammar/talk/odds.weights")));

/// The weights as written; rows that are none are left out.
fn read(text: &str) -> Weights {
    let row = |line: &str| {
        let mut parts = line.split_whitespace();
        let kind = Kind::named(parts.next()?)?;
        let numbers: Vec<f32> = parts.map(str::parse).collect::<Result<_, _>>().ok()?;
        Some((kind, numbers.try_into().ok()?))
    };
    text.lines().filter_map(row).collect()
}

/// The probability that the best candidate is what was meant.
pub(super) fn right(evidence: &Evidence) -> f32 {
    let Some((_, weights)) = WEIGHTS.iter().find(|(kind, _)| *kind == evidence.kind) else { return 0.0 };
    let [all, each @ ..] = weights;
    let sum = all + each.iter().zip(&evidence.features).map(|(w, f)| w * f).sum::<f32>();
    1.0 / (1.0 + (-sum).exp())
}

/// The least probability at which an act is done without asking. A wrong telling stays; a wrong question says what it took.
///
/// Set on a third of the bank's meanings, read by scores that had not seen them.
pub(super) fn sure(act: &Act) -> f32 {
    let kind = Kind::of(act);
    #[cfg(feature = "fold-weights")]
    if let Some(least) = given(kind.name()) {
        return least;
    }
    match kind {
        Kind::Tell => 0.7,
        Kind::Given => 0.35,
        Kind::Figure | Kind::Judge => 0.4,
        Kind::Rule => 0.35,
        Kind::Sum => 0.6,
        // What leaves all as it is can do no harm.
        Kind::Other if matches!(act, Act::Talk(Talk::Leave)) => 0.3,
        Kind::Other => 0.6,
    }
}

/// The least probability of a kind as given for measuring: "tell=0.5 figure=0.4".
#[cfg(feature = "fold-weights")]
fn given(kind: &str) -> Option<f32> {
    let all = std::env::var("RAILHAND_SURE").ok()?;
    let of_kind = |pair: &str| pair.split_once('=').filter(|(name, _)| *name == kind)?.1.parse().ok();
    all.split(' ').find_map(of_kind)
}

/// The least probability at which an answer needs no word on what else the line may have asked.
pub(super) const CERTAIN: f32 = 0.5;

/// The least probability at which a telling is done though a word is left over that may place or bend something: it is named. Of 165 such lines
/// the scores had not seen 82 in a hundred were meant so, of those without such a word 87.
pub(super) const WHATEVER_IS_LEFT: f32 = 0.85;

/// The least share of the odds at which a candidate is offered.
pub(super) fn worth_offering(act: &Act) -> f32 {
    match act {
        Act::Tell(_) | Act::TellWith(..) | Act::Query(Query::Given(_)) => 0.2,
        Act::Query(Query::Rule(_)) => 0.15,
        Act::Sum(_) => 0.25,
        _ => 0.08,
    }
}

/// The least share of the odds at which a question is offered where nothing else is.
pub(super) const NEAREST: f32 = 0.02;

/// The least probability at which a question that still lacks something says what.
pub(super) const WORTH_ASKING: f32 = 0.35;

/// The least probability at which a telling that was offered is taken as meant where the talk goes on without an answer.
pub(super) const TAKEN_AS_MEANT: f32 = 0.4;

/// How many times as likely as the next it must be for that.
pub(super) const AHEAD: f32 = 2.0;

/// The least probability that a line can be meant more than one way at which it is asked back where nothing is made of the whole of it.
pub(super) const UNCLEAR: f32 = 0.5;

/// The least at which it is asked back though the grammar reads the whole of it as a telling.
pub(super) const QUITE_UNCLEAR: f32 = 0.9;

/// A word of another trade makes a line that trade's, unless the odds that it is are under this.
pub(super) const FOREIGN: f32 = 0.03;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_its_weights() {
        for kind in Kind::ALL {
            assert!(WEIGHTS.iter().any(|(k, _)| *k == kind), "{}", kind.name());
        }
    }

    #[test]
    fn more_of_the_odds_is_likelier_right_and_a_row_that_is_none_is_left_out() {
        let of = |share: f32| {
            let mut features = [0.0; FEATURES];
            features[0] = (share / (1.0 - share)).ln();
            right(&Evidence { kind: Kind::Figure, features })
        };
        assert!(of(0.9) > of(0.5) && of(0.5) > of(0.1));
        assert!(read("# tell\nfigure 1 2\nnothing 1").is_empty());
    }
}
