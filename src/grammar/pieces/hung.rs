//! How a gate's leaf is hung.
//!
//! ```text
//! hung = ["gate" | "it"] ("swings" | "opens") way | "hinged on the" side | "latch on the" side | "double gate" | "self closing"
//! ```

use super::Say;
use super::atoms::{In, Out, det, is, length, part, sense, sep, text};
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Cue, Part, Sense, Side};
use crate::grammar::stair_draft::HungSaid;
use crate::job::{End, Jamb, Swing};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// One thing said of the leaf.
pub fn hung(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(sep(",")), many0_count(text(&["and", "with", "has", "make", "want", "it", "i"])));
    let of_it = opt(alt((value((), (det, part(Part::Gate))), text(&["it", "it 's", "its", "which", "that"]))));
    let are = many0_count(text(&["is", "'s", "are", "should", "will", "to", "gonna", "to be"]));
    preceded((lead, of_it, are), alt((swing, gap, hinge, latch, latch_up, leaf, leaves, closing)))
        .map(|h| Say::Clause(Clause::Hung(h)))
        .parse(input)
}

/// Over what: also used by questions.
fn way(input: In<'_>) -> Out<'_, Swing> {
    let deck = || (det, alt((part(Part::Deck), part(Part::Landing), text(&["decking"]))));
    let over_deck = (
        many0_count(text(&["in", "inward", "inwards", "back", "up"])),
        text(&["over", "onto", "on", "toward", "towards", "into", "to", "in over"]),
        deck(),
    );
    let stairs = || (det, alt((part(Part::Stairs), sense(Sense::End(End::StairHead)))));
    let over_stairs = (
        many0_count(text(&["out", "outward", "outwards", "down"])),
        text(&["over", "onto", "on", "toward", "towards", "to", "down"]),
        stairs(),
    );
    let from_stairs = (text(&["away", "back"]), text(&["from"]), stairs());
    alt((
        value(Swing::OverDeck, over_deck),
        value(Swing::Out, over_stairs),
        value(Swing::OverDeck, from_stairs),
        value(Swing::Both, text(&["both ways", "either way", "in and out"])),
        value(Swing::Both, (text(&["both", "either"]), text(&["ways", "way"]))),
        value(Swing::OverDeck, text(&["in", "inward", "inwards", "inside"])),
        value(Swing::Out, text(&["out", "outward", "outwards", "outside"])),
    ))
    .parse(input)
}

fn swings(input: In<'_>) -> Out<'_, ()> {
    text(&["swings", "swing", "swinging", "opens", "open", "opening", "swung"]).parse(input)
}

fn swing(input: In<'_>) -> Out<'_, HungSaid> {
    preceded(swings, way).map(HungSaid::Swing).parse(input)
}

fn jamb(input: In<'_>) -> Out<'_, Jamb> {
    let away = (text(&["away"]), text(&["from"]), det, sense(Sense::End(End::House)));
    let sided = (
        opt(text(&["on", "at", "to", "from"])),
        det,
        alt((
            value(Jamb::Left, sense(Sense::Side(Side::Left))),
            value(Jamb::Right, sense(Sense::Side(Side::Right))),
            value(Jamb::House, sense(Sense::End(End::House))),
            value(Jamb::Away, (sense(Sense::End(End::Corner)), opt(sense(Sense::Side(Side::Side))))),
        )),
        opt(alt((sense(Sense::Side(Side::Side)), text(&["hand", "post", "jamb", "side"])))),
    );
    alt((value(Jamb::Away, away), sided.map(|(_, _, j, _)| j))).parse(input)
}

fn hinge(input: In<'_>) -> Out<'_, HungSaid> {
    let word = (text(&["hinged", "hinges", "hinge", "hung"]), many0_count(text(&["is", "are", "go", "goes"])));
    preceded((det, word), jamb).map(HungSaid::Hinge).parse(input)
}

fn latch(input: In<'_>) -> Out<'_, HungSaid> {
    let word = (text(&["latch", "latched", "latches", "catch"]), many0_count(text(&["is", "are", "go", "goes"])));
    preceded((det, word), jamb).map(HungSaid::Latch).parse(input)
}

/// "latch at 54", "latch is 54 inches up", "latch 54 high".
fn latch_up(input: In<'_>) -> Out<'_, HungSaid> {
    let lead = many0_count(text(&["is", "goes", "sits", "set", "at", "@", "up", "height", "mounted", "release"]));
    let up =
        || alt((sense(Sense::Cue(Cue::High)), sense(Sense::Cue(Cue::Above)), text(&["up", "off the deck", "high"])));
    let deck = (opt(text(&["the"])), alt((part(Part::Deck), text(&["decking", "deck boards"]))));
    (det, text(&["latch", "catch", "latch height"]), lead, length, opt(up()), opt(deck))
        .map(|(_, _, _, m, ..)| HungSaid::LatchHeight(m))
        .parse(input)
}

fn gap(input: In<'_>) -> Out<'_, HungSaid> {
    let lead = || opt(text(&["gap", "space", "clearance", "of"]));
    let hinge = || (text(&["at", "on", "for"]), det, text(&["hinge", "hinges", "hinge side"]));
    let latch = || (text(&["at", "on", "for"]), det, text(&["latch", "latch side"]));
    let hinges = terminated(length, (lead(), hinge()));
    let latches = terminated(length, (lead(), latch()));
    // "hinge gap 1/2", "latch side gap is 3/8".
    let named = || (text(&["gap", "clearance", "space"]), is, opt(text(&["of", "at"])));
    let side = || opt(text(&["side"]));
    let of_hinge = preceded((det, text(&["hinge", "hinges", "hinge side"]), side(), named()), length);
    let of_latch = preceded((det, text(&["latch", "latch side"]), side(), named()), length);
    let gap_at = || (det, text(&["gap", "clearance", "space"]));
    let at_hinge = preceded((gap_at(), hinge(), is), length);
    let at_latch = preceded((gap_at(), latch(), is), length);
    alt((
        at_hinge.map(HungSaid::HingeGap),
        at_latch.map(HungSaid::LatchGap),
        hinges.map(HungSaid::HingeGap),
        latches.map(HungSaid::LatchGap),
        of_hinge.map(HungSaid::HingeGap),
        of_latch.map(HungSaid::LatchGap),
    ))
    .parse(input)
}

/// "the leaf is 40", "leaf 40 wide".
fn leaf(input: In<'_>) -> Out<'_, HungSaid> {
    let word = (det, text(&["leaf", "gate leaf"]), is, opt(text(&["made", "cut", "built", "at", "to"])));
    delimited(word, length, opt(sense(Sense::Cue(Cue::Wide)))).map(HungSaid::Leaf).parse(input)
}

/// "there's a pool", "deck is round a pool", "no pool".
pub fn pool(input: In<'_>) -> Out<'_, Say> {
    let word = || text(&["pool", "swimming pool"]);
    let there = text(&["there 's", "theres", "there is", "have", "got", "we 've", "has", "there"]);
    let lead = (many0_count(text(&["and", "we", "i", "they", "the", "yard", "client", "owner"])), there);
    let lead = (lead, many0_count(text(&["is", "got", "'s"])), det);
    let at =
        many0_count(text(&["in", "the", "yard", "out", "back", "there", "here", "below", "beside", "it", "ground"]));
    let yes = value(true, (lead, word(), at));
    let no = value(false, (sense(Sense::Not), det, opt(text(&["any"])), word()));
    let it = many0_count(text(&["it 's", "its", "it", "is", "this", "'s"]));
    let deck_of = value(true, (it, det, word(), part(Part::Deck)));
    let by = text(&["around", "round", "by", "beside", "next to", "at", "over", "along"]);
    let deck_by =
        value(true, (det, part(Part::Deck), is, many0_count(text(&["goes", "runs", "right"])), by, det, word()));
    alt((yes, no, deck_by, deck_of)).map(|p| Say::Clause(Clause::Pool(p))).parse(input)
}

fn leaves(input: In<'_>) -> Out<'_, HungSaid> {
    let two = alt((
        value(
            (),
            (text(&["two", "2", "double", "pair", "pair of"]), text(&["leaf", "leaves", "leafs", "leaved", "panels"])),
        ),
        value(
            (),
            text(&["double gate", "double gates", "pair of gates", "two leaves", "double leaf", "double - leaf"]),
        ),
    ));
    let one = alt((
        value((), (text(&["one", "single", "1"]), text(&["leaf"]))),
        value((), text(&["single leaf", "one leaf"])),
    ));
    alt((value(HungSaid::Leaves(2), two), value(HungSaid::Leaves(1), one))).parse(input)
}

fn closing(input: In<'_>) -> Out<'_, HungSaid> {
    let word = alt((
        value((), (text(&["self"]), opt(sep("-")), text(&["closing", "close", "closer"]))),
        value((), text(&["self closing", "self - closing", "selfclosing"])),
    ));

    terminated(word, opt(text(&["hinges", "hinge"]))).map(|()| HungSaid::SelfClosing(true)).parse(input)
}
