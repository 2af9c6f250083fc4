//! Whether a gap passes: measured, at a spacing on centre, or told by what goes through it.

use super::super::Say;
use super::super::atoms::{In, Out, det, length, lumber, part, sense, sep};
use super::super::phrase::{ends, said};
use super::{asked, dressed, fine, idle, small};
use crate::grammar::goods::TakeoffDraft;
use crate::grammar::sense::{Ask, Part, Sense};
use crate::job::Basis;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// "a soup can goes through but a softball won't": a gap told by what passes it.
pub fn by_object(input: In<'_>) -> Out<'_, Say> {
    const THINGS: &[&str] = &[
        "soup can",
        "softball",
        "baseball",
        "tennis ball",
        "soda can",
        "coke can",
        "pop can",
        "golf ball",
        "grapefruit",
        "coffee can",
        "coffee mug",
        "paint can",
        "fist",
        "kid 's head",
        "kids head",
        "head",
        "cat",
        "dog",
    ];
    let thing = || (det, said(THINGS));
    let passes = || {
        (
            many0_count(said(&[
                "will", "wont", "won't", "doesnt", "does", "do", "can", "cant", "would", "wouldnt", "just", "barely",
                "not", "it", "easily", "almost", "still", "but", "and", "only", "gets",
            ])),
            opt(said(&[
                "go through",
                "goes through",
                "going through",
                "fit through",
                "fits through",
                "pass through",
                "passes through",
                "fit",
                "fits",
                "go",
                "goes",
                "pass",
                "passes",
                "get through",
                "gets through",
                "squeeze through",
                "squeezes through",
                "slip through",
            ])),
            opt((opt(said(&["between", "in", "through"])), det, alt((part(Part::Baluster), part(Part::Gap))))),
        )
    };
    let clause = || (many0_count(said(&["but", "and", "if"])), opt(sep(",")), thing(), passes(), opt(sep(",")));
    let asks = (
        opt(sep(",")),
        many0_count(alt((
            said(&["is", "that", "this", "it", "a", "so", "am", "i", "will", "does"]),
            sense(Sense::Ask(Ask::May)),
        ))),
        opt(said(&[
            "fail",
            "ok",
            "fine",
            "legal",
            "bad",
            "pass",
            "good",
            "too big",
            "too wide",
            "a problem",
            "alright",
        ])),
    );
    let (rest, _) = (clause(), many0_count(clause())).parse(input)?;
    let through = |i: &super::super::Item| ["through", "fit", "pass"].iter().any(|w| i.text.contains(w));
    if !input.iter().take(input.len() - rest.len()).any(through) {
        return Err(nom::Err::Error(()));
    }
    value(asked(TakeoffDraft::ByObject), (asks, peek(ends))).parse(rest)
}

/// "2x2s at 5 1/2 on center".
pub fn on_centre(input: In<'_>) -> Out<'_, Say> {
    let what = alt((
        map_opt(terminated(lumber, opt(part(Part::Baluster))), dressed).map(Some),
        terminated(map_opt(length, fine), (opt(said(&["wide", "round", "square"])), part(Part::Baluster))).map(Some),
        value(None, part(Part::Baluster)),
    ));
    let spaced = many0_count(said(&["at", "are", "set", "spaced", "every", "is", "on", "my", "the"]));
    let said_so = (preceded(idle, what), preceded(spaced, terminated(length, sense(Sense::Basis(Basis::Centre)))));
    terminated(map_opt(said_so, |(b, c)| small(&c).then_some((b, c))), (opt(sep(",")), opt(passing)))
        .map(|(baluster, centre)| asked(TakeoffDraft::OnCentre(centre, baluster)))
        .parse(input)
}

/// "that legal", "does it still pass", "ok".
pub(super) fn passing(input: In<'_>) -> Out<'_, ()> {
    let lead = many0_count(said(&[
        "is", "does", "will", "do", "it", "that", "still", "they", "would", "is it", "am", "i", "are", "be", "so",
    ]));
    let word = alt((
        sense(Sense::Ask(Ask::May)),
        said(&[
            "pass",
            "legal",
            "ok",
            "okay",
            "fine",
            "good",
            "allowed",
            "pass code",
            "to code",
            "alright",
            "all right",
            "work",
            "too big",
            "too wide",
        ]),
    ));
    value((), (lead, word, many0_count(said(&["still", "then", "code", "or", "not", "or not"])))).parse(input)
}

/// "bottom rail's 3 1/2 off the deck, ok?", "is a 3 7/8 gap ok".
pub fn gap_ok(input: In<'_>) -> Out<'_, Say> {
    let gap = || alt((part(Part::Gap), said(&["spacing", "space", "spaces"])));
    let under = preceded(opt(said(&["if", "is", "is it ok if"])), super::super::settings::under);
    let before = preceded(
        many0_count(said(&["is", "are", "will", "a", "an", "does", "my", "the", "if"])),
        terminated(length, gap()),
    );
    let after = preceded(
        (det, gap(), many0_count(said(&["is", "are", "of", "'s", "at", "between", "pickets", "balusters"]))),
        length,
    );
    let under = verify(under, small).map(TakeoffDraft::GapUnder);
    // "is 3 15/16 ok for a gap".
    let ok = alt((sense(Sense::Ask(Ask::May)), said(&["ok", "okay", "fine", "good", "alright", "legal", "too big"])));
    let for_a = (ok, many0_count(said(&["for", "as", "a", "the", "my", "between"])), gap());
    let ok_for = delimited(said(&["is", "would", "will"]), length, for_a);
    let ok_for = terminated(verify(ok_for, small), (opt(sep(",.")), peek(ends))).map(|m| asked(TakeoffDraft::Gap(m)));
    let gap = verify(alt((before, after)), small).map(TakeoffDraft::Gap);
    alt((terminated(alt((under, gap)), (opt(sep(",.")), passing, peek(ends))).map(asked), ok_for)).parse(input)
}
