//! Works a sum out: every step checked, every figure with its inputs.

use super::{Expr, Into, Sum};
use crate::figure::{Fig, Value, Why};
use crate::measure::{Length, Q};
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, ToPrimitive, Zero};

/// Why a sum has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SumError {
    /// Something over nothing, or pieces of no length.
    ByZero,
    /// A length times a length: an area, which is no length.
    Area,
    /// A length and a plain number where both must be of one kind.
    Mixed,
    /// Past what the arithmetic holds, or too many steps in one sum.
    TooBig,
}

/// The most steps one inside the other in a sum; far more than a person nests.
const DEEPEST: usize = 400;

/// The greatest numerator and denominator of an answer: a length of the greatest size
/// accepted, carried as finely as a diagonal is. Printing it stays inside 128 bits.
const WIDEST: i128 = Length::BOUND * Length::CARRIED;

/// The answer, and what stands beside it: what is left of a stick, the pieces the last
/// stick still holds, the number in the unit asked for, or the difference of two lengths.
///
/// # Errors
/// [`SumError`] says why there is none.
pub fn answer(sum: &Sum) -> Result<(Fig, Option<Fig>), SumError> {
    match sum {
        Sum::Value(expr) => Ok((value(expr, 0)?, None)),
        Sum::Pieces { piece, from } => pieces(*piece, *from),
        Sum::Sticks { pieces, per } => sticks(*pieces, *per),
        Sum::Convert(length, into) => convert(*length, *into),
        Sum::Diagonal(a, b) => diagonal(*a, *b).map(|fig| (fig, None)),
        Sum::Bigger(a, b) => bigger(*a, *b),
    }
}

fn value(expr: &Expr, depth: usize) -> Result<Fig, SumError> {
    if depth > DEEPEST {
        return Err(SumError::TooBig);
    }
    let (op, says, a, b): (Op, _, _, _) = match expr {
        Expr::Length(l) => return Ok(Fig::told(*l, "length")),
        Expr::Number(q) => return Ok(Fig::new(Value::Number(*q), Why::Told("number"))),
        Expr::Plus(a, b) => (plus, "the first plus the second", a, b),
        Expr::Less(a, b) => (less, "the first less the second", a, b),
        Expr::Times(a, b) => (times, "the first times the second", a, b),
        Expr::Over(a, b) => (over, "the first over the second", a, b),
    };
    let (a, b) = (value(a, depth + 1)?, value(b, depth + 1)?);
    let result = held(op(a.value(), b.value())?)?;
    Ok(Fig::new(result, Why::Formula(says, vec![("first", a), ("second", b)])))
}

type Op = fn(Value, Value) -> Result<Value, SumError>;

/// The value, where it is not past what can be printed.
fn held(v: Value) -> Result<Value, SumError> {
    let q = match v {
        Value::Length(l) => l.q(),
        Value::Number(q) | Value::Quantity(q, _) => q,
        Value::Count(_) | Value::Money(_) => return Ok(v),
    };
    let wide = WIDEST.unsigned_abs();
    let fits = q.numer().unsigned_abs() <= wide && q.denom().unsigned_abs() <= wide;
    if fits { Ok(v) } else { Err(SumError::TooBig) }
}

fn length(l: Option<Length>) -> Result<Value, SumError> {
    l.map(Value::Length).ok_or(SumError::TooBig)
}

fn number(q: Option<Q>) -> Result<Value, SumError> {
    q.map(Value::Number).ok_or(SumError::TooBig)
}

/// A length, or a plain number of any kind.
enum Kind {
    Length(Length),
    Number(Q),
}

fn kind(v: Value) -> Kind {
    match v {
        Value::Length(l) => Kind::Length(l),
        // A sum has no quantities yet: one would count as its number.
        Value::Number(q) | Value::Quantity(q, _) => Kind::Number(q),
        Value::Count(n) => Kind::Number(Q::from_integer(i128::from(n))),
        Value::Money(m) => Kind::Number(crate::measure::q_from_decimal(m).unwrap_or_default()),
    }
}

fn plus(a: Value, b: Value) -> Result<Value, SumError> {
    match (kind(a), kind(b)) {
        (Kind::Length(a), Kind::Length(b)) => length(a.plus(b)),
        (Kind::Number(a), Kind::Number(b)) => number(a.checked_add(&b)),
        _ => Err(SumError::Mixed),
    }
}

fn less(a: Value, b: Value) -> Result<Value, SumError> {
    match (kind(a), kind(b)) {
        (Kind::Length(a), Kind::Length(b)) => length(a.less(b)),
        (Kind::Number(a), Kind::Number(b)) => number(a.checked_sub(&b)),
        _ => Err(SumError::Mixed),
    }
}

fn times(a: Value, b: Value) -> Result<Value, SumError> {
    match (kind(a), kind(b)) {
        (Kind::Length(l), Kind::Number(q)) | (Kind::Number(q), Kind::Length(l)) => length(l.times(q)),
        (Kind::Number(a), Kind::Number(b)) => number(a.checked_mul(&b)),
        (Kind::Length(_), Kind::Length(_)) => Err(SumError::Area),
    }
}

fn over(a: Value, b: Value) -> Result<Value, SumError> {
    match (kind(a), kind(b)) {
        (_, Kind::Length(b)) if b.is_zero() => Err(SumError::ByZero),
        (_, Kind::Number(b)) if b.is_zero() => Err(SumError::ByZero),
        (Kind::Length(a), Kind::Number(b)) => length(a.over(b)),
        (Kind::Length(a), Kind::Length(b)) => number(a.ratio(b)),
        (Kind::Number(a), Kind::Number(b)) => number(a.checked_div(&b)),
        (Kind::Number(_), Kind::Length(_)) => Err(SumError::Mixed),
    }
}

/// How many whole pieces come out of a stick, and what is left. Kerf is not counted.
fn pieces(piece: Length, from: Length) -> Result<(Fig, Option<Fig>), SumError> {
    if !piece.is_positive() {
        return Err(SumError::ByZero);
    }
    let whole = from.ratio(piece).ok_or(SumError::TooBig)?.floor().to_integer().max(0);
    let count = whole.to_u64().ok_or(SumError::TooBig)?;
    let used = piece.times(Q::from_integer(whole));
    let rest = used.and_then(|used| from.less(used)).ok_or(SumError::TooBig)?;
    let (piece, stick) = (Fig::told(piece, "piece"), Fig::told(from, "stick"));
    let inputs = vec![("stick", stick.clone()), ("piece", piece.clone())];
    let count = Fig::count(count, Why::Formula("whole pieces in the stick, saw cuts not counted", inputs));
    let inputs = vec![("stick", stick), ("pieces", count.clone()), ("piece", piece)];
    let left = Fig::new(held(Value::Length(rest))?, Why::Formula("the stick less the pieces", inputs));
    Ok((count, Some(left)))
}

/// How many sticks, and how many more pieces the last one still holds, if any.
fn sticks(pieces: u64, per: u64) -> Result<(Fig, Option<Fig>), SumError> {
    if per == 0 {
        return Err(SumError::ByZero);
    }
    let sticks = pieces.div_ceil(per);
    let spare = u128::from(sticks) * u128::from(per) - u128::from(pieces);
    let told = |n, what| Fig::count(n, Why::Told(what));
    let inputs = vec![("pieces", told(pieces, "pieces")), ("to a stick", told(per, "to a stick"))];
    let fig = Fig::count(sticks, Why::Formula("pieces over pieces to a stick, rounded up", inputs.clone()));
    let inputs = inputs.into_iter().chain([("sticks", fig.clone())]).collect();
    // Less than one stick's worth, so it is never over `per`.
    let spare = u64::try_from(spare).ok().filter(|n| *n > 0);
    Ok((fig, spare.map(|n| Fig::count(n, Why::Formula("more pieces the last stick holds", inputs)))))
}

/// The length, and the number of the unit asked for where that is not on an inch tape.
/// 25.4 mm to the inch, 12 in. to the foot: NIST Handbook 44, appendix C.
fn convert(l: Length, into: Into) -> Result<(Fig, Option<Fig>), SumError> {
    let mm = |per: i128| l.q().checked_mul(&Q::new(127, 5 * per)).ok_or(SumError::TooBig);
    let (says, q) = match into {
        Into::Inches | Into::FeetInches => return Ok((told_length(l)?, None)),
        Into::Feet => ("inches over 12", l.q().checked_div(&Q::from_integer(12)).ok_or(SumError::TooBig)?),
        Into::Millimetres => ("inches times 25.4", mm(1)?),
        Into::Centimetres => ("inches times 2.54", mm(10)?),
        Into::Metres => ("inches times 0.0254", mm(1000)?),
    };
    let told = told_length(l)?;
    let number = Fig::new(held(Value::Number(q))?, Why::Formula(says, vec![("length", told.clone())]));
    Ok((told, Some(number)))
}

fn told_length(l: Length) -> Result<Fig, SumError> {
    held(Value::Length(l)).map(|v| Fig::new(v, Why::Told("length")))
}

fn diagonal(a: Length, b: Length) -> Result<Fig, SumError> {
    let result = held(length(Length::diagonal(a, b))?)?;
    let inputs = vec![("one side", Fig::told(a, "side")), ("other side", Fig::told(b, "side"))];
    Ok(Fig::new(result, Why::Formula("the square root of both sides squared and added", inputs)))
}

fn bigger(a: Length, b: Length) -> Result<(Fig, Option<Fig>), SumError> {
    let (more, fewer) = (a.max(b), a.min(b));
    let gap = held(length(more.less(fewer))?)?;
    let (a, b) = (Fig::told(a, "first"), Fig::told(b, "second"));
    let inputs = || vec![("first", a.clone()), ("second", b.clone())];
    let fig = Fig::length(more, Why::Formula("the bigger of the two", inputs()));
    Ok((fig, Some(Fig::new(gap, Why::Formula("the bigger less the smaller", inputs())))))
}
