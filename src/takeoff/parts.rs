//! Every part of the guard: what, from what, how long, how many, where.

use super::balusters::{CannotFill, FilledBay, baluster_fig, fill};
use super::bays::{Bevels, RailBay, Where, rail_bays};
use super::caps::caps;
use super::flights::stair_parts;
use super::gates::leaf_balusters;
use super::lengths::{Stack, bevelled_rail, rail};
use super::posts::posts;
use crate::job::{BalustersAt, CapTold, Fixing, Job, Lie, Member};
use crate::layout::{Layout, Under};
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::quantity::RowId;
use crate::solve::{choice, limit_length, order, told_length};

/// What kind of part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// A guard post.
    Post,
    /// A top rail.
    TopRail,
    /// A bottom rail.
    BottomRail,
    /// A cap.
    Cap,
    /// A baluster.
    Baluster,
    /// A post down the stairs: those between and the newel.
    StairPost,
    /// A top rail down the stairs.
    StairTopRail,
    /// A bottom rail down the stairs.
    StairBottomRail,
    /// A baluster down the stairs.
    StairBaluster,
    /// A baluster of a gate's leaf.
    GateBaluster,
    /// A block under a long bottom rail.
    Block,
    /// A through bolt.
    Bolt,
    /// A hold-down at a post's upper bolt.
    HoldDown,
    /// A rail bracket.
    Bracket,
    /// Blocking in the deck's framing at a post.
    Blocking,
    /// Preservative for cut ends.
    Preservative,
}

impl What {
    /// Its name, for so many of it.
    pub fn name(self, many: bool) -> &'static str {
        let (one, more) = match self {
            What::Post => ("post", "posts"),
            What::TopRail => ("top rail", "top rails"),
            What::BottomRail => ("bottom rail", "bottom rails"),
            What::Cap => ("cap", "caps"),
            What::Baluster => ("baluster", "balusters"),
            What::StairPost => ("stair post", "stair posts"),
            What::StairTopRail => ("stair top rail", "stair top rails"),
            What::StairBottomRail => ("stair bottom rail", "stair bottom rails"),
            What::StairBaluster => ("stair baluster", "stair balusters"),
            What::GateBaluster => ("gate baluster", "gate balusters"),
            What::Block => ("block", "blocks"),
            What::Bolt => ("through bolt", "through bolts"),
            What::HoldDown => ("hold-down", "hold-downs"),
            What::Bracket => ("rail bracket", "rail brackets"),
            What::Blocking => ("post to block for", "posts to block for"),
            What::Preservative => ("preservative for the cut ends", "preservative for the cut ends"),
        };
        if many { more } else { one }
    }
}

/// Parts alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What.
    pub what: What,
    /// The lumber; `None` for hardware, and for what is no listed size.
    pub size: Option<Lumber>,
    /// How long each is cut; `None` for hardware, and where it cannot be told yet.
    pub cut: Option<Length>,
    /// How its ends are cut off square, at posts that stand askew: the cut is then its long
    /// point to its long point.
    pub bevels: Bevels,
    /// How many.
    pub count: u32,
    /// Where they go, in walking order.
    pub at: Vec<Where>,
}

/// A fact parts lack.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lack {
    /// The height, for balusters.
    Height,
    /// The gap under, for balusters and blocks.
    GapUnder,
    /// What the top rail is, or how it lies.
    TopRail,
    /// What the bottom rail is, or how it lies.
    BottomRail,
    /// Whether there is a cap.
    Cap,
    /// Whether balusters stand between the rails or on their faces.
    BalustersAt,
    /// The posts' length.
    PostLength,
    /// The posts' lumber.
    PostSize,
    /// Which sides of the stairs have a guard.
    OpenSides,
    /// What the flight is worked out from.
    Flight,
}

impl Lack {
    /// The fact in words, to follow "still to tell: ".
    pub fn says(self) -> &'static str {
        match self {
            Lack::Height => "the height to the top (\"guard height 36\")",
            Lack::GapUnder => "the gap under the bottom rail (\"gap under 3\")",
            Lack::TopRail => "whether the top rail lies flat or on edge",
            Lack::BottomRail => "whether the bottom rail lies flat or on edge",
            Lack::Cap => "whether there is a cap (\"2x6 cap\", \"no cap\")",
            Lack::BalustersAt => "whether balusters go between the rails or on their faces",
            Lack::PostLength => "how long the posts are cut (\"posts 52 long\")",
            Lack::PostSize => "what the posts are cut from",
            Lack::OpenSides => {
                "which sides of the stairs are open (\"stairs open both sides\"), for the guard down them"
            }
            Lack::Flight => "the stairs' risers, one riser and one tread, hung one riser down, for the guard down them",
        }
    }
}

/// All parts, and what stands in the way of some.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Parts {
    /// The parts: kinds in their order, longest first.
    pub list: Vec<Part>,
    /// What is still untold.
    pub lacks: Vec<Lack>,
    /// The bays with their balusters.
    pub bays: Vec<FilledBay>,
    /// A length of cap no stick spans.
    pub no_cap_stick: Option<Length>,
    /// Gates whose leaves cannot be made or filled.
    pub unfilled: Vec<Where>,
}

/// A rail not told is taken as this (AWC DCA 6, from memory, not checked).
pub use crate::solve::order::RAIL;
/// A baluster not told is taken as this.
pub const BALUSTER: Lumber = Lumber::by(2, 2);

/// Every part of the job. `longest` is the longest stick a size is sold in, where told.
pub fn parts(job: &Job, layout: &Layout, longest: impl Fn(Lumber) -> Option<Length>) -> Result<Parts, CannotFill> {
    let mut all = Parts { bays: fill(job, layout, None)?, ..Parts::default() };
    let bays = rail_bays(job, layout);
    all.posts(job, layout);
    all.rails(job, layout, &bays);
    all.caps(job, layout, &longest);
    all.balusters(job);
    all.stairs_and_gates(job, layout);
    all.blocks(job, &bays);
    all.hardware(job, layout, bays.len());
    all.lacks.sort();
    all.lacks.dedup();
    Ok(all)
}

impl Parts {
    fn add(&mut self, what: What, size: Option<Lumber>, cut: Option<Length>, count: u32, at: Vec<Where>) {
        self.add_cut(what, size, (cut, Bevels::default()), count, at);
    }

    fn add_cut(
        &mut self,
        what: What,
        size: Option<Lumber>,
        (cut, bevels): (Option<Length>, Bevels),
        count: u32,
        at: Vec<Where>,
    ) {
        let alike = |p: &&mut Part| (p.what, p.size, p.cut, p.bevels) == (what, size, cut, bevels);
        match self.list.iter_mut().find(alike) {
            Some(part) => {
                part.count += count;
                let more: Vec<Where> = at.into_iter().filter(|w| !part.at.contains(w)).collect();
                part.at.extend(more);
            }
            None if count > 0 => self.list.push(Part { what, size, cut, bevels, count, at }),
            None => {}
        }
    }

    fn posts(&mut self, job: &Job, layout: &Layout) {
        let cut = post_length(job);
        for posts in posts(job, layout) {
            self.lacks.extend(cut.is_none().then_some(Lack::PostLength));
            self.lacks.extend(posts.size.is_none().then_some(Lack::PostSize));
            self.add(What::Post, posts.size, cut, posts.count, posts.at);
        }
    }

    fn rails(&mut self, job: &Job, layout: &Layout, bays: &[RailBay]) {
        let short = told_length(job, RowId::Bracket).unwrap_or(Length::ZERO);
        let rails = [(What::TopRail, Member::Top, Lack::TopRail), (What::BottomRail, Member::Bottom, Lack::BottomRail)];
        for (what, member, lack) in rails {
            let Some(size) = order::rail(job, member) else { continue };
            let from = self.list.len();
            let lie = order::lies(job, member);
            let from_above = wide_from_above(size, lie);
            for bay in bays {
                let bevelled = bay.bevels.iter().any(Option::is_some);
                self.lacks.extend((bevelled && lie.is_none() && !size.is_square()).then_some(lack));
                let cut = match from_above.filter(|_| bevelled) {
                    Some(wide) => bevelled_rail(bay.clear, short, bay.bevels, wide),
                    None => rail(bay.clear, short),
                };
                self.add_cut(what, Some(size), (cut.map(|l| layout.tape.round(l)), bay.bevels), 1, vec![bay.at]);
            }
            self.list[from..].sort_by_key(|p| std::cmp::Reverse(p.cut));
        }
    }

    fn caps(&mut self, job: &Job, layout: &Layout, longest: &impl Fn(Lumber) -> Option<Length>) {
        let Some(Some(size)) = order::member(job, Member::Cap) else { return };
        let Some((_, wide)) = size.dressed() else { return };
        match caps(layout, wide, longest(size)) {
            Ok(pieces) => {
                let from = self.list.len();
                for piece in pieces {
                    self.add(What::Cap, Some(size), Some(piece.length), 1, vec![piece.at]);
                }
                self.list[from..].sort_by_key(|p| std::cmp::Reverse(p.cut));
            }
            Err(length) => self.no_cap_stick = Some(length),
        }
    }

    fn balusters(&mut self, job: &Job) {
        let counted: u32 = self.bays.iter().map(|b| b.spread.count()).sum();
        if counted == 0 {
            return;
        }
        let spares = order::spares(job);
        let cut = baluster_length(job).unwrap_or_else(|lacks| {
            self.lacks.extend(lacks);
            None
        });
        let at = self.bays.iter().filter(|b| b.spread.count() > 0).map(|b| b.at).collect();
        self.add(What::Baluster, baluster_size(job), cut, counted + spares, at);
    }

    fn stairs_and_gates(&mut self, job: &Job, layout: &Layout) {
        let (parts, lacks) = stair_parts(job, layout.tape);
        for (what, size, cut, count, at) in parts {
            self.add(what, size, cut, count, vec![at]);
        }
        self.lacks.extend(lacks);
        for (count, at) in leaf_balusters(job, layout) {
            match count {
                Some(count) => self.add(What::GateBaluster, baluster_size(job), None, count, vec![at]),
                None => self.unfilled.push(at),
            }
        }
    }

    fn blocks(&mut self, job: &Job, bays: &[RailBay]) {
        let most = limit_length(job, &limits::RAIL_BLOCK);
        let long: Vec<Where> = bays.iter().filter(|b| b.clear > most).map(|b| b.at).collect();
        if !long.is_empty() && order::rail(job, Member::Bottom).is_some() {
            self.lacks.extend(told_length(job, RowId::GapUnder).is_none().then_some(Lack::GapUnder));
            self.add(What::Block, None, told_length(job, RowId::GapUnder), long.len() as u32, long);
        }
    }

    fn hardware(&mut self, job: &Job, layout: &Layout, bays: usize) {
        let posts = layout.distinct_posts() as u32;
        if choice::fixing(job) == Some(Fixing::ThroughBolts) {
            self.add(What::Bolt, None, None, posts * u32::try_from(limits::POST_BOLTS.value).unwrap_or(2), Vec::new());
        }
        self.add(What::HoldDown, None, None, posts, Vec::new());
        if told_length(job, RowId::Bracket).is_some() {
            let rails = order::rails(job);
            self.add(What::Bracket, None, None, (bays * rails * 2) as u32, Vec::new());
        }
        let blocked = layout.framing.iter().map(|f| match &f.under {
            Under::RimAlong(n) => n.as_q().to_integer() as u32,
            Under::Missed(missed) => missed.len() as u32,
            // Nobody can say there which posts find a joist.
            Under::Angled(_) | Under::Unknown => 0,
        });
        let blocked = blocked.sum();
        self.add(What::Blocking, None, None, blocked, Vec::new());
        self.add(What::Preservative, None, None, u32::from(posts > 0), Vec::new());
    }
}

/// How wide a rail is seen from above. Where nobody said how it lies, the wider way: a piece
/// cut long is trimmed.
fn wide_from_above(size: Lumber, lie: Option<Lie>) -> Option<Length> {
    let (thick, wide) = size.dressed()?;
    Some(if lie == Some(Lie::Edge) { thick } else { wide })
}

/// The lumber balusters are cut from: a 2x2 where they are as wide as one; another width is no
/// listed size.
pub fn baluster_size(job: &Job) -> Option<Lumber> {
    let width = baluster_fig(job).as_length();
    Some(BALUSTER).filter(|s| s.dressed().map(|(_, wide)| wide) == width)
}

/// How long posts are cut: as told, or what the height told, the decking and the rim told make, as
/// the tape reads it. `None` until those are known.
pub fn post_length(job: &Job) -> Option<Length> {
    let worked = || {
        told_length(job, RowId::HeightTop)?;
        let total = crate::notch::Stack::of(&job.settings).total?;
        Some(crate::solve::choice::tape(job).round(total.as_length()?))
    };
    told_length(job, RowId::PostLength).or_else(worked)
}

/// How long balusters are cut: as told, or what the height leaves, as the tape reads it.
/// `Ok(None)` where the members leave nothing.
pub fn baluster_length(job: &Job) -> Result<Option<Length>, Vec<Lack>> {
    if let Some(told) = told_length(job, RowId::BalusterLength) {
        return Ok(Some(told));
    }
    let tape = crate::solve::choice::tape(job);
    let (stack, at) = stack(job)?;
    let length = match at {
        BalustersAt::Between => stack.between(),
        BalustersAt::Faces => stack.on_faces(),
    };
    Ok(length.map(|l| tape.round(l)))
}

/// The members in height, and where balusters go; or everything still untold of them.
pub fn stack(job: &Job) -> Result<(Stack, BalustersAt), Vec<Lack>> {
    let at = order::balusters_at(job);
    let between = at != Some(BalustersAt::Faces);
    let member = |m: Member| match order::rail(job, m) {
        None => Some(Length::ZERO),
        Some(size) => order::depth(job, m, size),
    };
    let cap = match job.cap() {
        CapTold::Untold => None,
        CapTold::None => Some(Length::ZERO),
        CapTold::Thick(l) => Some(l),
    };
    let (top, bottom) = (member(Member::Top), member(Member::Bottom));
    let lacks = [
        (Lack::Height, told_length(job, RowId::HeightTop).is_none()),
        (Lack::GapUnder, told_length(job, RowId::GapUnder).is_none()),
        (Lack::TopRail, between && top.is_none()),
        (Lack::BottomRail, between && bottom.is_none()),
        (Lack::Cap, cap.is_none()),
        (Lack::BalustersAt, at.is_none()),
    ];
    let lacks: Vec<Lack> = lacks.into_iter().filter(|(_, lacks)| *lacks).map(|(lack, _)| lack).collect();
    match (told_length(job, RowId::HeightTop), told_length(job, RowId::GapUnder), cap, at) {
        (Some(height), Some(gap_under), Some(cap), Some(at)) if lacks.is_empty() => {
            let (top, bottom) = (top.unwrap_or(Length::ZERO), bottom.unwrap_or(Length::ZERO));
            Ok((Stack { height, gap_under, cap, top, bottom }, at))
        }
        _ => Err(lacks),
    }
}
