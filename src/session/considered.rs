//! Every reading of a line that was weighed, and why each but the one taken was not.

use super::answer;
use super::choose::blocked;
use super::point::typed;
use super::resolve::{NO_LENGTH, Problem, resolve};
use super::state::Session;
use super::step::LONGEST;
use super::targets;
use crate::grammar::reading::readings;
use crate::grammar::slips::said_once;
use crate::grammar::words::words;
use crate::grammar::{Act, canon};
use crate::measure::Tape;
use crate::reply::{Typed, plain};

/// One reading of a line.
#[derive(Clone, Debug)]
pub struct Considered {
    /// What it would do, in plain phrases: more than one where it would ask; none where it cannot be taken.
    pub says: Vec<String>,
    /// How unlikely it is: the cheapest comes first.
    pub cost: u32,
    /// The words it has no part for.
    pub left_out: Vec<Typed>,
    /// Why it cannot be taken; `None` where it can.
    pub fails: Option<String>,
}

/// The readings weighed for a line, likeliest first; none for a plain phrase, which has one alone.
pub fn considered(session: &Session, line: &str) -> Vec<Considered> {
    if line.chars().nth(LONGEST).is_some() || canon::read(line).is_some() {
        return Vec::new();
    }
    let words = said_once(words(line));
    let weighed = readings(&words, &targets::names(session)).unwrap_or_default().into_iter().map(|reading| {
        let left_out = reading.left.iter().map(|l| typed(line, &words, &l.words)).collect();
        let (acts, fails) = match (&reading.clash, blocked(&reading)) {
            (Some(_), _) => (Vec::new(), Some("its parts do not go together".to_owned())),
            (_, Some(_)) => (Vec::new(), Some("a word that counts is left out".to_owned())),
            _ => match resolve(session, &reading) {
                Ok(resolved) => (resolved.acts, None),
                Err(problem) => (offered(&problem), Some(why(&problem))),
            },
        };
        Considered { says: acts.iter().map(canon::write).collect(), cost: reading.cost, left_out, fails }
    });
    weighed.collect()
}

fn offered(problem: &Problem) -> Vec<Act> {
    if let Problem::Ask(_, acts) = problem { acts.clone() } else { Vec::new() }
}

fn why(problem: &Problem) -> String {
    match problem {
        Problem::Impossible(impossible) => plain(&answer::impossible(impossible), usize::MAX, Tape::default()),
        Problem::Ask(says, _) | Problem::Lacks(says, _) | Problem::Refuse(says) | Problem::Unfit(says) => {
            (*says).to_owned()
        }
        Problem::NoLength => NO_LENGTH.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::step;
    use pretty_assertions::assert_eq;

    #[test]
    fn what_is_taken_was_weighed_and_the_rest_says_why_not() {
        for line in ["14-6 house to corner", "posts are 4x4, nah 6x6", "how many in a 58 inch opening", "half of 13-5"]
        {
            let session = Session::new();
            let taken = step(&session, line).1.readback;
            let weighed = considered(&session, line);
            let says = weighed.iter().flat_map(|r| &r.says).find(|s| Some(*s) == taken.as_ref());
            assert!(says.is_some(), "{line}: {taken:?} is in none of {weighed:?}");
            assert!(weighed.iter().all(|r| r.says.is_empty() || r.fails.is_none()), "{weighed:?}");
            assert!(weighed.is_sorted_by_key(|r| r.cost), "{weighed:?}");
        }
    }

    #[test]
    fn words_left_out_are_named_and_a_plain_phrase_has_one_reading_alone() {
        let session = Session::new();
        let weighed = considered(&session, "14-6 house to corner, gate");
        let gateless =
            weighed.iter().find(|r| r.left_out.iter().any(|t| t.as_str() == "gate")).map(|r| r.fails.clone());
        assert_eq!(gateless, Some(Some("a word that counts is left out".to_owned())));
        assert!(considered(&session, "run 1: 14'-6\" out to out, from house, to corner").is_empty());
    }
}
