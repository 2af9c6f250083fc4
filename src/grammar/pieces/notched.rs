//! A notch in a post, said in any order: what it leaves, and old ones that went loose.
//!
//! ```text
//! "only took 3/8 out of the 4x4 to clear the flashing"     "38 mm notch in an 89 mm post"
//! "4x6 post notched inch and a half off the long side"     "what's left of a 4x4 notched 2"
//! ```
//! Each part stands at most once, and only the links between them are skipped: a number, a
//! denial or a place too many stays over and is asked about.

use super::Say;
use super::atoms::{In, Out, any, count, det, length, lumber, one, part, sense, sep, text};
use crate::grammar::Query;
use crate::grammar::ask::NotchAsk;
use crate::grammar::draft::Clause;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Ask, Cue, Part, Sense};
use crate::job::{PostSize, SlotId};
use crate::measure::{Length, Lumber, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// One part of what is said of a notch.
#[derive(Clone, Debug)]
enum Bit {
    Deep(Length),
    Half,
    DownTo(Length),
    Post(PostSize),
    Posts,
    Notch {
        past: bool,
    },
    Took,
    Asks,
    /// Off the long side, or the short one.
    Off {
        long: bool,
    },
    /// "at the rim", "to clear the flashing".
    Beside,
    /// "out of", "off": what is taken comes away from the post.
    Away,
    Link,
}

/// A length that is one thing only, a bare number counting inches.
fn plain(m: &Measure) -> Option<Length> {
    if m.shade.is_some() || m.about || m.guess.is_some() {
        return None;
    }
    match m.meaning {
        Meaning::Length(l, _) => Some(l),
        Meaning::Bare(n) => SlotId::NotchDepth.bare(n).first().copied(),
        _ => None,
    }
    .filter(|l| l.is_positive())
}

fn inches(input: In<'_>) -> Out<'_, Length> {
    map_opt(length, |m| plain(&m)).parse(input)
}

fn post_bit(input: In<'_>) -> Out<'_, Bit> {
    let wood = || many0_count(sense(Sense::Fill));
    let named = terminated(lumber, opt((wood(), part(Part::Post)))).map(|l| Bit::Post(PostSize::Lumber(l)));
    let wide = terminated(inches, (opt(sense(Sense::Cue(Cue::Wide))), part(Part::Post)));
    let stated =
        preceded((part(Part::Post), text(&["is", "are", "'s", "measures", "measure"]), opt(text(&["really"]))), inches);
    let width = alt((wide, terminated(stated, peek(not(part(Part::Notch)))))).map(|l| Bit::Post(PostSize::Width(l)));
    alt((named, width, value(Bit::Posts, part(Part::Post)))).parse(input)
}

fn notch_bit(input: In<'_>) -> Out<'_, Bit> {
    let past = text(&["notched"]);
    let took = text(&[
        "took",
        "shaved",
        "planed",
        "routed",
        "chiseled",
        "chiselled",
        "removed",
        "nipped",
        "taken",
        "cut",
        "trimmed",
        "hogged",
    ]);
    alt((
        value(Bit::Notch { past: true }, past),
        value(Bit::Notch { past: false }, alt((part(Part::Notch), text(&["notch it", "notching it"])))),
        value(Bit::Took, (opt(text(&["only", "just", "already"])), took)),
    ))
    .parse(input)
}

fn asks_bit(input: In<'_>) -> Out<'_, Bit> {
    let meat = || {
        many0_count(text(&[
            "meat", "wood", "post", "is", "'s", "does", "that", "will", "be", "do", "i", "have", "me", "of", "it",
            "would",
        ]))
    };
    let left = || text(&["left", "stays", "stay", "remains", "remain", "leave", "leaves", "left over"]);
    let how = alt((sense(Sense::Ask(Ask::What)), sense(Sense::Ask(Ask::HowMuch))));
    let strong = (text(&["how", "how strong"]), opt(text(&["strong", "weak"])), text(&["is", "'s", "would"]));
    let whole = text(&["what 's left", "whats left", "what is left"]);
    let asks = value(Bit::Asks, (how, meat(), left(), meat()));
    alt((value(Bit::Asks, (whole, meat())), asks, value(Bit::Asks, strong))).parse(input)
}

fn off_bit(input: In<'_>) -> Out<'_, Bit> {
    let side = text(&["side", "face", "edge", "way", "dimension"]);
    let long = value(true, text(&["long", "wide", "longer", "wider", "big", "5 1/2"]));
    let short = value(false, text(&["short", "narrow", "shorter", "narrower", "skinny", "thin"]));
    // "long" is a determiner to `det`: here it is the side.
    let lead = (text(&["off", "out of", "from", "on", "off of", "into", "in"]), opt(text(&["the", "a", "its", "one"])));
    delimited(lead, alt((long, short)), side).map(|long| Bit::Off { long }).parse(input)
}

/// What the notch is beside, or for: "over the rim", "to clear the flashing", "so it sits flat".
fn beside_bit(input: In<'_>) -> Out<'_, Bit> {
    let thing = || alt((part(Part::Rim), part(Part::Deck), part(Part::Framing), part(Part::Bracket), unknown));
    let at = (text(&["at", "over", "on", "onto", "for", "against"]), det, alt((part(Part::Rim), part(Part::Framing))));
    let clear = (
        text(&["to", "so it", "so they", "so that it"]),
        text(&[
            "clear",
            "clears",
            "miss",
            "misses",
            "fit",
            "fits",
            "get past",
            "pass",
            "dodge",
            "get around",
            "go over",
        ]),
        det,
        thing(),
    );
    let sits = (
        text(&["so"]),
        text(&["it", "they", "it 'll"]),
        text(&["sits", "sit", "lies", "seats"]),
        text(&["flat", "tight", "flush", "right"]),
    );
    alt((value(Bit::Beside, at), value(Bit::Beside, clear), value(Bit::Beside, sits))).parse(input)
}

fn unknown(input: In<'_>) -> Out<'_, ()> {
    one(|i: &Item| matches!(i.is, Is::Unknown).then_some(())).parse(input)
}

fn bit(input: In<'_>) -> Out<'_, Bit> {
    let half = (text(&["half", "halfway", "half way", "midway"]), opt(text(&["way"])));
    let down = preceded((text(&["down"]), text(&["to"])), inches);
    let away = text(&["out of", "out", "off", "off of", "from", "into", "in"]);
    let link = text(&[
        "of", "in", "a", "an", "the", "with", "on", "if", "if i", "if we", "i", "we", "it", "after", "from", "out",
        "off", "out of", "off of", "is", "'s", "my", "into", "through", "was", "were", "are", "that", "by", "down",
        "at",
    ]);
    alt((
        post_bit,
        asks_bit,
        off_bit,
        beside_bit,
        down.map(Bit::DownTo),
        terminated(inches, opt(sense(Sense::Cue(Cue::Deep)))).map(Bit::Deep),
        notch_bit,
        value(Bit::Half, half),
        value(Bit::Away, away),
        value(Bit::Link, alt((link, sep(",?"), sense(Sense::Fill)))),
    ))
    .parse(input)
}

/// All that was said.
#[derive(Default)]
struct Said {
    deep: Option<Length>,
    half: bool,
    down: Option<Length>,
    post: Option<PostSize>,
    posts: bool,
    notch: bool,
    past: bool,
    took: bool,
    away: bool,
    asks: bool,
    long: Option<bool>,
    /// The first thing said is the bare verb: a thing to do, not one asked about.
    opens: bool,
    any: bool,
}

impl Said {
    /// Takes one part in; false where it was said before.
    fn take(&mut self, bit: Bit) -> bool {
        let first = !self.any;
        self.any |= !matches!(bit, Bit::Link | Bit::Away);
        match bit {
            Bit::Deep(l) => self.deep.replace(l).is_none(),
            Bit::DownTo(l) => self.down.replace(l).is_none(),
            Bit::Half => !std::mem::replace(&mut self.half, true),
            Bit::Post(p) => self.post.replace(p).is_none(),
            Bit::Posts => !std::mem::replace(&mut self.posts, true),
            Bit::Notch { past } => {
                self.opens |= first && !past;
                self.past |= past;
                !std::mem::replace(&mut self.notch, true)
            }
            Bit::Took => !std::mem::replace(&mut self.took, true),
            Bit::Asks => !std::mem::replace(&mut self.asks, true),
            Bit::Off { long } => self.long.replace(long).is_none(),
            Bit::Away => {
                self.away = true;
                true
            }
            Bit::Beside | Bit::Link => true,
        }
    }

    /// How deep the notch is, from what was said of it.
    fn depth(&self) -> Option<Length> {
        let width = || self.post?.width();
        match (self.deep, self.down, self.half) {
            (Some(l), None, false) => Some(l),
            (None, Some(left), false) => width().map(|w| w - left).filter(|l| l.is_positive()),
            (None, None, true) => width().map(|w| w / 2),
            _ => None,
        }
    }

    /// The question, where enough was said for one.
    fn asked(&self) -> Option<NotchAsk> {
        let told_to = self.opens && !self.asks && !self.half && self.down.is_none();
        if told_to || !(self.notch || self.took && self.away) || !(self.post.is_some() || self.posts) {
            return None;
        }
        let deep = self.depth().filter(|l| SlotId::NotchDepth.takes(*l))?;
        let post = match (self.post, self.long) {
            // Into the narrow side of a post that is not square: that side's width counts.
            (Some(PostSize::Lumber(l)), Some(false)) => PostSize::Width(l.dressed()?.0).into(),
            (post, _) => post,
        };
        Some(NotchAsk::Left { deep, post })
    }
}

/// What a notch leaves, asked or reported.
pub fn left(input: In<'_>) -> Out<'_, Say> {
    let (mut said, mut rest, mut end) = (Said::default(), input, input);
    while let Ok((after, bit)) = bit(rest) {
        let link = matches!(bit, Bit::Link | Bit::Away);
        if !said.take(bit) {
            break;
        }
        rest = after;
        if !link {
            end = after;
        }
    }
    match said.asked() {
        Some(ask) => Ok((end, Say::Clause(Clause::Query(Query::Notch(ask))))),
        None => Err(nom::Err::Error(())),
    }
}

/// "my posts are notched 4x4s, 20 years old, a bit wobbly".
pub fn old(input: In<'_>) -> Out<'_, Say> {
    let (mut rest, mut end) = (input, input);
    let (mut notched, mut symptom, mut size): (bool, bool, Option<Lumber>) = (false, false, None);
    while let Ok((after, bit)) = old_bit(rest) {
        match bit {
            Old::Size(l) if size.replace(l).is_some() => break,
            Old::Notched => notched = true,
            Old::Symptom => symptom = true,
            _ => {}
        }
        rest = after;
        if !matches!(bit, Old::Link) {
            end = after;
        }
    }
    if notched && symptom {
        return Ok((end, Say::Clause(Clause::Query(Query::Notch(NotchAsk::Old(size))))));
    }
    Err(nom::Err::Error(()))
}

#[derive(Clone, Debug)]
enum Old {
    Size(Lumber),
    Notched,
    Symptom,
    Subject,
    Link,
}

fn old_bit(input: In<'_>) -> Out<'_, Old> {
    let years =
        (count, text(&["years", "year", "yrs", "yr", "years old", "year old"]), opt(sep("-")), opt(text(&["old"])));
    let loose = text(&[
        "wobbly",
        "wobble",
        "loose",
        "shaky",
        "soft",
        "rotten",
        "rotted",
        "rotting",
        "cracked",
        "cracking",
        "splitting",
        "wiggle",
        "wiggly",
        "wiggles",
        "sloppy",
        "springy",
        "flimsy",
        "wobbles",
        "moving",
        "failing",
    ]);
    let fails = (text(&["dont", "wont", "didnt", "doesnt"]), text(&["pass"]));
    let failed = text(&["failed", "got failed", "got written up", "written up", "red flagged"]);
    let rim = (text(&["over", "at", "on", "onto"]), det, part(Part::Rim));
    let says = (text(&["inspector", "they", "he", "building department"]), text(&["says", "say", "said", "tells me"]));
    let now = (sense(Sense::Ask(Ask::What)), many0_count(text(&["can", "do", "i", "now", "to", "we", "should"])));
    let link = text(&[
        "my", "the", "are", "is", "'s", "and", "a", "an", "bit", "little", "they", "they 're", "theyre", "of",
        "kind of", "all", "now", "pretty", "really", "getting", "some", "with", "ive", "got", "have", "old", "these",
        "our", "at", "in", "them", "deck",
    ]);
    let any_post = any(|s| matches!(s, Sense::Part(Part::Post | Part::Deck | Part::Guard)).then_some(()));
    alt((
        lumber.map(Old::Size),
        value(Old::Notched, text(&["notched"])),
        value(Old::Symptom, alt((value((), years), loose, value((), fails), failed))),
        value(Old::Subject, alt((value((), rim), value((), says), value((), now), any_post))),
        value(Old::Link, alt((link, sep(",.?")))),
    ))
    .parse(input)
}
