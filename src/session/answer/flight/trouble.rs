//! Why a question about stairs or a gate has no answer yet: what is untold, or what disagrees.

use super::say::{exact, ft, inch, w};
use crate::figure::Fig;
use crate::gate::Unfit;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::stairs::{Clash, Lack, Unready};

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// The flight cannot be worked out.
    Unready(Unready),
    /// Flights that differ: which one is meant.
    WhichStairs,
    /// Where the top post stands is untold.
    Line,
    /// The top tread is flush with the decking.
    Flush,
    /// The posts leave no room.
    NoRoom,
    /// The gate does not fit.
    Unfit(Unfit),
    /// Past what is carried.
    PastMe,
    /// Something else is untold: the question to ask.
    Ask(&'static str),
}

impl Trouble {
    /// True where told facts disagree.
    pub fn is_a_clash(&self) -> bool {
        matches!(self, Trouble::Unready(Unready::Clash(_)))
    }
}

fn asks(words: &'static str) -> Reply {
    Reply { lines: vec![Line::say(Role::Question, words)], ..Reply::of(Status::Asks) }
}

fn refused(spans: Vec<Span>) -> Reply {
    let unchanged = Line::say(Role::Detail, "Nothing was changed.");
    Reply { lines: vec![Line::new(Role::Answer, spans), unchanged], ..Reply::of(Status::Refused) }
}

/// The reply to it.
pub fn said(trouble: &Trouble) -> Reply {
    match trouble {
        Trouble::Unready(Unready::Untold(Lack::Rise)) => asks(
            "How high is it? Tell the total rise, measured plumb from the decking down to where the stairs land, or the risers and one riser.",
        ),
        Trouble::Unready(Unready::Untold(Lack::Tread)) => {
            asks("How deep is a tread, nosing to nosing on the level? Or tell the total run.")
        }
        Trouble::Unready(Unready::Clash(clash)) => refused(clash_spans(clash)),
        Trouble::WhichStairs => asks(
            "Which stairs? They differ: give the figures with the question, as in \"rake with 5 risers at 7 1/2, 10 inch tread\".",
        ),
        Trouble::Line => asks(
            "Where do the posts stand? Say the mount, or how far the baluster line lies inside the decking's edge: the top post hangs on it.",
        ),
        Trouble::Flush => refused(vec![w(
            "I lay out a stair guard only for stairs hung one riser down. A flush top tread is decking to the guard: say \"top tread is one riser down\", and take that tread's nosing for the decking's edge.",
        )]),
        Trouble::NoRoom => refused(vec![w("The posts leave no room for a bay of rail on those stairs.")]),
        Trouble::Unfit(unfit) => unfit_said(unfit),
        Trouble::PastMe => {
            refused(vec![w("Those figures are finer than I can carry: say them in fractions a tape can read.")])
        }
        Trouble::Ask(question) => asks(question),
    }
}

/// What a gate does not fit, said.
fn unfit_said(unfit: &Unfit) -> Reply {
    match unfit {
        Unfit::NoOpening => asks(
            "How wide is the opening, jamb post to jamb post? Measure it at the top, the middle and the bottom: the leaf goes by the smallest.",
        ),
        Unfit::NoRoom(opening) => {
            refused(vec![w("An opening of "), inch(opening), w(" leaves nothing between the hinge and latch gaps.")])
        }
        Unfit::TooWide { leaf, most, by } => refused(too_wide(leaf, most, by)),
    }
}

/// A leaf wider than its opening leaves room for.
pub fn too_wide(leaf: &Fig, most: &Fig, by: &Fig) -> Vec<Span> {
    vec![
        w("A leaf of "),
        inch(leaf),
        w(" is "),
        inch(by),
        w(" too wide: the opening less its gaps leaves "),
        inch(most),
        w("."),
    ]
}

/// What disagrees, and by how much.
pub fn clash_spans(clash: &Clash) -> Vec<Span> {
    match clash {
        Clash::Rise { makes, told, by } => vec![
            w("Those risers make "),
            ft(makes),
            w(", but the total rise was told as "),
            ft(told),
            w(": they are "),
            inch(by),
            w(" apart. Which one holds?"),
        ],
        Clash::Run { makes, told, by } => vec![
            w("Those treads make "),
            ft(makes),
            w(", but the total run was told as "),
            ft(told),
            w(": they are "),
            inch(by),
            w(" apart. Which one holds?"),
        ],
        Clash::NotWhole { total, rise, fewer, more } => vec![
            ft(total),
            w(" is no whole number of "),
            inch(rise),
            w(" risers: "),
            ft(&fewer.0),
            w(" would be "),
            exact(&fewer.1),
            w(" each, "),
            ft(&more.0),
            w(" would be "),
            exact(&more.1),
            w(". Say how many."),
        ],
        Clash::NeverLands => vec![w("The ground falls away as fast as those stairs do: they never reach it.")],
        Clash::TooMany => vec![w("That is more risers than a flight off a deck has: is a measure off?")],
        Clash::Ladder(angle) => {
            vec![w("That is "), ft(angle), w(" steep: a ladder, not a stair. Is the riser or the tread off?")]
        }
    }
}
