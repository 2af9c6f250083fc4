//! A wood section seen end on: a polygon, and what its shape says about bending.
//!
//! Area, centroid and second moments come from the corners by Green's theorem, in exact
//! rational numbers: rectangles, legs and any stepped foot are one case. x runs along the
//! deck's edge and y out over it. Corners run round it once, the inside on the left.
//!
//! Which push counts: rails come to a line post from both sides and lean on it outward or along
//! them; two rails that meet in a corner post lean on it any way between, so there the weakest
//! direction counts. For a whole square that is its diagonal, at 0.707 of its modulus across a face.

use super::Refused;
use super::number::{Num, over_hypotenuse};
use crate::figure::{Fig, Unit, Why};
use crate::measure::Q;

/// A corner, in inches.
pub type Corner = (Q, Q);

/// How a section is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Push {
    /// Along y, and held so that it cannot move sideways.
    Held,
    /// Along y or along x, the worse of the two, free to move sideways: a lopsided section
    /// bends about both axes at once.
    Free,
    /// Any way: the weakest direction there is.
    Any,
}

impl Push {
    /// The direction judged, in words.
    pub fn says(self) -> &'static str {
        match self {
            Push::Held => "pushed outward",
            Push::Free => "pushed outward or along the edge, the worse of the two",
            Push::Any => "pushed the way it is weakest, as a corner post may be",
        }
    }
}

/// A section's area, second moments and corners about its centroid.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    area: Num,
    centroid: (Num, Num),
    ixx: Num,
    iyy: Num,
    ixy: Num,
    corners: Vec<(Num, Num)>,
    made_of: Vec<(&'static str, Fig)>,
}

impl Section {
    /// A section from its corners; `made_of` are the figures its shape rests on.
    ///
    /// # Errors
    /// [`Refused::NothingLeft`] where it has no area, [`Refused::PastNumbers`].
    pub fn of(corners: &[Corner], made_of: Vec<(&'static str, Fig)>) -> Result<Section, Refused> {
        let points: Vec<(Num, Num)> = corners.iter().map(|(x, y)| (Num::of(*x), Num::of(*y))).collect();
        let sums = Sums::round(&points);
        let area = sums.area / Num::whole(2);
        if area.q()? <= Q::from_integer(0) {
            return Err(Refused::NothingLeft);
        }
        let (x, y) = (sums.sx / area / Num::whole(6), sums.sy / area / Num::whole(6));
        Ok(Section {
            area,
            centroid: (x, y),
            ixx: sums.ixx / Num::whole(12) - area * y * y,
            iyy: sums.iyy / Num::whole(12) - area * x * x,
            ixy: sums.ixy / Num::whole(24) - area * x * y,
            corners: points.into_iter().map(|(px, py)| (px - x, py - y)).collect(),
            made_of,
        })
    }

    /// A rectangle, `b` wide and `d` deep in the direction it is pushed.
    ///
    /// # Errors
    /// As [`Section::of`].
    pub fn rectangle(b: &Fig, d: &Fig) -> Result<Section, Refused> {
        let (zero, w, h) = (Q::from_integer(0), b.as_q(), d.as_q());
        let corners = [(zero, zero), (w, zero), (w, h), (zero, h)];
        Section::of(&corners, vec![("width", b.clone()), ("depth", d.clone())])
    }

    /// Its area, in square inches.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn area(&self) -> Result<Fig, Refused> {
        self.worked(self.area, Unit::In2, "the area of the section")
    }

    /// Its centroid, from the origin of its corners.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn centroid(&self) -> Result<(Q, Q), Refused> {
        Ok((self.centroid.0.q()?, self.centroid.1.q()?))
    }

    /// Its second moment of area about the x axis, in inches to the fourth.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn second_moment(&self) -> Result<Fig, Refused> {
        self.worked(self.ixx, Unit::In4, "the second moment of area, by the corners of the section")
    }

    /// Its product of second moments.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn product(&self) -> Result<Q, Refused> {
        self.ixy.q()
    }

    /// Its section modulus for that push: what a bending moment is divided by to give the
    /// greatest stress in it. In cubic inches.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn modulus(&self, push: Push) -> Result<Fig, Refused> {
        match push {
            Push::Held => {
                let far = self.farthest(|(_, y)| y)?;
                self.worked(self.ixx / far, Unit::In3, "second moment of area over the distance to the farthest corner")
            }
            Push::Free => {
                let along = self.farthest(|c| self.slope(c).0)?;
                let out = self.farthest(|c| self.slope(c).1)?;
                let says = "bending about both axes at once: the section is free to move sideways; the worst corner, \
                            pushed along a face or across it, governs";
                self.worked(self.twist() / larger(along, out)?, Unit::In3, says)
            }
            Push::Any => {
                let nothing = (Num::whole(0), Num::whole(0));
                let slopes = self.corners.iter().map(|c| self.slope(*c)).filter(|s| *s != nothing);
                let each = slopes.map(|slope| over_hypotenuse(self.twist(), slope));
                let least = each.collect::<Result<Vec<Q>, Refused>>()?.into_iter().min();
                let says = "bending about both axes at once, pushed the way the worst corner bears least";
                self.worked(least.map(Num::of).ok_or(Refused::NothingLeft)?, Unit::In3, says)
            }
        }
    }

    fn twist(&self) -> Num {
        self.ixx * self.iyy - self.ixy * self.ixy
    }

    /// What a moment of one does to the stress at a corner, times [`Section::twist`]: pushed
    /// along x, and along y. A push between them does a share of each, so the worst push is
    /// along this pair, and does as much as it is long.
    fn slope(&self, (x, y): (Num, Num)) -> (Num, Num) {
        (self.ixx * x - self.ixy * y, self.iyy * y - self.ixy * x)
    }

    /// The greatest size a measure takes at any corner.
    fn farthest(&self, measure: impl Fn((Num, Num)) -> Num) -> Result<Num, Refused> {
        let sizes: Result<Vec<Q>, Refused> = self.corners.iter().map(|c| measure(*c).abs().q()).collect();
        sizes?.into_iter().max().map(Num::of).ok_or(Refused::NothingLeft)
    }

    fn worked(&self, n: Num, unit: Unit, says: &'static str) -> Result<Fig, Refused> {
        Ok(Fig::quantity(n.q()?, unit, Why::Formula(says, self.made_of.clone())))
    }
}

fn larger(a: Num, b: Num) -> Result<Num, Refused> {
    Ok(Num::of(a.q()?.max(b.q()?)))
}

/// Green's sums over a polygon's sides, before their divisors.
struct Sums {
    area: Num,
    sx: Num,
    sy: Num,
    ixx: Num,
    iyy: Num,
    ixy: Num,
}

impl Sums {
    fn round(points: &[(Num, Num)]) -> Sums {
        let none = Num::whole(0);
        let mut sums = Sums { area: none, sx: none, sy: none, ixx: none, iyy: none, ixy: none };
        let two = Num::whole(2);
        for (i, &(x0, y0)) in points.iter().enumerate() {
            let (x1, y1) = points[(i + 1) % points.len()];
            let cross = x0 * y1 - x1 * y0;
            sums.area = sums.area + cross;
            sums.sx = sums.sx + (x0 + x1) * cross;
            sums.sy = sums.sy + (y0 + y1) * cross;
            sums.ixx = sums.ixx + (y0 * y0 + y0 * y1 + y1 * y1) * cross;
            sums.iyy = sums.iyy + (x0 * x0 + x0 * x1 + x1 * x1) * cross;
            sums.ixy = sums.ixy + (x0 * y1 + two * x0 * y0 + two * x1 * y1 + x1 * y0) * cross;
        }
        sums
    }
}
