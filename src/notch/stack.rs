//! Heights down a post: the shoulder from its top, the leg below, and the piece to cut.

use crate::figure::{Fig, Why};
use crate::job::{Mount, Settings};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{Source, by, choice, default_of, habit, taken};

/// What a post's lengths lack.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Untold {
    /// How tall the rim is.
    RimTall,
}

/// The lengths along a post.
#[derive(Clone, Debug, PartialEq)]
pub struct Stack {
    /// The guard's height to the top of its top rail.
    pub height: Fig,
    /// How thick the decking is.
    pub decking: Fig,
    /// How tall the rim is, where told.
    pub rim: Option<Fig>,
    /// From the post's top to the walking surface: to the shoulder of a notched post.
    pub shoulder: Fig,
    /// From there down past the rim, where that was told; none for a post on the decking.
    pub leg: Option<Fig>,
    /// The piece to cut; `None` until all of it is known.
    pub total: Option<Fig>,
    /// Two bolts in the rim, where it has room for them.
    pub bolts: Option<Bolts>,
}

/// Two bolts through a leg and a rim.
#[derive(Clone, Debug, PartialEq)]
pub struct Bolts {
    /// The upper hole, down from the shoulder.
    pub upper: Fig,
    /// The lower hole, down from the shoulder.
    pub lower: Fig,
    /// The upper hole, down from the rim's top.
    pub edge: Fig,
    /// From one to the other.
    pub apart: Fig,
}

fn inches(fig: &Fig) -> Length {
    fig.as_length().unwrap_or(Length::ZERO)
}

impl Stack {
    /// The lengths of a post of this job.
    pub fn of(s: &Settings) -> Stack {
        let (height, decking) = (taken(s, RowId::HeightTop), taken(s, RowId::Decking));
        let rim = Source::told(s, RowId::RimTall);
        let shoulder = shoulder(s, &height);
        let surface = choice::mount(s) == Some(Mount::Surface);
        let bolts = rim.as_ref().filter(|_| !surface).and_then(|rim| Bolts::of(s, &decking, rim));
        let leg = rim.as_ref().filter(|_| !surface).map(|rim| leg(&decking, rim, bolts.as_ref()));
        let total = if surface { Some(shoulder.clone()) } else { leg.as_ref().and_then(|leg| total(&shoulder, leg)) };
        Stack { height, decking, rim, shoulder, leg, total, bolts }
    }

    /// What is still to be told for the whole length.
    pub fn untold(&self) -> Option<Untold> {
        self.total.is_none().then_some(Untold::RimTall)
    }

    /// The notch, top to bottom: the decking and the rim.
    pub fn notch_tall(&self) -> Option<Fig> {
        by(RowId::NotchTall, &[(RowId::Decking, &self.decking), (RowId::RimTall, self.rim.as_ref()?)])
    }
}

/// From the post's top to the shoulder: the height, less a cap that lies on the post, or
/// with what stands above the rail.
fn shoulder(s: &Settings, height: &Fig) -> Fig {
    let worked =
        |l, says, name, told: Fig| Fig::length(l, Why::Formula(says, vec![("height", height.clone()), (name, told)]));
    match (Source::told(s, RowId::Cap), Source::told(s, RowId::Above)) {
        (Some(cap), _) => {
            worked(inches(height) - inches(&cap), "height less the cap that lies on the post", "cap", cap)
        }
        (None, Some(above)) => {
            worked(inches(height) + inches(&above), "height and what stands above the rail", "above the rail", above)
        }
        (None, None) => worked(
            inches(height),
            "height: the post ends level with its rail",
            "post's top",
            default_of(s, &limits::POST_TOP),
        ),
    }
}

/// The leg: to the rim's bottom, and past the lower bolt by its end distance.
fn leg(decking: &Fig, rim: &Fig, bolts: Option<&Bolts>) -> Fig {
    let flush = inches(decking) + inches(rim);
    let past = bolts.map(|b| inches(&b.lower) + inches(&b.edge));
    let mut inputs = vec![("decking", decking.clone()), ("rim", rim.clone())];
    inputs.extend(bolts.into_iter().flat_map(|b| [("lower bolt", b.lower.clone()), ("edge distance", b.edge.clone())]));
    let says = "decking + rim, and no less than the edge distance below the lower bolt";
    Fig::length(past.map_or(flush, |p| p.max(flush)), Why::Formula(says, inputs))
}

fn total(shoulder: &Fig, leg: &Fig) -> Option<Fig> {
    by(RowId::PostLength, &[(RowId::PostTop, shoulder), (RowId::PostBelow, leg)])
}

impl Bolts {
    /// Two bolts in a rim so tall, as far apart as it and the limit allow; `None` where it
    /// has no room for two.
    pub fn of(s: &Settings, decking: &Fig, rim: &Fig) -> Option<Bolts> {
        let (edge, most) = (taken(s, RowId::BoltEdge), taken(s, RowId::BoltsMost));
        let rows = [(RowId::RimTall, rim), (RowId::BoltEdge, &edge), (RowId::BoltsMost, &most)];
        let apart = by(RowId::BoltsApart, &rows).filter(|apart| inches(apart) >= habit(&limits::BOLT_ROWS_LEAST))?;
        let upper = by(RowId::BoltUpper, &[(RowId::Decking, decking), (RowId::BoltEdge, &edge)])?;
        let lower = by(RowId::BoltLower, &[(RowId::BoltUpper, &upper), (RowId::BoltsApart, &apart)])?;
        Some(Bolts { upper, lower, edge, apart })
    }

    /// How long a bolt is that goes through these, each with its name.
    pub fn length(through: Vec<(&'static str, Fig)>) -> Fig {
        let over = Fig::limit(&limits::BOLT_OVER);
        let sum: Length = through.iter().map(|(_, f)| inches(f)).sum();
        let mut inputs = through;
        inputs.push(("washers and nut", over.clone()));
        Fig::length(sum + inches(&over), Why::Formula("all it goes through, and washers and nut", inputs))
    }
}
