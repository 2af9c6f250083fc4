//! Laws of the plain phrase, over generated acts of every kind. They hold within the program
//! (no outside source says how its phrases are worded); the lengths in them are generated as
//! bare fractions, so nothing of the printer is used to make them.

use num_rational::Ratio;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use railhand::figure;
use railhand::grammar::ask::{
    About, Apart, Counted, Infill, Mood, NotchAsk, RowAsk, RuleAsk, StrengthAsk, TakeoffAsk, Whose, WhyAsk,
};
use railhand::grammar::canon::{clean_name, clean_note, read, write};
use railhand::grammar::{Act, Query, Talk};
use railhand::job::{
    Anyway, BalustersAt, Basis, Blocking, Choice, DeckFact, End, EndOf, Fact, Fall, Fixing, Flank, Flight, FlightFact,
    Foot, Gate, GateAt, Head, HouseEnd, Hung, Jamb, JoistsRun, KeepOff, Lands, LongPart, Member, Mount, Newels, Nosing,
    NotchTold, OpenSides, Order, Percent, PostRole, PostSize, RiserKind, RunId, RunPatch, Setting, Spot, Stage,
    StairAt, StairMeasure, StairOpening, Stairs, StartWith, StickOf, Swing, Thing, Told, Turn, Turned, View,
};
use railhand::job::{Duration, Grade, Lie, Species, TimberTold};
use railhand::job::{LawTold, Local};
use railhand::limits::LIMITS;
use railhand::limits::{Edition, PLACES};
use railhand::measure::{Length, Lumber, Q, Shade};
use railhand::quantity::{Kind, ROWS};
use railhand::sums::{Expr, Into, Sum};
use rust_decimal::Decimal;

/// Tape marks, millimetres with decimals, odd fractions, and the edge of what is accepted.
fn length() -> impl Strategy<Value = Length> {
    let edge = Length::BOUND;
    prop_oneof![
        4 => (-200_000_i128..200_000).prop_filter_map("out of bounds", |n| Length::new(n, 64)),
        2 => (1_i128..10_000_000, select(vec![1_i128, 10, 100, 1000]))
            .prop_filter_map("out of bounds", |(n, d)| Length::from_mm(Ratio::new(n, d))),
        2 => (-100_000_i128..100_000, 1_i128..5000).prop_filter_map("out of bounds", |(n, d)| Length::new(n, d)),
        1 => (-edge..=edge, 1..=edge).prop_filter_map("out of bounds", |(n, d)| Length::new(n, d)),
    ]
}

fn number() -> impl Strategy<Value = Q> {
    let edge = Length::BOUND;
    prop_oneof![
        3 => (-500_i128..500).prop_map(Ratio::from_integer),
        1 => (-edge..=edge, 1..=edge).prop_map(|(n, d)| Ratio::new(n, d)),
    ]
}

fn told() -> impl Strategy<Value = Told> {
    let shade = of(select(vec![Shade::Strong, Shade::Shy]));
    (length(), shade, any::<bool>()).prop_map(|(length, shade, about)| Told { length, shade, about })
}

fn lumber() -> impl Strategy<Value = Lumber> {
    (any::<u16>(), any::<u16>()).prop_map(|(thick_quarters, wide)| Lumber { thick_quarters, wide })
}

fn run_id() -> impl Strategy<Value = RunId> {
    prop_oneof![1_u32..20, any::<u32>()].prop_map(RunId)
}

/// Names as `clean_name` leaves them, out of a few plain words or out of anything printable.
fn name() -> impl Strategy<Value = String> {
    prop_oneof!["[a-z]{1,8}( [a-z'-]{1,8}){0,3}", "\\PC{1,20}"].prop_filter_map("leaves no name", |s| clean_name(&s))
}

fn note() -> impl Strategy<Value = String> {
    any::<String>().prop_filter_map("leaves no note", |s| clean_note(&s))
}

fn end() -> impl Strategy<Value = End> {
    select(End::ALL.to_vec())
}

fn hung() -> impl Strategy<Value = Hung> {
    let jamb = || of(select(vec![Jamb::Left, Jamb::Right, Jamb::House, Jamb::Away]));
    let swing = of(select(vec![Swing::OverDeck, Swing::Out, Swing::Both]));
    let parts =
        (of(1_u8..3), swing, jamb(), jamb(), of(length()), of(length()), of(any::<bool>()), of(length()), of(length()));
    parts.prop_map(|(leaves, swing, hinge, latch, hinge_gap, latch_gap, self_closing, leaf, latch_height)| Hung {
        leaves,
        swing,
        hinge,
        latch,
        hinge_gap,
        latch_gap,
        self_closing,
        leaf,
        latch_height,
    })
}

fn gate() -> impl Strategy<Value = Gate> {
    let at = prop_oneof![
        select(vec![GateAt::From, GateAt::To, GateAt::Middle, GateAt::Left, GateAt::Right, GateAt::Stairs]),
        length().prop_map(GateAt::OffFrom),
        length().prop_map(GateAt::OffTo),
    ];
    (at, of(length()), hung()).prop_map(|(at, width, hung)| Gate { at, width, hung })
}

fn flight_fact() -> impl Strategy<Value = FlightFact> {
    use OpenSides::{Both, Left, Neither, One, Right};
    prop_oneof![
        any::<u16>().prop_map(FlightFact::Risers),
        length().prop_map(FlightFact::Rise),
        length().prop_map(FlightFact::Tread),
        select(vec![Both, One, Left, Right, Neither]).prop_map(FlightFact::Open),
        select(vec![Newels::Beside, Newels::OnTreads]).prop_map(FlightFact::Newels),
        select(vec![Lands::Slab, Lands::Ground, Lands::Pavers, Lands::Gravel, Lands::Landing])
            .prop_map(FlightFact::Lands),
        length().prop_map(FlightFact::TotalRise),
        length().prop_map(FlightFact::TotalRun),
        length().prop_map(FlightFact::Nosing),
        length().prop_map(FlightFact::Height),
        select(vec![Head::OneDown, Head::Flush]).prop_map(FlightFact::Head),
        select(vec![RiserKind::Closed, RiserKind::Open]).prop_map(FlightFact::Between),
        length().prop_map(|l| FlightFact::Between(RiserKind::Opening(l))),
        length().prop_map(FlightFact::Landing),
        (length(), length(), any::<bool>())
            .prop_map(|(by, over, up)| { FlightFact::Fall(Fall { by: if up { -by } else { by }, over }) }),
    ]
}

fn flight() -> impl Strategy<Value = Flight> {
    proptest::collection::vec(flight_fact(), 0..4).prop_map(|facts| {
        let mut flight = Flight::default();
        facts.into_iter().for_each(|fact| flight.set(fact));
        flight
    })
}

fn stairs() -> impl Strategy<Value = StairOpening> {
    let at = prop_oneof![
        Just(StairAt::Middle),
        length().prop_map(StairAt::FromLeft),
        length().prop_map(StairAt::FromRight),
    ];
    let measure = of(select(StairMeasure::ALL.to_vec()));
    (length(), measure, at, of(length()), flight()).prop_map(|(width, measure, at, recess, flight)| StairOpening {
        width,
        measure,
        at,
        recess,
        flight,
    })
}

fn turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        select(vec![Turn::Start, Turn::Free]),
        any::<u16>().prop_map(Turn::Right),
        any::<u16>().prop_map(Turn::Left)
    ]
}

fn choice() -> impl Strategy<Value = Choice> {
    let end = || select(vec![EndOf::From, EndOf::To]);
    let spot = || (length(), end()).prop_map(|(at, end)| Spot { at, end });
    let thing =
        prop_oneof![end().prop_map(Thing::End), Just(Thing::Stairs), Just(Thing::Gate), spot().prop_map(Thing::Spot)];
    prop_oneof![
        spot().prop_map(Choice::Post),
        spot().prop_map(Choice::NoPost),
        Just(Choice::NoPosts),
        any::<bool>().prop_map(Choice::Mirrored),
        (length(), thing).prop_map(|(by, of)| Choice::KeepOff(KeepOff { by, of })),
        Just(Choice::NoKeepOff),
    ]
}

fn patch() -> impl Strategy<Value = RunPatch> {
    let basis = of(select(vec![Basis::Overall, Basis::Clear, Basis::Centre, Basis::Edge]));
    let ends = (of(end()), of(end()));
    let counted = (of(of(any::<u16>())), of(turn()));
    let choices = prop::collection::vec(choice(), 0..4);
    let parts = (
        of(name()),
        of(told()),
        basis,
        ends,
        of(of(gate())),
        of(proptest::collection::vec(stairs(), 0..3).prop_map(Stairs::from)),
        counted,
        choices,
    );
    parts.prop_map(|(name, length, basis, (from, to), gate, stairs, (bays, turn), choices)| RunPatch {
        name,
        length,
        basis,
        from,
        to,
        gate,
        stairs,
        bays,
        turn,
        choices,
    })
}

fn size_setting() -> impl Strategy<Value = Setting> {
    use Setting::{Baluster, CentreMax, ClearMax, GapMax, GapUnder, Grade, HeightTop};
    use Setting::{FirstJoist, HoldBack, Joists, Line, Overhang, Rim, Skirt};
    let of_length: Vec<fn(Length) -> Setting> = vec![
        HeightTop,
        GapUnder,
        Baluster,
        GapMax,
        ClearMax,
        CentreMax,
        Grade,
        |l| Setting::Notch(NotchTold::Deep(l)),
        Overhang,
        Skirt,
        Rim,
        Line,
        HoldBack,
        Joists,
        FirstJoist,
    ];
    (select(of_length), length()).prop_map(|(make, l)| make(l))
}

fn law() -> impl Strategy<Value = LawTold> {
    prop_oneof![
        select(Edition::ALL.to_vec()).prop_map(LawTold::Edition),
        select(PLACES.iter().collect::<Vec<_>>()).prop_map(LawTold::Place),
        (select(Local::ALL.to_vec()), length()).prop_map(|(of, l)| LawTold::Local(of, l)),
    ]
}

fn timber() -> impl Strategy<Value = TimberTold> {
    prop_oneof![
        select(Species::ALL.to_vec()).prop_map(TimberTold::Species),
        select(vec![Grade::No1, Grade::No2]).prop_map(TimberTold::Grade),
        any::<bool>().prop_map(TimberTold::Wet),
        any::<bool>().prop_map(TimberTold::Incised),
        select(Duration::ALL.to_vec()).prop_map(TimberTold::Duration),
    ]
}

fn strength() -> impl Strategy<Value = StrengthAsk> {
    let lies = of(select(vec![Lie::Flat, Lie::Edge]));
    let pieces = (of(lumber()), of(lumber()), of(lumber()), of(lumber()), lies);
    let about = select(About::ALL.to_vec());
    (about, of(length()), of(length()), pieces, of(select(Species::ALL.to_vec()))).prop_map(
        |(about, span, height, (post, rail, cap, rim, lie), species)| StrengthAsk {
            about,
            span,
            height,
            post,
            rail,
            lie,
            cap,
            rim,
            species,
        },
    )
}

fn setting() -> impl Strategy<Value = Setting> {
    let size = prop_oneof![lumber().prop_map(PostSize::Lumber), length().prop_map(PostSize::Width)];
    prop_oneof![
        2 => (select(PostRole::ALL.to_vec()), size).prop_map(|(role, size)| Setting::Post(role, size)),
        4 => size_setting(),
        1 => select(vec![Mount::OverEdge, Mount::Inside, Mount::Outside, Mount::Surface]).prop_map(Setting::Mount),
        1 => select(vec![JoistsRun::Out, JoistsRun::Along]).prop_map(Setting::JoistsRun),
        1 => select(vec![Fixing::ThroughBolts, Fixing::Lags, Fixing::Screws]).prop_map(Setting::Fixing),
        1 => any::<bool>().prop_map(Setting::Pool),
        1 => select(vec![HouseEnd::Post, HouseEnd::Bracket]).prop_map(Setting::HouseEnd),
        1 => select(vec![Blocking::AtPosts, Blocking::None]).prop_map(Setting::Blocking),
        1 => select(vec![View::House, View::Yard]).prop_map(Setting::View),
        1 => Just(Setting::Notch(NotchTold::None)),
        2 => foot().prop_map(Setting::Foot),
        1 => select(vec![2_u8, 4, 8, 16, 32, 64]).prop_map(Setting::Tape),
        3 => timber().prop_map(Setting::Timber),
        2 => law().prop_map(Setting::Law),
    ]
}

fn order() -> impl Strategy<Value = Order> {
    let member = select(Member::ALL.to_vec());
    let money = (1_i64..1_000_000, 0_u32..3).prop_map(|(n, places)| Decimal::new(n, places));
    let stick = (lumber(), any::<u16>()).prop_map(|(size, feet)| StickOf { size, feet });
    let percent = select(vec![Percent::Waste, Percent::Tax, Percent::Markup]);
    let feet = prop::collection::vec(any::<u16>(), 1..5);
    prop_oneof![
        (member.clone(), prop::option::of(lumber())).prop_map(|(m, s)| Order::Rail(m, s)),
        (member, select(vec![Lie::Flat, Lie::Edge])).prop_map(|(m, l)| Order::Lay(m, l)),
        select(vec![BalustersAt::Between, BalustersAt::Faces]).prop_map(Order::Balusters),
        select(vec![StartWith::Gap, StartWith::Baluster]).prop_map(Order::StartWith),
        (select(vec![LongPart::Baluster, LongPart::Post]), length()).prop_map(|(p, l)| Order::Cut(p, l)),
        length().prop_map(Order::Bracket),
        (any::<u16>(), length()).prop_map(|(n, l)| Order::Bays(n, l)),
        Just(Order::NoBays),
        (prop::option::of(lumber()), feet).prop_map(|(s, f)| Order::Sold(s, f)),
        (lumber(), length(), any::<u16>()).prop_map(|(s, l, n)| Order::OnHand(s, l, n)),
        length().prop_map(Order::Kerf),
        (percent, money.clone()).prop_map(|(p, n)| Order::Percent(p, n.normalize())),
        any::<u16>().prop_map(Order::Spares),
        (stick, money.clone()).prop_map(|(s, m)| Order::Price(s, m.normalize())),
        money.prop_map(|m| Order::Labour(m.normalize())),
    ]
}

fn takeoff() -> impl Strategy<Value = TakeoffAsk> {
    let start = prop::option::of(select(vec![StartWith::Gap, StartWith::Baluster]));
    let some = || prop::option::of(length());
    let infill = (length(), prop::option::of(any::<u16>()), some(), some(), start)
        .prop_map(|(clear, count, baluster, limit, start)| Infill { clear, count, baluster, limit, start });
    prop_oneof![
        prop::option::of(run_id()).prop_map(TakeoffAsk::Balusters),
        infill.prop_map(TakeoffAsk::Infill),
        (length(), some()).prop_map(|(centre, baluster)| TakeoffAsk::OnCentre { centre, baluster }),
        length().prop_map(TakeoffAsk::Gap),
        length().prop_map(TakeoffAsk::GapUnder),
        length().prop_map(TakeoffAsk::CutShort),
        (prop::option::of(select(Species::ALL.to_vec())), some())
            .prop_map(|(wood, gap)| TakeoffAsk::Dried { wood, gap }),
        (length(), some(), some()).prop_map(|(pitch, clear, baluster)| TakeoffAsk::Routed { pitch, clear, baluster }),
        length().prop_map(TakeoffAsk::Measured),
        prop::option::of(run_id()).prop_map(TakeoffAsk::Splits),
        select(vec![LongPart::Baluster, LongPart::Post]).prop_map(TakeoffAsk::CutLength),
        select(vec![
            TakeoffAsk::ByObject,
            TakeoffAsk::Parts,
            TakeoffAsk::Cuts,
            TakeoffAsk::Buy,
            TakeoffAsk::Cost,
            TakeoffAsk::RailLength,
        ]),
    ]
}

fn foot() -> impl Strategy<Value = Foot> {
    let sized = (0_usize..7, length()).prop_map(|(k, l)| {
        let all = [Foot::Decking, Foot::RimTall, Foot::Cap, Foot::Above, Foot::Blade, Foot::Bolt, Foot::RailNotch];
        all[k](l)
    });
    prop_oneof![
        sized,
        select(vec![Nosing::CutBack, Nosing::Whole]).prop_map(Foot::Nosing),
        select(vec![Turned::First, Turned::Next, Turned::Split]).prop_map(Foot::Turned),
        select(vec![Anyway::Sleeve, Anyway::Told]).prop_map(Foot::Anyway),
    ]
}

fn notch_ask() -> impl Strategy<Value = NotchAsk> {
    let whose = prop_oneof![
        Just(Whose::All),
        Just(Whose::Line),
        select(End::ALL.to_vec()).prop_map(Whose::At),
        any::<u32>().prop_map(Whose::Number),
    ];
    let size = prop_oneof![lumber().prop_map(PostSize::Lumber), length().prop_map(PostSize::Width)];
    prop_oneof![
        (0_usize..6, whose).prop_map(|(k, whose)| {
            let all =
                [NotchAsk::Cut, NotchAsk::Length, NotchAsk::Above, NotchAsk::Steps, NotchAsk::Draw, NotchAsk::Bolts];
            all[k](whose)
        }),
        select(vec![NotchAsk::Same, NotchAsk::Tall]),
        (length(), of(size)).prop_map(|(deep, post)| NotchAsk::Left { deep, post }),
        lumber().prop_map(NotchAsk::May),
        of(lumber()).prop_map(NotchAsk::Old),
    ]
}

fn fact() -> impl Strategy<Value = Fact> {
    prop_oneof![
        2 => order().prop_map(Fact::Order),
        4 => (run_id(), patch()).prop_map(|(id, patch)| Fact::Run(id, patch)),
        1 => run_id().prop_map(Fact::DropRun),
        3 => setting().prop_map(Fact::Set),
        1 => length().prop_map(Fact::DeckAlong),
        1 => length().prop_map(Fact::DeckOut),
        1 => length().prop_map(Fact::StairWidth),
        1 => select(vec![DeckFact::New, DeckFact::StartOver]).prop_map(Fact::Deck),
        1 => length().prop_map(|l| Fact::Deck(DeckFact::Wide(l))),
        1 => select(StairMeasure::ALL.to_vec()).prop_map(Fact::StairMeasure),
        1 => flight_fact().prop_map(Fact::Flight),
        1 => Just(Fact::NoStairs),
        1 => note().prop_map(Fact::Note),
        1 => any::<u32>().prop_map(Fact::DropNote),
        1 => (select(Stage::ALL.to_vec()), any::<bool>()).prop_map(|(s, done)| Fact::Done(s, done)),
    ]
}

fn why() -> impl Strategy<Value = WhyAsk> {
    let counted = select(vec![Counted::Posts, Counted::Bays, Counted::Balusters]);
    prop_oneof![
        (length(), select(vec![Apart::Unsaid, Apart::Clear, Apart::Centre])).prop_map(|(l, a)| WhyAsk::NotBay(l, a)),
        (run_id(), any::<u16>()).prop_map(|(id, n)| WhyAsk::NotBays(id, n)),
        (run_id(), length()).prop_map(|(id, l)| WhyAsk::PostAt(id, l)),
        run_id().prop_map(WhyAsk::LinePosts),
        length().prop_map(WhyAsk::Length),
        (-5_000_i128..5_000, 1_i128..64).prop_map(|(n, d)| WhyAsk::Number(Ratio::new(n, d))),
        (counted, any::<u16>()).prop_map(|(what, n)| WhyAsk::Counted(what, n)),
    ]
}

/// Rows asked for, with premises (the same row over again too) and facts of any kind tried on.
fn rows() -> impl Strategy<Value = RowAsk> {
    let row = || select(ROWS).prop_map(|r| r.id);
    let given = || {
        (row(), length(), 0_u64..500, 0_i128..500).prop_filter_map("a row with a figure", |(id, l, n, q)| {
            let q = Ratio::from_integer(q);
            let value = match id.row().kind {
                Kind::Length => figure::Value::Length(l),
                Kind::Count => figure::Value::Count(n),
                Kind::Percent | Kind::Number => figure::Value::Number(q),
                Kind::Angle => figure::Value::Quantity(q, figure::Unit::Degrees),
                Kind::Force => figure::Value::Quantity(q, figure::Unit::Pounds),
                _ => return None,
            };
            Some((id, value))
        })
    };
    let given = prop::collection::vec(given(), 0..4).prop_map(|mut g| {
        g.extend(g.first().copied());
        g
    });
    let wants = prop::collection::vec(row(), 1..=RowAsk::MOST);
    let mood = select(vec![Mood::Figure, Mood::Judge, Mood::Fault, Mood::Without]);
    (wants, mood, given, prop::collection::vec(fact(), 0..4)).prop_map(|(wants, mood, given, supposed)| RowAsk {
        wants,
        mood,
        given,
        supposed,
    })
}

fn query() -> impl Strategy<Value = Query> {
    prop_oneof![
        takeoff().prop_map(Query::Takeoff),
        of(run_id()).prop_map(Query::Layout),
        notch_ask().prop_map(Query::Notch),
        of(run_id()).prop_map(Query::Posts),
        of(run_id()).prop_map(Query::Bays),
        run_id().prop_map(Query::RunLength),
        (run_id(), select(vec![Flank::Left, Flank::Right])).prop_map(|(id, side)| Query::Flank(id, side)),
        select(vec![Query::Job, Query::Why, Query::Sources, Query::Rules, Query::RulesFound]),
        (select(LIMITS), any::<Option<bool>>()).prop_map(|(limit, says)| Query::Rule(RuleAsk { limit, says })),
        lumber().prop_map(Query::Actual),
        strength().prop_map(Query::Strength),
        why().prop_map(Query::WhyOf),
        told().prop_map(|t| Query::Measure { length: t.length, shade: t.shade, about: t.about }),
    ]
}

/// Makes one expression of two.
type Join = fn(Box<Expr>, Box<Expr>) -> Expr;

fn expr() -> impl Strategy<Value = Expr> {
    let leaf = prop_oneof![length().prop_map(Expr::Length), number().prop_map(Expr::Number)];
    let signs: Vec<Join> = vec![Expr::Plus, Expr::Less, Expr::Times, Expr::Over];
    leaf.prop_recursive(6, 40, 2, move |inner| {
        (select(signs.clone()), inner.clone(), inner).prop_map(|(join, a, b)| join(Box::new(a), Box::new(b)))
    })
}

fn sum() -> impl Strategy<Value = Sum> {
    use Into::{Centimetres, Feet, FeetInches, Inches, Metres, Millimetres};
    let unit = select(vec![Inches, FeetInches, Feet, Millimetres, Centimetres, Metres]);
    prop_oneof![
        3 => expr().prop_map(Sum::Value),
        1 => (length(), length()).prop_map(|(piece, from)| Sum::Pieces { piece, from }),
        1 => (any::<u64>(), any::<u64>()).prop_map(|(pieces, per)| Sum::Sticks { pieces, per }),
        1 => (length(), unit).prop_map(|(l, unit)| Sum::Convert(l, unit)),
        1 => (length(), length()).prop_map(|(a, b)| Sum::Diagonal(a, b)),
        1 => (length(), length()).prop_map(|(a, b)| Sum::Bigger(a, b)),
    ]
}

fn act() -> impl Strategy<Value = Act> {
    use Talk::{Hello, Help, Keep, Leave, Redo, Thanks, Undo};
    let facts = || prop::collection::vec(fact(), 1..4);
    prop_oneof![
        4 => facts().prop_map(Act::Tell),
        1 => (facts(), rows()).prop_filter("holds nothing", |(_, r)| !(r.given.is_empty() && r.supposed.is_empty())).prop_map(
            |(told, given)| Act::TellWith(told, RowAsk { wants: Vec::new(), mood: Mood::Figure, ..given })
        ),
        2 => facts().prop_map(Act::Suppose),
        2 => query().prop_map(Act::Query),
        2 => rows().prop_map(|ask| Act::Query(Query::Row(ask))),
        3 => sum().prop_map(Act::Sum),
        1 => select(vec![Undo, Redo, Keep, Leave, Hello, Help, Thanks]).prop_map(Act::Talk),
    ]
}

/// What a finger may put in by a slip.
const SLIPS: &str = "0123456789 -/'\"x,;:?.()abcdefghilmnoprstu";

/// The phrase with the character at one place left out or doubled, or another put before it.
fn slip(phrase: &str, at: Index, how: u8, put: char) -> String {
    let mut chars: Vec<char> = phrase.chars().collect();
    let at = at.index(chars.len());
    match how {
        0 => drop(chars.remove(at)),
        1 => chars.insert(at, chars[at]),
        _ => chars.insert(at, put),
    }
    chars.into_iter().collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_written_reads_back_the_same(act in act()) {
        let phrase = write(&act);
        prop_assert_eq!(read(&phrase), Some(act.clone()), "{}", &phrase);
        let padded = format!("  {phrase} \t");
        prop_assert_eq!(read(&padded), Some(act), "{}", &phrase);
    }

    #[test]
    fn a_phrase_is_one_safe_line(act in act()) {
        let phrase = write(&act);
        prop_assert!(!phrase.chars().any(char::is_control), "{:?}", &phrase);
        prop_assert_eq!(phrase.trim(), &phrase);
    }

    #[test]
    fn one_slip_fails_or_says_what_it_now_means(
        act in act(), at in any::<Index>(), how in 0_u8..3, put in select(SLIPS.chars().collect::<Vec<_>>()),
    ) {
        let phrase = write(&act);
        let slipped = slip(&phrase, at, how, put);
        if let Some(other) = read(&slipped) {
            prop_assert_eq!(write(&other), slipped.trim());
            prop_assert!(other != act || slipped.trim() == phrase, "{} is taken for {}", slipped, phrase);
        }
    }

    #[test]
    fn garbage_never_panics(line in any::<String>(), head in select(vec![
        "", "run 1: ", "run 1: called ", "note: ", "sum: ", "suppose: ", "posts: ", "length ", "deck: ", "rule ",
    ])) {
        let line = format!("{head}{line}");
        if let Some(act) = read(&line) {
            prop_assert_eq!(write(&act), line.trim());
        }
    }

    #[test]
    fn near_phrases_never_panic(line in "(run [0-9]{1,2}: |sum: |length )?[0-9'\"/. x+(),;-]{0,30}( mm| clear|\\?)?") {
        if let Some(act) = read(&line) {
            prop_assert_eq!(write(&act), line.trim());
        }
    }

    #[test]
    fn cleaning_what_is_clean_changes_nothing(said in any::<String>()) {
        if let Some(note) = clean_note(&said) {
            prop_assert!(!note.contains(';') && !note.chars().any(char::is_control));
            prop_assert_eq!(clean_note(&note), Some(note));
        }
        if let Some(name) = clean_name(&said) {
            prop_assert!(!name.contains([',', ';', '"']));
            prop_assert_eq!(clean_name(&name), Some(name));
        }
    }
}
