//! Which size each number of a question is, by the words beside it.

use super::tokens::{Placed, Token};
use crate::grammar::ask::Size;
use crate::grammar::flight_draft::FlightGiven;
use crate::grammar::flight_words::FlightWord as W;
use crate::grammar::sense::Ask;
use crate::measure::{Lumber, Meaning, Measure};

/// What stands in a question besides filler, in order, with its token's place.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part<'a> {
    Word(W),
    Measure(&'a Measure),
    /// A comma: a number is not named by a word beyond it.
    Break,
}

/// The sizes of a question, and which of its tokens named them.
pub struct Sizes {
    /// The sizes.
    pub given: FlightGiven,
    /// The tokens that have their part in them.
    pub used: Vec<usize>,
}

/// A size and how far off, in parts, the words that name it stand.
type Found = (Size, &'static [isize]);

/// The sizes of all numbers; `None` where one has none, or one size has two.
pub fn sizes(tokens: &[Placed]) -> Option<Sizes> {
    let mut line = Line { parts: Vec::new(), places: Vec::new() };
    for (at, placed) in tokens.iter().enumerate() {
        let part = match &placed.token {
            Token::Word(W::Fill | W::Idle | W::Ok | W::Aux | W::How | W::Which | W::Not) => continue,
            Token::Word(w) => Part::Word(*w),
            Token::Measure(m) => Part::Measure(m),
            Token::Break => Part::Break,
            // "7 risers of 7 5/8 what's the total rise": what is asked for names no number before it.
            Token::Ask(Ask::May | Ask::Told | Ask::Show) | Token::Mark | Token::Lumber(_) => continue,
            Token::Ask(_) => Part::Break,
        };
        line.parts.push(part);
        line.places.push(at);
    }
    let mut found =
        Sizes { given: FlightGiven { lumber: lumber(tokens)?, ..FlightGiven::default() }, used: Vec::new() };
    let numbers: Vec<usize> = (0..line.parts.len()).filter(|i| matches!(line.parts[*i], Part::Measure(_))).collect();
    let before = line.named_before(&numbers);
    for i in numbers {
        line.place(i, before, &mut found)?;
    }
    Some(found)
}

fn lumber(tokens: &[Placed]) -> Option<Option<Lumber>> {
    let all: Vec<Lumber> =
        tokens.iter().filter_map(|t| if let Token::Lumber(l) = t.token { Some(l) } else { None }).collect();
    if all.len() > 1 { None } else { Some(all.first().copied()) }
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

struct Line<'a> {
    parts: Vec<Part<'a>>,
    places: Vec<usize>,
}

impl Line<'_> {
    /// The word so many parts off.
    fn word(&self, i: usize, off: isize) -> Option<W> {
        match self.parts.get(i.checked_add_signed(off)?)? {
            Part::Word(w) => Some(*w),
            Part::Measure(_) | Part::Break => None,
        }
    }

    fn any(&self, words: &[W]) -> bool {
        self.parts.iter().any(|p| matches!(p, Part::Word(w) if words.contains(w)))
    }

    fn number(&self, i: usize, off: isize) -> bool {
        let at = i.checked_add_signed(off).and_then(|at| self.parts.get(at));
        matches!(at, Some(Part::Measure(_)))
    }

    /// "rise 8 tread 6": the word before each number is its own, where one stands before all of
    /// them and not behind all of them.
    fn named_before(&self, numbers: &[usize]) -> bool {
        let named = |i: &usize, off| self.word(*i, off).is_some_and(names);
        numbers.iter().all(|i| named(i, -1)) && !numbers.iter().all(|i| named(i, 1))
    }

    fn place(&self, i: usize, before: bool, found: &mut Sizes) -> Option<()> {
        let Part::Measure(m) = self.parts[i] else { return None };
        let next = self.word(i, 1).filter(|_| !before);
        if let Some(n) = counted(m)
            && self.count(i, n, next, found).is_some()
        {
            return Some(());
        }
        if self.of_both_gaps(i, m, found).is_some() {
            return Some(());
        }
        let prev = self.word(i, -1);
        let gate = self.parts.iter().any(|p| matches!(p, Part::Word(W::Gate | W::Leaf | W::Opening)));
        let of_gate = if gate { self.of_gate(i, prev, next, &found.given) } else { None };
        let (size, by) = of_gate.or_else(|| self.of_stairs(i, prev, next, &found.given))?;
        self.put(i, size, by, m, found)
    }

    fn put(&self, i: usize, size: Size, by: &[isize], m: &Measure, found: &mut Sizes) -> Option<()> {
        let again = found.given.sizes.iter().find(|(s, _)| *s == Size::Rise);
        if size == Size::LeastRise && again.is_some_and(|(_, told)| told.meaning == m.meaning) {
            // Told again as it stands it says nothing more.
            return Some(());
        }
        if found.given.has(size) {
            return None;
        }
        found.given.sizes.push((size, m.clone()));
        self.use_up(i, by, found);
        Some(())
    }

    fn use_up(&self, i: usize, by: &[isize], found: &mut Sizes) {
        found.used.extend(by.iter().filter_map(|off| self.places.get(i.checked_add_signed(*off)?)));
    }

    fn count(&self, i: usize, n: u16, next: Option<W>, found: &mut Sizes) -> Option<()> {
        let slot = match next? {
            W::Riser => &mut found.given.risers,
            W::Steps => &mut found.given.steps,
            W::Treads if n < 9 || self.number(i, 2) => &mut found.given.treads,
            _ => return None,
        };
        if slot.is_some() {
            return None;
        }
        *slot = Some(n);
        self.use_up(i, &[1], found);
        Some(())
    }

    /// "half inch each side".
    fn of_both_gaps(&self, i: usize, m: &Measure, found: &mut Sizes) -> Option<()> {
        let gate = self.parts.iter().any(|p| matches!(p, Part::Word(W::Gate | W::Leaf | W::Opening)));
        let by: &[isize] = match (self.word(i, 1), self.word(i, 2)) {
            (Some(W::Each), _) => &[1],
            (Some(W::Gap), Some(W::Each)) => &[1, 2],
            _ => return None,
        };
        if !gate {
            return None;
        }
        self.put(i, Size::HingeGap, by, m, found)?;
        self.put(i, Size::LatchGap, by, m, found)
    }

    fn of_stairs(&self, i: usize, prev: Option<W>, next: Option<W>, given: &FlightGiven) -> Option<Found> {
        use Size::{Height, Lift, Nosing, Projection, RailsApart, Rise, Round, TotalRise, Tread, Width};
        if given.has(Rise) && next.is_none() && self.in_a_row(i) {
            return Some((Size::LeastRise, &[]));
        }
        let paired = prev == Some(W::On) && self.number(i, -2);
        let found: Found = match (next, prev) {
            _ if paired && given.has(Rise) && !given.has(Tread) => match next {
                Some(W::Tread | W::Treads | W::Run) => (Tread, &[1, -1]),
                _ => (Tread, &[-1]),
            },
            (Some(W::Total), _) if self.word(i, 2) == Some(W::Rise) => (TotalRise, &[1, 2]),
            (Some(W::Total), _) => (TotalRise, &[1]),
            (Some(W::Rise | W::Riser), _) if given.has(Rise) => return None,
            (Some(W::Rise | W::Riser), _) => (Rise, &[1]),
            (Some(W::Tread | W::Treads | W::Run), _) => (Tread, &[1]),
            (Some(W::Nosing), _) => (Nosing, &[1]),
            (Some(W::Off), _) if self.word(i, 2) == Some(W::Nosing) => (Lift, &[1, 2]),
            (Some(W::Round), _) => (Round, &[1]),
            (Some(W::On), _) if self.number(i, 2) => (Rise, &[1]),
            (Some(W::Apart), _) => (RailsApart, &[1, -1]),
            (Some(W::Deck), _) => (TotalRise, &[1]),
            (Some(W::Projects), _) => (Projection, &[1]),
            (_, Some(W::Projects)) => (Projection, &[-1]),
            (Some(W::Wide), Some(W::Stairs)) => (Width, &[1, -1]),
            // "is 36 wide enough for stairs".
            (Some(W::Wide), None) if self.any(&[W::Stairs, W::Steps]) => (Width, &[1]),
            // "what does a 3 1/2 handrail leave".
            (Some(W::Handrail), _) if self.any(&[W::Left]) => (Projection, &[1]),
            (Some(W::OpenRiser), _) => (Size::OpenRiser, &[1]),
            (_, Some(W::OpenRiser)) => (Size::OpenRiser, &[-1]),
            (Some(W::Stairs), _) if matches!(self.word(i, 2), Some(W::Rail | W::Handrail)) => (Height, &[1, 2]),
            (Some(W::Stairs), _) => (Width, &[1]),
            (_, Some(W::Rise)) if self.word(i, -2) == Some(W::Total) => (TotalRise, &[-1, -2]),
            (_, Some(W::Rise | W::Riser)) if !given.has(Rise) => (Rise, &[-1]),
            (_, Some(W::Riser)) => (Size::LeastRise, &[-1]),
            (_, Some(W::Tread | W::Treads | W::Run)) => (Tread, &[-1]),
            (_, Some(W::Nosing)) => (Nosing, &[-1]),
            (_, Some(W::Deck)) => (TotalRise, &[-1]),
            (_, Some(W::Stairs)) => (Width, &[-1]),
            (_, Some(W::Handrail | W::High)) => (Height, &[-1]),
            (Some(W::Handrail | W::High), _) => (Height, &[1]),
            (_, Some(W::Latch | W::Lowest)) => (Size::LatchHeight, &[-1]),
            (Some(W::Gap | W::Baluster), _) => (Size::Gap, &[1]),
            (_, Some(W::Gap | W::Baluster)) => (Size::Gap, &[-1]),
            // "7 3/4 and 10".
            (None, None) if self.number(i, 1) && !given.has(Rise) => (Rise, &[]),
            (_, None) if i > 0 && self.number(i, -1) && given.has(Rise) && !given.has(Tread) => (Tread, &[]),
            _ => return None,
        };
        Some(found)
    }

    /// "risers are 7 1/2, 7 1/2 and 7": one number behind another, all of them risers.
    fn in_a_row(&self, i: usize) -> bool {
        let back = (0..i).rev().find(|k| matches!(self.parts[*k], Part::Word(_)));
        back.is_some_and(|k| k + 1 < i && self.parts[k] == Part::Word(W::Riser))
    }

    /// A number of a gate's; `None` where the words beside it are no gate's.
    fn of_gate(&self, i: usize, prev: Option<W>, next: Option<W>, given: &FlightGiven) -> Option<Found> {
        let wide = next == Some(W::Wide) && matches!(self.word(i, 2), Some(W::Opening | W::Gate));
        let found: Found = match (next, prev) {
            _ if wide => (opening(given)?, &[1, 2]),
            (Some(W::Hinge), _) => (Size::HingeGap, &[1]),
            (Some(W::Latch), _) => (Size::LatchGap, &[1]),
            (Some(W::On), _) if self.number(i, 2) => (Size::Leaf, &[1]),
            (_, Some(W::On)) if given.has(Size::Leaf) => (Size::LeafHeight, &[-1]),
            (Some(W::High), _) => (Size::LeafHeight, &[1]),
            (Some(W::Leaf), _) => (Size::Leaf, &[1]),
            (_, Some(W::Leaf)) => (Size::Leaf, &[-1]),
            (Some(W::Opening | W::Gate), _) => (opening(given)?, &[1]),
            (Some(W::Top | W::Middle | W::Bottom), Some(W::Opening)) => (opening(given)?, &[1, -1]),
            (Some(W::Top | W::Middle | W::Bottom), _) => (opening(given)?, &[1]),
            (_, Some(W::Opening | W::Gate)) => (opening(given)?, &[-1]),
            (_, Some(W::Top | W::Middle | W::Bottom)) => (opening(given)?, &[-1]),
            (None, None) if given.has(Size::Opening) => (opening(given)?, &[]),
            (_, Some(W::Hinge)) => (Size::HingeGap, &[-1]),
            (_, Some(W::Latch)) => (Size::LatchGap, &[-1]),
            _ => return None,
        };
        Some(found)
    }
}

/// The next measure of the opening.
fn opening(given: &FlightGiven) -> Option<Size> {
    [Size::Opening, Size::SecondOpening, Size::ThirdOpening].into_iter().find(|s| !given.has(*s))
}
