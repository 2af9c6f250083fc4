//! Facts of the posts' feet: what they pass, how they end, how they are cut.

use super::Say;
use super::atoms::{In, Out, det, length, lumber, one, part, sense, sep, text};
use crate::grammar::draft::Clause;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Cue, Part, Sense, Spot, Verb};
use crate::job::{Anyway, Foot, Mount, Nosing, SlotId, Turned};
use crate::measure::Lumber;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn some<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    value((), many0_count(text(list)))
}

fn slot(id: SlotId, m: crate::measure::Measure) -> Say {
    Say::Clause(Clause::Slot(id, m))
}

fn foot(f: Foot) -> Say {
    Say::Clause(Clause::Foot(f))
}

const SO: &[&str] = &["is", "are", "'s", "its", "it 's", "a", "an", "all", "be", "=", "the", "using", "with"];

/// "5/4 decking", "the decking is 5/4", "1 1/2 decking".
pub fn decking(input: In<'_>) -> Out<'_, Say> {
    let boards = || {
        alt((
            text(&["decking", "deck boards", "deck board", "boards"]),
            value((), (part(Part::Deck), text(&["boards"]))),
        ))
    };
    let thick = || opt(text(&["thick", "thickness", "stuff", "boards", "board", "inch thick"]));
    let first = delimited((det, boards(), some(SO)), stock, thick());
    let last = terminated(preceded(det, stock), (thick(), boards()));
    alt((first, last)).parse(input)
}

/// "5/4", "five quarter": a name, an inch dressed.
pub(super) fn five_quarter(input: In<'_>) -> Out<'_, Lumber> {
    let figures = one(|i: &Item| (i.text.replace(' ', "") == "5/4").then_some(()));
    value(Lumber { thick_quarters: 5, wide: 6 }, alt((figures, text(&["five quarter", "five - quarter"])))).parse(input)
}

/// Board stock by its name or its thickness. "5/4" is a name: an inch dressed.
fn stock(input: In<'_>) -> Out<'_, Say> {
    let named = map_opt(alt((five_quarter, lumber)), |l| l.dressed().map(|(thick, _)| foot(Foot::Decking(thick))));
    alt((named, length.map(|m| slot(SlotId::Decking, m)))).parse(input)
}

fn rim_word(input: In<'_>) -> Out<'_, ()> {
    preceded(not(text(&["skirt", "fascia"])), part(Part::Rim)).parse(input)
}

/// "the rim is a 2x10", "2x10 rim", "rim 9 1/4 tall".
pub fn rim(input: In<'_>) -> Out<'_, Say> {
    // A rim stands on edge: a 4x4 beside the word is something else.
    let board = |l: &Lumber| l.wide >= 6 && l.thick_quarters < 16;
    let size = || verify(lumber, board).map(|l| Say::Clause(Clause::RimOf(l)));
    let tall = || alt((sense(Sense::Cue(Cue::High)), sense(Sense::Cue(Cue::Deep))));
    let first = preceded((det, rim_word, some(SO)), size());
    let last = terminated(preceded(det, size()), (rim_word, peek(not(lumber))));
    let measured = delimited((det, rim_word, some(SO)), length, tall()).map(|m| slot(SlotId::RimTall, m));
    alt((first, last, measured)).parse(input)
}

/// "a 1 inch cap laid on the posts", "2x6 cap flat on the posts", "cap is 1 on the posts".
pub fn cap(input: In<'_>) -> Out<'_, Say> {
    let word = || text(&["cap", "caps", "cap rail", "post cap", "post caps", "cap board"]);
    let how = || {
        some(&[
            "laid", "lays", "lies", "lying", "laying", "sits", "sitting", "goes", "going", "that", "is", "flat",
            "thick", "set", "across", "right", "which",
        ])
    };
    let on = || {
        (
            how(),
            many1_count(text(&["on", "over", "on top of", "atop", "top", "of"])),
            opt((det, text(&["top", "tops"]), text(&["of"]))),
            det,
            part(Part::Post),
        )
    };
    let size = || alt((lumber.map(|l| Say::Clause(Clause::CapOf(l))), length.map(|m| slot(SlotId::Cap, m))));
    let first = delimited((det, word(), some(SO)), size(), on());
    let last = terminated(preceded(det, size()), (word(), on()));
    alt((first, last)).parse(input)
}

/// "posts stick up 4 above the rail", "posts run 3 past the rail".
pub fn above(input: In<'_>) -> Out<'_, Say> {
    let rise = some(&[
        "stick", "sticks", "stand", "stands", "run", "runs", "go", "goes", "extend", "extends", "rise", "up", "are",
        "is", "come", "sticking", "standing", "will",
    ]);
    let rail = alt((part(Part::TopRail), part(Part::Rail), part(Part::Guard)));
    let over = (text(&["above", "past", "over", "proud of", "higher than", "beyond"]), det, rail);
    delimited((det, part(Part::Post), rise), length, over).map(|m| slot(SlotId::Above, m)).parse(input)
}

/// "top of rail at 37".
pub fn top_at(input: In<'_>) -> Out<'_, Say> {
    let top = text(&["top of rail", "top of the rail", "top of guard", "top of the guard"]);
    preceded((det, top, some(SO), some(&["at", "to", "comes", "sits"])), length)
        .map(|m| slot(SlotId::HeightTop, m))
        .parse(input)
}

/// "saw's a 7 1/4", "10 inch miter saw", "12 inch blade".
pub fn blade(input: In<'_>) -> Out<'_, Say> {
    let saw = || {
        text(&[
            "saw",
            "saws",
            "miter saw",
            "mitre saw",
            "chop saw",
            "circular saw",
            "circ saw",
            "table saw",
            "blade",
            "sidewinder",
        ])
    };
    let kind = || some(&["miter", "mitre", "circular", "chop", "table", "sliding"]);
    let first = preceded((opt(text(&["my", "the", "our"])), kind(), saw(), some(SO), some(SO)), length);
    let got = opt(text(&["got", "ive got", "i have", "have", "ive", "weve got", "using", "use", "with"]));
    let last = delimited((got, det), length, (kind(), saw()));
    alt((first, last)).map(|m| slot(SlotId::Blade, m)).parse(input)
}

/// "1/2 inch bolts".
pub fn bolt(input: In<'_>) -> Out<'_, Say> {
    let word = (
        some(&["carriage", "machine", "galvanized", "galv", "hex"]),
        text(&["bolts", "carriage bolts", "machine bolts", "hex bolts"]),
    );
    terminated(preceded(opt(sense(Sense::Verb(Verb::Use))), length), word).map(|m| slot(SlotId::Bolt, m)).parse(input)
}

/// "the nosing is cut back at the posts", "leave the nosing whole".
pub fn nosing(input: In<'_>) -> Out<'_, Say> {
    let lip = || (det, text(&["nosing", "overhang", "nose", "decking", "lip"]));
    let at = || {
        opt((
            some(&["back", "flush"]),
            text(&["at", "around", "round", "for", "by"]),
            some(&["each", "every", "all", "of"]),
            det,
            part(Part::Post),
        ))
    };
    let cut = || {
        alt((
            text(&[
                "cut back",
                "trimmed back",
                "trim back",
                "notched back",
                "cut",
                "trim",
                "notch",
                "notched",
                "trimmed",
                "cutting",
            ]),
            sense(Sense::Verb(Verb::Cut)),
        ))
    };
    let back = || {
        alt((
            value(
                (),
                (
                    text(&["back"]),
                    opt((
                        text(&["at", "around", "for", "by"]),
                        some(&["each", "every", "all", "the"]),
                        part(Part::Post),
                    )),
                ),
            ),
            value((), (text(&["at", "around", "round"]), some(&["each", "every", "all"]), det, part(Part::Post))),
        ))
    };
    let done = alt((
        value((), (some(&["im", "we 're", "ill", "lets"]), cut(), opt(text(&["back"])), lip(), opt(back()))),
        value((), (lip(), some(&["is", "gets", "'s", "are", "will", "be", "get"]), cut(), opt(back()))),
    ));
    let done = (peek_word(&["nosing", "overhang", "nose", "lip"]), done);
    let stays = text(&["whole", "full", "alone", "on", "as is", "intact", "uncut"]);
    let stay = || text(&["leave", "keep", "stays", "stay", "left", "is", "kept", "leaving", "runs"]);
    let left = alt((
        value((), (stay(), lip(), stays)),
        value(
            (),
            (lip(), some(&["is", "gets", "'s"]), stay(), text(&["whole", "full", "on", "intact", "uncut", "past"])),
        ),
    ));
    alt((
        value(foot(Foot::Nosing(Nosing::CutBack)), (done, at())),
        value(foot(Foot::Nosing(Nosing::Whole)), (left, at())),
    ))
    .parse(input)
}

/// True where one of these words is among the next few: the phrase is of that thing.
fn peek_word<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    move |input: In<'a>| {
        let near = input.iter().take(6).any(|i| list.contains(&&*i.text));
        if near { Ok((input, ())) } else { Err(nom::Err::Error(())) }
    }
}

/// "the angled posts split the turn", "angled posts square to the next side".
pub fn turned(input: In<'_>) -> Out<'_, Say> {
    let posts = (
        det,
        text(&["angled", "angle", "45"]),
        opt(text(&["corner"])),
        part(Part::Post),
        some(&["are", "is", "get", "go", "set"]),
    );
    let split = value(
        Turned::Split,
        (
            text(&["split", "splitting", "turned", "bisect"]),
            some(&["to"]),
            det,
            text(&["turn", "angle", "difference", "corner"]),
        ),
    );
    let first = value(
        Turned::First,
        (
            text(&["square"]),
            text(&["to", "with"]),
            det,
            text(&["first"]),
            opt(sense(Sense::Side(crate::grammar::sense::Side::Side))),
        ),
    );
    let next = value(
        Turned::Next,
        (
            text(&["square"]),
            text(&["to", "with"]),
            det,
            text(&["next", "second"]),
            opt(sense(Sense::Side(crate::grammar::sense::Side::Side))),
        ),
    );
    preceded(posts, alt((split, first, next))).map(|t| foot(Foot::Turned(t))).parse(input)
}

/// "notch it anyway, it's a sleeve", "they're only sleeves, notch them anyway".
pub fn anyway(input: In<'_>) -> Out<'_, Say> {
    let it = || opt(alt((text(&["it", "them", "em"]), value((), (det, part(Part::Post))))));
    let again = || text(&["anyway", "anyways", "regardless", "all the same", "either way"]);
    let they = || text(&["it 's", "its", "it is", "theyre", "they 're", "they are", "thats", "that 's", "cause its"]);
    let sleeve = || (they(), some(&["just", "only", "a", "an", "the"]), part(Part::Sleeve));
    let notch = || (part(Part::Notch), it());
    let first = (notch(), again(), opt(preceded(opt(sep(",.;-")), sleeve()))).map(|(_, _, s)| s.is_some());
    let last = value(true, (sleeve(), opt(sep(",.;-")), some(&["so", "and"]), notch(), opt(again())));
    let bare = value(true, (notch(), opt(sep(",.;-")), sleeve()));
    alt((first, last, bare))
        .map(|sleeve| foot(Foot::Anyway(if sleeve { Anyway::Sleeve } else { Anyway::Told })))
        .parse(input)
}

/// "notch the 4x4 1 1/2", "notching 4x4 posts 1 3/4", "notch depth 3 1/2 on the 4x4s", and
/// up top for the rail.
pub fn notched(input: In<'_>) -> Out<'_, Say> {
    let verb = || {
        (
            text(&["notch", "notching", "half lap", "dado", "rabbet", "notch depth", "notches"]),
            opt(sense(Sense::Cue(Cue::Deep))),
            some(SO),
            det,
        )
    };
    let wood = || terminated(lumber, opt(part(Part::Post)));
    let deep = || terminated(length, opt(sense(Sense::Cue(Cue::Deep))));
    let into = (text(&["on", "in", "into", "of", "out of", "for"]), det);
    let a = preceded(verb(), (wood(), deep())).map(|(l, m)| (m, Some(l)));
    let b = preceded(verb(), (deep(), preceded(into, wood()))).map(|(m, l)| (m, Some(l)));
    let c = preceded((verb(), opt(part(Part::Post))), deep()).map(|m| (m, None));
    let top = preceded((verb(), opt(part(Part::Post)), rail_place), deep()).map(|m| (m, None));
    let at_rail = || opt(value((), (opt(sep(",")), rail_place)));
    let base = || opt(value((), (opt(sep(",")), some(&["but", "and"]), base_whole)));
    let low = (alt((a, b)), at_rail(), base());
    let high = (alt((c, top)), at_rail(), base());
    let said = |((deep, post), at, base): ((crate::measure::Measure, Option<Lumber>), Option<()>, Option<()>)| {
        (deep, post, at.is_some() || base.is_some())
    };
    let rail = peek_word_far;
    let of_rail = (rail, high).map(move |(_, s)| said(s));
    let of_post = low.map(said);
    alt((of_post, of_rail))
        .map(|(deep, post, at_rail)| Say::Clause(Clause::Notched { deep, post, at_rail }))
        .parse(input)
}

/// True where the rail is spoken of further on: the notch is up top.
fn peek_word_far(input: In<'_>) -> Out<'_, ()> {
    let rail = |i: &Item| i.senses().iter().any(|s| matches!(s, Sense::Part(Part::Rail | Part::TopRail)));
    if input.iter().any(rail) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "up top for the 2x4 rail".
fn rail_place(input: In<'_>) -> Out<'_, ()> {
    let top = || {
        (
            opt(text(&["at", "up", "near"])),
            det,
            sense(Sense::Spot(Spot::Top)),
            opt((text(&["of"]), det, part(Part::Post))),
        )
    };
    let rail = || {
        (
            text(&["for", "to take", "to hold", "under", "at"]),
            det,
            opt(lumber),
            alt((part(Part::Rail), part(Part::TopRail))),
        )
    };
    alt((value((), (top(), opt(rail()))), value((), rail()))).parse(input)
}

/// "not at the bottom", "leave the foot whole".
fn base_whole(input: In<'_>) -> Out<'_, ()> {
    let low = || (det, alt((sense(Sense::Spot(Spot::Bottom)), text(&["foot", "base", "feet", "deck", "rim"]))));
    let not_low = (sense(Sense::Not), opt(text(&["at", "on", "in"])), low());
    let whole = (text(&["leave", "keep", "leaving"]), low(), text(&["whole", "alone", "full", "as is", "uncut"]));
    alt((value((), not_low), value((), whole))).parse(input)
}

/// "skip the notch", "leave the posts whole".
pub fn no_notch(input: In<'_>) -> Out<'_, Say> {
    let drop = (
        sense(Sense::Verb(Verb::Drop)),
        det,
        part(Part::Notch),
        peek(not(one(|i: &Item| matches!(i.is, Is::Measure(_)).then_some(())))),
    );
    let whole = (
        text(&["leave", "keep"]),
        alt((text(&["them", "em"]), value((), (det, part(Part::Post))))),
        text(&["whole", "full"]),
    );
    alt((value(Say::Clause(Clause::NoNotch), drop), value(Say::Clause(Clause::NoNotch), whole))).parse(input)
}

/// "bolt it flat to the rim": posts on its outside face.
pub fn flat_to_rim(input: In<'_>) -> Out<'_, Say> {
    let bolt = text(&["bolt", "bolted", "screw", "lag", "fix", "mount", "bolt it", "bolt them", "bolting"]);
    let flat = (
        text(&["flat", "flush", "straight", "tight"]),
        text(&["to", "on", "against", "onto"]),
        some(&["the", "face", "outside", "of"]),
        rim_word,
    );
    let them = opt(alt((text(&["it", "them", "em"]), value((), (det, part(Part::Post))))));
    value(Say::Clause(Clause::Mount(Mount::Outside)), (bolt, them, flat)).parse(input)
}
