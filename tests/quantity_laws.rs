//! Laws of the table of quantities: what is told of a row is kept, said back, written as JSON and answered; a figure follows every row it
//! is said to follow from; a relation and an engine that give the same row agree. They hold within the program.

use proptest::prelude::*;
use railhand::figure::Value;
use railhand::grammar::{Act, canon};
use railhand::job::{
    BalustersAt, End, Fact, Flight, FlightFact, Gate, GateAt, Job, Lie, Member, Newels, OpenSides, Order, RunId,
    RunPatch, Setting, StairAt, StairMeasure, StairOpening, StickOf, Told,
};
use railhand::measure::{Length, Lumber, decimal};
use railhand::provide::{ask, engines};
use railhand::quantity::{Kind, ROWS, Row, RowId};
use railhand::reply::job_json;
use railhand::solve::{Engines, Given, solve};

/// Lengths spread over what is usual of a row, on the sixteenth.
fn samples(row: &Row) -> Vec<Length> {
    let (lo, hi) = (row.usual.0.max(2), row.usual.1.min(row.usual.0.max(2) + 1200));
    (0..=4).map(|i| Length::sixteenths(lo + (hi - lo) * i / 4)).collect()
}

/// Rows told by themselves with a length, and the fact.
fn told_rows() -> impl Iterator<Item = (&'static Row, Length, Fact)> {
    let lengths = ROWS.iter().filter(|r| r.kind == Kind::Length);
    lengths.filter_map(|r| {
        samples(r).into_iter().map(|l| Fact::of(r.id, Value::Length(l)).map(|f| (r, l, f))).next_back()?
    })
}

#[test]
fn a_told_row_is_said_back_in_its_plain_phrase_and_read_again() {
    let mut seen = 0;
    for (row, _, fact) in told_rows() {
        let act = Act::Tell(vec![fact]);
        let phrase = canon::write(&act);
        assert_eq!(canon::read(&phrase), Some(act), "{phrase}");
        let Some((before, after)) = row.plain.split_once("{}") else { continue };
        assert!(
            phrase.starts_with(before) && phrase.ends_with(after),
            "{} is written {phrase}, not {}",
            row.name,
            row.plain
        );
        seen += 1;
    }
    assert!(seen > 40, "{seen}");
}

/// Looks for a name with this length anywhere in the job's JSON.
fn holds(json: &serde_json::Value, name: &str, inches: &str) -> bool {
    match json {
        serde_json::Value::Object(map) => map.iter().any(|(k, v)| {
            let own = k == name && (v["in"] == inches || v.to_string().contains(&format!("\"in\":\"{inches}\"")));
            own || holds(v, name, inches)
        }),
        serde_json::Value::Array(list) => list.iter().any(|v| holds(v, name, inches)),
        _ => false,
    }
}

#[test]
fn a_told_row_stands_in_the_json_under_its_name() {
    let mut seen = 0;
    for (row, l, fact) in told_rows().filter(|(r, ..)| !r.json.is_empty()) {
        let job = Job::default().with(&fact).expect("the row takes it");
        let inches = decimal(l.q()).0;
        assert!(
            holds(&job_json(&job), row.json, &inches),
            "{}: no {} of {inches} in {}",
            row.name,
            row.json,
            job_json(&job)
        );
        seen += 1;
    }
    assert!(seen > 40, "{seen}");
}

#[test]
fn a_told_row_asked_for_is_what_was_told() {
    for (row, l, fact) in told_rows() {
        let job = Job::default().with(&fact).expect("the row takes it");
        let solved = ask(row.id, &Given::default(), &job).unwrap_or_else(|lacks| panic!("{}: {lacks:?}", row.name));
        assert_eq!(solved.fig.as_length(), Some(l), "{}", row.name);
    }
}

/// Every row has an answer or says what it lacks, on an empty job and on a full one, given nothing.
#[test]
fn every_row_is_answered_or_names_what_it_lacks() {
    for job in [Job::default(), full()] {
        for row in ROWS {
            if let Err(lacks) = ask(row.id, &Given::default(), &job) {
                let reachable = railhand::quantity::relations().flat_map(|r| r.ways()).any(|w| w.gives == row.id);
                assert!(!reachable || !lacks.0.is_empty(), "{} lacks nothing and has no value", row.name);
            }
        }
    }
}

fn told(facts: &[(RowId, i64)]) -> Vec<Fact> {
    facts
        .iter()
        .map(|(row, n)| Fact::of(*row, Value::Length(Length::sixteenths(*n))).expect("a row told by itself"))
        .collect()
}

/// A job with something told of everything the engines work on: a front of 16 ft with a gate in its middle, nothing of the flight's total.
fn full() -> Job {
    use RowId::{CentreMax, Decking, GapUnder, Grade, HeightTop, Rim, RimTall};
    let patch = RunPatch {
        length: Some(Told::plain(Length::inches(192))),
        from: Some(End::Corner),
        to: Some(End::EndPost),
        gate: Some(Some(Gate::new(GateAt::Middle, Some(Length::inches(36))))),
        ..RunPatch::default()
    };
    let facts = told(&[
        (CentreMax, 1152),
        (HeightTop, 36 * 16),
        (GapUnder, 48),
        (Decking, 16),
        (RimTall, 148),
        (Rim, 24),
        (Grade, 52 * 16),
        (RowId::Overhang, 16),
        (RowId::Skirt, 12),
    ]);
    let inside = Fact::Set(railhand::job::Setting::Mount(railhand::job::Mount::OverEdge));
    Job::default().with_all(facts.iter().chain([&inside, &Fact::Run(RunId(1), patch)])).expect("a job")
}

/// What a stick of each size and length costs, a dollar a foot, and the rails that are bought.
fn priced() -> Vec<Fact> {
    let sizes = [Lumber::by(4, 4), Lumber::by(2, 4), Lumber::by(2, 2)];
    let sticks = sizes.into_iter().flat_map(|size| [8, 10, 12, 14, 16].map(|feet| StickOf { size, feet }));
    let prices = sticks.map(|stick| Fact::Order(Order::Price(stick, stick.feet.into())));
    let rails = [Member::Top, Member::Bottom].map(|m| Fact::Order(Order::Lay(m, Lie::Edge)));
    let none = Fact::Order(Order::Rail(Member::Cap, None));
    let between = Fact::Order(Order::Balusters(BalustersAt::Between));
    prices.chain(rails).chain([none, between]).collect()
}

/// Jobs in which a row may make its difference: what hides it in one shows in another.
fn stages() -> Vec<Job> {
    let with = |facts: Vec<Fact>| full().with_all(&facts).expect("a job");
    let inside = Fact::Set(railhand::job::Setting::Mount(railhand::job::Mount::Inside));
    let flight = |f| Fact::Flight(f);
    let (risers, rise) = (flight(FlightFact::Risers(7)), flight(FlightFact::Rise(Length::inches(7))));
    let (tread, total) =
        (flight(FlightFact::Tread(Length::inches(10))), flight(FlightFact::TotalRise(Length::inches(50))));
    let run = flight(FlightFact::TotalRun(Length::inches(70)));
    let faces = Fact::Order(Order::Balusters(BalustersAt::Faces));
    // At a pool, over a flat bottom rail 1 up, the rails' tops are 48 1/2 - 2 1/2 = 46 apart: 45 is far enough for the plain gap.
    let pool = told(&[(RowId::HeightTop, 776), (RowId::GapUnder, 16)]);
    let flat = [Member::Top, Member::Bottom].map(|m| Fact::Order(Order::Lay(m, Lie::Flat)));
    let bottom = Fact::Order(Order::Rail(Member::Bottom, Some(Lumber::by(2, 4))));
    let pool = [vec![Fact::Set(Setting::Pool(true)), bottom], pool, flat.to_vec()].concat();
    let open = flight(FlightFact::Open(OpenSides::Both));
    // A gate at the head of stairs with treads 48 wide and a newel standing on each end of them: 48 less two posts between the newels.
    let newels = Flight { newels: Some(Newels::OnTreads), ..Flight::default() };
    let way = StairOpening::new(Length::inches(48), StairAt::Middle);
    let way = StairOpening { measure: Some(StairMeasure::Treads), flight: newels, ..way };
    let head =
        RunPatch { gate: Some(Some(Gate::new(GateAt::Stairs, None))), stairs: Some(way.into()), ..RunPatch::default() };
    // Nothing but posts parts the run.
    let plain = Fact::Run(RunId(1), RunPatch { gate: Some(None), ..RunPatch::default() });
    vec![
        // Three bays of 59 1/3 between 4x4s are past 58 clear, of 56 2/3 between 6x6s they are not.
        with([vec![plain.clone()], told(&[(RowId::ClearMax, 928)])].concat()),
        with(vec![plain]),
        with(pool),
        with(priced()),
        with(vec![Fact::Run(RunId(1), head)]),
        with(vec![open.clone(), tread.clone()]),
        with(vec![open, total.clone(), tread.clone()]),
        full(),
        with(vec![inside]),
        with(vec![faces, Fact::Order(Order::Rail(Member::Cap, None))]),
        with(vec![tread.clone()]),
        with(vec![risers.clone(), tread.clone()]),
        with(vec![rise, tread.clone()]),
        with(vec![total.clone(), tread.clone()]),
        with(vec![risers, total.clone(), run.clone()]),
        with(vec![total, run]),
    ]
}

/// Changing a row changes every figure an engine says follows from it, in one of the stages at least.
#[test]
fn every_figure_follows_the_rows_it_is_said_to_follow_from() {
    let (stages, mut still) = (stages(), Vec::new());
    for provider in engines().providers {
        for need in provider.needs {
            let facts: Vec<Fact> = match need.row().kind {
                Kind::Count => (3..9).filter_map(|n| Fact::of(*need, Value::Count(n))).collect(),
                _ => samples(need.row()).into_iter().filter_map(|l| Fact::of(*need, Value::Length(l))).collect(),
            };
            // What is told with the run or the gate it is of has no fact of its own here.
            if facts.is_empty() {
                continue;
            }
            let moves = stages.iter().any(|job| {
                let figures: Vec<Value> =
                    facts.iter().filter_map(|f| (provider.give)(&job.with(f).ok()?)).map(|fig| fig.value()).collect();
                figures.windows(2).any(|w| w[0] != w[1])
            });
            if !moves {
                still.push(format!("{} does not follow {}", provider.gives.row().name, need.row().name));
            }
        }
    }
    assert!(still.is_empty(), "{}", still.join("\n"));
}

proptest! {
    /// A relation and an engine that give the same row of a job agree.
    #[test]
    fn relations_and_engines_agree(height in 480_i64..784, decking in 12_i64..28, rim in 140_i64..190, above in 0_i64..40,
        rise in 640_i64..1400, risers in 4_u64..9, tread in 160_i64..190) {
        use RowId::{Above, Decking, HeightTop, RimTall, TotalRise, Tread};
        let mut facts = told(&[(HeightTop, height), (Decking, decking), (RimTall, rim), (TotalRise, rise), (Tread, tread)]);
        if above > 0 {
            facts.extend(told(&[(Above, above)]));
        }
        facts.extend(Fact::of(RowId::Risers, Value::Count(risers)));
        let job = Job::default().with_all(&facts).expect("a job");
        let mut seen = 0;
        for provider in engines().providers.iter().filter(|p| ![RowId::Leg, RowId::Line].contains(&p.gives)) {
            let Some(worked) = (provider.give)(&job) else { continue };
            let Ok(related) = solve(provider.gives, &Given::default(), &job, &Engines::NONE) else { continue };
            // A root is carried to nine places, and rounded on each way to it.
            let near = (worked.as_q() - related.fig.as_q()) * 1_000_000;
            prop_assert!(near >= (-1).into() && near <= 1.into(), "{}: {worked:?} {related:?}", provider.gives.row().name);
            if worked.as_length().is_none_or(|l| l.is_exact()) {
                prop_assert_eq!(worked.value(), related.fig.value(), "{}", provider.gives.row().name);
            }
            seen += 1;
        }
        prop_assert!(seen >= 8, "only {} rows given by both", seen);
    }
}

/// At a pool whose rails are not told the tight gap holds, whatever wider one is given, and a gap of just that passes: 3 balusters of
/// 1 1/2 and 4 gaps of 1 3/4 fill 11 1/2.
#[test]
fn a_pools_own_gap_holds_and_passes() {
    let job = Job::default().with(&Fact::Set(Setting::Pool(true))).expect("a pool");
    let wider = Given::of([(RowId::GapMax, Value::Length(Length::inches(3)))]);
    let held = ask(RowId::GapLimit, &wider, &job).expect("a limit");
    assert_eq!(held.fig.as_length(), Some(Length::sixteenths(28)));
    let opening = Given::of([
        (RowId::BayClear, Value::Length(Length::sixteenths(184))),
        (RowId::BalusterWidth, Value::Length(Length::sixteenths(24))),
    ]);
    assert_eq!(ask(RowId::BalusterCount, &opening, &job).expect("a count").fig.value(), Value::Count(3));
}

/// A double gate's leaf is half of what the gaps leave: 36 less two hinge gaps of 1/2 and 3/4 between the leaves, over 2: 17 1/8.
#[test]
fn a_double_gates_leaf_is_one_of_two() {
    let gate = Gate::new(GateAt::Middle, Some(Length::inches(36)));
    let patch = |leaves| {
        let hung = railhand::job::Hung {
            leaves: Some(leaves),
            hinge_gap: Some(Length::sixteenths(8)),
            latch_gap: Some(Length::sixteenths(12)),
            ..gate.hung
        };
        Fact::Run(RunId(1), RunPatch { gate: Some(Some(Gate { hung, ..gate })), ..RunPatch::default() })
    };
    let leaf = |n| {
        ask(RowId::Leaf, &Given::default(), &full().with(&patch(n)).expect("a gate")).expect("a leaf").fig.as_length()
    };
    assert_eq!(leaf(2), Some(Length::sixteenths(274)));
    // One leaf: 36 less 1/2 and 3/4.
    assert_eq!(leaf(1), Some(Length::sixteenths(556)));
}

/// A bay by the relations is the bay that is laid out.
#[test]
fn a_bay_by_relations_is_the_bay_laid_out() {
    let patch = RunPatch {
        length: Some(Told::plain(Length::inches(192))),
        from: Some(End::EndPost),
        to: Some(End::EndPost),
        basis: Some(railhand::job::Basis::Overall),
        ..RunPatch::default()
    };
    let job = Job::default().with(&Fact::Run(RunId(1), patch)).expect("a run");
    // 192 less a post is 188 1/2 center to center; three bays of 62 5/6; 59 1/3 clear.
    let laid = ask(RowId::BayClear, &Given::default(), &job).expect("a bay").fig;
    let given =
        Given::of([(RowId::RunOverall, Value::Length(Length::inches(192))), (RowId::BayCount, Value::Count(3))]);
    let by_relation = solve(RowId::BayClear, &given, &Job::default(), &Engines::NONE).expect("a bay").fig;
    assert_eq!(laid.value(), by_relation.value());
    assert_eq!(laid.as_length(), Length::new(178, 3));
}

/// Every row asked for in its plain phrase is answered with its figure, or asks for what it lacks, by name.
#[test]
fn every_row_asked_in_talk_is_answered_or_asks() {
    use railhand::grammar::Query;
    use railhand::grammar::ask::RowAsk;
    use railhand::reply::Status;
    use railhand::session::{Session, step};
    for row in ROWS {
        let phrase = canon::write(&Act::Query(Query::Row(RowAsk::figure(row.id, Vec::new()))));
        let reply = step(&Session::new(), &phrase).1;
        match reply.status {
            Status::Answered => assert!(reply.values.result.is_some(), "{phrase}"),
            Status::Asks => assert!(!reply.lines.is_empty(), "{phrase}"),
            status => panic!("{phrase}: {status:?}"),
        }
    }
}

/// 58 in. clear, 9 balusters of 1 1/2: (58 - 13 1/2) / 10 = 4 9/20. What is given is not kept, and what has no part is named.
#[test]
fn premises_are_used_for_the_answer_and_never_kept() {
    use railhand::session::{Session, step};
    let session = Session::new();
    let (delta, reply) = step(&session, "figure: gap; with bay 4'-10\"; with balusters 9; with kerf 1/8\"?");
    assert_eq!(reply.values.result.as_ref().and_then(|f| f.as_length()), Length::new(89, 20));
    let mut after = session.clone();
    after.apply(delta);
    assert_eq!(after.job(), session.job());
    let text = railhand::reply::reply_json("", &reply, session.job())["text"].to_string();
    assert!(text.contains("Not used for it: kerf"), "{text}");
    assert!(text.contains("Not told, so taken as usual: baluster"), "{text}");
}
