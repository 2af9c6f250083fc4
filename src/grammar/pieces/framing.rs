//! The framing under the posts: joists and blocking.
//!
//! ```text
//! joists   = joists [are] joist *([","] joist) | spacing joists
//! joist    = spacing | ["run"] way | first
//! spacing  = length "on centre" | "every" length
//! first    = "first" (joist | "one") [is] length [in] ["from the" ("left" | edge | house)]
//! blocking = "blocking at every post" | "no blocking"
//! ```

use super::Say;
use super::atoms::{In, Out, any, det, length, part, place, sense, sep, side, text, tie};
use crate::grammar::draft::{Clause, JoistDraft};
use crate::grammar::sense::{Cue, Part, Sense, Side, Verb};
use crate::job::{Basis, Blocking, End, JoistsRun};
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::{many0, many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

#[derive(Clone)]
enum One {
    Spacing(Measure),
    First(Measure),
    Way(JoistsRun),
}

fn spacing(input: In<'_>) -> Out<'_, Measure> {
    let inch = || opt(alt((sep("-"), text(&["inch", "inches"]))));
    let centre = || alt((sense(Sense::Basis(Basis::Centre)), sense(Sense::Cue(Cue::Apart))));
    let spread = delimited(opt(text(&["at", "on", "spaced", "set"])), length, (inch(), centre()));
    let every = preceded(sense(Sense::Cue(Cue::Every)), length);
    let worded = preceded((sense(Sense::Cue(Cue::Apart)), tie), terminated(length, opt(centre())));
    alt((spread, every, worded)).parse(input)
}

fn way(input: In<'_>) -> Out<'_, JoistsRun> {
    let goes = || {
        many0_count(alt((
            text(&[
                "run", "running", "go", "going", "come", "comes", "are", "is", "they", "and", "lay", "laid",
                "straight", "all",
            ]),
            sense(Sense::Verb(Verb::Goes)),
        )))
    };
    let long = || opt((text(&["the"]), text(&["long", "short"]), text(&["way"]), opt(sep(","))));
    let listed = any(|s| if let Sense::Joists(way) = s { Some(way) } else { None });
    let house = || verify(place, |e| *e == End::House);
    let away = value(
        JoistsRun::Out,
        (
            text(&["away from", "away", "off", "out from", "square to", "perpendicular to"]),
            opt(text(&["from"])),
            house(),
        ),
    );
    let along = value(
        JoistsRun::Along,
        (text(&["along", "parallel to", "parallel with", "parallel", "with"]), opt(text(&["to", "with"])), house()),
    );
    preceded((goes(), long()), alt((listed, away, along))).parse(input)
}

fn first(input: In<'_>) -> Out<'_, Measure> {
    let joist = || alt((value((), text(&["first one", "first joist", "first"])), sense(Sense::Nth(1))));
    let word = (det, joist(), opt(part(Part::Joist)), opt(text(&["center", "centre", "centers", "centres", "middle"])));
    let is = || {
        many0_count(alt((
            text(&[
                "is", "'s", "at", "starts", "lands", "sits", "off", "centered", "centred", "on", "center", "centre",
                "marks", "out",
            ]),
            sep(":"),
        )))
    };
    let left = || (opt(verify(side, |s| *s == Side::Left)), opt((opt(text(&["of"])), det, part(Part::Edge))));
    let deck = || opt((text(&["of"]), det, alt((part(Part::Deck), part(Part::Decking)))));
    let end =
        || alt((value((), verify(place, |e| *e == End::House)), value((), (left(), opt(part(Part::End)), deck()))));
    let from =
        opt((many1_count(text(&["in", "from", "in from", "off", "over from", "out from", "over"])), opt((det, end()))));
    delimited((word, is()), length, from).parse(input)
}

/// "joists are 16 on centre running out from the house, first one at 15 1/4".
pub fn joists(input: In<'_>) -> Out<'_, Say> {
    let are = || many0_count(alt((text(&["is", "are", "'s", "at", "set", "on", "spaced"]), sep(":"))));
    let one = || alt((spacing.map(One::Spacing), first.map(One::First), way.map(One::Way)));
    let more = || many0(preceded((opt(sep(",;")), many0_count(text(&["and", "with", "they", "then"]))), one()));
    let lead = (opt(text(&["with", "and"])), det, part(Part::Joist), are());
    let told = preceded(lead, (one(), more())).map(|(first, more)| std::iter::once(first).chain(more).collect());
    let before = terminated(spacing, (opt(text(&["on", "for", "of"])), det, part(Part::Joist)));
    let before = (before, more()).map(|(m, more)| std::iter::once(One::Spacing(m)).chain(more).collect::<Vec<One>>());
    let named =
        (preceded(det, first_joist), more()).map(|(m, more)| std::iter::once(One::First(m)).chain(more).collect());
    let (rest, ones): (_, Vec<One>) = alt((named, told, before)).parse(input)?;
    let mut draft = JoistDraft::default();
    for one in ones {
        let fresh = match one {
            One::Spacing(m) => draft.spacing.replace(m).is_none(),
            One::First(m) => draft.first.replace(m).is_none(),
            One::Way(way) => draft.way.replace(way).is_none(),
        };
        if !fresh {
            return Err(nom::Err::Error(()));
        }
    }
    Ok((rest, Say::Clause(Clause::Joists(draft))))
}

/// "first joist is 15 1/4 in", with the joist named.
fn first_joist(input: In<'_>) -> Out<'_, Measure> {
    let (rest, m) = first(input)?;
    let claimed = input.len() - rest.len();
    let named = input.iter().take(claimed).any(|i| i.may_be(Sense::Part(Part::Joist)));
    if named { Ok((rest, m)) } else { Err(nom::Err::Error(())) }
}

/// "solid blocking at every post", "no blocking".
pub fn blocking(input: In<'_>) -> Out<'_, Say> {
    let put = (
        many0_count(alt((text(&["with", "and", "is", "got", "theres", "solid", "i"]), sense(Sense::Verb(Verb::Put))))),
        det,
    );
    let word = || (part(Part::Blocking), opt(part(Part::Blocking)));
    let joists = || opt((text(&["between", "in", "between the"]), det, part(Part::Joist)));
    let each = || many0_count(text(&["every", "each", "all", "the", "of", "single", "one"]));
    let posts = || (text(&["at", "under", "behind", "for", "by", "on"]), each(), part(Part::Post));
    let at_posts = value(
        Blocking::AtPosts,
        (put, word(), many0_count(text(&["is", "in", "goes", "going", "solid"])), joists(), posts(), joists()),
    );
    let blocked = value(
        Blocking::AtPosts,
        (
            each(),
            opt(text(&["all"])),
            part(Part::Post),
            many0_count(text(&["are", "all", "get", "is", "have"])),
            word(),
        ),
    );
    let no = (sense(Sense::Not), opt(text(&["any"])), det, word(), joists());
    let no_at = opt((text(&["at", "under"]), each(), part(Part::Post)));
    let none = value(Blocking::None, (no, many0_count(text(&["yet", "anywhere", "in"])), no_at));
    alt((at_posts, blocked, none)).map(|b| Say::Clause(Clause::Blocking(b))).parse(input)
}
