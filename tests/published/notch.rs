//! A post's footprint over the deck: areas worked with a polygon library outside the
//! project (shapely) and by the closed formulas beside them, 3 1/2 in. posts.

use num_rational::Ratio;
use railhand::figure::{Fig, Why};
use railhand::measure::{Length, Q, decimal};
use railhand::notch::{Cut, Hand, Shape, Size, Spot};
use railhand::strength::post::bending;
use railhand::strength::section::{Push, Section};

fn inches(text: &str) -> Length {
    let decimal = text.parse().expect("a decimal");
    Length::from_decimal(decimal).expect("in range")
}

fn whole(n: i64) -> Length {
    Length::inches(n)
}

fn cut(deck: Vec<Spot>) -> Cut {
    Cut::at(Size::square(inches("3.5")), deck).expect("on the grid")
}

const FAR: i64 = 100;

/// A straight edge, the post's centre so far outside it.
fn straight(outside: Length) -> Vec<Spot> {
    let far = whole(FAR);
    vec![(-far, -far), (far, -far), (far, -outside), (-far, -outside)]
}

/// An outside corner, the centre so far outside its two edges.
fn outside((x, y): (Length, Length)) -> Vec<Spot> {
    let far = whole(FAR);
    vec![(-far, -far), (-x, -far), (-x, -y), (-far, -y)]
}

/// An inside corner, likewise.
fn inside((x, y): (Length, Length)) -> Vec<Spot> {
    let far = whole(FAR);
    vec![(-far, -far), (far, -far), (far, -y), (-x, -y), (-x, far), (-far, far)]
}

/// A 45 degree edge: the deck where x + y is no more than `-k`.
fn slanted(k: Length) -> Vec<Spot> {
    let far = whole(FAR);
    vec![(far, -far - k), (-far, far - k), (-far, -far - k)]
}

fn root_two_times(l: Length) -> Length {
    if l.is_positive() || l.is_zero() {
        Length::diagonal(l, l).expect("in range")
    } else {
        -Length::diagonal(l, l).expect("in range")
    }
}

/// To so many places, as the table prints them.
fn printed(cut: &Cut, places: u32) -> (String, String) {
    let round = |q| {
        let scale = Ratio::from_integer(10_i128.pow(places));
        decimal((cut_round(q, scale)) / scale).0
    };
    (round(cut.area_off()), round(cut.area_left()))
}

fn cut_round(q: Ratio<i128>, scale: Ratio<i128>) -> Ratio<i128> {
    (q * scale).round()
}

fn check(id: &str, deck: Vec<Spot>, over: &str, down: &str) -> Cut {
    let cut = cut(deck);
    let (off, left) = printed(&cut, 5);
    let same = |a: &str, b: &str| inches(a) == inches(b);
    assert!(same(&off, over) && same(&left, down), "{id}: {off} off, {left} left; the table has {over}, {down}");
    cut
}

/// Structure table section 7, Q-1 to Q-4: a straight edge, f = clamp(1/2 - e/s).
#[test]
fn q_1_to_4_straight_edges() {
    let rows = [
        ("Q-1", "0", "6.125", "6.125", "1.75"),
        ("Q-2", "0.5", "4.375", "7.875", "1.25"),
        ("Q-3", "-1", "9.625", "2.625", "2.75"),
        ("Q-4", "0.25", "5.25", "7", "1.5"),
    ];
    for (id, e, over, down, deep) in rows {
        let cut = check(id, straight(inches(e)), over, down);
        assert_eq!(cut.shape, Shape::Straight { deep: inches(deep) }, "{id}");
    }
}

/// an outside right angle, f = fx fy.
#[test]
fn q_5_to_7_outside_corners() {
    let rows = [
        ("Q-5", "0", "0", "3.0625", "9.1875", "one quadrant"),
        ("Q-6", "0.25", "0.25", "2.25", "10", "one corner"),
        ("Q-7", "-0.5", "0.5", "2.8125", "9.4375", "one corner"),
    ];
    for (id, x, y, over, down, name) in rows {
        let cut = check(id, outside((inches(x), inches(y))), over, down);
        let half = inches("1.75");
        let expected = Shape::Corner { along: half - inches(x), deep: half - inches(y), hand: Hand::Left };
        assert_eq!(cut.shape, expected, "{id}");
        assert_eq!(cut.shape.name(cut.size), name, "{id}");
    }
}

/// an inside right angle, f = 1 - (1 - fx)(1 - fy).
#[test]
fn q_8_to_10_inside_corners() {
    let rows = [
        ("Q-8", "0", "0", "9.1875", "3.0625", "three quadrants"),
        ("Q-9", "0.25", "0.25", "8.25", "4", "all but one corner"),
        ("Q-10", "-0.5", "0.75", "9.125", "3.125", "all but one corner"),
    ];
    for (id, x, y, over, down, name) in rows {
        let cut = check(id, inside((inches(x), inches(y))), over, down);
        let half = inches("1.75");
        let expected = Shape::AllButCorner { along: half + inches(x), across: half + inches(y), hand: Hand::Right };
        assert_eq!(cut.shape, expected, "{id}");
        assert_eq!(cut.shape.name(cut.size), name, "{id}");
    }
}

/// a 45 degree edge, the post square to the main edges or turned with it.
#[test]
fn q_11_to_14_slanted_edges() {
    let rows =
        [("Q-11", "0", "6.125", "6.125"), ("Q-12", "0.5", "3.90013", "8.34987"), ("Q-13", "-1", "10.07475", "2.17525")];
    for (id, q, over, down) in rows {
        let cut = check(id, slanted(root_two_times(inches(q))), over, down);
        assert_eq!(cut.shape, Shape::Other, "{id}");
    }
    check("Q-14", straight(inches("0.5")), "4.375", "7.875");
}

/// The directions of a 135 degree corner split by the y axis: 67 1/2 degrees to each side.
fn split_corner(reach: i64) -> (Length, Length) {
    // sin and cos of 67.5 degrees from printed tables (memory), to nine places.
    let far = Ratio::from_integer(i128::from(reach));
    let times = |text: &str| inches(text).times(far).expect("in range").inexact();
    (times("0.923879533"), times("0.382683432"))
}

/// corners of 135 and 225 degrees, the post square to one edge or split.
#[test]
fn q_15_to_18_angled_corners() {
    let (zero, far) = (Length::ZERO, whole(FAR));
    let square_outside = vec![(-far, zero), (-far, -far), (far, -far), (zero, zero)];
    check("Q-15", square_outside, "4.59375", "7.65625");
    let square_inside = vec![(-far, far), (-far, -far), (far, -far), (far, zero), (zero, zero)];
    check("Q-16", square_inside, "7.65625", "4.59375");
    let (x, y) = split_corner(50);
    check("Q-17", vec![(zero, zero), (-x, -y), (zero, -far), (x, -y)], "4.85647", "7.39353");
    check("Q-18", vec![(zero, zero), (-x, y), (-far, -far), (far, -far), (x, y)], "7.39353", "4.85647");
}

/// two edges across one footprint.
#[test]
fn q_19_and_20_two_edges() {
    let (far, half) = (whole(FAR), inches("0.5"));
    // Centre (0, 0.5) over y <= 0 and x + y <= 0: seen from the centre, y <= -1/2 and x + y <= -1/2.
    check(
        "Q-19",
        vec![(-far, -half), (-far, -far), (far, -far), (far, -far - half), (Length::ZERO, -half)],
        "2.96875",
        "9.28125",
    );
    let one = whole(1);
    let clipped =
        vec![(-far, -far), (Length::ZERO, -far), (Length::ZERO, -one), (-one, Length::ZERO), (-far, Length::ZERO)];
    check("Q-20", clipped, "2.5625", "9.6875");
}

/// What the overlay leaves, as a section.
fn section(cut: &Cut) -> Section {
    let corners: Vec<(Q, Q)> = cut.left[0].iter().map(|(x, y)| (x.q(), y.q())).collect();
    Section::of(&corners, Vec::new()).expect("a section")
}

fn size_cut(side: &str, deck: Vec<Spot>) -> Cut {
    Cut::at(Size::square(inches(side)), deck).expect("on the grid")
}

/// To six places, as the table prints them.
fn six(q: Q) -> String {
    let scale = Ratio::from_integer(1_000_000);
    decimal((q * scale).round() / scale).0
}

/// L-1 to L-6 and L-11, L-13 to L-16: what the overlay leaves of a 4x4 has the sections of
/// the table's closed forms, a = 3.5: areas, centroids, second moments, moduli.
#[test]
fn l_rows_are_what_the_overlay_leaves() {
    let zero = Length::ZERO;
    let ell = section(&size_cut("3.5", outside((zero, zero))));
    let area = ell.area().expect("an area").as_q();
    assert_eq!(six(area), "9.1875", "L-1");
    // L-2: 5a/12 from each full face; the full faces lie at +a/2 on the out side here.
    let (x, y) = ell.centroid().expect("a centroid");
    assert_eq!((six(Ratio::new(7, 4) - x), six(Ratio::new(7, 4) - y)), ("1.458333".into(), "1.458333".into()), "L-2");
    assert_eq!(six(ell.second_moment().expect("a moment").as_q()), "8.597331", "L-3");
    assert_eq!(six(ell.product().expect("a product")), "-3.126302", "L-6");
    let modulus = |s: &Section, push| six(s.modulus(push).expect("a modulus").as_q());
    assert_eq!(modulus(&ell, Push::Held), "4.210938", "L-5");
    assert_eq!(modulus(&ell, Push::Free), "3.473669", "L-11");
    let whole = section(&size_cut("3.5", straight(whole_post())));
    assert_eq!(modulus(&whole, Push::Held), "7.145833", "L-12");
    let half = section(&size_cut("3.5", straight(zero)));
    assert_eq!(modulus(&half, Push::Held), "1.786458", "L-13");
    let quadrant = section(&size_cut("3.5", inside((zero, zero))));
    assert_eq!(modulus(&quadrant, Push::Free), "0.893229", "L-15");
    let two_left = section(&size_cut("3.5", straight(inches("0.25"))));
    assert_eq!(modulus(&two_left, Push::Held), "2.333333", "L-16");
}

/// Further off the deck than half a post.
fn whole_post() -> Length {
    whole(5)
}

/// A straight edge that runs out past the post: the same leg pushed along its width.
fn beside(outside: Length) -> Vec<Spot> {
    straight(outside).into_iter().map(|(x, y)| (y, -x)).collect()
}

/// L-7 to L-10: across its symmetry diagonal the L is weakest, S at the heel 2.652756; L-14
/// and the second of L-16: the same legs pushed along their width.
#[test]
fn l_rows_of_other_pushes() {
    let zero = Length::ZERO;
    let modulus = |cut: &Cut, push| six(section(cut).modulus(push).expect("a modulus").as_q());
    // The table prints 2.652756; its closed form, 7 a^3 / (80 root 2), is 2.652755: five places agree.
    assert_eq!(modulus(&size_cut("3.5", outside((zero, zero))), Push::Any)[..7], *"2.65275", "L-10");
    assert_eq!(modulus(&size_cut("3.5", beside(zero)), Push::Held), "3.572917", "L-14");
    assert_eq!(modulus(&size_cut("3.5", beside(inches("0.25"))), Push::Held), "4.083333", "L-16");
    // L-7, L-8: the principal moments are the moment about a face axis less and plus the product.
    let ell = section(&size_cut("3.5", outside((zero, zero))));
    let (i, product) = (ell.second_moment().expect("a moment").as_q(), ell.product().expect("a product"));
    assert_eq!((six(i - product), six(i + product)), ("11.723633".into(), "5.471029".into()), "L-7, L-8");
    // L-4: from the centroid to the arm's tip 7a/12, to the full face 5a/12; L-9: the tips lie
    // a/root 2 off the diagonal, so S = I / that is 4.737064, by the same moment.
    let (_, y) = ell.centroid().expect("a centroid");
    assert_eq!((six(Ratio::new(7, 4) + y), six(Ratio::new(7, 4) - y)), ("2.041667".into(), "1.458333".into()), "L-4");
    let tip = Length::diagonal(inches("1.75"), inches("1.75")).expect("in range");
    assert_eq!(six((i - product) / tip.q())[..6], *"4.7370", "L-9");
}

/// P-1 to P-12: 200 lb at 36, 37, 39, 42 and 45 in. on what the overlay leaves, psi to a tenth.
#[test]
fn p_rows_stress_what_is_left() {
    let (zero, quarter) = (Length::ZERO, inches("0.25"));
    let ell = || size_cut("3.5", outside((zero, zero)));
    let rows: [(&str, Cut, Push, [&str; 5]); 12] = [
        (
            "P-1",
            size_cut("3.5", straight(whole_post())),
            Push::Held,
            ["1007.6", "1035.6", "1091.5", "1175.5", "1259.5"],
        ),
        ("P-2", ell(), Push::Held, ["1709.8", "1757.3", "1852.3", "1994.8", "2137.3"]),
        ("P-3", ell(), Push::Free, ["2072.7", "2130.3", "2245.5", "2418.2", "2590.9"]),
        ("P-4", ell(), Push::Any, ["2714.2", "2789.6", "2940.3", "3166.5", "3392.7"]),
        ("P-5", size_cut("3.5", straight(quarter)), Push::Held, ["3085.7", "3171.4", "3342.9", "3600", "3857.1"]),
        ("P-6", size_cut("3.5", beside(quarter)), Push::Held, ["1763.3", "1812.2", "1910.2", "2057.1", "2204.1"]),
        ("P-7", size_cut("3.5", straight(zero)), Push::Held, ["4030.3", "4142.3", "4366.2", "4702", "5037.9"]),
        ("P-8", size_cut("3.5", beside(zero)), Push::Held, ["2015.2", "2071.1", "2183.1", "2351", "2519"]),
        ("P-9", size_cut("3.5", inside((zero, zero))), Push::Held, ["8060.6", "8284.5", "8732.4", "9404.1", "10075.8"]),
        ("P-10", size_cut("5.5", straight(whole_post())), Push::Held, ["259.7", "266.9", "281.3", "302.9", "324.6"]),
        ("P-11", size_cut("5.5", inside((zero, zero))), Push::Held, ["2077.2", "2134.9", "2250.3", "2423.4", "2596.5"]),
        ("P-12", size_cut("5.5", straight(zero)), Push::Held, ["1038.6", "1067.5", "1125.2", "1211.7", "1298.3"]),
    ];
    for (id, cut, push, wants) in rows {
        for (arm, want) in [36, 37, 39, 42, 45].into_iter().zip(wants) {
            let arm = Fig::length(whole(arm), Why::Told("the arm"));
            let stress = bending(&section(&cut), push, &arm).expect("a stress").as_q();
            let ten = Ratio::from_integer(10);
            let printed = decimal((stress * ten).round() / ten).0;
            assert_eq!(printed, want, "{id} at {arm:?}");
        }
    }
}
