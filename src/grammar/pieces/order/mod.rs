//! Facts for the parts, the saw and the yard: sizes, lengths, stock, kerf, prices.
//!
//! ```text
//! kerf    = length "kerf" | ("kerf" | "saw" | "blade") [is|takes] length      percent = n ("%" | "percent") what | what n "%"
//! stick   = lumber "x" feet | lumber length ["footer"] | length lumber        price   = stick [is|at] ["$"] money
//! sold    = feet *("," feet) ("on hand" | "at the yard" ...) | what "come in" feet *("," feet)
//! on_hand = n stick ["on hand"]         bays = n "bays" ("at" | "of") length ["clear"]
//! member  = [lumber] ("top rail" | "cap" ...) [lumber] | "no cap"             lay = member ("flat" | "on edge")
//! ```

mod members;
mod saw;
mod stock;

pub use members::{balusters_at, bracket, cut_at, member_is, spares, start_with};
pub use saw::{kerf, labour, percent, price};
pub use stock::{bays, on_hand, sold};

use super::Say;
use super::atoms::{In, Out, count, lumber, one, sep};
use super::phrase::said;
use crate::grammar::draft::Clause;
use crate::grammar::goods::OrderDraft;
use crate::grammar::items::{Is, Item};
use crate::job::{Order, SlotId, StickOf};
use crate::measure::{Lumber, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, opt, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};
use num_rational::Ratio;
use rust_decimal::Decimal;

pub(super) fn fact(order: Order) -> Say {
    Say::Clause(Clause::Order(OrderDraft::Fact(order)))
}

pub(super) fn slot(id: SlotId) -> impl Fn(Measure) -> Say {
    move |m| Say::Clause(Clause::Slot(id, m))
}

pub(super) fn tie(input: In<'_>) -> Out<'_, ()> {
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
pub(super) fn decimal(input: In<'_>) -> Out<'_, Decimal> {
    let digits = one(|i: &Item| {
        let text = i.text.trim_start_matches('$');
        let plain = !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
        Decimal::from_str_exact(text).ok().filter(|d| plain && d.scale() <= 4)
    });
    let spoken = map_opt(one(bare), |n| Decimal::try_from_i128_with_scale(n, 0).ok());
    alt((digits, spoken)).parse(input)
}

/// A whole number in words: "ten".
pub(super) fn bare(item: &Item) -> Option<i128> {
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
pub(super) fn money(input: In<'_>) -> Out<'_, Decimal> {
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

pub(super) fn whole(input: In<'_>) -> Out<'_, u16> {
    let digits = one(|i: &Item| i.text.parse::<u16>().ok());
    alt((digits, count)).parse(input)
}

/// Whole feet of a stick: "8", "8 ft", "8'", "12 footer", "eights", "8s".
pub(super) fn feet(input: In<'_>) -> Out<'_, u16> {
    let behind = || {
        many0_count(said(&[
            "footers", "footer", "foot", "ft", "feet", "'", "long", "foots", "stick", "sticks", "lengths", "length",
        ]))
    };
    let measured = map_opt(one(as_feet), |n| u16::try_from(n).ok());
    terminated(alt((measured, whole)), behind()).parse(input)
}

pub(super) fn as_feet(item: &Item) -> Option<i128> {
    let Is::Measure(Measure { meaning, shade: None, about: false, .. }) = &item.is else { return None };
    let feet = match meaning {
        Meaning::Bare(n) if !n.fraction => n.value,
        Meaning::Length(l, _) => l.q() / Ratio::from_integer(12),
        _ => return None,
    };
    (feet.is_integer() && (1..=40).contains(&feet.to_integer())).then(|| feet.to_integer())
}

/// "2x4x8", "2x4 - 8", "8 foot 2x4", "2x4 8 footer".
pub(super) fn stick(input: In<'_>) -> Out<'_, StickOf> {
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

pub(super) fn named(size: Lumber, feet: u16) -> Option<StickOf> {
    size.dressed().map(|_| StickOf { size, feet })
}
