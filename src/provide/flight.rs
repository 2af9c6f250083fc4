//! The one flight of the job.

use crate::figure::{Fig, Why};
use crate::gate::gap;
use crate::job::{self, Job};
use crate::measure::Length;
use crate::quantity::RowId::{
    self, Angle, Fall, GapMax, Grade, LandingUp, Nosing, Rise, Risers, Slope, StairGapLimit, TotalRise, TotalRun,
    Tread, Treads, TriangleBall,
};
use crate::solve::{Provider, told_length};
use crate::stairs::Told;
use crate::stairs::flight::{Flight, work_out};
use crate::stairs::triangle::{overhang, triangle};
use crate::takeoff::flights;

/// So many risers as the rise takes: by the rise alone, for a told riser that does not go into it is a clash.
const COUNT: &[RowId] = &[TotalRise, Grade, Fall];

const RISE: &[RowId] = &[TotalRise, Risers, Rise, Grade, Fall];

/// What a flight settles.
const FLIGHT: &[RowId] = &[TotalRise, TotalRun, Rise, Risers, Tread, Treads, Slope, Angle, Grade, LandingUp];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: Risers, needs: COUNT, settles: FLIGHT, give: |job| of(job, |f| Some(f.risers)) },
    Provider { gives: Rise, needs: RISE, settles: FLIGHT, give: |job| of(job, |f| Some(f.rise)) },
    Provider { gives: TotalRise, needs: RISE, settles: FLIGHT, give: |job| of(job, |f| Some(f.total_rise)) },
    Provider { gives: Treads, needs: COUNT, settles: FLIGHT, give: |job| of(job, |f| Some(f.treads)) },
    Provider {
        gives: Tread,
        needs: &[Tread, TotalRun, Risers],
        settles: FLIGHT,
        give: |job| of(job, |f| f.going.map(|g| g.tread)),
    },
    Provider {
        gives: TotalRun,
        needs: &[Tread, Risers],
        settles: FLIGHT,
        give: |job| of(job, |f| f.going.map(|g| g.run)),
    },
    Provider {
        gives: Slope,
        needs: &[Tread, Rise, Risers],
        settles: FLIGHT,
        give: |job| of(job, |f| f.slope_length()),
    },
    Provider {
        gives: Angle,
        needs: &[Tread, Rise],
        settles: FLIGHT,
        give: |job| of(job, |f| f.rake().map(|r| r.angle())),
    },
    Provider { gives: TriangleBall, needs: &[Tread, Rise, Nosing], settles: FLIGHT, give: ball },
    Provider { gives: StairGapLimit, needs: &[GapMax], settles: &[], give: |job| Some(gap::stairs(job).most) },
];

/// A figure of the flight; none where there are several, which are asked for one by one.
fn of(job: &Job, which: fn(Flight) -> Option<Fig>) -> Option<Fig> {
    one(job).and_then(|(_, flight)| which(flight))
}

fn one(job: &Job) -> Option<(job::Flight, Flight)> {
    let [told] = flights(job)[..] else { return None };
    let flight = work_out(&Told::of(&told, told_length(job, Grade))).ok()?;
    Some((told, flight))
}

/// The ball that goes through under a rail on the nosing line.
fn ball(job: &Job) -> Option<Fig> {
    let (told, flight) = one(job)?;
    let rake = flight.rake()?;
    let (overhang, _) = overhang(&told, rake.tread().as_length()?, &job.settings);
    let on_the_line = Fig::length(Length::ZERO, Why::Formula("the rail's underside on the nosing line", Vec::new()));
    triangle(&rake, &overhang, &on_the_line, &job.settings).map(|t| t.ball)
}
