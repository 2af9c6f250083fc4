//! Places as the corpus says them: ends of runs, jambs, ways a leaf swings, and where along a run an opening stands.

use super::opening::Opening;
use crate::job::{End, Jamb, Swing};

/// The jamb a word of the corpus is.
pub(super) fn jamb(side: &str) -> Option<Jamb> {
    match side.trim_start_matches("by ") {
        "left" => Some(Jamb::Left),
        "right" => Some(Jamb::Right),
        "house" | "wall" => Some(Jamb::House),
        "corner" | "away" => Some(Jamb::Away),
        _ => None,
    }
}

/// The way a word of the corpus swings.
pub(super) fn swing(way: &str) -> Option<Swing> {
    match way {
        "deck" | "over the deck" | "in" | "inward" => Some(Swing::OverDeck),
        "out" | "outward" | "yard" | "stairs" | "stair head" => Some(Swing::Out),
        "both ways" => Some(Swing::Both),
        _ => None,
    }
}

/// The end a place of the corpus is.
pub(super) fn end(place: &str) -> Option<End> {
    let plain = |e: &&End| e.name() == place;
    End::ALL.iter().find(plain).copied().or(match place {
        "column" | "chimney" => Some(End::Wall),
        "corner post" => Some(End::Corner),
        "stair post" => Some(End::StairHead),
        "clipped corner" => Some(End::AngledCorner),
        "left corner" | "right corner" | "front corner" | "outside corner" => Some(End::Corner),
        _ => None,
    })
}

/// An end of the run, by how it is said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum AtEnd {
    From,
    To,
}

/// The ends of a run, as far as they are known.
pub(super) type Ends = (Option<End>, Option<End>);

/// Which end of a run between these a place is: the left end is the one it starts from.
fn which_end(place: &str, (from, to): Ends) -> Option<AtEnd> {
    match place {
        "left" | "left corner" | "left side" | "left end" | "from-end" | "near end" => return Some(AtEnd::From),
        "right" | "right corner" | "right side" | "right end" | "to-end" | "end" | "far end" => return Some(AtEnd::To),
        _ => {}
    }
    match end(place)? {
        e if from == to && Some(e) == from => None,
        e if Some(e) == from => Some(AtEnd::From),
        e if Some(e) == to => Some(AtEnd::To),
        _ => None,
    }
}

/// Where along its run an opening is said to stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Spot {
    Middle,
    /// All of it.
    Whole,
    End(AtEnd),
    /// At the head of the stairs.
    Stairs,
}

/// What a place says in a run between these ends: `Err` where it says nothing there, `Ok(None)` where it may be either end.
fn spot(place: &str, ends: Ends) -> Result<Option<Spot>, ()> {
    let place = place.trim_start_matches("by ");
    match (place, which_end(place, ends), end(place)) {
        ("middle", ..) => Ok(Some(Spot::Middle)),
        ("full width", ..) => Ok(Some(Spot::Whole)),
        (_, Some(end), _) => Ok(Some(Spot::End(end))),
        ("stair head" | "stairs", ..) => Ok(Some(Spot::Stairs)),
        (_, None, Some(e)) if ends.0 == Some(e) && ends.1 == Some(e) => Ok(None),
        _ => Err(()),
    }
}

/// Where the opening stands by all that is said of its place; `None` where that is not one place.
pub(super) fn stands(opening: &Opening, ends: Ends) -> Option<Spot> {
    let places = opening.at.iter().chain(&opening.off_from);
    let all = places.map(|p| spot(p, ends)).collect::<Result<Vec<_>, ()>>().ok()?;
    let mut said = all.into_iter().flatten();
    let first = said.next()?;
    said.all(|s| s == first).then_some(first)
}
