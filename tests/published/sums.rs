//! Sums against a general-purpose unit calculator (fend-core), and the errors by hand.

use num_rational::Ratio;
use pretty_assertions::assert_eq;
use railhand::figure::{Fig, Value, Why};
use railhand::grammar::measures::measures_at;
use railhand::grammar::words::words;
use railhand::measure::{Length, Meaning, Q, decimal, exact_fraction};
use railhand::sums::{Expr, Into, Sum, SumError, answer};

/// A fixed stream of numbers (SplitMix64, from memory): the same sums at every run.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % n
    }
}

/// A sum both ways: as this crate holds it, and as the calculator is asked.
type Both = (Expr, String);

/// A length as a builder types it, read by the crate's own grammar, and spelt out for the calculator.
fn leaf(dice: &mut Dice) -> Both {
    let (feet, inches) = (1 + dice.below(40), dice.below(12));
    let den = [2, 4, 8, 16, 32, 64][usize::try_from(dice.below(6)).expect("under six")];
    let num = 1 + dice.below(den - 1);
    let (typed, asked) = match dice.below(6) {
        0 => (format!("{feet} ft"), format!("{feet} feet")),
        1 => (format!("{feet}'-{inches}\""), format!("{feet} feet + {inches} inches")),
        2 => {
            (format!("{feet}'{inches} {num}/{den}\""), format!("{feet} feet + {inches} inches + ({num}/{den}) inches"))
        }
        3 => (format!("{num}/{den}\""), format!("({num}/{den}) inches")),
        4 => (format!("{}.{inches} mm", feet * 37), format!("{}.{inches} mm", feet * 37)),
        _ => (format!("{feet} {num}/{den} in"), format!("{feet} inches + ({num}/{den}) inches")),
    };
    let list = words(&typed);
    let island = measures_at(&list, 0).into_iter().next().expect("a plain length reads");
    assert_eq!(island.end, list.len(), "{typed}");
    let Meaning::Length(l, _) = island.measure.meaning else { panic!("{typed} is no length") };
    (Expr::Length(l), format!("({asked})"))
}

fn factor(dice: &mut Dice) -> Both {
    let (num, den) = (i128::from(1 + dice.below(30)), i128::from(1 + dice.below(9)));
    (Expr::Number(Ratio::new(num, den)), format!("({num}/{den})"))
}

fn length(dice: &mut Dice, depth: u64) -> Both {
    if depth == 0 {
        return leaf(dice);
    }
    let (a, text_a) = length(dice, depth - 1);
    match dice.below(4) {
        0 => {
            let (b, text_b) = length(dice, depth - 1);
            (Expr::Plus(a.into(), b.into()), format!("({text_a} + {text_b})"))
        }
        1 => {
            let (b, text_b) = length(dice, depth - 1);
            (Expr::Less(a.into(), b.into()), format!("({text_a} - {text_b})"))
        }
        2 => {
            let (b, text_b) = factor(dice);
            (Expr::Times(b.into(), a.into()), format!("({text_b} * {text_a})"))
        }
        _ => {
            let (b, text_b) = factor(dice);
            (Expr::Over(a.into(), b.into()), format!("({text_a} / {text_b})"))
        }
    }
}

/// The calculator's answer as an exact fraction.
fn asked(text: &str, context: &mut fend_core::Context) -> Q {
    let result = fend_core::evaluate(text, context).unwrap_or_else(|e| panic!("{text}: {e}"));
    let shown = result.get_main_result().trim();
    let fraction = shown.parse::<Q>().or_else(|_| shown.parse::<i128>().map(Q::from_integer));
    fraction.unwrap_or_else(|e| panic!("{text} gave {shown:?}: {e}"))
}

fn figure(expr: Expr) -> Fig {
    answer(&Sum::Value(expr)).expect("inside the bound").0
}

#[test]
fn a_thousand_sums_agree_with_a_unit_calculator() {
    let mut dice = Dice(20_240_601);
    let mut context = fend_core::Context::new();
    let mut ratios = 0;
    for i in 0..1000 {
        let (expr, text) = length(&mut dice, 1 + i % 3);
        let (expr, text) = match i % 5 {
            4 => {
                let (by, by_text) = leaf(&mut dice);
                ratios += 1;
                (Expr::Over(expr.into(), by.into()), format!("({text} / {by_text}) to fraction"))
            }
            _ => (expr, format!("({text} / (1 inch)) to fraction")),
        };
        let fig = figure(expr);
        assert_eq!(matches!(fig.value(), Value::Number(_)), i % 5 == 4, "{text}");
        assert_eq!(fig.as_q(), asked(&text, &mut context), "{text}");
    }
    assert_eq!(ratios, 200);
}

/// Square roots are irrational: both sides to nine places.
#[test]
fn diagonals_agree_with_a_unit_calculator() {
    let mut dice = Dice(7);
    let mut context = fend_core::Context::new();
    for _ in 0..100 {
        let (a, b) =
            (i64::try_from(1 + dice.below(9000)).expect("small"), i64::try_from(1 + dice.below(9000)).expect("small"));
        let sum = Sum::Diagonal(Length::sixteenths(a), Length::sixteenths(b));
        let ours = answer(&sum).expect("inside the bound").0.as_q();
        let text = format!("sqrt(({a}/16)^2 + ({b}/16)^2) to 12 dp");
        let shown = fend_core::evaluate(&text, &mut context).expect("a plain root");
        let theirs: f64 = shown.get_main_result().trim_start_matches("approx. ").parse().expect("a decimal");
        let ours = *ours.numer() as f64 / *ours.denom() as f64;
        assert!((ours - theirs).abs() < 2e-9, "{text}: {ours} against {theirs}");
    }
}

fn feet(n: i64) -> Length {
    Length::inches(n * 12)
}

fn inches(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("inside the bound")
}

/// 3-4-5 is exact (Euclid, Elements I.47); 10 by 14 ft is 206.455806 in. to six places.
#[test]
fn the_diagonal_says_whether_it_is_exact() {
    let diagonal = |a, b| answer(&Sum::Diagonal(a, b)).expect("small").0.as_length().expect("a length");
    assert_eq!(diagonal(feet(6), feet(8)), feet(10));
    assert!(diagonal(feet(6), feet(8)).is_exact());
    let square = diagonal(feet(10), feet(14));
    assert!(!square.is_exact());
    assert_eq!(decimal(square.rounded(1_000_000).q()).0, "206.455806");
}

/// Worked by hand: 192 = 5 x 38 + 2; 144 = 4 x 34 + 8; 62 = 15 x 4 + 2.
#[test]
fn pieces_and_sticks() {
    let cut = |piece, from| {
        let (count, left) = answer(&Sum::Pieces { piece, from }).expect("small");
        (count.value(), left.and_then(|l| l.as_length()))
    };
    assert_eq!(cut(Length::inches(38), feet(16)), (Value::Count(5), Some(Length::inches(2))));
    assert_eq!(cut(Length::inches(34), feet(12)), (Value::Count(4), Some(Length::inches(8))));
    assert_eq!(cut(Length::inches(48), feet(8)), (Value::Count(2), Some(Length::ZERO)));
    assert_eq!(cut(feet(10), feet(8)), (Value::Count(0), Some(feet(8))));
    let stock =
        |pieces, per| answer(&Sum::Sticks { pieces, per }).map(|(n, spare)| (n.value(), spare.map(|s| s.value())));
    assert_eq!(stock(62, 4), Ok((Value::Count(16), Some(Value::Count(2)))));
    assert_eq!(stock(64, 4), Ok((Value::Count(16), None)));
    assert_eq!(stock(u64::MAX, 1), Ok((Value::Count(u64::MAX), None)));
    assert_eq!(stock(5, 0), Err(SumError::ByZero));
}

/// NIST Handbook 44, appendix C: 25.4 mm to the inch, 12 in. to the foot.
#[test]
fn conversions_are_exact() {
    let mm = Length::from_mm(Q::from_integer(150)).expect("small");
    let (length, number) = answer(&Sum::Convert(mm, Into::Inches)).expect("small");
    assert_eq!(length.as_length().map(exact_fraction).as_deref(), Some("5 115/127"));
    assert_eq!(number, None);
    let table =
        [(Into::Feet, "10.5"), (Into::Millimetres, "3200.4"), (Into::Centimetres, "320.04"), (Into::Metres, "3.2004")];
    for (into, expected) in table {
        let (length, number) = answer(&Sum::Convert(Length::inches(126), into)).expect("small");
        assert_eq!(length.as_length(), Some(Length::inches(126)));
        assert_eq!(number.map(|n| decimal(n.as_q())), Some((expected.to_owned(), true)), "{into:?}");
    }
}

#[test]
fn the_bigger_of_two_and_by_how_much() {
    let (more, by) = answer(&Sum::Bigger(inches(19, 32), inches(5, 8))).expect("small");
    assert_eq!(more.as_length(), Some(inches(5, 8)));
    assert_eq!(by.and_then(|b| b.as_length()), Some(inches(1, 32)));
    let (_, none) = answer(&Sum::Bigger(feet(1), Length::inches(12))).expect("small");
    assert_eq!(none.and_then(|b| b.as_length()), Some(Length::ZERO));
}

fn number(n: i128) -> Box<Expr> {
    Expr::Number(Q::from_integer(n)).into()
}

fn foot() -> Box<Expr> {
    Expr::Length(feet(1)).into()
}

#[test]
fn what_has_no_answer_says_why() {
    let table = [
        (Expr::Plus(foot(), number(2)), SumError::Mixed),
        (Expr::Less(number(2), foot()), SumError::Mixed),
        (Expr::Over(number(2), foot()), SumError::Mixed),
        (Expr::Times(foot(), foot()), SumError::Area),
        (Expr::Over(foot(), number(0)), SumError::ByZero),
        (Expr::Over(number(1), number(0)), SumError::ByZero),
        (Expr::Over(foot(), Box::new(Expr::Length(Length::ZERO))), SumError::ByZero),
        (Expr::Times(number(i128::MAX), number(2)), SumError::TooBig),
        (Expr::Times(foot(), number(1_000_000_000_000_000_000_000)), SumError::TooBig),
    ];
    for (expr, expected) in table {
        assert_eq!(answer(&Sum::Value(expr.clone())), Err(expected), "{expr:?}");
    }
    let none = Sum::Pieces { piece: Length::ZERO, from: feet(1) };
    assert_eq!(answer(&none), Err(SumError::ByZero));
    let deep = (0..500).fold(*number(1), |sum, _| Expr::Plus(sum.into(), number(1)));
    assert_eq!(answer(&Sum::Value(deep)), Err(SumError::TooBig));
    let wide = (0..300).fold(*number(1), |sum, _| Expr::Plus(sum.into(), number(1)));
    assert_eq!(figure(wide).as_q(), Q::from_integer(301));
}

/// Every figure of a sum rests on what was told.
#[test]
fn a_sum_says_what_it_was_made_of() {
    fn told(fig: &Fig) -> Vec<Q> {
        match fig.why() {
            Why::Formula(_, inputs) => inputs.iter().flat_map(|(_, f)| told(f)).collect(),
            Why::Told(_) => vec![fig.as_q()],
            other => panic!("a sum rests on {other:?}"),
        }
    }
    let sum = Expr::Over(Expr::Less(foot(), Expr::Length(inches(3, 2)).into()).into(), number(4));
    let fig = figure(sum);
    assert_eq!(fig.as_length(), Some(inches(21, 8)));
    assert_eq!(told(&fig), [Q::from_integer(12), Ratio::new(3, 2), Q::from_integer(4)]);
}
