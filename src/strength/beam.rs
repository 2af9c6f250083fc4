//! One beam under one load: moment, stress, sag.

use super::Refused;
use super::number::Num;
use super::values::{Case, beam};
use crate::figure::{Fig, Unit, Value, Why};
use crate::limits;
use crate::measure::Q;

/// The load a guard's top must take: 200 lb at any point.
pub fn top_load() -> Fig {
    let pounds = Q::from_integer(i128::from(limits::TOP_LOAD.value));
    Fig::quantity(pounds, Unit::Pounds, Why::Limit(&limits::TOP_LOAD))
}

fn part(q: Q, case: Case) -> Result<Fig, Refused> {
    let row = beam(case).ok_or(Refused::PastNumbers)?;
    Ok(Fig::new(Value::Number(q), Why::Table(row.says, row.source)))
}

/// The greatest moment in a beam, in inch-pounds: a part of load times span.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn moment(case: Case, load: &Fig, span: &Fig) -> Result<Fig, Refused> {
    let row = beam(case).ok_or(Refused::PastNumbers)?;
    let share = part(row.moment, case)?;
    let m = Num::fig(&share) * Num::fig(load) * Num::fig(span);
    let from = vec![("part", share), ("load", load.clone()), ("span", span.clone())];
    m.quantity(Unit::InchPounds, "the greatest moment: a part of load times span", from)
}

/// The bending stress under a moment, in psi: nominal, with no allowance for a notch's
/// corner, knots or bolt holes.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn stress(moment: &Fig, modulus: &Fig) -> Result<Fig, Refused> {
    let f = Num::fig(moment) / Num::fig(modulus);
    let from = vec![("moment", moment.clone()), ("section modulus", modulus.clone())];
    f.quantity(Unit::Psi, "bending stress: moment over section modulus", from)
}

/// The sag in bending, in inches: a part of W L^3 / (E I).
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn bending_sag(case: Case, load: &Fig, span: &Fig, e: &Fig, i: &Fig) -> Result<Fig, Refused> {
    let row = beam(case).ok_or(Refused::PastNumbers)?;
    let share = part(row.bend, case)?;
    let sag = Num::fig(&share) * Num::fig(load) * Num::fig(span).pow(3) / Num::fig(e) / Num::fig(i);
    let from = vec![
        ("part", share),
        ("load", load.clone()),
        ("span", span.clone()),
        ("stiffness", e.clone()),
        ("second moment of area", i.clone()),
    ];
    sag.length("sag in bending: a part of load times span cubed over stiffness times second moment of area", from)
}

/// The greatest shear stress in a rectangle, in psi: half as much again as the mean.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn shear_stress(shear: &Fig, area: &Fig) -> Result<Fig, Refused> {
    let f = Num::whole(3) / Num::whole(2) * Num::fig(shear) / Num::fig(area);
    let from = vec![("shear", shear.clone()), ("area", area.clone())];
    f.quantity(Unit::Psi, "shear stress in a rectangle: one and a half times shear over area", from)
}

/// How many times what is allowed is asked for: over 1 is over.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn ratio(demand: &Fig, capacity: &Fig) -> Result<Fig, Refused> {
    let times = Num::fig(demand) / Num::fig(capacity);
    let from = vec![("asked", demand.clone()), ("allowed", capacity.clone())];
    times.quantity(Unit::Times, "what is asked over what is allowed", from)
}
