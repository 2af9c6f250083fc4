//! Settings: post sizes, limits, height, gaps, mount.

use super::Say;
use super::atoms::{In, Out, any, det, is, length, lumber, measure, part, run_word, sense, sep, text, tie};
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Cue, Part, Sense, Verb};
use crate::job::{Basis, End, HouseEnd, PostRole, SlotId};
use crate::measure::{Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn slot(id: SlotId) -> impl Fn(Measure) -> Say {
    move |m| Say::Clause(Clause::Slot(id, m))
}

/// Whose posts: "corner posts", "the corners", "in between", "posts".
fn role(input: In<'_>) -> Out<'_, PostRole> {
    let word = any(|s| match s {
        Sense::Part(Part::CornerPost) => Some(PostRole::Corner),
        Sense::Part(Part::LinePost) => Some(PostRole::Line),
        Sense::Part(Part::EndPost) => Some(PostRole::End),
        Sense::Part(Part::GatePost) => Some(PostRole::Gate),
        Sense::Part(Part::Rest) => Some(PostRole::All),
        _ => None,
    });
    let stair = value(PostRole::Gate, verify(super::atoms::place, |e| *e == End::StairHead));
    let all = value(PostRole::All, part(Part::Post));
    preceded(
        (opt(text(&["all"])), det, opt(text(&["all"])), det),
        terminated(alt((word, all, stair)), opt(part(Part::Post))),
    )
    .parse(input)
}

fn using(input: In<'_>) -> Out<'_, ()> {
    let lead =
        alt((sense(Sense::Verb(Verb::Use)), sense(Sense::Verb(Verb::Put)), text(&["with", "and", "and then", "then"])));
    value((), (many0_count(lead), opt(text(&["all"])), det, opt(text(&["all"])))).parse(input)
}

/// "posts are 4x4", "corner posts 6x6", "line posts: 4x4".
pub fn of_post(input: In<'_>) -> Out<'_, Say> {
    let word = (opt(sense(Sense::Verb(Verb::Change))), role);
    (delimited(using, word, (opt(text(&["all"])), tie, opt(sense(Sense::Verb(Verb::Use))), det)), lumber)
        .map(|((_, role), size)| Say::Clause(Clause::Post(role, size)))
        .parse(input)
}

/// "4x4 posts", "use 6x6 on the corners", "4x4 in between", "4 by 4s".
pub fn post_of(input: In<'_>) -> Out<'_, Say> {
    let on = || (opt(text(&["on", "at", "for", "in", "as"])), opt(text(&["every", "each"])));
    let whose = alt((preceded((part(Part::Post), on()), role), preceded(on(), role)));
    (preceded(using, lumber), whose).map(|(size, role)| Say::Clause(Clause::Post(role, size))).parse(input)
}

/// "4x4s" alone.
pub fn lumber_alone(input: In<'_>) -> Out<'_, Say> {
    preceded(using, lumber).map(|size| Say::Clause(Clause::Post(PostRole::All, size))).parse(input)
}

/// "they're 4 1/2 square outside", "2 inch square posts", "sleeves 4 1/2".
pub fn post_width(input: In<'_>) -> Out<'_, Say> {
    let post = || alt((part(Part::Post), part(Part::Sleeve)));
    let subject = (
        opt(text(&["figure the clear off", "figure", "off"])),
        using,
        det,
        post(),
        opt(sep(",")),
        opt(text(&["they 're", "theyre", "they", "are", "measure", "measuring"])),
        tie,
    );
    let square = || many0_count(alt((sense(Sense::Cue(Cue::Square)), text(&["across", "overall", "outside"]))));
    let stated = preceded(subject, terminated(length, square()));
    let they = preceded(
        (opt(text(&["theyre", "they 're", "they", "its", "it 's"])), opt(text(&["are", "measure"])), det),
        square_length,
    );
    let before =
        terminated(preceded(using, terminated(length, square())), (opt(text(&["steel", "metal", "aluminum"])), post()));
    alt((stated, before, they)).map(slot(SlotId::PostWidth)).parse(input)
}

fn square_length(input: In<'_>) -> Out<'_, Measure> {
    let square = (
        sense(Sense::Cue(Cue::Square)),
        opt(sense(Sense::Cue(Cue::Square))),
        opt((det, alt((part(Part::Post), part(Part::Sleeve))))),
    );
    // "outside" alone after a length is a basis as well; "square" is not.
    terminated(length, verify_square(square)).parse(input)
}

fn verify_square<'a, T>(
    p: impl Parser<In<'a>, Output = T, Error = ()>,
) -> impl Parser<In<'a>, Output = (), Error = ()> {
    preceded(peek(text(&["square", "square outside", "sq"])), value((), p))
}

fn centre(input: In<'_>) -> Out<'_, Basis> {
    any(|s| match s {
        Sense::Basis(b) => Some(b),
        _ => None,
    })
    .parse(input)
}

fn limit(basis: Option<Basis>) -> SlotId {
    if basis == Some(Basis::Clear) { SlotId::ClearMax } else { SlotId::CentreMax }
}

fn most(input: In<'_>) -> Out<'_, ()> {
    let lead = (det, opt(part(Part::Bay)), opt(part(Part::Post)), opt(text(&["is", "are", "at", "of", "to"])));
    delimited(lead, sense(Sense::Cue(Cue::Most)), tie).map(|_| ()).parse(input)
}

/// "6' o.c. max", "max 5 foot clear", "no more than 6 ft apart", "6 foot max".
pub fn most_apart(input: In<'_>) -> Out<'_, Say> {
    let stand = text(&["is", "are", "at", "set", "go", "should be", "to be", "be", "stay"]);
    let mut posts = opt((det, part(Part::Post), many0_count(stand))).map(|p| p.is_some());
    let apart = || many0_count(alt((sense(Sense::Cue(Cue::Apart)), text(&["between", "the", "posts"]))));
    let (rest, of_posts) = posts.parse(input)?;
    let trailing = (length, opt(centre), apart(), sense(Sense::Cue(Cue::Most)), opt(centre));
    let trailing = trailing.map(|(m, b, n, (), c)| (m, b.or(c), n > 0));
    let spacing = opt(sense(Sense::Cue(Cue::Apart))).map(|s| s.is_some());
    let leading = (spacing, preceded(most, opt(centre)), preceded(tie, length), apart(), opt(centre), apart());
    let leading = leading.map(|(s, b, m, n, c, k)| (m, b.or(c), s || n + k > 0));
    let (rest, (m, basis, of_spacing)) = alt((trailing, leading)).parse(rest)?;
    let said_of_what = of_posts || of_spacing || basis.is_some() || !matches!(m.meaning, Meaning::Bare(_));
    let clause = if said_of_what { Clause::Slot(limit(basis), m) } else { Clause::Most(m) };
    Ok((rest, Say::Clause(clause)))
}

/// "posts every 6'", "6 ft apart", "posts at 6' oc", "every six foot".
pub fn every(input: In<'_>) -> Out<'_, Say> {
    let post = || {
        (
            opt(text(&["and", "with"])),
            det,
            opt(part(Part::Post)),
            many0_count(text(&["is", "are", "at", "set", "go", "goes"])),
        )
    };
    let each = (preceded((post(), sense(Sense::Cue(Cue::Every))), length), opt(centre));
    let posts = (
        preceded((det, part(Part::Post), many0_count(text(&["is", "are", "at", "set", "go", "on"]))), length),
        centre.map(Some),
    );
    let apart = (
        preceded((det, opt(part(Part::Post)), many0_count(text(&["is", "are", "at", "set"]))), length),
        delimited(opt(centre), sense(Sense::Cue(Cue::Apart)), many0_count(text(&["them"]))).map(|()| None),
    );
    let spacing = (preceded((det, sense(Sense::Cue(Cue::Apart)), tie), length), opt(centre));
    alt((each, posts, apart, spacing)).map(|(m, b)| Say::Clause(Clause::Slot(limit(b), m))).parse(input)
}

/// "guard height 42", "42 high", "rail at 36 high", "make the height 36".
pub fn height(input: In<'_>) -> Out<'_, Say> {
    let thing = || {
        (
            det,
            opt(alt((run_word, part(Part::Rail), part(Part::TopRail), part(Part::Handrail)))),
            opt(text(&["to be", "at", "is", "'s"])),
        )
    };
    let top =
        || opt((text(&["to"]), det, alt((sense(Sense::Spot(crate::grammar::sense::Spot::Top)), part(Part::TopRail)))));
    let cue_first = delimited((thing(), sense(Sense::Cue(Cue::High)), tie), length, top());
    let cue_last = delimited((thing(), tie), length, (sense(Sense::Cue(Cue::High)), opt((det, run_word))));
    let to_top = terminated(
        length,
        (
            text(&["to"]),
            det,
            alt((sense(Sense::Spot(crate::grammar::sense::Spot::Top)), part(Part::TopRail))),
            opt((text(&["of"]), det, alt((part(Part::TopRail), part(Part::Rail), run_word)))),
        ),
    );
    let tall = |m: &Measure| !matches!(m.meaning, Meaning::Lumber(_));
    verify(terminated(alt((cue_first, cue_last, to_top)), opt(alt((run_word, part(Part::Rail))))), tall)
        .map(slot(SlotId::HeightTop))
        .parse(input)
}

/// "the rail is 36", "42 inch rails": a length or a height.
pub fn rail_is(input: In<'_>) -> Out<'_, Say> {
    let rail = || alt((part(Part::Rail), part(Part::Guard), part(Part::Handrail)));
    let is_first = preceded(
        (det, rail(), opt(text(&["is", "'s", "are", "at", "to be", "will be"]))),
        terminated(length, peek_end),
    );
    let last = terminated(preceded(det, length), (opt(sep("-")), rail(), peek_end));
    let rail_sized = |m: &Measure| match &m.meaning {
        Meaning::Bare(n) => n.value >= 30.into() && n.value <= 60.into(),
        Meaning::Length(l, crate::measure::Said::Inches) => {
            *l >= crate::measure::Length::inches(30) && *l <= crate::measure::Length::inches(60)
        }
        _ => false,
    };
    verify(alt((is_first, last)), rail_sized).map(|m| Say::Clause(Clause::RailIs(m))).parse(input)
}

/// Nothing but a break may follow: "the rail is 36 long" is no question.
fn peek_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(|i| i.is_sep() || i.is_light()) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "3 inch gap under", "bottom rail's 3 1/2 off the deck", "gap under 3".
pub fn gap_under(input: In<'_>) -> Out<'_, Say> {
    let under = || (sense(Sense::Cue(Cue::Under)), opt((det, alt((part(Part::BottomRail), part(Part::Rail))))));
    let rail = || opt((det, part(Part::BottomRail), is));
    let last = delimited((rail(), det), length, (opt(part(Part::Gap)), under()));
    let first = preceded((det, under(), tie), length);
    alt((last, first)).map(slot(SlotId::GapUnder)).parse(input)
}

/// "1 1/2 balusters", "pickets are 3/4 round", "2x2 balusters".
pub fn baluster(input: In<'_>) -> Out<'_, Say> {
    let shape = || opt((opt(sep("-")), text(&["round", "square", "inch", "wide", "thick"])));
    let wide = || opt(sense(Sense::Cue(Cue::Wide)));
    let before = delimited(using, measure, (shape(), part(Part::Baluster), wide()));
    let after = delimited((using, part(Part::Baluster), tie, det), measure, (shape(), wide()));
    map_opt(alt((before, after)), baluster_width).map(slot(SlotId::BalusterWidth)).parse(input)
}

fn baluster_width(m: Measure) -> Option<Measure> {
    use crate::measure::Said;
    match m.meaning {
        Meaning::Lumber(l) => l.dressed().map(|(_, w)| Measure { meaning: Meaning::Length(w, Said::Inches), ..m }),
        Meaning::By(..) => None,
        // "13 balusters" is a count; a width is a fraction or says its unit.
        Meaning::Bare(n) if n.value.is_integer() => None,
        _ => Some(m),
    }
}

/// "4 inch max gap", "gaps under 4", "gap limit 4".
pub fn gap_max(input: In<'_>) -> Out<'_, Say> {
    let cue = || sense(Sense::Cue(Cue::Most));
    let gap = || {
        delimited(
            (det, opt(part(Part::Baluster))),
            part(Part::Gap),
            opt((text(&["between"]), det, part(Part::Baluster))),
        )
    };
    let first = preceded(
        (opt(text(&["keep", "the"])), det, alt((value((), (cue(), gap())), value((), (gap(), opt(is), cue())))), tie),
        length,
    );
    let last = terminated(length, alt((value((), (cue(), gap())), value((), (gap(), cue())))));
    alt((first, last)).map(slot(SlotId::GapMax)).parse(input)
}

/// "posts on the outside face of the band".
pub fn mount(input: In<'_>) -> Out<'_, Say> {
    let word = any(|s| match s {
        Sense::Mount(m) => Some(m),
        _ => None,
    });
    delimited((using, opt(part(Part::Post)), fixed_so), word, opt((det, part(Part::Post))))
        .map(|m| Say::Clause(Clause::Mount(m)))
        .parse(input)
}

/// Words between "posts" and how they are fixed.
fn fixed_so(input: In<'_>) -> Out<'_, ()> {
    let words = text(&[
        "are", "go", "set", "on", "to", "mounted", "is", "the", "stand", "sit", "get", "come", "be", "hang", "will",
        "with", "held", "by", "fixed", "hung", "and",
    ]);
    value((), many0_count(words)).parse(input)
}

/// "through bolted".
pub fn fixing(input: In<'_>) -> Out<'_, Say> {
    let word = any(|s| match s {
        Sense::Fixing(f) => Some(f),
        _ => None,
    });
    delimited((using, opt(part(Part::Post)), fixed_so), word, opt((det, part(Part::Post))))
        .map(|f| Say::Clause(Clause::Fixing(f)))
        .parse(input)
}

/// "no notch", "notch 1 1/2 deep", "notch depth 1 1/2".
pub fn notch(input: In<'_>) -> Out<'_, Say> {
    let none = value(Say::Clause(Clause::NoNotch), (sense(Sense::Not), det, part(Part::Notch)));
    let deep = || opt(sense(Sense::Cue(Cue::Deep)));
    let posts = || opt((det, alt((part(Part::Post), text(&["them", "em", "it", "each", "each one"])))));
    let first = preceded((det, part(Part::Notch), posts(), deep(), tie), terminated(length, deep()));
    let last = terminated(preceded(det, length), (deep(), opt(sep("-")), part(Part::Notch)));
    alt((none, alt((first, last)).map(slot(SlotId::NotchDepth)))).parse(input)
}

/// "deck's 26 inches up", "38 off the ground".
pub fn grade(input: In<'_>) -> Out<'_, Say> {
    let deck = || opt((det, part(Part::Deck), is));
    let above = || alt((sense(Sense::Cue(Cue::Above)), value((), (text(&["up"]), opt(sense(Sense::Cue(Cue::Above)))))));
    delimited(deck(), length, above()).map(slot(SlotId::Grade)).parse(input)
}

/// "bracket at the house", "post at the house".
pub fn house_end(input: In<'_>) -> Out<'_, Say> {
    let at_house = || (opt(text(&["at", "on", "against", "to"])), verify(super::atoms::place, |e| *e == End::House));
    let bracket = value(HouseEnd::Bracket, (using, part(Part::Bracket), at_house()));
    let post = value(HouseEnd::Post, (using, part(Part::Post), text(&["at", "on", "against"]), at_house()));
    let end_is = preceded(
        (at_house(), is),
        alt((value(HouseEnd::Bracket, (det, part(Part::Bracket))), value(HouseEnd::Post, (det, part(Part::Post))))),
    );
    alt((bracket, post, end_is)).map(|h| Say::Clause(Clause::HouseEnd(h))).parse(input)
}

/// "deck is 16 by 12", "deck 12 out", "16 along the house", "deck is 16 foot wide".
pub fn deck(input: In<'_>) -> Out<'_, Say> {
    let word = || (det, part(Part::Deck), is, opt(sense(Sense::Verb(Verb::Goes))), opt(text(&["runs", "run"])));
    let along = || {
        alt((
            sense(Sense::Cue(Cue::Along)),
            value((), (sense(Sense::Cue(Cue::Wide)), opt(sense(Sense::Cue(Cue::Along))))),
        ))
    };
    let out = || alt((sense(Sense::Cue(Cue::Out)), sense(Sense::Cue(Cue::Deep))));
    let two = |m: Measure| matches!(m.meaning, Meaning::By(..)).then_some((Some(m), None));
    let both = map_opt(preceded(word(), measure), two);
    let both_first = map_opt(terminated(preceded(det, measure), part(Part::Deck)), two);
    let is_along = delimited(opt(word()), length, sense(Sense::Cue(Cue::Along))).map(|m| (Some(m), None));
    let is_wide = delimited(word(), length, along()).map(|m| (Some(m), None));
    let is_out = delimited(opt(word()), length, sense(Sense::Cue(Cue::Out))).map(|m| (None, Some(m)));
    let is_deep = delimited(word(), length, out()).map(|m| (None, Some(m)));
    let comes =
        preceded((opt(text(&["it", "deck", "and"])), sense(Sense::Cue(Cue::Out))), length).map(|m| (None, Some(m)));
    // "off the back of the house": where every deck here stands.
    let of_house = || {
        opt((
            text(&["off", "against", "on"]),
            det,
            opt((sense(Sense::Side(crate::grammar::sense::Side::Back)), text(&["of"]), det)),
            verify(super::atoms::place, |e| *e == End::House),
        ))
    };
    let both = terminated(both, of_house());
    let both_first = terminated(both_first, of_house());
    alt((both, both_first, is_along, is_wide, is_out, is_deep, comes))
        .map(|(a, o)| Say::Clause(Clause::Deck(a, o)))
        .parse(input)
}

/// "read to the 32nd", "round to 1/8".
pub fn tape(input: In<'_>) -> Out<'_, Say> {
    let idle =
        text(&["it", "me", "them", "everything", "to", "the", "tape", "nearest", "in", "figures", "marks", "a", "an"]);
    let lead = (text(&["round", "read", "measure", "tape", "show", "give"]), many0_count(idle));
    let named = any(|s| if let Sense::Parts(d) = s { Some(d) } else { None });
    let part = map_opt(length, |m| match m.meaning {
        Meaning::Bare(n) if *n.value.numer() == 1 => u8::try_from(*n.value.denom()).ok(),
        Meaning::Length(l, _) if *l.q().numer() == 1 => u8::try_from(*l.q().denom()).ok(),
        _ => None,
    });
    let fits = verify(alt((named, part)), |d| crate::measure::Tape::to(i128::from(*d)).is_some());
    preceded(lead, fits).map(|d| Say::Clause(Clause::Tape(d))).parse(input)
}

/// "66 posts": a 6x6 with its x lost, or a great many posts.
pub fn lost_x(input: In<'_>) -> Out<'_, Say> {
    let digits = map_opt(super::atoms::count, |n| {
        let (thick, wide) = (n / 10, n % 10);
        let lumber = crate::measure::Lumber::by(thick, wide);
        (n < 100 && (2..=8).contains(&thick) && thick <= wide && lumber.dressed().is_some()).then_some(lumber)
    });
    terminated(preceded(using, digits), part(Part::Post)).map(|l| Say::Clause(Clause::LostX(l))).parse(input)
}

/// "36 over a 3 inch gap", "rail at 42 with 2 1/2 under it": height to the top, or of a
/// panel standing on the gap.
pub fn height_over_gap(input: In<'_>) -> Out<'_, Say> {
    let thing = (
        det,
        opt(alt((run_word, part(Part::Rail), part(Part::Handrail), part(Part::TopRail)))),
        tie,
        opt(sense(Sense::Cue(Cue::High))),
        tie,
    );
    let over = value((), (text(&["over", "above", "on"]), det));
    let with = value((), (opt(sep(",")), text(&["with", "and", "w /"]), det));
    let gap = alt((
        preceded(over, terminated(length, (opt(text(&["inch"])), part(Part::Gap)))),
        preceded(
            with,
            terminated(
                length,
                (
                    opt(part(Part::Gap)),
                    alt((sense(Sense::Cue(Cue::Under)), text(&["under", "below", "underneath"]))),
                    opt(text(&["it", "that"])),
                ),
            ),
        ),
    ));
    (preceded(thing, length), opt(sense(Sense::Cue(Cue::High))), gap)
        .map(|(h, _, g)| Say::Clause(Clause::HeightOverGap(h, g)))
        .parse(input)
}
