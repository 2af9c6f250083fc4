//! The one flight of the job.

use crate::figure::Fig;
use crate::job::Job;
use crate::quantity::RowId::{self, Angle, Fall, Grade, Rise, Risers, Slope, TotalRise, TotalRun, Tread, Treads};
use crate::solve::Provider;
use crate::stairs::Told;
use crate::stairs::flight::{Flight, work_out};
use crate::takeoff::flights;

const RISE: &[RowId] = &[TotalRise, Risers, Rise, Grade, Fall];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: Risers, needs: RISE, give: |job| of(job, |f| Some(f.risers)) },
    Provider { gives: Rise, needs: RISE, give: |job| of(job, |f| Some(f.rise)) },
    Provider { gives: TotalRise, needs: RISE, give: |job| of(job, |f| Some(f.total_rise)) },
    Provider { gives: Treads, needs: RISE, give: |job| of(job, |f| Some(f.treads)) },
    Provider { gives: Tread, needs: &[Tread, TotalRun, Risers], give: |job| of(job, |f| f.going.map(|g| g.tread)) },
    Provider { gives: TotalRun, needs: &[Tread, Risers], give: |job| of(job, |f| f.going.map(|g| g.run)) },
    Provider { gives: Slope, needs: &[Tread, Rise, Risers], give: |job| of(job, |f| f.slope_length()) },
    Provider { gives: Angle, needs: &[Tread, Rise], give: |job| of(job, |f| f.rake().map(|r| r.angle())) },
];

/// A figure of the flight; none where there are several, which are asked for one by one.
fn of(job: &Job, which: fn(Flight) -> Option<Fig>) -> Option<Fig> {
    let [told] = flights(job)[..] else { return None };
    work_out(&Told::of(&told, crate::solve::Source::told(job, Grade).and_then(|f| f.as_length()))).ok().and_then(which)
}
