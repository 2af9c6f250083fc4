//! Items to readings: the cheapest ways to cover a line with pieces.
//!
//! A dynamic programme walks the items and keeps the few cheapest covers of every
//! beginning. A word no piece claims is left over and costs by its weight, so that a
//! reading that uses the words beats one that drops them.

use super::assemble::assemble;
use super::canon::MOST_BRACKETS;
use super::draft::{Clause, Left, Reading, Weight};
use super::effort::{Effort, MOST, Tangled};
use super::items::{Is, Item, cuts};
use super::pieces::{Known, Piece, Say, pieces_at};
use super::sense::{Name, Op, Part, Sense};
use super::sums::sums;
use super::words::Word;
use crate::measure::{Doubt, Guess, Meaning};
use std::ops::Range;
use std::rc::Rc;

/// How many covers of a beginning are kept.
const KEPT: usize = 5;
/// What each step from the likeliest items costs.
const TURN: u32 = 4;
/// What a sum costs at most that nothing a turn away comes near: with "9-7" taken for feet and inches, say.
const PLAIN_SUM: u32 = 9;
/// How many readings are handed on.
const READINGS: usize = 12;

/// Every reading of the words worth weighing, cheapest first; `names` are those runs go by.
///
/// # Errors
///
/// [`Tangled`] where the line takes more work than any line said by a person.
pub fn readings(words: &[Word], names: &[Name]) -> Result<Vec<Reading>, Tangled> {
    readings_within(words, names, &Effort::new(MOST))
}

/// The readings, the work they take counted.
///
/// # Errors
///
/// [`Tangled`] where the work is used up.
pub fn readings_within(words: &[Word], names: &[Name], effort: &Effort) -> Result<Vec<Reading>, Tangled> {
    if nested(words) > usize::from(MOST_BRACKETS) {
        return Err(Tangled);
    }
    let mut all: Vec<Reading> = Vec::new();
    let mut known = Known::new(effort);
    for (turns, items) in cuts(words, names) {
        if turns == 0
            && let Some(sum) = arithmetic(&items, effort)
        {
            return Ok(vec![sum]);
        }
        let dearer = TURN * u32::try_from(turns).unwrap_or(0);
        let read = covers(&items, &mut known).into_iter().map(|cover| read(&items, &cover)).chain(sums(&items, effort));
        all.extend(read.map(|r| Reading { cost: r.cost + dearer, ..r }));
        if effort.is_over() {
            return Err(Tangled);
        }
        if turns == 0 && all.iter().min_by_key(|r| r.cost).is_some_and(is_plain_sum) {
            break;
        }
    }
    all.sort_by_key(|r| r.cost);
    let mut distinct: Vec<Reading> = Vec::new();
    for reading in all {
        if !distinct.iter().any(|d| d.clauses == reading.clauses && d.left == reading.left) {
            distinct.push(reading);
        }
        if distinct.len() >= READINGS {
            break;
        }
    }
    Ok(distinct)
}

/// How many brackets stand open at once at the most.
fn nested(words: &[Word]) -> usize {
    let mut open = 0_usize;
    let depths = words.iter().map(|w| {
        match w.text.as_str() {
            "(" => open += 1,
            ")" => open = open.saturating_sub(1),
            _ => {}
        }
        open
    });
    depths.max().unwrap_or(0)
}

/// The sum a line is that holds nothing but measures and signs of arithmetic: no piece of the job is said by those
/// alone, so none is looked for.
fn arithmetic(items: &[Item], effort: &Effort) -> Option<Reading> {
    let measure = |i: &Item| matches!(i.is, Is::Measure(_));
    let signs = |i: &Item| {
        let sign = |s: &Sense| {
            matches!(s, Sense::Op(Op::Plus | Op::Less | Op::Times | Op::Over | Op::Half | Op::Third | Op::Quarter))
        };
        i.senses().iter().any(sign) || matches!(&*i.text, "of" | "by")
    };
    let plain = items.iter().all(|i| measure(i) || signs(i)) && items.iter().any(measure) && items.iter().any(signs);
    plain.then(|| sums(items, effort)).filter(|found| found.len() == 1)?.pop().filter(is_plain_sum)
}

/// A sum that takes in every word and assumes nothing: whatever else the line may be cut into is a turn away, and too
/// dear to be asked about beside it.
fn is_plain_sum(reading: &Reading) -> bool {
    matches!(reading.clauses[..], [Clause::Sum(_)]) && reading.left.is_empty() && reading.cost <= PLAIN_SUM
}

/// One step of a cover: a piece, or an item left over.
#[derive(Clone, Debug)]
pub(super) enum Step {
    /// A piece from this item to its end.
    Piece(usize, Rc<Piece>),
    /// An item no piece claims.
    Left(usize, Weight),
}

struct Cover {
    cost: u32,
    steps: Option<Rc<Node>>,
}

struct Node {
    step: Step,
    before: Option<Rc<Node>>,
}

fn covers(items: &[Item], known: &mut Known<'_>) -> Vec<(u32, Vec<Step>)> {
    let mut best: Vec<Vec<Cover>> = (0..=items.len()).map(|_| Vec::new()).collect();
    best[0].push(Cover { cost: 0, steps: None });
    for at in 0..items.len() {
        if known.effort().is_over() {
            return Vec::new();
        }
        let mut edges: Vec<(usize, u32, Step)> = vec![skip(items, at)];
        for piece in pieces_at(items, at, known) {
            edges.push((piece.end, piece.cost + guess_cost(&items[at..piece.end]), Step::Piece(at, Rc::new(piece))));
        }
        for (end, cost, step) in edges {
            let grown: Vec<Cover> = best[at].iter().map(|c| grow(c, cost, &step)).collect();
            best[end].extend(grown);
        }
        for covers in &mut best[at + 1..] {
            covers.sort_by_key(|c| c.cost);
            covers.truncate(KEPT);
        }
    }
    best.pop().unwrap_or_default().into_iter().map(|c| (c.cost, unroll(c.steps))).collect()
}

fn grow(cover: &Cover, cost: u32, step: &Step) -> Cover {
    let node = Node { step: step.clone(), before: cover.steps.clone() };
    Cover { cost: cover.cost.saturating_add(cost), steps: Some(Rc::new(node)) }
}

fn unroll(mut node: Option<Rc<Node>>) -> Vec<Step> {
    let mut steps = Vec::new();
    while let Some(n) = node {
        steps.push(n.step.clone());
        node = n.before.clone();
    }
    steps.reverse();
    steps
}

/// What reading these items as one piece assumes.
fn guess_cost(items: &[Item]) -> u32 {
    items.iter().map(|i| u32::from(i.near) * 8 + measure_cost(i)).sum()
}

fn measure_cost(item: &Item) -> u32 {
    let Is::Measure(m) = &item.is else { return 0 };
    if matches!(m.meaning, Meaning::Doubt(d, _) if d != Doubt::Decimal) {
        return 8;
    }
    match m.guess {
        Some(Guess::Homophone) => 14,
        Some(Guess::LostSlash) => 6,
        Some(_) => 1,
        None => 0,
    }
}

fn skip(items: &[Item], at: usize) -> (usize, u32, Step) {
    let weight = weight(items, at);
    let cost = match weight {
        Weight::Light => 3,
        Weight::Unknown => 40,
        Weight::Touching => 60,
        Weight::Heavy => 400,
    };
    (at + 1, cost, Step::Left(at, weight))
}

/// How much an item left over matters, by what it is and what it touches.
pub(crate) fn weight(items: &[Item], at: usize) -> Weight {
    let item = &items[at];
    let neighbours = [at.checked_sub(1).and_then(|b| items.get(b)), items.get(at + 1)];
    let beside = |test: fn(&Item) -> bool| neighbours.iter().flatten().any(|i| test(i));
    match &item.is {
        Is::Sep(_) | Is::Junk => Weight::Light,
        Is::Unread | Is::Measure(_) => Weight::Heavy,
        Is::Unknown | Is::Term(_) if item.torn => Weight::Heavy,
        Is::Unknown if beside(is_cue) => Weight::Touching,
        Is::Unknown => Weight::Unknown,
        Is::Term(_) if changes_what_it_touches(item) && beside(is_measure) => Weight::Heavy,
        // "first run 13'", "the second post": which one it is, never filler.
        Is::Term(_) if counts_one(items, at) => Weight::Heavy,
        // "one at 61": one what?
        Is::Term(_) if &*item.text == "one" && items.get(at + 1).is_some_and(|i| matches!(&*i.text, "at" | "@")) => {
            Weight::Heavy
        }
        // "layout of run at 2", "bays of 5 foot 2": what it ties together was not read as tied.
        Is::Term(_) if matches!(&*item.text, "of" | "from") && beside(is_cue) => Weight::Touching,
        Is::Term(_) if item.is_light() && !item.may_be(Sense::Not) => Weight::Light,
        Is::Term(_) => Weight::Heavy,
    }
}

fn counts_one(items: &[Item], at: usize) -> bool {
    let ordinal = matches!(&*items[at].text, "first" | "second" | "third" | "fourth" | "last");
    let counted = |s: &Sense| matches!(s, Sense::Part(Part::Run | Part::Post | Part::Bay | Part::Gate));
    ordinal && items.get(at + 1).is_some_and(|i| i.senses().iter().any(counted))
}

fn is_measure(item: &Item) -> bool {
    matches!(item.is, Is::Measure(_) | Is::Unread)
}

fn is_cue(item: &Item) -> bool {
    is_measure(item) || matches!(item.is, Is::Term(_)) && !item.is_light()
}

fn changes_what_it_touches(item: &Item) -> bool {
    item.senses().iter().any(|s| matches!(s, Sense::Qualifier | Sense::Not | Sense::Op(_)))
        && !matches!(
            &*item.text,
            "and" | "in" | "to" | "the" | "of" | "'s" | "is" | "at" | "from" | "a" | "put" | "turn" | "stick"
        )
}

/// "gate? yeah gate" ends on its answer; so does a lone "gate?" asked back by nobody.
fn answers_itself(items: &[Item]) -> bool {
    items.iter().filter(|i| i.is == Is::Sep('?')).count() > 1
}

/// Words a question was read over.
fn idle(say: &Say) -> Vec<Left> {
    let Say::Clause(Clause::Flight(draft)) = say else { return Vec::new() };
    draft.idle.iter().map(|words| Left { words: words.clone(), weight: Weight::Unknown }).collect()
}

fn read(items: &[Item], cover: &(u32, Vec<Step>)) -> Reading {
    let (cost, steps) = cover;
    let mut reading = assemble(items, steps);
    reading.cost += *cost;
    for step in steps {
        match step {
            Step::Left(at, weight) => reading.left.push(Left { words: items[*at].words.clone(), weight: *weight }),
            Step::Piece(at, piece) if piece.say == Say::Noise => {
                let words = items[*at].words.start..items[piece.end - 1].words.end;
                reading.left.push(Left { words, weight: Weight::Unknown });
            }
            Step::Piece(_, piece) => reading.left.extend(idle(&piece.say)),
        }
    }
    // "and with 6x6s?", "3 bays?": asked, not told.
    // A mark behind a question of its own ("..., how many posts?") belongs to that question.
    let asks = reading
        .clauses
        .iter()
        .any(|c| matches!(c, Clause::Ask(_) | Clause::Query(_) | Clause::Flight(_) | Clause::Why(_)));
    let marked = items.last().is_some_and(|i| i.is == Is::Sep('?'));
    reading.supposes |= marked && !asks && !answers_itself(items);
    reading.heard = heard(items);
    reading.near = items.iter().filter(|i| i.near).map(|i| i.words.clone()).collect();
    reading
}

/// The words that were taken for a number they only sound like: in a measure, or before "bays".
fn heard(items: &[Item]) -> Vec<Range<usize>> {
    let guessed =
        |i: &Item| matches!(&i.is, Is::Measure(m) if matches!(m.guess, Some(Guess::Homophone | Guess::LostSlash)));
    let sounds = |i: &Item| matches!(&*i.text, "for" | "fore" | "to" | "too" | "ate");
    let bays = |at: usize| items.get(at + 1).is_some_and(|i| i.may_be(Sense::Part(Part::Bay)));
    let all = items.iter().enumerate().filter(|(at, i)| guessed(i) || sounds(i) && bays(*at));
    all.map(|(_, i)| i.words.clone()).collect()
}
