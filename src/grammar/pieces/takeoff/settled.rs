//! What becomes of the gaps after the balusters are up or bought: dried, of another width, or
//! in rails whose holes are there already.

use super::super::Say;
use super::super::atoms::{In, Out, any, det, length, lumber, part, sense, sep};
use super::super::phrase::{ends, said};
use super::{asked, dressed, fine, idle, passing, small, wide};
use crate::grammar::goods::TakeoffDraft;
use crate::grammar::sense::{Part, Sense};
use crate::job::{Basis, Species};
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map, map_opt, opt, peek, value, verify};
use nom::multi::{many0_count, many1};
use nom::sequence::{delimited, preceded, terminated};

/// One bit of a question about drying.
#[derive(Clone, Debug, PartialEq)]
enum Bit {
    Dry,
    Gap,
    Baluster,
    Wood(Species),
    Size(Measure),
    Asks,
    Idle,
}

/// "how much do the gaps open when cedar pickets dry", "will a 3 7/8 gap still pass once it shrinks".
pub fn dried(input: In<'_>) -> Out<'_, Say> {
    let (rest, bits) = terminated(many1(bit), peek(ends)).parse(input)?;
    let draft = gathered(&bits).ok_or(nom::Err::Error(()))?;
    Ok((rest, asked(draft)))
}

fn bit(input: In<'_>) -> Out<'_, Bit> {
    let dry = said(&[
        "dry",
        "dries",
        "dried",
        "dry out",
        "dries out",
        "dried out",
        "drying",
        "shrink",
        "shrinks",
        "shrunk",
        "shrinking",
        "shrinkage",
        "shrink up",
    ]);
    let asks = said(&[
        "how much",
        "how far",
        "what if",
        "what happens",
        "what happens to",
        "what do",
        "what does",
        "what will",
        "will",
        "do",
        "does",
        "if",
        "still pass",
        "still ok",
        "still legal",
        "still good",
    ]);
    let passing_through = said(&[
        "when", "once", "after", "as", "they", "it", "the", "a", "my", "these", "those", "to", "in", "on", "up", "wet",
        "green", "treated", "lumber", "open", "opens", "open up", "opens up", "grow", "grows", "get", "gets", "bigger",
        "wider", "go", "goes", "be", "put up", "becomes", "become", "of", "at", "there", "by",
    ]);
    alt((
        value(Bit::Dry, dry),
        value(Bit::Asks, asks),
        value(Bit::Gap, alt((part(Part::Gap), said(&["spacing", "spaces", "space"])))),
        map(any(|s| if let Sense::Wood(wood) = s { Some(wood) } else { None }), Bit::Wood),
        value(Bit::Baluster, (opt(lumber), part(Part::Baluster))),
        map(verify(length, small), Bit::Size),
        value(Bit::Idle, alt((passing_through, value((), sep(","))))),
    ))
    .parse(input)
}

/// One drying, of balusters or of a gap; each thing is said once.
fn gathered(bits: &[Bit]) -> Option<TakeoffDraft> {
    let once = |like: fn(&Bit) -> bool| bits.iter().filter(|b| like(b)).count();
    let dry = once(|b| *b == Bit::Dry);
    let of = [once(|b| *b == Bit::Gap), once(|b| *b == Bit::Baluster)];
    let woods: Vec<Species> = bits.iter().filter_map(|b| if let Bit::Wood(w) = b { Some(*w) } else { None }).collect();
    let sizes: Vec<&Measure> = bits.iter().filter_map(|b| if let Bit::Size(m) = b { Some(m) } else { None }).collect();
    let asks = once(|b| *b == Bit::Asks) > 0 || of[0] > 0;
    let one = dry == 1 && of.iter().all(|n| *n <= 1) && of.iter().sum::<usize>() > 0;
    // A size is the gap's: of a baluster it would be another question.
    let sized = sizes.is_empty() || (sizes.len() == 1 && of[0] == 1);
    (asks && one && sized && woods.len() <= 1)
        .then(|| TakeoffDraft::Dried(woods.first().copied(), sizes.first().map(|m| (*m).clone())))
}

/// "rails come with holes at 4 1/2 on center, what's the end gap", "holes every 4 1/2 in a 64 3/8 bay".
pub fn routed(input: In<'_>) -> Out<'_, Say> {
    let rails = || {
        let named = (opt(said(&["top", "bottom", "both"])), said(&["rails", "rail"]));
        (det, opt(said(&["routed", "drilled"])), alt((part(Part::Rail), part(Part::BottomRail), value((), named))))
    };
    let lead = (
        idle,
        opt(alt((value((), rails()), value((), part(Part::Baluster))))),
        many0_count(said(&["come", "comes", "are", "is", "have", "has", "with", "the", "got"])),
    );
    let holes = alt((
        said(&[
            "holes",
            "the holes",
            "routed",
            "pre-routed",
            "prerouted",
            "pre routed",
            "predrilled",
            "pre-drilled",
            "drilled",
            "mortises",
        ]),
        value((), (said(&["routed", "drilled", "pre-drilled"]), said(&["holes"]))),
    ));
    let pitch = preceded(
        many0_count(said(&["at", "are", "every", "spaced", "on", "for", "is"])),
        terminated(verify(length, small), opt(sense(Sense::Basis(Basis::Centre)))),
    );
    let room = || alt((part(Part::Bay), part(Part::Opening)));
    let bay = alt((
        delimited(
            (opt(said(&["in"])), det, room(), many0_count(said(&["is", "of", "at"]))),
            map_opt(length, wide),
            opt(said(&["clear"])),
        ),
        delimited((said(&["in", "for"]), det), map_opt(length, wide), (opt(said(&["clear"])), opt(room()))),
    ));
    let width = alt((
        map_opt(terminated(lumber, part(Part::Baluster)), dressed),
        terminated(map_opt(length, fine), part(Part::Baluster)),
    ));
    let wants = (
        opt(sep(",")),
        many0_count(said(&[
            "what", "'s", "is", "are", "what 's", "whats", "the", "how big", "how wide", "does", "do", "left", "at",
            "post", "each",
        ])),
        opt(alt((
            said(&["end gap", "end gaps", "gap at the post", "gap at the posts", "gap at each end", "end space"]),
            passing,
        ))),
    );
    let told = (preceded((lead, holes), pitch), opt(preceded(opt(sep(",")), bay)), opt(preceded(opt(sep(",")), width)));
    terminated(told, (wants, peek(ends)))
        .map(|(pitch, clear, baluster)| asked(TakeoffDraft::Routed { pitch, clear, baluster }))
        .parse(input)
}

/// "pickets came in at 1 3/8, do the marks still work": other balusters on the marks there are.
pub fn measured(input: In<'_>) -> Out<'_, Say> {
    let came = many0_count(said(&[
        "came in", "came", "are", "measure", "measured", "mike", "run", "running", "really", "actually", "only", "at",
        "out", "in", "the", "these", "my",
    ]));
    let told = preceded((det, part(Part::Baluster), came), map_opt(length, fine));
    let still = (
        opt(sep(",")),
        opt(said(&["wide", "not 1 1/2"])),
        opt(sep(",")),
        said(&["do", "does", "will", "are"]),
        det,
        alt((said(&["marks", "same marks", "layout", "spacing"]), value((), part(Part::Gap)))),
        said(&[
            "still work",
            "still good",
            "still pass",
            "still hold",
            "still ok",
            "still fine",
            "work",
            "pass",
            "hold",
            "still legal",
        ]),
    );
    terminated(told, (still, peek(ends))).map(|m| asked(TakeoffDraft::Measured(m))).parse(input)
}
