//! Rails, caps and balusters: sizes, how they lie, how long they are cut.

use super::super::Say;
use super::super::atoms::{In, Out, count, det, length, lumber, part, sense, sep};
use super::super::phrase::{ends, said};
use super::{fact, slot, tie};
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Part, Sense};
use crate::job::{BalustersAt, Lie, Member, Order, SlotId, StartWith};
use crate::measure::{Length, Lumber, Meaning};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// "3 spare balusters", "two spares".
pub fn spares(input: In<'_>) -> Out<'_, Say> {
    let lead = || many0_count(said(&["add", "get", "with", "plus", "throw in", "order", "a", "couple", "and"]));
    let named = (said(&["spare", "extra"]), part(Part::Baluster));
    let alone = said(&["spares", "extras"]);
    let first = delimited(lead(), count, alt((value((), named), alone)));
    let last = preceded((opt(part(Part::Baluster)), said(&["spares", "extras"]), tie), count);
    terminated(alt((first, last)), peek(ends)).map(|n| fact(Order::Spares(n))).parse(input)
}

fn member(input: In<'_>) -> Out<'_, Member> {
    alt((
        value(Member::Cap, said(&["cap", "cap rail", "drink rail", "caps", "cap board", "top cap"])),
        value(Member::Top, said(&["top rail", "upper rail", "top rails", "top"])),
        value(Member::Bottom, part(Part::BottomRail)),
        value(Member::Bottom, said(&["bottom rails", "lower rails", "bottom"])),
    ))
    .parse(input)
}

fn members(input: In<'_>) -> Out<'_, Vec<Member>> {
    let both = (
        det,
        opt(said(&["both"])),
        said(&[
            "top and bottom rails",
            "top and bottom rail",
            "rails top and bottom",
            "rails",
            "top and bottom",
            "both rails",
            "rails both",
        ]),
    );
    let both = value(vec![Member::Top, Member::Bottom], both);
    alt((both, preceded(det, member).map(|m| vec![m]))).parse(input)
}

/// "2x4 rails", "2x6 cap", "top rail is a 2x4 flat", "no cap", "rails on edge", "cap 5/4x6".
pub fn member_is(input: In<'_>) -> Out<'_, Say> {
    let lead = || many0_count(said(&["with", "use", "using", "and", "a", "got"]));
    let lay = || {
        alt((
            value(Lie::Flat, said(&["flat", "on the flat", "laid flat", "lies flat", "lying flat", "flatwise"])),
            value(
                Lie::Edge,
                said(&[
                    "on edge",
                    "on its edge",
                    "edge up",
                    "on their edge",
                    "upright",
                    "edgewise",
                    "stood up",
                    "on the edge",
                ]),
            ),
        ))
    };
    // "between no the rails": what is denied has no article of its own.
    let denied = alt((
        terminated(said(&["no", "without"]), peek(not(said(&["the", "my", "these", "those"])))),
        said(&["skip the"]),
    ));
    let none = preceded((denied, opt(said(&["a", "any"]))), terminated(members, peek(ends)))
        .map(|m| m.into_iter().map(|m| Order::Rail(m, None)).collect::<Vec<_>>());
    let sized = |(size, members, lay): (Lumber, Vec<Member>, Option<Lie>)| {
        let rails = members.iter().map(|m| Order::Rail(*m, Some(size)));
        rails.chain(lay.into_iter().flat_map(|l| members.iter().map(move |m| Order::Lay(*m, l)))).collect::<Vec<_>>()
    };
    let first = (
        delimited((lead(), det), lumber, (opt(said(&["for", "on", "as"])), opt(said(&["the"])))),
        members,
        opt(preceded(opt(said(&["is", "are", "laid", "set"])), lay())),
    )
        .map(sized);
    let flat_first = (preceded((lead(), det), lumber), lay(), preceded(opt(said(&["for", "as", "on top"])), members))
        .map(move |(s, l, m)| sized((s, m, Some(l))));
    let last =
        (preceded(lead(), members), preceded((tie, det), lumber), opt(lay())).map(move |(m, s, l)| sized((s, m, l)));
    let lies = (
        preceded(lead(), members),
        preceded(
            many0_count(said(&["is", "are", "go", "goes", "lie", "lies", "laid", "set", "run", "sit", "sits"])),
            lay(),
        ),
    )
        .map(|(members, lay)| members.into_iter().map(|m| Order::Lay(m, lay)).collect::<Vec<_>>());
    let all = verify(alt((none, flat_first, first, last, lies)), |facts: &Vec<Order>| !facts.is_empty());
    let over = opt(said(&["on top", "on it", "over it", "on top of it", "on top of the posts", "for a cap"]));
    terminated(all, over).map(|facts| Say::Clause(Clause::Orders(facts))).parse(input)
}

/// "balusters between the rails", "pickets on the face".
pub fn balusters_at(input: In<'_>) -> Out<'_, Say> {
    let go = || {
        many0_count(said(&[
            "go", "are", "is", "set", "run", "fit", "fixed", "screwed", "nailed", "sit", "stand", "mounted", "get",
            "on", "the",
        ]))
    };
    let between = value(
        BalustersAt::Between,
        said(&["between the rails", "between rails", "in between the rails", "inside the rails"]),
    );
    let faces = value(
        BalustersAt::Faces,
        said(&[
            "face of the rails",
            "faces of the rails",
            "rails ' faces",
            "rails' faces",
            "face",
            "outside of the rails",
            "rail faces",
            "face mounted",
            "faces",
            "outside face of the rails",
            "to the face",
            "over the rails",
            "face of rails",
        ]),
    );
    // "between the rails" by itself: only balusters stand there.
    let lone = value(
        BalustersAt::Between,
        (said(&["between the rails", "between rails", "in between the rails"]), peek(ends)),
    );
    let told = preceded((opt(said(&["with", "the", "my"])), part(Part::Baluster), go()), alt((between, faces)));
    alt((terminated(told, peek(ends)), lone)).map(|at| fact(Order::Balusters(at))).parse(input)
}

/// "pickets are 34 long", "balusters cut at 32 1/4", "posts 52 long".
pub fn cut_at(input: In<'_>) -> Out<'_, Say> {
    let what = || {
        alt((
            value(SlotId::BalusterLength, part(Part::Baluster)),
            value(SlotId::PostLength, alt((part(Part::Post), value((), (lumber, part(Part::Post)))))),
        ))
    };
    let go = || many0_count(said(&["is", "are", "at", "'s", "be", "to", "cut", "get", "the"]));
    let long = || alt((value((), said(&["long", "in length"])), sense(Sense::Cue(crate::grammar::sense::Cue::Long))));
    let cut = || said(&["cut at", "cut to", "cut"]);
    let said_long =
        (preceded((opt(said(&["use", "with", "my", "all"])), det), what()), preceded(go(), terminated(length, long())));
    let to_be = many0_count(said(&["is", "are", "get", "be", "to", "need to be", "will be"]));
    let said_cut = (preceded(det, what()), preceded((to_be, cut(), many0_count(said(&["at", "to"]))), length));
    let cut_first = (preceded((cut(), det), what()), preceded(go(), terminated(length, opt(long()))));
    let before =
        (terminated(length, (opt(said(&["long", "inch"])), opt(sep("-")))), terminated(what(), opt(said(&["length"]))))
            .map(|(m, slot)| (slot, m));
    let before = verify(before, |(_, m)| {
        m.guess.is_none()
            && matches!(m.meaning, Meaning::Length(l, _) if l >= Length::inches(24) && l <= Length::inches(72))
    });
    let told = terminated(alt((said_long, said_cut, cut_first, before)), peek(ends));
    told.map(|(slot, m)| Say::Clause(Clause::Slot(slot, m))).parse(input)
}

/// "brackets take 1/8 each end".
pub fn bracket(input: In<'_>) -> Out<'_, Say> {
    let each = || said(&["each end", "at each end", "an end", "per end", "a side", "each side", "on each end"]);
    let first =
        delimited((det, part(Part::Bracket), said(&["take", "takes", "need", "eat", "are", "is"])), length, each());
    let last = delimited(
        (said(&["leave", "allow", "take", "cut", "rails cut", "less"]), opt(det)),
        length,
        (opt(said(&["off"])), each(), opt((said(&["for"]), det, part(Part::Bracket)))),
    );
    alt((first, last)).map(slot(SlotId::Bracket)).parse(input)
}

/// "start with a picket", "start each bay with a gap".
pub fn start_with(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        said(&["start", "starting", "starts", "begin", "start off", "i start", "we start"]),
        opt(alt((value((), (said(&["each", "every"]), part(Part::Bay))), said(&["off", "it"])))),
        said(&["with", "on"]),
        det,
    );
    let what = alt((
        value(StartWith::Baluster, part(Part::Baluster)),
        value(StartWith::Gap, alt((part(Part::Gap), said(&["space"])))),
    ));
    let at = opt(said(&[
        "against the post",
        "at the post",
        "tight to the post",
        "on each post",
        "at each post",
        "at each end",
        "each end",
    ]));
    terminated(preceded(lead, what), (at, peek(ends))).map(|with| fact(Order::StartWith(with))).parse(input)
}
