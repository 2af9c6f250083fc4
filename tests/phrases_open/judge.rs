//! The verdict on one phrase.

use super::check::{Found, Place, Seen};
use super::record::{Line, Talk};
use super::{answer, runs, said, settings};
use serde_json::{Map, Value};

/// How well a phrase was met, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// All that is expected came.
    Pass,
    /// All that can be checked came.
    Part,
    /// Not met, but it asked or refused where it failed.
    Safe,
    /// Something else was told or answered.
    Wrong,
}

/// A verdict and its reasons.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The verdict.
    pub verdict: Verdict,
    /// What failed, and how.
    pub fails: Vec<String>,
    /// Expected things only a person can judge.
    pub unchecked: Vec<String>,
}

/// Words about the phrase itself: they expect nothing. A tolerance is read where it is used.
const REMARKS: [&str; 4] = ["calc", "tol_in", "or", "or_assume"];

/// What a second reading may stand in for.
const READINGS: [&str; 8] =
    ["run_in", "clear_in", "overall_in", "cc_in", "length_in", "number_in", "number", "must_ask"];

/// Judges a talk by what is expected of it: the best of its allowed readings.
pub fn judge(expect: &Map<String, Value>, talk: &Talk) -> Judged {
    if let Some(fault) = broken(talk) {
        return Judged { verdict: Verdict::Wrong, fails: vec![fault.to_owned()], unchecked: Vec::new() };
    }
    let all = readings(expect).into_iter().map(|reading| judge_one(&reading, talk));
    let best = all.min_by_key(|judged| judged.verdict);
    best.unwrap_or_else(|| Judged { verdict: Verdict::Wrong, fails: vec!["no reading".to_owned()], unchecked: vec![] })
}

/// What no talk may do, whatever is expected of it.
fn broken(talk: &Talk) -> Option<&'static str> {
    if talk.crashed || talk.lines.is_empty() {
        return Some("it crashed");
    }
    let quiet = talk.lines.iter().any(|line| line.status() != "told" && line.changed());
    quiet.then_some("a line that told nothing changed the job")
}

/// What is expected, and each reading that may stand in its place.
fn readings(expect: &Map<String, Value>) -> Vec<Map<String, Value>> {
    let others = ["or", "or_assume"].iter().filter_map(|key| expect.get(*key)).flat_map(|or| match or {
        Value::Array(all) => all.iter().filter_map(Value::as_object).collect(),
        Value::Object(one) => vec![one],
        _ => Vec::new(),
    });
    let others: Vec<&Map<String, Value>> = others.collect();
    let own = expect.keys().any(|key| READINGS.contains(&key.as_str()));
    let mut all = if own || others.is_empty() { vec![expect.clone()] } else { Vec::new() };
    all.extend(others.into_iter().map(|other| {
        let kept = expect.iter().filter(|(key, _)| !READINGS.contains(&key.as_str()) && key.as_str() != "or");
        kept.chain(other).map(|(k, v)| (k.clone(), v.clone())).collect()
    }));
    all
}

/// A reading and the talk it is held against.
#[derive(Clone, Copy)]
struct Case<'a> {
    expect: &'a Map<String, Value>,
    talk: &'a Talk,
    last: &'a Line,
}

fn judge_one(expect: &Map<String, Value>, talk: &Talk) -> Judged {
    let mut judged = Judged { verdict: Verdict::Pass, fails: Vec::new(), unchecked: Vec::new() };
    let Some(last) = talk.lines.last() else { return judged };
    let case = Case { expect, talk, last };
    let mut of_one_run = false;
    for (key, want) in expect.iter().filter(|(key, _)| !REMARKS.contains(&key.as_str())) {
        // The things expected of one run are one check.
        let one_run = runs::OF_ONE_RUN.contains(&key.as_str()) && !expect.contains_key("runs_in");
        if !(one_run && std::mem::replace(&mut of_one_run, true)) {
            case.weigh(if one_run { "run" } else { key }, key, want, &mut judged);
        }
    }
    judged
}

impl Case<'_> {
    fn weigh(&self, name: &str, key: &str, want: &Value, judged: &mut Judged) {
        let (place, found) = self.look(key, want, &self.last.json["job"]);
        let (verdict, why) = match &found {
            Found::Met => return,
            Found::Missing(_) | Found::Unchecked if self.may_wait(place) => return,
            Found::Unchecked if !self.talk.lines.iter().all(Line::stuck) => {
                judged.unchecked.push(name.to_owned());
                judged.verdict = judged.verdict.max(Verdict::Part);
                return;
            }
            Found::Unchecked => (Verdict::Safe, "not taken"),
            Found::Missing(why) => (safe_if(self.failed_out_loud(place)), why.as_str()),
            Found::Contradicts(why) => (safe_if(place == Place::Job && self.stale(key, want, &found)), why.as_str()),
        };
        judged.fails.push(format!("{name}: {why}"));
        judged.verdict = judged.verdict.max(verdict);
    }

    /// A question that may be asked is enough until it is answered: what it would lead to may
    /// be missing, never something else. One that must be asked still needs its words.
    fn may_wait(&self, place: Place) -> bool {
        let has = |key: &str| self.expect.get(key).is_some_and(|v| *v != Value::Bool(false));
        let may = has("or_ask") || has("must_ask_or_default");
        self.last.status() == "asks" && (may || (has("must_ask") && place != Place::Words))
    }

    /// True where a line that should have put something in its place asked or refused.
    fn failed_out_loud(&self, place: Place) -> bool {
        match place {
            Place::Job => self.talk.lines.iter().any(Line::stuck),
            Place::Figures | Place::Words => self.last.stuck(),
        }
    }

    /// True where what contradicts stood in the job before a line that asked or refused, and
    /// no later line answered as if all were well: the line that would have put it right
    /// failed out loud.
    fn stale(&self, key: &str, want: &Value, found: &Found) -> bool {
        let lines = &self.talk.lines;
        let stuck = lines.iter().enumerate().filter(|(_, line)| line.stuck());
        let heeded = |i: usize| lines[i..].iter().all(|line| line.stuck() || line.status() == "told");
        stuck.filter(|(i, _)| heeded(*i)).any(|(_, line)| self.look(key, want, &line.before).1 == *found)
    }

    /// Looks for one expected thing, in the job given.
    fn look(&self, key: &str, want: &Value, job: &Value) -> (Place, Found) {
        let seen = Seen { job, last: &self.last.json, lines: &self.talk.lines, expect: self.expect };
        if let Some(found) = runs::look(key, want, &seen).or_else(|| settings::look(key, want, &seen)) {
            return (Place::Job, found);
        }
        if let Some(found) = answer::look(key, want, &seen) {
            return (Place::Figures, found);
        }
        (Place::Words, said::look(key, want, &seen).unwrap_or(Found::Unchecked))
    }
}

fn safe_if(safe: bool) -> Verdict {
    if safe { Verdict::Safe } else { Verdict::Wrong }
}
