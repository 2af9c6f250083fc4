//! Openers, notes, breaks and conversation.

use super::atoms::{In, Out, length, one, sense, sep, text};
use super::{PIECE, Say};
use super::{asks, choices, flights};
use crate::grammar::Talk;
use crate::grammar::draft::Clause;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Part, Sense, Verb};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded};

fn verb<'a>(v: Verb) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Verb(v))
}

/// "no, make it", "I meant", "what if".
pub fn opener(input: In<'_>) -> Out<'_, Say> {
    let change = value(Say::Change, (opt(repair), verb(Verb::Change), opt(text(&["it", "that", "the"]))));
    let suppose = value(
        Say::Suppose,
        (
            opt(text(&["and", "ok", "so"])),
            verb(Verb::Suppose),
            // "what if i go 7 foot" says not what goes so far: `choices::go` has it.
            many0_count(preceded(
                not(peek(alt((choices::go, flights::were)))),
                text(&["i", "we", "it", "they", "was", "were", "go", "it 's", "made", "use", "stretch", "went"]),
            )),
        ),
    );
    alt((change, suppose, repair.map(|hard| Say::Repair { hard }))).parse(input)
}

/// Words that take back what came before; true for a "no" among them.
fn repair(input: In<'_>) -> Out<'_, bool> {
    let (mut rest, mut hard, mut found) = (input, false, false);
    let mut parted = true;
    while let Ok((after, word)) = one_repair(rest) {
        // "no it's no 13" denies; "no, no, 13" does not.
        if word && !parted && rest.first().is_some_and(|i| matches!(&*i.text, "no" | "nope" | "nah")) {
            return Err(nom::Err::Error(()));
        }
        (hard, found) = (hard || word, true);
        let comma;
        (rest, comma) = opt(sep(",.")).parse(after)?;
        parted = comma.is_some();
    }
    if found { Ok((rest, hard)) } else { Err(nom::Err::Error(())) }
}

fn one_repair(input: In<'_>) -> Out<'_, bool> {
    let word = input.first().map(|i| i.text.clone());
    let (rest, ()) = verb(Verb::Repair).parse(input)?;
    let hard = word.is_some_and(|w| HARD.contains(&&*w));
    // "no gap limit 4" denies; "no, 4" and "no it's 4" take back.
    if hard && rest.first().is_some_and(|next| !takes_back(next)) {
        return Err(nom::Err::Error(()));
    }
    Ok((rest, hard))
}

/// Words that deny as well as take back.
const HARD: [&str; 6] = ["no", "nope", "nah", "no no", "scratch that", "strike that"];

/// True for what may follow a bare "no" that takes back.
fn takes_back(next: &Item) -> bool {
    let sense = |s: &Sense| {
        matches!(s, Sense::Verb(v) if !matches!(v, Verb::Drop | Verb::Move | Verb::Swap | Verb::Undo | Verb::Redo | Verb::Keep | Verb::Help | Verb::Hello | Verb::Thanks | Verb::Note | Verb::Use | Verb::Goes | Verb::Put))
            || matches!(s, Sense::End(_) | Sense::Nth(_))
    };
    // "no stairs are 42" denies the stairs.
    if next.may_be(Sense::Part(Part::Stairs)) {
        return false;
    }
    next.is_sep()
        || matches!(next.is, Is::Measure(_))
        || next.senses().iter().any(sense)
        || matches!(
            &*next.text,
            "it" | "its" | "it 's" | "that" | "thats" | "the" | "this" | "run" | "you" | "i" | "not"
        )
}

/// Undo, redo, keep, leave, hello, help.
pub fn talk(input: In<'_>) -> Out<'_, Say> {
    let said = alt((
        value(Talk::Undo, verb(Verb::Undo)),
        value(Talk::Redo, verb(Verb::Redo)),
        value(Talk::Keep, verb(Verb::Keep)),
        value(Talk::Leave, verb(Verb::Leave)),
        value(Talk::Hello, verb(Verb::Hello)),
        value(Talk::Thanks, verb(Verb::Thanks)),
    ));
    // "scratch that" with nothing after it takes the last line back.
    let scratch = text(&[
        "scratch that",
        "strike that",
        "cancel that",
        "forget that",
        "nix that",
        "kill that",
        "never mind that",
        "nevermind that",
    ]);
    let scratch = value(Talk::Undo, (scratch, not(peek(one(|_: &Item| Some(()))))));
    alt((scratch.map(|t| Say::Clause(Clause::Talk(t))), said.map(|t| Say::Clause(Clause::Talk(t))), asks::help))
        .parse(input)
}

/// "keep the 14".
pub fn keep_length(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        many0_count(text(&["ok", "no"])),
        text(&["keep", "leave"]),
        opt(text(&["it", "that"])),
        opt(text(&["the", "at", "at the"])),
    );
    preceded(lead, length).map(|m| Say::Clause(Clause::KeepLength(m))).parse(input)
}

/// "cut it thirty-six twelve".
pub fn cut(input: In<'_>) -> Out<'_, Say> {
    delimited(
        (verb(Verb::Cut), many0_count(text(&["it", "that", "them", "the", "at", "to"]))),
        length,
        opt(text(&["long"])),
    )
    .map(|m| Say::Clause(Clause::Cut(m)))
    .parse(input)
}

/// "we have", "there's", "got a": opens something told, and says nothing itself.
pub fn put(input: In<'_>) -> Out<'_, Say> {
    let add = text(&["add", "add in", "put", "hang", "stick", "set"]);
    let put = (sense(Sense::Verb(Verb::Put)), not(peek(repair)));
    value(Say::Break, (not(add), put, opt(text(&["a", "an", "the"])), opt(text(&["another", "one more"])))).parse(input)
}

/// A break between things.
pub fn stop(input: In<'_>) -> Out<'_, Say> {
    value(Say::Break, alt((sep(",;.?!:-()|~>"), text(&["and", "then", "and then", "with", "n", "&", "but"]))))
        .parse(input)
}

/// A note: the rest of the line, word for word. Only at the line's start.
pub fn note(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    let opens = items[..at].iter().all(|i| i.is_light() || i.is_sep());
    if !opens || !items[at].may_be(Sense::Verb(Verb::Note)) {
        return None;
    }
    let mut from = at + 1;
    while items.get(from).is_some_and(|i| i.is_sep() || &*i.text == "that") {
        from += 1;
    }
    let (first, last) = (items.get(from)?, items.last()?);
    Some((items.len(), Say::Clause(Clause::Note(first.words.start..last.words.end)), PIECE))
}
