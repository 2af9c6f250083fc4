//! What is tried on is named where the answer is: "2" left of the post at its notch, with posts 6x6."

use crate::grammar::{Act, canon};
use crate::job::Fact;
use crate::reply::{Line, Reply, Role, Span};

/// No more facts are named: a line of them is no short answer.
const MOST: usize = 3;

/// Names the facts tried on at the end of the answer; a run is what the question is about, and is not named again.
pub(super) fn name(reply: &mut Reply, supposed: &[Fact]) {
    let short = |fact: &&Fact| matches!(fact, Fact::Set(_) | Fact::Deck(_) | Fact::Flight(_) | Fact::Order(_));
    let facts: Vec<String> = supposed.iter().filter(short).map(plain).collect();
    let Some(line) = reply.lines.iter_mut().find(|l| l.role == Role::Answer) else { return };
    if facts.is_empty() || facts.len() > MOST {
        return;
    }
    open(line);
    for (i, fact) in facts.into_iter().enumerate() {
        line.spans.push(Span::Say(if i == 0 { ", with " } else { ", " }));
        line.spans.push(Span::Phrase(fact));
    }
    line.spans.push(Span::Say("."));
}

/// Takes a line's full stop off: it goes behind what is added.
fn open(line: &mut Line) {
    if let Some(Span::Say(last)) = line.spans.last_mut() {
        *last = last.strip_suffix('.').unwrap_or(last);
    }
}

/// "posts 6x6": the plain phrase as words in a sentence.
fn plain(fact: &Fact) -> String {
    canon::write(&Act::Tell(vec![fact.clone()])).replacen(": ", " ", 1)
}
