//! What the posts stand at: the decking's overhang, the skirt, the rim, the baluster line,
//! the hold-back of two corner posts.
//!
//! ```text
//! overhang = [decking] "overhangs" [past] ["by"] length | length "overhang" [past] | "no overhang" | "flush with" past
//! skirt    = skirt [is] length ["thick"] | length ["thick"] skirt | "no" skirt
//! rim      = rim [is] (length "thick" | "double") | ("double" | length "thick") rim
//! line     = line [is] length ("inside" | "in from" | "outside" ...) edge | posts "centred on" edge
//! back     = "hold" [corner posts] "back" length [from corner] | [corner posts] "held back" length
//! ```

use super::Say;
use super::atoms::{In, Out, det, length, lumber, part, place, sense, sep, text, tie};
use super::feet::five_quarter;
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Cue, Part, Sense, Verb};
use crate::job::{End, SlotId};
use crate::measure::{Length, Lumber, Meaning, Measure, Said};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn slot(id: SlotId) -> impl Fn(Measure) -> Say {
    move |m| Say::Clause(Clause::Slot(id, m))
}

/// A length known without being said: "no skirt", "double rim".
fn known(l: Length) -> Measure {
    Measure { meaning: Meaning::Length(l, Said::Inches), shade: None, about: false, guess: None }
}

fn nothing() -> Measure {
    known(Length::ZERO)
}

/// "no", "without": not "don't", which denies what is done, not what is there.
fn none<'a>() -> impl Parser<In<'a>, Output = (), Error = ()> {
    text(&["no", "without", "havent got any", "haven 't got any", "havent any", "havent got", "isnt any", "none"])
}

fn trim(input: In<'_>) -> Out<'_, ()> {
    let word = alt((part(Part::Skirt), part(Part::Rim), text(&["it", "framing", "face"])));
    value((), (det, word, opt((text(&["of"]), det, alt((part(Part::Skirt), part(Part::Rim))))))).parse(input)
}

fn inches(input: In<'_>) -> Out<'_, ()> {
    value((), opt(alt((text(&["inch", "inches", "thick"]), sep("-"))))).parse(input)
}

/// "decking hangs over 1 inch", "1 1/4 overhang on the decking", "no overhang".
pub fn overhang(input: In<'_>) -> Out<'_, Say> {
    let over = || sense(Sense::Cue(Cue::Overhang));
    let decking = || alt((part(Part::Decking), part(Part::Deck), text(&["it", "ends"])));
    let past = || opt((many0_count(text(&["over", "past", "on", "of", "beyond", "from", "at", "to"])), trim));
    let by = || many0_count(alt((text(&["by", "about", "is", "of", "at", "are", "'s", "a", "an"]), sep(":"))));
    let verb = delimited((det, opt(decking()), over(), past(), by()), length, past());
    let noun =
        delimited(det, length, (inches, over(), opt((text(&["on", "of", "for", "over"]), det, decking())), past()));
    let no = value(nothing(), (none(), opt(text(&["any"])), det, over()));
    let flush =
        (opt((det, decking())), many0_count(text(&["is", "are", "'s", "runs", "cut", "ends"])), text(&["flush"]));
    let flush = value(nothing(), (flush, text(&["with", "to"]), trim));
    alt((verb, noun, no, flush)).map(slot(SlotId::Overhang)).parse(input)
}

/// "3/4 fascia", "skirt is 5/8 thick", "no skirt", "1x8 skirt".
pub fn skirt(input: In<'_>) -> Out<'_, Say> {
    let word = || (part(Part::Skirt), opt(text(&["board", "thickness"])));
    let first = delimited((det, word(), tie, det), thickness, inches);
    let last = delimited(det, thickness, (inches, word()));
    let no = value(nothing(), (none(), opt(text(&["any"])), det, word()));
    let over = || opt((text(&["on", "over"]), det, part(Part::Rim)));
    terminated(alt((first, last, no)), over()).map(slot(SlotId::Skirt)).parse(input)
}

/// A board's thickness: a length, or the size it is bought by.
fn thickness(input: In<'_>) -> Out<'_, Measure> {
    let bought = map_opt(lumber, |l| l.dressed().map(|(thick, _)| known(thick)));
    alt((by_name, length, bought)).parse(input)
}

/// "1x", "5/4": boards named by their thickness alone; their width is nobody's business here.
fn by_name(input: In<'_>) -> Out<'_, Measure> {
    let one = value(
        Lumber::by(1, 4),
        terminated((text(&["1", "one"]), alt((text(&["x", "by"]), sep("x")))), peek(part(Part::Skirt))),
    );
    map_opt(alt((one, five_quarter)), |board| board.dressed().map(|(thick, _)| known(thick))).parse(input)
}

/// "double rim", "rim's doubled up", "rim is 3 thick". "2x10 rim" tells its height too: `feet`.
pub fn rim(input: In<'_>) -> Out<'_, Say> {
    // A skirt is called a rim too, but is no 2-by.
    let word = || (det, peek(not(part(Part::Skirt))), part(Part::Rim), opt(text(&["joist", "board"])));
    let plies = || {
        let two =
            text(&["double", "doubled", "doubled up", "two - ply", "2 - ply", "twin", "a double", "two ply", "2 ply"]);
        let one = text(&["single"]);
        let up = || many0_count(text(&["up", "thick"]));
        alt((map_opt(two, |()| plied(2)), map_opt(one, |()| plied(1)))).and(up()).map(|(m, _)| m)
    };
    let thick = || terminated(thickness, text(&["thick"]));
    let first = preceded(
        (word(), tie, det),
        alt((terminated(plies(), opt(verify(lumber, |l| l.thick_quarters == 8))), thick())),
    );
    let last = terminated(
        preceded(det, alt((terminated(plies(), opt(verify(lumber, |l| l.thick_quarters == 8))), thick()))),
        word(),
    );
    alt((first, last)).map(slot(SlotId::Rim)).parse(input)
}

/// So many plies of 2-by lumber.
fn plied(plies: i64) -> Option<Measure> {
    let (thick, _) = Lumber::by(2, 2).dressed()?;
    Some(known(thick * plies))
}

/// The decking's edge, and words after it.
fn edge(input: In<'_>) -> Out<'_, ()> {
    let of = opt((text(&["of"]), det, alt((part(Part::Decking), part(Part::Deck)))));
    let lead = (det, opt(alt((part(Part::Decking), part(Part::Deck)))), opt(text(&["'s"])));
    value((), (lead, part(Part::Edge), of)).parse(input)
}

/// "baluster line is 1 3/4 in from the edge", "posts are centred on the edge".
pub fn line(input: In<'_>) -> Out<'_, Say> {
    let posts =
        || (opt((text(&["center", "centre", "middle", "centers", "centres"]), text(&["of"]))), det, part(Part::Post));
    let centred = || many0_count(text(&["centered", "centred", "centre", "center", "centers", "centres"]));
    let stands = || {
        many0_count(text(&[
            "is", "are", "'s", "sits", "sit", "runs", "stands", "stand", "at", "set", "goes", "falls", "lands", "right",
        ]))
    };
    let subject = || {
        (
            opt(text(&["put", "keep", "with"])),
            det,
            alt((value((), (part(Part::Line), opt((text(&["of"]), det, part(Part::Baluster))))), value((), posts()))),
            stands(),
        )
    };
    let in_from = || {
        many1_count(text(&[
            "in",
            "inside",
            "in from",
            "from",
            "back",
            "back from",
            "inboard of",
            "inboard",
            "inside of",
            "of",
        ]))
    };
    let out_from = || {
        many1_count(text(&["outside", "out from", "past", "outside of", "out", "from", "beyond", "outboard of", "of"]))
    };
    let inside = delimited((subject(), centred()), length, (in_from(), edge)).map(|m| Clause::Slot(SlotId::Line, m));
    let outside = delimited((subject(), centred()), length, (out_from(), edge)).map(Clause::LineOutside);
    let middled = (subject(), many1_count(text(&["centered", "centred", "center", "centre", "dead", "right"])));
    let on = value(Clause::Slot(SlotId::Line, nothing()), (middled, text(&["on", "over"]), edge));
    let line_on = value(Clause::Slot(SlotId::Line, nothing()), (det, part(Part::Line), stands(), text(&["on"]), edge));
    alt((inside, outside, on, line_on)).map(Say::Clause).parse(input)
}

/// "hold the corner posts back 2 1/2 from the corner", "corner posts held back 3".
pub fn hold_back(input: In<'_>) -> Out<'_, Say> {
    let posts = || opt((det, alt((part(Part::CornerPost), part(Part::Post), text(&["them", "em"])))));
    let back = || sense(Sense::Verb(Verb::HoldBack));
    let corner = || {
        opt((
            opt(text(&["back"])),
            text(&["from", "off", "each way from", "of"]),
            det,
            opt(text(&["each"])),
            verify(place, |e| *e == End::Corner),
        ))
    };
    let both = || many0_count(text(&["each", "way", "on", "both", "sides", "each way"]));
    let split = (text(&["hold", "keep", "set", "held", "pull"]), posts(), text(&["back"]));
    let verb = alt((value((), split), value((), (posts(), many0_count(text(&["are", "is", "get", "'s"])), back()))));
    let first = delimited((verb, tie), length, (both(), corner()));
    let last = delimited((posts(), det), length, (inches, back(), corner()));
    alt((first, last)).map(slot(SlotId::HoldBack)).parse(input)
}
