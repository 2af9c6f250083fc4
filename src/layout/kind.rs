//! What kind of post stands at a place: its names, and why it must be there.

use super::sizes::roles;
use crate::job::{Basis, End, PostRole};

/// What kind of post it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A fixed post, by what it stands at; gate jambs are [`End::GatePost`].
    Fixed(End),
    /// A post set only to keep bays within the limit.
    Line,
    /// A line post where it was told.
    Told,
}

/// The words for one kind of end: its post, and the three things a tape may hook on.
struct Words {
    end: End,
    post: &'static str,
    outside: &'static str,
    inside: &'static str,
    centre: &'static str,
    why: &'static str,
}

macro_rules! words {
    ($($end:ident $post:literal $outside:literal $why:literal;)*) => {
        &[$(Words {
            end: End::$end,
            post: $post,
            outside: $outside,
            inside: concat!("the inside face of the ", $post),
            centre: concat!("the centre of the ", $post),
            why: $why,
        }),*]
    };
}

// A run against a wall is measured from the wall itself, not from the post on it.
static WORDS: &[Words] = words! {
    House "post at the house" "the siding" "the run dies into the house: a post against the wall";
    Corner "corner post" "the outside face of the corner post" "a corner is a fixed post";
    InsideCorner "inside corner post" "the outside face of the inside corner post" "an inside corner is a fixed post";
    AngledCorner "angled corner post" "the outside face of the angled corner post" "an angled corner is a fixed post";
    StairHead "stair head post" "the outside face of the stair head post" "the guard stops at the stairs";
    BottomNewel "bottom newel" "the outside face of the bottom newel" "the stair guard stops at its foot";
    GatePost "gate post" "the outside face of the gate post" "a gate needs a post on each side";
    EndPost "end post" "the outside face of the end post" "the run stops here";
    Wall "post at the wall" "the wall" "the run dies into a wall: a post against it";
    OpenEnd "post at the open end" "the outside face of the post at the open end" "a free end still gets a post";
};

impl Kind {
    fn words(end: End) -> &'static Words {
        // The table has a row for every end; a test walks them all.
        WORDS.iter().find(|w| w.end == end).unwrap_or(&WORDS[7])
    }

    /// The role its size is told by.
    pub fn role(self) -> PostRole {
        match self {
            Kind::Fixed(end) => roles(end, false).first().copied().unwrap_or(PostRole::All),
            Kind::Line | Kind::Told => PostRole::Line,
        }
    }

    /// Its name in the JSON contract: an end's name, or "line post".
    pub fn name(self) -> &'static str {
        match self {
            Kind::Fixed(end) => end.name(),
            Kind::Line | Kind::Told => "line post",
        }
    }

    /// The post as a noun: "corner post", "post at the house".
    pub fn post(self) -> &'static str {
        match self {
            Kind::Fixed(end) => Kind::words(end).post,
            Kind::Line => "line post",
            Kind::Told => "line post where told",
        }
    }

    /// Why a post must stand there.
    pub fn why(self) -> &'static str {
        match self {
            Kind::Fixed(end) => Kind::words(end).why,
            Kind::Line => "keeps the bays within the limit",
            Kind::Told => "told: a post stands here",
        }
    }
}

/// What a tape hooks on at an end, by the basis of the run; without a post there, the wall or edge itself.
pub(super) fn hook(end: End, basis: Basis, post: bool) -> &'static str {
    let words = Kind::words(end);
    match (basis, post) {
        (_, false) if !end.is_wall() => "the edge of the stair opening",
        (Basis::Edge, true) => edge(end, words.outside),
        (Basis::Overall, _) | (_, false) => words.outside,
        (Basis::Clear, true) => words.inside,
        (Basis::Centre, true) => words.centre,
    }
}

/// Along the decking's edge: its corner, or what stands in the way of one.
fn edge(end: End, outside: &'static str) -> &'static str {
    match end {
        End::Corner => "the decking's corner",
        End::InsideCorner => "the decking's inside corner",
        End::AngledCorner => "the decking's angled corner",
        _ => outside,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_end_has_words_of_its_own() {
        for end in End::ALL {
            assert_eq!(Kind::words(end).end, end);
        }
    }
}
