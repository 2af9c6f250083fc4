//! Candidates of every reading in one pool: those with one effect are one, and their odds add up.

use super::About;
use super::asked::{self, Way};
use super::readings::Reading;
use super::{other, sums, told};
use crate::figure::Value;
use crate::grammar::ask::RowAsk;
use crate::grammar::scores::{How, Line};
use crate::grammar::{Act, Query};
use crate::quantity::RowId;

/// Something the line may do.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Candidate {
    pub act: Act,
    pub fig: Option<Value>,
    /// The probability that this is what was meant, among all readings looked at.
    pub odds: f32,
    /// The odds of its likeliest way alone: that is the one it is done in.
    pub best: f32,
    /// How many values have no part in it.
    pub unbound: usize,
    /// It is offered at most.
    pub doubtful: bool,
    /// It would only say what is still needed.
    pub lacks: bool,
    /// Which of the readings its likeliest way is of.
    pub reading: usize,
    /// How many premises have no part in it.
    pub unused: usize,
    /// Nobody gave or told the figure.
    pub by_default: bool,
    /// What its likeliest way costs beyond its reading: a logarithm of odds.
    pub cost: f32,
}

/// The candidates, likeliest first. What no act can be made of keeps its share of the odds.
pub(super) fn pooled(about: &About<'_>, line: &Line, readings: &[Reading<'_>]) -> Vec<Candidate> {
    let mut pool: Vec<Candidate> = Vec::new();
    let mut all = 0.0;
    for (at, reading) in readings.iter().enumerate() {
        let mass = reading.log.exp();
        let ways = ways(about, line, reading);
        tracing::trace!(?reading, ?ways, "reading");
        if ways.is_empty() {
            all += mass * IMPOSSIBLE;
        }
        for way in ways {
            let odds = mass * way.cost.exp();
            all += odds;
            match pool.iter_mut().find(|c| same(c, &way)) {
                Some(there) => {
                    let other = if odds > there.best { there.act.clone() } else { way.act.clone() };
                    if odds > there.best {
                        there.reading = at;
                        (there.act, there.best) = (way.act, odds);
                        (there.unused, there.by_default, there.cost) = (way.unused, way.by_default, way.cost);
                        (there.unbound, there.doubtful) = (way.unbound, way.doubtful);
                    }
                    there.act = with_wants(there.act.clone(), &other);
                    there.odds += odds;
                }
                None => {
                    let Way { act, fig, unbound, doubtful, lacks, unused, by_default, cost, .. } = way;
                    let best = odds;
                    pool.push(Candidate {
                        act,
                        fig,
                        odds,
                        best,
                        unbound,
                        doubtful,
                        lacks,
                        reading: at,
                        unused,
                        by_default,
                        cost,
                    });
                }
            }
        }
    }
    pool.iter_mut().for_each(|c| c.odds /= all.max(f32::MIN_POSITIVE));
    pool.sort_by(|a, b| b.odds.total_cmp(&a.odds));
    pool
}

/// What is left of the odds of a reading nothing can be made of.
const IMPOSSIBLE: f32 = 0.3;

pub(super) fn ways(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Vec<Way> {
    let figures = match reading.act {
        "ask" | "judge" | "suppose" | "why" => asked::asked(about, line, reading),
        "tell" | "drop" => match asked::asked_again(about, line, reading) {
            Some(again) => vec![again],
            None if is_an_opening(about, reading) => {
                asked::asked(about, line, &Reading { act: "ask", wants: vec!["baluster-count"], ..reading.clone() })
            }
            None => {
                told::told(about, line, reading).or_else(|| told::given(about, line, reading)).into_iter().collect()
            }
        },
        "sum" => sums::summed(about, line, reading).into_iter().collect(),
        _ => Vec::new(),
    };
    if figures.is_empty() { other::other(about, line, reading).into_iter().collect() } else { figures }
}

/// True for an opening, what stands in it and how far apart, and nothing else, where no run is told: who says so wants to know how many.
fn is_an_opening(about: &About<'_>, reading: &Reading<'_>) -> bool {
    use RowId::{BalusterSize, BalusterWidth, BayClear, GapMax};
    let rows: Vec<RowId> = reading.filled.iter().filter_map(|f| f.row).collect();
    let once = |of: &[RowId]| rows.iter().filter(|r| of.contains(r)).count() == 1;
    let all = once(&[BayClear]) && once(&[BalusterSize, BalusterWidth]) && once(&[GapMax]) && rows.len() == 3;
    all && reading.act == "tell" && reading.filled.iter().all(|f| f.how == How::Set) && about.job.runs.is_empty()
}

/// True where two candidates do the same.
#[cfg(feature = "fold-weights")]
pub(super) fn is_same(a: &Candidate, b: &Candidate) -> bool {
    let way = Way { fig: b.fig, lacks: b.lacks, ..Way::plain(0.0, b.act.clone()) };
    same(a, &way)
}

/// True where both do the same: one act, one figure for the same rows, whether it is asked or judged, or questions of which one answers the
/// other beside its own.
fn same(candidate: &Candidate, way: &Way) -> bool {
    if candidate.act == way.act || tell_alike(&candidate.act, &way.act) {
        return true;
    }
    let (Some(a), Some(b)) = (row_ask(&candidate.act), row_ask(&way.act)) else { return false };
    let one_figure = way.fig.is_some() && candidate.fig == way.fig && a.wants == b.wants;
    let premises = a.given == b.given && a.supposed == b.supposed && a.mood == b.mood;
    one_figure || premises && candidate.lacks == way.lacks && (answers(a, b) || answers(b, a))
}

/// True where both tell the same facts, in whatever order.
fn tell_alike(a: &Act, b: &Act) -> bool {
    let (Act::Tell(a), Act::Tell(b)) = (a, b) else { return false };
    a.len() == b.len() && a.iter().all(|fact| b.contains(fact))
}

fn row_ask(act: &Act) -> Option<&RowAsk> {
    if let Act::Query(Query::Row(ask)) = act { Some(ask) } else { None }
}

/// True where the answer to the first says all that the second wants.
fn answers(a: &RowAsk, b: &RowAsk) -> bool {
    b.wants.iter().all(|want| a.wants.iter().any(|w| w == want || w.row().beside.contains(want)))
}

/// A question with what another wants besides, where its own answer would not say it.
fn with_wants(act: Act, other: &Act) -> Act {
    let (Some(ask), Some(other)) = (row_ask(&act), row_ask(other)) else { return act };
    let mut ask = ask.clone();
    for want in &other.wants {
        let said = ask.wants.iter().any(|w| w == want || w.row().beside.contains(want));
        if !said && ask.wants.len() < RowAsk::MOST {
            ask.wants.push(*want);
        }
    }
    Act::Query(Query::Row(ask))
}
