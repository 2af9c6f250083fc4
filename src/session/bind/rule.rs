//! The rule that answers a topic: of those it may be, the one the line's own words point to, and the word it is on what is asked.

use super::About;
use super::mood::{asks_for_figure, mood};
use crate::grammar::ask::{Mood, RuleAsk};
use crate::grammar::words::{Word, words};
use crate::limits;
use crate::session::topics::{Talked, pointing, talked};

/// The limit that answers a topic where no words point to another (common practice, no source: which rule answers what is asked so).
const TOPICS: &[(&str, &str)] = &[
    ("bay-limit", "post-spacing"),
    ("blocking", "blocking"),
    ("bolts", "through-bolts"),
    ("decay", "treated-fasteners"),
    ("fasteners", "treated-fasteners"),
    ("gap-limit", "level-gap"),
    ("gate-post", "gate-posts"),
    ("gate-swing", "gate-swing"),
    ("guard-height", "guard-height"),
    ("guard-needed", "guard-trigger"),
    ("handrail", "handrail-risers"),
    ("infill", "infill-load"),
    ("inspection", "inspector-checks"),
    ("ladder", "horizontal-rails"),
    ("layout-habit", "running-marks"),
    ("load", "top-load"),
    ("lumber", "post-size"),
    ("notch-allowed", "notched-post"),
    ("open-riser", "open-riser"),
    ("pool", "pool-gate"),
    ("post-mount", "posts-on-decking"),
    ("shrink", "shrinkage"),
    ("spacing-start", "spacing-start"),
    ("stair-guard-height", "stair-guard-height"),
    ("stairs-rise", "riser-most"),
    ("stairs-tread", "tread-least"),
    ("strength", "top-load"),
    ("treated", "field-treatment"),
    ("triangle", "stair-triangle"),
];

/// Words that turn a question around: what a rule says of it is no word on it then, but where they point to that themselves.
const DENIES: &[&str] = &["no", "not", "never", "without", "skip", "don't", "dont", "isn't", "isnt", "can't", "cant"];

/// The rule a topic is answered by, and whether the line's words pointed to it; `None` where nothing does.
pub(super) fn of_topic(about: &About<'_>, topics: &[&str], judges: bool) -> Option<(RuleAsk, bool)> {
    let said = words(about.line);
    // A line that judges asks for a word, whatever else stands in it.
    let asks = judges || !asks_for_figure(about.line);
    let word = |rule: &Talked| says(&said, rule).filter(|_| asks && mood(about.line) != Mood::Fault);
    if let Some(found) = pointed(about, &said, topics) {
        return Some((RuleAsk { limit: found.limit, says: word(found) }, true));
    }
    let (_, id) = TOPICS.iter().find(|(topic, _)| topics.first() == Some(topic))?;
    let limit = limits::find(id)?;
    let own = talked().iter().find(|t| t.limit.id == limit.id);
    Some((RuleAsk { limit, says: own.and_then(word) }, false))
}

/// Of the rules that may answer the topics the one most words point to: the line's, or the line's and those of the line before.
fn pointed(about: &About<'_>, said: &[Word], topics: &[&str]) -> Option<&'static Talked> {
    let behind: Vec<Word> = said.iter().cloned().chain(about.before.map(words).unwrap_or_default()).collect();
    let may = || talked().iter().filter(|t| topics.iter().any(|topic| t.of.contains(topic)));
    let most = |said: &[Word], here: usize| {
        let count = |t: &&'static Talked| {
            let sets = t.when.iter().filter_map(|cue| pointing(said, cue));
            sets.filter(|at| at.iter().any(|i| *i < here)).map(|at| at.len()).max().unwrap_or(0)
        };
        let found = may().map(|t| (count(&t), t)).filter(|(n, _)| *n > 0);
        found.reduce(|a, b| if b.0 > a.0 { b } else { a }).map(|(_, t)| t)
    };
    most(said, said.len()).or_else(|| most(&behind, said.len()))
}

/// The word it is, where the line's words say which way.
fn says(said: &[Word], rule: &Talked) -> Option<bool> {
    let stands = |cues: &[&[&[&str]]]| {
        let own = |cue: &[&[&str]], word: &str| cue.iter().any(|any| any.contains(&word));
        let turns = |cue: &[&[&str]]| said.iter().any(|w| DENIES.iter().any(|d| w.is(d) && !own(cue, d)));
        cues.iter().any(|cue| pointing(said, cue).is_some() && !turns(cue))
    };
    match (stands(rule.yes), stands(rule.no)) {
        (true, false) => Some(true),
        (false, true) => Some(false),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Job;

    fn answered(line: &str, before: Option<&str>, topics: &[&str]) -> Option<(&'static str, Option<bool>)> {
        let job = Job::default();
        let about = About { job: &job, asked: None, run: None, answered: false, figure: None, line, before };
        of_topic(&about, topics, false).map(|(ask, _)| (ask.limit.id, ask.says))
    }

    #[test]
    fn every_topic_has_a_limit_that_is_there() {
        for (topic, _) in TOPICS {
            assert!(answered("", None, &[topic]).is_some(), "{topic}");
        }
    }

    #[test]
    fn the_lines_own_words_point_to_the_rule_that_answers_it() {
        let rows = [
            ("how wide can the gaps be", "gap-limit", "level-gap"),
            ("how wide can the gaps be on the stairs", "gap-limit", "stair-gap"),
            ("what must a tread hold", "load", "tread-load"),
            ("what must the floor hold", "load", "floor-load"),
            ("which of the bolts gets the tension tie", "bolts", "hold-down"),
            ("do washers go on both ends", "bolts", "bolt-size"),
            ("will they shrink", "lumber", "shrinkage"),
        ];
        for (line, topic, want) in rows {
            assert_eq!(answered(line, None, &[topic]).map(|(id, _)| id), Some(want), "{line}");
        }
    }

    #[test]
    fn what_was_said_just_before_points_to_it_too() {
        let before = Some("the skirt is plastic");
        assert_eq!(answered("can the bolts clamp it", before, &["bolts"]).map(|(id, _)| id), Some("plastic-skirt"));
        assert_eq!(answered("can the bolts clamp it", None, &["bolts"]).map(|(id, _)| id), Some("through-bolts"));
        // Nothing of this line points anywhere.
        assert_eq!(answered("and how big", before, &["bolts"]).map(|(id, _)| id), Some("through-bolts"));
    }

    #[test]
    fn a_rule_is_the_word_itself_only_where_nothing_turns_the_question_around() {
        let rows = [
            ("does the fresh cut need anything", "treated", Some(true)),
            ("what does the fresh cut need", "treated", None),
            ("the fresh cut doesn't need treating, does it not", "treated", None),
            ("can I hang them with drywall screws", "fasteners", Some(false)),
            ("can I use hot dipped screws", "fasteners", None),
            ("can the pool gate open toward the water", "pool", Some(false)),
            ("can the pool gate open away from the water", "pool", Some(true)),
            ("can the pool gate not open toward the water", "pool", None),
            // "no" points to the hollow sleeve itself.
            ("can a sleeve stand with no wood in it", "infill", Some(false)),
        ];
        for (line, topic, want) in rows {
            assert_eq!(answered(line, None, &[topic]).and_then(|(_, says)| says), want, "{line}");
        }
    }
}
