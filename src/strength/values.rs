//! Design values and factors, made from the data files at build time.

use super::Refused;
use crate::job::{Duration, Grade, Species};
use crate::measure::{Lumber, Q};
use num_rational::Ratio;

/// The size class a row of design values is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// 2 to 4 in. thick, 2 in. and wider.
    Dimension,
    /// Southern pine 2 to 4 in. thick, 2 to 4 in. wide.
    SouthernFour,
    /// Southern pine 2 to 4 in. thick, 5 to 6 in. wide.
    SouthernSix,
    /// 5x5 and larger.
    Timber,
}

/// One row of design values, in psi, at normal load duration.
#[derive(Debug, PartialEq)]
pub struct DesignValue {
    /// The species.
    pub species: Species,
    /// The grade.
    pub grade: Grade,
    /// The size class.
    pub class: Class,
    /// Bending.
    pub fb: i64,
    /// Shear along the grain.
    pub fv: i64,
    /// Bearing across the grain.
    pub fc_perp: i64,
    /// Modulus of elasticity.
    pub e: i64,
    /// The sizes the row covers, in words.
    pub sized: &'static str,
    /// Where it is published, and how far it was checked.
    pub source: &'static str,
}

/// What a factor is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Size of the piece.
    Size,
    /// Wide face up.
    Flat,
    /// Wet in service.
    Wet,
    /// Incised for its preservative.
    Incised,
}

/// One factor, for one range of sizes.
#[derive(Debug, PartialEq)]
pub struct Factor {
    /// What it is for.
    pub kind: Kind,
    /// The classes it covers.
    pub classes: &'static [Class],
    /// Nominal thickness, from and to, in inches.
    pub thick: (u16, u16),
    /// Nominal width, from and to, in inches.
    pub wide: (u16, u16),
    /// On bending.
    pub fb: Q,
    /// On shear.
    pub fv: Q,
    /// On bearing across the grain.
    pub fc_perp: Q,
    /// On the modulus of elasticity.
    pub e: Q,
    /// What it is, in words.
    pub says: &'static str,
    /// Where it is published, and how far it was checked.
    pub source: &'static str,
}

/// One load duration factor.
#[derive(Debug, PartialEq)]
pub struct LoadTime {
    /// How long.
    pub duration: Duration,
    /// The factor on bending and shear; stiffness and bearing take none.
    pub factor: Q,
    /// True where it may be used for members pressure-treated with waterborne preservative.
    pub treated: bool,
    /// What it is, in words.
    pub says: &'static str,
    /// Where it is published.
    pub source: &'static str,
}

/// How a beam is held and loaded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Case {
    /// Held at both ends, the load at the middle.
    MidPoint,
    /// Held at one end, the load at the other.
    EndPoint,
}

/// One beam case: parts of W L^3 / (E I) and of W L.
#[derive(Debug, PartialEq)]
pub struct BeamRow {
    /// The case.
    pub case: Case,
    /// Bending sag.
    pub bend: Q,
    /// Greatest moment.
    pub moment: Q,
    /// The case, in words.
    pub says: &'static str,
    /// Where it is published.
    pub source: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/design_values.rs"));
include!(concat!(env!("OUT_DIR"), "/strength_factors.rs"));

/// The row of design values for a wood in a size.
///
/// # Errors
/// [`Refused::NotLumber`], [`Refused::TooThin`], or [`Refused::NoValues`] where no row covers it.
pub fn design(species: Species, grade: Grade, size: Lumber) -> Result<&'static DesignValue, Refused> {
    let class = class(species, size)?;
    let row = VALUES.iter().find(|v| v.species == species && v.grade == grade && v.class == class);
    row.ok_or(Refused::NoValues(species, grade, size))
}

/// The size class of a piece. Timbers are judged to 12 in. deep, where their size factor is 1.
fn class(species: Species, size: Lumber) -> Result<Class, Refused> {
    size.dressed().ok_or(Refused::NotLumber(size))?;
    let (thick, wide) = (size.thick_quarters, size.wide);
    match (species, thick, wide) {
        (_, ..8, _) => Err(Refused::TooThin(size)),
        (Species::SouthernPine, 8..=16, 2..=4) => Ok(Class::SouthernFour),
        (Species::SouthernPine, 8..=16, 5..=6) => Ok(Class::SouthernSix),
        (Species::SouthernPine, 8..=16, _) => Err(Refused::NoValues(species, Grade::No2, size)),
        (_, 8..=16, 2..=10) => Ok(Class::Dimension),
        (_, 20..=48, 5..=12) => Ok(Class::Timber),
        _ => Err(Refused::NotLumber(size)),
    }
}

/// The factor of a kind that covers a row's piece, if one does.
pub fn factor(kind: Kind, class: Class, size: Lumber) -> Option<&'static Factor> {
    let within = |n: u16, (from, to): (u16, u16)| n >= from && n <= to;
    let covers = |f: &&Factor| {
        let sized = within(size.thick_quarters / 4, f.thick) && within(size.wide, f.wide);
        f.kind == kind && sized && f.classes.contains(&class)
    };
    FACTORS.iter().find(covers)
}

/// The row for a load duration. The table has one for each; a test holds it to that.
pub fn load_time(duration: Duration) -> Option<&'static LoadTime> {
    DURATIONS.iter().find(|d| d.duration == duration)
}

/// The row for a beam case. The table has one for each; a test holds it to that.
pub fn beam(case: Case) -> Option<&'static BeamRow> {
    BEAMS.iter().find(|b| b.case == case)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_duration_and_beam_case_has_a_row() {
        assert!(Duration::ALL.iter().all(|d| load_time(*d).is_some()));
        assert!([Case::MidPoint, Case::EndPoint].iter().all(|c| beam(*c).is_some()));
    }

    #[test]
    fn no_two_rows_cover_one_piece() {
        for (i, v) in VALUES.iter().enumerate() {
            let same = |w: &DesignValue| (w.species, w.grade, w.class) == (v.species, v.grade, v.class);
            assert!(!VALUES[..i].iter().any(same), "{v:?}");
        }
        for (i, f) in FACTORS.iter().enumerate() {
            let meets = |a: (u16, u16), b: (u16, u16)| a.0 <= b.1 && b.0 <= a.1;
            let shared = |g: &Factor| f.classes.iter().any(|c| g.classes.contains(c));
            let same = |g: &Factor| g.kind == f.kind && shared(g) && meets(g.thick, f.thick) && meets(g.wide, f.wide);
            assert!(!FACTORS[..i].iter().any(same), "{f:?}");
        }
    }
}
