//! A figure that only was asked for brings the limit it fails, as a finding: nobody builds what a figure alone let pass.

use super::asked::{Asked, Found};
use super::held::held;
use super::judged::Judged;
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId;
use crate::reply::{Finding, Level};
use crate::rules::check;
use crate::solve::Solved;

/// The findings of what was asked for and what is said beside it, each once: of what follows from the question, and of no row it gives.
pub(super) fn found(told: &Job, asked: &Asked, found: &[Found]) -> Vec<Finding> {
    let laid = asked.overlaid();
    let own = |one: &Found| (one.want, one.solved.clone());
    let beside = |one: &Found| one.beside.iter().map(|(row, solved)| (*row, solved.clone())).collect::<Vec<_>>();
    let all: Vec<(RowId, Solved)> = found.iter().flat_map(|one| [own(one)].into_iter().chain(beside(one))).collect();
    let mut findings: Vec<Finding> = Vec::new();
    let follows =
        |row: RowId, solved: &Solved| asked.given.get(row).is_none() && (!solved.used.is_empty() || told != asked.job);
    for (row, solved) in all.into_iter().filter(|(row, solved)| follows(*row, solved)) {
        for held in held(&laid, row) {
            let finding = Judged { row, solved: solved.clone(), held }.finding(told, &laid);
            findings.extend(finding.filter(|f| !findings.iter().any(|g| g.rule == f.rule)));
        }
    }
    findings.extend(
        stops(told, &laid).into_iter().filter(|stop| findings.iter().all(|f| f.rule != stop.rule)).collect::<Vec<_>>(),
    );
    findings
}

/// The stops that what is given or tried on brings.
fn stops(told: &Job, laid: &Job) -> Vec<Finding> {
    let of = |job: &Job| check(job, &lay_out(job));
    let before = of(told);
    of(laid).into_iter().filter(|f| f.level == Level::Stop && !before.contains(f)).collect()
}
