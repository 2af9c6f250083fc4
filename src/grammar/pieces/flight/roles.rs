//! Which words and sizes have a part in which question.

use crate::grammar::ask::{FlightWhat as A, Size as S};
use crate::grammar::flight_words::FlightWord as W;

/// What a question is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Of {
    Stairs,
    Handrail,
    Gate,
}

fn of(what: A) -> Of {
    match what {
        A::Handrail | A::HandrailHeight | A::HandrailEnds | A::Grip | A::WidthLeft | A::HandrailSpace => Of::Handrail,
        A::Leaf
        | A::LeafBalusters
        | A::Brace
        | A::Swing
        | A::Wide
        | A::GatePosts
        | A::Pool
        | A::GateHeight
        | A::LatchHeight => Of::Gate,
        _ => Of::Stairs,
    }
}

/// True for a word that has a part in the question: its answer, or the phrase it is read back
/// in, is about it.
pub fn has_part(what: A, word: W) -> bool {
    use W::{Aux, Fill, How, Not, Ok, Rise, Riser, Stairs, Steps, Tread, Treads, Which};
    let own = match of(what) {
        Of::Gate => matches!(word, W::Gate | W::Leaf | W::PoolGate),
        Of::Handrail => matches!(word, W::Handrail | Stairs | Riser | Steps),
        Of::Stairs => matches!(word, Stairs | Steps | Riser | Rise | Tread | Treads),
    };
    // "on" is a link where it stands between no two numbers.
    own || matches!(word, W::On | Fill | Aux | How | Which | Ok | Not) || special(what).contains(&word)
}

fn special(what: A) -> &'static [W] {
    match what {
        A::Steps => &[W::Total, W::Deck, W::High],
        A::Rise => &[W::Total, W::Deck, W::High],
        A::Run => &[W::Out, W::Run, W::Total, W::Deck],
        A::Rake => &[W::Rake, W::Rail, W::Baluster, W::Size],
        A::RailLength => &[W::Rail, W::Long],
        A::Posts => &[W::Post, W::Mid, W::Newel, W::TopPost],
        A::StairRailHeight => &[W::Rail, W::High, W::Nosing, W::Off],
        A::TopPostPlace => &[W::Post, W::TopPost],
        A::PostHeights => &[W::Post, W::Mid, W::Newel, W::TopPost, W::High, W::Long, W::Off, W::Size],
        A::TopPost => &[W::Post, W::TopPost, W::Rail, W::LevelRail, W::Handrail, W::Meet],
        A::Balusters => &[W::Baluster, W::Gap, W::Rake],
        A::BalusterLength => &[W::Baluster, W::Long, W::Rail, W::Apart, W::Square],
        A::Triangle => &[W::Triangle, W::Rail, W::BottomRail, W::Nosing, W::Off, W::Under],
        A::Gap => &[W::Baluster, W::Gap],
        A::Check => &[W::Deep, W::Wide],
        A::Landing => &[W::Landing, W::Deep, W::Wide, W::Top, W::Bottom, W::Size],
        A::Grip => &[W::Cap, W::Grip, W::Round],
        A::HandrailHeight => &[W::High, W::Nosing, W::Rail],
        A::HandrailSpace => &[W::Wall, W::Projects, W::Off, W::Gap],
        A::OpenRisers => &[W::OpenRiser, W::Closed, W::Swing],
        A::OneFlight => &[W::OneGo, W::High, W::Landing],
        A::Lift => &[W::Lift, W::Rail, W::BottomRail, W::Off, W::Nosing, W::Deck, W::Under, W::High],
        A::LatchHeight => &[W::Latch, W::High],
        A::HandrailEnds => &[W::Ends, W::Wall, W::Projects],
        A::WidthLeft => &[W::Left, W::Wide, W::Projects, W::Gap],
        A::Handrail => &[],
        A::Leaf => &[W::Wide, W::Size, W::Opening],
        A::LeafBalusters => &[W::Baluster, W::Opening],
        A::Brace => &[W::Brace, W::Square, W::Sag],
        A::Swing => &[W::Swing, W::Stairs, W::Steps, W::Top],
        A::Wide => &[W::Sag, W::Wide],
        A::GatePosts => &[W::Post, W::Size],
        A::Pool => &[W::Pool, W::SelfClose, W::Latch, W::Lowest],
        A::GateHeight => &[W::High, W::Under],
    }
}

/// True for a size the answer goes by.
pub fn takes(what: A, size: S) -> bool {
    let flight = matches!(size, S::Rise | S::TotalRise | S::Tread | S::TotalRun);
    match of(what) {
        Of::Stairs if flight => !matches!(what, A::Gap | A::Landing),
        Of::Handrail if flight => what == A::Handrail,
        _ => match what {
            A::Check => matches!(size, S::Nosing | S::Width | S::LeastRise),
            A::Posts | A::PostHeights | A::RailLength | A::TopPost => matches!(size, S::Height | S::Level),
            A::Balusters => matches!(size, S::Baluster),
            A::BalusterLength => matches!(size, S::Baluster | S::RailsApart),
            A::Triangle | A::Lift => matches!(size, S::Nosing | S::Lift),
            A::OpenRisers => size == S::OpenRiser,
            A::LatchHeight => size == S::LatchHeight,
            A::Gap => size == S::Gap,
            A::HandrailHeight => size == S::Height,
            A::Grip => matches!(size, S::Round | S::Across | S::Deep),
            A::WidthLeft => matches!(size, S::Width | S::Projection),
            A::Wide => matches!(size, S::Opening | S::Leaf),
            A::Leaf | A::LeafBalusters | A::Brace => matches!(
                size,
                S::Opening | S::SecondOpening | S::ThirdOpening | S::HingeGap | S::LatchGap | S::Leaf | S::LeafHeight
            ),
            A::Pool => size == S::LatchHeight,
            _ => false,
        },
    }
}
