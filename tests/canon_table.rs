//! The plain phrase of every kind of act, as a table. The wording is this program's own, so
//! the table freezes it: a job file saved today must read the same for good.

use num_rational::Ratio;
use railhand::grammar::ask::{
    About, Apart, Counted, Infill, Mood, NotchAsk, RowAsk, StrengthAsk, TakeoffAsk, Task, Whose, WhyAsk, WorkAsk,
};
use railhand::grammar::canon::{MOST_BRACKETS, MOST_SUM, clean_name, clean_note, read, write};
use railhand::grammar::{Act, Query, Talk};
use railhand::job::{
    Anyway, BalustersAt, Basis, Blocking, Choice, DeckFact, End, EndOf, Fact, Fall, Fixing, Flank, FlightFact, Foot,
    Gate, GateAt, Head, HouseEnd, Hung, Jamb, JoistsRun, KeepOff, Lands, LongPart, Member, Mount, Newels, Nosing,
    NotchTold, OpenSides, Order, Percent, PostRole, PostSize, RiserKind, RunId, RunPatch, Setting, Spot, Stage,
    StairAt, StairMeasure, StairOpening, Stairs, StartWith, StickOf, Swing, Thing, Told, Turn, Turned, View,
};
use railhand::job::{Duration, Grade, Lie, Species, TimberTold};
use railhand::job::{LawTold, Local};
use railhand::limits::LIMITS;
use railhand::limits::{Edition, Place};
use railhand::measure::{Length, Lumber, Shade};
use railhand::sums::{Expr, Into, Sum};
use rust_decimal::Decimal;

fn ft(feet: i64, inches: i64) -> Length {
    Length::inches(feet * 12 + inches)
}

fn inch(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("a table's lengths are in bounds")
}

fn mm(n: i128) -> Length {
    Length::from_mm(Ratio::from_integer(n)).expect("a table's lengths are in bounds")
}

/// Holds one row to both directions.
fn holds(phrase: &str, act: Act) {
    assert_eq!(write(&act), phrase);
    assert_eq!(read(phrase), Some(act), "{phrase}");
}

fn tells(rows: impl IntoIterator<Item = (&'static str, Fact)>) {
    for (phrase, fact) in rows {
        holds(phrase, Act::Tell(vec![fact.clone()]));
        holds(&format!("suppose: {phrase}"), Act::Suppose(vec![fact]));
    }
}

fn run(set: impl FnOnce(&mut RunPatch)) -> Fact {
    let mut patch = RunPatch::default();
    set(&mut patch);
    Fact::Run(RunId(1), patch)
}

fn long(length: Length, basis: Option<Basis>) -> Fact {
    run(|p| (p.length, p.basis) = (Some(Told::plain(length)), basis))
}

#[test]
fn each_choice_of_where_posts_go_has_its_phrase() {
    let chosen = |choice| run(|p| p.choices = vec![choice]);
    let spot = Spot { at: ft(7, 0), end: EndOf::From };
    let keep = |of| chosen(Choice::KeepOff(KeepOff { by: ft(1, 6), of }));
    tells([
        ("run 1: post at 7'-0\" from the from-end", chosen(Choice::Post(spot))),
        ("run 1: post at 5'-1 1/4\" from the to-end", chosen(Choice::Post(Spot { at: inch(245, 4), end: EndOf::To }))),
        ("run 1: no post at 7'-0\" from the from-end", chosen(Choice::NoPost(spot))),
        ("run 1: no told posts", chosen(Choice::NoPosts)),
        ("run 1: posts mirrored", chosen(Choice::Mirrored(true))),
        ("run 1: posts not mirrored", chosen(Choice::Mirrored(false))),
        ("run 1: no post within 1'-6\" of the from-end", keep(Thing::End(EndOf::From))),
        ("run 1: no post within 1'-6\" of the to-end", keep(Thing::End(EndOf::To))),
        ("run 1: no post within 1'-6\" of the stairs", keep(Thing::Stairs)),
        ("run 1: no post within 1'-6\" of the gate", keep(Thing::Gate)),
        ("run 1: no post within 1'-6\" of 7'-0\" from the from-end", keep(Thing::Spot(spot))),
        ("run 1: posts kept off nothing", chosen(Choice::NoKeepOff)),
        (
            "run 1: 10'-0\" clear, fewest bays, post at 7'-0\" from the from-end, posts mirrored",
            run(|p| {
                (p.length, p.basis, p.bays) = (Some(Told::plain(ft(10, 0))), Some(Basis::Clear), Some(None));
                p.choices = vec![Choice::Post(spot), Choice::Mirrored(true)];
            }),
        ),
    ]);
}

#[test]
fn each_measure_of_a_run_has_its_phrase() {
    let shaded = Told { length: inch(253, 4), shade: Some(Shade::Strong), about: false };
    let rough = Told { length: ft(22, 0), shade: Some(Shade::Shy), about: true };
    tells([
        ("run 1: 10'-0\" out to out", long(ft(10, 0), Some(Basis::Overall))),
        ("run 1: 10'-0\" clear", long(ft(10, 0), Some(Basis::Clear))),
        ("run 1: 10'-0\" centre to centre", long(ft(10, 0), Some(Basis::Centre))),
        ("run 1: 10'-0\" long", long(ft(10, 0), None)),
        ("run 1: measured clear", run(|p| p.basis = Some(Basis::Clear))),
        ("run 1: 9'-2 1/4\" out to out", long(inch(441, 4), Some(Basis::Overall))),
        ("run 1: 3200 mm out to out", long(mm(3200), Some(Basis::Overall))),
        ("run 1: 55 1/3\" clear", long(inch(166, 3), Some(Basis::Clear))),
        ("run 1: 5'-3 1/4\" strong clear", run(|p| (p.length, p.basis) = (Some(shaded), Some(Basis::Clear)))),
        ("run 1: about 22'-0\" shy long", run(|p| p.length = Some(rough))),
    ]);
}

#[test]
fn each_end_opening_and_count_of_a_run_has_its_phrase() {
    let gate = |at, width| run(|p| p.gate = Some(Some(Gate::new(at, width))));
    let stairs = |at| run(|p| p.stairs = Some(StairOpening::new(ft(4, 0), at).into()));
    let recessed = |at| {
        let recess = Some(ft(3, 0));
        run(|p| p.stairs = Some(StairOpening { recess, ..StairOpening::new(ft(4, 0), at) }.into()))
    };
    tells([
        ("run 1", run(|_| ())),
        ("run 1: called front", run(|p| p.name = Some("front".to_owned()))),
        ("run 1: gate at the from-end", gate(GateAt::From, None)),
        ("run 1: gate at the to-end 3'-0\" wide", gate(GateAt::To, Some(ft(3, 0)))),
        ("run 1: gate in the middle", gate(GateAt::Middle, None)),
        ("run 1: gate 5'-0\" from the from-end", gate(GateAt::OffFrom(ft(5, 0)), None)),
        ("run 1: gate 2'-6\" from the to-end 3'-0\" wide", gate(GateAt::OffTo(ft(2, 6)), Some(ft(3, 0)))),
        ("run 1: no gate", run(|p| p.gate = Some(None))),
        ("run 1: stairs 4'-0\" wide in the middle", stairs(StairAt::Middle)),
        ("run 1: stairs 4'-0\" wide 5'-0\" from the left", stairs(StairAt::FromLeft(ft(5, 0)))),
        ("run 1: stairs 4'-0\" wide 5'-0\" from the right", stairs(StairAt::FromRight(ft(5, 0)))),
        ("run 1: stairs 4'-0\" wide 3'-0\" deep into the deck in the middle", recessed(StairAt::Middle)),
        (
            "run 1: stairs 4'-0\" wide 3'-0\" deep into the deck 5'-0\" from the left",
            recessed(StairAt::FromLeft(ft(5, 0))),
        ),
        ("run 1: stairs 4'-0\" wide in the middle, stairs 3'-0\" wide 2'-0\" from the left", {
            let two = [(ft(4, 0), StairAt::Middle), (ft(3, 0), StairAt::FromLeft(ft(2, 0)))];
            let two = two.map(|(width, at)| StairOpening::new(width, at)).to_vec();
            run(|p| p.stairs = Some(two.into()))
        }),
        ("run 1: stairs 4'-0\" wide on the treads in the middle (4 risers, rise 7\", open on the left)", {
            let mut told = StairOpening::new(ft(4, 0), StairAt::Middle);
            told.measure = Some(StairMeasure::Treads);
            let rise = FlightFact::Rise(inch(7, 1));
            [FlightFact::Risers(4), rise, FlightFact::Open(OpenSides::Left)]
                .into_iter()
                .for_each(|f| told.flight.set(f));
            run(|p| p.stairs = Some(told.into()))
        }),
        (
            "run 1: gate across the stairs 3'-0\" wide (two leaves, swings over the deck, hinged on the left, \
             latched on the right, hinge gap 1/2\", latch gap 3/4\", self-closing, latch 54\" up)",
            {
                let hung = Hung {
                    leaves: Some(2),
                    swing: Some(Swing::OverDeck),
                    hinge: Some(Jamb::Left),
                    latch: Some(Jamb::Right),
                    hinge_gap: Some(inch(1, 2)),
                    latch_gap: Some(inch(3, 4)),
                    self_closing: Some(true),
                    leaf: None,
                    latch_height: Some(Length::inches(54)),
                };
                run(|p| p.gate = Some(Some(Gate { hung, ..Gate::new(GateAt::Stairs, Some(ft(3, 0))) })))
            },
        ),
        ("run 1: gate at the to-end (one leaf, swings out off the deck, hinged on the house side)", {
            let hung = Hung { leaves: Some(1), swing: Some(Swing::Out), hinge: Some(Jamb::House), ..Hung::default() };
            run(|p| p.gate = Some(Some(Gate { hung, ..Gate::new(GateAt::To, None) })))
        }),
        ("run 1: gate in the middle (swings both ways, latched away from the house, not self-closing)", {
            let (swing, latch) = (Some(Swing::Both), Some(Jamb::Away));
            let hung = Hung { swing, latch, self_closing: Some(false), ..Hung::default() };
            run(|p| p.gate = Some(Some(Gate { hung, ..Gate::new(GateAt::Middle, None) })))
        }),
        ("run 1: no stairs", run(|p| p.stairs = Some(Stairs::NONE))),
        ("run 1: off the house", run(|p| p.turn = Some(Turn::Start))),
        ("run 1: off by itself", run(|p| p.turn = Some(Turn::Free))),
        ("run 1: turning right", run(|p| p.turn = Some(Turn::Right(90)))),
        ("run 1: turning left 45 degrees", run(|p| p.turn = Some(Turn::Left(45)))),
        (
            "run 1: 16'-0\" on the edge",
            run(|p| (p.length, p.basis) = (Some(Told::plain(ft(16, 0))), Some(Basis::Edge))),
        ),
        ("run 1: 3 bays", run(|p| p.bays = Some(Some(3)))),
        ("run 1: 1 bay", run(|p| p.bays = Some(Some(1)))),
        ("run 1: fewest bays", run(|p| p.bays = Some(None))),
    ]);
    for end in End::ALL {
        holds(&format!("run 1: from {}", end.name()), Act::Tell(vec![run(|p| p.from = Some(end))]));
        holds(&format!("run 1: to {}", end.name()), Act::Tell(vec![run(|p| p.to = Some(end))]));
    }
}

#[test]
fn items_of_a_run_stand_in_one_order() {
    let all = run(|p| {
        p.name = Some("far side".to_owned());
        (p.length, p.basis) = (Some(Told::plain(ft(10, 0))), Some(Basis::Overall));
        (p.from, p.to) = (Some(End::Corner), Some(End::StairHead));
        p.gate = Some(Some(Gate::new(GateAt::To, Some(ft(3, 0)))));
        (p.stairs, p.bays) = (Some(Stairs::NONE), Some(Some(2)));
    });
    tells([(
        "run 1: called far side, 10'-0\" out to out, from corner, to stair head, gate at the to-end 3'-0\" wide, \
         no stairs, 2 bays",
        all,
    )]);
}

#[test]
fn each_setting_has_its_phrase() {
    use Setting::{Baluster, CentreMax, ClearMax, GapMax, GapUnder, Grade, HeightTop, Notch, Post, Tape};
    let rows = [
        ("posts: 4x4", Post(PostRole::All, PostSize::Lumber(Lumber::FOUR_BY_FOUR))),
        ("corner posts: 6x6", Post(PostRole::Corner, PostSize::Lumber(Lumber::SIX_BY_SIX))),
        ("line posts: 5/4x6", Post(PostRole::Line, PostSize::Lumber(Lumber { thick_quarters: 5, wide: 6 }))),
        ("end posts: 4x6", Post(PostRole::End, PostSize::Lumber(Lumber::by(4, 6)))),
        ("gate posts: 4 1/2\" wide", Post(PostRole::Gate, PostSize::Width(inch(9, 2)))),
        ("posts: 89 mm wide", Post(PostRole::All, PostSize::Width(mm(89)))),
        ("height: 36\" to the top", HeightTop(ft(3, 0))),
        ("gap under: 3\"", GapUnder(inch(3, 1))),
        ("balusters: 1 1/2\" wide", Baluster(inch(3, 2))),
        ("gap limit: 4\"", GapMax(inch(4, 1))),
        ("most clear: 5'-8\"", ClearMax(ft(5, 8))),
        ("most on centre: 6'-0\"", CentreMax(ft(6, 0))),
        ("above ground: 38\"", Grade(inch(38, 1))),
        ("mount: over the edge", Setting::Mount(Mount::OverEdge)),
        ("mount: inside the rim", Setting::Mount(Mount::Inside)),
        ("mount: outside the rim", Setting::Mount(Mount::Outside)),
        ("mount: on the decking", Setting::Mount(Mount::Surface)),
        ("overhang: 1\"", Setting::Overhang(inch(1, 1))),
        ("overhang: 0\"", Setting::Overhang(inch(0, 1))),
        ("skirt: 3/4\" thick", Setting::Skirt(inch(3, 4))),
        ("rim: 1 1/2\" thick", Setting::Rim(inch(3, 2))),
        ("baluster line: 5\" inside the edge", Setting::Line(inch(5, 1))),
        ("baluster line: -1 3/4\" inside the edge", Setting::Line(inch(-7, 4))),
        ("hold-back: 2 1/2\"", Setting::HoldBack(inch(5, 2))),
        ("joists: 16\" on centre", Setting::Joists(inch(16, 1))),
        ("first joist: 3/4\" in", Setting::FirstJoist(inch(3, 4))),
        ("joists run: out from the house", Setting::JoistsRun(JoistsRun::Out)),
        ("joists run: along the house", Setting::JoistsRun(JoistsRun::Along)),
        ("fixing: through bolts", Setting::Fixing(Fixing::ThroughBolts)),
        ("fixing: lags", Setting::Fixing(Fixing::Lags)),
        ("fixing: structural screws", Setting::Fixing(Fixing::Screws)),
        ("house end: post", Setting::HouseEnd(HouseEnd::Post)),
        ("house end: bracket", Setting::HouseEnd(HouseEnd::Bracket)),
        ("pool: closed off by the guard", Setting::Pool(true)),
        ("pool: none", Setting::Pool(false)),
        ("blocking: at every post", Setting::Blocking(Blocking::AtPosts)),
        ("blocking: none", Setting::Blocking(Blocking::None)),
        ("left and right: as seen from the house", Setting::View(View::House)),
        ("left and right: as seen from the yard", Setting::View(View::Yard)),
        ("notch: none", Notch(NotchTold::None)),
        ("notch: 1 1/2\" deep", Notch(NotchTold::Deep(inch(3, 2)))),
        ("tape: 1/16", Tape(16)),
    ];
    tells(rows.map(|(phrase, setting)| (phrase, Fact::Set(setting))));
}

#[test]
fn each_other_fact_has_its_phrase() {
    tells([
        ("drop run 2", Fact::DropRun(RunId(2))),
        ("deck: 16'-0\" along the house", Fact::DeckAlong(ft(16, 0))),
        ("deck: 12'-0\" out", Fact::DeckOut(ft(12, 0))),
        ("stairs: 4'-0\" wide", Fact::StairWidth(ft(4, 0))),
        ("new deck", Fact::Deck(DeckFact::New)),
        ("start over", Fact::Deck(DeckFact::StartOver)),
        ("deck: 4'-0\" wide", Fact::Deck(DeckFact::Wide(ft(4, 0)))),
        ("stairs: measured on the treads", Fact::StairMeasure(StairMeasure::Treads)),
        ("stairs: measured between the posts", Fact::StairMeasure(StairMeasure::Posts)),
        ("stairs: measured decking to decking", Fact::StairMeasure(StairMeasure::Decking)),
        ("stairs: measured in the framing", Fact::StairMeasure(StairMeasure::Framing)),
        ("stairs: 5 risers", Fact::Flight(FlightFact::Risers(5))),
        ("stairs: rise 7 3/4\"", Fact::Flight(FlightFact::Rise(inch(31, 4)))),
        ("stairs: tread 10\"", Fact::Flight(FlightFact::Tread(inch(10, 1)))),
        ("stairs: open on both sides", Fact::Flight(FlightFact::Open(OpenSides::Both))),
        ("stairs: open on one side", Fact::Flight(FlightFact::Open(OpenSides::One))),
        ("stairs: open on the left", Fact::Flight(FlightFact::Open(OpenSides::Left))),
        ("stairs: open on the right", Fact::Flight(FlightFact::Open(OpenSides::Right))),
        ("stairs: open on neither side", Fact::Flight(FlightFact::Open(OpenSides::Neither))),
        ("stairs: newels beside the stringers", Fact::Flight(FlightFact::Newels(Newels::Beside))),
        ("stairs: newels on the treads", Fact::Flight(FlightFact::Newels(Newels::OnTreads))),
        ("stairs: lands on a slab", Fact::Flight(FlightFact::Lands(Lands::Slab))),
        ("stairs: lands on the ground", Fact::Flight(FlightFact::Lands(Lands::Ground))),
        ("stairs: lands on pavers", Fact::Flight(FlightFact::Lands(Lands::Pavers))),
        ("stairs: lands on gravel", Fact::Flight(FlightFact::Lands(Lands::Gravel))),
        ("stairs: lands on a landing", Fact::Flight(FlightFact::Lands(Lands::Landing))),
        ("stairs: total rise 5'-5 1/4\"", Fact::Flight(FlightFact::TotalRise(inch(261, 4)))),
        ("stairs: total run 7'-0\"", Fact::Flight(FlightFact::TotalRun(ft(7, 0)))),
        ("stairs: nosing 1\"", Fact::Flight(FlightFact::Nosing(inch(1, 1)))),
        ("stairs: top tread flush with the decking", Fact::Flight(FlightFact::Head(Head::Flush))),
        ("stairs: top tread one riser down", Fact::Flight(FlightFact::Head(Head::OneDown))),
        ("stairs: open risers", Fact::Flight(FlightFact::Between(RiserKind::Open))),
        ("stairs: closed risers", Fact::Flight(FlightFact::Between(RiserKind::Closed))),
        ("stairs: open risers 4\"", Fact::Flight(FlightFact::Between(RiserKind::Opening(inch(4, 1))))),
        ("stairs: landing 36\" deep", Fact::Flight(FlightFact::Landing(inch(36, 1)))),
        ("stairs: ground falls 1/4\" in 12\"", {
            Fact::Flight(FlightFact::Fall(Fall { by: inch(1, 4), over: inch(12, 1) }))
        }),
        ("stairs: ground rises 6\" in 120\"", {
            Fact::Flight(FlightFact::Fall(Fall { by: -inch(6, 1), over: inch(120, 1) }))
        }),
        ("stairs: rail 36\" above the nosings", Fact::Flight(FlightFact::Height(inch(36, 1)))),
        ("stairs: none", Fact::NoStairs),
        ("note: inspector Thursday at 10, call first", Fact::Note("inspector Thursday at 10, call first".to_owned())),
        ("drop note 3", Fact::DropNote(3)),
    ]);
    let three = Act::Tell(vec![Fact::DeckAlong(ft(16, 0)), Fact::Note("12 out?".to_owned()), Fact::DropRun(RunId(1))]);
    holds("deck: 16'-0\" along the house; note: 12 out?; drop run 1", three);
}

#[test]
fn each_fact_of_the_feet_has_its_phrase() {
    tells(
        [
            ("nosing: cut back at the posts", Foot::Nosing(Nosing::CutBack)),
            ("nosing: whole at the posts", Foot::Nosing(Nosing::Whole)),
            ("decking: 1\" thick", Foot::Decking(inch(1, 1))),
            ("rim: 9 1/4\" tall", Foot::RimTall(inch(37, 4))),
            ("cap: 1 1/2\" on the posts", Foot::Cap(inch(3, 2))),
            ("posts above the rail: 4\"", Foot::Above(inch(4, 1))),
            ("blade: 7 1/4\"", Foot::Blade(inch(29, 4))),
            ("bolts: 1/2\"", Foot::Bolt(inch(1, 2))),
            ("angled posts: square to the first side", Foot::Turned(Turned::First)),
            ("angled posts: square to the next side", Foot::Turned(Turned::Next)),
            ("angled posts: splitting the turn", Foot::Turned(Turned::Split)),
            ("notch at the rail: 1 1/2\" deep", Foot::RailNotch(inch(3, 2))),
            ("notched anyway: a sleeve that carries nothing", Foot::Anyway(Anyway::Sleeve)),
            ("notched anyway: told so", Foot::Anyway(Anyway::Told)),
        ]
        .map(|(phrase, foot)| (phrase, Fact::Set(Setting::Foot(foot)))),
    );
}

#[test]
fn each_question_of_the_feet_has_its_phrase() {
    let (deep, wide) = (inch(3, 2), PostSize::Width(inch(57, 16)));
    let rows = [
        ("notch?", NotchAsk::Cut(Whose::All)),
        ("notch at: inside corner?", NotchAsk::Cut(Whose::At(End::InsideCorner))),
        ("notch of post 3?", NotchAsk::Cut(Whose::Number(3))),
        ("notch of the line posts?", NotchAsk::Cut(Whose::Line)),
        ("post length?", NotchAsk::Length(Whose::All)),
        ("post above the deck?", NotchAsk::Above(Whose::All)),
        ("cutting steps at: corner?", NotchAsk::Steps(Whose::At(End::Corner))),
        ("foot drawn at: stair head?", NotchAsk::Draw(Whose::At(End::StairHead))),
        ("bolts?", NotchAsk::Bolts(Whose::All)),
        ("same cuts?", NotchAsk::Same),
        ("notch height?", NotchAsk::Tall),
        ("left of a 1 1/2\" notch?", NotchAsk::Left { deep, post: None }),
        ("left of a 1 1/2\" notch in posts 3 9/16\" wide?", NotchAsk::Left { deep, post: Some(wide) }),
        (
            "left of a 1 1/2\" notch in posts 4x6?",
            NotchAsk::Left { deep, post: Some(PostSize::Lumber(Lumber::by(4, 6))) },
        ),
        ("may notch 6x6?", NotchAsk::May(Lumber::SIX_BY_SIX)),
        ("old notched posts?", NotchAsk::Old(None)),
        ("old notched posts 4x4?", NotchAsk::Old(Some(Lumber::FOUR_BY_FOUR))),
    ];
    rows.into_iter().for_each(|(phrase, ask)| holds(phrase, Act::Query(Query::Notch(ask))));
}

#[test]
fn each_question_has_its_phrase() {
    let length = ft(13, 0);
    let rows = [
        ("layout?", Query::Layout(None)),
        ("layout of run 1?", Query::Layout(Some(RunId(1)))),
        ("posts?", Query::Posts(None)),
        ("posts of run 1?", Query::Posts(Some(RunId(1)))),
        ("bays?", Query::Bays(None)),
        ("bays of run 12?", Query::Bays(Some(RunId(12)))),
        ("length of run 1?", Query::RunLength(RunId(1))),
        ("length right of the stairs of run 1?", Query::Flank(RunId(1), Flank::Right)),
        ("job?", Query::Job),
        ("actual size of 4x4?", Query::Actual(Lumber::FOUR_BY_FOUR)),
        ("length 13'-0\"?", Query::Measure { length, shade: None, about: false }),
        ("length about 13'-0\" strong?", Query::Measure { length, shade: Some(Shade::Strong), about: true }),
        ("why?", Query::Why),
        ("why not bays of 10'-0\"?", Query::WhyOf(WhyAsk::NotBay(ft(10, 0), Apart::Unsaid))),
        ("why not bays of 6'-0\" clear?", Query::WhyOf(WhyAsk::NotBay(ft(6, 0), Apart::Clear))),
        ("why not bays of 6'-0\" on centre?", Query::WhyOf(WhyAsk::NotBay(ft(6, 0), Apart::Centre))),
        ("why not 2 bays in run 1?", Query::WhyOf(WhyAsk::NotBays(RunId(1), 2))),
        ("why a post at 5'-2\" in run 2?", Query::WhyOf(WhyAsk::PostAt(RunId(2), ft(5, 2)))),
        ("why the line posts in run 1?", Query::WhyOf(WhyAsk::LinePosts(RunId(1)))),
        ("why the figure 4'-10\"?", Query::WhyOf(WhyAsk::Length(ft(4, 10)))),
        ("why the figure 66 3/4?", Query::WhyOf(WhyAsk::Number(Ratio::new(267, 4)))),
        ("why 13 balusters?", Query::WhyOf(WhyAsk::Counted(Counted::Balusters, 13))),
        ("rules?", Query::Rules),
        ("rules found?", Query::RulesFound),
        ("sources?", Query::Sources),
    ];
    rows.into_iter().for_each(|(phrase, query)| holds(phrase, Act::Query(query)));
    assert!(LIMITS.len() > 5, "the table of limits is there");
    LIMITS.iter().for_each(|limit| holds(&format!("rule {}?", limit.id), Act::Query(Query::Rule((*limit).into()))));
}

#[test]
fn rows_asked_for_have_their_phrase() {
    use railhand::figure::Value;
    use railhand::quantity::RowId::{BalusterCount, BayClear, Gap, PostSize as Size};
    let six = Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(Lumber::SIX_BY_SIX)));
    let bay = |inches| (BayClear, Value::Length(Length::inches(inches)));
    let asked = |wants, mood, given, supposed| Act::Query(Query::Row(RowAsk { wants, mood, given, supposed }));
    // A note may end as a question does.
    let note = Fact::Note("which post?".to_owned());
    let of_run = run(|p| (p.length, p.basis) = (Some(Told::plain(ft(10, 0))), Some(Basis::Clear)));
    let rows = [
        (
            "figure: gap; with balusters 9?",
            asked(vec![Gap], Mood::Figure, vec![(BalusterCount, Value::Count(9))], vec![]),
        ),
        (
            "figure: gap; figure: balusters; with bay 4'-10\"; if posts: 6x6?",
            asked(vec![Gap, BalusterCount], Mood::Figure, vec![bay(58)], vec![six.clone()]),
        ),
        (
            "judge: gap; with gap 4 1/8\"?",
            asked(vec![Gap], Mood::Judge, vec![(Gap, Value::Length(inch(33, 8)))], vec![]),
        ),
        (
            "fault: gap; with gap 4 1/8\"?",
            asked(vec![Gap], Mood::Fault, vec![(Gap, Value::Length(inch(33, 8)))], vec![]),
        ),
        ("judge: post size; if posts: 6x6?", asked(vec![Size], Mood::Judge, vec![], vec![six.clone()])),
        // Three bays, two of them alike.
        (
            "figure: balusters; with bay 5'-0\"; with bay 5'-0\"; with bay 3'-5\"?",
            asked(vec![BalusterCount], Mood::Figure, vec![bay(60), bay(60), bay(41)], vec![]),
        ),
        (
            "figure: gap; if run 1: 10'-0\" clear; if note: which post?; if posts: 6x6?",
            asked(vec![Gap], Mood::Figure, vec![], vec![of_run, note.clone(), six]),
        ),
        (
            "figure: gap; if note: which post???",
            asked(vec![Gap], Mood::Figure, vec![], vec![Fact::Note("which post??".to_owned())]),
        ),
    ];
    rows.into_iter().for_each(|(phrase, act)| holds(phrase, act));
    let none = [
        "figure: gap; judge: bay?",
        "judge: gap; fault: bay?",
        "figure: gap; with bay 5'-0\"; figure: bay?",
        "figure: gap; figure: gap; figure: gap; figure: gap?",
        "figure: gap; if?",
        "figure: ?",
    ];
    none.into_iter().for_each(|line| assert_eq!(read(line), None, "{line}"));
}

#[test]
fn each_sum_has_its_phrase() {
    let rows = [
        ("pieces: 38\" out of 16'-0\"", Sum::Pieces { piece: inch(38, 1), from: ft(16, 0) }),
        ("sticks: 62 pieces at 4", Sum::Sticks { pieces: 62, per: 4 }),
        ("sticks: 1 piece at 4", Sum::Sticks { pieces: 1, per: 4 }),
        ("convert: 150 mm to inches", Sum::Convert(mm(150), Into::Inches)),
        ("convert: 150 mm to feet and inches", Sum::Convert(mm(150), Into::FeetInches)),
        ("convert: 5'-0\" to feet", Sum::Convert(ft(5, 0), Into::Feet)),
        ("convert: 5'-0\" to mm", Sum::Convert(ft(5, 0), Into::Millimetres)),
        ("convert: 5'-0\" to cm", Sum::Convert(ft(5, 0), Into::Centimetres)),
        ("convert: 5'-0\" to m", Sum::Convert(ft(5, 0), Into::Metres)),
        ("diagonal: 10'-0\" by 14'-0\"", Sum::Diagonal(ft(10, 0), ft(14, 0))),
        ("bigger: 19/32\" or 5/8\"", Sum::Bigger(inch(19, 32), inch(5, 8))),
    ];
    rows.into_iter().for_each(|(phrase, sum)| holds(phrase, Act::Sum(sum)));
}

fn b(expr: Expr) -> Box<Expr> {
    Box::new(expr)
}

#[test]
fn an_expression_is_bracketed_only_where_it_must_be() {
    use Expr::{Less, Over, Plus, Times};
    let n = |num, den| b(Expr::Number(Ratio::new(num, den)));
    let l = |num, den| b(Expr::Length(inch(num, den)));
    let rows = [
        ("sum: 5 x 3 13/16\" + 4 x 1 1/2\"", Plus(b(Times(n(5, 1), l(61, 16))), b(Times(n(4, 1), l(3, 2))))),
        ("sum: 1 + 2 - 3", Less(b(Plus(n(1, 1), n(2, 1))), n(3, 1))),
        ("sum: 1 - (2 + 3)", Less(n(1, 1), b(Plus(n(2, 1), n(3, 1))))),
        ("sum: (1 + 2) x 3\"", Times(b(Plus(n(1, 1), n(2, 1))), l(3, 1))),
        ("sum: 6\" / (2 x 3)", Over(l(6, 1), b(Times(n(2, 1), n(3, 1))))),
        ("sum: 6\" / 2 x 3", Times(b(Over(l(6, 1), n(2, 1))), n(3, 1))),
        ("sum: 1/2 / 2 1/2 - -3/8\"", Less(b(Over(n(1, 2), n(5, 2))), l(-3, 8))),
        ("sum: 2'-5 1/2\" / 13", Over(l(59, 2), n(13, 1))),
        ("sum: 7", Expr::Number(Ratio::from_integer(7))),
    ];
    rows.into_iter().for_each(|(phrase, expr)| holds(phrase, Act::Sum(Sum::Value(expr))));
}

#[test]
fn talk_has_its_phrase() {
    let rows = [
        ("undo", Talk::Undo),
        ("redo", Talk::Redo),
        ("keep it", Talk::Keep),
        ("leave it", Talk::Leave),
        ("hello", Talk::Hello),
        ("thanks", Talk::Thanks),
        ("help", Talk::Help),
    ];
    rows.into_iter().for_each(|(phrase, talk)| holds(phrase, Act::Talk(talk)));
}

/// NIST Handbook 44, appendix C: 1 in. = 25.4 mm exactly, 1 ft = 12 in.
#[test]
fn lengths_read_as_the_published_units_have_it() {
    let rows = [
        ("length 1 mm?", Some((5, 127))),
        ("length 12.7 mm?", None), // half an inch, and written so: not a plain phrase
        ("length 127.5 mm?", Some((1275, 254))),
        ("length 1/2\"?", Some((1, 2))),
        ("length 1'-0\"?", Some((12, 1))),
        ("length 12\"?", None),
        ("length -2'-0 1/64\"?", Some((-1537, 64))),
    ];
    for (phrase, inches) in rows {
        let length = match read(phrase) {
            Some(Act::Query(Query::Measure { length, .. })) => Some(length),
            _ => None,
        };
        assert_eq!(length, inches.map(|(num, den)| inch(num, den)), "{phrase}");
    }
}

/// Near misses of a plain phrase: left to the loose grammar.
#[rustfmt::skip]
const NOT_PLAIN: &[&str] = &[
    "", "run", "run 1:", "run 1: ", "run 01: 3 bays", "run 4294967296: 3 bays", "run 1: 10 ft long", "run 1: 10'-0\"",
    "run 1: 10'-0\" clear,", "run 1: to corner, from corner", "run 1: from corner, from corner", "run 1: from Corner",
    "run 1: called", "run 1: called Front", "run 1: called front to corner", "run 1: 10'-12\" clear",
    "run 1: 10' clear", "run 1: 0'-6\" clear", "run 1: 6/8\" clear", "run 1: 3/0\" clear", "run 1: 70000 bays",
    "run 1: 1 bays", "run 1; run 2;", "posts 4x4", "posts: 8/4x6", "posts: 20000x6", "tape: 1/7", "tape: 1/300",
    "note:", "note: a  b", "note: a\u{7}b", "suppose: layout?", "suppose:", "rule no-such-rule?", "why", "keep it!",
    "keep  it", "sum: ", "sum: 1 +", "sum: (1 + 2", "sum: (1)", "sum: 1 + (2 x 3)", "sum: 1+2",
    "sum: 99999999999999999999999999999999999999999", "pieces: 38\" out of 192\"", "length 1000000000001\"?",
    "length 0.0000000000001 mm?", "height: 3'-0\" to the top", "sticks: 18446744073709551616 pieces at 4",
];

#[test]
fn what_is_not_a_plain_phrase_is_not_read() {
    NOT_PLAIN.iter().for_each(|line| assert_eq!(read(line), None, "{line:?}"));
}

#[test]
fn only_blanks_around_a_phrase_are_forgiven() {
    assert_eq!(read("  undo\t\n"), Some(Act::Talk(Talk::Undo)));
}

#[test]
fn brackets_and_length_of_a_sum_have_an_end() {
    let nested = |n: usize| format!("sum: {}1 + 1{}", "2 x (".repeat(n), ")".repeat(n));
    assert!(read(&nested(usize::from(MOST_BRACKETS))).is_some());
    assert_eq!(read(&nested(usize::from(MOST_BRACKETS) + 1)), None);
    assert_eq!(read(&nested(200_000)), None);
    let chain = |n: usize| format!("sum: 1{}", " + 1".repeat(n));
    assert!(read(&chain((MOST_SUM - 1) / 4)).is_some());
    assert_eq!(read(&chain(MOST_SUM / 4)), None);
}

#[test]
fn words_of_the_builders_own_are_made_safe() {
    let notes = [
        ("call; then go", Some("call, then go")),
        ("a\nb\tc", Some("a b c")),
        ("\u{1b}[31mred", Some("[31mred")),
        ("turn\u{202e}ed\u{200b}", Some("turned")),
        (" ; ", Some(",")),
        ("\u{7} \n", None),
    ];
    for (said, clean) in notes {
        assert_eq!(clean_note(said).as_deref(), clean, "{said:?}");
    }
    let names = [
        ("Front", Some("front")),
        ("the FAR  side", Some("the far side")),
        ("neighbour's side, east", Some("neighbour's side east")),
        ("long side", Some("long side")),
        ("side 2", Some("side 2")),
        ("gate side", None),
        ("12", None),
        ("?!", None),
    ];
    for (said, clean) in names {
        assert_eq!(clean_name(said).as_deref(), clean, "{said:?}");
    }
}

/// An act built by hand against the laws still gets a line that reads, and never one that says more.
#[test]
fn unclean_words_never_break_out_of_their_phrase() {
    let note = Act::Tell(vec![Fact::Note("x; drop run 1\nrun 2".to_owned())]);
    assert_eq!(write(&note), "note: x, drop run 1 run 2");
    assert_eq!(write(&Act::Tell(vec![Fact::Note(String::new())])), "note: (no words)");
    let name = Act::Tell(vec![run(|p| p.name = Some("a, no gate; undo".to_owned()))]);
    assert_eq!(write(&name), "run 1");
}

#[test]
fn the_wood_and_the_rail() {
    use TimberTold::{Duration as Load, Grade as Graded, Incised, Species as Wood, Wet};
    let rows = [
        ("species: southern pine", Wood(Species::SouthernPine)),
        ("species: douglas fir-larch", Wood(Species::DouglasFir)),
        ("species: hem-fir", Wood(Species::HemFir)),
        ("species: spruce-pine-fir", Wood(Species::SprucePineFir)),
        ("species: western cedar", Wood(Species::Cedar)),
        ("species: redwood", Wood(Species::Redwood)),
        ("lumber grade: no. 1", Graded(Grade::No1)),
        ("lumber grade: no. 2", Graded(Grade::No2)),
        ("service: wet", Wet(true)),
        ("service: dry", Wet(false)),
        ("incised: yes", Incised(true)),
        ("incised: no", Incised(false)),
        ("load duration: permanent", Load(Duration::Permanent)),
        ("load duration: ten years", Load(Duration::TenYears)),
        ("load duration: two months", Load(Duration::TwoMonths)),
        ("load duration: seven days", Load(Duration::SevenDays)),
        ("load duration: ten minutes", Load(Duration::TenMinutes)),
        ("load duration: impact", Load(Duration::Impact)),
    ];
    tells(rows.map(|(phrase, told)| (phrase, Fact::Set(Setting::Timber(told)))));
}

#[test]
fn span_and_strength() {
    let whole = StrengthAsk {
        about: About::Bay,
        span: Some(ft(8, 0)),
        height: Some(ft(3, 6)),
        post: Some(Lumber::SIX_BY_SIX),
        rail: Some(Lumber::by(2, 4)),
        lie: Some(Lie::Edge),
        cap: Some(Lumber::by(2, 6)),
        rim: Some(Lumber::by(2, 8)),
        species: Some(Species::SouthernPine),
    };
    let bay = "8'-0\" clear, 42\" high, 6x6 posts, 2x4 rail, on edge, 2x6 cap, 2x8 rim, southern pine";
    let few = StrengthAsk { lie: Some(Lie::Flat), ..StrengthAsk::of(About::Longest) };
    let rows = [
        (format!("strength of a bay: {bay}?"), whole),
        ("strength of a bay?".to_owned(), StrengthAsk::of(About::Bay)),
        ("strength of a bay stretched?".to_owned(), StrengthAsk::of(About::Reach)),
        ("strength of the longest bay: flat?".to_owned(), few),
        ("strength of one rail beside another?".to_owned(), StrengthAsk::of(About::Stiffer)),
        ("strength of a post?".to_owned(), StrengthAsk::of(About::Post)),
        ("strength of a notched post?".to_owned(), StrengthAsk::of(About::Left)),
        ("strength of the upper bolt?".to_owned(), StrengthAsk::of(About::Bolt)),
    ];
    for (phrase, ask) in rows {
        holds(&phrase, Act::Query(Query::Strength(ask)));
    }
}

#[test]
fn each_fact_of_the_order_has_its_phrase() {
    let stick = StickOf { size: Lumber::by(2, 4), feet: 8 };
    let money = |cents| Decimal::new(cents, 2);
    let rows = [
        ("top rail: 2x4", Order::Rail(Member::Top, Some(Lumber::by(2, 4)))),
        ("cap: 5/4x6", Order::Rail(Member::Cap, Some(Lumber { thick_quarters: 5, wide: 6 }))),
        ("bottom rail: none", Order::Rail(Member::Bottom, None)),
        ("top rail lies: flat", Order::Lay(Member::Top, Lie::Flat)),
        ("bottom rail lies: on edge", Order::Lay(Member::Bottom, Lie::Edge)),
        ("balusters: between the rails", Order::Balusters(BalustersAt::Between)),
        ("balusters: on the rails' faces", Order::Balusters(BalustersAt::Faces)),
        ("start: with a gap", Order::StartWith(StartWith::Gap)),
        ("start: with a baluster", Order::StartWith(StartWith::Baluster)),
        ("balusters cut: 31 7/8\"", Order::Cut(LongPart::Baluster, inch(255, 8))),
        ("posts cut: 52\"", Order::Cut(LongPart::Post, ft(0, 52))),
        ("bracket: 1/8\" each end", Order::Bracket(inch(1, 8))),
        ("bays: 4 at 4'-7 5/8\" clear", Order::Bays(4, inch(445, 8))),
        ("bays: none", Order::NoBays),
        ("stock: 8, 12 ft", Order::Sold(None, vec![8, 12])),
        ("stock: 2x4 in 8 ft", Order::Sold(Some(Lumber::by(2, 4)), vec![8])),
        ("on hand: 3 2x4 at 10'-0\"", Order::OnHand(Lumber::by(2, 4), ft(10, 0), 3)),
        ("kerf: 1/8\"", Order::Kerf(inch(1, 8))),
        ("waste: 10 %", Order::Percent(Percent::Waste, Decimal::from(10))),
        ("tax: 6.25 %", Order::Percent(Percent::Tax, money(625))),
        ("markup: 15 %", Order::Percent(Percent::Markup, Decimal::from(15))),
        ("spares: 3", Order::Spares(3)),
        ("price: 2x4x8 at 7.98", Order::Price(stick, money(798))),
        ("labour: 450", Order::Labour(Decimal::from(450))),
    ];
    tells(rows.map(|(phrase, order)| (phrase, Fact::Order(order))));
}

#[test]
fn each_stage_of_the_work_has_its_phrase() {
    for stage in Stage::ALL {
        holds(&format!("done: {}", stage.name()), Act::Tell(vec![Fact::Done(stage, true)]));
        holds(&format!("not done: {}", stage.name()), Act::Tell(vec![Fact::Done(stage, false)]));
    }
}

#[test]
fn each_rule_told_has_its_phrase() {
    let place = |id| LawTold::Place(Place::find(id).expect("a place held"));
    let rows = [
        ("code: 2018 IRC", LawTold::Edition(Edition::Irc2018)),
        ("code: 2021 IRC", LawTold::Edition(Edition::Irc2021)),
        ("code: 2024 IRC", LawTold::Edition(Edition::Irc2024)),
        ("place: canada", place("canada")),
        ("place: ibc", place("ibc")),
        ("department asks: height 42\"", LawTold::Local(Local::Height, ft(0, 42))),
        ("department asks: gaps under 3 1/2\"", LawTold::Local(Local::Gap, inch(7, 2))),
        ("department asks: drop over 24\"", LawTold::Local(Local::Drop, ft(0, 24))),
    ];
    for (phrase, told) in rows {
        holds(phrase, Act::Tell(vec![Fact::Set(Setting::Law(told))]));
    }
    holds("code?", Act::Query(Query::Law));
}

#[test]
fn each_question_about_the_work_has_its_phrase() {
    let rows = [
        ("untold?", WorkAsk::Untold),
        ("order of work?", WorkAsk::Order),
        ("inspection?", WorkAsk::Inspector),
        ("changed?", WorkAsk::Changed),
        ("kept notes?", WorkAsk::Notes),
        ("help with notches?", WorkAsk::Help(Task::Notches)),
        ("help with gate?", WorkAsk::Help(Task::Gate)),
    ];
    for (phrase, ask) in rows {
        holds(phrase, Act::Query(Query::Work(ask)));
    }
    holds("marks from the far end?", Act::Query(Query::MarksBack(None)));
    holds("marks from the far end of run 2?", Act::Query(Query::MarksBack(Some(RunId(2)))));
}

#[test]
fn each_question_about_parts_has_its_phrase() {
    let infill =
        |count, baluster, limit, start| TakeoffAsk::Infill(Infill { clear: ft(5, 10), count, baluster, limit, start });
    let rows = [
        ("balusters?", TakeoffAsk::Balusters(None)),
        ("balusters of run 2?", TakeoffAsk::Balusters(Some(RunId(2)))),
        ("balusters in 5'-10\" clear?", infill(None, None, None, None)),
        (
            "13 balusters 1 1/2\" wide in 5'-10\" clear, under 4\", start with a gap?",
            infill(Some(13), Some(inch(3, 2)), Some(ft(0, 4)), Some(StartWith::Gap)),
        ),
        ("gap at 5\" on centre?", TakeoffAsk::OnCentre { centre: ft(0, 5), baluster: None }),
        (
            "gap at 5\" on centre, balusters 3/4\" wide?",
            TakeoffAsk::OnCentre { centre: ft(0, 5), baluster: Some(inch(3, 4)) },
        ),
        ("gap 3 7/8\"?", TakeoffAsk::Gap(inch(31, 8))),
        ("gap under 3\"?", TakeoffAsk::GapUnder(ft(0, 3))),
        ("cut short at 3'-10 5/8\"?", TakeoffAsk::CutShort(inch(373, 8))),
        ("gap by what passes?", TakeoffAsk::ByObject),
        ("gaps dried?", TakeoffAsk::Dried { wood: None, gap: None }),
        (
            "gaps dried from 3 7/8\", western cedar?",
            TakeoffAsk::Dried { wood: Some(Species::Cedar), gap: Some(inch(31, 8)) },
        ),
        ("holes 4 1/2\" on centre?", TakeoffAsk::Routed { pitch: inch(9, 2), clear: None, baluster: None }),
        (
            "holes 4 1/2\" on centre in 5'-10\" clear, balusters 3/4\" wide?",
            TakeoffAsk::Routed { pitch: inch(9, 2), clear: Some(ft(5, 10)), baluster: Some(inch(3, 4)) },
        ),
        ("same marks, balusters 1 3/8\" wide?", TakeoffAsk::Measured(inch(11, 8))),
        ("parts?", TakeoffAsk::Parts),
        ("cuts?", TakeoffAsk::Cuts),
        ("buy?", TakeoffAsk::Buy),
        ("cost?", TakeoffAsk::Cost),
        ("splits?", TakeoffAsk::Splits(None)),
        ("splits of run 1?", TakeoffAsk::Splits(Some(RunId(1)))),
        ("cut length of balusters?", TakeoffAsk::CutLength(LongPart::Baluster)),
        ("cut length of posts?", TakeoffAsk::CutLength(LongPart::Post)),
        ("cut length of rails?", TakeoffAsk::RailLength),
    ];
    for (phrase, ask) in rows {
        holds(phrase, Act::Query(Query::Takeoff(ask)));
    }
}
