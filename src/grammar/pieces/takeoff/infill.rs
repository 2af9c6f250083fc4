//! One opening's balusters, said in any order.
//!
//! ```text
//! infill  = segment *([","|"."|"and"] segment)      with a question among them, or enough to be one
//! segment = "how many" [balusters] | "what gap" | [in] opening length | length opening | n balusters
//!         | baluster width | "under" length | length "max" | "start with a" (gap | baluster) | "drop one"
//! ```

use super::super::Say;
use super::super::atoms::{In, Out, count, det, length, lumber, part, sense, sep, side};
use super::super::phrase::{ends, said};
use super::gaps::passing;
use super::{asked, dressed, fine, small, wide};
use crate::grammar::draft::Which;
use crate::grammar::goods::{InfillDraft, TakeoffDraft};
use crate::grammar::sense::{Ask, Cue, Op, Part, Sense};
use crate::job::{Basis, StartWith};
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// One thing said of an infill.
#[derive(Clone)]
enum Segment {
    HowMany,
    /// Balusters named, an opening behind them.
    Named,
    Gap,
    Passes,
    Opening(Measure),
    Count(u16),
    Baluster(Measure),
    Limit(Measure),
    Start(StartWith),
    Fewer(u16),
    Which(Which),
}

fn how_many(input: In<'_>) -> Out<'_, Segment> {
    let tail = many0_count(said(&[
        "do",
        "i",
        "we",
        "need",
        "i need",
        "will",
        "does",
        "it",
        "take",
        "there",
        "are",
        "go",
        "fit",
        "would",
        "should",
        "total",
        "altogether",
        "in all",
        "all told",
        "for",
        "that",
        "is",
        "to",
        "put",
        "use",
        "get",
        "them",
        "of",
        "all together",
        "in total",
        "all",
        "do i need",
        "together",
        "then",
        "have",
        "fill",
    ]));
    let many = (
        sense(Sense::Ask(Ask::HowMany)),
        opt(said(&["more", "of"])),
        opt((det, part(Part::Baluster))),
        opt(sense(Sense::Op(Op::Total))),
        tail,
    );
    let number = (
        said(&["count", "number of", "count the", "fewest"]),
        det,
        part(Part::Baluster),
        many0_count(said(&["for", "in", "it"])),
    );
    let need = (said(&["what do i need", "i need"]), said(&["for", "in"]), det, part(Part::Baluster));
    alt((value(Segment::HowMany, many), value(Segment::HowMany, number), value(Segment::HowMany, need))).parse(input)
}

fn balusters_for(input: In<'_>) -> Out<'_, Segment> {
    let into = said(&["for", "in", "across", "to fill", "into", "fit in", "fit into"]);
    value(Segment::Named, (det, part(Part::Baluster), peek(into))).parse(input)
}

fn gap(input: In<'_>) -> Out<'_, Segment> {
    let word = || alt((part(Part::Gap), said(&["spacing", "space", "spaces", "reveal"])));
    let lead = (
        alt((
            sense(Sense::Ask(Ask::What)),
            sense(Sense::Ask(Ask::HowWide)),
            sense(Sense::Ask(Ask::HowMuch)),
            sense(Sense::Ask(Ask::Which)),
            said(&["and"]),
        )),
        many0_count(said(&["is", "'s", "the", "my", "are", "does", "will", "be", "kind of", "equal"])),
        opt(part(Part::Baluster)),
        word(),
        many0_count(said(&[
            "do", "i", "we", "get", "does", "that", "it", "give", "leave", "come", "out", "to", "at", "for", "is",
            "then", "between", "them", "will", "be", "have", "work", "do i get", "leaves", "gives", "each", "with",
            "if", "use", "go",
        ])),
        opt(part(Part::Baluster)),
    );
    let equal = (said(&["equal", "even"]), word());
    // "how far apart are the balusters".
    let apart = (
        sense(Sense::Ask(Ask::HowFar)),
        many0_count(said(&["apart", "are", "do", "should", "the", "my", "go", "from each other"])),
        part(Part::Baluster),
        many0_count(said(&["apart", "go", "be", "stand"])),
    );
    alt((value(Segment::Gap, lead), value(Segment::Gap, equal), value(Segment::Gap, apart))).parse(input)
}

fn opening(input: In<'_>) -> Out<'_, Segment> {
    let word = || {
        alt((
            part(Part::Opening),
            part(Part::Bay),
            value((), sense(Sense::Basis(Basis::Clear))),
            said(&["section", "space", "between posts", "between the posts", "post to post"]),
        ))
    };
    let tie = || many0_count(said(&["is", "of", "'s", "=", "at", "are", "that", "measures", "it", "clear"]));
    let into = || {
        many0_count(said(&[
            "in", "for", "across", "into", "over", "on", "a", "an", "the", "my", "our", "this", "of", "one", "to fill",
            "fill", "between", "posts",
        ]))
    };
    let named = preceded((into(), word(), tie()), length);
    let after = delimited(
        into(),
        length,
        (
            many0_count(said(&["wide", "long", "of"])),
            word(),
            many0_count(said(&["clear", "between", "the", "opening"])),
        ),
    );
    let within = preceded(
        (
            said(&[
                "in", "for", "across", "over", "into", "fill", "to fill", "fit in", "fit into", "go in", "go into",
                "to fit",
            ]),
            det,
        ),
        length,
    );
    let basis = || opt(value((), sense(Sense::Basis(Basis::Clear))));
    map_opt(alt((after, terminated(named, basis()), terminated(within, basis()))), wide)
        .map(Segment::Opening)
        .parse(input)
}

fn number(input: In<'_>) -> Out<'_, Segment> {
    let of = terminated(
        count,
        (
            opt(said(&["of"])),
            alt((part(Part::Baluster), value((), (lumber, opt(part(Part::Baluster)))), said(&["them", "em"]))),
        ),
    );
    let with = preceded(
        said(&["with", "if i use", "using", "use", "at", "if", "put in", "only", "for"]),
        terminated(
            count,
            (opt(said(&["of"])), opt(alt((part(Part::Baluster), said(&["them", "em"])))), peek(after_count)),
        ),
    );
    alt((of, with)).map(Segment::Count).parse(input)
}

/// What may stand behind a bare count: nothing that would make it a length.
fn after_count(input: In<'_>) -> Out<'_, ()> {
    let link = said(&["in", "and", "what", "whats", "what 's", "instead", "then", "across", "of"]);
    alt((ends, link)).parse(input)
}

fn baluster(input: In<'_>) -> Out<'_, Segment> {
    let shape = || {
        many0_count(said(&[
            "wide", "round", "square", "thick", "metal", "aluminum", "iron", "steel", "wood", "cedar", "dia",
            "diameter", "across", "actual",
        ]))
    };
    let thin = || map_opt(length, fine);
    let using = || {
        many0_count(said(&[
            "with",
            "using",
            "use",
            "of",
            "the",
            "my",
            "they 're",
            "theyre",
            "they",
            "are",
            "each",
            "at",
            "its",
            "it 's",
            "i 'm using",
            "a",
            "is",
        ]))
    };
    let width_first = delimited(using(), thin(), (shape(), part(Part::Baluster)));
    let size_first = preceded(
        using(),
        map_opt(terminated(lumber, (opt(part(Part::Baluster)), peek(nom::combinator::not(part(Part::Post))))), dressed),
    );
    let named = preceded(
        (using(), part(Part::Baluster), many0_count(said(&["is", "are", "at", "measure", "'s", "that", "of"]))),
        terminated(thin(), shape()),
    );
    let shaped = terminated(preceded(using(), thin()), verify(shape(), |n| *n > 0));
    alt((width_first, named, size_first, shaped)).map(Segment::Baluster).parse(input)
}

fn limit(input: In<'_>) -> Out<'_, Segment> {
    let most = || {
        alt((
            sense(Sense::Cue(Cue::Most)),
            said(&["under", "below", "less than", "not over", "keep under", "keep it under", "stay under"]),
        ))
    };
    let gap = || (det, opt(alt((part(Part::Gap), said(&["spacing", "space", "spaces"])))));
    let first = preceded(
        (
            many0_count(said(&[
                "with", "keep", "keeping", "gaps", "gap", "at", "it", "spacing", "a", "the", "to", "and", "all",
            ])),
            most(),
            gap(),
        ),
        terminated(length, gap()),
    );
    let last = terminated(
        preceded(many0_count(said(&["with", "a", "the", "gap"])), length),
        (gap(), sense(Sense::Cue(Cue::Most)), gap()),
    );
    verify(alt((first, last)), small).map(Segment::Limit).parse(input)
}

fn start(input: In<'_>) -> Out<'_, Segment> {
    let lead = (
        many0_count(said(&["i", "if", "we", "to"])),
        said(&["start", "starts", "starting", "start off", "begin", "beginning", "begins", "open"]),
        opt(said(&["off", "out"])),
        opt(said(&["with", "on", "at", "by"])),
        det,
    );
    let what = alt((
        value(StartWith::Baluster, part(Part::Baluster)),
        value(StartWith::Gap, alt((part(Part::Gap), said(&["space", "opening"])))),
    ));
    delimited(
        lead,
        what,
        opt(said(&["against the post", "at the post", "tight to the post", "on the post", "each end", "at each end"])),
    )
    .map(Segment::Start)
    .parse(input)
}

fn fewer(input: In<'_>) -> Out<'_, Segment> {
    let lead = (
        many0_count(said(&["if", "what if", "i", "we", "and", "can"])),
        said(&["drop", "lose", "take out", "leave out", "skip", "pull", "remove"]),
    );
    let some = alt((value(1, said(&["one", "a"])), count));
    delimited(lead, some, many0_count(alt((said(&["out", "of", "them"]), part(Part::Baluster)))))
        .map(Segment::Fewer)
        .parse(input)
}

fn which(input: In<'_>) -> Out<'_, Segment> {
    let lead = (opt(said(&["on", "for", "in", "along", "of"])), det);
    let numbered = preceded(said(&["run", "section", "leg"]), count).map(|n| Which::Number(u32::from(n)));
    let sided = terminated(side, opt(alt((part(Part::Run), part(Part::Guard))))).map(Which::Side);
    preceded(lead, alt((numbered, sided))).map(Segment::Which).parse(input)
}

fn link(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(alt((sep(",.;?"), said(&["and", "so", "with", "then", "now", "ok", "please", "hey"])))))
        .parse(input)
}

/// Balusters in an opening: count, gap, width, limit, in any order.
pub fn infill(input: In<'_>) -> Out<'_, Say> {
    let mut draft = InfillDraft::default();
    let (mut rest, _) = link(input)?;
    let (mut asks, mut named, mut segments) = (false, false, 0);
    while let Ok((after, segment)) = alt((
        how_many,
        balusters_for,
        gap,
        start,
        fewer,
        opening,
        number,
        limit,
        baluster,
        which,
        passing.map(|()| Segment::Passes),
    ))
    .parse(rest)
    {
        named |= matches!(segment, Segment::Named);
        asks |= matches!(segment, Segment::HowMany | Segment::Gap | Segment::Passes);
        if !take(&mut draft, segment) {
            break;
        }
        segments += 1;
        (rest, _) = link(after)?;
    }
    let filled = draft.opening.is_some() && (draft.count.is_some() || draft.baluster.is_some() || named);
    let about = draft.count.is_some() || draft.opening.is_some() || names_balusters(input, rest);
    if segments == 0 || !(asks && about || filled) {
        return Err(nom::Err::Error(()));
    }
    Ok((rest, asked(TakeoffDraft::Infill(draft))))
}

/// True where balusters, or a gap between them, are spoken of in what was read.
fn names_balusters(input: In<'_>, rest: In<'_>) -> bool {
    let read = input.len() - rest.len();
    input.iter().take(read).any(|i| i.may_be(Sense::Part(Part::Baluster)))
}

/// False where the same thing was said before: what follows is of something else.
fn take(draft: &mut InfillDraft, segment: Segment) -> bool {
    fn put<T>(slot: &mut Option<T>, value: T) -> bool {
        slot.is_none() && slot.replace(value).is_none()
    }
    match segment {
        Segment::HowMany | Segment::Named | Segment::Gap | Segment::Passes => true,
        Segment::Opening(m) => put(&mut draft.opening, m),
        Segment::Count(n) => put(&mut draft.count, n),
        Segment::Baluster(m) => put(&mut draft.baluster, m),
        Segment::Limit(m) => put(&mut draft.limit, m),
        Segment::Start(s) => put(&mut draft.start, s),
        Segment::Fewer(n) => put(&mut draft.fewer, n),
        Segment::Which(w) => put(&mut draft.which, w),
    }
}
