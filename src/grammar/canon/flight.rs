//! Questions about stairs and gates, before their "?".
//!
//! ```text
//! flight = what [" with " item *(", " item)]
//! item   = n " risers" | n " treads" | n " steps" | lumber | "a cap" | size " " length
//! ```

use super::Read;
use super::length::{read_length, read_lumber};
use super::words::{Table, one_of, read_count, words_of, write_count};
use crate::grammar::ask::{FlightAsk, FlightWhat, Given, Size};
use crate::measure::{Length, Lumber, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt, value};
use nom::multi::separated_list1;
use nom::sequence::{preceded, separated_pair};

/// What is asked, in the plain phrase.
pub(super) const WHAT: &Table<FlightWhat> = &[
    (FlightWhat::Steps, "steps of the stairs"),
    (FlightWhat::Rise, "total rise of the stairs"),
    (FlightWhat::Run, "total run of the stairs"),
    (FlightWhat::Rake, "rake of the stairs"),
    (FlightWhat::RailLength, "stair rail length"),
    (FlightWhat::Posts, "stair posts"),
    (FlightWhat::PostHeights, "stair post heights"),
    (FlightWhat::TopPost, "rails at the top post"),
    (FlightWhat::Balusters, "stair balusters"),
    (FlightWhat::Triangle, "triangle under the stair rail"),
    (FlightWhat::Handrail, "handrail needed on the stairs"),
    (FlightWhat::HandrailHeight, "handrail height"),
    (FlightWhat::HandrailEnds, "handrail ends"),
    (FlightWhat::Grip, "handrail grip"),
    (FlightWhat::WidthLeft, "stair width left"),
    (FlightWhat::Check, "stairs in order"),
    (FlightWhat::Landing, "landings at the top and bottom of the stairs"),
    (FlightWhat::BalusterLength, "stair baluster length"),
    (FlightWhat::Gap, "gap between balusters on the stairs"),
    (FlightWhat::Leaf, "width of the gate leaf"),
    (FlightWhat::LeafBalusters, "gate balusters"),
    (FlightWhat::Brace, "gate brace"),
    (FlightWhat::Swing, "gate swing at the top of the stairs"),
    (FlightWhat::Wide, "gate too wide"),
    (FlightWhat::GatePosts, "posts of the gate"),
    (FlightWhat::Pool, "pool gate"),
    (FlightWhat::GateHeight, "gate height"),
    (FlightWhat::LatchHeight, "gate latch height"),
    (FlightWhat::OpenRisers, "open risers on the stairs"),
    (FlightWhat::OneFlight, "stairs without a landing between"),
    (FlightWhat::Lift, "lift of the bottom rail"),
    (FlightWhat::StairRailHeight, "stair rail height"),
    (FlightWhat::TopPostPlace, "place of the top post"),
    (FlightWhat::HandrailSpace, "handrail off the wall"),
];

/// Each size's name.
pub(super) const SIZES: &Table<Size> = &[
    (Size::Rise, "riser"),
    (Size::TotalRise, "total rise"),
    (Size::Tread, "tread"),
    (Size::TotalRun, "total run"),
    (Size::Nosing, "nosing"),
    (Size::Width, "stair width"),
    (Size::Height, "stair rail height"),
    (Size::Level, "level rail height"),
    (Size::Lift, "bottom rail above the nosings"),
    (Size::Baluster, "baluster"),
    (Size::Projection, "handrail out"),
    (Size::Round, "round"),
    (Size::Across, "across"),
    (Size::Deep, "deep"),
    (Size::Opening, "opening"),
    (Size::SecondOpening, "second opening"),
    (Size::ThirdOpening, "third opening"),
    (Size::HingeGap, "hinge gap"),
    (Size::LatchGap, "latch gap"),
    (Size::Leaf, "leaf"),
    (Size::LeafHeight, "leaf height"),
    (Size::LeastRise, "smallest riser"),
    (Size::RailsApart, "rails apart"),
    (Size::LatchHeight, "latch height"),
    (Size::Gap, "gap"),
    (Size::OpenRiser, "open riser"),
];

/// The phrase of a question.
pub(super) fn write_flight_ask(ask: &FlightAsk) -> String {
    let Given { risers, treads, steps, lumber, cap, sizes } = &ask.given;
    let count = |n: &Option<u16>, thing| n.map(|n| write_count(n.into(), thing));
    let counts = [count(risers, "riser"), count(treads, "tread"), count(steps, "step")];
    let sizes = sizes.iter().map(|(size, l)| format!("{} {}", words_of(SIZES, *size), exact_phrase(*l)));
    let all: Vec<String> = counts
        .into_iter()
        .flatten()
        .chain(lumber.map(|l| l.to_string()))
        .chain(cap.then(|| "a cap".to_owned()))
        .chain(sizes)
        .collect();
    let with = if all.is_empty() { String::new() } else { format!(" with {}", all.join(", ")) };
    format!("{}{with}", words_of(WHAT, ask.what))
}

#[derive(Clone, Copy)]
enum Item {
    Risers(u16),
    Treads(u16),
    Steps(u16),
    Lumber(Lumber),
    Cap,
    Size(Size, Length),
}

/// Reads what [`write_flight_ask`] writes.
pub(super) fn read_flight_ask(i: &str) -> Read<'_, FlightAsk> {
    let items = opt(preceded(tag(" with "), separated_list1(tag(", "), read_item)));
    map((one_of(WHAT), items), |(what, items)| {
        let given = items.into_iter().flatten().fold(Given::default(), with_item);
        FlightAsk { what, given }
    })
    .parse(i)
}

fn read_item(i: &str) -> Read<'_, Item> {
    alt((
        map(read_count("riser"), Item::Risers),
        map(read_count("tread"), Item::Treads),
        map(read_count("step"), Item::Steps),
        map(read_lumber, Item::Lumber),
        value(Item::Cap, tag("a cap")),
        map(separated_pair(one_of(SIZES), tag(" "), read_length), |(size, l)| Item::Size(size, l)),
    ))
    .parse(i)
}

fn with_item(mut given: Given, item: Item) -> Given {
    match item {
        Item::Risers(n) => given.risers = Some(n),
        Item::Treads(n) => given.treads = Some(n),
        Item::Steps(n) => given.steps = Some(n),
        Item::Lumber(l) => given.lumber = Some(l),
        Item::Cap => given.cap = true,
        Item::Size(size, l) => {
            given.sizes.insert(size, l);
        }
    }
    given
}
