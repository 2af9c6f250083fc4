//! A relation: what follows from what, with its words and its source, usable in every direction it can be solved in.

use super::{Kind, RowId};
use crate::figure::{Fig, Unit, Value, Why};
use crate::measure::{Length, Q};
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul};
use rust_decimal::Decimal;

/// One quantity a relation works from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// It must be known.
    Want(RowId),
    /// It counts where it was told, and is nothing where it was not.
    Told(RowId),
    /// It counts where the question gives it, or it follows from what it gives, and is nothing otherwise: the job's own is of another run.
    Also(RowId),
    /// It must be given in the question itself: what the job says, or what follows, may be of another thing.
    Given(RowId),
    /// It must be given in the question or follow from what is: the job's own figure is of its longest bay, or of all its runs.
    Follows(RowId),
    /// All of them given in the question, two at least, added up.
    Every(RowId),
    /// Every size given of a part times the count said with it, added up.
    Counted(RowId),
    /// What the question gave of it first, where it gave two: the other leg, the mark before.
    First(RowId),
}

/// An input that must be known.
pub const fn want(row: RowId) -> Input {
    Input::Want(row)
}

/// An input that is nothing where nobody told it.
pub const fn told(row: RowId) -> Input {
    Input::Told(row)
}

/// An input that is nothing where the question does not give it.
pub const fn also(row: RowId) -> Input {
    Input::Also(row)
}

/// An input that must be given in the question itself.
pub const fn given(row: RowId) -> Input {
    Input::Given(row)
}

/// An input that must be given in the question or follow from what is.
pub const fn follows(row: RowId) -> Input {
    Input::Follows(row)
}

/// All of a row given in the question, two at least, added up.
pub const fn every(row: RowId) -> Input {
    Input::Every(row)
}

/// The first of two given in the question.
pub const fn first(row: RowId) -> Input {
    Input::First(row)
}

/// Every size of a part times the count said with it.
pub const fn counted(row: RowId) -> Input {
    Input::Counted(row)
}

impl Input {
    /// Its row.
    pub fn row(self) -> RowId {
        match self {
            Input::Want(row)
            | Input::Told(row)
            | Input::Also(row)
            | Input::Given(row)
            | Input::Follows(row)
            | Input::Every(row)
            | Input::Counted(row)
            | Input::First(row) => row,
        }
    }
}

/// What stands in a relation.
#[derive(Clone, Copy, Debug)]
enum Form {
    /// So many times each row, and a whole number, added up, is nothing: solved for any of them.
    Sum(&'static [(i64, Input)], i64),
    /// The first is the second times the third: solved for any of them.
    Product(RowId, RowId, RowId),
    /// One row worked out of others.
    Work(RowId, &'static [Input], fn(&Args) -> Option<Value>),
}

/// A relation among rows.
#[derive(Clone, Copy, Debug)]
pub struct Relation {
    /// It in words, with the names of its inputs: "the clear less the balusters, over one gap more than balusters".
    pub says: &'static str,
    /// Where it is published; "geometry" where it needs no source.
    pub source: &'static str,
    /// It answers only one who asks for what it gives: nothing else is worked from that. A gate at a stair head takes no more of a run than
    /// the stairs do.
    pub alone: bool,
    form: Form,
}

/// The inputs of a relation, in its order.
#[derive(Debug)]
pub struct Args(pub Vec<Fig>);

impl Args {
    /// An input as a length; nothing where it is none.
    pub fn length(&self, i: usize) -> Length {
        self.0.get(i).and_then(Fig::as_length).unwrap_or(Length::ZERO)
    }

    /// An input as a plain number.
    pub fn q(&self, i: usize) -> Q {
        self.0.get(i).map_or_else(|| Ratio::from_integer(0), Fig::as_q)
    }

    /// An input as a whole number; nothing where it is none.
    pub fn n(&self, i: usize) -> i64 {
        let q = self.q(i);
        if q.is_integer() { i64::try_from(q.to_integer()).unwrap_or(0) } else { 0 }
    }
}

/// A direction a relation is solved in: what it gives, and what from.
#[derive(Clone, Debug)]
pub struct Way {
    /// The relation.
    pub relation: &'static Relation,
    /// The row it gives.
    pub gives: RowId,
    /// The rows it takes.
    pub from: Vec<Input>,
}

impl Relation {
    /// So many times each row, added up, is nothing. Sums are geometry and need no other source.
    pub const fn sum(says: &'static str, rows: &'static [(i64, Input)]) -> Relation {
        Relation { says, source: "geometry", alone: false, form: Form::Sum(rows, 0) }
    }

    /// So many times each row, and a whole number, added up, is nothing: "one post more than bays".
    pub const fn count(says: &'static str, rows: &'static [(i64, Input)], and: i64) -> Relation {
        Relation { says, source: "arithmetic", alone: false, form: Form::Sum(rows, and) }
    }

    /// The first row is the second times the third.
    pub const fn product(says: &'static str, whole: RowId, by: RowId, times: RowId) -> Relation {
        Relation { says, source: "arithmetic", alone: false, form: Form::Product(whole, by, times) }
    }

    /// One row worked out of others.
    pub const fn work(
        gives: RowId,
        says: &'static str,
        from: &'static [Input],
        work: fn(&Args) -> Option<Value>,
    ) -> Relation {
        Relation { says, source: "geometry", alone: false, form: Form::Work(gives, from, work) }
    }

    /// The same, published there.
    pub const fn by(self, source: &'static str) -> Relation {
        Relation { source, ..self }
    }

    /// The same, for one who asks for it alone.
    pub const fn alone(self) -> Relation {
        Relation { alone: true, ..self }
    }

    /// Every direction it can be solved in.
    pub fn ways(&'static self) -> Vec<Way> {
        let way = |gives, from| Way { relation: self, gives, from };
        match self.form {
            Form::Work(gives, from, _) => vec![way(gives, from.to_vec())],
            Form::Product(a, b, c) => {
                vec![way(a, vec![want(b), want(c)]), way(b, vec![want(a), want(c)]), way(c, vec![want(a), want(b)])]
            }
            Form::Sum(rows, _) => {
                let others = |i: usize| {
                    let rest = rows.iter().enumerate().filter(|(j, _)| *j != i);
                    rest.map(|(_, (_, input))| *input).collect()
                };
                (0..rows.len()).map(|i| way(rows[i].1.row(), others(i))).collect()
            }
        }
    }

    /// How much more of `gives` a little more of `of` makes, all else the same; `None` where it is no sum of both.
    pub fn slope(&self, gives: RowId, of: RowId) -> Option<Q> {
        let Form::Sum(rows, _) = self.form else { return None };
        let times = |row| rows.iter().find(|(_, input)| input.row() == row).map(|(k, _)| i128::from(*k));
        Some(Ratio::new(-times(of)?, times(gives)?)).filter(|_| gives != of)
    }

    /// What a row is times to make the whole, where one of the two counts the other.
    pub fn other_factor(&self, whole: RowId, of: RowId) -> Option<RowId> {
        let Form::Product(all, by, times) = self.form else { return None };
        let counts = [by, times].iter().any(|r| r.row().kind == Kind::Count);
        match of {
            _ if all != whole || !counts => None,
            of if of == by => Some(times),
            of if of == times => Some(by),
            _ => None,
        }
    }

    /// The row `gives` from the others, in the order of [`Way::from`]; `None` where it has no value: a division by nothing, a count that
    /// comes out broken, a length below nothing, a number past 128 bits.
    pub fn solve(&self, gives: RowId, args: &Args) -> Option<Value> {
        let of = match self.form {
            Form::Work(_, _, work) => return work(args),
            Form::Product(whole, _, _) if gives == whole => args.q(0).checked_mul(&args.q(1)),
            Form::Product(..) => args.q(0).checked_div(&args.q(1)),
            Form::Sum(rows, and) => solved_sum(rows, and, gives, args),
        };
        value(gives, of?, args.0.iter().filter_map(Fig::as_length).any(|l| !l.is_exact()))
    }

    /// What it gives as a figure that knows why. What counts only where a question gives it, and is nothing, has no part in the working.
    pub fn fig(&self, gives: RowId, from: &[Input], args: Args) -> Option<Fig> {
        let value = self.solve(gives, &args)?;
        let idle =
            |(input, fig): &(&Input, Fig)| matches!(input, Input::Also(_)) && fig.as_q() == Ratio::from_integer(0);
        let named = from.iter().zip(args.0).filter(|part| !idle(part));
        let named = named.map(|(input, fig)| (input.row().row().name, fig)).collect();
        Some(Fig::new(value, Why::Formula(self.says, named)))
    }
}

/// The row `gives` of a sum that comes to nothing.
fn solved_sum(rows: &[(i64, Input)], and: i64, gives: RowId, args: &Args) -> Option<Q> {
    let whole = |k: i64| Ratio::from_integer(i128::from(k));
    let times = rows.iter().find(|(_, input)| input.row() == gives)?.0;
    let rest = rows.iter().filter(|(_, input)| input.row() != gives);
    let sum = rest
        .zip(&args.0)
        .try_fold(whole(and), |sum, ((k, _), fig)| sum.checked_add(&fig.as_q().checked_mul(&whole(*k))?));
    sum?.checked_div(&whole(-times))
}

/// A number as a value of a row's kind. Only a row that says so may be below nothing.
pub fn value(row: RowId, q: Q, inexact: bool) -> Option<Value> {
    let zero = Ratio::from_integer(0);
    let low = Ratio::from_integer(i128::from(row.row().sane.0.min(0)));
    if q < low {
        return None;
    }
    let length = || Length::from_q(q).map(|l| Value::Length(if inexact { l.inexact() } else { l }));
    match row.row().kind {
        Kind::Length => length(),
        Kind::Count => {
            (q.is_integer() && q >= zero).then(|| u64::try_from(q.to_integer()).ok().map(Value::Count)).flatten()
        }
        Kind::Angle => Some(Value::Quantity(q, Unit::Degrees)),
        Kind::Force => Some(Value::Quantity(q, Unit::Pounds)),
        Kind::Money => money(q).map(Value::Money),
        Kind::Number | Kind::Percent => Some(Value::Number(q)),
        Kind::Lumber | Kind::Place | Kind::Choice | Kind::Text => None,
    }
}

/// Nothing of a row: what an untold part of a sum counts for.
pub fn nothing(row: RowId) -> Option<Value> {
    value(row, Ratio::from_integer(0), false)
}

/// A number as money, to the cent.
pub fn money(q: Q) -> Option<Decimal> {
    let (num, den) = (i64::try_from(*q.numer()).ok()?, i64::try_from(*q.denom()).ok()?);
    Decimal::from(num).checked_div(Decimal::from(den)).map(|m| m.round_dp(2))
}
