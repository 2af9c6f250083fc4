//! Whose rules hold: "we're on the 2018", "we're in Canada", "county wants 42 inch rails".

use super::Say;
use super::atoms::{In, Out, det, length, one, part, sense, sep};
use super::phrase::{ends, said};
use crate::grammar::Query;
use crate::grammar::draft::{Clause, LawDraft};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Cue, Part, Sense};
use crate::job::Local;
use crate::limits::{Edition, PLACES, Place};
use crate::measure::{Length, Meaning, Measure, Said};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::sequence::{delimited, preceded, terminated};

fn told(draft: LawDraft) -> Say {
    Say::Clause(Clause::Law(draft))
}

fn code(input: In<'_>) -> Out<'_, ()> {
    said(&[
        "irc",
        "code",
        "edition",
        "ircs",
        "version",
        "irc code",
        "code here",
        "code book",
        "book",
        "residential code",
    ])
    .parse(input)
}

/// A year a code may be of; as a length it would be a doubtful one.
fn year(input: In<'_>) -> Out<'_, u16> {
    one(|item: &Item| item.text.parse::<u16>().ok().filter(|y| (2000..2040).contains(y))).parse(input)
}

/// "we're on the 2018", "county's on the 2021 IRC", "2024 code".
pub fn edition(input: In<'_>) -> Out<'_, Say> {
    let on = || {
        said(&[
            "we 're on",
            "were on",
            "we are on",
            "i 'm on",
            "im on",
            "they 're on",
            "theyre on",
            "county is on",
            "county 's on",
            "town is on",
            "town 's on",
            "city is on",
            "city 's on",
            "state is on",
            "state 's on",
            "we 're under",
            "were under",
            "we are under",
            "going by",
            "we go by",
            "i go by",
            "they go by",
            "building to",
            "we build to",
            "using",
            "we use",
            "they use",
            "we 're using",
            "it 's under",
            "permit is under",
            "permit 's under",
            "inspector goes by",
            "inspector is on",
            "inspector 's on",
            "the code is",
            "code is",
            "code 's",
        ])
    };
    let lead = opt(said(&["the", "our", "my", "and", "so", "here"]));
    let named = (lead, on(), opt(said(&["the"])), opt(code)).map(|_| ());
    let led = delimited(named, year, opt(code));
    let bare = delimited(opt(said(&["the"])), year, code);
    let last = preceded((opt(said(&["the"])), said(&["irc", "code"])), year);
    let place = opt(said(&["here", "around here", "in this county", "in this town"]));
    let any = terminated(alt((led, bare, last)), (place, peek(ends)));
    any.map(|year| match Edition::ALL.into_iter().find(|e| e.year() == year) {
        Some(edition) => told(LawDraft::Edition(edition)),
        None => Say::Clause(Clause::NotYet(
            "I hold the sections of the 2018, 2021 and 2024 IRC, no other edition: say one of those, or tell me what yours asks, \"county wants 42 inch rails\".",
        )),
    })
    .parse(input)
}

const NO_PLACE: &str = "I hold no values for that place: my figures stay the IRC's, which may not be what holds there. Ask your building department, and tell me what it asks, \"county wants 42 inch rails\".";

/// "we're in Canada", "the job's in Wisconsin", "we're on the IBC".
pub fn place(input: In<'_>) -> Out<'_, Say> {
    let mut is_in = said(&[
        "we 're in",
        "were in",
        "we are in",
        "i 'm in",
        "im in",
        "the job is in",
        "the job 's in",
        "job is in",
        "job 's in",
        "this is in",
        "it 's in",
        "its in",
        "building in",
        "deck is in",
        "deck 's in",
        "the deck is in",
        "the deck 's in",
        "house is in",
        "we build in",
        "we 're on",
        "we 're under",
        "they 're on",
        "theyre on",
        "county is on",
        "county 's on",
        "city is on",
        "town is on",
        "under",
        "going by",
        "we go by",
        "this one 's in",
        "this one is in",
    ]);
    let (rest, ()) = is_in.parse(input)?;
    // A place nobody listed: its rules are not held, and no others are put in their stead.
    let word = || one(|item: &Item| (item.is == Is::Unknown).then_some(()));
    let lead = opt(said(&["new", "north", "west", "east", "upstate", "saint", "st", "the", "rural"]));
    let unheld = (lead, word(), opt(preceded(opt(sep(",")), word())), opt(word()));
    let Ok((rest, place)) = named_place(rest) else {
        return value(Say::Clause(Clause::NotYet(NO_PLACE)), terminated(unheld, peek(ends))).parse(rest);
    };
    terminated(value(told(LawDraft::Place(place)), opt(said(&["here", "now"]))), peek(ends)).parse(rest)
}

fn named_place(input: In<'_>) -> Out<'_, &'static Place> {
    let here = |p: &'static Place| said(p.words).parse(input).ok().map(|(rest, ())| (rest, p));
    PLACES.iter().find_map(here).ok_or(nom::Err::Error(()))
}

/// "county wants 42 inch rails", "inspector wants gaps under 3 1/2", "here it's a guard over 24".
pub fn local(input: In<'_>) -> Out<'_, Say> {
    let who = || {
        let named = said(&[
            "county",
            "city",
            "town",
            "township",
            "village",
            "state",
            "inspector",
            "building inspector",
            "building department",
            "code official",
            "local code",
            "code here",
            "hoa",
            "permit office",
            "building office",
            "code office",
            "code",
            "the code here",
            "code around here",
        ]);
        (opt(said(&["and", "but", "our", "the", "my", "this"])), det, named)
    };
    let wants = || {
        said(&[
            "wants",
            "requires",
            "asks for",
            "asks",
            "says",
            "needs",
            "calls for",
            "insists on",
            "is",
            "goes by",
            "wants to see",
            "makes it",
            "makes us go",
            "want",
            "require",
            "say",
            "'s",
            "has us at",
            "makes us do",
            "is at",
            "'s at",
            "told me",
            "said",
        ])
    };
    let guard = || alt((part(Part::Guard), part(Part::Rail), part(Part::TopRail)));
    let high = || alt((sense(Sense::Cue(Cue::High)), said(&["to the top", "high", "tall"])));
    let height = alt((
        terminated(length, (opt(sep("-")), alt((value((), (opt(high()), guard(), opt(high()))), high())))),
        preceded((guard(), opt(said(&["at", "to be", "of", "be", "at least"]))), terminated(length, opt(high()))),
    ))
    .map(|m| (Local::Height, m));
    let gaps = || (opt(said(&["the", "all"])), alt((part(Part::Gap), said(&["spaces", "openings"]))));
    let under = || opt(said(&["under", "less than", "below", "at", "no more than", "to be under", "max"]));
    let gap = alt((
        preceded((gaps(), under()), length),
        terminated(preceded(under(), length), (opt(said(&["max", "inch"])), gaps(), opt(said(&["max"])))),
    ))
    .map(|m| (Local::Gap, m));
    let drop = preceded(
        (opt(said(&["a"])), guard(), said(&["over", "above", "past", "at anything over", "on anything over", "from"])),
        terminated(length, opt(alt((sense(Sense::Cue(Cue::Above)), said(&["up", "high"]))))),
    )
    .map(|m| (Local::Drop, m));
    // A number alone is a height where it is one a guard may have: 42, never 4.
    let alone = terminated(one(bare_height), opt(said(&["inches", "inch"]))).map(|m| (Local::Height, m));
    let (rest, (of, m)) = preceded((who(), wants()), alt((drop, gap, height, alone))).parse(input)?;
    let tail = opt(said(&["here", "min", "minimum", "around here", "is fine", "is ok", "is enough", "will do"]));
    value(told(LawDraft::Local(of, m)), (tail, peek(ends))).parse(rest)
}

/// A number alone that a guard's height may be, in inches.
fn bare_height(item: &Item) -> Option<Measure> {
    let Is::Measure(m) = &item.is else { return None };
    let likely = match &m.meaning {
        Meaning::Bare(n) => n.value >= 30.into() && n.value <= 48.into(),
        Meaning::Length(l, Said::Inches) => (Length::inches(30)..=Length::inches(48)).contains(l),
        _ => false,
    };
    (likely && !m.about).then(|| m.clone())
}

/// "what code are we on", "code?", "whose rules are these".
pub fn asked(input: In<'_>) -> Out<'_, Say> {
    let what = said(&[
        "what code are we on",
        "which code are we on",
        "what code are you using",
        "which code are you using",
        "what code is this",
        "what code do you use",
        "which code do you use",
        "what edition are we on",
        "which edition are we on",
        "what edition is this",
        "whose rules are these",
        "which edition",
        "what edition",
        "what code",
        "which code",
        "code",
        "what code are you going by",
        "which code are you going by",
        "what code are you on",
    ]);
    let bare = (said(&["code"]), sep("?"));
    let asked = alt((value((), bare), value((), (what, sep("?"))), value((), (what_said(), peek(ends)))));
    value(Say::Clause(Clause::Query(Query::Law)), asked).parse(input)
}

/// The same without its mark, where the words alone ask.
fn what_said<'a>() -> impl Parser<In<'a>, Output = (), Error = ()> {
    said(&[
        "what code are we on",
        "which code are we on",
        "what code are you using",
        "which code are you using",
        "what code is this",
        "what code do you use",
        "which code do you use",
        "what edition are we on",
        "which edition are we on",
        "whose rules are these",
        "what code are you going by",
        "which code are you going by",
        "what code are you on",
    ])
}
