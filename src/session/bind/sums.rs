//! Sums on the tape said in loose words: the operation is learned, its figures are those of the line in their order.

use super::About;
use super::asked::Way;
use super::chain::chain;
use super::readings::Reading;
use crate::figure::Value as Figure;
use crate::grammar::Act;
use crate::grammar::scores::{Line, Shape, Token, Value};
use crate::measure::{Length, Q};
use crate::sums::{Expr, Into, Sum, answer};

/// The sum a reading asks for; `None` where its figures do not make one.
pub(super) fn summed(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    let values: Vec<&Value> = line.values().filter_map(|at| line.tokens.get(at)?.value.as_ref()).collect();
    if values.iter().any(|v| v.shape == Shape::Doubt) || loses_a_part(about.line, line) {
        return None;
    }
    // Several steps are none of the operations that are learned.
    let Some(operation) = reading.wants.first().copied() else {
        let sum = Sum::Value(chain(line)?);
        return answer(&sum).is_ok().then(|| Way::plain(0.0, Act::Sum(sum)));
    };
    // "each one", "one mark": a one that stands for a thing counts nothing, where the sum is made without it.
    let strong: Vec<&Value> = values.iter().copied().filter(|v| !is_weak(v)).collect();
    // "An inch, then another inch and a half": what is added once more is one length.
    let again =
        values.iter().any(|v| v.shape == Shape::Word) && matches!(operation, "add" | "less") && strong.len() > 1;
    let all = || made(about, line, operation, &values).filter(|_| !again);
    let sum = all().or_else(|| made(about, line, operation, &strong))?;
    answer(&sum).is_ok().then(|| Way::plain(0.0, Act::Sum(sum)))
}

/// True where a part of an inch stands without its figure, "one more sixteenth", or two of it would be read as a mixed number: "two 5/8s".
fn loses_a_part(said: &str, line: &Line) -> bool {
    const PARTS: &[&str] = &["quarter", "eighth", "sixteenth", "thirty-second"];
    let lone = line.tokens.iter().any(|t| t.word.as_deref().is_some_and(|w| PARTS.contains(&w.trim_end_matches('s'))));
    let several = |t: &Token| {
        let text = said.get(t.span.clone()).unwrap_or_default();
        let whole = text.starts_with(|c: char| c.is_alphanumeric()) && text.contains(char::is_whitespace);
        t.value.is_some() && whole && text.contains('/') && text.ends_with('s')
    };
    lone || line.tokens.iter().any(several)
}

/// True for a "one" in words.
fn is_weak(value: &Value) -> bool {
    matches!(value.shape, Shape::Spoken | Shape::Word) && whole(value) == Some(1)
}

fn made(about: &About<'_>, line: &Line, operation: &str, values: &[&Value]) -> Option<Sum> {
    let value = |expr: Option<Expr>| expr.map(Sum::Value);
    let lengths = || values.iter().map(|v| v.length()).collect::<Option<Vec<Length>>>();
    // What goes on from a sum: "now half of that".
    let one = || match values {
        [] => about.figure,
        [only] => only.length(),
        // "33 9/16 in two": the two is the half.
        [only, two] if operation == "half" && count(two) == Some(2) => only.length(),
        // "double" itself is a two.
        [two, only] if operation == "double" && two.shape == Shape::Word && count(two) == Some(2) => only.length(),
        _ => None,
    };
    let from =
        |n: usize| Some(lengths()?.into_iter().rev().chain(about.figure.filter(|_| values.len() < n)).rev().collect());
    match operation {
        "add" => value(joined(from(2)?, Expr::Plus)),
        "less" => value(joined(most_first(from(2)?), Expr::Less)),
        "half" => value(over(one()?, 2)),
        "third" => value(over(one()?, 3)),
        "fourth" => value(over(one()?, 4)),
        "double" => value(times(2, one()?)),
        "share" => {
            let (n, length) = counted(values).or_else(|| Some((count(values.first()?)?, about.figure?)))?;
            value(over(length, n))
        }
        "times" => {
            let (n, length) = counted(values).or_else(|| Some((count(values.first()?)?, about.figure?)))?;
            value(times(n, length))
        }
        "less-each" => match values {
            [a, b, c] => {
                // "12 times 1 1/2 taken from 67 3/8": what it is taken from may be said last.
                let last = || counted(&[a, b]).filter(|_| count(c).is_none()).map(|each| (each, c));
                let ((n, each), whole) = counted(&[b, c]).map(|each| (each, a)).or_else(last)?;
                value(Some(Expr::Less(Box::new(Expr::Length(whole.length()?)), Box::new(times(n, each)?))))
            }
            _ => None,
        },
        "products" => {
            let products = values.chunks(2).map(|pair| counted(pair).and_then(|(n, l)| times(n, l)));
            let products: Vec<Expr> = products.collect::<Option<_>>()?;
            let mut products = products.into_iter();
            let first = products.next()?;
            value(Some(products.fold(first, |sum, next| Expr::Plus(Box::new(sum), Box::new(next)))))
        }
        "between" => {
            let sum = joined(lengths().filter(|l| l.len() == 2)?, Expr::Plus)?;
            value(Some(Expr::Over(Box::new(sum), Box::new(Expr::Number(Q::from_integer(2))))))
        }
        "bigger" => match from(2)?[..] {
            [a, b] => Some(Sum::Bigger(a, b)),
            _ => None,
        },
        "diagonal" => match sides(values)?[..] {
            [a, b] => Some(Sum::Diagonal(a, b)),
            _ => None,
        },
        "convert" => Some(Sum::Convert(one()?, unit(line, values))),
        _ => None,
    }
}

/// A whole number without a unit, as so many.
fn count(value: &Value) -> Option<i64> {
    let counts = matches!(value.shape, Shape::Bare | Shape::Spoken | Shape::Word);
    whole(value).filter(|n| counts && *n > 0)
}

/// So many of one length: which of two figures counts and which measures. Where both may count, the lesser does.
fn counted(values: &[&Value]) -> Option<(i64, Length)> {
    let [a, b] = values else { return None };
    match (count(a), count(b)) {
        (Some(n), None) => Some((n, b.length()?)),
        (None, Some(n)) => Some((n, a.length()?)),
        (Some(n), Some(m)) if n <= m => Some((n, b.length()?)),
        (Some(_), Some(m)) => Some((m, a.length()?)),
        (None, None) => None,
    }
}

/// The sides of a rectangle: numbers without a unit are feet, as frames are named.
fn sides(values: &[&Value]) -> Option<Vec<Length>> {
    let feet = |v: &&Value| match count(v).or_else(|| side(v)) {
        Some(n) => Length::from_q(Q::from_integer(i128::from(n) * 12)),
        None => v.length(),
    };
    values.iter().map(feet).collect()
}

/// A whole number that is one side of "10 by 14".
fn side(value: &Value) -> Option<i64> {
    whole(value).filter(|_| value.shape == Shape::Side)
}

/// A number that is whole.
fn whole(value: &Value) -> Option<i64> {
    value.number().filter(|q| q.is_integer()).and_then(|q| i64::try_from(q.to_integer()).ok())
}

fn joined(lengths: Vec<Length>, join: fn(Box<Expr>, Box<Expr>) -> Expr) -> Option<Expr> {
    let mut all = lengths.into_iter().map(Expr::Length);
    let (first, second) = (all.next()?, all.next()?);
    Some(all.fold(join(Box::new(first), Box::new(second)), |sum, next| join(Box::new(sum), Box::new(next))))
}

/// "take 3/8 off 40 1/4": what is taken is the lesser.
fn most_first(mut lengths: Vec<Length>) -> Vec<Length> {
    if let Some(most) = (0..lengths.len()).rev().max_by_key(|i| lengths[*i]) {
        let most = lengths.remove(most);
        lengths.insert(0, most);
    }
    lengths
}

fn over(length: Length, parts: i64) -> Option<Expr> {
    Some(Expr::Over(Box::new(Expr::Length(length)), Box::new(Expr::Number(Q::from_integer(i128::from(parts))))))
}

fn times(n: i64, length: Length) -> Option<Expr> {
    Some(Expr::Times(Box::new(Expr::Number(Q::from_integer(i128::from(n)))), Box::new(Expr::Length(length))))
}

/// The unit a figure is wanted in: the last one named by itself; inches for a metric figure, else feet and inches.
fn unit(line: &Line, values: &[&Value]) -> Into {
    let metric = values.iter().any(|v| v.shape == Shape::Metric);
    let mut named = line.items.iter().filter_map(|i| i.word()).filter_map(|word| match word {
        "mm" => Some(Into::Millimetres),
        "cm" => Some(Into::Centimetres),
        "m" => Some(Into::Metres),
        "in" => Some(Into::Inches),
        _ => None,
    });
    let otherwise = if metric { Into::Inches } else { Into::FeetInches };
    named
        .next_back()
        .filter(|into| !matches!(into, Into::Millimetres | Into::Centimetres | Into::Metres) || !metric)
        .unwrap_or(otherwise)
}

/// The length an answer gave, for a sum that goes on from it.
pub(super) fn of_figure(value: Figure) -> Option<Length> {
    if let Figure::Length(l) = value { Some(l) } else { None }
}
