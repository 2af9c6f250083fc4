//! Rows solved, each figure worked by hand.

use super::{Engines, Given, known, solve};
use crate::figure::Value;
use crate::job::{Fact, FlightFact, Job, PostRole, PostSize, Setting};
use crate::measure::{Length, Lumber};
use crate::quantity::RowId::{self, *};

fn inches(sixteenths: i64) -> Value {
    Value::Length(Length::sixteenths(sixteenths))
}

/// What is wanted, what is given, what comes of it.
type Solution<'a> = (RowId, &'a [(RowId, Value)], Value);

fn told(facts: &[Fact]) -> Job {
    facts.iter().fold(Job::default(), |job, fact| job.with(fact).expect("the fact holds"))
}

fn of(row: RowId, value: Value) -> Fact {
    Fact::of(row, value).expect("the row is told by itself")
}

/// What is wanted, what is given in whole sixteenths or counts, and what comes of it, in sixteenths or whole.
#[test]
fn a_row_follows_from_what_is_given() {
    let n = Value::Count;
    let rows: &[Solution] = &[
        // (70 - 13 x 1 1/2) / 14 = 50 1/2 / 14 = 3 17/28
        (
            Gap,
            &[(BayClear, inches(70 * 16)), (BalusterCount, n(13)), (BalusterWidth, inches(24))],
            Value::Length(Length::new(101, 28).expect("exact")),
        ),
        // the same opening from its balusters and gaps: 13 x 1 1/2 + 14 x 3 = 61 1/2
        (BayClear, &[(BalusterCount, n(13)), (BalusterWidth, inches(24)), (Gap, inches(48))], inches(984)),
        // 60 + 3 1/2, the post by default
        (BayCentre, &[(BayClear, inches(960))], inches(1016)),
        // 36 - 1/2 - 3/4
        (Leaf, &[(GateOpening, inches(576)), (HingeGap, inches(8)), (LatchGap, inches(12))], inches(556)),
        // back again: 36 - 34 3/4 - 3/4 = 1/2
        (HingeGap, &[(GateOpening, inches(576)), (Leaf, inches(556)), (LatchGap, inches(12))], inches(8)),
        // 3 1/2 - 1 1/2
        (NotchLeft, &[(PostWidth, inches(56)), (NotchDepth, inches(24))], inches(32)),
        // 52 1/2 / 7
        (Rise, &[(TotalRise, inches(840)), (Risers, n(7))], inches(120)),
        // 7 risers hang 6 treads; 6 x 10 1/2 = 63
        (TotalRun, &[(Risers, n(7)), (Tread, inches(168))], inches(1008)),
        // 1 + 9 1/4
        (NotchTall, &[(Decking, inches(16)), (RimTall, inches(148))], inches(164)),
        // 96 / (30 + 1/8) leaves three pieces
        (PerStick, &[(Stock, inches(1536)), (PieceLength, inches(480)), (Kerf, inches(2))], n(3)),
        // 40 pieces and ten in a hundred are 44
        (PieceCountExtra, &[(PieceCount, n(40)), (Waste, Value::Number(10.into()))], n(44)),
        // the fall within 36 in.: 12 x 36/120 = 3 3/5
        (
            FallWithin,
            &[(Fall, inches(192)), (FallOver, inches(1920))],
            Value::Length(Length::new(18, 5).expect("exact")),
        ),
    ];
    for (want, given, expected) in rows {
        let given = Given::of(given.iter().copied());
        let solved =
            solve(*want, &given, &Job::default(), &Engines::NONE).unwrap_or_else(|l| panic!("{want:?}: {l:?}"));
        assert_eq!(solved.fig.value(), *expected, "{want:?}");
        assert_eq!(solved.unused(&given), [], "{want:?}");
    }
}

#[test]
fn the_drop_takes_in_what_the_ground_falls() {
    // 28 + 4 over 36 in.
    let fall = crate::job::Fall { by: Length::inches(4), over: Length::inches(36) };
    let job = told(&[of(Grade, inches(28 * 16)), Fact::Flight(FlightFact::Fall(fall))]);
    assert_eq!(known(&job, Drop).map(|f| f.value()), Some(inches(32 * 16)));
    // Ground that rises makes it no less.
    let rise = crate::job::Fall { by: Length::inches(-4), over: Length::inches(36) };
    let job = told(&[of(Grade, inches(28 * 16)), Fact::Flight(FlightFact::Fall(rise))]);
    assert_eq!(known(&job, Drop).map(|f| f.value()), Some(inches(28 * 16)));
}

#[test]
fn a_fall_told_in_a_foot_is_a_slope_and_the_steepest_counts() {
    let fall = |by, over| crate::job::Fall { by: Length::sixteenths(by), over: Length::inches(over) };
    let all = Fact::Flight(FlightFact::Fall(fall(24, 12)));
    // 1 1/2 in a foot: 3 x 1 1/2 = 4 1/2 over 36 in.; 28 + 4 1/2 = 32 1/2.
    let job = told(&[of(Grade, inches(28 * 16)), all.clone()]);
    assert_eq!(known(&job, Drop).map(|f| f.value()), Some(inches(520)));
    // 2 in a foot down one of the stairs: 28 + 6.
    let mut stairs = crate::job::StairOpening::new(Length::inches(48), crate::job::StairAt::Middle);
    stairs.flight.fall = Some(fall(32, 12));
    let patch = crate::job::RunPatch { stairs: Some(stairs.into()), ..crate::job::RunPatch::default() };
    let job = told(&[of(Grade, inches(28 * 16)), all, Fact::Run(crate::job::RunId(1), patch)]);
    assert_eq!(known(&job, Drop).map(|f| f.value()), Some(inches(34 * 16)));
}

#[test]
fn what_is_told_goes_before_what_is_taken() {
    assert_eq!(known(&Job::default(), PostWidth).map(|f| f.value()), Some(inches(56)));
    let six = Setting::Post(PostRole::All, PostSize::Lumber(Lumber::SIX_BY_SIX));
    let job = told(&[Fact::Set(six)]);
    assert_eq!(known(&job, PostWidth).map(|f| f.value()), Some(inches(88)));
    // A clear limit told is no post: 72 on center less 60 clear is none.
    let job = told(&[of(ClearMax, inches(960))]);
    assert_eq!(known(&job, PostWidth).map(|f| f.value()), Some(inches(56)));
}

#[test]
fn the_height_the_department_asks_is_taken_where_none_was_told() {
    let job = told(&[of(LocalHeight, inches(42 * 16))]);
    assert_eq!(known(&job, HeightTop).map(|f| f.value()), Some(inches(42 * 16)));
    let job = job.with(&of(HeightTop, inches(40 * 16))).expect("a height");
    assert_eq!(known(&job, HeightTop).map(|f| f.value()), Some(inches(40 * 16)));
}

#[test]
fn what_lacks_is_named() {
    let lacks = solve(Gap, &Given::of([(BalusterCount, Value::Count(9))]), &Job::default(), &Engines::NONE)
        .expect_err("no opening");
    assert!(lacks.0.contains(&vec![BayClear]), "{lacks:?}");
}

#[test]
fn a_premise_without_a_part_is_said() {
    let given = Given::of([(BayClear, inches(960)), (BalusterCount, Value::Count(9)), (Kerf, inches(2))]);
    let solved = solve(Gap, &given, &Job::default(), &Engines::NONE).expect("a gap");
    assert_eq!(solved.unused(&given), [Kerf]);
    assert_eq!(solved.defaults, [BalusterWidth]);
}

/// Each relation solved one way and put back gives what it started from.
#[test]
fn every_direction_of_a_relation_agrees_with_the_others() {
    use crate::quantity::{Kind, relations};
    let mut seen = 0;
    for relation in relations() {
        let ways = relation.ways();
        for (way, back) in
            ways.iter().flat_map(|w| ways.iter().map(move |b| (w, b))).filter(|(w, b)| w.gives != b.gives)
        {
            let start: Vec<(RowId, Value)> =
                way.from.iter().enumerate().map(|(i, input)| (input.row(), sample(input.row(), i))).collect();
            let args = start
                .iter()
                .map(|(r, v)| crate::figure::Fig::new(*v, crate::figure::Why::Told(r.row().name)))
                .collect();
            // Money is rounded to the cent, and does not come back.
            if way.gives.row().kind == Kind::Money {
                continue;
            }
            let Some(value) = relation.solve(way.gives, &crate::quantity::Args(args)) else { continue };
            let all: Vec<_> = start.iter().copied().chain([(way.gives, value)]).collect();
            let find = |row: RowId| all.iter().find(|(r, _)| *r == row).map(|(_, v)| *v);
            let args = back
                .from
                .iter()
                .filter_map(|i| find(i.row()))
                .map(|v| crate::figure::Fig::new(v, crate::figure::Why::Told("it")))
                .collect();
            let again = relation.solve(back.gives, &crate::quantity::Args(args));
            assert_eq!(again, find(back.gives), "{}: {:?} from {all:?}", relation.says, back.gives);
            seen += 1;
        }
    }
    assert!(seen > 60, "{seen}");
    fn sample(row: RowId, i: usize) -> Value {
        match row.row().kind {
            Kind::Count => Value::Count(12 - u64::try_from(i).unwrap_or(0)),
            Kind::Money => Value::Money(4.into()),
            Kind::Length => Value::Length(Length::inches(100 >> (2 * i))),
            Kind::Angle => Value::Quantity(4.into(), crate::figure::Unit::Degrees),
            Kind::Force => Value::Quantity(4.into(), crate::figure::Unit::Pounds),
            _ => Value::Number(4.into()),
        }
    }
}
