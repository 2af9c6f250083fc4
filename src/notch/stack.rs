//! Heights down a post: the shoulder from its top, the leg below, and the piece to cut.

use crate::figure::{Fig, Why};
use crate::job::{Mount, Settings};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{Source, choice, default_of, habit, taken};

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
        let bolts = rim.as_ref().filter(|_| !surface).and_then(|rim| Bolts::of(&decking, rim));
        let leg = rim.as_ref().filter(|_| !surface).map(|rim| leg(&decking, rim, bolts.as_ref()));
        let total = if surface { Some(shoulder.clone()) } else { leg.as_ref().map(|leg| total(&shoulder, leg)) };
        Stack { height, decking, rim, shoulder, leg, total, bolts }
    }

    /// What is still to be told for the whole length.
    pub fn untold(&self) -> Option<Untold> {
        self.total.is_none().then_some(Untold::RimTall)
    }

    /// The notch, top to bottom: the decking and the rim.
    pub fn notch_tall(&self) -> Option<Fig> {
        let rim = self.rim.clone()?;
        let tall = inches(&self.decking) + inches(&rim);
        let inputs = vec![("decking", self.decking.clone()), ("rim", rim)];
        Some(Fig::length(tall, Why::Formula("decking + rim, flush with the rim's bottom", inputs)))
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
    let edge = Fig::limit(&limits::BOLT_MARGIN);
    let flush = inches(decking) + inches(rim);
    let past = bolts.map(|b| inches(&b.lower) + inches(&edge));
    let mut inputs = vec![("decking", decking.clone()), ("rim", rim.clone())];
    inputs.extend(bolts.map(|b| ("lower bolt", b.lower.clone())));
    inputs.push(("below the bolt", edge));
    let says = "decking + rim, and no less than the end distance below the lower bolt";
    Fig::length(past.map_or(flush, |p| p.max(flush)), Why::Formula(says, inputs))
}

fn total(shoulder: &Fig, leg: &Fig) -> Fig {
    let inputs = vec![("to the shoulder", shoulder.clone()), ("leg", leg.clone())];
    Fig::length(inches(shoulder) + inches(leg), Why::Formula("shoulder + leg", inputs))
}

impl Bolts {
    /// Two bolts in a rim so tall, as far apart as it and the limit allow; `None` where it
    /// has no room for two.
    pub fn of(decking: &Fig, rim: &Fig) -> Option<Bolts> {
        let (edge, most) = (Fig::limit(&limits::BOLT_MARGIN), Fig::limit(&limits::BOLT_ROWS));
        let room = inches(rim) - inches(&edge) * 2;
        let apart = room.min(inches(&most));
        if apart < habit(&limits::BOLT_ROWS_LEAST) {
            return None;
        }
        let inputs = vec![("rim", rim.clone()), ("to each edge", edge.clone()), ("most apart", most)];
        let says = "the rim less an edge distance at its top and its bottom, and no more than the most";
        let apart = Fig::length(apart, Why::Formula(says, inputs));
        let inputs = vec![("decking", decking.clone()), ("from the rim's top", edge.clone())];
        let upper = Fig::length(
            inches(decking) + inches(&edge),
            Why::Formula("down from the shoulder: decking + edge distance", inputs),
        );
        let inputs = vec![("upper bolt", upper.clone()), ("apart", apart.clone())];
        let lower = Fig::length(inches(&upper) + inches(&apart), Why::Formula("upper bolt + apart", inputs));
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
