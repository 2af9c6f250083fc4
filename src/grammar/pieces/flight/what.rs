//! What a question about stairs or gates asks.

use super::roles::{has_part, takes};
use super::sizes::{Sizes, sizes};
use super::tokens::{Placed, Token};
use crate::grammar::ask::{FlightWhat, Size};
use crate::grammar::flight_draft::{Asks, FlightDraft, FlightGiven};
use crate::grammar::flight_words::FlightWord as W;
use crate::grammar::sense::Ask;
use std::ops::Range;

/// A question's words, to look things up in.
struct Words<'a> {
    tokens: &'a [Placed],
    given: &'a FlightGiven,
}

/// The question, where these words ask one.
pub fn asked(tokens: &[Placed]) -> Option<FlightDraft> {
    let Sizes { mut given, used } = sizes(tokens)?;
    let words = Words { tokens, given: &given };
    let what = words.gate().or_else(|| words.handrail()).or_else(|| words.guard()).or_else(|| words.flight())?;
    // A "not" is part of one question alone: why the two rails do not meet.
    if words.count(W::Not) > usize::from(what == FlightWhat::TopPost) {
        return None;
    }
    let sized = given.sizes.iter().all(|(size, _)| takes(what, *size));
    if !sized || given.lumber.is_some() && what != FlightWhat::Grip {
        return None;
    }
    let idle = words.idle(what, &used);
    let named = words.stairs() || words.any(&[W::Newel, W::TopPost]);
    let cap = what == FlightWhat::Grip && words.has(W::Cap);
    let word = |t: &Placed| matches!(t.token, Token::Ask(_) | Token::Mark | Token::Word(W::How | W::Which));
    let asks = match tokens.iter().any(word) {
        true => Asks::Word,
        false if words.opens_asking() => Asks::Opening,
        false => Asks::Naming,
    };
    if told_before(tokens, what, &given) {
        return None;
    }
    given.cap = cap;
    Some(FlightDraft { what, asks, named, given, idle })
}

/// "six risers at 7 1/4, how tall is the deck": what stands whole before the question's comma is told, and
/// kept; the question goes by it.
fn told_before(tokens: &[Placed], what: FlightWhat, given: &FlightGiven) -> bool {
    let before = tokens.iter().position(|t| t.token == Token::Break).unwrap_or(0);
    let whole = given.risers.is_some() && given.has(Size::Rise) && given.sizes.len() == 1;
    let told = |t: &Placed| matches!(t.token, Token::Measure(_) | Token::Word(W::Riser | W::Fill | W::Stairs));
    let rest = tokens.iter().skip(before).all(|t| !matches!(t.token, Token::Measure(_)));
    what == FlightWhat::Rise && before > 0 && whole && rest && tokens[..before].iter().all(told)
}

impl Words<'_> {
    fn has(&self, word: W) -> bool {
        self.count(word) > 0
    }

    fn count(&self, word: W) -> usize {
        self.tokens.iter().filter(|t| t.token == Token::Word(word)).count()
    }

    /// The words that have no part in the question.
    fn idle(&self, what: FlightWhat, used: &[usize]) -> Vec<Range<usize>> {
        let of_none = |(at, placed): &(usize, &Placed)| {
            matches!(placed.token, Token::Word(w) if !has_part(what, w)) && !used.contains(at)
        };
        self.tokens.iter().enumerate().filter(of_none).map(|(_, placed)| placed.words.clone()).collect()
    }

    fn any(&self, words: &[W]) -> bool {
        words.iter().any(|w| self.has(*w))
    }

    fn ask(&self, ask: Ask) -> bool {
        self.tokens.iter().any(|t| t.token == Token::Ask(ask))
    }

    /// True where something in it asks: a word that does, its mark.
    fn asks(&self) -> bool {
        let asking = |t: &Placed| {
            matches!(t.token, Token::Ask(a) if !matches!(a, Ask::Told | Ask::Show)) || t.token == Token::Mark
        };
        self.tokens.iter().any(asking) || self.any(&[W::How, W::Which]) || self.opens_asking()
    }

    /// "does ...", "is ..." at the start, or behind a break.
    fn opens_asking(&self) -> bool {
        let before = |i: usize| i.checked_sub(1).is_none_or(|b| self.tokens[b].token == Token::Break);
        let aux = |i: &usize| self.tokens[*i].token == Token::Word(W::Aux) && before(*i);
        (0..self.tokens.len()).any(|i| aux(&i))
    }

    /// True for a yes-or-no question.
    fn yes_no(&self) -> bool {
        self.ask(Ask::May)
            || self.has(W::Ok) && !self.ask(Ask::What)
            || self.opens_asking()
            || self.tokens.last().is_some_and(|t| t.token == Token::Mark)
    }

    /// True where no number is in it that could be a fact told.
    fn bare(&self) -> bool {
        self.given.sizes.is_empty() && self.given.lumber.is_none() && self.given.risers.is_none()
    }

    fn stairs(&self) -> bool {
        self.any(&[W::Stairs, W::Steps, W::Riser, W::Tread, W::Treads, W::Nosing, W::OpenRiser])
    }

    /// Something besides the flight itself is named: the question is of that.
    fn other(&self) -> bool {
        use W::{Baluster, BottomRail, Gate, Handrail, Latch, Leaf, Newel, Rail, TopPost};
        self.any(&[Rail, BottomRail, Handrail, Baluster, Gate, Leaf, Latch, Newel, TopPost])
    }

    fn how_high(&self) -> bool {
        self.ask(Ask::HowHigh) || self.has(W::High)
    }

    fn gate(&self) -> Option<FlightWhat> {
        let gate = self.any(&[W::Gate, W::Leaf]) || self.given.has(Size::HingeGap);
        let latch = self.has(W::Latch) && self.how_high() && !self.has(W::Pool);
        if latch && (self.asks() || self.bare()) {
            return Some(FlightWhat::LatchHeight);
        }
        // "gate brace", "balusters in the gate": nothing is told by that.
        if self.has(W::Gate) && self.bare() && !self.asks() {
            return match (self.has(W::Brace), self.has(W::Baluster), self.has(W::High)) {
                (true, false, false) => Some(FlightWhat::Brace),
                (false, true, false) => Some(FlightWhat::LeafBalusters),
                (false, false, true) => Some(FlightWhat::GateHeight),
                _ => None,
            };
        }
        if self.has(W::PoolGate) && self.asks() {
            return Some(FlightWhat::Pool);
        }
        if self.has(W::Pool) && (gate || self.any(&[W::Latch, W::SelfClose])) && self.asks() {
            return Some(FlightWhat::Pool);
        }
        if !gate || !self.asks() {
            return None;
        }
        Some(match () {
            () if self.has(W::SelfClose) => FlightWhat::Pool,
            () if self.any(&[W::Brace, W::Square]) => FlightWhat::Brace,
            () if self.has(W::Baluster) => FlightWhat::LeafBalusters,
            () if self.has(W::Sag) => FlightWhat::Wide,
            () if self.has(W::Swing) => FlightWhat::Swing,
            () if self.any(&[W::Post, W::Mid]) => FlightWhat::GatePosts,
            () if self.ask(Ask::HowWide) || self.has(W::Wide) || self.ask(Ask::HowMuch) && self.has(W::Size) => {
                FlightWhat::Leaf
            }
            () if self.ask(Ask::What) && self.has(W::Size) => FlightWhat::Leaf,
            () if self.how_high() || self.has(W::Under) => FlightWhat::GateHeight,
            () if self.has(W::Which) => FlightWhat::Swing,
            () if self.given.has(Size::Opening) && (self.has(W::Leaf) || self.has(W::Size)) => FlightWhat::Leaf,
            () => return None,
        })
    }

    fn handrail(&self) -> Option<FlightWhat> {
        if self.given.has(Size::Height) && self.stairs() && self.has(W::Rail) && self.yes_no() {
            return Some(FlightWhat::HandrailHeight);
        }
        if !(self.has(W::Handrail) || self.has(W::Grip) && self.has(W::Rail)) || !self.asks() {
            return None;
        }
        let section = self.given.lumber.is_some() || self.given.has(Size::Round) || self.has(W::Cap);
        Some(match () {
            () if self.has(W::Meet) => return None,
            () if section || self.any(&[W::Grip, W::Round]) => FlightWhat::Grip,
            () if self.given.has(Size::Projection) || self.has(W::Left) => FlightWhat::WidthLeft,
            () if self.has(W::Ends) => FlightWhat::HandrailEnds,
            () if self.any(&[W::Wall, W::Projects]) => FlightWhat::HandrailSpace,
            () if self.how_high() || self.given.has(Size::Height) => FlightWhat::HandrailHeight,
            () if self.yes_no() || self.ask(Ask::HowMany) => FlightWhat::Handrail,
            () => return None,
        })
    }

    fn guard(&self) -> Option<FlightWhat> {
        let asks = self.asks() || self.bare();
        if self.given.has(Size::Gap) {
            return (self.has(W::Baluster) && self.stairs() && self.asks()).then_some(FlightWhat::Gap);
        }
        let how_far = self.has(W::BottomRail) && self.stairs() && (self.how_high() || self.ask(Ask::HowFar));
        let lifts = self.has(W::Lift) && self.any(&[W::BottomRail, W::Rail]) || how_far;
        if lifts && !self.has(W::Nosing) && !self.given.has(Size::Lift) {
            return self.asks().then_some(FlightWhat::Lift);
        }
        if self.has(W::Triangle)
            || self.any(&[W::BottomRail, W::Rail])
                && (self.given.has(Size::Lift) || self.has(W::Nosing) && self.how_high())
        {
            return (self.asks() || self.has(W::Triangle)).then_some(FlightWhat::Triangle);
        }
        if self.has(W::Meet)
            && (self.any(&[W::LevelRail, W::TopPost]) || self.stairs() && self.any(&[W::Rail, W::Handrail]))
        {
            return (asks || self.has(W::Not)).then_some(FlightWhat::TopPost);
        }
        // "what angle do I cut the pickets".
        let angle = self.has(W::Rake) && !self.ask(Ask::HowMany);
        if self.has(W::Baluster) && self.stairs() && !angle {
            let long = self.ask(Ask::HowLong) || self.has(W::Long) || self.given.has(Size::RailsApart);
            return asks.then_some(if long { FlightWhat::BalusterLength } else { FlightWhat::Balusters });
        }
        let long = self.ask(Ask::HowLong) || self.has(W::Long);
        let of_stairs = self.stairs() || self.any(&[W::Newel, W::TopPost]);
        let mid = self.has(W::Mid) && self.yes_no() && self.asks() && !long && !self.how_high();
        let high = self.how_high() || long;
        if self.has(W::TopPost) && self.ask(Ask::Where) && !high && self.given.sizes.is_empty() {
            return Some(FlightWhat::TopPostPlace);
        }
        if self.any(&[W::Post, W::Mid, W::Newel, W::TopPost]) && of_stairs || mid {
            return asks.then_some(if high { FlightWhat::PostHeights } else { FlightWhat::Posts });
        }
        if self.has(W::Rail) && self.stairs() && self.how_high() && self.asks() {
            return Some(FlightWhat::StairRailHeight);
        }
        (self.has(W::Rail) && self.stairs() && long).then_some(FlightWhat::RailLength)
    }

    fn flight(&self) -> Option<FlightWhat> {
        if !self.asks() {
            let pitch = self.given.has(Size::Rise) && self.given.has(Size::Tread);
            return (self.has(W::Rake) && (self.bare() || pitch)).then_some(FlightWhat::Rake);
        }
        Some(match () {
            () if self.has(W::Rake) => FlightWhat::Rake,
            () if self.has(W::OpenRiser) || self.has(W::Riser) && self.any(&[W::Closed, W::Swing]) => {
                FlightWhat::OpenRisers
            }
            () if self.has(W::OneGo) && self.stairs() => FlightWhat::OneFlight,
            () if self.has(W::Landing)
                && (self.ask(Ask::HowWide) || self.any(&[W::Deep, W::Size]) || self.ask(Ask::May)) =>
            {
                FlightWhat::Landing
            }
            () if self.ask(Ask::HowMany) && self.any(&[W::Steps, W::Riser, W::Treads, W::Tread, W::Stairs]) => {
                FlightWhat::Steps
            }
            () if self.yes_no() && self.given.has(Size::LeastRise) => FlightWhat::Check,
            // "are stairs 5 foot wide" may be a slip of a telling: it takes "ok" or "deep enough" to judge.
            () if self.has(W::Ok)
                && !self.ask(Ask::What)
                && self.stairs()
                && !self.any(&[W::Post, W::Rail, W::Deck]) =>
            {
                FlightWhat::Check
            }
            () if self.has(W::Out) && self.stairs() => FlightWhat::Run,
            () if self.has(W::Total) && self.has(W::Run) && !self.given.has(Size::TotalRun) => FlightWhat::Run,
            () if self.ask(Ask::HowFar) && self.has(W::Stairs) && !self.other() => FlightWhat::Run,
            () if self.has(W::Riser) && !self.given.has(Size::Rise) && !self.ask(Ask::May) => FlightWhat::Steps,
            () if self.has(W::Rise) && !self.given.has(Size::Rise) && self.given.has(Size::TotalRise) => {
                FlightWhat::Steps
            }
            () if self.has(W::Total) && !self.given.has(Size::TotalRise) && (self.stairs() || self.has(W::Rise)) => {
                FlightWhat::Rise
            }
            () if self.how_high() && self.stairs() && !self.other() => FlightWhat::Rise,
            () => return None,
        })
    }
}
