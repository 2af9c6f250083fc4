//! Readings that neither ask for a figure nor tell one: a rule by its topic, a list, a note, the talk itself.

use super::About;
use super::asked::Way;
use super::readings::Reading;
use crate::grammar::ask::TakeoffAsk;
use crate::grammar::scores::Line;
use crate::grammar::{Act, Query, Talk, canon};
use crate::job::Fact;
use crate::limits;

/// The limit a topic of the corpus is about (common practice, no source: which rule answers what is asked so).
const TOPICS: &[(&str, &str)] = &[
    ("bay-limit", "post-spacing"),
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
    ("inspection", "failed-inspection"),
    ("ladder", "horizontal-rails"),
    ("load", "top-load"),
    ("lumber", "post-size"),
    ("notch-allowed", "notched-post"),
    ("open-riser", "open-riser"),
    ("pool", "pool-gate"),
    ("post-mount", "posts-on-decking"),
    ("stair-guard-height", "stair-guard-height"),
    ("stairs-rise", "riser-most"),
    ("stairs-tread", "tread-least"),
    ("strength", "top-load"),
    ("treated", "field-treatment"),
    ("triangle", "stair-triangle"),
];

/// What it does; `None` where it does nothing known.
pub(super) fn other(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    let act = match (reading.act, reading.wants.first().copied()) {
        ("undo", _) => Act::Talk(Talk::Undo),
        ("keep", _) => Act::Talk(Talk::Keep),
        ("leave", _) => Act::Talk(Talk::Leave),
        ("why", _) if about.answered => Act::Query(Query::Why),
        ("note", _) => Act::Tell(vec![Fact::Note(canon::clean_note(about.line)?)]),
        // A rule alone is no answer to figures: beside them it is offered.
        ("rule" | "judge" | "ask" | "suppose", Some(topic)) => {
            let unbound = usize::from(line.values().next().is_some());
            return rule(topic).map(|act| Way { unbound, ..Way::plain(0.0, act) });
        }
        ("list", Some(list)) => listed(list)?,
        _ => return None,
    };
    Some(Way::plain(0.0, act))
}

fn rule(topic: &str) -> Option<Act> {
    let (_, id) = TOPICS.iter().find(|(t, _)| *t == topic)?;
    limits::find(id).map(|limit| Act::Query(Query::Rule(limit)))
}

fn listed(list: &str) -> Option<Act> {
    let query = match list {
        "layout" => Query::Layout(None),
        "job" | "notes" => Query::Job,
        "cutlist" => Query::Takeoff(TakeoffAsk::Cuts),
        "buy" => Query::Takeoff(TakeoffAsk::Buy),
        "cost" => Query::Takeoff(TakeoffAsk::Cost),
        _ => return None,
    };
    Some(Act::Query(query))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_topic_has_a_limit_that_is_there() {
        for (topic, _) in TOPICS {
            assert!(rule(topic).is_some(), "{topic}");
        }
    }
}
