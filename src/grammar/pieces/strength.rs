//! Questions about span and strength.
//!
//! A question is read whole: a run of bits in any order, each a cue, a measure, lumber or a part,
//! with small words between. A word that is none of these ends it, and is left over as anywhere.
//!
//! ```text
//! question = bit+         bit = cue | bare | lumber | length | "clear" | "on centre" | "high" | part | wood | asking | small word
//! bare     = ("nothing" | "no" | "without" | "skip" ...) [det] (line-post | post "in the middle")
//! ```

use super::atoms::{In, Out, any, count, det, length, lumber, measure, one, part, sense, sep, text};
use super::{PIECE, Say};
use crate::grammar::ask::{About, StrengthAsk};
use crate::grammar::draft::{Clause, StrengthDraft};
use crate::grammar::items::Item;
use crate::grammar::sense::{Cue, Part, Sense, Spot, Strong, Verb};
use crate::job::{Basis, Lie, Species};
use crate::measure::{Lumber, Meaning, Measure, Side};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map, map_opt, not, opt, value, verify};
use nom::multi::many1;
use nom::sequence::terminated;

/// One bit of a question.
#[derive(Clone, Debug, PartialEq)]
enum Bit {
    Cue(Strong),
    Bare,
    Lumber(Lumber),
    Length(Measure),
    High,
    Centre,
    Part(Part),
    Wood(Species),
    OtherWood,
    Safe,
    On,
    Between,
    Clear,
    Goes,
    Works,
    Opens,
    Supposes,
    Doing,
    Or,
    Asks,
    /// "ok", "fine": see [`weigh_fine`].
    Fine,
    Small,
}

/// "could I get away with 8 foot", "how bouncy is it at 8", "is a 4x4 enough at 42".
pub fn question(input: In<'_>) -> Out<'_, Say> {
    let (rest, mut bits) = terminated(many1(bit), opt(sep("?"))).parse(input)?;
    weigh_fine(&mut bits);
    // "the span for 2x8 joists" is another trade's.
    let other = |i: &Item| i.senses().iter().any(|s| matches!(s, Sense::Part(Part::Framing) | Sense::Foreign(_)));
    if rest.first().is_some_and(other) {
        return Err(nom::Err::Error(()));
    }
    if !well_formed(&bits) {
        return Err(nom::Err::Error(()));
    }
    let asks = asks(&bits);
    if asks && bits.contains(&Bit::Safe) {
        return Ok((rest, Say::Clause(Clause::NotYet(NO_SAFE))));
    }
    let speaks = bits.iter().any(|b| matches!(b, Bit::Cue(_)));
    if (asks || speaks) && bits.contains(&Bit::OtherWood) {
        return Ok((rest, Say::Clause(Clause::NotYet(NO_WOOD))));
    }
    let posts = bits.iter().filter(|b| matches!(b, Bit::Lumber(l) if l.thick_quarters >= 16)).count();
    if asks && posts == 2 && bits.contains(&Bit::Cue(Strong::Stiffer)) {
        return Ok((rest, Say::Clause(Clause::NotYet(TWO_POSTS))));
    }
    match gathered(&bits) {
        Some(draft) => Ok((rest, Say::Clause(Clause::Strength(draft)))),
        None => Err(nom::Err::Error(())),
    }
}

/// "and on edge", "what about cedar", "and at 8 ft": the last question about strength with one thing else.
pub fn more(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    let (rest, say) = goes_on(In::new(items)).ok().filter(|_| at == 0)?;
    Some((items.len() - rest.len(), say, PIECE))
}

fn goes_on(input: In<'_>) -> Out<'_, Say> {
    let mut lead = alt((
        text(&[
            "in",
            "and",
            "or",
            "but",
            "what about",
            "how about",
            "and what about",
            "with",
            "and with",
            "or with",
            "ok and",
        ]),
        value((), (opt(text(&["and", "ok", "so"])), sense(Sense::Verb(Verb::Suppose)))),
        value((), (text(&["and", "or", "ok"]), text(&["what about", "how about", "with"]))),
    ));
    let (rest, ()) = lead.parse(input)?;
    let (rest, bits) = terminated(many1(bit), opt(sep("?"))).parse(rest)?;
    let said = |b: &Bit| {
        matches!(
            b,
            Bit::Small
                | Bit::Clear
                | Bit::On
                | Bit::Lumber(_)
                | Bit::Length(_)
                | Bit::High
                | Bit::Centre
                | Bit::Wood(_)
                | Bit::Part(Part::Post | Part::Rail | Part::TopRail)
                | Bit::Cue(Strong::Flat | Strong::Edge)
        )
    };
    let told = bits.iter().all(said).then(|| gather(&bits)).flatten();
    let Some(told) = told.filter(|_| rest.is_empty()) else { return Err(nom::Err::Error(())) };
    let (mut span, mut height) = (None, None);
    for (m, high) in told.lengths {
        if (if high { &mut height } else { &mut span }).replace(m).is_some() {
            return Err(nom::Err::Error(()));
        }
    }
    let ask = StrengthAsk {
        post: told.posts.first().copied(),
        rail: told.rails.first().copied(),
        lie: told.lie,
        species: told.species,
        ..StrengthAsk::of(About::Bay)
    };
    let says = ask != StrengthAsk::of(About::Bay) || span.is_some() || height.is_some();
    if !says {
        return Err(nom::Err::Error(()));
    }
    Ok((
        rest,
        Say::Clause(Clause::StrengthMore(StrengthDraft { ask, span, height, on_centre: bits.contains(&Bit::Centre) })),
    ))
}

const NO_SAFE: &str = "I call nothing safe: that is for the building department or an engineer. I can put what a part is \
                       asked beside what it is allowed: \"is a 4x4 enough at 42\", \"how bouncy is it at 6 ft\".";
const TWO_POSTS: &str = "I compare rails, not two posts: ask for each by itself, \"is a 6x6 enough at 42\".";
pub(super) const NO_WOOD: &str = "I have no design values for that. I have southern pine, douglas fir-larch, hem-fir, spruce-pine-fir, \
                       western cedar and redwood; for anything else ask its maker or an engineer.";

fn bit(input: In<'_>) -> Out<'_, Bit> {
    // "is 34 high enough": of a height, and of no strength.
    not((sense(Sense::Cue(Cue::High)), text(&["enough"]))).parse(input)?;
    let cue = any(|s| if let Sense::Strong(cue) = s { Some(Bit::Cue(cue)) } else { None });
    let wood = any(|s| if let Sense::Wood(species) = s { Some(Bit::Wood(species)) } else { None });
    let parts = any(|s| match s {
        Sense::Part(
            p @ (Part::Post
            | Part::LinePost
            | Part::Rail
            | Part::TopRail
            | Part::Guard
            | Part::Bay
            | Part::Opening
            | Part::Rim
            | Part::Notch),
        ) => Some(Bit::Part(p)),
        _ => None,
    });
    let first = alt((
        value(Bit::Cue(Strong::Load), (verify(count, |n| *n == 200), text(&["lb", "lbs", "pounds", "pound"]))),
        // "could I do 8 ft bays": its "do" opens no question of its own.
        value(Bit::Doing, (sense(Sense::Verb(Verb::Suppose)), text(&["do", "have", "use"]))),
        value(Bit::Small, text(&["one", "a", "an"])),
        value(Bit::Between, text(&["between posts", "between the posts"])),
        value(Bit::Between, (text(&["between"]), det, part(Part::Post))),
        value(Bit::Works, text(&["pull", "pulls", "work", "works", "hard", "tension"])),
        value(Bit::On, text(&["on", "onto"])),
        value(Bit::Safe, sense(Sense::Strong(Strong::Safe))),
        value(Bit::OtherWood, sense(Sense::Strong(Strong::OtherWood))),
        map(no_lumber, Bit::Lumber),
    ));
    let told = alt((
        value(Bit::Bare, bare),
        map(lumber, Bit::Lumber),
        map(length, Bit::Length),
        cue,
        wood,
        parts,
        value(Bit::High, sense(Sense::Cue(Cue::High))),
        value(Bit::Centre, sense(Sense::Basis(Basis::Centre))),
        value(Bit::Clear, sense(Sense::Basis(Basis::Clear))),
        value(Bit::Small, text(&["if i", "if we"])),
        value(
            Bit::Fine,
            text(&[
                "ok",
                "okay",
                "fine",
                "good",
                "alright",
                "legal",
                "pass",
                "allowed",
                "too far",
                "too much",
                "too far apart",
            ]),
        ),
        value(Bit::Supposes, sense(Sense::Verb(Verb::Suppose))),
        value(Bit::Or, text(&["or"])),
        value(Bit::Asks, asking),
        value(Bit::Opens, text(&OPENING)),
        value(Bit::Goes, text(&["go", "run", "have"])),
        value(Bit::Small, small),
    ));
    alt((first, told)).parse(input)
}

/// "is a 2x4 rail ok at 6 ft": "ok" asks what is allowed where a question names a size and a length;
/// anywhere else it is a small word.
fn weigh_fine(bits: &mut [Bit]) {
    let opens = bits.iter().find(|b| !matches!(b, Bit::Small | Bit::Fine)) == Some(&Bit::Opens);
    let sized = bits.iter().any(|b| matches!(b, Bit::Lumber(_)));
    let long = bits.iter().any(|b| matches!(b, Bit::Length(_)));
    let post = bits.iter().any(|b| matches!(b, Bit::Lumber(l) if l.thick_quarters >= 16));
    let apart = bits.iter().any(says_apart);
    let asked = Bit::Cue(if post { Strong::Hold } else { Strong::Allow });
    for bit in bits.iter_mut().filter(|b| **b == Bit::Fine) {
        // "is 6'4 between posts ok": as much as "can I go 6'4 between posts".
        *bit = match () {
            () if opens && sized && long => asked.clone(),
            () if opens && apart && long => Bit::Goes,
            () => Bit::Small,
        };
    }
}

/// "between posts", "on centre", "clear".
fn says_apart(bit: &Bit) -> bool {
    matches!(bit, Bit::Between | Bit::Centre | Bit::Clear)
}

/// True where it opens as a question or with what is asked about, and no asking word trails.
fn well_formed(bits: &[Bit]) -> bool {
    let mut said = bits.iter().filter(|b| !matches!(b, Bit::Small));
    let opens = |b: &Bit| match b {
        Bit::Part(p) => matches!(p, Part::Rail | Part::TopRail | Part::Guard | Part::Post),
        _ => matches!(b, Bit::Asks | Bit::Opens | Bit::Supposes | Bit::Doing | Bit::Cue(_) | Bit::Lumber(_)),
    };
    // "how bouncy is it": behind an asking word its verb may end the line.
    let asked = said.clone().next() == Some(&Bit::Asks);
    let ends = |b: &Bit| *b != Bit::Asks && (asked || *b != Bit::Opens);
    // A what-if opens the line; a second one, or one further on, is of something else.
    let supposes = bits.iter().filter(|b| !matches!(b, Bit::Small)).take(2).collect::<Vec<_>>();
    if matches!(supposes[..], [Bit::Supposes, Bit::Asks | Bit::Opens]) {
        return false;
    }
    said.next().is_some_and(opens)
        && !said.clone().any(|b| matches!(b, Bit::Supposes | Bit::Doing))
        && said.next_back().is_none_or(ends)
}

/// True for a line that asks: by a word that always does, or one that does where it opens.
fn asks(bits: &[Bit]) -> bool {
    let opening = bits.iter().find(|b| **b != Bit::Small);
    bits.contains(&Bit::Asks) || matches!(opening, Some(Bit::Opens | Bit::Supposes | Bit::Doing))
}

/// "2x9": said as lumber is, and none.
fn no_lumber(input: In<'_>) -> Out<'_, Lumber> {
    let whole = |s: &Side| match s {
        Side::Bare(n) if n.value.is_integer() && !n.fraction => u16::try_from(n.value.to_integer()).ok(),
        _ => None,
    };
    map_opt(measure, move |m| match &m.meaning {
        Meaning::By(a, b) => {
            whole(a).zip(whole(b)).filter(|(a, b)| *a <= 12 && *b <= 24).map(|(a, b)| Lumber::by(a, b))
        }
        _ => None,
    })
    .parse(input)
}

/// "nothing in the middle", "without a middle post", "skip the line posts".
fn bare(input: In<'_>) -> Out<'_, ()> {
    let middle = || {
        let between = text(&["between", "between them"]);
        let at = (opt(text(&["in", "at"])), det, sense(Sense::Spot(Spot::Middle)));
        alt((value((), part(Part::LinePost)), value((), between), value((), at)))
    };
    let post =
        || (det, opt(text(&["any"])), alt((value((), part(Part::LinePost)), value((), (part(Part::Post), middle())))));
    let none = value((), (text(&["nothing", "none"]), middle()));
    let lead = alt((
        text(&[
            "no",
            "without",
            "without a",
            "without any",
            "skipping",
            "leaving out",
            "omitting",
            "omit",
            "doing without",
        ]),
        sense(Sense::Verb(Verb::Drop)),
    ));
    alt((none, value((), (lead, post(), opt(text(&["out"])))))).parse(input)
}

/// What opens a question or a what-if.
fn asking(input: In<'_>) -> Out<'_, ()> {
    let opens = |i: &Item| {
        let asks = |s: &Sense| matches!(s, Sense::Ask(_));
        (i.senses().iter().any(asks) || ASKING.contains(&&*i.text)).then_some(())
    };
    one(opens).parse(input)
}

const ASKING: [&str; 4] = ["how hard", "how", "whats", "what 's"];

/// Words that ask where they open the line, and link elsewhere.
const OPENING: [&str; 9] = ["would", "will", "can", "could", "does", "do", "is", "are", "should"];

/// Words that carry nothing in such a question.
fn small(input: In<'_>) -> Out<'_, ()> {
    let light = |i: &Item| (i.is_light() && !i.torn && !i.may_be(Sense::Not) && &*i.text != "between").then_some(());
    let listed = |i: &Item| SMALL.contains(&&*i.text).then_some(());
    alt((one(light), one(listed), sep(",.!-"))).parse(input)
}

const SMALL: [&str; 49] = [
    "go",
    "with",
    "go with",
    "going with",
    "of",
    "going",
    "run",
    "running",
    "use",
    "using",
    "have",
    "has",
    "take",
    "takes",
    "taking",
    "over",
    "across",
    "if",
    "much",
    "too",
    "still",
    "any",
    "someone",
    "somebody",
    "when",
    "instead",
    "bigger",
    "make",
    "makes",
    "make it",
    "put",
    "add",
    "lay",
    "laying",
    "wood",
    "total",
    "each",
    "got",
    "i",
    "we",
    "you",
    "it",
    "a",
    "the",
    "to",
    "at",
    "in",
    "one",
    "midspan",
];

/// What was gathered of a question, in order.
#[derive(Default)]
struct Gathered {
    posts: Vec<Lumber>,
    rails: Vec<Lumber>,
    cap: Option<Lumber>,
    rim: Option<Lumber>,
    lie: Option<Lie>,
    species: Option<Species>,
    lengths: Vec<(Measure, bool)>,
}

fn gathered(bits: &[Bit]) -> Option<StrengthDraft> {
    let has = |cue: Strong| bits.contains(&Bit::Cue(cue));
    let told = gather(bits)?;
    let about = about(bits, &told)?;
    let asks = asks(bits);
    let speaks = has(Strong::Sag) || has(Strong::Longest) || has(Strong::Stiffer) || has(Strong::Left);
    (asks || speaks).then_some(())?;
    let of_post = matches!(about, About::Post | About::Left | About::Bolt);
    // How a rail does over a bay has nothing to do with posts, but for their size.
    let posts = bits.iter().any(|b| matches!(b, Bit::Part(Part::Post | Part::LinePost)));
    (about != About::Bay || !posts || !told.posts.is_empty()).then_some(())?;
    let on_centre = bits.contains(&Bit::Centre);
    (!(of_post && on_centre)).then_some(())?;
    let (mut span, mut height) = (None, None);
    for (m, high) in told.lengths {
        // "what's left if I notch it 2 1/4": how deep, and that is the notch's to answer.
        if about == About::Left && !high {
            return None;
        }
        let slot = if high || of_post { &mut height } else { &mut span };
        if slot.replace(m).is_some() {
            return None;
        }
    }
    // "max bay is 5'6" tells a limit.
    (about != About::Longest || span.is_none()).then_some(())?;
    // "what if I skip the line posts" supposes them gone; with a span it asks whether a rail reaches.
    let bare_alone = bits.contains(&Bit::Bare) && span.is_none() && !has(Strong::Allow) && !has(Strong::Sag);
    (!bare_alone).then_some(())?;
    let big = has(Strong::BigPosts).then_some(Lumber::SIX_BY_SIX);
    let ask = StrengthAsk {
        about,
        span: None,
        height: None,
        post: told.posts.first().copied().or(big),
        rail: told.rails.first().copied(),
        lie: told.lie,
        cap: told.cap,
        rim: told.rim,
        species: told.species,
    };
    Some(StrengthDraft { ask, span, height, on_centre })
}

/// Sorts lumber into posts, rail, cap and rim; `None` where one has two of them.
fn gather(bits: &[Bit]) -> Option<Gathered> {
    let mut told = Gathered::default();
    let loud = loud(bits);
    let either = bits.contains(&Bit::Or);
    let both = either && [Strong::Stiffer, Strong::Flat, Strong::Edge].iter().all(|c| bits.contains(&Bit::Cue(*c)));
    let once = bits.iter().filter(|b| **b == Bit::Or).count() <= 1;
    (!either || both && once).then_some(())?;
    for (i, bit) in loud.iter().enumerate() {
        let next = loud.get(i + 1).copied();
        match bit {
            Bit::Lumber(l) if matches!(next, Some(Bit::Part(Part::Rim))) => put(&mut told.rim, *l)?,
            Bit::Lumber(l) if l.thick_quarters >= 16 => told.posts.push(*l),
            Bit::Lumber(l) if is_cap(&loud, i) => put(&mut told.cap, *l)?,
            Bit::Lumber(l) => told.rails.push(*l),
            // "2x6 flat on top of the 2x4": a cap's own "flat" says nothing of the rail.
            Bit::Cue(Strong::Flat) if i > 0 && matches!(loud[i - 1], Bit::Lumber(_)) && is_cap(&loud, i - 1) => {}
            // "stiffer on edge or flat": one beside the other.
            Bit::Cue(Strong::Edge) if told.lie == Some(Lie::Flat) && either => told.lie = None,
            Bit::Cue(Strong::Flat) if told.lie == Some(Lie::Edge) && either => told.lie = None,
            Bit::Cue(Strong::Edge) => put(&mut told.lie, Lie::Edge)?,
            Bit::Cue(Strong::Flat) => put(&mut told.lie, Lie::Flat)?,
            Bit::High | Bit::Centre => {
                let beside = |b: Option<&&Bit>| matches!(b, Some(Bit::Length(_)));
                (beside(next.as_ref()) || i > 0 && beside(loud.get(i - 1))).then_some(())?;
            }
            // "4x4 posts": a post's size stands before it.
            Bit::Part(Part::Post) if !told.posts.is_empty() || later_post(&loud[i + 1..]) => {
                (i > 0 && matches!(loud[i - 1], Bit::Lumber(_))).then_some(())?;
            }
            Bit::Wood(s) => put(&mut told.species, *s)?,
            Bit::Length(m) => {
                let high = matches!(next, Some(Bit::High | Bit::Part(Part::Guard)))
                    || i > 0 && matches!(loud[i - 1], Bit::High);
                told.lengths.push((m.clone(), high));
            }
            _ => {}
        }
    }
    (told.posts.len() <= 1 && told.rails.len() <= 1).then_some(told)
}

fn later_post(ahead: &[&Bit]) -> bool {
    ahead.iter().any(|b| matches!(b, Bit::Lumber(l) if l.thick_quarters >= 16))
}

/// The bits that say something; "on" only between two pieces of lumber.
fn loud(bits: &[Bit]) -> Vec<&Bit> {
    let said: Vec<&Bit> = bits
        .iter()
        .filter(|b| {
            !matches!(
                b,
                Bit::Small
                    | Bit::Asks
                    | Bit::Opens
                    | Bit::Supposes
                    | Bit::Doing
                    | Bit::Or
                    | Bit::Goes
                    | Bit::Works
                    | Bit::Clear
            )
        })
        .collect();
    let lumber = |b: Option<&&Bit>| matches!(b, Some(Bit::Lumber(_)));
    let joins = |i: usize| {
        let before = said[..i].iter().rev().find(|b| !matches!(b, Bit::Cue(Strong::Flat | Strong::Cap)));
        lumber(before) && lumber(said.get(i + 1))
    };
    let keep = |(i, b): &(usize, &&Bit)| !matches!(b, Bit::On) || joins(*i);
    said.iter().enumerate().filter(keep).map(|(_, b)| *b).collect()
}

/// True for lumber called the cap, or said to lie on top of another piece.
fn is_cap(loud: &[&Bit], at: usize) -> bool {
    let mut after = loud[at + 1..].iter().filter(|b| !matches!(b, Bit::Cue(Strong::Flat)));
    let next = after.next();
    let named = matches!(next, Some(Bit::Cue(Strong::Cap)));
    let lumber = |b: &&&Bit| matches!(b, Bit::Lumber(_));
    // "2x6 flat on top of the 2x4": what is laid comes first; "2x4 with a 2x6 on top": last.
    let on_top = matches!(next, Some(Bit::Cue(Strong::OnTop) | Bit::On));
    let first_of_two = on_top && after.any(|b| lumber(&b));
    let last_of_two = on_top && loud[..at].iter().any(|b| lumber(&b));
    named || first_of_two || last_of_two
}

fn put<T: PartialEq>(slot: &mut Option<T>, told: T) -> Option<()> {
    match slot {
        Some(stands) if *stands != told => None,
        _ => {
            *slot = Some(told);
            Some(())
        }
    }
}

/// What the question is about: the plainest cue wins.
fn about(bits: &[Bit], told: &Gathered) -> Option<About> {
    let has = |cue: Strong| bits.contains(&Bit::Cue(cue));
    let notch = bits.contains(&Bit::Part(Part::Notch));
    let post = !told.posts.is_empty() || bits.iter().any(|b| matches!(b, Bit::Part(Part::Post | Part::LinePost)));
    let of_rail = !told.rails.is_empty()
        || told.cap.is_some()
        || bits.iter().any(|b| matches!(b, Bit::Part(Part::Rail | Part::TopRail | Part::Bay | Part::Opening)));
    // "stretch it to 16" is a run made longer; of a bay, a rail or posts it asks what they bear.
    let stretch = has(Strong::Stretch) && (of_rail || post || bits.contains(&Bit::Between));
    let allow = has(Strong::Allow) || stretch;
    let rail_cue = has(Strong::Sag) || allow || bits.contains(&Bit::Bare);
    let asks = asks(bits);
    let push = has(Strong::Load) && asks && (post || of_rail);
    let hold = has(Strong::Hold) || push;
    // "can I go 6-6 between posts", "can I do 6'2 on centre".
    let goes = bits.contains(&Bit::Goes) || bits.iter().filter(|b| **b == Bit::Opens).count() > 1;
    let between = asks && goes && bits.iter().any(says_apart) && told.lengths.iter().any(|(_, high)| !high);
    // "could I do 8 ft bays"; "could I do 3 bays" counts them.
    let united = told.lengths.iter().any(|(m, high)| !high && matches!(m.meaning, Meaning::Length(..)));
    let opens = bits.iter().find(|b| **b != Bit::Small);
    let bays_so = matches!(opens, Some(Bit::Opens | Bit::Doing)) && bits.contains(&Bit::Part(Part::Bay)) && united;
    // "what if I go 8 ft with 6x6": how far apart with such posts.
    let goes_with = opens == Some(&Bit::Supposes) && united && !told.posts.is_empty() && !of_rail;
    let between = between || bays_so || goes_with;
    let strength = hold || rail_cue || between;
    Some(match () {
        () if (has(Strong::Bolt) || told.rim.is_some()) && (strength || bits.contains(&Bit::Works)) => About::Bolt,
        // "how strong is what's left": only of a post is anything left.
        () if has(Strong::Left) && (post || notch || hold && !of_rail) || notch && post && strength => About::Left,
        () if has(Strong::Stiffer) => About::Stiffer,
        () if has(Strong::Longest) => About::Longest,
        () if hold && post && !of_rail && !rail_cue && !between => About::Post,
        () if allow || bits.contains(&Bit::Bare) || between => About::Reach,
        () if strength => About::Bay,
        () => return None,
    })
}
