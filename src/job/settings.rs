//! Settings of the job: post sizes, height, limits, mount.

use super::{Foot, FootTold, Law, LawTold, Timber, TimberTold};
use crate::measure::{Length, Lumber};

/// Which posts a size is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PostRole {
    /// Every post not told otherwise.
    All,
    /// Corner posts.
    Corner,
    /// Line posts: those between the fixed ones.
    Line,
    /// End posts.
    End,
    /// Gate jambs.
    Gate,
    /// Posts at the head of the stairs, and newels at their foot.
    Stair,
}

impl PostRole {
    /// Every role.
    pub const ALL: [PostRole; 6] =
        [PostRole::All, PostRole::Corner, PostRole::Line, PostRole::End, PostRole::Gate, PostRole::Stair];
}

/// A post's size: named lumber, or a width as measured (a sleeve, a steel post).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PostSize {
    /// Named lumber; its dressed width is used.
    Lumber(Lumber),
    /// The outside width as told.
    Width(Length),
}

impl PostSize {
    /// The width along the run. `None` for lumber the size table does not hold.
    pub fn width(self) -> Option<Length> {
        match self {
            PostSize::Lumber(l) => l.dressed().map(|(_, wide)| wide),
            PostSize::Width(w) => Some(w),
        }
    }
}

/// How posts are mounted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mount {
    /// Notched over the decking's edge.
    OverEdge,
    /// Inside the rim.
    Inside,
    /// On the rim's outside face.
    Outside,
    /// On the decking.
    Surface,
}

/// What holds the posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fixing {
    /// Through bolts.
    ThroughBolts,
    /// Lag screws.
    Lags,
    /// Structural screws.
    Screws,
}

/// What stands where a run meets the house.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HouseEnd {
    /// A post against the wall.
    Post,
    /// A bracket on the wall; no post.
    Bracket,
}

/// The notch as told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NotchTold {
    /// No notch.
    None,
    /// So deep.
    Deep(Length),
}

/// Which way the deck's joists run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum JoistsRun {
    /// Out from the house.
    Out,
    /// Along the house.
    Along,
}

/// From where left and right are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum View {
    /// Standing at the house, looking out.
    House,
    /// Standing in the yard, looking at the house.
    Yard,
}

/// Blocking between the joists at the posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Blocking {
    /// At every post.
    AtPosts,
    /// Nowhere.
    None,
}

/// One setting and its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Setting {
    /// A post size for a role.
    Post(PostRole, PostSize),
    /// Height to the top of the top rail, above the walking surface.
    HeightTop(Length),
    /// Gap under the bottom rail.
    GapUnder(Length),
    /// A baluster's width.
    Baluster(Length),
    /// The gap balusters must stay under.
    GapMax(Length),
    /// The longest clear opening between posts.
    ClearMax(Length),
    /// The longest post spacing, on centre.
    CentreMax(Length),
    /// The walking surface's height above the ground below.
    Grade(Length),
    /// How posts are mounted.
    Mount(Mount),
    /// How far the decking's edge stands past what carries it: the skirt, or the rim without one.
    Overhang(Length),
    /// How thick the skirt over the rim is; nothing where there is none.
    Skirt(Length),
    /// How thick the rim is.
    Rim(Length),
    /// How far the baluster line lies inside the decking's edge; below nothing, outside it.
    Line(Length),
    /// How far each of two corner posts stands back from the rim's corner, to its near face.
    HoldBack(Length),
    /// The joists' spacing, on centre.
    Joists(Length),
    /// The first joist's centre: from the decking's left edge, or from the siding where
    /// joists run along the house.
    FirstJoist(Length),
    /// Which way the joists run.
    JoistsRun(JoistsRun),
    /// What blocking stands between the joists.
    Blocking(Blocking),
    /// From where left and right are told.
    View(View),
    /// Whether the guard closes off a pool.
    Pool(bool),
    /// What holds them.
    Fixing(Fixing),
    /// What stands at the house.
    HouseEnd(HouseEnd),
    /// The notch.
    Notch(NotchTold),
    /// The parts of an inch figures are read to.
    Tape(u8),
    /// The wood, and how the rail is made up.
    Timber(TimberTold),
    /// Whose rules hold.
    Law(LawTold),
    /// A fact of the posts' feet.
    Foot(Foot),
}

/// All settings told so far. What was not told is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// Post sizes told, by role.
    pub posts: Vec<(PostRole, PostSize)>,
    /// See [`Setting::HeightTop`].
    pub height_top: Option<Length>,
    /// See [`Setting::GapUnder`].
    pub gap_under: Option<Length>,
    /// See [`Setting::Baluster`].
    pub baluster: Option<Length>,
    /// See [`Setting::GapMax`].
    pub gap_max: Option<Length>,
    /// See [`Setting::ClearMax`].
    pub clear_max: Option<Length>,
    /// See [`Setting::CentreMax`].
    pub centre_max: Option<Length>,
    /// See [`Setting::Grade`].
    pub grade: Option<Length>,
    /// See [`Setting::Mount`].
    pub mount: Option<Mount>,
    /// See [`Setting::Overhang`].
    pub overhang: Option<Length>,
    /// See [`Setting::Skirt`].
    pub skirt: Option<Length>,
    /// See [`Setting::Rim`].
    pub rim: Option<Length>,
    /// See [`Setting::Line`].
    pub line: Option<Length>,
    /// See [`Setting::HoldBack`].
    pub hold_back: Option<Length>,
    /// See [`Setting::Joists`].
    pub joists: Option<Length>,
    /// See [`Setting::FirstJoist`].
    pub first_joist: Option<Length>,
    /// See [`Setting::JoistsRun`].
    pub joists_run: Option<JoistsRun>,
    /// See [`Setting::Blocking`].
    pub blocking: Option<Blocking>,
    /// See [`Setting::View`].
    pub view: Option<View>,
    /// See [`Setting::Pool`].
    pub pool: Option<bool>,
    /// See [`Setting::Fixing`].
    pub fixing: Option<Fixing>,
    /// See [`Setting::HouseEnd`].
    pub house_end: Option<HouseEnd>,
    /// See [`Setting::Notch`].
    pub notch: Option<NotchTold>,
    /// See [`Setting::Tape`].
    pub tape: Option<u8>,
    /// See [`Setting::Law`].
    pub law: Law,
    /// See [`Setting::Timber`].
    pub timber: Timber,
    /// See [`Setting::Foot`].
    pub foot: FootTold,
}

impl Settings {
    /// Takes one setting in; the last told wins.
    pub fn set(&mut self, s: Setting) {
        match s {
            Setting::Post(role, size) => {
                self.posts.retain(|(r, _)| *r != role && role != PostRole::All);
                self.posts.push((role, size));
            }
            Setting::HeightTop(l) => self.height_top = Some(l),
            Setting::GapUnder(l) => self.gap_under = Some(l),
            Setting::Baluster(l) => self.baluster = Some(l),
            Setting::GapMax(l) => self.gap_max = Some(l),
            Setting::ClearMax(l) => self.clear_max = Some(l),
            Setting::CentreMax(l) => self.centre_max = Some(l),
            Setting::Grade(l) => self.grade = Some(l),
            Setting::Mount(m) => self.mount = Some(m),
            Setting::Overhang(l) => self.overhang = Some(l),
            Setting::Skirt(l) => self.skirt = Some(l),
            Setting::Rim(l) => self.rim = Some(l),
            Setting::Line(l) => self.line = Some(l),
            Setting::HoldBack(l) => self.hold_back = Some(l),
            Setting::Joists(l) => self.joists = Some(l),
            Setting::FirstJoist(l) => self.first_joist = Some(l),
            Setting::JoistsRun(way) => self.joists_run = Some(way),
            Setting::Blocking(b) => self.blocking = Some(b),
            Setting::View(v) => self.view = Some(v),
            Setting::Pool(p) => self.pool = Some(p),
            Setting::Fixing(f) => self.fixing = Some(f),
            Setting::HouseEnd(h) => self.house_end = Some(h),
            Setting::Notch(n) => self.notch = Some(n),
            Setting::Tape(d) => self.tape = Some(d),
            Setting::Timber(told) => self.timber.set(told),
            Setting::Law(told) => self.law.set(told),
            Setting::Foot(f) => self.foot.set(f),
        }
    }

    /// The size told for a role, or for all posts; `None` when neither was told.
    pub fn post(&self, role: PostRole) -> Option<PostSize> {
        let of = |r| self.posts.iter().find(|(role, _)| *role == r).map(|(_, size)| *size);
        of(role).or_else(|| of(PostRole::All))
    }
}
