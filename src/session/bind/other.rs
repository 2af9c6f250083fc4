//! Readings that neither ask for a figure nor tell one: a rule by its topic, a list, a note, the talk itself.

use super::About;
use super::asked::Way;
use super::readings::{Filled, Reading};
use crate::grammar::ask::{NotchAsk, TakeoffAsk};
use crate::grammar::scores::{self, How, Line};
use crate::grammar::{Act, Query, Talk, canon};
use crate::job::Fact;
use crate::limits;
use crate::measure::Lumber;
use crate::quantity::RowId;

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
        ("rule" | "judge" | "ask" | "suppose", Some("notch-allowed")) if size(line, reading).is_some() => {
            let bears = |f: &Filled<'_>| f.word.is_none() && f.row.is_none_or(|row| !BESIDE_NOTCH.contains(&row));
            let doubtful = reading.filled.iter().any(bears);
            let act = Act::Query(Query::Notch(NotchAsk::May(size(line, reading)?)));
            return Some(Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(0.0, act) });
        }
        // A rule alone is no answer to figures: beside them it is offered.
        ("rule" | "judge" | "ask" | "suppose", Some(topic)) => {
            let doubtful = line.values().next().is_some();
            return rule(topic).map(|act| Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(0.0, act) });
        }
        ("list", Some(list)) => listed(list)?,
        _ => return None,
    };
    Some(Way::plain(0.0, act))
}

/// What may be said beside the size of a post that is to be notched: none of it bends whether it may.
const BESIDE_NOTCH: &[RowId] = &[
    RowId::PostSize,
    RowId::Bolt,
    RowId::BoltCount,
    RowId::BoltsPerPost,
    RowId::Fixing,
    RowId::Mount,
    RowId::Edition,
    RowId::NotchCorner,
];

/// The post's size, where one is named.
fn size(line: &Line, reading: &Reading<'_>) -> Option<Lumber> {
    let at = reading.filled.iter().find(|f| f.row == Some(RowId::PostSize) && f.how == How::Set)?.at;
    let said = line.tokens.get(at)?.value.as_ref()?;
    said.readings.iter().find_map(|r| if let scores::Reading::Lumber(l) = r { Some(*l) } else { None })
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
