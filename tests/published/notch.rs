//! A post's footprint over the deck: areas worked with a polygon library outside the
//! project (shapely) and by the closed formulas beside them, 3 1/2 in. posts.

use num_rational::Ratio;
use railhand::measure::{Length, decimal};
use railhand::notch::{Cut, Hand, Shape, Size, Spot};

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
