//! Facts about the wood and how the rail is made up.

use super::Say;
use super::atoms::{In, Out, any, count, det, lumber, one, part, sense, sep, text};
use super::strength::NO_WOOD;
use crate::grammar::draft::Clause;
use crate::grammar::items::Item;
use crate::grammar::sense::{Part, Sense, Strong, Verb};
use crate::job::{Duration, Grade, Lie, Member, Order, TimberTold};
use crate::measure::Lumber;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map, opt, value, verify};
use nom::sequence::{preceded, terminated};

fn timber(told: TimberTold) -> Say {
    Say::Clause(Clause::Timber(vec![told]))
}

fn strong<'a>(cue: Strong) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Strong(cue))
}

/// "the wood is", "lumber's", "it's", "posts are".
fn stuff(input: In<'_>) -> Out<'_, ()> {
    let thing = alt((strong(Strong::Stuff), part(Part::Post), text(&["wood", "it", "everything", "they", "stock"])));
    let is = || text(&["is", "'s", "are", ":", "=", "will be", "'re", "gonna be"]);
    let whole = value((), (opt(text(&["all"])), det, opt(text(&["all"])), thing, opt(alt((is(), sep(":"))))));
    let it_is =
        value((), text(&["its", "it 's", "they 're", "theyre", "thats", "were using", "we 're using", "using"]));
    value((), (alt((whole, it_is)), opt(text(&["all", "a", "just"])))).parse(input)
}

/// "it's southern pine", "the wood is hem fir", "species doug fir".
pub fn species(input: In<'_>) -> Out<'_, Say> {
    let wood = any(|s| if let Sense::Wood(species) = s { Some(species) } else { None });
    let known = map(wood, |s| timber(TimberTold::Species(s)));
    // "it's balsa": a wood, and none of the tables'.
    let other = value(Say::Clause(Clause::NotYet(NO_WOOD)), strong(Strong::OtherWood));
    let treated = || text(&["treated", "pressure treated", "pt", "pressure - treated"]);
    let lead = alt((value((), (opt(stuff), treated())), stuff));
    preceded(lead, alt((known, other))).parse(input)
}

/// "no 2", "grade number 1", "lumber grade no. 2"; behind a wood or a word for it.
pub fn grade(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(sep(",")), opt(strong(Strong::Stuff)), opt(text(&["graded", "grade", "is", "stamped"])));
    let number = (text(&["no", "number", "grade", "#", "no . "]), opt(sep(".")));
    let which = alt((verify(count, |n| *n == 1), verify(count, |n| *n == 2)));
    let end = opt(text(&["grade", "or better"]));
    let read = preceded((lead, number), terminated(which, end));
    read.map(|n| timber(TimberTold::Grade(if n == 1 { Grade::No1 } else { Grade::No2 }))).parse(input)
}

/// "the wood stays dry", "lumber gets wet", "posts are incised", "not incised", "ten minute load".
pub fn service(input: In<'_>) -> Out<'_, Say> {
    let not = || opt(text(&["not", "arent", "isnt"])).map(|n| n.is_some());
    let incised = terminated(not(), strong(Strong::Incised)).map(|no| TimberTold::Incised(!no));
    let said = alt((
        value(TimberTold::Wet(true), strong(Strong::Wet)),
        value(TimberTold::Wet(false), strong(Strong::Dry)),
        incised,
        value(TimberTold::Duration(Duration::TenMinutes), strong(Strong::TenMinutes)),
        value(TimberTold::Duration(Duration::TenYears), strong(Strong::TenYears)),
    ));
    preceded((opt(stuff), opt((sense(Sense::Verb(Verb::Use)), det))), said).map(timber).parse(input)
}

fn lie(input: In<'_>) -> Out<'_, Lie> {
    alt((value(Lie::Flat, strong(Strong::Flat)), value(Lie::Edge, strong(Strong::Edge)))).parse(input)
}

fn laid(input: In<'_>) -> Out<'_, ()> {
    value((), opt(text(&["is", "'s", "are", "lies", "laid", "goes", "sits", "set", ":"]))).parse(input)
}

/// A rail's own word: "top rail", "rail" only where how it lies is told.
fn top_rail(input: In<'_>) -> Out<'_, ()> {
    let named =
        |i: &Item| (i.may_be(Sense::Part(Part::TopRail)) && !i.may_be(Sense::Strong(Strong::Cap))).then_some(());
    preceded(det, one(named)).parse(input)
}

fn two_by(input: In<'_>) -> Out<'_, Lumber> {
    verify(lumber, |l| l.thick_quarters < 16).parse(input)
}

/// "top rail is a 2x4", "2x4 top rail", "top rail is a 2x4 on edge".
pub fn rail_of(input: In<'_>) -> Out<'_, Say> {
    let first = preceded((top_rail, laid, opt(sep(":")), det), two_by);
    let last = terminated(preceded(det, two_by), top_rail);
    let told = |(l, lie): (Lumber, Option<Lie>)| {
        let told = [Some(Order::Rail(Member::Top, Some(l))), lie.map(|lie| Order::Lay(Member::Top, lie))];
        Say::Clause(Clause::Orders(told.into_iter().flatten().collect()))
    };
    (alt((first, last)), opt(preceded(opt(text(&["laid", "lying", "set"])), lie))).map(told).parse(input)
}

/// "top rail on edge", "rail laid flat"; "on edge" behind the rail's lumber.
pub fn rail_lies(input: In<'_>) -> Out<'_, Say> {
    let rail = alt((top_rail, preceded(det, part(Part::Rail))));
    preceded((rail, laid), lie).map(|l| Say::Clause(Clause::Orders(vec![Order::Lay(Member::Top, l)]))).parse(input)
}

/// "put a 2x6 cap on it", "cap is a 2x6", "no cap".
pub fn cap(input: In<'_>) -> Out<'_, Say> {
    let cap = || strong(Strong::Cap);
    let verb = || opt(alt((sense(Sense::Verb(Verb::Use)), sense(Sense::Verb(Verb::Put)))));
    let on = || opt((text(&["on"]), text(&["it", "top", "the rail", "that", "there"])));
    let last = terminated(preceded((verb(), det), two_by), (cap(), on()));
    let first = preceded((det, cap(), laid, opt(sep(":")), det), two_by);
    let none = value(None, (text(&["no", "without", "without a"]), det, cap()));
    let told = |size| Say::Clause(Clause::Orders(vec![Order::Rail(Member::Cap, size)]));
    alt((map(alt((last, first)), Some), none)).map(told).parse(input)
}
