//! What every strength figure is worked from, gathered in this one place: what the job tells, a
//! question's own words on top, what the place and the building department ask, and the cautious
//! choice for the rest.

use super::stand::Stand;
use super::tie::{Tie, apart_in};
use super::{Piece, Refused, Wood};
use crate::figure::{Fig, Why};
use crate::job::{Anyway, Job, Lie, Member, Mount, NotchTold, PostRole, PostSize, Species, Timber};
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::quantity::RowId;
use crate::solve::{self, choice};

/// A question's own words: each stands in for what the job tells.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Said {
    /// The guard's height.
    pub height: Option<Length>,
    /// The lumber of every post.
    pub post: Option<Lumber>,
    /// The top rail's lumber.
    pub rail: Option<Lumber>,
    /// How the top rail lies.
    pub lie: Option<Lie>,
    /// The cap's lumber.
    pub cap: Option<Lumber>,
    /// The rim's lumber.
    pub rim: Option<Lumber>,
    /// The wood.
    pub species: Option<Species>,
}

/// What becomes of a post's foot, as far as it was told.
#[derive(Clone, Debug, PartialEq)]
pub enum FootCut {
    /// Not told.
    Untold,
    /// A notch so deep.
    Deep(Fig),
    /// No notch, or a mount that cuts none: the post stays whole.
    Whole,
    /// What is notched is a sleeve that carries nothing; a whole post stands in it.
    Sleeve,
}

/// How a rail is made up, as far as it was told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Make {
    /// The top rail's lumber.
    pub rail: Option<Lumber>,
    /// How it lies.
    pub lie: Option<Lie>,
    /// The cap's lumber.
    pub cap: Option<Lumber>,
}

/// Everything a strength figure rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Inputs {
    /// The guard's height: told, else what holds where the job is.
    pub height: Fig,
    /// The decking's thickness.
    pub decking: Fig,
    /// The rim's depth, where told.
    pub rim: Option<Fig>,
    /// From the rim's edges to its bolts.
    pub edge: Fig,
    /// The most the two bolts stand apart.
    pub apart: Fig,
    /// What was told of the wood.
    pub told: Timber,
    /// The wood.
    pub wood: Wood,
    /// What was told of the rail.
    pub make: Make,
    /// The rail's pieces that are counted on.
    pub pieces: Vec<Piece>,
    /// The posts' sizes, by role.
    pub posts: Vec<(PostRole, PostSize)>,
    /// What becomes of the posts' feet.
    pub foot: FootCut,
}

impl Inputs {
    /// What the job alone tells.
    pub fn of(job: &Job) -> Inputs {
        Inputs::with(job, &Said::default())
    }

    /// What the job tells, under a question's own words.
    pub fn with(job: &Job, said: &Said) -> Inputs {
        let (timber, order) = (choice::timber(job), &job.order);
        let told = Timber { species: said.species.or(timber.species), ..timber };
        let make = Make {
            rail: said.rail.or(order.rail(Member::Top).flatten()),
            lie: said.lie.or(order.lay(Member::Top)),
            cap: said.cap.or(order.rail(Member::Cap).flatten()),
        };
        Inputs {
            height: height(job, said),
            decking: solve::taken(job, RowId::Decking),
            rim: rim(job, said),
            edge: solve::taken(job, RowId::BoltEdge),
            apart: solve::taken(job, RowId::BoltsMost),
            told,
            wood: Wood::taken(&told),
            make,
            pieces: super::rail::made_up(make.rail, make.lie, make.cap),
            posts: ROLES.map(|role| (role, post(job, said, role))).to_vec(),
            foot: foot(job),
        }
    }

    /// The size of a role's posts.
    pub fn post(&self, role: PostRole) -> PostSize {
        let found = self.posts.iter().find(|(r, _)| *r == role).map(|(_, size)| *size);
        found.unwrap_or_else(smallest)
    }

    /// The posts in these roles, those of one size and push once.
    pub fn stands(&self, roles: &[PostRole]) -> Vec<Stand> {
        let mut stands: Vec<Stand> = Vec::new();
        for role in ROLES.into_iter().filter(|r| roles.contains(r)) {
            let stand = Stand { role, size: self.post(role) };
            let same = |s: &Stand| s.size == stand.size && s.is_corner() == stand.is_corner();
            if !stands.iter().any(same) {
                stands.push(stand);
            }
        }
        stands
    }

    /// A cap that is not counted on: thinner than the tables begin.
    pub fn thin_cap(&self) -> Option<Lumber> {
        self.make.cap.filter(|c| !super::rail::counts(*c))
    }

    /// The two bolts of a post: in the rim told as far apart as it allows and no more than the
    /// guide shows, else as the guide draws them.
    ///
    /// # Errors
    /// [`Refused::RimTooShallow`].
    pub fn tie(&self) -> Result<Tie, Refused> {
        let in_rim = self.rim.as_ref().map(|rim| apart_in(rim, &self.edge, &self.apart)).transpose()?;
        let apart = in_rim.unwrap_or_else(|| self.apart.clone());
        let (height, decking, edge) = (self.height.clone(), self.decking.clone(), self.edge.clone());
        Ok(Tie { height, decking, edge, apart })
    }
}

/// The roles posts stand in.
const ROLES: [PostRole; 5] = [PostRole::Line, PostRole::Corner, PostRole::End, PostRole::Gate, PostRole::Stair];

fn height(job: &Job, said: &Said) -> Fig {
    said.height.map_or_else(|| solve::taken(job, RowId::HeightTop), |l| Fig::told(l, "the guard's height"))
}

/// The rim's depth: lumber asked about, else as told. What is no lumber is refused by who asks.
fn rim(job: &Job, said: &Said) -> Option<Fig> {
    let table = |l: Lumber| {
        let (_, deep) = l.dressed()?;
        Some(Fig::length(deep, Why::Table("dressed dry depth of the rim", l.table())))
    };
    said.rim.and_then(table).or_else(|| solve::known(job, RowId::RimTall))
}

/// The smallest post published.
fn smallest() -> PostSize {
    let nominal = u16::try_from(limits::POST_SIZE.value).unwrap_or(4);
    PostSize::Lumber(Lumber::by(nominal, nominal))
}

fn post(job: &Job, said: &Said, role: PostRole) -> PostSize {
    let asked = said.post.map(PostSize::Lumber);
    asked.or_else(|| solve::post_size(job, role)).unwrap_or_else(smallest)
}

fn foot(job: &Job) -> FootCut {
    match (choice::notched_anyway(job), choice::mount(job), choice::notch(job)) {
        (Some(Anyway::Sleeve), ..) => FootCut::Sleeve,
        (_, Some(Mount::Inside | Mount::Outside | Mount::Surface), _) | (.., Some(NotchTold::None)) => FootCut::Whole,
        (.., Some(NotchTold::Deep(l))) => FootCut::Deep(Fig::told(l, "the notch")),
        (.., None) => FootCut::Untold,
    }
}
