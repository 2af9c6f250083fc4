//! Which item of a line says which fact of its meaning.

use crate::fact::{Fact, Said};
use crate::words::word_rank;
use railhand::grammar::scores::{How, Is, Item, Line, NONE, Reading};
use railhand::measure::{Length, Q};

/// A line's items with their rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Aligned {
    /// The row of each item in order, or [`NONE`]; of one that says two, both, joined by a plus.
    pub rows: Vec<String>,
    /// How each fills it, as [`How::label`] has it.
    pub hows: Vec<String>,
    /// How many figures of the meaning no value says, or only a value that says another.
    pub lost: usize,
    /// How many places, choices and names no word says.
    pub unsaid: usize,
    /// The facts that are not said, as written.
    pub left: Vec<String>,
}

/// The places a fact may have: how far down it stands there, and the item.
struct Open<'a> {
    fact: &'a Fact,
    may: Vec<(usize, usize)>,
}

/// Puts each fact on the item that says it: the fact with the least choice first, an item that says nothing yet before one that
/// does, the likelier reading before the other, the earlier item before the later.
pub fn align(line: &Line, facts: &[(String, String)]) -> Aligned {
    let facts: Vec<Fact> = facts.iter().map(|(row, value)| Fact::of(row, value)).collect();
    let mut open: Vec<Open> = facts.iter().map(|fact| Open { fact, may: places(line, fact) }).collect();
    // Places come in the order they are said: "corner to corner".
    open.sort_by_key(|o| if o.fact.is_figure() { (false, o.may.len()) } else { (true, 0) });
    let mut filled: Vec<Vec<(&str, How)>> = vec![Vec::new(); line.items.len()];
    let (mut lost, mut unsaid, mut left) = (0, 0, Vec::new());
    for Open { fact, may } in &open {
        let word = !fact.is_figure();
        let same = |i: usize| filled[i].iter().any(|(row, _)| *row == fact.row);
        let free = may.iter().filter(|(_, i)| filled[*i].is_empty()).min();
        // "both sides are 8 ft" tells the same row twice by one value; "half an inch each side" tells two.
        if free.is_none() && may.iter().any(|(_, i)| same(*i)) {
            continue;
        }
        let shared = || may.iter().filter(|(_, i)| filled[*i].len() < 2 && !same(*i)).min();
        match free.or_else(shared) {
            Some((_, i)) => filled[*i].push((&fact.row, how(&line.items[*i], &fact.said))),
            None => {
                left.push(fact.written.clone());
                *(if word { &mut unsaid } else { &mut lost }) += 1;
            }
        }
    }
    let (rows, hows) = filled.into_iter().map(joined).unzip();
    Aligned { rows, hows, lost, unsaid, left }
}

/// The rows of an item as one label, and how the first is filled.
fn joined(mut of: Vec<(&str, How)>) -> (String, String) {
    of.sort_by_key(|(row, _)| *row);
    let rows: Vec<&str> = of.iter().map(|(row, _)| *row).collect();
    let how = of.first().map_or(How::Set, |(_, how)| *how);
    (if rows.is_empty() { NONE.to_owned() } else { rows.join("+") }, how.label())
}

/// How an item says this.
fn how<'a>(item: &Item, said: &'a Said) -> How<'a> {
    match said {
        Said::Figure(..) | Said::Change(How::Set, _) => How::Set,
        Said::Change(how, _) => *how,
        Said::Nothing => How::Nothing,
        Said::Named => How::Named,
        Said::Words(words) if item.word() == Some(words) => How::Set,
        Said::Words(words) => How::Words(words),
    }
}

/// Where a fact may be said.
fn places(line: &Line, fact: &Fact) -> Vec<(usize, usize)> {
    let rank = |item: &Item| match (&fact.said, &item.is) {
        (Said::Figure(figure) | Said::Change(_, figure), Is::Value) => {
            figure_rank(&line.tokens.get(item.at)?.value.as_ref()?.readings, *figure)
        }
        (Said::Figure(_) | Said::Change(..), _) | (_, Is::Value) => None,
        _ => word_rank(line, item, fact),
    };
    line.items.iter().enumerate().filter_map(|(i, item)| Some((rank(item)?, i))).collect()
}

/// How far down the readings the figure stands.
fn figure_rank(ways: &[Reading], figure: Reading) -> Option<usize> {
    ways.iter().position(|way| match (way, figure) {
        (Reading::Length(a), Reading::Length(b)) => near(*a, b),
        (a, b) => *a == b,
    })
}

/// Metric lengths are written in the corpus to a hundredth of an inch or so.
fn near(a: Length, b: Length) -> bool {
    let apart = a.q() - b.q();
    apart < Q::new(1, 90) && apart > Q::new(-1, 90)
}
