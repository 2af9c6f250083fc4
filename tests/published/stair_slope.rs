//! Slopes against a sheet of check values worked outside the program: plane geometry, with the
//! IRC's riser and tread (R311.7.5) and guard heights (R312.1.2). Rows are named Y-1 ... as in it.

use railhand::figure::{Fig, Why};
use railhand::infill::{HeldGap, Start};
use railhand::job::Settings;
use railhand::limits;
use railhand::measure::{Length, Tape, decimal};
use railhand::stairs::{Rake, flight, infill, triangle};

fn length(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("a small fraction")
}

fn fig(num: i128, den: i128) -> Fig {
    Fig::told(length(num, den), "in the check")
}

fn whole(n: i128) -> Fig {
    fig(n, 1)
}

/// 7 3/4 on 10, 7 1/2 on 10 1/4, 7 on 11: riser and tread in quarters of an inch.
const PITCHES: [(i128, i128); 3] = [(31, 40), (30, 41), (28, 44)];

fn pitch(i: usize) -> Rake {
    let (rise, tread) = PITCHES[i];
    Rake::new(fig(rise, 4), fig(tread, 4)).expect("a slope")
}

/// A figure in decimals, rounded to so many places with the zeros kept.
fn places(f: &Fig, n: u32) -> String {
    let scale = railhand::measure::Q::from_integer(10_i128.pow(n));
    let (text, _) = decimal((f.as_q() * scale).round() / scale);
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    format!("{whole}.{part:0<width$}", width = n as usize)
}

fn row(want: [&str; 3], of: impl Fn(&Rake) -> Fig) {
    for (i, want) in want.into_iter().enumerate() {
        let n = want.split_once('.').map_or(0, |(_, part)| part.len() as u32);
        assert_eq!(places(&of(&pitch(i)), n), want, "{:?}", PITCHES[i]);
    }
}

#[test]
fn y1_to_y4_angle_step_and_ratios() {
    row(["37.7757", "36.1932", "32.4712"], |r| r.angle());
    row(["12.6516", "12.7009", "13.0384"], |r| r.step());
    row(["1.265158", "1.239111", "1.185310"], |r| r.along(&whole(1)));
    row(["0.790415", "0.807030", "0.843661"], |r| r.level(&whole(1)));
}

#[test]
fn y5_to_y7_plumb_and_square_to_the_slope() {
    row(["28.4549", "29.0531", "30.3718"], |r| r.square(&whole(36)));
    row(["26.8741", "27.4390", "28.6845"], |r| r.square(&whole(34)));
    row(["45.5457", "44.6080", "42.6711"], |r| r.plumb(&whole(36)));
}

#[test]
fn y8_to_y11_level_and_along_the_slope() {
    row(["5.0606", "4.9564", "4.7412"], |r| r.along(&whole(4)));
    row(["5.5351", "5.4211", "5.1857"], |r| r.along(&fig(35, 8)));
    row(["4.3473", "4.4387", "4.6401"], |r| r.level(&fig(11, 2)));
    row(["6.9584", "6.8151", "6.5192"], |r| r.along(&fig(11, 2)));
}

/// 14 risers, 13 treads: rise, run, and the slope over the treads.
#[test]
fn y12_a_whole_flight() {
    let want = [("108.5", "130", "164.4706"), ("105", "133.25", "165.1115"), ("98", "143", "169.4993")];
    for ((rise, tread), (total, run, slope)) in PITCHES.into_iter().zip(want) {
        let told = flight::Told {
            risers: Some(14),
            rise: Some(length(rise, 4)),
            tread: Some(length(tread, 4)),
            ..Default::default()
        };
        let flight = flight::work_out(&told).expect("a flight");
        let going = flight.going.as_ref().expect("a tread was told");
        assert_eq!((flight.riser_count(), flight.tread_count()), (14, 13));
        assert_eq!(decimal(flight.total_rise.as_q()).0, total);
        assert_eq!(decimal(going.run.as_q()).0, run);
        assert_eq!(places(&flight.slope_length().expect("a slope"), 4), slope);
    }
}

#[test]
fn y13_and_y14_plumb_cuts_and_balusters() {
    row(["4.4281", "4.3369", "4.1486"], |r| r.plumb(&fig(7, 2)));
    row(["1.8977", "1.8587", "1.7780"], |r| r.plumb(&fig(3, 2)));
    row(["35.4244", "34.6951", "33.1887"], |r| r.plumb(&whole(28)));
}

/// With the bottom rail on the nosing line, and how far it may be lifted for a 6 in. ball.
#[test]
fn y15_and_y16_the_triangle() {
    let of = |r: &Rake| triangle::triangle(r, &whole(0), &whole(0), &Settings::default()).expect("a triangle");
    row(["5.0984", "5.0491", "4.9616"], |r| of(r).ball);
    row(["1.0832", "1.1399", "1.2360"], |r| of(r).most_square);
    row(["1.3705", "1.4125", "1.4650"], |r| of(r).most_lift);
}

/// A bay measured, 1 1/2 balusters in it.
fn bay(clear: &Fig, most: &Fig) -> infill::Bay {
    infill::Bay {
        clear: clear.clone(),
        built: clear.as_length().expect("a length"),
        baluster: fig(3, 2),
        held: HeldGap::under(most.clone()),
        start: Start::Gap,
        tape: Tape::SIXTEENTHS,
    }
}

/// Six treads between the posts' centres, 4x4 posts and 1 1/2 balusters: the fewest by the
/// exact gaps. Set out in sixteenths, the last pitch's ten would leave one gap of
/// 4 3/8 itself, so eleven are built there.
#[test]
fn y17_and_y18_balusters_between_posts() {
    let four = Fig::limit(&limits::LEVEL_GAP);
    let stair = Fig::limit(&limits::STAIR_GAP);
    let rows = [
        (0, fig(113, 2), &four, 10, 10, "3.7727"),
        (1, whole(58), &four, 10, 10, "3.9091"),
        (2, fig(125, 2), &four, 11, 11, "3.8333"),
        (0, fig(113, 2), &stair, 9, 9, "4.3000"),
        (1, whole(58), &stair, 10, 10, "3.9091"),
        (2, fig(125, 2), &stair, 10, 11, "3.8333"),
    ];
    for (i, clear, most, exact, build, gap) in rows {
        let bay = infill::infill(&pitch(i), &bay(&clear, most)).expect("balusters");
        assert_eq!((bay.exact, bay.count.as_q()), (exact, railhand::measure::Q::from_integer(build)), "{clear:?}");
        assert_eq!(places(&bay.gap, 4), gap);
    }
    // The sheet's gap for ten at the last pitch: (62 1/2 - 15)/11.
    assert_eq!(decimal(((length(125, 2) - length(15, 1)) / 11).q()).0, "4.318182");
}

/// W6: no nosing; raised 2 the ball is 6.4141 and fails. W7: 3/4, 1 and 1 1/4 of overhang.
#[test]
fn w6_and_w7_the_triangle_and_its_nosing() {
    let at = |overhang: Fig, lift: Fig| {
        triangle::triangle(&pitch(0), &overhang, &lift, &Settings::default()).expect("a triangle")
    };
    let raised = at(whole(0), whole(2));
    assert_eq!(places(&raised.ball, 4), "6.4141");
    assert!(raised.fails() && !at(whole(0), whole(0)).fails());
    let rows = [
        (fig(3, 4), "5.4808", "0.7892", None),
        (whole(1), "5.6083", "0.5955", Some("0.4707")),
        (fig(5, 4), "5.7357", "0.4017", None),
    ];
    for (overhang, ball, lift, square) in rows {
        let t = at(overhang, whole(0));
        assert_eq!((places(&t.ball, 4).as_str(), places(&t.most_lift, 4).as_str()), (ball, lift));
        assert!(square.is_none_or(|s| places(&t.most_square, 4) == s));
    }
}

/// The lift is set short of the most, never past it: 1.3705 is 1 5/16 on a tape in
/// sixteenths, where the nearest mark, 1 3/8, would let the ball through.
#[test]
fn the_lift_is_set_short_of_the_most() {
    let t = triangle::triangle(&pitch(0), &whole(0), &whole(0), &Settings::default()).expect("a triangle");
    let set = triangle::short_of(&t.most_lift, Tape::SIXTEENTHS);
    assert_eq!(set.as_length(), Some(Length::sixteenths(21)));
    let at_it = triangle::triangle(&pitch(0), &whole(0), &set, &Settings::default()).expect("a triangle");
    let past = triangle::triangle(&pitch(0), &whole(0), &fig(22, 16), &Settings::default()).expect("a triangle");
    assert!(!at_it.fails() && past.fails());
}

/// W4: 60 clear on the level, 1 1/2 balusters: 10 at 45/11 under 4 3/8, 11 at 3 5/8 under 4.
#[test]
fn w4_a_stair_bay() {
    let bay = |most| infill::infill(&pitch(0), &self::bay(&whole(60), &Fig::limit(most))).expect("balusters");
    let stair = bay(&limits::STAIR_GAP);
    assert_eq!((stair.exact, places(&stair.gap, 4).as_str()), (10, "4.0909"));
    let level = bay(&limits::LEVEL_GAP);
    assert_eq!((level.exact, places(&level.gap, 4).as_str()), (11, "3.6250"));
}

/// W5: two on each 10 in. tread: 5 on centre is 6.3258 along the slope, never held against a limit.
#[test]
fn w5_two_on_each_tread() {
    assert_eq!(places(&pitch(0).along(&whole(5)), 4), "6.3258");
}

/// A baluster's stock: the plumb length and the bevel across its width, 1 1/2 x 0.775
/// (plane geometry, by hand).
#[test]
fn baluster_stock_by_hand() {
    let plumb = pitch(0).plumb(&whole(28));
    assert_eq!(places(&infill::stock(&pitch(0), &plumb, &fig(3, 2)), 4), "36.5869");
}

#[test]
fn a_slope_of_nothing_is_none() {
    let told = |l| Fig::length(l, Why::Told("in the check"));
    for (rise, tread) in [(0, 10), (7, 0), (-7, 10), (7, -10)] {
        assert_eq!(Rake::new(told(Length::inches(rise)), told(Length::inches(tread))), None);
    }
}
