//! Which size each number of a question is, by the words beside it.

use super::tokens::Token;
use crate::grammar::ask::Size;
use crate::grammar::draft::FlightGiven;
use crate::grammar::flight_words::FlightWord as W;
use crate::measure::{Meaning, Measure};

/// What stands in a question besides filler, in order.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part<'a> {
    Word(W),
    Measure(&'a Measure),
}

/// The sizes of all numbers; `None` where one has none, or one size has two.
pub fn sizes(tokens: &[Token]) -> Option<FlightGiven> {
    let parts: Vec<Part> = tokens
        .iter()
        .filter_map(|t| match t {
            Token::Word(W::Fill | W::Ok | W::Aux | W::How | W::Which | W::Not)
            | Token::Ask(_)
            | Token::Mark
            | Token::Break
            | Token::Lumber(_) => None,
            Token::Word(w) => Some(Part::Word(*w)),
            Token::Measure(m) => Some(Part::Measure(m)),
        })
        .collect();
    let mut given = FlightGiven { lumber: lumber(tokens)?, ..FlightGiven::default() };
    let gate = parts.iter().any(|p| matches!(p, Part::Word(W::Gate | W::Leaf | W::Opening)));
    let numbers: Vec<usize> = (0..parts.len()).filter(|i| matches!(parts[*i], Part::Measure(_))).collect();
    // "rise 8 tread 6": the word before each number is its own, where one stands before all of them
    // and not behind all of them.
    let named = |i: &usize, step: isize| beside(&parts, *i, step).is_some_and(|w| names(w));
    let before = numbers.iter().all(|i| named(i, -1)) && !numbers.iter().all(|i| named(i, 1));
    for i in numbers {
        let Part::Measure(m) = parts[i] else { continue };
        place(&parts, i, m, before, gate, &mut given)?;
    }
    Some(given)
}

fn lumber(tokens: &[Token]) -> Option<Option<crate::measure::Lumber>> {
    let all: Vec<_> = tokens.iter().filter_map(|t| if let Token::Lumber(l) = t { Some(*l) } else { None }).collect();
    if all.len() > 1 { None } else { Some(all.first().copied()) }
}

/// The word right beside a number.
fn beside(parts: &[Part], i: usize, step: isize) -> Option<W> {
    match parts.get(i.checked_add_signed(step)?)? {
        Part::Word(w) => Some(*w),
        Part::Measure(_) => None,
    }
}

/// True for a word that names a size.
fn names(w: W) -> bool {
    use W::{Deck, Each, Hinge, Latch, Leaf, Nosing, Opening, Rise, Riser, Run, Tread, Treads};
    matches!(w, Deck | Each | Hinge | Latch | Leaf | Nosing | Opening | Rise | Riser | Run | Tread | Treads)
}

/// A plain whole number.
fn counted(m: &Measure) -> Option<u16> {
    match m.meaning {
        Meaning::Bare(n) if n.value.is_integer() && !n.fraction && !n.plural && m.shade.is_none() && !m.about => {
            u16::try_from(n.value.to_integer()).ok()
        }
        _ => None,
    }
}

fn place(parts: &[Part], i: usize, m: &Measure, before: bool, gate: bool, given: &mut FlightGiven) -> Option<()> {
    let (prev, next) = (beside(parts, i, -1), beside(parts, i, 1));
    let next = next.filter(|_| !before);
    let after_next = beside(parts, i, 2);
    match (next, counted(m)) {
        (Some(W::Riser), Some(n)) if given.risers.is_none() => return once(&mut given.risers, n),
        (Some(W::Steps), Some(n)) => return once(&mut given.steps, n),
        (Some(W::Treads), Some(n)) if n < 9 => return once(&mut given.treads, n),
        _ => {}
    }
    if gate && let Some(done) = of_gate(parts, i, m, prev, next, given) {
        return done;
    }
    if given.has(Size::Rise) && next.is_none() && in_a_row(parts, i) {
        return least(m, given);
    }
    let paired = i >= 2 && prev == Some(W::On) && matches!(parts[i - 2], Part::Measure(_));
    let size = match (next, prev) {
        _ if paired && given.has(Size::Rise) && !given.has(Size::Tread) => Size::Tread,
        (Some(W::Total), _) => Size::TotalRise,
        (Some(W::Rise | W::Riser), Some(W::Total)) if beside(parts, i, 2).is_none() => Size::TotalRise,
        (Some(W::Rise | W::Riser), _) if given.has(Size::Rise) => return None,
        (Some(W::Rise | W::Riser), _) => Size::Rise,
        (Some(W::Tread | W::Treads), _) => Size::Tread,
        (Some(W::Run), _) => Size::Tread,
        (Some(W::Nosing), _) => Size::Nosing,
        (Some(W::Off), _) if after_next == Some(W::Nosing) => Size::Lift,
        (Some(W::Round), _) => Size::Round,
        (Some(W::On), _) if matches!(parts.get(i + 2), Some(Part::Measure(_))) => Size::Rise,
        (Some(W::Apart), _) => Size::RailsApart,
        (Some(W::Deck), _) => Size::TotalRise,
        (Some(W::Projects), _) | (_, Some(W::Projects)) => Size::Projection,
        (Some(W::Wide | W::Stairs), Some(W::Stairs)) | (Some(W::Wide), None) => Size::Width,
        (Some(W::Stairs), _) => Size::Width,
        (_, Some(W::Rise)) if total_before(parts, i) => Size::TotalRise,
        (_, Some(W::Rise | W::Riser)) if !given.has(Size::Rise) => Size::Rise,
        (_, Some(W::Riser)) => return least(m, given),
        (_, Some(W::Tread | W::Treads | W::Run)) => Size::Tread,
        (_, Some(W::Nosing)) => Size::Nosing,
        (_, Some(W::Deck)) => Size::TotalRise,
        (_, Some(W::Stairs | W::Wide)) => Size::Width,
        (_, Some(W::Handrail | W::High)) | (Some(W::Handrail | W::High), _) => Size::Height,
        (_, Some(W::Latch | W::Lowest)) => Size::LatchHeight,
        (Some(W::Gap | W::Baluster), _) | (_, Some(W::Gap | W::Baluster)) => Size::Gap,
        (None, None) if pair(parts, i) && !given.has(Size::Rise) => Size::Rise,
        (_, None) if i > 0 && pair(parts, i - 1) && given.has(Size::Rise) && !given.has(Size::Tread) => Size::Tread,
        _ => return None,
    };
    put(given, size, m)
}

/// "7 3/4 and 10": two numbers side by side.
fn pair(parts: &[Part], i: usize) -> bool {
    matches!((parts.get(i), parts.get(i + 1)), (Some(Part::Measure(_)), Some(Part::Measure(_))))
}

fn total_before(parts: &[Part], i: usize) -> bool {
    beside(parts, i, -2) == Some(W::Total)
}

/// "risers are 7 1/2, 7 1/2 and 7": one number behind another, all of them risers.
fn in_a_row(parts: &[Part], i: usize) -> bool {
    let back = (0..i).rev().find(|k| matches!(parts[*k], Part::Word(_)));
    back.is_some_and(|k| k + 1 < i && parts[k] == Part::Word(W::Riser))
}

fn least(m: &Measure, given: &mut FlightGiven) -> Option<()> {
    // Told again as it stands it says nothing more.
    if given.sizes.iter().any(|(size, told)| *size == Size::Rise && told.meaning == m.meaning) {
        return Some(());
    }
    put(given, Size::LeastRise, m)
}

/// A number of a gate's; `None` where the words beside it are no gate's.
fn of_gate(
    parts: &[Part],
    i: usize,
    m: &Measure,
    prev: Option<W>,
    next: Option<W>,
    given: &mut FlightGiven,
) -> Option<Option<()>> {
    let (prev, next) = (skip(parts, i, -1, prev), skip(parts, i, 1, next));
    let size = match (next, prev) {
        (Some(W::Each), _) => {
            return Some(put(given, Size::HingeGap, m).and_then(|()| put(given, Size::LatchGap, m)));
        }
        (Some(W::Hinge), _) => Size::HingeGap,
        (Some(W::Latch), _) => Size::LatchGap,
        (Some(W::On), _) if matches!(parts.get(i + 2), Some(Part::Measure(_))) => Size::Leaf,
        (_, Some(W::On)) if given.has(Size::Leaf) => Size::LeafHeight,
        (Some(W::High), _) => Size::LeafHeight,
        (Some(W::Leaf), _) | (_, Some(W::Leaf)) => Size::Leaf,
        (Some(W::Opening | W::Gate), _) => opening(given)?,
        (_, Some(W::Opening | W::Gate | W::Top | W::Middle | W::Bottom)) => opening(given)?,
        (Some(W::Top | W::Middle | W::Bottom), _) | (None, None) if given.has(Size::Opening) => opening(given)?,
        (_, Some(W::Hinge)) => Size::HingeGap,
        (_, Some(W::Latch)) => Size::LatchGap,
        _ => return None,
    };
    Some(put(given, size, m))
}

/// Past "wide" and "deep" to the word they belong to.
fn skip(parts: &[Part], i: usize, step: isize, found: Option<W>) -> Option<W> {
    if found == Some(W::Wide) { beside(parts, i, step * 2).or(found) } else { found }
}

/// The next measure of the opening.
fn opening(given: &FlightGiven) -> Option<Size> {
    [Size::Opening, Size::SecondOpening, Size::ThirdOpening].into_iter().find(|s| !given.has(*s))
}

fn once(slot: &mut Option<u16>, n: u16) -> Option<()> {
    slot.replace(n).is_none().then_some(())
}

fn put(given: &mut FlightGiven, size: Size, m: &Measure) -> Option<()> {
    if given.has(size) {
        return None;
    }
    given.sizes.push((size, m.clone()));
    Some(())
}
