//! A run's length, its basis, its name, its bays.
//!
//! ```text
//! run_is   = [det] run-word ["is" | "of" | ":"] length [basis] ["long"]
//! run_of   = [det] length [basis] ["of"] run-word
//! bare     = length [basis] ["long"]
//! name     = [det] side [run-word] ["is" | ":"]
//! ```

use super::Say;
use super::atoms::{In, Out, any, count, det, is, length, one, part, place, run_word, sense, sep, side, text, tie};
use crate::grammar::canon::clean_name;
use crate::grammar::draft::{Clause, Sizing};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Cue, Name, Op, Part, Sense, Side, Spot, Verb};
use crate::job::Basis;
use crate::measure::{Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many_m_n, many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn basis(input: In<'_>) -> Out<'_, Basis> {
    let word = any(|s| match s {
        Sense::Basis(b) => Some(b),
        _ => None,
    });
    delimited(opt(text(&["measured", "taken", "all"])), word, opt(text(&["measured", "taken"]))).parse(input)
}

fn long(input: In<'_>) -> Out<'_, ()> {
    value((), opt(sense(Sense::Cue(Cue::Long)))).parse(input)
}

fn measured(input: In<'_>) -> Out<'_, (Measure, Option<Basis>)> {
    let after = preceded((long, opt(text(&["in", "of"]))), opt(basis));
    (length, after, long).map(|(m, b, ())| (m, b)).parse(input)
}

fn said(run: bool, it: bool) -> impl Fn((Measure, Option<Basis>)) -> Say {
    move |(measure, basis)| Say::Length { measure, basis, run, it }
}

/// "run 10 ft", "the guard is 12'-6", "run of 10 ft", "rail goes 14'".
pub fn run_is(input: In<'_>) -> Out<'_, Say> {
    let goes = opt(sense(Sense::Verb(Verb::Goes)));
    let word = alt((run_word, part(Part::Rail)));
    preceded((det, word, opt(text(&["length"])), goes, is_or_of), measured).map(said(true, false)).parse(input)
}

fn is_or_of(input: In<'_>) -> Out<'_, ()> {
    value(
        (),
        many0_count(alt((text(&["is", "are", "'s", "of", "=", "was", "it 's", "its", "be", "for", "at"]), sep(":")))),
    )
    .parse(input)
}

/// "7 ft section", "a 12 foot run", "12 ft of railing".
pub fn run_of(input: In<'_>) -> Out<'_, Say> {
    let of = (opt(sep("-")), opt(text(&["of"])), det);
    // "42 inch rails": a height as like as a length; `rail_is` has that.
    let word = alt((run_word, part(Part::Rail), part(Part::Opening)));
    let (rest, m) = preceded(det, terminated(measured, (of, word))).parse(input)?;
    // "2 rails" counts them.
    let last = input.get(input.len() - rest.len() - 1);
    let many = last.is_some_and(|i| i.text.ends_with('s'));
    if is_count(&m.0) && many { Err(nom::Err::Error(())) } else { Ok((rest, said(true, false)(m))) }
}

/// "5 posts": so many of them, which makes so many bays.
pub fn posts_counted(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(text(&["make it", "i want", "we want", "with", "use", "i 'd like", "need", "want"])), det);
    let post = alt((part(Part::Post), value((), text(&["posts"]))));
    preceded(
        lead,
        terminated(verify(count, |n| (2..=99).contains(n)), (post, opt(text(&["total", "in all", "altogether"])))),
    )
    .map(|n| Say::Clause(Clause::PostsCounted(n)))
    .parse(input)
}

/// "one more bay", "add a bay", "one less post", "lose a post".
pub fn bays_more(input: In<'_>) -> Out<'_, Say> {
    let what = || alt((part(Part::Bay), part(Part::Post)));
    let many = || alt((value(1, text(&["a", "an", "another", "one"])), count));
    let more = || value(true, text(&["more", "extra", "additional", "another"]));
    let fewer = || value(false, text(&["less", "fewer"]));
    let lead = || opt(text(&["with", "make it", "do", "give me", "use", "put in", "and", "add"]));
    // "one more post" goes somewhere: it is asked where.
    let degree = (preceded(lead(), many()), alt((terminated(more(), part(Part::Bay)), terminated(fewer(), what()))));
    let another = preceded(lead(), value((1, true), (text(&["another", "an extra"]), part(Part::Bay))));
    let added = terminated(preceded(text(&["add", "add in", "put in"]), many()), (opt(more()), part(Part::Bay)));
    let lost = preceded(text(&["lose", "drop", "take out", "remove", "cut"]), many());
    let lost = terminated(lost, part(Part::Bay));
    let said = alt((degree, another, added.map(|n| (n, true)), lost.map(|n| (n, false))));
    let on = opt(preceded((text(&["on", "for", "along", "in", "across"]), det), terminated(side, opt(run_word))));
    terminated((said, on), peek(super::phrase::ends))
        .map(|((by, more), on)| Say::Clause(Clause::BaysMore { more, by, on }))
        .parse(input)
}

/// "bay 2 is 4 ft", "make the second bay 50 inches".
pub fn bay_is(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(sense(Sense::Verb(Verb::Change))), det);
    let nth = text(&["first", "second", "third", "fourth", "last", "end", "middle"]);
    let bay = alt((value((), (part(Part::Bay), count)), value((), (nth, part(Part::Bay)))));
    value(Say::Clause(Clause::BayIs), (lead, bay, tie, length, peek(ends))).parse(input)
}

/// "10'-6", "88 in the clear", "14' long".
pub fn bare(input: In<'_>) -> Out<'_, Say> {
    let goes = opt((opt(text(&["it", "and", "then", "which"])), sense(Sense::Verb(Verb::Goes))));
    let (rest, m) = preceded(goes, terminated(measured, peek(not(unit_of_something)))).parse(input)?;
    let counted = is_count(&m.0) && text(&["rails", "guards", "guardrails", "railings"]).parse(rest).is_ok();
    if counted { Err(nom::Err::Error(())) } else { Ok((rest, said(false, false)(m))) }
}

/// True for a bare whole number, which may count things.
fn is_count(m: &Measure) -> bool {
    matches!(m.meaning, Meaning::Bare(n) if n.value.is_integer() && !n.fraction)
}

/// A part right after a length makes the length that part's.
fn unit_of_something(input: In<'_>) -> Out<'_, ()> {
    alt((part(Part::Gate), part(Part::Bay), part(Part::Baluster), part(Part::Riser))).parse(input)
}

/// Words that go on to the next run.
const ONWARD: &[&str] = &[
    "turns",
    "turns and goes",
    "turns and runs",
    "then turns",
    "it turns and goes",
    "heads",
    "carries on",
    "carry on",
    "continues",
    "then goes",
    "jogs",
    "goes on",
    "goes back",
    "goes out",
    "runs out",
];

/// "it's 11'-4", "that's like 8 and a quarter".
pub fn it_is(input: In<'_>) -> Out<'_, Say> {
    // "it turns and goes 18'" is the next run, not this one again.
    let goes = || {
        alt((
            preceded(peek(not(text(ONWARD))), sense(Sense::Verb(Verb::Goes))),
            text(&["is", "'s", "was", "like", "just"]),
        ))
    };
    let it = (opt(text(&["but"])), text(&["it", "its", "it 's", "thats", "that", "this"]), many0_count(goes()));
    // "... down to the stairs, which is about 22 foot": of the run being told.
    let which = preceded(text(&["which is", "which"]), preceded(many0_count(text(&["is", "'s"])), measured))
        .map(said(false, false));
    let truly = || opt(text(&["really", "actually", "in fact", "in truth", "now"]));
    alt((delimited(it, measured, truly()).map(said(false, true)), which)).parse(input)
}

/// "length is 15", "length 13'": of the run spoken of, if there is one.
pub fn length_is(input: In<'_>) -> Out<'_, Say> {
    let of_run = opt((text(&["of"]), det, run_word));
    preceded((det, text(&["length"]), of_run, is_or_of), measured).map(said(false, true)).parse(input)
}

/// "overall 15'", "clear 88".
pub fn basis_first(input: In<'_>) -> Out<'_, Say> {
    (terminated(basis, tie), length, long)
        .map(|(b, measure, ())| Say::Length { measure, basis: Some(b), run: false, it: false })
        .parse(input)
}

/// "... out to out".
pub fn basis_alone(input: In<'_>) -> Out<'_, Say> {
    let not = || (opt(sep(",")), text(&["not", "instead of", "rather than"]), det);
    let lead = (opt(text(&["it", "its", "it 's", "thats", "that"])), is);
    let but = alt((value((), (sep(","), opt(text(&["but", "its", "it 's"])))), text(&["but", "its", "it 's"])));
    let denied_first = delimited((not(), basis, but), basis, is);
    let plain = delimited(lead, basis, opt((not(), basis)));
    let (rest, basis) = alt((denied_first, plain)).parse(input)?;
    // "inside last corner": a torn "inside corner", not a basis.
    let torn = input.first().is_some_and(|i| matches!(&*i.text, "inside" | "outside")) && place(rest).is_ok();
    if torn { Err(nom::Err::Error(())) } else { Ok((rest, Say::Basis(basis))) }
}

/// "a run", "run 2".
pub fn run_word_alone(input: In<'_>) -> Out<'_, Say> {
    let counted = preceded((text(&["one"]), det), run_word).map(|()| Say::RunWord(None));
    let goes = opt(sense(Sense::Verb(Verb::Goes)));
    let plain = preceded(det, terminated(alt((run_word, part(Part::Rail))), (goes, is))).map(|()| Say::RunWord(None));
    alt((counted, plain)).parse(input)
}

/// "run 2".
pub fn run_number(input: In<'_>) -> Out<'_, Say> {
    delimited(
        (opt(text(&["on", "for", "of", "to"])), det, text(&["run", "section", "leg"])),
        terminated(count, peek(not(unit))),
        is,
    )
    .map(|n| Say::RunWord(Some(u32::from(n))))
    .parse(input)
}

/// "the first one is", "second run".
pub fn nth_run(input: In<'_>) -> Out<'_, Say> {
    let nth = any(|s| if let Sense::Nth(n) = s { Some(n) } else { None });
    delimited(det, nth, is).map(|n| Say::RunWord(Some(n))).parse(input)
}

/// "a foot longer", "6 inches shorter than that", "add 2 inches", "take 3 inches off it".
pub fn grow(input: In<'_>) -> Out<'_, Say> {
    let than = || opt((text(&["than", "then"]), text(&["that", "it", "this", "i said", "what i said"])));
    let it = || (opt(text(&["the"])), opt(alt((text(&["it", "that", "this", "end"]), run_word))));
    let is = opt((opt(text(&["it", "its", "it 's", "that", "thats"])), is, opt(text(&["really", "actually", "be"]))));
    let way = alt((value(Sizing::Longer, bigger), value(Sizing::Shorter, smaller)));
    let by_word = (preceded(is, length), terminated(way, (than(), peek(not(text(&["than"]))))));
    let add = preceded(text(&["add", "add another", "stretch it", "stretch it by"]), length);
    let add = terminated(add, (opt(text(&["to", "onto", "on"])), it(), peek(ends)));
    let off = (text(&["off", "off of", "from", "out of"]), it(), peek(ends));
    let take = delimited(text(&["take", "knock", "cut", "lose", "shave", "take off", "trim"]), length, opt(off));
    let take = terminated(take, peek(ends));
    let by =
        (alt((value(Sizing::Longer, lengthen), value(Sizing::Shorter, shorten))), preceded(opt(text(&["by"])), length));
    alt((
        by_word.map(|(m, way)| (m, way)),
        take.map(|m| (m, Sizing::Shorter)),
        by.map(|(way, m)| (m, way)),
        add.map(|m| (m, Sizing::Longer)),
    ))
    .map(|(m, way)| Say::Grow(m, way))
    .parse(input)
}

fn bigger(input: In<'_>) -> Out<'_, ()> {
    alt((sense(Sense::Op(Op::Bigger)), text(&["long", "more"]))).parse(input)
}

fn smaller(input: In<'_>) -> Out<'_, ()> {
    alt((sense(Sense::Op(Op::Smaller)), text(&["less"]))).parse(input)
}

fn lengthen(input: In<'_>) -> Out<'_, ()> {
    let word = text(&["lengthen", "stretch", "extend", "grow"]);
    value((), (word, opt(text(&["it", "that"])), opt((det, run_word)))).parse(input)
}

fn shorten(input: In<'_>) -> Out<'_, ()> {
    let word = text(&["shorten", "shrink", "cut", "trim"]);
    value((), (word, opt(text(&["it", "that"])), opt((det, run_word)))).parse(input)
}

/// The line's end, or a sign or a light word.
fn ends(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(|i| i.is_sep() || i.is_light()) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "make it bigger", "a bit longer": by how much is not told.
pub fn how_much(input: In<'_>) -> Out<'_, Say> {
    let lead = many0_count(text(&["a", "bit", "a bit", "little", "much", "way", "it", "its", "it 's"]));
    let way = alt((sense(Sense::Op(Op::Bigger)), sense(Sense::Op(Op::Smaller)), text(&["taller", "higher", "lower"])));
    value(Say::Clause(Clause::HowMuch), (lead, way, peek(ends))).parse(input)
}

/// "the rail goes 6 past the stairs".
pub fn past(input: In<'_>) -> Out<'_, Say> {
    let subject = opt((det, opt(alt((run_word, part(Part::Rail)))), opt(sense(Sense::Verb(Verb::Goes)))));
    let beyond = (opt(text(&["on"])), text(&["past", "beyond", "on past"]));
    (preceded(subject, length), preceded(beyond, place)).map(|(m, e)| Say::Clause(Clause::Past(m, e))).parse(input)
}

/// "with a corner in it", "around two corners": a rail that turns, and where is not told.
pub fn bent(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        text(&["with", "w /", "has", "having", "around", "round", "and", "plus", "including", "got"]),
        opt(text(&["a", "an", "one", "the"])),
    );
    let many =
        (opt(count), opt(sense(Sense::Spot(Spot::BothEnds))), any(|s| matches!(s, Sense::Ends(_)).then_some(())));
    let one = (place, text(&["in it", "in", "somewhere", "in there", "in the middle", "along it", "along the way"]));
    let turned = (value((), lead), alt((value((), one), value((), (opt(count), turn)), value((), many))));
    let tail = many0_count(text(&["in it", "in", "it", "somewhere", "there", "along", "it", "on"]));
    value(Say::Clause(Clause::Bent), (turned, tail)).parse(input)
}

/// "bend", "turn", "jog": corners no side is told of.
fn turn(input: In<'_>) -> Out<'_, ()> {
    text(&["bend", "turn", "bends", "turns", "jog", "jogs", "dogleg", "kink", "a corner", "corner in it"]).parse(input)
}

/// "36 wide" behind a stop: of the gate or the stairs just said.
pub fn wide(input: In<'_>) -> Out<'_, Say> {
    let lead = many0_count(text(&["it", "its", "it 's", "thats", "is"]));
    delimited(lead, length, sense(Sense::Cue(Cue::Wide))).map(Say::Wide).parse(input)
}

fn unit(input: In<'_>) -> Out<'_, ()> {
    any(|s| matches!(s, Sense::Unit(_)).then_some(())).parse(input)
}

/// "two runs".
pub fn runs_alone(input: In<'_>) -> Out<'_, Say> {
    let several = value((), (det, opt(count), part(Part::Runs)));
    // "landing at the head of the stairs:" opens its sides.
    let at = opt((text(&["at", "by", "off", "of"]), place));
    let landing = value((), (det, part(Part::Landing), at, sep(":,-")));
    alt((several, landing)).map(|()| Say::Runs).parse(input)
}

fn named(input: In<'_>) -> Out<'_, Side> {
    // "back to 6 ft": the way to a figure, not the back's name.
    let back_to = (text(&["back"]), text(&["to"]), opt(text(&["the"])), length);
    let side = preceded(peek(not(back_to)), map_opt(side, |s| (s != Side::Other).then_some(s)));
    alt((side, by_what_it_faces)).parse(input)
}

/// "the creek side": a run that goes by what lies before it.
fn by_what_it_faces(input: In<'_>) -> Out<'_, Side> {
    let faced = text(&[
        "creek",
        "alley",
        "garden",
        "driveway",
        "garage",
        "lake",
        "river",
        "woods",
        "field",
        "kitchen",
        "road",
        "neighbor",
        "neighbour",
        "neighbors",
        "neighbours",
        "patio",
        "barn",
        "shed",
        "fence",
        "hill",
        "porch",
        "orchard",
        "meadow",
        "beach",
        "canal",
        "pond",
        "school",
        "church",
        "park",
        "parking",
        "bedroom",
    ]);
    let (rest, ()) = peek(faced).parse(input)?;
    let (rest, name) = one(|item: &Item| Name::from(&item.text).ok()).parse(rest)?;
    value(Side::Named(name), (opt(text(&["'s", "s"])), text(&["side"]))).parse(rest)
}

/// "front", "the left side is", "right side's".
pub fn name(input: In<'_>) -> Out<'_, Say> {
    delimited((opt(text(&["on"])), det), named, (opt(run_word), is)).map(Say::Name).parse(input)
}

/// "that's the left side", "name it left", "that's the front one": the run spoken of.
pub fn called(input: In<'_>) -> Out<'_, Say> {
    let it = || text(&["it", "that", "this", "this one", "that one", "this run", "that run"]);
    let name = value((), (text(&["name", "call", "label", "name it", "call it", "call that"]), opt(it())));
    let is = value((), (it(), text(&["'s", "is"])));
    let lead = alt((name, is, text(&["that 's", "thats", "this is", "that is"])));
    let one = opt(alt((value((), run_word), text(&["one", "side"]))));
    let the = opt(text(&["the", "my", "our"]));
    alt((delimited((lead, the), named, (one, peek(ends))), own_name)).map(Say::Called).parse(input)
}

/// "call it the creek side", "name this run upper deck": words of no other meaning here.
fn own_name(input: In<'_>) -> Out<'_, Side> {
    let it = || {
        let it = text(&["it", "that", "this", "this one", "that one", "this run", "that run", "the run"]);
        (opt(it), opt(run_word))
    };
    let calls = value((), (text(&["call", "call it", "call that", "call this", "calling", "lets call it"]), it()));
    let names = value((), (text(&["name", "label", "name it", "label it"]), it()));
    let word = || {
        one(|item: &Item| {
            let letters = item.text.chars().all(|c| c.is_ascii_alphabetic() || c == ' ');
            let measured = matches!(item.is, Is::Measure(_)) || item.senses().iter().any(|s| matches!(s, Sense::Not));
            (letters && !measured && !matches!(&*item.text, "a" | "it" | "good" | "done" | "off"))
                .then(|| item.text.clone())
        })
    };
    let what = || alt((run_word, text(&["side", "section", "one", "rail", "railing"])));
    let words = |least, most| many_m_n(least, most, preceded(not((what(), ends)), word()));
    // "call it quits" names nothing: behind "call" a name says what it is of, or has its article.
    let called = preceded(
        calls,
        alt((
            preceded(text(&["the", "my", "our"]), terminated(words(1, 3), opt(what()))),
            terminated(words(1, 3), what()),
        )),
    );
    let named = preceded((names, opt(text(&["the"]))), terminated(words(1, 3), opt(what())));
    let name = |parts: Vec<std::rc::Rc<str>>| Name::from(&clean_name(&parts.join(" "))?).ok().map(Side::Named);
    map_opt(terminated(alt((named, called)), peek(ends)), name).parse(input)
}

/// "down the north side", "across the front".
pub fn along_side(input: In<'_>) -> Out<'_, Say> {
    let way = || {
        text(&[
            "down",
            "across",
            "along",
            "up",
            "on",
            "for",
            "at",
            "is",
            "over",
            "of",
            "in",
            "back up",
            "back down",
            "back",
        ])
    };
    let other = preceded((many1_count(way()), det), side);
    let lead = (many0_count(way()), det);
    alt((preceded(lead, named), other)).map(Say::Name).parse(input)
}

/// "not 12".
pub fn not_length(input: In<'_>) -> Out<'_, Say> {
    let exact = nom::combinator::verify(length, |m: &Measure| !m.about && m.shade.is_none());
    preceded((opt(sep(",")), text(&["not", "instead of"])), exact).map(Say::NotLength).parse(input)
}

/// "did I say 10-10?".
pub fn did_i_say(input: In<'_>) -> Out<'_, Say> {
    let lead = (text(&["did"]), text(&["i"]), text(&["say"]));
    let lead2 = (text(&["i"]), text(&["said"]));
    terminated(preceded(alt((value((), lead), value((), lead2))), length), opt(sep("?,.")))
        .map(Say::NotLength)
        .parse(input)
}

/// "3 bays", "in four bays".
pub fn bays(input: In<'_>) -> Out<'_, Say> {
    let split = opt((sense(Sense::Op(Op::Split)), opt(text(&["it", "that", "this", "them"]))));
    let lead = (
        split,
        many0_count(text(&[
            "in",
            "into",
            "with",
            "as",
            "split into",
            "do",
            "do it",
            "it",
            "for",
            "use",
            "up",
            "go with",
            "go for",
            "go",
            "lets go",
            "lets go with",
            "lets",
            "lets do",
            "let 's go with",
            "let 's do",
            "gimme",
            "give me",
        ])),
    );
    let kind = opt(text(&["equal", "even", "same"]));
    // "make it for bays": what dictation writes for a number; the reading says it was taken so.
    let heard = alt((value(4, text(&["for", "fore"])), value(2, text(&["to", "too"])), value(8, text(&["ate"]))));
    let plain = terminated(preceded(lead, count), (kind, part(Part::Bay), opt(text(&["instead"]))));
    alt((plain, terminated(heard, part(Part::Bay)))).map(|n| Say::Bays(Some(n))).parse(input)
}

/// "go back to the fewest bays".
pub fn fewest_bays(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        opt(sense(Sense::Verb(Verb::Undo))),
        many0_count(text(&["go", "back", "to", "use", "with", "the", "as", "do"])),
    );
    let few = text(&["fewest", "least", "minimum", "as few"]);
    value(Say::Bays(None), (lead, few, opt(text(&["number of", "number", "of"])), part(Part::Bay))).parse(input)
}
