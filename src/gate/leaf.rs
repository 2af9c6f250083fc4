//! The leaf: what the hinge and latch gaps leave of the smallest opening, and its balusters.

use crate::figure::{Fig, Value, Why};
use crate::infill::{HeldGap, Opening, fewest};
use crate::job::Settings;
use crate::limits::{self, Limit};
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::solve::{by, default_of, limit_length};

/// What was told of a gate. What was not is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LeafTold {
    /// The opening, jamb face to jamb face: at the top, the middle and the bottom, or one figure.
    pub openings: Vec<Length>,
    /// The gap at the hinge.
    pub hinge_gap: Option<Length>,
    /// The gap at the latch.
    pub latch_gap: Option<Length>,
    /// One stile's width.
    pub stile: Option<Length>,
    /// A leaf told: checked against the opening.
    pub leaf: Option<Length>,
    /// How many leaves hang in it: one, or two alike, hinged on both jambs and latched between them.
    pub leaves: Option<u8>,
}

/// A leaf worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// The opening it is made for: the smallest told.
    pub opening: Fig,
    /// How far the told openings differ, where more than one was told.
    pub differs: Option<Fig>,
    /// The gap at the hinge.
    pub hinge_gap: Fig,
    /// The gap at the latch.
    pub latch_gap: Fig,
    /// How many leaves there are: one or two.
    pub leaves: u8,
    /// One leaf, edge to edge.
    pub width: Fig,
    /// One stile.
    pub stile: Fig,
    /// The clear between its stiles.
    pub clear: Option<Fig>,
    /// Defaults taken, to be said.
    pub taken: Vec<&'static Limit>,
}

/// Why there is no leaf.
#[derive(Clone, Debug, PartialEq)]
pub enum Unfit {
    /// No opening was told.
    NoOpening,
    /// The gaps leave nothing.
    NoRoom(Fig),
    /// The leaf told is wider than the opening less its gaps, by so much.
    TooWide {
        /// The leaf told.
        leaf: Fig,
        /// The most there is room for.
        most: Fig,
        /// By how much.
        by: Fig,
    },
}

fn inches(f: &Fig) -> Length {
    f.as_length().unwrap_or(Length::ZERO)
}

/// A told length, or the default, which is then listed as taken.
fn or_taken(told: Option<Length>, what: &'static str, limit: &'static Limit, taken: &mut Vec<&'static Limit>) -> Fig {
    told.map_or_else(
        || {
            taken.push(limit);
            // No place and no department sets such a gap.
            default_of(&Settings::default(), limit)
        },
        |l| Fig::told(l, what),
    )
}

/// Works the leaf out.
pub fn leaf(told: &LeafTold) -> Result<Leaf, Unfit> {
    let (Some(least), Some(most)) = (told.openings.iter().min(), told.openings.iter().max()) else {
        return Err(Unfit::NoOpening);
    };
    let mut taken = Vec::new();
    let opening = Fig::told(*least, "the smallest opening between the jambs");
    let hinge_gap = or_taken(told.hinge_gap, "the hinge gap", &limits::HINGE_GAP, &mut taken);
    let latch_gap = or_taken(told.latch_gap, "the latch gap", &limits::LATCH_GAP, &mut taken);
    let stile = or_taken(told.stile, "the stile", &limits::GATE_STILE, &mut taken);
    let leaves = told.leaves.unwrap_or(1).clamp(1, 2);
    let width = width(&opening, &hinge_gap, &latch_gap, leaves)?;
    let width = told.leaf.map_or_else(|| Ok(width.clone()), |l| fits(l, &width))?;
    let differ = vec![("the widest", Fig::told(*most, "the opening")), ("the narrowest", opening.clone())];
    Ok(Leaf {
        differs: (most > least).then(|| Fig::length(*most - *least, Why::Formula("widest less narrowest", differ))),
        clear: clear(&width, &stile),
        leaves,
        opening,
        hinge_gap,
        latch_gap,
        width,
        stile,
        taken,
    })
}

/// One leaf between hinges and latch; of two, half of what a gap at each jamb and the latch's between
/// them leave.
fn width(opening: &Fig, hinge: &Fig, latch: &Fig, leaves: u8) -> Result<Fig, Unfit> {
    use RowId::{GateOpening, HingeGap, LatchGap, Leaf, Leaves, MiddleGap};
    let two = || Fig::count(2, Why::Told("the leaves"));
    let found = match leaves {
        2 => by(Leaf, &[(GateOpening, opening), (HingeGap, hinge), (MiddleGap, latch), (Leaves, &two())]),
        _ => by(Leaf, &[(GateOpening, opening), (HingeGap, hinge), (LatchGap, latch)]),
    };
    found.filter(|f| inches(f).is_positive()).ok_or_else(|| Unfit::NoRoom(opening.clone()))
}

fn fits(told: Length, most: &Fig) -> Result<Fig, Unfit> {
    let leaf = Fig::told(told, "the leaf");
    if told <= inches(most) {
        return Ok(leaf);
    }
    let from = vec![("leaf", leaf.clone()), ("room", most.clone())];
    let by = Fig::length(told - inches(most), Why::Formula("leaf less the room there is", from));
    Err(Unfit::TooWide { leaf, most: most.clone(), by })
}

fn clear(width: &Fig, stile: &Fig) -> Option<Fig> {
    let clear = inches(width) - inches(stile) * 2;
    let from = vec![("leaf", width.clone()), ("stile", stile.clone())];
    clear.is_positive().then(|| Fig::length(clear, Why::Formula("leaf less its two stiles", from)))
}

impl Leaf {
    /// True where a single leaf is wider than is wise.
    pub fn too_wide(&self, s: &Settings) -> bool {
        inches(&self.width) > limit_length(s, &limits::GATE_LEAF)
    }

    /// The balusters in one leaf and their gap: fewest with every gap under the limit, on
    /// the tape too. `None` where no number does.
    pub fn balusters(&self, baluster: &Fig, held: &HeldGap, tape: Tape) -> Option<(Fig, Fig)> {
        let clear = self.clear.as_ref()?;
        let opening = Opening::measured(inches(clear), inches(baluster), held.limit(), tape);
        let found = fewest(opening).ok()?.taped;
        let from = || vec![("clear", clear.clone()), ("baluster", baluster.clone()), ("gap limit", held.most.clone())];
        let says = "the fewest with every gap under the limit, on the tape too";
        let count = Fig::new(Value::Count(u64::from(found.count())), Why::Formula(says, from()));
        let says = "(clear less the balusters) over one more than their number";
        Some((count, Fig::length(found.gap(), Why::Formula(says, from()))))
    }
}
