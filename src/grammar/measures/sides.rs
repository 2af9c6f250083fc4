//! This by that: `16x12`, "10 by 14"; and named lumber, `4x4`, "two by sixes".

use super::cursor::{At, hyphen, is};
use super::finish::Found;
use super::number::starts;
use super::role::Role;
use crate::measure::{Lumber, Meaning, Measure, Number, Q, Side};
use nom::Parser;

/// The second sides that may follow each first side, with the two together.
pub(super) fn by<'a>(firsts: &[Found<'a>], seconds: impl Fn(At<'a>) -> Vec<Found<'a>>) -> Vec<Found<'a>> {
    let mut found = Vec::new();
    for first in firsts {
        let Ok((from, ())) = is(Role::By).parse(hyphen(first.rest)) else { continue };
        for second in seconds(hyphen(from)) {
            found.extend(together(first, &second));
        }
    }
    found
}

/// Named lumber first, where it is a size lumber comes in; then the two sides.
fn together<'a>(first: &Found<'a>, second: &Found<'a>) -> Vec<Found<'a>> {
    let (Some(a), Some(b)) = (side(&first.measure), side(&second.measure)) else { return Vec::new() };
    // "4x4 x 8": three sides are more than this reads.
    if is(Role::By).parse(hyphen(second.rest)).is_ok_and(|(next, ())| starts(next)) {
        return Vec::new();
    }
    let lumber = lumber(a, b).map(|l| Found::new(second.rest, Meaning::Lumber(l)));
    let plural = [a, b].iter().any(|s| matches!(s, Side::Bare(n) if n.plural));
    let sides = (!plural).then(|| Found::new(second.rest, Meaning::By(a, b)));
    let guess = first.measure.guess.or(second.measure.guess);
    // "4x4 in between": beside a bare side, "in" is likelier the preposition.
    let in_alone = second.rest.is_after_in() && matches!(a, Side::Bare(_));
    let late = first.late || second.late || in_alone;
    lumber.into_iter().chain(sides).map(|f| Found { late, ..f.guessed(guess) }).collect()
}

fn side(m: &Measure) -> Option<Side> {
    match m.meaning {
        Meaning::Bare(n) => Some(Side::Bare(n)),
        Meaning::Length(l, said) => Some(Side::Length(l, said)),
        Meaning::Lumber(_) | Meaning::By(..) | Meaning::Doubt(..) => None,
    }
}

/// The lumber of that name: 1 to 8 thick, 2 to 12 wide, smaller side first, and a row
/// of the size table for each side.
fn lumber(a: Side, b: Side) -> Option<Lumber> {
    let (Side::Bare(thick), Side::Bare(wide)) = (a, b) else { return None };
    let quarters = whole(Number { value: thick.value * Q::from_integer(4), ..thick })?;
    let wide = whole(wide)?;
    let five_quarter = quarters == 5;
    let fits = (five_quarter || quarters % 4 == 0 && (4..=32).contains(&quarters)) && (2..=12).contains(&wide);
    let lumber = Lumber { thick_quarters: quarters, wide };
    (fits && !thick.plural && quarters <= wide * 4).then_some(lumber).filter(|l| l.dressed().is_some())
}

fn whole(n: Number) -> Option<u16> {
    n.value.is_integer().then(|| u16::try_from(n.value.to_integer()).ok()).flatten()
}
