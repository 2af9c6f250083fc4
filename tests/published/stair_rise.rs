//! Flights against figures worked outside the program. W8, W9 and W20 are rows of a sheet of
//! check values made from IRC R311.7.5, R311.7.8 and R312.1.1.

use railhand::job::Settings;
use railhand::limits;
use railhand::measure::{Length, Q, decimal};
use railhand::stairs::check::{Known, check, guarded_treads, spread, uneven};
use railhand::stairs::flight::{Clash, Flight, Ground, Head, Lack, Told, Unready, work_out};
use railhand::stairs::handrail;

fn eighths(n: i64) -> Length {
    Length::sixteenths(n * 2)
}

fn total(eighths_of: i64) -> Told {
    Told { total_rise: Some(eighths(eighths_of)), tread: Some(Length::inches(10)), ..Told::default() }
}

fn flight(told: &Told) -> Flight {
    work_out(told).unwrap_or_else(|e| panic!("{told:?}: {e:?}"))
}

/// W8: total rise in eighths; risers, each, the run at a 10 in. tread, handrail or not.
#[test]
fn w8_risers_and_handrail() {
    let rows = [
        (186, 3, "7.75", "20", false),
        (240, 4, "7.5", "30", true),
        (248, 4, "7.75", "30", true),
        (310, 5, "7.75", "40", true),
        (320, 6, "6.666667", "50", true),
        (436, 8, "6.8125", "70", true),
    ];
    for (told, risers, rise, run, handrail) in rows {
        let f = flight(&total(told));
        assert_eq!(f.riser_count(), risers, "{told}");
        assert_eq!(decimal(f.rise.as_q()).0, rise);
        assert_eq!(f.going.as_ref().map(|g| decimal(g.run.as_q()).0).as_deref(), Some(run));
        assert_eq!(handrail::needed(f.riser_count()), handrail);
    }
}

/// W9: 38 3/4 in five risers: the first tread down is 31 up, the next 23 1/4.
#[test]
fn w9_where_the_stair_guard_starts() {
    assert_eq!(guarded_treads(&flight(&total(310)), &Settings::default()), 1);
    // Level ground 30 1/4 and 30 below the decking: no tread is over 30 (by hand, R312.1.1).
    assert_eq!(
        (
            guarded_treads(&flight(&total(242)), &Settings::default()),
            guarded_treads(&flight(&total(240)), &Settings::default())
        ),
        (0, 0)
    );
}

/// The same flight told six ways (by hand: 9 x 7 1/4 = 65 1/4, 8 x 10 1/2 = 84).
#[test]
fn one_flight_told_any_way() {
    let (rise, sum) = (eighths(58), eighths(522));
    let (tread, run) = (eighths(84), Length::inches(84));
    let ways = [
        Told { risers: Some(9), rise: Some(rise), tread: Some(tread), ..Told::default() },
        Told { risers: Some(9), total_rise: Some(sum), tread: Some(tread), ..Told::default() },
        Told { rise: Some(rise), total_rise: Some(sum), total_run: Some(run), ..Told::default() },
        Told { total_rise: Some(sum), total_run: Some(run), ..Told::default() },
        Told {
            risers: Some(9),
            rise: Some(rise),
            total_rise: Some(sum),
            tread: Some(tread),
            total_run: Some(run),
            ..Told::default()
        },
        Told {
            total_rise: None,
            ground: Some(Ground { above: sum, fall: Q::from_integer(0) }),
            total_run: Some(run),
            ..Told::default()
        },
    ];
    for told in ways {
        let f = flight(&told);
        assert_eq!((f.riser_count(), f.tread_count()), (9, 8), "{told:?}");
        assert_eq!((f.rise.as_length(), f.total_rise.as_length()), (Some(rise), Some(sum)));
        let going = f.going.expect("a tread or run was told");
        assert_eq!((going.tread.as_length(), going.run.as_length()), (Some(tread), Some(run)));
    }
}

/// Flush with the decking there are as many treads as risers (common practice, no source).
#[test]
fn a_flush_top_tread_is_one_more() {
    let told = Told { head: Some(Head::Flush), ..total(310) };
    let f = flight(&told);
    assert_eq!((f.riser_count(), f.tread_count()), (5, 5));
    assert!(f.taken.iter().all(|l| l.id != "hung-one-down"));
    assert!(flight(&total(310)).taken.iter().any(|l| l.id == "hung-one-down"));
}

/// 30 up at the head, ground falling 1 in 12, 10 in. treads: by hand 30 makes 4 risers, whose
/// foot is 30 out and 2 1/2 down: 32 1/2 makes 5, whose foot is 40 out: 33 1/3 / 5 = 6 2/3.
/// Rising 1 in 12 instead, 4 risers land at 27 1/2.
#[test]
fn the_rise_is_taken_at_the_foot() {
    let on = |fall: Q| {
        let ground = Some(Ground { above: Length::inches(30), fall });
        flight(&Told { ground, tread: Some(Length::inches(10)), ..Told::default() })
    };
    let falling = on(Q::new(1, 12));
    assert_eq!((falling.riser_count(), decimal(falling.total_rise.as_q()).0.as_str()), (5, "33.333333"));
    assert_eq!(decimal(falling.rise.as_q()).0, "6.666667");
    let rising = on(Q::new(-1, 12));
    assert_eq!((rising.riser_count(), decimal(rising.total_rise.as_q()).0.as_str()), (4, "27.5"));
}

#[test]
fn ground_as_steep_as_the_stairs_is_never_reached() {
    let ground = Some(Ground { above: Length::inches(30), fall: Q::new(8, 10) });
    let told = Told { ground, tread: Some(Length::inches(10)), ..Told::default() };
    assert_eq!(work_out(&told), Err(Unready::Clash(Clash::NeverLands)));
}

/// What disagrees is named, with by how much (by hand).
#[test]
fn facts_that_disagree_say_by_how_much() {
    let told =
        Told { risers: Some(9), rise: Some(eighths(58)), total_rise: Some(Length::inches(66)), ..Told::default() };
    let Err(Unready::Clash(Clash::Rise { makes, by, .. })) = work_out(&told) else { panic!("they agree") };
    assert_eq!((makes.as_length(), by.as_length()), (Some(eighths(522)), Some(eighths(6))));
    let told = Told { rise: Some(eighths(58)), total_rise: Some(Length::inches(40)), ..Told::default() };
    let Err(Unready::Clash(Clash::NotWhole { fewer, more, .. })) = work_out(&told) else { panic!("it goes evenly") };
    let each = |(n, rise): (railhand::figure::Fig, railhand::figure::Fig)| (n.as_q().to_integer(), rise.as_length());
    assert_eq!(each(fewer), (5, Some(Length::inches(8))));
    assert_eq!(each(more), (6, Length::new(20, 3)));
    let told = Told { total_run: Some(Length::inches(44)), ..total(310) };
    let Err(Unready::Clash(Clash::Run { makes, by, .. })) = work_out(&told) else { panic!("they agree") };
    assert_eq!((makes.as_length(), by.as_length()), (Some(Length::inches(40)), Some(Length::inches(4))));
}

/// 7 9/16 is how 53 over 7 reads on a tape: half a sixteenth each is no disagreement.
#[test]
fn a_riser_read_off_a_tape_agrees_with_its_total() {
    let rise = Some(Length::sixteenths(121));
    let f = flight(&Told { risers: Some(7), rise, total_rise: Some(Length::inches(53)), ..Told::default() });
    assert_eq!(f.rise.as_length(), Length::new(53, 7));
}

#[test]
fn what_is_untold_is_named() {
    let untold = |told: Told| work_out(&told);
    assert_eq!(untold(Told { risers: Some(9), ..Told::default() }), Err(Unready::Untold(Lack::Rise)));
    assert_eq!(untold(Told { rise: Some(eighths(58)), ..Told::default() }), Err(Unready::Untold(Lack::Rise)));
    let ground = Some(Ground { above: Length::inches(30), fall: Q::new(1, 12) });
    assert_eq!(untold(Told { ground, ..Told::default() }), Err(Unready::Untold(Lack::Tread)));
    assert!(flight(&Told { tread: None, ..total(310) }).going.is_none());
}

/// Steeper than 50 degrees is a ladder (OSHA 1910.25, from memory): 8 on 6 is 53.1.
#[test]
fn a_ladder_is_no_stair() {
    let told = |tread| Told {
        risers: Some(5),
        rise: Some(Length::inches(8)),
        tread: Some(Length::inches(tread)),
        ..Told::default()
    };
    assert!(matches!(work_out(&told(6)), Err(Unready::Clash(Clash::Ladder(_)))));
    assert!(work_out(&told(7)).is_ok());
}

/// IRC R311.7.5, R311.7.1, R311.7.3, R311.7.6: the limit passes, a sixteenth past it fails.
#[test]
fn the_limits_of_a_flight() {
    let told = |rise: i64, tread: i64, n: u16| Told {
        risers: Some(n),
        rise: Some(Length::sixteenths(rise)),
        tread: Some(Length::sixteenths(tread)),
        ..Told::default()
    };
    let found = |told: Told, known: Known| {
        check(&flight(&told), &known, &Settings::default()).iter().map(|b| b.limit.id).collect::<Vec<_>>()
    };
    let nothing = Known::default();
    assert_eq!(found(told(124, 160, 5), nothing.clone()), Vec::<&str>::new());
    assert_eq!(found(told(125, 160, 5), nothing.clone()), ["riser-most"]);
    assert_eq!(found(told(124, 159, 5), nothing.clone()), ["tread-least"]);
    // 12 ft 7 is 151: 20 risers of 7 1/2 are 150, 20 of 7 9/16 are 151 1/4.
    assert_eq!(found(told(120, 160, 20), nothing.clone()), Vec::<&str>::new());
    assert_eq!(found(told(121, 160, 20), nothing), ["flight-rise"]);
    let known = |nosing, width, landing| Known {
        nosing: Some(Length::sixteenths(nosing)),
        width: Some(Length::inches(width)),
        landing: Some(Length::inches(landing)),
        ..Known::default()
    };
    assert_eq!(found(told(124, 160, 5), known(12, 36, 36)), Vec::<&str>::new());
    assert_eq!(found(told(124, 160, 5), known(11, 35, 35)), ["nosing-least", "stair-width", "landing"]);
    assert_eq!(found(told(124, 176, 5), known(0, 36, 36)), Vec::<&str>::new());
    assert_eq!(found(told(124, 160, 5), known(21, 36, 36)), ["nosing-most"]);
    // Over open risers it may be longer (S5).
    let over_open = Known { open: true, ..known(21, 36, 36) };
    assert_eq!(found(told(124, 160, 5), over_open), Vec::<&str>::new());
    let open = |gap| Known { open_riser: Some(Length::sixteenths(gap)), ..Known::default() };
    assert_eq!(found(told(124, 160, 5), open(64)), ["open-riser"]);
    assert_eq!(found(told(124, 160, 5), open(63)), Vec::<&str>::new());
    // The top riser of four stands 23 1/4 up: under 30 it may be open.
    assert_eq!(found(told(124, 160, 4), open(100)), Vec::<&str>::new());
}

/// W20: 7.5, 7.5, 7.125 passes (3/8 is no more than 3/8); 7.5 and 7.1 fails; a 1 in. paver at
/// the foot of equal risers makes 1 in. of difference.
#[test]
fn w20_uniformity() {
    let tenths = |all: &[i128]| all.iter().map(|n| Length::new(*n, 1000).expect("small")).collect::<Vec<_>>();
    let rows = [
        (vec![7500, 7500, 7125], "0.375", false),
        (vec![7500, 7100], "0.4", true),
        (vec![7500, 7500, 6500], "1", true),
    ];
    for (risers, difference, fails) in rows {
        let risers = tenths(&risers);
        assert_eq!(decimal(spread(&risers, "the riser").expect("some").as_q()).0, difference);
        assert_eq!(uneven(&risers, "the riser", &Settings::default()).is_some(), fails);
    }
    assert_eq!(limits::STAIR_SPREAD.length(), eighths(3));
}
