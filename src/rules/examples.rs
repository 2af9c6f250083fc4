//! The example jobs of the rules: one that trips each, one near it that does not.

use crate::job::{
    BalustersAt, Basis, End, Fact, Fixing, FlightFact, Foot, Gate, GateAt, Hung, JoistsRun, Lie, Member, Mount,
    NotchTold, Order, PostRole, PostSize, RiserKind, RunId, RunPatch, Setting, Species, StairAt, StairOpening, Swing,
    TimberTold, Told, Turn,
};
use crate::measure::{Length, Lumber, Shade};

fn run(inches: i64, patch: RunPatch) -> Fact {
    let length = Some(patch.length.unwrap_or(Told::plain(Length::inches(inches))));
    let (from, to) = (patch.from.or(Some(End::Corner)), patch.to.or(Some(End::Corner)));
    Fact::Run(RunId(1), RunPatch { length, from, to, ..patch })
}

fn plain(inches: i64) -> Fact {
    run(inches, RunPatch::default())
}

fn set(s: Setting) -> Vec<Fact> {
    vec![Fact::Set(s)]
}

fn bays(inches: i64, n: u16) -> Fact {
    run(inches, RunPatch { bays: Some(Some(n)), ..RunPatch::default() })
}

fn told_bays(limit: Setting, inches: i64, n: u16) -> Vec<Fact> {
    vec![Fact::Set(limit), bays(inches, n)]
}

fn gate(inches: i64) -> Vec<Fact> {
    let gate = Gate::new(GateAt::Middle, Some(Length::inches(inches)));
    vec![run(240, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() })]
}

fn gate_at_head(swing: Swing) -> Vec<Fact> {
    let hung = Hung { swing: Some(swing), ..Hung::default() };
    let gate = Gate { hung, ..Gate::new(GateAt::To, Some(Length::inches(36))) };
    vec![run(120, RunPatch { to: Some(End::StairHead), gate: Some(Some(gate)), ..RunPatch::default() })]
}

fn notch(sixteenths: i64, post: Lumber) -> Vec<Fact> {
    let depth = Setting::Notch(NotchTold::Deep(Length::sixteenths(sixteenths)));
    vec![Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(post))), Fact::Set(depth)]
}

fn from(end: End) -> Vec<Fact> {
    vec![run(120, RunPatch { from: Some(end), ..RunPatch::default() })]
}

/// 12 ft in two bays of 5'-6 3/4" clear, a 2x4 for the top rail.
fn rail(lie: Lie) -> Vec<Fact> {
    let two_by_four = Order::Rail(Member::Top, Some(Lumber::by(2, 4)));
    vec![plain(144), Fact::Order(two_by_four), Fact::Order(Order::Lay(Member::Top, lie))]
}

/// A guard of southern pine so high, its posts not told.
fn pine(height: i64) -> Vec<Fact> {
    let wood = Setting::Timber(TimberTold::Species(Species::SouthernPine));
    [set(wood), set(Setting::HeightTop(Length::inches(height)))].concat()
}

fn no_bottom_rail(balusters: BalustersAt) -> Vec<Fact> {
    [Order::Rail(Member::Bottom, None), Order::Balusters(balusters)].into_iter().map(Fact::Order).collect()
}

fn bolted(height: i64) -> Vec<Fact> {
    [set(Setting::Fixing(Fixing::ThroughBolts)), set(Setting::HeightTop(Length::inches(height)))].concat()
}

/// A deck 16 ft across and 12 out, so far home, as its three sides; then what else is told.
fn deck(home: i64, more: impl IntoIterator<Item = Fact>) -> Vec<Fact> {
    let turned = |id, turn, inches| {
        let length = Some(Told::plain(Length::inches(inches)));
        Fact::Run(RunId(id), RunPatch { turn: Some(turn), length, ..RunPatch::default() })
    };
    let right = Turn::Right(90);
    let sides = [turned(1, Turn::Start, 144), turned(2, right, 192), turned(3, right, home)];
    sides.into_iter().chain(more).collect()
}

fn over_the_edge(home: i64, more: impl IntoIterator<Item = Fact>) -> Vec<Fact> {
    deck(home, [Fact::Set(Setting::Mount(Mount::OverEdge))].into_iter().chain(more))
}

/// One corner of two posts, so many sixteenths back from it.
fn held_back(sixteenths: i64) -> Vec<Fact> {
    let side = |id, turn, to| {
        let length = Some(Told::plain(Length::inches(120)));
        Fact::Run(RunId(id), RunPatch { turn: Some(turn), length, to: Some(to), ..RunPatch::default() })
    };
    let back = Setting::HoldBack(Length::sixteenths(sixteenths));
    vec![
        side(1, Turn::Start, End::Corner),
        side(2, Turn::Right(90), End::EndPost),
        Fact::Set(Setting::Mount(Mount::Outside)),
        Fact::Set(back),
    ]
}

/// Stairs recessed 3 ft into the front, and what hangs across them.
fn recessed(width: i64, gate: Option<Gate>) -> Vec<Fact> {
    let stairs =
        StairOpening { recess: Some(Length::inches(36)), ..StairOpening::new(Length::inches(width), StairAt::Middle) };
    let patch = RunPatch { stairs: Some(stairs.into()), gate: gate.map(Some), ..RunPatch::default() };
    over_the_edge(144, [Fact::Run(RunId(2), patch)])
}

/// One side 9 ft across in front of the house, its first joist so many sixteenths in.
fn joists(first: i64, way: JoistsRun) -> Vec<Fact> {
    let side = |id, turn, inches| {
        let length = Some(Told::plain(Length::inches(inches)));
        Fact::Run(RunId(id), RunPatch { turn: Some(turn), length, ..RunPatch::default() })
    };
    let right = Turn::Right(90);
    let told = [
        Setting::Joists(Length::inches(16)),
        Setting::FirstJoist(Length::sixteenths(first)),
        Setting::JoistsRun(way),
        Setting::Mount(Mount::OverEdge),
    ];
    // 5 ft out and home need no line post; 9 ft across takes one, at 54.
    let sides = [side(1, Turn::Start, 60), side(2, right, 108), side(3, right, 60)];
    sides.into_iter().chain(told.map(Fact::Set)).collect()
}

/// So many risers of so many sixteenths on 10 in. treads, then what else is told of the flight.
fn flight(risers: u16, sixteenths: i64, more: impl IntoIterator<Item = FlightFact>) -> Vec<Fact> {
    let rise = Length::sixteenths(sixteenths);
    let told = [FlightFact::Risers(risers), FlightFact::Rise(rise), FlightFact::Tread(Length::inches(10))];
    told.into_iter().chain(more).map(Fact::Flight).collect()
}

/// A gate across recessed stairs that swings so.
fn swinging(swing: Swing) -> Vec<Fact> {
    let hung = Hung { swing: Some(swing), ..Hung::default() };
    recessed(48, Some(Gate { hung, ..Gate::new(GateAt::Stairs, None) }))
}

/// A gate in a side at a pool, and whether it closes by itself.
fn at_a_pool(self_closing: bool) -> Vec<Fact> {
    let hung = Hung { self_closing: Some(self_closing), ..Hung::default() };
    let gate = Gate { hung, ..Gate::new(GateAt::Middle, Some(Length::inches(36))) };
    let side = run(240, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() });
    vec![Fact::Set(Setting::Pool(true)), side]
}

/// A gate in a side at a pool, its latch so far up.
fn pool_latch(inches: i64) -> Vec<Fact> {
    let hung = Hung { latch_height: Some(Length::inches(inches)), ..Hung::default() };
    let gate = Gate { hung, ..Gate::new(GateAt::Middle, Some(Length::inches(36))) };
    let side = run(240, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() });
    vec![Fact::Set(Setting::Pool(true)), side]
}

fn pool_guard(inches: i64) -> Vec<Fact> {
    vec![Fact::Set(Setting::Pool(true)), Fact::Set(Setting::HeightTop(Length::inches(inches)))]
}

fn leaf(inches: i64) -> Vec<Fact> {
    let hung = Hung { leaf: Some(Length::inches(inches)), ..Hung::default() };
    let gate = Gate { hung, ..Gate::new(GateAt::Middle, Some(Length::inches(inches + 2))) };
    vec![run(240, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() })]
}

macro_rules! examples {
    ($($name:ident = $facts:expr;)*) => { $(pub(super) fn $name() -> Vec<Fact> { $facts })* };
}

examples! {
    two_bays_in_15_ft = vec![bays(180, 2)];
    three_bays_in_15_ft = vec![bays(180, 3)];
    two_bays_over_a_told_limit = told_bays(Setting::ClearMax(Length::inches(60)), 180, 2);
    three_bays_under_a_told_limit = told_bays(Setting::ClearMax(Length::inches(60)), 180, 3);
    eight_ft_on_centre_built = vec![Fact::Set(Setting::CentreMax(Length::inches(96))), plain(192)];
    eight_ft_told_but_not_built = vec![Fact::Set(Setting::CentreMax(Length::inches(96))), plain(72)];
    no_bottom_rail_told = vec![Fact::Order(Order::Rail(Member::Bottom, None))];
    bottom_rail_told = vec![Fact::Order(Order::Rail(Member::Bottom, Some(Lumber::by(2, 4))))];
    between_rails_and_no_bottom = no_bottom_rail(BalustersAt::Between);
    on_faces_and_no_bottom = no_bottom_rail(BalustersAt::Faces);
    nothing_between = vec![bays(180, 1)];
    nothing_needed_between = vec![bays(72, 1)];
    one_bay_over_a_told_limit = told_bays(Setting::ClearMax(Length::inches(60)), 180, 1);
    six_inch_bay = vec![plain(13)];
    foot_long_bay = vec![plain(19)];
    post_2x4 = set(Setting::Post(PostRole::All, PostSize::Lumber(Lumber::by(2, 4))));
    post_4x4 = set(Setting::Post(PostRole::All, PostSize::Lumber(Lumber::FOUR_BY_FOUR)));
    height_35 = set(Setting::HeightTop(Length::inches(35)));
    height_36 = set(Setting::HeightTop(Length::inches(36)));
    height_34_over_28 = [set(Setting::HeightTop(Length::inches(34))), set(Setting::Grade(Length::inches(28)))].concat();
    height_34_over_31 = [set(Setting::HeightTop(Length::inches(34))), set(Setting::Grade(Length::inches(31)))].concat();
    gaps_to_5 = set(Setting::GapMax(Length::inches(5)));
    gaps_under_4 = set(Setting::GapMax(Length::inches(4)));
    gap_under_4 = set(Setting::GapUnder(Length::inches(4)));
    gap_under_3 = set(Setting::GapUnder(Length::inches(3)));
    notched_4x4 = notch(24, Lumber::FOUR_BY_FOUR);
    notched_6x6 = notch(24, Lumber::SIX_BY_SIX);
    half_notched_4x4 = notch(28, Lumber::FOUR_BY_FOUR);
    gate_out_over_stairs = gate_at_head(Swing::Out);
    gate_in_over_deck = gate_at_head(Swing::OverDeck);
    gate_5_ft = gate(60);
    gate_4_ft = gate(48);
    open_end = from(End::OpenEnd);
    corner_end = from(End::Corner);
    house_end = from(End::House);
    grade_31 = set(Setting::Grade(Length::inches(31)));
    grade_30 = set(Setting::Grade(Length::inches(30)));
    about_10_ft = vec![run(120, RunPatch {
        length: Some(Told { shade: Some(Shade::Strong), ..Told::plain(Length::inches(120)) }),
        ..RunPatch::default()
    })];
    corner_held_back_3 = held_back(48);
    corner_held_back_2_and_a_half = held_back(40);
    recess_36 = recessed(36, None);
    recess_48 = recessed(48, None);
    stairs_from_the_corner = over_the_edge(144, [Fact::Run(RunId(2), RunPatch {
        stairs: Some(StairOpening::new(Length::inches(48), StairAt::FromLeft(Length::ZERO)).into()),
        ..RunPatch::default()
    })]);
    side_out_to_out = over_the_edge(144, [
        Fact::Run(RunId(1), RunPatch { basis: Some(Basis::Overall), ..RunPatch::default() }),
    ]);
    gate_at_a_recessed_head = recessed(48, Some(Gate::new(GateAt::Stairs, None)));
    foot_short_of_home = over_the_edge(132, []);
    home_again = over_the_edge(144, []);
    joists_from_15_and_a_quarter = joists(244, JoistsRun::Out);
    joists_beside_the_posts = joists(136, JoistsRun::Out);
    joists_along_the_house = joists(244, JoistsRun::Along);
    only_the_spacing_told = set(Setting::Joists(Length::inches(16)));
    mount_not_said = deck(144, []);
    ten_ft = vec![plain(120)];
    flat_rail_over_5_ft_6 = rail(Lie::Flat);
    edge_rail_over_5_ft_6 = rail(Lie::Edge);
    pine_4x4_at_42 = pine(42);
    pine_4x4_at_36 = pine(36);
    pine_4x4_notched_half = [pine(36), notch(28, Lumber::FOUR_BY_FOUR)].concat();
    pine_6x6_notched_half_inch = [pine(36), notch(8, Lumber::SIX_BY_SIX)].concat();
    pine_4x4_notched_half_inch = [pine(36), notch(8, Lumber::FOUR_BY_FOUR)].concat();
    bolted_in_a_2x6 = [bolted(36), set(Setting::Foot(Foot::RimTall(Length::sixteenths(88))))].concat();
    lagged = set(Setting::Fixing(Fixing::Lags));
    bolts_of_3_8 = set(Setting::Foot(Foot::Bolt(Length::sixteenths(6))));
    bolts_of_1_2 = set(Setting::Foot(Foot::Bolt(Length::sixteenths(8))));
    mounted_on_decking = set(Setting::Mount(Mount::Surface));
    mounted_outside = set(Setting::Mount(Mount::Outside));
    bolted_at_42 = bolted(42);
    bolted_at_36 = bolted(36);
    risers_of_8 = flight(5, 128, []);
    risers_of_7_and_a_half = flight(5, 120, []);
    treads_of_9 = flight(5, 120, [FlightFact::Tread(Length::inches(9))]);
    flight_of_24 = flight(24, 120, []);
    nosing_of_half = flight(5, 120, [FlightFact::Nosing(Length::sixteenths(8))]);
    nosing_of_1 = flight(5, 120, [FlightFact::Nosing(Length::inches(1))]);
    four_risers = flight(4, 120, []);
    three_risers = flight(3, 120, []);
    stair_rail_33 = flight(5, 120, [FlightFact::Height(Length::inches(33))]);
    stair_rail_36 = flight(5, 120, [FlightFact::Height(Length::inches(36))]);
    stair_rail_39 = flight(5, 120, [FlightFact::Height(Length::inches(39))]);
    recess_shorter_than_its_flight = [flight(8, 120, []), recessed(48, None)].concat();
    landing_of_30 = flight(5, 120, [FlightFact::Landing(Length::inches(30))]);
    landing_of_36 = flight(5, 120, [FlightFact::Landing(Length::inches(36))]);
    open_risers_of_4 = flight(9, 116, [FlightFact::Between(RiserKind::Opening(Length::inches(4)))]);
    open_risers_of_3 = flight(9, 116, [FlightFact::Between(RiserKind::Opening(Length::inches(3)))]);
    open_risers_high = flight(9, 116, [FlightFact::Between(RiserKind::Open)]);
    open_risers_low = flight(4, 116, [FlightFact::Between(RiserKind::Open)]);
    pool_with_wide_gaps = [pool_guard(48), set(Setting::GapMax(Length::sixteenths(60)))].concat();
    pool_with_tight_gaps = [pool_guard(48), set(Setting::GapMax(Length::sixteenths(28)))].concat();
    pool_at_42 = pool_guard(42);
    pool_at_48 = pool_guard(48);
    pool_gate_left_open = at_a_pool(false);
    pool_gate_closing = at_a_pool(true);
    pool_latch_at_48 = pool_latch(48);
    pool_latch_at_54 = pool_latch(54);
    leaf_of_50 = leaf(50);
    leaf_of_40 = leaf(40);
    gate_out = swinging(Swing::Out);
    gate_in = swinging(Swing::OverDeck);
}
