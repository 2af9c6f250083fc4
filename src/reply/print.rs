//! The pieces of a reply as text: each figure by its style.

use super::Span;
use super::Style;
use super::typed::safe;
use super::wrap::GLUE;
use crate::figure::{Fig, Unit, Value};
use crate::measure::{Length, Q, Tape, decimal, exact_fraction};
use num_rational::Ratio;

/// Pieces as one stretch of text, safe for a terminal. Spaces inside a figure are
/// [`GLUE`], which only [`super::wrap::wrap`] takes out again.
pub(super) fn glued(spans: &[Span], tape: Tape) -> String {
    spans.iter().map(|span| span_text(span, tape)).collect()
}

/// Pieces as plain text on one line.
pub(super) fn text(spans: &[Span], tape: Tape) -> String {
    glued(spans, tape).replace(GLUE, " ")
}

fn span_text(span: &Span, tape: Tape) -> String {
    match span {
        Span::Say(words) => safe(words),
        Span::Fig(fig, style) => figure(fig, *style, tape),
        Span::Typed(typed) => typed.as_str().to_owned(),
        Span::Phrase(words) | Span::Drawn(words) => safe(words),
    }
}

fn figure(fig: &Fig, style: Style, tape: Tape) -> String {
    let (reading, aside) = match fig.value() {
        Value::Length(l) => length(l, style, tape),
        Value::Count(n) => (n.to_string(), None),
        Value::Number(q) => number(q),
        Value::Money(m) => (m.to_string(), None),
        Value::Quantity(q, unit) => (quantity(q, unit), None),
    };
    let glue = |s: &str| s.replace(' ', &GLUE.to_string());
    match aside {
        Some(aside) => format!("{} ({})", glue(&reading), glue(&aside)),
        None => glue(&reading),
    }
}

/// The reading, and what stands in brackets behind it.
fn length(l: Length, style: Style, tape: Tape) -> (String, Option<String>) {
    match style {
        Style::Tape => (tape.read(l), None),
        Style::Inches => (tape.read_inches(l), None),
        Style::InchesExact => (tape.read_inches(l), behind(l, tape)),
        Style::Full => (full(l, tape), behind(l, tape)),
        Style::Millimetres => millimetres(l),
        // To a tenth, which is finer than the tape.
        Style::MetricFirst => (format!("{} mm", tenths(l.mm())), Some(tape.read_inches(l))),
    }
}

/// Feet and inches, then inches where those are not the same words.
fn full(l: Length, tape: Tape) -> String {
    let (feet, inches) = (tape.read(l), tape.read_inches(l));
    if feet == inches { feet } else { format!("{feet} = {inches}") }
}

/// What the tape reading leaves out.
fn behind(l: Length, tape: Tape) -> Option<String> {
    if !l.is_exact() {
        return Some("carried to 9 places".to_owned());
    }
    // A whole millimetre is what was told or published: its fraction of an inch tells nobody anything.
    let mm = l.mm();
    (!tape.is_true(l)).then(|| match mm.is_integer() {
        true => format!("exactly {} mm", mm.to_integer()),
        false => format!("exactly {}\"", exact_fraction(l)),
    })
}

/// Millimetres: exact to four places, as every sixteenth of an inch is (25.4 / 16 =
/// 1.5875); else to the nearest tenth, and said so.
fn millimetres(l: Length) -> (String, Option<String>) {
    let (text, exact) = decimal(l.mm());
    let places = text.split_once('.').map_or(0, |(_, part)| part.len());
    if exact && l.is_exact() && places <= 4 {
        return (format!("{text} mm"), None);
    }
    (format!("{} mm", tenths(l.mm())), Some("to the nearest 0.1".to_owned()))
}

/// A number to one decimal, a tie away from zero.
fn tenths(q: Q) -> String {
    let scaled = (q * Ratio::from_integer(10)).round();
    decimal(scaled / Ratio::from_integer(10)).0
}

/// A plain number: decimal where that is exact, else the fraction.
fn number(q: Q) -> (String, Option<String>) {
    match decimal(q) {
        (text, true) => (text, None),
        (text, false) => (mixed(q), Some(format!("about {text}"))),
    }
}

/// A quantity to its unit's places, with its unit: `1,008 psi`. A ratio that would read
/// as just one and is not is printed to as many places as show it.
pub(super) fn quantity(q: Q, unit: Unit) -> String {
    let one = Ratio::from_integer(1);
    let rounded = |places: u32| {
        let scale = Ratio::from_integer(10_i128.pow(places));
        (q * scale).round() / scale
    };
    let honest = |places: &u32| unit != Unit::Times || q == one || rounded(*places) != one;
    let places = (unit.places()..6).find(honest).unwrap_or(6);
    let plain = decimal(rounded(places)).0;
    let text = if unit == Unit::Times { padded(&plain, places) } else { grouped(&plain) };
    if unit.name().is_empty() { text } else { format!("{text} {}", unit.name()) }
}

/// A ratio always shows its places: `3.00`.
fn padded(text: &str, places: u32) -> String {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    format!("{whole}.{part:0<width$}", width = places as usize)
}

/// Digits before the point in threes: `12,500`.
fn grouped(text: &str) -> String {
    let (sign, digits) = text.strip_prefix('-').map_or(("", text), |rest| ("-", rest));
    let (whole, part) = digits.split_once('.').map_or((digits, None), |(w, p)| (w, Some(p)));
    let mut out = String::from(sign);
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    part.map_or(out.clone(), |p| format!("{out}.{p}"))
}

/// A mixed number: `2/7`, `1 1/3`. Never called for a whole one.
pub(super) fn mixed(q: Q) -> String {
    let part = q.fract();
    let sign = if *q.numer() < 0 { "-" } else { "" };
    let (whole, over, under) = (q.to_integer().abs(), part.numer().abs(), part.denom());
    if whole == 0 { format!("{sign}{over}/{under}") } else { format!("{sign}{whole} {over}/{under}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::Why;

    fn shown(value: Value, style: Style, tape: Tape) -> String {
        let fig = Fig::new(value, Why::Told("length"));
        text(&[Span::Fig(fig, style)], tape)
    }

    fn inches(num: i128, den: i128) -> Length {
        Length::new(num, den).expect("a small fraction")
    }

    /// The readings follow from the fractions by hand; 39 11/24 in. lies between
    /// 39 7/16 (39.4375) and 39 1/2, nearer the first (39.4583).
    #[test]
    fn lengths_print_by_style() {
        use Style::{Full, Inches, InchesExact, Millimetres, Tape as T};
        let (run, sixth, small) = (inches(507, 4), inches(947, 24), inches(3, 8));
        let rows = [
            (run, T, "10'-6 3/4\""),
            (run, Inches, "126 3/4\""),
            (run, InchesExact, "126 3/4\""),
            (run, Full, "10'-6 3/4\" = 126 3/4\""),
            (sixth, T, "3'-3 7/16\""),
            (sixth, Inches, "39 7/16\""),
            (sixth, InchesExact, "39 7/16\" (exactly 39 11/24\")"),
            (sixth, Full, "3'-3 7/16\" = 39 7/16\" (exactly 39 11/24\")"),
            (small, Full, "3/8\""),
            (inches(120, 1), Millimetres, "3048 mm"),
            (inches(1, 16), Millimetres, "1.5875 mm"),
            (inches(1, 3), Millimetres, "8.5 mm (to the nearest 0.1)"),
        ];
        for (length, style, want) in rows {
            assert_eq!(shown(Value::Length(length), style, Tape::SIXTEENTHS), want, "{style:?}");
        }
    }

    /// A foot square has an irrational diagonal: 16.9705627 in.
    #[test]
    fn a_carried_length_says_so_where_exactness_is_shown() {
        let root = Length::diagonal(Length::inches(12), Length::inches(12)).expect("small");
        let show = |style| shown(Value::Length(root), style, Tape::SIXTEENTHS);
        assert_eq!(show(Style::InchesExact), "17\" (carried to 9 places)");
        assert_eq!(show(Style::Full), "1'-5\" = 17\" (carried to 9 places)");
        assert_eq!(show(Style::Tape), "1'-5\"");
        assert_eq!(show(Style::Millimetres), "431.1 mm (to the nearest 0.1)");
    }

    #[test]
    fn the_tape_of_the_job_decides_the_reading() {
        let eighths = Tape::to(8).expect("eighths are on tapes");
        assert_eq!(shown(Value::Length(inches(47, 16)), Style::InchesExact, eighths), "3\" (exactly 2 15/16\")");
        assert_eq!(shown(Value::Length(inches(47, 16)), Style::InchesExact, Tape::SIXTEENTHS), "2 15/16\"");
    }

    /// Rounding by hand: 1,007.58 psi is 1,008; 1.0036 is over one and says so.
    #[test]
    fn quantities_print_with_their_unit() {
        let rows = [
            (Ratio::new(8_640_000, 8575), Unit::Psi, "1,008 psi"),
            (Ratio::new(7200, 1), Unit::InchPounds, "7,200 in-lb"),
            (Ratio::new(1_250_000, 1), Unit::Psi, "1,250,000 psi"),
            (Ratio::new(343, 48), Unit::In3, "7.146 in^3"),
            (Ratio::new(-1999, 2), Unit::Pounds, "-1,000 lb"),
            (Ratio::new(10_036, 10_000), Unit::Times, "1.004"),
            (Ratio::new(9999, 10_000), Unit::Times, "0.9999"),
            (Ratio::new(733, 100), Unit::Times, "7.33"),
            (Ratio::new(1, 1), Unit::Times, "1.00"),
            (Ratio::new(19, 10), Unit::Times, "1.90"),
        ];
        for (q, unit, want) in rows {
            assert_eq!(shown(Value::Quantity(q, unit), Style::Tape, Tape::SIXTEENTHS), want);
        }
    }

    #[test]
    fn counts_and_numbers_print_plainly() {
        let number = |n, d| shown(Value::Number(Ratio::new(n, d)), Style::Tape, Tape::SIXTEENTHS);
        assert_eq!(shown(Value::Count(28), Style::Tape, Tape::SIXTEENTHS), "28");
        assert_eq!(number(5, 2), "2.5");
        assert_eq!(number(-4, 3), "-1 1/3 (about -1.333333)");
        assert_eq!(number(2, 7), "2/7 (about 0.285714)");
    }
}
