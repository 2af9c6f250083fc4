//! The triangle of riser, tread and bottom rail, and the ball that goes through it.
//!
//! The circle in a right triangle of sides a and b is a + b - root(a^2 + b^2) across. The rail's
//! underside runs `lift` above the nosing line, the corner stands a nosing's overhang
//! behind it: a = r/t (t + overhang) + lift, b = a t/r (plane geometry, no source).

use super::rake::hypotenuse;
use super::{Rake, inches, worked};
use crate::figure::{Fig, Why};
use crate::job::{Flight, RiserKind, Settings};
use crate::limits;
use crate::measure::{Length, Tape};
use crate::solve::{in_force, limit_length};

/// The triangle under the bottom rail.
#[derive(Clone, Debug, PartialEq)]
pub struct Triangle {
    /// The biggest ball that goes through, with the rail where it is.
    pub ball: Fig,
    /// Where a rail on the nosing line would put it.
    pub on_the_line: Fig,
    /// How far the rail's underside may be above the nosing line, plumb, before the limit is reached.
    pub most_lift: Fig,
    /// The same square to the slope.
    pub most_square: Fig,
    /// The ball that must not pass.
    pub limit: Fig,
}

/// Where a nosing's overhang was taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overhang {
    /// It was told.
    Told,
    /// The rule wants one: the most it may be.
    Most,
    /// None was told and none is asked for.
    None,
}

/// How far a nosing overhangs the riser below: as told, else the most it may where the rule wants one, since the triangle under the rail
/// grows with it; else none.
pub fn overhang(flight: &Flight, tread: Length, s: &Settings) -> (Fig, Overhang) {
    if let Some(told) = flight.nosing {
        return (Fig::told(told, "the nosing's overhang"), Overhang::Told);
    }
    let open = matches!(flight.between, Some(RiserKind::Open | RiserKind::Opening(_)));
    if !open && tread < limit_length(s, &limits::NOSING_FREE) {
        return (in_force(s, &limits::NOSING_MOST), Overhang::Most);
    }
    let none = Why::Formula("no nosing told, and none asked for", Vec::new());
    (Fig::length(Length::ZERO, none), Overhang::None)
}

/// Works it out for a rail whose underside is so far above the nosing line, plumb. `None` past
/// what can be carried.
pub fn triangle(rake: &Rake, overhang: &Fig, lift: &Fig, s: &Settings) -> Option<Triangle> {
    let limit = in_force(s, &limits::STAIR_TRIANGLE);
    let nothing = Fig::length(Length::ZERO, Why::Formula("the rail's underside on the nosing line", Vec::new()));
    let on_the_line = ball(rake, overhang, &nothing)?;
    let most_lift = most_lift(rake, overhang, &on_the_line, &limit)?;
    let most_square = rake.square(&most_lift);
    Some(Triangle { ball: ball(rake, overhang, lift)?, limit, most_square, on_the_line, most_lift })
}

/// The upright side of the triangle with the rail on the nosing line.
fn upright(rake: &Rake, overhang: &Fig) -> Length {
    rake.drop_of(inches(rake.tread()) + inches(overhang))
}

fn ball(rake: &Rake, overhang: &Fig, lift: &Fig) -> Option<Fig> {
    let a = upright(rake, overhang).plus(inches(lift))?;
    let b = a.times(inches(rake.tread()).ratio(inches(rake.rise()))?)?;
    let c = hypotenuse(a, b)?;
    let from = vec![
        ("riser", rake.rise().clone()),
        ("tread", rake.tread().clone()),
        ("nosing overhang", overhang.clone()),
        ("rail above the nosing line", lift.clone()),
    ];
    Some(worked((a + b - c).rounded(Length::CARRIED), "the two sides less the slope: the circle in the triangle", from))
}

/// The triangle grows in proportion: the lift that brings the circle to the limit.
fn most_lift(rake: &Rake, overhang: &Fig, on_the_line: &Fig, most: &Fig) -> Option<Fig> {
    let grown = inches(most).ratio(inches(on_the_line))?;
    let side = upright(rake, overhang);
    let lift = (side.times(grown)? - side).rounded(Length::CARRIED);
    let lift = if on_the_line.as_length()?.is_exact() { lift } else { lift.inexact() };
    let from = vec![
        ("ball with the rail on the line", on_the_line.clone()),
        ("limit", most.clone()),
        ("riser", rake.rise().clone()),
    ];
    Some(worked(lift, "the upright side x (limit over ball), less the side", from))
}

/// A most as the tape is to be set to: the last mark short of it, never past.
pub fn short_of(most: &Fig, tape: Tape) -> Fig {
    let l = inches(most);
    let mark = tape.round(l);
    let step = Length::new(1, tape.den()).unwrap_or(Length::ZERO);
    let short = if mark < l { mark } else { mark - step };
    worked(short, "the last mark of the tape short of it", vec![("most", most.clone())])
}

impl Triangle {
    /// True where a ball of the limit's size goes through.
    pub fn fails(&self) -> bool {
        inches(&self.ball) >= inches(&self.limit)
    }
}
