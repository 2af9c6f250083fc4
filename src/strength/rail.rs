//! A top rail between two posts: one piece, or a rail with a cap on it.
//!
//! Pieces laid together share a load by their stiffness: they bend alike, and none helps
//! another as glue would. Balusters and bottom rail are not counted on.

use super::Refused;
use super::beam::{bending_sag, moment, shear_stress, top_load};
use super::number::Num;
use super::post::Judged;
use super::section::Section;
use super::values::Case;
use super::wood::Wood;
use crate::figure::{Fig, Unit, Why};
use crate::job::Lie;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::solve::habit;

/// The shortest span judged, in inches.
const SHORTEST: i64 = 12;

/// One piece of a rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Its lumber.
    pub size: Lumber,
    /// How it lies.
    pub lie: Lie,
}

/// The pieces of a rail as far as it was told, the cautious choice for the rest: one 2x4 laid
/// flat. A cap thinner than the tables begin is not counted on.
pub fn made_up(rail: Option<Lumber>, lie: Option<Lie>, cap: Option<Lumber>) -> Vec<Piece> {
    let two_by = u16::try_from(limits::TOP_RAIL.value).unwrap_or(4);
    let rail = Piece { size: rail.unwrap_or(Lumber::by(2, two_by)), lie: lie.unwrap_or(Lie::Flat) };
    let cap = cap.filter(|c| counts(*c)).map(|size| Piece { size, lie: Lie::Flat });
    [Some(rail), cap].into_iter().flatten().collect()
}

/// True for a cap the tables reach: 2 in. nominal or thicker.
pub(super) fn counts(cap: Lumber) -> bool {
    cap.thick_quarters >= 8
}

/// Which way the load goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Straight down.
    Down,
    /// Outward.
    Out,
}

impl Piece {
    /// How it lies as seen along the load: what lies flat under a weight stands on edge to a push.
    fn lie_to(self, way: Way) -> Lie {
        match (self.lie, way) {
            (Lie::Flat, Way::Down) | (Lie::Edge, Way::Out) => Lie::Flat,
            (Lie::Edge, Way::Down) | (Lie::Flat, Way::Out) => Lie::Edge,
        }
    }

    /// Its section, deep in the load's direction.
    ///
    /// # Errors
    /// [`Refused::NotLumber`].
    pub fn section(self, way: Way) -> Result<Section, Refused> {
        let (b, d) = self.sides(way)?;
        Section::rectangle(&b, &d)
    }

    fn sides(self, way: Way) -> Result<(Fig, Fig), Refused> {
        let (thick, wide) = self.size.dressed().ok_or(Refused::NotLumber(self.size))?;
        let fig = |l, what| Fig::length(l, Why::Table(what, self.size.table()));
        let (thick, wide) = (fig(thick, "dressed dry thickness"), fig(wide, "dressed dry width"));
        Ok(if self.lie_to(way) == Lie::Flat { (wide, thick) } else { (thick, wide) })
    }
}

/// The pieces' second moments added up: they share the load, they do not act as one.
///
/// # Errors
/// As [`Piece::section`].
pub fn second_moments(pieces: &[Piece], way: Way) -> Result<Fig, Refused> {
    let each: Result<Vec<Fig>, Refused> = pieces.iter().map(|p| p.section(way)?.second_moment()).collect();
    let each = each?;
    let sum = each.iter().fold(Num::whole(0), |sum, i| sum + Num::fig(i));
    let says =
        "the pieces' second moments added up: they share the load by stiffness, with no credit for glue or screws";
    sum.quantity(Unit::In4, says, each.into_iter().map(|i| ("second moment of a piece", i)).collect())
}

/// A rail as judged under 200 lb at midspan, in one direction.
#[derive(Clone, Debug, PartialEq)]
pub struct Bent {
    /// The direction.
    pub way: Way,
    /// Sag, against the published serviceability figure.
    pub sag: Judged,
    /// Bending stress in the worse piece, against what it is allowed.
    pub stress: Judged,
}

/// Judges a rail in one direction over a clear span; `height` is the guard's.
///
/// # Errors
/// [`Refused::Span`] outside 1 to 20 ft, [`Refused::SagPast`] past a tenth of the span, or
/// what the tables do not cover.
pub fn bent(pieces: &[Piece], wood: &Wood, span: &Fig, height: &Fig, way: Way) -> Result<Bent, Refused> {
    in_range(span)?;
    let bent = judged(pieces, wood, span, height, way)?;
    let most = Num::fig(span) / Num::whole(limits::SMALL_SAG.value);
    if bent.sag.demand.as_q() > most.q()? {
        return Err(Refused::SagPast);
    }
    Ok(bent)
}

fn in_range(span: &Fig) -> Result<(), Refused> {
    let (least, most) = (Length::inches(SHORTEST), habit(&limits::SPAN_REACH));
    let inches = span.as_length().ok_or(Refused::PastNumbers)?;
    if inches < least || inches > most { Err(Refused::Span(SHORTEST, limits::SPAN_REACH.value / 16)) } else { Ok(()) }
}

fn judged(pieces: &[Piece], wood: &Wood, span: &Fig, height: &Fig, way: Way) -> Result<Bent, Refused> {
    let load = top_load();
    let i = second_moments(pieces, way)?;
    let e = softest(pieces, wood)?;
    let sag = bending_sag(Case::MidPoint, &load, span, &e, &i)?;
    let m = moment(Case::MidPoint, &load, span)?;
    let stresses: Result<Vec<Judged>, Refused> = pieces.iter().map(|p| piece_stress(*p, wood, &m, &i, way)).collect();
    let worst = stresses?.into_iter().max_by_key(|j| j.ratio.as_q()).ok_or(Refused::NothingLeft)?;
    Ok(Bent { way, sag: Judged::of(sag, sag_limit(span, height, way)?)?, stress: worst })
}

/// The least stiffness of the pieces' wood: they are taken as alike.
fn softest(pieces: &[Piece], wood: &Wood) -> Result<Fig, Refused> {
    let each: Result<Vec<Fig>, Refused> = pieces.iter().map(|p| wood.stiffness(p.size)).collect();
    each?.into_iter().min_by_key(Fig::as_q).ok_or(Refused::NothingLeft)
}

/// The stress in one piece of a rail that bends as one curve: M c / sum of I.
fn piece_stress(piece: Piece, wood: &Wood, m: &Fig, i: &Fig, way: Way) -> Result<Judged, Refused> {
    let (_, depth) = piece.sides(way)?;
    let f = Num::fig(m) * Num::fig(&depth) / Num::whole(2) / Num::fig(i);
    let from = vec![("moment", m.clone()), ("depth of the piece", depth), ("second moments added up", i.clone())];
    let says = "bending stress in the worse piece: its share of the moment, by stiffness, at half its depth";
    Judged::of(f.quantity(Unit::Psi, says, from)?, wood.bending(piece.size, piece.lie_to(way))?)
}

/// The shear in a rail with the load beside a post, in the worse piece: each takes its share by
/// stiffness, as in bending.
///
/// # Errors
/// What the tables do not cover.
pub fn sheared(pieces: &[Piece], wood: &Wood) -> Result<Judged, Refused> {
    let i = second_moments(pieces, Way::Down)?;
    let of = |piece: &Piece| {
        let (load, own) = (top_load(), piece.section(Way::Down)?.second_moment()?);
        let from = vec![("load", load.clone()), ("second moment of the piece", own.clone()), ("added up", i.clone())];
        let share = (Num::fig(&load) * Num::fig(&own) / Num::fig(&i)).quantity(
            Unit::Pounds,
            "the piece's share of the load, by stiffness",
            from,
        )?;
        Judged::of(shear_stress(&share, &piece.section(Way::Down)?.area()?)?, wood.shear(piece.size)?)
    };
    let each: Result<Vec<Judged>, Refused> = pieces.iter().map(of).collect();
    each?.into_iter().max_by_key(|j| j.ratio.as_q()).ok_or(Refused::NothingLeft)
}

/// The bearing across the grain of a rail that lies on half a post's top, in its lowest piece.
///
/// # Errors
/// What the tables do not cover.
pub fn bears(pieces: &[Piece], wood: &Wood, post: &Fig) -> Result<Judged, Refused> {
    let lowest = pieces.first().ok_or(Refused::NothingLeft)?;
    let (load, (wide, _)) = (top_load(), lowest.sides(Way::Down)?);
    let seat = Num::fig(&wide) * Num::fig(post) / Num::whole(2);
    let from = vec![("load", load.clone()), ("rail's width", wide.clone()), ("post", post.clone())];
    let says = "bearing on half a post: load over the rail's width times half the post's";
    Judged::of((Num::fig(&load) / seat).quantity(Unit::Psi, says, from)?, wood.bearing(lowest.size)?)
}

/// How far a rail may move: span / 96 down; outward, height / 24 more.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn sag_limit(span: &Fig, height: &Fig, way: Way) -> Result<Fig, Refused> {
    let down = Num::fig(span) / Num::whole(limits::RAIL_SAG.value);
    let parts =
        |limit: &'static limits::Limit| Fig::quantity(i128::from(limit.value).into(), Unit::Times, Why::Limit(limit));
    let from = vec![("span", span.clone()), ("parts of the span", parts(&limits::RAIL_SAG))];
    match way {
        Way::Down => down.length("the most sag: span over 96", from),
        Way::Out => {
            let out = down + Num::fig(height) / Num::whole(limits::RAIL_PUSH.value);
            let more = [("height", height.clone()), ("parts of the height", parts(&limits::RAIL_PUSH))];
            let says = "the most movement outward: height over 24 and span over 96";
            out.length(says, from.into_iter().chain(more).collect())
        }
    }
}

/// The longest span, to the sixteenth under, at which the test holds; `None` where it does
/// not even at the shortest judged. The test must hold for every shorter span too.
///
/// # Errors
/// What the test is refused for.
pub fn longest(
    says: &'static str,
    from: Vec<(&'static str, Fig)>,
    holds: impl Fn(&Fig) -> Result<bool, Refused>,
) -> Result<Option<Fig>, Refused> {
    let span = |n: i64| Fig::length(Length::sixteenths(n), Why::Formula(says, from.clone()));
    let (mut good, mut bad) = (SHORTEST * 16, limits::SPAN_REACH.value + 1);
    if !holds(&span(good))? {
        return Ok(None);
    }
    while bad - good > 1 {
        let middle = (good + bad) / 2;
        if holds(&span(middle))? {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Ok(Some(span(good)))
}

/// The longest span whose sag stays inside the published figures, both ways.
///
/// # Errors
/// What the tables do not cover.
pub fn longest_by_sag(pieces: &[Piece], wood: &Wood, height: &Fig) -> Result<Option<Fig>, Refused> {
    let from = vec![("stiffness", softest(pieces, wood)?), ("second moment, down", second_moments(pieces, Way::Down)?)];
    let says = "the longest span, to the sixteenth under, that sags no more than the published figures allow";
    longest(says, from, |span| both(pieces, wood, span, height, |b| b.sag.holds()))
}

/// The longest span whose bending stress stays inside what the wood is allowed, both ways.
///
/// # Errors
/// What the tables do not cover.
pub fn longest_by_stress(pieces: &[Piece], wood: &Wood, height: &Fig) -> Result<Option<Fig>, Refused> {
    let from = vec![("second moment, down", second_moments(pieces, Way::Down)?)];
    let says = "the longest span, to the sixteenth under, at which bending stays inside what the wood is allowed";
    longest(says, from, |span| both(pieces, wood, span, height, |b| b.stress.holds()))
}

fn both(pieces: &[Piece], wood: &Wood, span: &Fig, height: &Fig, holds: fn(&Bent) -> bool) -> Result<bool, Refused> {
    let down = judged(pieces, wood, span, height, Way::Down)?;
    let out = judged(pieces, wood, span, height, Way::Out)?;
    Ok(holds(&down) && holds(&out))
}
