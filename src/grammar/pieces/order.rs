//! Facts for the parts, the saw and the yard: sizes, lengths, stock, kerf, prices.
//!
//! ```text
//! kerf    = length "kerf" | ("kerf" | "saw" | "blade") [is|takes] length      percent = n ("%" | "percent") what | what n "%"
//! stick   = lumber "x" feet | lumber length ["footer"] | length lumber        price   = stick [is|at] ["$"] money
//! sold    = feet *("," feet) ("on hand" | "at the yard" ...) | what "come in" feet *("," feet)
//! on_hand = n stick ["on hand"]         bays = n "bays" ("at" | "of") length ["clear"]
//! member  = [lumber] ("top rail" | "cap" ...) [lumber] | "no cap"             lay = member ("flat" | "on edge")
//! ```

use super::Say;
use super::atoms::{In, Out, count, det, length, lumber, one, part, sense, sep};
use super::phrase::{ends, said};
use crate::grammar::draft::Clause;
use crate::grammar::goods::OrderDraft;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Part, Sense};
use crate::job::{BalustersAt, Lay, Member, Order, Percent, SlotId, StartWith, StickOf};
use crate::measure::{Length, Lumber, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};
use num_rational::Ratio;
use rust_decimal::Decimal;

fn fact(order: Order) -> Say {
    Say::Clause(Clause::Order(OrderDraft::Fact(order)))
}

fn slot(id: SlotId) -> impl Fn(Measure) -> Say {
    move |m| Say::Clause(Clause::Slot(id, m))
}

fn tie(input: In<'_>) -> Out<'_, ()> {
    let word = alt((
        said(&[
            "is", "are", "'s", "of", "=", "at", "to", "be", "its", "it 's", "about", "runs", "for", "cost", "costs",
            "each", "the", "a",
        ]),
        sep(":,-"),
    ));
    value((), many0_count(word)).parse(input)
}

/// Digits with at most one point, as a price or a part of a hundred.
fn decimal(input: In<'_>) -> Out<'_, Decimal> {
    let digits = one(|i: &Item| {
        let text = i.text.trim_start_matches('$');
        let plain = !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
        Decimal::from_str_exact(text).ok().filter(|d| plain && d.scale() <= 4)
    });
    let spoken = map_opt(one(bare), |n| Decimal::try_from_i128_with_scale(n, 0).ok());
    alt((digits, spoken)).parse(input)
}

/// A whole number in words: "ten".
fn bare(item: &Item) -> Option<i128> {
    match &item.is {
        Is::Measure(Measure { meaning: Meaning::Bare(n), shade: None, about: false, .. })
            if n.value.is_integer() && !n.fraction && !n.plural =>
        {
            Some(n.value.to_integer())
        }
        _ => None,
    }
}

/// "$7.98", "7.98 each", "12 bucks".
fn money(input: In<'_>) -> Out<'_, Decimal> {
    let behind = many0_count(said(&[
        "each",
        "apiece",
        "a piece",
        "bucks",
        "dollars",
        "a stick",
        "ea",
        "per",
        "stick",
        "a board",
        "$",
        "usd",
        "per stick",
        "piece",
        "a",
    ]));
    delimited(opt(said(&["$", "usd"])), decimal, behind).parse(input)
}

fn whole(input: In<'_>) -> Out<'_, u16> {
    let digits = one(|i: &Item| i.text.parse::<u16>().ok());
    alt((digits, count)).parse(input)
}

/// Whole feet of a stick: "8", "8 ft", "8'", "12 footer", "eights", "8s".
fn feet(input: In<'_>) -> Out<'_, u16> {
    let behind = || {
        many0_count(said(&[
            "footers", "footer", "foot", "ft", "feet", "'", "long", "foots", "stick", "sticks", "lengths", "length",
        ]))
    };
    let measured = map_opt(one(as_feet), |n| u16::try_from(n).ok());
    terminated(alt((measured, whole)), behind()).parse(input)
}

fn as_feet(item: &Item) -> Option<i128> {
    let Is::Measure(Measure { meaning, shade: None, about: false, .. }) = &item.is else { return None };
    let feet = match meaning {
        Meaning::Bare(n) if !n.fraction => n.value,
        Meaning::Length(l, _) => l.q() / Ratio::from_integer(12),
        _ => return None,
    };
    (feet.is_integer() && (1..=40).contains(&feet.to_integer())).then(|| feet.to_integer())
}

/// "2x4x8", "2x4 - 8", "8 foot 2x4", "2x4 8 footer".
fn stick(input: In<'_>) -> Out<'_, StickOf> {
    let by = || said(&["x", "by", "×"]);
    let glued = (whole, preceded(by(), whole), preceded(alt((by(), sep("-"), said(&["-"]))), feet));
    let glued = map_opt(glued, |(thick, wide, feet)| named(Lumber::by(thick.checked_mul(1)?, wide), feet));
    let quarters = map_opt(
        (one(|i: &Item| i.text.strip_suffix("/4")?.parse::<u16>().ok()), preceded(by(), whole), preceded(by(), feet)),
        |(thick_quarters, wide, feet)| named(Lumber { thick_quarters, wide }, feet),
    );
    let behind = (lumber, preceded(alt((value((), (opt(by()), opt(sep("-")))), value((), said(&["in"])))), feet));
    let before = (feet, preceded(opt(sep("-")), lumber)).map(|(feet, size)| (size, feet));
    let apart = map_opt(alt((behind, before)), |(size, feet)| named(size, feet));
    alt((glued, quarters, apart)).parse(input)
}

fn named(size: Lumber, feet: u16) -> Option<StickOf> {
    size.dressed().map(|_| StickOf { size, feet })
}

/// "1/8 kerf", "kerf is 1/8", "the blade takes 1/8".
pub fn kerf(input: In<'_>) -> Out<'_, Say> {
    let word = || value((), (det, opt(said(&["saw", "blade"])), said(&["kerf", "kurf", "curf", "saw cut"])));
    let saw = value((), (det, said(&["saw", "blade"]), said(&["takes", "eats", "is", "cuts", "kerf", "'s", "wastes"])));
    let first = preceded((alt((word(), saw)), tie), length);
    let last = delimited(
        opt(said(&["with", "a", "figure", "use", "for", "allow"])),
        preceded(det, length),
        (opt(said(&["for"])), word()),
    );
    alt((first, last)).map(slot(SlotId::Kerf)).parse(input)
}

/// "ten percent for junk", "waste 10%", "tax is 6.25 percent".
pub fn percent(input: In<'_>) -> Out<'_, Say> {
    let sign = || said(&["%", "percent", "per cent", "pct", "percents"]);
    let what = || {
        alt((
            value(
                Percent::Waste,
                said(&[
                    "waste",
                    "junk",
                    "bad ones",
                    "culls",
                    "cull",
                    "scrap",
                    "extra",
                    "bad sticks",
                    "bad boards",
                    "bad wood",
                    "over",
                    "spoilage",
                    "knots",
                    "crooked ones",
                    "bad stuff",
                    "twisted ones",
                    "mistakes",
                    "bad lumber",
                    "warped ones",
                ]),
            ),
            value(Percent::Tax, said(&["tax", "sales tax", "taxes", "vat", "hst", "gst"])),
            value(Percent::Markup, said(&["markup", "mark up", "profit", "overhead"])),
        ))
    };
    let lead = || {
        many0_count(said(&["add", "figure", "put", "allow", "with", "plus", "and", "throw in", "on", "count", "order"]))
    };
    let first = (
        delimited(
            (lead(), opt(said(&["an", "a", "another", "extra"]))),
            decimal,
            (
                sign(),
                opt(said(&["more", "extra"])),
                many0_count(said(&["for", "of", "on", "in", "the", "as", "to", "cover", "top"])),
            ),
        ),
        what(),
    );
    let last = (preceded((lead(), det), what()), delimited(tie, decimal, sign())).map(|(what, n)| (n, what));
    alt((first, last)).map(|(n, what)| fact(Order::Percent(what, n))).parse(input)
}

/// "2x4x8 is 7.98", "12 foot 2x4s are $11.50 each"; "2x4x8 is free".
pub fn price(input: In<'_>) -> Out<'_, Say> {
    let free = value(Decimal::ZERO, (tie, said(&["free", "nothing", "no charge", "on the house"])));
    let told = alt((free, preceded(tie, money)));
    let price =
        (preceded((opt(said(&["price", "price of", "a", "the", "prices"])), det), stick), terminated(told, peek(ends)));
    price.map(|(stick, price)| fact(Order::Price(stick, price))).parse(input)
}

/// "labor is 450", "$600 for labor".
pub fn labour(input: In<'_>) -> Out<'_, Say> {
    let word = || said(&["labor", "labour", "my time", "the work", "install", "installation", "my labor", "my labour"]);
    let first = preceded((det, word(), tie), money);
    let last = terminated(money, (opt(said(&["for", "in", "of"])), det, word()));
    terminated(alt((first, last)), peek(ends)).map(|price| fact(Order::Labour(price))).parse(input)
}

/// "8, 10 and 12": lengths in whole feet.
fn lengths(input: In<'_>) -> Out<'_, Vec<u16>> {
    let (mut rest, first) = feet(input)?;
    let mut all = vec![first];
    let and = |i| value((), (opt(sep(",")), opt(said(&["and", "&", "or", "n", "or else"])))).parse(i);
    loop {
        let (after, ()) = and(rest)?;
        match feet(after) {
            // "12s 12s": said twice it is not clear what is meant.
            Ok((_, n)) if all.contains(&n) => return Err(nom::Err::Error(())),
            Ok((after, n)) => {
                all.push(n);
                rest = after;
            }
            Err(_) => break,
        }
    }
    all.sort_unstable();
    Ok((rest, all))
}

/// "8s and 12s on hand", "2x4s come in 8 10 and 12", "the yard has 8s and 16s", "rails come in 8s".
pub fn sold(input: In<'_>) -> Out<'_, Say> {
    let where_at = || {
        said(&[
            "on hand",
            "in stock",
            "at the yard",
            "in the truck",
            "on the truck",
            "on site",
            "in the rack",
            "to cut from",
            "available",
            "at the lumberyard",
            "in the pile",
            "are what they have",
            "is what they have",
            "are all they have",
            "is all they have",
            "is all i have",
            "are all i have",
            "is what i 've got",
            "are what i 've got",
            "here",
            "to work with",
        ])
    };
    let come = || {
        said(&[
            "come in",
            "comes in",
            "come",
            "are sold in",
            "sold in",
            "only come in",
            "only comes in",
            "are",
            "come as",
            "stock",
            "stocks",
            "stock is",
            "in",
            "is sold in",
            "can be had in",
            "come in at",
        ])
    };
    let lead = || {
        many0_count(said(&[
            "i",
            "i 've",
            "ive",
            "we",
            "have",
            "got",
            "there",
            "are",
            "only",
            "just",
            "some",
            "they",
            "the",
            "they 've",
            "carry",
            "sell",
            "stock",
            "has",
            "yard",
            "lumberyard",
            "store",
            "stocks",
            "sells",
            "carries",
            "of",
            "lengths",
        ]))
    };
    let size = || {
        terminated(
            lumber,
            opt(alt((part(Part::Rail), part(Part::Post), part(Part::Baluster), said(&["stock", "boards"])))),
        )
    };
    let at_hand = (opt(size()), preceded(lead(), terminated(lengths, where_at())));
    let of_size = (size().map(Some), preceded(come(), terminated(lengths, opt(where_at()))));
    let by_place = preceded(
        (
            det,
            said(&["yard", "lumberyard", "store", "they"]),
            opt(said(&["only", "just"])),
            said(&["has", "have", "stocks", "sells", "carries", "carry", "sell", "stock", "got", "'s got", "has got"]),
            opt(said(&["only", "just"])),
        ),
        (opt(size()), lengths),
    );
    let stock = preceded(
        (
            det,
            said(&["stock", "lumber", "wood", "lengths", "sticks", "stuff", "boards", "stock lengths"]),
            tie,
            opt(said(&["come in", "comes in", "come", "comes", "sold", "in"])),
            opt(said(&["in"])),
        ),
        (opt(size()), lengths),
    );
    let rails = preceded((det, alt((part(Part::Rail), said(&["rails", "railing"]))), come()), lengths);
    let plain = alt((at_hand, of_size, by_place, stock));
    let any =
        alt((rails.map(OrderDraft::RailsSold), plain.map(|(size, feet)| OrderDraft::Fact(Order::Sold(size, feet)))));
    terminated(any, peek(ends)).map(|draft| Say::Clause(Clause::Order(draft))).parse(input)
}

/// "three 2x4x10 on hand", "2 offcuts of 2x4 at 40 inches", "got 4 8 foot 2x4s".
pub fn on_hand(input: In<'_>) -> Out<'_, Say> {
    let lead = || {
        many0_count(said(&[
            "i", "i 've", "ive", "we", "have", "got", "there", "are", "there 's", "also", "with", "use",
        ]))
    };
    let here = || {
        said(&[
            "on hand",
            "left",
            "left over",
            "leftover",
            "lying around",
            "in the truck",
            "on site",
            "here",
            "in the pile",
            "already",
            "from the last job",
            "in the shop",
            "to use up",
            "in the garage",
        ])
    };
    let off = || {
        said(&[
            "offcut",
            "offcuts",
            "off cuts",
            "offcuts of",
            "pieces of",
            "drops",
            "drop",
            "cutoffs",
            "cut offs",
            "scraps",
            "leftover",
            "left over",
            "pieces",
            "piece of",
        ])
    };
    let behind = || (opt(off()), opt(here()));
    let sized = (preceded(lead(), terminated(whole, opt(off()))), terminated(stick, behind())).map(|(n, s)| {
        let at = Meaning::Length(Length::inches(i64::from(s.feet) * 12), crate::measure::Said::Feet);
        OrderDraft::OnHand(s.size, Measure { meaning: at, shade: None, about: false, guess: None }, n)
    });
    let at = (
        preceded(lead(), terminated(whole, (opt(off()), opt(said(&["of"]))))),
        terminated(lumber, (opt(off()), said(&["at", "of", "that are", "about", ",", "in"]))),
        terminated(length, (opt(said(&["long"])), behind())),
    );
    let at = at.map(|(n, size, m)| OrderDraft::OnHand(size, m, n));
    let before = (
        preceded(lead(), whole),
        length,
        preceded((opt(said(&["long"])), opt(off()), opt(said(&["of"]))), terminated(lumber, behind())),
    );
    let before = before.map(|(n, m, size)| OrderDraft::OnHand(size, m, n));
    // Bare of any word for having them it is said at the end or the start.
    let has = |input: In<'_>, rest: In<'_>| {
        let read = input.len() - rest.len();
        let words = [
            "hand", "have", "got", "offcut", "left", "drops", "truck", "pile", "lying", "cutoffs", "scrap", "shop",
            "garage", "use up",
        ];
        input.iter().take(read).any(|i| words.iter().any(|w| i.text.contains(w)))
    };
    let (rest, draft) = terminated(alt((sized, at, before)), peek(ends)).parse(input)?;
    if has(input, rest) { Ok((rest, Say::Clause(Clause::Order(draft)))) } else { Err(nom::Err::Error(())) }
}

/// "four bays at 55 5/8", "3 bays of 68 1/2 clear".
pub fn bays(input: In<'_>) -> Out<'_, Say> {
    let bay = || alt((part(Part::Bay), said(&["sections", "section", "openings", "opening"]), part(Part::Opening)));
    let clear = || opt(sense(Sense::Basis(crate::job::Basis::Clear)));
    let of = (
        count,
        preceded(
            (
                opt(said(&["equal", "even", "more", "rail"])),
                bay(),
                said(&["at", "of", "that are", "@", "each"]),
                opt(said(&["at"])),
            ),
            terminated(length, clear()),
        ),
    );
    of.map(|(n, m)| Say::Clause(Clause::Order(OrderDraft::Bays(n, m)))).parse(input)
}

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
            value(Lay::Flat, said(&["flat", "on the flat", "laid flat", "lies flat", "lying flat", "flatwise"])),
            value(
                Lay::Edge,
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
    let none =
        preceded((said(&["no", "without", "skip the"]), opt(said(&["a", "any"]))), terminated(members, peek(ends)))
            .map(|m| m.into_iter().map(|m| Order::Rail(m, None)).collect::<Vec<_>>());
    let sized = |(size, members, lay): (Lumber, Vec<Member>, Option<Lay>)| {
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
    let told = preceded((opt(said(&["with", "the", "my"])), part(Part::Baluster), go()), alt((between, faces)));
    terminated(told, peek(ends)).map(|at| fact(Order::Balusters(at))).parse(input)
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
