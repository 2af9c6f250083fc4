//! Questions about the posts' feet.

use super::Say;
use super::atoms::{In, Out, any, count, det, is, part, sense, sep, text};
use crate::grammar::Query;
use crate::grammar::ask::{NotchAsk, Whose};
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Ask, Cue, Part, Sense, Verb};
use crate::job::End;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{preceded, terminated};

fn ask<'a>(a: Ask) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Ask(a))
}

fn asked(a: NotchAsk) -> Say {
    Say::Clause(Clause::Query(Query::Notch(a)))
}

/// Some of these words, or none.
fn some<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    value((), many0_count(text(list)))
}

/// Words of need between a question and its verb.
const DO: &[&str] = &[
    "do", "i", "we", "should", "to", "you", "would", "does", "is", "are", "be", "it", "'s", "have", "has", "need",
    "needs", "gotta", "will", "they", "get", "gets", "did",
];

/// A noun for what is cut.
fn notch(input: In<'_>) -> Out<'_, ()> {
    value((), (det, part(Part::Notch))).parse(input)
}

/// Whose foot: "the corner post", "post 3", "the line posts", "each post".
fn whose(input: In<'_>) -> Out<'_, Whose> {
    let post = || opt(part(Part::Post));
    let numbered = preceded((part(Part::Post), opt(text(&["number", "no", "#", "num"]))), count);
    let end = any(|s| match s {
        Sense::End(e) => Some(Whose::At(e)),
        Sense::Part(Part::CornerPost) => Some(Whose::At(End::Corner)),
        Sense::Part(Part::EndPost) => Some(Whose::At(End::EndPost)),
        Sense::Part(Part::GatePost) => Some(Whose::At(End::GatePost)),
        Sense::Part(Part::LinePost) => Some(Whose::Line),
        _ => None,
    });
    let all = value(
        Whose::All,
        alt((part(Part::Post), text(&["it", "them", "em", "each one", "they", "those", "these", "each"]))),
    );
    let lead = (many0_count(text(&["each", "every", "all", "of"])), det);
    preceded(lead, alt((numbered.map(|n| Whose::Number(u32::from(n))), terminated(end, post()), all))).parse(input)
}

/// Whose length: the posts down the stairs are the stair guard's, each its own height.
fn whose_length(input: In<'_>) -> Out<'_, Whose> {
    let one = value((), text(&["stair posts", "stair post", "stair newels"]));
    let two = value((), (text(&["stair", "stairs"]), part(Part::Post)));
    preceded(not(peek((det, alt((one, two))))), whose).parse(input)
}

/// "... for the corner post", "... at the stair head".
fn of_whose(input: In<'_>) -> Out<'_, Whose> {
    preceded(text(&["for", "at", "on", "of", "in", "by"]), whose).parse(input)
}

fn or_all(w: Option<Whose>) -> Whose {
    w.unwrap_or(Whose::All)
}

fn mark(input: In<'_>) -> Out<'_, ()> {
    value((), opt(sep("?"))).parse(input)
}

/// "notch for the corner post", "how deep is the notch at the stair head", "what comes off the line posts".
pub fn cut(input: In<'_>) -> Out<'_, Say> {
    let how_deep = || (text(&["how"]), sense(Sense::Cue(Cue::Deep)), some(DO));
    let what = alt((
        value((), (ask(Ask::What), some(&["is", "'s", "are"]))),
        value((), (ask(Ask::Show), some(&["me"]))),
        value((), text(&["give me", "gimme"])),
        value((), how_deep()),
    ));
    let named = preceded((what, notch), opt(of_whose)).map(or_all);
    let bare = preceded((notch, text(&["for", "of"])), whose);
    let deep = preceded((how_deep(), part(Part::Notch)), whose);
    let gone = || {
        (
            some(DO),
            alt((
                text(&["comes off", "come off", "cut off", "take off"]),
                value(
                    (),
                    (
                        alt((text(&["comes", "come", "goes"]), sense(Sense::Verb(Verb::Cut)))),
                        text(&["off", "away", "off of"]),
                    ),
                ),
            )),
        )
    };
    let lead = alt((ask(Ask::What), value((), (ask(Ask::HowMuch), some(&["wood"])))));
    let off = preceded(
        (lead, gone(), opt(text(&["of", "off"]))),
        preceded(opt((det, text(&["foot", "bottom"]), text(&["of"]))), whose),
    );
    terminated(alt((named, deep, off, bare)), mark).map(|w| asked(NotchAsk::Cut(w))).parse(input)
}

fn cutting(input: In<'_>) -> Out<'_, ()> {
    alt((sense(Sense::Verb(Verb::Cut)), text(&["cut", "cutting", "make", "chop", "trim", "saw"]))).parse(input)
}

/// "how long do I cut the posts", "where do I cut the posts", "post length".
pub fn length(input: In<'_>) -> Out<'_, Say> {
    let deck = || (det, alt((part(Part::Deck), text(&["decking", "deck boards", "boards"]))));
    let above = || (text(&["above", "over", "up from", "off"]), deck());
    let how_long = || (ask(Ask::HowLong), some(DO));
    let tail = || (some(DO), opt(cutting), some(&["at", "to", "be", "go"]));
    let long =
        preceded((how_long(), opt(cutting)), terminated(whose_length, (some(DO), opt(cutting), some(&["be", "go"]))));
    let place = preceded((ask(Ask::Where), some(DO), opt(cutting)), terminated(whose, tail()));
    let at_what = preceded(cutting, terminated(whose_length, (text(&["at", "to"]), ask(Ask::What))));
    let what =
        preceded((ask(Ask::What), some(DO), cutting), terminated(whose_length, (text(&["at", "to"]), some(&["be"]))));
    let noun = alt((
        value(Whose::All, (part(Part::Post), text(&["length", "lengths", "cut length"]))),
        preceded(
            (opt(ask(Ask::What)), some(&["is", "'s", "are"]), det, text(&["length", "cut length"]), text(&["of"])),
            whose,
        ),
    ));
    let up = alt((
        preceded(
            (how_long(), above()),
            opt(preceded(some(DO), terminated(whose, (some(DO), some(&["go", "stand", "stick", "up", "be"]))))),
        )
        .map(or_all),
        preceded(
            (alt((ask(Ask::HowFar), ask(Ask::HowHigh), ask(Ask::HowLong))), some(DO)),
            terminated(whose, (some(&["go", "stand", "stick", "up", "be", "are", "need", "to", "do"]), above())),
        ),
    ));
    let above = up.map(|w| asked(NotchAsk::Above(w)));
    // "how long are the runs" asks of runs: only posts are cut to a length here.
    let cuts = alt((long, at_what, what, noun)).map(|w| asked(NotchAsk::Length(w)));
    let place = (peek_cut_place, place).map(|(_, w)| asked(NotchAsk::Length(w)));
    terminated(alt((above, place, cuts)), mark).parse(input)
}

/// A question of where that speaks of cutting, not of where posts stand.
fn peek_cut_place(input: In<'_>) -> Out<'_, ()> {
    let skipped =
        many0_count((not(sense(Sense::Verb(Verb::Cut))), not(text(&["cut"])), super::atoms::one(|_| Some(()))));
    peek(value((), (ask(Ask::Where), skipped, alt((sense(Sense::Verb(Verb::Cut)), text(&["cut"])))))).parse(input)
}

/// "how do I cut it", "how do I notch the corner post", "walk me through the notch".
pub fn steps(input: In<'_>) -> Out<'_, Say> {
    let how = (text(&["how", "how do", "how do i", "how to"]), some(DO));
    let verb = || alt((cutting, part(Part::Notch)));
    let noun = preceded(notch, opt(of_whose)).map(or_all);
    let foot = preceded((det, text(&["foot", "bottom"]), text(&["of"])), whose);
    let walk = (
        text(&["walk me through", "talk me through", "walk", "talk", "take"]),
        some(&["me", "through"]),
        some(&["cutting", "the cut", "the cuts", "making"]),
    );
    let in_steps =
        (many1_count(text(&["steps", "step by step", "order of cuts"])), some(&["for", "to", "of"]), opt(cutting));
    let lead = alt((value((), (how, verb())), value((), walk), value((), in_steps)));
    terminated(preceded(lead, alt((noun, foot, whose))), mark).map(|w| asked(NotchAsk::Steps(w))).parse(input)
}

/// "draw the corner post", "draw me the foot of post 2", "sketch the notch".
pub fn draw(input: In<'_>) -> Out<'_, Say> {
    let lead = || (alt((ask(Ask::Show), text(&["sketch", "picture", "draw"]))), some(&["me", "out"]));
    let what = (det, alt((text(&["foot", "cut", "cuts", "feet"]), part(Part::Notch))));
    let named = preceded((lead(), what), opt(of_whose)).map(or_all);
    // "show me the posts" is the layout; one post alone is its foot.
    let one = preceded((lead(), peek(not((det, part(Part::Post), not(count))))), whose);
    terminated(alt((named, one)), mark).map(|w| asked(NotchAsk::Draw(w))).parse(input)
}

/// "where do the bolts go", "how long are the bolts", "bolt holes for the corner post".
pub fn bolts(input: In<'_>) -> Out<'_, Say> {
    let bolts = || (det, text(&["bolts", "bolt", "bolt holes", "holes", "carriage bolts"]), some(&["holes", "hole"]));
    let lead = alt((ask(Ask::Where), ask(Ask::HowFar), ask(Ask::HowLong)));
    let placed = (
        lead,
        some(DO),
        some(&["down", "drill", "put"]),
        bolts(),
        some(DO),
        some(&["go", "drilled", "down", "in", "be"]),
    );
    let drill = (ask(Ask::Where), some(DO), text(&["drill"]), opt(bolts()));
    let noun = (opt(ask(Ask::What)), det, text(&["bolt holes", "bolt layout", "bolt spacing", "bolt pattern"]));
    let lead = alt((value((), placed), value((), drill), value((), noun)));
    terminated(preceded(lead, opt(of_whose)), mark).map(|w| asked(NotchAsk::Bolts(or_all(w)))).parse(input)
}

/// "which posts are the same cut", "which ones get cut alike".
pub fn same(input: In<'_>) -> Out<'_, Say> {
    let alike = alt((sense(Sense::Verb(Verb::Same)), text(&["alike", "identical"])));
    let which = (
        ask(Ask::Which),
        alt((part(Part::Post), text(&["ones", "feet"]))),
        some(DO),
        opt(alt((cutting, part(Part::Notch)))),
        det,
        alike,
        some(&["way"]),
        opt(alt((cutting, part(Part::Notch)))),
    );
    let different = (
        ask(Ask::HowMany),
        text(&["different", "kinds of", "sorts of"]),
        alt((text(&["cuts", "cut"]), part(Part::Notch))),
    );
    let said = alt((value((), which), value((), different)));
    value(asked(NotchAsk::Same), (said, some(DO), mark)).parse(input)
}

/// "how tall is my notch", "notch height?".
pub fn tall(input: In<'_>) -> Out<'_, Say> {
    let high = || alt((ask(Ask::HowHigh), value((), (text(&["how"]), sense(Sense::Cue(Cue::High))))));
    let how = (high(), some(DO), is, notch, some(DO));
    let noun = (opt(ask(Ask::What)), det, part(Part::Notch), sense(Sense::Cue(Cue::High)));
    let of = (opt(ask(Ask::What)), det, sense(Sense::Cue(Cue::High)), text(&["of"]), notch);
    // The leg hangs below the shoulder as far as the notch is tall.
    let long = || alt((text(&["how long"]), value((), (text(&["how"]), sense(Sense::Cue(Cue::Long))))));
    let leg = (
        alt((long(), high())),
        some(DO),
        is,
        det,
        text(&["leg", "legs", "notch leg"]),
        opt((text(&["of", "on"]), notch)),
        some(DO),
    );
    let said = alt((value((), how), value((), noun), value((), of), value((), leg)));
    value(asked(NotchAsk::Tall), (said, mark)).parse(input)
}

/// "can i notch a 6x6", "ok to notch 6x6 posts over the rim".
pub fn may(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        alt((ask(Ask::May), text(&["could i", "could we", "is it alright"]))),
        many0_count(alt((text(&["to", "i", "if", "we", "me", "you", "and"]), sense(Sense::Fill)))),
    );
    let rim = opt((text(&["over", "at", "on", "onto", "for"]), det, part(Part::Rim)));
    let lumber = preceded(
        (part(Part::Notch), many0_count(alt((text(&["my", "the", "a", "an", "into"]), sense(Sense::Fill))))),
        super::atoms::lumber,
    );
    let after = (some(&["deck", "railing", "rail", "guard"]), opt(part(Part::Guard)), opt(part(Part::Post)), rim, mark);
    terminated(preceded(lead, lumber), after).map(|l| asked(NotchAsk::May(l))).parse(input)
}
