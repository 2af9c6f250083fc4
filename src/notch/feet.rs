//! The feet of every post of a job.

use super::cut::{Cut, Size};
use super::ground::{Ground, Place};
use super::point::Way;
use crate::figure::{Fig, Why};
use crate::job::{Foot as Told, Job, Mount, Nosing, NotchTold, PostSize, RunId, Setting, Settings, Turned};
use crate::layout::{Kind, Lack, Layout, Meet, Part, Placed, Post as Laid, RunLayout, lay_out, line_inside};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{Source, choice, default_of, told_length, told_sizes};

/// Why a foot cannot be worked out, or what is wrong with it: it names the fact at fault.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// How many degrees an angled corner turns was not told.
    TurnUntold,
    /// No part of the post stands over the deck.
    OffDeck,
    /// Nothing is left of the post.
    NothingLeft,
    /// An edge of the deck is too short for what is told of the overhang or the line.
    EdgeTooShort,
    /// The skirt is as thick as the post, or thicker.
    SkirtTooThick,
    /// The notch told and the line told do not go together: what the line makes of it.
    NotchAgainstLine(Fig),
    /// A post that stands on no brink: a stair's foot.
    NoBrink,
}

/// The foot of one post.
#[derive(Clone, Debug, PartialEq)]
pub struct Foot {
    /// Where it passes the decking.
    pub upper: Cut,
    /// Where it passes the skirt and the rim.
    pub lower: Cut,
}

impl Foot {
    /// True where the decking is left whole round it: two depths.
    pub fn is_stepped(&self) -> bool {
        self.upper.off != self.lower.off
    }

    /// The level with the least left: what the post hangs on.
    pub fn weakest(&self) -> &Cut {
        self.weakest_level().1
    }
}

/// One post of the job and its foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// Its number, counted along the runs as told.
    pub number: usize,
    /// Its run.
    pub run: RunId,
    /// Its run's name.
    pub name: Option<String>,
    /// Which part of it.
    pub part: Part,
    /// The run it stands in too, at a shared corner.
    pub shared: Option<RunId>,
    /// What kind.
    pub kind: Kind,
    /// Its centre, from what the tape hooks on.
    pub at: Fig,
    /// What the tape hooks on.
    pub from: &'static str,
    /// Its width along its run.
    pub width: Fig,
    /// Its size.
    pub size: Size,
    /// The turn of the deck's edge at it, in degrees: right positive, nothing on a straight edge.
    pub turn: i32,
    /// Its foot, or why there is none.
    pub foot: Result<Foot, Fault>,
}

/// Why the posts are not cut at their feet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Uncut {
    /// Told so.
    Told,
    /// They stand inside the rim, outside it or on the decking.
    Mounted(Mount),
}

/// The feet of a job's posts.
#[derive(Clone, Debug, PartialEq)]
pub struct Feet {
    /// The posts, each once, in walking order.
    pub posts: Vec<Post>,
    /// How far the baluster line lies inside the decking's edge; `None` where no post is cut
    /// and nobody said.
    pub line: Option<Fig>,
    /// How far the decking overhangs what carries it.
    pub overhang: Fig,
    /// What becomes of the nosing; `None` where nobody said and it makes a difference.
    pub nosing: Option<Nosing>,
    /// Why no post is cut.
    pub uncut: Option<Uncut>,
}

/// The feet of every post of the job. Where nobody said what becomes of an overhanging
/// nosing it is taken as cut back; [`Feet::nosing`] tells.
///
/// # Errors
/// The facts the baluster line wants and was not told.
pub fn feet(job: &Job) -> Result<Feet, Vec<Lack>> {
    let settings = &job.settings;
    let overhang = overhang(settings);
    let uncut = uncut(settings);
    let line = match line(settings, &overhang) {
        Err(_) if uncut.is_some() => None,
        line => Some(line?),
    };
    let even = overhang.as_length().is_some_and(Length::is_zero);
    let nosing = choice::nosing(settings).or(even.then_some(Nosing::CutBack));
    let at = line.as_ref().map_or(Length::ZERO, inches);
    let site = Site { settings, ground: Ground::of(job, at), line: line.as_ref(), overhang: &overhang };
    let posts = site.posts(&lay_out(job), nosing.unwrap_or(Nosing::CutBack), uncut);
    Ok(Feet { posts, line, overhang, nosing, uncut })
}

/// As [`feet`], with the nosing as told here.
///
/// # Errors
/// As [`feet`].
pub fn feet_with(job: &Job, nosing: Nosing) -> Result<Feet, Vec<Lack>> {
    let mut job = job.clone();
    job.settings.set(Setting::Foot(Told::Nosing(nosing)));
    feet(&job)
}

fn inches(fig: &Fig) -> Length {
    fig.as_length().unwrap_or(Length::ZERO)
}

fn uncut(s: &Settings) -> Option<Uncut> {
    match (choice::notch(s), choice::mount(s)) {
        (_, Some(m @ (Mount::Inside | Mount::Outside | Mount::Surface))) => Some(Uncut::Mounted(m)),
        (Some(NotchTold::None), _) => Some(Uncut::Told),
        _ => None,
    }
}

fn overhang(s: &Settings) -> Fig {
    Source::told(s, RowId::Overhang).unwrap_or_else(|| default_of(s, &limits::NOSING))
}

/// The baluster line; where only the notch's depth was told, the line that makes it.
fn line(s: &Settings, overhang: &Fig) -> Result<Fig, Vec<Lack>> {
    let line_told = told_length(s, RowId::Line).is_some();
    let Some(deep) = told_length(s, RowId::NotchDepth).filter(|_| !line_told && uncut(s).is_none()) else {
        return line_inside(s);
    };
    let half = crate::layout::post_width(s, &[]);
    let at = deep - inches(&half) / 2 + inches(overhang);
    let inputs = vec![("notch", Fig::told(deep, "the notch")), ("post", half), ("overhang", overhang.clone())];
    Ok(Fig::length(at, Why::Formula("the notch less half the post, and the overhang", inputs)))
}

struct Site<'a> {
    settings: &'a Settings,
    ground: Ground,
    line: Option<&'a Fig>,
    overhang: &'a Fig,
}

impl Site<'_> {
    fn posts(&self, layout: &Layout, nosing: Nosing, uncut: Option<Uncut>) -> Vec<Post> {
        let mut standing: Vec<Standing> = Vec::new();
        for run in &layout.runs {
            let Ok(placed) = &run.result else { continue };
            for (k, laid) in placed.posts.iter().enumerate() {
                let place = self.ground.place(run, placed, k);
                let meets = meets(run, placed, k);
                if let Some(at) = already(&standing, place.as_ref(), meets, run, placed, k) {
                    let post = &mut standing[at].post;
                    post.shared = post.shared.or((post.run != run.id).then_some(run.id));
                    continue;
                }
                let number = standing.len() + 1;
                let foot = self.foot(laid, place.as_ref(), nosing, uncut);
                let post = self.post(number, run, laid, placed.origin, place.as_ref(), foot);
                standing.push(Standing { post, place, meets: meets.map(|m| m.run) });
            }
        }
        standing.into_iter().map(|s| s.post).collect()
    }

    fn post(
        &self,
        number: usize,
        run: &RunLayout,
        laid: &Laid,
        from: &'static str,
        place: Option<&Place>,
        foot: Result<Foot, Fault>,
    ) -> Post {
        Post {
            number,
            run: run.id,
            name: run.name.clone(),
            part: run.part,
            shared: None,
            kind: laid.kind,
            at: laid.at.clone(),
            from,
            width: laid.width.clone(),
            size: self.size(laid),
            turn: place.map_or(0, |p| p.turn),
            foot,
        }
    }

    /// A post told as lumber that is not square stands with its wide side along the run.
    fn size(&self, laid: &Laid) -> Size {
        let along = laid.width_length();
        let told = told_sizes(self.settings).iter().filter_map(|(_, size)| match size {
            PostSize::Lumber(l) => l.dressed(),
            PostSize::Width(_) => None,
        });
        let across = told.filter(|(_, wide)| *wide == along).map(|(thick, _)| thick).min();
        Size { along, across: across.unwrap_or(along) }
    }

    fn foot(&self, laid: &Laid, place: Option<&Place>, nosing: Nosing, uncut: Option<Uncut>) -> Result<Foot, Fault> {
        let size = self.size(laid);
        let place = place.ok_or(match laid.kind {
            Kind::Fixed(crate::job::End::BottomNewel) => Fault::NoBrink,
            _ => Fault::TurnUntold,
        })?;
        if told_length(self.settings, RowId::Skirt).is_some_and(|skirt| skirt >= size.across) {
            return Err(Fault::SkirtTooThick);
        }
        if uncut.is_some() {
            let whole = Cut::whole(size);
            return Ok(Foot { upper: whole.clone(), lower: whole });
        }
        self.told_depth(size)?;
        let back = inches(self.overhang);
        let lower = self.level(size, place, back)?;
        let upper = if nosing == Nosing::Whole { self.level(size, place, Length::ZERO)? } else { lower.clone() };
        Ok(Foot { upper, lower })
    }

    /// A told notch leaves something, and goes with the line where that was told too.
    fn told_depth(&self, size: Size) -> Result<(), Fault> {
        let Some(deep) = told_length(self.settings, RowId::NotchDepth) else { return Ok(()) };
        if deep >= size.across {
            return Err(Fault::NothingLeft);
        }
        let Some(line) = self.line.filter(|_| told_length(self.settings, RowId::Line).is_some()) else { return Ok(()) };
        let made = size.across / 2 + inches(line) - inches(self.overhang);
        if made != deep {
            let inputs = vec![("line", line.clone()), ("overhang", self.overhang.clone())];
            let why = Why::Formula("half the post and the line, less the overhang", inputs);
            return Err(Fault::NotchAgainstLine(Fig::length(made, why)));
        }
        Ok(())
    }

    fn level(&self, size: Size, place: &Place, inside: Length) -> Result<Cut, Fault> {
        let region = place.brink.inside(inside).ok_or(Fault::EdgeTooShort)?;
        let way = self.way(place).ok_or(Fault::TurnUntold)?;
        let cut = Cut::of(size, place.centre, way, &region).ok_or(Fault::EdgeTooShort)?;
        if cut.off.is_empty() { Err(Fault::OffDeck) } else { Ok(cut) }
    }

    /// Which way the post is turned: along its own edge, but at an angled corner as told.
    fn way(&self, place: &Place) -> Option<Way> {
        if place.turn % 90 == 0 {
            return Some(Way::degrees(place.own));
        }
        match choice::turned(self.settings) {
            None => Some(Way::degrees(place.own)),
            Some(Turned::First) => Some(Way::degrees(place.before)),
            Some(Turned::Next) => Some(Way::degrees(place.before + place.turn)),
            Some(Turned::Split) => Way::degrees(place.before).half_turned(place.turn),
        }
    }
}

/// A post so far, its place, and the run its corner is shared with.
struct Standing {
    post: Post,
    place: Option<Place>,
    meets: Option<RunId>,
}

/// The corner a post at an end of its stretch shares with another.
fn meets<'a>(run: &'a RunLayout, placed: &Placed, k: usize) -> Option<&'a Meet> {
    let last = placed.posts.len().checked_sub(1)?;
    let at = |end: usize| run.meets[end].as_ref().filter(|m| m.gap.is_none());
    let first = at(0).filter(|_| k == 0 && placed.posts[0].kind == Kind::Fixed(placed.ends[0]));
    first.or_else(|| at(1).filter(|_| k == last && placed.posts[last].kind == Kind::Fixed(placed.ends[1])))
}

/// The post of those so far that is this one: at the same place of one outline, or the one
/// post of a corner two runs share.
fn already(
    standing: &[Standing],
    place: Option<&Place>,
    meets: Option<&Meet>,
    run: &RunLayout,
    placed: &Placed,
    k: usize,
) -> Option<usize> {
    let here = |s: &Standing| s.place.as_ref().zip(place).is_some_and(|(a, b)| same_place(a, b));
    let corner = |s: &Standing| {
        meets.is_some_and(|m| m.later && s.post.run == m.run && s.post.part == Part::Whole && s.meets == Some(run.id))
    };
    // The mouth of recessed stairs stands in its whole run already.
    let mouth = match run.part {
        Part::InLeft(_) => k == 0,
        Part::InRight(_) => k + 1 == placed.posts.len(),
        _ => false,
    };
    let of_run = |s: &Standing| mouth && s.post.run == run.id && s.post.part == Part::Whole;
    standing.iter().position(|s| here(s) || corner(s)).or_else(|| standing.iter().position(of_run))
}

/// One place on one outline. Two runs told alone share nothing.
fn same_place(a: &Place, b: &Place) -> bool {
    a.brink.is_outline() && b.brink.is_outline() && a.centre == b.centre
}
