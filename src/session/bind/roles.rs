//! Sizes told of some of the posts: "6x6 on the corners and 4x4 in between".

use super::readings::{Filled, Reading};
use super::value::{Premise, ways};
use crate::grammar::scores::{How, Line};
use crate::job::{Fact, PostRole, Setting};
use crate::quantity::RowId;

/// The sizes of a line with the posts they are of: the items of both, and the fact. None where one of them is of no posts by name.
pub(super) fn roles(line: &Line, reading: &Reading<'_>) -> Vec<([usize; 2], Fact)> {
    let of = |row: RowId| -> Vec<usize> {
        let filled = reading.filled.iter().enumerate();
        filled
            .filter(|(_, f)| f.row == Some(row) && matches!(f.how, How::Set | How::Words(_)))
            .map(|(n, _)| n)
            .collect()
    };
    let (sizes, places) = (of(RowId::PostSize), of(RowId::PostAt));
    let pairs = || sizes.iter().copied().zip(places.iter().copied());
    let leads = |a: &[usize], b: &[usize]| {
        a.iter().zip(b).all(|(a, b)| a < b) && b.iter().zip(a.iter().skip(1)).all(|(b, a)| b < a)
    };
    if sizes.len() != places.len() || !(leads(&sizes, &places) || leads(&places, &sizes)) {
        return Vec::new();
    }
    let one = |(size, place): (usize, usize)| {
        let role = role(&reading.filled[place])?;
        match ways(RowId::PostSize, line, reading.filled[size].at).into_iter().next()?.1 {
            Premise::Fact(Fact::Set(Setting::Post(_, post))) => {
                Some(([size, place], Fact::Set(Setting::Post(role, post))))
            }
            _ => None,
        }
    };
    pairs().map(one).collect::<Option<Vec<_>>>().unwrap_or_default()
}

/// The posts a place is of.
fn role(place: &Filled<'_>) -> Option<PostRole> {
    let word = if let How::Words(words) = place.how { words } else { place.word? };
    match word {
        "corner" | "corner post" | "outside corner" => Some(PostRole::Corner),
        "line" | "line post" => Some(PostRole::Line),
        "end" | "ends" | "end post" | "both ends" => Some(PostRole::End),
        "gate" | "gate post" => Some(PostRole::Gate),
        "stairs" | "stair head" | "stair post" => Some(PostRole::Stair),
        _ => None,
    }
}
