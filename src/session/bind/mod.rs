//! Loose talk bound to the table of quantities: a line in any order becomes an act.
//!
//! The learned scores say what is likely (`readings`), the table and the solver what is possible (`asked`, `told`). Readings with one effect
//! are one candidate whose odds add up (`pool`); whether the best is done or asked about is decided by its odds alone (`odds`).

mod answer;
mod asked;
mod chain;
mod changed;
mod clips;
#[cfg(feature = "fold-weights")]
mod compared;
mod evidence;
mod mood;
mod odds;
mod ordinal;
mod other;
mod partly;
mod pool;
mod premises;
mod readings;
mod roles;
mod rule;
mod runs;
mod sides;
mod spare;
mod strays;
mod sums;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod tests_told;
mod told;
#[cfg(feature = "fold-weights")]
mod truth;
mod value;
mod walk;

use super::state::{Session, Talk};
use crate::grammar::ask::RowAsk;
use crate::grammar::scores::{self, Line};
use crate::grammar::{Act, Query};
use crate::job::{Fact, Job, RunId};
use crate::measure::Length;
use evidence::Evidence;
use pool::Candidate;
pub(super) use spare::Spare;
use spare::{figures, spare};

/// No more choices than these are offered.
const MOST: usize = 3;

/// What a line of loose talk comes to.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Bound {
    /// The act it is, or the acts it may be.
    pub acts: Vec<Act>,
    /// The one act is sure enough to be done.
    pub sure: bool,
    /// The probability that the first act is what was meant.
    pub right: f32,
    /// What else was likely, where the one act is done without being certain.
    pub others: Vec<Act>,
    /// It would only say what is still needed.
    pub lacks: bool,
    /// The first act is likely enough to be taken as meant where the talk goes on.
    pub likely: bool,
    /// The likeliest readings with their odds, for whoever asks why.
    pub readings: Vec<(Act, f32)>,
    /// Words that have no part in the one act.
    pub spare: Vec<Spare>,
}

impl Bound {
    /// It is done, and comes before what the grammar makes of a part of the line.
    pub(super) fn is_certain(&self) -> bool {
        self.sure && self.right >= odds::CERTAIN
    }

    /// It is done, whatever word is left over of the line.
    pub(super) fn is_sure_whatever_is_left(&self) -> bool {
        self.sure && self.right >= odds::WHATEVER_IS_LEFT
    }
}

/// What a line is about: the job, and the last question with what it gave.
#[derive(Clone, Copy)]
struct About<'a> {
    job: &'a Job,
    asked: Option<&'a RowAsk>,
    /// The run spoken of last.
    run: Option<RunId>,
    /// An answer gave figures before.
    answered: bool,
    /// The length the answer before came to.
    figure: Option<Length>,
    /// The line as typed.
    line: &'a str,
    /// The line before it.
    before: Option<&'a str>,
}

impl<'a> About<'a> {
    fn of(session: &'a Session, line: &'a str) -> About<'a> {
        let talk = &session.talk;
        let answered = !talk.last.is_empty();
        // A sum goes on from a sum, or from the one figure asked for.
        let sum = |name: &str| name == "the answer" || talk.last.len() == 1 && talk.asked.is_some();
        let figure = talk.last.first().filter(|(name, _)| sum(name)).and_then(|(_, fig)| sums::of_figure(fig.value()));
        let before = talk.lines.last().map(String::as_str);
        About { job: &session.job, asked: talk.asked.as_ref(), run: talk.focus.run, answered, figure, line, before }
    }
}

/// The line as the one figure the last question still needed; `None` where it is none.
pub(super) fn completed(session: &Session, line: &str) -> Option<Bound> {
    session.talk.asked.as_ref().filter(|_| is_short(line))?;
    let mut acts = answer::filled(&About::of(session, line), &Line::read(line, &[]));
    acts.truncate(MOST);
    (!acts.is_empty()).then(|| Bound {
        sure: acts.len() == 1,
        right: 1.0,
        others: Vec::new(),
        lacks: false,
        likely: false,
        acts,
        readings: Vec::new(),
        spare: Vec::new(),
    })
}

/// A question of rows with what was told for it before: that comes before the job's own choice, however the question was read.
pub(super) fn with_held(session: &Session, ask: RowAsk) -> RowAsk {
    asked::with_held(&About::of(session, ""), &ask).unwrap_or(ask)
}

/// True for a line that one breath could say: longer ones are not bound.
fn is_short(line: &str) -> bool {
    line.chars().nth(Talk::LONG).is_none()
}

/// True where the line asks for a figure of the table, likelier than not: a rule its words touch is no answer then.
pub(super) fn asks_figure(session: &Session, line: &str) -> bool {
    if !is_short(line) {
        return false;
    }
    let before: Vec<&str> = session.talk.lines.iter().map(String::as_str).collect();
    let line = Line::read(line, &before);
    let likely = |labels: Vec<(&'static str, f32)>| labels.into_iter().next().filter(|(_, log)| log.exp() > 0.5);
    let act = scores::shipped().and_then(|s| Some((s, likely(s.score_act(&line))?.0)));
    let asked = act.filter(|(_, act)| matches!(*act, "ask" | "suppose"));
    asked.and_then(|(s, act)| likely(s.score_want(&line, act))).is_some_and(|(want, _)| value::row_of(want).is_some())
}

/// True where the labels of the line are known: what the program makes of it shows what else than reading is lacking.
#[cfg(feature = "fold-weights")]
pub(super) fn is_labeled(line: &str) -> bool {
    truth::is_known(line)
}

/// No line's labels are known.
#[cfg(not(feature = "fold-weights"))]
pub(super) fn is_labeled(_line: &str) -> bool {
    false
}

/// True where the line may well be another trade's, by what the scores have learned of such lines.
pub(super) fn is_foreign(session: &Session, line: &str) -> bool {
    let before: Vec<&str> = session.talk.lines.iter().map(String::as_str).collect();
    let Some(scores) = scores::shipped().filter(|_| is_short(line)) else { return true };
    let line = Line::read(line, &before);
    let foreign = scores.score_act(&line).into_iter().find(|(act, _)| *act == "foreign");
    foreign.is_none_or(|(_, log)| log.exp() > odds::FOREIGN)
}

/// How sure the scores are that nobody can tell what the line means: it is asked back sooner than something is made of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unclear {
    /// Likely: what is read whole stands.
    Likely,
    /// All but certain: nothing is told of it.
    Quite,
}

/// Whether the line is one that is asked back.
pub(super) fn unclear(session: &Session, line: &str) -> Option<Unclear> {
    let before: Vec<&str> = session.talk.lines.iter().map(String::as_str).collect();
    let scores = scores::shipped().filter(|_| is_short(line))?;
    let read = Line::read(line, &before);
    let acts = scores.score_act(&read);
    let learned = acts.into_iter().find(|(act, _)| *act == UNCLEAR).map_or(0.0, |(_, log)| log.exp());
    #[cfg(feature = "fold-weights")]
    let learned = truth::of(line, &read).map_or(learned, |r| if r.act == UNCLEAR { 1.0 } else { 0.0 });
    match learned {
        p if p >= odds::QUITE_UNCLEAR => Some(Unclear::Quite),
        p if p >= odds::UNCLEAR => Some(Unclear::Likely),
        _ => None,
    }
}

/// True where the line likelier than not tells or takes back something.
pub(super) fn tells(session: &Session, line: &str) -> bool {
    let before: Vec<&str> = session.talk.lines.iter().map(String::as_str).collect();
    let Some(scores) = scores::shipped().filter(|_| is_short(line)) else { return false };
    let read = Line::read(line, &before);
    #[cfg(feature = "fold-weights")]
    if let Some(reading) = truth::of(line, &read) {
        return matches!(reading.act, "tell" | "drop");
    }
    let acts = scores.score_act(&read).into_iter().filter(|(act, _)| matches!(*act, "tell" | "drop"));
    acts.map(|(_, log)| log.exp()).sum::<f32>() > 0.5
}

/// What the corpus calls the act of a line that must be asked back.
const UNCLEAR: &str = "unclear";

/// The line bound, with what was said before it; `None` where nothing likely is possible.
pub(super) fn bound(session: &Session, line: &str) -> Option<Bound> {
    let scores = scores::shipped().filter(|_| is_short(line))?;
    let about = About::of(session, line);
    let before: Vec<&str> = session.talk.lines.iter().map(String::as_str).collect();
    let line = Line::read(line, &before);
    #[cfg(feature = "fold-weights")]
    if let Some(reading) = truth::of(about.line, &line) {
        let meant = pool::pooled(&about, &line, std::slice::from_ref(&reading));
        compare(scores, &about, &line, meant.first());
        let spare = meant.first().map(|best| figures(about.line, &line, &reading, &best.act)).unwrap_or_default();
        return decided(&meant, spare, 1.0);
    }
    let readings = readings::likeliest(scores, &line, about.asked.is_some());
    let candidates = pool::pooled(&about, &line, &readings);
    let best = candidates.first()?;
    let left = readings.get(best.reading).map(|r| spare(about.line, &line, r, &best.act)).unwrap_or_default();
    // The name of a run says which is meant.
    let names =
        |word: &str| about.job.runs.iter().filter_map(|r| r.name.as_deref()).any(|n| n.split(' ').any(|w| w == word));
    let mut spare: Vec<Spare> = left.into_iter().map(|s| Spare { bends: s.bends || names(&s.text), ..s }).collect();
    let evidence = Evidence::of(&candidates, readings.get(best.reading), &line, &spare, about.asked.is_some());
    spare.extend(readings.get(best.reading).map(|r| figures(about.line, &line, r, &best.act)).unwrap_or_default());
    decided(&candidates, spare, evidence.as_ref().map_or(0.0, odds::right))
}

/// Writes down what the scores would make of a line whose meaning is known.
#[cfg(feature = "fold-weights")]
fn compare(scores: &scores::Scores, about: &About<'_>, line: &Line, meant: Option<&Candidate>) {
    let readings = readings::likeliest(scores, line, about.asked.is_some());
    let pool = pool::pooled(about, line, &readings);
    let best = pool.first();
    let reading = best.and_then(|b| readings.get(b.reading));
    let left = reading.zip(best).map(|(r, b)| spare(about.line, line, r, &b.act)).unwrap_or_default();
    if let Some(evidence) = Evidence::of(&pool, reading, line, &left, about.asked.is_some()) {
        compared::compared(about.line, &pool, &evidence, meant);
    }
}

/// Does the best, or offers what is likely; `right` is the probability that the best is what was meant.
fn decided(candidates: &[Candidate], spare: Vec<Spare>, right: f32) -> Option<Bound> {
    let best = candidates.first()?;
    let readings: Vec<(Act, f32)> = candidates.iter().take(MOST).map(|c| (c.act.clone(), c.odds)).collect();
    tracing::debug!(?readings, ?spare, right, "bound");
    let likely = |c: &&Candidate| c.odds >= odds::worth_offering(&c.act) && c.unbound < 2 && !c.lacks;
    let certain = right >= odds::CERTAIN;
    let least = if best.lacks { odds::WORTH_ASKING } else { odds::sure(&best.act) };
    if right >= least && !best.doubtful && holds(best, &spare, right) {
        let others = candidates.iter().skip(1).filter(likely).take(MOST - 1).filter(|_| !certain);
        return Some(Bound {
            acts: vec![best.act.clone()],
            sure: true,
            right,
            others: others.map(|c| c.act.clone()).collect(),
            lacks: best.lacks,
            likely: false,
            readings,
            spare,
        });
    }
    let offer = |of: &dyn Fn(&&Candidate) -> bool| -> Vec<Act> {
        candidates.iter().filter(of).take(MOST).map(|c| c.act.clone()).collect()
    };
    let mut acts = offer(&likely);
    if acts.is_empty() {
        // A question that is hardly likely is still the nearest there is; a telling would change what nobody spoke of.
        acts =
            offer(&|c| !c.lacks && c.odds >= odds::NEAREST && matches!(c.act, Act::Query(Query::Row(_)) | Act::Sum(_)));
    }
    let ahead = candidates.get(1).is_none_or(|next| best.odds >= odds::AHEAD * next.odds);
    let likely = ahead && best.unbound == 0 && right >= odds::TAKEN_AS_MEANT && acts.first() == Some(&best.act);
    let offered = Bound { acts, sure: false, right, others: Vec::new(), lacks: false, likely, readings, spare };
    (!offered.acts.is_empty()).then_some(offered)
}

/// True where no word that is left over is likely to have changed what was meant: nothing that denies, and what bends or places something only
/// where the line is sure enough without it. What lacks
/// something says so only of a question with premises.
fn holds(best: &Candidate, spare: &[Spare], right: f32) -> bool {
    match &best.act {
        Act::Tell(facts) if matches!(facts[..], [Fact::Note(_)]) => true,
        Act::Query(Query::Row(ask)) if best.lacks => {
            best.unbound == 0 && (right >= odds::CERTAIN || ask.given.len() + ask.supposed.len() > 0)
        }
        // What only answers is judged by its odds, in which the words left over count already; they are named. A figure or a word nobody
        // knows wants even odds.
        Act::Query(Query::Row(_)) => right >= odds::CERTAIN || best.unbound == 0 && !spare.iter().any(|s| s.unknown),
        Act::Query(Query::Rule(_)) if right >= odds::CERTAIN => true,
        Act::Tell(_) | Act::TellWith(..) if right >= odds::WHATEVER_IS_LEFT => !spare.iter().any(|s| s.denies),
        _ => !spare.iter().any(|s| s.bends),
    }
}

#[cfg(test)]
mod decisions {
    use super::*;
    use crate::grammar::canon;

    fn candidate(phrase: &str, odds: f32) -> Candidate {
        let act = canon::read(phrase).unwrap_or_else(|| panic!("{phrase} is a plain phrase"));
        Candidate {
            act,
            fig: None,
            odds,
            best: odds,
            unbound: 0,
            doubtful: false,
            lacks: false,
            reading: 0,
            unused: 0,
            by_default: false,
            cost: 0.0,
        }
    }

    fn left(bends: bool, denies: bool) -> Vec<Spare> {
        vec![Spare { text: "word".into(), heavy: true, bends, unknown: false, denies }]
    }

    /// Done, done and certain, or offered.
    fn decision(candidates: &[Candidate], spare: Vec<Spare>, right: f32) -> &'static str {
        match decided(candidates, spare, right) {
            Some(b) if b.is_certain() => "certain",
            Some(b) if b.sure => "done",
            Some(_) => "offered",
            None => "left",
        }
    }

    #[test]
    fn a_question_is_answered_sooner_than_a_telling_is_told() {
        let asks =
            [candidate("figure: gap; with bay 4'-10\"; with balusters 9?", 0.6), candidate("figure: balusters?", 0.2)];
        let tells = [candidate("height: 36\" to the top", 0.6)];
        let rows = [
            (0.2, "offered", "offered"),
            (0.4, "done", "offered"),
            (0.62, "certain", "offered"),
            (0.7, "certain", "certain"),
        ];
        for (right, asked, told) in rows {
            assert_eq!(decision(&asks, Vec::new(), right), asked, "a question, {right}");
            assert_eq!(decision(&tells, Vec::new(), right), told, "a telling, {right}");
        }
        let others = |right| decided(&asks, Vec::new(), right).map(|b| b.others.len());
        assert_eq!((others(0.4), others(0.62)), (Some(1), Some(0)));
    }

    #[test]
    fn a_word_that_denies_keeps_a_telling_from_being_told_and_one_that_places_unless_it_is_sure_without() {
        let tells = [candidate("height: 36\" to the top", 0.9)];
        for (bends, denies, right, want) in [
            (true, false, 0.8, "offered"),
            (true, false, 0.9, "certain"),
            (true, true, 0.99, "offered"),
            (false, false, 0.8, "certain"),
        ] {
            assert_eq!(decision(&tells, left(bends, denies), right), want, "{bends} {denies} {right}");
        }
    }

    #[test]
    fn a_question_that_is_hardly_likely_is_offered_and_such_a_telling_is_not() {
        assert_eq!(
            decision(&[candidate("figure: gap; with bay 4'-10\"; with balusters 9?", 0.04)], Vec::new(), 0.05),
            "offered"
        );
        assert_eq!(decision(&[candidate("height: 36\" to the top", 0.04)], Vec::new(), 0.05), "left");
    }
}
