//! Settings: post sizes, limits, height, gaps, mount.

use super::Say;
use super::atoms::{In, Out, any, det, is, length, lumber, measure, one, part, run_word, sense, sep, text, tie};
use super::phrase::{ends, said};
use crate::grammar::draft::Clause;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Cue, Part, Sense, Verb};
use crate::job::{Basis, End, HouseEnd, PostRole, SlotId};
use crate::measure::{Lumber, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
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
    // "stairs 6x6" says not of which posts; "stair head 6x6", "stair posts 6x6" do.
    let steps = || (det, part(Part::Stairs), peek(not(part(Part::Post))));
    // A landing is a place to stand: "a 4x4 landing" is its size in feet.
    let no_post = alt((value((), steps()), value((), (det, part(Part::Landing)))));
    let stair = preceded(peek(not(no_post)), verify(super::atoms::place, |e| *e == End::StairHead));
    let stair = value(PostRole::Stair, stair);
    let all = value(PostRole::All, part(Part::Post));
    let between = value(PostRole::Line, (text(&["between"]), opt(text(&["them"])), peek(peek_end)));
    preceded(
        (opt(text(&["all"])), det, opt(text(&["all"])), det),
        terminated(alt((word, all, stair, between)), opt(part(Part::Post))),
    )
    .parse(input)
}

/// "not 4x4": lumber said to be wrong, beside what it is instead.
fn not_lumber(input: In<'_>) -> Out<'_, Lumber> {
    preceded((opt(sep(",")), text(&["not", "instead of", "rather than", "and not"]), det), lumber).parse(input)
}

fn using(input: In<'_>) -> Out<'_, ()> {
    // "add 6x6 posts" asks for more of them; it sets no size.
    let put = preceded(peek(nom::combinator::not(text(&["add", "add in"]))), sense(Sense::Verb(Verb::Put)));
    let verb = opt(alt((sense(Sense::Verb(Verb::Use)), put)));
    let links = || many0_count(text(&["with", "and", "and then", "then"]));
    value((), (links(), verb, links(), opt(text(&["all"])), det, opt(text(&["all"])))).parse(input)
}

/// "posts are 4x4", "corner posts 6x6", "line posts: 4x4".
pub fn of_post(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(text(&["all"])), tie, opt(sense(Sense::Verb(Verb::Use))), det);
    // "posts 6x6 at the corners": whose they are may come last.
    let whose = opt(preceded(text(&["at", "on", "for", "in"]), role));
    let said = (delimited(using, role, lead), lumber, whose);
    let clause = map_opt(said, |(first, size, last)| match (first, last) {
        (role, None) | (PostRole::All, Some(role)) => Some(Clause::Post(role, size)),
        (_, Some(_)) => None,
    });
    nom::combinator::map(clause, Say::Clause).parse(input)
}

/// "4x4 posts", "use 6x6 on the corners", "4x4 in between", "4 by 4s".
pub fn post_of(input: In<'_>) -> Out<'_, Say> {
    let on = || {
        (
            opt(text(&["on", "at", "for", "in", "as"])),
            opt(terminated(text(&["every", "each"]), peek(nom::combinator::not(text(&["other"]))))),
        )
    };
    let wood = || many0_count(sense(Sense::Fill));
    let at_stairs = (text(&["at", "on", "by"]), opt(text(&["the"])), part(Part::Stairs));
    let at_stairs = value(PostRole::Stair, (wood(), opt(part(Part::Post)), at_stairs, peek(peek_end)));
    let whose = alt((preceded((wood(), part(Part::Post), on()), role), preceded((wood(), on()), role), at_stairs));
    (preceded(using, lumber), whose).map(|(size, role)| Say::Clause(Clause::Post(role, size))).parse(input)
}

/// "4x4s" alone, "6x6 not 4x4", "not 4x4, 6x6".
pub fn lumber_alone(input: In<'_>) -> Out<'_, Say> {
    let but = (opt(sep(",")), opt(text(&["but", "its", "it 's"])), det);
    let first = (terminated(not_lumber, but), lumber).map(|(not, size)| (size, Some(not)));
    let last = preceded(using, (lumber, opt(not_lumber)));
    // "2x8 joists", "2x2 balusters between the rails": no size of a post.
    let other = alt((part(Part::Joist), part(Part::Rim), part(Part::Skirt), part(Part::Decking), part(Part::Baluster)));
    terminated(alt((first, last)), peek(not(other)))
        .map(|(size, not)| Say::Clause(Clause::Lumber { size, not }))
        .parse(input)
}

/// "they're 4 1/2 square outside", "2 inch square posts", "sleeves 4 1/2".
pub fn post_width(input: In<'_>) -> Out<'_, Say> {
    let post = || alt((part(Part::Post), part(Part::Sleeve)));
    let subject = (
        opt((
            text(&["figure", "work out", "take"]),
            det,
            opt(sense(Sense::Basis(Basis::Clear))),
            text(&["off", "from", "by"]),
        )),
        using,
        det,
        post(),
        opt(sep(",")),
        opt(text(&["they 're", "theyre", "they", "are", "measure", "measuring"])),
        tie,
    );
    let square = || many0_count(alt((sense(Sense::Cue(Cue::Square)), text(&["across", "overall", "outside"]))));
    // "posts 5" may count them: a width has a fraction, a unit or "square" by it.
    let counts = |m: &Measure| matches!(m.meaning, Meaning::Bare(n) if n.value.is_integer() && !n.fraction);
    let told = alt((
        terminated(length, many1_count(alt((sense(Sense::Cue(Cue::Square)), text(&["across", "overall", "outside"]))))),
        verify(length, move |m| !counts(m) && !too_wide(m)),
    ));
    let stated = preceded(subject, terminated(told, peek(nom::combinator::not(range_or_spacing))));
    let lumber_measures = (
        using,
        // "2x2s are 3.25" is no post's width.
        verify(lumber, |l| l.thick_quarters >= 12),
        opt((part(Part::Post), is)),
        text(&["measure", "measuring", "that measure", "come in at", "are"]),
    );
    let field = preceded(lumber_measures, terminated(length, square()));
    let they = preceded(
        (opt(text(&["theyre", "they 're", "they", "its", "it 's"])), opt(text(&["are", "measure"])), det),
        square_length,
    );
    let metal = || text(&["steel", "metal", "aluminum"]);
    // "5 posts" counts them as well.
    let wide = alt((
        terminated(length, many1_count(alt((sense(Sense::Cue(Cue::Square)), text(&["across", "overall", "outside"]))))),
        verify(length, move |m| !counts(m)),
        terminated(length, peek(metal())),
    ));
    let before = terminated(preceded(using, wide), (opt(metal()), post()));
    alt((stated, field, before, they)).map(slot(SlotId::PostWidth)).parse(input)
}

/// True for what no post is wide: "posts at 4-6'" spaces them.
fn too_wide(m: &Measure) -> bool {
    matches!(m.meaning, Meaning::Length(l, _) if !SlotId::PostWidth.takes(l)) || matches!(m.meaning, Meaning::Doubt(..))
}

/// "to 6 feet apart", "apart": what stands before is no width.
fn range_or_spacing(input: In<'_>) -> Out<'_, ()> {
    alt((
        sense(Sense::Cue(Cue::Apart)),
        value((), (text(&["to", "or", "-"]), length)),
        value((), sense(Sense::Basis(Basis::Centre))),
    ))
    .parse(input)
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
    delimited(
        lead,
        sense(Sense::Cue(Cue::Most)),
        (opt((det, alt((part(Part::Bay), sense(Sense::Cue(Cue::Apart)))))), is, opt(text(&["of", "to"]))),
    )
    .map(|_| ())
    .parse(input)
}

/// "posts 5 to 6 feet apart", "every 5 or 6 feet": either, so asked.
pub fn either(input: In<'_>) -> Out<'_, Say> {
    let posts =
        || (det, opt(part(Part::Post)), many0_count(text(&["is", "are", "at", "set", "go", "between", "about"])));
    let two = || (length, preceded((opt(sep("-")), text(&["to", "or", "-", "and"])), length));
    let apart = alt((sense(Sense::Cue(Cue::Apart)), value((), centre)));
    let spread = delimited(posts(), two(), apart);
    let each = preceded((posts(), sense(Sense::Cue(Cue::Every))), two());
    alt((spread, each)).map(|(a, b)| Say::Clause(Clause::Either(SlotId::CentreMax, a, b))).parse(input)
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
    // "just under 9 foot" shades a length; of posts it limits them.
    let weak = input.iter().take(input.len() - rest.len()).any(|i| matches!(&*i.text, "under" | "less than" | "up to"));
    if weak && !of_posts && !of_spacing {
        return Err(nom::Err::Error(()));
    }
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
    let most = || many0_count(sense(Sense::Cue(Cue::Most)));
    let each = terminated((preceded((post(), sense(Sense::Cue(Cue::Every))), length), opt(centre)), most());
    let space = opt(text(&["space", "set", "put", "keep", "spread", "place", "spaced", "run"]));
    let posts = (
        preceded((space, det, part(Part::Post), many0_count(text(&["is", "are", "at", "set", "go", "on"]))), length),
        centre.map(Some),
    );
    let apart = (
        preceded((det, opt(part(Part::Post)), many0_count(text(&["is", "are", "at", "set", "were", "was"]))), length),
        delimited(opt(centre), sense(Sense::Cue(Cue::Apart)), (many0_count(text(&["them"])), on_posts)).map(|()| None),
    );
    let spacing = (preceded((det, sense(Sense::Cue(Cue::Apart)), tie), length), opt(centre));
    let spacing = spacing.map(|(m, b)| match (&m.meaning, b) {
        // "spacing 4": of the posts or of the balusters.
        (Meaning::Bare(_), None) => Say::Clause(Clause::Most(m)),
        _ => Say::Clause(Clause::Slot(limit(b), m)),
    });
    let at = preceded((det, text(&["posts", "psts"]), many0_count(text(&["are", "set", "go"])), text(&["at"])), length);
    let at = (verify(at, too_wide), peek(line_end)).map(|(m, ())| (m, None));
    let of_posts = alt((each, posts, apart, at)).map(|(m, b)| Say::Clause(Clause::Slot(limit(b), m)));
    alt((of_posts, spacing)).parse(input)
}

/// "guard height 42", "42 high", "rail at 36 high", "make the height 36".
pub fn height(input: In<'_>) -> Out<'_, Say> {
    let thing = || {
        (
            det,
            opt(alt((run_word, part(Part::Rail), part(Part::TopRail), part(Part::Handrail)))),
            opt(text(&["to be", "at"])),
            is,
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
        terminated(length, peek(closes)),
    );
    let last = terminated(preceded(det, length), (opt(sep("-")), rail(), peek(closes)));
    let rail_sized = |m: &Measure| match &m.meaning {
        Meaning::Bare(n) => n.value >= 30.into() && n.value <= 60.into(),
        Meaning::Length(l, crate::measure::Said::Inches) => {
            *l >= crate::measure::Length::inches(30) && *l <= crate::measure::Length::inches(60)
        }
        _ => false,
    };
    verify(alt((is_first, last)), rail_sized).map(|m| Say::Clause(Clause::RailIs(m))).parse(input)
}

/// The end, a sign, filler, or a gap told next: what stands before is a figure by itself.
fn closes(input: In<'_>) -> Out<'_, ()> {
    let fill = |i: &Item| i.may_be(Sense::Fill) && !i.may_be(Sense::Link);
    let gap = |i: In<'_>| gap_under(i).is_ok();
    if input.first().is_none_or(|i| i.is_sep() || fill(i)) || gap(input) {
        Ok((input, ()))
    } else {
        Err(nom::Err::Error(()))
    }
}

/// Nothing but a break may follow: "the rail is 36 long" is no question.
fn peek_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(|i| i.is_sep() || i.is_light()) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "3 inch gap under", "bottom rail's 3 1/2 off the deck", "gap under 3".
pub fn gap_under(input: In<'_>) -> Out<'_, Say> {
    let hold = || text(&["leave", "leaving", "hold", "keep", "set", "put", "with", "raise", "run"]);
    let rail = (det, alt((part(Part::BottomRail), part(Part::Rail))));
    let up = || opt(text(&["up", "it up"]));
    let off = (text(&["off", "above", "over", "up from", "up off", "off of", "clear of"]), det);
    let off = (up(), off, alt((part(Part::Deck), part(Part::Decking))));
    let held = delimited((hold(), rail, up()), length, off);
    let left = preceded(hold(), under);
    // "leave 2 under": under what, needs no saying.
    let below = (opt(part(Part::Gap)), text(&["under", "underneath", "below", "at the bottom"]), peek(ends));
    let below = delimited((opt(hold()), det), length, below);
    alt((held, left, below, under)).map(slot(SlotId::GapUnder)).parse(input)
}

/// The gap under the bottom rail.
pub(super) fn under(input: In<'_>) -> Out<'_, Measure> {
    let under = || (sense(Sense::Cue(Cue::Under)), opt((det, alt((part(Part::BottomRail), part(Part::Rail))))));
    let rail = || opt((det, part(Part::BottomRail), is));
    let last = delimited((rail(), det), length, (opt(part(Part::Gap)), under()));
    let first = preceded((det, under(), tie), length);
    alt((last, first)).parse(input)
}

/// "1 1/2 balusters", "pickets are 3/4 round", "2x2 balusters".
pub fn baluster(input: In<'_>) -> Out<'_, Say> {
    let shape = || opt((opt(sep("-")), text(&["round", "square", "inch", "wide", "thick"])));
    let wide = || opt(sense(Sense::Cue(Cue::Wide)));
    let before = delimited(using, measure, (shape(), part(Part::Baluster), wide()));
    let after = delimited((using, shape(), part(Part::Baluster), tie, det), measure, (shape(), wide()));
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
            alt((
                value((), (part(Part::Gap), opt((opt(text(&["between", "of", "on"])), det, part(Part::Baluster))))),
                value(
                    (),
                    (text(&["space", "spacing"]), opt(text(&["between", "of", "on"])), det, part(Part::Baluster)),
                ),
            )),
            opt(text(&["of"])),
        )
    };
    let between = || (opt(text(&["between", "on", "for"])), det, part(Part::Baluster));
    // "pickets under 4 inches apart", "3 7/8 max between pickets".
    let pickets = (det, part(Part::Baluster), is, opt(text(&["at", "to be"])), cue(), tie);
    let apart = opt(alt((sense(Sense::Cue(Cue::Apart)), text(&["between"]))));
    let of_pickets = delimited(pickets, length, apart);
    let by_pickets = terminated(length, (cue(), between()));
    let cue_pickets = delimited((cue(), tie), length, between());
    let first = preceded(
        (opt(text(&["keep", "the"])), det, alt((value((), (cue(), gap())), value((), (gap(), opt(is), cue())))), tie),
        length,
    );
    let last = terminated(length, alt((value((), (cue(), gap())), value((), (gap(), cue())))));
    alt((of_pickets, by_pickets, cue_pickets, first, last)).map(slot(SlotId::GapMax)).parse(input)
}

/// "gap 1 1/2", "1 1/2 gap": of what, the words do not say.
pub fn gap_of(input: In<'_>) -> Out<'_, Say> {
    let gap = || preceded((opt(text(&["with", "use"])), det), part(Part::Gap));
    let small = |m: &Measure| match m.meaning {
        Meaning::Bare(n) => n.value < 12.into(),
        Meaning::Length(l, _) => l.q() < 12.into(),
        _ => false,
    };
    let said = alt((preceded((gap(), tie), length), terminated(length, gap())));
    terminated(verify(said, small), peek(ends)).map(|m| Say::Clause(Clause::GapOf(m))).parse(input)
}

/// "posts on the outside face of the band".
pub fn mount(input: In<'_>) -> Out<'_, Say> {
    let word = any(|s| match s {
        Sense::Mount(m) => Some(m),
        _ => None,
    });
    let rim = (
        text(&["to", "on", "of", "against"]),
        det,
        alt((part(Part::Rim), part(Part::Skirt), part(Part::Deck), part(Part::Decking))),
    );
    delimited((using, opt(part(Part::Post)), fixed_so), word, (opt(rim), on_posts))
        .map(|m| Say::Clause(Clause::Mount(m)))
        .parse(input)
}

/// "on the posts", "posts", "for them": said after how they are fixed.
fn on_posts(input: In<'_>) -> Out<'_, ()> {
    let posts = (opt(text(&["on", "for", "at", "in"])), det, alt((part(Part::Post), text(&["them", "em"]))));
    value((), opt(posts)).parse(input)
}

/// Words between "posts" and how they are fixed.
fn fixed_so(input: In<'_>) -> Out<'_, ()> {
    let words = text(&[
        "are", "go", "set", "on", "to", "mounted", "is", "the", "stand", "sit", "get", "come", "be", "hang", "will",
        "with", "held", "by", "fixed", "hung", "and", "mount", "them", "em", "fix", "bolt", "screw", "hold",
    ]);
    value((), many0_count(words)).parse(input)
}

/// "through bolted".
pub fn fixing(input: In<'_>) -> Out<'_, Say> {
    let word = any(|s| match s {
        Sense::Fixing(f) => Some(f),
        _ => None,
    });
    let rim = opt((opt(text(&["to", "into", "through", "on"])), det, alt((part(Part::Rim), text(&["the band"])))));
    delimited((using, opt(part(Part::Post)), fixed_so), word, (rim, on_posts))
        .map(|f| Say::Clause(Clause::Fixing(f)))
        .parse(input)
}

/// "no notch", "notch 1 1/2 deep", "notch depth 1 1/2".
pub fn notch(input: In<'_>) -> Out<'_, Say> {
    let deep = || opt(sense(Sense::Cue(Cue::Deep)));
    let posts = || {
        opt((opt(text(&["in", "on"])), det, alt((part(Part::Post), text(&["them", "em", "it", "each", "each one"])))))
    };
    let any_notch = (opt(text(&["any"])), det, part(Part::Notch));
    let none = value(Say::Clause(Clause::NoNotch), (sense(Sense::Not), any_notch, posts()));
    let subject = opt((det, part(Part::Post), is));
    let first = preceded((subject, det, part(Part::Notch), posts(), deep(), tie), terminated(length, deep()));
    // "... at the bottom of each post".
    let low = text(&["bottom", "the bottom", "foot", "base"]);
    let low = opt((
        text(&["at", "on", "in"]),
        det,
        low,
        opt((text(&["of"]), opt(text(&["each", "every", "all"])), det, part(Part::Post))),
    ));
    let last = terminated(preceded(det, length), (deep(), opt(sep("-")), part(Part::Notch), low));
    alt((none, alt((first, last)).map(slot(SlotId::NotchDepth)))).parse(input)
}

/// "deck's 26 inches up", "38 off the ground".
pub fn grade(input: In<'_>) -> Out<'_, Say> {
    let stands = text(&["sits", "stands", "its", "it 's", "is"]);
    let deck = (det, part(Part::Deck), many0_count(stands), is);
    let up = || text(&["up", "up in the air", "high"]);
    let above = || alt((sense(Sense::Cue(Cue::Above)), value((), (up(), sense(Sense::Cue(Cue::Above))))));
    // "10' up the right side" is no height: "up" alone wants the deck named, or the line's end.
    let told = delimited(deck, length, alt((above(), up())));
    let bare = terminated(length, alt((above(), value((), (text(&["up"]), line_end)))));
    alt((told, bare)).map(slot(SlotId::Grade)).parse(input)
}

/// The line's end or a sign.
pub(super) fn line_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(Item::is_sep) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
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
    // "it lands on a 4x4 against the siding": on a post of its own.
    let lands = (
        opt(text(&["it", "that", "the rail", "we"])),
        said(&["lands on", "land on", "lands against", "sits on", "dies into", "ends on", "ends at", "is on"]),
        det,
    );
    let lands = (lands, alt((value((), lumber), part(Part::Post))), opt(part(Part::Post)), at_house());
    let lands = value(HouseEnd::Post, lands);
    let instead = |other: fn(In<'_>) -> Out<'_, ()>| opt((text(&["instead of", "rather than", "not"]), det, other));
    let bracket = terminated(bracket, instead(|i| part(Part::Post).parse(i)));
    let post = terminated(alt((post, lands)), instead(|i| part(Part::Bracket).parse(i)));
    alt((bracket, post, end_is)).map(|h| Say::Clause(Clause::HouseEnd(h))).parse(input)
}

/// "read to the 32nd", "round to 1/8".
pub fn tape(input: In<'_>) -> Out<'_, Say> {
    let idle =
        text(&["it", "me", "them", "everything", "to", "the", "tape", "nearest", "in", "figures", "marks", "a", "an"]);
    let lead = (text(&["round", "read", "measure", "tape", "show", "give"]), many0_count(idle));
    let named = any(|s| if let Sense::Parts(d) = s { Some(d) } else { None });
    // "2 32nds" is no part a tape is read to, though it comes to a sixteenth.
    let one_part = one(|i: &Item| match &i.is {
        Is::Measure(m) if i.text.starts_with('1') || !i.text.starts_with(|c: char| c.is_ascii_digit()) => {
            Some(m.clone())
        }
        _ => None,
    });
    let part = map_opt(one_part, |m| match m.meaning {
        Meaning::Bare(n) if *n.value.numer() == 1 => u8::try_from(*n.value.denom()).ok(),
        Meaning::Length(l, _) if *l.q().numer() == 1 => u8::try_from(*l.q().denom()).ok(),
        _ => None,
    });
    let fits = verify(alt((named, part)), |d| crate::measure::Tape::to(i128::from(*d)).is_some());
    let wrong = preceded((opt(det), opt(text(&["to", "nearest"]))), length);
    let wrong =
        value(Clause::NotYet("A tape is read to halves, quarters, eighths, 16ths, 32nds or 64ths. Which?"), wrong);
    preceded(lead, alt((fits.map(Clause::Tape), wrong))).map(Say::Clause).parse(input)
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
