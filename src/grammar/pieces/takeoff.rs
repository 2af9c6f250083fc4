//! Questions about balusters, parts, cuts and cost.
//!
//! ```text
//! infill  = segment *([","|"."|"and"] segment)      with a question among them, or enough to be one
//! segment = "how many" [balusters] | "what gap" | [in] opening length | length opening | n balusters
//!         | baluster width | "under" length | length "max" | "start with a" (gap | baluster) | "drop one"
//! ```

use super::Say;
use super::atoms::{In, Out, count, det, length, lumber, part, sense, sep, side};
use super::phrase::{ends, said};
use crate::grammar::draft::{Clause, Which};
use crate::grammar::goods::{InfillDraft, TakeoffDraft};
use crate::grammar::sense::{Ask, Cue, Op, Part, Sense};
use crate::job::{Basis, LongPart, StartWith};
use crate::measure::{Length, Lumber, Meaning, Measure, Said};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn asked(draft: TakeoffDraft) -> Say {
    Say::Clause(Clause::Takeoff(draft))
}

/// Words round a question that ask nothing of their own.
fn idle(input: In<'_>) -> Out<'_, ()> {
    let words = said(&[
        "i",
        "we",
        "you",
        "me",
        "us",
        "do",
        "does",
        "will",
        "would",
        "can",
        "could",
        "please",
        "just",
        "now",
        "then",
        "so",
        "ok",
        "okay",
        "and",
        "the",
        "a",
        "an",
        "my",
        "our",
        "this",
        "that",
        "it",
        "its",
        "'s",
        "is",
        "are",
        "be",
        "all",
        "for",
        "to",
        "of",
        "on",
        "need",
        "i need",
        "have",
        "get",
        "got",
        "give",
        "give me",
        "gimme",
        "show",
        "show me",
        "tell me",
        "want",
        "i want",
        "let",
        "see",
        "lets",
        "let 's",
        "make",
        "print",
        "read",
        "off",
        "out",
        "there",
        "whole",
        "everything",
        "job",
        "deck",
        "thing",
        "guard",
        "railing",
        "project",
        "in",
        "up",
        "going",
        "gonna",
        "from",
        "yard",
        "take",
        "saw",
        "buddy",
        "quick",
        "full",
        "again",
        "with",
        "lumberyard",
        "should",
        "must",
        "they",
        "them",
        "each",
        "total",
        "altogether",
        "in all",
        "all told",
    ]);
    value((), many0_count(words)).parse(input)
}

/// A whole question in a few words, idle words about it, to the line's end or a sign.
fn question<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    let ending = (idle, peek(ends));
    let plain = (said(list), ending);
    let led = (idle, said(list), idle, peek(ends));
    alt((value((), plain), value((), led)))
}

/// "cut list", "say it so I can cut it".
pub fn cuts(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "cut list",
        "cutting list",
        "cutlist",
        "cut sheet",
        "cuts",
        "saw list",
        "cut lengths",
        "what do i cut",
        "what am i cutting",
        "what to cut",
        "say it so i can cut it",
        "so i can cut it",
        "so i can cut",
        "say it so i can cut",
        "list of cuts",
        "what lengths do i cut",
        "what do i cut them at",
        "cut them list",
        "cut plan",
        "cutting plan",
    ]);
    value(asked(TakeoffDraft::Cuts), words).parse(input)
}

/// "what do I buy", "order list".
pub fn buy(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "what do i buy",
        "what do i need to buy",
        "what do we buy",
        "what should i buy",
        "what to buy",
        "buy list",
        "buying list",
        "shopping list",
        "lumber list",
        "order list",
        "lumber order",
        "what do i order",
        "what to order",
        "what should i order",
        "what do i pick up",
        "what do i need from the yard",
        "how much lumber",
        "how many sticks",
        "how many boards",
        "what stock",
        "what lumber",
        "what wood",
        "what do i get at the yard",
        "what do i haul",
    ]);
    value(asked(TakeoffDraft::Buy), words).parse(input)
}

/// "take-off", "material list", "what do I need".
pub fn parts(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "take off",
        "takeoff",
        "take - off",
        "take off list",
        "takeoff list",
        "material list",
        "materials list",
        "materials",
        "parts list",
        "list of parts",
        "parts",
        "bill of materials",
        "what do i need",
        "what all do i need",
        "what do we need",
        "what goes in it",
        "count it up",
        "count the parts",
        "list of materials",
        "material takeoff",
    ]);
    value(asked(TakeoffDraft::Parts), words).parse(input)
}

/// "what does it cost", "price it".
pub fn cost(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "what does it cost",
        "what 's it cost",
        "what will it cost",
        "how much does it cost",
        "how much will it cost",
        "how much is it",
        "how much is it all",
        "how much money",
        "cost",
        "costs",
        "total cost",
        "price it",
        "price it up",
        "what does it come to",
        "what 's it come to",
        "what 's it run me",
        "what will it run me",
        "what 's the damage",
        "what does that come to",
        "what 's that come to",
        "what is the cost",
        "what 's the cost",
        "cost it",
        "bill",
        "what 's the bill",
        "what 's it going to cost",
        "what 's this going to cost",
        "how much is all that",
        "how much for the lumber",
        "how much for the lot",
    ]);
    let lead = alt((sense(Sense::Ask(Ask::What)), sense(Sense::Ask(Ask::HowMuch))));
    let going = (lead, idle, said(&["cost", "run", "run me", "set me back"]), idle, peek(ends));
    value(asked(TakeoffDraft::Cost), alt((words, value((), going)))).parse(input)
}

/// "what do I need for a 16 foot rail".
pub fn parts_for(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        said(&[
            "what do i need",
            "what do we need",
            "what all do i need",
            "what do i buy",
            "materials",
            "parts",
            "material list",
            "takeoff",
            "take off",
            "what would i need",
        ]),
        said(&["for"]),
        det,
    );
    let rail = (opt(said(&["long", "of"])), alt((part(Part::Rail), part(Part::Guard), part(Part::Run))), peek(ends));
    delimited(lead, length, rail).map(|m| asked(TakeoffDraft::PartsFor(m))).parse(input)
}

/// "how long do I cut the pickets", "picket length", "how long are the rails".
pub fn cut_length(input: In<'_>) -> Out<'_, Say> {
    let what = || {
        alt((
            value(TakeoffDraft::CutLength(LongPart::Baluster), part(Part::Baluster)),
            value(TakeoffDraft::CutLength(LongPart::Post), part(Part::Post)),
            value(
                TakeoffDraft::RailLength,
                alt((part(Part::Rail), part(Part::TopRail), part(Part::BottomRail), said(&["rails"]))),
            ),
        ))
    };
    let lead = (
        alt((sense(Sense::Ask(Ask::HowLong)), said(&["what length", "what lengths"]))),
        many0_count(said(&[
            "do", "i", "we", "should", "to", "are", "is", "the", "my", "cut", "make", "must", "can", "need", "will",
        ])),
    );
    let tail = (
        many0_count(said(&[
            "be", "to", "need", "cut", "have", "get", "cut at", "at", "do", "i", "should", "must", "for", "this",
            "them", "long",
        ])),
        peek(ends),
    );
    let first = delimited(lead, what(), tail);
    let lengths = || said(&["length", "lengths", "cut length", "cut lengths"]);
    let named = terminated(what(), (lengths(), idle, peek(ends)));
    let of = delimited(
        (opt(sense(Sense::Ask(Ask::What))), idle, lengths(), said(&["of", "for"]), det),
        what(),
        (idle, peek(ends)),
    );
    alt((first, preceded((opt(sense(Sense::Ask(Ask::What))), idle), named), of)).map(asked).parse(input)
}

/// "lay it out to suit the 8s", "which split wastes least".
pub fn splits(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "which split wastes least",
        "what split wastes least",
        "least waste",
        "waste least",
        "wastes least",
        "waste the least",
        "wastes the least",
        "lay it out to suit the stock",
        "suit the stock",
        "suit the sticks",
        "lay it out for the stock",
        "least waste layout",
        "layout with least waste",
        "split for least waste",
        "bays to suit the stock",
        "what wastes least",
        "lay it out with the least waste",
        "lay it out to waste least",
        "less waste",
        "which layout wastes least",
    ]);
    value(asked(TakeoffDraft::Splits(None)), words).parse(input)
}

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
    let through = |i: &super::Item| ["through", "fit", "pass"].iter().any(|w| i.text.contains(w));
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
fn passing(input: In<'_>) -> Out<'_, ()> {
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
    let under = preceded(opt(said(&["if", "is", "is it ok if"])), super::settings::under);
    let before = preceded(
        many0_count(said(&["is", "are", "will", "a", "an", "does", "my", "the", "if"])),
        terminated(length, gap()),
    );
    let after = preceded(
        (det, gap(), many0_count(said(&["is", "are", "of", "'s", "at", "between", "pickets", "balusters"]))),
        length,
    );
    let under = verify(under, small).map(TakeoffDraft::GapUnder);
    let gap = verify(alt((before, after)), small).map(TakeoffDraft::Gap);
    terminated(alt((under, gap)), (opt(sep(",.")), passing, peek(ends))).map(asked).parse(input)
}

/// A spacing no post has.
fn small(m: &Measure) -> bool {
    match m.meaning {
        Meaning::Bare(n) => n.value < 12.into(),
        Meaning::Length(l, _) => l < Length::inches(12),
        _ => false,
    }
}

/// The width of lumber balusters are made of: two inches thick at most, under four wide.
fn dressed(l: Lumber) -> Option<Measure> {
    let (_, wide) = l.dressed().filter(|_| l.thick_quarters <= 8 && l.wide < 4)?;
    Some(Measure { meaning: Meaning::Length(wide, Said::Inches), shade: None, about: false, guess: None })
}

/// A width no opening has: under 4 in.
fn fine(m: Measure) -> Option<Measure> {
    let thin = match m.meaning {
        Meaning::Bare(n) => n.value < 4.into() && !n.plural,
        Meaning::Length(l, _) => l < Length::inches(4),
        _ => false,
    };
    thin.then_some(m)
}

/// An opening: 4 in. and more.
fn wide(m: Measure) -> Option<Measure> {
    let open = match m.meaning {
        Meaning::Bare(n) => n.value >= 4.into() && !n.plural,
        Meaning::Length(l, _) => l >= Length::inches(4),
        Meaning::Doubt(..) => true,
        Meaning::Lumber(_) | Meaning::By(..) => false,
    };
    open.then_some(m)
}

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
        word(),
        many0_count(said(&[
            "do", "i", "we", "get", "does", "that", "it", "give", "leave", "come", "out", "to", "at", "for", "is",
            "then", "between", "them", "will", "be", "have", "work", "do i get", "leaves", "gives", "each", "with",
            "if", "use", "go",
        ])),
        opt(part(Part::Baluster)),
    );
    let equal = (said(&["equal", "even"]), word());
    alt((value(Segment::Gap, lead), value(Segment::Gap, equal))).parse(input)
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
