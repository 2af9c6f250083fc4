//! What there is to cut from, and bays told alone.

use super::super::Say;
use super::super::atoms::{In, Out, count, det, length, lumber, part, sense, sep};
use super::super::phrase::{ends, said};
use super::{feet, stick, tie, whole};
use crate::grammar::draft::Clause;
use crate::grammar::goods::OrderDraft;
use crate::grammar::sense::{Part, Sense};
use crate::job::Order;
use crate::measure::{Length, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::multi::many0_count;
use nom::sequence::{preceded, terminated};

/// "8, 10 and 12": lengths in whole feet.
fn lengths(input: In<'_>) -> Out<'_, Vec<u16>> {
    let (mut rest, first) = feet(input)?;
    let mut all = vec![first];
    let and = |i| value((), (opt(sep(",")), opt(said(&["and", "&", "or", "n", "or else"])))).parse(i);
    loop {
        let (after, ()) = and(rest)?;
        match feet(after) {
            // "12s 12s": said twice it is not clear what is meant.
            Ok((_, n)) if all.contains(&n) => return Err(nom::Err::Error(())),
            Ok((after, n)) => {
                all.push(n);
                rest = after;
            }
            Err(_) => break,
        }
    }
    all.sort_unstable();
    Ok((rest, all))
}

/// Where stock is.
const WHERE_AT: &[&str] = &[
    "on hand",
    "in stock",
    "at the yard",
    "in the truck",
    "on the truck",
    "on site",
    "in the rack",
    "to cut from",
    "available",
    "at the lumberyard",
    "in the pile",
    "are what they have",
    "is what they have",
    "are all they have",
    "is all they have",
    "is all i have",
    "are all i have",
    "is what i 've got",
    "are what i 've got",
    "here",
    "to work with",
];

/// How lengths are said to be sold.
const COME: &[&str] = &[
    "come in",
    "comes in",
    "come",
    "are sold in",
    "sold in",
    "only come in",
    "only comes in",
    "are",
    "come as",
    "stock",
    "stocks",
    "stock is",
    "in",
    "is sold in",
    "can be had in",
    "come in at",
];

/// Words before the lengths a person has.
const LEAD: &[&str] = &[
    "i",
    "i 've",
    "ive",
    "we",
    "have",
    "got",
    "there",
    "are",
    "only",
    "just",
    "some",
    "they",
    "the",
    "they 've",
    "carry",
    "sell",
    "stock",
    "has",
    "yard",
    "lumberyard",
    "store",
    "stocks",
    "sells",
    "carries",
    "of",
    "lengths",
];

/// "8s and 12s on hand", "2x4s come in 8 10 and 12", "the yard has 8s and 16s", "rails come in 8s".
pub fn sold(input: In<'_>) -> Out<'_, Say> {
    let where_at = || said(WHERE_AT);
    let come = || said(COME);
    let lead = || many0_count(said(LEAD));
    let size = || {
        terminated(
            lumber,
            opt(alt((part(Part::Rail), part(Part::Post), part(Part::Baluster), said(&["stock", "boards"])))),
        )
    };
    let at_hand = (opt(size()), preceded(lead(), terminated(lengths, where_at())));
    let of_size = (size().map(Some), preceded(come(), terminated(lengths, opt(where_at()))));
    let by_place = preceded(
        (
            det,
            said(&["yard", "lumberyard", "store", "they"]),
            opt(said(&["only", "just"])),
            said(&["has", "have", "stocks", "sells", "carries", "carry", "sell", "stock", "got", "'s got", "has got"]),
            opt(said(&["only", "just"])),
        ),
        (opt(size()), lengths),
    );
    let stock = preceded(
        (
            det,
            said(&["stock", "lumber", "wood", "lengths", "sticks", "stuff", "boards", "stock lengths"]),
            tie,
            opt(said(&["come in", "comes in", "come", "comes", "sold", "in"])),
            opt(said(&["in"])),
        ),
        (opt(size()), lengths),
    );
    let rails = preceded((det, alt((part(Part::Rail), said(&["rails", "railing"]))), come()), lengths);
    let plain = alt((at_hand, of_size, by_place, stock));
    let any =
        alt((rails.map(OrderDraft::RailsSold), plain.map(|(size, feet)| OrderDraft::Fact(Order::Sold(size, feet)))));
    terminated(any, peek(ends)).map(|draft| Say::Clause(Clause::Order(draft))).parse(input)
}

/// "three 2x4x10 on hand", "2 offcuts of 2x4 at 40 inches", "got 4 8 foot 2x4s".
pub fn on_hand(input: In<'_>) -> Out<'_, Say> {
    let lead = || {
        many0_count(said(&[
            "i", "i 've", "ive", "we", "have", "got", "there", "are", "there 's", "also", "with", "use",
        ]))
    };
    let here = || {
        said(&[
            "on hand",
            "left",
            "left over",
            "leftover",
            "lying around",
            "in the truck",
            "on site",
            "here",
            "in the pile",
            "already",
            "from the last job",
            "in the shop",
            "to use up",
            "in the garage",
        ])
    };
    let off = || {
        said(&[
            "offcut",
            "offcuts",
            "off cuts",
            "offcuts of",
            "pieces of",
            "drops",
            "drop",
            "cutoffs",
            "cut offs",
            "scraps",
            "leftover",
            "left over",
            "pieces",
            "piece of",
        ])
    };
    let behind = || (opt(off()), opt(here()));
    let sized = (preceded(lead(), terminated(whole, opt(off()))), terminated(stick, behind())).map(|(n, s)| {
        let at = Meaning::Length(Length::inches(i64::from(s.feet) * 12), crate::measure::Said::Feet);
        OrderDraft::OnHand(s.size, Measure { meaning: at, shade: None, about: false, guess: None }, n)
    });
    let at = (
        preceded(lead(), terminated(whole, (opt(off()), opt(said(&["of"]))))),
        terminated(lumber, (opt(off()), said(&["at", "of", "that are", "about", ",", "in"]))),
        terminated(length, (opt(said(&["long"])), behind())),
    );
    let at = at.map(|(n, size, m)| OrderDraft::OnHand(size, m, n));
    let before = (
        preceded(lead(), whole),
        length,
        preceded((opt(said(&["long"])), opt(off()), opt(said(&["of"]))), terminated(lumber, behind())),
    );
    let before = before.map(|(n, m, size)| OrderDraft::OnHand(size, m, n));
    // Bare of any word for having them it is said at the end or the start.
    let has = |input: In<'_>, rest: In<'_>| {
        let read = input.len() - rest.len();
        let words = [
            "hand", "have", "got", "offcut", "left", "drops", "truck", "pile", "lying", "cutoffs", "scrap", "shop",
            "garage", "use up",
        ];
        input.iter().take(read).any(|i| words.iter().any(|w| i.text.contains(w)))
    };
    let (rest, draft) = terminated(alt((sized, at, before)), peek(ends)).parse(input)?;
    if has(input, rest) { Ok((rest, Say::Clause(Clause::Order(draft)))) } else { Err(nom::Err::Error(())) }
}

/// "four bays at 55 5/8", "3 bays of 68 1/2 clear".
pub fn bays(input: In<'_>) -> Out<'_, Say> {
    let bay = || alt((part(Part::Bay), said(&["sections", "section", "openings", "opening"]), part(Part::Opening)));
    let clear = || opt(sense(Sense::Basis(crate::job::Basis::Clear)));
    let of = (
        count,
        preceded(
            (
                opt(said(&["equal", "even", "more", "rail"])),
                bay(),
                said(&["at", "of", "that are", "@", "each"]),
                opt(said(&["at"])),
            ),
            terminated(length, clear()),
        ),
    );
    of.map(|(n, m)| Say::Clause(Clause::Order(OrderDraft::Bays(n, m)))).parse(input)
}
