//! Questions about stairs and gates, as phrases: each is written one way and read back the same.

use pretty_assertions::assert_eq;
use proptest::collection::btree_map;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;
use railhand::grammar::ask::{FlightAsk, FlightWhat, Given, Size};
use railhand::grammar::canon::{read, write};
use railhand::grammar::{Act, Query};
use railhand::measure::{Length, Lumber};

fn ask(what: FlightWhat, given: Given) -> Act {
    Act::Query(Query::Flight(FlightAsk { what, given }))
}

fn inches(n: i64, den: i128) -> Length {
    Length::new(i128::from(n), den).expect("small")
}

#[test]
fn every_question_and_size_has_a_phrase_of_its_own() {
    let mut said = Vec::new();
    for what in FlightWhat::ALL {
        let act = ask(what, Given::default());
        assert_eq!(read(&write(&act)), Some(act.clone()), "{}", write(&act));
        said.push(write(&act));
    }
    for size in Size::ALL {
        let sizes = [(size, inches(15, 2))].into();
        let act = ask(FlightWhat::Rake, Given { sizes, ..Given::default() });
        assert_eq!(read(&write(&act)), Some(act.clone()), "{}", write(&act));
        said.push(write(&act));
    }
    let all = said.len();
    said.sort();
    said.dedup();
    assert_eq!(said.len(), all);
}

/// The phrases stand in phrase books and job talk: they are not reworded.
#[test]
fn golden_phrases() {
    let given = Given {
        risers: Some(5),
        steps: Some(1),
        lumber: Some(Lumber::by(2, 6)),
        sizes: [(Size::Tread, inches(10, 1)), (Size::Rise, inches(31, 4))].into(),
        treads: None,
        cap: true,
    };
    let rows = [
        (ask(FlightWhat::Rake, Given::default()), "rake of the stairs?"),
        (
            ask(FlightWhat::Rake, given),
            "rake of the stairs with 5 risers, 1 step, 2x6, a cap, riser 7 3/4\", tread 10\"?",
        ),
        (
            ask(FlightWhat::Leaf, Given { sizes: [(Size::Opening, inches(83, 2))].into(), ..Given::default() }),
            "width of the gate leaf with opening 3'-5 1/2\"?",
        ),
    ];
    for (act, phrase) in rows {
        assert_eq!(write(&act), phrase);
        assert_eq!(read(phrase), Some(act));
    }
}

fn length() -> impl Strategy<Value = Length> {
    (0_i64..4000, select(vec![1_i128, 2, 4, 8, 16, 32, 3, 7])).prop_map(|(n, den)| inches(n, den))
}

fn given() -> impl Strategy<Value = Given> {
    let lumber = (1_u16..9, 1_u16..13).prop_map(|(a, b)| Lumber::by(a.min(b), a.max(b)));
    let sizes = btree_map(select(Size::ALL.to_vec()), length(), 0..5);
    (of(any::<u16>()), of(any::<u16>()), of(any::<u16>()), of(lumber), any::<bool>(), sizes)
        .prop_map(|(risers, treads, steps, lumber, cap, sizes)| Given { risers, treads, steps, lumber, cap, sizes })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn what_is_written_reads_back_the_same(what in select(FlightWhat::ALL.to_vec()), given in given()) {
        let act = ask(what, given);
        prop_assert_eq!(read(&write(&act)), Some(act.clone()), "{}", write(&act));
    }
}
