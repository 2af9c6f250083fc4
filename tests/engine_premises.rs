//! What a line gives and what engines work out of the whole job never mix unsaid: every pair of a row given and a row wanted.

#[path = "common/talk.rs"]
mod talk;

use railhand::figure::Value;
use railhand::job::Job;
use railhand::measure::Length;
use railhand::provide::{ask, engines};
use railhand::quantity::{Args, Kind, Owner, ROWS, RowId, relations};
use railhand::solve::{Given, Solved};
use talk::told_then;

/// Jobs that tell enough for every engine: a run, posts, the deck's framing, a flight; a gate.
const JOBS: [&[&str]; 2] = [
    &[
        "36 high",
        "posts 6x6",
        "balusters are 2x2",
        "decking is 1 inch thick",
        "the rim is a 2x10",
        "16 ft out to out from end post to end post",
        "deck is 4 ft above the ground",
        "7 risers, rise is 7, 11 inch treads",
    ],
    &["40 high", "creek side 12 ft corner to house, 36 inch gate in the middle"],
];

/// A value of the row that is unlikely to be the job's own: a third of the way up what is usual.
fn premise(row: RowId) -> Option<Value> {
    let (lo, hi) = row.row().usual;
    let third = lo + (hi - lo) / 3;
    match row.row().kind {
        Kind::Length => Some(Value::Length(Length::sixteenths(third.min(lo + 320) + 1))),
        Kind::Count => u64::try_from(third / 16).ok().map(|n| Value::Count(n.min(11) + 1)),
        _ => None,
    }
}

/// True where a relation gives the row from the premise and what else is known beside it without that row.
fn follows(row: RowId, premise: RowId, given: &Given, job: &Job) -> bool {
    let known = |other: RowId| match given.get(other) {
        Some(fig) => Some(fig.clone()),
        None => ask(other, given, job).ok().filter(|s| !s.engines.contains(&row)).map(|s| s.fig),
    };
    let ways = relations().flat_map(|r| r.ways()).filter(|w| w.gives == row);
    ways.filter(|w| w.from.iter().any(|i| i.row() == premise)).any(|w| {
        let args: Option<Vec<_>> = w.from.iter().map(|i| known(i.row())).collect();
        args.is_some_and(|args| w.relation.solve(row, &Args(args)).is_some())
    })
}

/// What is wrong with an answer, if anything is.
fn wrong(want: RowId, premise: RowId, own: &Solved, found: &Solved, given: &Given, job: &Job) -> Option<String> {
    if found.used.contains(&premise) {
        return None;
    }
    let name = |row: RowId| row.row().name;
    if own.fig.value() != found.fig.value() {
        return Some(format!("{} moves with {} and does not say so", name(want), name(premise)));
    }
    let passed =
        found.engines.iter().find(|row| engines().stands(**row, premise) || follows(**row, premise, given, job));
    passed.map(|row| format!("{} by the job's {}, beside {}", name(want), name(*row), name(premise)))
}

/// Every pair on one job, of the rows asked about; `least` of them at the least come from engines.
fn faults(told: &[&str], asked: fn(Owner) -> bool, least: usize) -> Vec<String> {
    let job = told_then(told).job();
    let wants: Vec<(RowId, Solved)> = ROWS
        .iter()
        .filter(|r| asked(r.owner))
        .filter_map(|r| Some((r.id, ask(r.id, &Given::default(), &job).ok()?)))
        .collect();
    let of_engines = wants.iter().filter(|(_, own)| !own.engines.is_empty()).count();
    assert!(of_engines >= least, "{told:?} tells too little: {of_engines}");
    let mut faults = Vec::new();
    for row in ROWS {
        let Some(value) = premise(row.id) else { continue };
        let given = Given::of([(row.id, value)]);
        for (want, own) in wants.iter().filter(|(want, _)| *want != row.id) {
            let Ok(found) = ask(*want, &given, &job) else { continue };
            faults.extend(wrong(*want, row.id, own, &found, &given, &job));
        }
    }
    faults
}

#[test]
fn a_premise_that_an_engine_does_not_see_is_never_passed_over() {
    let of_gate = |owner| matches!(owner, Owner::Gate | Owner::Bay);
    for (told, asked, least) in [(JOBS[0], (|_| true) as fn(Owner) -> bool, 45), (JOBS[1], of_gate, 5)] {
        let faults = faults(told, asked, least);
        assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
    }
}

/// A mount, a size, a place has no figure, be there a word that is taken for it or none.
#[test]
fn a_row_of_words_has_no_figure() {
    for told in [&[][..], JOBS[0], JOBS[1]] {
        let job = if told.is_empty() { Job::default() } else { told_then(told).job() };
        for row in ROWS.iter().filter(|r| r.is_words()) {
            assert!(ask(row.id, &Given::default(), &job).is_err(), "{} of {told:?}", row.name);
        }
    }
}

/// What an engine makes of a row is no premise for that row: the cap adds nothing to the 36 in. that its own height was taken from.
#[test]
fn a_figure_is_never_worked_out_of_itself() {
    let job = told_then(JOBS[0]).job();
    let given = Given::of([(RowId::Cap, Value::Length(Length::inches(1)))]);
    let height = ask(RowId::HeightTop, &given, &job).expect("it was told");
    assert_eq!((height.fig.as_length(), height.used), (Some(Length::inches(36)), Vec::new()));
    // Half of the bays that hang on it do not make a run.
    assert!(ask(RowId::RunOverall, &Given::default(), &job).is_err());
}
