//! The wood a part is taken as: what was told, the cautious default for the rest, and the
//! design values that follow.

use super::Refused;
use super::number::Num;
use super::values::{Class, DesignValue, Factor, Kind, LoadTime, design, factor, load_time};
use crate::figure::{Fig, Unit, Why};
use crate::job::{Duration, Grade, Lie, Species, Timber};
use crate::measure::{Lumber, Q};

/// The least product of bending value and size factor, in psi, that takes the wet cut.
/// NDS Supplement Tables 4A and 4B, notes: none at 1,150 psi or less.
const WET_SWITCH: i64 = 1150;

/// What the wood is taken as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wood {
    /// The species.
    pub species: Species,
    /// The grade.
    pub grade: Grade,
    /// Wet in service.
    pub wet: bool,
    /// Incised for its preservative.
    pub incised: bool,
    /// How long the load is taken to stand.
    pub duration: Duration,
}

impl Wood {
    /// What was told, and for the rest the cautious choice: hem-fir No.2, wet, ten years'
    /// load, and incised where the species takes preservative only so.
    pub fn taken(told: &Timber) -> Wood {
        let species = told.species.unwrap_or(Species::HemFir);
        Wood {
            species,
            grade: told.grade.unwrap_or(Grade::No2),
            wet: told.wet.unwrap_or(true),
            incised: told.incised.unwrap_or(is_incised(species)),
            duration: told.duration.unwrap_or(Duration::TenYears),
        }
    }

    /// The same wood under a load of another duration.
    pub fn under(self, duration: Duration) -> Wood {
        Wood { duration, ..self }
    }

    /// The same job in another species, incised or not as that species is.
    pub fn in_species(self, species: Species) -> Wood {
        Wood { species, incised: is_incised(species), ..self }
    }

    /// The bending stress allowed in a piece so laid: Fb' = Fb CD CM CF Cfu Ci, in psi.
    ///
    /// # Errors
    /// [`Refused`] where the tables do not cover it.
    pub fn bending(&self, size: Lumber, lie: Lie) -> Result<Fig, Refused> {
        let row = design(self.species, self.grade, size)?;
        let size_factor = factor(Kind::Size, row.class, size);
        let flat = factor(Kind::Flat, row.class, size).filter(|_| lie == Lie::Flat && !size.is_square());
        let wet = factor(Kind::Wet, row.class, size).filter(|_| self.wet && takes_wet_cut(row, size_factor));
        let incised = self.incising(row.class, size);
        let factors = [size_factor, flat, wet, incised].into_iter().flatten().map(|f| (f, f.fb));
        let says = "allowed bending: the tabulated value times its factors";
        self.adjusted(("Fb", row.fb, row), factors, true, says)
    }

    /// The shear stress allowed along the grain, Fv', in psi.
    ///
    /// # Errors
    /// As [`Wood::bending`].
    pub fn shear(&self, size: Lumber) -> Result<Fig, Refused> {
        let row = design(self.species, self.grade, size)?;
        let factors = self.plain_factors(row.class, size).map(|f| (f, f.fv));
        self.adjusted(("Fv", row.fv, row), factors, true, "allowed shear: the tabulated value times its factors")
    }

    /// The bearing stress allowed across the grain, Fc_perp', in psi. No duration factor.
    ///
    /// # Errors
    /// As [`Wood::bending`].
    pub fn bearing(&self, size: Lumber) -> Result<Fig, Refused> {
        let row = design(self.species, self.grade, size)?;
        let factors = self.plain_factors(row.class, size).map(|f| (f, f.fc_perp));
        let says = "allowed bearing across the grain: the tabulated value times its factors";
        self.adjusted(("Fc_perp", row.fc_perp, row), factors, false, says)
    }

    /// The modulus of elasticity, E', in psi. No duration factor.
    ///
    /// # Errors
    /// As [`Wood::bending`].
    pub fn stiffness(&self, size: Lumber) -> Result<Fig, Refused> {
        let row = design(self.species, self.grade, size)?;
        let factors = self.plain_factors(row.class, size).map(|f| (f, f.e));
        let says = "stiffness: the tabulated modulus times its factors";
        self.adjusted(("E", row.e, row), factors, false, says)
    }

    fn plain_factors(&self, class: Class, size: Lumber) -> impl Iterator<Item = &'static Factor> {
        let wet = factor(Kind::Wet, class, size).filter(|_| self.wet);
        let southern_timber = self.species == Species::SouthernPine && class == Class::Timber;
        let wet = wet.filter(|_| !southern_timber);
        wet.into_iter().chain(self.incising(class, size))
    }

    fn incising(&self, class: Class, size: Lumber) -> Option<&'static Factor> {
        factor(Kind::Incised, class, size).filter(|_| self.incised)
    }

    fn adjusted(
        &self,
        (name, value, row): (&'static str, i64, &'static DesignValue),
        factors: impl Iterator<Item = (&'static Factor, Q)>,
        timed: bool,
        says: &'static str,
    ) -> Result<Fig, Refused> {
        let why = Why::Table(row.sized, row.source);
        let mut from = vec![(name, Fig::quantity(Q::from_integer(i128::from(value)), Unit::Psi, why))];
        let one = Q::from_integer(1);
        from.extend(factors.filter(|(_, by)| *by != one).map(|(f, by)| (f.says, times(by, "a factor", f.source))));
        if timed {
            let time = self.time()?;
            from.push((time.says, times(time.factor, "a factor", time.source)));
        }
        let product = from.iter().fold(Num::whole(1), |n, (_, f)| n * Num::fig(f));
        product.quantity(Unit::Psi, says, from)
    }

    /// The row of its load duration.
    fn time(&self) -> Result<&'static LoadTime, Refused> {
        let row = load_time(self.duration).ok_or(Refused::NotTreated)?;
        if row.treated || !(self.incised || is_treated(self.species)) { Ok(row) } else { Err(Refused::NotTreated) }
    }
}

fn times(by: Q, what: &'static str, source: &'static str) -> Fig {
    Fig::quantity(by, Unit::Times, Why::Table(what, source))
}

/// True where a wet piece's bending value is cut: tested before duration and incising.
fn takes_wet_cut(row: &DesignValue, size: Option<&Factor>) -> bool {
    let by = size.map_or(Q::from_integer(1), |f| f.fb);
    by * Q::from_integer(i128::from(row.fb)) > Q::from_integer(i128::from(WET_SWITCH))
}

/// True for the species the deck guide takes as incised: DCA 6, Table 4 notes.
fn is_incised(species: Species) -> bool {
    matches!(species, Species::DouglasFir | Species::HemFir | Species::SprucePineFir)
}

/// True for the species that stand outdoors only pressure-treated (common practice, no source).
fn is_treated(species: Species) -> bool {
    is_incised(species) || species == Species::SouthernPine
}
