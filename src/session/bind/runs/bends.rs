//! Three lengths that meet where the guard bends: "6 ft, in 2, and 8 to the corner".

use super::draft::Draft;
use crate::figure::Value;
use crate::job::End;
use crate::session::bind::told::Says;

/// How the guard goes on at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Bend {
    /// In over the deck, and on: an outside corner and an inside one.
    In,
    /// Out from the deck, and on: an inside corner and an outside one.
    Out,
    /// By so many degrees that are no right angle.
    Angled,
}

/// The bend that is said.
pub(super) fn bend(said: &Says) -> Option<Bend> {
    match said {
        Says::Word(word) => match word.as_str() {
            "in" | "back" | "toward house" => Some(Bend::In),
            "out" => Some(Bend::Out),
            _ => None,
        },
        Says::Value(Value::Quantity(degrees, _)) => (*degrees.numer() != 90 * *degrees.denom()).then_some(Bend::Angled),
        _ => None,
    }
}

/// Gives three runs the corners they meet at; `None` for bends of anything else.
pub(super) fn bends(turns: &[(usize, Bend)], runs: &mut [Draft]) -> Option<()> {
    let Some((behind, bend)) = turns.first().copied() else { return Some(()) };
    let alike = turns.iter().all(|(_, b)| *b == bend);
    let [first, second, third] = runs else { return None };
    let lengths = [&*first, second, third].iter().all(|d| d.length.is_some());
    let (near, far) = match bend {
        Bend::In => (End::Corner, End::InsideCorner),
        Bend::Out => (End::InsideCorner, End::Corner),
        Bend::Angled => (End::AngledCorner, End::AngledCorner),
    };
    // A step stands before the length of its own, the second.
    let placed = bend == Bend::Angled || turns.len() == 1 && behind == 1;
    if !alike || !lengths || !placed || second.name.is_some() {
        return None;
    }
    (first.to, second.from, second.to, third.from) = (Some(near), Some(near), Some(far), Some(far));
    Some(())
}
