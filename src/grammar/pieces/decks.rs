//! A deck's sizes and how it stands.
//!
//! ```text
//! deck   = [deck] [is] by ["off the house"] | [deck] length along | [deck] length out | "comes out" length
//! by     = by [","] ("long side" | "short side" | "the" length) "on the house"
//! alone  = *(free | by | landing | length ("long" | "wide") | "," ...)
//! whole  = "new deck" | "start over"
//! view   = ["left" "and" "right" "are"] ("from the yard" | "looking out" ...)
//! ```

use super::Say;
use super::atoms::{In, Out, any, count, det, is, length, measure, one, part, place, sense, sep, text};
use super::settings::line_end;
use crate::grammar::draft::{Clause, Lies};
use crate::grammar::items::Item;
use crate::grammar::sense::{Cue, Part, Sense, Side, Spot, Verb};
use crate::job::{DeckFact, End};
use crate::measure::{Meaning, Measure, Number, Q, Side as BySide};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn house(input: In<'_>) -> Out<'_, ()> {
    value((), verify(place, |e| *e == End::House)).parse(input)
}

/// "along the house", "on the house", "down the back of the house".
fn along(input: In<'_>) -> Out<'_, ()> {
    let back = (opt(sense(Sense::Side(Side::Back))), opt(text(&["of"])), det);
    let on = (text(&["on", "along", "against", "down", "across"]), det, back, house);
    alt((sense(Sense::Cue(Cue::Along)), value((), on))).parse(input)
}

/// "along", with nothing behind it that it could lie along.
fn along_alone(input: In<'_>) -> Out<'_, ()> {
    let stands = |i: &Item| i.is_sep() || matches!(&*i.text, "and" | "by");
    let (rest, ()) = text(&["along"]).parse(input)?;
    if rest.first().is_none_or(stands) { Ok((rest, ())) } else { Err(nom::Err::Error(())) }
}

/// "off it", "out from the house", "out": behind a length. "From the house" alone says where a
/// post stands as well.
fn out(input: In<'_>) -> Out<'_, ()> {
    let it = (opt(text(&["out"])), text(&["off", "from", "out from", "out of"]), text(&["it"]));
    let from = (text(&["out"]), text(&["off", "from", "of"]), det, house);
    let joined = (text(&["off", "out from", "out of"]), det, house);
    alt((sense(Sense::Cue(Cue::Out)), value((), it), value((), from), value((), joined))).parse(input)
}

/// "deck is 16 by 12", "deck 12 out", "16 along the house", "deck is 16 foot wide".
pub fn deck(input: In<'_>) -> Out<'_, Say> {
    let goes = || many0_count(alt((sense(Sense::Verb(Verb::Goes)), text(&["runs", "run", "with"]))));
    let word = || (det, part(Part::Deck), is, goes());
    let it = || (opt(sense(Sense::Verb(Verb::Change))), opt(text(&["it", "and it", "its", "it 's", "thats"])), is);
    let subject = || alt((value((), word()), value((), it())));
    let wide = || alt((along, value((), (sense(Sense::Cue(Cue::Wide)), opt(along)))));
    let deep = || alt((out, sense(Sense::Cue(Cue::Deep))));
    let long = || opt(alt((sense(Sense::Cue(Cue::Long)), sense(Sense::Cue(Cue::Wide)))));
    let two = |m: Measure| matches!(m.meaning, Meaning::By(..)).then_some((Some(m), None));
    let of_house = || {
        opt((text(&["off", "against", "on"]), det, opt((sense(Sense::Side(Side::Back)), text(&["of"]), det)), house))
    };
    let both = map_opt(delimited(word(), measure, of_house()), two);
    let both_first = map_opt(terminated(preceded(det, measure), (part(Part::Deck), of_house())), two);
    let is_along = delimited(subject(), length, (long(), alt((along, along_alone)))).map(|m| (Some(m), None));
    let is_wide = delimited(word(), length, wide()).map(|m| (Some(m), None));
    // "8' off the house to a free end" is a run.
    let is_out = delimited(subject(), length, (out, peek(stands), peek(not_to))).map(|m| (None, Some(m)));
    let is_deep = delimited(word(), length, deep()).map(|m| (None, Some(m)));
    let comes = preceded(
        (opt(text(&["it", "deck", "and", "the"])), opt(part(Part::Deck)), comes_out),
        terminated(length, peek(not_to)),
    );
    let comes = comes.map(|m| (None, Some(m)));
    let house_side = preceded((det, text(&["house side", "side on the house", "side along the house"]), is), length)
        .map(|m| (Some(m), None));
    let deep_first = delimited(det, length, (sense(Sense::Cue(Cue::Deep)), part(Part::Deck))).map(|m| (None, Some(m)));
    let wide_first = delimited(det, length, (sense(Sense::Cue(Cue::Wide)), part(Part::Deck))).map(|m| (Some(m), None));
    let named = alt((house_side, deep_first, wide_first));
    alt((named, both, both_first, is_along, is_wide, is_out, is_deep, comes))
        .map(|(a, o)| Say::Clause(Clause::Deck(a, o)))
        .parse(input)
}

/// Nothing but a break may follow.
fn stands(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(|i| i.is_sep() || i.is_light()) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "comes out", "out"; not "off the house", which a run goes as well.
fn comes_out(input: In<'_>) -> Out<'_, ()> {
    let out = preceded(peek(text(&["out", "comes out", "sticks out"])), sense(Sense::Cue(Cue::Out)));
    // "comes off 12'6": a place behind it would make it a run's start.
    let off =
        terminated(text(&["comes off", "comes out at", "coming out", "projects", "sticks off"]), peek(not(place)));
    alt((out, off)).parse(input)
}

/// No "to" follows: what stands before is a deck's side, not the start of a run.
fn not_to(input: In<'_>) -> Out<'_, ()> {
    let run_on = |i: &Item| matches!(&*i.text, "to" | "and" | "over" | "into") || i.may_be(Sense::Verb(Verb::Stops));
    if input.first().is_some_and(run_on) { Err(nom::Err::Error(())) } else { Ok((input, ())) }
}

/// "10x14" alone: a deck, as like as not; which side is along the house is asked.
pub fn deck_alone(input: In<'_>) -> Out<'_, Say> {
    let big = |s: &BySide| matches!(s, BySide::Bare(n) if n.value >= 8.into() && !n.fraction);
    let sides = verify(measure, move |m| matches!(&m.meaning, Meaning::By(a, b) if big(a) && big(b)));
    terminated(sides, peek(line_end)).map(|m| Say::Clause(Clause::Deck(Some(m), None))).parse(input)
}

/// "10 deep", "16 wide": of the deck last spoken of.
pub fn deck_more(input: In<'_>) -> Out<'_, Say> {
    let deep = (length, sense(Sense::Cue(Cue::Deep))).map(|(m, ())| (None, Some(m)));
    let wide = (length, sense(Sense::Cue(Cue::Wide))).map(|(m, ())| (Some(m), None));
    alt((deep, wide)).map(|(along, out)| Say::Clause(Clause::DeckMore(along, out))).parse(input)
}

/// "12x20 deck, long side on the house", "12 by 20 with the 20 along the house".
pub fn deck_by(input: In<'_>) -> Out<'_, Say> {
    let sides = || verify(by, |m| matches!(m.meaning, Meaning::By(..)));
    let sized = || delimited((det, opt(part(Part::Deck)), is, det), sides(), opt(part(Part::Deck)));
    let lie = || many0_count(text(&["lies", "lying", "is", "being", "runs", "running", "goes", "side", "way"]));
    let tail = || alt((along, value((), (opt(text(&["the"])), house, opt(text(&["side"]))))));
    let the = || opt(text(&["the", "a", "its"]));
    let which = || {
        let longer = value(Lies::Longer, (the(), text(&["long", "longer", "longest"]), lie()));
        let shorter = value(Lies::Shorter, (the(), text(&["short", "shorter", "shortest"]), lie()));
        let this = (det, length, lie()).map(|(_, m, _)| Lies::This(m));
        // "house on the long side": the other way about.
        let at_house = |long: &'static [&'static str], lies: Lies| {
            let side = opt(text(&["side", "edge", "one"]));
            value(lies, (opt(text(&["the"])), house, text(&["on", "along", "at"]), the(), text(long), side))
        };
        let turned = alt((
            at_house(&["long", "longer", "longest", "long side", "longer side"], Lies::Longer),
            at_house(&["short", "shorter", "shortest", "short side", "shorter side"], Lies::Shorter),
        ));
        let named = terminated(alt((longer, shorter, this)), tail());
        preceded(many0_count(text(&["with", "and", "has", "the"])), alt((named, turned)))
    };
    let comma = || opt(sep(",;-"));
    let first = (which(), preceded(comma(), sized())).map(|(lies, m)| (m, lies));
    let last = (terminated(sized(), comma()), which());
    alt((first, last)).map(|(m, lies)| Say::Clause(Clause::DeckBy(m, lies))).parse(input)
}

/// "u shape, 12 16 12", "front 16, sides 12": three sides of a deck, the house on the fourth.
pub fn three_sides(input: In<'_>) -> Out<'_, Say> {
    let then =
        || many0_count(alt((sep(",;:-"), text(&["and", "by", "then", "out", "across", "back", "is", "are", "'s"]))));
    let shape =
        (opt(text(&["it", "it 's", "its", "a"])), opt(text(&["a", "is"])), sense(Sense::Shape), opt(part(Part::Deck)));
    let leg = || preceded(then(), length);
    let walked = preceded(shape, (leg(), leg(), leg()));
    // Sides that differ are no rectangle: the walk asks about those.
    let walked = map_opt(walked, |(out, along, back)| (out.meaning == back.meaning).then_some((along, out)));
    let front = || (det, sense(Sense::Side(Side::Front)), opt(text(&["side", "rail", "edge", "run"])));
    let sides =
        || (opt(text(&["both", "the"])), opt(text(&["the"])), text(&["sides", "the sides", "both sides", "ends"]));
    let named = (preceded((front(), then()), length), preceded((then(), sides(), then()), length));
    let sized = (terminated(preceded(det, length), front()), terminated(preceded(then(), length), sides()));
    terminated(alt((walked, named, sized)), peek(line_end))
        .map(|(along, out)| Say::Clause(Clause::Deck(Some(along), Some(out))))
        .parse(input)
}

/// Two sizes in one measure: "4 by 5", and "4x4", which of a landing is no lumber.
pub(super) fn by(input: In<'_>) -> Out<'_, Measure> {
    let feet = |n: u16| BySide::Bare(Number { value: Q::from_integer(i128::from(n)), fraction: false, plural: false });
    map_opt(measure, |m| match m.meaning {
        Meaning::By(..) => Some(m),
        Meaning::Lumber(l) if l.thick_quarters % 4 == 0 => {
            Some(Measure { meaning: Meaning::By(feet(l.thick_quarters / 4), feet(l.wide)), ..m })
        }
        _ => None,
    })
    .parse(input)
}

/// What is told of a deck by itself, word by word.
#[derive(Clone)]
enum Told {
    Free,
    House,
    Landing,
    Deck,
    By(Measure),
    One(Measure),
    Idle,
}

/// "4x4 landing top of the steps, no house", "freestanding deck 12 by 16".
pub fn alone(input: In<'_>) -> Out<'_, Say> {
    let (mut rest, mut told) = (input, Vec::new());
    while let Ok((after, one)) = told_alone(rest) {
        // A break at the end belongs to what follows.
        if after.is_empty() || !matches!(one, Told::Idle) || told_alone(after).is_ok() {
            told.push(one);
            rest = after;
        } else {
            break;
        }
    }
    let has = |is: fn(&Told) -> bool| told.iter().any(is);
    let (free, at_house) = (has(|t| matches!(t, Told::Free)), has(|t| matches!(t, Told::House)));
    let (landing, deck) = (has(|t| matches!(t, Told::Landing)), has(|t| matches!(t, Told::Deck)));
    let mut sizes = told.iter().filter_map(|t| if let Told::By(m) | Told::One(m) = t { Some(m.clone()) } else { None });
    let whole = told.iter().any(|t| matches!(t, Told::By(_)));
    let (Some(along), out, None) = (sizes.next(), sizes.next(), sizes.next()) else { return Err(nom::Err::Error(())) };
    let said = landing || deck && free;
    if !said || landing && deck || free && at_house || whole == out.is_some() {
        return Err(nom::Err::Error(()));
    }
    let free = if free { Some(true) } else { at_house.then_some(false) };
    Ok((rest, Say::Clause(Clause::Alone { along, out, free })))
}

fn told_alone(input: In<'_>) -> Out<'_, Told> {
    let at = || (many0_count(text(&["at", "on", "by", "and", "with", "the"])), det);
    let one_side = (
        opt(text(&["on", "at", "along"])),
        alt((value((), (text(&["one"]), sense(Sense::Side(Side::Side)))), sense(Sense::Side(Side::Side)))),
    );
    let at_house = value(
        Told::House,
        alt((value((), (at(), house, one_side)), value((), (text(&["against", "off", "on"]), det, house)))),
    );
    // "stairs" alone tells of stairs that the sides would say nothing of.
    let top = peek(one(|i: &Item| i.text.contains("top of").then_some(())));
    let steps = value(Told::Idle, (at(), top, verify(place, |e| *e == End::StairHead)));
    let round =
        value(Told::Free, (opt(alt((part(Part::Guard), part(Part::Rail)))), opt(text(&["on"])), sense(Sense::Free)));
    let all_round = value(
        Told::Idle,
        (
            alt((part(Part::Guard), part(Part::Rail))),
            text(&["all round", "all around", "all the way round", "all the way around", "round it", "around it"]),
        ),
    );
    let away = value(Told::Free, (text(&["away from", "clear of"]), det, house));
    let that = value(
        Told::Idle,
        text(&[
            "that", "which", "is", "its", "it 's", "thats", "just", "little", "small", "sits", "stands", "the", "a",
            "and", "with", "this", "one", "on", "out", "'s", "standing", "sitting", "all",
        ]),
    );
    let sized = (
        length,
        opt(sep("-")),
        alt((sense(Sense::Cue(Cue::Long)), sense(Sense::Cue(Cue::Wide)), sense(Sense::Cue(Cue::Deep)))),
    );
    let sized = sized.map(|(m, ..)| Told::One(m));
    let landing = value(Told::Landing, (peek(not(part(Part::Strip))), part(Part::Landing)));
    let deck = value(Told::Deck, part(Part::Deck));
    alt((
        at_house,
        round,
        all_round,
        away,
        landing,
        steps,
        deck,
        by.map(Told::By),
        sized,
        value(Told::Idle, sep(",:-")),
        that,
    ))
    .parse(input)
}

/// "start a new deck", "start over".
pub fn whole(input: In<'_>) -> Out<'_, Say> {
    let lead =
        || many0_count(text(&["ok", "so", "now", "lets", "let 's", "right", "alright", "and", "its", "it 's", "a"]));
    let new = value(DeckFact::New, sense(Sense::Verb(Verb::NewDeck)));
    let over = value(DeckFact::StartOver, sense(Sense::Verb(Verb::StartOver)));
    preceded(lead(), alt((new, over))).map(|f| Say::Clause(Clause::Whole(f))).parse(input)
}

/// "no stairs": of the deck, where no run is told beside it.
pub fn no_stairs_at_all(input: In<'_>) -> Out<'_, Say> {
    let stairs = (sense(Sense::Not), det, opt(text(&["any"])), part(Part::Stairs));
    let at_all = text(&["at all", "on this one", "on this deck", "anywhere", "on it", "on the deck", "here"]);
    value(Say::Clause(Clause::NoStairs), (opt(text(&["theres", "there 's", "there are", "with"])), stairs, at_all))
        .parse(input)
}

/// "left and right are as seen from the yard", "looking out".
pub fn view(input: In<'_>) -> Out<'_, Say> {
    let lead = text(&[
        "left", "right", "and", "is", "are", "as", "my", "i", "im", "i 'm", "call", "calling", "mean", "say", "seen",
        "from", "when", "i say", "all", "the", "sides", "side", "go", "going", "lefts", "rights", "by", "that",
        "thats", "that 's", "was", "were", "told", "used", "with", "use", "i mean", "if", "you", "youre", "you 're",
        "/", "or",
    ]);
    let view = || any(|s| if let Sense::View(v) = s { Some(v) } else { None });
    let (rest, first) = preceded(
        many0_count(alt((lead, value((), sense(Sense::Side(Side::Left))), value((), sense(Sense::Side(Side::Right)))))),
        view(),
    )
    .parse(input)?;
    let more = (many0_count(text(&["and", "as", "you", "when", "house", "side"])), view());
    let (rest, second) = opt(more).parse(rest)?;
    if second.is_some_and(|(_, v)| v != first) {
        Err(nom::Err::Error(()))
    } else {
        Ok((rest, Say::Clause(Clause::View(first))))
    }
}

/// "walkway 4' wide 18' long".
pub fn strip(input: In<'_>) -> Out<'_, Say> {
    let strip = || (det, part(Part::Strip), opt(text(&["is", "'s"])));
    let wide = || terminated(length, (opt(sep("-")), sense(Sense::Cue(Cue::Wide))));
    let long = || terminated(length, (opt(sep("-")), sense(Sense::Cue(Cue::Long))));
    let and = || many0_count(alt((sep(","), text(&["and", "by", "with", "is", "its", "it 's"]))));
    let after = preceded(
        strip(),
        alt((
            (wide(), preceded(and(), long())).map(|(w, l)| (w, Some(l))),
            (long(), preceded(and(), wide())).map(|(l, w)| (w, Some(l))),
            by.map(|m| (m, None)),
        )),
    );
    let before =
        (preceded(det, terminated(length, opt(sense(Sense::Cue(Cue::Wide))))), preceded((strip(), and()), long()))
            .map(|(w, l)| (w, Some(l)));
    let by_first = terminated(preceded(det, by), part(Part::Strip)).map(|m| (m, None));
    alt((after, before, by_first)).map(|(wide, long)| Say::Clause(Clause::Strip { wide, long })).parse(input)
}

/// "needs rail on the yard side only", "railing both sides".
pub fn rail_on(input: In<'_>) -> Out<'_, Say> {
    let need = || {
        many0_count(alt((
            sense(Sense::Verb(Verb::Put)),
            text(&["needs", "with", "it", "gets", "only", "and", "wants", "has", "just", "only needs"]),
        )))
    };
    let guard =
        || (det, alt((part(Part::Guard), part(Part::Rail), part(Part::Handrail))), opt(text(&["is", "only", "just"])));
    let on = || (many0_count(text(&["on", "along", "only", "at", "just"])), opt(text(&["the", "a", "that"])));
    let only = || opt(text(&["only", "alone"]));
    let outer = value(None, (opt(text(&["outside", "outer", "open", "far"])), part(Part::Edge)));
    let plain = value(
        None,
        (text(&["one", "one side", "outside", "outer", "open", "far"]), opt(sense(Sense::Side(Side::Side)))),
    );
    let named = verify(super::atoms::side, |s| !matches!(s, Side::Other | Side::Side)).map(Some);
    let one_side = value(None, sense(Sense::Side(Side::Side)));
    let both = value(Say::Clause(Clause::RailOn(None)), (need(), guard(), on(), sense(Sense::Spot(Spot::BothEnds))));
    let one = delimited((need(), guard(), on()), alt((outer, named, plain, one_side)), only());
    let one = one.map(|s| Say::Clause(Clause::RailOn(Some(s.unwrap_or(Side::Side)))));
    let (rest, say) = alt((both, one)).parse(input)?;
    // "rail along the front is 18'" tells of that side; it takes "only" to leave out the others.
    let claimed = input.iter().take(input.len() - rest.len());
    let alone = claimed.into_iter().any(|i| {
        matches!(&*i.text, "only" | "just" | "alone" | "one" | "one side" | "only needs" | "both sides" | "each side")
    });
    if alone { Ok((rest, say)) } else { Err(nom::Err::Error(())) }
}

/// "rail on three sides", "railing on all the open sides": how many sides have a guard, not a
/// side of so many feet.
pub fn rail_round(input: In<'_>) -> Out<'_, Say> {
    let need = many0_count(alt((
        sense(Sense::Verb(Verb::Put)),
        text(&["needs", "with", "it", "gets", "and", "wants", "has"]),
    )));
    let guard = (det, alt((part(Part::Guard), part(Part::Rail), part(Part::Handrail), text(&["rail", "rails"]))));
    let on = (many0_count(text(&["on", "along", "around", "round"])), opt(text(&["all"])), det);
    let many = alt((count.map(Some), value(None, peek(text(&["open"]))), value(None, peek(text(&["sides"])))));
    let sides = (opt(text(&["open"])), text(&["sides"]), opt(text(&["of it", "of the deck"])));
    delimited((need, guard, on), many, sides).map(|n| Say::Clause(Clause::RailRound(n))).parse(input)
}
