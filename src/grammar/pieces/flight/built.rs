//! How a flight is built and where it lands, told.
//!
//! ```text
//! pitch   = ["stairs have"] length "rise" [link] length ("run" | "tread") | "rise" [is] length [link] ("run" | "tread") [is] length
//! between = ("open" | "closed") "risers" [length] | "risers" are ("open" | "closed") [length]
//! head    = ("top tread" | "top step") [is] ("flush with the deck" | "one riser down")
//! landing = [det] "landing" [at the foot] [is] length "deep" | length "deep landing"
//! fall    = "ground" ("falls" | "rises") length ["in" | "per"] (length | "foot")
//!         | "ground" ("falls" | "slopes" | "rises") number "percent"
//! ```

use super::super::flights::{of_stairs, riser_word, said};
use crate::grammar::draft::Clause;
use crate::grammar::items::{Is, Item};
use crate::grammar::pieces::Say;
use crate::grammar::pieces::atoms::{In, Out, count, det, is, length, one, part, sense, sep, text};
use crate::grammar::pieces::phrase::ends;
use crate::grammar::sense::{Cue, Part, Sense};
use crate::grammar::stair_draft::StairSaid;
use crate::job::Head;
use crate::measure::{Length, Meaning, Measure, Number, Q, Side};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn rise_word(input: In<'_>) -> Out<'_, ()> {
    text(&["rise", "riser", "risers", "up"]).parse(input)
}

fn run_word(input: In<'_>) -> Out<'_, ()> {
    alt((text(&["run", "tread", "treads", "going", "goings", "out"]), part(Part::Run))).parse(input)
}

fn between_them(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(alt((text(&["and", "by", "x", "on", "with", "to", "a", "over"]), sep(",/"))))).parse(input)
}

/// "7 3/4 rise 10 run", "rise 7 3/4, run 10".
pub fn pitch(input: In<'_>) -> Out<'_, Say> {
    let high = preceded(not(peek(risers_counted)), terminated(length, (opt(sep("-")), rise_word)));
    let after = (high, between_them, terminated(length, (opt(sep("-")), run_word)));
    let named = || (is, opt(text(&["of"])));
    let rise = preceded((det, text(&["rise", "riser", "risers"]), named()), length);
    let run = preceded((det, text(&["run", "tread", "treads", "going"]), named()), length);
    let before = (rise, between_them, run);
    let stairs = opt((opt(text(&["on", "for"])), det, part(Part::Stairs)));
    let both = alt((after, before)).map(|(rise, _, tread)| said(StairSaid::Pitch(rise, tread)));
    let both = alt((counted_pitch, both));
    alt((delimited(of_stairs, both, stairs), bare_pitch)).parse(input)
}

/// A whole number of "risers", no unit said: it counts them.
fn risers_counted(input: In<'_>) -> Out<'_, Measure> {
    let whole = |m: &Measure| matches!(m.meaning, Meaning::Bare(n) if n.value.is_integer() && !n.fraction);
    verify(terminated(length, (opt(sep("-")), text(&["risers"]))), whole).parse(input)
}

/// "7 risers, 11 treads": the figures alone do not say whether the 7 counts or measures.
fn counted_pitch(input: In<'_>) -> Out<'_, Say> {
    let bare = |m: &Measure| matches!(m.meaning, Meaning::Bare(n) if n.value.is_integer() && !n.fraction);
    let tread = verify(terminated(length, (opt(sep("-")), run_word)), bare);
    let both = (risers_counted, between_them, tread).map(|(rise, _, tread)| (rise, tread));
    let both = verify(both, |(rise, tread)| could_be(rise, 4, 9) && could_be(tread, 8, 16));
    both.map(|(rise, tread)| said(StairSaid::PitchBare(rise, tread))).parse(input)
}

/// "stairs 7 3/4 on 10", "stairs are 7 1/2 by 10", "7 3/4 on 10 stairs": two lengths of one tread.
fn bare_pitch(input: In<'_>) -> Out<'_, Say> {
    let over = || text(&["on", "over", "by", "x", "and", "/"]);
    let apart = || (length, over(), length).map(|(rise, _, tread)| (rise, tread));
    let pair = || verify(alt((apart(), by)), |(rise, tread)| could_be(rise, 4, 9) && could_be(tread, 8, 16));
    let stairs = || (det, part(Part::Stairs), many0_count(alt((text(&["is", "are", "go", "at"]), sep(":")))));
    // "7 risers, 7 1/2 on 10".
    let on = (length, text(&["on", "over"]), length).map(|(rise, _, tread)| (rise, tread));
    let on = verify(on, |(rise, tread)| could_be(rise, 4, 9) && could_be(tread, 8, 16));
    let alone = terminated(on, peek(alt((ends, sep(",;")))));
    let pair = alt((delimited(stairs(), pair(), opt(run_word)), terminated(pair(), stairs()), alone));
    pair.map(|(rise, tread)| said(StairSaid::Pitch(rise, tread))).parse(input)
}

/// "7 1/2 by 10", read as two sides.
fn by(input: In<'_>) -> Out<'_, (Measure, Measure)> {
    let side = |s: &Side| Measure {
        meaning: match s {
            Side::Bare(n) => Meaning::Bare(*n),
            Side::Length(l, said) => Meaning::Length(*l, *said),
        },
        shade: None,
        about: false,
        guess: None,
    };
    one(|item: &Item| match &item.is {
        Is::Measure(Measure { meaning: Meaning::By(a, b), about: false, shade: None, .. }) => Some((side(a), side(b))),
        _ => None,
    })
    .parse(input)
}

/// True where a measure may be so many inches.
fn could_be(m: &Measure, least: i64, most: i64) -> bool {
    match &m.meaning {
        Meaning::Bare(n) => n.value >= Q::from(i128::from(least)) && n.value <= Q::from(i128::from(most)),
        Meaning::Length(l, _) => (Length::inches(least)..=Length::inches(most)).contains(l),
        _ => false,
    }
}

/// "no risers, open treads": the same said twice.
fn open_behind(input: In<'_>) -> Out<'_, ()> {
    value((), (opt(sep(",")), opt(text(&["just", "its", "it 's"])), text(&["open"]), opt(text(&["treads", "tread"]))))
        .parse(input)
}

fn opening(input: In<'_>) -> Out<'_, Measure> {
    let tail = || (opt(sep("-")), text(&["gap", "gaps", "opening", "openings", "between", "open", "space", "clear"]));
    let link = || many0_count(text(&["of", "at", "with", "a", "about"]));
    // Behind a comma a length alone may be of something else.
    let apart = preceded((sep(","), link()), terminated(length, tail()));
    alt((apart, preceded(link(), terminated(length, opt(tail()))))).parse(input)
}

/// "open risers", "open risers 4 inch", "the risers are closed".
pub fn between(input: In<'_>) -> Out<'_, Say> {
    let open = || text(&["open"]);
    let closed = || text(&["closed", "solid", "boxed", "closed in", "boarded"]);
    let open_first = (open(), riser_word).map(|_| ());
    let open_last = (riser_word, is, open()).map(|_| ());
    let open_treads = (open(), text(&["tread", "treads"])).map(|_| ());
    // "no risers are open" closes them.
    let are = not(peek(text(&["is", "are", "'s", "to", "will be"])));
    let none = (sense(Sense::Not), opt(text(&["any"])), riser_word, are, opt(open_behind)).map(|_| ());
    let open = preceded(alt((open_first, open_last, open_treads, none)), opt(opening)).map(StairSaid::OpenRisers);
    let closed_first = (closed(), riser_word).map(|_| ());
    let closed_last = (riser_word, is, closed()).map(|_| ());
    let none_open = (text(&["no", "none of the"]), riser_word, is, text(&["open"])).map(|_| ());
    let not_open = (riser_word, is, sense(Sense::Not), text(&["open"])).map(|_| ());
    let closed = value(StairSaid::ClosedRisers, alt((closed_first, closed_last, none_open, not_open)));
    let stairs = opt((text(&["on", "for", "in"]), det, part(Part::Stairs)));
    delimited((of_stairs, det), alt((open, closed)), stairs).map(said).parse(input)
}

/// "top tread is flush with the deck", "top step is one riser down".
pub fn head(input: In<'_>) -> Out<'_, Say> {
    let step = || text(&["tread", "step"]);
    let top = (
        det,
        alt((value((), text(&["top tread", "top step"])), value((), (text(&["top", "first", "upper"]), step())))),
    );
    let deck = || (det, alt((part(Part::Deck), text(&["decking", "deck boards"]))));
    let sits = many0_count(text(&["is", "'s", "sits", "stands", "set", "comes", "built", "in"]));
    let with = || text(&["with", "to"]);
    let flush = (text(&["flush", "level", "even"]), alt((value((), (with(), deck())), value((), not(peek(with()))))));
    let below = opt((text(&["below", "under", "from"]), deck()));
    let one = (verify(count, |n| *n == 1), alt((riser_word, step())), opt(text(&["down", "lower"])), below);
    let how = alt((value(Head::Flush, flush), value(Head::OneDown, one)));
    let (rest, (_, _, head)) = (top, sits, how).parse(input)?;
    Ok((rest, said(StairSaid::Head(head))))
}

/// "landing is 36 deep", "4 ft landing at the bottom of the stairs".
pub fn landing(input: In<'_>) -> Out<'_, Say> {
    let word = || {
        let bottom = many0_count(text(&["bottom", "lower", "stair"]));
        (det, bottom, alt((part(Part::Landing), text(&["landing", "landing pad"]))))
    };
    let foot = || {
        let where_ = (text(&["at", "of", "by"]), det, text(&["bottom", "foot", "the bottom", "the foot"]));
        let of = opt((text(&["of"]), det, part(Part::Stairs)));
        alt((value((), (where_, of)), value((), (text(&["at"]), sense(Sense::End(crate::job::End::BottomNewel))))))
    };
    let deep = || sense(Sense::Cue(Cue::Deep));
    let before = delimited((of_stairs, word(), opt(foot()), is), length, (deep(), opt(foot())));
    let at_foot = delimited((of_stairs, word(), foot(), is), length, opt(deep()));
    let after = delimited((of_stairs, det), length, (deep(), word(), opt(foot())));
    let after_foot = delimited((of_stairs, det), length, (word(), foot()));
    alt((before, at_foot, after, after_foot)).map(|m| said(StairSaid::Landing(m))).parse(input)
}

/// "ground falls 1/4 inch per foot", "yard drops 6 inches in 10 ft", "ground rises 1 in 12".
pub fn fall(input: In<'_>) -> Out<'_, Say> {
    let ground = (det, text(&["ground", "yard", "grade", "lawn", "the ground", "the yard"]));
    let away = || many0_count(text(&["away", "off", "down", "out", "by", "about"]));
    let falls = value(false, (text(&["falls", "drops", "slopes", "pitches", "fall", "drop", "slope"]), away()));
    let rises = value(true, (text(&["rises", "climbs", "rise"]), many0_count(text(&["up", "by"]))));
    let up = value(true, (text(&["slopes", "goes", "slope"]), text(&["up"])));
    let to_sky = alt((up, rises, falls));
    let in_each = many0_count(text(&["in", "per", "over", "every", "a", "each", "for", "to", "on"]));
    let foot = value(None, (text(&["per", "a", "every", "each", "to the", "in a"]), text(&["foot", "ft"])));
    let over = alt((percent, foot, preceded(in_each, length).map(Some)));
    let out =
        many0_count(text(&["away", "from", "out", "the", "deck", "house", "toward", "yard", "going", "of", "run"]));
    let at = opt(text(&["at"]));
    let (rest, (_, rises, _, by, over, _)) = (ground, to_sky, at, length, over, out).parse(input)?;
    let bare = matches!(by.meaning, Meaning::Bare(_));
    let of_hundred = over.as_ref() == Some(&hundred());
    // "6 inches percent" is no slope.
    if of_hundred && !bare {
        return Err(nom::Err::Error(()));
    }
    Ok((rest, said(StairSaid::Fall { by, over, rises })))
}

/// So many in a hundred.
fn percent(input: In<'_>) -> Out<'_, Option<Measure>> {
    value(Some(hundred()), text(&["percent", "per cent", "pct", "%"])).parse(input)
}

fn hundred() -> Measure {
    let number = Number { value: Q::from(100), fraction: false, plural: false };
    Measure { meaning: Meaning::Bare(number), shade: None, about: false, guess: None }
}

/// "ground is 28 below the deck at the house and 33 at the front": which of the two the guard's edge has
/// below it is not told.
pub fn two_grounds(input: In<'_>) -> Out<'_, Say> {
    let ground = (det, text(&["ground", "yard", "grade", "lawn", "the ground", "the yard", "dirt", "grass"]), is);
    let deck = || opt((det, alt((part(Part::Deck), part(Part::Decking)))));
    let below = || opt((text(&["below", "under", "down", "lower", "down from"]), deck()));
    let spot =
        || alt((value((), crate::grammar::pieces::atoms::place), value((), crate::grammar::pieces::atoms::side)));
    let at = || {
        value(
            (),
            (text(&["at", "by", "on", "along"]), det, spot(), opt(alt((part(Part::Deck), text(&["side", "end"]))))),
        )
    };
    let and = (many0_count(alt((text(&["and", "but"]), sep(",")))), opt(text(&["is", "it 's"])));
    let parts = (ground, length, below(), at(), below(), and, length, below(), at(), below());
    let (rest, (_, a, _, _, _, _, b, ..)) = terminated(parts, peek(ends)).parse(input)?;
    Ok((rest, Say::Clause(Clause::TwoGrounds(a, b))))
}
