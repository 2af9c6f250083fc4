//! What is said of runs, parted into runs: as few as say nothing twice of one run.

use super::Said;
use super::draft::Draft;
use super::opening::{Kind, Openings};
use crate::job::End;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::session::bind::told::{BOTH_SIDES, Says};

/// What of one run is said once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Slot {
    Name,
    Length,
    From,
    To,
    Bays,
}

/// What of one run is said once; `None` for what may be said of it again.
fn slot(said: &Said) -> Option<Slot> {
    match said {
        Said::Name(_) | Said::Nth(_) => Some(Slot::Name),
        Said::Length(..) => Some(Slot::Length),
        Said::From(_) => Some(Slot::From),
        Said::To(_) => Some(Slot::To),
        Said::Bays(_) => Some(Slot::Bays),
        Said::Longer(_) | Said::Gone | Said::Opening(..) | Said::Again(_) => None,
    }
}

/// What a run more costs, one without a length where others have one, and one that is said in another order than the first.
const RUN: usize = 10;
const NO_LENGTH: usize = 3;
const OTHER_ORDER: usize = 1;

/// Where each run begins among the slots said: the cheapest parting in which no run has a slot twice.
fn starts(slots: &[Slot]) -> Vec<usize> {
    let measured = slots.contains(&Slot::Length);
    let cost = |from: usize, to: usize| {
        let part = &slots[from..to];
        let twice = part.iter().enumerate().any(|(n, slot)| part[..n].contains(slot));
        let bare = if measured && !part.contains(&Slot::Length) { NO_LENGTH } else { 0 };
        let order = if part.first() == slots.first() { 0 } else { OTHER_ORDER };
        (!twice).then_some(RUN + bare + order)
    };
    // The cheapest way up to each slot, and where its last run begins.
    let mut best: Vec<(usize, usize)> = vec![(0, 0)];
    for to in 1..=slots.len() {
        let ways = (0..to).filter_map(|from| Some((best[from].0 + cost(from, to)?, from)));
        best.push(ways.min().unwrap_or((usize::MAX / 2, to - 1)));
    }
    let mut all = Vec::new();
    let mut at = slots.len();
    while at > 0 {
        at = best[at].1;
        all.push(at);
    }
    all.reverse();
    all
}

/// The runs that are said, each with its openings; `None` where a distance has no opening of its own.
pub(super) fn drafts(said: &[Said]) -> Option<Vec<Draft>> {
    let said = &again(said);
    let slots: Vec<Slot> = said.iter().filter_map(slot).collect();
    let starts = starts(&slots);
    let mut parts: Vec<Part> = starts.iter().map(|_| Part::default()).collect();
    if parts.is_empty() && !said.is_empty() {
        parts.push(Part::default());
    }
    // Openings stand behind what is said of their run, but where the first stands before all of it.
    let lead = matches!(said.first(), Some(Said::Opening(..))) && !slots.is_empty();
    let mut met = 0;
    for one in said {
        let behind = starts.iter().rposition(|s| *s < met.max(1)).unwrap_or(0);
        let ahead = starts.iter().rposition(|s| *s <= met).unwrap_or(0);
        match slot(one) {
            Some(_) => {
                parts[ahead].draft.take(one);
                met += 1;
            }
            None => parts[if lead { ahead } else { behind }].put(one),
        }
    }
    let named: Vec<Option<String>> = parts.iter().map(|p| p.draft.name.clone()).collect();
    to_named(&mut parts, &named);
    parts.into_iter().map(Part::done).collect()
}

/// A name said twice is of one run.
fn again(said: &[Said]) -> Vec<Said> {
    let named = |at: usize| matches!(&said[at], Said::Name(_)) && said[..at].contains(&said[at]);
    let one = |(at, one): (usize, &Said)| match one {
        Said::Name(name) if named(at) => Said::Again(name.clone()),
        other => other.clone(),
    };
    said.iter().enumerate().map(one).collect()
}

/// One run while it is gathered.
#[derive(Clone, Debug, Default)]
struct Part {
    draft: Draft,
    openings: Vec<(RowId, Says)>,
    /// The side its openings were said to stand in.
    again: Option<String>,
}

impl Part {
    fn put(&mut self, said: &Said) {
        match said {
            Said::Opening(row, says) => self.openings.push((*row, says.clone())),
            Said::Again(name) => self.again = self.again.take().or(Some(name.clone())),
            other => self.draft.take(other),
        }
    }

    /// The name of a run of this line that its openings are said to stand in.
    fn side(&self, named: &[Option<String>]) -> Option<String> {
        let word = |says: &Says| if let Says::Word(word) = says { Some(word.clone()) } else { None };
        let mut places = self.openings.iter().filter_map(|(_, says)| word(says)).chain(self.again.clone());
        places.find(|place| named.iter().any(|n| n.as_ref() == Some(place)))
    }

    fn done(self) -> Option<Draft> {
        Some(Draft { openings: Openings::of(&self.openings)?, ..self.draft })
    }
}

/// Openings that are said to stand in a run of this line stand in that one.
fn to_named(parts: &mut [Part], named: &[Option<String>]) {
    for at in 0..parts.len() {
        let Some(side) = parts[at].side(named) else { continue };
        let Some(other) = named.iter().position(|n| *n == Some(side.clone())).filter(|o| *o != at) else { continue };
        let moved = std::mem::take(&mut parts[at].openings);
        parts[other].openings.extend(moved);
    }
}

/// "Sides" are the left one and the right one: of one length, or each of its own.
pub(super) fn sides(mut runs: Vec<Draft>) -> Option<Vec<Draft>> {
    let both = |d: &Draft| d.name.as_deref() == Some(BOTH_SIDES);
    let Some(at) = runs.iter().position(both) else { return Some(runs) };
    // Which of them has the opening nobody said.
    if !runs[at].openings.is_empty() || runs.iter().filter(|d| both(d)).nth(1).is_some() {
        return None;
    }
    let second = runs.get(at + 1).filter(|d| d.name.is_none() && d.length.is_some()).cloned();
    let right = match second {
        Some(second) => {
            runs.remove(at + 1);
            second
        }
        None => runs[at].clone(),
    };
    runs[at].name = Some(String::from("left"));
    runs.insert(at + 1, Draft { name: Some(String::from("right")), ..right });
    Some(runs)
}

/// "6'8 to the stairs, past them 11'4, stairs 4'6": an opening without a place of its own parts two stretches, wherever its width is said.
pub(super) fn part_by_openings(runs: &mut [Draft]) -> Option<(Kind, Length)> {
    let [first, second] = runs else { return None };
    let all: Vec<_> = first.openings.iter().chain(&second.openings).collect();
    let [opening] = &all[..] else { return None };
    let (kind, width) = (opening.kind, opening.width.filter(|_| opening.is_unplaced() && !opening.none)?);
    let end = if kind == Kind::Stairs { End::StairHead } else { End::GatePost };
    let open = first.to.is_none_or(|e| e == end) && second.from.is_none_or(|e| e == end);
    if !open || first.length.is_none() || second.length.is_none() || second.name.is_some() {
        return None;
    }
    (first.openings, second.openings) = (Vec::new(), Vec::new());
    (first.to, second.from) = (Some(end), Some(end));
    Some((kind, width))
}

/// Words that give one figure to several things.
const EACH: &[&str] = &["each", "ea", "both", "apiece", "every", "same"];

/// True for a word that gives what stands beside it to several things.
pub(in crate::session::bind) fn is_each(word: &str) -> bool {
    EACH.iter().any(|each| word.eq_ignore_ascii_case(each))
}

/// "Left and right are 12 foot each": the one length is of every run named, and so are the ends said before them all: `None` where those may be
/// the first run's alone.
pub(super) fn share(line: &str, said: &[Said], runs: &mut [Draft]) -> Option<()> {
    let each = line.split(|c: char| !c.is_alphanumeric()).any(is_each);
    let lengths: Vec<_> = runs.iter().filter_map(|d| d.length).collect();
    if let ([length], true) = (&lengths[..], each && runs.iter().all(|d| d.name.is_some())) {
        runs.iter_mut().for_each(|d| d.length = Some(*length));
    }
    let [first, rest @ ..] = runs else { return Some(()) };
    let lead = matches!(said, [Said::From(_), Said::To(_), ..] | [Said::To(_), Said::From(_), ..]);
    let endless = |d: &Draft| d.from.is_none() && d.to.is_none();
    let alike = rest.first().is_some_and(|d| endless(d) && d.name.is_some() && first.name.is_some());
    if lead && alike {
        (each && rest.iter().all(endless)).then_some(())?;
        rest.iter_mut().for_each(|d| (d.from, d.to) = (first.from, first.to));
    }
    Some(())
}
