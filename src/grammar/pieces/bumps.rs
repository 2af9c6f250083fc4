//! What breaks a straight side: a part that stands out, a corner cut off, stairs let in.
//!
//! ```text
//! bump   = [side] "bumps out" length *([","] (length "wide" | where))
//! clip   = [side] "corner" ["is"] "clipped" ["at" degrees] [","] length | "clips the corner at" degrees [","] length
//! recess = ["they're" | stairs "are"] "let into" [deck] length | length "into the deck"
//! ```

use super::Say;
use super::atoms::{In, Out, count, det, is, length, part, place, sense, sep, side, text};
use super::stair_sides::along;
use crate::grammar::draft::{BumpDraft, Clause, ClipDraft};
use crate::grammar::sense::{Cue, Part, Sense, Side, Verb};
use crate::job::End;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, verify};
use nom::multi::{many0, many0_count, many1_count};
use nom::sequence::{preceded, terminated};

#[derive(Clone)]
enum More {
    Wide(Measure),
    At(crate::grammar::draft::Along),
}

/// "front bumps out 2 ft in the middle, 8 ft wide".
pub fn bump(input: In<'_>) -> Out<'_, Say> {
    let named = terminated(verify(side, |s| !matches!(s, Side::Other | Side::Side)), opt(part(Part::Run)));
    let wide = || terminated(length, (opt(sep("-")), sense(Sense::Cue(Cue::Wide))));
    let (rest, side) = preceded((opt(text(&["and", "then"])), det), opt(named)).parse(input)?;
    let has = many0_count(alt((text(&["has", "with", "a", "got", "is", "gets"]), sense(Sense::Verb(Verb::Put)))));
    let (rest, ()) = preceded(has, sense(Sense::Verb(Verb::Bump))).parse(rest)?;
    let (rest, by) = preceded(many0_count(text(&["by", "about", "of"])), length).parse(rest)?;
    let more = alt((wide().map(More::Wide), along.map(More::At)));
    let (rest, more) =
        many0(preceded((opt(sep(",")), many0_count(text(&["and", "for", "its", "it 's", "is", "a"]))), more))
            .parse(rest)?;
    let wide = more.iter().find_map(|m| if let More::Wide(w) = m { Some(w.clone()) } else { None });
    let at = more.iter().find_map(|m| if let More::At(a) = m { Some(a.clone()) } else { None });
    // "bumps out 2 ft" alone is the next leg of a walk.
    if side.is_none() && wide.is_none() && at.is_none() {
        return Err(nom::Err::Error(()));
    }
    Ok((rest, Say::Clause(Clause::Bump(BumpDraft { side, by, wide, at }))))
}

fn degrees(input: In<'_>) -> Out<'_, u16> {
    let sign = opt(text(&["degrees", "degree", "deg", "degs"]));
    preceded(many1_count(text(&["at", "on", "a", "by"])), terminated(verify(count, |n| (1..=89).contains(n)), sign))
        .parse(input)
}

/// "the front left corner is clipped at 45, 4 ft", "clips the corner at 45, 4 ft".
pub fn clip(input: In<'_>) -> Out<'_, Say> {
    let clip = || sense(Sense::Verb(Verb::Clip));
    let corner = || verify(place, |e| *e == End::Corner);
    let front = || opt(text(&["front", "far"]));
    let hand = || verify(side, |s| matches!(s, Side::Left | Side::Right));
    let named = || (det, front(), opt(hand()), opt(corner())).map(|(_, _, s, _)| s);
    let comma = || many0_count(alt((sep(","), text(&["for", "of", "by", "is", "off"]))));
    let passive = (terminated(named(), (is, clip(), opt(text(&["off"])))), opt(degrees), preceded(comma(), length));
    let active =
        (preceded((opt(text(&["then", "and", "it"])), clip()), named()), opt(degrees), preceded(comma(), length));
    let (rest, (side, degrees, length)) = alt((passive, active)).parse(input)?;
    let claimed = input.len() - rest.len();
    let corner_said = input.iter().take(claimed).any(|i| i.may_be(Sense::End(End::Corner)));
    if !corner_said {
        return Err(nom::Err::Error(()));
    }
    let (rest, _) =
        opt((text(&["off"]), opt(text(&["each", "both"])), opt(text(&["way", "side", "sides"])))).parse(rest)?;
    Ok((rest, Say::Clause(Clause::Clip(ClipDraft { side, degrees, length }))))
}

/// "cut into the deck 3 foot", "let in 30 inches", "recessed 2 foot into the deck".
pub fn recess(input: In<'_>) -> Out<'_, Say> {
    let stairs = opt((det, part(Part::Stairs)));
    let are = || {
        many0_count(text(&[
            "they", "theyre", "they 're", "it", "its", "it 's", "are", "is", "'s", "and", "that", "which", "get",
            "goes", "go", "set", "back",
        ]))
    };
    let into =
        || (many1_count(text(&["in", "into", "back", "back into", "in to", "inside"])), opt((det, part(Part::Deck))));
    let let_in = || (sense(Sense::Verb(Verb::LetIn)), opt(into()), opt((det, part(Part::Deck))));
    let by = || many0_count(text(&["by", "about", "for"]));
    let deep = || opt(sense(Sense::Cue(Cue::Deep)));
    let verb = (let_in(), by(), length, deep(), opt(into())).map(|(_, _, m, ..)| m);
    let deep_in =
        (length, opt(sense(Sense::Cue(Cue::Deep))), text(&["into", "in to", "back into"]), det, part(Part::Deck))
            .map(|(m, ..)| m);
    let (rest, m) = preceded((stairs, are()), alt((verb, deep_in))).parse(input)?;
    Ok((rest, Say::Clause(Clause::Recess(m))))
}
