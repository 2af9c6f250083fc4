//! A thing named alone on its line asks about it: "posts", "post spacing?", "notches".

use super::{PIECE, Say};
use crate::grammar::Query;
use crate::grammar::ask::{NotchAsk, TakeoffAsk, Whose};
use crate::grammar::draft::{AskDraft, Clause};
use crate::grammar::items::Item;

/// What a bare name asks, each with the words it goes by.
fn asked(words: &str) -> Option<Clause> {
    let query = match words {
        "posts" | "line posts" | "post count" | "posts count" | "number of posts" | "post marks" => Query::Posts(None),
        "bays" | "spacing" | "post spacing" | "posts spacing" | "post centres" | "post centers" | "bay size"
        | "bay sizes" | "bay length" | "spacings" | "centres" | "centers" => Query::Bays(None),
        "sketch" | "how 's it laid out" | "how is it laid out" | "picture" => Query::Layout(None),
        "notch" | "notches" | "notch depth" | "notch size" | "notch cuts" | "post notch" | "post notches" => {
            Query::Notch(NotchAsk::Cut(Whose::All))
        }
        "balusters"
        | "pickets"
        | "spindles"
        | "baluster gap"
        | "picket gap"
        | "baluster spacing"
        | "picket spacing"
        | "spindle spacing"
        | "baluster gaps"
        | "spacer block"
        | "spacing on the pickets"
        | "spacing on the balusters"
        | "baluster count"
        | "picket count" => Query::Takeoff(TakeoffAsk::Balusters(None)),
        "rails" | "rail cuts" | "rail lengths" => Query::Takeoff(TakeoffAsk::RailLength),
        "hardware" | "brackets" | "hold downs" | "hold - downs" | "bolt count" | "fasteners" => {
            Query::Takeoff(TakeoffAsk::Parts)
        }
        "price" | "prices" | "money" | "total cost" => Query::Takeoff(TakeoffAsk::Cost),
        "order" | "order it" | "order list" | "yard list" | "stock" | "sticks" => Query::Takeoff(TakeoffAsk::Buy),
        "summary" | "recap" | "job" | "the job" | "what is told" | "what 's told" | "what have you got"
        | "what do you have" => Query::Job,
        "gap"
        | "gaps"
        | "spacer"
        | "what 's the gap"
        | "whats the gap"
        | "what is the gap"
        | "what gap"
        | "gap then"
        | "what 's the gap then"
        | "what are the gaps"
        | "what 's the space"
        | "what 's the spacing then"
        | "what does that leave between"
        | "what gap is that"
        | "what gap does that give" => {
            return Some(Clause::Ask(AskDraft::Gaps));
        }
        _ => return None,
    };
    Some(Clause::Query(query))
}

/// A name that fills its line, "the" before it and a question mark behind it aside.
pub fn bare(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    if at > 0 {
        return None;
    }
    let words = items.iter().filter(|i| !i.is_sep()).map(|i| &*i.text);
    let lead = |w: &&str| matches!(*w, "the" | "my" | "and" | "ok" | "so" | "show" | "show me");
    let words: Vec<&str> = words.skip_while(lead).filter(|w| *w != "please").collect();
    asked(&words.join(" ")).map(|clause| (items.len(), Say::Clause(clause), PIECE))
}
