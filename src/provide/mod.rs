//! The engines as providers of rows: what each gives of a whole job, and the rows it follows from.
//!
//! An answer that wants a row of the job asks [`ask`] and gets it from what the line gives, what the job tells, a relation or an engine,
//! whichever has it, with its reason. A provider names every row it follows from: a test changes each and sees the figure change.

mod flight;
mod foot;
mod gate;
mod infill;
mod layout;
mod strength;
mod takeoff;

pub use layout::flanks;
pub use strength::roles_judged;

use crate::job::Job;
use crate::quantity::RowId;
use crate::solve::{Engines, Given, Lacks, Provider, Solved, solve};

/// Every engine.
pub fn engines() -> &'static Engines {
    use std::sync::LazyLock;
    static ALL: LazyLock<Engines> = LazyLock::new(|| {
        let providers: Vec<Provider> = [
            layout::PROVIDERS,
            infill::PROVIDERS,
            foot::PROVIDERS,
            flight::PROVIDERS,
            gate::PROVIDERS,
            strength::PROVIDERS,
            takeoff::PROVIDERS,
        ]
        .concat();
        let relations = [infill::RELATIONS, takeoff::RELATIONS].concat();
        Engines { providers: providers.leak(), relations: relations.leak() }
    });
    &ALL
}

/// A wanted row of a job, from what a line gives and all there is.
///
/// # Errors
/// The rows that would do, where it has no value.
pub fn ask(want: RowId, given: &Given, job: &Job) -> Result<Solved, Lacks> {
    solve(want, given, job, engines())
}
